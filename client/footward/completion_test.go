package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// completing has bash complete a line, and returns what it offers.
func completing(t *testing.T, script string, words ...string) []string {
	t.Helper()
	var quotedWords []string
	for _, w := range words {
		quotedWords = append(quotedWords, quoted(w))
	}
	run := exec.Command("bash", "--norc", "-c", script+`
		complete -p footward >/dev/null || exit 1
		COMP_WORDS=(`+strings.Join(quotedWords, " ")+`)
		COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
		_footward
		printf '%s\n' "${COMPREPLY[@]}"`)
	out, err := run.CombinedOutput()
	require.NoError(t, err, "%s", out)
	return strings.Fields(string(out))
}

func TestBashCompletes(t *testing.T) {
	if _, err := exec.LookPath("bash"); err != nil {
		if os.Getenv("DEMAND_ALL_TESTS") != "" {
			t.Fatal("there is no bash")
		}
		t.Skip("there is no bash")
	}
	script := footward(t, "", "completion", "bash").out
	assert.Equal(t, append(commandNames(), "help"), completing(t, script, "footward", ""))
	assert.Equal(t, []string{"combine", "compare", "completion"}, completing(t, script, "footward", "com"))
	assert.Equal(t, listNames(), completing(t, script, "footward", "catalog", ""))
	assert.Equal(t, []string{"steels"}, completing(t, script, "footward", "catalog", "threads", "st"))
	assert.Equal(t, []string{"plate_bending"}, completing(t, script, "footward", "example", "pl"))
	assert.Contains(t, completing(t, script, "footward", "schema", "c"), "check")
	assert.Equal(t, commandNames(), completing(t, script, "footward", "help", ""))
	assert.Equal(t, []string{"--derivation"}, completing(t, script, "footward", "check", "--d"))
	assert.Subset(t, completing(t, script, "footward", "check", "--"), []string{"--json", "--full", "--server", "--help"})
	assert.Equal(t, []string{"--all"}, completing(t, script, "footward", "combine", "file.yaml", "--al"))
	// Files and values are left to the shell.
	assert.Empty(t, completing(t, script, "footward", "check", ""))
	assert.Empty(t, completing(t, script, "footward", "catalog", "--server", ""))
}

// TestEveryShellLearnsEverything that the table of commands has, in a text that the
// shell can read where it is there.
func TestEveryShellLearnsEverything(t *testing.T) {
	for _, shell := range shells {
		script := footward(t, "", "completion", shell).out
		for _, c := range complete(t.Context()) {
			assert.Contains(t, script, c.name)
			for _, o := range c.options {
				assert.Contains(t, script, o.name, "%s %s", shell, c.name)
			}
			for _, w := range c.names {
				assert.Contains(t, script, w, "%s %s", shell, c.name)
			}
		}
		if _, err := exec.LookPath(shell); err != nil {
			continue
		}
		file := filepath.Join(t.TempDir(), "script")
		require.NoError(t, os.WriteFile(file, []byte(script), 0o600))
		out, err := exec.Command(shell, "-n", file).CombinedOutput()
		assert.NoError(t, err, "%s: %s", shell, out)
	}
}

func TestEveryCommandHasOptions(t *testing.T) {
	for _, c := range complete(t.Context()) {
		assert.NotEmpty(t, c.options, c.name)
		if c.name == "check" {
			assert.Contains(t, c.options, option{"json", "", "print the answers as JSON (a CheckManyResponse)"})
			assert.Contains(t, c.options, option{"ca", "FILE", "trust the authorities in this FILE (PEM) in place of the system's"})
		}
	}
}
