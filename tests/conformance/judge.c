/* SPDX-License-Identifier: Apache-2.0 */
/*
 * A judge of the conformance kit in C: a question a line on standard input, its answer on standard output, both JSON.
 * README.md says what they hold.
 *
 *     judge               answers until the questions end
 *     judge --describe    prints the rows of limits of every rule set, the names of every record, and the words of every
 *                         enumeration
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <rodtravel/rodtravel.h>

#include "io/json_object.h"

enum { LINE_SIZE = 65536, TEXTS_MAX = 32, TEXT_SIZE = 2048 };

/* Texts of a question, by their names. */
typedef struct question {
    json_span id; /* as it is written, between quotes */
    size_t count;
    char names[TEXTS_MAX][64];
    char texts[TEXTS_MAX][TEXT_SIZE];
} question;

static void stop(const char *why)
{
    fprintf(stderr, "judge: %s\n", why);
    exit(2);
}

/* A text of the question; "" = it has none of that name. */
static const char *text_of(const question *asked, const char *name)
{
    for (size_t i = 0; i < asked->count; i++)
        if (strcmp(asked->names[i], name) == 0)
            return asked->texts[i];
    return "";
}

static void read_question(const char *line, size_t size, question *to)
{
    json_object_reader reader;
    json_member member;
    json_status status;
    to->count = 0;
    to->id = (json_span){"", 0};
    json_object_open(&reader, line, size);
    while ((status = json_object_next(&reader, &member)) == JSON_MEMBER) {
        if (to->count == TEXTS_MAX || member.kind != JSON_TEXT ||
            json_object_text(member.name, to->names[to->count], sizeof to->names[0]) == JSON_NO_TEXT ||
            json_object_text(member.value, to->texts[to->count], TEXT_SIZE) == JSON_NO_TEXT)
            stop("a question has too many texts, too long ones, or what is no text");
        if (strcmp(to->names[to->count], "id") == 0)
            to->id = member.value;
        to->count++;
    }
    if (status != JSON_END)
        stop("a question is no JSON object");
}

/* --- Answers ----------------------------------------------------------------------------------------- */

static void begin(const question *asked) { printf("{\"id\":\"%.*s\"", (int)asked->id.size, asked->id.bytes); }

/* Words, and what a chamber's mark says: nothing that JSON would have to escape. */
static void put_word(const char *name, const char *word) { printf(",\"%s\":\"%s\"", name, word); }

static void put_number(const char *name, int64_t num, int64_t den)
{
    if (den == 0)
        printf(",\"%s\":null", name);
    else if (den == 1)
        printf(",\"%s\":\"%" PRId64 "\"", name, num);
    else
        printf(",\"%s\":\"%" PRId64 "/%" PRId64 "\"", name, num, den);
}

static void finish(rodt_status status, const char *field, uint32_t column)
{
    if (status == RODT_OK)
        puts(",\"error\":null}");
    else
        printf(",\"error\":{\"status\":\"%s\",\"field\":\"%s\",\"column\":%u}}\n", rodt_status_name(status), field,
               (unsigned)column);
}

static void finish_error(const rodt_error *error)
{
    finish((rodt_status)error->status, error->field, error->column);
}

/* --- Questions --------------------------------------------------------------------------------------- */

/* Fills a form from the texts that have the names of its members. */
static void fill(const char *record, void *form, const question *asked)
{
    const rodt_record *of = rodt_record_find(record);
    for (size_t i = 0; i < asked->count; i++)
        if (rodt_member_find(of, asked->names[i]) != NULL &&
            rodt_record_set_text(of, form, asked->names[i], asked->texts[i], NULL) != RODT_OK)
            stop("a text cannot be set");
}

static void put_finding(const rodt_finding *finding)
{
    const char *between = "";
    put_word("verdict", rodt_verdict_name((rodt_verdict)finding->verdict));
    put_number("stroke", finding->applied_stroke.num, finding->applied_stroke.den);
    put_number("limit", finding->limit.num, finding->limit.den);
    put_number("margin", finding->margin.num, finding->margin.den);
    put_word("proof", rodt_proof_name((rodt_proof)finding->proof));
    put_number("probability_over", finding->probability_over.num, finding->probability_over.den);
    fputs(",\"reasons\":[", stdout);
    for (int reason = 0; reason < RODT_REASON_END; reason++)
        if (rodt_finding_has(finding, (rodt_reason)reason)) {
            printf("%s\"%s\"", between, rodt_reason_name((rodt_reason)reason));
            between = ",";
        }
    fputs("]", stdout);
}

