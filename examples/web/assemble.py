# SPDX-License-Identifier: Apache-2.0
"""Makes one HTML file of the page: assemble.py PAGE MODULE WORKER HTML C DEPENDENCIES [NOTICES]

PAGE names its styles and scripts by tags of their own; each becomes part of the file, and MODULE fills the script whose
id is `module`. HTML is the file. C has all of it but the first tag, which names the language of the page. DEPENDENCIES
tells the build what was read. WORKER keeps a page that a server gave; C has it too. NOTICES is the text that goes with the C library of the module. The file asks for nothing beyond itself, and says so to the browser: only these scripts
run."""
import base64
import hashlib
import os
import re
import sys

STYLE = re.compile(r'<link rel="stylesheet" href="([\w.]+)">')
SCRIPT = re.compile(r'<script src="([\w.]+)"></script>')
MODULE = '<script type="application/octet-stream;base64" id="module"></script>'
CHARSET = '<meta charset="utf-8">'
LANGUAGE = '<html lang="en">'
ASKS_FOR = re.compile(r"""(?:src|href)=["']?(?!data:|blob:|#)[\w/.:]|\bimport\b\s*[("'{*]|@import|url\((?!["']?(?:data:|#))""")
POLICY = ("default-src 'none'; script-src {} 'wasm-unsafe-eval'; style-src 'unsafe-inline'; img-src data: blob:; "
          "worker-src 'self'; base-uri 'none'; form-action 'none'")
CHUNK = 4000  # characters of a string of C on one line


def once(pattern, text):
    if text.count(pattern) != 1:
        sys.exit(f"the page has {pattern} {text.count(pattern)} times; once is expected")


def assemble(page, module):
    """(the whole page, the files it was made of)."""
    folder, read = os.path.dirname(page), [page, module]

    def inside(name, end):
        path = os.path.join(folder, name)
        read.append(path)
        with open(path, encoding="utf-8") as file:
            text = file.read()
        if end in text or ASKS_FOR.search(text):
            sys.exit(f"{name} has {end}, or asks for another file: {ASKS_FOR.search(text)}")
        return text

    with open(page, encoding="utf-8") as file:
        text = file.read()
    for pattern in (MODULE, CHARSET, LANGUAGE):
        once(pattern, text)
    text = STYLE.sub(lambda match: f"<style>\n{inside(match[1], '</style')}</style>", text)
    hashes = []

    def script(match):
        code = "\n" + inside(match[1], "</script")
        hashes.append("'sha256-" + base64.b64encode(hashlib.sha256(code.encode()).digest()).decode() + "'")
        return f"<script>{code}</script>"

    text = SCRIPT.sub(script, text)
    with open(module, "rb") as file:
        code = base64.b64encode(file.read()).decode()
    text = text.replace(MODULE, MODULE.replace("></", f">{code}</"))
    policy = POLICY.format(" ".join(hashes))
    text = text.replace(CHARSET, f'{CHARSET}\n<meta http-equiv="Content-Security-Policy" content="{policy}">')
    return text, read


def notices(path):
    """A comment at the end of the page."""
    with open(path, encoding="utf-8") as file:
        return f"<!--\nThe module holds parts of the C library of WASI.\n\n{file.read().replace('--', '- -')}-->\n"


def c_string(text):
    """A line of C for each chunk; bytes beyond ASCII as octal numbers of three digits, which no digit prolongs."""
    plain = {34: '\\"', 92: "\\\\", 10: "\\n"}
    data = text.encode()
    for at in range(0, len(data), CHUNK):
        yield '"' + "".join(plain.get(b) or (chr(b) if 32 <= b < 127 else f"\\{b:03o}") for b in data[at:at + CHUNK]) + '"'


def main():
    page, module, worker, html, c, dependencies, *more = sys.argv[1:]
    text, read = assemble(page, module)
    with open(worker, encoding="utf-8") as file:
        kept = file.read()
    text += "".join(notices(path) for path in more)
    with open(html, "w", encoding="utf-8", newline="\n") as file:
        file.write(text)
    rest = text[text.index(LANGUAGE) + len(LANGUAGE):]
    with open(c, "w", encoding="ascii", newline="\n") as file:
        file.write("/* SPDX-License-Identifier: Apache-2.0 */\n"
                   "/* Made by assemble.py of the page and its module. */\n"
                   '#include "page/page.h"\n\n'
                   '#pragma GCC diagnostic ignored "-Woverlength-strings"\n\n'
                   "const char page_text[] =\n" + "\n".join(c_string(rest)) + ";\n\n"
                   f"const size_t page_size = {len(rest.encode())};\n\n"
                   f'const char page_digest[] = "{hashlib.sha256(rest.encode()).hexdigest()[:16]}";\n\n'
                   "const char worker_text[] =\n" + "\n".join(c_string(kept)) + ";\n")
    with open(dependencies, "w", encoding="utf-8", newline="\n") as file:
        file.write(f"{html} {c}: {' '.join([*read, worker])}\n")


main()
