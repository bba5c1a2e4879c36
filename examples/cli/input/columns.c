/* SPDX-License-Identifier: Apache-2.0 */
/* Which column of a file, or which member of a JSON object, holds which field of a wheel end. */
#include "input/columns.h"
#include "input/text_file.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"

#include <stdio.h>
#include <string.h>

/* --- Options ------------------------------------------------------------------------------------------ */

static bool is_name_of(const column_request *request, int field, const char *text, size_t size)
{
    const char *name = rodt_field_name((rodt_field)field);
    return (request->fields & FIELD_BIT(field)) != 0 && strlen(name) == size && memcmp(name, text, size) == 0;
}

/* Names on the command line are the fields themselves, so aliases are no names there. */
static rodt_field find_name(const column_request *request, const char *text, size_t size)
{
    for (int field = 0; field < RODT_FIELD_END; field++)
        if (is_name_of(request, field, text, size))
            return (rodt_field)field;
    return RODT_FIELD_NONE;
}

static int refuse_name(const column_request *request, const char *value)
{
    char names[300] = "";
    for (int field = 0; field < RODT_FIELD_END; field++) {
        size_t used = strlen(names);
        if ((request->fields & FIELD_BIT(field)) != 0)
            snprintf(names + used, sizeof names - used, "%s%s", used > 0 ? ", " : "",
                     rodt_field_name((rodt_field)field));
    }
    print_error("--column %s: FIELD=HEADING is expected, such as date=\"Inspected on\"", value);
    return print_error("the fields are %s", names);
}

int column_request_read(const command_line *from, size_t option, column_request *request)
{
    for (size_t i = 0; i < from->given_count; i++) {
        if (from->given[i].option != option)
            continue;
        const char *value = from->given[i].value;
        size_t size = strcspn(value, "=");
        rodt_field field = value[size] == '=' ? find_name(request, value, size) : RODT_FIELD_NONE;
        if (field == RODT_FIELD_NONE)
            return refuse_name(request, value);
        if (request->heading[field] != NULL)
            return print_error("--column names %s twice", rodt_field_name(field));
        request->heading[field] = value + size + 1;
    }
    return STATUS_CONTINUE;
}

/* --- Headings ----------------------------------------------------------------------------------------- */

static bool is_empty(const char *heading, size_t size) { return rodt_heading_equal(heading, size, "", 0); }

/* True if the field has a heading of its own on the command line. */
static bool is_given(const column_request *request, rodt_field field)
{
    return request->heading[field] != NULL && request->heading[field][0] != '\0';
}

static bool is_wanted(const column_request *request, rodt_field field)
{
    const char *given = request->heading[field];
    return given != NULL ? given[0] != '\0' : (request->fields & FIELD_BIT(field)) != 0;
}

static bool is_heading_of(const column_request *request, rodt_field field, const char *heading, size_t size)
{
    const char *given = request->heading[field];
    RODT_ENUM32(rodt_field) found = RODT_FIELD_NONE;
    if (!is_wanted(request, field) || is_empty(heading, size))
        return false;
    return given != NULL ? rodt_heading_equal(heading, size, given, strlen(given))
                         : rodt_field_find_n(heading, size, &found) == RODT_OK && found == (uint32_t)field;
}

void columns_heading(const csv_record *header, size_t column, char text[COLUMN_TEXT_SIZE])
{
    size_t size = csv_text(header, column, text, COLUMN_TEXT_SIZE);
    if (size == CSV_NO_FIT || strlen(text) != size)
        text[0] = '\0';
}

rodt_field columns_field(const column_request *request, const char *heading, size_t size)
{
    for (int field = 0; field < RODT_FIELD_END; field++)
        if (is_heading_of(request, (rodt_field)field, heading, size))
            return (rodt_field)field;
    return RODT_FIELD_NONE;
}

rodt_field columns_meant(const column_request *request, const char *heading, size_t size)
{
    rodt_field field = rodt_field_meant(heading, size);
    if (field == RODT_FIELD_NONE || (request->fields & FIELD_BIT(field)) == 0 || request->heading[field] != NULL)
        return RODT_FIELD_NONE;
    return field;
}