static void answer_wheel_end(const question *asked)
{
    rodt_form form = {0};
    rodt_finding finding;
    rodt_error error = {0};
    fill("rodt_form", &form, asked);
    rodt_status status = rodt_form_judge_row(&form, rodt_rules_find(text_of(asked, "rules")), &finding, &error);
    begin(asked);
    if (status == RODT_OK)
        put_finding(&finding);
    finish_error(&error);
}

static void answer_length(const question *asked)
{
    rodt_length length;
    rodt_error error = {0};
    rodt_status status = rodt_length_parse(text_of(asked, "text"), &length, &error);
    begin(asked);
    if (status == RODT_OK)
        put_number("value", length.num, length.den);
    finish(status, error.field, error.column);
}

static void answer_chamber(const question *asked)
{
    rodt_chamber chamber;
    rodt_error error = {0};
    rodt_status status = rodt_chamber_parse(text_of(asked, "text"), &chamber, &error);
    begin(asked);
    if (status == RODT_OK) {
        put_word("family", rodt_family_name((rodt_family)chamber.family));
        put_word("size", chamber.size);
        put_word("spring_size", chamber.spring_size);
        put_word("stroke_class", rodt_stroke_class_name((rodt_stroke_class)chamber.stroke_class));
    }
    finish(status, error.field, error.column);
}

static void answer_count(const question *asked)
{
    rodt_tally tally = {0};
    rodt_count count;
    rodt_error error = {0};
    fill("rodt_tally", &tally, asked);
    rodt_status status = rodt_tally_judge(&tally, 0, &count, &error);
    begin(asked);
    if (status == RODT_OK) {
        put_word("outcome", rodt_outcome_name((rodt_outcome)count.outcome));
        put_number("share", count.share.num, count.share.den);
    }
    finish(status, error.field, error.column);
}

static void answer_air(const question *asked)
{
    rodt_air_form form = {0};
    rodt_air_finding finding;
    rodt_error error = {0};
    fill("rodt_air_form", &form, asked);
    rodt_status status = rodt_air_form_judge(&form, rodt_rules_find(text_of(asked, "rules")), &finding, &error);
    begin(asked);
    if (status == RODT_OK) {
        put_word("result", rodt_air_result_name((rodt_air_result)finding.result));
        put_word("at_limit", finding.at_limit ? "yes" : "no");
    }
    finish(status, error.field, error.column);
}

static void answer(const question *asked)
{
    static const struct {
        const char *ask;
        void (*answer)(const question *asked);
    } kinds[] = {{"wheel-end", answer_wheel_end}, {"length", answer_length}, {"chamber", answer_chamber},
                 {"count", answer_count},         {"air", answer_air}};
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++)
        if (strcmp(kinds[i].ask, text_of(asked, "ask")) == 0) {
            kinds[i].answer(asked);
            return;
        }
    stop("nobody knows what is asked");
}

/* --- What the generator makes questions of ----------------------------------------------------------- */

static void describe_rules(const rodt_rules *rules)
{
    char text[4096];
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        if (rodt_limit_json_format(rodt_rules_limit_at(rules, i), 0, text, sizeof text, NULL) != RODT_OK)
            stop("a row has no JSON");
        printf("{\"rules\":\"%s\",\"row\":%s}\n", rodt_rules_id(rules), text);
    }
    if (rodt_rules_json_format(rules, 0, text, sizeof text, NULL) != RODT_OK)
        stop("a rule set has no JSON");
    printf("{\"rules\":\"%s\",\"set\":%s}\n", rodt_rules_id(rules), text);
}

static void describe(void)
{
    for (size_t i = 0; i < rodt_rules_count(); i++)
        describe_rules(rodt_rules_at(i));
    for (size_t i = 0; i < rodt_record_count(); i++)
        printf("{\"record\":\"%s\"}\n", rodt_record_name(rodt_record_at(i)));
    for (size_t i = 0; i < rodt_enumeration_count(); i++) {
        const rodt_enumeration *enumeration = rodt_enumeration_at(i);
        printf("{\"enumeration\":\"%s\",\"words\":[", rodt_enumeration_name(enumeration));
        for (size_t row = 0; row < rodt_enumerator_count(enumeration); row++)
            printf("%s\"%s\"", row == 0 ? "" : ",", rodt_enumerator_at(enumeration, row)->word);
        puts("]}");
    }
}

int main(int argc, char **argv)
{
    static char line[LINE_SIZE];
    static question asked;
    if (argc > 1 && strcmp(argv[1], "--describe") == 0)
        describe();
    else
        while (fgets(line, sizeof line, stdin) != NULL) {
            read_question(line, strlen(line), &asked);
            answer(&asked);
        }
    return fflush(stdout) == 0 ? 0 : 1;
}
