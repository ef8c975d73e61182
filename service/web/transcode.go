package web

import (
	"errors"
	"fmt"
	"net/http"
	"strings"

	"connectrpc.com/connect"
	"connectrpc.com/vanguard"
	"google.golang.org/genproto/googleapis/api/annotations"
	_ "google.golang.org/genproto/googleapis/rpc/errdetails" // the details of a status, by name
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoregistry"
)

// marshal writes fields under their names in the contract, and writes them even
// when they are zero or empty, so that a reader finds every one. Absent is only
// what has no value, such as the utilization where there is no resistance.
var marshal = protojson.MarshalOptions{UseProtoNames: true, EmitDefaultValues: true, Resolver: protoregistry.GlobalTypes}

// unmarshal refuses fields that the contract does not have.
var unmarshal = protojson.UnmarshalOptions{Resolver: protoregistry.GlobalTypes}

// codec reads and writes JSON.
type codec struct{ *vanguard.JSONCodec }

// Unmarshal implements vanguard.Codec. What cannot be read is the caller's fault,
// which vanguard would call an unknown one.
func (c codec) Unmarshal(body []byte, m proto.Message) error {
	err := c.JSONCodec.Unmarshal(body, m)
	if err == nil {
		return nil
	}
	// protojson puts one of two kinds of blank behind its name, lest anybody rely
	// on the text.
	text := strings.TrimLeft(strings.TrimPrefix(err.Error(), "proto:"), " \u00a0")
	return connect.NewError(connect.CodeInvalidArgument, errors.New("the body is no such request: "+text))
}

// transcoder turns calls in JSON to gRPC and back.
func transcoder(calls Calls, methods map[string]method) (http.Handler, error) {
	var rules []*annotations.HttpRule
	served := map[string]bool{}
	for path, m := range methods {
		name, _, _ := strings.Cut(path[1:], "/")
		served[name] = true
		if !m.streams {
			rules = append(rules, &annotations.HttpRule{
				Selector: strings.ReplaceAll(path[1:], "/", "."),
				Pattern:  &annotations.HttpRule_Post{Post: path},
				Body:     "*",
			})
		}
	}
	var all []*vanguard.Service
	for name := range served {
		all = append(all, vanguard.NewService(name, calls))
	}
	t, err := vanguard.NewTranscoder(all,
		vanguard.WithRules(rules...),
		vanguard.WithCodec(func(vanguard.TypeResolver) vanguard.Codec {
			return codec{&vanguard.JSONCodec{MarshalOptions: marshal, UnmarshalOptions: unmarshal}}
		}),
		vanguard.WithDefaultServiceOptions(
			vanguard.WithTargetProtocols(vanguard.ProtocolGRPC),
			vanguard.WithTargetCodecs(vanguard.CodecProto),
			vanguard.WithNoTargetCompression(),
			vanguard.WithTypeResolver(protoregistry.GlobalTypes),
		))
	if err != nil {
		return nil, fmt.Errorf("JSON over HTTP: %w", err)
	}
	return t, nil
}