static bool names_differ(const column_request *request, rodt_field field)
{
    const char *given = request->heading[field];
    for (int other = 0; is_given(request, field) && other < RODT_FIELD_END; other++)
        if (other != (int)field && is_heading_of(request, (rodt_field)other, given, strlen(given))) {
            print_error("one member cannot be both %s and %s", rodt_field_name(field),
                        rodt_field_name((rodt_field)other));
            return false;
        }
    return true;
}

bool columns_of_members(columns *found, const column_request *request)
{
    memset(found, 0, sizeof *found);
    for (int field = 0; field < RODT_FIELD_END; field++) {
        found->column[field] = COLUMN_NONE;
        if (is_given(request, (rodt_field)field))
            snprintf(found->heading[field], COLUMN_TEXT_SIZE, "%s", request->heading[field]);
        if (!names_differ(request, (rodt_field)field))
            return false;
    }
    return true;
}

/* --- What is wrong with a header line ----------------------------------------------------------------- */

static bool is_utf8(const char *text, size_t size)
{
    size_t bytes = 1;
    for (size_t i = 0; i < size && bytes > 0; i += bytes)
        bytes = utf8_bytes(text + i, size - i);
    return bytes > 0;
}

/* Another separator or another encoding explains most headings that are not found. */
static void print_hints(const csv_record *header, char separator)
{
    static const struct {
        char separator;
        const char *name;
        const char *value;
    } others[] = {{';', TO_SAY("semicolons"), "';'"}, {'\t', TO_SAY("tabs"), "tab"},
                  {'|', TO_SAY("upright strokes"), "'|'"}, {',', TO_SAY("commas"), "','"}};
    for (size_t i = 0; i < COUNT_OF(others); i++) {
        if (others[i].separator == separator || !memchr(header->bytes, others[i].separator, header->size))
            continue;
        print_error("the header line holds %s: is it --separator %s?", say(others[i].name), others[i].value);
        break;
    }
    if (!is_utf8(header->bytes, header->size))
        print_error("the header line is not UTF-8: try --encoding windows-1252");
}

/* As many headings as a message can hold. */
static void list_headings(const csv_record *header)
{
    char list[800] = "";
    char text[COLUMN_TEXT_SIZE];
    char shown[SHORTENED_SIZE];
    size_t i = 0;
    for (size_t used = 0; i < header->count && used + sizeof shown + 8 < sizeof list; i++) {
        if (csv_text(header, i, text, sizeof text) == CSV_NO_FIT)
            memcpy(text, "...", 4);
        snprintf(list + used, sizeof list - used, "%s\"%s\"", i > 0 ? ", " : "", shorten(text, shown));
        used = strlen(list);
    }
    print_error(i < header->count ? say("the headings are %s and more") : say("the headings are %s"), list);
}

static bool refuse_missing(const column_request *request, const csv_record *header, char separator, rodt_field field)
{
    const char *name = rodt_field_name(field);
    if (request->heading[field] != NULL)
        print_error("there is no heading \"%.200s\" (--column %s)", request->heading[field], name);
    else
        print_error("there is no column \"%s\"; if it has another heading, say --column %s=HEADING", name, name);
    list_headings(header);
    print_hints(header, separator);
    return false;
}

static bool refuse_two(const csv_record *header, rodt_field field, size_t a, size_t b)
{
    char text[COLUMN_TEXT_SIZE];
    char shown[2][SHORTENED_SIZE];
    columns_heading(header, a, text);
    shorten(text, shown[0]);
    columns_heading(header, b, text);
    shorten(text, shown[1]);
    print_error("two columns could be %s: column %zu \"%s\" and column %zu \"%s\"; rename one, or name one with "
                "--column %s=HEADING",
                rodt_field_name(field), a + 1, shown[0], b + 1, shown[1], rodt_field_name(field));
    return false;
}

/* --- Columns ------------------------------------------------------------------------------------------ */

