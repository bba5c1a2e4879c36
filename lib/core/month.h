/* SPDX-License-Identifier: Apache-2.0 */
/* Names of months as spreadsheets and forms write them, in English, French and Spanish. */
#ifndef RODT_MONTH_H
#define RODT_MONTH_H

#include "core/text.h"

/* Reads a run of letters as the name of a month, whole or cut short as is usual, in upper or lower case,
 * with or without its accents. Returns 1 to 12 with the cursor after the name, or 0 with it where it was. */
int rodti_month_read(text_cursor *cursor);

#endif
