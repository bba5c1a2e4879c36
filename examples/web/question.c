/* SPDX-License-Identifier: Apache-2.0 */
/* A question as data, of the same tables as the sentences of the walk-round. */
#include "page.h"
#include "said.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <string.h>

/* --- Words --------------------------------------------------------------------------------------------- */

static void put_word(json_writer *json, const char *list, const char *meaning)
{
    json_open(json, '{');
    json_pair(json, "word", walk_last_of(say(list)));
    json_pair(json, "means", meaning);
    json_close(json, '}');
}

static void put_words(json_writer *json, const walk_word *words)
{
    json_key(json, "words");
    json_open(json, '[');
    for (; words != NULL && words->spellings != NULL; words++)
        put_word(json, words->spellings, words->meaning);
    json_close(json, ']');
}

/* The chambers of the rule set, each once, in the order of its table. */
static void put_chambers(json_writer *json, const rodt_rules *rules)
{
    char word[RODT_CHAMBER_TEXT_SIZE], before[RODT_CHAMBER_TEXT_SIZE] = "";
    const rodt_rules *law = rodt_rules_law(rules) != NULL ? rodt_rules_law(rules) : rules;
    json_key(json, "chambers");
    json_open(json, '[');
    for (size_t i = 0; i < rodt_rules_limit_count(law); i++) {
        const rodt_limit *row = rodt_rules_limit_at(law, i);
        rodt_chamber chamber = {.family = row->family};
        memcpy(chamber.size, row->size, strlen(row->size) + 1);
        if (strcmp(format_chamber(&chamber, word), before) != 0)
            json_text(json, word);
        memcpy(before, word, sizeof before);
    }
    json_close(json, ']');
}

/* --- Clues ------------------------------------------------------------------------------------------------ */

/* What can be seen of a chamber whose stamp cannot be read, and how a line of it begins. */
static void put_clues(json_writer *json)
{
    json_pair(json, "clues_word", walk_last_of(say(WORDS_CLUES)));
    json_key(json, "clues");
    json_open(json, '[');
    for (size_t i = 0; i < WALK_CLUES; i++) {
        const walk_clue *clue = &walk_clues[i];
        json_open(json, '{');
        json_pair(json, "clue", rodt_clue_name(clue->clue));
        json_pair(json, "observation", rodt_observation_name(clue->observation));
        json_pair(json, "title", say(clue->title));
        json_pair(json, "before", clue->before != NULL ? walk_last_of(say(clue->before)) : NULL);
        put_words(json, clue->words);
        json_close(json, '}');
    }
    json_close(json, ']');
}

static void put_seen(json_writer *json, const walk_seen *seen)
{
    char said[WALK_SAID_SIZE];
    json_key(json, "seen");
    json_open(json, '[');
    for (size_t i = 0; i < seen->count; i++) {
        const walk_seen_clue *one = &seen->one[i];
        json_open(json, '{');
        json_pair(json, "clue", rodt_clue_name(one->of->clue));
        json_pair(json, "value", one->value);
        json_pair(json, "says", strcmp(one->value, WALK_UNSEEN) != 0 ? walk_say_clue(one, said) : NULL);
        json_close(json, '}');
    }
    json_close(json, ']');
}

static rodt_status format_found(const void *value, char *text, size_t size, size_t *needed)
{
    const walk_session *at = value;
    const walk *of = at->of;
    return rodt_identification_json_format(&at->seen.found, rodt_rules_find(of->record.head[HEAD_RULES].text),
                                           of->context.day, NULL, 0, text, size, needed);
}

/* The clues of the record, the last one last, and what they allow. */
static void put_found(json_writer *json, const walk_session *at)
{
    char settled[RODT_CHAMBER_TEXT_SIZE];
    put_seen(json, &at->seen);
    json_key(json, "identified");
    if (at->seen.any)
        json_record(json, format_found, at);
    else
        json_text(json, NULL);
    json_pair(json, "settled", at->seen.any ? walk_settled(&at->seen.found, settled) : NULL);
}

/* --- A question ---------------------------------------------------------------------------------------- */

static const char *kind_of(walk_kind kind)
{
    static const char *const kinds[] = {
        [WALK_WORD] = "words",       [WALK_TEXT] = "text",         [WALK_COUNT] = "count",    [WALK_AXLES] = "axles",
        [WALK_BUILT] = "built",      [WALK_LENGTH] = "length",     [WALK_PRESSURE] = "pressure",
        [WALK_CHAMBER] = "chamber",  [WALK_CLASS] = "words",       [WALK_NUMBER] = "number",
        [WALK_CLOCK] = "seconds",    [WALK_PLATES] = "plates",     [WALK_KEPT] = "kept"};
    return kinds[kind];
}

