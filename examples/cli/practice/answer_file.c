/* SPDX-License-Identifier: Apache-2.0 */
/* Answers that were written down, a line each: "1L: 1 7/16; 1 3/4; in; 1", "vehicle: 1 1/2; below", and "seed 42"
 * above those of a vehicle when there are several. */
#include "practice/practice.h"
#include "ui/exit_status.h"
#include "ui/json_writer.h"
#include "ui/message.h"

#include <errno.h>
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define TEXT_MOST ((size_t)1 << 22)
#define ENTRIES_MOST ((size_t)200000)

typedef struct entry {
    uint64_t seed;
    practice_answer answers[ASK_END_QUESTIONS];
    size_t line;
    rodt_position position; /* not said = the vehicle as a whole */
    bool has_seed;
    bool used;
    int16_t reserved;
} entry;

struct practice_answers {
    const char *name;
    rodt_unit unit;
    entry *entries;
    size_t count;
    size_t room;
    uint64_t seed; /* of the lines being read */
    bool has_seed;
};

static int refuse(const practice_answers *of, size_t line, const char *text, const char *sentence)
{
    char shown[120];
    snprintf(shown, sizeof shown, "%.100s", text);
    return print_error("%s, line %zu, \"%s\": %s", of->name, line, shown, sentence);
}

/* --- Lines -------------------------------------------------------------------------------------------- */

static int read_seed(practice_answers *of, size_t line, const char *text)
{
    const char *at = text + strlen("seed");
    uint64_t seed = 0;
    at += strspn(at, ": \t");
    size_t digits = strspn(at, "0123456789");
    if (digits == 0 || digits > 19 || at[digits + strspn(at + digits, " \t")] != '\0')
        return refuse(of, line, text, "a seed is a whole number of at most 19 digits");
    for (size_t i = 0; i < digits; i++)
        seed = seed * 10 + (uint64_t)(at[i] - '0');
    of->seed = seed;
    of->has_seed = true;
    return STATUS_CONTINUE;
}

/* One answer of a line; the messages name the line and what could not be read. */
static int read_answer(const practice_answers *of, size_t line, practice_question question, const char *text,
                       size_t size, practice_answer *out)
{
    char cell[200], what[120];
    rodt_error error = {.status = RODT_OK};
    rodt_status status = practice_read(question, text, size, of->unit, out, &error);
    if (status == RODT_OK || status == RODT_E_EMPTY || error.status == RODT_E_EMPTY)
        return STATUS_CONTINUE;
    size_t blanks = strspn(text, " \t"), column = error.column;
    text += blanks < size ? blanks : 0;
    size -= blanks < size ? blanks : 0;
    snprintf(cell, sizeof cell, "%.*s", size < sizeof cell ? (int)size : (int)sizeof cell - 1, text);
    snprintf(what, sizeof what, "%.60s, line %zu: %s", of->name, line, practice_question_word(question));
    error.column = (uint32_t)column;
    return print_text_error(what, cell, &error);
}

static int read_cells(const practice_answers *of, entry *to, const char *text)
{
    bool whole = to->position.axle == 0;
    int first = whole ? ASK_COUNT : ASK_STROKE, count = whole ? ASK_QUESTIONS - ASK_COUNT : ASK_END_QUESTIONS;
    for (int i = 0; i < count; i++) {
        size_t size = strcspn(text, ";");
        int status = read_answer(of, to->line, (practice_question)(first + i), text, size, &to->answers[i]);
        if (status != STATUS_CONTINUE)
            return status;
        text += size;
        if (*text == '\0')
            return STATUS_CONTINUE;
        text++;
    }
    return refuse(of, to->line, text, whole ? "more than two answers for the vehicle"
                                            : "more than four answers for a wheel end");
}

static bool is_known(const practice_answers *of, const entry *wanted)
{
    for (size_t i = 0; i < of->count; i++) {
        const entry *at = &of->entries[i];
        bool same = at->position.axle == wanted->position.axle && at->position.side == wanted->position.side;
        if (same && at->seed == wanted->seed && at->has_seed == wanted->has_seed)
            return true;
    }
    return false;
}

