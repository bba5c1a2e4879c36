/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of texts: every answer is that of rodt_form_judge_row for the same cells, whatever their layout. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "column/text_cells.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

#define MOST 4000
#define FIELDS 14

static rodt_text_plan *plan;

static struct {
    rodt_text_span cell[FIELDS][MOST];
    size_t rows;
    int32_t stroke[MOST], limit[MOST];
    uint64_t reasons[MOST];
    int64_t parts[MOST];
    uint8_t verdict[MOST], flags[MOST];
} table;

static const rodt_column_out answers = {
    .stroke = table.stroke, .verdict = table.verdict, .reasons = table.reasons, .flags = table.flags,
    .limit = table.limit, .stroke_parts = table.parts};

enum { CHAMBER, RELEASED, APPLIED, CLASS, RATED, MARKED, PRESSURE, AFTER, DIVISION, DAY, UNIT, ENGINE, SPRING, DRUM };

static rodt_text_span span(const char *text)
{
    return text == NULL ? (rodt_text_span){NULL, 0} : (rodt_text_span){text, strlen(text)};
}

static void put(int field, const char *text) { table.cell[field][table.rows] = span(text); }

static void clear(void) { memset(&table, 0, sizeof table); }

static void row(const char *chamber, const char *released, const char *applied)
{
    assert_true(table.rows < MOST);
    put(CHAMBER, chamber);
    put(RELEASED, released);
    put(APPLIED, applied);
    table.rows++;
}

static bool is_used(int field)
{
    for (size_t i = 0; i < table.rows; i++) {
        if (table.cell[field][i].text != NULL)
            return true;
    }
    return field <= APPLIED;
}

static rodt_text_columns spans(void)
{
    rodt_text_columns in;
    memset(&in, 0, sizeof in);
    for (int field = 0; field < FIELDS; field++) {
        if (is_used(field))
            in.field[field] = (rodt_text_cells){.layout = RODT_TEXT_LAYOUT_SPANS, .cells = table.cell[field]};
    }
    return in;
}

static bool has_blanks_only(rodt_text_span cell)
{
    size_t i = 0;
    while (i < cell.size && cell.text[i] == ' ')
        i++;
    return i == cell.size;
}

/* Closed copies of the cells; a blank one is what the form says. */
static rodt_form text_of_row(const rodt_form *form, size_t i, char room[FIELDS][512])
{
    rodt_form text = *form;
    for (int field = 0; field < FIELDS; field++) {
        rodt_text_span cell = table.cell[field][i];
        if (cell.text == NULL || has_blanks_only(cell))
            continue;
        assert_true(cell.size < 512);
        memcpy(room[field], cell.text, cell.size);
        room[field][cell.size] = '\0';
        rodt_form_set(&text, (rodt_field)field,
                              cell.size > 255 || strlen(room[field]) != cell.size ? "?" : room[field]);
    }
    return text;
}

_Static_assert(RODT_COLUMN_NO_LIMIT == RODT_COLUMN_NO_STROKE, "what units_of says of either");

static int32_t units_of(rodt_length length)
{
    if (!rodt_length_given(length) || RODT_COLUMN_PER_INCH % length.den != 0)
        return RODT_COLUMN_NO_STROKE;
    return (int32_t)(length.num * (RODT_COLUMN_PER_INCH / length.den));
}

static int64_t parts_of(rodt_length length)
{
    if (!rodt_length_given(length) || RODT_COLUMN_PARTS_PER_INCH % length.den != 0)
        return RODT_COLUMN_NO_STROKE;
    return length.num * (RODT_COLUMN_PARTS_PER_INCH / length.den);
}

static bool has(const rodt_finding *finding, rodt_reason reason) { return rodt_finding_has(finding, reason); }

static uint8_t flags_of(const rodt_finding *f)
{
    bool missing = has(f, RODT_REASON_CHAMBER_MISSING) || has(f, RODT_REASON_RELEASED_MISSING) ||
                   has(f, RODT_REASON_APPLIED_MISSING);
    bool invalid = has(f, RODT_REASON_CHAMBER_UNREADABLE) || has(f, RODT_REASON_RELEASED_UNREADABLE) ||
                   has(f, RODT_REASON_APPLIED_UNREADABLE) || has(f, RODT_REASON_OTHER_UNREADABLE) ||
                   has(f, RODT_REASON_DATE_UNREADABLE);
    return (uint8_t)(missing * RODT_COLUMN_FLAG_MISSING + invalid * RODT_COLUMN_FLAG_INVALID);
}

static void compare_row(const rodt_form *form, const rodt_rules *rules, size_t i)
{
    static char room[FIELDS][512];
    rodt_form text = text_of_row(form, i, room);
    rodt_finding finding;
    assert_int_equal(rodt_form_judge_row(&text, rules, &finding, NULL), RODT_OK);
    if (table.verdict[i] != finding.verdict || table.reasons[i] != finding.reasons)
        print_error("row %u: %s, %s, %s\n", (unsigned)i, text.chamber, text.released, text.applied);
    assert_int_equal(table.verdict[i], finding.verdict);
    assert_int_equal(table.reasons[i], finding.reasons);
    assert_int_equal(table.stroke[i], units_of(finding.applied_stroke));
    assert_int_equal(table.parts[i], parts_of(finding.applied_stroke));
    assert_int_equal(table.limit[i], units_of(finding.limit));
    assert_int_equal(table.flags[i], flags_of(&finding));
}

static void start(const char *rules, const rodt_form *form)
{
    rodt_text_plan_free(plan);
    plan = NULL;
    assert_int_equal(rodt_text_plan_new(rodt_rules_find(rules), form, &plan, NULL), RODT_OK);
}

static void judge_and_compare(const char *rules, const rodt_form *form)
{
    rodt_text_columns in = spans();
    start(rules, form);
    for (int call = 0; call < 3; call++) { /* cells are cached by the first call, rows by the second */
        memset(table.stroke, 0xA5, sizeof table.stroke);
        assert_int_equal(rodt_text_plan_judge(plan, &in, table.rows, &answers, NULL), RODT_OK);
        for (size_t i = 0; i < table.rows; i++)
            compare_row(form, rodt_rules_find(rules), i);
    }
}

static const rodt_form plain = {.chamber = NULL};

static void test_spellings(void **state)
{
    (void)state;
    csv_file file;
    char *cells[8];
    csv_open(&file, CASES "/spellings.csv");
    clear();
    csv_read(&file, cells, 8);
    while (csv_read(&file, cells, 8) > 1) {
        row("30", "1", cells[1]);
        row("24 long", cells[1], "3 1/2");
        row("clamp 36", cells[1], cells[1]);
    }
    assert_true(table.rows > 1000);
    judge_and_compare("us-fmcsr", &plain);
    judge_and_compare("us-periodic", &(rodt_form){.style = {.decimal_comma = true}, .psi = "95"});
    judge_and_compare("ca-nsc", &(rodt_form){.style = {.unit = RODT_UNIT_MM}});
    csv_close(&file);
}