static bool find_column(columns *found, const column_request *request, const csv_record *header, rodt_field field)
{
    char text[COLUMN_TEXT_SIZE];
    size_t *column = &found->column[field];
    *column = COLUMN_NONE;
    for (size_t i = 0; is_wanted(request, field) && i < header->count; i++) {
        columns_heading(header, i, text);
        if (!is_heading_of(request, field, text, strlen(text)))
            continue;
        if (*column != COLUMN_NONE)
            return refuse_two(header, field, *column, i);
        *column = i;
        memcpy(found->heading[field], text, sizeof text);
    }
    return true;
}

static bool columns_differ(const columns *found)
{
    for (int a = 0; a < RODT_FIELD_END; a++)
        for (int b = a + 1; b < RODT_FIELD_END; b++)
            if (found->column[a] != COLUMN_NONE && found->column[a] == found->column[b]) {
                print_error("one column cannot be both %s and %s", rodt_field_name((rodt_field)a),
                            rodt_field_name((rodt_field)b));
                return false;
            }
    return true;
}

/* A heading of the rule set by which the row would be judged. */
static bool is_rule_set(const char *heading)
{
    static const char *const headings[] = {"rules", "rule set", "ruleset", "law"};
    for (size_t i = 0; i < COUNT_OF(headings); i++) {
        if (rodt_heading_equal(heading, strlen(heading), headings[i], strlen(headings[i])))
            return true;
    }
    return false;
}

/* Names columns that would change verdicts if they were read. */
static void note_meant(const columns *found, const column_request *request, const csv_record *header)
{
    char text[COLUMN_TEXT_SIZE];
    char shown[SHORTENED_SIZE];
    for (size_t i = 0; i < header->count; i++) {
        columns_heading(header, i, text);
        rodt_field field = columns_meant(request, text, strlen(text));
        if (is_rule_set(text))
            print_error("the column \"%s\" is not read: one rule set judges all rows, --rules ID; give the rows of "
                        "each in a file of their own", shorten(text, shown));
        if (field == RODT_FIELD_NONE || found->column[field] != COLUMN_NONE ||
            columns_field(request, text, strlen(text)) != RODT_FIELD_NONE)
            continue;
        const char *name = rodt_field_name(field);
        print_error("the column \"%s\" is not read; if it is the %s of the test, say --column %s=\"%s\", otherwise "
                    "--column %s=",
                    shorten(text, shown), name, name, shown, name);
    }
}

bool columns_find(columns *found, const column_request *request, const csv_record *header, char separator)
{
    memset(found, 0, sizeof *found);
    if (!text_file_begins(header))
        return false;
    if (header->bad_quotes) {
        print_error("the header line is not CSV: a quote is not closed, or not at the end of a cell");
        return false;
    }
    for (int field = 0; field < RODT_FIELD_END; field++)
        if (!find_column(found, request, header, (rodt_field)field))
            return false;
    for (int field = 0; field < RODT_FIELD_END; field++) {
        bool needed = (request->needed & FIELD_BIT(field)) != 0 || is_given(request, (rodt_field)field);
        if (needed && found->column[field] == COLUMN_NONE)
            return refuse_missing(request, header, separator, (rodt_field)field);
    }
    if (!columns_differ(found))
        return false;
    note_meant(found, request, header);
    return true;
}

bool columns_are_headings(const column_request *request, const csv_record *record)
{
    char text[COLUMN_TEXT_SIZE];
    uint32_t missing = request->needed;
    for (int field = 0; field < RODT_FIELD_END; field++)
        missing |= is_given(request, (rodt_field)field) ? FIELD_BIT(field) : 0;
    for (size_t i = 0; i < record->count && missing != 0; i++) {
        columns_heading(record, i, text);
        rodt_field field = columns_field(request, text, strlen(text));
        missing &= field == RODT_FIELD_NONE ? missing : ~FIELD_BIT(field);
    }
    return missing == 0;
}

