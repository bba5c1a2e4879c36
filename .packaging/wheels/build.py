# SPDX-License-Identifier: Apache-2.0
"""Builds wheels for several Pythons and machines on one Linux machine:

    python3 build.py LIBRARIES FOLDER TARGETS PYTHON...

LIBRARIES is what fetch.sh made, TARGETS names of targets.py with commas between them, or all, and each PYTHON an
interpreter of this machine, whose headers are read. The wheels are put into FOLDER/dist. Needs meson >= 1.3, ninja,
swig >= 4.4, ziglang and pyproject-metadata. FOLDER must be new or one of the same versions.
"""
import glob
import os
import re
import subprocess
import sys

import pack
import targets

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, os.path.join(os.path.dirname(os.path.dirname(HERE)), "bindings", "python"))
import build_backend    # noqa: E402  the one that stages the sources for pip

JOBS = os.environ.get("JOBS") or str(os.cpu_count())
# What is inside of the command beside the library: its folder, its licence and the file that has the text.
INSIDE = (("zlib", "Zlib", "README"), ("libzstd", "BSD-3-Clause", "LICENSE"),
          ("libxlsxwriter", "BSD-2-Clause", "License.txt"))


def run(*command, log):
    """What the command says is shown only if it fails."""
    with open(log, "a", encoding="utf-8") as file:
        done = subprocess.run(command, stdout=file, stderr=subprocess.STDOUT, check=False)
    if done.returncode != 0:
        with open(log, encoding="utf-8") as file:
            sys.exit("".join(file.readlines()[-40:]) + f"failed: {' '.join(command)}; see {log}")


def meson_setup(build, source, *options):
    again = ["--reconfigure"] * os.path.exists(os.path.join(build, "build.ninja"))
    run("meson", "setup", *again, build, source, "--buildtype=release", "-Ddefault_library=static", "--prefix=/",
        *options, log=build + ".log")


def build_words(folder, source):
    """The program of this machine that writes Python's enumerations."""
    build = os.path.join(folder, "own")
    meson_setup(build, source)
    run("ninja", "-j", JOBS, "-C", build, "bindings/binding-words", log=build + ".log")
    return os.path.join(build, "bindings", "binding-words")


def build_libraries(folder, sources, name, target):
    """The folder of their .pc files."""
    build = os.path.join(folder, f"{name}-libraries")
    installed = os.path.join(folder, f"{name}-installed")
    targets.write_cross_file(build + ".ini", target, {})
    meson_setup(build, sources, "--cross-file", build + ".ini")
    run("ninja", "-j", JOBS, "-C", build, log=build + ".log")
    run("meson", "install", "-C", build, "--no-rebuild", "--destdir", installed, log=build + ".log")
    pkgconfig = os.path.join(installed, "lib", "pkgconfig")
    for path in glob.glob(os.path.join(pkgconfig, "*.pc")):
        with open(path, encoding="utf-8") as file:
            text = re.sub("(?m)^prefix=.*", f"prefix={installed}", file.read())
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
    return pkgconfig


def build_package(folder, source, name, python, more):
    """The folder in which the package is installed, and the bill of materials. All Pythons of a target share a build:
    only the module is compiled again."""
    target = targets.TARGETS[name]
    build = os.path.join(folder, name)
    installed = os.path.join(folder, f"{name}-{python.tag}")
    suffix = "abi3.so" if python.limited else "so"
    more = {"binaries": more["binaries"], "properties": more["properties"] | {
        "python_headers": python.headers, "python_limited": python.limited, "python_suffix": suffix}}
    targets.write_cross_file(build + ".ini", target, more)
    meson_setup(build, source, "--cross-file", build + ".ini")
    run("ninja", "-j", JOBS, "-C", build, "python-package", "rodtravel.cdx.json", log=build + ".log")
    run("meson", "install", "-C", build, "--no-rebuild", "--destdir", installed, "--tags=python-runtime,runtime,man",
        log=build + ".log")
    return installed, os.path.join(build, "rodtravel.cdx.json")


def read(path):
    with open(path, "rb") as file:
        return file.read()


def licences(sources, name):
    """{name: text} beside the project's own, and the SPDX expression of the wheel."""
    texts = {f"{folder}.txt": read(os.path.join(sources, folder, file)) for folder, _, file in INSIDE}
    names = ["Apache-2.0"] + sorted(identifier for _, identifier, _ in INSIDE)
    if name.startswith("musllinux"):
        texts["musl.txt"] = read(os.path.join(targets.ZIG_FOLDER, "lib", "libc", "musl", "COPYRIGHT"))
    return texts, " AND ".join(names)


def metadata(texts, expression):
    """As pip reads it, with the licences of what is inside."""
    text = build_backend._metadata().decode()
    own = "License-File: LICENSE\n"
    text = text.replace("License-Expression: Apache-2.0\n", f"License-Expression: {expression}\n")
    return text.replace(own, own + "".join(f"License-File: {name}\n" for name in sorted(texts))).encode()


# Where a file is installed, and its place in a wheel.
PLACES = (("python/rodtravel/", "rodtravel/"), ("bin/", "{stem}.data/scripts/"), ("share/", "{stem}.data/data/share/"))


def installed_files(installed, stem):
    files = {}
    for path in glob.glob(os.path.join(installed, "**"), recursive=True):
        place = os.path.relpath(path, installed)
        for start, to in PLACES:
            if os.path.isfile(path) and place.startswith(start):
                files[to.format(stem=stem) + place[len(start):]] = (read(path), start == "bin/")
    return files


def build_wheel(folder, source, sources, name, python, more):
    installed, bill = build_package(folder, source, name, python, more)
    stem = f"rodtravel-{build_backend._version(source)}"
    files = installed_files(installed, stem)
    texts, expression = licences(sources, name)
    about = f"{stem}.dist-info"
    files[f"{about}/METADATA"] = (metadata(texts, expression), False)
    files[f"{about}/sboms/rodtravel.cdx.json"] = (read(bill), False)
    for licence, text in {"LICENSE": read(os.path.join(source, "LICENSE")), **texts}.items():
        files[f"{about}/licenses/{licence}"] = (text, False)
    tag = f"{python.tag}-{targets.TARGETS[name].platforms}"
    print(pack.write_wheel(os.path.join(folder, "dist"), stem, tag, files))


def main(sources, folder, names, *interpreters):
    folder, sources = os.path.abspath(folder), os.path.abspath(sources)
    source = os.path.join(folder, "sources")
    os.makedirs(os.path.join(folder, "dist"), exist_ok=True)
    if not os.path.isdir(source):
        os.mkdir(source)
        build_backend._copy(build_backend._root(), source)
    build_backend.HERE = source     # the checkout may change meanwhile
    words = build_words(folder, source)
    # Of those that one module serves the oldest: headers of a later one may rely on what it lacks.
    asked = sorted(map(targets.ask_python, interpreters), reverse=True)
    pythons = {python.tag: python for python in asked}
    for name in targets.TARGETS if names == "all" else names.split(","):
        more = {"binaries": {"binding-words": words},
                "properties": {"pkg_config_libdir": build_libraries(folder, sources, name, targets.TARGETS[name])}}
        for python in pythons.values():
            build_wheel(folder, source, sources, name, python, more)


if __name__ == "__main__":
    main(*sys.argv[1:])
