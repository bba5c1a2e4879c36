/* SPDX-License-Identifier: Apache-2.0 */
/* core.i for Octave. Its functions are core_judge_air and so on: Octave takes a function of a module in place of one
 * that a package has by the same name. */
%module rodtravel_core
#define CORE_QUIET
%rename("core_%s", %$isfunction, %$not %$ismember) "";

/* An object that was deleted by name holds nothing, and is refused. */

%typemap(in, noblock=1) SWIGTYPE * (void *argp = 0, int res = 0) {
  res = SWIG_ConvertPtr($input, &argp, $descriptor, ($disown) != 0 ? SWIG_POINTER_RELEASE : 0);
  if (!SWIG_IsOK(res) || argp == NULL)
    SWIG_exception_fail(SWIG_TypeError, "this object holds nothing that the library made");
  $1 = ($1_ltype)argp;
}

%include "../core.i"