static void test_marks(void **state)
{
    (void)state;
    static const char *const classes[] = {"", "standard", "long", "medium", NULL};
    static const char *const rated[] = {"3", "2 1/2", "", "x", NULL};
    csv_file file;
    char *cells[9];
    csv_open(&file, CASES "/chamber_marks.csv");
    clear();
    put(RATED, "3"); /* the same letters in another cell */
    row("20 long", "1", "3 1/4");
    put(MARKED, "3");
    row("20 long", "1", "3 1/4");
    csv_read(&file, cells, 9);
    while (csv_read(&file, cells, 9) > 1) {
        put(CLASS, classes[table.rows % 5]);
        put(RATED, rated[table.rows / 5 % 5]);
        put(MARKED, table.rows % 7 == 0 ? "2 1/4" : NULL);
        row(cells[0], "2", table.rows % 3 == 0 ? "4 1/8" : "3");
    }
    assert_true(table.rows > 200);
    judge_and_compare("us-fmcsr", &plain);
    csv_close(&file);
}

static void test_everything_else(void **state)
{
    (void)state;
    static const char *const texts[][11] = {
        {NULL, NULL, NULL, "95", NULL, NULL, "2021-10-13", NULL, NULL, NULL, NULL},
        {NULL, NULL, NULL, "655 kPa", "92", "1/16", "14-OCT-21", "in", "off", "released", "cold"},
        {"long", "3", "2 1/2", "80", "", "1 mm", "06/05/2024", "mm", "on", "on", "hot"},
        {" ", " ", " ", " ", " ", "0", "31/12/2020", " ", " ", " ", " "},
        {"x", "x", "x", "x", "x", "x", "x", "x", "x", "x", "x"},
        {NULL, NULL, NULL, "89 999/1000", NULL, "1/128", "2199-12-31", NULL, NULL, NULL, NULL},
        {NULL, NULL, NULL, "89.9999", NULL, NULL, "1900-01-01", NULL, NULL, NULL, NULL}};
    static const char *const readings[] = {"2", "4 1/4", "54 mm", "0.0000001", "1/128", "2-Jan", "", NULL, "4,5"};
    clear();
    for (size_t i = 0; i < 2 * 7 * 81; i++) {
        for (int field = CLASS; field < FIELDS; field++)
            put(field, texts[i / 2 / 81][field - CLASS]);
        row(i % 2 == 0 ? "clamp 36" : "30", readings[i / 2 % 9], readings[i / 2 / 9 % 9]);
    }
    judge_and_compare("us-fmcsr", &plain);
    judge_and_compare("us-fmcsr", &(rodt_form){.psi = "655 kPa", .date = "2021-10-13", .unit = "mm"});
    judge_and_compare("us-fmcsr", &(rodt_form){.date_order = RODT_DATE_ORDER_MONTH_FIRST, .engine = "on",
                                                       .default_day = {2021, 10, 13}, .psi_after = " "});
}

/* 44.5 mm is over 1 3/4 in, which the table prints as 44.5 mm: a reason of its own for those who read millimetres. */
static void test_units_of_readings(void **state)
{
    (void)state;
    static const char *const from[] = {"1", "25.4 mm", "2.54 cm", "25.4"};
    static const char *const to[] = {"69.9 mm", "6.99 cm", "2 3/4", "69.9"};
    static const rodt_unit units[] = {RODT_UNIT_IN, RODT_UNIT_MM, RODT_UNIT_CM};
    clear();
    for (size_t i = 0; i < 16; i++)
        row("20", from[i % 4], to[i / 4]);
    for (size_t i = 0; i < 3; i++)
        judge_and_compare("us-fmcsr", &(rodt_form){.style = {.unit = units[i]}});
    assert_true((table.reasons[1] >> RODT_REASON_PRINTED_MM_DIFFERS & 1) != 0);
    judge_and_compare("us-fmcsr", &(rodt_form){.unit = "mm"}); /* the same of a form */
}

/* Where nearly every reading is new, the cache is left out for more and more blocks, and the rows are the same. */
static void test_readings_that_never_come_again(void **state)
{
    (void)state;
    static char room[MOST][16];
    rodt_text_columns in;
    rodt_column_out out = answers;
    start("us-fmcsr", &plain);
    static char longest[256]; /* one more than a reader takes */
    memset(longest, ' ', sizeof longest);
    longest[0] = '2';
    for (unsigned pass = 0; pass * MOST < 70000; pass++) {
        clear();
        for (size_t i = 0; i < MOST; i++) {
            snprintf(room[i], sizeof room[i], "1.%06u in", (unsigned)(pass * MOST + i));
            row("30", room[i], "3");
        }
        table.cell[RELEASED][MOST / 2] = (rodt_text_span){longest, sizeof longest};
        table.cell[RELEASED][MOST / 2 + 1] = (rodt_text_span){NULL, 7}; /* nothing has no size */
        in = spans();
        out.flags = pass % 2 == 0 ? answers.flags : NULL; /* flags and limits are optional */
        out.limit = pass % 3 == 0 ? answers.limit : NULL;
        memset(table.flags, 0xA5, sizeof table.flags);
        memset(table.limit, 0xA5, sizeof table.limit);
        assert_int_equal(rodt_text_plan_judge(plan, &in, table.rows, &out, NULL), RODT_OK);
        assert_int_equal(table.flags[0], pass % 2 == 0 ? 0 : 0xA5);
        assert_int_equal((uint32_t)table.limit[0], pass % 3 == 0 ? 2 * RODT_COLUMN_PER_INCH : 0xA5A5A5A5);
        out.flags = answers.flags;
        out.limit = answers.limit;
        assert_int_equal(rodt_text_plan_judge(plan, &in, table.rows, &out, NULL), RODT_OK);
        compare_row(&plain, rodt_rules_find("us-fmcsr"), pass);
        assert_true((table.reasons[MOST / 2] & RODT_REASON_BIT(RODT_REASON_RELEASED_UNREADABLE)) != 0);
        assert_true((table.reasons[MOST / 2 + 1] & RODT_REASON_BIT(RODT_REASON_RELEASED_MISSING)) != 0);
    }
}

/* The cache is passed over for longer and longer, but not without an end. */
static void test_readings_that_are_new_for_long(void **state)
{
    (void)state;
    static char room[MOST][16];
    start("us-fmcsr", &plain);
    for (unsigned pass = 0; pass < 10; pass++) {
        clear();
        for (size_t i = 0; i < MOST - 1; i++) {
            snprintf(room[i], sizeof room[i], "1.%06u in", (unsigned)(pass * MOST + i));
            row("30", room[i], "3");
        }
        const rodt_text_columns in = spans();
        assert_int_equal(rodt_text_plan_judge(plan, &in, table.rows, &answers, NULL), RODT_OK);
        compare_row(&plain, rodt_rules_find("us-fmcsr"), pass);
    }
}

