/* SPDX-License-Identifier: Apache-2.0 */
/* Random rows of texts: the cache of rows and the plan of columns give what rodt_form_judge_row gives, however often a row
 * comes. With -DROWS=1000000 it is a long test. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "column/key.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

#ifndef ROWS
#define ROWS 40000
#endif
#define BLOCK_ROWS 2000
#define MAX_WORDS 24

static const char *const words[RODT_READING_FIELDS][MAX_WORDS] = {
    [RODT_FIELD_CHAMBER] = {"30", "30L", "24", "24 long", "20", "36", "bolt C", "roto 30", "DD-3", "18", "3030", "x", "", "T24",
                            "16LS", "9", "24/30", "T30 long", "36\""},
    [RODT_FIELD_RELEASED] = {"1", "1 1/2", "2", "2 1/8", "17/8", "31/8", "11/4", "50 mm", "5 cm", "2,5", "2.5", "", " ", "?",
                             "2-Jan", "0.0000001", "1 15/16", "25", "3 in", "44"},
    [RODT_FIELD_APPLIED] = {"3", "3 1/4", "4", "4 1/8", "33/8", "41/8", "15/4", "100 mm", "10 cm", "4,5", "4.5", "", " ", "?",
                            "4-Jan", "2.0000001", "3 15/16", "98", "4 in", "2"},
    [RODT_FIELD_STROKE_CLASS] = {"", "standard", "long", "LS", "x", " long ", "std"},
    [RODT_FIELD_RATED_STROKE] = {"", "3", "2 1/2", "3 in", "76.2", "63.5 mm", "0", "x", "3.0", "2"},
    [RODT_FIELD_MARKED_LIMIT] = {"", "2", "2 in", "50 mm", "0", "x", "2.5"},
    [RODT_FIELD_PSI] = {"", "95", "0", "80", "655 kPa", "120", "x", "90", "100", "0.0", "100.1"},
    [RODT_FIELD_PSI_AFTER] = {"", "92", "0", "85", "x", "110"},
    [RODT_FIELD_DIVISION] = {"", "1/16", "1 mm", "16", "1/8", "x", "0", "1"},
    [RODT_FIELD_DATE] = {"", "2024-05-01", "2021-10-13", "2021-10-14", "06/05/2021", "10/11/2021", "9/1/2013 8:00", "x",
                         "01/02/03", "1999-01-01", "13/10/2021", "\xC2\xA0", "2012-09-05"},
    [RODT_FIELD_UNIT] = {"", "in", "mm", "cm", "furlong", "IN", " mm"},
    [RODT_FIELD_ENGINE] = {"", "off", "on", "x"},
    [RODT_FIELD_SPRING_BRAKE] = {"", "released", "on", "applied", "x"},
    [RODT_FIELD_DRUM] = {"", "cold", "warm", "hot", "x"}};

static rodt_text_span cells[RODT_FIELD_ROOM][BLOCK_ROWS];
static int32_t stroke[BLOCK_ROWS];
static uint64_t reasons[BLOCK_ROWS];
static uint8_t verdict[BLOCK_ROWS], flags[BLOCK_ROWS];
static const rodt_column_out out = {.stroke = stroke, .verdict = verdict, .reasons = reasons, .flags = flags};

static const char *draw(int field, uint64_t *state)
{
    size_t count = 0;
    while (count < MAX_WORDS && words[field][count] != NULL)
        count++;
    /* The first words come often, so that rows come again. */
    if (chance(state) % 8 == 0)
        return words[field][chance(state) % count];
    return words[field][field < RODT_FIELD_NEEDED ? chance(state) % 4 : 0];
}

/* Tape values, and now and then one of five decimals that no other row has. */
static const char *draw_reading(int field, size_t row, uint64_t *state)
{
    static char room[2][BLOCK_ROWS][16];
    if (chance(state) % 8 != 0)
        return draw(field, state);
    char *text = room[field - RODT_FIELD_RELEASED][row];
    snprintf(text, 16, "%d.%05d", field == RODT_FIELD_RELEASED ? 1 : 3, (int)(chance(state) % 100000));
    return text;
}

static void fill(uint64_t *state)
{
    for (size_t row = 0; row < BLOCK_ROWS; row++)
        for (int field = 0; field < RODT_READING_FIELDS; field++) {
            bool is_reading = field == RODT_FIELD_RELEASED || field == RODT_FIELD_APPLIED;
            const char *text = is_reading ? draw_reading(field, row, state) : draw(field, state);
            bool absent = chance(state) % 32 == 0;
            cells[field][row] = absent ? (rodt_text_span){NULL, 0} : (rodt_text_span){text, strlen(text)};
        }
}

static rodt_form text_of(const rodt_form *form, size_t row)
{
    rodt_form text = *form;
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        rodt_form_set(&text, (rodt_field)field, cells[field][row].text);
    return text;
}

typedef struct kept {
    rodt_verdict verdict;
    uint64_t reasons;
    rodt_length applied_stroke, limit, margin;
} kept;

static kept kept_of(const rodt_finding *finding)
{
    kept made;
    memset(&made, 0, sizeof made);
    made.verdict = finding->verdict;
    made.reasons = finding->reasons;
    made.applied_stroke = finding->applied_stroke;
    made.limit = finding->limit;
    made.margin = finding->margin;
    return made;
}

/* A row as a line of cells, each with a byte after it. */
static void write_line(size_t row, char *line, uint32_t *ends)
{
    uint32_t used = 0;
    ends[0] = UINT32_MAX;
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        const rodt_text_span cell = cells[field][row];
        memcpy(line + used, cell.text != NULL ? cell.text : "", cell.size);
        used += (uint32_t)cell.size;
        ends[field + 1] = used;
        line[used++] = ',';
    }
}

/* What was kept for rows alike, or nothing. */
static void check_alike(const kept *alike, const rodt_length own[2], const kept *expected)
{
    if (alike == NULL) {
        assert_int_equal(own[0].num, 77);
        assert_int_equal(own[1].num, 77);
        return;
    }
    assert_int_equal(alike->verdict, expected->verdict);
    assert_true(alike->reasons == expected->reasons);
    assert_memory_equal(&alike->limit, &expected->limit, sizeof alike->limit);
    assert_memory_equal(&own[0], &expected->applied_stroke, sizeof *own);
    assert_memory_equal(&own[1], &expected->margin, sizeof *own);
}

static unsigned found_alike;
static size_t found_together;

static void check_rows_alike(rodt_row_cache *cache, const char *line, const uint32_t *ends,
                             const rodt_text_span by_field[RODT_FIELD_ROOM], const kept *expected)
{
    rodt_length own[2] = {{77, 1}, {77, 1}};
    const kept *alike = rodt_row_cache_find_alike(cache, line, ends, &own[0], &own[1]);
    check_alike(alike, own, expected);
    own[0].num = own[1].num = 77;
    const kept *by_cells = rodt_row_cache_find_alike_cells(cache, by_field, &own[0], &own[1]);
    check_alike(by_cells, own, expected);
    assert_true(alike == NULL || by_cells == alike);
    found_alike += by_cells != NULL;
}

