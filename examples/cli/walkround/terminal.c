/* SPDX-License-Identifier: Apache-2.0 */
/* Lines from a person, a pipe or a file of answers, and to the screen. A line counts only with its end: half of "2 1/8"
 * can be read too. */
#include "walkround/walkround.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <signal.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

/* What a signal handler may touch: a byte in the pipe ends the waiting, whenever the signal comes. */
static volatile sig_atomic_t stop_signal;
static int stop_pipe[2] = {-1, -1};

static void record_signal(int number)
{
    int reason = errno;
    stop_signal = number;
    ssize_t written = write(stop_pipe[1], "", 1);
    (void)written;
    errno = reason;
}

static const int stop_signals[] = {SIGINT, SIGTERM, SIGHUP};

static void mask_signals(int how)
{
    sigset_t set;
    sigemptyset(&set);
    for (size_t i = 0; i < COUNT_OF(stop_signals); i++)
        sigaddset(&set, stop_signals[i]);
    sigprocmask(how, &set, NULL);
}

/* A signal between two answers is held back: the record is being written then. */
static bool handle_signals(void)
{
    struct sigaction action;
    memset(&action, 0, sizeof action);
    action.sa_handler = record_signal;
    sigemptyset(&action.sa_mask);
    if (pipe(stop_pipe) != 0)
        return false;
    mask_signals(SIG_BLOCK);
    for (size_t i = 0; i < COUNT_OF(stop_signals); i++)
        sigaction(stop_signals[i], &action, NULL);
    return true;
}

bool walk_input_open(const char *file, walk_input *out)
{
    bool standard = file == NULL || strcmp(file, "-") == 0;
    *out = (walk_input){.descriptor = standard ? STDIN_FILENO : open(file, O_RDONLY), .file = file};
    if (out->descriptor < 0)
        return false;
    if (standard)
        out->file = isatty(STDIN_FILENO) == 1 && file == NULL ? NULL : say("standard input");
    return handle_signals();
}

bool walk_is_person(const walk_input *from) { return from->file == NULL; }

bool walk_has_clock(const walk_input *from) { return walk_is_person(from); }

#define FOREVER (-1)

static input_status wait_for_bytes(const walk_input *from, int milliseconds)
{
    struct pollfd ready[] = {{.fd = from->descriptor, .events = POLLIN}, {.fd = stop_pipe[0], .events = POLLIN}};
    int found;
    mask_signals(SIG_UNBLOCK);
    do
        found = poll(ready, COUNT_OF(ready), milliseconds);
    while (found < 0 && errno == EINTR);
    int reason = errno;
    mask_signals(SIG_BLOCK);
    errno = reason;
    if (stop_signal != 0)
        return INPUT_STOPPED;
    return found > 0 ? INPUT_LINE : found == 0 ? INPUT_TIMEOUT : INPUT_FAILED;
}

/* A terminal that is gone reads as an error; the record treats it as the end of the input. A file has its end. */
static input_status fill(walk_input *from)
{
    input_status status = wait_for_bytes(from, FOREVER);
    if (status != INPUT_LINE)
        return status;
    ssize_t got = read(from->descriptor, from->bytes, sizeof from->bytes);
    from->at = 0;
    from->used = got > 0 ? (size_t)got : 0;
    bool ended = got == 0 || (got < 0 && errno == EIO && walk_is_person(from));
    return got > 0 ? INPUT_LINE : ended ? INPUT_END : INPUT_FAILED;
}

/* A zero byte would end the text where it does not end. */
static char kept_byte(char byte) { return byte == '\0' ? '\1' : byte; }

/* Some editors begin a file with a byte-order mark. */
static const char *after_mark(const char *text)
{
    static const char mark[] = "\xEF\xBB\xBF";
    return strncmp(text, mark, sizeof mark - 1) == 0 ? text + sizeof mark - 1 : text;
}