/* There, too, each reading is read by the unit of its own row. */
static void test_units_of_readings_that_never_come_again(void **state)
{
    (void)state;
    static const char *const units[] = {"in", "mm", "cm", "x", NULL};
    static char room[MOST][20];
    clear();
    for (size_t i = 0; i < MOST; i++) {
        snprintf(room[i], sizeof room[i], i % 7 == 0 ? "1.%06u\"" : i % 7 == 1 ? "\302\240%u" : "1.%06u", (unsigned)i);
        put(UNIT, units[i / 2 % 5]);
        row("30", i % 11 == 0 ? NULL : room[i], i % 13 == 0 ? NULL : i % 2 == 0 ? "3 1/4" : "82.55 mm");
    }
    judge_and_compare("us-fmcsr", &plain);
}

/* Rows by the block, 256 of them; a text that all of them have is read once. */
static void test_constant_columns(void **state)
{
    (void)state;
    static const char *const readings[] = {"2", "2 1/8", "2.5", "50 mm", "", "x", "2 1/4 inches long", "2.0000001"};
    static const char *const days[] = {"2024-06-10", "", "soon", "the tenth of June in the year 2024"};
    static const char *const units[] = {"in", "mm", "", "ell"};
    static char other[700][12];
    for (int which = 0; which < 128; which++) {
        clear();
        for (unsigned i = 0; i < 700; i++) {
            snprintf(other[i], sizeof other[i], "%u.%u", 3 + i % 2, i);
            put(UNIT, units[which / 32]);
            put(DAY, days[which / 8 % 4]);
            put(CLASS, i < 300 ? "long" : "standard");
            row("30", readings[which % 8], i == 600 ? "2 1/2" : other[i]);
        }
        judge_and_compare("us-fmcsr", &plain);
        for (unsigned i = 0; i < 700; i++) /* the other way round */
            table.cell[APPLIED][i] = span(readings[which % 8]);
        judge_and_compare("us-fmcsr", &plain);
    }
}

/* Too long for a key, and all different; blanks are trimmed. */
static void test_columns_of_long_texts(void **state)
{
    (void)state;
    static char longer[MOST][32];
    clear();
    for (unsigned i = 0; i < 700; i++) {
        snprintf(longer[i], sizeof longer[i], "        %u.%03u        ", 3 + i % 2, i);
        put(UNIT, i % 3 == 0 ? "        in        " : "            in    ");
        row("30", "2", longer[i]);
    }
    judge_and_compare("us-fmcsr", &plain);
    assert_int_equal(table.verdict[0], RODT_VERDICT_IN_ADJUSTMENT);
    assert_int_equal(table.verdict[1], RODT_VERDICT_OUT_OF_ADJUSTMENT);
}

/* A zero byte at its end makes another text, which nobody can read; the rows that are compared first have none. */
static void test_columns_with_zero_bytes(void **state)
{
    (void)state;
    clear();
    for (unsigned i = 0; i < 512; i++) {
        row("30", "2", NULL);
        table.cell[APPLIED][i] = (rodt_text_span){"3.12500", i % 256 == 7 ? 8 : 7};
    }
    judge_and_compare("us-fmcsr", &plain);
    assert_int_equal(table.verdict[6], RODT_VERDICT_IN_ADJUSTMENT);
    assert_int_equal(table.verdict[7], RODT_VERDICT_UNDETERMINED);
}

/* Decimals among other readings, in rows of several units; the longest that there are, and one that is longer. */
static void test_decimals_among_others(void **state)
{
    (void)state;
    static const char *const readings[] = {"2.125",   "24.0",   "24.001",  "609.6",   "609.601", "60.96", "60.9601",
                                           "2 1/8",   "2.5 in", "",        "02.5",    "2.x",     "0.5",   "12.34567",
                                           "2.12345", "999.9",  "2,5",     "123.456", "1.2.3",   "3",     "-2.5"};
    static const char *const units[] = {"in", "mm", "cm", "", "ell", "mm"};
    for (int comma = 0; comma < 2; comma++) {
        const rodt_form form = {.style = {.decimal_comma = comma != 0, .unit = RODT_UNIT_CM}};
        clear();
        for (unsigned i = 0; i < 3000; i++) {
            put(UNIT, units[i / 7 % 6]);
            row("30", i % 64 == 0 ? "1.5" : readings[i % COUNT_OF(readings)], readings[i / 3 % COUNT_OF(readings)]);
        }
        judge_and_compare("us-fmcsr", &form);
    }
}

/* Rows that differ in one field alone. */
static void test_each_field_by_itself(void **state)
{
    (void)state;
    static const char *const texts[FIELDS][4] = {
        [CHAMBER] = {"30", "30L", "24", "x"}, [RELEASED] = {"2", "1 1/4", "x", ""}, [APPLIED] = {"3 7/8", "4 1/4", "x", ""},
        [CLASS] = {"", "long", "standard", "x"}, [RATED] = {"", "1 1/2", "3", "x"}, [MARKED] = {"", "1", "2 1/2", "x"},
        [PRESSURE] = {"", "95", "80", "x"}, [AFTER] = {"", "92", "80", "0"}, [DIVISION] = {"", "1/16", "1/8", "x"},
        [DAY] = {"", "2024-05-01", "06/05/2021", "x"}, [UNIT] = {"", "mm", "in", "x"}, [ENGINE] = {"", "off", "on", "x"},
        [SPRING] = {"", "released", "on", "x"}, [DRUM] = {"", "cold", "hot", "x"}};
    for (int field = 0; field < FIELDS; field++) {
        clear();
        for (size_t i = 0; i < 16; i++) {
            row("30", "2", "3 7/8");
            table.cell[field][i] = span(texts[field][i % 4]);
        }
        judge_and_compare("us-fmcsr", &plain);
    }
}

/* Only measurements are ever read without the cache. */
static void test_classes_that_never_come_again(void **state)
{
    (void)state;
    static char room[1000][16];
    clear();
    for (size_t i = 0; i < 1000; i++) {
        snprintf(room[i], sizeof room[i], "2.%06u", (unsigned)i);
        put(CLASS, room[i]);
        row("30", "2", "4");
    }
    judge_and_compare("us-fmcsr", &plain);
}

/* An own limit, the law's, its printed millimetres and the rated stroke: the results change at each. */
static void test_four_steps(void **state)
{
    (void)state;
    static const char own[] = "family,size,class,limit\nclamp,20,standard,1 5/8\n";
    static const char *const strokes[] = {"41.2", "41.275", "41.3", "44.4", "44.45", "44.46", "44.5", "44.6", "63.4", "63.5", "63.6", "0", "1"};
    rodt_rules *rules = NULL;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", own, sizeof own - 1, &rules, NULL), RODT_OK);
    clear();
    for (size_t i = 0; i < 3 * (sizeof strokes / sizeof *strokes); i++) {
        put(UNIT, "mm");
        put(RATED, "63.5");
        row("clamp 20 standard", "0", strokes[i % (sizeof strokes / sizeof *strokes)]);
    }
    const rodt_text_columns in = spans();
    rodt_text_plan_free(plan);
    assert_int_equal(rodt_text_plan_new(rules, NULL, &plan, NULL), RODT_OK);
    for (int call = 0; call < 2; call++) {
        assert_int_equal(rodt_text_plan_judge(plan, &in, table.rows, &answers, NULL), RODT_OK);
        for (size_t i = 0; i < table.rows; i++)
            compare_row(&plain, rules, i);
    }
    assert_true((table.reasons[2] & RODT_REASON_BIT(RODT_REASON_OVER_OWN_LIMIT)) != 0);
    assert_true((table.reasons[5] & RODT_REASON_BIT(RODT_REASON_PRINTED_MM_DIFFERS)) != 0);
    assert_true((table.reasons[10] & RODT_REASON_BIT(RODT_REASON_BEYOND_RATED_STROKE)) != 0);
    rodt_rules_unref(rules);
}

