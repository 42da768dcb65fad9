# SPDX-License-Identifier: BSL-1.0
"""A recipe for Conan 2. UNTESTED: the tool was not at hand when it was written.

In this folder: conan create . -o "&:shared_library_for_c=True"
"""
import os
import re

from conan import ConanFile
from conan.tools.cmake import CMake, CMakeDeps, CMakeToolchain, cmake_layout
from conan.tools.files import copy, load


class Aqueth(ConanFile):
    name = "aqueth"
    description = "Physical properties of ethanol-water mixtures"
    license = "BSL-1.0"
    package_type = "unknown"  # headers, or headers and a shared library
    settings = "os", "compiler", "build_type", "arch"
    options = {"typed": [True, False], "shared_library_for_c": [True, False]}
    default_options = {"typed": True, "shared_library_for_c": False}

    @property
    def _root(self):
        return os.path.join(self.recipe_folder, "..", "..", "..")

    def set_version(self):
        text = load(self, os.path.join(self._root, "include", "aqueth", "version.hpp"))
        numbers = [re.search(rf"AQUETH_VERSION_{part} (\d+)", text)[1] for part in ("MAJOR", "MINOR", "PATCH")]
        self.version = ".".join(numbers)

    def export_sources(self):
        for pattern in ("CMakeLists.txt", "LICENSE", "CHANGELOG.md", "cmake/*", "include/*", "src/CMakeLists.txt", "src/c/*"):
            copy(self, pattern, self._root, self.export_sources_folder)

    def layout(self):
        cmake_layout(self)

    def requirements(self):
        if self.options.typed or self.options.shared_library_for_c:
            self.requires("boost/[>=1.74 <2]", options={"header_only": True}, transitive_headers=True)

    def generate(self):
        CMakeDeps(self).generate()
        toolchain = CMakeToolchain(self)
        toolchain.cache_variables.update(
            AQUETH_TYPED=bool(self.options.typed or self.options.shared_library_for_c),
            AQUETH_C=bool(self.options.shared_library_for_c),
            AQUETH_PROGRAMS=False, AQUETH_INSTALL=True, AQUETH_WARNINGS_AS_ERRORS=False)
        toolchain.generate()

    def build(self):
        cmake = CMake(self)
        cmake.configure()
        cmake.build()

    def package(self):
        CMake(self).install()
        copy(self, "LICENSE", self.source_folder, os.path.join(self.package_folder, "licenses"))

    def package_id(self):
        if not self.info.options.shared_library_for_c:
            self.info.settings.clear()

    def package_info(self):
        self.cpp_info.set_property("cmake_file_name", "aqueth")
        plain = self.cpp_info.components["plain"]
        plain.set_property("cmake_target_name", "aqueth::plain")
        plain.libdirs = plain.bindirs = []
        if self.options.typed:
            typed = self.cpp_info.components["typed"]
            typed.set_property("cmake_target_name", "aqueth::aqueth")
            typed.requires = ["plain", "boost::headers"]
            typed.libdirs = typed.bindirs = []
        if self.options.shared_library_for_c:
            c = self.cpp_info.components["c"]
            c.set_property("cmake_target_name", "aqueth::c")
            c.libs = ["aqueth"]
            c.requires = [] if self.options.typed else ["boost::headers"]