input_status walk_read_line(walk_input *from, char text[WALK_ANSWER_MAX])
{
    size_t size = 0;
    from->line++;
    for (;;) {
        input_status status = from->at < from->used ? INPUT_LINE : fill(from);
        if (status != INPUT_LINE)
            return status == INPUT_END && size > 0 && !walk_is_person(from) ? INPUT_CUT : status;
        char byte = from->bytes[from->at++];
        if (byte == '\n')
            break;
        if (size < WALK_ANSWER_MAX)
            text[size] = kept_byte(byte);
        size += size < WALK_ANSWER_MAX;
    }
    if (size == WALK_ANSWER_MAX)
        return INPUT_LONG;
    while (size > 0 && strchr(" \t\r", text[size - 1]) != NULL)
        size--;
    text[size] = '\0';
    const char *begin = from->line == 1 && !walk_is_person(from) ? after_mark(text) : text;
    begin += strspn(begin, " \t");
    memmove(text, begin, strlen(begin) + 1);
    return INPUT_LINE;
}

/* --- Clocks ------------------------------------------------------------------------------------------- */

static long elapsed_tenths(const struct timespec *start)
{
    struct timespec now;
    (void)clock_gettime(CLOCK_MONOTONIC, &now);
    return (long)(now.tv_sec - start->tv_sec) * 10 + (now.tv_nsec - start->tv_nsec) / 100000000L;
}

/* Waits for a key until the next second. */
static input_status wait_a_second(const walk_input *from, long tenths)
{
    int rest = (int)(10 - tenths % 10) * 100;
    return from->at < from->used ? INPUT_LINE : wait_for_bytes(from, rest);
}

input_status walk_time(walk_input *from, unsigned seconds, char text[WALK_ANSWER_MAX])
{
    struct timespec start;
    input_status status = INPUT_TIMEOUT;
    const long whole = (long)seconds * 10;
    long tenths = 0;
    (void)clock_gettime(CLOCK_MONOTONIC, &start);
    while (status == INPUT_TIMEOUT && (seconds == 0 || tenths < whole)) {
        fprintf(walk_out(), "\r  %ld s ", seconds == 0 ? tenths / 10 : (whole - tenths + 9) / 10);
        fflush(walk_out());
        status = wait_a_second(from, tenths);
        tenths = elapsed_tenths(&start);
    }
    bool ended = status == INPUT_TIMEOUT;
    fputs(ended ? "\r  0 s \a\n" : "\n", walk_out());
    if (status == INPUT_LINE)
        status = walk_read_line(from, text);
    if (ended)
        snprintf(text, WALK_ANSWER_MAX, "%u", seconds);
    else if (seconds == 0)
        snprintf(text, WALK_ANSWER_MAX, "%ld.%ld", tenths / 10, tenths % 10);
    else
        text[0] = '\0';
    return ended ? INPUT_LINE : status;
}

/* --- Output ------------------------------------------------------------------------------------------- */

FILE *walk_out(void) { return stdout; }

void walk_print(const char *label, unsigned indent, const char *format, ...)
{
    char text[1500];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    print_wrapped(walk_out(), label, indent, text);
}

void walk_print_typed(const char *format, ...)
{
    char text[1500];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(text, sizeof text, format, arguments);
    va_end(arguments);
    walk_print("", 0, "%s", text);
}

void walk_print_refusal(const char *text, uint32_t character, const char *why)
{
    if (character > 0)
        print_place(walk_out(), line_width(walk_out()), text, character);
    walk_print("", 0, say("Not accepted: %s%s"), why, strchr(".?", why[strlen(why) - 1]) != NULL ? "" : ".");
}

void walk_echo(const char *text)
{
    print_safely(walk_out(), text);
    fputc('\n', walk_out());
}

/* Room after a question for a reading; where there is less, the answer gets a line of its own. */
#define ANSWER_ROOM 14u

void walk_prompt(const char *text)
{
    if (columns_of_text(text) + ANSWER_ROOM <= line_width(walk_out())) {
        print_safely(walk_out(), text);
        fputs(say(": "), walk_out());
    } else {
        walk_print("", 0, "%s", text);
        fputs("> ", walk_out());
    }
    fflush(walk_out());
}