static void check_row(rodt_row_cache *cache, size_t row, const rodt_form *text, const rodt_finding *finding,
                      unsigned *found)
{
    char line[1024] = "";
    uint32_t ends[RODT_READING_FIELDS + 1];
    rodt_text_span by_field[RODT_FIELD_ROOM];
    const kept expected = kept_of(finding);
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        by_field[field] = cells[field][row];
    write_line(row, line, ends);
    const kept *fast = rodt_row_cache_find(cache, line, ends);
    if (fast != NULL)
        assert_memory_equal(fast, &expected, sizeof expected);
    *found += fast != NULL;
    const kept *by_cells = rodt_row_cache_find_cells(cache, by_field); /* knows a cell that is NULL without reading */
    assert_true(fast == NULL || by_cells == fast);
    check_rows_alike(cache, line, ends, by_field, &expected);
    const kept *slow = rodt_row_cache_read(cache, by_field, text);
    kept *alike = rodt_row_cache_keep_alike(cache, text);
    if (alike != NULL)
        *alike = expected;
    assert_null(rodt_row_cache_keep_alike(cache, text));
    assert_true(by_cells == NULL || slow == by_cells);
    if (slow != NULL) {
        assert_memory_equal(slow, &expected, sizeof expected);
        return;
    }
    kept *to = rodt_row_cache_keep(cache);
    if (to != NULL)
        *to = expected;
}

/* Looks all rows of a block up together, as far as each is known: one after the other gives the same. */
static void check_together(rodt_row_cache *cache)
{
    enum { WIDTH = RODT_READING_FIELDS + 1 };
    static char lines[BLOCK_ROWS * 1024 + RODT_ROW_PAD];
    static uint32_t ends[BLOCK_ROWS * WIDTH];
    static void *found[BLOCK_ROWS];
    uint32_t at = 0;
    size_t known = 0;
    for (size_t row = 0; row < BLOCK_ROWS; row++) {
        uint32_t *own = ends + row * WIDTH;
        write_line(row, lines + at, own);
        for (size_t i = 0; i < WIDTH; i++)
            own[i] += at;
        at = own[WIDTH - 1] + 1;
    }
    for (size_t row = 0; row < BLOCK_ROWS; row += known + 1) {
        const size_t left = BLOCK_ROWS - row;
        known = rodt_row_cache_find_rows(cache, lines, ends + row * WIDTH, WIDTH, left, found);
        for (size_t i = 0; i < known; i++)
            assert_ptr_equal(found[i], rodt_row_cache_find(cache, lines, ends + (row + i) * WIDTH));
        assert_true(known == left || rodt_row_cache_find(cache, lines, ends + (row + known) * WIDTH) == NULL);
        found_together += known;
    }
}

static void check_columns(size_t row, const rodt_finding *finding)
{
    int32_t units = RODT_COLUMN_NO_STROKE;
    rodt_length length = finding->applied_stroke;
    if (rodt_length_given(length) && RODT_COLUMN_PER_INCH % length.den == 0)
        units = (int32_t)(length.num * (RODT_COLUMN_PER_INCH / length.den));
    assert_int_equal(verdict[row], finding->verdict);
    assert_int_equal(reasons[row], finding->reasons);
    assert_int_equal(stroke[row], units);
}

static bool add_rows(void *context, const void *bytes, uint64_t rows)
{
    uint64_t *sum = context;
    assert_non_null(bytes);
    assert_true(rows > 0);
    *sum += rows;
    return true;
}

static bool refuse_rows(void *context, const void *bytes, uint64_t rows)
{
    (void)context;
    (void)bytes;
    (void)rows;
    return false;
}

static void check_rules(const char *name, const rodt_form *form, uint64_t *state)
{
    const rodt_rules *rules = rodt_rules_find(name);
    size_t column[RODT_FIELD_ROOM];
    rodt_text_plan *plan;
    rodt_row_cache *cache;
    rodt_text_columns in;
    uint64_t counted = 0;
    unsigned found = 0;
    unsigned read = 0;
    memset(&in, 0, sizeof in);
    memset(column, 0xFF, sizeof column); /* RODT_NO_COLUMN */
    for (size_t i = 0; i < RODT_READING_FIELDS; i++) {
        column[i] = i;
        in.field[i] = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = cells[i]};
    }
    assert_int_equal(rodt_text_plan_new(rules, form, &plan, NULL), RODT_OK);
    assert_int_equal(rodt_row_cache_new(rules, form, column, sizeof(kept), 4096, &cache), RODT_OK);
    for (size_t block = 0; block < ROWS / BLOCK_ROWS / 4; block++) {
        fill(state);
        assert_int_equal(rodt_text_plan_judge(plan, &in, BLOCK_ROWS, &out, NULL), RODT_OK);
        for (size_t row = 0; row < BLOCK_ROWS; row++) {
            rodt_finding finding;
            const rodt_form text = text_of(form, row);
            assert_int_equal(rodt_form_judge_row(&text, rules, &finding, NULL), RODT_OK);
            check_columns(row, &finding);
            check_row(cache, row, &text, &finding, &found);
            read++;
        }
        check_together(cache);
        assert_true(rodt_row_cache_flush(cache, add_rows, &counted));
    }
    assert_true(found > read / 100 && found < read);
    assert_true(found_together >= found);
    found_together = 0;
    assert_true(found_alike > read / 4 && found_alike < read);
    found_alike = 0;
    assert_true(counted >= found);
    rodt_text_plan_free(plan);
    rodt_row_cache_free(cache);
}

static void test_random_rows(void **unused)
{
    (void)unused;
    uint64_t state = 11;
    check_rules("us-fmcsr", &(rodt_form){.default_day = {2024, 6, 5}}, &state);
    check_rules("us-fmcsr", &(rodt_form){.style = {.unit = RODT_UNIT_MM}}, &state);
    check_rules("us-periodic", &(rodt_form){.style = {.decimal_comma = true}}, &state);
    check_rules("ca-nsc", &(rodt_form){.date_order = RODT_DATE_ORDER_DAY_FIRST}, &state);
}

typedef struct alike_row {
    const char *line;
    rodt_length stroke, margin; /* of 30 standard, whose limit is 2 in */
    bool is_known;
    bool is_found;              /* by its stroke, when it comes again */
} alike_row;

static rodt_text_span cell_of(const char *line, const uint32_t *ends, size_t at)
{
    const uint32_t start = ends[at] + 1;
    return (rodt_text_span){line + start, ends[at + 1] - start};
}

/* A line, its cells by field, and what they say. */
typedef struct split_line {
    char line[64 + RODT_ROW_PAD], says[4][16];
    uint32_t ends[5];
    rodt_text_span by_field[RODT_FIELD_ROOM];
    rodt_form text;
} split_line;

static void split(const char *line, const size_t fields[4], split_line *made)
{
    memset(made, 0, sizeof *made);
    memcpy(made->line, line, strlen(line));
    made->ends[0] = UINT32_MAX;
    for (size_t cell = 0, at = 0; cell < 4; cell++, at++) {
        at += strcspn(made->line + at, ",");
        made->ends[cell + 1] = (uint32_t)at;
        const rodt_text_span found = cell_of(made->line, made->ends, cell);
        const bool quoted = *found.text == '"';
        snprintf(made->says[cell], sizeof made->says[cell], "%.*s", (int)found.size - 2 * quoted, found.text + quoted);
        made->by_field[fields[cell]] = found;
        rodt_form_set(&made->text, (rodt_field)fields[cell], made->says[cell]);
    }
}

/* How often the row was found, by its region and by its stroke. */
static unsigned check_alike_row(rodt_row_cache *cache, const alike_row *row, const size_t fields[4])
{
    split_line is;
    rodt_length own[2] = {{77, 1}, {77, 1}};
    split(row->line, fields, &is);
    const uint32_t *alike = rodt_row_cache_find_alike(cache, is.line, is.ends, &own[0], &own[1]);
    assert_int_equal(alike != NULL, row->is_known);
    if (alike == NULL) {
        (void)rodt_row_cache_read(cache, is.by_field, &is.text);
        assert_int_equal(rodt_row_cache_keep_alike(cache, &is.text) != NULL, row->stroke.den != 0 || is.says[3][0] < '3');
        assert_null(rodt_row_cache_keep_alike(cache, &is.text));
    } else {
        assert_memory_equal(&own[0], &row->stroke, sizeof *own);
        assert_memory_equal(&own[1], &row->margin, sizeof *own);
    }
    const uint32_t *for_it = rodt_row_cache_keep(cache);
    const uint32_t *again = rodt_row_cache_find(cache, is.line, is.ends);
    assert_int_equal(again != NULL, row->is_found);
    assert_true(for_it == again);
    assert_null(rodt_row_cache_keep(cache));
    return (unsigned)row->is_known + row->is_found;
}

