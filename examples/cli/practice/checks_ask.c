/* SPDX-License-Identifier: Apache-2.0 */
/* The stories of checks at a terminal: each question marked at once, with the reason. */
#include "practice/checks.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <stdio.h>
#include <string.h>
#include <unistd.h>

#define ANSWER_SIZE ((size_t)80)

typedef enum asked { ASKED_RIGHT, ASKED_WRONG, ASKED_OPEN, ASKED_LEFT } asked;

static bool read_answer(char line[ANSWER_SIZE])
{
    if (fgets(line, (int)ANSWER_SIZE, stdin) == NULL) {
        practice_note_end();
        return false;
    }
    for (int c = strchr(line, '\n') == NULL ? getchar() : '\n'; c != EOF && c != '\n';)
        c = getchar();
    line[strcspn(line, "\r\n")] = '\0';
    if (isatty(STDIN_FILENO) == 0) {
        print_safely(stdout, line);
        putchar('\n');
    }
    return true;
}

/* The choice that begins like the answer, in any language; -1 = none, or several. */
static int find_choice(const check_question *question, const char *answer)
{
    int found = -1;
    for (int i = 0; i < 3 && question->choices[i] != NULL; i++) {
        if (is_beginning(question->choices[i], answer, strlen(answer)))
            found = found == -1 ? i : -2;
    }
    return found < 0 ? -1 : found;
}

static asked ask(const check_question *question, const char *right)
{
    char line[ANSWER_SIZE];
    for (;;) {
        printf("      %s ", say(question->prompt));
        fflush(stdout);
        if (!read_answer(line) || is_said("quit", line, strlen(line)))
            return ASKED_LEFT;
        if (line[0] == '\0' || is_said(TO_SAY("skip"), line, strlen(line)))
            return ASKED_OPEN;
        int chosen = find_choice(question, line);
        if (chosen >= 0)
            return strcmp(question->choices[chosen], right) == 0 ? ASKED_RIGHT : ASKED_WRONG;
        print_error("one of the words in the question is expected, or an empty line");
    }
}

static void mark(asked how, const char *right, practice_score *score)
{
    if (how == ASKED_RIGHT)
        score->right++;
    else if (how == ASKED_WRONG)
        score->wrong++;
    else
        score->open++;
    fputs("      ", stdout);
    if (how == ASKED_RIGHT)
        fputs(say("right"), stdout);
    else
        printf(how == ASKED_WRONG ? say("wrong: %s") : say("the answer: %s"), say(right));
    putchar('\n');
}

/* False: the person has left. */
static bool ask_one(const check_question *question, const char *right, practice_score *score)
{
    asked how = ask(question, right);
    if (how == ASKED_LEFT)
        return false;
    mark(how, right, score);
    return true;
}

const check_question *checks_question(const check_stories *of, const check_story *story, size_t index,
                                      const char **right)
{
    static const check_question questions[CHECK_QUESTIONS] = {
        {TO_SAY("good or defective?"), {"good", "defective", NULL}},
        {TO_SAY("minor or major, or none?"), {"minor", "major", "none"}},
        {TO_SAY("go on, report or stop?"), {"go on", "report", "stop"}}};
    const char *const answers[CHECK_QUESTIONS] = {checks_result(story), checks_rank(story),
                                                  checks_action_name(checks_action(story))};
    *right = answers[index];
    bool ranked = checks_are_ranked(of) && story->finding.reading.check != RODT_AIR_CHECK_NONE;
    return index == 1 && !ranked ? NULL : &questions[index];
}

static bool ask_story(const check_stories *of, size_t index, practice_score *score)
{
    const check_story *story = &of->list[index];
    char title[PRACTICE_TEXT_SIZE], why[PRACTICE_TEXT_SIZE], number[24], line[PRACTICE_TEXT_SIZE * 2];
    checks_entitle(of, story, title);
    snprintf(number, sizeof number, "%zu.", index + 1);
    snprintf(line, sizeof line, say("%s: %s"), title, story->text);
    putchar('\n');
    print_wrapped(stdout, number, 4, line);
    for (size_t i = 0; i < CHECK_QUESTIONS; i++) {
        const char *right;
        const check_question *question = checks_question(of, story, i, &right);
        if (question != NULL && !ask_one(question, right, score))
            return false;
    }
    checks_explain(of, story, why);
    print_wrapped(stdout, say("    Why"), 10, why);
    print_wrapped(stdout, say("    Do"), 10, checks_action_text(checks_action(story)));
    return true;
}

bool checks_interview(const check_stories *of, practice_score *score)
{
    char words[PRACTICE_TEXT_SIZE], seed[SEED_SIZE];
    print_title(stdout, PAINT_STRONG, say("CHECKS IN THE CAB, PRACTICE"), practice_format_seed(of->setting.seed, seed));
    checks_describe(of, words);
    print_wrapped(stdout, "", 0, words);
    print_wrapped(stdout, "", 0, say(PRACTICE_CAUTION));
    print_wrapped(stdout, "", 0,
                  say("The first letters of an answer are enough. An empty line leaves a question out, quit ends."));
    for (size_t i = 0; i < of->count; i++) {
        if (!ask_story(of, i, score))
            return false;
    }
    return true;
}
