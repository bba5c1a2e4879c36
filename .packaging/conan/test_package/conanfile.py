# SPDX-License-Identifier: Apache-2.0
"""Builds a program against the package and runs it."""
import os

from conan import ConanFile
from conan.tools.build import can_run
from conan.tools.layout import basic_layout
from conan.tools.meson import Meson


class TestRodtravel(ConanFile):
    settings = "os", "arch", "compiler", "build_type"
    generators = "MesonToolchain", "PkgConfigDeps"

    def requirements(self):
        self.requires(self.tested_reference_str)

    def layout(self):
        basic_layout(self)

    def build(self):
        meson = Meson(self)
        meson.configure()
        meson.build()

    def test(self):
        if can_run(self):
            self.run(os.path.join(self.cpp.build.bindirs[0], "judge"), env="conanrun")
