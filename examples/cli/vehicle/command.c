/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel vehicle: one vehicle or combination from a small file. */
#include "vehicle/vehicle.h"
#include "commands.h"
#include "input/columns.h"
#include "input/file_options.h"
#include "input/rule_context.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdlib.h>
#include <string.h>

enum {
    VEHICLE_BRAKES, VEHICLE_RULES, VEHICLE_LIMITS, VEHICLE_AS_OF, VEHICLE_COLUMN, VEHICLE_UNIT, VEHICLE_DATE_ORDER,
    VEHICLE_SEPARATOR, VEHICLE_DECIMAL_COMMA, VEHICLE_ENCODING, VEHICLE_WHY, VEHICLE_JSON
};

static const option_spec options[] = {
    [VEHICLE_BRAKES] = {"brakes", "N", "brakes of the whole combination, measured or not; both ends of every axle "
                                       "up to the last in the file if not given", false},
    [VEHICLE_RULES] = {"rules", "ID", "rule set that judges; " RODT_DEFAULT_RULES " if not given", false},
    [VEHICLE_LIMITS] = {"limits", "FILE", "a carrier's own, stricter limits on top of it", false},
    [VEHICLE_AS_OF] = {"as-of", "DATE", "day of rows without a date; today if not given", false},
    [VEHICLE_COLUMN] = {"column", "FIELD=HEADING", "the column with this heading holds FIELD; FIELD= alone: do not "
                                                   "read such a column. May be given once for each field", true},
    [VEHICLE_UNIT] = {"unit", "in|mm|cm", "unit of lengths that name none; inches if not given", false},
    [VEHICLE_DATE_ORDER] = {"date-order", "dmy|mdy|ymd",
                            "day, month or year first, for dates such as 06/05/2024 or 21/10/14", false},
    [VEHICLE_SEPARATOR] = {"separator", "C", "character between cells; a comma if not given", false},
    [VEHICLE_DECIMAL_COMMA] = {"decimal-comma", NULL, "the decimal sign is a comma", false},
    [VEHICLE_ENCODING] = {"encoding", "NAME",
                          "encoding of the file, such as windows-1252; UTF-8 if not given", false},
    [VEHICLE_WHY] = {"why", NULL, "the sources too", false},
    [VEHICLE_JSON] = {"json", NULL, "the judgement as one JSON object", false},
};

/* Plain digits: a number of brakes is never written in another way. */
static int read_brakes(const char *text, uint32_t *out)
{
    uint32_t brakes = 0;
    if (text == NULL)
        return STATUS_CONTINUE;
    size_t digits = strspn(text, "0123456789");
    for (size_t i = 0; i < digits && brakes < 1000; i++)
        brakes = brakes * 10 + (uint32_t)(text[i] - '0');
    if (digits == 0 || text[digits] != '\0' || brakes < 1 || brakes > 999)
        return print_error("--brakes is a whole number from 1 to 999, not \"%s\"", text);
    *out = brakes;
    return STATUS_CONTINUE;
}

static int read_options(const command_line *from, vehicle_options *out)
{
    out->file = from->operands[0];
    out->separator = ',';
    out->encoding = option_value(from, VEHICLE_ENCODING);
    out->style.decimal_comma = option_given(from, VEHICLE_DECIMAL_COMMA);
    out->columns =
        (column_request){.fields = FIELDS_OF_VEHICLE, .needed = FIELDS_NEEDED | FIELD_BIT(RODT_FIELD_POSITION)};
    int status = read_unit_option(from, VEHICLE_UNIT, &out->style.unit);
    if (status == STATUS_CONTINUE)
        status = read_date_order_option(from, VEHICLE_DATE_ORDER, &out->date_order);
    if (status == STATUS_CONTINUE)
        status = column_request_read(from, VEHICLE_COLUMN, &out->columns);
    if (status == STATUS_CONTINUE)
        status = read_brakes(option_value(from, VEHICLE_BRAKES), &out->brakes);
    if (status == STATUS_CONTINUE)
        status = read_separator_option(from, VEHICLE_SEPARATOR, &out->separator);
    out->separator_given = option_given(from, VEHICLE_SEPARATOR);
    if (status == STATUS_CONTINUE && out->style.decimal_comma && out->separator == ',')
        status = print_error("with --decimal-comma another separator must be given, such as --separator ';'");
    return status;
}

static int judge(const command_line *from, const rule_context *context)
{
    vehicle_options given = {.context = context};
    vehicle_record *record = malloc(sizeof *record);
    if (record == NULL)
        return print_error("no memory");
    int status = read_options(from, &given);
    if (status == STATUS_CONTINUE)
        status = vehicle_read(&given, record);
    if (status == STATUS_CONTINUE) {
        if (option_given(from, VEHICLE_JSON))
            status = vehicle_write_json(record);
        else
            vehicle_print(record, option_given(from, VEHICLE_WHY));
        status = status == STATUS_CONTINUE ? vehicle_status(&record->vehicle) : status;
    }
    free(record);
    return status;
}

static int run(int argc, char **argv)
{
    command_line from;
    rule_context context;
    int status = parse_arguments(&vehicle_command, argc, argv, 1, 1, &from);
    if (status != STATUS_CONTINUE)
        return status;
    status = rule_context_open(option_value(&from, VEHICLE_RULES), NULL, option_value(&from, VEHICLE_LIMITS),
                               option_value(&from, VEHICLE_AS_OF), &context);
    if (status == STATUS_CONTINUE)
        status = judge(&from, &context);
    rule_context_close(&context);
    return status;
}

static const file_argument files[] = {{FILE_OPERAND, false}, {VEHICLE_LIMITS, false}};

const command_spec vehicle_command = {
    .name = "vehicle",
    .operands = "FILE",
    .summary = "judge a whole vehicle or combination from a small CSV file",
    .help = "Judges one vehicle or combination: every wheel end, what does not match across an axle, the roadside "
            "out-of-service criterion with its exact percentage, and what to do next for each brake. FILE is CSV with "
            "one wheel end a row, also compressed (gzip, Zstandard); - is standard input.\n"
            "\n"
            "Columns, in any order and by these headings (capitals, blanks, underscores, hyphens and points make no "
            "difference); others are passed over, and one that looks meant is named:\n"
            "  position                                  1L, 1R, 2L ... from the front through every unit; "
            "needed\n"
            "  chamber, released, applied                needed\n"
            "  stroke_class, rated_stroke, marked_limit  marks on the housing\n"
            "  psi, psi_after                            reservoirs, before and after\n"
            "  division, unit                            of the tape and bare numbers\n"
            "  date                                      each row by the law of its day\n"
            "  engine, spring_brake, drum                off, released, cold ...\n"
            "  arm_length                                of the slack adjuster\n"
            "  adjuster                                  manual or automatic\n"
            "\n"
            "  position,chamber,released,applied,psi,adjuster\n"
            "  1L,20,1 1/2,3 1/8,95,automatic\n"
            "\n"
            "  rodtravel vehicle truck.csv --brakes 10\n"
            "\n"
            "A brake that is not in the file is not measured: it is neither good nor zero. The status is also 1 where "
            "chambers or arms of an axle do not match (49 CFR 393.47(b), (c)), and 3 where a brake is not proven.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
