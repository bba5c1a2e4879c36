/* SPDX-License-Identifier: Apache-2.0 */
/* A stamp that cannot be read: which chambers what else can be seen allows, and what to look at next. The record keeps
 * it as a step until there is an answer. */
#include "walkround/walkround.h"
#include "commands/candidates.h"
#include "ui/compiler.h"
#include "ui/format.h"
#include "ui/language.h"

#include <ctype.h>
#include <stdio.h>
#include <string.h>

static const walk_word families[] = {{TO_SAY("clamp, clamp band"), "clamp"},
                                     {TO_SAY("bolt, bolts, flange with bolts"), "bolt"},
                                     {TO_SAY("roto, rotochamber, rolling diaphragm"), "rotochamber"},
                                     {TO_SAY("dd3, dd-3, three air lines"), "dd-3"},
                                     {NULL, NULL}};
static const walk_word ports[] = {
    {TO_SAY("round, round ports"), "round"}, {TO_SAY("square, square ports"), "square"}, {NULL, NULL}};
static const walk_word tags[] = {
    {TO_SAY("trapezoid, trapezoid tag"), "trapezoid"}, {TO_SAY("none, no tag"), "none"}, {NULL, NULL}};

const walk_clue walk_clues[WALK_CLUES] = {
    {RODT_CLUE_FAMILY, RODT_OBSERVATION_FAMILY, TO_SAY("What holds the two halves together?"), families, NULL},
    {RODT_CLUE_STAMP, RODT_OBSERVATION_STAMP, TO_SAY("What can be read of the stamp?"), NULL, TO_SAY("stamp")},
    {RODT_CLUE_PORT_SHAPE, RODT_OBSERVATION_LONG_SIGN, TO_SAY("Which shape have the air ports?"), ports, NULL},
    {RODT_CLUE_TAG, RODT_OBSERVATION_LONG_SIGN, TO_SAY("Is a tag under a clamp bolt?"), tags, NULL},
    {RODT_CLUE_RATED_STROKE, RODT_OBSERVATION_RATED_STROKE, TO_SAY("Which rated stroke is marked on it?"), NULL,
     TO_SAY("rated stroke, rated")},
    {RODT_CLUE_DIAMETER, RODT_OBSERVATION_DIAMETER, TO_SAY("What is the outside diameter, by tape?"), NULL,
     WORDS_DIAMETER}};

/* --- From a line to clues ------------------------------------------------------------------------------- */

static rodt_status refuse(rodt_error *error, const char *why)
{
    *error = (rodt_error){.status = RODT_E_SYNTAX, .column = 1};
    snprintf(error->text, sizeof error->text, "%.190s", why);
    return RODT_E_SYNTAX;
}

static void list_first(const char *spellings, const char *more, char *list, size_t size)
{
    const char *said = say(spellings);
    size_t used = strlen(list);
    snprintf(list + used, size - used, "%s%.*s%s", used > 0 ? ", " : "", (int)strcspn(said, ","), said, more);
}

/* "clamp, bolt, ..., diameter ...": what a clue may be. */
static rodt_status refuse_unknown(rodt_error *error)
{
    char list[140] = "", why[180];
    for (size_t i = 0; i < WALK_CLUES; i++) {
        const walk_word *words = walk_clues[i].words;
        if (words == NULL)
            list_first(walk_clues[i].before, " ...", list, sizeof list);
        for (; words != NULL && words->spellings != NULL; words++)
            list_first(words->spellings, "", list, sizeof list);
    }
    snprintf(why, sizeof why, say("one of these is expected: %s"), list);
    return refuse(error, why);
}

static void take_word(rodt_clue clue, const char *meaning, rodt_clues *out)
{
    rodt_status status = clue == RODT_CLUE_FAMILY ? rodt_family_find(meaning, &out->family)
                         : clue == RODT_CLUE_TAG  ? rodt_tag_find(meaning, &out->tag)
                                                  : rodt_port_find(meaning, &out->port);
    (void)status; /* the words of the library are its own */
}

