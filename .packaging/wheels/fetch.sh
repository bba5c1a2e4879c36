#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Puts the sources of the libraries in the command of a wheel into a folder, from the source packages of this Debian, and
# the recipe that builds them: sh fetch.sh FOLDER
#
# apt has lists of its own there, so that no setting of the system changes.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
mkdir -p "$1/apt/lists/partial" "$1/apt/cache/archives/partial" "$1/apt/sources"
folder=$(CDPATH='' cd -- "$1" && pwd)

apt() { # ARGUMENT...
    apt-get -qq -o APT::Sandbox::User="$(id -un)" -o Dir::State::lists="$folder/apt/lists" -o Dir::Cache="$folder/apt/cache" \
        -o Dir::Etc::SourceList=/dev/null -o Dir::Etc::SourceParts="$folder/apt/sources" "$@"
}

# A version whose files are not there, or not yet, has an older one behind it.
source_of() { # PACKAGE
    for version in $(apt_versions "$1"); do
        if (cd "$folder" && apt source "$1=$version") >>"$folder/apt/log" 2>&1; then return 0; fi
    done
    tail -n 20 "$folder/apt/log"
    return 1
}

apt_versions() { # PACKAGE
    apt-cache -o Dir::State::lists="$folder/apt/lists" -o Dir::Cache="$folder/apt/cache" -o Dir::Etc::SourceList=/dev/null \
        -o Dir::Etc::SourceParts="$folder/apt/sources" showsrc "$1" | sed -n 's/^Version: //p' | sort -u -r -V
}

for file in /etc/apt/sources.list.d/*.sources; do
    if [ -f "$file" ]; then sed 's/^Types:.*/Types: deb-src/' "$file" >"$folder/apt/sources/${file##*/}"; fi
done
cat /etc/apt/sources.list /etc/apt/sources.list.d/*.list 2>/dev/null |
    sed -n 's/^deb \(.*\)/deb-src \1/p' >"$folder/apt/sources/own.list"
apt update >"$folder/apt/log" 2>&1 || true
for package in zlib libzstd libxlsxwriter; do
    [ ! -d "$folder/$package" ] || continue
    source_of "$package"
    unpacked=$(cd "$folder" && echo "$package"-[0-9]*/)
    echo "${unpacked%/}" | sed 's/^[^0-9]*\([0-9.]*[0-9]\).*/\1/' >"$folder/$unpacked/VERSION"
    mv "$folder/$unpacked" "$folder/$package"
done
cp "$here/libraries/meson.build" "$folder/meson.build"
