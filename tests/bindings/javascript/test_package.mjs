// SPDX-License-Identifier: Apache-2.0
// The package as its users get it: packed, installed offline in an empty folder, the programs of its README run there,
// and the module of browsers without anything of Node.
import assert from "node:assert/strict";
import { spawn, spawnSync } from "node:child_process";
import {
    copyFileSync,
    mkdirSync,
    mkdtempSync,
    readdirSync,
    readFileSync,
    rmSync,
    statSync,
    writeFileSync,
} from "node:fs";
import { createServer } from "node:http";
import { tmpdir } from "node:os";
import { join } from "node:path";
import vm from "node:vm";
import { gzipSync } from "node:zlib";
import { folder, run } from "./tap.mjs";

if (spawnSync("npm", ["--version"]).status !== 0) {
    console.log("1..0 # SKIP npm is not installed");
    process.exit(0);
}
const here = mkdtempSync(join(tmpdir(), "rodtravel-"));
process.on("exit", () => rmSync(here, { recursive: true, force: true }));

function command(program, args, cwd, statuses = [0]) {
    const done = spawnSync(program, args, {
        cwd,
        encoding: "utf8",
        env: {
            ...process.env,
            npm_config_cache: join(here, "cache"),
            npm_config_update_notifier: "false",
            npm_config_registry: "http://localhost:1",
        },
    });
    assert.ok(statuses.includes(done.status), `${program} ${args.join(" ")}\n${done.stdout}${done.stderr}`);
    return done.stdout;
}

let packed = "";

function installed(name) {
    const app = join(here, name);
    mkdirSync(app);
    writeFileSync(join(app, "package.json"), '{ "private": true }\n');
    command("npm", ["install", "--offline", "--no-audit", "--no-fund", join(here, packed)], app);
    return app;
}

/** The programs of the README, and what each line that prints says it prints. */
function* examples() {
    const text = readFileSync(join(folder, "README.md"), "utf8");
    for (const [, code] of text.matchAll(/^```js\n([^]*?)^```/gm)) {
        yield [code, [...code.matchAll(/console\.log\(.*\); *\/\/ (.*)$/gm)].map(([, said]) => `${said}\n`).join("")];
    }
}

const SERVED = {
    "/rodtravel.mjs": join(folder, "rodtravel.mjs"),
    "/answers.mjs": new URL("answers.mjs", import.meta.url),
    "/digest.mjs": new URL("digest.mjs", import.meta.url),
    "/small.jsonl": join(process.env.ROOT, "tests", "conformance", "small.jsonl"),
};

/** The title of a page with this script in a browser; nothing where there is none. */
async function shownBy(script) {
    if (spawnSync("chromium", ["--version"]).status !== 0) {
        console.log("# no browser: `run.sh pages` installs one");
        return undefined;
    }
    const page = `<!doctype html><title>-</title><script type=module>${script}</script>`;
    const server = createServer((request, answer) => {
        const served = SERVED[request.url];
        answer.setHeader("Content-Type", served ? "text/javascript" : "text/html");
        answer.end(served ? readFileSync(served) : page);
    });
    await new Promise((resolve) => {
        server.listen(0, "127.0.0.1", resolve);
    });
    const browser = spawn("chromium", [
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-background-networking",
        `--user-data-dir=${mkdtempSync(join(here, "browser-"))}`,
        "--virtual-time-budget=20000",
        "--dump-dom",
        `http://127.0.0.1:${server.address().port}/`,
    ]);
    let shown = "";
    browser.stdout.on("data", (part) => {
        shown += part;
    });
    await new Promise((resolve) => {
        browser.on("close", resolve);
    });
    server.close();
    return shown.match(/<title>([^<]*)<\/title>/)[1];
}

