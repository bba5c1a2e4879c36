-- SPDX-License-Identifier: Apache-2.0
rockspec_format = "3.0"
package = "rodtravel"
version = "@VERSION@-1"
source = {url = "file://rodtravel-lua-@VERSION@.tar.gz"}
description = {
  summary = "Pushrod stroke of air brakes, judged exactly",
  detailed = "From a tape reading to a verdict with its reasons and source. Exact fractions; binary floats are refused.",
  license = "Apache-2.0",
}
dependencies = {"lua >= 5.3"}
build = {
  type = "builtin",
  modules = {
    rodtravel = "rodtravel.lua",
    -- The module of C: the library, and the wrapper that SWIG wrote.
    rodtravel_core = {
      sources = {@SOURCES@},
      incdirs = {"include", "src"},
      defines = {"RODT_BUILDING", "RODT_STATIC", "RODT_EXACT_PLAIN", "NDEBUG"},
    },
  },
}
