/* SPDX-License-Identifier: Apache-2.0 */
/* The walk-round itself: the first open question, its answer, the disk, the next one. */
#include "walkround/walkround.h"
#include "input/numbers.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"
#include "ui/wrap.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

/* The outcome of one question. */
typedef enum outcome {
    OUTCOME_NEXT, OUTCOME_AGAIN, OUTCOME_BACK, OUTCOME_WARNED, OUTCOME_STOP, OUTCOME_CUT, OUTCOME_FAILED
} outcome;

/* A question that is asked before the first open one; fresh = Enter takes no earlier answer, forward = the rest of its
 * subject follows. */
typedef struct due_question {
    walk_item item;
    bool fresh, forward;
} due_question;

/* The question that is open, and its answer. */
typedef struct asking {
    walk *of;
    walk_item item;
    walk_default enter;
    char enter_text[WALK_ANSWER_MAX];
    char enter_said[WALK_SAID_SIZE];
    char text[WALK_ANSWER_MAX];
    bool fresh;          /* as of a due question */
    bool again;          /* measured anew: Enter takes no reading that is in doubt */
    bool forward;        /* on through the rest of the check or wheel end that was gone back to */
    bool unsecured;      /* nobody said yet that the vehicle can be measured again */
    due_question due[8]; /* what a break may have undone */
    size_t due_count;
} asking;

/* "2L released", "Unit number": the question as messages name it. */
static const char *name_of(const asking *at, char name[WALK_ANSWER_MAX])
{
    const char *position = at->item.end == WALK_NONE ? "" : at->of->record.ends[at->item.end][END_POSITION].text;
    snprintf(name, WALK_ANSWER_MAX, "%.20s%s%s", position, position[0] == '\0' ? "" : " ",
             walk_title(&at->of->record, &at->item));
    return name;
}

/* --- What cannot be taken ---------------------------------------------------------------------------- */

/* A person is asked again; in a file of answers it ends the run, with its line. `place` may be 0. */
static outcome reject(const asking *at, const char *what, uint32_t place)
{
    const walk_input *input = &at->of->input;
    char name[WALK_ANSWER_MAX];
    if (walk_is_person(input)) {
        if (place > 0)
            walk_print_place(at->text, place);
        walk_print("", 0, say("Not accepted: %s%s"), what, strchr(".?", what[strlen(what) - 1]) != NULL ? "" : ".");
        return OUTCOME_AGAIN;
    }
    print_error("%s:%lu: the answer to \"%s\" is not accepted", input->file, input->line, name_of(at, name));
    if (place > 0)
        print_place(stderr, line_width(stderr), at->text, place);
    print_wrapped(stderr, "    ", 4, what);
    return OUTCOME_FAILED;
}

/* --- The disk ---------------------------------------------------------------------------------------- */

/* The last answer stays in memory until it is saved, or the person gives it up. */
static outcome save_again(asking *at)
{
    walk *of = at->of;
    walk_print("", 0, of->in_doubt ? say("%s has this answer. A power failure could still lose it.")
                                   : say("This answer is not saved. %s is unchanged."), of->file);
    if (!walk_is_person(&of->input))
        return OUTCOME_FAILED;
    for (;;) {
        walk_prompt(say("Enter tries again, a new file name saves there, quit stops"));
        if (walk_read_line(&of->input, at->text) != INPUT_LINE || is_listed(WORDS_QUIT, at->text)) {
            if (!of->in_doubt)
                walk_print("", 0, "%s", say("The last answer is lost."));
            return OUTCOME_STOP;
        }
        int status = at->text[0] == '\0' ? walk_save(of, &of->trial) : walk_save_as(of, &of->trial, at->text);
        if (status != STATUS_CONTINUE)
            continue;
        walk_print("", 0, say("Saved in %s."), of->file);
        return OUTCOME_NEXT;
    }
}

