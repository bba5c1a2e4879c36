/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a plan, columns and bitmaps out of bytes. Every row is answered as rodt_reading_judge answers it, by each copy
 * of the kernel. Each column is a piece of memory of its own, so that a checker of memory sees a step over its end. */
#include <stdlib.h>
#include <string.h>

#include "column/kernel.h"
#include "column/plan.h"
#include "column_expect.h"
#include "source.h"

#define ROWS_MOST 400
#define SKIP_MOST 16

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/* --- Bytes ------------------------------------------------------------------------------------------- */

static uint64_t number(source *from, int bytes)
{
    uint64_t value = 0;
    for (int i = 0; i < bytes; i++)
        value = value << 8 | byte(from);
    return value;
}

static int32_t number32(source *from) { return (int32_t)(uint32_t)number(from, 4); }

static rodt_length length(source *from)
{
    static const int64_t parts[] = {8, 16, 64, 10000, 254, RODT_COLUMN_PER_INCH, 1000000000, 7};
    rodt_length made = {0, 0};
    uint8_t choice = byte(from);
    if (choice & 1 && rodt_length_from_inches((int64_t)number(from, choice & 2 ? 1 : 4), parts[choice / 4 % 8],
                                              &made) != RODT_OK)
        demand(false);
    return made;
}

/* --- A plan ------------------------------------------------------------------------------------------ */

/* A plan, and what it was made of. Making one takes far longer than judging by it, so most inputs take one of a few. */
typedef struct made_plan {
    rodt_column_plan *plan; /* NULL = the rule set judges no strokes, or none was made yet */
    rodt_chamber chambers[COLUMN_CODES];
    rodt_reading common;
    bool is_made;
} made_plan;

#define PLANS 96u

/* Those of the input that runs. */
static rodt_column_plan *plan;
static const rodt_chamber *chambers;

/* A copy is as good as the plan. */
static void swap_for_copy(made_plan *of)
{
    rodt_column_plan *copy;
    demand(rodt_column_plan_copy(of->plan, &copy) == RODT_OK);
    rodt_column_plan_free(of->plan);
    of->plan = copy;
}

static rodt_reading common_facts(source *from)
{
    rodt_reading common = {.unit = (rodt_unit)(byte(from) % 3)};
    uint8_t choice = byte(from);
    if (choice & 1)
        demand(rodt_pressure_from_psi(60 + byte(from) % 60, 1, &common.pressure) == RODT_OK);
    if (choice & 2)
        demand(rodt_date_make(2005 + byte(from) % 30, 1 + byte(from) % 12, 1 + byte(from) % 28, &common.day) == RODT_OK);
    common.drum = choice & 4 ? RODT_DRUM_HOT : RODT_DRUM_COLD;
    common.engine_running = choice & 8 ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    common.spring_brake_applied = choice & 16 ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    return common;
}

static void add_chambers(source *from, made_plan *of)
{
    static const char *const marks[] = {"30", "30 long", "24 long", "36", "bolt C", "roto 30", "DD-3", "18", "20 standard", "9"};
    uint8_t choice = byte(from);
    for (int count = choice < 224 ? choice % 3 : choice % 12; count > 0; count--) { /* each takes its time */
        rodt_chamber chamber;
        uint32_t code;
        demand(rodt_chamber_parse(marks[byte(from) % 10], &chamber, NULL) == RODT_OK);
        chamber.rated_stroke = length(from);
        chamber.marked_limit = length(from);
        if (rodt_column_plan_add(of->plan, &chamber, &code, NULL) == RODT_OK)
            of->chambers[code] = chamber;
    }
}

/* A carrier's own limits bring a second step. */
static rodt_rules *own_rules(void)
{
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 7/8\nclamp,18,standard,1 1/2\n";
    rodt_rules *own = NULL;
    demand(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &own, NULL) == RODT_OK);
    return own;
}

static void make_plan(source *from, made_plan *out)
{
    rodt_rules *own = byte(from) & 1 ? own_rules() : NULL;
    const rodt_rules *rules = own != NULL ? own : rodt_rules_at(byte(from) % rodt_rules_count());
    memset(out, 0, sizeof *out);
    out->is_made = true;
    out->common = common_facts(from);
    if (rodt_column_plan_new(rules, &out->common, &out->plan, NULL) == RODT_OK) {
        add_chambers(from, out);
        if (byte(from) & 1)
            swap_for_copy(out);
    }
    rodt_rules_unref(own);
}