/* A row that is not found is not remembered, nor is one whose texts are no form. */
static void check_what_is_remembered(rodt_row_cache *cache, const size_t fields[4])
{
    split_line known, stranger;
    rodt_length own[2];
    split("in,30,1,2.125", fields, &known);
    split("in,36,1,2.125", fields, &stranger);
    assert_non_null(rodt_row_cache_find_alike(cache, known.line, known.ends, &own[0], &own[1]));
    assert_null(rodt_row_cache_find_alike(cache, stranger.line, stranger.ends, &own[0], &own[1]));
    assert_null(rodt_row_cache_keep(cache));
    assert_null(rodt_row_cache_keep_alike(cache, &known.text));
    (void)rodt_row_cache_read(cache, stranger.by_field, &stranger.text);
    stranger.text.style.unit = RODT_UNIT_END;
    assert_null(rodt_row_cache_keep_alike(cache, &stranger.text));
}

/* A quote that does not close is part of the cell. Rows that the sink refuses are given out by the next flush. */
static void check_what_is_given_out(rodt_row_cache *cache, const size_t fields[4])
{
    split_line known, open;
    rodt_length own[2];
    uint64_t counted = 0;
    split("in,30,1,2.125", fields, &known);
    split("in,30,1,\"2.125", fields, &open);
    assert_null(rodt_row_cache_find_alike(cache, open.line, open.ends, &own[0], &own[1]));
    assert_non_null(rodt_row_cache_find_alike(cache, known.line, known.ends, &own[0], &own[1]));
    assert_false(rodt_row_cache_flush(cache, refuse_rows, NULL));
    assert_true(rodt_row_cache_flush(cache, add_rows, &counted));
    assert_int_equal(counted, 1);
}

/* Rows that differ in the stroke alone are found by the region of it; readings in quotes are read too. */
static void test_alike(void **unused)
{
    (void)unused;
    static const alike_row rows[] = {
        {"in,30,\"1\",\"2.25\"", {5, 4}, {3, 4}, false, true},
        {"in,30,1.000001,2.000001", {1, 1}, {1, 1}, true, false}, /* no cell is a whole number of units */
        {"in,30,1.000001,2.000002", {1000001, 1000000}, {999999, 1000000}, true, false},
        {"in,30,\"1\",\"2.5\"", {3, 2}, {1, 2}, true, true},
        {"mm,30,10,40.64", {766, 635}, {504, 635}, false, true}, /* another unit */
        {"mm,30,\"10\",\"40.84\"", {771, 635}, {499, 635}, true, true},
        {"mm,30,10.1,40.84", {1537, 1270}, {1003, 1270}, true, true},
        {"mm,30,10.1 mm,40.8399999 mm", {0, 0}, {0, 0}, false, false}, /* seven decimals have no key */
        {"in,30,1,3.0", {2, 1}, {0, 1}, false, true}, /* at the limit */
        {"in,30,0.5,2.500000", {2, 1}, {0, 1}, true, true},
        {"in,30,1,3.000001", {2000001, 1000000}, {-1, 1000000}, false, false},
        {"in,30,1,4.5", {7, 2}, {-3, 2}, true, true},
        {"in,30,1,12.5\"", {23, 2}, {-19, 2}, true, true}, /* no quotes around it */
        {"in,18,1,2.5", {0, 0}, {0, 0}, false, true}, /* no limit */
        {"in,18,1,2.25", {5, 4}, {0, 0}, true, true},
        {"in,30,1.5,1.5", {0, 1}, {2, 1}, false, true},
        {"in,30,1 1/2,1 1/2", {0, 1}, {2, 1}, true, true},
        {"in,30,1,0.999999", {0, 0}, {0, 0}, false, false}, /* reversed */
        {"in,30,3.000003,1.1", {0, 0}, {0, 0}, true, false},
        {"in,30,,1.100001", {0, 0}, {0, 0}, false, false},
        {"in,30,,1.1", {0, 0}, {0, 0}, true, true},
        {"in,30,31/8,5.000002", {0, 0}, {0, 0}, false, false}, /* a lost blank is two values */
        {"in,,1,3", {0, 0}, {0, 0}, false, false},
    };
    const size_t fields[] = {RODT_FIELD_UNIT, RODT_FIELD_CHAMBER, RODT_FIELD_RELEASED, RODT_FIELD_APPLIED};
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    uint64_t counted = 0, known = 0;
    memset(column, 0xFF, sizeof column); /* RODT_NO_COLUMN */
    for (size_t i = 0; i < 4; i++)
        column[fields[i]] = i;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4, 4096, &cache),
                     RODT_OK);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        known += check_alike_row(cache, &rows[i], fields);
    check_what_is_remembered(cache, fields);
    known++;
    assert_true(rodt_row_cache_flush(cache, add_rows, &counted));
    assert_int_equal(counted, known);
    check_what_is_given_out(cache, fields);
    rodt_row_cache_free(cache);
}

/* A stream of rows that never come again is better judged without the cache, and with it when they do. */
static void test_backoff(void **unused)
{
    (void)unused;
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    char text[2][16];
    uint64_t sum = 0;
    unsigned skipped = 0;
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = i < RODT_FIELD_NEEDED ? i : RODT_NO_COLUMN;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.style = {.unit = RODT_UNIT_IN}},
                                        column, 8, 1024, &cache), RODT_OK);
    for (unsigned chunk = 0; chunk < 40; chunk++) {
        if (!rodt_row_cache_begin_chunk(cache)) {
            skipped++;
            continue;
        }
        for (unsigned i = 0; i < 1500; i++) {
            snprintf(text[0], 16, "1.%05u", chunk * 1500 + i);
            snprintf(text[1], 16, "3.%05u", 3 * i);
            const rodt_form row = {.chamber = "30", .released = text[0], .applied = text[1]};
            const rodt_text_span by_field[RODT_FIELD_ROOM] = {{"30", 2}, {text[0], 7}, {text[1], 7}};
            if (rodt_row_cache_read(cache, by_field, &row) == NULL)
                (void)rodt_row_cache_keep(cache);
        }
        assert_true(rodt_row_cache_flush(cache, add_rows, &sum));
    }
    assert_in_range(skipped, 10, 39);
    rodt_row_cache_free(cache);
}

typedef struct judged_row {
    rodt_row_cache *cache;
    rodt_form text;
    rodt_text_span cells[RODT_FIELD_ROOM];
} judged_row;

/* A cache of numbers for rows whose cells are the first fields. */
static void open_cache(size_t fields, uint32_t results, rodt_row_cache **cache)
{
    size_t column[RODT_FIELD_ROOM];
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = i < fields ? i : RODT_NO_COLUMN;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4, results, cache),
                     RODT_OK);
}

/* True if the row was cached already. Its result is the number. */
static bool met(judged_row *row, uint32_t number)
{
    uint32_t *result = rodt_row_cache_read(row->cache, row->cells, &row->text);
    if (result != NULL) {
        assert_int_equal(*result, number);
        return true;
    }
    result = rodt_row_cache_keep(row->cache);
    if (result != NULL)
        *result = number;
    return false;
}

