package job

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"pierbook/calc/bidi"
	"pierbook/calc/fault"
	"pierbook/calc/figure"
	"pierbook/calc/measure"
)

// Read reads the job file name with the shop's and the yard's files that it
// names, all inside fsys, and fills in the defaults. When anything is wrong it
// returns all faults and no job.
func Read(fsys fs.FS, name string) (*Job, fault.List) {
	var faults fault.List
	files := joiner{fsys: fsys, faults: &faults}
	root := files.file(name, figure.Given, nil)
	if root == nil {
		return nil, faults
	}
	none := root.get("building") != nil && isNone(root.get("building"))
	root.withoutNone()
	r := &reader{faults: &faults, job: &Job{NoBuilding: none}, given: make(map[string]fault.Place), bad: make(map[string]bool), entries: make(map[string][]Entry), tables: map[string]fault.Place{"": {File: name}}, names: make(map[string]fault.Place)}
	r.table("", nil, root, tree(), 0)
	r.buildingOfUse()
	r.defaults()
	r.finish()
	files.pages(r)
	r.job.check(r)
	r.publish()
	if names := r.job.pierNames(); names != nil {
		if unknown := r.job.CheckPiers(names); !unknown.Empty() {
			faults.Join(unknown)
			faults.Join(r.job.exchangedSides())
		}
	}
	if !faults.Empty() {
		return nil, faults
	}
	return r.job, faults
}

// reader walks the nodes of the files along the table of keys.
type reader struct {
	faults  *fault.List
	job     *Job
	given   map[string]fault.Place // keys that a file holds, also those with a wrong value
	bad     map[string]bool        // those with a wrong value
	tables  map[string]fault.Place // tables that a file holds, by the place of their key
	names   map[string]fault.Place // keys that a file is free to name
	entries map[string][]Entry     // by the path in the table of keys, stars included
	doubts  []Doubt
}

func (r *reader) wrong(path string, at fault.Place, wrong, remedy string) {
	r.faults.Add(fault.Fault{At: at, Path: path, Wrong: wrong, Remedy: remedy})
}

// slip reports an error that carries its own remedy.
func (r *reader) slip(path string, at fault.Place, err error) {
	var parse *measure.ParseError
	if !errors.As(err, &parse) {
		r.wrong(path, at, err.Error(), "")
		return
	}
	r.wrong(path, at, parse.Wrong, parse.Remedy)
}

// optional are the tables that may be left out with all their keys; open makes
// the part of the job that they fill.
var optional = map[string]func(*Job){
	"building":                   func(j *Job) { j.Building = &Building{} },
	"platform.door":              func(j *Job) { j.Platform.Door = &Door{} },
	"ground.instrument.pegs":     func(j *Job) { j.Ground.Instrument.Pegs = &PegReadings{} },
	"ground.instrument.wall":     func(j *Job) { j.Ground.Instrument.Wall = &WallMarks{} },
	"timber.values":              func(j *Job) { j.Timber.Values = &DesignValues{} },
	"frame.joists.timber":        func(j *Job) { j.Frame.Joists.Timber = &Timber{} },
	"frame.rims.timber":          func(j *Job) { j.Frame.Rims.Timber = &Timber{} },
	"frame.beams.timber":         func(j *Job) { j.Frame.Beams.Timber = &Timber{} },
	"frame.posts.timber":         func(j *Job) { j.Frame.Posts.Timber = &Timber{} },
	"frame.joists.timber.values": func(j *Job) { j.Frame.Joists.Timber.Values = &DesignValues{} },
	"frame.rims.timber.values":   func(j *Job) { j.Frame.Rims.Timber.Values = &DesignValues{} },
	"frame.beams.timber.values":  func(j *Job) { j.Frame.Beams.Timber.Values = &DesignValues{} },
	"frame.posts.timber.values":  func(j *Job) { j.Frame.Posts.Timber.Values = &DesignValues{} },
}

// table walks one table of keys. bare is the unit of lengths without one.
func (r *reader) table(path string, names []string, n *node, b *branch, bare measure.Length) {
	if open := optional[path]; open != nil {
		open(r.job)
	}
	if b.next["unit"] != nil {
		if unit := n.get("unit"); unit != nil && unit.shape == scalarShape {
			bare = readingUnits[unit.text]
		}
	}
	for _, p := range n.pairs {
		next, childNames := b.next[p.key], names
		child := join(path, p.key)
		if next == nil && b.star != nil {
			name, ok := r.starName(path, p, b.kind)
			if !ok {
				continue
			}
			next, childNames, child = b.star, append(slices.Clone(names), name), join(path, name)
			r.names[child] = p.at
		}
		if next == nil {
			remedy := b.suggestion(p.key)
			if path == "ground" && p.key == "fill" {
				remedy = "low ground is filled with nothing but tamped stone in the holes, up to stone.most; filling with soil is for an engineer, and is said with site.fill: yes (IRC 2021 R401.2, R401.4)"
			}
			r.wrong(path, p.at, fmt.Sprintf("%q is not a key here", p.key), remedy)
			continue
		}
		r.child(child, childNames, p, next, bare)
	}
	r.lacking(path, n, b)
}