/* One of a few, made of bytes that follow from its number. */
static made_plan *find_plan(unsigned number)
{
    static made_plan kept[PLANS];
    made_plan *found = &kept[number % PLANS];
    uint8_t bytes[96];
    uint32_t state = number % PLANS * 2654435761u;
    for (size_t i = 0; i < sizeof bytes; i++, state = state * 1664525u + 1013904223u)
        bytes[i] = (uint8_t)(state >> 24);
    if (!found->is_made)
        make_plan(&(source){bytes, sizeof bytes}, found);
    return found;
}

/* --- Columns ----------------------------------------------------------------------------------------- */

typedef struct columns {
    size_t rows;
    void *memory[20];
    size_t pieces;
    rodt_column_in in;
    rodt_column_out out;
} columns;

static void *room(columns *of, size_t size)
{
    void *piece = malloc(size);
    demand((piece != NULL || size == 0) && of->pieces < sizeof of->memory / sizeof of->memory[0]);
    of->memory[of->pieces++] = piece;
    return piece;
}

/* Half of the strokes are close to where an answer changes. */
static int64_t applied_near(source *from, uint8_t code, int64_t released)
{
    uint8_t choice = byte(from);
    uint32_t entry = (code < plan->codes ? code : 1) * plan->eras + choice % plan->eras;
    const column_steps *steps = &plan->step[choice >> 7][entry];
    return released + (choice & 64 ? steps->low : steps->high) + choice % 3 - 1;
}

static int64_t reading(source *from)
{
    static const int64_t corners[] = {0, 1, -1, INT32_MAX, INT32_MIN, INT64_MAX, INT64_MIN, (int64_t)INT32_MAX + 1};
    uint8_t choice = byte(from);
    if (choice < 16)
        return corners[choice % 8];
    return choice < 32 ? (int64_t)number(from, 8) : choice < 64 ? number32(from) : choice * 100000;
}

static int32_t in_32(int64_t value)
{
    return value > INT32_MAX ? INT32_MAX : value < INT32_MIN ? INT32_MIN : (int32_t)value;
}

static void make_readings(source *from, uint8_t choice, columns *made)
{
    size_t rows = made->rows;
    uint8_t *codes = room(made, rows);
    int32_t *cells[2] = {room(made, 4 * rows), room(made, 4 * rows)};
    int64_t *cells64[2] = {room(made, 8 * rows), room(made, 8 * rows)};
    for (size_t i = 0; i < rows; i++) {
        codes[i] = byte(from) % 16;
        cells64[0][i] = reading(from);
        cells64[1][i] = reading(from);
        if (byte(from) & 1 && cells64[0][i] >= 0 && cells64[0][i] <= INT32_MAX)
            cells64[1][i] = applied_near(from, codes[i], cells64[0][i]);
        for (int k = 0; k < 2; k++)
            cells[k][i] = in_32(cells64[k][i]);
    }
    made->in.chamber = codes;
    made->in.released = choice & 1 ? cells[0] : NULL;
    made->in.applied = choice & 2 ? cells[1] : NULL;
    made->in.released64 = choice & 1 ? NULL : cells64[0];
    made->in.applied64 = choice & 2 ? NULL : cells64[1];
}

static int32_t pressure(source *from)
{
    uint8_t choice = byte(from);
    if (choice < 64)
        return number32(from);
    int64_t edge = choice & 1 ? plan->pressure_from : plan->pressure_until;
    return in_32(edge + choice % 5 - 2);
}

static int32_t day(source *from)
{
    uint8_t choice = byte(from);
    if (choice < 32)
        return number32(from);
    int32_t edge = choice < 64 ? CALENDAR_FIRST_DAY : choice < 96 ? CALENDAR_LAST_DAY : plan->cut[choice % FEW_CUTS];
    return in_32((int64_t)edge + choice % 3 - 1);
}

