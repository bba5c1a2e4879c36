/* SPDX-License-Identifier: Apache-2.0 */
/* rodtravel report: one inspection, from its record, as text, page, drawing or JSON. */
#include "io/atomic_file.h"
#include "commands.h"
#include "input/rule_context.h"
#include "report/report.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/options.h"

#include <stdlib.h>

enum { REPORT_HTML, REPORT_SVG, REPORT_RECORD, REPORT_LIMITS, REPORT_JSON };

static const option_spec options[] = {
    [REPORT_HTML] = {"html", "FILE",
                     "write the report as one page that needs no other file; it prints on A4 and Letter", false},
    [REPORT_SVG] = {"svg", "FILE", "write the drawing of the vehicle alone", false},
    [REPORT_RECORD] = {"record", "FILE", "write the record again, its entries in the published order", false},
    [REPORT_LIMITS] = {"limits", "FILE", "a carrier's own, stricter limits on top of the record's rule set", false},
    [REPORT_JSON] = {"json", NULL, "the judged record as one JSON object", false},
};

/* Writes one file of the report. */
static int write_file(const inspection *of, size_t option, const char *name)
{
    atomic_file file;
    if (name == NULL)
        return STATUS_CONTINUE;
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    if (option == REPORT_HTML)
        report_write_html(of, file.to);
    else if (option == REPORT_SVG)
        report_write_svg(of, file.to, true);
    else
        status = record_write(&of->record, file.to);
    return atomic_file_close(&file, status == STATUS_CONTINUE);
}

static int report(const command_line *from, inspection *of, rule_context *context)
{
    static const size_t outputs[] = {REPORT_HTML, REPORT_SVG, REPORT_RECORD};
    int status = record_read(from->operands[0], &of->record);
    if (status == STATUS_CONTINUE)
        status = record_open_rules(&of->record, option_value(from, REPORT_LIMITS), context);
    if (status == STATUS_CONTINUE)
        status = record_judge(of, context);
    bool wanted = false;
    for (size_t i = 0; i < COUNT_OF(outputs) && status == STATUS_CONTINUE; i++) {
        wanted = wanted || option_given(from, outputs[i]);
        status = write_file(of, outputs[i], option_value(from, outputs[i]));
    }
    if (status != STATUS_CONTINUE)
        return status;
    if (option_given(from, REPORT_JSON))
        status = report_write_json(of);
    else if (!wanted)
        report_print(of);
    return status == STATUS_CONTINUE ? inspection_status(of) : status;
}

static int run(int argc, char **argv)
{
    command_line from;
    int status = parse_arguments(&report_command, argc, argv, 1, 1, &from);
    if (status != STATUS_CONTINUE)
        return status;
    inspection *of = calloc(1, sizeof *of);
    if (of == NULL)
        return print_error("no memory");
    rule_context context = {.rules = NULL};
    status = report(&from, of, &context);
    rule_context_close(&context);
    record_free(&of->record);
    free(of);
    return status;
}

static const file_argument files[] = {{FILE_OPERAND, false}, {REPORT_LIMITS, false}, {REPORT_HTML, true},
                                      {REPORT_SVG, true}, {REPORT_RECORD, true}};

const command_spec report_command = {
    .name = "report",
    .operands = "RECORD",
    .summary = "report an inspection from its record: text, page, drawing or JSON",
    .help = "Judges the record of one inspection and reports it: the outcome, every wheel end, defects, air "
            "checks, what to do next, sources and cautions, and a place to sign. RECORD is a JSON file as "
            "inspection.schema.json "
            "describes it (JSON Schema 2020-12); - is standard input.\n"
            "\n"
            "  rodtravel report inspection.json\n"
            "  rodtravel report inspection.json --html report.html\n"
            "\n"
            "Every reading in a record is a text, as it was read: \"2 1/8\". A text that cannot be read is "
            "refused with its place. A file is there whole or not at all: it is written under another name "
            "first. FILE may be - for "
            "standard output.\n",
    .options = options,
    .option_count = COUNT_OF(options),
    .files = files,
    .file_count = COUNT_OF(files),
    .run = run,
};
