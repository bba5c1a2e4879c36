# SPDX-License-Identifier: Apache-2.0
# php.sh ARCHIVE FOLDER ROOT: builds the extension of PHP with phpize as people do, installs it into a fresh place,
# without a network, and runs the tests of the binding there.
set -eu
archive=$1
folder=$2
root=$3
rm -rf "$folder"
mkdir -p "$folder"
tar -xzf "$archive" -C "$folder" --strip-components=1
cd "$folder"
unset PHPRC
phpize >log 2>&1 && ./configure >>log 2>&1 && make -j "${JOBS:-2}" >>log 2>&1 &&
    make install INSTALL_ROOT="$folder/installed" >>log 2>&1 || { tail -n 30 log; exit 1; }
php -n -d extension="$(find "$folder/installed" -name rodtravel_core.so)" -d include_path="$folder" \
    "$root/tests/bindings/php/test.php" "$root/bindings/php/README.md" >tests || { grep -v '^ok' tests; exit 1; }
