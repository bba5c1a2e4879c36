/* SPDX-License-Identifier: Apache-2.0 */
/* The headings of a file for `rodtravel batch`: which column holds what, and is that certain? */
#include "batch/batch.h"
#include "ui/compiler.h"
#include "ui/message.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* Other headings that say the same. A date that is not seen would let today's law judge in silence, so its
 * usual names are known; all else is named by --column. */
static const struct {
    batch_word word;
    const char *heading;
} other_names[] = {{BATCH_DATE, "insp date"},
                   {BATCH_DATE, "inspection date"},
                   {BATCH_DATE, "date of inspection"}};

static bool is_blank(char sign)
{
    return sign == ' ' || sign == '\t' || sign == '\r' || sign == '\n' || sign == '_' || sign == '-';
}

/* Brings a heading into the form in which headings are compared: lower case (of ASCII), no blanks at the
 * ends, one blank for each run of blanks, underscores and hyphens. Never longer than it was. */
static void normalize(char *text)
{
    const char *from = strncmp(text, "\xEF\xBB\xBF", 3) == 0 ? text + 3 : text;
    char *to = text;
    for (; *from != '\0'; from++) {
        if (!is_blank(*from))
            *to++ = (char)(*from >= 'A' && *from <= 'Z' ? *from + ('a' - 'A') : *from);
        else if (to > text && to[-1] != ' ')
            *to++ = ' ';
    }
    if (to > text && to[-1] == ' ')
        to--;
    *to = '\0';
}

/* A heading that cannot be compared (too long, or with a zero byte) is none that anybody asks for. */
static void heading_of(const csv_record *record, size_t column, char text[BATCH_TEXT_SIZE])
{
    size_t size = csv_text(record, column, text, BATCH_TEXT_SIZE);
    if (size == CSV_NO_FIT || strlen(text) != size)
        text[0] = '\0';
    normalize(text);
}

static bool is_heading_of(const char *heading, batch_word word, const char *wanted)
{
    if (strcmp(heading, wanted) == 0)
        return true;
    for (size_t i = 0; i < COUNT_OF(other_names); i++)
        if (other_names[i].word == word && strcmp(heading, other_names[i].heading) == 0)
            return true;
    return false;
}

static bool say_two_columns(const csv_record *record, batch_word word, size_t a, size_t b)
{
    char text[BATCH_TEXT_SIZE];
    char shown[2][BATCH_SHOWN_SIZE];
    heading_of(record, a, text);
    batch_show(text, shown[0]);
    heading_of(record, b, text);
    batch_show(text, shown[1]);
    print_error("two columns could be %s: column %zu \"%s\" and column %zu \"%s\"; rename one, or name one with "
              "--column %s=HEADING",
              batch_word_name(word), a + 1, shown[0], b + 1, shown[1], batch_word_name(word));
    return false;
}

/* A word is looked for by its own name, or by the heading that was given for it, which may be none. */
static bool is_heading_for(const char *heading, batch_word word, const char *given)
{
    char wanted[BATCH_TEXT_SIZE];
    snprintf(wanted, sizeof wanted, "%s", given != NULL ? given : batch_word_name(word));
    normalize(wanted);
    if (wanted[0] == '\0')
        return false;
    return given != NULL ? strcmp(heading, wanted) == 0 : is_heading_of(heading, word, wanted);
}

/* The name of a word in the form in which headings are compared. */
static bool is_own_name(const char *heading, batch_word word)
{
    const char *name = batch_word_name(word);
    while (*name != '\0' && *heading == (*name == '_' ? ' ' : *name)) {
        name++;
        heading++;
    }
    return *name == *heading;
}

batch_word batch_header_word(const batch_header *header, const batch_options *options, char *name)
{
    normalize(name);
    for (int word = 0; word < BATCH_POSITION && name[0] != '\0'; word++) {
        bool own = word < BATCH_ASKED && options->heading[word] == NULL;
        if (own ? is_own_name(name, (batch_word)word) || is_heading_of(name, (batch_word)word, "")
                : strcmp(name, header->heading[word]) == 0)
            return (batch_word)word;
    }
    return BATCH_READ;
}

