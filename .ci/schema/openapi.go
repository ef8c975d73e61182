package main

import (
	"slices"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"
)

const introduction = `Structural checks of column bases and footings. Every result is a design aid; a licensed engineer must check it.

A path takes its request in protobuf's JSON form and answers in it. Fields are written by their names in the contract; the service takes lowerCamelCase too, and numbers as text, and refuses what it does not know. What is refused by a rule of one field is refused by this document too; what does not fit together in space, or exceeds a sum, only by the service.`

// openAPI puts the paths of the methods around the schemas.
func (d *document) openAPI(methods []protoreflect.MethodDescriptor) object {
	paths, tags := object{}, []object{}
	var service protoreflect.FullName
	for _, m := range methods {
		if s := m.Parent(); s.FullName() != service {
			service = s.FullName()
			tags = append(tags, object{{"name", s.Name()}, {"description", comment(s)}})
		}
		paths.set("/"+string(service)+"/"+string(m.Name()), object{{"post", operation(m)}})
	}
	slices.SortStableFunc(d.schemas, func(a, b member) int { return strings.Compare(a.name, b.name) })
	d.schemas.set("Status", status)
	return object{
		{"openapi", "3.1.0"},
		{"info", object{{"title", "Footward"}, {"version", "v1"}, {"description", introduction}}},
		{"security", []object{{}, {{"token", []string{}}}}},
		{"tags", tags},
		{"paths", paths},
		{"components", object{
			{"schemas", d.schemas},
			{"responses", object{{"Refusal", object{
				{"description", "Refused: 400 with the fields at fault, 401, 403, 408, 413, 415, 429 and 503 with Retry-After, 504 after the time that was asked for."},
				{"headers", object{
					{"X-Request-Id", object{{"schema", object{{"type", "string"}}}}},
					{"Retry-After", object{{"description", "Seconds to wait before asking again."}, {"schema", object{{"type", "string"}}}}},
				}},
				{"content", object{{"application/json", object{{"schema", object{{"$ref", refs + "Status"}}}}}}},
			}}}},
			{"parameters", object{
				{"RequestTimeout", header("Request-Timeout", "Longest time for an answer [s].", object{{"type", "number"}, {"exclusiveMinimum", 0}, {"maximum", 3600}})},
				{"RequestId", header("X-Request-Id", "Name of the call in the service's log: up to 128 letters, digits and signs of -_.:;+/=.", object{{"type", "string"}, {"maxLength", 128}})},
			}},
			{"securitySchemes", object{{"token", object{{"type", "http"}, {"scheme", "bearer"},
				{"description", "A token, where the service asks for one."}}}}},
		}},
	}
}

func operation(m protoreflect.MethodDescriptor) object {
	text := comment(m)
	summary, _, _ := strings.Cut(text, ". ")
	return object{
		{"operationId", m.Name()},
		{"tags", []protoreflect.Name{m.Parent().Name()}},
		{"summary", strings.TrimSuffix(summary, ".")},
		{"description", text},
		{"parameters", []object{{{"$ref", "#/components/parameters/RequestTimeout"}}, {{"$ref", "#/components/parameters/RequestId"}}}},
		{"requestBody", object{{"required", true}, content(m.Input())}},
		{"responses", object{
			{"200", object{{"description", "The answer."}, content(m.Output())}},
			{"default", object{{"$ref", "#/components/responses/Refusal"}}},
		}},
	}
}

func content(m protoreflect.MessageDescriptor) member {
	return member{"content", object{{"application/json", object{{"schema", object{{"$ref", refs + string(m.Name())}}}}}}}
}

func header(name, text string, schema object) object {
	return object{{"name", name}, {"in", "header"}, {"description", text}, {"schema", schema}}
}

// status is google.rpc.Status, as which a refusal is answered.
var status = object{
	{"description", "A google.rpc.Status: why a call was refused."},
	{"type", "object"},
	{"properties", object{
		{"code", object{{"description", "Code of gRPC, such as 3 for INVALID_ARGUMENT."}, {"type", "integer"}}},
		{"message", object{{"description", "What is wrong, in words."}, {"type", "string"}}},
		{"details", object{
			{"description", "google.rpc.BadRequest with the fields at fault, google.rpc.ErrorInfo with the reason, google.rpc.RetryInfo."},
			{"type", "array"},
			{"items", object{
				{"type", "object"},
				{"properties", object{{"@type", object{{"description", "Type of the detail, such as type.googleapis.com/google.rpc.BadRequest."}, {"type", "string"}}}}},
				{"required", []string{"@type"}},
			}},
		}},
	}},
	{"required", []string{"code", "message", "details"}},
}
