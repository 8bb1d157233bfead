package layouts_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// paper names the files that may hold sizes: those of the sheet itself.
var paper = map[string]string{
	"diagrams/kit/interval.go": "round steps between contours, a kind of scale",
	"diagrams/checkbars.go":    "bars to be measured on the print",
	"layouts/binder.go":        "margins of the paper",
}

var (
	sizes     = []string{"Inch", "Foot", "Yard", "Metre", "Millimetre", "Sixteenth", "SixtyFourth", "Pound", "PoundForce", "PoundPerSquareFt", "Kilopascal", "CubicFoot", "CubicYard"}
	sizeWords = regexp.MustCompile(`\b\d+([ /.]\d+)*[ \x{a0}]?(in|ft|mm|m|lb|kg|psf|kPa|inch|inches|feet|pounds)\b`)
)

// A length or a mass in a drawing or a table is a fact that somebody changes
// elsewhere: it comes from the trade or from the plan.
func TestNoSizesAreTypedIntoLayoutsAndDrawings(t *testing.T) {
	seen := 0
	for _, top := range []string{"layouts", "diagrams"} {
		require.NoError(t, filepath.WalkDir("../"+top, func(path string, entry fs.DirEntry, err error) error {
			file := filepath.ToSlash(strings.TrimPrefix(path, "../"))
			if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || paper[file] != "" || strings.HasPrefix(file, "layouts/browser/") {
				return err
			}
			seen++
			checkSizes(t, path)
			return nil
		}))
	}
	assert.Greater(t, seen, 50)
}

func checkSizes(t *testing.T, path string) {
	t.Helper()
	files := token.NewFileSet()
	tree, err := parser.ParseFile(files, path, nil, 0)
	require.NoError(t, err)
	ast.Inspect(tree, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SelectorExpr:
			if of, ok := n.X.(*ast.Ident); ok && of.Name == "measure" && slices.Contains(sizes, n.Sel.Name) {
				t.Errorf("%s: measure.%s", files.Position(n.Pos()), n.Sel.Name)
			}
		case *ast.BasicLit:
			if n.Kind != token.STRING {
				return true
			}
			if text, err := strconv.Unquote(n.Value); err == nil && sizeWords.MatchString(text) {
				t.Errorf("%s: %s", files.Position(n.Pos()), n.Value)
			}
		}
		return true
	})
}