/* Finds the column of a word. False: there are two of them. */
static bool find_column(const csv_record *record, batch_word word, const char *given, size_t *column)
{
    char heading[BATCH_TEXT_SIZE];
    *column = BATCH_NO_COLUMN;
    for (size_t i = 0; i < record->count; i++) {
        heading_of(record, i, heading);
        bool found = is_heading_for(heading, word, given);
        if (found && *column != BATCH_NO_COLUMN)
            return say_two_columns(record, word, *column, i);
        if (found)
            *column = i;
    }
    return true;
}

/* RFC 3629, section 4. */
size_t utf8_bytes(const char *text, size_t size)
{
    unsigned char lead = (unsigned char)*text;
    unsigned char low = lead == 0xE0 ? 0xA0 : lead == 0xF0 ? 0x90 : 0x80;
    unsigned char high = lead == 0xED ? 0x9F : lead == 0xF4 ? 0x8F : 0xBF;
    size_t bytes = lead < 0x80 ? 1 : lead >= 0xC2 && lead < 0xE0 ? 2 : (lead & 0xF0) == 0xE0 ? 3
                   : lead >= 0xF0 && lead < 0xF5                 ? 4 : 0;
    if (bytes > size || (bytes > 1 && ((unsigned char)text[1] < low || (unsigned char)text[1] > high)))
        return 0;
    for (size_t i = 2; i < bytes; i++)
        if (((unsigned char)text[i] & 0xC0) != 0x80)
            return 0;
    return bytes;
}

static bool is_utf8(const char *text, size_t size)
{
    size_t bytes = 1;
    for (size_t i = 0; i < size && bytes > 0; i += bytes)
        bytes = utf8_bytes(text + i, size - i);
    return bytes > 0;
}

/* What may help somebody whose headings were not found. */
static void hint(const csv_record *record, const batch_options *options)
{
    static const struct {
        char sign;
        const char *shown;
        const char *value;
    } others[] = {{';', "semicolons", "';'"}, {'\t', "tabs", "tab"}, {'|', "upright strokes", "'|'"},
                  {',', "commas", "','"}};
    for (size_t i = 0; i < COUNT_OF(others); i++) {
        if (others[i].sign == options->separator || !memchr(record->bytes, others[i].sign, record->size))
            continue;
        print_error("the header line holds %s: is it --separator %s?", others[i].shown, others[i].value);
        break;
    }
    if (!is_utf8(record->bytes, record->size))
        print_error("the header line is not UTF-8: try --encoding windows-1252");
}

/* As many headings as a message can hold. */
static void list_headings(const csv_record *record)
{
    char list[800] = "";
    char text[BATCH_TEXT_SIZE];
    char shown[BATCH_SHOWN_SIZE];
    size_t i = 0;
    for (size_t used = 0; i < record->count && used + sizeof shown + 8 < sizeof list; i++) {
        if (csv_text(record, i, text, sizeof text) == CSV_NO_FIT)
            memcpy(text, "...", 4);
        snprintf(list + used, sizeof list - used, "%s\"%s\"", i > 0 ? ", " : "", batch_show(text, shown));
        used = strlen(list);
    }
    print_error("the headings are %s%s", list, i < record->count ? " and more" : "");
}

static bool say_missing(const csv_record *record, const batch_options *options, batch_word word)
{
    const char *name = batch_word_name(word);
    if (options->heading[word] != NULL)
        print_error("there is no heading \"%.200s\" (--column %s)", options->heading[word], name);
    else
        print_error("there is no column \"%s\"; if it has another heading, say --column %s=HEADING", name, name);
    list_headings(record);
    hint(record, options);
    return false;
}

bool batch_header_find(const csv_record *record, const char *heading, const char *option, size_t *column)
{
    char wanted[BATCH_TEXT_SIZE];
    char there[BATCH_TEXT_SIZE];
    size_t count = 0;
    snprintf(wanted, sizeof wanted, "%s", heading);
    normalize(wanted);
    for (size_t i = 0; i < record->count; i++) {
        heading_of(record, i, there);
        if (strcmp(there, wanted) != 0)
            continue;
        *column = i;
        count++;
    }
    if (count == 1)
        return true;
    print_error(count == 0 ? "there is no heading \"%.200s\" (%s)" : "two columns have the heading \"%.200s\" (%s)",
             heading, option);
    list_headings(record);
    return false;
}