static const char *asked_of(walk_asked asked)
{
    static const char *const words[] = {[WALK_ASKED_QUESTION] = "question", [WALK_ASKED_KEEP] = "keep",
                                        [WALK_ASKED_KEEP_YES_NO] = "keep-yes-no", [WALK_ASKED_FILE] = "file"};
    return words[asked];
}

static const char *part_of(walk_part part)
{
    static const char *const words[WALK_PARTS] = {
        [WALK_SAFETY] = "safety",   [WALK_VEHICLE] = "vehicle",   [WALK_SECURE] = "secure",
        [WALK_AIR_OFF] = "air-off", [WALK_AIR_ON] = "air-on",     [WALK_SET_UP] = "set-up",
        [WALK_RELEASED] = "released", [WALK_APPLICATION] = "application", [WALK_APPLIED] = "applied",
        [WALK_FINISH] = "finish"};
    return words[part];
}

static void put_part(json_writer *json, walk_part part)
{
    json_key(json, "part");
    json_open(json, '{');
    json_pair(json, "id", part_of(part));
    json_pair(json, "title", walk_part_title(part));
    json_number(json, "number", (uint64_t)part + 1);
    json_number(json, "of", WALK_PARTS);
    json_close(json, '}');
}

/* What Enter does, and how the prompt names it. */
static void put_default(json_writer *json, const walk_session *at)
{
    static const char *const effects[] = {[WALK_NO_DEFAULT] = "", [WALK_STAY] = "stay", [WALK_TAKE] = "take",
                                          [WALK_COPY] = "copy", [WALK_LEAVE] = "skip"};
    json_key(json, "default");
    if (at->asked != WALK_ASKED_QUESTION || at->enter == WALK_NO_DEFAULT) {
        json_text(json, NULL);
        return;
    }
    json_open(json, '{');
    json_pair(json, "effect", effects[at->enter]);
    json_pair(json, "says", at->enter_said);
    json_pair(json, "text", at->enter == WALK_TAKE ? at->enter_text : NULL);
    json_close(json, '}');
}

static void put_timed(json_writer *json, const walk_session *at)
{
    char text[WALK_ANSWER_MAX] = "";
    json_key(json, "timed");
    if (walk_questions[at->item.id].kind != WALK_CLOCK) {
        json_text(json, NULL);
        return;
    }
    bool counts = at->item.id == ASK_LENGTH;
    if (counts)
        (void)walk_minute(at->of, at->item.check, text);
    json_open(json, '{');
    json_key(json, "counts_down");
    json_bool(json, counts);
    json_pair(json, "seconds", text[0] != '\0' ? text : NULL);
    json_close(json, '}');
}

/* The sentences of the step, as they are said aloud. */
static void put_spoken(json_writer *json, const walk_session *at)
{
    said_forget();
    walk_print_step(at->of, &at->item);
    json_key(json, "speak");
    said_write(json);
    said_forget();
}

static void put_subject(json_writer *json, const walk_session *at)
{
    const inspection_record *record = &at->of->record;
    const walk_item *item = &at->item;
    const char *check = item->check != RODT_AIR_CHECK_NONE ? rodt_air_check_name(item->check) : NULL;
    char name[WALK_NAME_SIZE], title[SAID_SIZE];
    walk_step_name(record, item, name);
    json_pair(json, "id", walk_questions[item->id].name);
    json_pair(json, "place", name);
    json_pair(json, "end", item->end != WALK_NONE ? record->ends[item->end][END_POSITION].text : NULL);
    json_pair(json, "check", check);
    json_pair(json, "check_title", check != NULL ? air_check_title(item->check, title) : NULL);
    put_part(json, item->part);
}

static void put_answers(json_writer *json, const walk_session *at)
{
    const walk_question *question = &walk_questions[at->item.id];
    const inspection_record *record = &at->of->record;
    RODT_ENUM32(rodt_unit) unit = RODT_UNIT_IN;
    (void)record_length_unit(record, &unit);
    json_pair(json, "kind", kind_of(question->kind));
    put_words(json, question->words);
    if (question->kind == WALK_CHAMBER) {
        put_chambers(json, at->of->context.rules);
        put_clues(json);
        put_found(json, at);
    }
    if (question->kind == WALK_LENGTH) {
        json_pair(json, "unit", rodt_unit_name(unit));
        json_pair(json, "division", record->end_count > 0 ? record->ends[0][END_DIVISION].text : NULL);
    }
    json_pair(json, "never", walk_takes_never(&at->item) ? walk_last_of(say(WORDS_NEVER)) : NULL);
    json_key(json, "skip");
    json_bool(json, !question->mandatory);
    put_default(json, at);
    put_timed(json, at);
}

