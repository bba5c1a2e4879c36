/* SPDX-License-Identifier: Apache-2.0 */
/* The file of `rodtravel vehicle`: headings, one wheel end a row. Unlike a column of many vehicles it is short and
 * written by hand, so whatever does not fit is refused with its line, before anything is judged. */
#include "vehicle/vehicle.h"
#include "input/unit_cell.h"
#include "io/csv_reader.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"
#include "ui/options.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

typedef enum word {
    POSITION,
    CHAMBER,
    RELEASED,
    APPLIED,
    NEEDED, /* the words above must be there */
    STROKE_CLASS = NEEDED,
    RATED_STROKE,
    MARKED_LIMIT,
    PSI,
    PSI_AFTER,
    DIVISION,
    DATE,
    UNIT,
    ARM_LENGTH,
    ADJUSTER,
    WORDS
} word;

static const char *const headings[WORDS] = {"position", "chamber",   "released", "applied", "stroke_class",
                                            "rated_stroke", "marked_limit", "psi",  "psi_after", "division",
                                            "date",     "unit",      "arm_length", "adjuster"};

#define TEXT_SIZE 512
#define NO_COLUMN ((size_t)-1)

typedef struct file_reader {
    const vehicle_options *options;
    const char *name;
    size_t column[WORDS];
    size_t columns;
    char text[WORDS][TEXT_SIZE]; /* of the row that is being read */
    bool unit_is_vehicle; /* by the first row */
    vehicle_record *out;
} file_reader;

static long read_file(void *context, char *buffer, size_t size)
{
    FILE *file = context;
    size_t got = fread(buffer, 1, size, file);
    return got == 0 && ferror(file) ? -1 : (long)got;
}

static int refuse_line(const file_reader *from, uint64_t line, const char *what)
{
    return print_error("%s:%llu: %s", from->name, (unsigned long long)line, what);
}

static int refuse_cell(const file_reader *from, uint64_t line, word column, const rodt_error *error)
{
    char what[80];
    print_error("%s:%llu: a cell of the column %s", from->name, (unsigned long long)line, headings[column]);
    snprintf(what, sizeof what, "the cell");
    return print_text_error(what, from->text[column], error);
}

/* --- Headings ----------------------------------------------------------------------------------------- */

/* Headings are compared without their case; blanks at their ends say nothing. */
static bool is_heading(const char *text, size_t size, const char *name)
{
    while (size > 0 && text[size - 1] == ' ')
        size--;
    while (size > 0 && *text == ' ') {
        text++;
        size--;
    }
    if (strlen(name) != size)
        return false;
    for (size_t i = 0; i < size; i++) {
        char sign = text[i] >= 'A' && text[i] <= 'Z' ? (char)(text[i] + ('a' - 'A')) : text[i];
        if (sign != name[i])
            return false;
    }
    return true;
}

static int take_heading(file_reader *from, const csv_record *record, size_t column)
{
    char text[TEXT_SIZE];
    size_t size = csv_text(record, column, text, sizeof text);
    for (size_t i = 0; size != CSV_NO_FIT && i < WORDS; i++) {
        if (!is_heading(text, size, headings[i]))
            continue;
        if (from->column[i] != NO_COLUMN) {
            print_error("%s:%llu: two columns are named %s", from->name, (unsigned long long)record->line, headings[i]);
            return STATUS_USAGE;
        }
        from->column[i] = column;
    }
    return STATUS_CONTINUE;
}

static int read_headings(file_reader *from, const csv_record *record)
{
    int status = STATUS_CONTINUE;
    for (size_t i = 0; i < WORDS; i++)
        from->column[i] = NO_COLUMN;
    from->columns = record->count;
    for (size_t i = 0; i < record->count && status == STATUS_CONTINUE; i++)
        status = take_heading(from, record, i);
    for (size_t i = 0; i < NEEDED && status == STATUS_CONTINUE; i++) {
        if (from->column[i] != NO_COLUMN)
            continue;
        print_error("%s: there is no column %s", from->name, headings[i]);
        status = print_error("the first line names the columns: position, chamber, released, applied; see: rodtravel "
                          "vehicle --help");
    }
    return status;
}

