// Command schema writes the OpenAPI document of the contract.
//
//	go run ./.ci/schema IMAGE FOLDER FILE
//
// protoc-gen-jsonschema has put the JSON Schema of every message into FOLDER, with
// the ranges of the contract. It knows neither choices (oneof) nor what the values of
// an enum mean, takes a number also as text without a range, and demands nothing of
// what may not stay zero. This is put right here with the help of IMAGE, the contract
// with its comments, and the paths of the methods stand around it. .ci/generate
// runs it.
package main

import (
	"encoding/json"
	"fmt"
	"os"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protodesc"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/types/descriptorpb"
)

// contractPackage is the package whose methods are served.
const contractPackage = "footward.v1"

func main() {
	if len(os.Args) != 4 {
		fail(fmt.Errorf("give the image, the folder of schemas and the file to write"))
	}
	methods, err := contract(os.Args[1])
	if err != nil {
		fail(err)
	}
	d, err := newDocument(methods, os.Args[2])
	if err != nil {
		fail(err)
	}
	text, err := json.MarshalIndent(d.openAPI(methods), "", " ")
	if err == nil {
		err = os.WriteFile(os.Args[3], append(text, '\n'), 0o644)
	}
	if err != nil {
		fail(err)
	}
}

func fail(err error) {
	fmt.Fprintln(os.Stderr, "schema:", err)
	os.Exit(1)
}

// contract returns the methods by service and in the order of the contract.
func contract(image string) ([]protoreflect.MethodDescriptor, error) {
	text, err := os.ReadFile(image)
	if err != nil {
		return nil, err
	}
	var set descriptorpb.FileDescriptorSet
	if err := proto.Unmarshal(text, &set); err != nil {
		return nil, err
	}
	files, err := protodesc.NewFiles(&set)
	if err != nil {
		return nil, err
	}
	var all []protoreflect.MethodDescriptor
	for _, f := range set.GetFile() {
		d, err := files.FindFileByPath(f.GetName())
		if err != nil {
			return nil, err
		}
		if d.Package() != contractPackage {
			continue
		}
		for i := range d.Services().Len() {
			methods := d.Services().Get(i).Methods()
			for j := range methods.Len() {
				all = append(all, methods.Get(j))
			}
		}
	}
	return all, nil
}
