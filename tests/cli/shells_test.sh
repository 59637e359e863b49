#!/usr/bin/env bash
# Completions and the manual page, each read by the program it is for. Sources: bash's compgen, zsh, fish, man, mandoc.
set -u
program=$1
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work" || exit 1
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
has() { command -v "$1" >/dev/null || { echo "skipped: $1 is not installed"; return 1; }; }

for shell in bash zsh fish; do
  "$program" completions $shell >basinwright.$shell || fail "no completions for $shell"
done
"$program" man-page >basinwright.1 || fail "no manual page"
"$program" completions csh 2>err && fail "csh is no shell it knows"

# What a Tab offers after these words; the last one is what stands before the cursor.
offered() {
  bash -c '
    source ./basinwright.bash
    COMP_WORDS=("$@") COMP_CWORD=$(($# - 1))
    _basinwright
    printf "%s\n" "${COMPREPLY[@]}"' _ "$@" 2>err
  [ ! -s err ] || fail "completion of $*: $(cat err)"
}
gives() { # what, words...
  local what=$1
  shift
  [ "$(offered "$@" | sort | tr '\n' ' ')" = "$what" ] || fail "$*: $(offered "$@" | tr '\n' ' '), not $what"
}
bash -n basinwright.bash || fail "bash cannot read its completions"
mkdir empty && cd empty && cp ../basinwright.bash . || exit 1
gives "takeoff today " basinwright t
gives "jobsheet " basinwright jo
gives "html " basinwright jobsheet x --format h
gives "html " basinwright jobsheet x --format = h
gives "both metric us " basinwright takeoff x --units ""
gives "metric us " basinwright quote x --units ""
gives "--weather --weeks " basinwright odds --we
gives "bash fish zsh " basinwright completions ""
gives "basinwright.bash " basinwright check b
gives "basinwright.bash " basinwright check x --rates b
gives "--start --strict " basinwright pool.json --st
gives "kidney " basinwright new --outline k
cd .. || exit 1
# Every command and every option of the help is there, and nothing that is not.
"$program" --help | sed -n '/^Subcommands:/,$p' | awk '/^  [a-z]/ { print $1 }' | sort >commands
offered basinwright "" | grep -v -e '^--' -e '^basinwright' -e '^err$' -e '^commands$' -e '^completed$' -e '^empty$' | sort >completed
diff commands completed >differ || fail "commands: $(cat differ)"
while read -r command; do
  "$program" "$command" --help | grep -o '^  \(-h,\)\?--[a-z-]*' | sed 's/.*--/--/' | sort -u >options
  offered basinwright "$command" -- | sort -u >completed
  diff options completed >differ || fail "options of $command: $(cat differ)"
  grep -q "^\.SS basinwright $(printf %s "$command" | sed 's/-/\\\\-/g')" basinwright.1 || fail "$command is not in the manual page"
  "$program" "$command" --help | head -n 1 | grep -q '^Try:$' || fail "help of $command does not lead with examples"
done <commands
[ "$(wc -l <commands)" -ge 18 ] || fail "few commands: $(cat commands)"

has zsh && { zsh -n basinwright.zsh || fail "zsh cannot read its completions"; }
has fish && { fish --no-execute basinwright.fish || fail "fish cannot read its completions"; }
if has fish; then
  got=$(fish -c 'source basinwright.fish; complete -C "basinwright jobsheet x --format h"' | cut -f 1)
  [ "$got" = html ] || fail "fish offers: $got"
fi
if has man; then
  LC_ALL=C.UTF-8 MANWIDTH=80 man --warnings -E UTF-8 -l -Z ./basinwright.1 >/dev/null 2>err
  [ ! -s err ] || fail "man warns: $(cat err)"
  LC_ALL=C.UTF-8 MANWIDTH=80 man -l ./basinwright.1 2>/dev/null | grep -q 'basinwright - plan' || fail "man shows no name"
fi
if has mandoc; then
  mandoc -T lint -W warning ./basinwright.1 >err 2>&1
  [ ! -s err ] || fail "mandoc warns: $(cat err)"
fi
exit $failed
