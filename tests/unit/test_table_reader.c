/* SPDX-License-Identifier: Apache-2.0 */
/* The reader of tables: the form of RFC 4180 as far as it is used, comments, places of faults. Common practice,
 * no published source, unless a test names one. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <cmocka.h>

#include "rules/limit_row.h"
#include "rules/table_parts.h"
#include "rules/table_reader.h"

enum { NAME, FIGURE, DAY, WORD };

static const table_column columns[] = {{"name", true}, {"figure", false}, {"day", false}, {"word", false}};

/* The first fault and how many there were. */
typedef struct faults {
    rodt_error first;
    unsigned count;
} faults;

static void note(void *context, const rodt_error *fault)
{
    faults *seen = context;
    if (seen->count++ == 0)
        seen->first = *fault;
}

static bool open_text(table_reader *reader, faults *seen, const char *text)
{
    memset(seen, 0, sizeof *seen);
    return rodti_table_open(reader, text, strlen(text), columns, COUNT_OF(columns), note, seen);
}

static void expect_cell(const table_reader *reader, size_t column, const char *text, uint32_t at)
{
    assert_string_equal(reader->cells[column].text, text);
    assert_int_equal(reader->cells[column].size, strlen(text));
    assert_int_equal(reader->cells[column].column, at);
}

/* Reads all rows and expects one fault. */
static void expect_fault(const char *text, uint32_t line, uint32_t column, const char *sentence)
{
    table_reader reader;
    faults seen;
    if (open_text(&reader, &seen, text)) {
        while (rodti_table_next(&reader))
            ;
    }
    assert_int_equal(seen.count, 1);
    assert_string_equal(seen.first.text, sentence);
    assert_int_equal(seen.first.status, RODT_E_TABLE);
    assert_int_equal(seen.first.line, line);
    assert_int_equal(seen.first.column, column);
    assert_false(reader.valid);
}

static void reads_rows_in_any_order_of_columns(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "# a comment, with a comma\n\nfigure,name\n1 3/4,a\n  2 ,  b c  \n"));
    assert_true(rodti_table_next(&reader));
    assert_int_equal(reader.line, 4);
    expect_cell(&reader, NAME, "a", 7);
    expect_cell(&reader, FIGURE, "1 3/4", 1);
    expect_cell(&reader, WORD, "", 0);
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, FIGURE, "2", 3);
    expect_cell(&reader, NAME, "b c", 8);
    assert_false(rodti_table_next(&reader));
    assert_true(reader.valid);
}

/* RFC 4180, section 2, rules 5 to 7 (without line breaks inside quotes). */
static void reads_quotes(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "name,figure\n\"a, \"\"b\"\"\",\"1 3/4\"\"\" \n\"\",\n\" c \",x"));
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, NAME, "a, \"b\"", 2);
    expect_cell(&reader, FIGURE, "1 3/4\"", 13);
    assert_true(rodti_table_next(&reader));
    assert_int_equal(reader.line, 4);
    expect_cell(&reader, NAME, "c", 3);
    assert_int_equal(seen.count, 1); /* line 3: the required cell is empty */
    assert_int_equal(seen.first.line, 3);
    assert_string_equal(seen.first.field, "name");
}

static void line_ends_and_byte_order_mark_do_not_count(void **state)
{
    (void)state;
    static const char *const texts[] = {"name,figure\na,2\n", "name,figure\r\na,2\r\n", "name,figure\na,2",
                                        "\xEF\xBB\xBFname,figure\r\n# x\r\n\r\n   \r\na,2"};
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        table_reader reader;
        faults seen;
        assert_true(open_text(&reader, &seen, texts[i]));
        assert_true(rodti_table_next(&reader));
        expect_cell(&reader, NAME, "a", 1);
        expect_cell(&reader, FIGURE, "2", 3);
        assert_false(rodti_table_next(&reader));
        assert_int_equal(seen.count, 0);
    }
}