static rodt_status take_text(rodt_clue clue, const char *text, rodt_clues *out, rodt_error *error)
{
    if (clue == RODT_CLUE_STAMP)
        return read_stamp_clue(text, (rodt_family)out->family, &out->stamp, error);
    return rodt_length_parse_strict(text, clue == RODT_CLUE_DIAMETER ? &out->diameter : &out->rated_stroke, error);
}

static const walk_word *word_of(const walk_word *words, const char *meaning)
{
    while (words->spellings != NULL && strcmp(words->meaning, meaning) != 0)
        words++;
    return words->spellings != NULL ? words : NULL;
}

/* What a text says of that clue, as a person types it or by the clue's name, as the record has it; NULL = nothing. */
static const char *value_of(const walk_clue *of, const char *text)
{
    const char *named = walk_text_after(text, rodt_clue_name(of->clue));
    bool unseen = named != NULL && strcmp(named, WALK_UNSEEN) == 0;
    if (of->words == NULL) {
        const char *rest = text_after_listed(of->before, text);
        return rest != NULL ? rest : named != NULL && named[0] != '\0' ? named : NULL;
    }
    const walk_word *word = named != NULL ? word_of(of->words, named) : walk_find_word(of->words, text);
    return unseen ? named : word != NULL ? word->meaning : NULL;
}

static rodt_status take_value(const walk_clue *of, const char *value, walk_seen *out, rodt_error *error)
{
    if (strcmp(value, WALK_UNSEEN) == 0)
        return RODT_OK;
    out->any = true;
    if (of->words == NULL)
        return take_text(of->clue, value, &out->clues, error);
    take_word(of->clue, value, &out->clues);
    return RODT_OK;
}

static rodt_status take_clue(const char *text, walk_seen *out, rodt_error *error)
{
    for (size_t i = 0; i < WALK_CLUES; i++) {
        const walk_clue *of = &walk_clues[i];
        const char *value = value_of(of, text);
        if (value == NULL)
            continue;
        for (size_t k = 0; k < out->count; k++) {
            if (out->one[k].of == of)
                return refuse(error, say("this clue is there twice"));
        }
        walk_seen_clue *one = &out->one[out->count++];
        one->of = of;
        snprintf(one->value, sizeof one->value, "%s", value);
        rodt_status status = take_value(of, value, out, error);
        error->column += status != RODT_OK && error->column > 0 ? (uint32_t)(value - text) : 0;
        return status;
    }
    return refuse_unknown(error);
}

/* As far as the next semicolon, or a comma that is no decimal one. */
static size_t size_of_clue(const char *text)
{
    size_t size = strcspn(text, ",;");
    while (text[size] == ',' && isdigit((unsigned char)text[size + 1]))
        size += 1 + strcspn(text + size + 1, ",;");
    return size;
}

/* "clamp, square ports, diameter 8 1/8", or as the record has it: "family clamp; port-shape square; diameter 8 1/8". */
static rodt_status read_clues(const char *text, walk_seen *out, rodt_error *error)
{
    const char *at = text;
    *out = (walk_seen){.clues.port = RODT_PORT_NOT_SEEN};
    for (size_t size; *(at += strspn(at, " ,;")) != '\0'; at += size) {
        char piece[WALK_ANSWER_MAX];
        size = size_of_clue(at);
        if (size >= sizeof piece)
            return refuse(error, say("that is longer than any answer"));
        snprintf(piece, sizeof piece, "%.*s", (int)size, at);
        for (size_t end = strlen(piece); end > 0 && piece[end - 1] == ' '; end--)
            piece[end - 1] = '\0';
        rodt_status status = take_clue(piece, out, error);
        error->column += status != RODT_OK && error->column > 0 ? (uint32_t)(at - text) : 0;
        if (status != RODT_OK)
            return status;
    }
    return out->count > 0 ? RODT_OK : refuse_unknown(error);
}

