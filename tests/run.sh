#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# Builds the project and tests it: sh tests/run.sh [TASK...]
#
#   ordinary    every suite once (unit, cases, cli, checks, fuzz corpus); this is what runs without a word
#   sanitize    the same under address and undefined-behaviour sanitizers, by gcc and by clang
#   clang       the same built by clang
#   valgrind    unit tests under valgrind
#   tsan        what runs in threads, under the thread sanitizer of clang
#   locale      unit, cases and cli under a decimal-comma locale
#   fuzz        each fuzz target for FUZZ_SECONDS (60)
#   tidy        clang-tidy and cppcheck
#   bindings    the languages with all that their tests can use, in a virtual environment of its own
#   coverage    lines and branches that the tests reach
#   pages       the pages that the command writes: HTML checker, accessibility in a browser, paper, JSON Schema
#   exhaustive  every pair of readings to a tenth of a millimetre, for every chamber
#   all         all of these
#   mutants     breaks the library in MUTANTS (60) places, one at a time, and names those that no test noticed
#
# What is missing is installed on Debian and its kin. Builds stand in BUILD (build-tests) and beside it.
# The last line is "N passed, N failed"; the exit status is 0 only if nothing failed.
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
build=${BUILD:-$root/build-tests}
case $build in /*) ;; *) build=$PWD/$build ;; esac
. "$root/tests/need.sh"
passed=0
failed=0

count() { # PASSED FAILED
    passed=$((passed + $1))
    failed=$((failed + $2))
}

# A step that is no run of meson test counts as one.
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
    ninja -C "$dir" >"$dir/build.log" 2>&1 || { sed -n '/ERROR:/p; /^FAILED/,$p' "$dir/build.log" | head -n 60; return 1; }
}

suites() { # NAME DIRECTORY MESON-TEST-ARGUMENT...
    label=$1
    dir=$2
    shift 2
    echo "== $label"
    rm -f "$dir"/meson-logs/run*
    status=0
    meson test -C "$dir" --no-rebuild --logbase run --print-errorlogs "$@" || status=$?
    set -- $(python3 "$root/tests/count.py" "$dir/meson-logs")
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

ordinary() {
    built ordinary "$build" || return 0
    suites ordinary "$build" --no-suite exhaustive
}

sanitize() {
    need clang
    for compiler in gcc clang; do
        dir=$build-sanitize-$compiler
        built "sanitize, $compiler" "$dir" --native-file "$root/.meson/sanitize.ini" --native-file "$root/.meson/$compiler.ini" ||
            continue
        suites "sanitize, $compiler" "$dir" --no-suite exhaustive --timeout-multiplier 4
    done
}

with_clang() {
    need clang
    built clang "$build-clang" --native-file "$root/.meson/clang.ini" || return 0
    suites clang "$build-clang" --no-suite exhaustive
}

memcheck() {
    need valgrind
    built valgrind "$build" || return 0
    suites valgrind "$build" --suite unit --timeout-multiplier 20 \
        --wrap='valgrind -q --error-exitcode=9 --leak-check=full --errors-for-leak-kinds=all'
}

threads() {
    need clang
    built tsan "$build-tsan" --native-file "$root/.meson/clang.ini" --native-file "$root/.meson/threads.ini" || return 0
    suites tsan "$build-tsan" --suite threads --timeout-multiplier 10
}

comma() {
    need locale
    built locale "$build" || return 0
    comma=fr_CA.UTF-8
    mkdir -p "$build/locales"
    [ -d "$build/locales/$comma" ] || localedef -i fr_CA -f UTF-8 "$build/locales/$comma"
    suites locale "$build" --suite unit --suite cases --suite cli \
        --wrap="env LOCPATH=$build/locales LC_ALL=$comma COMMA_LOCALE=$comma \
            LD_PRELOAD=$build/tests/checks/locale_from_environment.so"
}

fuzz() {
    need clang
    built fuzz "$build-fuzz" --native-file "$root/.meson/clang.ini" --native-file "$root/.meson/fuzz.ini" || return 0
    for target in "$build-fuzz"/tests/fuzz/fuzz_*; do
        if [ -f "$target" ]; then step "${target##*/}" fuzz_one "$target"; fi
    done
}

