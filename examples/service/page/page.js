// The page keeps no figures of its own: it sends the form as a job and shows the
// plan that comes back, from the service or from the same functions in here.

const form = document.getElementById("job");
const here = document.getElementById("here");
const status = document.getElementById("status");
const plan = document.getElementById("plan");
const result = document.getElementById("result");

// ---- asking

let served = false; // whether a service answers at this address
let local = null; // a promise of the functions in here, once they are asked for

// ask posts a job and resolves to {status, type, body}.
async function ask(target, body) {
	if (here.checked || !served) {
		local ??= load();
		return (await local)(target, body);
	}
	const answer = await fetch(target.slice(1), {
		method: "POST",
		headers: { "Content-Type": "application/json" },
		body,
	});
	return {
		status: answer.status,
		type: answer.headers.get("Content-Type"),
		body: await answer.text(),
	};
}

// load starts the program that answers without a service.
async function load() {
	await import("./wasm_exec.js");
	const go = new Go();
	const code = await (await fetch("fircone.wasm")).arrayBuffer();
	const { instance } = await WebAssembly.instantiate(code, go.importObject);
	go.run(instance);
	return globalThis.fircone;
}

const found = async (name) => {
	try {
		return (await fetch(name, { method: "HEAD" })).ok;
	} catch {
		return false;
	}
};

// ---- the form
//
// A list stands in an element with data-list, each item of it a fieldset made
// from the template of that name. A field says with data-name where its value
// goes, in the item or, outside of lists, in the job.

const lists = [...document.querySelectorAll("[data-list]")];
const alone = [...form.querySelectorAll("[data-name]")];
const within = (root) => [...root.querySelectorAll("[data-name]")];

function get(object, path) {
	return path.split("/").reduce((o, name) => o?.[name], object);
}

function set(object, path, value) {
	const names = path.split("/");
	const last = names.pop();
	let o = object;
	for (const name of names) o = o[name] ??= {};
	o[last] = value;
}

function put(field, value) {
	if (value === undefined) return;
	value = Array.isArray(value) ? value.join(" ") : String(value);
	if (field.tagName === "SELECT" && ![...field.options].some((o) => o.value === value)) {
		field.add(new Option(value, value)); // an arc in degrees, say
	}
	field.value = value;
}

// add puts an item into a list. Without one it is fresh: nobody has filled it in
// yet, so it is no part of the job and nothing in it is wrong.
function add(list, item) {
	const template = document.getElementById(list.dataset.list);
	const fieldset = template.content.firstElementChild.cloneNode(true);
	if (item) {
		for (const field of within(fieldset)) put(field, get(item, field.dataset.name));
	} else {
		fieldset.dataset.fresh = "";
	}
	fieldset.addEventListener("input", () => delete fieldset.dataset.fresh);
	fieldset.querySelector(".remove").addEventListener("click", () => {
		const next = fieldset.nextElementSibling ?? fieldset.previousElementSibling;
		fieldset.remove();
		number(list);
		(next?.querySelector(".remove") ?? adder(list)).focus();
		changed();
	});
	list.append(fieldset);
	number(list);
	return fieldset;
}

const adder = (list) => document.querySelector(`[data-add="${list.dataset.list}"]`);

// number gives each item of a list its number, and each of its controls a name
// that no other has.
function number(list) {
	[...list.children].forEach((fieldset, i) => {
		const legend = fieldset.querySelector("legend");
		legend.textContent = `${legend.dataset.of} ${i + 1}`;
		for (const field of within(fieldset)) {
			field.setAttribute("aria-label", `${field.closest("label").firstChild.textContent.trim()}, ${legend.textContent.toLowerCase()}`);
		}
		for (const summary of fieldset.querySelectorAll("summary")) {
			summary.setAttribute("aria-label", `${summary.textContent}, ${legend.textContent.toLowerCase()}`);
		}
		fieldset.querySelector(".remove").setAttribute("aria-label", `Remove ${legend.textContent.toLowerCase()}`);
	});
}

// filled returns the items of a list that are part of the job.
const filled = (list) => [...list.children].filter((fieldset) => !("fresh" in fieldset.dataset));

