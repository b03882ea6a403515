#!/usr/bin/env bash
# From a bare Debian 12 to a planned bank, a solved one, and a miswired one explained. Installs what is missing, builds the command,
# and shows each command line before its output.
set -euo pipefail
cd "$(dirname "$0")/.."

apps/install_packages.sh apps/packages.txt

echo "building the command in build/release; a few minutes the first time"
mkdir -p build
if ! { cmake --preset release && cmake --build --preset release --target bankwright_command; } >build/try.log 2>&1; then
  tail -n 40 build/try.log >&2
  echo "the build failed; all of it is in build/try.log" >&2
  exit 1
fi

# show STATUS COMMAND...: the command line, then its output; its exit status must be STATUS.
show() {
  local expected=$1 status=0
  shift
  printf '\n$ %s\n' "$*"
  "$@" || status=$?
  if [ "$status" -ne "$expected" ]; then
    echo "exit status $status, expected $expected" >&2
    exit 1
  fi
}

bankwright=build/release/bin/bankwright
good=data/examples/bow-36v.toml
miswired=data/examples/bow-36v-miswired.toml

show 0 "$bankwright" plan --system "12 V" --motor "20 A" --run "6 ft" --runtime "1 h" --battery "12 V AGM 60 Ah" -o build/boat.toml
show 0 "$bankwright" check build/boat.toml
show 0 "$bankwright" check "$good"
show 0 "$bankwright" solve "$good"
show 1 "$bankwright" check "$miswired"
show 0 "$bankwright" solve "$miswired"

printf '\nThe first bank is planned, the second sound and solved; the third is miswired, and check says how. Your own: %s plan\n' "$bankwright"
