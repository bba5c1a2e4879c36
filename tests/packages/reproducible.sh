#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Builds a release of the library and the command twice, in folders, on days, with settings and names that differ, and
# compares every file that would be installed: sh reproducible.sh ROOT FOLDER
set -eu
root=$1
folder=$2
rm -rf "$folder"

# The cache of a compiler would answer with the first build. No file may hold a time, and a manual page has the given day.
build() { # NAME SOURCES BUILD DAY VARIABLE=VALUE...
    name=$1
    source=$folder/$2
    made=$folder/$3
    mkdir -p "$source"
    (cd "$root" && git ls-files -z -co --exclude-standard | tar -c --null -T -) | tar -x -C "$source"
    find "$source" -exec touch -d "$4" {} +
    shift 4
    (
        export "$@" CCACHE_DISABLE=1 SOURCE_DATE_EPOCH=1700000000
        meson setup "$made" "$source" --prefix=/usr --libdir=lib --buildtype=release -Dc_args=-Werror=date-time
        meson compile -C "$made" rodtravel:executable rodtravel:static_library rodtravel:shared_library man3 bill
        meson install -C "$made" --no-rebuild --destdir "$folder/$name" --skip-subprojects --tags=runtime,devel,doc,man
        # The package for npm is packed where it is built.
        if grep -q bindings/javascript/package.json "$made/build.ninja"; then
            ninja -C "$made" bindings/javascript/package.json
            mkdir -m 755 "$folder/$name/npm"
            install -m 644 "$made"/bindings/javascript/*.*js "$made"/bindings/javascript/*.*ts \
                "$made"/bindings/javascript/*.json "$folder/$name/npm"
        fi
    ) >"$folder/$name.log" 2>&1 || { tail -n 30 "$folder/$name.log"; exit 1; }
    (cd "$folder/$name" && find . ! -type f -printf '%M %p %l\n' -o -printf '%M ' -exec sha256sum {} \; | sort -k 3) \
        >"$folder/$name.sums"
}

umask 022
build one sources build 2026-01-02 TZ=UTC LC_ALL=C HOME=/one USER=one LOGNAME=one
umask 077
build two deeper/in/other 'deeper/a build' 2001-02-03 TZ=Pacific/Apia LC_ALL=C.UTF-8 HOME=/two USER=two LOGNAME=two
# A comparison of nothing proves nothing.
for name in bin/rodtravel lib/librodtravel.a lib/librodtravel.so.0.1.0 man3/rodtravel.3; do grep -q "$name" "$folder/one.sums"; done
diff "$folder/one.sums" "$folder/two.sums" >"$folder/differ" || { cat "$folder/differ"; exit 1; }
echo "$(wc -l <"$folder/one.sums") files and folders are the same"
