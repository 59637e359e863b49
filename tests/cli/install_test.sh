#!/usr/bin/env bash
# Installing puts the program where a prefix says, and uninstalling leaves nothing: into an empty prefix, into one that is in use
# and below DESTDIR (GNU coding standards, 7.2.4 and "uninstall" of 7.2.6).
set -u
program=$1
source=$2
build=$(dirname "$(realpath "$program")")
[ -f "$build/uninstall.cmake" ] && command -v cmake >/dev/null || exit 77
work=$(mktemp -d)
# Whoever installed from this build may still want to uninstall.
mkdir "$work/kept" && find "$build" -maxdepth 1 -name 'install*_*.txt' -exec mv {} "$work/kept" \;
trap 'rm -f "$build"/install_manifest*.txt "$build/installed_folders.txt"; find "$work/kept" -type f -exec mv {} "$build" \;; rm -rf "$work"' EXIT
failed=0
fail() { echo "FAILED: $*" >&2; failed=1; }
installs() { cmake --install "$build" --prefix "$1" >"$work/said" 2>&1 || fail "install: $(tail -n 3 "$work/said")"; }
uninstalls() { cmake -P "$build/uninstall.cmake" >"$work/said" 2>&1 || fail "uninstall: $(tail -n 3 "$work/said")"; }

# A prefix that is not there yet is gone again.
installs "$work/new/place"
"$work/new/place/bin/basinwright" jobsheet "$work/new/place/share/doc/basinwright/examples/plain-pool.json" >/dev/null ||
  fail "what was installed does not run"
installs "$work/new/place"  # Once more changes nothing.
uninstalls
[ ! -e "$work/new" ] || fail "left behind: $(find "$work/new" | head -n 5)"

# One in use is as it was, with its empty folders and what others put beside ours.
mkdir -p "$work/used/bin" "$work/used/share/man/man1" "$work/used/share/doc/other"
echo other >"$work/used/share/doc/other/README"
listed() { (cd "$1" && find . | sort); }
listed "$work/used" >"$work/before"
installs "$work/used"
uninstalls
listed "$work/used" | diff "$work/before" - >"$work/said" || fail "another tree than before: $(cat "$work/said")"

# Below DESTDIR, as packagers do.
export DESTDIR=$work/stage
installs /usr
[ -x "$work/stage/usr/bin/basinwright" ] || fail "DESTDIR is not kept"
uninstalls
[ ! -e "$work/stage" ] || fail "left behind: $(find "$work/stage" | head -n 5)"

# Nothing was installed: said, not done.
cmake -P "$build/uninstall.cmake" >"$work/said" 2>&1 && fail "uninstalled what was not there"
exit $failed
