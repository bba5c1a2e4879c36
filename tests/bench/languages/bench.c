/* SPDX-License-Identifier: Apache-2.0 */
/* bench call|lists|column COUNT (../languages.py) */
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

enum { COLUMNS = 4, CELL_SIZE = 8 };

static const rodt_field fields[COLUMNS] = {RODT_FIELD_CHAMBER, RODT_FIELD_RELEASED, RODT_FIELD_APPLIED,
                                           RODT_FIELD_PSI};

static void *rooms[COLUMNS + 5]; /* in, and out */
static size_t room_count;

static void *room(size_t count, size_t size)
{
    void *bytes = calloc(count + 1, size);
    if (bytes == NULL)
        exit(2);
    rooms[room_count++] = bytes;
    return bytes;
}

static void call(const rodt_rules *rules, size_t count)
{
    const rodt_form form = {.chamber = "30L", .released = "2 3/4", .applied = "5 5/16", .psi = "95"};
    for (size_t i = 0; i < count; i++) {
        rodt_finding finding;
        if (rodt_form_judge(&form, rules, &finding, NULL) != RODT_OK ||
            finding.verdict != RODT_VERDICT_OUT_OF_ADJUSTMENT)
            exit(2);
    }
}

static rodt_text_span *list(size_t count, size_t kinds, char texts[][CELL_SIZE])
{
    rodt_text_span *cells = room(count, sizeof *cells);
    for (size_t row = 0; row < count; row++)
        cells[row] = (rodt_text_span){texts[row % kinds], strlen(texts[row % kinds])};
    return cells;
}

static void lists(rodt_text_columns *in, size_t count)
{
    static char shared[3][CELL_SIZE] = {"30L", "2 3/4", "95"};
    static char applied[8][CELL_SIZE];
    for (unsigned i = 0; i < 8; i++)
        snprintf(applied[i], CELL_SIZE, "%u %u/16", 4 + i % 2, 1 + 2 * i);
    rodt_text_span *const of[COLUMNS] = {list(count, 1, &shared[0]), list(count, 1, &shared[1]),
                                         list(count, 8, applied), list(count, 1, &shared[2])};
    memset(in, 0, sizeof *in);
    for (size_t i = 0; i < COLUMNS; i++)
        in->field[fields[i]] = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = of[i]};
}

static void column(const rodt_rules *rules, const rodt_text_columns *in, size_t count)
{
    const rodt_column_out out = {.stroke = room(count, sizeof(int32_t)), .limit = room(count, sizeof(int32_t)),
                                 .verdict = room(count, 1), .flags = room(count, 1),
                                 .reasons = room(count, sizeof(uint64_t))};
    rodt_text_plan *plan;
    if (rodt_text_plan_new(rules, NULL, &plan, NULL) != RODT_OK ||
        rodt_text_plan_judge(plan, in, count, &out, NULL) != RODT_OK)
        exit(2);
    rodt_text_plan_free(plan);
}

int main(int given, char **words)
{
    const rodt_rules *rules = rodt_rules_find(RODT_DEFAULT_RULES);
    const size_t count = given == 3 ? strtoul(words[2], NULL, 10) : 0;
    rodt_text_columns in;
    if (given != 3)
        return 2;
    if (strcmp(words[1], "call") == 0) {
        call(rules, count);
        return 0;
    }
    lists(&in, count);
    if (strcmp(words[1], "column") == 0)
        column(rules, &in, count);
    while (room_count > 0)
        free(rooms[--room_count]);
    return 0;
}
