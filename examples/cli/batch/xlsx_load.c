/* SPDX-License-Identifier: Apache-2.0 */
/* libxlsxwriter while the program runs. XLSX_FILE is the library's own name for its binary interface, with which the
 * linker would have recorded it; any other interface is not the one of the header. */
#include "batch/xlsx.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <dlfcn.h>
#include <stddef.h>
#include <string.h>

#define XLSX_PLACE(name) {#name, offsetof(xlsx_functions, name)},
static const struct {
    char name[32];
    size_t place;
} functions[] = {XLSX_FUNCTIONS(XLSX_PLACE)};

xlsx_functions xlsx;

static int cannot_load(void)
{
    return print_error("--format xlsx: %s, which writes workbooks, cannot be loaded (%s)", XLSX_FILE, dlerror());
}

/* It stays until the program ends: what it has registered for the end must be there then. */
int xlsx_load(void)
{
    void *library = dlopen(XLSX_FILE, RTLD_NOW | RTLD_LOCAL);
    if (library == NULL)
        return cannot_load();
    for (size_t i = 0; i < COUNT_OF(functions); i++) {
        void *function = dlsym(library, functions[i].name);
        if (function == NULL)
            return cannot_load();
        memcpy((char *)&xlsx + functions[i].place, &function, sizeof function);
    }
    return STATUS_CONTINUE;
}
