package folder

import "bytes"

// block is the part of a file that a table under a header takes: the header, its
// keys, the tables within it, and the remarks that touch it.
func (n *node) block() (start, end int) {
	data := n.src.data
	start, end = n.start, n.last()
	for start = lineStart(data, start); start > 0; {
		above := lineStart(data, start-1)
		if !bytes.HasPrefix(bytes.TrimLeft(data[above:start], " \t"), []byte("#")) {
			break
		}
		start = above
	}
	end = lineEnd(data, end)
	below := end
	for below < len(data) && bytes.HasPrefix(bytes.TrimLeft(data[below:], " \t"), []byte("#")) {
		below = lineEnd(data, below)
	}
	if !bytes.HasPrefix(bytes.TrimLeft(data[below:], " \t"), []byte("[")) { // else they are the next table's
		end = below
	}
	if end < len(data) && len(bytes.TrimSpace(data[end:lineEnd(data, end)])) == 0 {
		end = lineEnd(data, end) // one of the blank lines around it
	}
	return start, end
}

// last is where the last part of a table ends that is written under headers.
func (n *node) last() int {
	end := n.end
	for _, p := range n.pairs {
		end = max(end, p.val.last())
	}
	for _, x := range n.items {
		end = max(end, x.last())
	}
	return end
}

// listed is the part of a file that an item of a list takes, with its comma; with
// its line, and a remark behind it, where it has one of its own.
func (n *node) listed() (start, end int) {
	data := n.src.data
	start, end = n.start, n.end
	blanks := func() {
		for end < len(data) && (data[end] == ' ' || data[end] == '\t') {
			end++
		}
	}
	blanks()
	if end < len(data) && data[end] == ',' {
		end++
		blanks()
	}
	from := lineStart(data, start)
	rest := bytes.TrimSpace(data[end:lineEnd(data, end)])
	if len(bytes.TrimSpace(data[from:start])) == 0 && (len(rest) == 0 || rest[0] == '#') {
		return from, lineEnd(data, end)
	}
	return start, end
}

// lineStart is where the line of a place starts.
func lineStart(data []byte, at int) int { return bytes.LastIndexByte(data[:at], '\n') + 1 }

// lineEnd is where the line of a place ends, its end counted in.
func lineEnd(data []byte, at int) int {
	if i := bytes.IndexByte(data[at:], '\n'); i >= 0 {
		return at + i + 1
	}
	return len(data)
}
