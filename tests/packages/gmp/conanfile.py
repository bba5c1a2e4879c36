# SPDX-License-Identifier: Apache-2.0
"""Stands for the gmp package of Conan's own server, which a machine without a network cannot ask: the system's GNU MP."""
from conan import ConanFile


class Gmp(ConanFile):
    name = "gmp"
    version = "6.3.0"

    def package_info(self):
        self.cpp_info.libs = []
        self.cpp_info.system_libs = ["gmp"]
        self.cpp_info.includedirs = []
        self.cpp_info.set_property("pkg_config_name", "gmp")
