#!/usr/bin/env bash
# Installs what the tests need, builds, and runs every test there is; the last line counts them. `tests/run.sh unit python`
# runs the folders so named only.
set -euo pipefail
cd "$(dirname "$0")/.."
apps/install_packages.sh apps/packages.txt tests/packages.txt
exec /usr/bin/python3 tests/run_all.py "$@"
