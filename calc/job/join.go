package job

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"pierbook/calc/fault"
	"pierbook/calc/figure"
)

// joiner brings the files of a job together: the file itself, the shop's file
// laid under it, the yard's file.
type joiner struct {
	fsys   fs.FS
	faults *fault.List
}

// file loads a file with all that it names. chain holds the files on the way.
func (j *joiner) file(name string, origin figure.Origin, chain []string) *node {
	root := load(j.fsys, name, slices.Concat(tree().names, []string{"shop"}), origin, j.faults)
	if root == nil {
		return nil
	}
	chain = append(chain, name)
	j.yard(root, chain)
	return j.shop(root, chain)
}

// shop takes the key "shop" out and lays what it says under the rest: a file,
// or the values themselves.
func (j *joiner) shop(root *node, chain []string) *node {
	shop := root.take("shop")
	if shop == nil {
		return root
	}
	under := shop
	switch shop.shape {
	case scalarShape:
		if under = j.named("shop", shop, chain); under == nil {
			return root
		}
	case tableShape:
		under.originate(figure.Shop)
		j.yard(under, chain)
		under = j.shop(under, chain)
	default:
		j.wrong("shop", shop.at, "shop is "+shop.shape.String(), "write the name of the shop's file, such as shop.yaml")
		return root
	}
	return lay(root, under)
}

// yard puts the content of the file that the key "yard" names in its place.
func (j *joiner) yard(root *node, chain []string) {
	for i, p := range root.pairs {
		if p.key != "yard" || p.value.shape != scalarShape || isNone(p.value) {
			continue
		}
		name, ok := j.allowed("yard", p.value, chain)
		if !ok {
			return
		}
		if content := load(j.fsys, name, tree().next["yard"].names, figure.Shop, j.faults); content != nil {
			root.pairs[i].value = content
		} else {
			root.take("yard")
		}
		return
	}
}

func (j *joiner) named(key string, value *node, chain []string) *node {
	if isNone(value) {
		return nil
	}
	name, ok := j.allowed(key, value, chain)
	if !ok {
		return nil
	}
	return j.file(name, figure.Shop, chain)
}

// allowed returns the path of the file that value names, or reports why it may
// not be read: outside the folder, missing, no file, or one of those on the way
// here.
func (j *joiner) allowed(key string, value *node, chain []string) (string, bool) {
	name, inside := reach(j.fsys, value.at.File, strings.TrimSpace(value.text))
	if !inside {
		j.wrong(key, value.at, leadsOut(value.text), "name a file beside this one or below, such as shop.yaml"+orAlso)
		return "", false
	}
	if slices.Contains(chain, name) {
		j.wrong(key, value.at, fmt.Sprintf("the files go round in a circle: %s", strings.Join(append(slices.Clone(chain), name), " names ")), "take one of these names out")
		return "", false
	}
	info, err := fs.Stat(j.fsys, name)
	switch {
	case errors.Is(err, ErrNotPlain):
		j.wrong(key, value.at, fmt.Sprintf("%q is not a plain file but a pipe, a device or the like", value.text), "name a file")
		return "", false
	case err == nil && info.IsDir(), err != nil && !errors.Is(err, ErrTooLarge):
		j.wrong(key, value.at, fmt.Sprintf("there is no file %q beside this one", value.text), "look at the spelling; the path counts from the file that names it")
		return "", false
	}
	return name, true
}

func leadsOut(name string) string {
	return fmt.Sprintf("%q leads out of the folder of the job", name)
}

const orAlso = "; a folder elsewhere is read when the command names it: -also DIR"

// pages turns the folder that the key "pages" names into its path, or reports
// that it may not be read.
func (j *joiner) pages(r *reader) {
	at, given := r.given["pages"]
	if !given || r.bad["pages"] {
		return
	}
	folder, inside := reach(j.fsys, at.File, r.job.Pages)
	if !inside {
		r.wrong("pages", at, leadsOut(r.job.Pages), "name a folder beside this file or below, such as our-pages"+orAlso)
	}
	r.job.Pages = folder
}

func (j *joiner) wrong(path string, at fault.Place, wrong, remedy string) {
	j.faults.Add(fault.Fault{At: at, Path: path, Wrong: wrong, Remedy: remedy})
}

// lay lays over on under: table on table key by key, anything else replaces.
func lay(over, under *node) *node {
	if over.shape != tableShape || under.shape != tableShape {
		return over
	}
	index := make(map[string]int, len(over.pairs))
	for i, p := range over.pairs {
		index[p.key] = i
	}
	for _, p := range under.pairs {
		if i, both := index[p.key]; both {
			over.pairs[i].value = lay(over.pairs[i].value, p.value)
		} else {
			over.pairs = append(over.pairs, p)
		}
	}
	return over
}

// withoutNone drops every key whose value is the word none, after the files
// were laid on one another: the key then counts as not written.
func (n *node) withoutNone() {
	n.pairs = slices.DeleteFunc(n.pairs, func(p pair) bool { return isNone(p.value) })
	for _, p := range n.pairs {
		p.value.withoutNone()
	}
	for _, item := range n.items {
		item.withoutNone()
	}
}

func isNone(n *node) bool { return n.shape == scalarShape && !n.quoted && n.text == "none" }

// take removes a key and returns its value, or nil.
func (n *node) take(key string) *node {
	value := n.get(key)
	n.pairs = slices.DeleteFunc(n.pairs, func(p pair) bool { return p.key == key })
	return value
}

func (n *node) originate(origin figure.Origin) {
	n.origin = origin
	for _, p := range n.pairs {
		p.value.originate(origin)
	}
	for _, item := range n.items {
		item.originate(origin)
	}
}
