#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Tries a package that is installed, outside of the tree, and its command: sh installed.sh ROOT PYTHON COMMAND
#
# PYTHON and COMMAND may be scripts that call an emulator.
set -eu
root=$1
python=$2
# Nothing that the tests find may come from a build tree.
unset PYTHONPATH
export CASES="$root/tests/cases" EXAMPLES="$root/examples" ROOT="$root" COMMAND="$3" PYTHONDONTWRITEBYTECODE=1 PYTHONUTF8=1
log=$(mktemp)
trap 'rm -f "$log"' EXIT

"$COMMAND" stroke 30L "2 3/4" "5 5/16" --psi 95 --json >"$log" || [ $? = 1 ]
grep -q '"verdict": *"out-of-adjustment"' "$log"
for name in cases objects errors columns strange judge shown docs seams; do
    "$python" "$root/tests/bindings/python/test_$name.py" >"$log" 2>&1 || { cat "$log"; exit 1; }
    ! grep -A 20 '^not ok' "$log" || exit 1
    grep -q '^ok' "$log" || { echo "$name: no test"; exit 1; }
done
