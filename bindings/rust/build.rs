// SPDX-License-Identifier: Apache-2.0

//! Links the library: that of the directory RODTRAVEL_LIBRARY with what RODTRAVEL_LINK names, or the sources in c/, which
//! are compiled here by CC. Nothing is downloaded.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{exit, Child, Command};

fn stop(why: &str) -> ! {
    eprintln!("rodtravel: {why}");
    exit(1)
}

fn wait(child: Child, what: &Path) {
    match child.wait_with_output() {
        Ok(said) if said.status.success() => (),
        _ => stop(&format!("{} cannot be compiled", what.display())),
    }
}

fn start(command: &mut Command) -> Child {
    match command.spawn() {
        Ok(child) => child,
        Err(error) => stop(&format!("{:?} does not start: {error}; set CC or AR", command.get_program())),
    }
}

/// Compiles each source, some at a time, and gives the objects.
fn compile(sources: &[PathBuf], out: &Path) -> Vec<PathBuf> {
    let at_once = env::var("NUM_JOBS").ok().and_then(|jobs| jobs.parse().ok()).unwrap_or(1).max(1);
    let compiler = env::var("CC").unwrap_or_else(|_| "cc".into());
    let optimised = env::var("OPT_LEVEL").map_or(true, |level| level != "0");
    let mut objects = Vec::new();
    for some in sources.chunks(at_once) {
        let mut running = Vec::new();
        for source in some {
            let object = out.join(source.file_name().unwrap_or_default()).with_extension("o");
            let child = start(
                Command::new(&compiler)
                    .args(["-std=c11", if optimised { "-O2" } else { "-O1" }, "-fPIC", "-fvisibility=hidden"])
                    .args(["-DRODT_BUILDING", "-DRODT_STATIC", "-DRODT_EXACT_PLAIN", "-DNDEBUG"])
                    .args(["-D_POSIX_C_SOURCE=200809L", "-Ic/include", "-Ic/src", "-c"])
                    .arg(source)
                    .arg("-o")
                    .arg(&object),
            );
            running.push((child, source));
            objects.push(object);
        }
        running.into_iter().for_each(|(child, source)| wait(child, source));
    }
    objects
}

fn sources() -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = match fs::read_dir("c") {
        Ok(entries) => entries.flatten().map(|entry| entry.path()).collect(),
        Err(_) => stop("there are no sources in c/; set RODTRAVEL_LIBRARY to the directory of the library"),
    };
    found.retain(|path| path.extension().map_or(false, |suffix| suffix == "c"));
    found.sort();
    found
}

fn main() {
    println!("cargo:rerun-if-env-changed=RODTRAVEL_LIBRARY");
    println!("cargo:rerun-if-env-changed=RODTRAVEL_LINK");
    println!("cargo:rustc-link-lib=static=rodtravel");
    if let Ok(directory) = env::var("RODTRAVEL_LIBRARY") {
        println!("cargo:rerun-if-changed={directory}/librodtravel.a");
        println!("cargo:rustc-link-search=native={directory}");
        for name in env::var("RODTRAVEL_LINK").unwrap_or_default().split_whitespace() {
            println!("cargo:rustc-link-lib={name}");
        }
        return;
    }
    println!("cargo:rerun-if-changed=c");
    println!("cargo:rerun-if-env-changed=CC");
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    let archive = out.join("librodtravel.a");
    let _ = fs::remove_file(&archive);
    let archiver = env::var("AR").unwrap_or_else(|_| "ar".into());
    let objects = compile(&sources(), &out);
    wait(start(Command::new(archiver).arg("crs").arg(&archive).args(objects)), &archive);
    println!("cargo:rustc-link-search=native={}", out.display());
}