/* Finds what they allow, if anything was seen at all. */
static rodt_status identify(const walk *of, const char *text, walk_seen *out, rodt_error *error)
{
    *error = (rodt_error){.status = RODT_OK};
    rodt_status status = read_clues(text, out, error);
    if (status != RODT_OK || !out->any)
        return status;
    status = rodt_clues_identify(&out->clues, rodt_rules_find(of->record.head[HEAD_RULES].text), of->context.day,
                                 &out->found, error);
    error->column = 0;
    return status;
}

rodt_status walk_read_clues(const walk *of, const char *text, walk_seen *out, rodt_error *error)
{
    *out = (walk_seen){.count = 0};
    return strcmp(text, WALK_NO_CLUES) == 0 ? RODT_OK : identify(of, text, out, error);
}

/* --- In the record ------------------------------------------------------------------------------------------ */

static const char *kept_clues(const inspection_record *record, int end)
{
    char name[WALK_NAME_SIZE];
    walk_clues_name(record, end, name);
    return record_step(record, name);
}

bool walk_keep_clues(walk *of, inspection_record *record, int end, const walk_seen *seen)
{
    char name[WALK_NAME_SIZE], text[WALK_CLUES * (WALK_ANSWER_MAX + 20)] = "";
    for (size_t i = 0, used = 0; i < seen->count; i++)
        used += (size_t)snprintf(text + used, sizeof text - used, "%s%s %s", used > 0 ? "; " : "",
                                 rodt_clue_name(seen->one[i].of->clue), seen->one[i].value);
    walk_clues_name(record, end, name);
    return walk_set_step(of, record, name, seen->count > 0 ? text : NULL);
}

bool walk_find_clues(const walk *of, const walk_item *item, walk_seen *out)
{
    rodt_error error;
    const char *text = item->id == ASK_CHAMBER ? kept_clues(&of->record, item->end) : NULL;
    if (text != NULL && identify(of, text, out, &error) == RODT_OK)
        return true;
    *out = (walk_seen){.count = 0};
    return false;
}

const char *walk_say_clue(const walk_seen_clue *one, char said[WALK_SAID_SIZE])
{
    char name[120];
    const walk_word *word = one->of->words != NULL ? word_of(one->of->words, one->value) : NULL;
    name_clues((uint32_t)one->of->clue, name, sizeof name);
    if (word != NULL)
        snprintf(said, WALK_SAID_SIZE, "%s", walk_last_of(say(word->spellings)));
    else
        snprintf(said, WALK_SAID_SIZE, "%s %.300s", name, one->value);
    return said;
}

/* "clamp band; diameter 8 1/8" */
static void list_clues(const walk_seen *seen, bool with_unseen, char *list, size_t size)
{
    char said[WALK_SAID_SIZE];
    list[0] = '\0';
    for (size_t i = 0; i < seen->count; i++) {
        size_t used = strlen(list);
        if (with_unseen || strcmp(seen->one[i].value, WALK_UNSEEN) != 0)
            snprintf(list + used, size - used, "%s%s", used > 0 ? "; " : "", walk_say_clue(&seen->one[i], said));
    }
}

const char *walk_say_clues(const char *text, char said[WALK_SAID_SIZE])
{
    walk_seen seen;
    rodt_error error = {.status = RODT_OK};
    if (read_clues(text, &seen, &error) == RODT_OK)
        list_clues(&seen, true, said, WALK_SAID_SIZE);
    else
        snprintf(said, WALK_SAID_SIZE, "%s", text);
    return said;
}

/* Where the remark has no room they stay. */
static void move_clues(walk *of, inspection_record *record, const walk_item *chamber)
{
    walk_seen seen;
    rodt_error error = {.status = RODT_OK};
    char list[WALK_SAID_SIZE], note[WALK_SAID_SIZE + 40];
    const char *text = kept_clues(record, chamber->end);
    if (text == NULL || read_clues(text, &seen, &error) != RODT_OK)
        return;
    list_clues(&seen, false, list, sizeof list);
    snprintf(note, sizeof note, say("%s: %s"), walk_last_of(say(WORDS_CLUES)), list);
    if (list[0] == '\0' || walk_note(of, record, chamber, note))
        (void)walk_keep_clues(of, record, chamber->end, &(walk_seen){.count = 0}); /* what forgets needs no memory */
}

