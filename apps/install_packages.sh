#!/usr/bin/env bash
# Installs the Debian packages that the given lists name and the machine lacks, and says first which ones.
#   apps/install_packages.sh apps/packages.txt [MORE.txt...]
set -euo pipefail

mapfile -t wanted < <(sed 's/#.*//' "$@" | awk 'NF { print $1 }' | sort -u)
if ! command -v dpkg-query >/dev/null; then
  echo "not a Debian system: this needs what Debian calls ${wanted[*]}" >&2
  exit 0 # the build says what is really missing
fi
installed=$(dpkg-query -W -f='${Package} ${db:Status-Status}\n' | awk '$2 == "installed" { print $1 }' | sort -u)
mapfile -t missing < <(comm -23 <(printf '%s\n' "${wanted[@]}") <(echo "$installed"))
if [ ${#missing[@]} -eq 0 ]; then
  echo "every Debian package that is needed is installed already"
  exit 0
fi
echo "about to install these Debian packages, and what they depend on:"
echo "${missing[*]}" | fmt -w 100 | sed 's/^/  /'

as_root=()
if [ "$(id -u)" -ne 0 ]; then
  command -v sudo >/dev/null || { echo "run this as root, or install sudo" >&2; exit 1; }
  as_root=(sudo)
fi
apt() { "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Dpkg::Use-Pty=0 "$@"; }
install() { apt install -y --no-install-recommends "${missing[@]}" >/dev/null; }

# The lists of packages are fetched only if the present ones do not know a package, or know a version that is gone.
if ! apt-get -qq --simulate install "${missing[@]}" >/dev/null 2>&1; then
  apt update
  install
elif ! install; then
  apt update
  install
fi
