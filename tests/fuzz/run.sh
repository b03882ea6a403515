#!/usr/bin/env bash
# Fuzzes every target for so many minutes of processor time each, under AddressSanitizer and UndefinedBehaviorSanitizer, two
# at a time:
#   tests/fuzz/run.sh MINUTES [TARGET...]
# Prints minutes and executions a target. What breaks a promise is left in build/fuzz/found/TARGET; put it into tests/fuzz/found/TARGET with
# the cure. Needs clang and its runtime (Debian: clang libclang-rt-14-dev).
set -euo pipefail
cd "$(dirname "$0")/../.."
minutes=${1:?minutes a target}
shift
targets=("$@")
if [ ${#targets[@]} -eq 0 ]; then
  mapfile -t targets < <(sed -n 's/^inline void \([a-z_]*\)(std::string_view.*/\1/p' tests/fuzz/targets.hpp)
fi
mkdir -p build/fuzz

cmake -S . -B build/fuzz/library -G Ninja -DCMAKE_BUILD_TYPE=Debug -DCMAKE_CXX_COMPILER=clang++ -DBANKWRIGHT_TESTS=OFF \
  -DBANKWRIGHT_BINDINGS=OFF "-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g1 -fsanitize=fuzzer-no-link,address,undefined -fno-sanitize-recover=all" >build/fuzz/library.log
cmake --build build/fuzz/library --target bankwright >>build/fuzz/library.log
library=$(find build/fuzz/library -name 'libbankwright*.a' | head -n 1)

fuzz() {
  local target=$1 work=build/fuzz/$1
  mkdir -p "$work/corpus" "build/fuzz/found/$target"
  cp tests/fuzz/corpus/"$target"/* tests/fuzz/found/"$target"/* "$work/corpus" 2>/dev/null || true
  case $target in read_bank | round_trip | json) cp data/examples/*.toml "$work/corpus" ;; esac
  cat >"$work/fuzzer.cpp" <<END
#include "fuzz/targets.hpp"
extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    fuzz::$target({reinterpret_cast<char const*>(data), size});
    return 0;
}
END
  clang++ -std=c++20 -O1 -g1 -fsanitize=fuzzer,address,undefined -fno-sanitize-recover=all -DBANKWRIGHT_COMPILED \
    -Ilib/include -Itests -isystem /usr/include/eigen3 "$work/fuzzer.cpp" "$library" -lfmt -o "$work/fuzzer"
  # Processor time is counted, in slices of at most five minutes, so that a busy machine does not count as fuzzing.
  local status=0 seconds=0 executions=0 TIMEFORMAT='%U'
  while [ "$status" -eq 0 ] && [ "$seconds" -lt $((60 * minutes)) ]; do
    local left=$((60 * minutes - seconds)) spent
    spent=$({ time "$work/fuzzer" -max_total_time=$((left < 300 ? left : 300)) -timeout=60 -rss_limit_mb=2048 -max_len=20000 \
      -print_final_stats=1 -artifact_prefix="build/fuzz/found/$target/" "$work/corpus" >"$work/log" 2>&1; } 2>&1) || status=$?
    seconds=$((seconds + ${spent%.*} + 1))
    executions=$((executions + $(sed -n 's/^stat::number_of_executed_units: *//p' "$work/log" | tail -n 1) + 0))
  done
  printf '%-12s %3d min %12d executions, %6s inputs kept, %s\n' "$target" $((seconds / 60)) "$executions" \
    "$(find "$work/corpus" -type f | wc -l)" "$([ "$status" -eq 0 ] && echo 'nothing broken' || echo "BROKEN: see $work/log")"
  return "$status"
}
export -f fuzz
export minutes library
printf '%s\n' "${targets[@]}" | xargs -P 2 -I{} bash -c 'fuzz {}'
