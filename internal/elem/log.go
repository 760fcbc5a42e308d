package elem

import "math"

// Log returns the natural logarithm of x. Its error is under 0.85 ulp.
//
// Special cases are those of [math.Log]: NaN for NaN and below zero, -Inf for
// ±0, +Inf for +Inf.
func Log(x float64) float64 {
	b, k := math.Float64bits(x), 0
	if b-1<<52 >= 0x7fe<<52 { // not positive and normal
		switch {
		case math.IsNaN(x) || x < 0:
			return math.NaN()
		case x == 0:
			return math.Inf(-1)
		case x > math.MaxFloat64:
			return x
		}
		b, k = math.Float64bits(x*0x1p52), -52
	}
	// x = m·2**k with 0.6875 ≤ m < 1.375, and m = c·(1+r) with a c of the table.
	t := b - logTableBits
	k += int(int64(t) >> 52)
	m := math.Float64frombits(b - t&(0xfff<<52))
	e := &logTable[t>>45&127]
	r := float64((m - e.c) * e.inverse)
	// log x = (k·ln 2 + log c) + r + r²·tail(r). Where c is 1, r is exact and up to
	// 2**-6; elsewhere it is up to 2**-8, against a sum of over 2**-6. The terms
	// left out are under 2**-63 of the sum.
	const (
		c2  = -1.0 / 2
		c3  = 1.0 / 3
		c4  = -1.0 / 4
		c5  = 1.0 / 5
		c6  = -1.0 / 6
		c7  = 1.0 / 7
		c8  = -1.0 / 8
		c9  = 1.0 / 9
		c10 = -1.0 / 10
	)
	z := float64(r * r)
	z2 := float64(z * z)
	p := (c3 + float64(c4*r)) + float64(z*(c5+float64(c6*r)))
	q := (c7 + float64(c8*r)) + float64(z*(c9+float64(c10*r)))
	n := float64(k)
	hi, lo := fastTwoSum(float64(n*ln2Hi)+e.hi, r)
	lo += float64(n*ln2Lo) + e.lo
	return hi + (lo + (float64(c2*z) + float64(float64(z*r)*(p+float64(z2*q)))))
}