static outcome commit(asking *at)
{
    walk *of = at->of;
    walk_dropped dropped = walk_drop_unproven(of, &at->item, at->fresh);
    if (!walk_keep_replaced(of, &at->item) || (at->again && !walk_drop_second(of, &at->item)))
        return reject(at, say("no memory"), 0);
    outcome done = walk_save(of, &of->trial) == STATUS_CONTINUE ? OUTCOME_NEXT : save_again(at);
    if (done != OUTCOME_NEXT)
        return done;
    of->record = of->trial;
    walk_make_plan(of, &of->plan);
    if (dropped == WALK_DROPPED_BOTH) /* all of them are taken again, from the engine on */
        at->due_count = at->due_count > 0 && at->due[0].item.id == ASK_ENGINE;
    if (!at->again || at->item.part != WALK_RELEASED)
        walk_print_result(of, &at->item);
    return OUTCOME_NEXT;
}

/* --- Answers ----------------------------------------------------------------------------------------- */

static void print_warning(void *context, const char *label, const char *text)
{
    (void)context;
    walk_print("! ", 2, "%s%s", label, text);
}

static outcome skip(asking *at)
{
    walk *of = at->of;
    if (walk_questions[at->item.id].mandatory)
        return reject(at, say("this step cannot be skipped"), 0);
    of->trial = of->record;
    bool good = walk_skip(of, &of->trial, &at->item);
    if (at->item.id == ASK_AIR_READY)
        good = walk_skip_leak_tests(of, &of->trial) && good;
    if (!good)
        return reject(at, say("no memory"), 0);
    walk_print("= ", 2, "%s", say("skipped"));
    return commit(at);
}

/* What is open of a wheel end or a check in this part; without a first reading there is no second one. */
static outcome skip_subject(asking *at, const char *subject)
{
    walk *of = at->of;
    walk_part part = WALK_PARTS;
    bool found = false;
    of->trial = of->record;
    for (size_t i = 0; i < of->plan.count; i++) {
        const walk_item *item = &of->plan.items[i];
        if (!walk_is_about(&of->record, item, subject))
            continue;
        found = true;
        if (walk_answered(&of->record, item) || (part != WALK_PARTS && item->part != part))
            continue;
        part = item->part;
        if (!walk_skip(of, &of->trial, item))
            return reject(at, say("no memory"), 0);
    }
    if (!found)
        return reject(at, say("skip alone skips this question; a wheel end or a check may follow: skip 2L"), 0);
    walk_print("= ", 2, say("%s: the rest is skipped"), subject);
    return commit(at);
}

static outcome accept_answer(asking *at, const char *text)
{
    walk *of = at->of;
    rodt_error error = {.status = RODT_OK};
    char said[WALK_SAID_SIZE], why[SAID_SIZE];
    of->trial = of->record;
    rodt_status status = walk_read_answer(of, &of->trial, &at->item, text, said, &error);
    if (status == RODT_E_EMPTY)
        return skip(at);
    if (status == RODT_E_MEMORY)
        return reject(at, say("no memory"), 0);
    if (status != RODT_OK)
        return reject(at, say_error(&error, why), error.column);
    walk_print("= ", 2, "%s", said);
    return walk_each_warning(of, &of->trial, &at->item, print_warning, NULL) > 0 ? OUTCOME_WARNED : commit(at);
}

static outcome copy_template(asking *at)
{
    walk *of = at->of;
    of->trial = of->record;
    if (!walk_copy_end(of, &of->trial, walk_template_end(&of->record, at->item.end), at->item.end))
        return reject(at, say("no memory"), 0);
    walk_print("= ", 2, "%s", at->enter_said);
    return commit(at);
}

static bool is_timed(const walk_item *item)
{
    return item->id == ASK_LENGTH || item->id == ASK_SECONDS;
}

/* A build-up runs until Enter; a loss is counted down, `length` seconds or as long as the rules say. */
static outcome run_clock(asking *at, const char *length)
{
    rodt_ratio seconds = {0, 1};
    bool counts = at->item.id == ASK_LENGTH;
    char minute[WALK_ANSWER_MAX] = "";
    if (counts && length[0] == '\0')
        (void)walk_minute(at->of, at->item.check, minute);
    const char *text = length[0] != '\0' ? length : minute;
    if (counts && (!read_ratio(text, true, &seconds) || seconds.den != 1 || seconds.num < 1 || seconds.num > 3600))
        return reject(at, say("say how many seconds: t 120"), 0);
    walk_print("", 0, "%s", counts ? say("Counting; it rings at the end. Enter breaks it off.")
                                   : say("The clock runs; press Enter when the pressure is reached."));
    if (walk_time(&at->of->input, (unsigned)seconds.num, at->text) != INPUT_LINE)
        return OUTCOME_CUT;
    if (at->text[0] == '\0')
        return reject(at, say("the count was broken off; begin the test again"), 0);
    return accept_answer(at, at->text);
}

