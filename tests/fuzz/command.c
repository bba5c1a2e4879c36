/* SPDX-License-Identifier: Apache-2.0 */
#include "command.h"
#include "source.h"

#include <dirent.h>
#include <fcntl.h>
#include <getopt.h>
#include <jansson.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

int rodtravel_main(int argc, char **argv);
int isatty(int descriptor);

#if defined(__SANITIZE_ADDRESS__)
#define SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED 1
#endif
#endif
#ifdef SANITIZED
#include <sanitizer/common_interface_defs.h>
#endif

/* --- The folder --------------------------------------------------------------------------------------- */

#define STREAMS 3

static char folder[256];
static int here = -1;          /* the folder */
static int before = -1;        /* the one that the program was started in */
static int streams[STREAMS];   /* files without a name: input, output, errors */
static int kept[STREAMS];      /* what the program was started with */
static int free_descriptor;    /* every one from it on was opened by the command */
static bool person;

static void each_file(void (*call)(const char *name))
{
    int listed = openat(here, ".", O_RDONLY | O_CLOEXEC);
    DIR *entries = listed < 0 ? NULL : fdopendir(listed);
    demand(entries != NULL);
    for (const struct dirent *entry = readdir(entries); entry != NULL; entry = readdir(entries)) {
        if (strcmp(entry->d_name, ".") != 0 && strcmp(entry->d_name, "..") != 0)
            call(entry->d_name);
    }
    closedir(entries);
}

static void remove_file(const char *name) { demand(unlinkat(here, name, 0) == 0); }

/* What the command puts into the name of a temporary file; no input gives such a name itself. */
#define MARK ".rodtravel-"

static void check_no_temporary(const char *name) { demand(strstr(name, MARK) == NULL); }

static void remove_folder(void)
{
    each_file(remove_file);
    rmdir(folder);
}

