/* SPDX-License-Identifier: Apache-2.0 */
/* `rodtravel practice`: an invented vehicle from a seed, its sheet, its key, marking of answers. Each part uses those
 * above it: random, generate, tape, describe, {text, html, json}, parse, mark, {interview, answer_file}, command. */
#ifndef PRACTICE_H
#define PRACTICE_H

#include "ui/format.h"
#include "ui/json_writer.h"
#include "vehicle/vehicle.h"

#include <rodtravel/rodtravel.h>

#include <stdio.h>

#define PRACTICE_ENDS_MAX ((size_t)12)
#define PRACTICE_VEHICLES_MAX 2000u /* a file is gathered in memory */

typedef enum practice_level { PRACTICE_BASIC, PRACTICE_MIXED, PRACTICE_HARD, PRACTICE_LEVELS } practice_level;

typedef enum practice_build {
    PRACTICE_ANY, /* the seed decides */
    PRACTICE_TRUCK, PRACTICE_BUS, PRACTICE_COMBINATION, PRACTICE_BUILDS
} practice_build;

/* The difficulty that was put into a wheel end on purpose. */
typedef enum practice_trap {
    TRAP_NONE, TRAP_NEAR, TRAP_AT_LIMIT, TRAP_TICK_OVER, TRAP_OVER, TRAP_NO_MOVEMENT, TRAP_SWAPPED, TRAP_MIXED_METHODS,
    TRAP_PRESSURE_LOW, TRAP_PRESSURE_HIGH, TRAP_ENGINE, TRAP_PARKING, TRAP_HOT, TRAP_HEARSAY, TRAP_BEYOND, TRAP_DAY,
    TRAP_COUNT
} practice_trap;

/* Equal settings make equal vehicles, on every machine, with one edition of the tables. */
typedef struct practice_setting {
    uint64_t seed;
    const rodt_rules *rules;
    practice_level level;
    practice_build build;
    rodt_unit unit; /* of the tape: inches in sixteenths, or whole millimetres */
    rodt_date day;  /* of the inspection; not given = the seed decides */
    bool ascii;     /* the tape is drawn with plain ASCII */
    bool described; /* the place of the pin is said in words instead of drawn */
    int16_t reserved;
} practice_setting;

/* The visible side of a wheel end, beyond its reading. */
typedef struct practice_end {
    rodt_length hand_pull; /* free stroke, noted beside; not given = none was noted */
    practice_trap trap;
    rodt_port port;
    rodt_tag tag;
    bool hearsay; /* somebody says that it is a long-stroke chamber, and no sign is seen */
    char stamp[27];
} practice_end;

typedef struct practice {
    practice_setting setting;
    rodt_date day;
    practice_build build;
    practice_end seen[PRACTICE_ENDS_MAX];
    vehicle_record judged; /* the readings, and the library's own findings: the key */
} practice;

/* --- Random numbers: random.c ------------------------------------------------------------------------- */

typedef struct practice_random {
    uint64_t state;
} practice_random;

/* An even draw from 0 to bound - 1, from `least` to `most`, or of an index by its weight. */
unsigned practice_below(practice_random *random, unsigned bound);
int practice_between(practice_random *random, int least, int most);
size_t practice_pick(practice_random *random, const unsigned char *weights, size_t count);

/* A seed that nobody chose, short enough to be typed again. */
uint64_t practice_any_seed(void);

/* --- The vehicle: generate.c -------------------------------------------------------------------------- */

/* Makes the vehicle of a setting. Returns STATUS_CONTINUE or an exit status. */
int practice_generate(const practice_setting *setting, practice *out);

/* Brakes of the vehicle that are out of adjustment or inoperative. */
unsigned practice_faults(const practice *of);

/* --- The tape: tape.c --------------------------------------------------------------------------------- */

/* The part of the tape that is drawn. */
typedef struct practice_window {
    int first;   /* tick at its left end; tick 0 is the chamber face */
    int ticks;   /* from its left to its right end */
    int pointer; /* tick at the clevis pin */
    int whole;   /* ticks between two numbers */
    int number;  /* what the tape counts from one number to the next: 1 in, 10 mm */
} practice_window;

/* Columns of a line that the tape fits in as a whole; where there are fewer a piece of half its length is drawn. */
#define TAPE_COLUMNS 76u

practice_window practice_window_of(rodt_length at, rodt_unit unit, bool narrow);

/* 1 to 5: how far a tick reaches; 5 has a number under it. */
int practice_tick_height(int tick, rodt_unit unit);

