/* SPDX-License-Identifier: Apache-2.0 */
/* One answer of a person: lengths by the library's reader, words of every language without regard to case. */
#include "practice/practice.h"
#include "ui/compiler.h"
#include "ui/language.h"
#include "ui/options.h"

#include <stdio.h>
#include <string.h>

/* --- Words -------------------------------------------------------------------------------------------- */

static rodt_status set_error(rodt_error *error, rodt_status status, const char *sentence)
{
    memset(error, 0, sizeof *error);
    error->status = status;
    snprintf(error->text, sizeof error->text, "%s", say(sentence));
    return status;
}

static rodt_status parse_choice(const char *text, size_t size, const choice *choices, size_t count,
                               const char *expected, practice_answer *out, rodt_error *error)
{
    for (size_t i = 0; i < count; i++) {
        if (is_said(choices[i].word, text, size)) {
            out->word = choices[i].meaning;
            return RODT_OK;
        }
    }
    return set_error(error, RODT_E_SYNTAX, expected);
}

static rodt_status parse_verdict(const char *text, size_t size, practice_answer *out, rodt_error *error)
{
    static const choice words[] = {{TO_SAY("in-adjustment"), RODT_VERDICT_IN_ADJUSTMENT},
                                   {"in", RODT_VERDICT_IN_ADJUSTMENT},
                                   {TO_SAY("good"), RODT_VERDICT_IN_ADJUSTMENT},
                                   {TO_SAY("out-of-adjustment"), RODT_VERDICT_OUT_OF_ADJUSTMENT},
                                   {"out", RODT_VERDICT_OUT_OF_ADJUSTMENT},
                                   {"over", RODT_VERDICT_OUT_OF_ADJUSTMENT},
                                   {TO_SAY("inoperative"), RODT_VERDICT_INOPERATIVE},
                                   {"dead", RODT_VERDICT_INOPERATIVE},
                                   {TO_SAY("undetermined"), RODT_VERDICT_UNDETERMINED},
                                   {"unknown", RODT_VERDICT_UNDETERMINED},
                                   {"open", RODT_VERDICT_UNDETERMINED}};
    return parse_choice(text, size, words, COUNT_OF(words),
                       TO_SAY("a verdict is in-adjustment, out-of-adjustment, inoperative or undetermined; in, out, "
                              "dead and open will do"), out, error);
}

static rodt_status parse_outcome(const char *text, size_t size, practice_answer *out, rodt_error *error)
{
    static const choice words[] = {{TO_SAY("out-of-service"), RODT_OUTCOME_OUT_OF_SERVICE},
                                   {"out", RODT_OUTCOME_OUT_OF_SERVICE},
                                   {TO_SAY("below-criterion"), RODT_OUTCOME_BELOW_CRITERION},
                                   {"below", RODT_OUTCOME_BELOW_CRITERION},
                                   {TO_SAY("ambiguous"), RODT_OUTCOME_AMBIGUOUS},
                                   {TO_SAY("undetermined"), RODT_OUTCOME_UNDETERMINED},
                                   {"unknown", RODT_OUTCOME_UNDETERMINED},
                                   {"open", RODT_OUTCOME_UNDETERMINED}};
    return parse_choice(text, size, words, COUNT_OF(words),
                       TO_SAY("the vehicle is out-of-service, below-criterion, ambiguous or undetermined"), out, error);
}

/* By its number in the list, or by its code. */
static rodt_status parse_reason(const char *text, size_t size, practice_answer *out, rodt_error *error)
{
    for (size_t i = 0; practice_reason_at(i) != RODT_REASON_END; i++) {
        char number[24];
        snprintf(number, sizeof number, "%zu", i + 1);
        out->word = (int)practice_reason_at(i);
        if (is_said(number, text, size) || is_said(practice_reason_word(practice_reason_at(i)), text, size))
            return RODT_OK;
    }
    return set_error(error, RODT_E_SYNTAX, TO_SAY("a reason is one of the list, by its number or its word"));
}

/* --- Figures ------------------------------------------------------------------------------------------ */

/* A minus sign is an answer too, and shows what was done. */
static size_t minus_size(const char *text, size_t size)
{
    static const char *const signs[] = {"-", "\xE2\x88\x92"}; /* the hyphen and U+2212 */
    for (size_t i = 0; i < COUNT_OF(signs); i++) {
        size_t length = strlen(signs[i]);
        if (size > length && memcmp(text, signs[i], length) == 0 && text[length] >= '0' && text[length] <= '9')
            return length;
    }
    return 0;
}

