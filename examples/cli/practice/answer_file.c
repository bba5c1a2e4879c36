/* SPDX-License-Identifier: Apache-2.0 */
/* Answers that were written down, a line each: "1L: 1 7/16; 1 3/4; in; 1", "vehicle: 1 1/2; below", and "seed 42"
 * above those of a vehicle when there are several. */
#include "practice/practice.h"
#include "input/text_file.h"
#include "ui/exit_status.h"
#include "ui/json_writer.h"
#include "ui/language.h"
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
    practice_answers given;
    size_t line;
    rodt_position position; /* not said = the vehicle as a whole */
    bool has_seed;
    bool used;
} entry;

struct answer_file {
    const char *name;
    rodt_unit unit;
    entry *entries;
    size_t count;
    size_t room;
    uint64_t seed; /* of the lines being read */
    bool has_seed;
};

static int print_line_error(const answer_file *of, size_t line, const char *text, const char *sentence)
{
    char shown[120];
    snprintf(shown, sizeof shown, "%.100s", text);
    return print_error("%s, line %zu, \"%s\": %s", of->name, line, shown, say(sentence));
}

/* --- Lines -------------------------------------------------------------------------------------------- */

static int parse_seed(answer_file *of, size_t line, const char *text)
{
    const char *at = text + strlen("seed");
    uint64_t seed = 0;
    at += strspn(at, ": \t");
    size_t digits = strspn(at, "0123456789");
    if (digits == 0 || digits > 19 || at[digits + strspn(at + digits, " \t")] != '\0')
        return print_line_error(of, line, text, TO_SAY("a seed is a whole number of at most 19 digits"));
    for (size_t i = 0; i < digits; i++)
        seed = seed * 10 + (uint64_t)(at[i] - '0');
    of->seed = seed;
    of->has_seed = true;
    return STATUS_CONTINUE;
}

/* One answer of a line; the messages name the line and what could not be read. */
static int parse_answer(const answer_file *of, size_t line, practice_question question, const char *text,
                       size_t size, practice_answer *out)
{
    char cell[200], what[160];
    rodt_error error = {.status = RODT_OK};
    rodt_status status = practice_parse(question, text, size, of->unit, out, &error);
    if (status == RODT_OK || status == RODT_E_EMPTY || error.status == RODT_E_EMPTY)
        return STATUS_CONTINUE;
    size_t blanks = strspn(text, " \t"), column = error.column;
    text += blanks < size ? blanks : 0;
    size -= blanks < size ? blanks : 0;
    snprintf(cell, sizeof cell, "%.*s", size < sizeof cell ? (int)size : (int)sizeof cell - 1, text);
    snprintf(what, sizeof what, say("%.60s, line %zu: %s"), of->name, line, say(practice_question_name(question)));
    error.column = (uint32_t)column;
    return print_text_error(what, cell, &error);
}

static int parse_cells(const answer_file *of, entry *to, const char *text)
{
    practice_question first = to->position.axle == 0 ? ASK_COUNT : ASK_STROKE;
    for (int i = (int)first; i < practice_group_end(first); i++) {
        size_t size = strcspn(text, ";");
        int status = parse_answer(of, to->line, (practice_question)i, text, size, &to->given.answers[i]);
        if (status != STATUS_CONTINUE)
            return status;
        text += size;
        if (*text == '\0')
            return STATUS_CONTINUE;
        text++;
    }
    return print_line_error(of, to->line, text, first == ASK_COUNT ? TO_SAY("more than two answers for the vehicle")
                                                                   : TO_SAY("more than four answers for a wheel end"));
}

static bool is_known(const answer_file *of, const entry *wanted)
{
    for (size_t i = 0; i < of->count; i++) {
        const entry *at = &of->entries[i];
        bool same = at->position.axle == wanted->position.axle && at->position.side == wanted->position.side;
        if (same && at->seed == wanted->seed && at->has_seed == wanted->has_seed)
            return true;
    }
    return false;
}

static int add_entry(answer_file *of, const entry *made)
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

static int parse_line(answer_file *of, size_t line, const char *text)
{
    entry made = {.seed = of->seed, .has_seed = of->has_seed, .line = line};
    text += strspn(text, " \t");
    if (*text == '\0' || text_is_comment(text))
        return STATUS_CONTINUE;
    if (strncmp(text, "seed", 4) == 0)
        return parse_seed(of, line, text);
    size_t size = strcspn(text, ":");
    if (text[size] == '\0')
        return print_line_error(of, line, text, TO_SAY("a line is like \"1L: 1 7/16; 1 3/4; in; 1\", "
                                                       "\"vehicle: 1/2; below\" or \"seed 42\""));
    size_t word = size;
    while (word > 0 && text[word - 1] == ' ')
        word--;
    bool whole = is_said(TO_SAY("vehicle"), text, word);
    if (!whole && rodt_position_parse_n(text, size, &made.position, NULL) != RODT_OK)
        return print_line_error(of, line, text, TO_SAY("a position such as 1L, or vehicle, belongs before the colon"));
    if (is_known(of, &made))
        return print_line_error(of, line, text, TO_SAY("this one was answered already"));
    int status = parse_cells(of, &made, text + size + 1);
    return status == STATUS_CONTINUE ? add_entry(of, &made) : status;
}