#define TAPE_ROWS 5
#define TAPE_ROW_SIZE 320
typedef struct practice_tape {
    char rows[TAPE_ROWS][TAPE_ROW_SIZE]; /* the pointer, three rows of ticks, the numbers; no blanks at the end */
} practice_tape;

void practice_tape_draw(rodt_length at, rodt_unit unit, bool ascii, bool narrow, practice_tape *out);

/* The same in words: "the pin stands at the 13th sixteenth after the 3". */
#define TAPE_TEXT_SIZE 120
void practice_tape_describe(rodt_length at, rodt_unit unit, char words[TAPE_TEXT_SIZE]);

/* --- Descriptions: describe.c ------------------------------------------------------------------------- */

#define PRACTICE_TEXT_SIZE SAID_SIZE
#define PRACTICE_CAUTION                                                                                             \
    TO_SAY("Practice, not an inspection: the vehicle is invented. On a real one chock the wheels; the cited law and "  \
           "a licensed inspector decide.")

#define PRACTICE_TAPE_NOTE                                                                                           \
    TO_SAY("Each tape shows a piece of the distance from the chamber face to the clevis pin; its zero is at the "      \
           "face, the pointer at the pin.")

/* "seed 7" */
#define SEED_SIZE 60
const char *practice_format_seed(uint64_t seed, char word[SEED_SIZE]);

const char *practice_level_name(practice_level level);
const char *practice_build_name(practice_build build);
void practice_format_position(const practice *of, size_t end, char word[RODT_POSITION_TEXT_SIZE]);
void practice_describe_marks(const practice *of, size_t end, char words[PRACTICE_TEXT_SIZE]);
void practice_describe_conditions(const practice *of, size_t end, char words[PRACTICE_TEXT_SIZE]);
void practice_describe_vehicle(const practice *of, char words[PRACTICE_TEXT_SIZE]);
void practice_format_command(const practice *of, char words[PRACTICE_TEXT_SIZE]);
void practice_format_version(char words[PRACTICE_TEXT_SIZE]);

/* A length in the unit of the sheet: "1 7/16", "38 mm". */
const char *practice_format_length(const practice *of, rodt_length length, char word[WORD_SIZE]);

/* "vehicle, 3 of 10 brakes, 30 %". */
void practice_format_count(const practice *of, char words[PRACTICE_TEXT_SIZE]);

/* The reasons that can decide a verdict, as they are numbered from 1; RODT_REASON_END beyond the last. */
rodt_reason practice_reason_at(size_t index);

/* The word of such a reason, to be said; "" for another. */
const char *practice_reason_word(rodt_reason reason);

/* Whether a reason of a finding is one that decides its verdict; and the first that does. */
bool practice_is_deciding(const rodt_finding *finding, rodt_reason reason);
rodt_reason practice_deciding_reason(const rodt_finding *finding);

/* Calls `line` for each lesson of the wheel end; for each reason of its finding, and the source of its limit.
 * The labels are still to be said. */
void practice_each_lesson(const practice *of, size_t end, vehicle_line line, void *context);
void practice_each_reason(const practice *of, size_t end, vehicle_line line, void *context);

/* --- Sheet and key: text.c, html.c, json.c ------------------------------------------------------------ */

void practice_print_end(const practice *of, size_t end, FILE *to); /* marks and tapes */
void practice_print_lists(FILE *to);                                /* verdicts and reasons to choose from */
/* A line for each kind of chamber: "clamp long", "12: 1 3/4, 16: 2". */
void practice_each_limit(const practice *of, vehicle_line line, void *context);

void practice_text_sheet(const practice *of, FILE *to);
void practice_text_key(const practice *of, FILE *to);
/* Of a key, its label in English; `to` is a FILE. */
void practice_print_line(void *to, const char *label, const char *text);
void practice_print_vehicle(const practice *of, FILE *to); /* the key of the vehicle */

/* One page: begin once, then every vehicle, end once. */
void practice_html_begin(FILE *to, bool key);
void practice_html_sheet(const practice *of, FILE *to);
void practice_html_key(const practice *of, FILE *to);
void practice_html_end(FILE *to);
void practice_html_who(FILE *to);  /* name and date, to be filled in */
void practice_html_made(FILE *to); /* the caution, and by what it was made */
void practice_html_boxes(FILE *to, const char *const *words, size_t count); /* each word is to be said */

/* One object each. */
void practice_json_sheet(json_writer *json, const practice *of);
void practice_json_key(json_writer *json, const practice *of);

/* --- Answers: parse.c, mark.c ------------------------------------------------------------------------- */

/* The two readings are asked of a person, not in a file. */
typedef enum practice_question {
    ASK_RELEASED, ASK_APPLIED, ASK_STROKE, ASK_LIMIT, ASK_VERDICT, ASK_REASON, ASK_END_QUESTIONS,
    ASK_COUNT = ASK_END_QUESTIONS, ASK_OUTCOME, ASK_QUESTIONS
} practice_question;

