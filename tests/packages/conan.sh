#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Makes the Conan package of .packaging/conan, static and shared, with GNU MP and in plain C, and runs a program with
# each. The server is not asked: the system's GNU MP stands for its gmp package. sh conan.sh ROOT FOLDER
set -eu
root=$1
folder=$2
tree=$folder/tree
rm -rf "$tree"
mkdir -p "$tree"
# Conan builds test_package where it is.
(cd "$root" && git ls-files -z -co --exclude-standard | tar -c --null -T -) | tar -x -C "$tree"
[ -x "$folder/venv/bin/conan" ] || python3 -m venv "$folder/venv"
"$folder/venv/bin/pip" install --quiet --disable-pip-version-check conan meson ninja
PATH=$folder/venv/bin:$PATH
CONAN_HOME=$folder/home
export PATH CONAN_HOME
conan profile detect --force >"$folder/profile.log" 2>&1
conan create --no-remote "$tree/tests/packages/gmp" >"$folder/gmp.log" 2>&1 || { tail -n 40 "$folder/gmp.log"; exit 1; }
for options in "shared=False exact=gmp" "shared=True exact=gmp" "shared=False exact=plain"; do
    set --
    for option in $options; do set -- "$@" -o "&:$option"; done
    log=$folder/$(echo "$options" | tr ' =' '--').log
    conan create --no-remote --build=missing "$tree/.packaging/conan" "$@" >"$log" 2>&1 || { tail -n 60 "$log"; exit 1; }
    grep 'rodtravel .*: in-adjustment' "$log" || { tail -n 40 "$log"; exit 1; }
done