/* Finds the column of a word if it is to be looked for. False: it must be there and is not, or twice. */
static bool take_column(batch_header *header, const csv_record *record, const batch_options *options,
                        batch_word word)
{
    const char *given = options->heading[word];
    size_t column = BATCH_NO_COLUMN;
    bool asked = given != NULL && given[0] != '\0';
    bool counted = word == BATCH_POSITION && options->by != NULL && given == NULL;
    if ((word < BATCH_ASKED || asked || counted) && !find_column(record, word, given, &column))
        return false;
    if (column == BATCH_NO_COLUMN && (word < BATCH_NEEDED || asked))
        return say_missing(record, options, word);
    if (word < BATCH_READ)
        header->column[word] = column;
    return true;
}

static bool find_columns(batch_header *header, const csv_record *record, const batch_options *options)
{
    for (int word = 0; word < BATCH_WORDS; word++)
        if (!take_column(header, record, options, (batch_word)word))
            return false;
    return true;
}

static bool columns_differ(const batch_header *header)
{
    for (int a = 0; a < BATCH_READ; a++)
        for (int b = a + 1; b < BATCH_READ; b++)
            if (header->column[a] != BATCH_NO_COLUMN && header->column[a] == header->column[b]) {
                print_error("one column cannot be both %s and %s", batch_word_name((batch_word)a),
                          batch_word_name((batch_word)b));
                return false;
            }
    return true;
}

/* The unit that a word of a heading names, or -1. "in" is a unit at the end only: "in (mm)". */
static int unit_named(const char *word, size_t size, bool last)
{
    static const struct {
        const char *word;
        rodt_unit unit;
    } units[] = {{"mm", RODT_UNIT_MM}, {"millimetres", RODT_UNIT_MM}, {"millimeters", RODT_UNIT_MM},
                 {"cm", RODT_UNIT_CM}, {"centimetres", RODT_UNIT_CM}, {"centimeters", RODT_UNIT_CM},
                 {"po", RODT_UNIT_INCH}, {"pouces", RODT_UNIT_INCH},  {"inches", RODT_UNIT_INCH},
                 {"inch", RODT_UNIT_INCH}};
    for (size_t i = 0; i < COUNT_OF(units); i++)
        if (strlen(units[i].word) == size && memcmp(units[i].word, word, size) == 0)
            return (int)units[i].unit;
    return last && size == 2 && memcmp(word, "in", 2) == 0 ? (int)RODT_UNIT_INCH : -1;
}

static int unit_of_heading(const char *heading)
{
    static const char between[] = " ()[]{}/,.;:=";
    int unit = -1;
    while (*heading != '\0' && unit < 0) {
        heading += strspn(heading, between);
        size_t size = strcspn(heading, between);
        const char *behind = heading + size;
        unit = unit_named(heading, size, behind[strspn(behind, between)] == '\0');
        heading = behind;
    }
    return unit;
}

/* "Released (mm)" over numbers that would be read as inches: somebody forgot something. */
bool batch_header_units_agree(const batch_header *header, const batch_options *options)
{
    static const char *const names[] = {"in", "mm", "cm"};
    static const batch_word lengths[] = {BATCH_RELEASED, BATCH_APPLIED, BATCH_RATED_STROKE,
                                         BATCH_MARKED_LIMIT, BATCH_DIVISION};
    if (header->column[BATCH_UNIT] != BATCH_NO_COLUMN)
        return true;
    for (size_t i = 0; i < COUNT_OF(lengths); i++) {
        int unit = unit_of_heading(header->heading[lengths[i]]);
        if (unit < 0 || unit == (int)options->style.unit)
            continue;
        char shown[BATCH_SHOWN_SIZE];
        print_error("the heading \"%s\" names %s, but bare numbers are read in %s; say --unit %s, or rename it",
                  batch_show(header->heading[lengths[i]], shown), names[unit], names[options->style.unit],
                  names[unit]);
        return false;
    }
    return true;
}

batch_word batch_header_meant(const batch_options *options, const char *heading, bool undated)
{
    static const char *const dates[] = {"date", "datum", "fecha"};
    for (size_t i = 0; undated && options->heading[BATCH_DATE] == NULL && i < COUNT_OF(dates); i++)
        if (strstr(heading, dates[i]) != NULL)
            return BATCH_DATE;
    for (int word = BATCH_ASKED; word < BATCH_POSITION; word++)
        if (options->heading[word] == NULL && is_own_name(heading, (batch_word)word))
            return (batch_word)word;
    return BATCH_WORDS;
}