void walk_move_clues(walk *of, inspection_record *record)
{
    for (int end = 0; end < (int)record->end_count; end++) {
        walk_item chamber = {ASK_CHAMBER, WALK_RELEASED, end, RODT_AIR_CHECK_NONE};
        if (walk_answered(record, &chamber))
            move_clues(of, record, &chamber);
    }
}

/* --- What they allow -------------------------------------------------------------------------------------- */

const char *walk_settled(const rodt_identification *found, char text[RODT_CHAMBER_TEXT_SIZE])
{
    rodt_chamber chamber = found->candidates[0].chamber;
    for (size_t i = 0; i < found->count; i++) {
        const rodt_chamber *other = &found->candidates[i].chamber;
        if (other->family != chamber.family || strcmp(other->size, chamber.size) != 0)
            return NULL;
        if (other->stroke_class != RODT_STROKE_CLASS_LONG)
            chamber.stroke_class = RODT_STROKE_CLASS_UNKNOWN; /* no sign of long stroke is no proof */
    }
    bool settled = found->count > 0 && found->contradiction == 0 && chamber.size[0] != '\0';
    return settled && rodt_chamber_format(&chamber, text, RODT_CHAMBER_TEXT_SIZE, NULL) == RODT_OK ? text : NULL;
}

static void print_candidate(const rodt_candidate *candidate)
{
    char chamber[RODT_CHAMBER_TEXT_SIZE], limit[WORD_SIZE], diameter[WORD_SIZE], line[200], against[120], text[400];
    const char *name = format_chamber(&candidate->chamber, chamber), *most = format_length(candidate->limit, limit);
    if (rodt_length_given(candidate->diameter))
        snprintf(line, sizeof line, say("%s: diameter %s in, limit %s"), name,
                 format_length(candidate->diameter, diameter), most);
    else
        snprintf(line, sizeof line, say("%s: limit %s"), name, most);
    name_clues(candidate->clues_against, against, sizeof against);
    snprintf(text, sizeof text, against[0] != '\0' ? say("%s; against: %s") : "%s", line, against);
    walk_print("  ", 4, "%s", text);
}

static void print_limit(const rodt_identification *found)
{
    char limit[WORD_SIZE];
    if (!rodt_length_given(found->strict_limit))
        walk_print("", 0, "%s",
                   say("This rule set has no limit for it; the rated stroke marked on the housing may give one."));
    else if (found->without_limit > 0)
        walk_print("", 0, say("No limit is safe until you know which it is: this rule set has none for %lu of them."),
                   (unsigned long)found->without_limit);
    else if (found->count > 1)
        walk_print("", 0, say("Until you know which it is, judge by the strictest limit: %s."),
                   format_length(found->strict_limit, limit));
}

static void print_found(const rodt_identification *found)
{
    char text[SAID_SIZE], settled[RODT_CHAMBER_TEXT_SIZE];
    if (found->count == 0) {
        walk_print("", 0, "%s", say("No known chamber fits that: look and measure again."));
        return;
    }
    for (size_t i = 0; i < found->count; i++)
        print_candidate(&found->candidates[i]);
    if (found->contradiction != 0)
        walk_print("! ", 2, "%s", say_contradiction(found->contradiction, text));
    print_limit(found);
    const bool answered = walk_settled(found, settled) != NULL;
    const bool open = !answered || found->next_observation != RODT_OBSERVATION_NOTHING;
    if (open && rodt_length_given(found->strict_limit))
        walk_print("", 0, "%s", say_next_observation(found, text));
    if (answered)
        walk_print_typed(say("If that is what you see, the answer is %s."), settled);
}

void walk_print_clues(const walk_seen *seen)
{
    char list[WALK_SAID_SIZE];
    list_clues(seen, true, list, sizeof list);
    walk_print("= ", 2, say("seen: %s"), list);
    if (seen->any)
        print_found(&seen->found);
}