static judged_row row_of(rodt_row_cache *cache, const char *chamber, const char *released, const char *applied)
{
    judged_row row = {.cache = cache, .text = {.chamber = chamber, .released = released, .applied = applied}};
    row.cells[RODT_FIELD_CHAMBER] = (rodt_text_span){chamber, strlen(chamber)};
    row.cells[RODT_FIELD_RELEASED] = (rodt_text_span){released, strlen(released)};
    row.cells[RODT_FIELD_APPLIED] = (rodt_text_span){applied, strlen(applied)};
    return row;
}

static bool refuse_hits(void *context, const void *result, uint64_t hits)
{
    *(uint64_t *)context += hits;
    assert_int_equal(*(const uint32_t *)result, 77);
    return false;
}

/* Cells of any length, in a line or by themselves, with a column of units and without. What a sink does not take counts
 * again the next time. */
static void test_long_cells(void **unused)
{
    (void)unused;
    static const char line[] = "30 long stroke chamber,2 1/8 inches measured,4 1/8,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,,";
    static const uint32_t ends[] = {UINT32_MAX, 22, 44, 50};
    rodt_row_cache *cache;
    open_cache(RODT_FIELD_NEEDED, 64, &cache);
    judged_row row = row_of(cache, "30 long stroke chamber", "2 1/8 inches measured", "4 1/8");
    assert_null(rodt_row_cache_find(cache, line, ends));
    assert_null(rodt_row_cache_find_cells(cache, row.cells));
    assert_false(met(&row, 77));
    assert_true(met(&row, 77));
    assert_non_null(rodt_row_cache_find(cache, line, ends));
    assert_non_null(rodt_row_cache_find_cells(cache, row.cells));
    uint64_t hits = 0;
    assert_false(rodt_row_cache_flush(cache, refuse_hits, &hits));
    assert_int_equal(hits, 3);
    assert_false(rodt_row_cache_flush(cache, refuse_hits, &hits));
    assert_int_equal(hits, 6);
    rodt_row_cache_free(cache);
}

/* Rows that are looked up together are counted when that is asked for, and a result twice that two rows have. */
static void test_rows_are_counted(void **unused)
{
    (void)unused;
    static const char lines[] = "30,1,2,30,1,2,24,1,2,30,1,2,                                  ";
    static const uint32_t ends[] = {UINT32_MAX, 2, 4, 6, 6, 9, 11, 13, 13, 16, 18, 20, 20, 23, 25, 27};
    static const size_t starts[] = {0, 1, 3};
    void *found[4] = {NULL};
    uint64_t rows = 0;
    rodt_row_cache *cache;
    open_cache(RODT_FIELD_NEEDED, 64, &cache);
    judged_row row = row_of(cache, "30", "1", "2");
    assert_int_equal(rodt_row_cache_find_rows(cache, lines, ends, 4, 4, found), 0);
    assert_false(met(&row, 77));
    for (size_t i = 0; i < sizeof starts / sizeof *starts; i++) {
        const size_t known = starts[i] == 3 ? 1 : 2 - starts[i];
        assert_int_equal(rodt_row_cache_find_rows(cache, lines, ends + starts[i] * 4, 4, 4 - starts[i], found), known);
        assert_int_equal(*(uint32_t *)found[0], 77);
    }
    assert_int_equal(rodt_row_cache_find_rows(cache, lines, ends, 4, 0, found), 0);
    assert_true(rodt_row_cache_flush(cache, add_rows, &rows));
    assert_int_equal(rows, 0);
    assert_int_equal(rodt_row_cache_find_rows(cache, lines, ends, 4, 4, found), 2);
    assert_ptr_equal(found[0], found[1]);
    rodt_row_cache_count(cache, found, 2);
    assert_non_null(rodt_row_cache_find(cache, lines, ends + 4));
    rodt_row_cache_count(cache, found, 0);
    assert_true(rodt_row_cache_flush(cache, add_rows, &rows));
    assert_int_equal(rows, 3);
    rodt_row_cache_free(cache);
}

/* More rows than are looked up together, of which no more are looked up than are asked for. */
static void test_many_rows_together(void **unused)
{
    (void)unused;
    enum { ROWS_THERE = 100 };
    static const char own_line[7] = {'3', '0', ',', '1', ',', '2', '\n'};
    char lines[ROWS_THERE * 7 + RODT_ROW_PAD] = "";
    uint32_t ends[ROWS_THERE * 3 + 1] = {UINT32_MAX};
    void *found[ROWS_THERE];
    rodt_row_cache *cache;
    for (uint32_t i = 0; i < ROWS_THERE; i++) {
        memcpy(lines + (size_t)i * 7, own_line, sizeof own_line);
        memcpy(ends + 1 + (size_t)i * 3, (uint32_t[]){i * 7 + 2, i * 7 + 4, i * 7 + 6}, 3 * sizeof *ends);
    }
    open_cache(RODT_FIELD_NEEDED, 64, &cache);
    judged_row row = row_of(cache, "30", "1", "2");
    assert_false(met(&row, 77));
    for (size_t rows = 0; rows <= ROWS_THERE; rows++) {
        memset(found, 0, sizeof found);
        assert_int_equal(rodt_row_cache_find_rows(cache, lines, ends, 3, rows, found), rows);
        for (size_t i = 0; i < ROWS_THERE; i++)
            assert_int_equal(found[i] != NULL && *(uint32_t *)found[i] == 77, i < rows);
    }
    rodt_row_cache_free(cache);
}

/* Cells by themselves: one that is not there has no size, and what is not known is not kept for the row before it. */
static void test_cells_by_themselves(void **unused)
{
    (void)unused;
    rodt_length own[2];
    rodt_row_cache *cache;
    open_cache(RODT_FIELD_NEEDED, 64, &cache);
    judged_row row = row_of(cache, "30", "1", "");
    row.cells[RODT_FIELD_APPLIED] = (rodt_text_span){NULL, 7};
    row.text.applied = NULL;
    assert_false(met(&row, 6));
    assert_int_equal(*(uint32_t *)rodt_row_cache_find_cells(cache, row.cells), 6);
    row = row_of(cache, "30", "1", "2");
    assert_null(rodt_row_cache_read(cache, row.cells, &row.text));
    row.cells[RODT_FIELD_CHAMBER] = (rodt_text_span){"some chamber", 12};
    assert_null(rodt_row_cache_find_alike_cells(cache, row.cells, &own[0], &own[1]));
    assert_null(rodt_row_cache_keep(cache));
    assert_null(rodt_row_cache_keep_alike(cache, &row.text));
    rodt_row_cache_free(cache);
}

/* The unit is known before the first reading, also where no other column stands between them. */
static void test_readings_after_the_unit(void **unused)
{
    (void)unused;
    size_t column[RODT_FIELD_ROOM];
    rodt_length own[2];
    rodt_row_cache *cache;
    memset(column, 0xFF, sizeof column); /* RODT_NO_COLUMN */
    column[RODT_FIELD_UNIT] = 0;
    column[RODT_FIELD_RELEASED] = 1;
    column[RODT_FIELD_APPLIED] = 2;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4, 64, &cache),
                     RODT_OK);
    judged_row row = row_of(cache, "30", "50", "90");
    row.cells[RODT_FIELD_UNIT] = (rodt_text_span){"mm", 2};
    row.text.unit = "mm";
    assert_false(met(&row, 5));
    assert_non_null(rodt_row_cache_keep_alike(cache, &row.text));
    row.cells[RODT_FIELD_RELEASED] = (rodt_text_span){"50.8", 4};
    row.cells[RODT_FIELD_APPLIED] = (rodt_text_span){"88.9", 4};
    assert_non_null(rodt_row_cache_find_alike_cells(cache, row.cells, &own[0], &own[1]));
    assert_memory_equal(&own[0], (&(rodt_length){3, 2}), sizeof *own);
    rodt_row_cache_free(cache);
}

