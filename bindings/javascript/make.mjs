// SPDX-License-Identifier: Apache-2.0
// Makes the package of its sources.
//   node make.mjs exports SOURCE...                           what the linker has to export: what the sources call
//   node make.mjs package FOLDER VERSION HEADERS WASM TYPES SOURCE...   the files of the package, in that folder
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, join } from "node:path";

const LICENCE = "// SPDX-License-Identifier: Apache-2.0\n";
const read = (path) => readFileSync(path, "utf8");

// --- What the sources need ----------------------------------------------------------------------------------

/** Names that C does not have are left out by the linker: records and enumerations are named alike. */
function exportsOf(sources) {
    const names = new Set(sources.flatMap((path) => read(path).match(/\brodt_\w+/g) ?? []));
    return ["malloc", "free", "__heap_base", ...[...names].sort()]
        .map((name) => `-Wl,--export-if-defined=${name}\n`)
        .join("");
}

/** The macros of the headers that the module of constants is asked for, by their names without RODT_. */
function constants(folder, sources) {
    const headers = readdirSync(folder)
        .sort()
        .map((name) => read(join(folder, name)))
        .join("\n");
    const asked = sources
        .flatMap((path) => [...read(path).matchAll(FROM)])
        .filter(([, , , from]) => from === "constants");
    return [...new Set(asked.flatMap(([, , names]) => listOf(names)))]
        .sort()
        .map((name) => {
            const macro = new RegExp(`^#define RODT_${name} (.*?)(?: /\\*.*)?$|^ *RODT_${name} = (\\w+)$`, "m").exec(
                headers,
            );
            if (macro === null) throw new Error(`no header defines RODT_${name}`);
            const value = (macro[1] ?? macro[2]).replace(/(\d)u\b/, "$1").replace(/^INT64_C\((\d+)\)/, "$1n");
            return `const ${name} = ${value};`;
        })
        .join("\n");
}

// --- One file of all ----------------------------------------------------------------------------------------

const FROM = /^(import|export) \{([^}]*)\} from "\.\/(\w+)\.mjs";\n/gm;
const imported = (text) => [...text.matchAll(FROM)].map(([, , , from]) => from);
const listOf = (names) => names.split(",").map((name) => name.trim()).filter(Boolean);

/** The sources by name, each behind those that it imports. */
function inOrder(sources) {
    const texts = new Map(sources.map((path) => [basename(path, ".mjs"), read(path)]));
    const order = new Map();
    const visit = (name) => {
        if (!texts.has(name) || order.has(name)) return;
        imported(texts.get(name)).forEach(visit);
        order.set(name, texts.get(name));
    };
    [...texts.keys()].sort().forEach(visit);
    return order;
}

/** The names that a source exports. */
function exportedBy(text) {
    const others = [...text.matchAll(FROM)]
        .filter(([, kind]) => kind === "export")
        .flatMap(([, , names]) => listOf(names));
    const own = [...text.matchAll(/^export (?:const|class|function\*?) (\w+)/gm)].map(([, name]) => name);
    return [...own, ...others].sort();
}

/** A source as a function that is called once, so that its other names are its own. */
function wrapped(name, text) {
    const body = text
        .replace(LICENCE, "")
        .replace(FROM, (_, kind, names, from) => `const {${names}} = $${from};\n`)
        .replace(/^export /gm, "");
    return `const $${name} = (() => {\n${body}return { ${exportedBy(text).join(", ")} };\n})();\n`;
}

function bodyOf(sources, headers, wasm) {
    const made = {
        constants: constants(headers, sources),
        wasm: `const WASM = "${readFileSync(wasm).toString("base64")}";`,
    };
    const generated = Object.entries(made).map(([name, text]) =>
        wrapped(name, `${text}\n`.replace(/^const/gm, "export const")),
    );
    return [...generated, ...[...inOrder(sources)].map(([name, text]) => wrapped(name, text))].join("\n");
}

// --- Types --------------------------------------------------------------------------------------------------

const typeName = (name) => name.replace(/^rodt/, "").replace(/_(\w)/g, (_, letter) => letter.toUpperCase());
const EXACT = "Fraction | null";
const TYPES = {
    length: EXACT,
    pressure: EXACT,
    ratio: EXACT,
    date: "string | null",
    position: "string | null",
    boolean: "boolean",
    integer: "number",
    unsigned: "number",
    index: "number | null",
    text: "string | null",
    "text-pointer": "string | null",
    rules: "string | null",
};

function memberType({ kind, of, record, count }, nameOf) {
    const word = () => typeName(of.name);
    const one =
        {
            enumerator: word,
            set: () => `readonly ${word()}[]`,
            record: () => nameOf(record),
            "record-pointer": () => `${nameOf(record)} | null`,
        }[kind]?.() ?? TYPES[kind];
    return count === 1 ? one : `readonly ${one.replace(" | null", "")}[]`;
}

