#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# rust.sh ARCHIVE FOLDER: unpacks the crate in a folder of its own, tests it, and asks it from a program that names it, all
# without a network and without the library of the build.
set -eu
archive=$1
folder=$2
rm -rf "$folder"
mkdir -p "$folder/program/src"
tar -xzf "$archive" -C "$folder"
unset RODTRAVEL_LIBRARY RODTRAVEL_LINK CARGO_TARGET_DIR
export CARGO_NET_OFFLINE=true
crate=$(cd "$folder"/rodtravel-rust-* && pwd)
(cd "$crate" && cargo test --quiet >log 2>&1 || { tail -n 30 log; exit 1; })
cd "$folder/program"
cat >Cargo.toml <<END
[package]
name = "program"
version = "0.1.0"
edition = "2021"

[dependencies]
rodtravel = { path = "$crate" }
END
cat >src/main.rs <<'END'
use rodtravel::{Form, RuleSet};

fn main() -> rodtravel::Result<()> {
    let form = Form { chamber: "30", released: "2 1/8", applied: "4 1/8", psi: "95", ..Form::default() };
    println!("{}", RuleSet::default().judge(&form)?.verdict());
    Ok(())
}
END
said=$(cargo run --quiet --release)
[ "$said" = in-adjustment ] || { echo "said: $said"; exit 1; }