/* Of more shapes than are kept few are refused, and the others are as good as before. */
static void test_more_shapes_than_are_kept(void **unused)
{
    (void)unused;
    rodt_length own[2];
    unsigned refused = 0;
    rodt_row_cache *cache;
    open_cache(RODT_FIELD_MARKED_LIMIT + 1, 1u << 16, &cache);
    for (unsigned i = 0; i < 12000; i++) {
        char rated[8], limit[8];
        judged_row row = row_of(cache, "30", "1", "2");
        snprintf(rated, sizeof rated, "%u.%02u", 1 + i % 200 / 100, i % 100);
        snprintf(limit, sizeof limit, "%u.%02u", 1 + i / 200 / 50, i / 200 % 50);
        row.cells[RODT_FIELD_RATED_STROKE] = (rodt_text_span){row.text.rated_stroke = rated, 4};
        row.cells[RODT_FIELD_MARKED_LIMIT] = (rodt_text_span){row.text.marked_limit = limit, 4};
        assert_null(rodt_row_cache_read(cache, row.cells, &row.text));
        uint32_t *bytes = rodt_row_cache_keep_alike(cache, &row.text);
        refused += bytes == NULL;
        assert_true(i >= 4096 || bytes != NULL);
        if (bytes != NULL)
            *bytes = i;
        const uint32_t *found = rodt_row_cache_find_alike_cells(cache, row.cells, &own[0], &own[1]);
        assert_true(bytes == NULL ? found == NULL : *found == i);
    }
    assert_in_range(refused, 1, 120);
    rodt_row_cache_free(cache);
}

/* A reading that no cell has is missing, whatever the texts of the row say. */
static void test_a_text_without_a_cell(void **unused)
{
    (void)unused;
    rodt_row_cache *cache;
    open_cache(RODT_FIELD_NEEDED, 64, &cache);
    judged_row row = row_of(cache, "30", "1", "3"), other = row;
    row.cells[RODT_FIELD_RELEASED].text = NULL;
    assert_false(met(&row, 77));
    assert_true(met(&row, 77));
    assert_false(met(&other, 78));
    assert_true(met(&other, 78));
    assert_true(met(&row, 77));
    rodt_row_cache_free(cache);
}

static const void *expect_everywhere(judged_row *row, const char *line, const uint32_t *ends, uint32_t number)
{
    const uint32_t *found = rodt_row_cache_find(row->cache, line, ends);
    assert_non_null(found);
    assert_int_equal(*found, number);
    assert_ptr_equal(rodt_row_cache_find_cells(row->cache, row->cells), found);
    assert_ptr_equal(rodt_row_cache_read(row->cache, row->cells, &row->text), found);
    return found;
}

/* Each length is read by the unit of its row, which is known before any of them: here a reading comes right after it. */
static void test_units_of_rows(void **unused)
{
    (void)unused;
    static const struct {
        const char *line, *unit, *released, *applied;
        uint32_t ends[4];
    } rows[] = {{"in,1,3                                ", "in", "1", "3", {UINT32_MAX, 2, 4, 6}},
                {"mm,1,30                               ", "mm", "1", "30", {UINT32_MAX, 2, 4, 7}},
                {"mm,25.4,30                            ", "mm", "25.4", "30", {UINT32_MAX, 2, 7, 10}},
                {",1,30                                 ", "", "1", "30", {UINT32_MAX, 0, 2, 5}}};
    const char stranger[] = "cm,1,30                               ";
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    memset(column, 0xFF, sizeof column); /* RODT_NO_COLUMN */
    column[RODT_FIELD_UNIT] = 0;
    column[RODT_FIELD_RELEASED] = 1;
    column[RODT_FIELD_APPLIED] = 2;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4, 64, &cache), RODT_OK);
    for (uint32_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        judged_row row = row_of(cache, "30", rows[i].released, rows[i].applied);
        row.text.unit = rows[i].unit;
        row.cells[RODT_FIELD_UNIT] = (rodt_text_span){rows[i].unit, strlen(rows[i].unit)};
        assert_null(rodt_row_cache_find(cache, rows[i].line, rows[i].ends));
        assert_null(rodt_row_cache_find_cells(cache, row.cells));
        assert_false(met(&row, i));
        (void)expect_everywhere(&row, rows[i].line, rows[i].ends, i);
        rodt_length own[2], expected;
        rodt_finding finding;
        assert_non_null(rodt_row_cache_keep_alike(cache, &row.text));
        assert_non_null(rodt_row_cache_find_alike(cache, rows[i].line, rows[i].ends, &own[0], &own[1]));
        assert_int_equal(rodt_form_judge_row(&row.text, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
        expected = finding.applied_stroke;
        assert_memory_equal(&own[0], &expected, sizeof expected);
    }
    assert_null(rodt_row_cache_find(cache, stranger, rows[1].ends)); /* as the last row, but for its unit */
    rodt_row_cache_free(cache);
}

/* What is kept is the row that was read last, once. A cell that is not there has no size. */
static void test_what_is_kept(void **unused)
{
    (void)unused;
    static const char line[] = "30,1,                                  ";
    static const uint32_t ends[] = {UINT32_MAX, 2, 4, 5};
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    memset(column, 0xFF, sizeof column); /* RODT_NO_COLUMN */
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4096, 64, &cache), RODT_OK);
    assert_null(rodt_row_cache_keep(cache)); /* no row was read */
    judged_row row = row_of(cache, "30", "1", "");
    assert_null(rodt_row_cache_find(cache, line, ends)); /* rows without columns are all alike */
    assert_false(met(&row, 5));
    assert_null(rodt_row_cache_keep(cache));
    assert_memory_equal(expect_everywhere(&row, line, ends, 5), (&(uint32_t){5}), 4);
    rodt_row_cache_free(cache);
    for (size_t i = 0; i < RODT_FIELD_NEEDED; i++)
        column[i] = i;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4, 64, &cache), RODT_OK);
    row = row_of(cache, "30", "1", "");
    row.cells[RODT_FIELD_APPLIED] = (rodt_text_span){NULL, 7};
    row.text.applied = NULL;
    assert_false(met(&row, 6));
    assert_true(met(&row, 6));
    row.cells[RODT_FIELD_CHAMBER] = (rodt_text_span){NULL, 0}; /* a row without a chamber is never found */
    row.text.chamber = NULL;
    assert_false(met(&row, 7));
    assert_false(met(&row, 7));
    rodt_row_cache_free(cache);
}

/* A mark of many digits is a class of its own: no number of a class holds it. A cell whose text says nothing is one
 * without a text. */
static void test_marks_and_nothing(void **unused)
{
    (void)unused;
    size_t column[RODT_FIELD_ROOM];
    rodt_row_cache *cache;
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = i < RODT_FIELD_NEEDED || i == RODT_FIELD_RATED_STROKE || i == RODT_FIELD_ENGINE ? i : RODT_NO_COLUMN;
    assert_int_equal(rodt_row_cache_new(rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, column, 4, 64, &cache),
                     RODT_OK);
    static const char *const marks[] = {"2 1/2", "2.5", "5.999999999", "5.999999998"};
    static const bool known[] = {false, true, false, false};
    for (size_t i = 0; i < sizeof marks / sizeof *marks; i++) {
        judged_row row = row_of(cache, "30", "2", "4");
        row.text.rated_stroke = marks[i];
        row.cells[RODT_FIELD_RATED_STROKE] = (rodt_text_span){marks[i], strlen(marks[i])};
        row.cells[RODT_FIELD_ENGINE] = (rodt_text_span){"\"\"", 2}; /* quotes around nothing */
        assert_int_equal(met(&row, 1), known[i]);
    }
    rodt_row_cache_free(cache);
}

