/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of `rodtravel practice`: an invented vehicle from a seed, its sheet, its key, marking of answers. */
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

/* What was put into a wheel end on purpose. */
typedef enum practice_trap {
    TRAP_NONE, TRAP_NEAR, TRAP_AT_LIMIT, TRAP_TICK_OVER, TRAP_OVER, TRAP_NO_MOVEMENT, TRAP_SWAPPED, TRAP_MIXED_METHODS,
    TRAP_PRESSURE_LOW, TRAP_PRESSURE_HIGH, TRAP_ENGINE, TRAP_PARKING, TRAP_HOT, TRAP_HEARSAY, TRAP_BEYOND, TRAP_DAY,
    TRAP_COUNT
} practice_trap;

/* What makes a vehicle. Two equal settings make equal vehicles, on every machine, with one edition of the tables. */
typedef struct practice_setting {
    uint64_t seed;
    const rodt_rules *rules;
    practice_level level;
    practice_build build;
    rodt_unit unit; /* of the tape: inches in sixteenths, or whole millimetres */
    rodt_date day;  /* of the inspection; not given = the seed decides */
    bool ascii;     /* the tape is drawn with plain ASCII */
    bool described; /* the tape is told in words instead of drawn */
    int16_t reserved;
} practice_setting;

/* What is seen of a wheel end beyond its reading. */
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

/* --- Chance (practice_random.c) ---------------------------------------------------------------------- */

typedef struct practice_random {
    uint64_t state;
} practice_random;

/* An even draw from 0 to bound - 1, from `least` to `most`, or of an index by its weight. */
unsigned practice_below(practice_random *random, unsigned bound);
int practice_between(practice_random *random, int least, int most);
size_t practice_pick(practice_random *random, const unsigned char *weights, size_t count);

/* A seed that nobody chose, short enough to be typed again. */
uint64_t practice_any_seed(void);

/* --- The vehicle ------------------------------------------------------------------------------------- */

typedef enum axle_role { ROLE_STEER, ROLE_DRIVE, ROLE_TRAILER, ROLES } axle_role;

/* The chambers of an axle. */
typedef struct practice_axle {
    rodt_chamber chamber; /* as the marks are to be read */
    rodt_length rated;    /* rated stroke that is marked on some housings of the kind; not given = unknown */
    bool shows_rated;     /* its limit hangs on that mark, so it is there */
    bool is_long;
    int16_t reserved[3];
} practice_axle;

/* Draws chambers that have a limit; `size` "" = any. False: the rule set has none for this role
 * (practice_chamber.c). */
bool practice_draw_axle(practice_random *random, const practice *of, axle_role role, const char *size,
                        practice_axle *out);

/* Draws what is seen of one of them, and puts it together again as a person must: stamp, ports, tag, rated stroke. */
void practice_draw_marks(practice_random *random, const practice *of, const practice_axle *axle, practice_end *seen,
                         rodt_chamber *chamber);

/* Makes the vehicle of a setting (practice_make.c). Returns STATUS_CONTINUE or an exit status. */
int practice_make(const practice_setting *setting, practice *out);

/* --- The tape (practice_tape.c) ---------------------------------------------------------------------- */

/* The part of the tape that is drawn. */
typedef struct practice_window {
    int first;   /* tick at its left end; tick 0 is the chamber face */
    int ticks;   /* from its left to its right end */
    int pointer; /* tick at the clevis pin */
    int whole;   /* ticks between two numbers */
    int number;  /* what the tape counts from one number to the next: 1 in, 10 mm */
} practice_window;

practice_window practice_window_of(rodt_length at, rodt_unit unit);

/* 1 to 5: how far a tick reaches; 5 has a number under it. */
int practice_tick_height(int tick, rodt_unit unit);

#define TAPE_ROWS 4
#define TAPE_ROW_SIZE 320
typedef struct practice_tape {
    char rows[TAPE_ROWS][TAPE_ROW_SIZE]; /* the pointer, two rows of ticks, the numbers; without blanks at the end */
} practice_tape;

void practice_tape_draw(rodt_length at, rodt_unit unit, bool ascii, practice_tape *out);

