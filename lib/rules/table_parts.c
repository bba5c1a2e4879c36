/* SPDX-License-Identifier: Apache-2.0 */
/* Where the tables of a carrier's text begin. */
#include "rules/table_parts.h"

#include "rules/air_row.h"
#include "rules/limit_row.h"

#include <string.h>

static const table_column limit_columns[LIMIT_COLUMNS] = {
    [LIMIT_RULES] = {"rules", false},       [LIMIT_FAMILY] = {"family", true},
    [LIMIT_SIZE] = {"size", true},          [LIMIT_CLASS] = {"class", true},
    [LIMIT_RATED_STROKE] = {"rated_stroke", false}, [LIMIT_RATED_MM] = {"rated_mm", false},
    [LIMIT_LIMIT] = {"limit", true},        [LIMIT_LIMIT_MM] = {"limit_mm", false},
    [LIMIT_FROM] = {"from", false},         [LIMIT_UNTIL] = {"until", false},
    [LIMIT_SOURCE] = {"source", false},     [LIMIT_EVIDENCE] = {"evidence", false}};

static const table_column air_columns[AIR_COLUMNS] = {
    [AIR_RULES] = {"rules", false},           [AIR_CHECK] = {"check", true},
    [AIR_KIND] = {"kind", false},             [AIR_VEHICLE] = {"vehicle", false},
    [AIR_TOWED] = {"towed", false},           [AIR_BUILT_FROM] = {"built_from", false},
    [AIR_BUILT_UNTIL] = {"built_until", false}, [AIR_COMPARISON] = {"comparison", true},
    [AIR_VALUE] = {"value", false},           [AIR_UPPER] = {"upper", false},
    [AIR_PER_TOWED] = {"per_towed", false},   [AIR_MEASURE] = {"measure", true},
    [AIR_START] = {"start", false},           [AIR_STOP] = {"stop", false},
    [AIR_START_KPA] = {"start_kpa", false},   [AIR_STOP_KPA] = {"stop_kpa", false},
    [AIR_APPLICATIONS] = {"applications", false}, [AIR_BY] = {"by", false},
    [AIR_PUBLISHED] = {"published", false},   [AIR_SETUP] = {"setup", false},
    [AIR_SOURCE] = {"source", false},         [AIR_EVIDENCE] = {"evidence", false}};

const table_kind rodti_part_kinds[PARTS] = {[PART_LIMITS] = {limit_columns, COUNT_OF(limit_columns)},
                                            [PART_AIR] = {air_columns, COUNT_OF(air_columns)}};

static void ignore_fault(void *context, const rodt_error *fault)
{
    (void)context;
    (void)fault;
}

/* A line that the reader takes as the names of a table can be no row: its cells are words that no row has there. */
static bool is_header(const char *line, size_t size, const table_kind *kind)
{
    table_reader reader;
    return rodti_table_open(&reader, line, size, kind->columns, kind->count, ignore_fault, NULL);
}

/* PARTS for a row. */
static int kind_of_header(const char *line, size_t size)
{
    if (is_header(line, size, &rodti_part_kinds[PART_LIMITS]))
        return PART_LIMITS;
    return is_header(line, size, &rodti_part_kinds[PART_AIR]) ? PART_AIR : PARTS;
}

/* The names of the first table may be mistaken; its reader says so. A column `check` makes it one of air checks. */
static int kind_of_first(const char *text, size_t size)
{
    static const table_column check = {"check", true};
    table_reader reader;
    (void)rodti_table_open(&reader, text, size, &check, 1, ignore_fault, NULL);
    return reader.cells[0].column != 0 ? PART_AIR : PART_LIMITS;
}

static bool refuse_second(uint32_t line, int kind, rodt_error *fault)
{
    rodti_text_error(fault, RODT_E_TABLE, 0, "a second table of %s begins here",
                     kind == PART_AIR ? "air checks" : "limits");
    fault->line = line;
    return false;
}

/* The tables found so far. */
typedef struct search {
    table_part *parts;
    int current;
    uint32_t line;   /* lines before the one that is looked at */
    size_t rows;     /* lines of cells so far */
    rodt_error *fault;
} search;

/* No two tables have as many rows as this; what is beyond belongs to the last table, whose reader refuses it. */
#define SEARCHED_ROWS 2002u

/* A line of cells: the names of the first table, the names of another one, or a row. */
static bool take_line(search *of, const char *line, size_t size)
{
    if (of->rows++ == 0 || of->rows > SEARCHED_ROWS)
        return true;
    int kind = kind_of_header(line, size);
    if (kind == PARTS)
        return true;
    if (of->parts[kind].text != NULL)
        return refuse_second(of->line + 1, kind, of->fault);
    of->parts[of->current].size = (size_t)(line - of->parts[of->current].text);
    of->parts[kind] = (table_part){.text = line, .line = of->line};
    of->current = kind;
    return true;
}

bool rodti_table_find_parts(const char *text, size_t size, table_part parts[PARTS], rodt_error *fault)
{
    search of = {.parts = parts, .current = kind_of_first(text, size), .fault = fault};
    const char *at = rodti_table_after_mark(text, size), *end = text + size;
    memset(parts, 0, PARTS * sizeof parts[0]);
    parts[of.current].text = text;
    for (; at < end; of.line++) {
        const char *stop = memchr(at, '\n', (size_t)(end - at));
        size_t length = (size_t)((stop == NULL ? end : stop) - at);
        if (!rodti_table_ignores(at, length) && !take_line(&of, at, length))
            return false;
        at += length + (stop != NULL);
    }
    parts[of.current].size = (size_t)(end - parts[of.current].text);
    return true;
}