/* --- Rows --------------------------------------------------------------------------------------------- */

static int take_cells(file_reader *from, const csv_record *record)
{
    if (record->bad_quotes)
        return refuse_line(from, record->line, "something stands behind a closing quote");
    if (record->count > from->columns)
        return refuse_line(from, record->line, "the row has more cells than there are columns; a decimal comma, or a "
                                               "comma in a remark?");
    for (size_t i = 0; i < WORDS; i++) {
        from->text[i][0] = '\0';
        if (from->column[i] >= record->count)
            continue;
        size_t size = csv_text(record, from->column[i], from->text[i], TEXT_SIZE);
        if (size == CSV_NO_FIT || memchr(from->text[i], '\0', size) != NULL)
            return refuse_line(from, record->line, "a cell holds more than a reading can, or a zero byte");
    }
    return STATUS_CONTINUE;
}

static const char *cell(const file_reader *from, word column)
{
    return from->column[column] == NO_COLUMN ? NULL : from->text[column];
}

static int read_position(file_reader *from, uint64_t line, rodt_position *out)
{
    rodt_error error;
    const char *text = from->text[POSITION];
    if (rodt_position_read(text, strlen(text), out, &error) != RODT_OK)
        return refuse_cell(from, line, POSITION, &error);
    for (size_t i = 0; i < from->out->count; i++) {
        rodt_position other = from->out->ends[i].position;
        if (other.axle == out->axle && other.side == out->side) {
            print_error("%s:%llu: the position %s stands there twice", from->name, (unsigned long long)line, text);
            return print_error("one file holds one vehicle on one day; for many use: rodtravel batch --by COLUMN");
        }
    }
    return STATUS_CONTINUE;
}

static int read_arm(const file_reader *from, uint64_t line, rodt_length *out)
{
    rodt_error error;
    const char *text = from->text[ARM_LENGTH];
    rodt_status status = rodt_length_read(text, strlen(text), &from->options->style, out, NULL, &error);
    if (status == RODT_OK || status == RODT_E_EMPTY)
        return STATUS_CONTINUE;
    return refuse_cell(from, line, ARM_LENGTH, &error);
}

static int read_adjuster(const file_reader *from, uint64_t line, rodt_adjuster *out)
{
    static const choice words[] = {{"", RODT_ADJUSTER_NOT_RECORDED},          {"unknown", RODT_ADJUSTER_NOT_RECORDED},
                                   {"manual", RODT_ADJUSTER_MANUAL},          {"automatic", RODT_ADJUSTER_AUTOMATIC},
                                   {"auto", RODT_ADJUSTER_AUTOMATIC}};
    for (size_t i = 0; i < COUNT_OF(words); i++) {
        if (is_heading(from->text[ADJUSTER], strlen(from->text[ADJUSTER]), words[i].word)) {
            *out = (rodt_adjuster)words[i].meaning;
            return STATUS_CONTINUE;
        }
    }
    return print_error("%s:%llu: adjuster is manual, automatic or empty, not \"%s\"", from->name,
                    (unsigned long long)line, from->text[ADJUSTER]);
}