// logTable has a number in each of 80 steps of 1/256 from 0.6875 to 1 and of 48
// steps of 1/128 from there to 1.375: the middle of the step, or 1 within 1/64 of
// it. Its logarithm is in two parts, of which the first is a multiple of 2**-42, so
// that its sum with a multiple of ln2Hi is exact. The tests compute them anew.
var logTable = [128]struct{ c, inverse, hi, lo float64 }{
	{0.689453125, 0x1.734f0c541fe8dp+00, -0x1.7cc7f7db47p-02, 0x1.7c98438023cdcp-44},
	{0.693359375, 0x1.713786d9c7c09p+00, -0x1.76feecb947p-02, -0x1.74bb9c9852c57p-46},
	{0.697265625, 0x1.6f26016f26017p+00, -0x1.713e33a46ap-02, -0x1.7b9b2617e9472p-46},
	{0.701171875, 0x1.6d1a62681c861p+00, -0x1.6b85b4cffap-02, -0x1.fe6750d372503p-45},
	{0.705078125, 0x1.6b1490aa31a3dp+00, -0x1.65d558d4cep-02, -0x1.544fd2dc5bdcp-51},
	{0.708984375, 0x1.691473a88d0cp+00, -0x1.602d08af09p-02, -0x1.ebe9176df3f65p-46},
	{0.712890625, 0x1.6719f3601671ap+00, -0x1.5a8cadbbeep-02, 0x1.7c79b0af7ecf8p-48},
	{0.716796875, 0x1.6524f853b4aa3p+00, -0x1.54f431b7bep-02, -0x1.a8954c0910952p-46},
	{0.720703125, 0x1.63356b88ac0dep+00, -0x1.4f637ebbaap-02, 0x1.fc158cb3124b9p-44},
	{0.724609375, 0x1.614b36831ae94p+00, -0x1.49da7f3bccp-02, -0x1.07b334daf4b9ap-44},
	{0.728515625, 0x1.5f66434292dfcp+00, -0x1.44591e053ap-02, 0x1.6e95892923d88p-47},
	{0.732421875, 0x1.5d867c3ece2a5p+00, -0x1.3edf463c17p-02, 0x1.f067c297f2c3fp-44},
	{0.736328125, 0x1.5babcc647fa91p+00, -0x1.396ce359bcp-02, 0x1.5839c5663663dp-47},
	{0.740234375, 0x1.59d61f123ccaap+00, -0x1.3401e12aedp-02, 0x1.17c73556e291dp-44},
	{0.744140625, 0x1.580560158056p+00, -0x1.2e9e2bce12p-02, -0x1.4300c128d1dc2p-45},
	{0.748046875, 0x1.56397ba7c52e2p+00, -0x1.2941afb187p-02, 0x1.210c2b730e28bp-44},
	{0.751953125, 0x1.54725e6bb82fep+00, -0x1.23ec5991ecp-02, 0x1.6dbe448a2e522p-44},
	{0.755859375, 0x1.52aff56a8054bp+00, -0x1.1e9e16788ap-02, 0x1.82eaed3c8b65ep-44},
	{0.759765625, 0x1.50f22e111c4c5p+00, -0x1.1956d3b9bcp-02, -0x1.7d2f73ad1aa14p-45},
	{0.763671875, 0x1.4f38f62dd4c9bp+00, -0x1.14167ef367p-02, -0x1.e0c07824daaf5p-44},
	{0.767578125, 0x1.4d843bedc2c4cp+00, -0x1.0edd060b78p-02, -0x1.019b52d8435f5p-47},
	{0.771484375, 0x1.4bd3edda68fe1p+00, -0x1.09aa572e6cp-02, -0x1.b50a1e1734342p-44},
	{0.775390625, 0x1.4a27fad76014ap+00, -0x1.047e60cde8p-02, -0x1.dbdf10d397f3cp-45},
	{0.779296875, 0x1.488052201488p+00, -0x1.feb2233eap-03, -0x1.f3418de00938bp-45},
	{0.783203125, 0x1.46dce34596066p+00, -0x1.f474b134ep-03, 0x1.bae49f1df7b5ep-44},
	{0.787109375, 0x1.453d9e2c776cap+00, -0x1.ea4449f04ap-03, -0x1.5e91663732a36p-44},
	{0.791015625, 0x1.43a2730abee4dp+00, -0x1.e020cc6236p-03, 0x1.52b00adb91424p-45},
	{0.794921875, 0x1.420b5265e5951p+00, -0x1.d60a17f904p-03, 0x1.5d6e06fc20d39p-44},
	{0.798828125, 0x1.40782d10e6566p+00, -0x1.cc000c9db4p-03, 0x1.d6d585d57aff9p-46},
	{0.802734375, 0x1.3ee8f42a5af07p+00, -0x1.c2028ab18p-03, 0x1.92e0ee55c7ac6p-45},
	{0.806640625, 0x1.3d5d991aa75c6p+00, -0x1.b811730b82p-03, -0x1.e90683b9cd768p-46},
	{0.810546875, 0x1.3bd60d9232955p+00, -0x1.ae2ca6f672p-03, -0x1.7a8d5ae54f55p-44},
	{0.814453125, 0x1.3a524387ac822p+00, -0x1.a454082e6ap-03, -0x1.60a77c81f7171p-44},
	{0.818359375, 0x1.38d22d366088ep+00, -0x1.9a8778debap-03, -0x1.470fa3efec39p-44},
	{0.822265625, 0x1.3755bd1c945eep+00, -0x1.90c6db9fccp-03, 0x1.935f57718d7cap-46},
	{0.826171875, 0x1.35dce5f9f2af8p+00, -0x1.871213750ep-03, -0x1.328eb42f9af75p-44},
	{0.830078125, 0x1.34679ace01346p+00, -0x1.7d6903caf6p-03, 0x1.4c06b17c301d7p-45},
	{0.833984375, 0x1.32f5ced6a1dfap+00, -0x1.73cb9074fep-03, 0x1.d66a90d0005a6p-44},
	{0.837890625, 0x1.3187758e9ebb6p+00, -0x1.6a399dabbep-03, 0x1.8f934e66a15a6p-44},
	{0.841796875, 0x1.301c82ac4026p+00, -0x1.60b3100b0ap-03, 0x1.71456c988f814p-44},
	{0.845703125, 0x1.2eb4ea1fed14bp+00, -0x1.5737cc9018p-03, -0x1.9baa7a6b887f6p-44},
	{0.849609375, 0x1.2d50a012d50ap+00, -0x1.4dc7b897bcp-03, -0x1.c79b60ae1ff0fp-47},
	{0.853515625, 0x1.2bef98e5a3711p+00, -0x1.4462b9dc9cp-03, 0x1.84858a711b062p-44},
	{0.857421875, 0x1.2a91c92f3c105p+00, -0x1.3b08b6758p-03, 0x1.aade8f29320fbp-44},
	{0.861328125, 0x1.293725bb804a5p+00, -0x1.31b994d3a4p-03, -0x1.f098ee3a5081p-44},
	{0.865234375, 0x1.27dfa38a1ce4dp+00, -0x1.28753bc11ap-03, -0x1.7494e359302e6p-44},
	{0.869140625, 0x1.268b37cd60127p+00, -0x1.1f3b925f26p-03, 0x1.5f74e9b083633p-46},
	{0.873046875, 0x1.2539d7e9177b2p+00, -0x1.160c8024b2p-03, -0x1.ec2d2a9009e3dp-45},
	{0.876953125, 0x1.23eb79717605bp+00, -0x1.0ce7ecdcccp-03, -0x1.4652dabff5447p-46},
	{0.880859375, 0x1.22a0122a0122ap+00, -0x1.03cdc0a51ep-03, -0x1.81a9cf169fc5cp-44},
	{0.884765625, 0x1.21579804855e6p+00, -0x1.f57bc7d9p-04, -0x1.76a6c9ea8b04ep-46},
	{0.888671875, 0x1.2012012012012p+00, -0x1.e3707ee304p-04, -0x1.0f684e6766abdp-45},
	{0.892578125, 0x1.1ecf43c7fb84cp+00, -0x1.d179788218p-04, -0x1.36433b5efbeedp-44},
	{0.896484375, 0x1.1d8f5672e4abdp+00, -0x1.bf968769fcp-04, -0x1.4218c8d824283p-45},
	{0.900390625, 0x1.1c522fc1ce059p+00, -0x1.adc77ee5bp-04, 0x1.573b209c31904p-44},
	{0.904296875, 0x1.1b17c67f2bae3p+00, -0x1.9c0c32d4d4p-04, 0x1.ab7c09e838668p-44},
	{0.908203125, 0x1.19e0119e0119ep+00, -0x1.8a6477a91cp-04, -0x1.c28c0af9bd6dfp-44},
	{0.912109375, 0x1.18ab083902bdbp+00, -0x1.78d02263d8p-04, -0x1.69b5794b69fb7p-47},
	{0.916015625, 0x1.1778a191bd684p+00, -0x1.674f089364p-04, -0x1.a79994c9d3302p-44},
	{0.919921875, 0x1.1648d50fc3201p+00, -0x1.55e10050ep-04, -0x1.c1d740c53c72ep-47},
	{0.923828125, 0x1.151b9a3fdd5c9p+00, -0x1.4485e03dbcp-04, -0x1.fad46e8d26ab7p-44},
	{0.927734375, 0x1.13f0e8d344724p+00, -0x1.333d7f8184p-04, 0x1.692b6a81b8848p-49},
	{0.931640625, 0x1.12c8b89edc0acp+00, -0x1.2207b5c784p-04, -0x1.49d8cfc10c7bfp-44},
	{0.935546875, 0x1.11a3019a74826p+00, -0x1.10e45b3cbp-04, 0x1.7cf69284a3465p-44},
	{0.939453125, 0x1.107fbbe01108p+00, -0x1.ffa6911ab8p-05, -0x1.3008c98381a8fp-45},
	{0.943359375, 0x1.0f5edfab325a2p+00, -0x1.dda8adc68p-05, 0x1.1b1ac64d9e42fp-45},
	{0.947265625, 0x1.0e40655826011p+00, -0x1.bbcebfc69p-05, 0x1.7bf868c317c2ap-46},
	{0.951171875, 0x1.0d24456359e3ap+00, -0x1.9a187b574p-05, 0x1.0c22e4ec4d90dp-44},
	{0.955078125, 0x1.0c0a7868b4171p+00, -0x1.788595a358p-05, 0x1.08b0d083b3a4cp-46},
	{0.958984375, 0x1.0af2f722eecb5p+00, -0x1.5715c4c04p-05, 0x1.8888ddfc47628p-44},
	{0.962890625, 0x1.09ddba6af836p+00, -0x1.35c8bfaa1p-05, -0x1.8357d5ef9eb35p-44},
	{0.966796875, 0x1.08cabb37565e2p+00, -0x1.149e3e4008p-05, 0x1.2b98a9a4168fdp-44},
	{0.970703125, 0x1.07b9f29b8eae2p+00, -0x1.e72bf2814p-06, 0x1.8d75149774d47p-45},
	{0.974609375, 0x1.06ab59c7912fbp+00, -0x1.a55f548c6p-06, 0x1.de0709f2d03c9p-45},
	{0.978515625, 0x1.059eea0727586p+00, -0x1.63d617869p-06, -0x1.7abf389596542p-47},
	{0.982421875, 0x1.04949cc1664c5p+00, -0x1.228fb1feap-06, -0x1.713e3284991fep-45},
	{1, 1, 0, 0},
	{1, 1, 0, 0},
	{1, 1, 0, 0},
	{1, 1, 0, 0},
	{1, 1, 0, 0},
	{1, 1, 0, 0},
	{1.01953125, 0x1.f6310aca0dbb5p-01, 0x1.3cea44347p-06, -0x1.6a2c432d6a40bp-44},
	{1.02734375, 0x1.f25f644230ab5p-01, 0x1.b9fc027bp-06, -0x1.b9a010ae6922ap-44},
	{1.03515625, 0x1.ee9c7f8458e02p-01, 0x1.1b0d98924p-05, -0x1.3401e9ae889bbp-44},
	{1.04296875, 0x1.eae807aba01ebp-01, 0x1.58a5bafc9p-05, -0x1.b2b739570ad39p-45},
	{1.05078125, 0x1.e741aa59750e4p-01, 0x1.95c830ec9p-05, -0x1.c148297c5feb8p-45},
	{1.05859375, 0x1.e3a9179dc1a73p-01, 0x1.d276b8adbp-05, 0x1.6a423c78a64bp-46},
	{1.06640625, 0x1.e01e01e01e01ep-01, 0x1.075983599p-04, -0x1.b8ecfe4b59987p-44},
	{1.07421875, 0x1.dca01dca01dcap-01, 0x1.253f62f0ap-04, 0x1.416f8fb69a701p-44},
	{1.08203125, 0x1.d92f2231e7f8ap-01, 0x1.42edcbea64p-04, 0x1.bc0eeea7c9acdp-46},
	{1.08984375, 0x1.d5cac807572b2p-01, 0x1.60658a9374p-04, 0x1.0c3b1dee9c4f8p-44},
	{1.09765625, 0x1.d272ca3fc5b1ap-01, 0x1.7da766d7bp-04, 0x1.2cc844480c89bp-44},
	{1.10546875, 0x1.cf26e5c44bfc6p-01, 0x1.9ab4246204p-04, -0x1.8a64826787061p-45},
	{1.11328125, 0x1.cbe6d9601cbe7p-01, 0x1.b78c82bb1p-04, -0x1.25ef7bc3987e7p-44},
	{1.12109375, 0x1.c8b265afb8a42p-01, 0x1.d4313d66ccp-04, -0x1.9454379135713p-45},
	{1.12890625, 0x1.c5894d10d4986p-01, 0x1.f0a30c0118p-04, -0x1.d599e83368e91p-44},
	{1.13671875, 0x1.c26b5392ea01cp-01, 0x1.0671512ca6p-03, -0x1.a47579cdc0a3dp-45},
	{1.14453125, 0x1.bf583ee868d8bp-01, 0x1.1478584674p-03, 0x1.563451027c75p-46},
	{1.15234375, 0x1.bc4fd65883e7bp-01, 0x1.2266f190a6p-03, -0x1.4d20ab840e7f6p-45},
	{1.16015625, 0x1.b951e2b18ff23p-01, 0x1.303d718e48p-03, -0x1.680b5ce3ecb05p-50},
	{1.16796875, 0x1.b65e2e3beee05p-01, 0x1.3dfc2b0eccp-03, 0x1.8a72a62b8c13fp-45},
	{1.17578125, 0x1.b37484ad806cep-01, 0x1.4ba36f39a6p-03, -0x1.4354bb3f219e5p-44},
	{1.18359375, 0x1.b094b31d922a4p-01, 0x1.59338d9982p-03, 0x1.0ba68b7555d4ap-48},
	{1.19140625, 0x1.adbe87f94905ep-01, 0x1.66acd4272ap-03, 0x1.aa1bdbfc6c785p-44},
	{1.19921875, 0x1.aaf1d2f87ebfdp-01, 0x1.740f8f5404p-03, -0x1.0b66c99018aa1p-44},
	{1.20703125, 0x1.a82e65130e159p-01, 0x1.815c0a1436p-03, -0x1.02a52f9201ce8p-44},
	{1.21484375, 0x1.a574107688a4ap-01, 0x1.8e928de886p-03, 0x1.a8154b13d72d5p-44},
	{1.22265625, 0x1.a2c2a87c51cap-01, 0x1.9bb362e7ep-03, -0x1.1f2a8a1ce0ffcp-45},
	{1.23046875, 0x1.a01a01a01a01ap-01, 0x1.a8becfc882p-03, 0x1.e3185cf21b9cfp-44},
	{1.23828125, 0x1.9d79f176b682dp-01, 0x1.b5b519e8fcp-03, -0x1.4b722ec011f31p-44},
	{1.24609375, 0x1.9ae24ea5510dap-01, 0x1.c2968558c2p-03, -0x1.cfd73dee38a4p-45},
	{1.25390625, 0x1.9852f0d8ec0ffp-01, 0x1.cf6354e09cp-03, 0x1.771239a07d55bp-45},
	{1.26171875, 0x1.95cbb0be377aep-01, 0x1.dc1bca0abep-03, 0x1.8fac1a628ccc6p-44},
	{1.26953125, 0x1.934c67f9b2ce6p-01, 0x1.e8c0252aa6p-03, -0x1.6805b80e8e6ffp-45},
	{1.27734375, 0x1.90d4f120190d5p-01, 0x1.f550a564b8p-03, -0x1.323e3a09202fep-45},
	{1.28515625, 0x1.8e6527af1373fp-01, 0x1.00e6c45ad5p-02, 0x1.cc68d52e01203p-50},
	{1.29296875, 0x1.8bfce8062ff3ap-01, 0x1.071b85fcd6p-02, -0x1.bcb8ba3e01a11p-44},
	{1.30078125, 0x1.899c0f601899cp-01, 0x1.0d46b579abp-02, 0x1.d2c81f640e1e6p-44},
	{1.30859375, 0x1.87427bcc092b9p-01, 0x1.136870293bp-02, -0x1.d3e8499d67123p-44},
	{1.31640625, 0x1.84f00c2780614p-01, 0x1.1980d2dd42p-02, 0x1.b7b3a7a361c9ap-45},
	{1.32421875, 0x1.82a4a0182a4ap-01, 0x1.1f8ff9e48ap-02, 0x1.7946c040cbe77p-45},
	{1.33203125, 0x1.8060180601806p-01, 0x1.2596010df7p-02, 0x1.8e7bc224ea3e3p-44},
	{1.33984375, 0x1.7e225515a4f1dp-01, 0x1.2b9303ab8ap-02, -0x1.6db12d6bfb0a5p-45},
	{1.34765625, 0x1.7beb3922e017cp-01, 0x1.31871c9544p-02, 0x1.84fab94cecfd9p-46},
	{1.35546875, 0x1.79baa6bb6398bp-01, 0x1.3772662bfep-02, -0x1.e9436ac53b023p-44},
	{1.36328125, 0x1.77908119ac60dp-01, 0x1.3d54fa5c1fp-02, 0x1.c3e1cd9a395e3p-44},
	{1.37109375, 0x1.756cac201756dp-01, 0x1.432ef2a04fp-02, -0x1.fb129931715adp-44},
}

