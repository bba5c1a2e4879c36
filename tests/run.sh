#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Builds the project and tests it: sh tests/run.sh [TASK...]
#
#   quick       every suite once (unit, cases, cli, checks, fuzz corpus, bindings); this is what runs without a task
#   sanitize    unit, cases, cli, fuzz corpus and bindings under address and undefined-behaviour sanitizers of gcc
#   clang       unit, cases and fuzz corpus built by clang, with exact arithmetic in plain C in place of GNU MP
#   valgrind    unit tests under valgrind
#   tsan        what runs in threads, under the thread sanitizer of clang
#   locale      unit, cases and cli under a decimal-comma locale
#   fuzz        under the sanitizers of clang: unit, then each fuzz target for FUZZ_SECONDS (5), and a table of the runs
#   tidy        clang-tidy and cppcheck
#   bindings    the languages with all that their tests can use, in a virtual environment of its own
#   engines     the databases and clusters that judge inside, with all that their tests can use, in a virtual environment
#               of its own
#   conformance one table: each language, its right answers to all questions of the conformance kit, and their digest
#   coverage    lines, branches and conditions (MC/DC) that unit, cases, cli and fuzz corpus prove, by clang
#   rebuild     a release is the same, byte by byte, wherever, when and by whom it is built
#   pages       the pages that the command writes: HTML checker, accessibility in a browser, paper, JSON Schema; whole
#               inspections on the page for a phone, by taps
#   all         all of these, two at a time; this is what CI runs
#
#   exhaustive  every pair of readings to a tenth of a millimetre, for every chamber; files of a million rows in every
#               engine
#   mutants     breaks the library in MUTANTS (60) places, one at a time, and names those that no test notices;
#               fails where mutants/survivors/ calls the file closed and has no reason. MUTANTS may also be files or
#               folders of lib/, or all
#   damage      every text of the damages with every entry of every command, where quick takes turns, more vehicles
#               in every output, and files cut at every byte
#   faults      each place of each fault of the command, and a thousand kills; also under the sanitizers of gcc
#   languages   PHP, R, Octave and C#, whose toolchains are large: every test of theirs, and their packages
#   packages    Debian packages built and installed, the Conan package, the vcpkg port
#   wheels      wheels of the Python package for several Pythons and machines, built twice and tried; WHEELS names
#               targets (all), PYTHONS interpreters
#   machine-M   unit on another machine, with the build's default options; M is one of i386, armhf, arm64, s390x (under
#               an emulator; every command must also answer as on this machine), mingw (under wine), musl (static
#               programs), wasm32 (in Node)
#   long        exhaustive, mutants, damage, faults, languages, conformance, packages, wheels, fuzz with 600 s a
#               target (more than 10^8 runs), pages with a browser that is killed 100 times, and every machine
#
# Missing tools are installed on Debian and its derivatives. Builds are in BUILD (build-tests) and beside it. Each task
# prints its seconds. The last line is "N passed, N failed"; the exit status is 0 only if nothing failed.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
build=${BUILD:-$root/build-tests}
case $build in /*) ;; *) build=$PWD/$build ;; esac
. "$root/tests/need.sh"
jobs=${JOBS:-$(nproc)}
# What two builds compile in the same way is compiled once, where there is a cache for it.
export CCACHE_NOHASHDIR=1
passed=0
failed=0

count() { # PASSED FAILED
    passed=$((passed + $1))
    failed=$((failed + $2))
}

# Anything but a run of meson test counts as one.
step() { # NAME COMMAND...
    name=$1
    shift
    if "$@"; then count 1 0; else count 0 1; echo "FAILED: $name"; fi
}

configure() { # DIRECTORY MESON-ARGUMENT...
    dir=$1
    shift
    [ -f "$dir/build.ninja" ] ||
        meson setup "$dir" "$root" --native-file "$root/.meson/strict.ini" "$@" >"$dir.log" 2>&1 ||
        { tail -n 30 "$dir.log"; return 1; }
    rm -f "$dir.log"
    # Newer versions of meson leave what only tests need out of "all".
    targets='all meson-test-prereq'
    # shellcheck disable=SC2086 # a list of words
    [ -z "$only" ] || targets=$(python3 -B "$root/tests/needed.py" "$dir" $only)
    # shellcheck disable=SC2086 # a list of words
    ninja -C "$dir" -j "$jobs" $targets >"$dir/build.log" 2>&1 || { sed -n '/ERROR:/p; /^FAILED/,$p' "$dir/build.log" | head -n 60; return 1; }
}

suites() { # NAME DIRECTORY MESON-TEST-ARGUMENT...
    label=$1
    dir=$2
    shift 2
    echo "== $label"
    rm -f "$dir/meson-logs/$label"*
    status=0
    meson test -C "$dir" --setup whole --no-rebuild --num-processes "$jobs" --logbase "$label" --print-errorlogs "$@" || status=$?
    set -- $(python3 "$root/tests/count.py" "$dir/meson-logs/$label")
    # A run that ends badly without a failed case is a failure all the same.
    [ "$status" = 0 ] || [ "$2" != 0 ] || set -- "$1" 1
    [ "$1" != 0 ] || [ "$2" != 0 ] || set -- 0 1
    count "$1" "$2"
}

built() { # NAME DIRECTORY MESON-ARGUMENT...
    label=$1
    shift
    echo "== building: $label"
    configure "$@" || { count 0 1; echo "FAILED: the build ($label)"; return 1; }
}

quick() {
    built quick "$build" || return 0
    suites quick "$build"
}

# The checks look at the tree, which is the same for every build.
sanitize() {
    dir=$build-sanitize
    only='unit cases cli fuzz bindings'
    built sanitize "$dir" --native-file "$root/.meson/gcc.ini" --native-file "$root/.meson/sanitize.ini" || return 0
    suites sanitize "$dir" --no-suite checks --no-suite faults --timeout-multiplier 4
}

with_clang() {
    need clang
    only='unit cases fuzz'
    built clang "$build-clang" --native-file "$root/.meson/clang.ini" --native-file "$root/.meson/plain.ini" || return 0
    suites clang "$build-clang" --suite unit --suite cases --suite fuzz
}

memcheck() {
    need valgrind
    built valgrind "$build" || return 0
    suites valgrind "$build" --suite unit --no-suite many --no-suite large --timeout-multiplier 20 \
        --wrap='valgrind -q --error-exitcode=9 --leak-check=full --errors-for-leak-kinds=all'
}

threads() {
    need clang
    only=threads
    built tsan "$build-tsan" --native-file "$root/.meson/clang.ini" --native-file "$root/.meson/threads.ini" || return 0
    suites tsan "$build-tsan" --suite threads --timeout-multiplier 10
}

comma() {
    need locale
    built locale "$build" || return 0
    comma=fr_CA.UTF-8
    mkdir -p "$build/locales"
    [ -d "$build/locales/$comma" ] || localedef -i fr_CA -f UTF-8 "$build/locales/$comma"
    suites locale "$build" --suite unit --suite cases --suite cli --no-suite faults \
        --wrap="env LOCPATH=$build/locales LC_ALL= LANG=$comma LC_MESSAGES=C COMMA_LOCALE=$comma \
            LD_PRELOAD=$build/tests/checks/locale_from_environment.so"
}

fuzz() {
    need clang
    only='unit tests/fuzz/'
    built fuzz "$build-fuzz" --native-file "$root/.meson/clang.ini" --native-file "$root/.meson/fuzz.ini" || return 0
    suites fuzz "$build-fuzz" --suite unit --timeout-multiplier 4
    step ledger python3 -B "$root/tests/checks/ledger.py" --reached "$root" "$build-fuzz"
    rm -rf "$build-fuzz/fuzz-logs"
    mkdir "$build-fuzz/fuzz-logs"
    targets=$(find "$build-fuzz/tests/fuzz" -maxdepth 1 -type f -name 'fuzz_*' | sed 's/.*fuzz_//' | LC_ALL=C sort)
    fuzz_each "$targets"
    for target in $targets; do step "fuzz $target" test -f "$build-fuzz/fuzz-logs/$target.passed"; done
    echo "== fuzz: runs of each target"
    awk 'FNR == 1 { name = FILENAME; sub(/.*\//, "", name); sub(/\.log$/, "", name) }
        /number_of_executed_units/ { runs = $2 }
        /average_exec_per_sec/ { printf "%-12s%12d%8d/s\n", name, runs, $2; total += runs }
        END { printf "%-12s%12d\n", "total", total }' "$build-fuzz"/fuzz-logs/*.log
}

# As many at a time as there are jobs. All take the same time, so none waits for another.
fuzz_each() { # NAMES
    running=0
    for target in $1; do
        fuzz_one "$target" &
        running=$((running + 1))
        [ $((running % jobs)) != 0 ] || wait
    done
    wait
}

fuzz_one() { # NAME
    name=$1
    seconds=${FUZZ_SECONDS:-5}
    log=$build-fuzz/fuzz-logs/$name.log
    words=$root/tests/fuzz/dictionaries/$name
    echo "== fuzz: $name for $seconds s"
    mkdir -p "$build-fuzz/found/$name"
    set -- "$build-fuzz/tests/fuzz/fuzz_$name" "$build-fuzz/found/$name" "$root/tests/fuzz/corpus/$name"
    [ ! -f "$words" ] || set -- "$@" -dict="$words"
    if "$@" -max_total_time="$seconds" -timeout=20 -max_len=4096 -print_final_stats=1 -verbosity=0 \
        -artifact_prefix="$build-fuzz/$name-" >"$log" 2>&1; then : >"${log%.log}.passed"; else tail -n 40 "$log"; fi
}

tidy() {
    need clang tidy
    dir=$build-tidy
    # The commands of the compiler are enough; only what they include has to be built.
    [ -f "$dir/build.ninja" ] || meson setup "$dir" "$root" --native-file "$root/.meson/clang.ini" >"$dir.log" 2>&1
    ninja -C "$dir" lib/step_sentences.h >>"$dir.log" 2>&1
    rm -f "$dir.log"
    step clang-tidy lint
    step cppcheck cppcheck --quiet -j "$jobs" --std=c11 --enable=warning,style,performance,portability --inline-suppr \
        --suppress=missingIncludeSystem --suppress=variableScope --error-exitcode=1 -D__GNUC__=12 \
        -I "$root/include" -I "$root/lib" -I "$root/examples/cli" "$root/lib" "$root/examples"
}

# What is compiled for WebAssembly alone is in the commands of ninja only.
lint() {
    mkdir -p "$dir/web" "$dir/once"
    ninja -C "$dir" -t compdb >"$dir/web/compile_commands.json"
    python3 -B "$root/tests/once.py" "$dir/compile_commands.json" "$dir/once/compile_commands.json"
    status=0
    lint_files "$dir/once" "$root/lib" "$root/examples" -not -path "$root/examples/web/*" || status=1
    lint_files "$dir/web" "$root/examples/web" || status=1
    return $status
}

# Its error output counts the faults in other people's headers that it does not show.
lint_files() { # COMMANDS WHERE...
    commands=$1
    shift
    find "$@" -name '*.c' -print0 |
        xargs -0 -P "$jobs" -n 8 clang-tidy -p "$commands" --quiet --warnings-as-errors='*' 2>/dev/null
}

coverage() {
    need coverage
    dir=$build-coverage
    export LLVM_PROFILE_FILE=/dev/null
    only='unit cases cli fuzz'
    built coverage "$dir" --native-file "$root/.meson/coverage.ini" || { unset LLVM_PROFILE_FILE; return 0; }
    rm -rf "$dir/counts"
    mkdir "$dir/counts"
    # Runs of one program add up in one file. Tests of the command kill programs, which breaks what they write.
    for suite in unit cases fuzz; do
        LLVM_PROFILE_FILE=$dir/counts/$suite-%2m.profraw
        suites "coverage-$suite" "$dir" --suite "$suite" --no-suite many --timeout-multiplier 3
    done
    unset LLVM_PROFILE_FILE
    suites coverage-cli "$dir" --suite cli --no-suite faults --wrap "sh $root/tests/counts.sh $dir/counts" --timeout-multiplier 3
    step coverage covered
}

# The programs hold what the counts mean: the library, its exact arithmetic in plain C, what is inline in its headers and
# in those of the command, the command, the two compilers.
covered() {
    llvm-profdata-19 merge --failure-mode=all -o "$dir/counts/all" "$dir/counts"/*.prof* &&
        llvm-cov-19 export -instr-profile "$dir/counts/all" "$dir/lib/librodtravel.so" -object "$dir/tests/unit/test_exact" \
            -object "$dir/tests/unit/test_spoken" -object "$dir/tests/unit/test_csv_index" -object "$dir/examples/cli/rodtravel" \
            -object "$dir/lib/tablec" -object "$dir/lib/catalogc" >"$dir/counts/all.json" &&
        python3 -B "$root/tests/checks/conditions.py" "$root" "$dir/counts/all.json"
}

pages() {
    need pages
    built pages "$build" || return 0
    mkdir -p "$build-pages"
    cp "$root/tests/pages/package.json" "$build-pages"
    (cd "$build-pages" && npm install --no-audit --no-fund --no-package-lock --ignore-scripts >npm.log 2>&1) ||
        { tail -n 20 "$build-pages/npm.log"; count 0 1; return 0; }
    echo "== pages"
    status=0
    python3 -B "$root/tests/pages/test_pages.py" "$build/examples/cli/rodtravel" "$build-pages" >"$build-pages/run.log" || status=$?
    tell "$build-pages/run.log" "$status"
    echo "== the walk-round's page"
    status=0
    : >"$build-pages/walk.log"
    "$build/examples/cli/rodtravel" page --html "$build-pages/brakes.html" &&
        NODE_PATH="$build-pages/node_modules" node "$root/tests/pages/test_walk_page.js" "$build-pages/brakes.html" \
            "$build/examples/cli/rodtravel" >"$build-pages/walk.log" || status=$?
    tell "$build-pages/walk.log" "$status"
    firefox
}

# It is asked by its own protocol, for which Node needs a client of WebSocket.
firefox() {
    if ! command -v firefox-esr >/dev/null || ! node --experimental-websocket -e 'WebSocket' 2>/dev/null; then
        echo "== the page in Firefox: left out, it needs firefox-esr and Node with WebSocket"
        return 0
    fi
    echo "== the page in Firefox"
    status=0
    HOME=$build-pages node --experimental-websocket "$root/tests/pages/test_firefox.js" "$build-pages/brakes.html" \
        "$build/examples/cli/rodtravel" "$build/bindings/javascript" >"$build-pages/firefox.log" 2>&1 || status=$?
    tell "$build-pages/firefox.log" "$status"
}

# A program that stopped before its last test is a failure too.
tell() { # LOG STATUS
    cat "$1"
    [ "$2" = 0 ] || grep -q '^not ok' "$1" || count 0 1
    count "$(grep -c '^ok' "$1")" "$(grep -c '^not ok' "$1")"
}

# Python's packages come from its own index, through pip; SWIG too, so that the module is the one of a wheel.
bindings() {
    need bindings
    venv=$build-venv
    [ -x "$venv/bin/python3" ] || python3 -m venv "$venv"
    "$venv/bin/pip" install --quiet --disable-pip-version-check meson ninja swig numpy pandas polars pyarrow duckdb \
        matplotlib hypothesis mypy build 'cyclonedx-python-lib[json-validation]' || { count 0 1; echo "FAILED: pip"; return 0; }
    before=$PATH
    PATH=$venv/bin:$(typescript)$PATH
    if built bindings "$build-bindings"; then suites bindings "$build-bindings" --suite bindings; fi
    step conformance python3 -B "$root/tests/conformance/table.py" "$build-bindings"
    step 'bill of materials' python3 -B "$root/tests/checks/bill_schema.py" "$build-bindings/rodtravel.cdx.json"
    step wheel wheel
    step 'Go module' go_distribution
    step 'Rust crate' rust_distribution
    step 'Perl distribution' package_of_sources perl Rodtravel
    for name in ruby lua tcl; do step "package for $name" package_of_sources $name "rodtravel-$name"; done
    PATH=$before
}

# With every language that any task has.
conformance() {
    need bindings languages
    built conformance "$build-languages" || return 0
    step conformance python3 -B "$root/tests/conformance/table.py" "$build-languages" full
}

# Their tests have the suite `languages` beside their own; those of the suite `exhaustive` run as well.
languages() {
    need languages
    built languages "$build-languages" || return 0
    suites languages "$build-languages" --suite languages
    for language in php r octave; do step "package of sources: $language" language_distribution $language; done
}

language_distribution() { # NAME
    ninja -C "$build-languages" "$1-dist" >"$build-languages/$1.log" 2>&1 || { tail -n 30 "$build-languages/$1.log"; return 1; }
    JOBS=$jobs sh "$root/tests/packages/$1.sh" "$build-languages/bindings/$1/dist"/*.tar.gz "$build-languages-$1" "$root"
}

engines() {
    in_engines --suite engines --no-suite exhaustive
}

# Python's packages come from its own index, through pip.
in_engines() { # MESON-TEST-ARGUMENT...
    need engines
    venv=$build-engines-venv
    [ -x "$venv/bin/python3" ] || python3 -m venv "$venv"
    "$venv/bin/pip" install --quiet --disable-pip-version-check meson ninja swig numpy pyarrow pandas \
        'dask[dataframe]' distributed pyspark && sh "$root/tests/bindings/duckdb/prepare.sh" "$venv" ||
        { count 0 1; echo "FAILED: pip"; return 0; }
    before=$PATH
    PATH=$venv/bin:$PATH
    if built engines "$build-engines"; then
        for engine in sqlite postgresql duckdb cluster_dask cluster_spark; do step "the tests of $engine" has_test $engine; done
        suites engines "$build-engines" "$@"
    fi
    PATH=$before
}

# What is left out where its headers lack must not be left out here.
has_test() { # NAME
    meson introspect --tests "$build-engines" | grep -q "\"name\": \"$1\""
}

# The directory of the compiler of TypeScript, which checks the types of the package for npm; nothing where npm lacks.
typescript() {
    command -v npm >/dev/null 2>&1 || return 0
    there=$build-typescript
    [ -x "$there/node_modules/.bin/tsc" ] ||
        npm install --prefix "$there" --no-audit --no-fund --ignore-scripts typescript >"$there.log" 2>&1 ||
        { tail -n 20 "$there.log" >&2; return 0; }
    rm -f "$there.log"
    printf '%s:' "$there/node_modules/.bin"
}

# The source distribution, the wheel out of it, and the wheel's own tests and command outside of the tree.
wheel() {
    rm -rf "$build-wheel"
    mkdir "$build-wheel"
    python3 -m build "$root/bindings/python" --outdir "$build-wheel" >"$build-wheel/log" 2>&1 ||
        { tail -n 30 "$build-wheel/log"; return 1; }
    python3 -m venv "$build-wheel/venv"
    "$build-wheel/venv/bin/pip" install --quiet --disable-pip-version-check "$build-wheel"/*.whl
    sh "$root/tests/packages/installed.sh" "$root" "$build-wheel/venv/bin/python" \
        "$build-wheel/venv/bin/rodtravel"
}

go_distribution() {
    ninja -C "$build-bindings" go-dist >"$build-bindings/go.log" 2>&1 || { tail -n 30 "$build-bindings/go.log"; return 1; }
    sh "$root/tests/packages/go.sh" "$build-bindings"/bindings/go/dist/rodtravel-go-*.tar.gz "$build-go"
}

rust_distribution() {
    ninja -C "$build-bindings" rust-dist >"$build-bindings/rust.log" 2>&1 || { tail -n 30 "$build-bindings/rust.log"; return 1; }
    sh "$root/tests/packages/rust.sh" "$build-bindings"/bindings/rust/dist/rodtravel-rust-*.tar.gz "$build-rust"
}

# What people install with the language and a C compiler alone.
package_of_sources() { # LANGUAGE ARCHIVE
    ninja -C "$build-bindings" "$1-dist" >"$build-bindings/$1.log" 2>&1 || { tail -n 30 "$build-bindings/$1.log"; return 1; }
    JOBS=$jobs sh "$root/tests/packages/sources.sh" "$1" "$build-bindings"/bindings/$2-[0-9]*.tar.gz "$build-$1"
}

rebuild() {
    step rebuild sh "$root/tests/packages/reproducible.sh" "$root" "$build-rebuild"
}

exhaustive() {
    built exhaustive "$build" || return 0
    suites exhaustive "$build" --suite exhaustive --no-suite engines
    in_engines --suite engines
}

mutants() {
    need clang
    echo "== mutants"
    step places python3 -B "$root/tests/mutants/test_places.py"
    step mutants env JOBS="$jobs" python3 -B "$root/tests/mutants/mutants.py" "$root" "$build-mutants" ${MUTANTS:-60}
}

damage() {
    built damage "$build" || return 0
    command=$build/examples/cli/rodtravel
    step damage python3 -B "$root/tests/cli/test_damage.py" "$command" "$root/tests/cases" long
    step facts python3 -B "$root/tests/cli/test_one_fact.py" "$command" long
    step batch python3 -B "$root/tests/cli/test_batch.py" "$command" long
    step 'batch with caches' python3 -B "$root/tests/cli/test_batch_cache.py" "$command" "$command-small" long
}

faults() {
    if built faults "$build"; then each_fault "$build"; fi
    dir=$build-sanitize
    if built sanitize "$dir" --native-file "$root/.meson/gcc.ini" --native-file "$root/.meson/sanitize.ini"; then
        each_fault "$dir"
    fi
}

each_fault() { # DIRECTORY
    echo "== faults: $1"
    status=0
    python3 -B "$root/tests/cli/test_faults.py" "$1/examples/cli/rodtravel" "$1/examples/cli/rodtravel-small" \
        "$1/tests/cli/faults.so" long >"$1/faults.log" || status=$?
    tell "$1/faults.log" "$status"
}

packages() {
    need packages
    dir=$build-packages
    echo "== packages"
    step "Debian packages" sh "$root/tests/packages/debian.sh" "$root" "$dir/debian"
    step "Conan package" sh "$root/tests/packages/conan.sh" "$root" "$dir/conan"
    for library in static shared; do
        for feature in gmp core; do step "vcpkg port ($feature, $library)" vcpkg_port $feature $library; done
    done
}

wheels() {
    need wheels
    echo "== wheels"
    step wheels env JOBS="$jobs" sh "$root/tests/packages/wheels.sh" "$root" "$build-wheels"
}

vcpkg_port() { # FEATURE LIBRARY
    cmake -D ROOT="$root" -D FOLDER="$dir/vcpkg" -D FEATURES="$1" -D VCPKG_LIBRARY_LINKAGE="$2" \
        -P "$root/tests/packages/vcpkg.cmake"
}

machine() { # MACHINE
    need "machine-$1"
    dir=$build-$1
    foreign=$dir-packages
    if [ ! -f "$foreign/libraries.ini" ] && ! sh "$root/tests/machines/prepare.sh" "$1" "$foreign" >"$dir.log" 2>&1; then
        tail -n 30 "$dir.log"
        rm -rf "$foreign"
        count 0 1
        echo "FAILED: what $1 needs"
        return 0
    fi
    crossed=$1
    [ "$1" != armhf ] || step 'a build without an emulator' library_alone
    runner=
    [ ! -f "$foreign/runner.ini" ] || runner="--cross-file=$foreign/runner.ini"
    built "$1" "$dir" --cross-file "$root/.meson/$crossed.ini" --cross-file "$foreign/libraries.ini" $runner \
        -Dwerror=true || return 0
    suites "$crossed" "$dir" --suite unit --timeout-multiplier 8
    case $crossed in i386 | arm* | s390x) step "commands on $crossed" same_answers ;; esac
}

# The command of this machine is that of quick, whose configuration sets dir anew.
same_answers() {
    there=$dir
    configure "$build" || return 1
    sed -n "s/^exe_wrapper = \[\(.*\)\]/\1/p" "$foreign/runner.ini" | tr -d "'," >"$there/emulator"
    # shellcheck disable=SC2046 # a list of words
    python3 -B "$root/tests/machines/commands.py" "$root" "$build/examples/cli/rodtravel" "$there/examples/cli/rodtravel" \
        $(cat "$there/emulator")
}

# Nothing that was built for the machine runs while the library is built.
library_alone() {
    rm -rf "$dir-alone"
    meson setup "$dir-alone" "$root" --cross-file "$root/.meson/$crossed.ini" --cross-file "$foreign/libraries.ini" \
        >"$dir-alone.log" 2>&1 && ninja -C "$dir-alone" -j "$jobs" lib/librodtravel.a >"$dir-alone.log" 2>&1 ||
        { tail -n 30 "$dir-alone.log"; return 1; }
}

long_fuzz() {
    FUZZ_SECONDS=600 fuzz
}

run_task() { # TASK
    only= # a task may build no more than some suites need
    set -- "$1" "$(date +%s)"
    case $1 in
    quick | sanitize | fuzz | tidy | conformance | coverage | bindings | engines | rebuild | pages) "$1" ;;
    exhaustive | mutants | damage | faults | languages | packages | wheels | long_fuzz) "$1" ;;
    clang) with_clang ;;
    valgrind) memcheck ;;
    tsan) threads ;;
    locale) comma ;;
    all) two_at_a_time sanitize coverage fuzz bindings engines tidy valgrind clang locale tsan rebuild pages ;;
    machine-*) machine "${1#machine-}" ;;
    long)
        for task in exhaustive mutants damage faults languages conformance packages wheels long_fuzz; do run_task "$task"; done
        export KILLS=100
        run_task pages
        for name in i386 armhf arm64 s390x mingw musl wasm32; do run_task "machine-$name"; done
        ;;
    *) echo "unknown task $1; the tasks are: $(sed -n 's/^#   \([a-z]*\)  .*/\1/p' "$0" | tr '\n' ' ')" >&2; exit 2 ;;
    esac
    echo "== $1: $(($(date +%s) - $2)) s"
}

# After quick, whose build some of them share. The longest come first; what a task says is printed when it ends.
two_at_a_time() { # TASK...
    need clang valgrind locale tidy pages bindings engines coverage
    run_task quick
    logs=$(mktemp -d)
    work "$@" &
    work "$@" &
    wait
    for task in "$@"; do
        # A task that broke off has no last line.
        set -- $(sed -n '$s/^\([0-9]*\) passed, \([0-9]*\) failed$/\1 \2/p' "$logs/$task/log") 0 1
        count "$1" "$2"
    done
    rm -rf "$logs"
}

# mkdir succeeds only for the first who takes a task.
work() { # TASK...
    for task in "$@"; do
        mkdir "$logs/$task" 2>/dev/null || continue
        JOBS=$(((jobs + 1) / 2)) sh "$0" "$task" >"$logs/$task/log" 2>&1 || true
        cat "$logs/$task/log"
    done
}

need build tests
[ $# -gt 0 ] || set -- quick
for task in "$@"; do run_task "$task"; done
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
