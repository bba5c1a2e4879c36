/* SPDX-License-Identifier: Apache-2.0 */
/* The functions of libxlsxwriter that the command calls. The library brings cryptography of its own into each start,
 * which takes longer than all else in it, so a command that is linked dynamically loads it for a workbook only. */
#ifndef BATCH_XLSX_H
#define BATCH_XLSX_H

#include <xlsxwriter.h>

#define XLSX_FUNCTIONS(each) \
    each(workbook_new_opt) each(workbook_add_worksheet) each(workbook_add_format) each(workbook_set_properties) \
    each(workbook_close) each(lxw_workbook_free) each(lxw_strerror) \
    each(format_set_font_color) each(format_set_bg_color) each(format_set_bold) each(format_set_bottom) \
    each(format_set_num_format) \
    each(worksheet_write_string) each(worksheet_write_number) each(worksheet_set_column) \
    each(worksheet_freeze_panes) each(worksheet_autofilter)

/* Pointers of the types that the header declares. */
#define XLSX_POINTER(name) __typeof__(name) *(name);
typedef struct xlsx_functions {
    XLSX_FUNCTIONS(XLSX_POINTER)
} xlsx_functions;

/* All are there after xlsx_load. */
extern xlsx_functions xlsx;

/* STATUS_CONTINUE, or the status after a message that names the file which cannot be loaded. */
int xlsx_load(void);

#endif
