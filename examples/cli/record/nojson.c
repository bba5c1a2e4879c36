/* SPDX-License-Identifier: Apache-2.0 */
/* Stands in for json.c where the command is built without a JSON library. */
#include "record/record.h"
#include "ui/message.h"

#include <stdio.h>
#include <string.h>

int record_read(const char *file, inspection_record *out)
{
    memset(out, 0, sizeof *out);
    print_error("%s is not read: this rodtravel was built without jansson, the library that reads records", file);
    return print_error("install jansson with its headers (libjansson-dev on Debian) and build it again");
}

int record_write(const inspection_record *record, FILE *to)
{
    (void)record;
    (void)to;
    return print_error("this rodtravel was built without jansson, so it writes no records");
}

void record_free(inspection_record *record) { record->tree = NULL; }
