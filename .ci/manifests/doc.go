// Package manifests holds tests of the files in deploy/. It is a module of its
// own, since the types of Kubernetes, Compose and container files would swell the
// product's list of modules.
//
// What is tested is the file as its reader will take it: manifests after
// kustomize and strict decoding, the container's configuration after the build
// has been planned, and settings by starting the server with them.
package manifests
