/* SPDX-License-Identifier: Apache-2.0 */
/* Practice of the checks in the cab as data: {"do": "checks", "arguments": [RULES, SEED]}. */
#include "page.h"
#include "practice/checks.h"
#include "ui/compiler.h"
#include "ui/language.h"

#include <stdlib.h>
#include <string.h>

static void put_choices(json_writer *json, const check_question *question)
{
    json_key(json, "choices");
    json_open(json, '[');
    for (size_t i = 0; i < COUNT_OF(question->choices) && question->choices[i] != NULL; i++) {
        json_open(json, '{');
        json_pair(json, "word", question->choices[i]);
        json_pair(json, "says", say(question->choices[i]));
        json_close(json, '}');
    }
    json_close(json, ']');
}

static void put_questions(json_writer *json, const check_stories *of, const check_story *story)
{
    json_key(json, "questions");
    json_open(json, '[');
    for (size_t i = 0; i < CHECK_QUESTIONS; i++) {
        const char *right;
        const check_question *question = checks_question(of, story, i, &right);
        if (question == NULL)
            continue;
        json_open(json, '{');
        json_pair(json, "prompt", say(question->prompt));
        put_choices(json, question);
        json_pair(json, "right", right);
        json_close(json, '}');
    }
    json_close(json, ']');
}

static void put_story(json_writer *json, const check_stories *of, const check_story *story)
{
    char title[PRACTICE_TEXT_SIZE], why[PRACTICE_TEXT_SIZE];
    checks_entitle(of, story, title);
    checks_explain(of, story, why);
    json_open(json, '{');
    json_pair(json, "title", title);
    json_pair(json, "text", story->text);
    put_questions(json, of, story);
    json_pair(json, "why", why);
    json_pair(json, "action", checks_action_text(checks_action(story)));
    json_close(json, '}');
}

/* Digits alone, and not more than a number of 64 bits has. */
static bool read_seed(const char *text, uint64_t *seed)
{
    size_t size = strspn(text, "0123456789");
    *seed = strtoull(text, NULL, 10);
    return size > 0 && size < 19 && text[size] == '\0';
}

const char *checks_reply(const request *from, json_writer *json)
{
    practice_setting setting = {.build = PRACTICE_ANY, .level = PRACTICE_MIXED, .unit = RODT_UNIT_IN};
    check_stories stories;
    char about[PRACTICE_TEXT_SIZE];
    if (from->language != NULL && !choose_language(from->language))
        return "bad-language";
    if (from->argument_count != 2 || !read_seed(from->arguments[1], &setting.seed))
        return "bad-seed";
    setting.rules = rodt_rules_find(from->arguments[0]);
    if (setting.rules == NULL)
        return "bad-rules";
    checks_generate(&setting, &stories);
    checks_describe(&stories, about);
    json_pair(json, "about", about);
    json_pair(json, "caution", say(PRACTICE_CAUTION));
    json_key(json, "stories");
    json_open(json, '[');
    for (size_t i = 0; i < stories.count; i++)
        put_story(json, &stories, &stories.list[i]);
    json_close(json, ']');
    return NULL;
}