static void columns_count_characters(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "name,figure\n\xC3\xA9t\xC3\xA9,x1\n"));
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, FIGURE, "x1", 5);
    rodt_length length = {7, 1};
    assert_false(rodti_table_length(&reader, FIGURE, RODT_UNIT_IN, &length));
    assert_int_equal(seen.first.column, 5);
    assert_string_equal(seen.first.field, "figure");
    assert_int_equal(length.num, 7);
}

static void faults_of_the_form(void **state)
{
    (void)state;
    expect_fault("", 0, 0, "the table is empty: there is no line that names the columns");
    expect_fault("# only\n\n", 0, 0, "the table is empty: there is no line that names the columns");
    expect_fault("name,colour\n", 1, 6, "no column is called \"colour\"");
    expect_fault("name,figure;day\na;2\n", 1, 6, "no column is called \"figure;day\"; cells must be separated by "
                                                "commas, not by semicolons");
    expect_fault("name,name\n", 1, 6, "the column \"name\" is there twice");
    expect_fault("figure,day\n", 1, 0, "the column \"name\" is missing");
    expect_fault("name,\xE2\x80\x8B" "figure\n", 1, 6, "no column is called \"U+200Bfigure\"");
    expect_fault("name,figure\na\n", 2, 0, "expected 2 cells, as many as there are columns, but there are 1");
    expect_fault("name,figure\na,b,c\n", 2, 0, "expected 2 cells, as many as there are columns, but there are 3");
    expect_fault("name,figure\na,\n ,2\n", 3, 2, "the cell is empty");
    expect_fault("name\n\"a\n", 2, 1, "the quote that opens here is not closed on its line");
    expect_fault("name\n\"\n", 2, 1, "the quote that opens here is not closed on its line");
    expect_fault("name\n\"a\"\"\n", 2, 1, "the quote that opens here is not closed on its line");
    expect_fault("name,figure\n\"a\" b,c\n", 2, 5, "expected a comma after the closing quote");
    expect_fault("name,figure\na,2\"\n", 2, 4, "a double quote inside a cell; put the whole cell in quotes and write the "
                                              "quote twice");
    expect_fault("name\na\xFF\n", 2, 2, "a byte that is no text; save the table as UTF-8");
    expect_fault("name\na\rb\n", 2, 2, "a byte that is no text; save the table as UTF-8");
    expect_fault("\xEF\xBB\xBF", 0, 0, "the table is empty: there is no line that names the columns");
    expect_fault("\xEF\xBB\xBA" "name,name\n", 1, 1, "no column is called \"\xEF\xBB\xBA" "name\"");
    expect_fault("figure\n", 1, 0, "the column \"name\" is missing");
    expect_fault("name\n\"a\xFF\"\n", 2, 3, "a byte that is no text; save the table as UTF-8");
    expect_fault("a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a,a\n", 1, 49, "more than 24 cells");
}

/* Only the given bytes are read, and none before them. */
static void a_text_has_two_ends(void **state)
{
    (void)state;
    table_reader reader;
    faults seen = {.count = 0};
    assert_false(rodti_table_open(&reader, "\xEF\xBB\xBFname\n", 2, columns, COUNT_OF(columns), note, &seen));
    assert_string_equal(seen.first.text, "a byte that is no text; save the table as UTF-8");
    static const char after_return[] = "\r\nname\na\n";
    assert_true(rodti_table_open(&reader, after_return + 1, 8, columns, COUNT_OF(columns), note, &seen));
    assert_true(rodti_table_next(&reader));
    assert_int_equal(reader.line, 3);
    assert_false(open_text(&reader, &seen, ""));
}

/* One line is no row, and the next is read. */
static void passes_over_a_line_with_a_fault(void **state)
{
    (void)state;
    static const char *const lines[] = {"a,2\"", "\"a,2", "\"a\" b,2", "a", "a,\xFF", "#REF!",
                                        "#", "#\r", "# a", "#\ta", "\r", " "};
    for (size_t i = 0; i < COUNT_OF(lines); i++) {
        char text[64];
        table_reader reader;
        faults seen;
        snprintf(text, sizeof text, "name,figure\n%s\n \"b, c\" ,1\n", lines[i]);
        assert_true(open_text(&reader, &seen, text));
        assert_true(rodti_table_next(&reader));
        expect_cell(&reader, NAME, "b, c", 3);
        assert_int_equal(seen.count, i < 6);
    }
}

