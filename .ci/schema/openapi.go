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
	for _, g := range documents {
		paths.set(g.name, g.value)
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
		{"requestBody", object{{"required", true}, content(m, refs+string(m.Input().Name()))}},
		{"responses", object{
			{"200", object{{"description", answer(m)}, content(m, refs+string(m.Output().Name()))}},
			{"default", object{{"$ref", "#/components/responses/Refusal"}}},
		}},
	}
}

// content is a body of a method: one message, or one a line.
func content(m protoreflect.MethodDescriptor, ref string) member {
	kind := "application/json"
	if m.IsStreamingClient() {
		kind = "application/x-ndjson"
	}
	return member{"content", object{{kind, object{{"schema", object{{"$ref", ref}}}}}}}
}

func answer(m protoreflect.MethodDescriptor) string {
	if m.IsStreamingClient() {
		return "Each line of the request is answered by a line, as they come. One that cannot be answered ends them with a line {\"error\": a Status}."
	}
	return "The answer."
}

// documents are what is served by GET.
var documents = []member{
	{"/healthz", get("Health", "Whether new calls are welcome: 200, and 503 while the service leaves.", "status")},
	{"/version", get("Version", "Which build answers.", "service_version", "kernel_revision")},
	{"/openapi.json", get("OpenAPI", "This document.")},
}

// get is the operation of a document that holds texts, and a number as the revision.
func get(id, text string, fields ...string) object {
	properties := object{}
	for _, f := range fields {
		kind := "string"
		if f == "kernel_revision" {
			kind = "integer"
		}
		properties.set(f, object{{"type", kind}})
	}
	schema := object{{"type", "object"}}
	if len(fields) > 0 {
		schema = append(schema, object{{"properties", properties}, {"required", fields}}...)
	}
	return object{{"get", object{
		{"operationId", id},
		{"summary", text},
		{"security", []object{{}}},
		{"responses", object{{"default", object{{"description", text}, {"content", object{{"application/json", object{{"schema", schema}}}}}}}}},
	}}}
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
