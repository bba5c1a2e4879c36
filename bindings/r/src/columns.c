/* SPDX-License-Identifier: Apache-2.0 */
#include "columns.h"

#include <R_ext/Utils.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>

enum { VERDICT, STROKE, LIMIT, MARGIN, REASONS, STATUS, FIELD, COLUMN, ANSWERS };
static const char *const names[ANSWERS] = {"verdict", "stroke", "limit", "margin",
                                           "reasons", "status", "field", "column"};

#define REASONS_BYTES_MAX 4096 /* every word there is */
#define ROWS_BETWEEN 4096      /* looks for an interruption */

static SEXP exact(rodt_length length)
{
    char text[48];
    if (length.den == 0)
        return NA_STRING;
    snprintf(text, sizeof text, length.den == 1 ? "%lld" : "%lld/%lld", (long long)length.num,
             (long long)length.den);
    return Rf_mkChar(text);
}

static SEXP reasons(const rodt_finding *finding)
{
    char text[REASONS_BYTES_MAX];
    const rodt_record *record = rodt_record_find("rodt_finding");
    const rodt_status status = rodt_record_text_format(record, finding, "reasons", text, sizeof text, NULL);
    return status == RODT_OK ? Rf_mkCharCE(text, CE_UTF8) : NA_STRING;
}

static void write(SEXP answers, R_xlen_t row, const rodt_finding *finding, const rodt_error *error)
{
    char column[16] = "";
    if (error->column != 0)
        snprintf(column, sizeof column, "%u", (unsigned)error->column);
    const bool read = error->status == RODT_OK;
    SET_STRING_ELT(VECTOR_ELT(answers, VERDICT), row, Rf_mkChar(rodt_verdict_name((rodt_verdict)finding->verdict)));
    SET_STRING_ELT(VECTOR_ELT(answers, STROKE), row, exact(finding->applied_stroke));
    SET_STRING_ELT(VECTOR_ELT(answers, LIMIT), row, exact(finding->limit));
    SET_STRING_ELT(VECTOR_ELT(answers, MARGIN), row, exact(finding->margin));
    SET_STRING_ELT(VECTOR_ELT(answers, REASONS), row, reasons(finding));
    SET_STRING_ELT(VECTOR_ELT(answers, STATUS), row,
                   read ? NA_STRING : Rf_mkChar(rodt_status_name((rodt_status)error->status)));
    SET_STRING_ELT(VECTOR_ELT(answers, FIELD), row, read ? NA_STRING : Rf_mkChar(error->field));
    SET_STRING_ELT(VECTOR_ELT(answers, COLUMN), row, column[0] == '\0' ? NA_STRING : Rf_mkChar(column));
}

static SEXP make_answers(R_xlen_t rows)
{
    SEXP answers = PROTECT(Rf_allocVector(VECSXP, ANSWERS));
    SEXP called = PROTECT(Rf_allocVector(STRSXP, ANSWERS));
    for (int i = 0; i < ANSWERS; i++) {
        SET_VECTOR_ELT(answers, i, Rf_allocVector(STRSXP, rows));
        SET_STRING_ELT(called, i, Rf_mkChar(names[i]));
    }
    Rf_setAttrib(answers, R_NamesSymbol, called);
    UNPROTECT(2);
    return answers;
}

static void fill(rodt_form *form, SEXP columns, R_xlen_t row)
{
    SEXP headings = Rf_getAttrib(columns, R_NamesSymbol);
    for (R_xlen_t i = 0; i < Rf_xlength(columns); i++) {
        RODT_ENUM32(rodt_field) field = RODT_FIELD_NONE;
        SEXP cell = STRING_ELT(VECTOR_ELT(columns, i), row);
        if (cell != NA_STRING && rodt_field_find(CHAR(STRING_ELT(headings, i)), &field) == RODT_OK)
            rodt_form_set(form, (rodt_field)field, CHAR(cell));
    }
}

SEXP columns_judge(SEXP columns, const rodt_form *fixed, const rodt_rules *rules, rodt_error *error)
{
    const R_xlen_t rows = Rf_xlength(columns) > 0 ? Rf_xlength(VECTOR_ELT(columns, 0)) : 0;
    SEXP answers = PROTECT(make_answers(rows));
    for (R_xlen_t row = 0; row < rows; row++) {
        rodt_form form = *fixed;
        rodt_finding finding;
        rodt_error unread;
        memset(&unread, 0, sizeof unread);
        if (row % ROWS_BETWEEN == 0)
            R_CheckUserInterrupt();
        fill(&form, columns, row);
        const rodt_status status = rodt_form_judge_row(&form, rules, &finding, &unread);
        if (status != RODT_OK) {
            *error = unread;
            error->status = status;
            error->line = (uint32_t)(row + 1);
            UNPROTECT(1);
            return R_NilValue;
        }
        write(answers, row, &finding, &unread);
    }
    UNPROTECT(1);
    return answers;
}
