/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts against rodt_form_judge_row, row by row, where readings hardly ever repeat: decimals of every
 * length, millimetres, fractions, units in cells and in a column, strokes beside and at every limit. The number of rows
 * is the first word; the exhaustive suite takes many. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "rodtravel/rodtravel.h"
#include "support.h"

#define CHUNK 4096
#define CELL_ROOM 32
#define FIELDS 7

static size_t rows_wanted = 60000;

static const rodt_field fields[FIELDS] = {RODT_FIELD_CHAMBER, RODT_FIELD_RELEASED, RODT_FIELD_APPLIED,
                                          RODT_FIELD_STROKE_CLASS, RODT_FIELD_PSI, RODT_FIELD_DATE, RODT_FIELD_UNIT};

static struct {
    char cell[FIELDS][CHUNK][CELL_ROOM];
    rodt_text_span span[FIELDS][CHUNK];
    int32_t stroke[CHUNK];
    uint64_t reasons[CHUNK];
    uint8_t verdict[CHUNK];
} table;

/* --- Random cells ------------------------------------------------------------------------------------ */

static uint64_t state = 20261130;
static char sign; /* of decimals */

static uint32_t draw(uint32_t count) { return (uint32_t)(chance(&state) % count); }

/* So many millionths of an inch in one of the ways of writing them; those that do not fit one are cut. */
static void write_length(char *cell, uint32_t millionths, bool metric)
{
    static const char *const units[] = {"", "", "", " in", "\"", "in"};
    static const char *const metric_units[] = {"", "", "", " mm", "mm", " MM "};
    static const char *const odd[] = {"", "n/a", "31/8", "2,5", "1.123456789", "2 1/3", "1234", "02.5"};
    const char *unit = metric ? metric_units[draw(6)] : units[draw(6)];
    const uint32_t places = 1 + draw(6);
    uint32_t cut = 1;
    for (uint32_t i = places; i < 6; i++)
        cut *= 10;
    if (draw(40) == 0)
        snprintf(cell, CELL_ROOM, "%s", odd[draw(8)]);
    else if (metric)
        snprintf(cell, CELL_ROOM, "%u%c%0*u%s", millionths / 100000 * 254 / 100, sign, (int)places,
                 draw(1000000) / cut, unit);
    else if (draw(4) == 0)
        snprintf(cell, CELL_ROOM, "%u%c%u/64%s", millionths / 1000000, " -"[draw(2)], millionths % 1000000 / 15625,
                 unit);
    else
        snprintf(cell, CELL_ROOM, "%u%c%0*u%s", millionths / 1000000, sign, (int)places, millionths % 1000000 / cut,
                 unit);
}

static void fill_row(size_t row)
{
    static const char *const chambers[] = {"30", "24", "20", "30 long", "24L", "16", "36", "bolt C", "roto 30", "x"};
    static const char *const classes[] = {"", "", "standard", "long"};
    static const char *const pressures[] = {"90", "95", "100", "", "60", "120", "655 kPa", "0"};
    static const char *const units[] = {"", "", "in", "mm", "cm", "?"};
    /* Quarters are limits of the tables: half of the strokes are at one or a millionth beside it. */
    const uint32_t released = 1000000 + draw(1500000);
    uint32_t stroke = draw(3500000);
    if (draw(2) == 0)
        stroke = stroke / 250000 * 250000 + draw(3) - 1;
    const char *unit = units[draw(6)];
    const bool metric = strcmp(unit, "mm") == 0 || draw(8) == 0;
    snprintf(table.cell[0][row], CELL_ROOM, "%s", chambers[draw(10)]);
    write_length(table.cell[1][row], released, metric);
    write_length(table.cell[2][row], draw(50) == 0 ? released : released + stroke, metric);
    snprintf(table.cell[3][row], CELL_ROOM, "%s", classes[draw(4)]);
    snprintf(table.cell[4][row], CELL_ROOM, "%s", pressures[draw(8)]);
    snprintf(table.cell[5][row], CELL_ROOM, "20%02u-%02u-%02u", 10 + draw(16), 1 + draw(12), 1 + draw(29));
    snprintf(table.cell[6][row], CELL_ROOM, "%s", unit);
    for (size_t i = 0; i < FIELDS; i++)
        table.span[i][row] = (rodt_text_span){table.cell[i][row], strlen(table.cell[i][row])};
}