/* Readings of a whole file, and a chamber for all its rows. */
static void test_a_form_with_everything(void **state)
{
    (void)state;
    const rodt_form form = {.chamber = "30", .released = "2 1/8", .applied = "4", .psi = "95"};
    clear();
    row("24", "2", "3 7/8");
    row("", "", "");
    row(NULL, NULL, NULL);
    judge_and_compare("us-fmcsr", &form);
}

/* A limit in millimetres, parts of 127, has no common 64-bit denominator with these readings. */
static void test_a_row_that_is_too_fine(void **state)
{
    (void)state;
    rodt_error error = {.status = RODT_OK};
    clear();
    for (size_t i = 0; i < 600; i++)
        row(i == 1 ? "18" : "30", i == 1 ? "1/536870912" : "2", i == 1 ? "1 1/244140625" : "4");
    table.cell[MARKED][1] = span("40 mm");
    rodt_text_columns in = spans();
    start("us-fmcsr", &plain);
    assert_int_equal(rodt_text_plan_judge(plan, &in, 600, &answers, &error), RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
    assert_int_equal(error.line, 2);
    assert_true(strlen(error.text) > 10);
    assert_int_equal(table.verdict[0], RODT_VERDICT_IN_ADJUSTMENT);
    assert_int_equal(rodt_text_plan_judge(plan, &in, 600, &answers, NULL), RODT_E_RANGE);
}

static void test_long_and_broken_cells(void **state)
{
    (void)state;
    static char longest[400];
    static char late[400];
    static const char zeros[16];
    memset(longest, ' ', sizeof longest);
    memset(late, ' ', sizeof late);
    late[399] = '4';
    clear();
    for (int i = 0; i < 8; i++) {
        put(UNIT, i > 5 ? "in" : NULL);
        row("30", "2", "4");
    }
    table.cell[APPLIED][0] = (rodt_text_span){longest, sizeof longest}; /* blanks only: missing */
    table.cell[RELEASED][1] = (rodt_text_span){late, sizeof late};
    table.cell[APPLIED][2] = (rodt_text_span){"4\0 1/2", 6};
    table.cell[CHAMBER][3] = (rodt_text_span){"30\0L", 4};
    table.cell[APPLIED][4] = (rodt_text_span){"", 1}; /* a zero byte by itself */
    table.cell[APPLIED][5] = (rodt_text_span){NULL, 7};
    table.cell[APPLIED][6] = span("");
    table.cell[APPLIED][7] = (rodt_text_span){zeros, 16};
    judge_and_compare("us-fmcsr", &plain);
    assert_int_equal(table.verdict[1], RODT_VERDICT_UNDETERMINED);
    assert_int_equal(table.verdict[2], RODT_VERDICT_UNDETERMINED);
    assert_int_equal(table.flags[3], RODT_COLUMN_FLAG_INVALID);
    assert_int_equal(table.flags[4], RODT_COLUMN_FLAG_INVALID);
    assert_int_equal(table.flags[5], RODT_COLUMN_FLAG_MISSING);
    assert_int_equal(table.flags[7], RODT_COLUMN_FLAG_INVALID);
}

/* More chambers than a key tells apart. */
static void test_many_chambers(void **state)
{
    (void)state;
    static char marks[600][8];
    static char rated[600][8];
    clear();
    for (size_t i = 0; i < 600; i++) {
        snprintf(marks[i], sizeof marks[i], "%zu", 1 + i % 90);
        snprintf(rated[i], sizeof rated[i], "%zu/8", 8 + i / 90);
        put(RATED, rated[i]);
        row(marks[i], "1", "2 1/4");
    }
    judge_and_compare("us-fmcsr", &plain);
}

/* --- Layouts ----------------------------------------------------------------------------------------- */

static struct {
    char bytes[256];
    int32_t offsets[8];
    int64_t offsets64[8];
    char views[8][16];
    const void *buffers[4];
    uint8_t valid[2];
    int8_t index8[8];
    uint16_t index16[8];
    int32_t index32[8];
    int64_t index64[8];
} arrow;

static void no_release_schema(struct ArrowSchema *schema) { (void)schema; }
static void no_release_array(struct ArrowArray *array) { (void)array; }

static const char *const five[] = {"2 1/8", "4", "four and a quarter in", "2.125 in or so", "3 1/2"};

static void make_texts(void)
{
    int32_t size = 0;
    memset(&arrow, 0, sizeof arrow);
    for (size_t i = 0; i < 5; i++) {
        int32_t length = (int32_t)strlen(five[i]);
        memcpy(arrow.bytes + size, five[i], (size_t)length);
        memcpy(arrow.views[i], &length, 4);
        memcpy(arrow.views[i] + 4, five[i], length <= 12 ? (size_t)length : 4);
        if (length > 12)
            memcpy(arrow.views[i] + 12, &size, 4); /* in buffer 0 */
        size += length;
        arrow.offsets[i + 1] = size;
        arrow.offsets64[i + 1] = size;
        arrow.index8[i] = (int8_t)(4 - i);
        arrow.index16[i] = (uint16_t)(4 - i);
        arrow.index32[i] = 4 - (int32_t)i;
        arrow.index64[i] = 4 - (int64_t)i;
    }
    arrow.valid[0] = 0x1D; /* the second is missing */
}

static rodt_text_cells open_layout(const char *format, const void *cells, int64_t offset)
{
    rodt_text_cells out;
    arrow.buffers[0] = arrow.valid;
    arrow.buffers[1] = cells;
    arrow.buffers[2] = arrow.bytes;
    struct ArrowSchema schema = {.format = format, .release = no_release_schema};
    struct ArrowArray array = {.length = 5 - offset, .offset = offset, .n_buffers = format[0] == 'v' ? 4 : 3,
                               .buffers = arrow.buffers, .release = no_release_array};
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_OK);
    return out;
}