static outcome press_enter(asking *at)
{
    switch (at->enter) {
    case WALK_STAY: return OUTCOME_NEXT;
    case WALK_TAKE: return accept_answer(at, at->enter_text);
    case WALK_COPY: return copy_template(at);
    case WALK_LEAVE: return skip(at);
    case WALK_NO_DEFAULT: break;
    }
    if (at->item.id == ASK_SECONDS && walk_is_person(&at->of->input))
        return run_clock(at, "");
    return reject(at, say("an answer is needed; skip leaves out what may be left out, help says more"), 0);
}

static outcome add_note(asking *at, const char *text)
{
    walk *of = at->of;
    text += strspn(text, " \t");
    if (*text == '\0')
        return reject(at, say("write the note after the word note"), 0);
    of->trial = of->record;
    if (!walk_note(of, &of->trial, &at->item, text))
        return reject(at, say("there is no room for a longer note"), 0);
    outcome done = walk_save(of, &of->trial) == STATUS_CONTINUE ? OUTCOME_NEXT : save_again(at);
    if (done != OUTCOME_NEXT)
        return done;
    of->record = of->trial;
    walk_print("= ", 2, "%s", say("noted"));
    return OUTCOME_AGAIN;
}

/* --- Questions that are due -------------------------------------------------------------------------- */

static walk_item step_item(walk_id id)
{
    return (walk_item){id, walk_questions[id].part, WALK_NONE, RODT_AIR_CHECK_NONE};
}

static void add_due(asking *at, walk_item item, bool fresh)
{
    const walk *of = at->of;
    if (at->due_count < COUNT_OF(at->due) && walk_find_item(&of->plan, &item) < of->plan.count &&
        walk_answered(&of->record, &item) && !walk_skipped(&of->record, &item))
        at->due[at->due_count++] = (due_question){item, fresh, false};
}

static void add_due_steps(asking *at, const walk_id *ids, size_t count)
{
    for (size_t i = 0; i < count; i++)
        add_due(at, step_item(ids[i]), true);
}

static bool take_due(asking *at)
{
    if (at->due_count == 0)
        return false;
    at->item = at->due[0].item;
    at->fresh = at->due[0].fresh;
    at->forward = at->due[0].forward;
    at->unsecured = at->unsecured && !at->forward;
    at->due_count--;
    memmove(at->due, at->due + 1, at->due_count * sizeof at->due[0]);
    return true;
}

/* What the measurement rests on is undone once the parking brake was set or the chocks were stowed. */
static bool is_undone(const asking *at, const walk_item *to)
{
    const inspection_record *record = &at->of->record;
    walk_item parked = step_item(ASK_PARKED), away = step_item(ASK_CHOCKS_AWAY);
    return walk_is_person(&at->of->input) && to->part >= WALK_AIR_OFF && to->part <= WALK_APPLIED &&
           (at->unsecured || walk_answered(record, &parked) || walk_answered(record, &away));
}

/* Before the question itself; afterwards the vehicle is parked, and pulled, once more. */
static void secure_again(asking *at, walk_item to)
{
    static const walk_id released[] = {ASK_SPRING, ASK_ENGINE}, application[] = {ASK_PSI, ASK_HELD};
    bool strokes = to.part >= WALK_SET_UP;
    walk_print("", 0, "%s", strokes ? say("Chock the wheels and release the parking brake first.")
                                    : say("Chock the wheels first."));
    walk_forget_parking(at->of);
    at->unsecured = true;
    at->due_count = 0;
    add_due(at, step_item(ASK_CHOCKS), true);
    if (walk_needs_air_ready(at->of, to.check))
        add_due(at, step_item(ASK_AIR_READY), true);
    if (strokes)
        add_due_steps(at, released, COUNT_OF(released));
    if (to.part == WALK_APPLIED)
        add_due_steps(at, application, COUNT_OF(application));
    at->due[at->due_count++] = (due_question){to, at->fresh || to.part == WALK_APPLIED, true};
    (void)take_due(at);
}