const char *practice_question_name(practice_question question); /* "stroke", "limit", ... */

/* Questions come in two groups: about a wheel end, from ASK_RELEASED or ASK_STROKE on; about the vehicle from ASK_COUNT
 * on. */
static inline int practice_group_end(practice_question first)
{
    return first < ASK_END_QUESTIONS ? ASK_END_QUESTIONS : ASK_QUESTIONS;
}

/* One answer, as it was read. */
typedef struct practice_answer {
    rodt_length length; /* stroke or limit; brakes for ASK_COUNT, percent with is_percent */
    int word;           /* rodt_verdict, rodt_reason or rodt_outcome */
    unsigned digits;    /* of a percentage, after its decimal point */
    bool given;
    bool none;          /* "none": there is no such figure */
    bool negative;      /* written with a minus sign */
    bool is_percent;
} practice_answer;

/* Reads one answer. RODT_E_EMPTY: nothing was answered. The error says what was expected. */
rodt_status practice_parse(practice_question question, const char *text, size_t size, rodt_unit unit,
                           practice_answer *out, rodt_error *error);

/* Kinds of mistakes. */
typedef enum practice_mistake {
    MISTAKE_NONE, MISTAKE_WRONG_WAY, MISTAKE_APPLIED, MISTAKE_RELEASED, MISTAKE_SUM, MISTAKE_HAND_PULL, MISTAKE_BORROW,
    MISTAKE_TICK, MISTAKE_READING, MISTAKE_CARRIED,
    MISTAKE_SWAPPED_UNSEEN, MISTAKE_STROKE, MISTAKE_RATED, MISTAKE_OTHER_CLASS, MISTAKE_OTHER_ROW,
    MISTAKE_SPRING_SIZE, MISTAKE_FAMILY, MISTAKE_DAY, MISTAKE_LIMIT, MISTAKE_AT_LIMIT, MISTAKE_PASSED_OVER,
    MISTAKE_PASSED_DEAD, MISTAKE_PASSED_UNPROVEN, MISTAKE_FAILED_UNPROVEN, MISTAKE_EXCUSED, MISTAKE_FOLLOWS,
    MISTAKE_VERDICT, MISTAKE_REASON, MISTAKE_HALF_AS_WHOLE, MISTAKE_HALF_LEFT, MISTAKE_UNKNOWN_COUNTED,
    MISTAKE_COUNT_OF, MISTAKE_CRITERION, MISTAKE_KINDS
} practice_mistake;

const char *practice_mistake_name(practice_mistake mistake); /* "rated-stroke" */

/* The answers of one group are at the numbers of their questions, and so are the mistakes. */
typedef struct practice_answers {
    practice_answer answers[ASK_QUESTIONS];
    practice_mistake mistakes[ASK_QUESTIONS]; /* MISTAKE_NONE where an answer is right or was not given */
} practice_answers;

void practice_mark(const practice *of, size_t end, practice_question first, practice_answers *answers);

typedef struct practice_score {
    unsigned right;
    unsigned wrong;
    unsigned open; /* not answered */
    unsigned mistakes[MISTAKE_KINDS];
} practice_score;

/* Counts the answers of a group; of a person who has left, only those that were given. */
void practice_score_add(practice_score *score, practice_question first, const practice_answers *answers, bool left);
void practice_score_merge(practice_score *total, const practice_score *part);
void practice_score_print(const practice_score *score);
int practice_score_status(const practice_score *score);

/* Prints how answers were marked, and why. */
void practice_print_marks(const practice *of, size_t end, practice_question first, const practice_answers *answers);

/* Asks a person, adds to the score; false = the person has left (interview.c). */
bool practice_interview(const practice *of, practice_score *score);

/* To be called when there is no more input: it has ended, or it cannot be read. */
void practice_note_end(void);

/* The errno of an input that could not be read, or 0. */
int practice_read_failure(void);

/* --- A file of answers: answer_file.c ----------------------------------------------------------------- */

typedef struct answer_file answer_file;
int answer_file_open(const char *name, rodt_unit unit, answer_file **out);
void answer_file_close(answer_file *answers);

/* Marks them for one vehicle, and says how, or writes them as one object. `only` = there is one vehicle, so its seed
 * need not be said. */
int answer_file_mark(answer_file *answers, const practice *of, bool only, bool as_json, practice_score *score);

/* After the last vehicle: refuses answers that were for none of them. */
int answer_file_finish(const answer_file *answers);

#endif