static void expect_cells(const rodt_text_cells *cells, const int *which, size_t rows)
{
    rodt_text_columns in = spans();
    clear();
    start("us-fmcsr", &plain);
    for (size_t i = 0; i < rows; i++) {
        rodt_text_span cell = rodt_text_cells_at(cells, i);
        row("30", "1", which[i] < 0 ? NULL : five[which[i]]);
        assert_true((cell.text == NULL) == (which[i] < 0));
        if (cell.text != NULL)
            assert_true(cell.size == strlen(five[which[i]]) && memcmp(cell.text, five[which[i]], cell.size) == 0);
    }
    in = spans();
    in.field[APPLIED] = *cells;
    assert_int_equal(rodt_text_plan_judge(plan, &in, rows, &answers, NULL), RODT_OK);
    for (size_t i = 0; i < rows; i++)
        compare_row(&plain, rodt_rules_find("us-fmcsr"), i);
}

static void test_layouts(void **state)
{
    (void)state;
    static const int whole[] = {0, -1, 2, 3, 4};
    make_texts();
    rodt_text_cells cells = open_layout("u", arrow.offsets, 0);
    expect_cells(&cells, whole, 5);
    cells = open_layout("U", arrow.offsets64, 0);
    expect_cells(&cells, whole, 5);
    cells = open_layout("vu", arrow.views, 0);
    expect_cells(&cells, whole, 5);
    cells = open_layout("u", arrow.offsets, 2);
    expect_cells(&cells, whole + 2, 3);
    cells = open_layout("vu", arrow.views, 1);
    expect_cells(&cells, whole + 1, 4);
}

static rodt_status open_dictionary(const char *format, const void *numbers, rodt_text_cells *out)
{
    static const void *index[2];
    static const void *texts[3];
    index[1] = numbers;
    texts[0] = arrow.valid;
    texts[1] = arrow.offsets;
    texts[2] = arrow.bytes;
    struct ArrowSchema words = {.format = "u", .release = no_release_schema};
    struct ArrowArray word = {.length = 5, .n_buffers = 3, .buffers = texts, .release = no_release_array};
    struct ArrowSchema schema = {.format = format, .dictionary = &words, .release = no_release_schema};
    struct ArrowArray array = {.length = 5, .n_buffers = 2, .buffers = index, .dictionary = &word,
                               .release = no_release_array};
    return rodt_text_cells_from_arrow(&schema, &array, out, NULL);
}

static void test_dictionaries(void **state)
{
    (void)state;
    static const int backwards[] = {4, 3, 2, -1, 0};
    static const int odd[] = {-1, 3, -1, -1, 0};
    rodt_text_cells cells;
    make_texts();
    assert_int_equal(open_dictionary("c", arrow.index8, &cells), RODT_OK);
    expect_cells(&cells, backwards, 5);
    assert_int_equal(open_dictionary("S", arrow.index16, &cells), RODT_OK);
    expect_cells(&cells, backwards, 5);
    assert_int_equal(open_dictionary("i", arrow.index32, &cells), RODT_OK);
    expect_cells(&cells, backwards, 5);
    assert_int_equal(open_dictionary("l", arrow.index64, &cells), RODT_OK);
    expect_cells(&cells, backwards, 5);
    arrow.index32[0] = -1; /* numbers that the dictionary does not have */
    arrow.index32[2] = 5;
    assert_int_equal(open_dictionary("i", arrow.index32, &cells), RODT_OK);
    expect_cells(&cells, odd, 5);
    assert_int_equal(open_dictionary("g", arrow.index32, &cells), RODT_E_ARGUMENT);
    assert_int_equal(open_dictionary("ii", arrow.index32, &cells), RODT_E_ARGUMENT);
    assert_int_equal(open_dictionary("i", NULL, &cells), RODT_E_ARGUMENT);
}

/* A cell is there if its bit is set and its number is that of a cell. */
static void test_which_cells_are_there(void **state)
{
    (void)state;
    static rodt_text_span texts[200];
    uint8_t bits[26] = {0}, numbers[] = {198, 199};
    rodt_text_cells cells = {.layout = RODT_TEXT_LAYOUT_SPANS, .cells = texts, .valid = {bits, 3}};
    for (unsigned i = 0; i < 200; i++) {
        texts[i] = span("x");
        bits[(i + 3) >> 3] |= (uint8_t)((i * i % 7 < 3) << ((i + 3) & 7));
    }
    for (unsigned i = 0; i < 200; i++) {
        const rodt_text_span cell = rodt_text_cells_at(&cells, i);
        assert_ptr_equal(cell.text, i * i % 7 < 3 ? texts[i].text : NULL);
        assert_int_equal(cell.size, i * i % 7 < 3);
    }
    cells.valid.bits = NULL;
    cells.index = numbers;
    cells.index_width = 1;
    cells.count = 199;
    assert_int_equal(rodt_text_cells_at(&cells, 0).size, 1);
    assert_null(rodt_text_cells_at(&cells, 1).text);
    assert_int_equal(rodt_text_cells_at(&cells, 1).size, 0);
    cells.layout = RODT_TEXT_LAYOUT_ABSENT;
    assert_null(rodt_text_cells_at(&cells, 0).text);
    assert_int_equal(rodt_text_cells_at(&cells, 0).size, 0);
}

/* A view of up to twelve bytes holds them itself. */
static void test_sizes_of_views(void **state)
{
    (void)state;
    static const char letters[] = "abcdefghijklmnop";
    const void *const buffers[] = {letters};
    char views[2][16];
    for (int32_t size = 10; size < 16; size++) {
        memset(views, '-', sizeof views);
        memcpy(views[0], &size, 4);
        memcpy(views[0] + 4, letters, size < 13 ? (size_t)size : 4);
        if (size > 12)
            memcpy(views[0] + 8, (int32_t[]){0, 0}, 8);
        const rodt_text_cells cells = {.layout = RODT_TEXT_LAYOUT_VIEWS, .cells = views, .buffers = buffers};
        const rodt_text_span cell = rodt_text_cells_at(&cells, 0);
        assert_int_equal(cell.size, size);
        assert_ptr_equal(cell.text, size < 13 ? views[0] + 4 : letters);
    }
}

/* --- Chambers ---------------------------------------------------------------------------------------- */

static rodt_column_plan *numbers;
static rodt_chamber_reader *reader;
static uint8_t codes[MOST];

static void start_reader(void)
{
    rodt_chamber_reader_free(reader);
    rodt_column_plan_free(numbers);
    assert_int_equal(rodt_column_plan_new(rodt_rules_find("us-fmcsr"), NULL, &numbers, NULL), RODT_OK);
    assert_int_equal(rodt_chamber_reader_new(numbers, &reader), RODT_OK);
}

