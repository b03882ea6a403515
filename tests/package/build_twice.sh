#!/usr/bin/env bash
# Is the command the same to the byte, wherever and whenever it is built? Builds it as a release twice, in folders of
# different names, without a compiler cache, and compares. Some ten minutes of one core.
#   tests/package/build_twice.sh
set -euo pipefail
cd "$(dirname "$0")/../.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export CCACHE_DISABLE=1
for place in here "there, with a longer name"; do
  mkdir "$work/$place"
  git ls-files -z | xargs -0 cp --parents -t "$work/$place"
  cmake -S "$work/$place" -B "$work/$place/out" -G Ninja -DCMAKE_BUILD_TYPE=Release -DBANKWRIGHT_TESTS=OFF -DBANKWRIGHT_BINDINGS=OFF >"$work/log"
  cmake --build "$work/$place/out" --target bankwright >>"$work/log" || { tail -n 40 "$work/log"; exit 1; }
done
sha256sum "$work"/*/out/bin/bankwright | sed 's/ .*//' | uniq -c
cmp "$work/here/out/bin/bankwright" "$work/there, with a longer name/out/bin/bankwright"
echo "the same to the byte"
