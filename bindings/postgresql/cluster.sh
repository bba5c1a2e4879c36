#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# A PostgreSQL server of one's own that has the extension, for a trial. Nothing of the system is changed.
#
#   cluster.sh DIRECTORY [BUILD]   makes it there and starts it, or starts it again; BUILD is the build tree (build)
#   cluster.sh --stop DIRECTORY    stops it
#
# It listens on a socket in DIRECTORY alone. SETTINGS may hold more arguments of the server. The server refuses root, so
# for root it runs as the user postgres.
set -eu

as_user() {
    if [ "$(id -u)" = 0 ]; then runuser -u postgres -- "$@"; else "$@"; fi
}

# The programs look for their files from where they are themselves: copies of them find the extension among links to the
# rest.
install_beside() { # BUILD
    bin=$(pg_config --bindir) library=$(pg_config --pkglibdir) share=$(pg_config --sharedir)
    mkdir -p "$here$bin" "$here$library" "$here$share/extension"
    cp "$bin/postgres" "$bin/initdb" "$bin/pg_ctl" "$here$bin"
    ln -sf "$library"/* "$here$library"
    for file in "$share"/*; do [ "${file##*/}" = extension ] || ln -sf "$file" "$here$share"; done
    ln -sf "$share"/extension/* "$here$share/extension"
    cp --remove-destination "$1"/bindings/postgresql/rodtravel.control "$1"/bindings/postgresql/rodtravel--*.sql \
        "$here$share/extension"
    cp --remove-destination "$1/bindings/postgresql/rodtravel.so" "$here$library"
}

stop=
if [ "$1" = --stop ]; then stop=yes; shift; fi
mkdir -p "$1"
here=$(CDPATH='' cd -- "$1" && pwd)
control="$here$(pg_config --bindir)/pg_ctl"
if [ -n "$stop" ]; then
    as_user "$control" stop -s -m immediate -D "$here/data"
    exit
fi
install_beside "$(CDPATH='' cd -- "${2:-build}" && pwd)"
if [ ! -d "$here/data" ]; then
    [ "$(id -u)" != 0 ] || chown postgres "$here"
    as_user "$here$(pg_config --bindir)/initdb" -D "$here/data" -U postgres -A trust -E UTF8 --locale=C \
        >"$here/initdb.log" 2>&1 || { cat "$here/initdb.log" >&2; exit 1; }
fi
as_user "$control" start -s -w -D "$here/data" -l "$here/data/log" \
    -o "-k '$here' -c listen_addresses='' ${SETTINGS:-}" || { tail -n 5 "$here/data/log" >&2; exit 1; }
echo "psql -h $here -U postgres"