static void test_chambers_to_codes(void **state)
{
    (void)state;
    static const char *const written[] = {"30", "24 long", "nonsense", "", NULL, "30", " ", "24-Mar", "24 long",
                                          "a chamber whose name is longer than any"};
    static const int same_as[] = {0, 1, 2, 3, 4, 0, 6, 7, 1, 9};
    clear();
    for (size_t i = 0; i < 10; i++)
        row(written[i], NULL, NULL);
    start_reader();
    rodt_text_columns in = spans();
    for (int call = 0; call < 2; call++) {
        assert_int_equal(rodt_chamber_reader_read(reader, &in.field[CHAMBER], 10, codes, NULL), RODT_OK);
        for (size_t i = 0; i < 10; i++)
            assert_int_equal(codes[i], codes[same_as[i]]);
    }
    assert_int_equal(codes[0], 2);
    assert_int_equal(codes[1], 3);
    assert_int_equal(codes[2], RODT_COLUMN_CHAMBER_UNREADABLE);
    assert_int_equal(codes[3], RODT_COLUMN_CHAMBER_MISSING);
    assert_int_equal(codes[4], RODT_COLUMN_CHAMBER_MISSING);
    assert_int_equal(codes[6], RODT_COLUMN_CHAMBER_MISSING);
    assert_int_equal(codes[7], RODT_COLUMN_CHAMBER_UNREADABLE);
    assert_int_equal(codes[9], RODT_COLUMN_CHAMBER_UNREADABLE);
    clear();
    row(" 30 ", NULL, NULL); /* other texts of the same chambers */
    row("24 L", NULL, NULL);
    row(NULL, NULL, NULL);
    row("30", NULL, NULL);
    in = spans();
    codes[3] = 77;
    assert_int_equal(rodt_chamber_reader_read(reader, &in.field[CHAMBER], 3, codes, NULL), RODT_OK);
    assert_int_equal(codes[0], 2);
    assert_int_equal(codes[1], 3);
    assert_int_equal(codes[2], RODT_COLUMN_CHAMBER_MISSING);
    assert_int_equal(codes[3], 77); /* the row behind the last */
}

static void test_many_chambers_to_codes(void **state)
{
    (void)state;
    static char spellings[3000][32];
    rodt_error error;
    clear();
    for (size_t i = 0; i < 3000; i++) {
        const size_t known = i < 2000 ? 0 : (i - 2000) / 3;
        int size = i < 2000 ? snprintf(spellings[i], sizeof spellings[i], "no. %zu", i)
                            : snprintf(spellings[i], sizeof spellings[i], "%s%zu%s", known / 90 == 2 ? "clamp " : "",
                                       1 + known % 90, known / 90 == 1 ? " long" : known / 90 == 3 ? " standard" : "");
        assert_in_range(size, 1, 31);
        row(spellings[i], NULL, NULL);
    }
    start_reader();
    rodt_text_columns in = spans();
    /* Texts that are evicted take no second code, and texts that cannot be read take none. */
    for (int call = 0; call < 3; call++)
        assert_int_equal(rodt_chamber_reader_read(reader, &in.field[CHAMBER], 2150, codes, NULL), RODT_OK);
    assert_int_equal(codes[2002], 2);
    assert_int_equal(codes[2149], 51);
    assert_int_equal(rodt_chamber_reader_read(reader, &in.field[CHAMBER], 3000, codes, &error), RODT_E_SPACE);
    assert_string_equal(error.field, "chamber");
    assert_int_equal(error.line, 2000 + 3 * 254 + 1);
    error.line = 0;
    assert_int_equal(rodt_chamber_reader_read(reader, &in.field[CHAMBER], 3000, codes, NULL), RODT_E_SPACE);
    assert_int_equal(rodt_chamber_reader_read(reader, &in.field[CHAMBER], 3000, codes, &error), RODT_E_SPACE);
    assert_int_equal(error.line, 2000 + 3 * 254 + 1); /* what was not read is not cached */
    assert_int_equal(error.status, RODT_E_SPACE);
    rodt_text_cells unknown = in.field[CHAMBER];
    unknown.layout = (rodt_text_layout)RODT_TEXT_LAYOUT_END;
    assert_int_equal(rodt_chamber_reader_read(reader, &unknown, 1, codes, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "chamber");
    assert_int_equal(rodt_chamber_reader_new(NULL, &reader), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_reader_new(numbers, NULL), RODT_E_ARGUMENT);
    for (int i = 0; i < 3; i++) {
        memset(&error, 0, sizeof error);
        assert_int_equal(rodt_chamber_reader_read(i == 0 ? NULL : reader, i == 1 ? NULL : &in.field[CHAMBER], 1,
                                                  i == 2 ? NULL : codes, &error), RODT_E_ARGUMENT);
        assert_string_equal(error.field, "");
        assert_string_equal(error.text, "a reader, a column and room for the codes are needed");
    }
    assert_int_equal(rodt_chamber_reader_read(reader, &in.field[DRUM], 1, codes, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "chamber");
    assert_string_equal(error.text, "this column is needed");
}

/* --- Wrong use --------------------------------------------------------------------------------------- */

static void test_refused_arrays(void **state)
{
    (void)state;
    rodt_text_cells out;
    memset(&out, 0xA5, sizeof out);
    rodt_text_cells before = out;
    struct ArrowSchema schema = {.format = "u", .release = no_release_schema};
    struct ArrowArray array = {.length = 5, .n_buffers = 3, .buffers = arrow.buffers, .release = no_release_array};
    make_texts();
    arrow.buffers[1] = arrow.offsets;
    assert_int_equal(rodt_text_cells_from_arrow(NULL, &array, &out, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_text_cells_from_arrow(&schema, NULL, &out, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, NULL, NULL), RODT_E_ARGUMENT);
    schema.format = "g";
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_E_ARGUMENT);
    schema.format = "u";
    array.n_buffers = 2;
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_E_ARGUMENT);
    array.n_buffers = 3;
    array.release = NULL;
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_E_ARGUMENT);
    array.release = no_release_array;
    arrow.buffers[0] = NULL;
    array.null_count = 1; /* which cell is missing is not told */
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_E_ARGUMENT);
    array.null_count = -2;
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_E_ARGUMENT);
    array.null_count = 0;
    arrow.buffers[1] = NULL;
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_E_ARGUMENT);
    assert_memory_equal(&out, &before, sizeof out);
}

static struct ArrowSchema sane_schema(const char *format)
{
    return (struct ArrowSchema){.format = format, .release = no_release_schema};
}

static struct ArrowArray sane_array(int64_t buffers)
{
    return (struct ArrowArray){.length = 5, .n_buffers = buffers, .buffers = arrow.buffers, .release = no_release_array};
}

static void refuse_array(const struct ArrowSchema *schema, const struct ArrowArray *array, const char *part)
{
    rodt_text_cells out;
    rodt_error error = {.status = RODT_OK};
    assert_int_equal(rodt_text_cells_from_arrow(schema, array, &out, &error), RODT_E_ARGUMENT);
    if (strstr(error.text, part) == NULL)
        fail_msg("\"%s\" does not say \"%s\"", error.text, part);
}

