#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# clang for WASI without the options of GNU's linker that Meson adds and the linker of WebAssembly does not know.
for word do
    shift
    case $word in
    -Wl,--start-group | -Wl,--end-group | -Wl,--as-needed | -Wl,--no-undefined) ;;
    *) set -- "$@" "$word" ;;
    esac
done
exec clang --target=wasm32-wasi "$@"
