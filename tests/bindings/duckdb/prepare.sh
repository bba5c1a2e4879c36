# SPDX-License-Identifier: Apache-2.0
# Puts into a virtual environment what the extension of DuckDB is built and tried with: sh prepare.sh VENV
# The headers are in the source distribution alone; those of 1.2.2 are the oldest interface that the extension needs.
# The oldest DuckDB that it is tried in has a directory of its own.
set -eu
venv=$1
pip="$venv/bin/pip --quiet --disable-pip-version-check"
$pip install duckdb
[ -d "$venv/duckdb-1.4.4" ] || $pip install --target "$venv/duckdb-1.4.4" duckdb==1.4.4
[ ! -f "$venv/include/duckdb_extension.h" ] || exit 0
mkdir -p "$venv/include"
sources=$(mktemp -d)
$pip download --no-deps --no-binary duckdb --dest "$sources" duckdb==1.2.2
tar -C "$sources" -xzf "$sources"/duckdb-1.2.2.tar.gz --strip-components 4 \
    duckdb-1.2.2/duckdb_build/src/include/duckdb.h duckdb-1.2.2/duckdb_build/src/include/duckdb_extension.h
mv "$sources"/duckdb.h "$sources"/duckdb_extension.h "$venv/include"
rm -rf "$sources"
