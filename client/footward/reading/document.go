package reading

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"

	"buf.build/go/protoyaml"
	"go.yaml.in/yaml/v3"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// listKey is the field that makes a document a list of checks.
const listKey = "items"

// items returns the checks of a document, never none.
func (d document) items() []Item {
	root, err := d.parse()
	if err != nil {
		return []Item{{Line: d.first + 1, Faults: []Fault{d.layout(err)}}}
	}
	start := Item{Line: d.first + root.Line}
	if start.Faults = d.forbidden(root, 0); start.Faults != nil {
		return []Item{start}
	}
	if list := listOf(root); list != nil {
		return d.list(start, root, list)
	}
	check := &footwardv1.CheckItem{}
	if start.Faults = d.nested(root, checkItem, d.faults(d.fill(check))); start.Faults == nil {
		start.Check = check
	} else if other := d.misplaced(root, checkItem); other != nil {
		start.Faults = other
	}
	return []Item{start}
}

// list returns the items of a list document. A fault inside an item refuses
// this item alone; any other refuses the document.
func (d document) list(start Item, root, list *yaml.Node) []Item {
	request := &footwardv1.CheckManyRequest{}
	faults := d.nested(root, request.ProtoReflect().Descriptor(), d.faults(d.fill(request)))
	if len(list.Content) == 0 && faults == nil {
		faults = []Fault{{Line: d.first + list.Line, Column: list.Column, Reason: "items is empty"}}
	}
	if len(request.GetItems()) != len(list.Content) || len(faults) == maxFaults {
		start.Faults = faults
		return []Item{start}
	}
	all := make([]Item, len(list.Content))
	for i, n := range list.Content {
		all[i] = Item{Number: i + 1, Line: d.first + n.Line, Check: request.GetItems()[i]}
	}
	for _, f := range faults {
		i := d.itemAt(list, f)
		if i < 0 {
			start.Faults = faults
			return []Item{start}
		}
		all[i].Check = nil
		all[i].Faults = append(all[i].Faults, f)
	}
	return all
}

// itemAt returns the item that holds the place of a fault, or -1.
func (d document) itemAt(list *yaml.Node, f Fault) int {
	in := -1
	for i, n := range list.Content {
		if line := d.first + n.Line; line > f.Line || line == f.Line && n.Column > f.Column {
			break
		}
		in = i
	}
	if in == len(list.Content)-1 && in >= 0 && d.first+list.Line < f.Line && f.Column < list.Column {
		return -1 // further out than the list: behind it
	}
	return in
}

func listOf(root *yaml.Node) *yaml.Node {
	if root.Kind != yaml.MappingNode {
		return nil
	}
	for i := 0; i+1 < len(root.Content); i += 2 {
		if root.Content[i].Value == listKey && root.Content[i+1].Kind == yaml.SequenceNode {
			return root.Content[i+1]
		}
	}
	return nil
}

func (d document) parse() (root *yaml.Node, err error) {
	defer rescue(&err)
	var n yaml.Node
	text := yaml.NewDecoder(bytes.NewReader(d.text))
	if err := text.Decode(&n); err != nil {
		return nil, err
	}
	// What stands further left than the first line would be lost in silence.
	if err := text.Decode(&yaml.Node{}); !errors.Is(err, io.EOF) {
		return nil, cmp.Or(err, fmt.Errorf("is more than a document"))
	}
	if n.Kind != yaml.DocumentNode || len(n.Content) != 1 {
		return nil, fmt.Errorf("is not a document")
	}
	return n.Content[0], nil
}

func (d document) fill(m proto.Message) (err error) {
	defer rescue(&err)
	return protoyaml.UnmarshalOptions{}.Unmarshal(d.text, m)
}

// rescue turns a panic of the parser into an error: a strange file must not
// take the checks of the other files with it.
func rescue(err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("cannot be read as YAML or JSON")
	}
}

// forbidden finds what no request needs: see the package's comment.
func (d document) forbidden(n *yaml.Node, depth int) []Fault {
	at := func(n *yaml.Node, reason string) []Fault {
		return []Fault{{Line: d.first + n.Line, Column: n.Column, Reason: reason}}
	}
	switch {
	case depth > maxDepth:
		return at(n, fmt.Sprintf("is more than %d levels deep", maxDepth))
	case n.Kind == yaml.AliasNode || n.Anchor != "":
		return at(n, "anchors and aliases (& and *) are not accepted; write the values out")
	}
	seen := map[string]bool{}
	for i, c := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 0 {
			if seen[c.Value] {
				return at(c, fmt.Sprintf("%.60q stands here for the second time", c.Value))
			}
			seen[c.Value] = true
		}
		if f := d.forbidden(c, depth+1); f != nil {
			return f
		}
	}
	return nil
}