/* A plan with few rows, or with rows that come again, is not backed off; one with many new rows longer each time. */
static void test_when_to_back_off(void **unused)
{
    (void)unused;
    rodt_row_cache *cache;
    char text[16];
    uint64_t sum = 0;
    unsigned longest = 0;
    open_cache(RODT_FIELD_NEEDED, 32768, &cache);
    for (unsigned chunk = 0, skipped = 0; chunk < 600; chunk++) {
        bool used = rodt_row_cache_begin_chunk(cache);
        longest = skipped > longest ? skipped : longest;
        skipped = used ? 0 : skipped + 1;
        for (unsigned i = 0; used && i < 1100; i++) {
            snprintf(text, sizeof text, "1.%06u", chunk * 1100 + i);
            judged_row row = row_of(cache, "30", text, "3");
            assert_false(met(&row, 1));
        }
    }
    assert_in_range(longest, 15, 600);
    /* Now every row comes again, and from then on nothing is skipped. */
    for (unsigned chunk = 0, skipped = 0; chunk < 300; chunk++) {
        skipped = rodt_row_cache_begin_chunk(cache) ? 0 : skipped + 1;
        assert_true(chunk < 200 || skipped == 0);
        for (unsigned i = 0; skipped == 0 && i < 3000; i++) {
            judged_row row = row_of(cache, "30", "1", "3");
            (void)met(&row, 1);
        }
        assert_true(rodt_row_cache_flush(cache, add_rows, &sum));
    }
    rodt_row_cache_free(cache);
}

/* Chunks that are skipped after one with so many new rows and so many that were known. */
static unsigned skipped_after(rodt_row_cache *cache, unsigned fresh, unsigned known)
{
    static unsigned row_number;
    unsigned skipped = 0;
    uint64_t sum = 0;
    for (unsigned i = 0; i < fresh; i++) {
        char text[16];
        snprintf(text, sizeof text, "1.%06u", ++row_number);
        judged_row row = row_of(cache, "30", text, "3");
        assert_false(met(&row, 1));
    }
    for (unsigned i = 0; i < known; i++) {
        judged_row row = row_of(cache, "30", "1", "3");
        assert_true(met(&row, 77));
    }
    assert_true(rodt_row_cache_flush(cache, add_rows, &sum));
    assert_int_equal(sum, known);
    while (!rodt_row_cache_begin_chunk(cache))
        skipped++;
    return skipped;
}

/* More than a thousand rows, of one chunk or several, of which less than a quarter was known: then 4 chunks are skipped,
 * 8 ... 64, until more than a thousand were known. */
static void test_how_long_to_back_off(void **unused)
{
    (void)unused;
    static const struct {
        unsigned fresh, known, skipped;
    } cases[] = {{1001, 0, 4},  {1001, 0, 8},   {1001, 0, 16}, {1001, 0, 32}, {1001, 0, 64}, {1001, 0, 64}, {1000, 0, 0}, {1, 0, 64},
                 {0, 1000, 0},  {3004, 0, 64},  {0, 1000, 0},  {0, 1, 0},      {1001, 0, 4},  {900, 300, 0}, {3, 0, 0},     {1, 0, 8},     {0, 0, 0}};
    rodt_row_cache *cache;
    open_cache(RODT_FIELD_NEEDED, 1u << 20, &cache);
    judged_row row = row_of(cache, "30", "1", "3");
    assert_false(met(&row, 77));
    assert_true(rodt_row_cache_begin_chunk(cache));
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_int_equal(skipped_after(cache, cases[i].fresh, cases[i].known), cases[i].skipped);
    rodt_row_cache_free(cache);
}

/* The same where rows are alike: more than a thousand, and more than half as many as were known by their stroke. */
static void test_when_alike_rows_back_off(void **unused)
{
    (void)unused;
    static const struct {
        unsigned alike, known, skipped;
    } cases[] = {{1000, 0, 0}, {1, 0, 4}, {1001, 2001, 8}, {1001, 2002, 0}, {1001, 0, 4}};
    static const char line[] = "30,1,2.5                                ";
    static const uint32_t ends[] = {UINT32_MAX, 2, 4, 8};
    void *found;
    rodt_row_cache *cache;
    rodt_length own[2];
    uint64_t sum = 0;
    open_cache(RODT_FIELD_NEEDED, 4096, &cache);
    judged_row row = row_of(cache, "30", "1", "3");
    assert_false(met(&row, 77));
    row = row_of(cache, "30", "1", "2.5");
    assert_false(met(&row, 77));
    assert_non_null(rodt_row_cache_keep_alike(cache, &row.text));
    assert_true(rodt_row_cache_begin_chunk(cache));
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        unsigned skipped = 0;
        for (unsigned k = 0; k < cases[i].alike; k++)
            assert_non_null(rodt_row_cache_find_alike_cells(cache, row.cells, &own[0], &own[1]));
        for (unsigned k = 0; k < cases[i].known; k++)
            assert_non_null(rodt_row_cache_find_cells(cache, row.cells));
        assert_true(rodt_row_cache_flush(cache, add_rows, &sum));
        for (; !rodt_row_cache_begin_chunk(cache); skipped++) {
            assert_null(rodt_row_cache_find_cells(cache, row.cells));
            assert_int_equal(rodt_row_cache_find_rows(cache, line, ends, 3, 1, &found), 0);
        }
        assert_int_equal(rodt_row_cache_find_rows(cache, line, ends, 3, 1, &found), 1);
        assert_int_equal(skipped, cases[i].skipped);
    }
    rodt_row_cache_free(cache);
}

/* Texts of a field that mean the same have one number, 0 = nothing; a chamber with a spring brake and a mark of many
 * digits have a new one each time. */