static bool is_doubted(const asking *at, const walk_item *item)
{
    return at->again && (item->id == ASK_END_RELEASED || item->id == ASK_END_APPLIED ||
                         walk_questions[item->id].kind == WALK_PRESSURE);
}

/* To an answered question, and on through its subject. */
static outcome go_to(asking *at, walk_item to, bool again)
{
    at->item = to;
    at->again = again;
    at->fresh = is_doubted(at, &to);
    if (is_undone(at, &to))
        secure_again(at, to);
    return OUTCOME_BACK;
}

/* --- Words ------------------------------------------------------------------------------------------- */

/* The text after the word, or NULL if it is another word. */
static const char *text_after(const char *text, const char *word)
{
    size_t size = strlen(word);
    if (strncasecmp(text, word, size) != 0 || (text[size] != '\0' && text[size] != ' '))
        return NULL;
    return text + size + strspn(text + size, " ");
}

static outcome print_help(const asking *at)
{
    walk_print("", 0, "%s", say(walk_questions[at->item.id].help));
    walk_print_step(at->of, &at->item);
    walk_print("", 0, "%s",
               say("Words: back (<), back 3L, again 3L (the whole wheel end once more), skip (-), skip 3L (the rest "
                   "of it), show (=), note TEXT, quit (q). Enter takes the answer in brackets."));
    return OUTCOME_AGAIN;
}

/* The last answered question before this place of the plan; with a name the last one about it: a wheel end, a check, a
 * step. */
static bool find_before(const walk *of, size_t here, const char *where, walk_item *out)
{
    char name[WALK_NAME_SIZE];
    while (here-- > 0) {
        walk_step_name(&of->record, &of->plan.items[here], name);
        if ((where[0] != '\0' && text_after(name, where) == NULL &&
             !walk_is_about(&of->record, &of->plan.items[here], where)) ||
            !walk_answered(&of->record, &of->plan.items[here]))
            continue;
        *out = of->plan.items[here];
        return true;
    }
    return false;
}

/* From a question that is only asked once more, every answer lies behind. */
static outcome go_back(asking *at, const char *where)
{
    const walk *of = at->of;
    size_t here = at->fresh && where[0] != '\0' ? of->plan.count : walk_find_item(&of->plan, &at->item);
    walk_item to;
    if (find_before(of, here, where, &to))
        return go_to(at, to, false);
    return reject(
        at, where[0] == '\0' ? say("this is the first question") : say("no earlier question has that name"),
        0);
}

/* From the first question of a wheel end or a check, which then is walked through. */
static outcome go_again(asking *at, const char *subject)
{
    const walk *of = at->of;
    for (size_t i = 0; i < of->plan.count; i++) {
        if (!walk_is_about(&of->record, &of->plan.items[i], subject) || !walk_answered(&of->record, &of->plan.items[i]))
            continue;
        if ((at->unsecured || at->item.part > WALK_APPLICATION) && of->plan.items[i].part == WALK_RELEASED)
            walk_print("", 0, "%s",
                       say("Release the pedal for the first reading. Before the second one you are asked for the "
                           "pressure and the pedal again."));
        return go_to(at, of->plan.items[i], true);
    }
    return reject(at, say("a wheel end or a check that was done is expected, such as again 2L"), 0);
}

static outcome identify(asking *at, const char *text)
{
    rodt_error error;
    char why[SAID_SIZE];
    if (!walk_identify(at->of, text, &error))
        return reject(at, say_error(&error, why), error.column > 0 ? error.column + (uint32_t)(text - at->text) : 0);
    return OUTCOME_AGAIN;
}

