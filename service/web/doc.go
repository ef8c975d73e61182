// Package web answers the service's calls as JSON over plain HTTP, for tools that
// cannot speak gRPC:
//
//	POST /footward.v1.CheckService/CheckBearing
//
// takes the request in the JSON form of protobuf, and answers in it. The path is
// that of gRPC, so the contract names both. A stream takes a request a line and
// answers each by a line, as they come.
//
// A call goes to the gRPC server as one of gRPC whose messages are JSON: what
// stands before the handlers there sees it with the address and the certificate of
// its caller. What is here decides what becomes a call, and sees that every
// refusal is a google.rpc.Status in JSON.
package web