/* The same in words: "the pin stands at the 13th sixteenth after the 3". */
#define TAPE_WORDS_SIZE 120
void practice_tape_describe(rodt_length at, rodt_unit unit, char words[TAPE_WORDS_SIZE]);

/* --- Words (practice_words.c) ------------------------------------------------------------------------ */

#define PRACTICE_WORDS_SIZE 400
#define PRACTICE_CAUTION                                                                                             \
    "Practice, not an inspection: the vehicle is invented. On a real one chock the wheels; the cited law and a "    \
    "licensed inspector decide."

#define PRACTICE_TAPE_NOTE                                                                                           \
    "Each tape shows a piece of the distance from the chamber face to the clevis pin; its zero is at the face, the "   \
    "pointer at the pin."

const char *practice_level_word(practice_level level);
const char *practice_build_word(practice_build build);
void practice_position(const practice *of, size_t end, char word[RODT_POSITION_TEXT_SIZE]);
void practice_marks_words(const practice *of, size_t end, char words[PRACTICE_WORDS_SIZE]);
void practice_conditions_words(const practice *of, size_t end, char words[PRACTICE_WORDS_SIZE]);
void practice_about_words(const practice *of, char words[PRACTICE_WORDS_SIZE]);
void practice_repeat_words(const practice *of, char words[PRACTICE_WORDS_SIZE]);
void practice_made_words(char words[PRACTICE_WORDS_SIZE]);

/* A length in the unit of the sheet: "1 7/16", "38 mm". */
const char *practice_length_word(const practice *of, rodt_length length, char word[WORD_SIZE]);

/* "vehicle, 3 of 10 brakes, 30 %". */
void practice_count_words(const practice *of, char words[PRACTICE_WORDS_SIZE]);

/* The reasons that can decide a verdict, as they are numbered from 1; RODT_REASON_END beyond the last. */
rodt_reason practice_reason_at(size_t index);

/* Whether a reason of a finding is one that decides its verdict; and the first that does. */
bool practice_decides(const rodt_finding *finding, rodt_reason reason);
rodt_reason practice_deciding(const rodt_finding *finding);

/* What the wheel end teaches, a line each; what its finding says, a line each, and the source of its limit. */
void practice_each_lesson(const practice *of, size_t end, vehicle_line line, void *context);
void practice_each_reason(const practice *of, size_t end, vehicle_line line, void *context);

/* --- Sheet and key ------------------------------------------------------------------------------------ */

void practice_print_end(const practice *of, size_t end, FILE *to); /* practice_sheet.c: marks and tapes */
void practice_print_lists(FILE *to);                                /* verdicts and reasons to choose from */
void practice_write_sheet(const practice *of, FILE *to);
void practice_write_key(const practice *of, FILE *to); /* practice_key.c */
void practice_print_truth(const practice *of, size_t end, FILE *to); /* the key of one wheel end */
void practice_print_vehicle_truth(const practice *of, FILE *to);

/* The page: a head once, every vehicle, the end once (practice_html.c). */
void practice_html_begin(FILE *to, bool key);
void practice_html_sheet(const practice *of, FILE *to);
void practice_html_key(const practice *of, FILE *to);
void practice_html_end(FILE *to);
void practice_write_svg(FILE *to, const char *name, rodt_length at, rodt_unit unit); /* practice_svg.c */

/* One object each (practice_json.c). */
void practice_json_sheet(json_writer *json, const practice *of);
void practice_json_key(json_writer *json, const practice *of);

/* --- Answers ------------------------------------------------------------------------------------------ */

typedef enum practice_question {
    ASK_STROKE, ASK_LIMIT, ASK_VERDICT, ASK_REASON, ASK_END_QUESTIONS,
    ASK_COUNT = ASK_END_QUESTIONS, ASK_OUTCOME, ASK_QUESTIONS
} practice_question;

const char *practice_question_word(practice_question question); /* "stroke", "limit", ... */

