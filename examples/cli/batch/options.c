/* SPDX-License-Identifier: Apache-2.0 */
/* The options of `rodtravel batch`, from words to meanings. */
#include "batch/batch.h"
#include "commands.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdio.h>
#include <string.h>

static const char *const word_names[BATCH_WORDS] = {
    [BATCH_CHAMBER] = "chamber",           [BATCH_RELEASED] = "released",
    [BATCH_APPLIED] = "applied",           [BATCH_STROKE_CLASS] = "stroke_class",
    [BATCH_RATED_STROKE] = "rated_stroke", [BATCH_MARKED_LIMIT] = "marked_limit",
    [BATCH_PSI] = "psi",                   [BATCH_PSI_AFTER] = "psi_after",
    [BATCH_DIVISION] = "division",         [BATCH_DATE] = "date",
    [BATCH_UNIT] = "unit",                 [BATCH_ENGINE] = "engine",
    [BATCH_SPRING_BRAKE] = "spring_brake", [BATCH_DRUM] = "drum",
    [BATCH_AXLE] = "axle",                 [BATCH_POSITION] = "position"};

const char *batch_word_name(batch_word word) { return word_names[word]; }

static int find_word(const char *text, size_t size)
{
    for (int word = 0; word < BATCH_WORDS; word++)
        if (strlen(word_names[word]) == size && memcmp(word_names[word], text, size) == 0)
            return word;
    return -1;
}

static int refuse_word(const char *value)
{
    char words[300] = "";
    for (int word = 0; word < BATCH_WORDS; word++) {
        size_t used = strlen(words);
        snprintf(words + used, sizeof words - used, "%s%s", word > 0 ? ", " : "", word_names[word]);
    }
    print_error("--column %s: expected is WORD=HEADING, such as date=\"Inspected on\"", value);
    return print_error("words are %s", words);
}

static int take_columns(const command_line *from, batch_options *options)
{
    for (size_t i = 0; i < from->given_count; i++) {
        if (from->given[i].option != BATCH_OPTION_COLUMN)
            continue;
        const char *value = from->given[i].value;
        size_t size = strcspn(value, "=");
        int word = value[size] == '=' ? find_word(value, size) : -1;
        if (word < 0)
            return refuse_word(value);
        if (options->heading[word] != NULL)
            return print_error("--column says twice which column is %s", word_names[word]);
        options->heading[word] = value + size + 1;
    }
    return STATUS_CONTINUE;
}

/* A sign that stands in numbers, fractions, dates or codes would tear them apart. */
static int take_separator(const command_line *from, batch_options *options)
{
    const char *value = option_value(from, BATCH_OPTION_SEPARATOR);
    options->separator = ',';
    if (value == NULL)
        return STATUS_CONTINUE;
    options->separator = strcmp(value, "tab") == 0 ? '\t' : value[0];
    bool one = strcmp(value, "tab") == 0 || strlen(value) == 1;
    if (one && strchr(",;\t|:!#$%&*<=>?@^_~", options->separator) != NULL)
        return STATUS_CONTINUE;
    return print_error("--separator is one sign such as , ; | or the word tab, not \"%s\"", value);
}

/* The rows are the same for any number of threads. */
static int take_jobs(const command_line *from, batch_options *options)
{
    const char *value = option_value(from, BATCH_OPTION_JOBS);
    if (value == NULL)
        return STATUS_CONTINUE;
    size_t digits = strspn(value, "0123456789");
    if (digits == 0 || digits > 4 || value[digits] != '\0' || strspn(value, "0") == digits)
        return print_error("--jobs is a number from 1 to 9999, not \"%s\"", value);
    for (size_t i = 0; i < digits; i++)
        options->jobs = options->jobs * 10 + (unsigned)(value[i] - '0');
    return STATUS_CONTINUE;
}

static int take_words(const command_line *from, batch_options *options)
{
    static const choice units[] = {{"in", RODT_UNIT_INCH}, {"mm", RODT_UNIT_MM}, {"cm", RODT_UNIT_CM}};
    static const choice orders[] = {{"dmy", RODT_DATE_ORDER_DAY_FIRST}, {"mdy", RODT_DATE_ORDER_MONTH_FIRST}};
    int unit = RODT_UNIT_INCH;
    int order = RODT_DATE_ORDER_UNKNOWN;
    int status = choose_option(from, BATCH_OPTION_UNIT, units, COUNT_OF(units), &unit);
    if (status == STATUS_CONTINUE)
        status = choose_option(from, BATCH_OPTION_DATE_ORDER, orders, COUNT_OF(orders), &order);
    options->style.unit = (rodt_unit)unit;
    options->style.decimal_comma = option_given(from, BATCH_OPTION_DECIMAL_COMMA);
    options->date_order = (rodt_date_order)order;
    options->afresh = option_given(from, BATCH_OPTION_AFRESH);
    options->summary = option_given(from, BATCH_OPTION_SUMMARY);
    return status;
}

/* What parts cells or names a column of a table says nothing to lines of JSON. */
static int take_format(const command_line *from, batch_options *options)
{
    static const choice formats[] = {{"csv", false}, {"ndjson", true}};
    int objects = false;
    int status = choose_option(from, BATCH_OPTION_FORMAT, formats, COUNT_OF(formats), &objects);
    options->objects = objects;
    if (status == STATUS_CONTINUE && objects && option_given(from, BATCH_OPTION_SEPARATOR))
        return print_error("--separator parts the cells of CSV; lines of JSON have none");
    if (status == STATUS_CONTINUE && objects && option_given(from, BATCH_OPTION_BY))
        return print_error("--by takes CSV, not lines of JSON");
    return status;
}

static void take_texts(const command_line *from, batch_options *options)
{
    options->file = from->operand_count > 0 ? from->operands[0] : "-";
    options->rules = option_value(from, BATCH_OPTION_RULES);
    options->limits = option_value(from, BATCH_OPTION_LIMITS);
    options->as_of = option_value(from, BATCH_OPTION_AS_OF);
    options->by = option_value(from, BATCH_OPTION_BY);
    options->encoding = option_value(from, BATCH_OPTION_ENCODING);
}

int batch_options_read(int argc, char **argv, batch_options *options)
{
    command_line from;
    *options = (batch_options){.separator = ','};
    int status = parse_arguments(&batch_command, argc, argv, 0, 1, &from);
    if (status != STATUS_CONTINUE)
        return status;
    take_texts(&from, options);
    status = take_words(&from, options);
    if (status == STATUS_CONTINUE)
        status = take_columns(&from, options);
    if (status == STATUS_CONTINUE)
        status = take_separator(&from, options);
    if (status == STATUS_CONTINUE)
        status = take_format(&from, options);
    return status == STATUS_CONTINUE ? take_jobs(&from, options) : status;
}