fuzz_one() { # TARGET
    name=${1##*/fuzz_}
    seconds=${FUZZ_SECONDS:-60}
    echo "== fuzz: $name for $seconds s"
    mkdir -p "$build-fuzz/found/$name"
    "$1" -max_total_time="$seconds" -timeout=10 -max_len=4096 -print_final_stats=1 -verbosity=0 -artifact_prefix="$build-fuzz/$name-" \
        "$build-fuzz/found/$name" "$root/tests/fuzz/corpus/$name" >"$build-fuzz/$name.log" 2>&1 ||
        { tail -n 40 "$build-fuzz/$name.log"; return 1; }
    grep -E 'number_of_executed|peak_rss' "$build-fuzz/$name.log" || true
}

tidy() {
    need clang tidy
    built tidy "$build-clang" --native-file "$root/.meson/clang.ini" || return 0
    step clang-tidy lint "$root"/lib/*.c "$root"/examples/c/*.c "$root"/examples/cli/*.c
    step cppcheck cppcheck --quiet --std=c11 --enable=warning,style,performance,portability --inline-suppr \
        --suppress=missingIncludeSystem --suppress=variableScope --error-exitcode=1 -D__GNUC__=12 -DRODT_VERSION='"0"' -I "$root/include" -I "$root/lib" \
        "$root/lib" "$root/examples"
}

# What it tells on its error output is how many faults of others' headers it keeps to itself.
lint() { # FILE...
    clang-tidy -p "$build-clang" --quiet --warnings-as-errors='*' "$@" 2>/dev/null
}

coverage() {
    need coverage
    dir=$build-coverage
    # Threads count at once, and a test that kills a program in the middle of its work leaves odd counts.
    built coverage "$dir" -Db_coverage=true -Dc_args=-fprofile-update=atomic || return 0
    suites coverage "$dir" --no-suite exhaustive
    step coverage gcovr --root "$root" --object-directory "$dir" --filter "$root/lib/" --filter "$root/examples/cli/" \
        --branches --print-summary --fail-under-line 95 --gcov-ignore-parse-errors
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
    cat "$build-pages/run.log"
    # A program that stopped before its last test is a failure too.
    [ "$status" = 0 ] || grep -q '^not ok' "$build-pages/run.log" || count 0 1
    count "$(grep -c '^ok' "$build-pages/run.log")" "$(grep -c '^not ok' "$build-pages/run.log")"
}

# Python's packages come from its own index, through pip; SWIG too, so that the module is the one of a wheel.
bindings() {
    need bindings
    venv=$build-venv
    [ -x "$venv/bin/python3" ] || python3 -m venv "$venv"
    "$venv/bin/pip" install --quiet --disable-pip-version-check meson ninja swig numpy pandas polars pyarrow duckdb \
        matplotlib hypothesis mypy build || { count 0 1; echo "FAILED: pip"; return 0; }
    before=$PATH
    PATH=$venv/bin:$PATH
    if built bindings "$build-bindings"; then suites bindings "$build-bindings" --suite bindings; fi
    step wheel wheel
    PATH=$before
}

# The source distribution, the wheel out of it, and the wheel's own tests outside of the tree.
wheel() {
    rm -rf "$build-wheel"
    mkdir "$build-wheel"
    python3 -m build "$root/bindings/python" --outdir "$build-wheel" >"$build-wheel/log" 2>&1 ||
        { tail -n 30 "$build-wheel/log"; return 1; }
    python3 -m venv "$build-wheel/venv"
    "$build-wheel/venv/bin/pip" install --quiet --disable-pip-version-check "$build-wheel"/*.whl
    for name in cases objects errors columns strange docs; do
        CASES=$root/tests/cases EXAMPLES=$root/examples PYTHONDONTWRITEBYTECODE=1 \
            "$build-wheel/venv/bin/python" "$root/tests/bindings/python/test_$name.py" >"$build-wheel/$name.log" || return 1
        ! grep '^not ok' "$build-wheel/$name.log" || return 1
    done
}

exhaustive() {
    built exhaustive "$build" || return 0
    suites exhaustive "$build" --suite exhaustive
}

mutants() {
    rm -rf "$build-mutants"
    mkdir -p "$build-mutants"
    step mutants python3 -B "$root/tests/mutants.py" "$root" "$build-mutants" "${MUTANTS:-60}"
}

run_task() {
    case $1 in
    ordinary | sanitize | fuzz | tidy | coverage | bindings | pages | exhaustive | mutants) "$1" ;;
    clang) with_clang ;;
    valgrind) memcheck ;;
    tsan) threads ;;
    locale) comma ;;
    all) for task in ordinary sanitize clang valgrind tsan locale fuzz tidy bindings coverage pages exhaustive; do run_task "$task"; done ;;
    *) echo "unknown task $1; the tasks are: $(sed -n 's/^#   \([a-z]*\)  .*/\1/p' "$0" | tr '\n' ' ')" >&2; exit 2 ;;
    esac
}

need build tests
[ $# -gt 0 ] || set -- ordinary
for word in "$@"; do run_task "$word"; done
echo "$passed passed, $failed failed"
[ "$failed" = 0 ]
