#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Copies the extension to where PostgreSQL looks for it: install.sh PG_CONFIG MODULE FILE...; DESTDIR as usual.
set -eu
config=$1
module=$2
shift 2
library=${DESTDIR:-}$("$config" --pkglibdir)
share=${DESTDIR:-}$("$config" --sharedir)/extension
mkdir -p "$library" "$share"
install -m 755 "$module" "$library"
install -m 644 "$@" "$share"
echo "installed in $library and $share"
