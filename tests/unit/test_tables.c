/* SPDX-License-Identifier: Apache-2.0 */
/* The tables that are compiled in, against the published ones: 49 CFR 393.47(e)(1), read in the text as amended
 * by 77 FR 46638 and by 86 FR 57076. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <cmocka.h>

#include "rules/limit_row.h"
#include "rules/table_reader.h"

static rodt_length inches(const char *text)
{
    rodt_length length = {0};
    assert_int_equal(rodt_length_parse(text, &length, NULL), RODT_OK);
    return length;
}

static rodt_chamber chamber_of(rodt_family family, const char *size, rodt_stroke_class stroke_class)
{
    rodt_chamber chamber = {.family = family, .stroke_class = stroke_class};
    assert_in_range(strlen(size), 0, sizeof chamber.size - 1);
    memcpy(chamber.size, size, strlen(size));
    return chamber;
}

/* Appendix A to Part 396 refers to 393.47(e) and has a table of its own, of which clamp 36 may differ. */
static void a_reference_replaces_only_its_own_rows(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-periodic"), *owner = rodt_rules_find("us-fmcsr");
    unsigned own = 0;
    assert_int_equal(rodt_rules_limit_count(rules), rodt_rules_limit_count(owner));
    assert_null(rodt_rules_limit_at(rules, rodt_rules_limit_count(rules)));
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        bool is_own = row->evidence != RODT_EVIDENCE_CHECKED;
        assert_int_equal(is_own, row->family == RODT_FAMILY_CLAMP && strcmp(row->size, "36") == 0);
        assert_string_equal(row->source->id, is_own ? "us-396-a-1a5-tables" : "us-393.47-e1");
        own += is_own;
    }
    assert_int_equal(own, 2);
    assert_int_equal(rodt_rules_limit_count(rodt_rules_find("rated-80")), 0);
    assert_null(rodt_rules_limit_at(rodt_rules_find("rated-80"), 0));
}

static void published_wording_is_the_figure(void **state)
{
    (void)state;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *rules = rodt_rules_at(r);
        for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
            const rodt_limit *row = rodt_rules_limit_at(rules, i);
            rodt_length read = inches(row->published);
            assert_int_equal(rodt_length_compare(read, row->limit), 0);
            assert_true(read.num == row->limit.num && read.den == row->limit.den);
        }
    }
}

static void expect_row(const rodt_rules *rules, const rodt_chamber *chamber, rodt_date day, const rodt_limit *row)
{
    rodt_limit_answer answer;
    assert_int_equal(rodt_rules_find_limit(rules, chamber, day, &answer, NULL), RODT_OK);
    assert_ptr_equal(answer.law_row, row);
    assert_false(answer.conflicting_marks);
}

/* Every row of every rule set is the answer to its own chamber, on its first day and on its last, or without a day
 * where it is open. */
static void every_row_is_reachable(void **state)
{
    (void)state;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *rules = rodt_rules_at(r);
        for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
            const rodt_limit *row = rodt_rules_limit_at(rules, i);
            bool any = row->stroke_class == RODT_STROKE_CLASS_ANY;
            rodt_chamber chamber =
                chamber_of(row->family, row->size, any ? RODT_STROKE_CLASS_UNKNOWN : row->stroke_class);
            chamber.rated_stroke = row->rated_stroke;
            if (rodt_date_given(row->from))
                expect_row(rules, &chamber, row->from, row);
            expect_row(rules, &chamber, row->until, row);
        }
    }
}

static void edition_is_a_day(void **state)
{
    (void)state;
    rodt_date day;
    assert_int_equal(rodt_date_parse_iso(rodt_tables_edition(), &day, NULL), RODT_OK);
    assert_int_equal(strlen(rodt_tables_edition()), 10);
}

/* The cells of tests/cases/us-393-47.csv. */
enum {
    CELL_FAMILY,
    CELL_SIZE,
    CELL_DIAMETER,
    CELL_DIAMETER_MM,
    CELL_CLASS,
    CELL_NOTE,
    CELL_LIMIT,
    CELL_LIMIT_MM,
    CELL_FROM,
    CELL_UNTIL,
    CELLS
};

