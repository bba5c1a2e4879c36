/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of `rodtravel walkround`: questions in an order, answers into a record, the record on the disk. */
#ifndef WALK_H
#define WALK_H

#include "record/record.h"
#include "ui/compiler.h"

#include <rodtravel/rodtravel.h>

#include <stdio.h>
#include <sys/stat.h>

#define WALK_ANSWER_MAX ((size_t)400) /* bytes of an answer, with the closing zero byte */
#define WALK_ITEMS_MAX ((size_t)1400)
#define WALK_NONE (-1)
#define WALK_SAID_SIZE 480 /* bytes of what was understood */

/* --- Questions (questions.c) -------------------------------------------------------------------- */

/* Words that are understood at every question, or at those that they fit. None of them is an answer to any question. */
#define WORDS_YES TO_SAY("y, yes")
#define WORDS_NO TO_SAY("n, no")
#define WORDS_KEEP TO_SAY("k, keep")
#define WORDS_HELP TO_SAY("help")
#define WORDS_BACK TO_SAY("back")
#define WORDS_AGAIN TO_SAY("again")
#define WORDS_SKIP TO_SAY("skip")
#define WORDS_SHOW TO_SAY("show")
#define WORDS_NOTE TO_SAY("note")
#define WORDS_AIR TO_SAY("air")
#define WORDS_QUIT TO_SAY("q, quit, exit")
#define WORDS_DIAMETER TO_SAY("diameter")
#define WORDS_CLUES TO_SAY("clues")
#define WORDS_NEVER TO_SAY("n, nothing, none, never")

/* How an answer is read. */
typedef enum walk_kind {
    WALK_WORD, WALK_TEXT, WALK_COUNT, WALK_AXLES, WALK_BUILT, WALK_LENGTH, WALK_PRESSURE, WALK_CHAMBER,
    WALK_CLASS, WALK_NUMBER, WALK_CLOCK, WALK_PLATES, WALK_KEPT
} walk_kind;

/* Where an answer is kept in the record. */
typedef enum walk_location { WALK_HEAD, WALK_UNITS, WALK_END, WALK_ALL_ENDS, WALK_CHECK, WALK_STEP } walk_location;

/* The parts of a walk-round, in their order. */
typedef enum walk_part {
    WALK_SAFETY, WALK_VEHICLE, WALK_SECURE, WALK_AIR_OFF, WALK_AIR_ON, WALK_SET_UP, WALK_RELEASED, WALK_APPLICATION,
    WALK_APPLIED, WALK_FINISH, WALK_PARTS
} walk_part;

/* How an answer may be spelled, and what the record gets. */
typedef struct walk_word {
    const char *spellings; /* "y, yes": words with commas between, the clearest one last */
    const char *meaning;
} walk_word;

typedef struct walk_question {
    const char *name;  /* among the steps of a record, after the wheel end or the check */
    const char *title;  /* as it is asked */
    const char *single; /* the same of a vehicle without trailers; NULL = the title */
    const char *help;
    walk_part part;
    walk_kind kind;
    walk_location location;
    int key;     /* in the record */
    bool mandatory;   /* cannot be skipped */
    bool optional;  /* Enter skips it */
    const walk_word *words; /* of WALK_WORD, closed by one without spellings */
} walk_question;

typedef enum walk_id {
    ASK_CAUTIONS, ASK_UNIT, ASK_CARRIER, ASK_INSPECTOR, ASK_PLACE, ASK_TIME, ASK_ODOMETER, ASK_VEHICLE, ASK_AXLES,
    ASK_TOWED, ASK_BUILT, ASK_PLATES,
    ASK_CHOCKS, ASK_AIR_READY, ASK_DRAINS_CLOSED, ASK_SPRING, ASK_ENGINE, ASK_DRUM, ASK_DIVISION, ASK_RESERVOIRS,
    ASK_PSI, ASK_HELD, ASK_PSI_AFTER,
    ASK_PARKED, ASK_CHOCKS_AWAY, ASK_REPAIR, ASK_KEPT,
    ASK_CHAMBER, ASK_CLASS, ASK_RATED, ASK_MARKED, ASK_ADJUSTER, ASK_ARM, ASK_END_RELEASED, ASK_END_APPLIED,
    ASK_PRESSURE, ASK_CUT_OUT, ASK_SPAN, ASK_FROM, ASK_TO, ASK_BEFORE, ASK_AFTER, ASK_SECONDS, ASK_LENGTH, ASK_ACTUAL,
    ASK_REQUIRED, ASK_ANSWER,
    ASK_IDS
} walk_id;

