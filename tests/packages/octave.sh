# SPDX-License-Identifier: Apache-2.0
# octave.sh ARCHIVE FOLDER ROOT: installs the package of Octave from its sources as people do, into a place of its own,
# without a network, and runs the tests of the binding there.
set -eu
archive=$1
folder=$2
root=$3
rm -rf "$folder"
mkdir -p "$folder"
cd "$folder"
unset OCTAVE_PATH
export OMP_NUM_THREADS="${JOBS:-2}" # so many jobs of make
cat >place.m <<'END'
pkg prefix installed installed
pkg local_list installed.list
END
{
    cat place.m
    echo "pkg install -verbose $archive"
} >install.m
octave-cli --norc install.m >log 2>&1 || { tail -n 30 log; exit 1; }
! grep -n 'warning:' log
{
    cat place.m
    echo 'pkg load rodtravel'
    cat "$root/tests/bindings/octave/test.m"
} >tests.m
octave-cli --norc tests.m "$root/bindings/octave/README.md" >tests || { grep -v '^ok' tests; exit 1; }
# The functions of the index are those that there are.
names=$(cd "$root/bindings/octave/+rodtravel" && ls -- *.m | sed -n 's/^\([a-z].*\)\.m$/rodtravel.\1/p' | LC_ALL=C sort)
[ "$(sed -n 's/^ //p' installed/rodtravel-*/packinfo/INDEX | LC_ALL=C sort)" = "$names" ]
