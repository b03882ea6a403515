#!/usr/bin/env bash
# Many threads, each with banks of its own, under ThreadSanitizer: does the library share anything that it writes to?
#   tests/threads/run.sh [THREADS [ROUNDS]]
# Builds the library once more, which takes some minutes; no part of tests/run.sh for that.
set -euo pipefail
cd "$(dirname "$0")/../.."
cmake -S . -B build/threads -G Ninja -DCMAKE_BUILD_TYPE=Debug -DBANKWRIGHT_TESTS=OFF -DBANKWRIGHT_BINDINGS=OFF \
  "-DCMAKE_CXX_FLAGS_DEBUG=-O1 -g1 -fsanitize=thread" >build/threads.log
cmake --build build/threads --target bankwright >>build/threads.log
library=$(find build/threads -name 'libbankwright*.a' | head -n 1)
c++ -std=c++20 -O1 -g1 -fsanitize=thread -DBANKWRIGHT_COMPILED -Ilib/include -isystem /usr/include/eigen3 \
  tests/threads/many_threads.cpp "$library" -lfmt -pthread -o build/threads/many_threads
TSAN_OPTIONS="halt_on_error=1 exitcode=66" build/threads/many_threads data/examples/*.toml -- "${1:-8}" "${2:-3}"
