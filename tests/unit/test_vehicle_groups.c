/* SPDX-License-Identifier: Apache-2.0 */
/* Where the command makes one line an inspection: grouping, the words of a line, and what does not fit in memory. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "batch/recent_names.h"
#include "batch/vehicle_groups.h"
#include "batch/vehicle_key.h"

typedef struct page {
    char *text;
    size_t size;
    size_t room;
    size_t lines;
    bool refuses;
} page;

static bool take(void *context, const char *bytes, size_t size)
{
    page *to = context;
    if (to->refuses)
        return false;
    if (to->size + size >= to->room) {
        to->room = (to->size + size) * 2 + 64;
        to->text = realloc(to->text, to->room);
        assert_non_null(to->text);
    }
    memcpy(to->text + to->size, bytes, size);
    to->size += size;
    to->text[to->size] = '\0';
    for (size_t i = 0; i < size; i++)
        to->lines += bytes[i] == '\n';
    return true;
}

static uint64_t seed[2] = {1, 2};

static vehicle_groups *start_with(page *to, line_layout layout)
{
    memset(to, 0, sizeof *to);
    layout.separator = ',';
    vehicle_groups *table = vehicle_groups_open((line_sink){take, to}, &layout, seed);
    assert_non_null(table);
    return table;
}

static vehicle_groups *start(page *to) { return start_with(to, (line_layout){.heading = {"unit"}, .names = 1}); }

static void end(vehicle_groups *table, page *from)
{
    vehicle_groups_close(table);
    free(from->text);
}

/* A type 30 standard with the stroke in 8ths of an inch; its limit is 2 in, 49 CFR 393.47(e)(1). */
static rodt_finding finding_of(int eighths)
{
    rodt_reading reading = {0};
    rodt_finding finding;
    assert_int_equal(rodt_chamber_parse("clamp 30 standard", &reading.chamber, NULL), RODT_OK);
    assert_int_equal(rodt_length_from_inches(2, 1, &reading.released), RODT_OK);
    assert_int_equal(rodt_length_from_inches(16 + eighths, 8, &reading.applied), RODT_OK);
    assert_int_equal(rodt_date_make(2024, 5, 6, &reading.day), RODT_OK);
    assert_int_equal(rodt_reading_judge(&reading, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    return finding;
}

static const rodt_position nowhere = {0, 0};

static group_status add_bytes(vehicle_groups *table, const char *key, size_t size, const rodt_finding *finding,
                              rodt_position position)
{
    const name_cell cell = {key, size};
    group_brake brake = group_brake_of(finding, position);
    return vehicle_groups_count(table, &cell, &brake);
}

static group_status add(vehicle_groups *table, const char *key, int eighths)
{
    rodt_finding finding = finding_of(eighths);
    return add_bytes(table, key, strlen(key), &finding, nowhere);
}

static void rows_in_any_order_make_lines_in_the_order_of_first_appearance(void **state)
{
    (void)state;
    static const struct {
        const char *key;
        int eighths;
    } rows[] = {{"T-9", 17}, {"T-10", 12}, {"T-9", 18}, {"T-8", 0},  {"T-10", 12}, {"T-9", 12},
                {"T-9", 12}, {"T-9", 12},  {"T-8", 12}, {"T-9", 12}, {"T-8", -1}};
    page to;
    vehicle_groups *table = start(&to);
    assert_int_equal(vehicle_groups_write_header(table), GROUP_OK);
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++)
        assert_int_equal(add(table, rows[i].key, rows[i].eighths), GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(to.text, "unit,brakes,in_adjustment,out_of_adjustment,inoperative,undetermined,defective,"
                                 "percent,verdict,whole_needed,remarks\n"
                                 "T-9,6,4,2,0,0,1 1/2,25,ambiguous,2,\n"
                                 "T-10,2,2,0,0,0,0,0,below-criterion,1,\n"
                                 "T-8,3,1,0,1,1,1,33 1/3,out-of-service,1,\n");
    assert_int_equal(vehicle_groups_counts(table)->inspections, 3);
    assert_int_equal(vehicle_groups_counts(table)->outcome[RODT_OUTCOME_AMBIGUOUS], 1);
    assert_int_equal(vehicle_groups_counts(table)->outcome[RODT_OUTCOME_OUT_OF_SERVICE], 1);
    end(table, &to);
}

/* Names in spellings and lengths of every kind, and rows of which some wait for others, beside a count by hand. */
static void rows_of_any_names_are_counted(void **state)
{
    (void)state;
    enum { VEHICLES = 12, ROWS = 4000 };
    char name[2][VEHICLES][96], line[160];
    page to;
    unsigned drawn = 1, known = 0, order[VEHICLES];
    unsigned first_spelling[VEHICLES] = {0}, in[VEHICLES] = {0}, out[VEHICLES] = {0};
    vehicle_groups *table = start(&to);
    for (int i = 0; i < VEHICLES; i++) {
        memset(name[0][i], 'n', 6u * (unsigned)i); /* of 64 bytes at most: the last one does not wait */
        snprintf(name[0][i] + 6 * i, 16, "-%04d", i);
        memcpy(name[1][i], name[0][i], sizeof name[0][i]);
        name[1][i][0] = i > 0 ? 'N' : name[1][i][0];
    }
    for (int i = 0; i < ROWS; i++) {
        drawn = drawn * 1103515245u + 12345u;
        const unsigned one = (drawn >> 16) % VEHICLES, spelling = one > 0 && drawn >> 28 > 12, worse = drawn >> 8 & 1;
        if (in[one] + out[one] == 0) {
            order[known++] = one;
            first_spelling[one] = spelling;
        }
        *(worse ? &out[one] : &in[one]) += 1;
        assert_int_equal(add(table, name[spelling][one], worse ? 18 : 12), GROUP_OK);
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    const char *at = to.text;
    for (unsigned i = 0; i < known; i++, at = strchr(at, '\n') + 1) {
        const unsigned one = order[i];
        snprintf(line, sizeof line, "%s,%u,%u,%u,0,0,", name[first_spelling[one]][one], in[one] + out[one], in[one], out[one]);
        assert_memory_equal(at, line, strlen(line));
    }
    assert_int_equal(to.lines, VEHICLES);
    end(table, &to);
}

/* More vehicles than fit, whose names differ at their start, in the middle and far behind, in disorder. */
static void names_that_differ_anywhere_are_told_apart(void **state)
{
    (void)state;
    enum { VEHICLES = 36, ROWS = 6000 };
    static const char *const before[] = {"", "a yard with", "a yard with a long name and vehicle"};
    page to;
    char name[VEHICLES][64], line[128];
    unsigned drawn = 7, rows[VEHICLES] = {0};
    vehicle_groups *table = start_with(&to, (line_layout){.heading = {"unit"}, .names = 1});
    for (unsigned i = 0; i < VEHICLES; i++)
        snprintf(name[i], sizeof name[i], "%s%02u", before[i % 3], i % 100);
    for (unsigned i = 0; i < ROWS; i++) {
        drawn = drawn * 1103515245u + 12345u;
        const unsigned one = i < VEHICLES ? i : (drawn >> 16) % (i % 700 < 400 ? 12 : VEHICLES);
        rows[one]++;
        assert_int_equal(add(table, name[one], 12), GROUP_OK);
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    const char *at = to.text;
    for (unsigned i = 0; i < VEHICLES; i++, at = strchr(at, '\n') + 1) {
        snprintf(line, sizeof line, "%.63s,%u,%u,0,", name[i], rows[i], rows[i]);
        assert_memory_equal(at, line, strlen(line));
    }
    assert_int_equal(to.lines, VEHICLES);
    end(table, &to);
}

static uint64_t hash_of(const char *bytes)
{
    row_name name = {.size = 16, .cell_size = {16}};
    memcpy(name.bytes, bytes, 16);
    row_name_finish(&name);
    return name.hash;
}

/* The second word undoes what the first does to the hash, which is no secret. */
static void names_of_one_hash_are_told_apart(void **state)
{
    (void)state;
    char name[2][17] = {"aaaaaaaaaaaaaaaa", "bbbbbbbbbbbbbbbb"};
    const uint64_t factor = UINT64_C(0x9E3779B97F4A7C15);
    uint64_t first[2], word;
    for (int i = 0; i < 2; i++) {
        first[i] = 16 * factor; /* the size, and no day */
        first[i] ^= first[i] >> 32;
        memcpy(&word, name[i], sizeof word);
        first[i] = (first[i] ^ word) * factor;
        first[i] ^= first[i] >> 32;
    }
    memcpy(&word, name[0] + 8, sizeof word);
    word ^= first[0] ^ first[1];
    memcpy(name[1] + 8, &word, sizeof word);
    assert_true(hash_of(name[0]) == hash_of(name[1]));
    page to;
    vehicle_groups *table = start(&to);
    rodt_finding finding = finding_of(12);
    for (int i = 0; i < 100; i++)
        assert_int_equal(add_bytes(table, name[i % 2], 16, &finding, nowhere), GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_int_equal(vehicle_groups_counts(table)->inspections, 2);
    assert_non_null(strstr(to.text, "aaaaaaaa,50,50,"));
    end(table, &to);
}

static void what_is_odd_about_the_rows_is_said(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start(&to);
    rodt_finding finding = finding_of(12), other_day = finding;
    other_day.day.day++;
    assert_int_equal(add_bytes(table, "a", 1, &finding, (rodt_position){1, RODT_SIDE_LEFT}), GROUP_OK);
    assert_int_equal(add_bytes(table, "a", 1, &other_day, (rodt_position){1, RODT_SIDE_RIGHT}), GROUP_OK);
    assert_int_equal(add_bytes(table, "b", 1, &finding, (rodt_position){99, RODT_SIDE_RIGHT}), GROUP_OK);
    assert_int_equal(add_bytes(table, "b", 1, &finding, (rodt_position){99, RODT_SIDE_RIGHT}), GROUP_OK);
    assert_int_equal(add_bytes(table, "c", 1, &finding, (rodt_position){2, RODT_SIDE_LEFT}), GROUP_OK);
    assert_int_equal(add_bytes(table, "c", 1, &other_day, (rodt_position){2, RODT_SIDE_LEFT}), GROUP_OK);
    assert_int_equal(add_bytes(table, "", 0, &finding, nowhere), GROUP_OK);
    assert_int_equal(add_bytes(table, "", 0, &finding, nowhere), GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(to.text, "a,2,2,0,0,0,0,0,below-criterion,1,mixed-days\n"
                                 "b,2,2,0,0,0,0,0,below-criterion,1,position-twice\n"
                                 "c,2,2,0,0,0,0,0,below-criterion,1,mixed-days position-twice\n"
                                 ",2,2,0,0,0,0,0,undetermined,1,\n");
    end(table, &to);
}

static void keys_are_bytes_and_quoted_where_they_must_be(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start_with(&to, (line_layout){.heading = {"unit, \"no\""}, .names = 1});
    rodt_finding finding = finding_of(12);
    assert_int_equal(vehicle_groups_write_header(table), GROUP_OK);
    assert_int_equal(add(table, "a,b", 12), GROUP_OK);
    assert_int_equal(add(table, "a\"b", 12), GROUP_OK);
    assert_int_equal(add(table, "a\nb", 12), GROUP_OK);
    assert_int_equal(add(table, "A", 12), GROUP_OK);
    assert_int_equal(add(table, "a", 12), GROUP_OK);
    assert_int_equal(add_bytes(table, "a\0b", 3, &finding, nowhere), GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_int_equal(vehicle_groups_counts(table)->inspections, 5);
    assert_int_equal(vehicle_groups_counts(table)->respelled, 1);
    assert_string_equal(vehicle_groups_counts(table)->spelling[0], "A");
    assert_string_equal(vehicle_groups_counts(table)->spelling[1], "a");
    assert_non_null(strstr(to.text, "\"unit, \"\"no\"\"\",brakes"));
    assert_non_null(strstr(to.text, "\n\"a,b\",1,"));
    assert_non_null(strstr(to.text, "\n\"a\"\"b\",1,"));
    assert_non_null(strstr(to.text, "\n\"a\nb\",1,"));
    end(table, &to);
}

/* The line has the first spelling. Blanks around a name are nothing to speak of. */
static void spellings_of_one_vehicle_are_one(void **state)
{
    (void)state;
    static const char *const spellings[][4] = {
        {"T-1", " T-1", "T-1\t", "  T-1 "},           {"\xC2\xA0T-2\xE3\x80\x80", "\xEF\xBB\xBFT-2", "T-2", "T-2"},
        {"Unit 3", "UNIT 3", "unit  3", "Unit3"},     {"\xC3\x89t\xC3\xA9 4", "\xC3\xA9T\xC3\x89 4", "\xC3\x89t\xC3\xA9 4", ""},
        {"1 12", "1  12", "1 12 ", "1\xC2\xA0" "12"}, {"11 2", "11 2", "", ""},
        {"112", "112", "", ""},                       {"\xC3\x97", "\xC3\x97", "", ""},
        {"\xC3\xB7", "", "", ""},                     {"T-1x", "t-1X", "", ""}};
    page to;
    vehicle_groups *table = start(&to);
    for (size_t k = 0; k < 4; k++) {
        for (size_t i = 0; i < sizeof spellings / sizeof spellings[0]; i++) {
            if (spellings[i][k][0] != '\0')
                assert_int_equal(add(table, spellings[i][k], 12), GROUP_OK);
        }
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(to.text, "T-1,4,4,0,0,0,0,0,below-criterion,1,\n"
                                 "T-2,4,4,0,0,0,0,0,below-criterion,1,\n"
                                 "Unit 3,4,4,0,0,0,0,0,below-criterion,1,\n"
                                 "\xC3\x89t\xC3\xA9 4,3,3,0,0,0,0,0,below-criterion,1,\n"
                                 "1 12,4,4,0,0,0,0,0,below-criterion,1,\n"
                                 "11 2,2,2,0,0,0,0,0,below-criterion,1,\n"
                                 "112,2,2,0,0,0,0,0,below-criterion,1,\n"
                                 "\xC3\x97,2,2,0,0,0,0,0,below-criterion,1,\n"
                                 "\xC3\xB7,1,1,0,0,0,0,0,below-criterion,1,\n"
                                 "T-1x,2,2,0,0,0,0,0,below-criterion,1,\n");
    assert_int_equal(vehicle_groups_counts(table)->respelled, 4);
    assert_string_equal(vehicle_groups_counts(table)->spelling[1], "UNIT 3");
    end(table, &to);
}

/* A key of blanks names nobody. */
static void blanks_name_no_vehicle(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start(&to);
    assert_int_equal(add(table, "", 12), GROUP_OK);
    assert_int_equal(add(table, " \t", 12), GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(to.text, ",2,2,0,0,0,0,0,undetermined,1,\n");
    end(table, &to);
}

/* The vectors of the paper's authors: key 00 to 0f, text 00, 01, 02 ... */
static void the_hash_is_the_published_one(void **state)
{
    (void)state;
    const uint64_t key[2] = {UINT64_C(0x0706050403020100), UINT64_C(0x0f0e0d0c0b0a0908)};
    char text[16];
    for (size_t i = 0; i < sizeof text; i++)
        text[i] = (char)i;
    assert_true(vehicle_key_hash(text, 0, key) == UINT64_C(0x726fdb47dd0e0e31));
    assert_true(vehicle_key_hash(text, 1, key) == UINT64_C(0x74f839c593dc67fd));
    assert_true(vehicle_key_hash(text, 8, key) == UINT64_C(0x93f5f5799a932462));
    assert_true(vehicle_key_hash(text, 15, key) == UINT64_C(0xa129ca6149be45e5));
}

static group_status add_number(vehicle_groups *table, unsigned number)
{
    char key[32];
    snprintf(key, sizeof key, "%u", number);
    return add(table, key, 12);
}

static void no_seed_changes_the_lines(void **state)
{
    (void)state;
    page to[2];
    vehicle_groups *table[2];
    for (size_t k = 0; k < 2; k++) {
        seed[0] = k * UINT64_C(0x9E3779B97F4A7C15);
        table[k] = start(&to[k]);
        for (unsigned i = 0; i < 1500; i++)
            assert_int_equal(add_number(table[k], i * 7919 % 997), GROUP_OK);
        assert_int_equal(vehicle_groups_finish(table[k]), GROUP_OK);
    }
    assert_string_equal(to[0].text, to[1].text);
    for (size_t k = 0; k < 2; k++)
        end(table[k], &to[k]);
}

/* Counted in a plain array: the same lines in the same order, whatever fits in memory. */
static void what_does_not_fit_in_memory_waits_on_disk(void **state)
{
    (void)state;
    enum { VEHICLES = 40 * INSPECTIONS_MAX, ROWS = 3 * VEHICLES };
    static unsigned rows_of[VEHICLES], order[VEHICLES];
    page to;
    unsigned found = 0;
    vehicle_groups *table = start(&to);
    memset(rows_of, 0, sizeof rows_of);
    for (unsigned i = 0; i < ROWS; i++) {
        unsigned number = (i * 7919u + i / VEHICLES) % VEHICLES;
        if (rows_of[number]++ == 0)
            order[found++] = number;
        assert_int_equal(add_number(table, number), GROUP_OK);
    }
    assert_int_equal(to.lines, 0);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_int_equal(to.lines, found);
    char *at = to.text, line[64];
    for (unsigned i = 0; i < found; i++, at = strchr(at, '\n') + 1) {
        snprintf(line, sizeof line, "%u,%u,%u,0,0,0,0,0,below-criterion,", order[i], rows_of[order[i]], rows_of[order[i]]);
        assert_memory_equal(at, line, strlen(line));
    }
    assert_int_equal(vehicle_groups_counts(table)->inspections, found);
    end(table, &to);
}

/* Also where one vehicle has more inspections than fit, and its spellings and remarks are in different files. */
static void what_was_remarked_on_is_kept_on_disk(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start(&to);
    rodt_finding finding = finding_of(12);
    for (int round = 0; round < 2; round++) {
        assert_int_equal(add_bytes(table, round == 0 ? "T-1" : "t-1", 3, &finding, (rodt_position){1, RODT_SIDE_LEFT}), GROUP_OK);
        assert_int_equal(add(table, round == 0 ? "T-2" : "t-2", 12), GROUP_OK);
        for (unsigned i = 0; i < 3 * INSPECTIONS_MAX; i++)
            assert_int_equal(add_number(table, i), GROUP_OK);
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_ptr_equal(strstr(to.text, "T-1,2,2,0,0,0,0,0,below-criterion,1,position-twice\nT-2,2,2,"), to.text);
    assert_int_equal(vehicle_groups_counts(table)->respelled, 2);
    assert_string_equal(vehicle_groups_counts(table)->spelling[0], "T-1");
    assert_string_equal(vehicle_groups_counts(table)->spelling[1], "t-1");
    end(table, &to);
}

static group_status add_day(vehicle_groups *table, const char *key, int eighths, int day)
{
    const name_cell cell = {key, strlen(key)};
    rodt_finding finding = finding_of(eighths);
    group_brake brake = group_brake_of(&finding, nowhere);
    brake.day = (rodt_date){0};
    if (day > 0)
        assert_int_equal(rodt_date_make(2024, 1, day, &brake.day), RODT_OK);
    return vehicle_groups_count(table, &cell, &brake);
}

static const line_layout by_day = {.heading = {"unit"}, .names = 1, .day_heading = "tested"};

/* Out of service on the first day, whatever the days after it were like. */
static void each_day_is_an_inspection(void **state)
{
    (void)state;
    for (unsigned others = 0; others <= 3 * INSPECTIONS_MAX; others += 3 * INSPECTIONS_MAX) {
        page to;
        vehicle_groups *table = start_with(&to, by_day);
        assert_int_equal(vehicle_groups_write_header(table), GROUP_OK);
        for (int i = 0; i < 10; i++)
            assert_int_equal(add_day(table, "T-1", i < 2 ? 18 : 12, 10), GROUP_OK);
        for (unsigned i = 0; i < others; i++)
            assert_int_equal(add_number(table, i), GROUP_OK);
        for (int i = 0; i < 10; i++)
            assert_int_equal(add_day(table, "T-1", 12, 11), GROUP_OK);
        assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
        assert_ptr_equal(strstr(to.text, "unit,tested,brakes,"), to.text);
        assert_non_null(strstr(to.text, "\nT-1,2024-01-10,10,8,2,0,0,2,20,out-of-service,2,\n"));
        assert_non_null(strstr(to.text, "\nT-1,2024-01-11,10,10,0,0,0,0,0,below-criterion,2,\n"));
        assert_int_equal(vehicle_groups_counts(table)->inspections, 2 + others);
        end(table, &to);
    }
}

/* Days are kept as they are written, by month and day. */
static void days_of_several_years_are_told_apart(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start_with(&to, by_day);
    rodt_finding finding = finding_of(12);
    for (int i = 0; i < 3; i++) {
        finding.day.year = (int16_t)(2023 + i % 2);
        finding.day.day = (int8_t)(6 - i / 2);
        assert_int_equal(add_bytes(table, "a", 1, &finding, nowhere), GROUP_OK);
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(to.text, "a,2023-05-06,1,1,0,0,0,0,0,below-criterion,1,\n"
                                 "a,2024-05-06,1,1,0,0,0,0,0,below-criterion,1,\n"
                                 "a,2023-05-05,1,1,0,0,0,0,0,below-criterion,1,\n");
    end(table, &to);
}

/* 2 of 10 are 20 %. A row whose day cannot be read could be of any inspection of its vehicle. */
static void a_row_without_a_day_makes_no_inspection_better(void **state)
{
    (void)state;
    for (unsigned others = 0; others <= 3 * INSPECTIONS_MAX; others += 3 * INSPECTIONS_MAX) {
        page to;
        vehicle_groups *table = start_with(&to, by_day);
        assert_int_equal(add_day(table, "T-1", 12, 0), GROUP_OK);
        for (int i = 0; i < 10; i++)
            assert_int_equal(add_day(table, "T-1", i < 2 ? 18 : 12, 10), GROUP_OK);
        for (int i = 0; i < 4; i++)
            assert_int_equal(add_day(table, "T-1", 12, 11), GROUP_OK);
        for (int i = 0; i < 10; i++)
            assert_int_equal(add_day(table, "T-1", 12, 12), GROUP_OK);
        for (unsigned i = 0; i < others; i++)
            assert_int_equal(add_number(table, i), GROUP_OK);
        assert_int_equal(add_day(table, "T-2", 12, 11), GROUP_OK);
        assert_int_equal(add_day(table, "T-3", 12, 0), GROUP_OK);
        assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
        assert_ptr_equal(strstr(to.text, "T-1,,1,1,0,0,0,0,0,undetermined,1,undated-rows\n"), to.text);
        assert_non_null(strstr(to.text, "\nT-1,2024-01-10,10,8,2,0,0,2,20,out-of-service,2,undated-rows\n"));
        assert_non_null(strstr(to.text, "\nT-1,2024-01-11,4,4,0,0,0,0,0,undetermined,1,undated-rows\n"));
        assert_non_null(strstr(to.text, "\nT-1,2024-01-12,10,10,0,0,0,0,0,below-criterion,2,undated-rows\n"));
        assert_non_null(strstr(to.text, "\nT-2,2024-01-11,1,1,0,0,0,0,0,below-criterion,1,\n"));
        assert_non_null(strstr(to.text, "\nT-3,,1,1,0,0,0,0,0,below-criterion,1,\n"));
        end(table, &to);
    }
}

static void two_columns_name_a_vehicle(void **state)
{
    (void)state;
    static const char *const names[][2] = {{"North", "1"}, {"North1", ""}, {"Nort", "h1"}, {"north ", " 1"}, {"", "1"}, {"a,b", "1"}};
    page to;
    vehicle_groups *table = start_with(&to, (line_layout){.heading = {"yard", "unit"}, .names = 2});
    rodt_finding finding = finding_of(12);
    group_brake brake = group_brake_of(&finding, nowhere);
    assert_int_equal(vehicle_groups_write_header(table), GROUP_OK);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        const name_cell cells[] = {{names[i][0], strlen(names[i][0])}, {names[i][1], strlen(names[i][1])}};
        assert_int_equal(vehicle_groups_count(table, cells, &brake), GROUP_OK);
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(strchr(to.text, '\n') + 1, "North,1,2,2,0,0,0,0,0,below-criterion,1,\n"
                                                   "North1,,1,1,0,0,0,0,0,undetermined,1,\n"
                                                   "Nort,h1,1,1,0,0,0,0,0,below-criterion,1,\n"
                                                   ",1,1,1,0,0,0,0,0,undetermined,1,\n"
                                                   "\"a,b\",1,1,1,0,0,0,0,0,below-criterion,1,\n");
    assert_ptr_equal(strstr(to.text, "yard,unit,brakes,"), to.text);
    end(table, &to);
}

/* Their bytes are the same, and so is the sum of their sizes. */
static void cells_of_one_text_are_told_apart(void **state)
{
    (void)state;
    static const char *const names[][2] = {{"aa", "b"}, {"a", "ab"}, {"", "aab"}, {"aab", ""}};
    page to;
    vehicle_groups *table = start_with(&to, (line_layout){.heading = {"yard", "unit"}, .names = 2});
    rodt_finding finding = finding_of(12);
    group_brake brake = group_brake_of(&finding, nowhere);
    for (size_t i = 0; i < 400; i++) {
        const char *const *name = names[i % 4];
        const name_cell cells[] = {{name[0], strlen(name[0])}, {name[1], strlen(name[1])}};
        assert_int_equal(vehicle_groups_count(table, cells, &brake), GROUP_OK);
    }
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_string_equal(to.text, "aa,b,100,100,0,0,0,0,0,below-criterion,20,\n"
                                 "a,ab,100,100,0,0,0,0,0,below-criterion,20,\n"
                                 ",aab,100,100,0,0,0,0,0,undetermined,20,\n"
                                 "aab,,100,100,0,0,0,0,0,undetermined,20,\n");
    end(table, &to);
}

/* Of every number of rows that can wait. */
static void a_row_is_of_the_vehicle_before_it_without_a_name(void **state)
{
    (void)state;
    page to;
    char line[64];
    for (unsigned rows = 1; rows < 200; rows++) {
        vehicle_groups *table = start(&to);
        rodt_finding finding = finding_of(12);
        group_brake brake = group_brake_of(&finding, nowhere);
        for (const char *name = "abc"; *name != '\0'; name++) {
            assert_int_equal(add_bytes(table, name, 1, &finding, nowhere), GROUP_OK);
            for (unsigned i = 1; i < rows; i++)
                assert_int_equal(vehicle_groups_count_same(table, &brake), GROUP_OK);
        }
        assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
        assert_int_equal(to.lines, 3);
        snprintf(line, sizeof line, "b,%u,%u,0,0,0,0,0,", rows, rows);
        assert_memory_equal(strchr(to.text, '\n') + 1, line, strlen(line));
        end(table, &to);
    }
}

/* Days of one vehicle are all in one file, so its hash cannot split them. */
static void too_many_inspections_of_one_vehicle_are_refused(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start_with(&to, by_day);
    for (int i = 1; i <= 31; i++)
        assert_int_equal(add_day(table, "T-1", 12, i), GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_E_TOO_MANY);
    end(table, &to);
}

/* Rows wait for each other: with few more than fit, the end is the first to know. */
static void a_folder_that_is_not_there_is_told(void **state)
{
    (void)state;
    for (unsigned more = 1; more <= 100; more += 99) {
        page to;
        vehicle_groups *table = start(&to);
        assert_int_equal(setenv("TMPDIR", "/nowhere/at/all", 1), 0);
        group_status status = GROUP_OK;
        for (unsigned i = 0; i < INSPECTIONS_MAX + more && status == GROUP_OK; i++)
            status = add_number(table, i);
        assert_int_equal(status, more == 1 ? GROUP_OK : GROUP_E_DISK);
        if (more == 1)
            assert_int_equal(vehicle_groups_finish(table), GROUP_E_DISK);
        assert_int_equal(unsetenv("TMPDIR"), 0);
        assert_int_equal(vehicle_groups_reason(table), ENOENT);
        end(table, &to);
    }
}

/* Names that are too long to wait come in their turn, also right behind a row of their own. */
static void long_names_keep_their_place(void **state)
{
    (void)state;
    static const size_t sizes[] = {3, 61, 62, 63, 64, 65, 3, 65, 65, 64, 64, 62, 300, 1};
    static const char *const lines[] = {"3,2", "61,1", "62,2", "63,1", "64,3", "65,3", "300,1", "1,1"};
    page to;
    char name[300];
    vehicle_groups *table = start(&to);
    memset(name, 'x', sizeof name);
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
        assert_int_equal(add_bytes(table, name, sizes[i], &(rodt_finding){.verdict = RODT_VERDICT_UNDETERMINED}, nowhere),
                         GROUP_OK);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    const char *at = to.text;
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        const size_t size = strcspn(at, ",");
        char line[16];
        snprintf(line, sizeof line, "%zu,%c", size, at[size + 1]);
        assert_string_equal(line, lines[i]);
        at = strchr(at, '\n') + 1;
    }
    end(table, &to);
}

static void a_sink_that_refuses_stops_the_work(void **state)
{
    (void)state;
    page to;
    vehicle_groups *table = start(&to);
    assert_int_equal(add(table, "a", 12), GROUP_OK);
    to.refuses = true;
    assert_int_equal(vehicle_groups_write_header(table), GROUP_E_WRITE);
    assert_int_equal(vehicle_groups_finish(table), GROUP_E_WRITE);
    end(table, &to);
    table = start(&to);
    assert_int_equal(vehicle_groups_finish(table), GROUP_OK);
    assert_int_equal(to.lines, 0);
    end(table, &to);
    vehicle_groups_close(NULL);
}

static void each_fault_has_a_sentence(void **state)
{
    (void)state;
    assert_null(group_sentence(GROUP_OK));
    for (int i = GROUP_E_MEMORY; i <= GROUP_E_BRAKES; i++)
        assert_non_null(group_sentence((group_status)i));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_in_any_order_make_lines_in_the_order_of_first_appearance),
        cmocka_unit_test(rows_of_any_names_are_counted),
        cmocka_unit_test(names_that_differ_anywhere_are_told_apart),
        cmocka_unit_test(names_of_one_hash_are_told_apart),
        cmocka_unit_test(what_is_odd_about_the_rows_is_said),
        cmocka_unit_test(keys_are_bytes_and_quoted_where_they_must_be),
        cmocka_unit_test(spellings_of_one_vehicle_are_one),
        cmocka_unit_test(blanks_name_no_vehicle),
        cmocka_unit_test(the_hash_is_the_published_one),
        cmocka_unit_test(no_seed_changes_the_lines),
        cmocka_unit_test(what_does_not_fit_in_memory_waits_on_disk),
        cmocka_unit_test(what_was_remarked_on_is_kept_on_disk),
        cmocka_unit_test(each_day_is_an_inspection),
        cmocka_unit_test(days_of_several_years_are_told_apart),
        cmocka_unit_test(a_row_without_a_day_makes_no_inspection_better),
        cmocka_unit_test(two_columns_name_a_vehicle),
        cmocka_unit_test(cells_of_one_text_are_told_apart),
        cmocka_unit_test(a_row_is_of_the_vehicle_before_it_without_a_name),
        cmocka_unit_test(too_many_inspections_of_one_vehicle_are_refused),
        cmocka_unit_test(a_folder_that_is_not_there_is_told),
        cmocka_unit_test(long_names_keep_their_place),
        cmocka_unit_test(a_sink_that_refuses_stops_the_work),
        cmocka_unit_test(each_fault_has_a_sentence),
    };
    return cmocka_run_group_tests_name("by", tests, NULL, NULL);
}