/* One answer, as it was read. */
typedef struct practice_answer {
    rodt_length length; /* stroke or limit; brakes for ASK_COUNT, percent with is_percent */
    int word;           /* rodt_verdict, rodt_reason or rodt_outcome */
    unsigned digits;    /* behind the decimal sign of a percentage */
    bool given;
    bool none;          /* "none": there is no such figure */
    bool negative;      /* a minus sign stood in front */
    bool is_percent;
} practice_answer;

/* Reads one answer (practice_read.c). RODT_E_EMPTY: nothing was answered. The error says what was expected. */
rodt_status practice_read(practice_question question, const char *text, size_t size, rodt_unit unit,
                          practice_answer *out, rodt_error *error);

/* Kinds of mistakes (practice_mark.c). */
typedef enum practice_mistake {
    MISTAKE_NONE, MISTAKE_WRONG_WAY, MISTAKE_APPLIED, MISTAKE_RELEASED, MISTAKE_SUM, MISTAKE_HAND_PULL, MISTAKE_BORROW,
    MISTAKE_TICK, MISTAKE_SWAPPED_UNSEEN, MISTAKE_STROKE, MISTAKE_RATED, MISTAKE_OTHER_CLASS, MISTAKE_OTHER_ROW,
    MISTAKE_SPRING_SIZE, MISTAKE_FAMILY, MISTAKE_DAY, MISTAKE_LIMIT, MISTAKE_AT_LIMIT, MISTAKE_PASSED_OVER,
    MISTAKE_PASSED_DEAD, MISTAKE_PASSED_UNPROVEN, MISTAKE_FAILED_UNPROVEN, MISTAKE_EXCUSED, MISTAKE_FOLLOWS,
    MISTAKE_VERDICT, MISTAKE_REASON, MISTAKE_HALF_AS_WHOLE, MISTAKE_HALF_LEFT, MISTAKE_UNKNOWN_COUNTED,
    MISTAKE_COUNT_OF, MISTAKE_CRITERION, MISTAKE_KINDS
} practice_mistake;

const char *practice_mistake_word(practice_mistake mistake);     /* "rated-stroke" */
const char *practice_mistake_sentence(practice_mistake mistake); /* what was probably done */
bool practice_mistake_endangers(practice_mistake mistake);       /* a bad brake would have gone on the road */

/* Marks the answers of a wheel end, or of the whole vehicle (ASK_COUNT and ASK_OUTCOME); mistakes[] gets
 * MISTAKE_NONE where an answer is right or was not given. */
void practice_mark_end(const practice *of, size_t end, const practice_answer answers[ASK_END_QUESTIONS],
                       practice_mistake mistakes[ASK_END_QUESTIONS]);
void practice_mark_vehicle(const practice *of, const practice_answer answers[2], practice_mistake mistakes[2]);

typedef struct practice_score {
    unsigned right;
    unsigned wrong;
    unsigned open; /* not answered */
    unsigned mistakes[MISTAKE_KINDS];
} practice_score;

void practice_count_answer(practice_score *score, const practice_answer *answer, practice_mistake mistake);
void practice_add_score(practice_score *total, const practice_score *part);
void practice_print_score(const practice_score *score);
int practice_status(const practice_score *score);

/* Shows how answers were marked; `first` is ASK_STROKE or ASK_COUNT (practice_ask.c). */
void practice_print_marks(const practice *of, size_t end, practice_question first, const practice_answer *answers,
                          const practice_mistake *mistakes);

/* Asks a person, adds to the score; false = the person has left (practice_ask.c). */
bool practice_ask(const practice *of, practice_score *score);

/* The answers of a file (practice_answers.c). */
typedef struct practice_answers practice_answers;
int practice_answers_open(const char *name, rodt_unit unit, practice_answers **out);
void practice_answers_close(practice_answers *answers);

/* Marks them for one vehicle, and says how, or writes them as one object. `only` = there is one vehicle, so its seed
 * need not be said. */
int practice_answers_mark(practice_answers *answers, const practice *of, bool only, bool as_json,
                          practice_score *score);

/* After the last vehicle: refuses answers that were for none of them. */
int practice_answers_finish(const practice_answers *answers);

#endif
