/* SPDX-License-Identifier: Apache-2.0 */
/* Reads chamber marks of every spelling, refuses what is none at the right column, and reads back what it wrote. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>

#include <cmocka.h>

#include <locale.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "core/common.h"
#include "rodtravel/chamber.h"
#include "support.h"

enum { MARK, OUTCOME, COLUMN, FAMILY, SIZE, SPRING, CLASS, SOURCE, COLUMNS };

static const rodt_chamber untouched = {.family = RODT_FAMILY_DD_3, .size = "77", .rated_stroke = {77, 78}};

static rodt_status status_of(const char *outcome)
{
    static const struct {
        const char *word;
        rodt_status status;
    } words[] = {{"ok", RODT_OK},
                 {"empty", RODT_E_EMPTY},
                 {"unknown", RODT_E_UNKNOWN_CHAMBER},
                 {"ambiguous", RODT_E_AMBIGUOUS},
                 {"date", RODT_E_DATE_CELL}};
    for (size_t i = 0; i < COUNT_OF(words); i++) {
        if (strcmp(words[i].word, outcome) == 0)
            return words[i].status;
    }
    fail_msg("\"%s\" is no outcome", outcome);
    return RODT_E_INTERNAL;
}

static bool is_bare(const rodt_chamber *chamber)
{
    static const uint64_t zero[4] = {0};
    return !rodt_length_given(chamber->rated_stroke) && !rodt_length_given(chamber->marked_limit) &&
           memcmp(chamber->reserved, zero, sizeof zero) == 0;
}

static void check_read(char *const cells[], const rodt_chamber *read)
{
    if (strcmp(rodt_family_name(read->family), cells[FAMILY]) != 0 || strcmp(read->size, cells[SIZE]) != 0 ||
        strcmp(read->spring_size, cells[SPRING]) != 0 ||
        strcmp(rodt_stroke_class_name(read->stroke_class), cells[CLASS]) != 0)
        fail_msg("\"%s\" was read as %s, \"%s\", \"%s\", %s", cells[MARK], rodt_family_name(read->family), read->size,
                 read->spring_size, rodt_stroke_class_name(read->stroke_class));
    assert_true(is_bare(read));
}

static void check_refusal(char *const cells[], const rodt_chamber *read, const rodt_error *error)
{
    assert_int_equal(error->status, status_of(cells[OUTCOME]));
    if (error->column != strtoul(cells[COLUMN], NULL, 10))
        fail_msg("\"%s\" was refused at column %u, not %s", cells[MARK], error->column, cells[COLUMN]);
    assert_true(error->text[0] != '\0' && error->text[strlen(error->text) - 1] != '.');
    assert_memory_equal(read, &untouched, sizeof untouched);
}

static void test_marks(void **state)
{
    (void)state;
    csv_file file;
    char *cells[COLUMNS];
    unsigned marks = 0;
    csv_open(&file, CASES "/chamber_marks.csv");
    assert_int_equal(csv_read(&file, cells, COLUMNS), COLUMNS);
    for (size_t count; (count = csv_read(&file, cells, COLUMNS)) > 0; marks++) {
        rodt_chamber read = untouched;
        rodt_error error = {0};
        assert_int_equal(count, COLUMNS);
        assert_true(cells[SOURCE][0] != '\0');
        rodt_status status = rodt_chamber_parse(cells[MARK], &read, &error);
        if (status != status_of(cells[OUTCOME]))
            fail_msg("\"%s\" gave status %d, not %s: %s", cells[MARK], (int)status, cells[OUTCOME], error.text);
        if (status == RODT_OK)
            check_read(cells, &read);
        else
            check_refusal(cells, &read, &error);
    }
    csv_close(&file);
    assert_true(marks > 200);
}

/* The chamber column of a file of cases, found by its heading: every cell is a mark somebody wrote. */
static void check_column(const char *path, const char *heading, unsigned least)
{
    csv_file file;
    char *cells[20];
    size_t column = 0;
    unsigned read = 0;
    csv_open(&file, path);
    size_t width = csv_read(&file, cells, COUNT_OF(cells));
    while (column < width && strcmp(cells[column], heading) != 0)
        column++;
    assert_true(column < width);
    while (csv_read(&file, cells, COUNT_OF(cells)) == width) {
        rodt_chamber chamber;
        if (rodt_chamber_parse(cells[column], &chamber, NULL) != RODT_OK)
            fail_msg("%s: \"%s\" was not read", path, cells[column]);
        read++;
    }
    csv_close(&file);
    assert_true(read >= least);
}