void put_question(json_writer *json, walk_session *at)
{
    char prompt[2 * WALK_ANSWER_MAX + WALK_SAID_SIZE], title[SAID_SIZE];
    bool doubts = at->asked == WALK_ASKED_KEEP || at->asked == WALK_ASKED_KEEP_YES_NO;
    snprintf(prompt, sizeof prompt, "%s", said_prompt());
    json_open(json, '{');
    json_pair(json, "asked", asked_of(at->asked));
    json_pair(json, "prompt", prompt);
    walk_short_title(&at->of->record, &at->item, title);
    json_pair(json, "title", title);
    put_subject(json, at);
    put_answers(json, at);
    json_pair(json, "doubted", doubts ? at->doubted : NULL);
    json_pair(json, "keep", walk_last_of(say(WORDS_KEEP)));
    json_pair(json, "help", say(walk_questions[at->item.id].help));
    put_spoken(json, at);
    json_close(json, '}');
}

/* --- The vehicle --------------------------------------------------------------------------------------- */

static void put_units(json_writer *json, const inspection_record *record)
{
    json_key(json, "units");
    json_open(json, '[');
    for (size_t i = 0; i < record->unit_count; i++) {
        json_open(json, '{');
        json_pair(json, "kind", record->units[i][UNIT_KIND].text);
        json_pair(json, "plate", record->units[i][UNIT_PLATE].text);
        json_number(json, "axles", (uint64_t)record->units[i][UNIT_AXLES].number);
        json_close(json, '}');
    }
    json_close(json, ']');
}

/* A wheel end has a verdict once both of its readings are there. */
static const char *verdict_of(const inspection *judged, const record_value *values, size_t end)
{
    bool measured = values[END_RELEASED].text != NULL && values[END_APPLIED].text != NULL;
    return judged != NULL && measured ? rodt_verdict_name(judged->vehicle.findings[end].verdict) : NULL;
}

static void put_ends(json_writer *json, const inspection_record *record, const inspection *judged)
{
    static const end_key keys[] = {END_POSITION, END_CHAMBER, END_CLASS, END_ADJUSTER, END_ARM, END_RELEASED,
                                   END_APPLIED};
    json_key(json, "ends");
    json_open(json, '[');
    for (size_t i = 0; i < record->end_count; i++) {
        const char *verdict = verdict_of(judged, record->ends[i], i);
        json_open(json, '{');
        for (size_t k = 0; k < COUNT_OF(keys); k++)
            json_pair(json, record_key_name(&record_end_keys[keys[k]]), record->ends[i][keys[k]].text);
        json_pair(json, "verdict", verdict);
        json_pair(json, "says", verdict != NULL ? say(verdict) : NULL);
        json_close(json, '}');
    }
    json_close(json, ']');
}

void put_vehicle(json_writer *json, walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    json_key(json, "vehicle");
    json_open(json, '{');
    json_pair(json, "kind", of->record.head[HEAD_VEHICLE].text);
    put_units(json, &of->record);
    put_ends(json, &of->record, judged);
    json_close(json, '}');
}

static void put_paint(json_writer *json, const char *key, const char *text, paint_kind paint)
{
    static const char *const paints[] = {[PAINT_GOOD] = "good", [PAINT_BAD] = "bad", [PAINT_OPEN] = "open",
                                         [PAINT_EDGE] = "edge", [PAINT_STRONG] = "strong"};
    json_key(json, key);
    json_open(json, '{');
    json_pair(json, "text", text);
    json_pair(json, "paint", paints[paint]);
    json_close(json, '}');
}

void put_outcome(json_writer *json, walk *of)
{
    const inspection *judged = walk_judge(of, &of->record);
    json_key(json, "outcome");
    if (judged == NULL) {
        json_text(json, NULL);
        return;
    }
    inspection_outcome outcome = inspection_outcome_of(judged);
    json_open(json, '{');
    if (outcome.air != NULL)
        put_paint(json, "air", outcome.air, outcome.air_paint);
    put_paint(json, "strokes", outcome.small[0] != '\0' ? outcome.small : outcome.strokes, outcome.strokes_paint);
    json_pair(json, "warning", inspection_warning(judged));
    json_close(json, '}');
}
