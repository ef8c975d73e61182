package contract

import (
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	rpcstatus "google.golang.org/genproto/googleapis/rpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protodesc"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/types/descriptorpb"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// rules is the schema in which the contract states its rules on values. A client
// has no use for it: the service tells which values it refuses.
const rules = "buf/validate/validate.proto"

// Files are the files of the contract that have services, with all that they import.
func Files() []protoreflect.FileDescriptor {
	return []protoreflect.FileDescriptor{
		footwardv1.File_footward_v1_check_proto, footwardv1.File_footward_v1_column_base_proto,
		footwardv1.File_footward_v1_compare_proto, footwardv1.File_footward_v1_load_proto, footwardv1.File_footward_v1_evidence_proto,
		footwardv1.File_footward_v1_catalog_proto,
	}
}

// Descriptors returns a FileDescriptorSet of the contract, and of the status that
// a call is refused with, each file behind those that it imports.
func Descriptors() ([]byte, error) {
	set := &descriptorpb.FileDescriptorSet{}
	seen := map[string]bool{rules: true}
	for _, f := range append(Files(), rpcstatus.File_google_rpc_status_proto, errdetails.File_google_rpc_error_details_proto) {
		collect(f, seen, set)
	}
	return proto.MarshalOptions{Deterministic: true}.Marshal(set)
}

func collect(f protoreflect.FileDescriptor, seen map[string]bool, set *descriptorpb.FileDescriptorSet) {
	if seen[f.Path()] {
		return
	}
	seen[f.Path()] = true
	for i := range f.Imports().Len() {
		collect(f.Imports().Get(i).FileDescriptor, seen, set)
	}
	p := protodesc.ToFileDescriptorProto(f)
	kept := p.Dependency[:0]
	for _, d := range p.GetDependency() {
		if d != rules {
			kept = append(kept, d)
		}
	}
	p.Dependency = kept
	withoutRules(p.ProtoReflect())
	set.File = append(set.File, p)
}

// withoutRules takes the extensions out of all options of a file.
func withoutRules(m protoreflect.Message) {
	m.Range(func(f protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		switch {
		case f.IsExtension():
			m.Clear(f)
		case f.Message() == nil:
		case f.IsList():
			for i := range v.List().Len() {
				withoutRules(v.List().Get(i).Message())
			}
		case !f.IsMap():
			withoutRules(v.Message())
		}
		return true
	})
}
