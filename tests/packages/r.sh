# SPDX-License-Identifier: Apache-2.0
# r.sh ARCHIVE FOLDER ROOT: makes the package of R as its authors do, installs it into a fresh library as people do,
# without a network, and runs the tests of the binding there.
set -eu
archive=$1
folder=$2
root=$3
rm -rf "$folder"
mkdir -p "$folder/library"
tar -xzf "$archive" -C "$folder"
cd "$folder"
unset R_LIBS
export MAKEFLAGS="-j${JOBS:-2}"
R CMD build rodtravel-* >log 2>&1 && R CMD INSTALL --library="$folder/library" rodtravel_*.tar.gz >>log 2>&1 ||
    { tail -n 30 log; exit 1; }
R_LIBS="$folder/library" Rscript "$root/tests/bindings/r/test.R" "$root/bindings/r/README.md" >tests ||
    { grep -v '^ok' tests; exit 1; }
