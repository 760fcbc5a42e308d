// Package placement says where each piece goes.
package placement