static void test_marks_of_wheel_ends(void **state)
{
    (void)state;
    check_column(CASES "/wheel_ends.csv", "chamber_text", 64);
}

/* Every word in every case of its letters means the same. */
static void test_case_of_letters(void **state)
{
    (void)state;
    static const char *const marks[] = {"Type 30", "T30", "24/30 LS", "clamp 36", "bolt-type C", "rotochamber 16",
                                        "roto-chamber 9", "DD-3", "20 long stroke", "12 standard", "30 std"};
    for (size_t i = 0; i < COUNT_OF(marks); i++) {
        rodt_chamber wanted;
        assert_int_equal(rodt_chamber_parse(marks[i], &wanted, NULL), RODT_OK);
        for (unsigned pattern = 0; pattern < 64; pattern++) {
            char mark[32];
            rodt_chamber read;
            size_t size = strlen(marks[i]);
            for (size_t at = 0; at <= size; at++) {
                bool letter = ((unsigned char)marks[i][at] | 32u) - 'a' < 26u;
                mark[at] = letter && (pattern >> at % 6 & 1) != 0 ? (char)(marks[i][at] ^ 32) : marks[i][at];
            }
            assert_int_equal(rodt_chamber_parse(mark, &read, NULL), RODT_OK);
            assert_memory_equal(&read, &wanted, sizeof wanted);
        }
    }
}

static void test_sizes(void **state)
{
    (void)state;
    for (unsigned size = 1; size <= 99; size++) {
        char mark[16];
        char digits[RODT_SIZE_TEXT_SIZE];
        rodt_chamber read;
        snprintf(digits, sizeof digits, "%u", size % 100);
        snprintf(mark, sizeof mark, "T%u", size);
        assert_int_equal(rodt_chamber_parse(mark, &read, NULL), RODT_OK);
        assert_string_equal(read.size, digits);
        if (size < 10)
            continue;
        snprintf(mark, sizeof mark, "%u%u", size, 109 - size < 10 ? 10 : 109 - size);
        assert_int_equal(rodt_chamber_parse(mark, &read, NULL), RODT_OK);
        assert_string_equal(read.size, digits);
        assert_int_equal(read.family, RODT_FAMILY_CLAMP);
    }
}

/* A table that takes chambers for numbers adds decimals; only zeros change nothing. */
static void test_whole_numbers(void **state)
{
    (void)state;
    static const char *const whole[] = {"30.0", "30,0", " 30.00 ", "3030.0"};
    static const char *const others[] = {"30.5", "30 .0", "30. 0", "30.0.0", "30.", ".0", "30.L", "30;0", "T30.0", "30.0 L"};
    rodt_chamber read;
    for (size_t i = 0; i < COUNT_OF(whole); i++) {
        assert_int_equal(rodt_chamber_parse(whole[i], &read, NULL), RODT_OK);
        assert_string_equal(read.size, "30");
        assert_int_equal(read.stroke_class, RODT_STROKE_CLASS_UNKNOWN);
    }
    for (size_t i = 0; i < COUNT_OF(others); i++)
        assert_int_equal(rodt_chamber_parse(others[i], &read, NULL), RODT_E_UNKNOWN_CHAMBER);
    assert_int_equal(rodt_chamber_parse("45000.0", &read, NULL), RODT_E_DATE_CELL);
}

/* Bytes that no text file of cases can hold, with the column that they stand in. */
static void test_bytes(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        size_t size;
        uint32_t column;
    } cases[] = {{"30\0", 3, 3},       {"3\0000", 3, 2},         {"\0", 1, 1},       {"30\xFF", 3, 3},
                 {"30 \xC3", 4, 4},    {"\xE2\x80" "30", 4, 1},  {"3\xC0\xB0", 3, 2}, {"30\nL", 4, 3},
                 {"30\xED\xA0\x80", 5, 3}, {"24/30\x01", 6, 6}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_chamber read = untouched;
        rodt_error error;
        assert_int_equal(rodt_chamber_parse_n(cases[i].text, cases[i].size, &read, &error), RODT_E_UNKNOWN_CHAMBER);
        assert_int_equal(error.column, cases[i].column);
        assert_memory_equal(&read, &untouched, sizeof untouched);
    }
}