await run({
    pack() {
        packed = command("npm", ["pack", "--silent", "--pack-destination", here, folder], here).trim();
        const names = command("tar", ["-tzf", packed], here).trim().split("\n").sort();
        assert.deepEqual(
            names,
            [
                "LICENSE",
                "README.md",
                "node.mjs",
                "package.json",
                "rodtravel.cjs",
                "rodtravel.d.cts",
                "rodtravel.d.mts",
                "rodtravel.mjs",
                "wasi-libc.txt",
            ]
                .map((name) => `package/${name}`)
                .sort(),
        );
        const wasm = readFileSync(join(folder, "rodtravel.wasm"));
        console.log(
            `# rodtravel.wasm ${wasm.length} bytes, gzip ${gzipSync(wasm, { level: 9 }).length}; package ` +
                `${statSync(join(here, packed)).size}`,
        );
    },

    programsOfTheReadme() {
        const app = installed("app");
        const manifest = JSON.parse(readFileSync(join(app, "node_modules", "rodtravel", "package.json"), "utf8"));
        assert.deepEqual([manifest.scripts, manifest.dependencies], [undefined, undefined]);
        const all = [...examples()];
        assert.equal(all.length, 3);
        all.forEach(([code, said], i) => {
            const name = `run${i}.${code.includes("require(") ? "cjs" : "mjs"}`;
            writeFileSync(join(app, name), code);
            assert.equal(command(process.execPath, [name], app), said);
        });
    },

    /** The example is run beside the package, and gives the report of the vehicle in two languages. */
    example() {
        const [app, examples] = [join(here, "app"), join(process.env.ROOT, "examples")];
        copyFileSync(join(examples, "javascript", "fleet.mjs"), join(app, "fleet.mjs"));
        const report = (...args) =>
            command(process.execPath, ["fleet.mjs", join(examples, "data", "demo_vehicle.csv"), ...args], app);
        const [english, french] = [report(), report("fr")];
        assert.equal(JSON.parse(english).wheel_ends.length, JSON.parse(french).wheel_ends.length);
        assert.notEqual(english, french);
        if (process.env.COMMAND) {
            const same = command(
                process.env.COMMAND,
                ["vehicle", "--json", join(examples, "data", "demo_vehicle.csv")],
                app,
                [0, 1],
            );
            assert.deepEqual(
                JSON.parse(english).wheel_ends.map((end) => end.verdict),
                JSON.parse(same).wheel_ends.map((end) => end.verdict),
            );
        }
    },

    /** The types are sound by themselves, and a program is checked against them. */
    types() {
        const compiler = process.env.TSC;
        if (!compiler) {
            console.log("# no compiler of TypeScript: `run.sh bindings` installs one");
            return;
        }
        const app = join(here, "app");
        for (const name of ["user.mts", "user.cts"]) copyFileSync(new URL("user.ts", import.meta.url), join(app, name));
        const options = [
            "--noEmit",
            "--strict",
            "--target",
            "es2022",
            "--lib",
            "es2022,dom",
            "--module",
            "nodenext",
            "--types",
            "",
        ];
        command(compiler, [...options, "user.mts", "user.cts"], app);
    },

    /** What a browser has, and no more. */
    moduleOfBrowsers() {
        const body = readFileSync(join(folder, "rodtravel.mjs"), "utf8").replace(/^export const [^\n]*$/m, "");
        const context = vm.createContext({
            WebAssembly,
            TextEncoder,
            TextDecoder,
            atob,
            FinalizationRegistry,
            WeakMap,
        });
        const verdict = vm.runInContext(`${body}\n$index.judge("30", "2", "4 1/8").verdict`, context);
        assert.equal(verdict, "out-of-adjustment");
        assert.doesNotMatch(body.replace(/^const WASM.*$/m, ""), /\b(process|Buffer|require|__dirname)\b|node:/);
    },

    /** A page that imports the module judges, and shows what it found. */
    async page() {
        const shown = await shownBy(
            "import { judge, judgeColumns } from './rodtravel.mjs';" +
                "const answers = judgeColumns({ chamber: ['30'], released: ['2'], applied: ['4 1/8'] });" +
                "document.title = `${judge('30', '2', '4 1/8')}: ${answers.at(0).verdict}`",
        );
        if (shown) assert.equal(shown, "2 to 4 1/8 is 2 1/8; limit 2; over by 1/8: out-of-adjustment");
    },

    /** A browser gives every answer of the conformance kit: the digest is the published one. */
    async answersOfBrowsers() {
        const shown = await shownBy(
            "import * as rt from './rodtravel.mjs'; import { digestOf } from './digest.mjs';" +
                "document.title = await digestOf(rt, await (await fetch('./small.jsonl')).text())",
        );
        const kept = readFileSync(join(process.env.ROOT, "tests", "conformance", "digests.txt"), "utf8");
        if (shown) assert.equal(shown, kept.match(/^small \d+ \w+ (\w+)/m)[1]);
    },

    /** Packed twice, and made twice, the bytes are the same. */
    sameBytes() {
        const again = join(here, "again");
        mkdirSync(again);
        const source = join(process.env.ROOT, "bindings", "javascript");
        const sources = readdirSync(join(source, "src")).map((name) => join(source, "src", name));
        const { version } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
        command(
            process.execPath,
            [
                join(source, "make.mjs"),
                "package",
                again,
                version,
                join(process.env.ROOT, "include", "rodtravel"),
                join(folder, "rodtravel.wasm"),
                join(source, "rodtravel.d.ts.in"),
                ...sources.reverse(),
            ],
            here,
        );
        for (const name of readdirSync(again)) {
            assert.ok(readFileSync(join(again, name)).equals(readFileSync(join(folder, name))), name);
        }
        command("npm", ["pack", "--silent", "--pack-destination", again, folder], here);
        assert.ok(readFileSync(join(again, packed)).equals(readFileSync(join(here, packed))));
    },
});
