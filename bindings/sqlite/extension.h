/* SPDX-License-Identifier: Apache-2.0 */
/* What the files of the extension share: arguments in, texts out. */
#ifndef EXTENSION_H
#define EXTENSION_H

#include <rodtravel/rodtravel.h>
#include <sqlite3ext.h>

#include "sql.h"

/* The same arguments give the same result, and nothing else is read or changed. */
#define PURE (SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS)

/*
 * Judges the arguments as a row of a file. A value of NULL is not written, and so is one that SQL has as NULL.
 *
 * function  named in sentences
 * error     gets the first text that could not be read (rodt_form_judge_row)
 * said      on SQLITE_ERROR gets a sentence, freed with sqlite3_free; NULL = no memory for it
 *
 * SQLITE_OK; SQLITE_NOMEM; SQLITE_ERROR: a REAL, or a rule set that does not exist.
 */
int judge_values(const char *function, sqlite3_value *const values[SQL_ARGUMENTS], rodt_finding *finding,
                 rodt_error *error, char **said);

/* A value as zero-terminated UTF-8: NULL for NULL, what no reader takes for bytes that are no such text. SQLITE_OK;
 * SQLITE_NOMEM; SQLITE_ERROR: a REAL. Then *text is untouched. */
int value_text(sqlite3_value *value, const char **text);

/* Results of a function or a column. A denominator of zero and an empty text are NULL. */
void result_exact(sqlite3_context *context, int64_t num, int64_t den);
void result_words(sqlite3_context *context, const char *text);
void result_reasons(sqlite3_context *context, const rodt_finding *finding);

/* What a call of judge_values failed with. */
void result_failure(sqlite3_context *context, int status, char *said);

/* Statuses of SQLite. */
int register_functions(sqlite3 *connection);
int register_vehicles(sqlite3 *connection);
int register_tables(sqlite3 *connection);

#endif
