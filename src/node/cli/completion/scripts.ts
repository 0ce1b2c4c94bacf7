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
  COMPREPLY=("\${lines[@]:1}")
  # Without any word the shell completes the names of files by itself.
  if [ "\${lines[0]}" = files ]; then
    [ \${#lines[@]} -gt 1 ] || return
    COMPREPLY+=($(compgen -f -- "$2"))
    type compopt >/dev/null 2>&1 && compopt -o filenames
    return
  fi
  type compopt >/dev/null 2>&1 && compopt +o default +o bashdefault
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
  fi
  candidates=("\${(@)lines[2,-1]}")
  (( \${#candidates} )) || return
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
    end
    set -e lines[1]
    printf '%s\\n' $lines
end
complete -c boardfeed -f -a '(__boardfeed_complete)'
`,
};
