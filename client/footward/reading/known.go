package reading

import (
	"slices"

	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	"footward.example/footward/service/spelling"
)

// cutOff ends a list of names that the message library has cut off.
const cutOff = "..."

// whole returns the list of names that a cut off one begins: those of the contract
// that all begin with the same ones.
func whole(names []string) []string {
	n := len(names) - 1
	if n < 1 || names[n] != cutOff {
		return names
	}
	var out []string
	begun := func(all []string) {
		if len(all) > n && slices.Equal(all[:n], names[:n]) {
			for _, name := range all {
				if !slices.Contains(out, name) {
					out = append(out, name)
				}
			}
		}
	}
	protoregistry.GlobalFiles.RangeFilesByPackage(contract, func(f protoreflect.FileDescriptor) bool {
		for i := range f.Messages().Len() {
			begun(spelling.Fields(f.Messages().Get(i)))
		}
		for i := range f.Enums().Len() {
			begun(spelling.All(f.Enums().Get(i)))
		}
		return true
	})
	if out == nil {
		return names
	}
	return out
}

// contract is the package of the requests.
const contract = "footward.v1"
