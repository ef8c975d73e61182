package version

import (
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestVersion(t *testing.T) {
	revision := debug.BuildSetting{Key: "vcs.revision", Value: "0123456789abcdef0123"}
	changed := debug.BuildSetting{Key: "vcs.modified", Value: "true"}
	for want, info := range map[string]debug.BuildInfo{
		"v1.2.3":               {Main: debug.Module{Version: "v1.2.3"}},
		"development":          {Main: debug.Module{Version: "(devel)"}},
		"0123456789ab":         {Settings: []debug.BuildSetting{revision}},
		"0123456789ab+changed": {Settings: []debug.BuildSetting{revision, changed}},
	} {
		assert.Equal(t, want, of(&info))
	}
	assert.NotEmpty(t, String())
}
