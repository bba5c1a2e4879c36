#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Puts into a folder what a build for another machine needs beside its compiler: sh prepare.sh MACHINE FOLDER
#
# Libraries of another architecture come from Debian's packages, which are unpacked in the folder: nothing of them is
# installed, and no setting of the system changes. Where Debian has no cmocka it is compiled from Debian's source package.
# Two cross files in the folder tell it to Meson: libraries.ini, and runner.ini where the programs need an emulator. The
# machine python-arm64 is a Python instead, on which a wheel is tried.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
machine=$1
mkdir -p "$2"
folder=$(CDPATH='' cd -- "$2" && pwd)
own=$(dpkg --print-architecture)

# apt with lists of its own, for one architecture.
apt() { # ARCHITECTURE ARGUMENT...
    architecture=$1
    shift
    apt-get -qq -o APT::Architecture="$architecture" -o APT::Architectures="$architecture" \
        -o APT::Sandbox::User="$(id -un)" -o Dir::State::lists="$folder/lists" -o Dir::Cache="$folder/cache" \
        -o Dir::Etc::SourceList="$folder/sources.list" -o Dir::Etc::SourceParts="$folder/sources" "$@"
}

apt_cache() { # ARCHITECTURE ARGUMENT...
    architecture=$1
    shift
    apt-cache -o APT::Architecture="$architecture" -o APT::Architectures="$architecture" -o Dir::State::lists="$folder/lists" \
        -o Dir::Cache="$folder/cache" -o Dir::Etc::SourceList="$folder/sources.list" -o Dir::Etc::SourceParts="$folder/sources" "$@"
}

# The sources of the system, and their source packages.
update() { # ARCHITECTURE
    mkdir -p "$folder/lists/partial" "$folder/cache/archives/partial" "$folder/sources" "$folder/packages"
    for file in /etc/apt/sources.list.d/*.sources; do
        if [ -f "$file" ]; then sed 's/^Types:.*/Types: deb deb-src/' "$file" >"$folder/sources/${file##*/}"; fi
    done
    cat /etc/apt/sources.list /etc/apt/sources.list.d/*.list 2>/dev/null |
        sed -n 's/^deb \(.*\)/deb \1\ndeb-src \1/p' >"$folder/sources.list"
    apt "$1" update || echo "$machine: a list of packages could not be read; the others may be enough"
}

libraries() { # FOLDER-OF-PC-FILES
    printf "[properties]\npkg_config_libdir = '%s'\n" "$1" >"$folder/libraries.ini"
}

# An emulator is asked for even where the machine is so near that Meson would try without one.
runner() { # COMMAND...
    printf '[properties]\nneeds_exe_wrapper = true\n\n[binaries]\nexe_wrapper = ['
    printf "'%s', " "$@"
    printf ']\n'
} >"$folder/runner.ini"

debian() { # ARCHITECTURE EMULATOR
    update "$1"
    (cd "$folder/packages" && apt "$1" download libc6 libgcc-s1 libgmp10 libgmp-dev libcmocka0 libcmocka-dev)
    root=$folder/root
    for package in "$folder"/packages/*.deb; do dpkg-deb -x "$package" "$root"; done
    runner "$2" -L "$root"
    set -- "$root"/usr/lib/*/pkgconfig
    sed -i -E "s,(=|-[IL])/usr,\1$root/usr," "$1"/*.pc
    # A compiler of the architecture looks there by itself.
    cp "$root"/usr/include/*/gmp.h "$root/usr/include"
    libraries "$1"
    # The linker looks there for what a shared library needs.
    printf "[built-in options]\nc_link_args = '-Wl,-rpath-link,%s'\n" "${1%/*}" >>"$folder/libraries.ini"
}

# The Python of another architecture, for trying a wheel: FOLDER/python runs it.
python() { # ARCHITECTURE EMULATOR
    update "$1"
    version=$(apt_cache "$1" show python3 | sed -n 's/^Depends:.* \(python3\.[0-9]*\) .*/\1/p' | head -n 1)
    (cd "$folder/packages" && apt "$1" download libc6 libgcc-s1 zlib1g libexpat1 libffi8 "$version" "$version-minimal" \
        "lib$version-minimal" "lib$version-stdlib" libsqlite3-0)
    for package in "$folder"/packages/*.deb; do dpkg-deb -x "$package" "$folder/root"; done
    # It starts itself by the name that it was called by, which is this script.
    printf '#!/bin/sh\nexport PYTHONHOME=%s\nexec %s -0 "$0" -L %s %s "$@"\n' "$folder/root/usr" "$2" "$folder/root" \
        "$folder/root/usr/bin/$version" >"$folder/python"
    printf '#!/bin/sh\nexec %s -L %s "$@"\n' "$2" "$folder/root" >"$folder/run"
    chmod +x "$folder/python" "$folder/run"
}

# Debian's header declares uintptr_t by itself where this macro is not there.
cmocka() { # COMPILER ARGUMENT...
    update "$own"
    (cd "$folder/packages" && apt "$own" source cmocka >/dev/null)
    set -- "$@" -O1 -w -D_UINTPTR_T
    source=$(echo "$folder"/packages/cmocka-*/.)
    "$@" -DHAVE_STDINT_H -DHAVE_INTTYPES_H -DHAVE_SIGNAL_H -DHAVE_GCC_THREAD_LOCAL_STORAGE -I "$source/include" \
        -c "$source/src/cmocka.c" -o "$folder/cmocka.o"
    printf 'Name: cmocka\nDescription: unit tests\nVersion: 1.1\n' >"$folder/cmocka.pc"
    printf 'Cflags: %s\n' "-isystem $source/include -D_UINTPTR_T" >>"$folder/cmocka.pc"
    printf 'Libs: %s\n' "$folder/cmocka.o" >>"$folder/cmocka.pc"
    libraries "$folder"
}

mingw() {
    cmocka x86_64-w64-mingw32-gcc -D__USE_MINGW_ANSI_STDIO=1
    export WINEPREFIX="$folder/wine" WINEDEBUG=-all WINEDLLOVERRIDES='mscoree,mshtml='
    wineboot --init
    wineserver --wait
    runner env WINEPREFIX="$WINEPREFIX" WINEDEBUG=-all wine
}

# The C library of WASI has signals as an extra, and setjmp in newer versions alone.
wasm32() {
    jumps='-mllvm -wasm-enable-sjlj -mexception-handling'
    # shellcheck disable=SC2086 # a list of words
    set -- sh "$here/wasi/clang.sh" $jumps -I "$here/wasi"
    cmocka "$@" -D_WASI_EMULATED_SIGNAL
    "$@" -O1 -c "$here/wasi/setjmp.c" -o "$folder/setjmp.o"
    sed -i "s|^Cflags:|& -I$here/wasi|; s|^Libs:.*|& $folder/setjmp.o -lwasi-emulated-signal|" "$folder/cmocka.pc"
    runner node --no-warnings "$here/wasi.mjs"
    printf "c = ['sh', '%s']\n" "$here/wasi/clang.sh" >>"$folder/runner.ini"
}

case $machine in
i386) debian i386 qemu-i386-static ;;
armhf) debian armhf qemu-arm-static ;;
arm64) debian arm64 qemu-aarch64-static ;;
s390x) debian s390x qemu-s390x-static ;;
musl) cmocka musl-gcc ;;
python-arm64) python arm64 qemu-aarch64-static ;;
mingw | wasm32) "$machine" ;;
*) echo "unknown machine $machine" >&2; exit 2 ;;
esac
