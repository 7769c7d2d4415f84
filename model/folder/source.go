package folder

import (
	"bytes"
	"strings"
	"sync"
	"unicode/utf8"
)

// source is the text of one file, which tells places in it.
type source struct {
	file  string
	data  []byte
	once  sync.Once
	lines []int // where each line starts, counted when somebody asks
}

func newSource(file string, data []byte) *source {
	return &source{file: file, data: data}
}

func (s *source) count() {
	s.once.Do(func() {
		s.lines = []int{0}
		for i, c := range s.data {
			if c == '\n' {
				s.lines = append(s.lines, i+1)
			}
		}
	})
}

// extent is a span of which line and column are counted when they are asked for.
type extent struct {
	src        *source
	start, end int
}

func (s *source) extent(start, end int) extent { return extent{s, start, end} }

func (e extent) span() Span {
	if e.src == nil {
		return Span{}
	}
	return e.src.span(e.start, e.end)
}

func (s *source) span(start, end int) Span {
	s.count()
	lo, hi := 0, len(s.lines)
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; s.lines[mid] <= start {
			lo = mid
		} else {
			hi = mid
		}
	}
	from := s.lines[lo]
	if lo == 0 && bytes.HasPrefix(s.data, []byte("\xef\xbb\xbf")) && start >= 3 {
		from = 3
	}
	return Span{File: s.file, Start: start, End: end, Line: lo + 1, Col: 1 + utf8.RuneCount(s.data[from:start])}
}

// line is the text of a line, from 1.
func (s *source) line(n int) string {
	s.count()
	from, to := s.lines[n-1], len(s.data)
	if n < len(s.lines) {
		to = s.lines[n]
	}
	text := strings.TrimPrefix(strings.TrimRight(string(s.data[from:to]), "\r\n"), "\ufeff")
	return strings.ToValidUTF8(text, "\ufffd")
}

func (s *source) trouble(at Span, message, mend string) Trouble {
	return Trouble{Mistake: true, Span: at, Message: message, Mend: mend, Line: s.line(at.Line)}
}

// skip goes over blanks, line ends, commas and comments.
func (s *source) skip(at int) int {
	for at < len(s.data) {
		switch s.data[at] {
		case ' ', '\t', '\r', '\n', ',':
			at++
		case '#':
			for at < len(s.data) && s.data[at] != '\n' {
				at++
			}
		default:
			return at
		}
	}
	return at - 1
}

// afterEquals is where the value starts whose key ends at a place.
func (s *source) afterEquals(at int) int {
	for s.data[at] != '=' {
		at++
	}
	for at++; s.data[at] == ' ' || s.data[at] == '\t'; at++ {
	}
	return at
}

// around is from the first bracket of a header to its last, given where its
// keys are.
func (s *source) around(start, end int) (int, int) {
	for start > 0 && strings.IndexByte(" \t[", s.data[start-1]) >= 0 {
		start--
	}
	for s.data[start] != '[' {
		start++
	}
	for end < len(s.data) && strings.IndexByte(" \t]", s.data[end]) >= 0 {
		end++
	}
	for s.data[end-1] != ']' {
		end--
	}
	return start, end
}

// nextHeader is the first line from a place on, after the line of not, that
// begins with a bracket; -1 is none.
func (s *source) nextHeader(from, not int) int {
	first := s.span(from, from).Line
	for i := first - 1; i < len(s.lines); i++ {
		rest := bytes.TrimLeft(s.data[s.lines[i]:], " \t")
		if at := len(s.data) - len(rest); bytes.HasPrefix(rest, []byte("[")) && at > not && at >= from {
			return at
		}
	}
	return -1
}
