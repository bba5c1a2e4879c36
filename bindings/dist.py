# SPDX-License-Identifier: Apache-2.0
"""Puts together what people install with a language and a C compiler alone: an archive of sources.

    dist.py ARCHIVE TOP LIST PLACE ROOT FILE...

TOP is the folder in the archive, a name and the version; LIST a file with lines of a name in it and where that lies
under ROOT; a name with a slash at its end is a folder of scripts, without what only the build reads, and a name alone
MANIFEST, the list of all names. PLACE is the folder for C: the FILEs, which are the sources of the library, what the
build generated and the wrapper that SWIG wrote, side by side under names of their own, and headers in include/ and src/.
A FILE that is no C has a line NAME @. In LIST and in what it names @VERSION@ is the version, @SOURCES@ the C sources as
strings with commas. The same tree gives the same bytes."""
import gzip
import io
import pathlib
import sys
import tarfile


def library(root, given):
    """{name: path} of the C sources, and of the headers that they include."""
    found = {}
    for path in given:
        if path.suffix == ".c":
            inside = root / "lib" in path.parents
            found["rodt_" + "_".join(path.relative_to(root / "lib").parts) if inside else path.name] = path
        elif path.suffix == ".h":
            found[f"src/{path.name}"] = path
    for folder, into in (("include", "include"), ("lib", "src")):
        found.update({f"{into}/{path.relative_to(root / folder).as_posix()}": path
                      for path in (root / folder).rglob("*.h") if "catalogc" not in path.parts and "tablec" not in path.parts})
    return found


def scripts(name, folder):
    """{name: path} of a folder."""
    return {name + path.relative_to(folder).as_posix(): path
            for path in folder.rglob("*") if path.is_file() and path.name != "meson.build"}


def listed(path, root, given):
    """{name: path} of a list; None for MANIFEST."""
    found = {}
    for line in path.read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            name, _, where = line.partition(" ")
            made = [one for one in given if one.name == pathlib.Path(name).name]
            if name.endswith("/"):
                found.update(scripts(name, root / where))
            else:
                found[name] = made[0] if where == "@" else root / where.strip() if where else None
    return found


def contents(root, names, place, version, given):
    """{name in the archive: bytes}."""
    found = {f"{place}/{name}".lstrip("./"): path for name, path in library(root, given).items()}
    marks = {b"@VERSION@": version, b"@SOURCES@": ", ".join(f'"{name}"' for name in sorted(found) if name.endswith(".c"))}
    texts = {name: path.read_bytes() for name, path in found.items()}
    for name, path in {"LICENSE": root / "LICENSE", **listed(names, root, given)}.items():
        text = path.read_bytes() if path is not None else b""
        for mark, meaning in marks.items():
            text = text.replace(mark, meaning.encode())
        texts[name.replace("@VERSION@", version)] = text
    return {name: text or "".join(f"{one}\n" for one in sorted(texts)).encode() for name, text in texts.items()}


def write(archive, top, files):
    packed = io.BytesIO()
    with tarfile.open(fileobj=packed, mode="w", format=tarfile.USTAR_FORMAT) as tar:
        for name in sorted(files):
            entry = tarfile.TarInfo(f"{top}/{name}")
            entry.size, entry.mode = len(files[name]), 0o644
            tar.addfile(entry, io.BytesIO(files[name]))
    with open(archive, "wb") as file, gzip.GzipFile("", "wb", 9, file, 0) as zipped:
        zipped.write(packed.getvalue())


def main(archive, top, names, place, root, *given):
    root = pathlib.Path(root).resolve()
    version = top.rsplit("-", 1)[1]
    write(archive, top, contents(root, pathlib.Path(names), place, version, [pathlib.Path(path).resolve() for path in given]))


if __name__ == "__main__":
    main(*sys.argv[1:])
