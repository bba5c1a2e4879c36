/* SPDX-License-Identifier: Apache-2.0 */
/* The questions at a terminal: one wheel end after the other, marked at once; leaving early keeps the score. */
#include "practice/practice.h"
#include "ui/format.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <inttypes.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define INDENT 16
#define LINE_MOST ((size_t)200) /* no answer is nearly as long */

/* --- Marks shown -------------------------------------------------------------------------------------- */

static void write_given(const practice *of, practice_question question, const practice_answer *answer,
                        char text[PRACTICE_WORDS_SIZE])
{
    char word[WORD_SIZE] = "none";
    switch (question) {
    case ASK_STROKE:
    case ASK_LIMIT:
        snprintf(text, PRACTICE_WORDS_SIZE, "%s%s", answer->negative ? "-" : "",
                 answer->none ? word : practice_length_word(of, answer->length, word));
        break;
    case ASK_VERDICT: snprintf(text, PRACTICE_WORDS_SIZE, "%s", rodt_verdict_name((rodt_verdict)answer->word)); break;
    case ASK_REASON: snprintf(text, PRACTICE_WORDS_SIZE, "%s", rodt_reason_code((rodt_reason)answer->word)); break;
    case ASK_COUNT:
        if (answer->is_percent)
            (void)rodt_length_format_decimal(answer->length, RODT_UNIT_INCH, answer->digits, RODT_ROUND_HALF_EVEN, word,
                                            sizeof word);
        snprintf(text, PRACTICE_WORDS_SIZE, "%s%s", answer->is_percent ? word : format_length(answer->length, word),
                 answer->is_percent ? " %" : "");
        break;
    case ASK_OUTCOME: snprintf(text, PRACTICE_WORDS_SIZE, "%s", rodt_outcome_name((rodt_outcome)answer->word)); break;
    case ASK_QUESTIONS: text[0] = '\0';
    }
}

static practice_answer truth_of(const practice *of, size_t end, practice_question question)
{
    const rodt_count *count = &of->judged.vehicle.count;
    const rodt_finding *finding = &of->judged.findings[end];
    practice_answer out = {.given = true};
    switch (question) {
    case ASK_STROKE: out.length = finding->applied_stroke; break;
    case ASK_LIMIT: out.length = finding->limit; break;
    case ASK_VERDICT: out.word = (int)finding->verdict; break;
    case ASK_REASON: out.word = (int)practice_deciding(finding); break;
    case ASK_COUNT: out.length = (rodt_length){count->defective.num, count->defective.den}; break;
    case ASK_OUTCOME: out.word = (int)count->outcome; break;
    case ASK_QUESTIONS: break;
    }
    out.none = question <= ASK_LIMIT && !rodt_length_given(out.length);
    return out;
}

static void print_mark(const practice *of, size_t end, practice_question question, const practice_answer *answer,
                       practice_mistake mistake)
{
    char label[40], given[PRACTICE_WORDS_SIZE], right[PRACTICE_WORDS_SIZE], text[3 * PRACTICE_WORDS_SIZE];
    const practice_answer truth = truth_of(of, end, question);
    write_given(of, question, answer, given);
    write_given(of, question, &truth, right);
    snprintf(label, sizeof label, "      %s", practice_question_word(question));
    if (!answer->given)
        snprintf(text, sizeof text, "not answered: %s", right);
    else if (mistake == MISTAKE_NONE)
        snprintf(text, sizeof text, "right: %s", given);
    else
        snprintf(text, sizeof text, "WRONG: %s; right is %s; %s", given, right, practice_mistake_sentence(mistake));
    print_wrapped(stdout, label, INDENT, text);
}

void practice_print_marks(const practice *of, size_t end, practice_question first, const practice_answer *answers,
                          const practice_mistake *mistakes)
{
    int count = first == ASK_STROKE ? ASK_END_QUESTIONS : ASK_QUESTIONS - ASK_COUNT;
    for (int i = 0; i < count; i++)
        print_mark(of, end, (practice_question)((int)first + i), &answers[i], mistakes[i]);
}

/* --- Asking ------------------------------------------------------------------------------------------- */

/* A signal can reach nothing but this; Ctrl-C ends the questions, and the score is still shown. */
static volatile sig_atomic_t interrupted;

static void interrupt(int number)
{
    (void)number;
    interrupted = 1;
}

/* A terminal shows what is typed; what comes through a pipe is shown here, so that the session can be read. */
static void show_answer(const char *line)
{
    if (isatty(STDIN_FILENO) != 0)
        return;
    print_safely(stdout, line);
    putchar('\n');
}

/* One line without its end, cut where no answer goes on. False: there is no more. */
static bool get_line(char line[LINE_MOST + 2], size_t *size)
{
    int sign = EOF;
    *size = 0;
    while (interrupted == 0 && (sign = getchar()) != EOF && sign != '\n') {
        if (*size <= LINE_MOST)
            line[(*size)++] = (char)sign;
    }
    line[*size] = '\0';
    show_answer(line);
    return interrupted == 0 && (sign != EOF || *size > 0);
}

