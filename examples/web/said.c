/* SPDX-License-Identifier: Apache-2.0 */
/* The walk-round's side of a page: in place of ui/terminal.c and walkround/terminal.c. */
#include "said.h"
#include "memory_files.h"
#include "ui/terminal.h"
#include "walkround/walkround.h"

#include <errno.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

#define LINES_MAX ((size_t)2000) /* far more than the longest verdict */
#define UNFOLDED 1000000u
#define PROMPT_SIZE (2 * WALK_ANSWER_MAX + WALK_SAID_SIZE)

typedef struct said_line {
    const char *kind;
    char *label, *text;
} said_line;

static said_line lines[LINES_MAX];
static size_t line_count;
static bool keeps, after_blank;
static char prompt[PROMPT_SIZE];

unsigned line_width(FILE *to)
{
    (void)to;
    return keeps ? UNFOLDED : LINE_WIDTH;
}

/* The codes tell the headlines from other lines. */
bool wants_colour(FILE *to)
{
    (void)to;
    return keeps;
}

/* --- Lines --------------------------------------------------------------------------------------------- */

static void add(const char *kind, const char *label, size_t label_size, const char *text, size_t size)
{
    if (line_count == LINES_MAX)
        return;
    lines[line_count++] = (said_line){kind, strndup(label, label_size), strndup(text, size)};
    after_blank = false;
}

static const struct {
    const char *code, *kind;
} paints[] = {{"1;30;42", "good"}, {"1;37;41", "bad"}, {"1;30;46", "open"}, {"1;30;43", "edge"}, {"1;7", "heading"}};

/* A headline: "ESC [ code m text ESC [ 0 m". */
static bool add_painted(const char *line, size_t size)
{
    const char *end = memchr(line, 'm', size);
    if (line[0] != '\033' || end == NULL)
        return false;
    for (size_t i = 0; i < COUNT_OF(paints); i++) {
        size_t code = strlen(paints[i].code);
        if ((size_t)(end - line) == code + 2 && memcmp(line + 2, paints[i].code, code) == 0)
            add(paints[i].kind, "", 0, end + 2, size - (size_t)(end - line) - 2 - strlen(" \033[0m"));
    }
    return true;
}

/* A label is set apart by two blanks or more. */
static void add_plain(const char *line, size_t size)
{
    size_t indent = strspn(line, " "), gap = 0;
    for (size_t i = indent; gap == 0 && i + 1 < size; i++) {
        if (line[i] == ' ' && line[i + 1] == ' ')
            gap = i;
    }
    if (gap == 0) {
        add(after_blank ? "heading" : indent > 0 ? "detail" : "text", "", 0, line + indent, size - indent);
        return;
    }
    const char *text = line + gap + strspn(line + gap, " ");
    add("step", line + indent, gap - indent, text, size - (size_t)(text - line));
}

/* An error of the command begins with its name, which is none on a page. */
static void add_error(const char *line, size_t size)
{
    static const char name[] = "rodtravel: ";
    size_t before = size > strlen(name) && memcmp(line, name, strlen(name)) == 0 ? strlen(name) : strspn(line, " ");
    add("refused", "", 0, line + before, size - before);
}

static void take_line(int stream, const char *line, size_t size)
{
    if (size == 0)
        after_blank = true;
    else if (stream == 2)
        add_error(line, size);
    else if (!add_painted(line, size))
        add_plain(line, size);
}

/* What was printed by others than walk_print, in its place between their lines. */
static void take_streams(void)
{
    fflush(stdout);
    fflush(stderr);
    for (int stream = 1; stream <= 2; stream++) {
        const memory_file *file = memory_stream(stream);
        for (size_t at = 0, size; at < file->size; at += size + 1) {
            const char *line = file->bytes + at, *end = memchr(line, '\n', file->size - at);
            size = end != NULL ? (size_t)(end - line) : file->size - at;
            take_line(stream, line, size);
        }
    }
    memory_streams_clear();
}

void said_keep(bool kept)
{
    keeps = kept;
    said_forget();
}

void said_forget(void)
{
    take_streams();
    for (size_t i = 0; i < line_count; i++) {
        free(lines[i].label);
        free(lines[i].text);
    }
    line_count = 0;
    after_blank = false;
    prompt[0] = '\0';
}

void said_write(json_writer *json)
{
    take_streams();
    json_open(json, '[');
    for (size_t i = 0; i < line_count; i++) {
        json_open(json, '{');
        json_pair(json, "kind", lines[i].kind);
        if (lines[i].label != NULL && lines[i].label[0] != '\0')
            json_pair(json, "label", lines[i].label);
        json_pair(json, "text", lines[i].text);
        json_close(json, '}');
    }
    json_close(json, ']');
}

const char *said_prompt(void) { return prompt; }

/* --- The walk-round ------------------------------------------------------------------------------------ */

/* There is always a person, and answers are not read but given. */
bool walk_input_open(const char *file, walk_input *out)
{
    *out = (walk_input){.descriptor = -1, .file = NULL};
    errno = ENOENT;
    return file == NULL;
}

bool walk_is_person(const walk_input *from) { return from->file == NULL; }

/* The page has clocks of its own, and gives seconds. */
bool walk_has_clock(const walk_input *from)
{
    (void)from;
    return false;
}

input_status walk_time(walk_input *from, unsigned seconds, char text[WALK_ANSWER_MAX])
{
    (void)from;
    (void)seconds;
    text[0] = '\0';
    return INPUT_END;
}

input_status walk_read_line(walk_input *from, char text[WALK_ANSWER_MAX])
{
    (void)from;
    text[0] = '\0';
    return INPUT_END;
}

FILE *walk_out(void) { return stdout; }

static const char *kind_of(const char *label)
{
    static const char *const kinds[][2] = {{"= ", "noted"}, {"! ", "warning"}, {"- ", "caution"}};
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        if (strcmp(label, kinds[i][0]) == 0)
            return kinds[i][1];
    }
    return label[strspn(label, " ")] != '\0' ? "step" : label[0] == '\0' ? "text" : "detail";
}

void walk_print(const char *label, unsigned indent, const char *format, ...)
{
    char text[1500];
    va_list arguments;
    (void)indent;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    take_streams();
    const char *kind = kind_of(label), *from = label + strspn(label, " ");
    size_t size = strcspn(from, ":") == strlen(from) ? strlen(from) : strcspn(from, ":");
    bool titled = strcmp(kind, "step") == 0;
    add(after_blank && strcmp(kind, "text") == 0 ? "heading" : kind, from, titled ? size : 0, text, strlen(text));
}

/* A page has keys. */
void walk_print_typed(const char *format, ...)
{
    char text[1500];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    take_streams();
    add("typed", "", 0, text, strlen(text));
}

void walk_print_refusal(const char *text, uint32_t character, const char *why)
{
    (void)text;
    (void)character;
    take_streams();
    add("refused", "", 0, why, strlen(why));
}

void walk_echo(const char *text) { (void)text; }

void walk_prompt(const char *text)
{
    take_streams();
    snprintf(prompt, sizeof prompt, "%s", text);
}
