/* SPDX-License-Identifier: Apache-2.0 */
/* Values of SQL out of those of the library. */
#include "extension.h"

#include <mb/pg_wchar.h>
#include <utils/builtins.h>
#include <utils/date.h>
#include <utils/datetime.h>

#include <string.h>

static const NullableDatum null_value = {.isnull = true};

NullableDatum exact_value(int64_t num, int64_t den)
{
    if (den == 0)
        return null_value;
    rodt_ratio *number = palloc(sizeof *number);
    number->num = num;
    number->den = den;
    return (NullableDatum){.value = PointerGetDatum(number)};
}

NullableDatum words_value(const char *text)
{
    return text[0] == '\0' ? null_value : (NullableDatum){.value = CStringGetTextDatum(text)};
}

NullableDatum text_value(const char *text)
{
    return words_value(pg_any_to_server(text, (int)strlen(text), PG_UTF8));
}

NullableDatum reasons_value(uint64_t reasons)
{
    char text[SQL_REASONS_SIZE];
    sql_reasons_write(reasons, text);
    return words_value(text);
}

NullableDatum day_value(rodt_date day)
{
    if (day.year == 0)
        return null_value;
    return (NullableDatum){.value = DateADTGetDatum(date2j(day.year, day.month, day.day) - POSTGRES_EPOCH_JDATE)};
}

NullableDatum source_value(const rodt_source *source)
{
    char text[RODT_SOURCE_TEXT_SIZE];
    if (source == NULL || rodt_source_format(source, text, sizeof text, NULL) != RODT_OK)
        return null_value;
    return text_value(text);
}

Datum returned(FunctionCallInfo fcinfo, NullableDatum value)
{
    fcinfo->isnull = value.isnull;
    return value.value;
}