static void open_folder(void)
{
    const char *const places[] = {"/dev/shm", getenv("TMPDIR"), "."}; /* the first is no disk */
    bool made = false;
    for (size_t i = 0; i < 3 && !made; i++) {
        snprintf(folder, sizeof folder, "%s/rodtravel-XXXXXX", places[i] != NULL ? places[i] : ".");
        made = mkdtemp(folder) != NULL;
    }
    demand(made);
    here = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    before = open(".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    demand(here >= 0 && before >= 0);
    for (int i = 0; i < STREAMS; i++) {
        streams[i] = openat(here, "stream", O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
        kept[i] = fcntl(i, F_DUPFD_CLOEXEC, 0);
        demand(streams[i] >= 0 && kept[i] >= 0 && unlinkat(here, "stream", 0) == 0);
    }
#ifdef SANITIZED
    __sanitizer_set_report_fd((void *)(intptr_t)kept[2]);
#endif
    free_descriptor = kept[2] + 1;
    atexit(remove_folder);
}

static void write_all(int descriptor, const char *bytes, size_t size)
{
    while (size > 0) {
        ssize_t written = write(descriptor, bytes, size);
        demand(written > 0);
        bytes += written;
        size -= (size_t)written;
    }
}

/* Also of a file whose reader is elsewhere in it. */
static char *read_all(int descriptor, size_t *size)
{
    struct stat found;
    demand(fstat(descriptor, &found) == 0);
    *size = (size_t)found.st_size;
    char *bytes = malloc(*size + 1);
    demand(bytes != NULL && pread(descriptor, bytes, *size, 0) == found.st_size);
    bytes[*size] = '\0';
    return bytes;
}

static void rewind_stream(int i) { demand(ftruncate(streams[i], 0) == 0 && lseek(streams[i], 0, SEEK_SET) == 0); }

void command_begin(void)
{
    if (here < 0)
        open_folder();
    each_file(remove_file);
    command_input("", 0, false);
}

void command_put(const char *name, const char *bytes, size_t size)
{
    int descriptor = openat(here, name, O_WRONLY | O_CREAT | O_TRUNC | O_CLOEXEC, 0600);
    demand(descriptor >= 0);
    write_all(descriptor, bytes, size);
    close(descriptor);
}

char *command_get(const char *name, size_t *size)
{
    int descriptor = openat(here, name, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return NULL;
    char *bytes = read_all(descriptor, size);
    close(descriptor);
    return bytes;
}

void command_input(const char *bytes, size_t size, bool is_person)
{
    rewind_stream(0);
    write_all(streams[0], bytes, size);
    person = is_person;
}

/* The command asks it of standard input, to tell a person from a pipe. */
int isatty(int descriptor) { return person && descriptor == STDIN_FILENO; }

/* --- Arguments ---------------------------------------------------------------------------------------- */

void command_keep_inside(char *text, size_t size)
{
    for (size_t i = 0; i < size; i++) {
        bool fraction = i > 0 && text[i - 1] >= '0' && text[i - 1] <= '9';
        bool temporary = size - i >= strlen(MARK) && memcmp(text + i, MARK, strlen(MARK)) == 0;
        if ((text[i] == '/' && !fraction) || (text[i] == '.' && i > 0 && text[i - 1] == '.') || temporary)
            text[i] = ',';
    }
}

char *command_text(const uint8_t *data, size_t size)
{
    char *text = malloc(size + 1);
    demand(text != NULL);
    memcpy(text, data, size);
    text[size] = '\0';
    return text;
}

bool command_takes_long(const char *line)
{
    static const char *const options[] = {"-count", "-fault"};
    for (size_t i = 0; i < 2; i++) {
        const char *found = strstr(line, options[i]);
        if (found != NULL && strtoul(found + strcspn(found, "0123456789"), NULL, 10) > 3)
            return true;
    }
    return false;
}

char *command_line_of(char **text, size_t *size)
{
    char *line = *text, *end = *size > 0 ? memchr(line, '\n', *size) : NULL;
    size_t used = end != NULL ? (size_t)(end - line) : *size;
    line[used] = '\0';
    *text += used + (end != NULL);
    *size -= used + (end != NULL);
    return line;
}

const outcome *command_run(char *line)
{
    char *arguments[COMMAND_ARGUMENTS_MAX + 1] = {NULL}, *next = NULL;
    size_t count = 0;
    for (char *word = strtok_r(line, " ", &next); word != NULL && count < COMMAND_ARGUMENTS_MAX;
         word = strtok_r(NULL, " ", &next))
        arguments[count++] = word;
    return command_run_arguments(arguments);
}

/* --- One run ------------------------------------------------------------------------------------------ */

/* What a command leaves to the end of its process. */
typedef struct process {
    sigset_t mask;
    struct sigaction actions[4];
} process;

static const int signals[4] = {SIGINT, SIGTERM, SIGHUP, SIGPIPE};

static void enter(process *of)
{
    static char name[] = "rodtravel";
    char *nothing[] = {name, NULL};
    sigprocmask(SIG_SETMASK, NULL, &of->mask);
    for (int i = 0; i < 4; i++)
        sigaction(signals[i], NULL, &of->actions[i]);
    for (int i = 1; i < STREAMS; i++)
        rewind_stream(i);
    demand(lseek(streams[0], 0, SEEK_SET) == 0);
    for (int i = 0; i < STREAMS; i++)
        demand(dup2(streams[i], i) == i);
    demand(fchdir(here) == 0);
    optind = 0; /* forgets where the last run stopped; the order of operands is read from the text here */
    demand(getopt(1, nothing, "-:h") == -1);
}

static void leave(const process *of)
{
    fflush(stdout);
    fflush(stderr);
    fflush(stdin);
    clearerr(stdin);
    clearerr(stdout);
    for (int i = 0; i < STREAMS; i++)
        dup2(kept[i], i);
    int next = fcntl(0, F_DUPFD_CLOEXEC, free_descriptor);
    for (int i = free_descriptor; i <= next; i++)
        close(i);
    for (int i = 0; i < 4; i++)
        sigaction(signals[i], &of->actions[i], NULL);
    sigprocmask(SIG_SETMASK, &of->mask, NULL);
    demand(fchdir(before) == 0);
}

/* Messages keep pointing into the last arguments, so they are kept for one run more. */
static char **keep_arguments(char *const *arguments, int *count)
{
    static char texts[2][1 << 16], *pointers[2][COMMAND_ARGUMENTS_MAX + 2], name[] = "rodtravel";
    static int turn;
    size_t used = 0;
    turn = !turn;
    *count = 0;
    pointers[turn][(*count)++] = name;
    for (; *arguments != NULL && *count <= COMMAND_ARGUMENTS_MAX; arguments++) {
        size_t size = strlen(*arguments) + 1;
        if (used + size > sizeof texts[turn])
            break;
        memcpy(texts[turn] + used, *arguments, size);
        command_keep_inside(texts[turn] + used, size);
        pointers[turn][(*count)++] = texts[turn] + used;
        used += size;
    }
    pointers[turn][*count] = NULL;
    return pointers[turn];
}

const outcome *command_call(int (*call)(void *context), void *context)
{
    static outcome made;
    process was;
    free(made.out);
    free(made.err);
    enter(&was);
    made.status = call(context);
    leave(&was);
    made.out = read_all(streams[1], &made.out_size);
    made.err = read_all(streams[2], &made.err_size);
    demand(is_terminal_safe(made.err, made.err_size));
    each_file(check_no_temporary);
    return &made;
}

typedef struct command_arguments {
    int count;
    char **texts;
} command_arguments;

static int run_program(void *context)
{
    const command_arguments *given = context;
    return rodtravel_main(given->count, given->texts);
}

const outcome *command_run_arguments(char *const *arguments)
{
    command_arguments given;
    given.texts = keep_arguments(arguments, &given.count);
    const outcome *made = command_call(run_program, &given);
    demand(made->status >= GOOD && made->status <= OPEN);
    demand(made->status != REFUSED || made->err_size > 0);
    return made;
}

/* --- What is written ---------------------------------------------------------------------------------- */

/* Bytes of the character, 0 = it is no UTF-8. */
static size_t decode(const unsigned char *text, size_t size, uint32_t *character)
{
    size_t more = *text < 0x80 ? 0 : *text >= 0xF0 ? 3 : *text >= 0xE0 ? 2 : *text >= 0xC2 ? 1 : size;
    if (more >= size || *text > 0xF4)
        return 0;
    *character = more == 0 ? *text : *text & (0x3Fu >> more);
    for (size_t i = 1; i <= more; i++) {
        if ((text[i] & 0xC0) != 0x80)
            return 0;
        *character = *character << 6 | (text[i] & 0x3F);
    }
    static const uint32_t least[] = {0, 0x80, 0x800, 0x10000};
    bool surrogate = *character >= 0xD800 && *character <= 0xDFFF;
    return *character < least[more] || *character > 0x10FFFF || surrogate ? 0 : more + 1;
}

static bool is_control(uint32_t character)
{
    return (character < 0x20 && character != '\n') || (character >= 0x7F && character < 0xA0);
}

static bool is_bidirectional(uint32_t character)
{
    return character == 0x61C || character == 0x200E || character == 0x200F ||
           (character >= 0x2028 && character <= 0x202E) || (character >= 0x2066 && character <= 0x2069);
}

bool is_terminal_safe(const char *text, size_t size)
{
    const unsigned char *at = (const unsigned char *)text, *end = at + size;
    while (at < end) {
        uint32_t character;
        size_t bytes = decode(at, (size_t)(end - at), &character);
        if (bytes == 0 || is_control(character) || is_bidirectional(character))
            return false;
        at += bytes;
    }
    return true;
}

bool is_json(const char *text, size_t size)
{
    json_t *value = json_loadb(text, size, JSON_REJECT_DUPLICATES, NULL);
    if (value != NULL) {
        json_decref(value);
        return true;
    }
    for (const char *end = text + size; text < end;) {
        const char *line_end = memchr(text, '\n', (size_t)(end - text));
        if (line_end == NULL || (value = json_loadb(text, (size_t)(line_end - text), JSON_REJECT_DUPLICATES, NULL)) == NULL)
            return false;
        json_decref(value);
        text = line_end + 1;
    }
    return size > 0;
}
