export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

/** What a shell runs to complete. Each script asks the command itself, which knows its commands and reads the files named. */
export const completionScripts: Readonly<Record<Shell, string>> = {
  bash: `# Completion of boardfeed for bash. Put this into ~/.bashrc:
#   eval "$(boardfeed completion bash)"
_boardfeed() {
  local IFS=$'\\n'
  local lines
  lines=($(boardfeed completion bash --line "$COMP_LINE" --point "$COMP_POINT" 2>/dev/null))
  COMPREPLY=()
  # Without words the shell completes the names of files.
  [ "\${lines[0]}" = files ] && return
  type compopt >/dev/null 2>&1 && compopt +o default +o bashdefault
  COMPREPLY=("\${lines[@]:1}")
}
complete -o bashdefault -o default -F _boardfeed boardfeed
`,
  zsh: `#compdef boardfeed
# Completion of boardfeed for zsh. Put this into ~/.zshrc, below compinit:
#   eval "$(boardfeed completion zsh)"
_boardfeed() {
  local -a lines candidates
  lines=("\${(@f)$(boardfeed completion zsh --at $((CURRENT - 2)) -- "\${(@Q)words[2,-1]}" 2>/dev/null)}")
  if [[ "$lines[1]" == files ]]; then
    compset -P '--*='
    _files
    return
  fi
  candidates=("\${(@)lines[2,-1]}")
  _describe boardfeed candidates
}
if [[ "\${funcstack[1]}" == _boardfeed ]]; then
  _boardfeed "$@"
else
  compdef _boardfeed boardfeed
fi
`,
  fish: `# Completion of boardfeed for fish. Put this into ~/.config/fish/config.fish:
#   boardfeed completion fish | source
function __boardfeed_complete
    set -l words (commandline -opc)
    set -e words[1]
    set -l current (commandline -ct)
    set -l lines (boardfeed completion fish --at (count $words) -- $words "$current" 2>/dev/null)
    if test "$lines[1]" = files
        __fish_complete_path (string replace -r -- '^--[^=]*=' '' "$current")
        return
    end
    set -e lines[1]
    printf '%s\\n' $lines
end
complete -c boardfeed -f -a '(__boardfeed_complete)'
`,
};