static const table_column cells[CELLS] = {{"family", true},      {"size", true},        {"diameter_in", true},
                                          {"diameter_mm", true}, {"class", true},       {"rated_note", false},
                                          {"limit_in", true},    {"limit_mm", true},    {"from", true},
                                          {"until", false}};

static void no_fault(void *context, const rodt_error *fault)
{
    (void)context;
    fail_msg("us-393-47.csv:%u: %s", (unsigned)fault->line, fault->text);
}

static size_t read_cases(char *text, size_t room)
{
    FILE *in = fopen(CASES "/us-393-47.csv", "rb");
    assert_non_null(in);
    size_t size = fread(text, 1, room, in);
    assert_true(size > 0 && size < room);
    fclose(in);
    return size;
}

static const rodt_chamber_row *find_chamber(rodt_family family, const char *size)
{
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        if (row->family == family && strcmp(row->size, size) == 0)
            return row;
    }
    return NULL;
}

/* The row that has every figure of the cell, as printed; NULL if there is none. */
static const rodt_limit *find_cell(table_reader *reader)
{
    static const char *const words[] = {"only", "standard", "long"};
    static const rodt_stroke_class classes[] = {RODT_STROKE_CLASS_ANY, RODT_STROKE_CLASS_STANDARD,
                                                RODT_STROKE_CLASS_LONG};
    RODT_ENUM32(rodt_family) family;
    unsigned stroke_class;
    rodt_length limit_mm;
    rodt_date from, until;
    assert_true(rodti_table_family(reader, CELL_FAMILY, &family));
    assert_true(rodti_table_word(reader, CELL_CLASS, words, COUNT_OF(words), &stroke_class));
    assert_true(rodti_table_length(reader, CELL_LIMIT_MM, RODT_UNIT_MM, &limit_mm));
    assert_true(rodti_table_date(reader, CELL_FROM, &from) && rodti_table_date(reader, CELL_UNTIL, &until));
    bool noted = strcmp(reader->cells[CELL_NOTE].text, "3-inch (76 mm) rated stroke") == 0;
    assert_true(noted || table_empty(reader, CELL_NOTE));
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        bool rated = rodt_length_compare(row->rated_stroke, inches("3")) == 0 &&
                     rodt_length_compare(row->rated_stroke_mm, inches("76 mm")) == 0;
        if (row->family == family && strcmp(row->size, reader->cells[CELL_SIZE].text) == 0 &&
            row->stroke_class == classes[stroke_class] && (noted ? rated : !rodt_length_given(row->rated_stroke)) &&
            strcmp(row->published, reader->cells[CELL_LIMIT].text) == 0 &&
            rodt_length_compare(row->printed_mm, limit_mm) == 0 && rodt_date_compare(row->from, from) == 0 &&
            rodt_date_compare(row->until, until) == 0)
            return row;
    }
    return NULL;
}

static void check_diameter(table_reader *reader)
{
    RODT_ENUM32(rodt_family) family;
    rodt_length inch, mm;
    assert_true(rodti_table_family(reader, CELL_FAMILY, &family));
    assert_true(rodti_table_length(reader, CELL_DIAMETER, RODT_UNIT_IN, &inch));
    assert_true(rodti_table_length(reader, CELL_DIAMETER_MM, RODT_UNIT_MM, &mm));
    const rodt_chamber_row *row = find_chamber(family, reader->cells[CELL_SIZE].text);
    assert_non_null(row);
    assert_int_equal(rodt_length_compare(row->outside_diameter, inch), 0);
    assert_int_equal(rodt_length_compare(row->outside_diameter_mm, mm), 0);
}

/* Both ways: every published cell is a row, no two cells are one row, and there are no other rows. */
static void every_published_cell_and_nothing_else(void **state)
{
    (void)state;
    static char text[16384];
    table_reader reader;
    const rodt_limit *seen[64];
    size_t count = 0;
    assert_true(rodti_table_open(&reader, text, read_cases(text, sizeof text), cells, CELLS, no_fault, NULL));
    while (rodti_table_next(&reader)) {
        const rodt_limit *row = find_cell(&reader);
        if (row == NULL)
            fail_msg("us-393-47.csv:%u: the tables have no such row", (unsigned)reader.line);
        for (size_t i = 0; i < count; i++)
            assert_ptr_not_equal(seen[i], row);
        seen[count++] = row;
        check_diameter(&reader);
    }
    assert_int_equal(count, 32);
    assert_int_equal(rodt_rules_limit_count(rodt_rules_find("us-fmcsr")), count);
    assert_int_equal(rodt_chamber_row_count(), 24);
}

