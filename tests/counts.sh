#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Runs a test whose programs count for the task `coverage`: sh counts.sh FOLDER COMMAND...
# Each process has a file of its own, because one that is killed breaks a file that others add to, and then they say so
# where the tests look. The counts of the test are added up after it.
folder=$(mktemp -d "$1/XXXXXX")
shift
status=0
LLVM_PROFILE_FILE=$folder/%p.profraw "$@" || status=$?
find "$folder" -name '*.profraw' -size +0 >"$folder.list"
[ ! -s "$folder.list" ] || llvm-profdata-19 merge --failure-mode=all --input-files="$folder.list" -o "$folder.profdata" 2>/dev/null
rm -rf "$folder" "$folder.list"
exit "$status"