static int judge_end(file_reader *from, uint64_t line)
{
    vehicle_record *out = from->out;
    const vehicle_options *options = from->options;
    if (out->count == 0)
        from->unit_is_vehicle = is_vehicle_unit(cell(from, UNIT), "column");
    rodt_reading_text text = {.chamber = cell(from, CHAMBER),
                              .released = cell(from, RELEASED),
                              .applied = cell(from, APPLIED),
                              .stroke_class = cell(from, STROKE_CLASS),
                              .rated_stroke = cell(from, RATED_STROKE),
                              .marked_limit = cell(from, MARKED_LIMIT),
                              .psi = cell(from, PSI),
                              .psi_after = cell(from, PSI_AFTER),
                              .division = cell(from, DIVISION),
                              .date = cell(from, DATE),
                              .unit = from->unit_is_vehicle ? NULL : cell(from, UNIT),
                              .style = options->style,
                              .default_day = options->context->day};
    rodt_status status = rodt_judge_row(&text, options->context->rules, &out->findings[out->count],
                                        &out->errors[out->count]);
    return status == RODT_OK ? STATUS_CONTINUE : refuse_line(from, line, rodt_status_text(status));
}

static int read_row(file_reader *from, const csv_record *record)
{
    vehicle_record *out = from->out;
    if (csv_is_blank(record))
        return STATUS_CONTINUE;
    if (record->bad_quotes)
        return refuse_line(from, record->line, "a quote is opened here and never closed");
    if (out->count == VEHICLE_ENDS_MAX)
        return refuse_line(from, record->line, "there are more wheel ends than any vehicle has");
    rodt_wheel_end *end = &out->ends[out->count];
    int status = take_cells(from, record);
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
    case CSV_E_SOURCE: return print_error("cannot read %s: %s", from->name, strerror(errno));
    case CSV_E_MEMORY: return print_error("no memory to read %s", from->name);
    case CSV_E_QUOTES:
    case CSV_E_LONG:
    case CSV_E_CELLS: return refuse_line(from, reader->fault_line, "this is no table of wheel ends");
    case CSV_RECORD:
    case CSV_END: break;
    }
    return from->out->count > 0 ? STATUS_CONTINUE : print_error("%s: there is no wheel end in it", from->name);
}

static int read_records(file_reader *from, csv_reader *reader)
{
    csv_record record;
    csv_status got = csv_next(reader, &record);
    if (got == CSV_END)
        return print_error("%s is empty", from->name);
    int status = got == CSV_RECORD ? read_headings(from, &record) : STATUS_CONTINUE;
    while (got == CSV_RECORD && status == STATUS_CONTINUE) {
        got = csv_next(reader, &record);
        if (got == CSV_RECORD)
            status = read_row(from, &record);
    }
    return status == STATUS_CONTINUE ? end_of_file(from, got, reader) : status;
}

rodt_status vehicle_combine(vehicle_record *record, uint32_t brakes)
{
    record->brakes_said = brakes > 0;
    return rodt_vehicle_combine(record->ends, record->count, brakes, record->findings,
                                record->advice, &record->vehicle);
}

static int combine(const file_reader *from)
{
    vehicle_record *out = from->out;
    uint32_t brakes = from->options->brakes;
    if (brakes > 0 && brakes < out->count)
        return print_error("--brakes is %lu, but %s has %zu wheel ends", (unsigned long)brakes, from->name, out->count);
    rodt_status status = vehicle_combine(out, brakes);
    return status == RODT_OK ? STATUS_CONTINUE : print_error("%s: %s", from->name, rodt_status_text(status));
}

int vehicle_read(const vehicle_options *options, vehicle_record *out)
{
    bool standard = strcmp(options->file, "-") == 0;
    file_reader from = {.options = options, .name = standard ? "standard input" : options->file, .out = out};
    csv_reader reader;
    memset(out, 0, sizeof *out);
    FILE *file = standard ? stdin : fopen(options->file, "rb");
    if (file == NULL)
        return print_error("cannot open %s: %s", options->file, strerror(errno));
    int status = STATUS_USAGE;
    if (csv_open(&reader, (csv_source){read_file, file}, options->separator)) {
        status = read_records(&from, &reader);
        csv_close(&reader);
    } else {
        print_error("no memory to read %s", from.name);
    }
    if (!standard)
        fclose(file);
    return status == STATUS_CONTINUE ? combine(&from) : status;
}