static const struct {
    rodt_field field;
    int class_of;
    const char *text;
} meanings[] = {
    {RODT_FIELD_CHAMBER, 0, ""}, {RODT_FIELD_CHAMBER, 0, " "}, {RODT_FIELD_CHAMBER, 1, "30"}, {RODT_FIELD_CHAMBER, 1, " 30 "},
    {RODT_FIELD_CHAMBER, 2, "30L"}, {RODT_FIELD_CHAMBER, 2, "30 long"}, {RODT_FIELD_CHAMBER, 3, "24"},
    {RODT_FIELD_CHAMBER, 4, "roto 30"}, {RODT_FIELD_CHAMBER, 5, "bolt C"}, {RODT_FIELD_CHAMBER, 6, "clamp 30"},
    {RODT_FIELD_CHAMBER, 7, "x"}, {RODT_FIELD_CHAMBER, 7, "y"}, {RODT_FIELD_CHAMBER, 8, "24/30"}, {RODT_FIELD_CHAMBER, 9, "24/30"},
    {RODT_FIELD_CHAMBER, 10, "24/9"}, {RODT_FIELD_CHAMBER, 11, "24/9"},
    {RODT_FIELD_STROKE_CLASS, 0, ""}, {RODT_FIELD_STROKE_CLASS, 1, "standard"}, {RODT_FIELD_STROKE_CLASS, 1, " Standard"},
    {RODT_FIELD_STROKE_CLASS, 2, "long"}, {RODT_FIELD_STROKE_CLASS, 3, "x"},
    {RODT_FIELD_RATED_STROKE, 0, ""}, {RODT_FIELD_RATED_STROKE, 1, "2 1/2"}, {RODT_FIELD_RATED_STROKE, 1, "2.5"},
    {RODT_FIELD_RATED_STROKE, 1, "63.5 mm"}, {RODT_FIELD_RATED_STROKE, 2, "3"}, {RODT_FIELD_RATED_STROKE, 3, "5"},
    {RODT_FIELD_RATED_STROKE, 4, "x"}, {RODT_FIELD_RATED_STROKE, 5, "5.999999999"}, {RODT_FIELD_RATED_STROKE, 6, "5.999999999"},
    {RODT_FIELD_RATED_STROKE, 7, "5.99999999"}, {RODT_FIELD_RATED_STROKE, 7, "5.99999999"},
    {RODT_FIELD_RATED_STROKE, 8, "1.100000001"}, {RODT_FIELD_RATED_STROKE, 9, "1.100000001"},
    {RODT_FIELD_MARKED_LIMIT, 0, " "}, {RODT_FIELD_MARKED_LIMIT, 1, "2"}, {RODT_FIELD_MARKED_LIMIT, 1, "50.8 mm"},
    {RODT_FIELD_MARKED_LIMIT, 2, "1 3/4"}, {RODT_FIELD_MARKED_LIMIT, 3, "x"},
    {RODT_FIELD_PSI, 0, ""}, {RODT_FIELD_PSI, 1, "0"}, {RODT_FIELD_PSI, 1, "0.0"}, {RODT_FIELD_PSI, 2, "1"}, {RODT_FIELD_PSI, 2, "89.9"},
    {RODT_FIELD_PSI, 3, "90"}, {RODT_FIELD_PSI, 3, "100"}, {RODT_FIELD_PSI, 4, "100.1"}, {RODT_FIELD_PSI, 4, "120"},
    {RODT_FIELD_PSI, 5, "x"},
    {RODT_FIELD_PSI_AFTER, 0, ""}, {RODT_FIELD_PSI_AFTER, 1, "0"}, {RODT_FIELD_PSI_AFTER, 2, "89.9"}, {RODT_FIELD_PSI_AFTER, 3, "95"},
    {RODT_FIELD_PSI_AFTER, 4, "101"}, {RODT_FIELD_PSI_AFTER, 5, "x"},
    {RODT_FIELD_DIVISION, 0, ""}, {RODT_FIELD_DIVISION, 0, "1/16"}, {RODT_FIELD_DIVISION, 0, "1 mm"}, {RODT_FIELD_DIVISION, 1, "x"},
    {RODT_FIELD_DATE, 0, ""}, {RODT_FIELD_DATE, 1, "2010-01-01"}, {RODT_FIELD_DATE, 2, "2013-01-01"}, {RODT_FIELD_DATE, 2, "2021-10-13"},
    {RODT_FIELD_DATE, 3, "2021-10-14"}, {RODT_FIELD_DATE, 3, "2024-05-01"}, {RODT_FIELD_DATE, 4, "06/05/2021"},
    {RODT_FIELD_DATE, 5, "10/11/2021"}, {RODT_FIELD_DATE, 6, "06/05/2024"}, {RODT_FIELD_DATE, 7, "x"},
    {RODT_FIELD_UNIT, 0, ""}, {RODT_FIELD_UNIT, 1, "in"}, {RODT_FIELD_UNIT, 1, " IN "}, {RODT_FIELD_UNIT, 2, "mm"},
    {RODT_FIELD_UNIT, 3, "cm"}, {RODT_FIELD_UNIT, 4, "furlong"}, {RODT_FIELD_UNIT, 4, "x"},
    {RODT_FIELD_ENGINE, 0, ""}, {RODT_FIELD_ENGINE, 1, "off"}, {RODT_FIELD_ENGINE, 2, "on"}, {RODT_FIELD_ENGINE, 3, "x"},
    {RODT_FIELD_SPRING_BRAKE, 0, ""}, {RODT_FIELD_SPRING_BRAKE, 1, "released"}, {RODT_FIELD_SPRING_BRAKE, 2, "applied"},
    {RODT_FIELD_SPRING_BRAKE, 3, "x"},
    {RODT_FIELD_DRUM, 0, ""}, {RODT_FIELD_DRUM, 1, "cold"}, {RODT_FIELD_DRUM, 2, "hot"}, {RODT_FIELD_DRUM, 3, "x"}};

static key_builder builder;

static cell_meaning meaning_of(rodt_field field, const char *text, unsigned tag)
{
    static const char *const units[] = {"", "mm"};
    const rodt_text_span cell = {text, strlen(text)};
    return rodti_key_read_cell(&builder, field, cell, text, units[tag != 0], tag);
}

/* Closing a builder leaves nothing in it. */
static void close_builder(void)
{
    rodti_key_close(&builder);
    for (int i = 0; i < RODT_READING_FIELDS; i++)
        assert_null(builder.field[i].cells.cells);
}

static void test_classes_of_texts(void **unused)
{
    (void)unused;
    cell_meaning found[sizeof meanings / sizeof *meanings];
    memset(&builder, 0xA5, sizeof builder); /* a builder need not be cleared */
    assert_true(rodti_key_open(&builder, rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, false));
    for (size_t i = 0; i < sizeof meanings / sizeof *meanings; i++) {
        const rodt_field field = meanings[i].field;
        const unsigned end = field + 1 < RODT_READING_FIELDS ? builder.field[field + 1].shift : 62;
        found[i] = meaning_of(field, meanings[i].text, 0);
        assert_int_equal(found[i].value, 0);
        assert_int_equal(found[i].key_bits >> end | (found[i].key_bits & ((UINT64_C(1) << builder.field[field].shift) - 1)), 0);
        assert_int_equal(found[i].key_bits == 0, meanings[i].class_of == 0);
        for (size_t k = 0; k < i; k++) {
            if (meanings[k].field == field)
                assert_int_equal(found[k].key_bits == found[i].key_bits, meanings[k].class_of == meanings[i].class_of);
        }
    }
    close_builder();
}

/* A date that contradicts the order is told from one that is none; of no other field is that asked. */
static void test_dates_of_another_order(void **unused)
{
    (void)unused;
    const rodt_form form = {.date_order = RODT_DATE_ORDER_MONTH_FIRST};
    assert_true(rodti_key_open(&builder, rodt_rules_find("us-fmcsr"), &form, false));
    const uint64_t other = meaning_of(RODT_FIELD_DATE, "13/10/2021", 0).key_bits, none = meaning_of(RODT_FIELD_DATE, "x", 0).key_bits;
    assert_int_not_equal(other, none);
    assert_int_equal(meaning_of(RODT_FIELD_DATE, "14/10/2021", 0).key_bits, other);
    assert_int_equal(meaning_of(RODT_FIELD_DATE, "y", 0).key_bits, none);
    assert_int_equal(meaning_of(RODT_FIELD_PSI, "13/10/2021", 0).key_bits, meaning_of(RODT_FIELD_PSI, "10/13/2021", 0).key_bits);
    close_builder();
}

/* Only a stream passes over rows whose chamber is missing or cannot be read; it does so for no other field. */
static void test_rows_without_a_chamber(void **unused)
{
    (void)unused;
    for (int stream = 0; stream < 2; stream++) {
        assert_true(rodti_key_open(&builder, rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, stream == 1));
        for (int field = 0; field < RODT_READING_FIELDS; field++) {
            const bool passed = stream == 1 && field == RODT_FIELD_CHAMBER;
            assert_int_equal(meaning_of((rodt_field)field, "?", 0).key_bits == KEY_UNCACHEABLE, passed);
            assert_int_equal(meaning_of((rodt_field)field, "", 0).key_bits == KEY_UNCACHEABLE, passed);
        }
        close_builder();
    }
}

/* A blank of the form says nothing for its rows. Cells that are read are counted. */
static void test_blanks_of_the_form(void **unused)
{
    (void)unused;
    rodt_form form = {.chamber = NULL};
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        rodt_form_set(&form, (rodt_field)field, " ");
    assert_true(rodti_key_open(&builder, rodt_rules_find("us-fmcsr"), &form, false));
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        assert_null(rodt_form_get(&builder.form, (rodt_field)field));
        builder.field[field].reads = 7;
        (void)meaning_of((rodt_field)field, " ", 0);
        assert_int_equal(builder.field[field].reads, 8);
    }
    close_builder();
}

