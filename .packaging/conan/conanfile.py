# SPDX-License-Identifier: Apache-2.0
"""The library as a Conan package, built out of this checkout: conan create .packaging/conan"""
import os
import re

from conan import ConanFile
from conan.tools.files import copy, load, rmdir
from conan.tools.gnu import PkgConfigDeps
from conan.tools.layout import basic_layout
from conan.tools.meson import Meson, MesonToolchain

# What the library is built of; the command, the bindings and the tests stay out.
PARTS = ["meson.build", "LICENSE", "README.md", "include/*", "lib/*", "tables/*"]


class Rodtravel(ConanFile):
    name = "rodtravel"
    description = "Adjustment of air-braked vehicles: pushrod stroke to a verdict with its source, in exact fractions"
    license = "Apache-2.0"
    topics = ("air brakes", "inspection", "fractions")
    package_type = "library"
    settings = "os", "arch", "compiler", "build_type"
    options = {"shared": [True, False], "fPIC": [True, False], "exact": ["gmp", "plain"]}
    default_options = {"shared": False, "fPIC": True, "exact": "gmp"}

    def _checkout(self):
        return os.path.join(self.recipe_folder, "..", "..")

    def set_version(self):
        self.version = re.search(r"version: '(.*?)'", load(self, os.path.join(self._checkout(), "meson.build")))[1]

    def export_sources(self):
        for part in PARTS:
            copy(self, part, self._checkout(), self.export_sources_folder, excludes=("*__pycache__*",))

    def config_options(self):
        if self.settings.os == "Windows":
            self.options.rm_safe("fPIC")
            self.options.exact = "plain"

    def configure(self):
        if self.options.shared:
            self.options.rm_safe("fPIC")
        self.settings.rm_safe("compiler.cppstd")
        self.settings.rm_safe("compiler.libcxx")

    def layout(self):
        basic_layout(self)

    def requirements(self):
        if self.options.exact == "gmp":
            self.requires("gmp/6.3.0")

    def generate(self):
        toolchain = MesonToolchain(self)
        toolchain.properties["exact"] = str(self.options.exact)
        toolchain.generate()
        PkgConfigDeps(self).generate()

    def build(self):
        meson = Meson(self)
        meson.configure()
        meson.build()

    def package(self):
        copy(self, "LICENSE", self.source_folder, os.path.join(self.package_folder, "licenses"))
        Meson(self).install()
        for folder in ("lib/pkgconfig", "lib/cmake", "share"):
            rmdir(self, os.path.join(self.package_folder, folder))

    def package_info(self):
        self.cpp_info.libs = ["rodtravel"]
        self.cpp_info.set_property("cmake_target_name", "rodtravel::rodtravel")
        self.cpp_info.set_property("pkg_config_name", "rodtravel")
        if self.settings.os == "Windows" and not self.options.shared:
            self.cpp_info.defines = ["RODT_STATIC"]
