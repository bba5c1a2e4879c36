#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# From a fresh copy of the project to the first answers: sh examples/quickstart.sh
# Installs what the build needs (on Debian and its kin), builds into build/ (or $BUILD), and judges one wheel
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

# 1 is an answer too (a brake is out of adjustment), and so is 3 (something is undetermined).
show() { # COMMAND-WORD...
    echo
    echo "\$ rodtravel $*"
    status=0
    "$rodtravel" "$@" || status=$?
    echo "(exit status $status)"
    case $status in 0 | 1 | 3) ;; *) exit "$status" ;; esac
}

echo "1. What the build needs"
need build
echo "2. Building into $build"
[ -f "$build/build.ninja" ] || quietly meson setup "$build" "$root" --buildtype release
quietly ninja -C "$build" examples/cli/rodtravel
rodtravel=$build/examples/cli/rodtravel

echo "3. One wheel end: a type 30 chamber, 2 1/8 in released, 4 1/4 in applied, 95 psi"
show stroke 30 "2 1/8" "4 1/4" --class standard --psi 95 --division 1/16

cd "$root"
echo
echo "4. A vehicle: five axles, ten brakes (invented; examples/data/demo_vehicle.csv)"
show batch examples/data/demo_vehicle.csv

cat <<END

The left brake of axle 3 is over its limit by 1/8 in, so the status of both runs is 1. That is what the demo is
meant to show; the quickstart itself went well. Do not drive a vehicle with such a brake: report it.
The command stands in $rodtravel
END