/* FNV-1a, 64 bits. */
static uint64_t hash(uint64_t seed, const char *text)
{
    for (; *text != '\0'; text++)
        seed = (seed ^ (unsigned char)*text) * 0x100000001b3u;
    return (seed ^ 0xFFu) * 0x100000001b3u;
}

static uint64_t hash_length(uint64_t seed, rodt_length length)
{
    char text[RODT_LENGTH_TEXT_SIZE] = "";
    if (rodt_length_given(length))
        assert_int_equal(rodt_length_format(length, text, sizeof text, NULL), RODT_OK);
    return hash(seed, text);
}

static uint64_t hash_date(uint64_t seed, rodt_date date)
{
    char text[RODT_DATE_TEXT_SIZE] = "";
    if (rodt_date_given(date))
        assert_int_equal(rodt_date_format(date, text, sizeof text, NULL), RODT_OK);
    return hash(seed, text);
}

static uint64_t hash_row(uint64_t seed, const rodt_limit *row)
{
    static const char *const classes[] = {"unknown", "standard", "long", "any"};
    static const char *const families[] = {"", "clamp", "bolt", "rotochamber", "DD-3"};
    seed = hash(hash(seed, families[row->family]), classes[row->stroke_class]);
    seed = hash_length(hash_length(hash(seed, row->size), row->rated_stroke), row->rated_stroke_mm);
    seed = hash_length(hash(hash_length(seed, row->limit), row->published), row->printed_mm);
    seed = hash_date(hash_date(seed, row->from), row->until);
    return hash(hash(seed, row->source->id), rodt_evidence_text(row->evidence));
}

/* The window and the share; as texts, like everything else. */
static uint64_t hash_use(uint64_t seed, const rodt_rules *rules)
{
    rodt_pressure from = rodt_rules_pressure_from(rules), until = rodt_rules_pressure_until(rules);
    rodt_ratio share = rodt_rules_rated_share(rules);
    seed = hash_length(seed, (rodt_length){from.num, from.den});
    seed = hash_length(seed, (rodt_length){until.num, until.den});
    seed = hash(seed, rodt_rules_major_source(rules) != NULL ? rodt_rules_major_source(rules)->id : "");
    return hash_length(seed, (rodt_length){share.num, share.den});
}

/*
 * A tripwire: whoever changes a row must run every test, re-read the source, and write into the changes by
 * effect in README.md what changes for users; then the new number belongs here.
 */
static void fingerprint_of_all_rows(void **state)
{
    (void)state;
    const uint64_t expected = 0xbd39be41e5568aa2u;
    uint64_t seed = 0xcbf29ce484222325u;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *rules = rodt_rules_at(r);
        seed = hash_date(hash_date(hash(seed, rodt_rules_id(rules)), rodt_rules_from(rules)), rodt_rules_until(rules));
        seed = hash(seed, rodt_rules_at_limit_passes(rules) ? "pass" : "fail");
        seed = hash_use(seed, rules);
        for (size_t i = 0; i < rodt_rules_limit_count(rules); i++)
            seed = hash_row(seed, rodt_rules_limit_at(rules, i));
    }
    if (seed != expected)
        fail_msg("a row has changed; the fingerprint is now 0x%016llx", (unsigned long long)seed);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_reference_replaces_only_its_own_rows),
        cmocka_unit_test(published_wording_is_the_figure),
        cmocka_unit_test(every_row_is_reachable),
        cmocka_unit_test(edition_is_a_day),
        cmocka_unit_test(every_published_cell_and_nothing_else),
        cmocka_unit_test(fingerprint_of_all_rows),
    };
    return cmocka_run_group_tests_name("tables", tests, NULL, NULL);
}