/* --- Both ways --------------------------------------------------------------------------------------- */

static void compare_row(const rodt_form *shared, const rodt_rules *rules, bool has_unit, size_t row)
{
    rodt_form form = *shared;
    rodt_finding finding;
    int32_t stroke = RODT_COLUMN_NO_STROKE;
    for (size_t i = 0; i < (has_unit ? FIELDS : FIELDS - 1); i++)
        if (table.cell[i][row][0] != '\0') /* otherwise the form speaks */
            rodt_form_set(&form, fields[i], table.cell[i][row]);
    assert_int_equal(rodt_form_judge_row(&form, rules, &finding, NULL), RODT_OK);
    if (rodt_length_given(finding.applied_stroke) && RODT_COLUMN_PER_INCH % finding.applied_stroke.den == 0)
        stroke = (int32_t)(finding.applied_stroke.num * (RODT_COLUMN_PER_INCH / finding.applied_stroke.den));
    if (table.verdict[row] != finding.verdict || table.reasons[row] != finding.reasons || table.stroke[row] != stroke)
        fail_msg("chamber %s, released %s, applied %s, class %s, psi %s, date %s, unit %s", table.cell[0][row],
                 table.cell[1][row], table.cell[2][row], table.cell[3][row], table.cell[4][row], table.cell[5][row],
                 has_unit ? table.cell[6][row] : "-");
}

/* Rows as one plan judges them, chunk by chunk: its caches fill and back off. */
static void judge_rows(const char *id, const rodt_form *shared, bool has_unit, size_t rows)
{
    const rodt_column_out out = {.stroke = table.stroke, .verdict = table.verdict, .reasons = table.reasons};
    const rodt_rules *rules = rodt_rules_find(id);
    rodt_text_columns in;
    rodt_text_plan *plan;
    sign = shared->style.decimal_comma ? ',' : '.';
    memset(&in, 0, sizeof in);
    for (size_t i = 0; i < (has_unit ? FIELDS : FIELDS - 1); i++)
        in.field[fields[i]] = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = table.span[i]};
    assert_int_equal(rodt_text_plan_new(rules, shared, &plan, NULL), RODT_OK);
    for (size_t done = 0; done < rows; done += CHUNK) {
        for (size_t row = 0; row < CHUNK; row++)
            fill_row(row);
        assert_int_equal(rodt_text_plan_judge(plan, &in, CHUNK, &out, NULL), RODT_OK);
        for (size_t row = 0; row < CHUNK; row++)
            compare_row(shared, rules, has_unit, row);
    }
    rodt_text_plan_free(plan);
}

static void readings_that_differ(void **unused)
{
    (void)unused;
    const rodt_form form = {.style = {.unit = RODT_UNIT_IN}};
    judge_rows("us-fmcsr", &form, false, rows_wanted / 4);
    judge_rows("us-fmcsr", &form, true, rows_wanted / 4);
}

static void other_rules_and_styles(void **unused)
{
    (void)unused;
    const rodt_form metric = {.style = {.unit = RODT_UNIT_MM}};
    const rodt_form comma = {.style = {.decimal_comma = true}, .stroke_class = "long"};
    judge_rows("ca-on", &metric, false, rows_wanted / 4);
    judge_rows("us-periodic", &comma, true, rows_wanted / 4);
}

int main(int count, char **words)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(readings_that_differ),
                                       cmocka_unit_test(other_rules_and_styles)};
    if (count > 1)
        rows_wanted = strtoul(words[1], NULL, 10);
    return cmocka_run_group_tests_name("text_rows", tests, NULL, NULL);
}
