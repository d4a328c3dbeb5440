#!/usr/bin/env fish
# What fish offers for a command line. fish.fish FOLDER: the folder holds the wetout to be tried.
set -x PATH $argv[1] $PATH
wetout completion fish | source
or exit 1
set -l work (mktemp -d)
cd $work
mkdir boards
touch a.toml 'b c.toml' d.txt
set -g failed 0

# expect LINE OFFERED...: without the descriptions.
function expect
  set -l wanted (string join -- ' | ' (printf '%s\n' $argv[2..-1] | sort))
  set -l got (string join -- ' | ' (complete -C $argv[1] | string split -f 1 \t | sort))
  if test "$wanted" != "$got"
    echo "after: $argv[1]"
    echo "wanted: $wanted"
    echo "got: $got"
    set -g failed 1
  end
end

expect 'wetout ' new check plan mix cloth template potlife cure weather schedule sheet record stock ledger learn jobs log completion help
expect 'wetout p' plan potlife
expect 'wetout jobs ' list show diff rename archive
expect 'wetout --json jobs s' show
expect 'wetout plan a' a.toml
expect 'wetout plan a.toml bo' boards/
expect 'wetout new ' boards/
expect 'wetout log backup d' d.txt
expect 'wetout jobs show ' sandpiper step-up
expect 'wetout jobs show sandpiper '
expect 'wetout --log x.db jobs show ' from-x.db
expect 'wetout --log=x.db jobs show ' from-x.db
expect 'wetout jobs show --log x.db ' from-x.db
expect 'wetout mix ' sandpiper step-up
expect 'wetout mix sandpiper ' sandpiper-bottom-lam sandpiper-deck-lam
expect 'wetout mix --batch 2 sandpiper sandpiper-d' sandpiper-deck-lam
expect 'wetout mix --resin ' slow fast
expect 'wetout record ' undo import sandpiper step-up
expect 'wetout record u' undo
expect 'wetout record undo '
expect 'wetout record undo --n' --note --now
expect 'wetout record sandpiper ' sandpiper-bottom-lam bottom-lam/trim weigh
expect 'wetout record sandpiper un'
expect 'wetout record --done sandpiper b' bottom-lam/trim
expect 'wetout record sandpiper weigh '
expect 'wetout record sandpiper weigh --sp' --spilled
expect 'wetout plan a.toml --cup ' quart tray
expect 'wetout --shop s.toml plan a.toml --cup ' from-s.toml
expect 'wetout plan a.toml --air '
expect 'wetout --units ' us metric
expect 'wetout --units=m' --units=metric
expect 'wetout plan --resin' --resin-temp
expect 'wetout mix --b' --batch
expect 'wetout plan --b'
expect 'wetout jobs show --rev' --revision
expect 'wetout completion ' bash zsh fish
expect 'wetout help jo' jobs
expect 'wetout --color a' auto always

cd /
rm -r $work
exit $failed
