/* SPDX-License-Identifier: Apache-2.0 */
/* The steps of the table compiler, in the order in which they run. */
#ifndef RODT_TABLEC_STEPS_H
#define RODT_TABLEC_STEPS_H

#include <stdio.h>

#include "tablec/model.h"

/* Reads the text of one file into its rows, and reports every cell that cannot be read. */
void tables_read(tables *t, int file, const char *text, size_t size);

/* Compares every row with every other that it has to do with, and reports all faults. */
void tables_check(tables *t);
void tables_check_air(tables *t);
void tables_check_volumes(tables *t);
void tables_check_steps(tables *t);

/* Writes the constant arrays of rules/tables.h. The rows are valid. */
void tables_write(const tables *t, FILE *out);

/* Writes the sentences of the steps as rows of the English catalogue (message/english.c). */
void tables_write_sentences(const tables *t, FILE *out);

/* Writes every text of the table of air checks that is said in other languages too: a line each, a string of C. */
void tables_write_texts(const tables *t, FILE *out);

/* Writes the bill of materials. */
void tables_write_bill(const tables *t, FILE *out);

#endif