/** What a comment of the header says of a member. */
function commentOf(headers, record, field) {
    const struct = new RegExp(`typedef struct ${record} \\{([^]*?)\\n\\} ${record};`).exec(headers)?.[1] ?? "";
    const comment = new RegExp(`\\b${field}(?:\\[[^;]*)?;\\s*/\\*([^]*?)\\*/`).exec(struct)?.[1] ?? "";
    return comment.trim().replace(/\s+/g, " ");
}

function interfaceOf(layout, nameOf, headers) {
    const lines = layout.values.map((member) => {
        const comment = commentOf(headers, layout.name, member.field);
        const said = [comment, member.unit && `(${member.unit})`].filter(Boolean).join(" ");
        return `${said && `    /** ${said} */\n`}    readonly ${member.name}: ${memberType(member, nameOf)};\n`;
    });
    return `export interface ${typeName(layout.name)} {\n${lines.join("")}}\n`;
}

/** What JavaScript or the template means by these is not the record of that name. */
const OTHER_TYPES = ["Error", "Catalogue"];

/** The types that the template names, and those that these need, from the library's description of itself. */
function typesOf(template, { layouts, enumerations }, headers) {
    const records = new Map(layouts.map((layout) => [layout.record, layout]));
    const nameOf = (record) => typeName(records.get(record).name);
    const makers = new Map([
        ...enumerations.map((each) => [
            typeName(each.name),
            () =>
                `export type ${typeName(each.name)} = "${[...each.word.values()].join('" | "')}";\n`,
        ]),
        ...layouts.map((layout) => [typeName(layout.name), () => interfaceOf(layout, nameOf, headers)]),
    ]);
    const made = new Map(OTHER_TYPES.map((name) => [name, ""]));
    const need = (text) => {
        for (const name of text.match(/\b[A-Z]\w+/g) ?? []) {
            if (!makers.has(name) || made.has(name)) continue;
            made.set(name, "");
            made.set(name, makers.get(name)());
            need(made.get(name).replace(/\/\*\*.*\*\//g, ""));
        }
    };
    need(template.replace(/\/\*\*[^]*?\*\//g, ""));
    return `${template}\n${[...made.values()].join("\n")}`;
}

// --- The package --------------------------------------------------------------------------------------------

function manifest(version) {
    const types = (kind, path) => ({ types: `./rodtravel.d.${kind}`, default: path });
    return {
        name: "rodtravel",
        version,
        license: "Apache-2.0 AND MIT AND BSD-2-Clause AND CC0-1.0",
        description:
            "Pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly",
        keywords: ["air brakes", "pushrod stroke", "inspection", "fractions", "WebAssembly"],
        main: "./rodtravel.cjs",
        types: "./rodtravel.d.cts",
        exports: {
            ".": {
                node: { import: types("mts", "./node.mjs"), require: types("cts", "./rodtravel.cjs") },
                default: types("mts", "./rodtravel.mjs"),
            },
            "./package.json": "./package.json",
        },
        files: ["node.mjs", "rodtravel.mjs", "rodtravel.cjs", "rodtravel.d.mts", "rodtravel.d.cts", "wasi-libc.txt"],
        engines: { node: ">=18" },
        sideEffects: false,
    };
}

function writePackage(folder, version, headers, wasm, types, ...sources) {
    const body = bodyOf(sources, headers, wasm);
    const names = exportedBy(inOrder(sources).get("index")).join(", ");
    const { allLayouts, allEnumerations } = new Function(`${body}\nreturn $describe;`)();
    const internal = { layouts: allLayouts(), enumerations: allEnumerations() };
    const comments = readdirSync(headers)
        .sort()
        .map((name) => read(join(headers, name)))
        .join("\n");
    const declared = typesOf(read(types), internal, comments);
    const files = {
        "rodtravel.mjs": `${LICENCE}${body}\nexport const { ${names} } = $index;\n`,
        "rodtravel.cjs": `${LICENCE}"use strict";\n${body}\nmodule.exports = $index;\n`,
        // In Node both ways give one instance, so that an error or a finding of one is that of the other.
        "node.mjs": `${LICENCE}import all from "./rodtravel.cjs";\n\nexport const { ${names} } = all;\n`,
        "rodtravel.d.mts": declared,
        "rodtravel.d.cts": declared,
        "package.json": `${JSON.stringify(manifest(version), null, 2)}\n`,
    };
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
}

const [task, ...rest] = process.argv.slice(2);
if (task === "exports") process.stdout.write(exportsOf(rest));
else writePackage(...rest);
