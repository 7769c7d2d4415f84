package spreadsheet

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"path/filepath"
	"strings"
	"unicode/utf8"
)

// readCSV reads a file as RFC 4180 has it, and as spreadsheets write it: with
// semicolons or tabs where the computer's language has a comma in numbers, with
// a mark of order at its start, with any line ends.
func readCSV(file string, data []byte) (*Sheet, []Problem) {
	s := &Sheet{Name: strings.TrimSuffix(file, filepath.Ext(file)), Title: file}
	one := func(at, message, mend string) (*Sheet, []Problem) { return nil, []Problem{{at, message, mend}} }
	if bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")) {
		return one(file, "it is saved as UTF-16", `save it as "CSV UTF-8", or as .xlsx`)
	}
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	if i := bytes.IndexByte(data, 0); i >= 0 {
		return one(file, "it is no CSV file: there are signs in it that no text has", "save the spreadsheet as CSV UTF-8, or as .xlsx")
	}
	if !utf8.Valid(data) {
		line, text := firstInvalid(data)
		return one(fmt.Sprintf("%s!line %d", file, line),
			fmt.Sprintf("the file is not saved as UTF-8: of %q a letter cannot be read", text), `save it as "CSV UTF-8", or as .xlsx`)
	}
	data = bytes.ReplaceAll(bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = separator(data)
	r.FieldsPerRecord = -1
	s.DecimalComma = r.Comma != ','
	tooMany := []Problem{{file, fmt.Sprintf("it has more than %d rows", mostRows), "leave out what is no horse, rider, lesson or piece of tack, and empty rows"}}
	for line := 1; ; {
		row, err := r.Read()
		var bad *csv.ParseError
		switch {
		case errors.As(err, &bad):
			return one(fmt.Sprintf("%s!line %d", file, bad.Line), "a quotation mark is not closed, or stands within a text",
				`put the whole cell between quotation marks, and write each one in it twice: "15"" seat"`)
		case err != nil: // the end
			return s, s.clean()
		}
		at, _ := r.FieldPos(0)
		if len(s.Rows)+at-line >= mostRows {
			return nil, tooMany
		}
		for ; line < at; line++ { // empty ones, which the reader skips
			s.Rows = append(s.Rows, nil)
		}
		line += 1 + strings.Count(strings.Join(row, ""), "\n")
		for i, text := range row {
			row[i] = unharmed(text)
		}
		s.Rows = append(s.Rows, row)
		if len(row) > mostColumns {
			return one(s.Row(len(s.Rows)-1), fmt.Sprintf("it has more than %d columns", mostColumns), "delete the columns that hold nothing")
		}
	}
}

// separator is what stands between the cells: the sign that the first lines have
// most of, outside of quotation marks.
func separator(data []byte) rune {
	best, most := ',', 0
	for _, sep := range []rune{',', ';', '\t'} {
		n, quoted, lines := 0, false, 0
		for _, r := range string(data[:min(len(data), 10_000)]) {
			switch {
			case r == '"':
				quoted = !quoted
			case r == '\n' && !quoted:
				lines++
			case r == sep && !quoted:
				n++
			}
			if lines > 0 && n > 0 && r == '\n' {
				break
			}
		}
		if n > most {
			best, most = sep, n
		}
	}
	return best
}

// firstInvalid is the first word that is not UTF-8, and its line.
func firstInvalid(data []byte) (line int, text string) {
	at := 0
	for at < len(data) {
		r, n := utf8.DecodeRune(data[at:])
		if r == utf8.RuneError && n == 1 {
			break
		}
		at += n
	}
	start := bytes.LastIndexAny(data[:at], ",;\t\n\" ") + 1
	end := len(data)
	if i := bytes.IndexAny(data[at:], ",;\t\n\r\" "); i >= 0 {
		end = at + i
	}
	return 1 + bytes.Count(data[:at], []byte("\n")), strings.ToValidUTF8(string(data[start:min(end, start+40)]), "\ufffd")
}

// formulaSigns begin what a spreadsheet would take for a formula; full-width ones
// count as the plain ones do in some languages.
const formulaSigns = "=+-@\t\r\n＝＋－＠"

// Harmless keeps a cell from being taken for a formula where a CSV file is opened.
func Harmless(text string) string {
	if r, _ := utf8.DecodeRuneInString(text); text != "" && strings.ContainsRune(formulaSigns, r) {
		return "'" + text
	}
	return text
}

// unharmed is a cell that Harmless wrote, as it was.
func unharmed(text string) string {
	if rest, ok := strings.CutPrefix(text, "'"); ok {
		if r, _ := utf8.DecodeRuneInString(rest); rest != "" && strings.ContainsRune(formulaSigns, r) {
			return rest
		}
	}
	return text
}
