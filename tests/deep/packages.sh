#!/usr/bin/env bash
# By hand: packages as others meet them. cmake --install, Debian packages under lintian, an example project outside the
# tree, and the same bytes from two builds in two places. Needs lintian, dpkg-dev, file.
# Usage: tests/deep/packages.sh FOLDER   (a new one, some hundred megabytes)
set -euo pipefail
source=$(cd "$(dirname "$0")/../.." && pwd)
mkdir -p "$1"
folder=$(cd "$1" && pwd)
export CCACHE_DISABLE=1
commit=$(git -C "$source" rev-parse HEAD)  # Somebody may commit meanwhile.
SOURCE_DATE_EPOCH=$(git -C "$source" log -1 --format=%ct "$commit")
export SOURCE_DATE_EPOCH
for place in one another/deeper; do
  mkdir -p "$folder/$place"
  git -C "$source" archive "$commit" | tar -x -C "$folder/$place"
  cmake -S "$folder/$place" -B "$folder/$place/build" -DCMAKE_BUILD_TYPE=Release -DBASINWRIGHT_TESTS=OFF >/dev/null
  cmake --build "$folder/$place/build" -j2 >/dev/null
  (cd "$folder/$place/build" && cpack >/dev/null)
done
for deb in "$folder"/one/build/*.deb; do
  cmp "$deb" "$folder/another/deeper/build/$(basename "$deb")"
  echo "the same from both places: $(basename "$deb")"
  lintian --fail-on error --tag-display-limit 0 "$deb"
done
cmake --install "$folder/one/build" --prefix "$folder/installed" >/dev/null
"$folder/installed/bin/basinwright" --version
man --warnings -E UTF-8 -l -Z "$folder/installed/share/man/man1/basinwright.1.gz" >/dev/null
cp -r "$source/examples/library" "$folder/library"
cmake -S "$folder/library" -B "$folder/library/build" -DCMAKE_PREFIX_PATH="$folder/installed" >/dev/null
cmake --build "$folder/library/build" >/dev/null
"$folder/library/build/kits" "$source/examples/plain-pool.json"
