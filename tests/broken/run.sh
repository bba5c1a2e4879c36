#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Feeds broken tables to the table compiler: run.sh TABLEC DIRECTORY. The sound set is in good/; each
# TABLE-FAULT.csv takes the place of one of its tables, and TABLE-FAULT.expected is what the compiler must say
# to that, word for word. It must fail then, and write nothing.
case $1 in /*) tablec=$1 ;; *) tablec=$PWD/$1 ;; esac
cases=$2
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
count=0
failed=0

compile() {
    (cd "$work" && rm -f out.c && "$tablec" "$1" sources.csv chambers.csv limits.csv rulesets.csv vehicle.csv aircheck.csv \
        volumes.csv >said 2>&1)
}

result() {
    count=$((count + 1))
    if [ "$1" = 0 ]; then
        echo "ok $count - $2"
    else
        failed=1
        echo "not ok $count - $2"
        sed 's/^/# said: /' "$work/said"
    fi
}

cp "$cases"/good/*.csv "$work"
compile out.c && [ -s "$work/out.c" ] && [ ! -s "$work/said" ]
result $? "the sound set compiles without a word"
cp "$work/out.c" "$work/first.c"
compile out.c && cmp -s "$work/first.c" "$work/out.c"
result $? "the same tables give the same bytes"
compile --check && [ ! -e "$work/out.c" ]
result $? "--check writes nothing"

for case in "$cases"/*-*.csv; do
    name=$(basename "$case" .csv)
    cp "$cases"/good/*.csv "$work"
    cp "$case" "$work/${name%%-*}.csv"
    compile out.c
    status=$?
    [ $status = 1 ] && [ ! -e "$work/out.c" ] && cmp -s "$work/said" "$cases/$name.expected"
    result $? "$name"
done

rm "$work/limits.csv"
compile out.c
status=$?
[ $status = 1 ] && grep -qx 'limits.csv:0: the file cannot be read' "$work/said"
result $? "a table that is not there"
echo "1..$count"
exit $failed