/* Each figure of an array alone. */
static void test_arrays_that_cannot_be(void **state)
{
    (void)state;
    const struct ArrowSchema texts = sane_schema("u"), none = sane_schema(NULL), released = {.format = "u"};
    struct ArrowArray array = sane_array(3);
    rodt_text_cells out;
    make_texts();
    arrow.buffers[1] = arrow.offsets;
    assert_int_equal(rodt_text_cells_from_arrow(&texts, &array, &out, NULL), RODT_OK);
    refuse_array(&none, &array, "holds no texts");
    refuse_array(&released, &array, "was released");
    array.dictionary = &array;
    refuse_array(&texts, &array, "holds no texts");
    const int64_t most = (int64_t)(SIZE_MAX / 32);
    const struct {
        int64_t length, offset, buffers;
    } figures[] = {{-1, 0, 3}, {most + 1, 0, 3}, {5, -1, 3}, {5, most + 1, 3}, {5, 0, 2}};
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) {
        array = sane_array(figures[i].buffers);
        array.length = figures[i].length;
        array.offset = figures[i].offset;
        refuse_array(&texts, &array, "cannot be");
    }
    array = sane_array(3);
    array.length = array.offset = most;
    assert_int_equal(rodt_text_cells_from_arrow(&texts, &array, &out, NULL), RODT_OK);
    assert_int_equal(out.count, most);
    assert_int_equal(out.from, most);
    array = sane_array(3);
    array.null_count = 1;
    arrow.buffers[0] = arrow.valid;
    assert_int_equal(rodt_text_cells_from_arrow(&texts, &array, &out, NULL), RODT_OK);
    arrow.buffers[0] = NULL;
    refuse_array(&texts, &array, "cannot be");
    array = sane_array(3);
    array.buffers = NULL;
    refuse_array(&texts, &array, "cannot be");
    array = sane_array(3);
    arrow.buffers[1] = NULL;
    refuse_array(&texts, &array, "no cells");
    array.length = 0; /* needs none */
    assert_int_equal(rodt_text_cells_from_arrow(&texts, &array, &out, NULL), RODT_OK);
    assert_int_equal(out.count, 0);
}

/* Nothing is copied: each part of an array is where it was. */
static void test_arrays_are_taken_as_they_are(void **state)
{
    (void)state;
    static const char *const formats[] = {"u", "U", "vu"};
    static const rodt_text_layout layouts[] = {RODT_TEXT_LAYOUT_OFFSETS32, RODT_TEXT_LAYOUT_OFFSETS64, RODT_TEXT_LAYOUT_VIEWS};
    static const char letters[] = "cCsSiIlL";
    const void *indices[] = {arrow.index8, arrow.index64};
    rodt_text_cells out;
    make_texts();
    arrow.buffers[0] = arrow.valid;
    arrow.buffers[1] = arrow.views;
    arrow.buffers[2] = arrow.bytes;
    for (size_t i = 0; i < 3; i++) {
        struct ArrowSchema words = sane_schema(formats[i]), schema = sane_schema("i");
        struct ArrowArray list = sane_array(i < 2 ? 3 : 2), array = sane_array(2);
        list.length = 3;
        list.offset = 2;
        assert_int_equal(rodt_text_cells_from_arrow(&words, &list, &out, NULL), RODT_OK);
        assert_int_equal(out.layout, layouts[i]);
        assert_int_equal(out.from, 2);
        assert_int_equal(out.count, 3);
        assert_ptr_equal(out.valid.bits, arrow.valid);
        assert_int_equal(out.valid.from, 2);
        assert_ptr_equal(out.cells, arrow.views);
        assert_ptr_equal(out.bytes, i < 2 ? arrow.bytes : NULL);
        assert_ptr_equal(out.buffers, i < 2 ? NULL : arrow.buffers + 2);
        assert_null(out.index);
        list.n_buffers--;
        refuse_array(&words, &list, "cannot be");
        list.n_buffers++;
        schema.dictionary = &words;
        array.dictionary = &list;
        array.buffers = indices;
        array.offset = 4;
        for (size_t k = 0; k < 8; k++) {
            const char letter[2] = {letters[k]};
            schema.format = letter;
            assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_OK);
            assert_int_equal(out.index_width, 1u << k / 2);
            assert_ptr_equal(out.index, arrow.index64);
            assert_int_equal(out.index_from, 4);
            assert_ptr_equal(out.index_valid.bits, arrow.index8);
            assert_int_equal(out.index_valid.from, 4);
            assert_int_equal(out.from, 2);
            assert_ptr_equal(out.cells, arrow.views);
        }
    }
    for (int i = 0; i < 3; i++) {
        rodt_error error = {.status = RODT_OK};
        const struct ArrowSchema schema = sane_schema("u");
        const struct ArrowArray array = sane_array(3);
        assert_int_equal(rodt_text_cells_from_arrow(i == 0 ? NULL : &schema, i == 1 ? NULL : &array, i == 2 ? NULL : &out, &error),
                         RODT_E_ARGUMENT);
        assert_string_equal(error.field, "");
        assert_string_equal(error.text, "a schema, an array and room for the cells are needed");
    }
}

static void test_dictionaries_that_cannot_be(void **state)
{
    (void)state;
    struct ArrowSchema words = sane_schema("u"), schema = sane_schema("i");
    const void *indices[] = {NULL, arrow.index32, NULL};
    struct ArrowArray list = sane_array(3), array = sane_array(2);
    rodt_text_cells out;
    make_texts();
    arrow.buffers[0] = NULL;
    arrow.buffers[1] = arrow.offsets;
    arrow.buffers[2] = arrow.bytes;
    schema.dictionary = &words;
    array.dictionary = &list;
    array.buffers = indices;
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_OK);
    expect_cells(&out, (const int[]){4, 3, 2, 1, 0}, 5);
    indices[0] = &(const uint8_t){0x1B}; /* the third row has no number */
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_OK);
    assert_null(rodt_text_cells_at(&out, 2).text);
    assert_non_null(rodt_text_cells_at(&out, 3).text);
    indices[0] = NULL;
    static const char *const formats[] = {NULL, "", "ii", "f"};
    for (size_t i = 0; i < sizeof formats / sizeof *formats; i++) {
        schema.format = formats[i];
        refuse_array(&schema, &array, "indices of a dictionary");
    }
    schema.format = "i";
    array.n_buffers = 3;
    refuse_array(&schema, &array, "cannot be");
    array.n_buffers = 2;
    array.length = -1;
    refuse_array(&schema, &array, "cannot be");
    array.length = 5;
    indices[1] = NULL;
    refuse_array(&schema, &array, "no cells");
    array.length = 1;
    refuse_array(&schema, &array, "no cells");
    array.length = 0;
    assert_int_equal(rodt_text_cells_from_arrow(&schema, &array, &out, NULL), RODT_OK);
    array.length = 5;
    indices[1] = arrow.index32;
    array.dictionary = NULL;
    refuse_array(&schema, &array, "was released");
    array.dictionary = &list;
    words.dictionary = &words;
    refuse_array(&schema, &array, "holds no texts");
}