extern const walk_question walk_questions[ASK_IDS];
const char *walk_part_title(walk_part part);

/* One question of one walk-round. */
typedef struct walk_item {
    walk_id id;
    walk_part part;
    int end;          /* wheel end of the record, or WALK_NONE */
    rodt_air_check check; /* or RODT_AIR_CHECK_NONE */
} walk_item;

/* The question in words that fit the check and the vehicle. */
const char *walk_title(const inspection_record *record, const walk_item *item);
/* The same where the answers are on keys: without what a person would type, such as "Type yes". */
void walk_short_title(const inspection_record *record, const walk_item *item, char text[SAID_SIZE]);

/* --- Words (words.c) ------------------------------------------------------------------------------- */

/* The answer of a list that a text is, or NULL. */
const walk_word *walk_find_word(const walk_word *words, const char *text);

/* The whole word of a yes or a no, in the chosen language; NULL = it is neither. */
const char *walk_find_yes_no(const char *text);

/* The text after a word and its blanks, or NULL if it begins with another word. */
const char *walk_text_after(const char *text, const char *word);

const char *walk_last_of(const char *words); /* "y, yes": the last one, which is the clearest */

/* What the record has, in the chosen language; the same if it is none of the words, which may be NULL. */
const char *walk_say_answer(const walk_word *words, const char *meaning);
const char *walk_say_entry(end_key key, const char *text); /* the same of a wheel end */

/* The same of a step, "yes" or "changed: 2L 3R". */
#define STEP_CHANGED "changed: "
const char *walk_say_step(const char *answer, char said[WALK_SAID_SIZE]);

/* False: a control or no UTF-8 at that character. */
bool walk_is_text(const char *text, uint32_t *character);

/* True if the item belongs to a wheel end of that position, or to an air check of that name or title. */
bool walk_is_about(const inspection_record *record, const walk_item *item, const char *subject);

/* --- The walk-round ---------------------------------------------------------------------------------- */

typedef struct walk_plan {
    size_t count;
    walk_item items[WALK_ITEMS_MAX];
} walk_plan;

typedef struct walk_input {
    int descriptor;
    const char *file; /* of the answers; NULL = whoever is at the terminal */
    unsigned long line;
    char bytes[4096];
    size_t used, at;
} walk_input;

typedef struct walk_text walk_text; /* keeps the texts that were entered */

typedef struct walk {
    inspection_record record;
    inspection_record trial; /* the record with an answer that is not confirmed yet */
    inspection judged;
    walk_plan plan;
    const char *file;
    const char *limits_file;
    rule_context context; /* the rule set of the record, and the carrier's limits: read once */
    bool by_axle;         /* both ends of an axle together */
    bool speak;           /* says aloud what one does, sees and finds */
    bool again;           /* asks what was skipped, once more */
    bool bad;             /* what was found so far forbids driving */
    const char *offers[HEAD_KEYS]; /* what the last record of the unit had, for the person to take */
    const char *back;     /* what to ask again first, or NULL */
    rodt_ratio reservoirs;
    walk_input input;
    walk_text *texts;
    struct stat written;  /* the file as it was last written */
    int lock;             /* its descriptor, or -1 */
    bool in_doubt;        /* it is complete, but the disk has not confirmed that */
    walk_part part;       /* whose heading is on the screen; WALK_PARTS = none */
    rodt_air_check check;     /* whose set-up is on the screen */
    uint32_t steps;       /* that were said, by their bits */
} walk;

/* Keeps a text as long as the walk-round; NULL if there is no memory. */
const char *walk_keep(walk *of, const char *text);
void walk_free_texts(walk *of);


