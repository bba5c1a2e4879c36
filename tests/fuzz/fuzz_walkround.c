/* SPDX-License-Identifier: Apache-2.0 */
/* Fuzz target: a walk-round. The first line is the options, "person" before them for somebody at a terminal; then the
 * answers, a line each, and "----" where the walk-round is left and taken up again. After each part the record is
 * whole, is written as it is read, and is taken up; the report of one that ended well is good too. */
#include "command.h"
#include "record/record.h"
#include "source.h"
#include "ui/exit_status.h"

#include <string.h>

#define PARTS_MOST 4
#define LEFT "----\n"

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

static const char limits[] = "family,size,class,limit\nclamp,30,standard,1 7/8\nclamp,20,standard,1 5/8\n";

static int read_and_write(void *context)
{
    inspection_record record;
    int status = record_read("record", &record);
    (void)context;
    if (status == STATUS_CONTINUE)
        status = record_write(&record, stdout);
    record_free(&record);
    return status;
}

static void check_record(void)
{
    size_t size;
    char *bytes = command_get("record", &size);
    if (bytes == NULL)
        return;
    const outcome *made = command_call(read_and_write, NULL);
    demand(made->status == STATUS_CONTINUE && made->out_size == size && memcmp(made->out, bytes, size) == 0);
    free(bytes);
}

static int walk(const char *options, const char *answers, size_t size)
{
    char line[600];
    bool is_person = strncmp(options, "person", 6) == 0;
    command_input(answers, size, is_person);
    command_put("answers", answers, size);
    snprintf(line, sizeof line, "walkround record %.500s%s", options + (is_person ? 6 : 0),
             is_person ? "" : " --answers answers");
    const outcome *made = command_run(line);
    int status = made->status;
    demand(is_person || is_terminal_safe(made->out, made->out_size));
    check_record();
    return status;
}

/* Without an answer nothing is lost. */
static void check_taken_up(const char *options)
{
    size_t before_size, after_size;
    char *before = command_get("record", &before_size);
    if (before == NULL)
        return;
    walk(options, "", 0);
    char *after = command_get("record", &after_size);
    demand(after != NULL && after_size >= before_size);
    free(before);
    free(after);
}

static void check_report(const char *options)
{
    char line[64];
    snprintf(line, sizeof line, "report record%s", strstr(options, "--limits") != NULL ? " --limits limits" : "");
    const outcome *made = command_run(line);
    demand(made->status == GOOD);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = command_text(data, size), *at = text;
    command_keep_inside(text, size);
    command_begin();
    command_put("limits", limits, sizeof limits - 1);
    const char *options = command_line_of(&at, &size);
    int status = REFUSED;
    for (int part = 0; part < PARTS_MOST && (part == 0 || size > 0); part++) {
        const char *end = size == 0 ? NULL : strstr(at, LEFT);
        size_t used = end != NULL ? (size_t)(end - at) : size, skipped = end != NULL ? strlen(LEFT) : 0;
        status = walk(options, at, used);
        at += used + skipped;
        size -= used + skipped;
    }
    if (status == GOOD && strstr(options, "-h") == NULL)
        check_report(options);
    check_taken_up(options);
    free(text);
    return 0;
}
