/* SPDX-License-Identifier: Apache-2.0 */
/* The options of `rodtravel batch`. */
#include "batch/options.h"
#include "batch/results.h"
#include "batch/workbook.h"
#include "input/file_options.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

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

static int take_style(const command_line *from, batch_options *options)
{
    int status = read_unit_option(from, BATCH_OPTION_UNIT, &options->style.unit);
    if (status == STATUS_CONTINUE)
        status = read_date_order_option(from, BATCH_OPTION_DATE_ORDER, &options->date_order);
    options->style.decimal_comma = option_given(from, BATCH_OPTION_DECIMAL_COMMA);
    options->no_cache = option_given(from, BATCH_OPTION_NO_CACHE) || option_given(from, BATCH_OPTION_AFRESH);
    options->summary = option_given(from, BATCH_OPTION_SUMMARY);
    options->json = option_given(from, BATCH_OPTION_JSON);
    if (options->json && !options->summary)
        return print_error("--json goes with --summary; rows as lines of JSON: --format ndjson");
    return status;
}

static int check_workbook(const batch_options *options)
{
    if (options->by_count > 0 || options->json)
        return print_error("--format xlsx is for rows, not for --by or --json");
    if (isatty(STDOUT_FILENO))
        return print_error("a workbook is no text: send it to a file, with > judged.xlsx");
    return batch_workbook_prepare();
}

/* Lines of JSON have no separators and no columns. */
static int take_format(const command_line *from, batch_options *options)
{
    enum { FORMAT_CSV, FORMAT_NDJSON, FORMAT_XLSX };
    static const choice formats[] = {{"csv", FORMAT_CSV}, {"ndjson", FORMAT_NDJSON}, {"xlsx", FORMAT_XLSX}};
    int format = FORMAT_CSV;
    int status = choose_option(from, BATCH_OPTION_FORMAT, formats, COUNT_OF(formats), &format);
    bool objects = format == FORMAT_NDJSON;
    options->columns.members = objects;
    options->workbook = format == FORMAT_XLSX;
    if (status == STATUS_CONTINUE && options->workbook)
        return check_workbook(options);
    if (status == STATUS_CONTINUE && objects && option_given(from, BATCH_OPTION_SEPARATOR))
        return print_error("--separator splits the cells of CSV; lines of JSON have none");
    if (status == STATUS_CONTINUE && objects && options->by_count > 0)
        return print_error("--by takes CSV, not lines of JSON");
    return status;
}

static int take_decimals(const command_line *from, batch_options *options)
{
    const char *value = option_value(from, BATCH_OPTION_DECIMALS);
    if (value == NULL)
        return STATUS_CONTINUE;
    if (value[0] < '0' || value[0] > '0' + DECIMALS_MAX || value[1] != '\0')
        return print_error("--decimals is a number from 0 to %d, not \"%s\"", DECIMALS_MAX, value);
    if (options->by_count > 0)
        return print_error("--decimals is for rows, not for --by");
    options->decimals = value[0] - '0';
    return STATUS_CONTINUE;
}

static int take_by(const command_line *from, batch_options *options)
{
    for (size_t i = 0; i < from->given_count; i++) {
        if (from->given[i].option != BATCH_OPTION_BY)
            continue;
        if (options->by_count == NAME_CELLS_MAX)
            return print_error("--by may be given %d times", NAME_CELLS_MAX);
        options->by[options->by_count++] = from->given[i].value;
    }
    options->pool = option_given(from, BATCH_OPTION_POOL);
    if (options->pool && options->by_count == 0)
        return print_error("--pool goes with --by");
    return STATUS_CONTINUE;
}

static void take_texts(const command_line *from, batch_options *options)
{
    options->file = from->operand_count > 0 ? from->operands[0] : "-";
    options->rules = option_value(from, BATCH_OPTION_RULES);
    options->limits = option_value(from, BATCH_OPTION_LIMITS);
    options->as_of = option_value(from, BATCH_OPTION_AS_OF);
    options->encoding = option_value(from, BATCH_OPTION_ENCODING);
}

int batch_options_read(const command_spec *command, int argc, char **argv, batch_options *options)
{
    command_line from;
    *options = (batch_options){.separator = ',', .decimals = -1, .columns = {.needed = FIELDS_NEEDED}};
    options->columns.fields = FIELDS_OF_READING | FIELD_BIT(RODT_FIELD_POSITION);
    int status = parse_arguments(command, argc, argv, 0, 1, &from);
    if (status != STATUS_CONTINUE)
        return status;
    take_texts(&from, options);
    status = take_by(&from, options);
    if (status == STATUS_CONTINUE)
        status = take_decimals(&from, options);
    if (status == STATUS_CONTINUE)
        status = take_style(&from, options);
    if (status == STATUS_CONTINUE)
        status = column_request_read(&from, BATCH_OPTION_COLUMN, &options->columns);
    if (options->by_count == 0)
        options->columns.fields &= ~FIELD_BIT(RODT_FIELD_POSITION);
    if (status == STATUS_CONTINUE)
        status = read_separator_option(&from, BATCH_OPTION_SEPARATOR, &options->separator);
    options->separator_given = option_given(&from, BATCH_OPTION_SEPARATOR);
    if (status == STATUS_CONTINUE)
        status = take_format(&from, options);
    return status == STATUS_CONTINUE ? take_jobs(&from, options) : status;
}