static void make_others(source *from, uint8_t choice, columns *made)
{
    int32_t *pressures = room(made, 4 * made->rows);
    int32_t *days = room(made, 4 * made->rows);
    for (size_t i = 0; i < made->rows; i++) {
        pressures[i] = choice & 4 ? pressure(from) : 0;
        days[i] = choice & 8 ? day(from) : 0;
    }
    made->in.psi = choice & 4 ? pressures : NULL;
    made->in.date = choice & 8 ? days : NULL;
}

/* No byte more than the rows need. */
static void make_bitmaps(source *from, columns *made)
{
    rodt_column_bits *all[] = {&made->in.released_valid, &made->in.applied_valid, &made->in.chamber_valid,
                               &made->in.psi_valid, &made->in.date_valid,     &made->in.row_valid};
    uint8_t choice = byte(from);
    for (size_t k = 0; k < 6; k++) {
        size_t first = byte(from) % SKIP_MOST;
        size_t bytes = (first + made->rows + 7) / 8;
        if ((choice >> k & 1) == 0 || made->rows == 0)
            continue;
        uint8_t *bits = room(made, bytes);
        for (size_t i = 0; i < bytes; i++)
            bits[i] = byte(from);
        *all[k] = (rodt_column_bits){bits, first};
    }
}

static void make_answers(columns *made, bool flags)
{
    made->out = (rodt_column_out){.stroke = room(made, 4 * made->rows),
                                  .verdict = room(made, made->rows),
                                  .reasons = room(made, 8 * made->rows),
                                  .flags = flags ? room(made, made->rows) : NULL,
                                  .limit = flags ? room(made, 4 * made->rows) : NULL,
                                  .stroke_parts = flags ? room(made, 8 * made->rows) : NULL};
}

/* --- The comparison ---------------------------------------------------------------------------------- */

static void compare(const columns *made, const column_expected *expected)
{
    for (size_t i = 0; i < made->rows; i++) {
        demand(made->out.stroke[i] == expected[i].stroke && made->out.verdict[i] == expected[i].verdict &&
               made->out.reasons[i] == expected[i].reasons);
        demand(made->out.flags == NULL || made->out.flags[i] == expected[i].flags);
        demand(made->out.limit == NULL || made->out.limit[i] == expected[i].limit);
        demand(made->out.stroke_parts == NULL ||
               made->out.stroke_parts[i] == (expected[i].stroke < 0 ? RODT_COLUMN_NO_STROKE : expected[i].stroke * INT64_C(25000)));
    }
}

static void judge(const columns *made, const rodt_reading *common)
{
    static column_expected expected[ROWS_MOST];
    for (size_t i = 0; i < made->rows; i++)
        demand(column_expect(plan, chambers, common, &made->in, i, &expected[i]));
    demand(rodt_column_plan_judge(plan, &made->in, made->rows, &made->out, NULL) == RODT_OK);
    compare(made, expected);
    rodti_column_judge_blocks(plan, &made->in, made->rows, &made->out);
    compare(made, expected);
    rodti_column_judge_blocks_anywhere(plan, &made->in, made->rows, &made->out);
    compare(made, expected);
}

/* Mostly few, which take less time; sometimes more than a block of the kernel. */
static size_t any_rows(source *from)
{
    uint64_t choice = number(from, 2);
    return (size_t)(choice / 16 % (choice % 16 == 0 ? ROWS_MOST : 12));
}

static void judge_columns(source *from, const made_plan *of)
{
    columns made = {.rows = any_rows(from)};
    uint8_t choice = byte(from);
    plan = of->plan;
    chambers = of->chambers;
    if (made.rows > 0 && plan != NULL) {
        make_readings(from, choice, &made);
        make_others(from, choice, &made);
        make_bitmaps(from, &made);
        make_answers(&made, choice & 16);
        judge(&made, &of->common);
    }
    for (size_t i = 0; i < made.pieces; i++)
        free(made.memory[i]);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    static made_plan own;
    source from = {data, size};
    uint8_t choice = byte(&from);
    if (choice < 248) {
        judge_columns(&from, find_plan(choice));
        return 0;
    }
    make_plan(&from, &own);
    judge_columns(&from, &own);
    rodt_column_plan_free(own.plan);
    return 0;
}