static void names_each_unknown_column(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_false(open_text(&reader, &seen, "colour,name,smell\n"));
    assert_int_equal(seen.count, 2);
}

/* A column that the table does not have is an empty cell in every row. */
static void absent_columns_are_empty(void **state)
{
    (void)state;
    static const table_column optional[] = {{"a", false}, {"b", true}, {"c", false}};
    table_reader reader;
    faults seen = {.count = 0};
    rodt_pressure pressure = {7, 8};
    rodt_length length = {7, 8};
    static const rodt_pressure none = {0, 0};
    static const rodt_length no_length = {0, 0};
    assert_true(rodti_table_open(&reader, "b\nx\n", 4, optional, COUNT_OF(optional), note, &seen));
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, 0, "", 0);
    expect_cell(&reader, 1, "x", 1);
    expect_cell(&reader, 2, "", 0);
    assert_true(rodti_table_pressure(&reader, 0, &pressure));
    assert_memory_equal(&pressure, &none, sizeof none);
    assert_true(rodti_table_length(&reader, 0, RODT_UNIT_IN, &length));
    assert_memory_equal(&length, &no_length, sizeof no_length);
    pressure = (rodt_pressure){7, 8};
    assert_false(rodti_table_pressure(&reader, 1, &pressure));
    assert_int_equal(pressure.num, 7);
}

static void refuses_a_zero_byte(void **state)
{
    (void)state;
    static const char text[] = "name\na\0b\n";
    table_reader reader;
    faults seen = {0};
    assert_true(rodti_table_open(&reader, text, sizeof text - 1, columns, COUNT_OF(columns), note, &seen));
    assert_false(rodti_table_next(&reader));
    assert_int_equal(seen.count, 1);
    assert_int_equal(seen.first.column, 2);
}

/* A fault in one line does not hide the rows and the faults behind it. */
static void goes_on_after_a_fault(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "name,figure\na\nb,2\nc,3,4\nd,5\n"));
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, NAME, "b", 1);
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, NAME, "d", 1);
    assert_false(rodti_table_next(&reader));
    assert_int_equal(seen.count, 2);
}

static void a_line_has_an_end(void **state)
{
    (void)state;
    char text[TABLE_LINE_MAX + 32];
    size_t head = (size_t)snprintf(text, sizeof text, "name\n");
    memset(text + head, 'x', TABLE_LINE_MAX);
    text[head + TABLE_LINE_MAX] = '\0';
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, text));
    assert_true(rodti_table_next(&reader));
    assert_int_equal(reader.cells[NAME].size, TABLE_LINE_MAX);
    text[head + TABLE_LINE_MAX] = 'x';
    text[head + TABLE_LINE_MAX + 1] = '\0';
    expect_fault(text, 2, 0, "the line is longer than 2000 bytes");
}

static void reads_values(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "name,figure,day,word\n4/5,44.45,2021-10-14,long\nx,,,\n"));
    assert_true(rodti_table_next(&reader));
    rodt_length length;
    rodt_ratio ratio;
    rodt_date date;
    rodt_pressure pressure;
    unsigned word = 9;
    static const char *const words[] = {"any", "standard", "long"};
    assert_true(rodti_table_length(&reader, FIGURE, RODT_UNIT_MM, &length));
    assert_true(length.num == 7 && length.den == 4);
    assert_true(rodti_table_pressure(&reader, FIGURE, &pressure));
    assert_true(pressure.num == 889 && pressure.den == 20);
    assert_true(rodti_table_ratio(&reader, NAME, &ratio));
    assert_true(ratio.num == 4 && ratio.den == 5);
    assert_true(rodti_table_date(&reader, DAY, &date));
    assert_true(date.year == 2021 && date.month == 10 && date.day == 14);
    assert_true(rodti_table_word(&reader, WORD, words, COUNT_OF(words), &word));
    assert_int_equal(word, 2);
    assert_true(rodti_table_next(&reader));
    assert_true(rodti_table_length(&reader, FIGURE, RODT_UNIT_MM, &length) && !rodt_length_given(length));
    assert_true(rodti_table_date(&reader, DAY, &date) && !rodt_date_given(date));
    assert_true(rodti_table_word(&reader, WORD, words, COUNT_OF(words), &word));
    assert_int_equal(word, 0);
    assert_int_equal(seen.count, 0);
}

