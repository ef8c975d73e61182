// Package web answers the service's calls as JSON over plain HTTP, for tools that
// cannot speak gRPC:
//
//	POST /footward.v1.CheckService/CheckBearing
//
// takes the request in the JSON form of protobuf, and answers in it. The path is
// that of gRPC, so the contract names both. Package vanguard turns a call into
// one of gRPC and its answer back; what is here decides what reaches it, and
// sees that every refusal is a google.rpc.Status in JSON.
//
// A call goes through the interceptors of the gRPC server with the address and
// the certificate of its caller, as a call over gRPC does. StreamChecks has no
// form in plain HTTP; CheckMany takes its place.
package web
