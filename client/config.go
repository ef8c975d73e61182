package client

import "fmt"

// serviceConfig says how calls are spread and repeated.
//
// Every method may be called again, since none has a side effect. Only
// UNAVAILABLE is repeated: a server that sheds load answers RESOURCE_EXHAUSTED,
// and asking it again would keep it busy. The throttle counts failures against
// successes: it lets hundreds of calls on one broken connection be repeated at
// once, yet holds repeats to a tenth of the calls when failures go on.
func serviceConfig(wait bool) string {
	return fmt.Sprintf(`{
  "loadBalancingConfig": [{"round_robin": {}}],
  "healthCheckConfig": {"serviceName": ""},
  "retryThrottling": {"maxTokens": 1000, "tokenRatio": 0.1},
  "methodConfig": [{
    "name": [
      {"service": "footward.v1.CheckService"}, {"service": "footward.v1.ColumnBaseService"}, {"service": "footward.v1.LoadService"}, {"service": "footward.v1.CatalogService"}
    ],
    "waitForReady": %t,
    "retryPolicy": {
      "maxAttempts": %d,
      "initialBackoff": "0.1s",
      "maxBackoff": "2s",
      "backoffMultiplier": 3,
      "retryableStatusCodes": ["UNAVAILABLE"]
    }
  }]
}`, wait, attempts)
}
