package folder

import (
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// inline is a value as TOML has it on one line, without remarks. Two values that
// say the same in the same words are inline the same.
func (n *node) inline() string {
	var parts []string
	switch n.kind {
	case unstable.String:
		return quote(n.text)
	case unstable.Array:
		for _, x := range n.items {
			parts = append(parts, x.inline())
		}
		return "[" + strings.Join(parts, ", ") + "]"
	case unstable.InlineTable:
		for _, p := range n.pairs {
			parts = append(parts, keyText(p.key)+" = "+p.val.inline())
		}
		if len(parts) == 0 {
			return "{}"
		}
		return "{ " + strings.Join(parts, ", ") + " }"
	}
	return n.text
}

// keyText is a key as TOML has it.
func keyText(key string) string {
	if key == "" || strings.Trim(key, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789_-") != "" {
		return quote(key)
	}
	return key
}

// cell is a value as a cell of a spreadsheet has it: plain, or a list of plain
// ones. What is more than that stands there as TOML has it.
func (n *node) cell() string {
	if n.kind != unstable.Array {
		return n.plainCell()
	}
	var items []string
	sep := ", "
	for _, x := range n.items {
		item := x.plainCell()
		if x.kind == unstable.Array || x.kind == unstable.InlineTable || strings.ContainsAny(item, ";\n") {
			return n.inline()
		}
		if strings.Contains(item, ",") {
			sep = "; "
		}
		items = append(items, item)
	}
	if len(items) == 1 && sep == "; " {
		return items[0] + ";"
	}
	return strings.Join(items, sep)
}

func (n *node) plainCell() string {
	switch n.kind {
	case unstable.Bool:
		if n.text == "true" {
			return "yes"
		}
		return "no"
	case unstable.InlineTable:
		return n.inline()
	}
	return n.text
}
