/* SPDX-License-Identifier: Apache-2.0 */
/* core.i for R. Its classes of S4 are not used: R/ calls the routines. */
%module rodtravel
#define CORE_QUIET

%header %{
/* NULL for an object of another kind, and for one that a workspace kept: R writes no struct. */
static void *core_pointer(SEXP object, const swig_type_info *type) {
  const int is = TYPEOF(object) == EXTPTRSXP && TYPEOF(R_ExternalPtrTag(object)) == EXTPTRSXP &&
                 R_ExternalPtrAddr(R_ExternalPtrTag(object)) == (const void *)type;
  return is ? R_ExternalPtrAddr(object) : NULL;
}
%}
%typemap(in) SWIGTYPE * %{
  $1 = ($1_ltype)core_pointer($input, $descriptor);
  if ($1 == NULL)
    SWIG_exception_fail(SWIG_TypeError, "this object holds nothing that the library made");
%}
%typemap(in) Rules *air_law %{ $1 = ($1_ltype)core_pointer($input, $descriptor); %}

/* What R lets go of goes. */
%define OWNED(Name)
%header {
struct Name;
static void delete_##Name(struct Name *self);
static void let_go_of_##Name(SEXP object) {
  delete_##Name((struct Name *)R_ExternalPtrAddr(object));
  R_ClearExternalPtr(object);
}
}
%typemap(out) Name *, struct Name * {
  $result = PROTECT(SWIG_R_NewPointerObj(SWIG_as_voidptr($1), $1_descriptor, 0));
  if ($result != R_NilValue)
    R_RegisterCFinalizer($result, let_go_of_##Name);
  UNPROTECT(1);
}
%enddef
OWNED(Rules)
OWNED(Form)
OWNED(Finding)
OWNED(Record)
OWNED(Vehicle)
OWNED(Columns)

%include "../core.i"

/* Columns of a data frame, by columns.c. */
%{
#include "columns.h"
%}
%typemap(in) SEXP "$1 = $input;"
%typemap(out) SEXP "$result = $1;"
%typemap(rtype) SEXP "ANY"
%typemap(scoercein) SEXP ""
%typemap(scoerceout) SEXP ""
%inline %{
/* The field of a reading that a heading names, and the one that it probably means; "" = none. */
const char *field_of(const char *heading) {
  RODT_ENUM32(rodt_field) found = RODT_FIELD_NONE;
  return rodt_field_find(heading, &found) == RODT_OK ? rodt_field_name((rodt_field)found) : "";
}
const char *field_meant(const char *heading) { return rodt_field_name(rodt_field_meant(heading, strlen(heading))); }
SEXP judge_columns(SEXP columns, Form *fixed, Rules *rules) {
  return columns_judge(columns, &fixed->form, rules->rules, &core_error);
}
%}
