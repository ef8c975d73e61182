package contract

import (
	"encoding/json"

	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// method is what a client must know to call one.
type method struct {
	Path     string `json:"path"`
	Request  string `json:"request"`
	Response string `json:"response"`
}

// Methods returns all methods that are no streams by their names, and which of them
// answers each kind of check, as JSON.
func Methods() ([]byte, error) {
	var out struct {
		Kinds   map[protoreflect.Name]protoreflect.Name `json:"kinds"`
		Methods map[protoreflect.Name]method            `json:"methods"`
	}
	out.Kinds, out.Methods = map[protoreflect.Name]protoreflect.Name{}, map[protoreflect.Name]method{}
	byRequest := map[protoreflect.FullName]protoreflect.Name{}
	for _, m := range methods() {
		out.Methods[m.Name()] = method{
			Path:    "/" + string(m.Parent().FullName()) + "/" + string(m.Name()),
			Request: string(m.Input().Name()), Response: string(m.Output().Name()),
		}
		byRequest[m.Input().FullName()] = m.Name()
	}
	kinds := (*footwardv1.CheckItem)(nil).ProtoReflect().Descriptor().Fields()
	for i := range kinds.Len() {
		out.Kinds[kinds.Get(i).Name()] = byRequest[kinds.Get(i).Message().FullName()]
	}
	text, err := json.MarshalIndent(out, "", "  ")
	return append(text, '\n'), err
}
