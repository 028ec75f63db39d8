# bash completion of rimehaul. The program itself says what may come next, so that its options, and
# the rigs, stations and trails of the site on the line, stand in one place only.
_rimehaul() {
  local LC_ALL=C
  local -a answer
  mapfile -t answer < <("$1" complete "${COMP_LINE:0:COMP_POINT}" "${COMP_WORDS[COMP_CWORD]}" 2>/dev/null)
  COMPREPLY=()
  case "${answer[0]-}" in
    words)
      COMPREPLY=("${answer[@]:1}")
      compopt -o filenames # puts names with blanks in quotes
      ;;
    folders) compopt -o dirnames ;;
    files) compopt -o default ;;
  esac
}
complete -F _rimehaul rimehaul
