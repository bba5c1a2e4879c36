# SPDX-License-Identifier: Apache-2.0
# Sourced by tests/run.sh and examples/quickstart.sh: makes sure that the tools of a task are installed.
# Installs what is missing on Debian and its derivatives; elsewhere it says what to install.

lack_command() { # COMMAND PACKAGE...
    command -v "$1" >/dev/null 2>&1 && return
    shift
    lacking="$lacking $*"
}

# Optional: it makes the tests sharper or faster, and is installed only where that is possible.
want_command() { # COMMAND PACKAGE
    may_install && lack_command "$@"
    return 0
}

lack_header() { # HEADER PACKAGE
    printf '#include <stddef.h>\n#include <stdarg.h>\n#include <setjmp.h>\n#include <stdint.h>\n#include <%s>\n' "$1" |
        cc -E -x c - >/dev/null 2>&1 || lacking="$lacking $2"
}

# The same for a library that only some commands need.
want_header() { # HEADER PACKAGE
    may_install && lack_header "$@"
    return 0
}

# Headers of the Python that runs meson; the package is named as in Debian.
lack_python_headers() {
    python3 -c 'import os, sys, sysconfig; sys.exit(not os.path.exists(sysconfig.get_path("include") + "/Python.h"))' \
        2>/dev/null || lacking="$lacking python3-dev"
}

# Without them everything but the binding is built.
want_python_headers() {
    may_install && lack_python_headers
    return 0
}

# The runtime of clang's sanitizers and fuzzer has a package of its own, named by clang's version. The names of functions
# that were entered need the symbolizer.
lack_clang() {
    lack_command clang clang
    lack_command llvm-symbolizer llvm
    command -v clang >/dev/null 2>&1 || return 0
    echo 'int LLVMFuzzerTestOneInput(const char *t, unsigned long n) { return t == (void *)n; }' |
        clang -fsanitize=fuzzer,address,undefined -x c -o /dev/null - >/dev/null 2>&1 ||
        lacking="$lacking libclang-rt-$(clang -dumpversion | cut -d. -f1)-dev"
}

# The runtime that counts.
lack_coverage() {
    command -v clang-19 >/dev/null 2>&1 || return 0
    echo 'int main(void) { return 0; }' | clang-19 -fprofile-instr-generate -x c -o /dev/null - >/dev/null 2>&1 ||
        lacking="$lacking libclang-rt-19-dev"
}

# What links for WebAssembly; the package of the run-time library has the name of clang's version by itself.
lack_wasm() {
    lack_command clang clang
    lack_command wasm-ld lld
    [ -e /usr/lib/wasm32-wasi/libc.a ] || lacking="$lacking wasi-libc"
    echo 'int main(void) { return 0; }' | clang --target=wasm32-wasi -x c -o /dev/null - >/dev/null 2>&1 ||
        lacking="$lacking libclang-rt-dev-wasm32"
}

# A cross compiler with its C library, and the emulator that runs its programs.
lack_foreign() { # ARCHITECTURE TRIPLET EMULATED
    lack_command "$2-gcc" "gcc-$2"
    [ -e "/usr/$2/include/stdio.h" ] || lacking="$lacking libc6-dev-$1-cross"
    lack_command "qemu-$3-static" qemu-user-static
}

# Headers for extensions; their package has the name of the server's version.
lack_postgresql() {
    set -- /usr/lib/postgresql/*/bin/postgres
    [ -e "$1" ] || { command -v postgres >/dev/null 2>&1 || lacking="$lacking postgresql"; return 0; }
    for server in "$@"; do :; done # the newest
    server=${server%/bin/postgres}
    server=${server##*/}
    [ -e "/usr/include/postgresql/$server/server/fmgr.h" ] || lacking="$lacking postgresql-server-dev-$server"
}

