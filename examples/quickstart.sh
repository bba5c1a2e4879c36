#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# From a fresh copy of the project to the first verdicts: sh examples/quickstart.sh
# Installs what the build needs (on Debian and its derivatives), builds into build/ (or $BUILD), and judges one wheel
# end and then an invented vehicle.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
build=${BUILD:-$root/build}
case $build in /*) ;; *) build=$PWD/$build ;; esac
. "$root/tests/need.sh"

quietly() { # COMMAND...
    "$@" >"$build.log" 2>&1 || { tail -n 30 "$build.log" >&2; exit 1; }
    rm -f "$build.log"
}

# Status 1 is a verdict too (a brake is out of adjustment), and so is 3 (something is undetermined).
judge() { # COMMAND-WORD...
    status=0
    "$rodtravel" "$@" || status=$?
    case $status in 0 | 1 | 3) ;; *) exit "$status" ;; esac
}

echo "1. What the build needs"
need build
echo "2. Building into $build"
[ -f "$build/build.ninja" ] || quietly meson setup "$build" "$root" --buildtype release
quietly ninja -C "$build" examples/cli/rodtravel
rodtravel=$build/examples/cli/rodtravel

echo "3. One wheel end: a type 30 chamber, 2 1/8 in released, 4 1/4 in applied, 95 psi"
echo
echo '$ rodtravel stroke 30 "2 1/8" "4 1/4" --class standard --psi 95 --division 1/16'
judge stroke 30 "2 1/8" "4 1/4" --class standard --psi 95 --division 1/16
echo "(exit status $status)"

echo
echo "4. A vehicle of an invented fleet: five axles, ten brakes"
echo
cd "$root"
echo '$ rodtravel vehicle examples/data/demo_vehicle.csv'
judge vehicle examples/data/demo_vehicle.csv
echo "(exit status $status)"

page=$build/examples/cli/page/brakes.html
[ -f "$page" ] || page="not in this build; it needs clang, lld, wasi-libc and libclang-rt-dev-wasm32"

cat <<END

Brake 3L is over its limit by 1/8 in, so both runs end with status 1, and the vehicle is not driven but reported.
1R and 2R are exactly at the limit and pass. 4L strokes farther than 3L and passes: it is a long-stroke chamber.
The stroke class of 5L could not be read off, so it was judged as standard, the strict side.
This is what the demo is meant to show; the quickstart itself went well.

The command:  $rodtravel
For a phone:  $page
END
