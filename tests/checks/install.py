# SPDX-License-Identifier: Apache-2.0
"""Installs the build into a folder of its own and uses it from there as another project would, by pkg-config alone.

python3 install.py ROOT BUILD_FOLDER -- C_COMPILER...
"""
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

EXAMPLE = "examples/c/stroke.c"


def run(*command, **more):
    done = subprocess.run(command, check=False, capture_output=True, encoding="utf-8", **more)
    assert done.returncode == 0, f"{command}: {done.stdout}{done.stderr}"
    return done.stdout


def installed(build, folder):
    run("meson", "install", "-C", str(build), "--no-rebuild", "--destdir", str(folder))
    (found,) = folder.rglob("rodtravel.pc")
    return found


def flags(pc, folder, *options):
    env = os.environ | {"PKG_CONFIG_PATH": str(pc.parent), "PKG_CONFIG_SYSROOT_DIR": str(folder)}
    return run("pkg-config", *options, "rodtravel", env=env).split()


def answer_of(compiler, source, program, words, libraries):
    run(*compiler, str(source), "-o", str(program), *words)
    # Its exit status is that of the command: 1 means a brake is out of adjustment.
    result = subprocess.run([program], capture_output=True, encoding="utf-8", check=False,
                            env=os.environ | {"LD_LIBRARY_PATH": str(libraries)})
    assert result.returncode in (0, 1), result
    return result.stdout


CMAKE_LISTS = """cmake_minimum_required(VERSION 3.10)
project(app C)
find_package(rodtravel 0.1 REQUIRED CONFIG)
add_executable(app {source})
target_link_libraries(app PRIVATE rodtravel::{target})
"""


def answer_by_cmake(source, config, target, place):
    """What the example says when CMake found the library."""
    place.mkdir()
    (place / "CMakeLists.txt").write_text(CMAKE_LISTS.format(source=source, target=target), encoding="utf-8")
    run("cmake", "-G", "Ninja", "-S", str(place), "-B", str(place / "build"), f"-Drodtravel_DIR={config}")
    run("cmake", "--build", str(place / "build"))
    return subprocess.run([place / "build" / "app"], capture_output=True, encoding="utf-8", check=False).stdout


def check_changed_prefix(build, libraries, place):
    """CMake, configured again with another prefix, links the library from there and no other."""
    with tempfile.TemporaryDirectory() as other:
        config = next(installed(build, Path(other)).parents[1].rglob("rodtravelConfig.cmake")).parent
        run("cmake", str(place / "build"), f"-Drodtravel_DIR={config}")
        ninja = (place / "build/build.ninja").read_text(encoding="utf-8")
        assert f"{other}/" in ninja and f"{libraries}/librodtravel" not in ninja, ninja


def check_library_only(root, place, compiler):
    """A build of one kind of library installs the library, and nothing that is made of it."""
    for kind in ("static", "shared"):
        run("meson", "setup", str(place / f"only-{kind}"), str(root), f"-Ddefault_library={kind}",
            env=os.environ | {"CC": " ".join(compiler)})
        paths = run("meson", "introspect", "--installed", str(place / f"only-{kind}"))
        assert "librodtravel." in paths and "python" not in paths and "bin/rodtravel" not in paths, (kind, paths)


def main(root, build, compiler):
    folder = Path(tempfile.mkdtemp())
    try:
        pc = installed(build, folder)
        source, libraries = root / EXAMPLE, pc.parents[1]
        dynamic = answer_of(compiler, source, folder / "dynamic", flags(pc, folder, "--cflags", "--libs"), libraries)
        alone = ["-Wl,-Bstatic", "-lrodtravel", "-Wl,-Bdynamic", "-lgmp"]
        words = [word for word in flags(pc, folder, "--cflags", "--libs") if word != "-lrodtravel"] + alone
        static = answer_of(compiler, source, folder / "static", words, folder / "nowhere")
        assert dynamic and dynamic == static, (dynamic, static)
        if shutil.which("cmake"):
            # CMake itself would not look into every folder that meson may take for libraries, such as lib64.
            config = next(folder.rglob("rodtravelConfig.cmake")).parent
            for target in ("rodtravel", "static"):
                by_cmake = answer_by_cmake(source, config, target, folder / f"cmake-{target}")
                assert by_cmake == dynamic, (target, by_cmake)
                check_changed_prefix(build, libraries, folder / f"cmake-{target}")
        (command,) = (path for path in folder.rglob("bin/rodtravel"))
        version = run(str(command), "--version", env=os.environ | {"LD_LIBRARY_PATH": str(libraries)})
        assert run("pkg-config", "--modversion", str(pc)).strip() in version, version
        check_library_only(root, folder, compiler)
        manual = ["man3/rodtravel.3"] if (build / "lib/docs/man3").is_dir() else []
        for name in ("man1/rodtravel.1", "rodtravel/inspection.schema.json", "rodtravel/rodtravel.h",
                     "doc/rodtravel/LICENSE", "doc/rodtravel/licences.md", "doc/rodtravel/rodtravel.cdx.json",
                     "doc/rodtravel/tables/README.md", "doc/rodtravel/tables/aircheck.csv", *manual):
            assert list(folder.rglob(name)), f"{name} is not installed"
    finally:
        shutil.rmtree(folder)


if __name__ == "__main__":
    main(Path(sys.argv[1]).resolve(), Path(sys.argv[2]), sys.argv[sys.argv.index("--") + 1:])