/* A measurement adds its units to the stroke, and its unit to the key; one that is none takes the stroke away. */
static void test_meanings_of_measurements(void **unused)
{
    (void)unused;
    static const struct {
        const char *text;
        int64_t units; /* -1 = fine, -2 = no stroke, -3 = no key */
        int class_of;
        unsigned tag; /* 1 = millimetres */
    } cases[] = {{"2", 2 * RODT_COLUMN_PER_INCH, 1, 0}, {"2.0 in", 2 * RODT_COLUMN_PER_INCH, 1, 1}, {" 2", 2 * RODT_COLUMN_PER_INCH, 1, 0},
                 {"2\302\275", 5 * RODT_COLUMN_PER_INCH / 2, 1, 0}, {"50.8 mm", 2 * RODT_COLUMN_PER_INCH, 2, 0},
                 {"50.8", 2 * RODT_COLUMN_PER_INCH, 2, 1}, {"5.08 cm", 2 * RODT_COLUMN_PER_INCH, 3, 1}, {"0", 0, 1, 0}, {"0 mm", 0, 2, 0},
                 {"", -2, 0, 0}, {" ", -2, 0, 1}, {"x", -2, 4, 0}, {"?", -2, 4, 1}, {"2-Jan", -2, 5, 0}, {"31/8", -3, 0, 0},
                 {"1/536870912", -3, 0, 0}, {"2.000001", -1, 1, 0}};
    cell_meaning found[2][sizeof cases / sizeof *cases];
    for (int stream = 0; stream < 2; stream++) {
        assert_true(rodti_key_open(&builder, rodt_rules_find("us-fmcsr"), &(rodt_form){.chamber = NULL}, stream == 1));
        (void)meaning_of(RODT_FIELD_UNIT, "mm", 0); /* the first class of a unit, whose tag is 1 */
        for (size_t i = 0; i < 2 * (sizeof cases / sizeof *cases); i++) {
            const size_t at = i / 2;
            const rodt_field field = i % 2 == 0 ? RODT_FIELD_RELEASED : RODT_FIELD_APPLIED;
            const cell_meaning meaning = found[i % 2][at] = meaning_of(field, cases[at].text, cases[at].tag);
            const bool is_fine = cases[at].units == -1, has_key = cases[at].units != -3;
            const uint32_t units = (uint32_t)(cases[at].units > 0 ? cases[at].units : 0);
            assert_int_equal(meaning.key_bits == KEY_UNCACHEABLE, !has_key);
            assert_int_equal(meaning.value, is_fine ? KEY_VALUE_FINE : field == RODT_FIELD_APPLIED ? units : 0u - units);
            assert_int_equal((meaning.key_bits & KEY_NO_STROKE) != 0, cases[at].units == -2);
            for (size_t k = 0; k < at && has_key; k++)
                if (found[i % 2][k].key_bits != KEY_UNCACHEABLE)
                    assert_int_equal(found[i % 2][k].key_bits == meaning.key_bits, cases[k].class_of == cases[at].class_of);
        }
        close_builder();
    }
}

static void test_numbers_of_texts(void **unused)
{
    (void)unused;
    uint32_t number = 7;
    rodt_text_map *map = rodt_text_map_new(100);
    assert_non_null(map);
    assert_false(rodt_text_map_get(map, "position", 8, &number));
    assert_int_equal(number, 7);
    rodt_text_map_keep(map, "position", 8, 12);
    rodt_text_map_keep(map, "inspection date of the last", 27, 13);
    assert_true(rodt_text_map_get(map, "position", 8, &number));
    assert_int_equal(number, 12);
    assert_true(rodt_text_map_get(map, "inspection date of the last", 27, &number));
    assert_int_equal(number, 13);
    assert_false(rodt_text_map_get(map, "positio", 7, &number));
    rodt_text_map_free(map);
    rodt_text_map_free(NULL);
    assert_null(rodt_text_map_new(0));
    assert_null(rodt_text_map_new((1u << 16) + 1));
    assert_null(rodt_text_map_new(UINT32_MAX));
    map = rodt_text_map_new(1u << 16);
    assert_non_null(map);
    rodt_text_map_free(map);
}

static void test_refused(void **unused)
{
    (void)unused;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    const rodt_form form = {.chamber = NULL};
    size_t column[RODT_FIELD_ROOM];
    memset(column, 0xFF, sizeof column); /* RODT_NO_COLUMN */
    rodt_row_cache *cache = NULL;
    assert_int_equal(rodt_row_cache_new(NULL, &form, column, 8, 10, &cache), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_row_cache_new(rules, NULL, column, 8, 10, &cache), RODT_E_ARGUMENT);
    assert_int_equal(rodt_row_cache_new(rules, &form, NULL, 8, 10, &cache), RODT_E_ARGUMENT);
    assert_int_equal(rodt_row_cache_new(rules, &form, column, 0, 10, &cache), RODT_E_ARGUMENT);
    assert_int_equal(rodt_row_cache_new(rules, &form, column, 4097, 10, &cache), RODT_E_ARGUMENT);
    assert_int_equal(rodt_row_cache_new(rules, &form, column, 8, 0, &cache), RODT_E_ARGUMENT);
    assert_int_equal(rodt_row_cache_new(rules, &form, column, 8, 10, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_row_cache_new(rules, &form, column, 8, UINT32_MAX, &cache), RODT_E_ARGUMENT);
    const rodt_form wrong[] = {{.style = {.unit = RODT_UNIT_END}}, {.style = {.pressure_unit = RODT_PRESSURE_UNIT_END}},
                               {.style = {.reserved = {1}}}, {.date_order = RODT_DATE_ORDER_END},
                               {.default_day = {2021, 2, 29}}};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++)
        assert_int_equal(rodt_row_cache_new(rules, &wrong[i], column, 8, 10, &cache), RODT_E_ARGUMENT);
    for (int field = RODT_READING_FIELDS; field < RODT_FIELD_ROOM; field++) {
        column[field] = 0;
        assert_int_equal(rodt_row_cache_new(rules, &form, column, 8, 10, &cache), RODT_E_ARGUMENT);
        column[field] = RODT_NO_COLUMN;
    }
    assert_null(cache);
    rodt_row_cache_free(NULL);
    rodt_text_plan_free(NULL);
    rodt_chamber_reader_free(NULL);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_classes_of_texts),
                                       cmocka_unit_test(test_meanings_of_measurements),
                                       cmocka_unit_test(test_dates_of_another_order),
                                       cmocka_unit_test(test_rows_without_a_chamber),
                                       cmocka_unit_test(test_blanks_of_the_form),
                                       cmocka_unit_test(test_units_of_rows),
                                       cmocka_unit_test(test_what_is_kept),
                                       cmocka_unit_test(test_refused), cmocka_unit_test(test_how_long_to_back_off),
                                       cmocka_unit_test(test_random_rows), cmocka_unit_test(test_alike),
                                       cmocka_unit_test(test_when_alike_rows_back_off), cmocka_unit_test(test_backoff),
                                       cmocka_unit_test(test_rows_are_counted), cmocka_unit_test(test_many_rows_together), cmocka_unit_test(test_more_shapes_than_are_kept),
        cmocka_unit_test(test_cells_by_themselves), cmocka_unit_test(test_readings_after_the_unit), cmocka_unit_test(test_long_cells), cmocka_unit_test(test_a_text_without_a_cell),
                                       cmocka_unit_test(test_marks_and_nothing),
                                       cmocka_unit_test(test_when_to_back_off),
                                       cmocka_unit_test(test_numbers_of_texts)};
    return cmocka_run_group_tests_name("row_cache", tests, NULL, NULL);
}
