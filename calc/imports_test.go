package calc_test

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// workingOrder lists every package of the program in the order of the work: a
// package may import only those before it.
var workingOrder = []string{
	"calc/measure", "calc/bidi", "calc/fault", "calc/figure", "calc/trade",
	"calc/job",
	"calc/frame", "calc/levelling", "calc/terrain", "calc/heights", "calc/earthwork", "calc/fieldtest",
	"calc/check", "calc/loads", "calc/statics", "calc/sample", "calc/timber", "calc/support", "calc/strength", "calc/sizing",
	"calc/setout", "calc/cutting", "calc/cutting/verify", "calc/yard", "calc/order", "calc/savings", "calc/crew",
	"calc",
	"diagrams/kit", "diagrams", "content",
	"layouts", "layouts/spreadsheet", "layouts/blocks",
	"cmd/pierbook",
}

// forTests are packages that only tests use.
var forTests = []string{"calc/sample", "calc/fieldtest", "layouts/browser", "calc/cutting/verify"}

// worldly are the standard packages that reach the environment, the disk, the
// network or chance; only cmd may.
var worldly = []string{"os", "os/exec", "os/signal", "os/user", "path/filepath", "net", "net/http", "syscall", "math/rand", "math/rand/v2", "crypto/rand", "io/ioutil", "log"}

// listed is what go list says about a package.
type listed struct {
	ImportPath string
	Dir        string
	GoFiles    []string
	Imports    []string
}

// folder returns the place of a package in the project.
func (p listed) folder() string { return strings.TrimPrefix(p.ImportPath, "pierbook/") }

func packages(t *testing.T) []listed {
	t.Helper()
	command := exec.Command("go", "list", "-json=ImportPath,Dir,GoFiles,Imports", "./...")
	command.Dir = ".."
	out, err := command.StdoutPipe()
	require.NoError(t, err)
	command.Stderr = os.Stderr
	require.NoError(t, command.Start())
	var all []listed
	for decoder := json.NewDecoder(out); ; {
		var p listed
		err := decoder.Decode(&p)
		if errors.Is(err, io.EOF) {
			break
		}
		require.NoError(t, err)
		all = append(all, p)
	}
	require.NoError(t, command.Wait())
	require.NotEmpty(t, all)
	return all
}

func TestImportsPointOneWay(t *testing.T) {
	for _, p := range packages(t) {
		place := slices.Index(workingOrder, p.folder())
		if !assert.Truef(t, place >= 0 || slices.Contains(forTests, p.folder()), "%s has no place in the working order", p.folder()) {
			continue
		}
		for _, imported := range p.Imports {
			folder, ours := strings.CutPrefix(imported, "pierbook/")
			if !ours {
				continue
			}
			assert.Lessf(t, slices.Index(workingOrder, folder), place, "%s imports %s, which comes later", p.folder(), folder)
			assert.NotContainsf(t, forTests, folder, "%s imports %s, which is for tests", p.folder(), folder)
		}
	}
}

func TestOnlyTheCommandReachesTheWorld(t *testing.T) {
	for _, p := range packages(t) {
		if p.folder() == "cmd/pierbook" || slices.Contains(forTests, p.folder()) {
			continue
		}
		for _, imported := range p.Imports {
			assert.NotContainsf(t, worldly, imported, "%s imports %s", p.folder(), imported)
		}
		// Dates are reckoned with package time; its clock is not asked.
		for _, asking := range []string{"time.Now(", "time.Since(", "time.Until(", "time.Sleep(", "time.After("} {
			assert.Emptyf(t, filesHolding(t, p, asking), "files of %s that call %s)", p.folder(), asking)
		}
	}
}

// libraries are the outside libraries by the word for them in DEVELOPERS.md.
var libraries = map[string]string{
	"gopkg.in/yaml.v3":         "yaml.v3",
	"github.com/yuin/goldmark": "goldmark",
	"github.com/ajstarks/svgo": "svgo",
	"gonum.org/v1/gonum":       "gonum",
	"golang.org/x/sys":         "x/sys",
}

// TestLibrariesStayWhereDevelopersSays holds every outside import to the table
// of folders in DEVELOPERS.md, and to the file where the table names one.
func TestLibrariesStayWhereDevelopersSays(t *testing.T) {
	allowed := librariesByFolder(t)
	for _, p := range packages(t) {
		for _, imported := range p.Imports {
			word, outside := libraryOf(imported)
			if !outside {
				continue
			}
			cell := allowed[p.folder()]
			if p.folder() == "diagrams/kit" {
				cell = allowed["diagrams"] // which says: in the kit
			} else if strings.Contains(cell, "in the kit") {
				cell = ""
			}
			if !assert.Containsf(t, cell, word, "%s imports %s", p.folder(), imported) {
				continue
			}
			if _, only, named := strings.Cut(cell, "in `"); named {
				only, _, _ = strings.Cut(only, "`")
				assert.Equalf(t, []string{only}, filesHolding(t, p, `"`+imported+`"`), "files of %s that import %s", p.folder(), imported)
			}
		}
	}
}

// libraryOf returns the word for an outside import; an unknown one is its own word.
func libraryOf(imported string) (word string, outside bool) {
	first, _, _ := strings.Cut(imported, "/")
	if first == "pierbook" || !strings.Contains(first, ".") {
		return "", false
	}
	for module, word := range libraries {
		if imported == module || strings.HasPrefix(imported, module+"/") {
			return word, true
		}
	}
	return imported, true
}

// librariesByFolder reads the table of folders: the first cell is the folder,
// the third its outside libraries.
func librariesByFolder(t *testing.T) map[string]string {
	t.Helper()
	text, err := os.ReadFile("../DEVELOPERS.md")
	require.NoError(t, err)
	cells := map[string]string{}
	for line := range strings.Lines(string(text)) {
		row := strings.Split(strings.TrimSpace(line), "|")
		if len(row) == 5 && strings.HasPrefix(row[1], " `") {
			cells[strings.Trim(row[1], " `")] = strings.TrimSpace(row[3])
		}
	}
	require.Contains(t, cells, "calc/job")
	return cells
}

func filesHolding(t *testing.T, p listed, words string) []string {
	t.Helper()
	var found []string
	for _, file := range p.GoFiles {
		text, err := os.ReadFile(filepath.Join(p.Dir, file))
		require.NoError(t, err)
		if strings.Contains(string(text), words) {
			found = append(found, file)
		}
	}
	return found
}
