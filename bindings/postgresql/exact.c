/* SPDX-License-Identifier: Apache-2.0 */
/* The type of exact numbers: a fraction in lowest terms, ordered by value. And single texts. */
#include "extension.h"

#include <common/hashfn.h>
#include <libpq/pqformat.h>
#include <mb/pg_wchar.h>
#include <utils/builtins.h>

#include <string.h>

PG_MODULE_MAGIC;

/* --- In and out ---------------------------------------------------------------------------------------- */

PG_FUNCTION_INFO_V1(rodtpg_exact_in);
PG_FUNCTION_INFO_V1(rodtpg_exact_out);
PG_FUNCTION_INFO_V1(rodtpg_exact_recv);
PG_FUNCTION_INFO_V1(rodtpg_exact_send);
PG_FUNCTION_INFO_V1(rodtpg_exact_numeric);

static const rodt_ratio *exact_argument(Datum value) { return (const rodt_ratio *)DatumGetPointer(value); }

static Datum exact_datum(rodt_ratio number) { return exact_value(number.num, number.den).value; }

Datum rodtpg_exact_in(PG_FUNCTION_ARGS)
{
    const char *text = PG_GETARG_CSTRING(0);
    rodt_ratio number;
    if (!sql_exact_read(text, strlen(text), &number))
        ereport(ERROR, (errcode(ERRCODE_INVALID_TEXT_REPRESENTATION),
                        errmsg("\"%.*s\" is no exact number", pg_mbcliplen(text, (int)strlen(text), 40), text),
                        errhint("It is written as -1/16 or 2.")));
    return exact_datum(number);
}

Datum rodtpg_exact_out(PG_FUNCTION_ARGS)
{
    const rodt_ratio *number = exact_argument(PG_GETARG_DATUM(0));
    char text[SQL_EXACT_SIZE];
    sql_exact_write(number->num, number->den, text);
    PG_RETURN_CSTRING(pstrdup(text));
}

Datum rodtpg_exact_recv(PG_FUNCTION_ARGS)
{
    StringInfo message = (StringInfo)PG_GETARG_POINTER(0);
    const int64 num = pq_getmsgint64(message), den = pq_getmsgint64(message);
    rodt_ratio number;
    if (rodt_ratio_make(num, den, &number) != RODT_OK)
        ereport(ERROR, (errcode(ERRCODE_INVALID_BINARY_REPRESENTATION), errmsg("this is no exact number")));
    return exact_datum(number);
}

Datum rodtpg_exact_send(PG_FUNCTION_ARGS)
{
    const rodt_ratio *number = exact_argument(PG_GETARG_DATUM(0));
    StringInfoData message;
    pq_begintypsend(&message);
    pq_sendint64(&message, (uint64)number->num);
    pq_sendint64(&message, (uint64)number->den);
    return PointerGetDatum(pq_endtypsend(&message));
}

/* As numeric divides, so rounded in general. */
Datum rodtpg_exact_numeric(PG_FUNCTION_ARGS)
{
    const rodt_ratio *number = exact_argument(PG_GETARG_DATUM(0));
    return DirectFunctionCall2(numeric_div, DirectFunctionCall1(int8_numeric, Int64GetDatum(number->num)),
                               DirectFunctionCall1(int8_numeric, Int64GetDatum(number->den)));
}

/* --- Order --------------------------------------------------------------------------------------------- */

PG_FUNCTION_INFO_V1(rodtpg_exact_lt);
PG_FUNCTION_INFO_V1(rodtpg_exact_le);
PG_FUNCTION_INFO_V1(rodtpg_exact_eq);
PG_FUNCTION_INFO_V1(rodtpg_exact_ne);
PG_FUNCTION_INFO_V1(rodtpg_exact_ge);
PG_FUNCTION_INFO_V1(rodtpg_exact_gt);
PG_FUNCTION_INFO_V1(rodtpg_exact_cmp);
PG_FUNCTION_INFO_V1(rodtpg_exact_hash);
PG_FUNCTION_INFO_V1(rodtpg_exact_smaller);
PG_FUNCTION_INFO_V1(rodtpg_exact_larger);