static outcome add_air_rules(asking *at, const char *name)
{
    walk *of = at->of;
    if (walk_add_air_rules(of, name) != STATUS_CONTINUE)
        return walk_is_person(&of->input) ? OUTCOME_AGAIN : OUTCOME_FAILED;
    walk_print("= ", 2, say("air checks by %s from now on; they are asked in their turn"),
               of->record.head[HEAD_AIR_RULES].text);
    return OUTCOME_NEXT;
}

static outcome handle_line(asking *at)
{
    const char *text = at->text, *rest;
    uint32_t place;
    if (!walk_is_text(text, &place))
        return reject(at, say("the answer holds a character that is no text, such as an arrow key"), place);
    if (text[0] == '\0' || (at->enter == WALK_STAY && is_listed(WORDS_KEEP, text)))
        return press_enter(at);
    if (is_listed(WORDS_QUIT, text))
        return OUTCOME_STOP;
    if (is_listed(WORDS_SKIP, text) || strcmp(text, "-") == 0)
        return skip(at);
    if (is_listed(WORDS_HELP, text) || strcmp(text, "?") == 0)
        return print_help(at);
    if (is_listed(WORDS_SHOW, text) || strcmp(text, "=") == 0) {
        walk_print_entered(at->of);
        return OUTCOME_AGAIN;
    }
    if (strcmp(text, "<") == 0)
        return go_back(at, "");
    if ((rest = text_after_listed(WORDS_BACK, text)) != NULL)
        return go_back(at, rest);
    if ((rest = text_after_listed(WORDS_AGAIN, text)) != NULL)
        return go_again(at, rest);
    if ((rest = text_after_listed(WORDS_SKIP, text)) != NULL)
        return skip_subject(at, rest);
    if (is_timed(&at->item) && walk_is_person(&at->of->input) && (rest = text_after(text, "t")) != NULL)
        return run_clock(at, rest);
    if (at->item.id == ASK_CHAMBER && (rest = text_after_listed(WORDS_DIAMETER, text)) != NULL)
        return identify(at, rest);
    if ((rest = text_after_listed(WORDS_NOTE, text)) != NULL)
        return add_note(at, rest);
    if ((rest = text_after_listed(WORDS_AIR, text)) != NULL)
        return add_air_rules(at, rest);
    return accept_answer(at, text);
}

/* The pull against the parking brake is left out, and asked for again when what stood against it is gone. */
static outcome refuse_pull(asking *at, const char *why)
{
    walk *of = at->of;
    walk_print("", 0, "%s", why);
    of->trial = of->record;
    if (!walk_skip_pull(of, &of->trial))
        return reject(at, say("no memory"), 0);
    return commit(at);
}

/* --- One question ------------------------------------------------------------------------------------ */

static outcome read_line(asking *at)
{
    walk_input *input = &at->of->input;
    input_status status;
    do
        status = walk_read_line(input, at->text);
    while (status == INPUT_LINE && !walk_is_person(input) && at->text[0] == '#');
    if (!walk_is_person(input) && status == INPUT_LINE)
        walk_echo(at->text);
    switch (status) {
    case INPUT_LINE: return OUTCOME_NEXT;
    case INPUT_LONG:
        at->text[0] = '\0';
        return reject(at, say("that is longer than any answer"), 0);
    case INPUT_CUT:
        at->text[0] = '\0';
        return reject(at, say("the last line has no end; was it cut off?"), 0);
    case INPUT_END:
    case INPUT_TIMEOUT:
    case INPUT_STOPPED: break;
    case INPUT_FAILED:
        print_error("the answers cannot be read: %s", say_system_error(errno));
        return OUTCOME_FAILED;
    }
    fputc('\n', walk_out());
    return OUTCOME_CUT;
}

static bool is_yes_no(const walk_item *item)
{
    const walk_word *words = walk_questions[item->id].words;
    return words != NULL && strncmp(words[0].spellings, WORDS_YES, strlen(WORDS_YES)) == 0;
}

