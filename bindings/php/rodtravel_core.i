/* SPDX-License-Identifier: Apache-2.0 */
/* core.i for PHP, whose functions have one name space for all: version() is rodtravel_core_version(). */
%module rodtravel_core
%rename("rodtravel_core_%s", %$isfunction, %$not %$ismember) "";

/* An object that was not made by its constructor has no struct: none is read back, copied or made
 * without it. The classes are there only after the start of the module, so this is done at that of a request. */
%header %{
static void core_seal(void) {
  zend_class_entry *class_of;
  ZEND_HASH_FOREACH_PTR(CG(class_table), class_of) {
    if (strncmp(ZSTR_VAL(class_of->name), "Rodtravel_Core_", 15) == 0)
      class_of->ce_flags |= ZEND_ACC_FINAL | ZEND_ACC_NOT_SERIALIZABLE;
  }
  ZEND_HASH_FOREACH_END();
}
%}
%rinit %{
  core_seal();
%}

%include "../core.i"
%extend Finding {
  Finding() {
    core_refuse(RODT_E_ARGUMENT, "finding", "a finding is what a form was judged to be");
    return NULL;
  }
}