/* Only the given bytes are read: the text goes on behind them. */
static void test_bounded_text(void **state)
{
    (void)state;
    rodt_chamber read;
    char exact[3] = {'3', '0', 'L'};
    assert_int_equal(rodt_chamber_parse_n(exact, sizeof exact, &read, NULL), RODT_OK);
    assert_int_equal(read.stroke_class, RODT_STROKE_CLASS_LONG);
    assert_int_equal(rodt_chamber_parse_n("9L55", 2, &read, NULL), RODT_OK);
    assert_int_equal(read.stroke_class, RODT_STROKE_CLASS_LONG);
    assert_int_equal(rodt_chamber_parse_n("30LSX", 2, &read, NULL), RODT_OK);
    assert_int_equal(rodt_chamber_parse_n("30.00", 4, &read, NULL), RODT_OK);
    assert_int_equal(read.stroke_class, RODT_STROKE_CLASS_UNKNOWN);
    assert_int_equal(rodt_chamber_parse_n("30", 0, &read, NULL), RODT_E_EMPTY);
    assert_int_equal(rodt_chamber_parse("30\r\n", &read, NULL), RODT_OK);
}

static void test_arguments(void **state)
{
    (void)state;
    rodt_chamber read = untouched;
    rodt_error error;
    assert_int_equal(rodt_chamber_parse(NULL, &read, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.status, RODT_E_ARGUMENT);
    assert_int_equal(error.column, 0);
    assert_int_equal(rodt_chamber_parse("30", NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_parse_n(NULL, 3, &read, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_stroke_class_parse("long", NULL, &error), RODT_E_ARGUMENT);
    assert_int_equal(error.column, 0);
    assert_memory_equal(&read, &untouched, sizeof untouched);
}

/* Sentences a person at the truck can use. */
static void test_sentences(void **state)
{
    (void)state;
    static const char *const cases[][2] = {
        {"C", "a letter alone can be a bolt-type size or a rated-stroke code: write \"bolt C\""},
        {"bolt 30", "a bolt-type chamber has a letter, A to G"},
        {"24-Mar", "a spreadsheet made a date of this chamber mark"},
        {"30L standard", "this names two kinds of chamber at once"},
        {"30 psi x", "psi does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
        {"30 300", "300 does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
        {"30 C", "C does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
        {"painted", "painted does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
        {"abcdefghijklmnopqrstuvwxyz",
         "abcdefghijklmnopqrst does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
        {"30\xE2\x80\x8B", "U+200B does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"},
        {"clamp", "this is not a complete chamber mark: a type number such as 30, 24/30 or 30L was expected"},
        {" ", "there is no chamber"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_chamber read;
        rodt_error error;
        assert_int_not_equal(rodt_chamber_parse(cases[i][0], &read, &error), RODT_OK);
        assert_string_equal(error.text, cases[i][1]);
    }
}

/* ---- Writing ---- */

static void check_round_trip(rodt_family family, const char *size, const char *spring, rodt_stroke_class stroke_class)
{
    char text[RODT_CHAMBER_TEXT_SIZE];
    rodt_chamber again = untouched;
    rodt_chamber chamber = {.family = family, .stroke_class = stroke_class};
    memcpy(chamber.size, size, strlen(size) + 1);
    memcpy(chamber.spring_size, spring, strlen(spring) + 1);
    assert_int_equal(rodt_chamber_format(&chamber, text, sizeof text, NULL), RODT_OK);
    if (rodt_chamber_parse(text, &again, NULL) != RODT_OK || memcmp(&again, &chamber, sizeof chamber) != 0)
        fail_msg("\"%s\" is not read back", text);
}

/* Every chamber that a mark can name: letters for bolts, doubles for clamps, a bare number without "long". */
static void test_round_trips(void **state)
{
    (void)state;
    static const char *const sizes[] = {"1", "6", "9", "12", "16", "18", "20", "24", "30", "36", "50", "99"};
    static const char *const letters[] = {"A", "B", "C", "D", "E", "F", "G"};
    for (int c = RODT_STROKE_CLASS_UNKNOWN; c <= RODT_STROKE_CLASS_LONG; c++) {
        rodt_stroke_class stroke_class = (rodt_stroke_class)c;
        for (size_t i = 0; i < COUNT_OF(letters); i++)
            check_round_trip(RODT_FAMILY_BOLT, letters[i], "", stroke_class);
        for (size_t i = 0; i < COUNT_OF(sizes); i++) {
            check_round_trip(RODT_FAMILY_ROTOCHAMBER, sizes[i], "", stroke_class);
            check_round_trip(RODT_FAMILY_DD_3, sizes[i], "", stroke_class);
            check_round_trip(RODT_FAMILY_CLAMP, sizes[i], "", stroke_class);
            if (stroke_class != RODT_STROKE_CLASS_LONG)
                check_round_trip(RODT_FAMILY_UNKNOWN, sizes[i], "", stroke_class);
            for (size_t j = 0; j < COUNT_OF(sizes); j++)
                check_round_trip(RODT_FAMILY_CLAMP, sizes[i], sizes[j], stroke_class);
        }
    }
}

static void expect_written(const rodt_chamber *chamber, const char *wanted)
{
    char text[RODT_CHAMBER_TEXT_SIZE] = "#";
    assert_int_equal(rodt_chamber_format(chamber, text, strlen(wanted), NULL), RODT_E_SPACE);
    assert_string_equal(text, "#");
    assert_int_equal(rodt_chamber_format(chamber, text, strlen(wanted) + 1, NULL), RODT_OK);
    assert_string_equal(text, wanted);
}

static void test_write(void **state)
{
    (void)state;
    expect_written(&(rodt_chamber){.size = "30"}, "30");
    expect_written(&(rodt_chamber){.family = RODT_FAMILY_CLAMP}, "clamp");
    expect_written(&(rodt_chamber){.family = RODT_FAMILY_CLAMP, .stroke_class = RODT_STROKE_CLASS_LONG, .size = "30"},
                   "clamp 30 long");
    expect_written(&(rodt_chamber){.size = "24", .spring_size = "30"}, "24/30");
    expect_written(&(rodt_chamber){.family = RODT_FAMILY_BOLT, .size = "C"}, "bolt C");
    expect_written(&(rodt_chamber){.family = RODT_FAMILY_ROTOCHAMBER, .size = "16"}, "rotochamber 16");
    expect_written(&(rodt_chamber){.family = RODT_FAMILY_DD_3, .size = "30"}, "DD-3 30");
}

static void test_write_refuses(void **state)
{
    (void)state;
    char text[RODT_CHAMBER_TEXT_SIZE] = "#";
    rodt_chamber open = {.family = RODT_FAMILY_CLAMP};
    memset(open.size, '3', sizeof open.size);
    assert_int_equal(rodt_chamber_format(&open, text, sizeof text, NULL), RODT_E_ARGUMENT);
    open = (rodt_chamber){.family = RODT_FAMILY_CLAMP, .size = "30"};
    memset(open.spring_size, '3', sizeof open.spring_size);
    assert_int_equal(rodt_chamber_format(&open, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_format(NULL, text, sizeof text, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_format(&(rodt_chamber){.size = "30"}, NULL, 9, NULL), RODT_E_ARGUMENT);
    assert_int_equal(
        rodt_chamber_format(&(rodt_chamber){.family = (rodt_family)5, .size = "30"}, text, sizeof text, NULL),
        RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_format(&(rodt_chamber){.stroke_class = (rodt_stroke_class)-1, .size = "30"},
                                         text, sizeof text, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(rodt_chamber_format(&(rodt_chamber){.stroke_class = RODT_STROKE_CLASS_ANY, .size = "30"}, text,
                                         sizeof text, NULL),
                     RODT_E_ARGUMENT);
    assert_int_equal(
        rodt_chamber_format(&(rodt_chamber){.stroke_class = RODT_STROKE_CLASS_LONG}, text, sizeof text, NULL),
        RODT_E_EMPTY);
    assert_string_equal(text, "#");
}

/* A chamber that a program filled. */
static void test_check(void **state)
{
    (void)state;
    static const char letter[] = "the size of a bolt-type chamber is a letter, A to G";
    static const char number[] = "the size of a chamber is its type number, 1 to 99, or the letter of a bolt-type chamber";
    static const char spring[] = "the size of a spring brake is its type number, 1 to 99";
    static const char mark[] = "a chamber is marked with 3/4 to 6 in";
    static const char open[] = "the text of a size is not closed by a zero byte";
    static const struct {
        rodt_chamber chamber;
        const char *field, *text; /* NULL = it is one */
    } cases[] = {
        {{.family = RODT_FAMILY_UNKNOWN}, NULL, NULL},
        {{.family = RODT_FAMILY_CLAMP, .size = "9", .spring_size = "9"}, NULL, NULL},
        {{.family = RODT_FAMILY_CLAMP, .size = "99", .spring_size = "30"}, NULL, NULL},
        {{.family = RODT_FAMILY_BOLT, .size = "A", .rated_stroke = {3, 4}, .marked_limit = {3, 4}}, NULL, NULL},
        {{.family = RODT_FAMILY_BOLT, .size = "G", .rated_stroke = {6, 1}, .marked_limit = {6, 1}}, NULL, NULL},
        {{.family = RODT_FAMILY_DD_3, .size = "30", .stroke_class = RODT_STROKE_CLASS_LONG}, NULL, NULL},
        {{.family = (rodt_family)RODT_FAMILY_END}, "chamber", "there is no such family of chambers"},
        {{.size = {'3', '0', '0', '0'}}, "chamber", open},
        {{.size = "30", .spring_size = {'3', '0', '0', '0'}}, "chamber", open},
        {{.family = RODT_FAMILY_BOLT, .size = "30"}, "chamber", letter},
        {{.family = RODT_FAMILY_BOLT, .size = "H"}, "chamber", letter},
        {{.family = RODT_FAMILY_BOLT, .size = "@"}, "chamber", letter},
        {{.family = RODT_FAMILY_BOLT, .size = "CC"}, "chamber", letter},
        {{.family = RODT_FAMILY_CLAMP, .size = "C"}, "chamber", number},
        {{.size = "0"}, "chamber", number},
        {{.size = "03"}, "chamber", number},
        {{.size = "3C"}, "chamber", number},
        {{.size = "300"}, "chamber", number},
        {{.size = "30", .spring_size = "C"}, "chamber", spring},
        {{.size = "30", .spring_size = "0"}, "chamber", spring},
        {{.stroke_class = RODT_STROKE_CLASS_ANY}, "stroke_class",
         "the stroke class of a chamber is standard, long or unknown"},
        {{.rated_stroke = {47, 64}}, "rated_stroke", mark},
        {{.rated_stroke = {385, 64}}, "rated_stroke", mark},
        {{.rated_stroke = {5, -2}}, "rated_stroke", NULL},
        {{.marked_limit = {47, 64}}, "marked_limit", mark},
        {{.marked_limit = {5, -2}}, "marked_limit", NULL},
        {{.reserved = {0, 1}}, "reserved", "the reserve of a chamber is zero"},
    };
    rodt_error error = {.status = RODT_OK};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        memset(&error, 0, sizeof error);
        assert_int_equal(rodt_chamber_check(&cases[i].chamber, &error), cases[i].field == NULL ? RODT_OK : RODT_E_ARGUMENT);
        assert_string_equal(error.field, cases[i].field == NULL ? "" : cases[i].field);
        if (cases[i].text != NULL)
            assert_string_equal(error.text, cases[i].text);
    }
    assert_int_equal(rodt_chamber_check(NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.field, "chamber");
    assert_string_equal(error.text, "a chamber is needed");
}

/* ---- Classes ---- */

static void expect_class(const char *text, rodt_stroke_class wanted)
{
    RODT_ENUM32(rodt_stroke_class) read = (rodt_stroke_class)77;
    if (rodt_stroke_class_parse_n(text, strlen(text), &read, NULL) != RODT_OK || read != wanted)
        fail_msg("\"%s\" was not read as %s", text, rodt_stroke_class_name(wanted));
}

static void test_class_words(void **state)
{
    (void)state;
    static const char *const long_words[] = {"long", "L", "LS", "long stroke", "long-stroke", "Long Stroke", " ls ", "ls\r\n"};
    static const char *const standard_words[] = {"standard", "std", "STD", "standard stroke"};
    static const char *const unknown_words[] = {"", "  ", "unknown", "UNKNOWN"};
    static const struct {
        const char *text;
        uint32_t column;
    } no_words[] = {{"lang", 1}, {"short", 1}, {"30L", 1}, {" S", 1},  {"long standard", 6}, {"long long", 6}, {"-", 1},
                    {"1", 1},    {"?", 1},     {"any", 1}, {"unknown L", 9}};
    for (size_t i = 0; i < COUNT_OF(long_words); i++)
        expect_class(long_words[i], RODT_STROKE_CLASS_LONG);
    for (size_t i = 0; i < COUNT_OF(standard_words); i++)
        expect_class(standard_words[i], RODT_STROKE_CLASS_STANDARD);
    for (size_t i = 0; i < COUNT_OF(unknown_words); i++)
        expect_class(unknown_words[i], RODT_STROKE_CLASS_UNKNOWN);
    for (size_t i = 0; i < COUNT_OF(no_words); i++) {
        RODT_ENUM32(rodt_stroke_class) read = (rodt_stroke_class)77;
        rodt_error error;
        assert_int_equal(rodt_stroke_class_parse_n(no_words[i].text, strlen(no_words[i].text), &read, &error), RODT_E_SYNTAX);
        assert_string_equal(error.text, "a stroke class is standard, long or unknown");
        assert_int_equal(error.column, no_words[i].column);
        assert_int_equal(read, 77);
    }
    assert_int_equal(rodt_stroke_class_parse_n(NULL, 0, NULL, NULL), RODT_E_ARGUMENT);
    RODT_ENUM32(rodt_stroke_class) read = RODT_STROKE_CLASS_LONG;
    assert_int_equal(rodt_stroke_class_parse("std", &read, NULL), RODT_OK);
    assert_int_equal(read, RODT_STROKE_CLASS_STANDARD);
    assert_int_equal(rodt_stroke_class_parse(NULL, &read, NULL), RODT_E_ARGUMENT);
}

/* Two sources that differ leave the strict class. */
static void test_add_class(void **state)
{
    (void)state;
    for (int a = RODT_STROKE_CLASS_UNKNOWN; a <= RODT_STROKE_CLASS_LONG; a++) {
        for (int b = RODT_STROKE_CLASS_UNKNOWN; b <= RODT_STROKE_CLASS_LONG; b++) {
            rodt_chamber chamber = {.stroke_class = (rodt_stroke_class)a};
            bool agree = a == b || a == RODT_STROKE_CLASS_UNKNOWN || b == RODT_STROKE_CLASS_UNKNOWN;
            int wanted = agree ? (a > b ? a : b) : RODT_STROKE_CLASS_STANDARD;
            assert_int_equal(rodt_chamber_add_class(&chamber, (rodt_stroke_class)b), agree);
            assert_int_equal(chamber.stroke_class, wanted);
        }
    }
}

static void test_names(void **state)
{
    (void)state;
    assert_string_equal(rodt_family_name((rodt_family)5), "");
    assert_string_equal(rodt_family_name((rodt_family)-1), "");
    assert_string_equal(rodt_family_name(RODT_FAMILY_DD_3), "DD-3");
    assert_string_equal(rodt_stroke_class_name(RODT_STROKE_CLASS_ANY), "any");
    assert_string_equal(rodt_stroke_class_name((rodt_stroke_class)4), "");
    assert_string_equal(rodt_stroke_class_name(RODT_STROKE_CLASS_STANDARD), "standard");
}

/* In Turkish, "I" has another small letter: where there is such a locale, marks are read all the same. */
static void test_locale_changes_nothing(void **state)
{
    static const char *const locales[] = {"tr_TR.UTF-8", "tr_TR.utf8", "de_DE.UTF-8", "fr_FR.UTF-8", ""};
    for (size_t i = 0; i < COUNT_OF(locales) && setlocale(LC_ALL, locales[i]) == NULL; i++)
        ;
    test_marks(state);
    assert_non_null(setlocale(LC_ALL, "C"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_marks),       cmocka_unit_test(test_marks_of_wheel_ends),
        cmocka_unit_test(test_case_of_letters), cmocka_unit_test(test_sizes),
        cmocka_unit_test(test_whole_numbers),
        cmocka_unit_test(test_bytes),       cmocka_unit_test(test_bounded_text),
        cmocka_unit_test(test_arguments),   cmocka_unit_test(test_sentences),
        cmocka_unit_test(test_round_trips), cmocka_unit_test(test_write),
        cmocka_unit_test(test_write_refuses), cmocka_unit_test(test_check), cmocka_unit_test(test_class_words),
        cmocka_unit_test(test_add_class),   cmocka_unit_test(test_names),
        cmocka_unit_test(test_locale_changes_nothing),
    };
    return cmocka_run_group_tests_name("chamber", tests, NULL, NULL);
}