/* A yes after "is that right?" would be taken for another answer to the question before. */
static outcome confirm_yes_no(asking *at)
{
    char prompt[2 * WALK_ANSWER_MAX], first[WALK_ANSWER_MAX];
    const char *word = walk_find_yes_no(at->text);
    snprintf(first, sizeof first, say("k = keep '%.40s', or < to change it"), word != NULL ? word : at->text);
    snprintf(prompt, sizeof prompt, say("Is that right? %s"), first);
    for (;;) {
        walk_prompt(prompt);
        outcome done = read_line(at);
        if (done != OUTCOME_NEXT)
            return done;
        if (is_listed(WORDS_KEEP, at->text))
            return commit(at);
        if (strcmp(at->text, "<") == 0)
            return OUTCOME_AGAIN;
        if (at->text[0] != '\0' && walk_find_yes_no(at->text) == NULL)
            return handle_line(at);
        if (reject(at, first, 0) == OUTCOME_FAILED)
            return OUTCOME_FAILED;
    }
}

/* After a warning the answer must be kept, or replaced. */
static outcome confirm(asking *at)
{
    outcome done = is_yes_no(&at->item) ? confirm_yes_no(at) : OUTCOME_WARNED;
    while (done == OUTCOME_WARNED) {
        walk_prompt(say("Is that right? k = yes, keep it; or type it again"));
        done = read_line(at);
        if (done == OUTCOME_NEXT && is_listed(WORDS_KEEP, at->text))
            return commit(at);
        if (done == OUTCOME_NEXT && at->text[0] == '\0')
            done = reject(at, say("type k to keep it, or type a new answer"), 0) == OUTCOME_FAILED ? OUTCOME_FAILED
                                                                                              : OUTCOME_WARNED;
        else if (done == OUTCOME_NEXT)
            done = handle_line(at);
    }
    return done;
}

static outcome ask(asking *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX], prompt[2 * WALK_ANSWER_MAX + WALK_SAID_SIZE];
    const char *refused = at->item.check == RODT_AIR_CHECK_SPRING_BRAKE ? walk_refuse_pull(of) : NULL;
    if (refused != NULL)
        return refuse_pull(at, refused);
    walk_print_intro(of, &at->item);
    if (is_timed(&at->item) && walk_is_person(&of->input))
        walk_print("", 0, "%s", at->item.id == ASK_SECONDS ? say("Enter starts a clock, and Enter stops it.")
                                                           : say("t counts the seconds down and rings."));
    at->enter = at->fresh ? WALK_NO_DEFAULT : walk_find_default(of, &at->item, at->enter_text, at->enter_said);
    if (at->enter == WALK_NO_DEFAULT)
        snprintf(prompt, sizeof prompt, "%s", name_of(at, name));
    else
        snprintf(prompt, sizeof prompt, "%s [%s]", name_of(at, name), at->enter_said);
    walk_prompt(prompt);
    outcome done = read_line(at);
    if (done == OUTCOME_NEXT)
        done = handle_line(at);
    return done == OUTCOME_WARNED ? confirm(at) : done;
}

/* --- The whole --------------------------------------------------------------------------------------- */

static bool find_open(walk *of, walk_item *out)
{
    walk_reopen_pull(of);
    of->bad = walk_is_bad(of);
    walk_make_plan(of, &of->plan);
    for (size_t i = 0; i < of->plan.count; i++) {
        if (!walk_answered(&of->record, &of->plan.items[i])) {
            *out = of->plan.items[i];
            return true;
        }
    }
    return false;
}

static int stop(const asking *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX];
    walk_print("", 0, say("Stopped at: %s. Every answer before it is in %s."), name_of(at, name), of->file);
    walk_print_command(of, say("Go on with"), "walkround");
    return walk_status(of, false);
}

/* --- After a break ----------------------------------------------------------------------------------- */

/* A test that was cut off begins again with its first pressure. */
static void add_due_check(asking *at, const walk_item *open)
{
    if (walk_needs_air_ready(at->of, open->check))
        add_due(at, step_item(ASK_AIR_READY), true);
    add_due(at, (walk_item){ASK_BEFORE, open->part, WALK_NONE, open->check}, true);
    add_due(at, (walk_item){ASK_LENGTH, open->part, WALK_NONE, open->check}, false);
}

/* The parking brake was set overnight, the pedal was released, the pressure fell, somebody took the chocks: whatever
 * the open question rests on is asked again. A file of answers is not. */