/* A column that would change verdicts and is not read is worth a word. */
static void note_unread(const batch_header *header, const csv_record *record, const batch_options *options)
{
    char text[BATCH_TEXT_SIZE];
    char shown[BATCH_SHOWN_SIZE];
    for (size_t i = 0; i < record->count; i++) {
        heading_of(record, i, text);
        batch_word word = batch_header_meant(options, text, header->column[BATCH_DATE] == BATCH_NO_COLUMN);
        if (word != BATCH_WORDS)
            print_error("the column \"%s\" is not read; if it is the %s of the test, say --column %s=\"%s\", "
                     "otherwise --column %s=",
                     batch_show(text, shown), word == BATCH_DATE ? "day" : "condition", batch_word_name(word),
                     shown, batch_word_name(word));
    }
}

static bool is_text(const csv_record *record)
{
    const char *bytes = record->bytes;
    bool utf16 = record->size >= 2 &&
                 (memcmp(bytes, "\xFF\xFE", 2) == 0 || memcmp(bytes, "\xFE\xFF", 2) == 0);
    if (utf16)
        print_error("this is UTF-16 text: say --encoding utf-16");
    else if (memchr(bytes, '\0', record->size) != NULL)
        print_error("this is not a text file: there are zero bytes in its first line");
    else
        return true;
    return false;
}

bool batch_header_read(batch_header *header, const csv_record *record, const batch_options *options)
{
    *header = (batch_header){.count = record->count, .size = record->size, .bytes = malloc(record->size + 1)};
    if (header->bytes == NULL) {
        print_error("no memory");
        return false;
    }
    memcpy(header->bytes, record->bytes, record->size);
    if (!is_text(record))
        return false;
    if (record->bad_quotes) {
        print_error("the header line is not CSV: a quote is not closed, or not at the end of a cell");
        return false;
    }
    if (!find_columns(header, record, options) || !columns_differ(header))
        return false;
    for (int word = 0; word < BATCH_READ; word++)
        if (header->column[word] != BATCH_NO_COLUMN)
            heading_of(record, header->column[word], header->heading[word]);
    note_unread(header, record, options);
    return true;
}

bool batch_header_objects(batch_header *header, const batch_options *options)
{
    for (int word = 0; word < BATCH_READ; word++) {
        header->column[word] = BATCH_NO_COLUMN;
        const char *given = options->heading[word];
        snprintf(header->heading[word], BATCH_TEXT_SIZE, "%s", given != NULL ? given : "");
        normalize(header->heading[word]);
    }
    return batch_header_units_agree(header, options);
}

void batch_header_free(batch_header *header) { free(header->bytes); }

bool batch_header_is_repeated(const batch_header *header, const csv_record *record)
{
    return record->size == header->size && memcmp(record->bytes, header->bytes, header->size) == 0;
}

static bool holds_heading(const csv_record *record, const char *heading)
{
    char text[BATCH_TEXT_SIZE];
    for (size_t i = 0; i < record->count; i++) {
        heading_of(record, i, text);
        if (strcmp(text, heading) == 0)
            return true;
    }
    return false;
}

/* Separators without a heading at the end of a line name no other column. */
static bool names_more_columns(const batch_header *header, const csv_record *record)
{
    char text[BATCH_TEXT_SIZE];
    for (size_t i = header->count; i < record->count; i++) {
        heading_of(record, i, text);
        if (text[0] != '\0')
            return true;
    }
    return false;
}

batch_repeat batch_header_compare(const batch_header *header, const csv_record *record)
{
    char text[BATCH_TEXT_SIZE];
    bool same = !names_more_columns(header, record);
    for (int word = 0; word < BATCH_NEEDED; word++)
        if (!holds_heading(record, header->heading[word]))
            return BATCH_NO_HEADER;
    for (int word = 0; word < BATCH_READ && same; word++) {
        if (header->column[word] == BATCH_NO_COLUMN)
            continue;
        if (header->column[word] >= record->count)
            return BATCH_OTHER_HEADER;
        heading_of(record, header->column[word], text);
        same = strcmp(text, header->heading[word]) == 0;
    }
    return same ? BATCH_SAME_HEADER : BATCH_OTHER_HEADER;
}