static int add_entry(practice_answers *of, const entry *made)
{
    if (of->count == of->room) {
        size_t room = of->room == 0 ? 64 : of->room * 2;
        entry *grown = room > ENTRIES_MOST ? NULL : realloc(of->entries, room * sizeof *grown);
        if (grown == NULL)
            return print_error("%s has more answers than fit", of->name);
        of->entries = grown;
        of->room = room;
    }
    of->entries[of->count++] = *made;
    return STATUS_CONTINUE;
}

static int read_line(practice_answers *of, size_t line, const char *text)
{
    entry made = {.seed = of->seed, .has_seed = of->has_seed, .line = line};
    text += strspn(text, " \t");
    if (*text == '\0' || *text == '#')
        return STATUS_CONTINUE;
    if (strncmp(text, "seed", 4) == 0)
        return read_seed(of, line, text);
    size_t size = strcspn(text, ":");
    if (text[size] == '\0')
        return refuse(of, line, text, "a line is like \"1L: 1 7/16; 1 3/4; in; 1\", \"vehicle: 1/2; below\" or "
                                      "\"seed 42\"");
    bool whole = size == strlen("vehicle") && strncmp(text, "vehicle", size) == 0;
    if (!whole && rodt_position_read(text, size, &made.position, NULL) != RODT_OK)
        return refuse(of, line, text, "in front of the colon stands a position such as 1L, or vehicle");
    if (is_known(of, &made))
        return refuse(of, line, text, "this one was answered already");
    int status = read_cells(of, &made, text + size + 1);
    return status == STATUS_CONTINUE ? add_entry(of, &made) : status;
}

/* --- The file ----------------------------------------------------------------------------------------- */