lack_for() { # TASK
    case $1 in
    build)
        lack_command meson meson
        lack_command ninja ninja-build
        lack_command cc gcc
        lack_command pkg-config pkg-config
        lack_header stdio.h libc6-dev
        lack_header gmp.h libgmp-dev
        want_header zlib.h zlib1g-dev
        want_header zstd.h libzstd-dev
        want_header xlsxwriter.h libxlsxwriter-dev
        ;;
    tests)
        lack_command c++ g++
        lack_command python3 python3
        lack_command nm binutils
        lack_header cmocka.h libcmocka-dev
        lack_command doxygen doxygen
        lack_command mandoc mandoc
        want_command ccache ccache
        want_command cmake cmake
        want_command units units
        want_header jansson.h libjansson-dev
        want_command mawk mawk
        want_command swig swig
        want_python_headers
        ;;
    clang) lack_clang ;;
    valgrind) lack_command valgrind valgrind ;;
    locale) lack_command localedef libc-bin; [ -e /usr/share/i18n/locales/fr_CA ] || lacking="$lacking locales" ;;
    tidy) lack_command clang-tidy clang-tidy; lack_command cppcheck cppcheck ;;
    pages) lack_command chromium chromium; lack_command node nodejs; lack_command npm npm; want_command firefox-esr firefox-esr
           lack_wasm ;;
    bindings)
        lack_python_headers
        python3 -c 'import ensurepip, venv' 2>/dev/null || lacking="$lacking python3-venv"
        pkg-config --exists tcl || lacking="$lacking tcl-dev"
        lack_command tclsh tcl
        lack_command make make
        lack_command lua5.4 lua5.4
        pkg-config --exists lua5.4 || lacking="$lacking liblua5.4-dev"
        lack_command luarocks luarocks
        lack_command ruby ruby
        lack_command gem ruby
        [ -e "$(ruby -rrbconfig -e 'print RbConfig::CONFIG["rubyhdrdir"]' 2>/dev/null)/ruby.h" ] || lacking="$lacking ruby-dev"
        [ -e "$(perl -MConfig -e 'print "$Config{archlibexp}/CORE/perl.h"')" ] || lacking="$lacking libperl-dev"
        lack_command go golang-go
        lack_command javadoc default-jdk-headless
        lack_command cargo cargo
        want_header sqlite3ext.h libsqlite3-dev
        want_command sqlite3 sqlite3
        may_install && lack_wasm
        want_command node nodejs
        want_command npm npm
        ;;
    languages)
        lack_command php php-cli
        lack_command php-config php-dev
        lack_command make make
        php -m 2>/dev/null | grep -qx gmp || lacking="$lacking php-gmp"
        lack_command R r-base-core
        lack_command octave octave
        lack_command mkoctfile liboctave-dev
        lack_command mcs mono-devel
        ;;
    engines)
        lack_python_headers
        python3 -c 'import ensurepip, venv' 2>/dev/null || lacking="$lacking python3-venv"
        lack_postgresql
        lack_command javadoc openjdk-17-jdk-headless
        want_header sqlite3ext.h libsqlite3-dev
        want_command sqlite3 sqlite3
        ;;
    coverage) lack_command clang-19 clang-19; lack_command llvm-cov-19 llvm-19; lack_coverage ;;
    packages)
        lack_command dpkg-buildpackage dpkg-dev
        lack_command dh debhelper
        lack_command fakeroot fakeroot
        lack_command lintian lintian
        lack_command cmake cmake
        lack_header xlsxwriter.h libxlsxwriter-dev
        lack_header zlib.h zlib1g-dev
        lack_header zstd.h libzstd-dev
        python3 -c 'import ensurepip, venv' 2>/dev/null || lacking="$lacking python3-venv"
        pkg-config --exists tcl || lacking="$lacking tcl-dev"
        lack_command tclsh tcl
        [ -e "$(perl -MConfig -e 'print "$Config{archlibexp}/CORE/perl.h"')" ] || lacking="$lacking libperl-dev"
        ;;
    wheels)
        lack_python_headers
        lack_command dpkg-source dpkg-dev
        case ${WHEELS:-all} in
            all | *aarch64*) lack_command qemu-aarch64-static qemu-user-static ;;
        esac
        python3 -c 'import ensurepip, venv' 2>/dev/null || lacking="$lacking python3-venv"
        ;;
    machine-i386) lack_foreign i386 i686-linux-gnu i386 ;;
    machine-armhf) lack_foreign armhf arm-linux-gnueabihf arm ;;
    machine-arm64) lack_foreign arm64 aarch64-linux-gnu aarch64 ;;
    machine-s390x) lack_foreign s390x s390x-linux-gnu s390x ;;
    machine-mingw)
        lack_command x86_64-w64-mingw32-gcc gcc-mingw-w64-x86-64
        lack_command wine wine wine64
        lack_command dpkg-source dpkg-dev
        ;;
    machine-musl) lack_command musl-gcc musl-tools; lack_command dpkg-source dpkg-dev ;;
    machine-wasm32)
        lack_wasm
        lack_command llvm-ar llvm
        lack_command node nodejs
        lack_command dpkg-source dpkg-dev
        ;;
    esac
}

as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

may_install() {
    command -v apt-get >/dev/null 2>&1 && { [ "$(id -u)" = 0 ] || command -v sudo >/dev/null 2>&1; }
}

# Prints the output of the installation only if it fails.
install_lacking() {
    said=$(mktemp)
    as_root apt-get update -qq >"$said" 2>&1 || cat "$said" >&2
    # shellcheck disable=SC2086 # a list of words
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $lacking >"$said" 2>&1 ||
        cat "$said" >&2
    rm -f "$said"
}

find_lacking() { # TASK...
    lacking=
    for task in "$@"; do lack_for "$task"; done
    [ -n "$lacking" ]
}

need() { # TASK...
    # Twice, because the first packages decide the name of another one (clang's runtime).
    for round in 1 2; do
        find_lacking "$@" || return 0
        may_install || break
        echo "installing (round $round):$lacking"
        install_lacking
    done
    find_lacking "$@" || return 0
    echo "Please install these first (names as in Debian; meson 1.0 or newer):$lacking" >&2
    exit 2
}
