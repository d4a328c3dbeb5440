#!/bin/bash
# What bash would offer: its completion function is called as bash calls it.
# bash.sh FOLDER: the folder holds the wetout whose completion is tried.
set -u
PATH=$1:$PATH
script=$(wetout completion bash) || exit 1
eval "$script" || exit 1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
mkdir boards
touch a.toml 'b c.toml' d.txt

compopt() { :; } # only works while bash itself is completing
failed=0

# expect WORDS... : OFFERED...: the last word before the colon is the one being typed.
expect() {
  COMP_WORDS=()
  while [[ $1 != : ]]; do
    COMP_WORDS+=("$1")
    shift
  done
  shift
  COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
  COMPREPLY=()
  _wetout
  local wanted got
  wanted=$(printf '%s\n' "$@" | sort)
  got=$(printf '%s\n' "${COMPREPLY[@]+"${COMPREPLY[@]}"}" | sort)
  if [[ $wanted != "$got" ]]; then
    echo "after: ${COMP_WORDS[*]}"
    echo "wanted: $wanted"
    echo "got: $got"
    failed=1
  fi
}

expect wetout '' : new check plan mix cloth template potlife cure weather schedule sheet record stock ledger learn jobs log completion help
expect wetout p : plan potlife
expect wetout jobs '' : list show diff rename archive
expect wetout --json jobs s : show
expect wetout plan '' : boards a.toml 'b c.toml'
expect wetout plan a.toml b : boards 'b c.toml'
expect wetout new '' : boards
expect wetout log backup d : d.txt
expect wetout jobs show '' : sandpiper step-up
expect wetout jobs show sandpiper '' :
expect wetout --log x.db jobs show '' : from-x.db
expect wetout --log = x.db jobs show '' : from-x.db
expect wetout jobs show --log x.db '' : from-x.db
expect wetout mix '' : sandpiper step-up
expect wetout mix sandpiper '' : sandpiper-bottom-lam sandpiper-deck-lam
expect wetout mix --batch 2 sandpiper sandpiper-d : sandpiper-deck-lam
expect wetout mix --resin '' : slow fast
expect wetout mix --resin s : slow
expect wetout record '' : undo import sandpiper step-up
expect wetout record s : sandpiper step-up
expect wetout record u : undo
expect wetout record undo '' :
expect wetout record undo --n : --note --now
expect wetout record sandpiper '' : sandpiper-bottom-lam bottom-lam/trim weigh
expect wetout record sandpiper un :
expect wetout record --done sandpiper b : bottom-lam/trim
expect wetout record sandpiper weigh '' :
expect wetout record sandpiper weigh --sp : --spilled
expect wetout plan a.toml --cup '' : quart tray
expect wetout --shop s.toml plan a.toml --cup '' : from-s.toml
expect wetout plan a.toml --air '' :
expect wetout --units '' : us metric
expect wetout --units = m : metric
expect wetout --units = : us metric
expect wetout plan --resin : --resin-temp
expect wetout mix --b : --batch
expect wetout plan --b :
expect wetout jobs show --rev : --revision
expect wetout -- p : plan potlife
expect wetout check -- --j :
expect wetout completion '' : bash zsh fish
expect wetout help jo : jobs
expect wetout --c : --color
expect wetout --color a : auto always

exit $failed
