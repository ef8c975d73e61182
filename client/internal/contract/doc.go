// Package contract writes the contract in the words of Python and TypeScript, and
// as descriptors, for the packages below client/python and client/node. So these
// need no compiler of protobuf where they are installed, and cannot say anything
// else than the .proto files.
package contract