func (b *branch) suggestion(key string) string {
	keys := "he keys here are: " + strings.Join(b.names, ", ")
	if near := fault.Nearest(strings.ToLower(key), b.names); near != "" {
		return "did you mean " + near + "? T" + keys
	}
	return "t" + keys
}

// child reads the value of one key: another table, or what the row of the key
// asks for.
func (r *reader) child(path string, names []string, p pair, b *branch, bare measure.Length) {
	if b.key == nil || p.value.shape == tableShape && b.next != nil {
		if p.value.shape == scalarShape && b.next["depth"] != nil && b.next["found"] != nil {
			p.value = r.holeInShort(path, p.value)
		}
		if p.value.shape != tableShape {
			r.wrong(path, p.value.at, "here stands "+p.value.shape.String(), "write keys under it: "+strings.Join(b.names, ", ")+b.anyName())
			r.bad[path] = true
			return
		}
		if _, twice := r.tables[path]; twice {
			r.wrong(path, p.at, fmt.Sprintf("%q stands twice", p.key), "keep one of the two")
			return
		}
		r.tables[path] = p.at
		r.table(path, names, p.value, b, bare)
		return
	}
	if _, twice := r.given[path]; twice {
		r.wrong(path, p.at, fmt.Sprintf("%q stands twice, written in two ways", p.key), "keep one of the two")
		return
	}
	r.given[path] = p.value.at
	v := value{names: names, bare: bare, at: p.value.at}
	if !r.value(path, b.key, p.value, &v) {
		r.bad[path] = true
		return
	}
	b.key.put(r.job, v)
	r.entries[b.key.Path] = append(r.entries[b.key.Path], Entry{Path: path, Text: bidi.Isolated(p.value.String()), Value: v.quantity(b.key), Means: b.key.Means, Origin: originOf(path, p.value.origin), At: p.value.at})
}

// anyName tells what a star stands for.
func (b *branch) anyName() string {
	if b.star == nil {
		return ""
	}
	return strings.TrimPrefix(", the name of a "+b.kind, map[bool]string{true: ", "}[len(b.names) == 0])
}

// value reads n as key wants it.
func (r *reader) value(path string, key *Key, n *node, v *value) bool {
	readsNodes := n.shape != scalarShape && (n.shape == key.Kind.shape || key.Kind.Name == Stock.Name || key.Kind.Name == Goods.Name)
	switch {
	case readsNodes:
		return key.Kind.nodes(r, path, n, v)
	case n.shape != scalarShape:
		r.wrong(path, n.at, "here stands "+n.shape.String(), "write "+key.Kind.Name+", such as "+key.example())
		return false
	}
	if err := key.readScalar(v, strings.TrimSpace(n.text)); err != nil {
		r.slip(path, n.at, err)
		return false
	}
	text := strings.TrimSpace(n.text)
	if err := key.refuse(*v, text); err != nil {
		r.slip(path, n.at, err)
		return false
	}
	if saying := key.doubt(path, text, *v); saying != "" {
		r.doubts = append(r.doubts, Doubt{Path: path, At: n.at, Saying: saying})
	}
	return true
}

func (k *Key) example() string {
	if k.Kind.Example == "" && len(k.Choices) > 0 {
		return k.Choices[0]
	}
	return k.Kind.Example
}

// originOf says that what was read on site was measured, whichever file holds it.
func originOf(path string, origin figure.Origin) figure.Origin {
	for _, prefix := range []string{"measured.", "ground.sights", "ground.probes.", "ground.instrument.pegs.", "ground.instrument.wall.", "ground.instrument.ends"} {
		if strings.HasPrefix(path, prefix) {
			return figure.Measured
		}
	}
	return origin
}

// lacking reports required keys under a starred table: a probe without its depth.
func (r *reader) lacking(path string, n *node, b *branch) {
	for _, name := range b.names {
		key := b.next[name].key
		if key != nil && key.Required && len(key.Stars) > 0 && n.get(name) == nil {
			r.wrong(join(path, name), r.tables[path], "is missing", key.Missing)
		}
	}
}