static void refuse(const rodt_text_columns *in, const rodt_column_out *out, const char *field)
{
    rodt_error error = {.status = RODT_OK};
    assert_int_equal(rodt_text_plan_judge(plan, in, 1, out, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_string_equal(error.field, field);
    assert_true(strlen(error.text) > 10);
}

/* The number of a row, from 1; none where it does not fit. */
static void test_numbers_of_rows(void **state)
{
    (void)state;
    static const struct {
        size_t row;
        uint32_t line;
    } cases[] = {{0, 1}, {1, 2}, {UINT32_MAX - 1, UINT32_MAX}, {UINT32_MAX, 0}, {SIZE_MAX, 0}, {SIZE_MAX - 5, SIZE_MAX > UINT32_MAX ? 0 : UINT32_MAX - 4}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        rodt_error error = {.line = 77};
        assert_int_equal(rodti_row_status(&error, cases[i].row, RODT_E_RANGE), RODT_E_RANGE);
        assert_int_equal(error.line, cases[i].line);
    }
    assert_int_equal(rodti_row_status(NULL, 1, RODT_E_SPACE), RODT_E_SPACE);
}

static void test_widths_of_indices(void **state)
{
    (void)state;
    const uint64_t index = 0;
    start("us-fmcsr", &plain);
    clear();
    row("30", "2", "4");
    static const struct {
        uint32_t width;
        bool known;
    } widths[] = {{0, false}, {1, true}, {2, true}, {3, false}, {4, true}, {5, false}, {7, false}, {8, true}, {9, false}, {16, false}};
    for (size_t i = 0; i < sizeof widths / sizeof *widths; i++) {
        rodt_text_columns in = spans();
        in.field[CHAMBER].index = &index;
        in.field[CHAMBER].count = 1;
        in.field[CHAMBER].index_width = widths[i].width;
        if (widths[i].known)
            assert_int_equal(rodt_text_plan_judge(plan, &in, 1, &answers, NULL), RODT_OK);
        else
            refuse(&in, &answers, "chamber");
    }
}

static void refuse_unknown_fields(void)
{
    for (int field = RODT_READING_FIELDS; field < RODT_FIELD_ROOM; field++) {
        rodt_text_columns in = spans();
        in.field[field] = in.field[RELEASED];
        refuse(&in, &answers, "field");
        in.field[field].reserved[1] = 1;
        refuse(&in, &answers, "field");
    }
}

static void test_refused_calls(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_error error = {.status = RODT_OK};
    assert_int_equal(rodt_text_plan_new(NULL, &plain, &plan, &error), RODT_E_UNKNOWN_RULES);
    assert_string_equal(error.text, "no rule set was given");
    assert_int_equal(rodt_text_plan_new(rules, &plain, NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "room for a plan is needed");
    const rodt_form wrong[] = {{.style = {.unit = RODT_UNIT_END}}, {.style = {.pressure_unit = RODT_PRESSURE_UNIT_END}},
                               {.date_order = RODT_DATE_ORDER_END}, {.default_day = {2021, 2, 29}}};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        assert_int_equal(rodt_text_plan_new(rules, &wrong[i], &plan, &error), RODT_E_ARGUMENT);
        assert_true(error.field[0] != '\0');
    }
    assert_int_equal(rodt_text_plan_new(rules, &(rodt_form){.psi = "lots"}, &plan, NULL), RODT_E_SYNTAX);
    assert_int_equal(rodt_text_plan_new(rules, &(rodt_form){.psi = "lots"}, &plan, &error), RODT_E_SYNTAX);
    assert_int_equal(error.status, RODT_E_SYNTAX);
    rodt_text_plan_free(plan);
    assert_int_equal(rodt_text_plan_new(rules, NULL, &plan, NULL), RODT_OK);
    clear();
    row("30", "2", "4");
    rodt_text_columns in = spans();
    rodt_column_out out = answers;
    for (int i = 0; i < 3; i++) {
        memset(&error, 0, sizeof error);
        assert_int_equal(rodt_text_plan_judge(i == 0 ? NULL : plan, i == 1 ? NULL : &in, 1, i == 2 ? NULL : &out, &error),
                         RODT_E_ARGUMENT);
        assert_string_equal(error.field, "");
        assert_string_equal(error.text, "a plan, columns and room for the answers are needed");
    }
    out.verdict = NULL;
    refuse(&in, &out, "verdict");
    out = answers;
    out.reserved[1] = 1;
    refuse(&in, &out, "reserved");
    out = answers;
    out.stroke = (int32_t *)(void *)out.reasons;
    refuse(&in, &out, "stroke");
    in.field[RELEASED].layout = RODT_TEXT_LAYOUT_ABSENT;
    refuse(&in, &answers, "released");
    in = spans();
    in.field[DRUM].reserved[1] = 1;
    refuse(&in, &answers, "reserved");
    in = spans();
    in.field[CHAMBER].index = &in;
    in.field[CHAMBER].index_width = 3;
    refuse(&in, &answers, "chamber");
    in = spans();
    memcpy(&in.field[DRUM].layout, &(uint32_t){5}, sizeof in.field[DRUM].layout);
    refuse(&in, &answers, "drum");
    refuse_unknown_fields();
    in = spans();
    assert_int_equal(table.reasons[0], 0);
    assert_int_equal(rodt_text_plan_judge(plan, &in, 0, &answers, NULL), RODT_OK);
}

static int free_all(void **state)
{
    (void)state;
    rodt_text_plan_free(plan);
    rodt_chamber_reader_free(reader);
    rodt_column_plan_free(numbers);
    return 0;
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_refused_arrays),
        cmocka_unit_test(test_refused_calls),
        cmocka_unit_test(test_widths_of_indices),
        cmocka_unit_test(test_numbers_of_rows),
        cmocka_unit_test(test_arrays_that_cannot_be),
        cmocka_unit_test(test_arrays_are_taken_as_they_are),
        cmocka_unit_test(test_dictionaries_that_cannot_be),
        cmocka_unit_test(test_layouts),
        cmocka_unit_test(test_which_cells_are_there),
        cmocka_unit_test(test_sizes_of_views),
        cmocka_unit_test(test_dictionaries),
        cmocka_unit_test(test_chambers_to_codes),
        cmocka_unit_test(test_spellings),
        cmocka_unit_test(test_marks),
        cmocka_unit_test(test_everything_else),
        cmocka_unit_test(test_units_of_readings),
        cmocka_unit_test(test_long_and_broken_cells),
        cmocka_unit_test(test_readings_that_never_come_again),
        cmocka_unit_test(test_readings_that_are_new_for_long),
        cmocka_unit_test(test_units_of_readings_that_never_come_again),
        cmocka_unit_test(test_constant_columns),
        cmocka_unit_test(test_columns_of_long_texts),
        cmocka_unit_test(test_columns_with_zero_bytes),
        cmocka_unit_test(test_decimals_among_others),
        cmocka_unit_test(test_each_field_by_itself),
        cmocka_unit_test(test_classes_that_never_come_again),
        cmocka_unit_test(test_four_steps),
        cmocka_unit_test(test_a_form_with_everything),
        cmocka_unit_test(test_a_row_that_is_too_fine),
        cmocka_unit_test(test_many_chambers),
        cmocka_unit_test(test_many_chambers_to_codes),
    };
    return cmocka_run_group_tests(tests, NULL, free_all);
}
