/* SPDX-License-Identifier: Apache-2.0 */
/* The questions at a terminal: one wheel end after the other, marked at once; leaving early keeps the score. */
#include "practice/practice.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <errno.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define ANSWER_ROOM 18u /* columns of an answer after its question */
#define LINE_MAX_SIZE ((size_t)200) /* no answer is nearly as long */

/* --- Asking ------------------------------------------------------------------------------------------- */

/* A signal can reach nothing but this; Ctrl-C ends the questions, and the score is still shown. */
static volatile sig_atomic_t interrupted;

static void interrupt(int number)
{
    (void)number;
    interrupted = 1;
}

static int read_failure;

void practice_note_end(void)
{
    if (ferror(stdin) != 0 && errno != EINTR)
        read_failure = errno;
}

int practice_read_failure(void) { return read_failure; }

/* A terminal shows what is typed; what comes through a pipe is shown here, so that the session can be read. */
static void show_answer(const char *line)
{
    if (isatty(STDIN_FILENO) != 0)
        return;
    print_safely(stdout, line);
    putchar('\n');
}

/* One line without its end, cut where no answer goes on. False: there is no more. */
static bool get_line(char line[LINE_MAX_SIZE + 2], size_t *size)
{
    int c = EOF;
    *size = 0;
    while (interrupted == 0 && (c = getchar()) != EOF && c != '\n') {
        if (*size <= LINE_MAX_SIZE)
            line[(*size)++] = (char)c;
    }
    if (c == EOF)
        practice_note_end();
    line[*size] = '\0';
    show_answer(line);
    return interrupted == 0 && (c != EOF || *size > 0);
}

static const char *question_words(practice_question question)
{
    static const char *const words[] = {
        TO_SAY("the released reading"), TO_SAY("the applied reading"), TO_SAY("the applied stroke"),
        TO_SAY("the limit"),            TO_SAY("the verdict"),         TO_SAY("the reason"),
        TO_SAY("the number of brakes"), TO_SAY("the outcome")};
    return say(words[question]);
}

static void prompt(const practice *of, practice_question question)
{
    char text[160];
    if (question == ASK_COUNT)
        snprintf(text, sizeof text, say("Defective brakes, halves too, of %zu, or their share in %%"),
                 of->judged.count);
    else if (question == ASK_OUTCOME)
        snprintf(text, sizeof text, "%s", say("By the roadside criterion (out, below, ambiguous, open)"));
    else
        snprintf(text, sizeof text, "      %s", say(practice_question_name(question)));
    bool fits = columns_of_text(text) + ANSWER_ROOM < line_width(stdout);
    if (fits)
        printf(say("%s? "), text);
    else
        print_wrapped(stdout, "", 0, text);
    fputs(fits ? "" : "? ", stdout);
    fflush(stdout);
}

/* Asks until it can be read. False: the person has left. */
static bool ask(const practice *of, practice_question question, practice_answer *out)
{
    char line[LINE_MAX_SIZE + 2];
    size_t size;
    rodt_error error = {.status = RODT_OK};
    *out = (practice_answer){.given = false};
    for (;;) {
        prompt(of, question);
        if (!get_line(line, &size) || is_said(TO_SAY("quit"), line, size))
            return false;
        if (is_said(TO_SAY("skip"), line, size))
            line[size = 0] = '\0';
        if (strcmp(line, "?") == 0) {
            practice_print_lists(stdout);
            continue;
        }
        if (size > LINE_MAX_SIZE) {
            print_error("an answer is one short line");
            continue;
        }
        rodt_status status = practice_parse(question, line, size, of->setting.unit, out, &error);
        if (status == RODT_OK || status == RODT_E_EMPTY)
            return true;
        print_text_error(question_words(question), line, &error);
    }
}

/* Asks the questions of a group and marks them. False: the person has left. */
static bool ask_group(const practice *of, size_t end, practice_question first, practice_score *score)
{
    practice_answers answers = {0};
    bool stayed = true;
    fputc('\n', stdout);
    if (first == ASK_RELEASED)
        practice_print_end(of, end, stdout);
    for (int i = (int)first; stayed && i < practice_group_end(first); i++)
        stayed = ask(of, (practice_question)i, &answers.answers[i]);
    practice_mark(of, end, first, &answers);
    practice_score_add(score, first, &answers, !stayed);
    if (!stayed && !answers.answers[first].given)
        return false;
    fputs(stayed || first == ASK_COUNT ? "" : "\n", stdout);
    practice_print_marks(of, end, first, &answers);
    return stayed;
}

static void greet(const practice *of)
{
    char words[PRACTICE_TEXT_SIZE], seed[SEED_SIZE];
    print_title(stdout, PAINT_STRONG, say("BRAKE STROKE PRACTICE"), practice_format_seed(of->setting.seed, seed));
    practice_describe_vehicle(of, words);
    print_wrapped(stdout, "", 0, words);
    practice_format_command(of, words);
    print_wrapped(stdout, say("Again with:"), 12, words);
    print_wrapped(stdout, "", 0, say(PRACTICE_CAUTION));
    practice_print_lists(stdout);
    print_wrapped(stdout, "", 0, say(PRACTICE_TAPE_NOTE));
    print_wrapped(stdout, "", 0, say("An empty line leaves a question out, none means that there is no such figure, "
                                     "? shows the lists, quit ends."));
}

bool practice_interview(const practice *of, practice_score *score)
{
    struct sigaction action = {.sa_handler = interrupt}, before;
    sigemptyset(&action.sa_mask);
    bool caught = sigaction(SIGINT, &action, &before) == 0;
    greet(of);
    bool stayed = true;
    for (size_t i = 0; stayed && i < of->judged.count; i++)
        stayed = ask_group(of, i, ASK_RELEASED, score);
    stayed = stayed && ask_group(of, 0, ASK_COUNT, score);
    if (!stayed)
        fputc('\n', stdout);
    if (caught)
        (void)sigaction(SIGINT, &before, NULL);
    return stayed;
}
