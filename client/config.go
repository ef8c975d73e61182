package client

import (
	"fmt"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// services are all of the contract, as a service config names them. Taken from
// there, none is forgotten.
func services() []string {
	var out []string
	contract := footwardv1.File_footward_v1_check_proto.Package()
	protoregistry.GlobalFiles.RangeFilesByPackage(contract, func(f protoreflect.FileDescriptor) bool {
		for i := range f.Services().Len() {
			out = append(out, fmt.Sprintf(`{"service": %q}`, f.Services().Get(i).FullName()))
		}
		return true
	})
	return out
}

// serviceConfig says how calls are spread and repeated.
//
// Every method may be called again, since none has a side effect. Only
// UNAVAILABLE is repeated: a server that sheds load answers RESOURCE_EXHAUSTED,
// and asking it again at once would keep it busy; see later.
func serviceConfig(wait bool) string {
	return fmt.Sprintf(`{
  "loadBalancingConfig": [{"round_robin": {}}],
  "healthCheckConfig": {"serviceName": ""},
  "retryThrottling": {"maxTokens": %d, "tokenRatio": %g},
  "methodConfig": [{
    "name": [%s],
    "waitForReady": %t,
    "retryPolicy": {
      "maxAttempts": %d,
      "initialBackoff": "0.1s",
      "maxBackoff": "2s",
      "backoffMultiplier": 3,
      "retryableStatusCodes": ["UNAVAILABLE"]
    }
  }]
}`, throttleTokens, throttleRatio, strings.Join(services(), ", "), wait, attempts)
}