/* --- The file ----------------------------------------------------------------------------------------- */

static int parse_text(answer_file *of, char *text, size_t size)
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
        int status = parse_line(of, line, text);
        if (status != STATUS_CONTINUE)
            return status;
        text += length + !last;
    }
    return STATUS_CONTINUE;
}

static int read_file(answer_file *of, const char *name)
{
    FILE *file = strcmp(name, "-") == 0 ? stdin : fopen(name, "rb");
    char *text = malloc(TEXT_MOST + 1);
    if (file == NULL) {
        free(text);
        return print_error("cannot open %s: %s", name, say_system_error(errno));
    }
    size_t size = text != NULL ? fread(text, 1, TEXT_MOST, file) : 0;
    int reason = ferror(file) != 0 ? errno : 0;
    bool fits = feof(file) != 0;
    if (file != stdin)
        fclose(file);
    int status = text == NULL  ? print_error("no memory to read %s", name)
                 : reason != 0 ? print_error("cannot read %s: %s", name, say_system_error(reason))
                 : !fits       ? print_error("%s is too long for a file of answers", name)
                               : parse_text(of, text, size);
    free(text);
    return status;
}

int answer_file_open(const char *name, rodt_unit unit, answer_file **out)
{
    *out = calloc(1, sizeof **out);
    if (*out == NULL)
        return print_error("no memory");
    (*out)->name = strcmp(name, "-") == 0 ? say("standard input") : name;
    (*out)->unit = unit;
    return read_file(*out, name);
}

void answer_file_close(answer_file *answers)
{
    if (answers != NULL)
        free(answers->entries);
    free(answers);
}

/* --- Marking ------------------------------------------------------------------------------------------ */

/* The answers for a position of a vehicle; position 0 = the vehicle as a whole. Empty ones if there are none. */
static practice_answers find_answers(answer_file *from, const practice *of, bool only, rodt_position position)
{
    for (size_t i = 0; i < from->count; i++) {
        entry *at = &from->entries[i];
        bool mine = at->has_seed ? at->seed == of->setting.seed : only;
        if (mine && at->position.axle == position.axle && at->position.side == position.side) {
            at->used = true;
            return at->given;
        }
    }
    return (practice_answers){0};
}

static void write_marks(json_writer *json, const char *position, practice_question first,
                        const practice_answers *given)
{
    json_open(json, '{');
    json_pair(json, "position", position);
    for (int i = (int)first; i < practice_group_end(first); i++) {
        practice_mistake mistake = given->mistakes[i];
        json_pair(json, practice_question_name((practice_question)i),
                  !given->answers[i].given ? NULL : mistake == MISTAKE_NONE ? "right" : practice_mistake_name(mistake));
    }
    json_close(json, '}');
}

typedef struct marking {
    const practice *of;
    practice_score *score;
    json_writer *json; /* NULL = for people */
} marking;

static bool is_all_right(practice_question first, const practice_answers *given)
{
    bool right = true;
    for (int i = (int)first; i < practice_group_end(first); i++)
        right = right && given->answers[i].given && given->mistakes[i] == MISTAKE_NONE;
    return right;
}

static void mark_group(const marking *to, size_t end, const char *position, practice_question first,
                       practice_answers *given)
{
    practice_mark(to->of, end, first, given);
    practice_score_add(to->score, first, given, false);
    if (to->json != NULL) {
        write_marks(to->json, position, first, given);
        return;
    }
    bool right = is_all_right(first, given);
    printf("%s%s\n", position, right ? say(": all right") : "");
    if (!right)
        practice_print_marks(to->of, end, first, given);
}

static void mark_all(answer_file *from, bool only, const marking *to)
{
    char position[RODT_POSITION_TEXT_SIZE];
    for (size_t i = 0; i < to->of->judged.count; i++) {
        practice_answers given = find_answers(from, to->of, only, to->of->judged.ends[i].position);
        practice_format_position(to->of, i, position);
        mark_group(to, i, position, ASK_STROKE, &given);
    }
    practice_answers given = find_answers(from, to->of, only, (rodt_position){0, 0});
    mark_group(to, 0, to->json != NULL ? "vehicle" : say("vehicle"), ASK_COUNT, &given);
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

int answer_file_mark(answer_file *answers, const practice *of, bool only, bool as_json,
                          practice_score *score)
{
    practice_score here = {0};
    json_writer json = {.to = stdout, .first = true};
    marking to = {of, &here, as_json ? &json : NULL};
    char seed[24], words[SEED_SIZE];
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
        printf("%s   %s\n", say("BRAKE STROKE PRACTICE, MARKED"), practice_format_seed(of->setting.seed, words));
        mark_all(answers, only, &to);
        putchar('\n');
    }
    practice_score_merge(score, &here);
    return STATUS_CONTINUE;
}

int answer_file_finish(const answer_file *answers)
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
