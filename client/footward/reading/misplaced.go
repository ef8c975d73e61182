package reading

import (
	"slices"

	"go.yaml.in/yaml/v3"
	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

var checkItem = (&footwardv1.CheckItem{}).ProtoReflect().Descriptor()

// homes are the commands that read one request, and a field by which theirs is told
// from the others.
var homes = []struct {
	command string
	request protoreflect.MessageDescriptor
	by      string
}{
	{"size", (&footwardv1.SizeColumnBaseRequest{}).ProtoReflect().Descriptor(), "offer"},
	{"compare", (&footwardv1.CompareFootingsRequest{}).ProtoReflect().Descriptor(), "supply"},
	{"combine", (&footwardv1.CombineActionsRequest{}).ProtoReflect().Descriptor(), "action_set"},
	{"tests", (&footwardv1.AssessLoadTestsRequest{}).ProtoReflect().Descriptor(), "tests"},
	{"reading", (&footwardv1.ReadLoadTestRequest{}).ProtoReflect().Descriptor(), "stages"},
}

// misplaced says where a document belongs that is another request than the one that
// was asked for, or lacks the kind of its check; else nothing.
func (d document) misplaced(root *yaml.Node, asked protoreflect.MessageDescriptor) []Fault {
	keys := keys(root)
	if len(keys) == 0 {
		return nil
	}
	fits, reason := knows(asked, keys), ""
	for _, h := range homes {
		if h.request == asked && !slices.Contains(keys, h.by) {
			fits-- // of two that know as much, the one whose own field is there
		}
	}
	if asked != checkItem && (slices.Contains(keys, listKey) || knows(checkItem, keys) > fits) {
		fits, reason = len(keys), "this is a request for footward check"
	}
	for _, h := range homes {
		if n := knows(h.request, keys); n > fits && slices.Contains(keys, h.by) {
			fits, reason = n, "this is a request for footward "+h.command
		}
	}
	for i := range checkItem.Fields().Len() {
		check := checkItem.Fields().Get(i)
		if n := knows(check.Message(), keys); n > max(fits, knows(asked, keys)) && n == len(keys) {
			fits, reason = n, "the kind of check is missing; if this is one of "+string(check.Name())+
				", write "+string(check.Name())+": above these fields and indent them"
		}
	}
	if reason == "" {
		return nil
	}
	return []Fault{{Line: d.first + root.Line, Column: root.Column, Reason: reason}}
}

// keys are the names at the top of a document.
func keys(root *yaml.Node) []string {
	var all []string
	if root.Kind == yaml.MappingNode {
		for i := 0; i < len(root.Content); i += 2 {
			all = append(all, root.Content[i].Value)
		}
	}
	return all
}

// knows counts the keys that are fields of a message.
func knows(m protoreflect.MessageDescriptor, keys []string) int {
	n := 0
	for _, k := range keys {
		if fieldOf(m, k) != nil {
			n++
		}
	}
	return n
}
