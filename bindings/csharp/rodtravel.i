/* SPDX-License-Identifier: Apache-2.0 */
/* core.i for C#: texts cross as bytes of UTF-8, because those of P/Invoke are of the system's encoding, and after each
 * call the library is asked whether it refused. No class of SWIG is public. */
%module Core

%pragma(csharp) moduleclassmodifiers = "internal class"
%pragma(csharp) imclassclassmodifiers = "internal class"
%rename("Core%s", %$isclass) "";
%typemap(csclassmodifiers) SWIGTYPE "internal class"
%typemap(csinterfaces) struct Finding, struct Record, struct Vehicle "global::System.IDisposable, Held"

%{
#include <stdlib.h>
#include <string.h>
static char *core_copy(const char *text);
%}

/* null is a text that is not given. A text that is given out is a copy, which Texts.Taken gives back. */
%typemap(ctype, out = "char *") char * "const char *"
%typemap(imtype, out = "global::System.IntPtr") char * "byte[]"
%typemap(cstype) char * "string"
%typemap(csin) char * "Texts.Bytes($csinput)"
%typemap(in) char * "$1 = (char *)$input;"
%typemap(out) char * "$result = core_copy($1);"

%define CHECK "\n    Refusals.Check();" %enddef
%typemap(csout, excode = CHECK) char * {
    string found = Texts.Taken($imcall);$excode
    return found;
  }
%typemap(csout, excode = CHECK) int {
    int found = $imcall;$excode
    return found;
  }
%typemap(csout, excode = CHECK) void {
    $imcall;$excode
  }
%typemap(csout, excode = CHECK) SWIGTYPE * {
    global::System.IntPtr found = $imcall;$excode
    return found == global::System.IntPtr.Zero ? null : new $csclassname(found, $owner);
  }
%typemap(csconstruct, excode = CHECK) SWIGTYPE %{: this($imcall, true) {$excode
  }
%}

%include "../core.i"

%{
static char *core_copy(const char *text) {
  char *copy = text != NULL ? (char *)malloc(strlen(text) + 1) : NULL;
  return copy != NULL ? strcpy(copy, text) : NULL;
}

SWIGEXPORT void SWIGSTDCALL core_give_back(char *text) { free(text); }

/* Whether the last call on this thread was refused. */
SWIGEXPORT int SWIGSTDCALL core_refused(void) { return core_error.status != RODT_OK; }
%}
