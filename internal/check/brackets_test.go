package check

import (
	"go/ast"
	"regexp"
	"strings"
	"testing"
)

// A doc link, [Name], is one only in a doc comment and outside of what is set apart there.
// Elsewhere, as beside a field, go doc prints the brackets.
func TestDocLinksStandWhereTheyWork(t *testing.T) {
	link := regexp.MustCompile(`(?:^|\W)(\[[A-Z]\w*(?:\.\w+)*\]|\[[a-z]+\.[A-Z]\w*(?:\.\w+)*\])`) // and not an index, as in PerFoot[Pick]
	m := load(t)
	seen := 0
	for _, p := range m.Shipped() {
		for _, f := range p.Files {
			docs := map[*ast.CommentGroup]bool{f.Doc: true}
			for _, d := range f.Decls {
				switch d := d.(type) {
				case *ast.FuncDecl:
					docs[d.Doc] = true
				case *ast.GenDecl:
					docs[d.Doc] = true
				}
			}
			for _, group := range f.Comments {
				for _, c := range group.List {
					seen++
					if docs[group] && !strings.HasPrefix(c.Text, "//\t") {
						continue
					}
					if l := link.FindStringSubmatch(c.Text); l != nil {
						t.Errorf("%s: %s is no link here: write it without brackets", m.At(c.Pos()), l[1])
					}
				}
			}
		}
	}
	if seen < 1000 {
		t.Errorf("%d lines of comments", seen)
	}
}
