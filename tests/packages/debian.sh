#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Builds the Debian packages of .packaging/debian, lets lintian read them, installs them into a folder of their own and
# uses them from there: sh debian.sh ROOT FOLDER
set -eu
root=$1
folder=$2
version=$(sed -n "s/^  version: '\(.*\)',$/\1/p" "$root/meson.build")
source=$folder/rodtravel-$version
rm -rf "$folder"
mkdir -p "$source"

(cd "$root" && git ls-files -z -co --exclude-standard | tar -c --null -T -) | tar -x -C "$source"
tar -c -J -f "$folder/rodtravel_$version.orig.tar.xz" -C "$folder" "rodtravel-$version"
cp -R "$root/.packaging/debian" "$source/debian"
(cd "$source" && dpkg-buildpackage -us -uc) >"$folder/build.log" 2>&1 || { tail -n 40 "$folder/build.log"; exit 1; }
lintian --fail-on error --tag-display-limit 0 "$folder"/*.changes >"$folder/lintian.log" || { cat "$folder/lintian.log"; exit 1; }

# It is loaded, not linked.
dpkg-deb --field "$folder"/rodtravel_*.deb Depends | grep -q libxlsxwriter

# dpkg keeps a list of packages of its own for this folder; what they depend on is the machine's.
installed=$folder/installed
mkdir -p "$installed/var/lib/dpkg/info" "$installed/var/lib/dpkg/updates"
touch "$installed/var/lib/dpkg/status"
dpkg_here() { fakeroot dpkg --root="$installed" --force-depends --force-not-root --force-script-chrootless "$@" >>"$folder/install.log" 2>&1; }
dpkg_here --install "$folder"/librodtravel0_*.deb "$folder"/librodtravel-dev_*.deb "$folder"/rodtravel_*.deb
libraries=$(dirname "$(find "$installed/usr/lib" -name librodtravel.so.0)")
PKG_CONFIG_PATH=$libraries/pkgconfig
PKG_CONFIG_SYSROOT_DIR=$installed
LD_LIBRARY_PATH=$libraries
export PKG_CONFIG_PATH PKG_CONFIG_SYSROOT_DIR LD_LIBRARY_PATH

# shellcheck disable=SC2046 # options are words
cc "$source/.packaging/conan/test_package/judge.c" -o "$folder/judge" $(pkg-config --cflags --libs rodtravel)
"$folder/judge"
"$installed/usr/bin/rodtravel" stroke 30 "2 1/8" "4 1/8" --class standard --psi 95 --json | grep -q '"in-adjustment"'
for page in man1/rodtravel.1.gz man3/rodtravel.3.gz man3/rodt_error.3.gz; do [ -f "$installed/usr/share/man/$page" ]; done
find "$installed/usr/share/doc/rodtravel/tables" -name 'README.md*' | grep -q .
dpkg_here --purge rodtravel librodtravel-dev librodtravel0
left=$(find "$installed/usr" -type f 2>/dev/null | head)
[ -z "$left" ] || { echo "left behind: $left"; exit 1; }