static rodt_status parse_length(const char *text, size_t size, rodt_unit unit, practice_answer *out, rodt_error *error)
{
    const rodt_style style = {.unit = unit};
    size_t minus = minus_size(text, size);
    out->negative = minus > 0;
    out->none = is_said(TO_SAY("none"), text, size);
    if (out->none)
        return RODT_OK;
    rodt_status status = rodt_length_parse_strict_n(text + minus, size - minus, &style, &out->length, NULL, error);
    if (status != RODT_OK && error->column > 0)
        error->column += minus > 0;
    return status;
}

/* "16.7 %", or with a comma: as many digits as a person cares to write. */
static bool is_point(char c) { return c == '.' || c == ','; }

static rodt_status parse_percent(const char *text, size_t size, practice_answer *out, rodt_error *error)
{
    int64_t value = 0, whole = 1;
    size_t at = 0, digits = 0;
    bool has_point = false;
    for (; at < size && digits < 9 && ((text[at] >= '0' && text[at] <= '9') || is_point(text[at])); at++) {
        if (is_point(text[at]) && has_point)
            break;
        has_point = has_point || is_point(text[at]);
        if (is_point(text[at]))
            continue;
        value = value * 10 + (text[at] - '0');
        digits++;
        whole *= has_point ? 10 : 1;
        out->digits += has_point;
    }
    if (digits == 0 || at != size || value > 100 * whole)
        return set_error(error, RODT_E_SYNTAX,
                         TO_SAY("a share is a percentage from 0 to 100, such as 15 % or 16.7 %"));
    out->is_percent = true;
    return rodt_length_from_inches(value, whole, &out->length);
}

static size_t trimmed_size(const char *text, size_t size)
{
    while (size > 0 && strchr(" \t\r\n", text[size - 1]) != NULL)
        size--;
    return size;
}

/* What is before " of ", in the languages of the command. */
static size_t size_before_of(const char *text, size_t size)
{
    static const char *const words[] = {" of ", " sur ", " de "};
    for (size_t used = 0; used < size; used++) {
        for (size_t i = 0; i < COUNT_OF(words); i++) {
            if (size - used >= strlen(words[i]) && memcmp(text + used, words[i], strlen(words[i])) == 0)
                return used;
        }
    }
    return size;
}

/* "1 1/2", "1 1/2 of 10", "15 %". */
static rodt_status parse_count(const char *text, size_t size, practice_answer *out, rodt_error *error)
{
    if (text[size - 1] == '%')
        return parse_percent(text, trimmed_size(text, size - 1), out, error);
    size_t used = trimmed_size(text, size_before_of(text, size));
    if (used > 0 && text[used - 1] >= '0' && text[used - 1] <= '9' &&
        rodt_length_parse_strict_n(text, used, NULL, &out->length, NULL, error) == RODT_OK)
        return RODT_OK;
    return set_error(error, RODT_E_SYNTAX, TO_SAY("a number of brakes, halves too: 1 1/2; or their share: 15 %"));
}

/* --- Any question ------------------------------------------------------------------------------------- */

rodt_status practice_parse(practice_question question, const char *text, size_t size, rodt_unit unit,
                          practice_answer *out, rodt_error *error)
{
    practice_answer answer = {.given = true};
    rodt_status status = RODT_E_ARGUMENT;
    for (; size > 0 && (*text == ' ' || *text == '\t'); size--)
        text++;
    size = trimmed_size(text, size);
    *out = (practice_answer){.given = false};
    if (size == 0)
        return RODT_E_EMPTY;
    switch (question) {
    case ASK_RELEASED:
    case ASK_APPLIED:
    case ASK_STROKE:
    case ASK_LIMIT: status = parse_length(text, size, unit, &answer, error); break;
    case ASK_VERDICT: status = parse_verdict(text, size, &answer, error); break;
    case ASK_REASON: status = parse_reason(text, size, &answer, error); break;
    case ASK_COUNT: status = parse_count(text, size, &answer, error); break;
    case ASK_OUTCOME: status = parse_outcome(text, size, &answer, error); break;
    case ASK_QUESTIONS: break;
    }
    if (status == RODT_OK)
        *out = answer;
    return status;
}

const char *practice_question_name(practice_question question)
{
    static const char *const words[] = {TO_SAY("released"), TO_SAY("applied"), TO_SAY("stroke"),    TO_SAY("limit"),
                                        TO_SAY("verdict"),  TO_SAY("reason"),  TO_SAY("defective"), TO_SAY("outcome")};
    return words[question];
}