// read puts the values of fields into an object. An empty field is left out,
// unless it has to be there; what looks like a number is one where it may be.
function read(fields, into) {
	for (const field of fields) {
		const text = field.value.trim();
		if (text === "" && !field.required) continue;
		if ("words" in field.dataset) { // a list
			set(into, field.dataset.name, text.split(" "));
			continue;
		}
		const number = "number" in field.dataset && /^\d+(\.\d+)?$/.test(text);
		set(into, field.dataset.name, "flag" in field.dataset ? text === "true" : number ? Number(text) : text);
	}
	return into;
}

// job returns what the form says, as the service takes it.
function job() {
	const out = read(alone, {});
	for (const list of lists) {
		const items = filled(list).map((fieldset) => read(within(fieldset), {}));
		if (items.length) set(out, list.dataset.list, items);
	}
	return out;
}

// fieldAt returns the field that a pointer such as /trees/0/height leads to, the one
// around it, or the whole item where there is none.
function fieldAt(pointer) {
	const path = pointer.slice(1);
	const of = (fields, name) => {
		for (; name; name = name.replace(/\/?[^/]*$/, "")) {
			const field = fields.find((f) => f.dataset.name === name);
			if (field) return field;
		}
	};
	for (const list of lists) {
		if (!path.startsWith(list.dataset.list + "/")) continue;
		const [index, ...name] = path.slice(list.dataset.list.length + 1).split("/");
		const item = filled(list)[index];
		return item && (of(within(item), name.join("/")) ?? item);
	}
	return of(alone, path);
}

function fillForm(j) {
	for (const field of alone) put(field, get(j, field.dataset.name));
	for (const list of lists) for (const item of get(j, list.dataset.list) ?? []) add(list, item);
}

// ---- the result

// el makes an element; text is text, never markup.
function el(name, attributes, ...children) {
	const e = document.createElement(name);
	for (const [key, value] of Object.entries(attributes)) e.setAttribute(key, value);
	e.append(...children.filter((c) => c !== null && c !== undefined));
	return e;
}

// money writes an amount with its cents, digit by digit.
function money(text) {
	const [whole, part = ""] = String(text).split(".");
	return `${whole}.${part.padEnd(2, "0")}`;
}

// A measure as the service writes it: value and unit, of which computing leaves many digits.
const inch = { in: 1, ft: 12, yd: 36, mm: 1 / 25.4, cm: 1 / 2.54, m: 100 / 2.54 };
const pound = { oz: 1 / 16, lb: 1, g: 1 / 453.59237, kg: 1 / 0.45359237 };

// inMetric says whether the form speaks of meters, and so what answers are written in.
const inMetric = () => [...form.querySelectorAll("[data-list=trees] input, [data-list=mantels] input")].some((f) => /\d\s*(mm|cm|m)\s*$/.test(f.value));

// amount adds up a text such as "4 ft 6 1/2 in" by a table of units.
function amount(text, table) {
	let sum = 0;
	const one = /(?:(\d+) )?(\d+)\/(\d+) ([a-z]+)|(\d+(?:\.\d+)?) ([a-z]+)/g;
	const rest = text.replace(one, (all, whole, a, b, unit, n, units) => {
		sum += unit ? (Number(whole ?? 0) + a / b) * table[unit] : n * table[units];
		return "";
	});
	return rest.trim() === "" && sum > 0 && !Number.isNaN(sum) ? sum : null;
}

// fraction writes inches to the nearest quarter: 4 ft 6 1/4 in.
function fraction(inches) {
	const quarters = Math.round(inches * 4);
	const ft = Math.floor(quarters / 48), whole = Math.floor(quarters % 48 / 4);
	const part = ["", "1/4", "1/2", "3/4"][quarters % 4];
	const small = [whole || "", part].filter(Boolean).join(" ");
	return [ft ? `${ft} ft` : "", small ? `${small} in` : ""].filter(Boolean).join(" ") || "0 in";
}

// short writes a measure for reading, in the units of the form.
function short(text) {
	text = String(text);
	if (!/\.\d\d/.test(text) && /\b(mm|cm|m|kg)$/.test(text) === inMetric()) return text; // as somebody gave it, or as shops have it
	const inches = amount(text, inch);
	if (inches !== null) {
		if (!inMetric()) return fraction(inches);
		const cm = inches * 2.54;
		return cm < 100 ? `${Number(cm.toFixed(1))} cm` : `${Number((cm / 100).toFixed(2))} m`;
	}
	const pounds = amount(text, pound);
	if (pounds !== null) {
		if (inMetric()) return `${Number((pounds * 0.45359237).toFixed(2))} kg`;
		return pounds < 1 ? `${Number((pounds * 16).toFixed(0))} oz` : `${Number(pounds.toFixed(1))} lb`;
	}
	return text;
}

