package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"strings"
)

const completionHelp = `footward completion SHELL : print a script by which a shell completes commands

SHELL is bash, zsh or fish. For this session, and for all to come:

  bash  source <(footward completion bash)
        footward completion bash > ~/.local/share/bash-completion/completions/footward
  zsh   source <(footward completion zsh)
        footward completion zsh > a folder of $fpath, as _footward
  fish  footward completion fish | source
        footward completion fish > ~/.config/fish/completions/footward.fish
`

// shells are those for which there is a script.
var shells = []string{"bash", "fish", "zsh"}

// completed is a command with its options.
type completed struct {
	command
	options []option
	names   []string // what words gives
}

// option is one of them: without a value, with one, or with a file.
type option struct{ name, value, does string }

func (o option) file() bool { return o.value == "FILE" }

func completion(ctx context.Context, args []string, t terminal) int {
	names, code, done := parse(flag.NewFlagSet("completion", flag.ContinueOnError), completionHelp, args, t)
	if done {
		return code
	}
	if len(names) != 1 {
		return t.wrong("name one of %s", strings.Join(shells, ", "))
	}
	var script string
	switch names[0] {
	case "bash":
		script = bash(complete(ctx))
	case "fish":
		script = fish(complete(ctx))
	case "zsh":
		script = zsh(complete(ctx))
	default:
		return t.wrong("%s", none("shell", names[0], shells))
	}
	if _, err := io.WriteString(t.out, script); err != nil {
		return t.wrong("%v", err)
	}
	return allPass
}

// complete asks every command for its options.
func complete(ctx context.Context) []completed {
	var all []completed
	for _, c := range commands() {
		this := completed{command: c}
		if c.words != nil {
			this.names = c.words()
		}
		c.run(ctx, nil, terminal{flags: func(f *flag.FlagSet) {
			f.VisitAll(func(o *flag.Flag) {
				value, words := flag.UnquoteUsage(o)
				this.options = append(this.options, option{o.Name, value, words})
			})
		}})
		this.options = append(this.options, option{name: "help", does: "explain the command"})
		all = append(all, this)
	}
	return all
}

// quoted is a text that a shell takes as it stands.
func quoted(text string) string { return "'" + strings.ReplaceAll(text, "'", `'\''`) + "'" }

func bash(all []completed) string {
	var b strings.Builder
	b.WriteString(`# Completes footward in bash.
_footward() {
  local now=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} options= words=
  COMPREPLY=()
  if ((COMP_CWORD == 1)); then
    COMPREPLY=($(compgen -W ` + quoted(strings.Join(commandNames(), " ")+" help") + ` -- "$now"))
    return
  fi
  case ${COMP_WORDS[1]} in
`)
	for _, c := range all {
		var options, values []string
		for _, o := range c.options {
			options = append(options, "--"+o.name)
			if o.value != "" {
				values = append(values, "--"+o.name)
			}
		}
		fmt.Fprintf(&b, "    %s)\n      options=%s words=%s\n", c.name, quoted(strings.Join(options, " ")), quoted(strings.Join(c.names, " ")))
		if len(values) > 0 {
			fmt.Fprintf(&b, "      case $before in %s) return ;; esac\n", strings.Join(values, "|"))
		}
		b.WriteString("      ;;\n")
	}
	fmt.Fprintf(&b, "    help) words=%s ;;\n", quoted(strings.Join(commandNames(), " ")))
	// Where there is no reply, bash offers files.
	b.WriteString(`  esac
  if [[ $now == -* ]]; then
    COMPREPLY=($(compgen -W "$options" -- "$now"))
  else
    COMPREPLY=($(compgen -W "$words" -- "$now"))
  fi
}
complete -o default -F _footward footward
`)
	return b.String()
}

func zsh(all []completed) string {
	var b strings.Builder
	b.WriteString("#compdef footward\n# Completes footward in zsh.\n_footward() {\n  if ((CURRENT == 2)); then\n    local -a commands=(\n")
	for _, c := range all {
		fmt.Fprintf(&b, "      %s\n", quoted(c.name+":"+c.does))
	}
	b.WriteString("    )\n    _describe command commands\n    return\n  fi\n  shift words\n  ((CURRENT--))\n  case $words[1] in\n")
	bracket := strings.NewReplacer("[", `\[`, "]", `\]`, ":", `\:`)
	for _, c := range all {
		fmt.Fprintf(&b, "    %s)\n      _arguments", c.name)
		for _, o := range c.options {
			spec := "--" + o.name
			if o.value != "" {
				spec += "="
			}
			spec += "[" + bracket.Replace(o.does) + "]"
			switch {
			case o.file():
				spec += ":" + o.value + ":_files"
			case o.value != "":
				spec += ":" + o.value + ":"
			}
			b.WriteString(" \\\n        " + quoted(spec))
		}
		switch {
		case c.words == nil:
			b.WriteString(" \\\n        " + quoted("*:file:_files"))
		case len(c.names) > 0:
			b.WriteString(" \\\n        " + quoted("*:name:("+strings.Join(c.names, " ")+")"))
		}
		b.WriteString("\n      ;;\n")
	}
	b.WriteString("  esac\n}\nif [[ $funcstack[1] == _footward ]]; then\n  _footward \"$@\"\nelse\n  compdef _footward footward\nfi\n")
	return b.String()
}

func fish(all []completed) string {
	var b strings.Builder
	b.WriteString("# Completes footward in fish.\n")
	for _, c := range all {
		fmt.Fprintf(&b, "complete -c footward -f -n __fish_use_subcommand -a %s -d %s\n", c.name, fishQuoted(c.does))
	}
	for _, c := range all {
		when := "-n " + fishQuoted("__fish_seen_subcommand_from "+c.name)
		for _, o := range c.options {
			takes := ""
			switch {
			case o.file():
				takes = " -r -F"
			case o.value != "":
				takes = " -x"
			}
			fmt.Fprintf(&b, "complete -c footward %s -l %s%s -d %s\n", when, o.name, takes, fishQuoted(o.does))
		}
		if c.words != nil {
			fmt.Fprintf(&b, "complete -c footward -f %s -a %s\n", when, fishQuoted(strings.Join(c.names, " ")))
		}
	}
	return b.String()
}

// fishQuoted is a text that fish takes as it stands.
func fishQuoted(text string) string {
	return "'" + strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(text) + "'"
}