/* --- The end (finish.c) ------------------------------------------------------------------------------ */

void walk_print_command(const walk *of, const char *what, const char *command);
int walk_finish(walk *of); /* the verdict; returns the exit status */

/* --- The plan (plan.c) -------------------------------------------------------------------------- */

void walk_make_plan(const walk *of, walk_plan *out);
bool walk_answered(const inspection_record *record, const walk_item *item);
bool walk_same(const walk_item *a, const walk_item *b);
bool walk_same_subject(const walk_item *a, const walk_item *b); /* one check, or one wheel end */
size_t walk_find_item(const walk_plan *plan, const walk_item *item); /* the count of the plan = it is not there */
bool walk_has_check(const inspection_record *record, rodt_air_check check); /* false: of trailers, without one */
bool walk_needs_air_ready(const walk *of, rodt_air_check check); /* a leak test that the rule set has */

/* With the parking brake set no leak test is done; false = no memory or no room. */
bool walk_skip_leak_tests(walk *of, inspection_record *record);

/* The next row for the check and the vehicle, as far as that is known; *index is where to look on. NULL = no more. */
const rodt_air_limit *walk_next_row(const walk *of, rodt_air_check check, size_t *index);

/* --- The record (store.c) ---------------------------------------------------------------------- */

#define WALK_NAME_SIZE 64

/* "chocks", "2L chamber", "loss-applied after". */
void walk_step_name(const inspection_record *record, const walk_item *item, char name[WALK_NAME_SIZE]);

/* "2L clues": what was seen of a chamber, until it is answered (clues.c). */
#define STEP_CLUES " clues"
void walk_clues_name(const inspection_record *record, int end, char name[WALK_NAME_SIZE]);

void walk_drop_bare_check(inspection_record *record, rodt_air_check check); /* one that was skipped */

/* The value of an item in the record; a text of NULL and a number of 0 = nothing. */
record_value walk_value(const inspection_record *record, const walk_item *item);
bool walk_skipped(const inspection_record *record, const walk_item *item);

/* Each changes `record` alone; false = no memory or no room. */
bool walk_set(walk *of, inspection_record *record, const walk_item *item, record_value value);
bool walk_skip(walk *of, inspection_record *record, const walk_item *item);
bool walk_set_axles(walk *of, inspection_record *record, int axles);

/* Axles unit by unit from the front, "3 2", "3 2 d1 2" (d = a dolly). */
typedef struct walk_units {
    size_t count;
    struct {
        int axles;
        bool dolly;
    } units[RECORD_UNITS_MAX];
} walk_units;
void walk_set_units(inspection_record *record, const walk_units *units);
bool walk_set_plates(walk *of, inspection_record *record, const char *text); /* commas between them; false = too many */
void walk_format_units(const inspection_record *record, char *text, size_t size); /* as they are typed */
void walk_format_plates(const inspection_record *record, char *text, size_t size);

/* What a wheel end is asked for afresh that is no reading. */
void walk_forget_description(walk *of, inspection_record *record, int end);
bool walk_drops_brakes(const inspection_record *record, int axles); /* which that does */
bool walk_set_step(walk *of, inspection_record *record, const char *name, const char *answer); /* NULL = forget it */
bool walk_note(walk *of, inspection_record *record, const walk_item *item, const char *text);
void walk_forget_skipped(inspection_record *record);

/* What a check waits for: a warning, a valve, the governor, a pressure. It may never come, and that is a defect. */
bool walk_can_be_never(rodt_air_check check);
bool walk_never_came(const inspection_record *record, rodt_air_check check);
bool walk_set_never(inspection_record *record, const walk_item *item); /* false = no room */

/* A parking brake that does not release, or does not set, is a defect without a pull. */
bool walk_parking_failed(const inspection_record *record);
bool walk_is_parking(const walk_item *item); /* its answers say so */

int walk_find_check(const inspection_record *record, rodt_air_check check); /* or WALK_NONE */

/* The wheel end whose description this one most likely shares, or WALK_NONE. */
int walk_template_end(const inspection_record *record, int end);
bool walk_copy_end(walk *of, inspection_record *record, int from, int to);
rodt_position walk_position(const inspection_record *record, int end);

