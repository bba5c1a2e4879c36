#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Builds the wheels of .packaging/wheels twice, in other folders and under other settings, compares them byte by byte, and
# tries them: sh wheels.sh ROOT FOLDER
#
# WHEELS are the targets (all), PYTHONS the interpreters whose headers are read and in which the wheels are tried. The
# wheels stay in FOLDER/one/dist. Each line that is printed says what was tried, and how.
set -eu
root=$1
folder=$2
wheels=${WHEELS:-all}
mkdir -p "$folder"
folder=$(CDPATH='' cd -- "$folder" && pwd)
dist=$folder/one/dist

fail() { # TEXT
    echo "wheels: $1" >&2
    exit 1
}

# CPython 3.9 or newer with its headers.
usable() { # INTERPRETER
    "$1" -c 'import os, sys, sysconfig
sys.exit(sys.version_info < (3, 9) or not os.path.exists(sysconfig.get_path("include") + "/Python.h"))' 2>/dev/null
}

# One word a line: those that are given, or those of the system and of pyenv.
interpreters() {
    for python in ${PYTHONS:-python3 python3.9 python3.10 "$HOME"/.pyenv/versions/3.*/bin/python3}; do
        if usable "$python"; then "$python" -c 'import sys; print(sys.executable)'; fi
    done | sort -u
}

tools() {
    [ -x "$folder/tools/bin/python3" ] || python3 -m venv "$folder/tools"
    "$folder/tools/bin/pip" install --quiet --disable-pip-version-check meson ninja 'swig>=4.4' ziglang pyproject-metadata \
        tomli auditwheel
}

# Both builds have the sources of one moment: a checkout may change in the many minutes between them.
stage() {
    rm -rf "$folder/sources"
    mkdir "$folder/sources"
    python3 -B -c 'import sys
sys.path.insert(0, sys.argv[1])
import build_backend
build_backend._copy(build_backend._root(), sys.argv[2])' "$root/bindings/python" "$folder/sources"
}

# Nothing that was compiled for one may serve the other.
build() { # NAME VARIABLE=VALUE...
    made=$folder/$1
    shift
    rm -rf "$made"
    mkdir -p "$made"
    cp -R "$folder/sources" "$made/sources"
    # shellcheck disable=SC2046 # a list of words
    env "$@" PATH="$folder/tools/bin:$PATH" SOURCE_DATE_EPOCH=1700000000 ZIG_GLOBAL_CACHE_DIR="$made/zig" CCACHE_BASEDIR="$made" \
        "$folder/tools/bin/python3" -B "$root/.packaging/wheels/build.py" "$folder/libraries" "$made" "$wheels" \
        $(interpreters) >"$made/log" 2>&1 || { tail -n 40 "$made/log"; fail "$made: a wheel cannot be built"; }
}

compare() {
    (cd "$dist" && sha256sum -- *.whl) >"$folder/one.sums"
    (cd "$folder/deeper/two/dist" && sha256sum -- *.whl) >"$folder/two.sums"
    [ -s "$folder/one.sums" ] && diff "$folder/one.sums" "$folder/two.sums" || fail "two builds differ"
    echo "$(wc -l <"$folder/one.sums") wheels are the same, built twice"
}

# In an environment of its own, pip takes the wheel that fits.
try_here() { # INTERPRETER
    venv=$folder/venv
    rm -rf "$venv"
    "$1" -m venv "$venv" || fail "$1 makes no virtual environment"
    "$venv/bin/pip" install --quiet --disable-pip-version-check --no-index --find-links "$dist" rodtravel
    sh "$root/tests/packages/installed.sh" "$root" "$venv/bin/python" "$venv/bin/rodtravel"
    "$venv/bin/pip" uninstall --quiet --yes rodtravel
    [ ! -e "$venv/bin/rodtravel" ] || fail "the command is left behind"
    echo "tried: $("$venv/bin/python" -c 'import sys, platform; print(sys.version.split(" (")[0], platform.machine())')"
}

# The Python of Debian for that processor, under an emulator. pip of this machine puts the wheel into a folder.
try_emulated() {
    arm=$folder/python-arm64
    [ -x "$arm/python" ] || sh "$root/tests/machines/prepare.sh" python-arm64 "$arm" >"$arm.log" 2>&1 ||
        { tail -n 20 "$arm.log"; fail "no Python for aarch64"; }
    rm -rf "$arm/wheel"
    version=$("$arm/python" -c 'import sys; print("%d.%d" % sys.version_info[:2])')
    "$folder/tools/bin/pip" install --quiet --disable-pip-version-check --no-index --find-links "$dist" \
        --only-binary :all: --platform manylinux2014_aarch64 --python-version "$version" --target "$arm/wheel" rodtravel
    printf '#!/bin/sh\nPYTHONPATH=%s exec %s "$@"\n' "$arm/wheel" "$arm/python" >"$arm/wheel-python"
    printf '#!/bin/sh\nexec %s %s "$@"\n' "$arm/run" "$arm/wheel/bin/rodtravel" >"$arm/wheel-command"
    chmod +x "$arm/wheel-python" "$arm/wheel-command"
    sh "$root/tests/packages/installed.sh" "$root" "$arm/wheel-python" "$arm/wheel-command"
    echo "tried: $version aarch64, under an emulator"
}

# The command is one static program, which needs no musl.
try_musl_command() { # PROCESSOR [EMULATOR]
    musl=$folder/musl-$1
    rm -rf "$musl"
    mkdir "$musl"
    python3 -m zipfile -e "$dist"/*-musllinux_1_2_"$1".whl "$musl"
    program=$(find "$musl" -path '*.data/scripts/rodtravel')
    chmod +x "$program"
    shift
    "$@" "$program" stroke 30 "2 1/8" "4 1/8" --class standard --psi 95 --json | grep -q '"in-adjustment"' ||
        fail "the command of musllinux gives no answer"
}

has() { # TARGET
    case ,$wheels, in *,all,* | *,"$1",*) return 0 ;; *) return 1 ;; esac
}

tools
sh "$root/.packaging/wheels/fetch.sh" "$folder/libraries"
umask 022
stage
build one TZ=UTC LC_ALL=C
umask 077
build deeper/two TZ=Pacific/Apia LC_ALL=C.UTF-8
umask 022
compare
PATH="$folder/tools/bin:$PATH" "$folder/tools/bin/python3" -B "$root/tests/packages/wheel_contents.py" "$root" \
    "$dist"/*.whl
if has manylinux-x86_64; then for python in $(interpreters); do try_here "$python"; done; fi
if has manylinux-aarch64; then try_emulated; fi
if has musllinux-x86_64; then try_musl_command x86_64; fi
if has musllinux-aarch64; then try_musl_command aarch64 qemu-aarch64-static; fi