function clearProblems() {
	for (const note of form.querySelectorAll(".problem")) note.remove();
	for (const item of form.querySelectorAll("fieldset.bad")) {
		item.classList.remove("bad");
		item.removeAttribute("aria-describedby");
	}
	for (const field of form.querySelectorAll("[aria-invalid]")) {
		field.removeAttribute("aria-invalid");
		if (field.dataset.help) field.setAttribute("aria-describedby", field.dataset.help);
		else field.removeAttribute("aria-describedby");
	}
	result.classList.remove("stale");
}

// showProblem marks every value that the service refuses.
function showProblem(problem) {
	result.classList.add("stale");
	const elsewhere = [];
	let marked = 0;
	for (const e of problem.errors ?? [problem]) {
		const field = e.pointer && fieldAt(e.pointer);
		if (!field) {
			const about = [e.pointer?.slice(1).replaceAll("/", ", "), e.value, e.detail].filter(Boolean).join(": ");
			elsewhere.push(`${problem.title}${about ? ": " + about : ""}.${e.want ? ` Wanted: ${e.want}.` : ""}`);
			continue;
		}
		const id = `note-${++marked}`;
		const said = e.want ? `Wanted: ${e.want}` : e.detail ?? problem.title;
		if (field.tagName === "FIELDSET") {
			field.prepend(el("span", { class: "problem wide", id }, [e.value, said].filter(Boolean).join(": ")));
			field.classList.add("bad");
			field.setAttribute("aria-describedby", id);
		} else {
			field.closest("label").append(el("span", { class: "problem", id }, said));
			field.setAttribute("aria-invalid", "true");
			field.setAttribute("aria-describedby", [field.dataset.help, id].filter(Boolean).join(" "));
		}
		for (let d = field.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
	}
	if (marked === 1) elsewhere.unshift("One value cannot be used. It is marked in the form.");
	if (marked > 1) elsewhere.unshift(`${marked} values cannot be used. They are marked in the form.`);
	status.textContent = elsewhere.join(" ");
}

// needsOf lists what a room takes, and what it gets where that differs.
function needsOf(shares) {
	const list = el("dl", {});
	for (const need of shares) {
		const much = need.gets === need.quantity ? need.quantity : `planned ${need.quantity}, ${need.gets || "none"} to be had`;
		list.append(el("div", {}, el("dt", {}, need.item),
			el("dd", { class: "much" }, String(much)),
			el("dd", { class: "why" }, `${need.basis} (${need.source})`)));
	}
	return list;
}

// image makes a picture of a drawing that has come, with what it tells about itself.
function image(svg) {
	const told = ["title", "desc"].map((name) => {
		const [, text = ""] = new RegExp(`<${name}[^>]*>([^<]*)<`).exec(svg) ?? [];
		return new DOMParser().parseFromString(text, "text/html").documentElement.textContent;
	});
	const img = el("img", { alt: told.join(". ") });
	img.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
	return img;
}

// pictureOf asks for a drawing and puts it into a paragraph when it comes.
function pictureOf(of, number, body) {
	const p = el("p", { class: "picture" });
	ask(`/picture?of=${of}&number=${number}`, body).then((answer) => {
		if (answer.status !== 200) {
			p.className = "why";
			p.append(`No picture: ${JSON.parse(answer.body).detail}.`);
			return;
		}
		p.append(image(answer.body));
	}).catch(() => {}); // the list is worth showing without it
	return p;
}

// later makes a part that is asked for when somebody opens it.
function later(summary, fill) {
	const part = el("details", {}, el("summary", {}, summary));
	part.addEventListener("toggle", async () => part.append(...await fill()), { once: true });
	return part;
}

// stationsOf tells where to stand to hang a tree, and what is hung from there.
async function stationsOf(number, body) {
	const answer = await ask(`/places?number=${number}`, body);
	const got = JSON.parse(answer.body);
	if (answer.status !== 200) return [el("p", { class: "why" }, `${got.detail}.`)];
	const parts = got.cautions.map((c) => el("p", { class: "warning" }, c));
	for (const s of got.stations) {
		const stand = s.lift ? "out of reach of a ladder: a platform or a lift, and trained people" : s.ladder ? `on a ${s.ladder} stepladder` : "on the floor";
		const title = `Station ${s.number}: ${stand}, at ${s.clock} o’clock, from ${short(s.to)} down to ${short(s.from)}`;
		parts.push(el("h3", {}, title), el("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": title }, el("table", {},
			el("thead", {}, el("tr", {}, ...["No.", "What", "Hour", "Height", "Of the last"].map((t) => el("th", { scope: "col" }, t)))),
			el("tbody", {}, ...s.steps.map((p) => el("tr", {}, el("th", { scope: "row" }, String(p.number)),
				el("td", {}, [p.swatch, p.type, p.size && short(p.size)].filter(Boolean).join(", ")),
				el("td", {}, String(p.clock)), el("td", {}, short(p.height)),
				el("td", {}, sideways(p.left))))))));
	}
	return parts;
}

