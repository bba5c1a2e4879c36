/* SPDX-License-Identifier: Apache-2.0 */
/* Practice of the checks in the cab: a short story for each step, and what is to be said of it. Each part uses those
 * above it: checks, checks_sheet, checks_ask. */
#ifndef PRACTICE_CHECKS_H
#define PRACTICE_CHECKS_H

#include "practice/practice.h"

#define CHECK_STORIES_MAX ((size_t)24)
#define CHECK_STORY_SIZE ((size_t)500)

/* What is to be done with the vehicle. */
typedef enum check_action { CHECK_GO, CHECK_REPORT, CHECK_STOP } check_action;

typedef struct check_story {
    rodt_step step;
    rodt_air_finding finding;    /* of an air check: the key */
    bool is_good;
    char text[CHECK_STORY_SIZE]; /* what is seen */
    rodt_pressure gauges[2];     /* what the gauge shows, and afterwards; not given = no gauge */
    bool in_kpa;                 /* of the gauge */
} check_story;

typedef struct check_stories {
    practice_setting setting;
    rodt_air_reading vehicle;
    size_t count;
    check_story list[CHECK_STORIES_MAX];
} check_stories;

/* Makes the stories of a setting: one for each step of the rule set that has a row, in its order, and one or two of
 * securing the vehicle. Equal settings make equal stories. */
void checks_generate(const practice_setting *setting, check_stories *out);

/* What is right, to be said: "good" or "defective"; "minor", "major" or "none"; "go on", "report" or "stop". */
bool checks_are_ranked(const check_stories *of);
const char *checks_result(const check_story *story);
const char *checks_rank(const check_story *story);
check_action checks_action(const check_story *story);
const char *checks_action_name(check_action action);
const char *checks_action_text(check_action action);

/* What the step is called. */
void checks_entitle(const check_stories *of, const check_story *story, char title[PRACTICE_TEXT_SIZE]);

/* Why: what one says of the reading, or the sentence of the step. */
void checks_explain(const check_stories *of, const check_story *story, char text[PRACTICE_TEXT_SIZE]);

void checks_describe(const check_stories *of, char words[PRACTICE_TEXT_SIZE]);

/* What is asked of a story: the result, how bad it is, what is to be done. */
#define CHECK_QUESTIONS 3
typedef struct check_question {
    const char *prompt;
    const char *choices[3]; /* NULL = fewer */
} check_question;

/* A question of a story and the choice that is right; NULL = it is not asked of this one. */
const check_question *checks_question(const check_stories *of, const check_story *story, size_t index,
                                      const char **right);

/* (checks_sheet.c) */
void checks_text_sheet(const check_stories *of, bool key, FILE *to);
void checks_html_sheet(const check_stories *of, bool key, FILE *to);

/* (checks_ask.c) Asks a person and adds to the score; false = the person has left. */
bool checks_interview(const check_stories *of, practice_score *score);

#endif