/* --- From the last record of the unit (from.c) --------------------------------------------------------- */

/* Fills a new record with what stays: the vehicle, its chambers, adjusters and arms. STATUS_CONTINUE or an exit
 * status. */
int walk_take_from(walk *of, const char *file);
#define STEP_FROM TO_SAY("from") /* its answer is the day of the last record */
void walk_print_last(const walk *of); /* "Last record: DEFECTIVE ..."; nothing if it found no defect */
void walk_print_last_of(const walk *of, const char *name); /* the same of one wheel end or check */

/* "30/30 long, automatic, arm 5 1/2"; returns the bytes it took. */
size_t walk_describe_end(const inspection_record *record, int end, char *text, size_t size);
void walk_print_kept(const walk *of); /* every wheel end, alike ones in one line */

/* --- Answers (answers.c) ------------------------------------------------------------------------- */

typedef enum walk_default { WALK_NO_DEFAULT, WALK_STAY, WALK_TAKE, WALK_COPY, WALK_LEAVE } walk_default;

/* A minute, if that is what the rules for a loss test time. */
bool walk_minute(const walk *of, rodt_air_check check, char text[WALK_ANSWER_MAX]);

/* The effect of Enter; `text` gets the answer it gives (WALK_TAKE), `said` how the prompt names it. */
walk_default walk_find_default(const walk *of, const walk_item *item, char text[WALK_ANSWER_MAX],
                               char said[WALK_SAID_SIZE]);

/* Whether never is an answer: it did not come. */
bool walk_takes_never(const walk_item *item);

/* Reads an answer into `record`; `said` gets what was understood. RODT_OK, RODT_E_MEMORY, or the error is set. */
rodt_status walk_read_answer(walk *of, inspection_record *record, const walk_item *item, const char *text,
                      char said[WALK_SAID_SIZE], rodt_error *error);

/* --- What the record says (results.c, warnings.c, prompts.c) ------------------------------------------------- */

/* Judges; NULL while there is nothing to judge. The result lives until the next judgement. */
const inspection *walk_judge(walk *of, const inspection_record *record);

/* Warnings of the answer in `trial`; returns their number. */
size_t walk_each_warning(walk *of, const inspection_record *trial, const walk_item *item, vehicle_line line,
                         void *context);

void walk_print_result(walk *of, const walk_item *item);   /* after an answer */
void walk_print_intro(walk *of, const walk_item *item);  /* before a question */
void walk_print_entered(walk *of);                        /* everything so far */
void walk_print_verdict(walk *of);                        /* at the end */
void walk_print_outcome(walk *of);                        /* once more in a few lines, the last on the screen */
int walk_status(walk *of, bool finished);
bool walk_is_check_done(const walk *of, rodt_air_check check); /* all its questions are answered */

/* What was found forbids driving; the pull against the parking brake itself aside. */
bool walk_is_bad(walk *of);
bool walk_is_unsettled(walk *of); /* or does not allow it yet */

/* (speak.c) The sentences of the step of a question; the same before the first question of a step, if they were asked
 * for. */
void walk_print_step(walk *of, const walk_item *item);
void walk_speak_before(walk *of, const walk_item *item);

/* --- A stamp that cannot be read (clues.c) ------------------------------------------------------------- */

/* What else can be seen of a chamber. */
#define WALK_CLUES 6
typedef struct walk_clue {
    rodt_clue clue;
    rodt_observation observation; /* that it is one of */
    const char *title;
    const walk_word *words; /* NULL = a text follows */
    const char *before;     /* these words */
} walk_clue;
extern const walk_clue walk_clues[WALK_CLUES];

/* What was said of it, in that order: a word's meaning, a text, or that it cannot be seen. */
#define WALK_UNSEEN "?"
#define WALK_NO_CLUES "-" /* the line that takes all of them back */
typedef struct walk_seen_clue {
    const walk_clue *of;
    char value[WALK_ANSWER_MAX];
} walk_seen_clue;
typedef struct walk_seen {
    size_t count;
    walk_seen_clue one[WALK_CLUES];
    rodt_clues clues;
    bool any; /* something was seen, and this is what it allows */
    rodt_identification found;
} walk_seen;