static void find_due(asking *at, const walk_item *open)
{
    static const walk_id released[] = {ASK_SPRING, ASK_ENGINE}, application[] = {ASK_PSI, ASK_HELD};
    const walk *of = at->of;
    const char *away = record_step(&of->record, walk_questions[ASK_CHOCKS_AWAY].name);
    if (open->part > WALK_SECURE && (away == NULL || strcmp(away, "yes") != 0))
        add_due(at, step_item(ASK_CHOCKS), true);
    if (open->part == WALK_AIR_OFF)
        add_due_check(at, open);
    if (open->part == WALK_AIR_ON)
        add_due(at, step_item(ASK_DRAINS_CLOSED), true);
    if (open->part >= WALK_SET_UP && open->part <= WALK_APPLIED)
        add_due_steps(at, released, COUNT_OF(released));
    if (open->part == WALK_APPLICATION || open->part == WALK_APPLIED)
        add_due_steps(at, application, COUNT_OF(application));
    at->unsecured = open->part == WALK_FINISH;
    if (open->part == WALK_FINISH)
        add_due(at, step_item(ASK_PARKED), true);
    if (at->due_count > 0)
        walk_print("", 0, "%s",
                   say("You stopped in between. What may have changed since is asked again; look before you "
                       "answer."));
    if (open->part == WALK_APPLIED)
        walk_print("", 0, "%s",
                   say("The pedal was released when you stopped. Build the air up, press it again and hold it."));
}

/* --- From question to question ------------------------------------------------------------------------ */

/* The next question of the check or wheel end that was gone back to. The second reading of a wheel end is taken again
 * only under an application that is made again. */
static bool find_forward(asking *at)
{
    walk *of = at->of;
    walk_make_plan(of, &of->plan);
    for (size_t i = walk_find_item(&of->plan, &at->item) + 1; i < of->plan.count; i++) {
        const walk_item *item = &of->plan.items[i];
        if (!walk_same_subject(item, &at->item))
            continue;
        bool second = item->part == WALK_APPLIED && at->item.part == WALK_RELEASED;
        if (second && (at->again || walk_answered(&of->record, item))) {
            add_due(at, step_item(ASK_PSI), true);
            add_due(at, step_item(ASK_HELD), true);
            add_due(at, *item, at->again);
        }
        at->item = second ? at->item : *item;
        at->fresh = !second && is_doubted(at, item);
        return !second;
    }
    return false;
}

/* What is asked after an answer. False: nothing is left. */
static bool find_next(asking *at)
{
    at->fresh = false;
    at->forward = at->forward && find_forward(at);
    return at->forward || take_due(at) || find_open(at->of, &at->item);
}

static bool find_chosen(asking *at, const char *where)
{
    walk *of = at->of;
    walk_make_plan(of, &of->plan);
    walk_item to;
    return find_before(of, of->plan.count, where, &to) && go_to(at, to, false) == OUTCOME_BACK;
}

static bool find_first(asking *at)
{
    if (!find_open(at->of, &at->item))
        return false;
    if (walk_is_person(&at->of->input))
        find_due(at, &(walk_item){at->item.id, at->item.part, at->item.end, at->item.check});
    return take_due(at) || find_open(at->of, &at->item);
}

int walk_run(walk *of)
{
    asking at = {.of = of};
    if (of->back != NULL && !find_chosen(&at, of->back))
        return print_error("%s has no answer that is called \"%s\"; a wheel end or a check is, such as 2L or warning",
                           of->file, of->back);
    bool more = of->back != NULL || find_first(&at);
    while (more) {
        outcome done = ask(&at);
        if (done == OUTCOME_STOP || done == OUTCOME_CUT)
            return stop(&at);
        if (done == OUTCOME_FAILED)
            return STATUS_USAGE;
        if (done == OUTCOME_BACK)
            at.forward = true;
        at.fresh = at.fresh && (done == OUTCOME_AGAIN || done == OUTCOME_BACK);
        more = done == OUTCOME_BACK || done == OUTCOME_AGAIN || find_next(&at);
    }
    return walk_finish(of);
}