static int compare_arguments(FunctionCallInfo fcinfo)
{
    return rodt_ratio_compare(*exact_argument(PG_GETARG_DATUM(0)), *exact_argument(PG_GETARG_DATUM(1)));
}

Datum rodtpg_exact_lt(PG_FUNCTION_ARGS) { PG_RETURN_BOOL(compare_arguments(fcinfo) < 0); }
Datum rodtpg_exact_le(PG_FUNCTION_ARGS) { PG_RETURN_BOOL(compare_arguments(fcinfo) <= 0); }
Datum rodtpg_exact_eq(PG_FUNCTION_ARGS) { PG_RETURN_BOOL(compare_arguments(fcinfo) == 0); }
Datum rodtpg_exact_ne(PG_FUNCTION_ARGS) { PG_RETURN_BOOL(compare_arguments(fcinfo) != 0); }
Datum rodtpg_exact_ge(PG_FUNCTION_ARGS) { PG_RETURN_BOOL(compare_arguments(fcinfo) >= 0); }
Datum rodtpg_exact_gt(PG_FUNCTION_ARGS) { PG_RETURN_BOOL(compare_arguments(fcinfo) > 0); }
Datum rodtpg_exact_cmp(PG_FUNCTION_ARGS) { PG_RETURN_INT32(compare_arguments(fcinfo)); }

/* Lowest terms: equal numbers are equal bytes. */
Datum rodtpg_exact_hash(PG_FUNCTION_ARGS)
{
    return hash_any((const unsigned char *)DatumGetPointer(PG_GETARG_DATUM(0)), sizeof(rodt_ratio));
}

Datum rodtpg_exact_smaller(PG_FUNCTION_ARGS)
{
    PG_RETURN_DATUM(PG_GETARG_DATUM(compare_arguments(fcinfo) <= 0 ? 0 : 1));
}

Datum rodtpg_exact_larger(PG_FUNCTION_ARGS)
{
    PG_RETURN_DATUM(PG_GETARG_DATUM(compare_arguments(fcinfo) >= 0 ? 0 : 1));
}

/* --- Single texts -------------------------------------------------------------------------------------- */

PG_FUNCTION_INFO_V1(rodtpg_length);
PG_FUNCTION_INFO_V1(rodtpg_length_format);
PG_FUNCTION_INFO_V1(rodtpg_date);
PG_FUNCTION_INFO_V1(rodtpg_tables_edition);

/* A fraction whose blank may be lost has no second value here, so the strict reader. */
Datum rodtpg_length(PG_FUNCTION_ARGS)
{
    const char *text = cell_of_text(PG_GETARG_DATUM(0));
    rodt_style style;
    rodt_length length;
    RODT_ENUM32(rodt_unit) written;
    memset(&style, 0, sizeof style);
    if (PG_NARGS() > 1 && rodt_unit_parse(cell_of_text(PG_GETARG_DATUM(1)), &style.unit, NULL) != RODT_OK)
        PG_RETURN_NULL();
    if (rodt_length_parse_strict_n(text, strlen(text), &style, &length, &written, NULL) != RODT_OK)
        PG_RETURN_NULL();
    return returned(fcinfo, exact_value(length.num, length.den));
}

/* As a tape is read: "2 9/16". */
Datum rodtpg_length_format(PG_FUNCTION_ARGS)
{
    const rodt_ratio *number = exact_argument(PG_GETARG_DATUM(0));
    const rodt_length length = {number->num, number->den};
    char written[RODT_LENGTH_TEXT_SIZE];
    if (rodt_length_format(length, written, sizeof written, NULL) != RODT_OK)
        PG_RETURN_NULL();
    return returned(fcinfo, words_value(written));
}

Datum rodtpg_date(PG_FUNCTION_ARGS)
{
    rodt_date day;
    if (rodt_date_parse(cell_of_text(PG_GETARG_DATUM(0)), &day, NULL) != RODT_OK)
        PG_RETURN_NULL();
    return returned(fcinfo, day_value(day));
}

Datum rodtpg_tables_edition(PG_FUNCTION_ARGS)
{
    return returned(fcinfo, words_value(rodt_tables_edition()));
}
