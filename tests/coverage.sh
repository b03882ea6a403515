#!/usr/bin/env bash
# How much of lib/ do the tests run? Builds with gcov's counters, runs the C++ tests and those of the command, and prints the share of lines
# and branches, then every line that nothing ran, with the reason that uncovered.md gives, if it knows it. Branches that only an exception
# takes are not counted: the compiler adds them to every call. Needs gcovr (Debian).
#   tests/coverage.sh
set -euo pipefail
cd "$(dirname "$0")/.."
build=build/coverage
mkdir -p build
cmake -S . -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Coverage -DBANKWRIGHT_TESTS=ON -DBANKWRIGHT_BINDINGS=OFF -DPython_EXECUTABLE=/usr/bin/python3 \
  "-DCMAKE_CXX_FLAGS=-O0 -g1 --coverage -fprofile-update=atomic" >"$build.log"
cmake --build "$build" >>"$build.log"
find "$build" -name '*.gcda' -delete
failed=0
ctest --test-dir "$build" --output-on-failure -j "$(nproc)" >>"$build.log" || failed=1
export BANKWRIGHT_COMMAND=$PWD/$build/bin/bankwright BANKWRIGHT_SOLVE_BANK=$PWD/$build/bin/solve_bank
export BANKWRIGHT_UNIT_FACTORS=$PWD/$build/bin/unit_factors PYTHONDONTWRITEBYTECODE=1
/usr/bin/python3 -m pytest -q -p no:cacheprovider tests/command tests/rules tests/golden tests/reference tests/standards tests/hostile/test_handmade.py >>"$build.log" || failed=1
gcovr --root . --object-directory "$build" --filter 'lib/' --exclude-throw-branches --exclude-unreachable-branches \
  --gcov-ignore-parse-errors -j "$(nproc)" --json "$build/lines.json" --print-summary | grep -E '^(lines|branches|functions)'
/usr/bin/python3 tests/uncovered.py "$build/lines.json"
[ "$failed" -eq 0 ] || { echo "some tests failed: see $build.log"; exit 1; }