static const char *question_words(practice_question question)
{
    static const char *const words[] = {
        "the applied stroke", "the limit", "the verdict", "the reason", "the number of brakes", "the outcome"};
    return words[question];
}

static void prompt(const practice *of, practice_question question)
{
    if (question == ASK_COUNT)
        printf("Defective brakes, halves too, of %zu, or their share in %%? ", of->judged.count);
    else if (question == ASK_OUTCOME)
        fputs("By the roadside criterion (out, below, ambiguous, open)? ", stdout);
    else
        printf("      %s? ", practice_question_word(question));
    fflush(stdout);
}

/* Asks until it can be read. False: the person has left. */
static bool ask(const practice *of, practice_question question, practice_answer *out)
{
    char line[LINE_MOST + 2];
    size_t size;
    rodt_error error = {.status = RODT_OK};
    *out = (practice_answer){.given = false};
    for (;;) {
        prompt(of, question);
        if (!get_line(line, &size) || strcmp(line, "quit") == 0)
            return false;
        if (strcmp(line, "?") == 0) {
            practice_print_lists(stdout);
            continue;
        }
        if (size > LINE_MOST) {
            print_error("an answer is one short line");
            continue;
        }
        rodt_status status = practice_read(question, line, size, of->setting.unit, out, &error);
        if (status == RODT_OK || status == RODT_E_EMPTY)
            return true;
        print_text_error(question_words(question), line, &error);
    }
}

/* True: every question was put. */
static bool ask_some(const practice *of, practice_question first, size_t count, practice_answer *answers)
{
    for (size_t i = 0; i < count; i++)
        answers[i] = (practice_answer){.given = false};
    for (size_t i = 0; i < count; i++) {
        if (!ask(of, (practice_question)((size_t)first + i), &answers[i]))
            return false;
    }
    return true;
}

static bool ask_end(const practice *of, size_t end, practice_score *score)
{
    practice_answer answers[ASK_END_QUESTIONS];
    practice_mistake mistakes[ASK_END_QUESTIONS];
    fputc('\n', stdout);
    practice_print_end(of, end, stdout);
    bool stayed = ask_some(of, ASK_STROKE, ASK_END_QUESTIONS, answers);
    practice_mark_end(of, end, answers, mistakes);
    for (size_t i = 0; i < ASK_END_QUESTIONS; i++) {
        if (stayed || answers[i].given)
            practice_count_answer(score, &answers[i], mistakes[i]);
    }
    if (!stayed && !answers[0].given)
        return false;
    fputs(stayed ? "" : "\n", stdout);
    practice_print_marks(of, end, ASK_STROKE, answers, mistakes);
    practice_print_truth(of, end, stdout);
    return stayed;
}

static bool ask_vehicle(const practice *of, practice_score *score)
{
    practice_answer answers[2];
    practice_mistake mistakes[2];
    fputc('\n', stdout);
    bool stayed = ask_some(of, ASK_COUNT, 2, answers);
    practice_mark_vehicle(of, answers, mistakes);
    for (size_t i = 0; i < 2; i++) {
        if (stayed || answers[i].given)
            practice_count_answer(score, &answers[i], mistakes[i]);
    }
    if (!stayed && !answers[0].given)
        return false;
    practice_print_marks(of, 0, ASK_COUNT, answers, mistakes);
    practice_print_vehicle_truth(of, stdout);
    return stayed;
}

static void greet(const practice *of)
{
    char words[PRACTICE_WORDS_SIZE];
    printf("BRAKE STROKE PRACTICE   seed %" PRIu64 "\n", of->setting.seed);
    practice_about_words(of, words);
    print_wrapped(stdout, "", 0, words);
    practice_repeat_words(of, words);
    print_wrapped(stdout, "Again with:", 12, words);
    print_wrapped(stdout, "", 0, PRACTICE_CAUTION);
    practice_print_lists(stdout);
    print_wrapped(stdout, "", 0, PRACTICE_TAPE_NOTE);
    print_wrapped(stdout, "", 0, "An empty line leaves a question out, none means that there is no such figure, "
                                 "? shows the lists, quit ends.");
}

bool practice_ask(const practice *of, practice_score *score)
{
    struct sigaction action = {.sa_handler = interrupt}, before;
    sigemptyset(&action.sa_mask);
    bool caught = sigaction(SIGINT, &action, &before) == 0;
    greet(of);
    bool stayed = true;
    for (size_t i = 0; stayed && i < of->judged.count; i++)
        stayed = ask_end(of, i, score);
    stayed = stayed && ask_vehicle(of, score);
    if (!stayed)
        fputc('\n', stdout);
    if (caught)
        (void)sigaction(SIGINT, &before, NULL);
    return stayed;
}
