package desk

import (
	"encoding/json"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

const (
	mostSheet = 20 << 20 // bytes of a spreadsheet that is sent
	mostForm  = 1 << 20  // bytes of any other form
)

// importView is what became of a spreadsheet, or would.
type importView struct {
	Asked, Dry     bool
	Added, Changed []importEntry
	Listed         []importEntry
	Same           int
	ReadAs         []string `json:"read_as"`
	NotRead        []string `json:"not_read"`
	Mistakes       []struct {
		At, Head, Message, Mend string
		Also                    []string
	}
	Wrong string
}

type importEntry struct{ Table, Name, Why string }

func showImport(v *visit) error { return v.show("import", "From a spreadsheet", &importView{}) }

// importSheet takes a spreadsheet in, or says what that would do.
func importSheet(v *visit) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	sent, head, err := v.r.FormFile("sheet")
	if err != nil {
		return no("choose a spreadsheet first, of at most %d MB", mostSheet>>20)
	}
	defer sent.Close()
	dir, err := os.MkdirTemp("", "tackwright")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	end := strings.ToLower(filepath.Ext(head.Filename))
	if !slices.Contains([]string{".xlsx", ".csv"}, end) {
		return no("a spreadsheet ends in .xlsx or .csv")
	}
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:<>"|?*`, r) || r < ' ' {
			return '-'
		}
		return r
	}, filepath.Base(head.Filename)) // of a CSV file it tells what is in it
	file := filepath.Join(dir, name)
	to, err := os.Create(file)
	if err != nil {
		return err
	}
	if _, err = io.Copy(to, sent); err == nil {
		err = to.Close()
	}
	if err != nil {
		return err
	}
	x := &importView{Asked: true, Dry: v.r.PostFormValue("do") != "take"}
	args := []string{"import", "--json", "--by", by.Name}
	if x.Dry {
		args = append(args, "--dry-run")
	}
	a := v.Command(v.r.Context(), append(args, "--", v.Dir, file))
	v.readings.forget()
	if json.Unmarshal([]byte(a.Out), x) != nil {
		x.Wrong = strings.ReplaceAll(a.Complaint(), dir+string(filepath.Separator), "")
	}
	status := http.StatusOK
	if a.Status != 0 {
		status = http.StatusConflict
	}
	return v.page(status, "import", "From a spreadsheet", x)
}

// giveTemplate gives the template for a spreadsheet, filled with what there is.
func giveTemplate(v *visit) error {
	dir, err := os.MkdirTemp("", "tackwright")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "centre.xlsx")
	if a := v.Command(v.r.Context(), []string{"import", "--template", file, "--", v.Dir}); a.Status != 0 {
		return no("%s", a.Complaint())
	}
	v.w.Header().Set("Content-Disposition", `attachment; filename="centre.xlsx"`)
	http.ServeFile(v.w, v.r, file)
	return nil
}
