# SPDX-License-Identifier: Apache-2.0
# frozen_string_literal: true

require "mkmf"

# The module of C: the library, and the wrapper that SWIG wrote.
$INCFLAGS = "-I$(srcdir)/include -I$(srcdir)/src #{$INCFLAGS}"
$defs.push("-DRODT_BUILDING", "-DRODT_STATIC", "-DRODT_EXACT_PLAIN", "-DNDEBUG")
$warnflags = ""
create_makefile("rodtravel_core")