// logTableBits is 0.6875, where the table begins.
const logTableBits = 0x3fe6 << 48

// log1pPair returns the logarithm of 1+x in two parts, for finite x > -1.
func log1pPair(x float64) (hi, lo float64) {
	if -0.29 < x && x < 0.41 {
		return logPair(x, 0, 0)
	}
	u, c := twoSum(1, x)
	m, k := reduceLog(u)
	return logPair(m-1, c/u, k)
}

// reduceLog returns m and k with x = m·2**k and √½ ≤ m < √2, near enough, for
// finite x > 0.
func reduceLog(x float64) (m float64, k int) {
	m, k = exponent(x)
	if m > math.Sqrt2 {
		m, k = m/2, k+1
	}
	return m, k
}

// logPair returns the logarithm of (1+f)·2**k·e**c, where √½ ≤ 1+f < √2 and c
// is small, as hi+lo.
func logPair(f, c float64, k int) (hi, lo float64) {
	// With s = f/(2+f), log(1+f) = 2·artanh(s) = 2s + s·r, where
	// r = 2s²/3 + 2s⁴/5 + …; and 2s = f - f²/2 + s·f²/2, so that what is added to
	// f is small. |s| ≤ 0.172; the terms left out are under 2**-59 of the sum.
	const (
		c1  = 2.0 / 3
		c2  = 2.0 / 5
		c3  = 2.0 / 7
		c4  = 2.0 / 9
		c5  = 2.0 / 11
		c6  = 2.0 / 13
		c7  = 2.0 / 15
		c8  = 2.0 / 17
		c9  = 2.0 / 19
		c10 = 2.0 / 21
	)
	s := f / (2 + f)
	z := float64(s * s)
	z2 := float64(z * z)
	z4 := float64(z2 * z2)
	a := (c1 + float64(c2*z)) + float64(z2*(c3+float64(c4*z)))
	b := (c5 + float64(c6*z)) + float64(z2*(c7+float64(c8*z)))
	r := float64(z * (a + float64(z4*(b+float64(z4*(c9+float64(c10*z)))))))
	h := float64(float64(f*f) / 2)
	t := float64(k)
	hi, lo = fastTwoSum(float64(t*ln2Hi), f)
	lo -= h - (float64(s*(h+r)) + (float64(t*ln2Lo) + c))
	return hi, lo
}
