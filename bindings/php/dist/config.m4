dnl SPDX-License-Identifier: Apache-2.0
dnl The library and the wrapper that SWIG wrote, which lie side by side.
PHP_ARG_ENABLE([rodtravel_core], [whether to build rodtravel_core], [AS_HELP_STRING([--enable-rodtravel-core],
  [Pushrod stroke of air brakes])], [yes])
if test "$PHP_RODTRAVEL_CORE" != "no"; then
  rodtravel_sources=$(cd "$ext_dir" 2>/dev/null || cd "$abs_srcdir"; echo *.c)
  PHP_NEW_EXTENSION([rodtravel_core], [$rodtravel_sources], [$ext_shared],,
    [-I@ext_srcdir@/include -I@ext_srcdir@/src -DRODT_BUILDING -DRODT_STATIC -DRODT_EXACT_PLAIN -DNDEBUG])
fi