static void refuses_values(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "name,figure,day,word\nx,1 3/2,2021-02-30,Long\n"));
    assert_true(rodti_table_next(&reader));
    rodt_length length = {0};
    rodt_date date = {0};
    unsigned word = 9;
    static const char *const words[] = {"any", "standard", "long"};
    assert_false(rodti_table_length(&reader, FIGURE, RODT_UNIT_IN, &length));
    assert_false(rodti_table_date(&reader, DAY, &date));
    assert_int_equal(seen.count, 2);
    seen.count = 0;
    assert_false(rodti_table_word(&reader, WORD, words, COUNT_OF(words), &word));
    assert_string_equal(seen.first.text, "expected any, standard or long, found \"Long\"");
    assert_int_equal(seen.first.column, 20);
    assert_int_equal(word, 9);
    assert_false(rodt_length_given(length) || rodt_date_given(date));
}

/* A column that the table does not have has no place; its name is cut to the room of the error. */
static void faults_of_an_absent_column(void **state)
{
    (void)state;
    static const char name[] = "a_name_that_is_longer_than_every_name_of_a_column_is_and_ever_will_be";
    static const table_column wide[] = {{"name", true}, {name, false}};
    table_reader reader;
    faults seen = {.count = 0};
    const rodt_error at_three = {.status = RODT_E_SYNTAX, .column = 3, .text = "no"};
    assert_true(rodti_table_open(&reader, "name\nx\n", 7, wide, COUNT_OF(wide), note, &seen));
    assert_true(rodti_table_next(&reader));
    rodti_table_fault(&reader, 1, 1, RODT_E_TABLE, "no");
    assert_int_equal(seen.first.column, 0);
    assert_int_equal(strlen(seen.first.field), sizeof seen.first.field - 1);
    assert_memory_equal(seen.first.field, name, sizeof seen.first.field - 1);
    const char *as_long = name + sizeof name - 1 - sizeof seen.first.field;
    const table_column exact[] = {{"name", true}, {as_long, false}};
    seen.count = 0;
    reader.columns = exact;
    rodti_table_fault(&reader, 1, 1, RODT_E_TABLE, "no");
    assert_int_equal(strlen(seen.first.field), sizeof seen.first.field - 1);
    reader.columns = wide;
    seen.count = 0;
    rodti_table_value_fault(&reader, 1, &at_three);
    assert_int_equal(seen.first.column, 0);
    seen.count = 0;
    rodti_table_value_fault(&reader, 0, &at_three);
    assert_int_equal(seen.first.column, 3);
}

static void a_tab_is_text_and_other_controls_are_not(void **state)
{
    (void)state;
    table_reader reader;
    faults seen;
    assert_true(open_text(&reader, &seen, "name\na\tb\n"));
    assert_true(rodti_table_next(&reader));
    expect_cell(&reader, NAME, "a\tb", 1);
    expect_fault("name\na\x1F" "b\n", 2, 2, "a byte that is no text; save the table as UTF-8");
}

static void numbers_end_with_their_cell(void **state)
{
    (void)state;
    static const char *const wrong[] = {"99999999999", "7 psi", "1/0", "\"x1,5\""};
    static const char *const sentences[] = {
        "expected a number and nothing more", "expected a number and nothing more",
        "a fraction cannot have zero below its bar",
        "a comma can part decimals or thousands; write a point, or set the decimal comma"};
    for (size_t i = 0; i < COUNT_OF(wrong); i++) {
        char text[64];
        table_reader reader;
        faults seen;
        rodt_ratio number = {7, 8};
        snprintf(text, sizeof text, "name,figure\nx,%s\n", wrong[i]);
        assert_true(open_text(&reader, &seen, text));
        assert_true(rodti_table_next(&reader));
        assert_false(rodti_table_number(&reader, FIGURE, &number));
        assert_false(rodti_table_ratio(&reader, NAME, &number));
        assert_true(number.num == 7 && number.den == 8);
        assert_string_equal(seen.first.text, sentences[i]);
    }
}

