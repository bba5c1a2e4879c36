# SPDX-License-Identifier: Apache-2.0
"""Builds wheels and source distributions with meson-python, from a copy of the project that has pyproject.toml on top.

In a checkout the project begins two directories up, in a source distribution here.
"""
import contextlib
import io
import os
import re
import shutil
import sys
import tarfile
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
# The command is in the package, and its code that groups the brakes of vehicles is part of the module.
PARTS = ("meson.build", "LICENSE", "include", "lib", "tables", "bindings", "examples/meson.build", "examples/cli",
         "examples/web", "examples/data/inspection.schema.json")


def _root():
    for root in (HERE, os.path.dirname(os.path.dirname(HERE))):
        if all(os.path.exists(os.path.join(root, part)) for part in PARTS):
            return root
    raise RuntimeError("the sources of the C library are not here: build in a checkout or from a source distribution")


def _version(root):
    with open(os.path.join(root, "meson.build"), encoding="utf-8") as file:
        return re.search(r"version: '([^']+)'", file.read()).group(1)


def _copy(root, to):
    """The parts that a package is built of, with the files of this directory that belong on top."""
    for part in PARTS:
        source, target = os.path.join(root, part), os.path.join(to, part)
        if os.path.isdir(source):
            shutil.copytree(source, target, ignore=shutil.ignore_patterns("__pycache__", "build*.egg-info", "dist"))
        else:
            os.makedirs(os.path.dirname(target), exist_ok=True)
            shutil.copy2(source, target)
    for name in ("pyproject.toml", "README.md", "build_backend.py"):
        shutil.copy2(os.path.join(HERE, name), to)


@contextlib.contextmanager
def _staged():
    """A directory in which meson-python finds everything; it is the working directory meanwhile."""
    before = os.getcwd()
    with tempfile.TemporaryDirectory(prefix="rodtravel-") as to:
        _copy(_root(), to)
        path = os.path.join(to, "pyproject.toml")
        with open(path, encoding="utf-8") as file:
            text = file.read().replace('build-backend = "build_backend"\nbackend-path = ["."]',
                                       'build-backend = "mesonpy"')
        if sys.version_info < (3, 11):
            text = text.replace("limited-api = true", "limited-api = false")
        with open(path, "w", encoding="utf-8") as file:
            file.write(text)
        os.chdir(to)
        try:
            yield
        finally:
            os.chdir(before)


def build_wheel(wheel_directory, config_settings=None, metadata_directory=None):
    import mesonpy
    wheel_directory = os.path.abspath(wheel_directory)
    with _staged():
        return mesonpy.build_wheel(wheel_directory, config_settings)


def _metadata():
    """The core metadata, as meson-python writes it into a wheel."""
    import pyproject_metadata
    with _staged():
        try:
            import tomllib
        except ImportError:
            import tomli as tomllib
        with open("pyproject.toml", "rb") as file:
            settings = tomllib.load(file)
        settings["project"]["version"] = _version(".")
        settings["project"]["dynamic"] = []
        return bytes(pyproject_metadata.StandardMetadata.from_pyproject(settings, ".").as_rfc822())


def build_sdist(sdist_directory, config_settings=None):
    root = _root()
    name = f"rodtravel-{_version(root)}"
    path = os.path.join(os.path.abspath(sdist_directory), name + ".tar.gz")
    metadata = _metadata()
    with tempfile.TemporaryDirectory(prefix="rodtravel-") as to, tarfile.open(path, "w:gz", format=tarfile.PAX_FORMAT) as tar:
        _copy(root, to)
        tar.add(to, arcname=name, filter=_owned_by_nobody)
        info = tarfile.TarInfo(f"{name}/PKG-INFO")
        info.size = len(metadata)
        tar.addfile(info, io.BytesIO(metadata))
    return os.path.basename(path)


def _owned_by_nobody(info):
    info.uid = info.gid = 0
    info.uname = info.gname = ""
    return info