static int read_text(practice_answers *of, char *text, size_t size)
{
    if (memchr(text, '\0', size) != NULL)
        return print_error("%s is no text", of->name);
    text[size] = '\0';
    text += strncmp(text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    for (size_t line = 1; *text != '\0'; line++) {
        size_t length = strcspn(text, "\n");
        bool last = text[length] == '\0';
        text[length] = '\0';
        if (length > 0 && text[length - 1] == '\r')
            text[length - 1] = '\0';
        int status = read_line(of, line, text);
        if (status != STATUS_CONTINUE)
            return status;
        text += length + !last;
    }
    return STATUS_CONTINUE;
}

static int read_file(practice_answers *of, const char *name)
{
    FILE *file = strcmp(name, "-") == 0 ? stdin : fopen(name, "rb");
    char *text = malloc(TEXT_MOST + 1);
    if (file == NULL) {
        free(text);
        return print_error("cannot open %s: %s", name, strerror(errno));
    }
    size_t size = text != NULL ? fread(text, 1, TEXT_MOST, file) : 0;
    bool failed = ferror(file) != 0 || text == NULL, fits = feof(file) != 0;
    if (file != stdin)
        fclose(file);
    int status = failed ? print_error("cannot read %s", name)
                 : !fits ? print_error("%s is too long for a file of answers", name)
                         : read_text(of, text, size);
    free(text);
    return status;
}

int practice_answers_open(const char *name, rodt_unit unit, practice_answers **out)
{
    *out = calloc(1, sizeof **out);
    if (*out == NULL)
        return print_error("no memory");
    (*out)->name = strcmp(name, "-") == 0 ? "standard input" : name;
    (*out)->unit = unit;
    return read_file(*out, name);
}

void practice_answers_close(practice_answers *answers)
{
    if (answers != NULL)
        free(answers->entries);
    free(answers);
}

/* --- Marking ------------------------------------------------------------------------------------------ */

/* The answers for a position of a vehicle; position 0 = the vehicle as a whole. Empty ones if there are none. */
static entry take(practice_answers *from, const practice *of, bool only, rodt_position position)
{
    for (size_t i = 0; i < from->count; i++) {
        entry *at = &from->entries[i];
        bool mine = at->has_seed ? at->seed == of->setting.seed : only;
        if (mine && at->position.axle == position.axle && at->position.side == position.side) {
            at->used = true;
            return *at;
        }
    }
    return (entry){.used = false};
}

static void put_mark(json_writer *json, const practice_answer *answer, practice_mistake mistake, const char *key)
{
    json_pair(json, key,
              !answer->given ? NULL : mistake == MISTAKE_NONE ? "right" : practice_mistake_word(mistake));
}

static void put_marks(json_writer *json, const char *position, practice_question first, const practice_answer *answers,
                      const practice_mistake *mistakes)
{
    int count = first == ASK_STROKE ? ASK_END_QUESTIONS : ASK_QUESTIONS - ASK_COUNT;
    json_open(json, '{');
    json_pair(json, "position", position);
    for (int i = 0; i < count; i++)
        put_mark(json, &answers[i], mistakes[i], practice_question_word((practice_question)((int)first + i)));
    json_close(json, '}');
}

typedef struct marking {
    const practice *of;
    practice_score *score;
    json_writer *json; /* NULL = for people */
} marking;

static void show(const marking *to, size_t end, const char *position, practice_question first, const entry *given,
                 const practice_mistake *mistakes)
{
    int count = first == ASK_STROKE ? ASK_END_QUESTIONS : ASK_QUESTIONS - ASK_COUNT;
    bool whole = true;
    for (int i = 0; i < count; i++) {
        practice_count_answer(to->score, &given->answers[i], mistakes[i]);
        whole = whole && given->answers[i].given && mistakes[i] == MISTAKE_NONE;
    }
    if (to->json != NULL) {
        put_marks(to->json, position, first, given->answers, mistakes);
        return;
    }
    printf("%s%s\n", position, whole ? ": all right" : "");
    if (whole)
        return;
    practice_print_marks(to->of, end, first, given->answers, mistakes);
    if (first == ASK_STROKE)
        practice_print_truth(to->of, end, stdout);
    else
        practice_print_vehicle_truth(to->of, stdout);
}

static void mark_all(practice_answers *from, bool only, const marking *to)
{
    practice_mistake mistakes[ASK_END_QUESTIONS];
    char position[RODT_POSITION_TEXT_SIZE];
    for (size_t i = 0; i < to->of->judged.count; i++) {
        const entry given = take(from, to->of, only, to->of->judged.ends[i].position);
        practice_position(to->of, i, position);
        practice_mark_end(to->of, i, given.answers, mistakes);
        show(to, i, position, ASK_STROKE, &given, mistakes);
    }
    const entry given = take(from, to->of, only, (rodt_position){0, 0});
    practice_mark_vehicle(to->of, given.answers, mistakes);
    show(to, 0, "vehicle", ASK_COUNT, &given, mistakes);
}

static void put_score(json_writer *json, const practice_score *score)
{
    char word[24];
    snprintf(word, sizeof word, "%u", score->right);
    json_pair(json, "right", word);
    snprintf(word, sizeof word, "%u", score->wrong);
    json_pair(json, "wrong", word);
    snprintf(word, sizeof word, "%u", score->open);
    json_pair(json, "not_answered", word);
}

int practice_answers_mark(practice_answers *answers, const practice *of, bool only, bool as_json,
                          practice_score *score)
{
    practice_score here = {0};
    json_writer json = {.to = stdout, .first = true};
    marking to = {of, &here, as_json ? &json : NULL};
    char seed[24];
    snprintf(seed, sizeof seed, "%" PRIu64, of->setting.seed);
    if (as_json) {
        json_open(&json, '{');
        json_pair(&json, "practice", "marks");
        json_pair(&json, "seed", seed);
        json_key(&json, "marks");
        json_open(&json, '[');
        mark_all(answers, only, &to);
        json_close(&json, ']');
        put_score(&json, &here);
        json_close(&json, '}');
        putchar('\n');
    } else {
        printf("BRAKE STROKE PRACTICE, MARKED   seed %s\n", seed);
        mark_all(answers, only, &to);
        putchar('\n');
    }
    practice_add_score(score, &here);
    return STATUS_CONTINUE;
}

int practice_answers_finish(const practice_answers *answers)
{
    for (size_t i = 0; i < answers->count; i++) {
        const entry *at = &answers->entries[i];
        if (!at->used && at->has_seed)
            return print_error("%s, line %zu: no vehicle of this run has this seed and position; are the options those "
                               "of the sheet?", answers->name, at->line);
        if (!at->used)
            return print_error("%s, line %zu: there is no such wheel end, or it must be said of which seed it is: put "
                            "\"seed 42\" above it", answers->name, at->line);
    }
    return STATUS_CONTINUE;
}