/* Reads "clamp, square ports, diameter 8 1/8, tag ?". RODT_OK, or the error is set. */
rodt_status walk_read_clues(const walk *of, const char *text, walk_seen *out, rodt_error *error);

bool walk_keep_clues(walk *of, inspection_record *record, int end, const walk_seen *seen); /* false = as walk_set */
/* Of every chamber that has an answer into the remark of its wheel end. */
void walk_move_clues(walk *of, inspection_record *record);

bool walk_find_clues(const walk *of, const walk_item *item, walk_seen *out); /* false: the record has none */
void walk_print_clues(const walk_seen *seen); /* which chambers they allow, and what to look at next */
const char *walk_say_clue(const walk_seen_clue *one, char said[WALK_SAID_SIZE]);
const char *walk_say_clues(const char *text, char said[WALK_SAID_SIZE]); /* of a step */

/* The answer to the question, where all of them are of one family and size; NULL = it is open. */
const char *walk_settled(const rodt_identification *found, char text[RODT_CHAMBER_TEXT_SIZE]);

/* --- The pull against the parking brake (pull.c) ------------------------------------------------------ */

/* The check goes by what was said before of the parking brake. */
bool walk_note_parking(walk *of, inspection_record *record, bool failed_before); /* false = no memory or no room */

const char *walk_refuse_pull(walk *of); /* why it is not asked for; NULL = it is */
bool walk_skip_pull(walk *of, inspection_record *record);
void walk_reopen_pull(walk *of); /* once nothing stands against it any more */
void walk_forget_parking(walk *of); /* parked, chocks stowed, pulled: all to be done again */

/* --- What was replaced (replaced.c) --------------------------------------------------------------------- */

/* What the trial replaces after a verdict stays in its steps; false = no memory or no room. */
bool walk_keep_replaced(walk *of, const walk_item *item);
#define STEP_REPAIR_DUE TO_SAY("repair_due") /* a vehicle that was bad was judged again */

/* --- Readings of other conditions (unproven.c) ------------------------------------------------------------ */

typedef enum walk_dropped { WALK_DROPPED_NONE, WALK_DROPPED_SECOND, WALK_DROPPED_BOTH } walk_dropped;

/* The condition in the trial makes no reading good that proved nothing before: it is dropped from the trial, to be
 * asked again. pressed_again = it is of an application that is made anew. */
walk_dropped walk_drop_unproven(walk *of, const walk_item *item, bool pressed_again);
/* A first reading in doubt takes the second one with it: no stroke is made of two applications. False = no memory or
 * no room. */
bool walk_drop_second(walk *of, const walk_item *item);

/* --- The clock (clock.c) ------------------------------------------------------------------------------ */

bool walk_clock(const char *day, char text[WALK_ANSWER_MAX]); /* "06:40" if it is that day now */
bool walk_now(char text[WALK_ANSWER_MAX]);                    /* "2026-11-20 06:40" */

/* --- Talking (terminal.c) --------------------------------------------------------------------------- */

/* Where all lines go; nothing else in this folder knows it. */
FILE *walk_out(void);

void walk_print(const char *label, unsigned indent, const char *format, ...) PRINTF_LIKE(3, 4);

/* What a person types next; where there are keys in place of a keyboard it is left out. */
void walk_print_typed(const char *format, ...) PRINTF_LIKE(1, 2);

/* Why what was typed is not taken, with a mark under a character of it; 0 = none. */
void walk_print_refusal(const char *text, uint32_t character, const char *why);
void walk_echo(const char *text); /* a line of a file of answers */
void walk_prompt(const char *text);

typedef enum input_status {
    INPUT_LINE, INPUT_LONG, INPUT_END, INPUT_CUT, INPUT_STOPPED, INPUT_FAILED, INPUT_TIMEOUT
} input_status;

/* A clock that runs until Enter, or counts down so many seconds and rings (0 = does not). `text` gets the seconds, or
 * nothing if a count was stopped before its end. INPUT_LINE, or why the input ended. */
