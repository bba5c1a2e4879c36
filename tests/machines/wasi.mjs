// SPDX-License-Identifier: Apache-2.0
// Runs a program of WebAssembly with the files, the environment and the exit status of a native one:
// node --no-warnings wasi.mjs PROGRAM [ARGUMENT...]
import { readFileSync } from "node:fs";
import { WASI } from "node:wasi";

const [program, ...rest] = process.argv.slice(2);
const wasi = new WASI({
  version: "preview1", args: [program, ...rest], env: process.env, preopens: { "/": "/" }, returnOnExit: true,
});
const module = await WebAssembly.compile(readFileSync(program));
const instance = await WebAssembly.instantiate(module, { wasi_snapshot_preview1: wasi.wasiImport });
process.exitCode = wasi.start(instance);