bool columns_find_heading(const csv_record *header, const char *heading, const char *option, size_t *column)
{
    char text[COLUMN_TEXT_SIZE];
    size_t count = 0;
    size_t size = strlen(heading);
    for (size_t i = 0; i < header->count && !is_empty(heading, size); i++) {
        columns_heading(header, i, text);
        if (!rodt_heading_equal(text, strlen(text), heading, size))
            continue;
        *column = i;
        count++;
    }
    if (count == 1)
        return true;
    print_error(count == 0 ? TO_SAY("there is no heading \"%.200s\" (%s)")
                           : TO_SAY("two columns have the heading \"%.200s\" (%s)"), heading, option);
    list_headings(header);
    return false;
}

/* --- The first row ------------------------------------------------------------------------------------ */

static bool check_first_unit(const char *text, const char *what)
{
    char shown[SHORTENED_SIZE];
    size_t size = strlen(text);
    shorten(text, shown);
    if (rodt_unit_is_vehicle(text, size)) {
        print_error("the %s \"unit\" names vehicles (\"%s\"), so it is not read as the unit of the lengths", what,
                    shown);
        return false;
    }
    print_error("the %s \"unit\" holds \"%s\", which is no unit of lengths; if it names vehicles, add --column unit=",
                what, shown);
    return true;
}

bool columns_check_first(const column_request *request, rodt_field field, const char *text)
{
    char shown[SHORTENED_SIZE];
    const char *what = request->members ? say("member") : say("column");
    if (text == NULL || request->heading[field] != NULL || rodt_field_accepts(field, text, strlen(text)))
        return true;
    if (field == RODT_FIELD_UNIT)
        return check_first_unit(text, what);
    const char *name = rodt_field_name(field);
    print_error("the %s \"%s\" holds \"%s\", which cannot be read as %s; if it is about something else, add "
                "--column %s=",
                what, name, shorten(text, shown), name, name);
    return true;
}

bool columns_need_first_row(const columns *found, const column_request *request)
{
    static const rodt_field checked[] = {RODT_FIELD_UNIT, RODT_FIELD_DIVISION, RODT_FIELD_ENGINE,
                                         RODT_FIELD_SPRING_BRAKE, RODT_FIELD_DRUM};
    for (size_t i = 0; i < COUNT_OF(checked); i++)
        if (found->column[checked[i]] != COLUMN_NONE && request->heading[checked[i]] == NULL)
            return true;
    return false;
}

void columns_check_first_row(columns *found, const column_request *request, const csv_record *row)
{
    char text[COLUMN_TEXT_SIZE];
    for (int field = 0; field < RODT_FIELD_END; field++)
        if (found->column[field] < row->count && csv_text(row, found->column[field], text, sizeof text) != CSV_NO_FIT &&
            !columns_check_first(request, (rodt_field)field, text))
            found->column[field] = COLUMN_NONE;
}

/* --- Units in headings -------------------------------------------------------------------------------- */

/* The unit that a heading names, or -1. */
static int unit_of_heading(const char *heading)
{
    int unit = RODT_UNIT_END - 1;
    while (unit >= 0 && !rodt_heading_names_unit(heading, strlen(heading), (rodt_unit)unit))
        unit--;
    return unit;
}

bool columns_unit_agrees(const columns *found, rodt_unit unit)
{
    static const rodt_field lengths[] = {RODT_FIELD_RELEASED, RODT_FIELD_APPLIED, RODT_FIELD_RATED_STROKE,
                                         RODT_FIELD_MARKED_LIMIT, RODT_FIELD_DIVISION, RODT_FIELD_ARM_LENGTH};
    if (found->column[RODT_FIELD_UNIT] != COLUMN_NONE)
        return true;
    for (size_t i = 0; i < COUNT_OF(lengths); i++) {
        char shown[SHORTENED_SIZE];
        int named = unit_of_heading(found->heading[lengths[i]]);
        if (named < 0 || named == (int)unit)
            continue;
        const char *name = rodt_unit_name((rodt_unit)named);
        print_error("the heading \"%s\" names %s, but bare numbers are read in %s; say --unit %s, or rename it",
                    shorten(found->heading[lengths[i]], shown), name, rodt_unit_name(unit), name);
        return false;
    }
    return true;
}
