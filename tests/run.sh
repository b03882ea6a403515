#!/usr/bin/env bash
# Installs what the tests need, builds, and runs every test there is; the last line counts them. `tests/run.sh unit python`
# runs the folders so named only.
set -euo pipefail
cd "$(dirname "$0")/.."
apps/install_packages.sh apps/packages.txt tests/packages.txt
# A Node.js that brings npm along has no such package; Debian's own does.
command -v npm >/dev/null || apps/install_packages.sh tests/pictures/packages.txt
exec /usr/bin/python3 tests/run_all.py "$@"
