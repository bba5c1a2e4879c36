/* SPDX-License-Identifier: Apache-2.0 */
/* The file of `rodtravel vehicle`: one wheel end a row, under the headings that `batch` reads. Unlike a file of many
 * vehicles it is short and written by hand, so whatever does not fit is refused with its line, before anything is
 * judged. */
#include "vehicle/vehicle.h"
#include "input/columns.h"
#include "input/input_file.h"
#include "input/title_lines.h"
#include "io/csv_reader.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"

#include <stdio.h>
#include <string.h>

typedef struct file_reader {
    const vehicle_options *options;
    input_file file;
    const char *name;
    columns columns;
    size_t column_count;
    char text[RODT_FIELD_END][COLUMN_TEXT_SIZE]; /* of the row that is being read */
    uint64_t undated;                            /* rows without a date */
    vehicle_record *out;
} file_reader;

static int print_line_error(const file_reader *from, uint64_t line, const char *what)
{
    return print_error("%s:%llu: %s", from->name, (unsigned long long)line, what);
}

static int print_cell_error(const file_reader *from, uint64_t line, rodt_field field, const rodt_error *error)
{
    print_error("%s:%llu: a cell of the column \"%s\"", from->name, (unsigned long long)line,
                from->columns.heading[field]);
    return print_text_error(say("the cell"), from->text[field], error);
}

/* --- Rows --------------------------------------------------------------------------------------------- */

static int copy_cells(file_reader *from, const csv_record *record)
{
    if (record->bad_quotes)
        return print_line_error(from, record->line, say("something is after a closing quote"));
    if (record->count > from->column_count)
        return print_line_error(from, record->line,
                                say("the row has more cells than there are columns; a decimal comma, or a comma in a "
                                    "remark?"));
    for (size_t i = 0; i < RODT_FIELD_END; i++) {
        size_t column = from->columns.column[i];
        from->text[i][0] = '\0';
        if (column >= record->count)
            continue;
        size_t size = csv_text(record, column, from->text[i], COLUMN_TEXT_SIZE);
        if (size == CSV_NO_FIT || memchr(from->text[i], '\0', size) != NULL)
            return print_line_error(from, record->line, say("a cell holds more than a reading can, or a zero byte"));
    }
    return STATUS_CONTINUE;
}

static bool is_blank(const char *text) { return text[strspn(text, " \t")] == '\0'; }

static int read_position(file_reader *from, uint64_t line, rodt_position *out)
{
    rodt_error error;
    const char *text = from->text[RODT_FIELD_POSITION];
    if (rodt_position_parse_n(text, strlen(text), out, &error) != RODT_OK)
        return print_cell_error(from, line, RODT_FIELD_POSITION, &error);
    for (size_t i = 0; i < from->out->count; i++) {
        rodt_position other = from->out->ends[i].position;
        if (other.axle == out->axle && other.side == out->side) {
            print_error("%s:%llu: the position %s is there twice", from->name, (unsigned long long)line, text);
            return print_error("one file holds one vehicle on one day; for many use: rodtravel batch --by COLUMN");
        }
    }
    return STATUS_CONTINUE;
}

/* The unit of the row is that of its arm too. A bare number beside a unit that is not known means two lengths. */
static rodt_status read_arm_text(const file_reader *from, rodt_length *out, rodt_error *error)
{
    const char *text = from->text[RODT_FIELD_ARM_LENGTH], *unit = from->text[RODT_FIELD_UNIT];
    rodt_style style = from->options->style;
    rodt_length other;
    bool known = is_blank(unit) || rodt_unit_parse_n(unit, strlen(unit), &style.unit, NULL) == RODT_OK;
    rodt_status status = rodt_length_parse_strict_n(text, strlen(text), &style, out, NULL, error);
    if (known || status != RODT_OK)
        return status;
    style.unit = style.unit == RODT_UNIT_IN ? RODT_UNIT_MM : RODT_UNIT_IN;
    if (rodt_length_parse_strict_n(text, strlen(text), &style, &other, NULL, NULL) == RODT_OK &&
        rodt_length_compare(*out, other) == 0)
        return RODT_OK;
    *error = (rodt_error){.status = RODT_E_UNIT};
    snprintf(error->text, sizeof error->text, "%s", say("the unit of this number is not known"));
    return RODT_E_UNIT;
}

static int read_arm(const file_reader *from, uint64_t line, rodt_length *out)
{
    rodt_error error;
    rodt_status status = read_arm_text(from, out, &error);
    if (status == RODT_OK || status == RODT_E_EMPTY)
        return STATUS_CONTINUE;
    return print_cell_error(from, line, RODT_FIELD_ARM_LENGTH, &error);
}

static int read_adjuster(const file_reader *from, uint64_t line, RODT_ENUM32(rodt_adjuster) *out)
{
    const char *text = from->text[RODT_FIELD_ADJUSTER];
    if (rodt_adjuster_parse(text, out, NULL) == RODT_OK)
        return STATUS_CONTINUE;
    return print_error("%s:%llu: adjuster is manual, automatic or empty, not \"%s\"", from->name,
                       (unsigned long long)line, text);
}

