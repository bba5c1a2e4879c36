/* SPDX-License-Identifier: Apache-2.0 */
/* libxlsxwriter as part of the program. */
#include "batch/xlsx.h"
#include "ui/exit_status.h"

#define XLSX_ADDRESS(name) .name = (name),
xlsx_functions xlsx = {XLSX_FUNCTIONS(XLSX_ADDRESS)};

int xlsx_load(void) { return STATUS_CONTINUE; }