// sideways says how far to the left or the right a piece hangs of the last one.
function sideways(left) {
	if (/^-?0 /.test(left)) return "below";
	return left.startsWith("-") ? `${short(left.slice(1))} right` : `${short(left)} left`;
}

// printButton makes the button that prints the sheets to hang a tree or to dress a mantel from.
function printButton(of, number, body, name) {
	const print = el("button", { type: "button" }, "Print the crew sheets", el("span", { class: "away" }, `, ${name}`));
	print.addEventListener("click", () => printSheets(of, number, body).catch(() => { status.textContent = "No sheets: the server cannot be reached."; }));
	return print;
}

// printSheets prints those sheets, a page each.
async function printSheets(of, number, body) {
	const answer = await ask(`/crew?of=${of}&number=${number}&paper=${inMetric() ? "A4" : "letter"}`, body);
	if (answer.status !== 200) {
		status.textContent = `${JSON.parse(answer.body).detail}.`;
		return;
	}
	const sheets = JSON.parse(answer.body).sheets.map(image);
	await Promise.all(sheets.map((img) => img.decode()));
	document.getElementById("sheets").replaceChildren(...sheets);
	document.body.dataset.print = "sheets";
	window.print();
}
window.addEventListener("afterprint", () => {
	delete document.body.dataset.print;
	document.getElementById("sheets").replaceChildren();
});

function mantelNotes(m) {
	const notes = [];
	// The fire first, in one sentence; then the worst of the figures for trim, and the others for who wants them.
	const { fire } = m.clearances ?? {};
	const near = m.clearances?.violations ?? [];
	const tell = (v) => `${v.place}: ${v.measure} ${short(v.measured)}, ${v.atLeast ? "at least" : "at most"} ${short(v.allowed)} (${v.source})`;
	if (fire?.place || near.length) {
		const box = el("div", { class: "warning" }, el("b", {}, "No fire while this hangs"));
		if (fire?.place) box.append(el("p", {}, `${fire.place}: ${short(fire.measured)} from the fire, ${short(fire.allowed)} is the least (${fire.source}).`));
		if (near.length) box.append(el("p", {}, `Too near for trim, ${tell(near[0])}.`));
		if (near.length > 1) {
			box.append(el("details", {}, el("summary", {}, `${near.length - 1} more figures`), el("ul", {}, ...near.slice(1).map((v) => el("li", {}, tell(v))))));
		}
		notes.push(box);
	}
	const hooks = m.loads?.garland?.hooks ?? [];
	const weight = (text) => amount(text, pound) ?? 0;
	const over = hooks.filter((h) => weight(h.total) > weight(m.loads.garland.working));
	if (over.length) {
		notes.push(el("div", { class: "warning" }, el("b", {}, "Overloaded"), el("ul", {}, ...over.map((h) =>
			el("li", {}, `the hook at ${short(h.at.along)} along the shelf carries ${short(h.total)}, more than ${short(m.loads.garland.working)}`))),
		...m.loads.garland.cautions.filter((c) => c.code === "hook overload").map((c) => el("p", {}, `${c.text}.`))));
	}
	if (m.steps?.length) {
		notes.push(el("details", {}, el("summary", {}, "In which order"), el("ol", {}, ...m.steps.map((s) =>
			el("li", {}, s.do, s.caution ? el("span", { class: "why" }, ` Mind: ${s.caution.text}.`) : null)))));
	}
	return notes;
}