bool walk_has_clock(const walk_input *from); /* false: seconds are typed */
input_status walk_time(walk_input *from, unsigned seconds, char text[WALK_ANSWER_MAX]);

/* (terminal.c) Signals that end the walk-round are heard only while it waits for a line. */
bool walk_input_open(const char *file, walk_input *out);
bool walk_is_person(const walk_input *from);
input_status walk_read_line(walk_input *from, char text[WALK_ANSWER_MAX]);

/* --- The conversation (session.c) --------------------------------------------------------------------- */

/* What the next line answers. KEEP: whether an unlikely answer stands. FILE: where an answer goes that the disk
 * refused. */
typedef enum walk_asked { WALK_ASKED_QUESTION, WALK_ASKED_KEEP, WALK_ASKED_KEEP_YES_NO, WALK_ASKED_FILE } walk_asked;

/* A question that is asked before the first open one; fresh = Enter takes no earlier answer, forward = the rest of its
 * subject follows. */
typedef struct due_question {
    walk_item item;
    bool fresh, forward;
} due_question;

typedef enum walk_aside { WALK_ASIDE_NONE, WALK_ASIDE_NOTE, WALK_ASIDE_CLUES } walk_aside;

/* The question that is open, and its answer. */
typedef struct walk_session {
    walk *of;
    walk_item item;
    walk_asked asked;
    walk_default enter;
    char enter_text[WALK_ANSWER_MAX];
    char enter_said[WALK_SAID_SIZE];
    char text[WALK_ANSWER_MAX];    /* the line */
    char doubted[WALK_ANSWER_MAX]; /* an unlikely answer */
    bool fresh;           /* as of a due question */
    bool again;           /* measured anew: Enter takes no reading that is in doubt */
    bool forward;         /* on through the rest of the check or wheel end that was gone back to */
    bool unsecured;       /* nobody said yet that the vehicle can be measured again */
    walk_aside aside;     /* what the trial has more, if it is no answer */
    walk_dropped dropped; /* what the answer in the trial takes with it */
    walk_seen seen;       /* of a chamber whose stamp cannot be read */
    due_question due[8];  /* what a break may have undone */
    size_t due_count;
    int status; /* the exit status, once it is over */
} walk_session;

/* Which question comes next (next.c). False: none. */
bool walk_find_first(walk_session *at);
bool walk_find_next(walk_session *at);                       /* after an answer */
bool walk_find_chosen(walk_session *at, const char *where); /* the last answered one about it */
void walk_go_to(walk_session *at, walk_item to, bool again); /* to an answered one, and on through its subject */
/* The last answered question before this place of the plan; with a name the last one about it: a wheel end, a check, a
 * step. */
bool walk_find_before(const walk *of, size_t here, const char *where, walk_item *out);

/* Asks the first question. Like walk_take_line, false: it is over, and the status is set. */
bool walk_begin(walk *of, walk_session *out);
bool walk_take_line(walk_session *at, input_status status); /* the line is in at->text */

/* --- The command (command.c) ------------------------------------------------------------------------ */

/* The walk-round of a command line: its record opened or begun, and how it begins said. STATUS_CONTINUE or an exit
 * status; *out is freed by the caller, whatever it is. */
int walk_open_command(int argc, char **argv, walk **out);
void walk_free(walk *of); /* NULL is allowed */

/* --- The file (file.c) -------------------------------------------------------------------------- */

/* Opens or begins the record. STATUS_CONTINUE or an exit status. */
typedef struct walk_start {
    const char *rules, *air_rules, *day, *unit; /* NULL = not said */
    const char *last; /* the record to begin from */
} walk_start;
int walk_open(walk *of, const walk_start *start);

/* Air checks by a rule set that has more of them, where none was named before. */
int walk_add_air_rules(walk *of, const char *name);

/* Writes the record, whole or not at all. If the disk does not confirm that, the record is in doubt. */
int walk_save(walk *of, const inspection_record *record);
int walk_save_as(walk *of, const inspection_record *record, const char *name); /* a file that is not there yet */
void walk_close(walk *of);

#endif