static int judge_end(file_reader *from, uint64_t line)
{
    vehicle_record *out = from->out;
    const vehicle_options *options = from->options;
    rodt_form text = {
        .style = options->style, .date_order = options->date_order, .default_day = options->context->day};
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        if (from->columns.column[field] != COLUMN_NONE)
            rodt_form_set(&text, (rodt_field)field, from->text[field]);
    from->undated += is_blank(from->text[RODT_FIELD_DATE]);
    rodt_status status = rodt_form_judge_row(&text, options->context->rules, &out->findings[out->count],
                                        &out->errors[out->count]);
    char said[SAID_SIZE];
    return status == RODT_OK ? STATUS_CONTINUE : print_line_error(from, line, say_status(status, said));
}

static int read_row(file_reader *from, const csv_record *record)
{
    vehicle_record *out = from->out;
    if (csv_is_blank(record))
        return STATUS_CONTINUE;
    if (record->bad_quotes)
        return print_line_error(from, record->line, say("a quote is opened here and never closed"));
    if (out->count == VEHICLE_ENDS_MAX)
        return print_line_error(from, record->line, say("there are more wheel ends than any vehicle has"));
    if (out->count == 0)
        columns_check_first_row(&from->columns, &from->options->columns, record);
    rodt_wheel_end *end = &out->ends[out->count];
    int status = copy_cells(from, record);
    if (status == STATUS_CONTINUE)
        status = read_position(from, record->line, &end->position);
    if (status == STATUS_CONTINUE)
        status = read_arm(from, record->line, &end->arm_length);
    if (status == STATUS_CONTINUE)
        status = read_adjuster(from, record->line, &end->adjuster);
    if (status == STATUS_CONTINUE)
        status = judge_end(from, record->line);
    out->count += status == STATUS_CONTINUE;
    return status;
}

/* --- The file ----------------------------------------------------------------------------------------- */

static int end_of_file(const file_reader *from, csv_status status, const csv_reader *reader)
{
    switch (status) {
    case CSV_E_SOURCE: input_file_explain(&from->file, false); return STATUS_USAGE;
    case CSV_E_MEMORY: return print_error("no memory to read %s", from->name);
    case CSV_E_QUOTES:
    case CSV_E_LONG:
    case CSV_E_CELLS: return print_line_error(from, reader->fault_line, say("this is no table of wheel ends"));
    case CSV_RECORD:
    case CSV_END: break;
    }
    return from->out->count > 0 ? STATUS_CONTINUE : print_error("%s: there is no wheel end in it", from->name);
}

/* Lines before the header are passed over. */
static csv_status read_headings(file_reader *from, csv_reader *reader, csv_record *header, int *status)
{
    const vehicle_options *options = from->options;
    char separator = options->separator;
    title_lines titles = {0};
    csv_status got = titles_pass(&titles, reader, &options->columns, options->separator_given, &separator, header);
    from->column_count = header->count;
    if (got == CSV_RECORD && !columns_find(&from->columns, &options->columns, header, separator))
        *status = STATUS_USAGE;
    titles_free(&titles);
    return got;
}

static int read_records(file_reader *from, csv_reader *reader)
{
    csv_record record;
    csv_status got = csv_next(reader, &record);
    if (got == CSV_END)
        return print_error("%s is empty", from->name);
    int status = STATUS_CONTINUE;
    if (got == CSV_RECORD)
        got = read_headings(from, reader, &record, &status);
    while (got == CSV_RECORD && status == STATUS_CONTINUE) {
        got = csv_next(reader, &record);
        if (got == CSV_RECORD)
            status = read_row(from, &record);
    }
    if (status == STATUS_CONTINUE && !columns_unit_agrees(&from->columns, from->options->style.unit))
        return STATUS_USAGE;
    return status == STATUS_CONTINUE ? end_of_file(from, got, reader) : status;
}

static int combine(const file_reader *from)
{
    vehicle_record *out = from->out;
    uint32_t brakes = from->options->brakes;
    if (brakes > 0 && brakes < out->count)
        return print_error("--brakes is %lu, but %s has %zu wheel ends", (unsigned long)brakes, from->name, out->count);
    rodt_status status = vehicle_combine(out, brakes);
    return status == RODT_OK ? STATUS_CONTINUE : print_status(from->name, status);
}

int vehicle_read(const vehicle_options *options, vehicle_record *out)
{
    file_reader from = {.options = options, .out = out};
    csv_reader reader;
    memset(out, 0, sizeof *out);
    if (!input_file_open(&from.file, options->file, options->encoding))
        return STATUS_USAGE;
    from.name = from.file.name;
    int status = STATUS_USAGE;
    if (csv_open(&reader, input_file_source(&from.file), options->separator)) {
        status = read_records(&from, &reader);
        csv_close(&reader);
    } else {
        print_error("no memory to read %s", from.name);
    }
    input_file_close(&from.file);
    if (status == STATUS_CONTINUE)
        status = combine(&from);
    if (status == STATUS_CONTINUE)
        rule_context_note_undated(options->context, from.undated);
    return status;
}