static void a_long_cell_is_shown_by_its_beginning(void **state)
{
    (void)state;
    char text[400] = "";
    for (size_t i = 0; i + 4 < sizeof text; i += 3)
        memcpy(text + i, "\xE2\x82\xAC", 4);
    table_cell cell = {text, strlen(text), 1};
    char shown[TABLE_SHOWN_SIZE];
    rodti_table_show(&cell, shown);
    size_t size = strlen(shown);
    assert_int_equal(size, TABLE_SHOWN_SIZE - TEXT_SHOWN_SIZE + 3);
    assert_memory_equal(shown, text, size);
    memset(shown, 'x', sizeof shown);
    rodti_table_show(&(table_cell){"a ! b", 5, 1}, shown);
    assert_string_equal(shown, "a ! b");
    rodti_table_show(&(table_cell){" \t ", 3, 1}, shown);
    assert_string_equal(shown, " U+0009 ");
}

/* A row of limits with one fault is not written, whatever else of it is sound. 3 in are 76.2 mm, 2 in are 50.8. */
static void refuses_each_wrong_limit(void **state)
{
    (void)state;
    static const struct {
        const char *row, *field, *sentence; /* no field = a good row; no sentence = that of a reader of values */
    } cases[] = {
        {"clamp,24,long,3,75.7,2,50.3,2020-01-01,2020-01-01,checked", NULL, NULL},
        {"clamp,24,long,3,76.7,2,51.3,2020-01-01,,", NULL, NULL},
        {"clamp,24,long,3,,2,,,2020-01-01,", NULL, NULL},
        {"clam,24,long,3,76,2,51,,,", "family", NULL},
        {"clamp,100,long,3,76,2,51,,,", "size", "expected a type number, 1 to 99"},
        {"clamp,24,lang,3,76,2,51,,,", "class", NULL},
        {"clamp,24,long,x,76,2,51,,,", "rated_stroke", NULL},
        {"clamp,24,long,7,,2,51,,,", "rated_stroke", "a chamber is marked with 3/4 to 6 in"},
        {"clamp,24,long,3,x,2,51,,,", "rated_mm", NULL},
        {"clamp,24,long,,76,2,51,,,", "rated_mm", "millimetres without inches"},
        {"clamp,24,long,3,75.699,2,51,,,", "rated_mm", "the printed millimetres are no rounding of the inches"},
        {"clamp,24,long,3,76.701,2,51,,,", "rated_mm", "the printed millimetres are no rounding of the inches"},
        {"clamp,24,long,3,75,2,51,,,", "rated_mm", "the printed millimetres are no rounding of the inches"},
        {"clamp,24,long,3,76,x,51,,,", "limit", NULL},
        {"clamp,24,long,3,76,0,,,,", "limit", "the figure must be above zero"},
        {"clamp,24,long,3,76,3,76,,,", "limit", "a limit must be below the rated stroke"},
        {"clamp,24,long,3,76,2,x,,,", "limit_mm", NULL},
        {"clamp,24,long,3,76,2,50.299,,,", "limit_mm", "the printed millimetres are no rounding of the inches"},
        {"clamp,24,long,3,76,2,51.301,,,", "limit_mm", "the printed millimetres are no rounding of the inches"},
        {"clamp,24,long,3,76,2,51,x,,", "from", NULL},
        {"clamp,24,long,3,76,2,51,,x,", "until", NULL},
        {"clamp,24,long,3,76,2,51,2024-01-02,2024-01-01,", "until", "the last day is before the first"},
        {"clamp,24,long,3,76,2,51,,,sure", "evidence", NULL},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char text[200];
        table_reader reader;
        faults seen = {.count = 0};
        rodt_limit row = {.size = "untouched"};
        snprintf(text, sizeof text, "family,size,class,rated_stroke,rated_mm,limit,limit_mm,from,until,evidence\n%s\n",
                 cases[i].row);
        assert_true(rodti_table_open(&reader, text, strlen(text), rodti_part_kinds[PART_LIMITS].columns, LIMIT_COLUMNS,
                                     note, &seen));
        assert_true(rodti_table_next(&reader));
        assert_int_equal(rodti_table_limit(&reader, &row), cases[i].field == NULL);
        assert_string_equal(row.size, cases[i].field == NULL ? "24" : "untouched");
        assert_int_equal(seen.count, cases[i].field != NULL);
        assert_string_equal(seen.first.field, cases[i].field != NULL ? cases[i].field : "");
        if (cases[i].sentence != NULL)
            assert_string_equal(seen.first.text, cases[i].sentence);
    }
}