function colorsOf(c, box, pieces) {
	const chips = c.palette.split(",").map((text) => {
		const [name, rest] = text.split(/[:=]/);
		const chip = el("span", { class: "chip" });
		chip.style.background = /=(#\w+)/.exec(text)?.[1] ?? name.replaceAll(" ", "");
		return el("li", {}, chip, name + (text.includes(":") ? `, ${text.split(":").pop()}` : ""));
	});
	const close = [];
	for (const p of c.pairs) {
		const lost = Object.keys(p.difference).filter((view) => p.difference[view] < c.apart);
		if (lost.length) close.push(`${p.a.name} and ${p.b.name} look alike: ${lost.map((v) => views[v] ?? v).join(", ")}`);
	}
	const section = el("section", { class: "card" }, el("h2", {}, "Colors"), el("ul", { class: "chips" }, ...chips));
	if (close.length) section.append(el("div", { class: "warning" }, el("ul", {}, ...close.map((t) => el("li", {}, t)))));
	if (box) {
		section.append(el("p", {}, el("b", {}, "From last year's boxes")), el("ul", {}, ...box.matches.map((m, i) =>
			el("li", {}, m.fits ? `${pieces[i].name}: goes with ${m.swatch.name}` : `${pieces[i].name}: leave it in the box`))));
	}
	return section;
}

const views = {
	"daylight": "in daylight",
	"warm light": "under warm white lights",
	"protan": "to people who do not see red well",
	"deutan": "to people who do not see green well",
	"tritan": "to people who do not see blue well",
	"warm protan": "to people who do not see red well, under warm white lights",
	"warm deutan": "to people who do not see green well, under warm white lights",
	"warm tritan": "to people who do not see blue well, under warm white lights",
};

// missing says whether a share gets less than will do.
function missing(share) {
	if (typeof share.quantity === "number") return share.gets < (share.open?.min ?? share.quantity);
	return share.gets !== share.quantity;
}

function basketOf(list, budget) {
	const items = (purchase) => [...new Set(purchase.shares.map((s) => s.item))];
	const rows = [];
	for (const p of list.purchases) {
		for (const b of p.buys ?? []) {
			rows.push(el("tr", {}, el("td", {}, items(p).join(" and "), el("span", { class: "why" }, b.offer.name)),
				el("td", { class: "number" }, `${b.packs} × ${money(b.offer.price)}`),
				el("td", { class: "number" }, money(b.cost))));
		}
	}
	const section = el("section", { class: "card" }, el("h2", {}, "For the basket"), el("table", {},
		el("thead", {}, el("tr", {}, el("th", {}, "What"), el("th", { class: "number" }, "Packs"), el("th", { class: "number" }, "Cost"))),
		el("tbody", {}, ...rows),
		el("tfoot", {}, el("tr", {}, el("th", { colspan: 2 }, "Total"), el("td", { class: "number" }, money(list.total))))));
	const have = list.purchases.filter((p) => p.owned && !p.buys?.length).flatMap(items);
	if (have.length) section.append(el("p", {}, `Nothing to buy, there is enough: ${[...new Set(have)].join(", ")}.`));
	const short = list.purchases.flatMap((p) => p.shares).filter((s) => !s.spare && !s.replaced && missing(s));
	if (short.length) {
		section.append(el("p", {}, el("b", {}, "Not to be had")), el("ul", {}, ...short.map((s) =>
			el("li", {}, `${s.item}${s.room ? `, ${s.room}` : ""}: planned ${s.quantity}, ${s.gets || "none"} to be had`))));
	}
	if (Number(list.least ?? 0) > Number(budget ?? Infinity)) {
		section.append(el("p", {}, `It takes ${money(list.least)} to have enough of everything.`));
	}
	const left = list.purchases.flatMap((p) => p.left ?? []);
	if (left.length) section.append(el("p", {}, `Back into the box: ${left.map((l) => `${l.quantity} ${l.item}`).join(", ")}.`));
	return section;
}

function treeNotes(t) {
	const notes = [];
	if (t.fit?.verdict === "does not fit") {
		notes.push(el("div", { class: "warning" }, el("b", {}, "Too tall"), el("p", {}, `The tallest tree for this room is ${short(t.fit.tallest)}.`)));
	}
	if (t.load?.caution.code === "overload") {
		notes.push(el("div", { class: "warning" }, el("b", {}, "Too much for one circuit"),
			el("p", {}, `These lights take ${t.load.power}; a circuit that is on for hours may carry ${t.load.limit}.`)));
	}
	const reach = t.ladder?.lift ? "no stepladder reaches the top: a platform or a lift, and trained people" :
		/^[1-9]/.test(t.ladder?.size ?? "") ? `a stepladder of ${t.ladder.size}` : "within reach from the floor";
	const bare = t.space?.noTopper || (t.fit && !/^[1-9]/.test(t.fit.topper));
	if (t.fit?.verdict !== "does not fit") notes.push(el("p", {}, el("b", {}, bare ? "To reach the tip: " : "To put on the topper: "), `${reach}.`));
	return notes;
}

function showPlan(p, body) {
	const asked = JSON.parse(body);
	const sections = [];
	const card = (title, ...parts) => sections.push(el("section", { class: "card" }, el("h2", {}, title), ...parts));
	if (p.basket) sections.push(basketOf(p.basket, asked.shop?.budget));
	p.trees.forEach((t, i) => {
		const number = i + 1, name = [t.room, `tree, ${t.height}`].filter(Boolean).join(": ");
		card(name, needsOf(t.shares), ...treeNotes(t), pictureOf("client", number, body),
			later(`${name}: working drawing`, () => [pictureOf("tree", number, body)]),
			later(`${name}: where to stand, and what hangs from there`, () => stationsOf(number, body)), printButton("tree", number, body, name));
		sections.at(-1).classList.add("room");
	});
	p.mantels.forEach((m, i) => {
		const name = [m.room, m.run ? "garland" : `mantel, ${m.length}`].filter(Boolean).join(": ");
		card(name, needsOf(m.shares), ...mantelNotes(m), ...m.run ? [] : [pictureOf("mantel", i + 1, body), printButton("mantel", i + 1, body, name)]);
		sections.at(-1).classList.add("room");
	});
	if (p.colors) sections.push(colorsOf(p.colors, p.box, asked.box));
	if (p.cautions?.length) {
		card("Take care", el("ul", {}, ...p.cautions.map((c) => el("li", {}, c.room ? `${c.room}: ${c.text}` : c.text, c.source ? el("span", { class: "why" }, c.source) : null))));
	}
	for (const img of plan.querySelectorAll("img")) URL.revokeObjectURL(img.src);
	plan.replaceChildren(...sections);
}

// ---- putting them together

let turn = 0;

async function work() {
	const mine = ++turn;
	const body = JSON.stringify(job());
	result.setAttribute("aria-busy", "true");
	let answer;
	try {
		answer = await ask("/plan", body);
	} catch {
		if (mine !== turn) return;
		clearProblems();
		result.setAttribute("aria-busy", "false");
		result.classList.add("stale");
		status.textContent = "No answer: the server cannot be reached, and this page has no way to compute by itself.";
		return;
	}
	if (mine !== turn) return; // the form has changed since
	clearProblems();
	if (answer.status === 200) {
		showPlan(JSON.parse(answer.body), body);
		status.textContent = "";
	} else if (answer.type === "application/problem+json") {
		showProblem(JSON.parse(answer.body));
	} else {
		showProblem({ title: `Answer ${answer.status}` });
	}
	result.setAttribute("aria-busy", "false");
}

let waiting;

function changed() {
	for (const count of document.querySelectorAll("[data-count]")) {
		const list = lists.find((l) => l.dataset.list === count.dataset.count);
		count.textContent = list.children.length ? `(${list.children.length})` : "";
	}
	clearTimeout(waiting);
	waiting = setTimeout(work, 250);
}

form.addEventListener("input", changed);
form.addEventListener("submit", (event) => {
	event.preventDefault();
	for (const fieldset of form.querySelectorAll("[data-fresh]")) delete fieldset.dataset.fresh;
	clearTimeout(waiting);
	work();
});
for (const button of document.querySelectorAll("[data-add]")) {
	button.addEventListener("click", () => {
		add(lists.find((l) => l.dataset.list === button.dataset.add)).querySelector("input").focus();
	});
}

served = await found("healthz");
here.closest("label").hidden = !(served && (await found("fircone.wasm")));
document.getElementById("api").hidden = !served;
fillForm(await (await fetch("example.json")).json());
changed();
