/* SPDX-License-Identifier: Apache-2.0 */
#ifndef RODTRAVEL_R_COLUMNS_H
#define RODTRAVEL_R_COLUMNS_H

#include <Rinternals.h>
#include <rodtravel/rodtravel.h>

/*
 * Judges the rows of columns of texts, a named list with columns of one length, as rodt_form_judge_row does.
 *
 * columns  named by headings; NA is not given
 * fixed    what holds for every row
 * error    gets the row as its line where the library cannot answer
 *
 * A list of columns of texts: verdict, stroke, limit, margin, reasons, status, field, column; NULL where it fails.
 */
SEXP columns_judge(SEXP columns, const rodt_form *fixed, const rodt_rules *rules, rodt_error *error);

#endif