/* Where the two tables of a text begin. The names of a second one are looked for in 2002 lines. */
static void finds_the_parts_of_a_text(void **state)
{
    (void)state;
    enum { ROWS = 2001 };
    static char text[64 + ROWS * 2 + 64];
    static const char air[] = "check,comparison,measure\n";
    const char *const limits = "family,size,class,limit\n";
    table_part parts[PARTS + 1];
    rodt_error fault = {.status = RODT_OK};
    memset(parts, 0x5A, sizeof parts);
    assert_true(rodti_table_find_parts(limits, strlen(limits), parts, &fault));
    assert_true(parts[PART_LIMITS].text == limits && parts[PART_LIMITS].size == strlen(limits));
    assert_true(parts[PART_AIR].text == NULL && parts[PART_AIR].line == 0);
    assert_int_equal(parts[PARTS].line, 0x5A5A5A5A);
    for (int rows = ROWS - 1; rows <= ROWS; rows++) {
        size_t used = strlen(limits);
        memcpy(text, limits, used);
        for (int i = 0; i < rows; i++, used += 2)
            memcpy(text + used, "x\n", 2);
        memcpy(text + used, air, sizeof air);
        assert_true(rodti_table_find_parts(text, used + sizeof air - 1, parts, &fault));
        assert_ptr_equal(parts[PART_AIR].text, rows < ROWS ? text + used : NULL);
        assert_int_equal(parts[PART_LIMITS].size, rows < ROWS ? used : used + sizeof air - 1);
    }
    assert_true(parts[PART_AIR].text == NULL);
    assert_false(rodti_table_find_parts("family,size,class,limit\nfamily,size,class,limit\n", 48, parts, &fault));
    assert_string_equal(fault.text, "a second table of limits begins here");
    assert_int_equal(fault.line, 2);
    static const char no_mark[] = "\xEF\xBB\xBA#\nfamily,size,class,limit\n";
    assert_false(rodti_table_find_parts(no_mark, sizeof no_mark - 1, parts, &fault));
    assert_int_equal(fault.line, 2);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(reads_rows_in_any_order_of_columns),
        cmocka_unit_test(faults_of_an_absent_column),
        cmocka_unit_test(a_tab_is_text_and_other_controls_are_not),
        cmocka_unit_test(numbers_end_with_their_cell),
        cmocka_unit_test(reads_quotes),
        cmocka_unit_test(line_ends_and_byte_order_mark_do_not_count),
        cmocka_unit_test(columns_count_characters),
        cmocka_unit_test(faults_of_the_form),
        cmocka_unit_test(refuses_a_zero_byte),
        cmocka_unit_test(goes_on_after_a_fault),
        cmocka_unit_test(a_line_has_an_end),
        cmocka_unit_test(reads_values),
        cmocka_unit_test(refuses_values),
        cmocka_unit_test(a_long_cell_is_shown_by_its_beginning),
        cmocka_unit_test(refuses_each_wrong_limit),
        cmocka_unit_test(a_text_has_two_ends),
        cmocka_unit_test(passes_over_a_line_with_a_fault),
        cmocka_unit_test(names_each_unknown_column),
        cmocka_unit_test(absent_columns_are_empty),
        cmocka_unit_test(finds_the_parts_of_a_text),
    };
    return cmocka_run_group_tests_name("table_reader", tests, NULL, NULL);
}
