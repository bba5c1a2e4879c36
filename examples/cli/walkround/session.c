/* SPDX-License-Identifier: Apache-2.0 */
/* The walk-round itself: the first open question, its answer, the disk, the next one. It goes on a line at a time, so
 * that whoever shows the questions can be anything. */
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

/* The outcome of one line. WAIT: it has been asked for the next one. */
typedef enum outcome {
    OUTCOME_NEXT, OUTCOME_AGAIN, OUTCOME_BACK, OUTCOME_WARNED, OUTCOME_WAIT, OUTCOME_STOP, OUTCOME_CUT, OUTCOME_FAILED
} outcome;

/* "2L released", "Unit number": the question as messages name it. */
static const char *name_of(const walk_session *at, char name[WALK_ANSWER_MAX])
{
    const char *position = at->item.end == WALK_NONE ? "" : at->of->record.ends[at->item.end][END_POSITION].text;
    snprintf(name, WALK_ANSWER_MAX, "%.20s%s%s", position, position[0] == '\0' ? "" : " ",
             walk_title(&at->of->record, &at->item));
    return name;
}

/* --- What cannot be taken ---------------------------------------------------------------------------- */

/* A person is asked again; in a file of answers it ends the run, with its line. `place` may be 0. */
static outcome reject(const walk_session *at, const char *what, uint32_t place)
{
    const walk_input *input = &at->of->input;
    char name[WALK_ANSWER_MAX];
    if (walk_is_person(input)) {
        walk_print_refusal(at->text, place, what);
        return OUTCOME_AGAIN;
    }
    print_error("%s:%lu: the answer to \"%s\" is not accepted", input->file, input->line, name_of(at, name));
    if (place > 0)
        print_place(stderr, line_width(stderr), at->text, place);
    print_wrapped(stderr, "    ", 4, what);
    return OUTCOME_FAILED;
}

/* --- The disk ---------------------------------------------------------------------------------------- */

static outcome ask_for_file(walk_session *at)
{
    at->asked = WALK_ASKED_FILE;
    walk_prompt(say("Enter tries again, a new file name saves there, quit stops"));
    return OUTCOME_WAIT;
}

/* The last answer stays in memory until it is saved, or the person gives it up. */
static outcome tell_not_saved(walk_session *at)
{
    const walk *of = at->of;
    walk_print("", 0, of->in_doubt ? say("%s has this answer. A power failure could still lose it.")
                                   : say("This answer is not saved. %s is unchanged."), of->file);
    return walk_is_person(&of->input) ? ask_for_file(at) : OUTCOME_FAILED;
}

/* The trial is on the disk. */
static outcome finish_commit(walk_session *at)
{
    walk *of = at->of;
    of->record = of->trial;
    if (at->aside == WALK_ASIDE_NOTE)
        walk_print("= ", 2, "%s", say("noted"));
    if (at->aside != WALK_ASIDE_NONE)
        return OUTCOME_AGAIN;
    walk_make_plan(of, &of->plan);
    if (at->dropped == WALK_DROPPED_BOTH) /* all of them are taken again, from the engine on */
        at->due_count = at->due_count > 0 && at->due[0].item.id == ASK_ENGINE;
    if (!at->again || at->item.part != WALK_RELEASED)
        walk_print_result(of, &at->item);
    return OUTCOME_NEXT;
}

static outcome save(walk_session *at)
{
    return walk_save(at->of, &at->of->trial) == STATUS_CONTINUE ? finish_commit(at) : tell_not_saved(at);
}

static outcome take_file(walk_session *at, input_status status)
{
    walk *of = at->of;
    if (status != INPUT_LINE || is_listed(WORDS_QUIT, at->text)) {
        if (!of->in_doubt)
            walk_print("", 0, "%s", say("The last answer is lost."));
        return OUTCOME_STOP;
    }
    int saved = at->text[0] == '\0' ? walk_save(of, &of->trial) : walk_save_as(of, &of->trial, at->text);
    if (saved != STATUS_CONTINUE)
        return ask_for_file(at);
    walk_print("", 0, say("Saved in %s."), of->file);
    return finish_commit(at);
}

static outcome commit(walk_session *at)
{
    walk *of = at->of;
    at->aside = WALK_ASIDE_NONE;
    walk_move_clues(of, &of->trial);
    at->dropped = walk_drop_unproven(of, &at->item, at->fresh);
    if (!walk_keep_replaced(of, &at->item) || (at->again && !walk_drop_second(of, &at->item)))
        return reject(at, say("no memory"), 0);
    return save(at);
}

/* --- Answers ----------------------------------------------------------------------------------------- */

static void print_warning(void *context, const char *label, const char *text)
{
    (void)context;
    walk_print("! ", 2, "%s%s", label, text);
}

static outcome skip(walk_session *at)
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
static outcome skip_subject(walk_session *at, const char *subject)
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

static outcome accept_answer(walk_session *at, const char *text)
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

static outcome copy_template(walk_session *at)
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
static outcome run_clock(walk_session *at, const char *length)
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

static outcome press_enter(walk_session *at)
{
    switch (at->enter) {
    case WALK_STAY: return OUTCOME_NEXT;
    case WALK_TAKE: return accept_answer(at, at->enter_text);
    case WALK_COPY: return copy_template(at);
    case WALK_LEAVE: return skip(at);
    case WALK_NO_DEFAULT: break;
    }
    if (at->item.id == ASK_SECONDS && walk_has_clock(&at->of->input))
        return run_clock(at, "");
    return reject(at, say("an answer is needed; skip leaves out what may be left out, help says more"), 0);
}

static outcome add_note(walk_session *at, const char *text)
{
    walk *of = at->of;
    text += strspn(text, " \t");
    if (*text == '\0')
        return reject(at, say("write the note after the word note"), 0);
    of->trial = of->record;
    if (!walk_note(of, &of->trial, &at->item, text))
        return reject(at, say("there is no room for a longer note"), 0);
    at->aside = WALK_ASIDE_NOTE;
    return save(at);
}

/* --- Words ------------------------------------------------------------------------------------------- */

static outcome print_help(const walk_session *at)
{
    walk_print("", 0, "%s", say(walk_questions[at->item.id].help));
    walk_print_step(at->of, &at->item);
    walk_print("", 0, "%s",
               say("Words: back (<), back 3L, again 3L (the whole wheel end once more), skip (-), skip 3L (the rest "
                   "of it), show (=), note TEXT, quit (q). Enter takes the answer in brackets."));
    return OUTCOME_AGAIN;
}

/* In a file it stands for an answer that nobody could read, and the line below it answers another question. */
static outcome take_question_mark(walk_session *at)
{
    if (walk_is_person(&at->of->input))
        return print_help(at);
    return reject(at, say("a question mark is no answer; skip leaves out what may be left out"), 0);
}

/* What else can be seen of a chamber is kept like an answer, and the question stays. */
static outcome keep_clues(walk_session *at, const walk_seen *seen)
{
    walk *of = at->of;
    of->trial = of->record;
    if (!walk_keep_clues(of, &of->trial, at->item.end, seen))
        return reject(at, say("no memory"), 0);
    at->aside = WALK_ASIDE_CLUES;
    return save(at);
}

static outcome take_clues(walk_session *at, const char *text)
{
    rodt_error error = {.status = RODT_OK};
    char why[SAID_SIZE];
    walk_seen seen;
    if (walk_read_clues(at->of, text, &seen, &error) != RODT_OK)
        return reject(at, say_error(&error, why), error.column > 0 ? error.column + (uint32_t)(text - at->text) : 0);
    return keep_clues(at, &seen);
}

/* From a question that is only asked once more, every answer lies behind. */
static outcome go_back(walk_session *at, const char *where)
{
    const walk *of = at->of;
    size_t here = at->fresh && where[0] != '\0' ? of->plan.count : walk_find_item(&of->plan, &at->item);
    walk_item to;
    if (where[0] == '\0' && at->seen.count > 0) {
        at->seen.count--; /* the last clue comes before the question */
        return keep_clues(at, &at->seen);
    }
    if (walk_find_before(of, here, where, &to)) {
        walk_go_to(at, to, false);
        return OUTCOME_BACK;
    }
    return reject(
        at, where[0] == '\0' ? say("this is the first question") : say("no earlier question has that name"),
        0);
}

/* From the first question of a wheel end or a check, which then is walked through. */
static outcome go_again(walk_session *at, const char *subject)
{
    const walk *of = at->of;
    for (size_t i = 0; i < of->plan.count; i++) {
        if (!walk_is_about(&of->record, &of->plan.items[i], subject) || !walk_answered(&of->record, &of->plan.items[i]))
            continue;
        if ((at->unsecured || at->item.part > WALK_APPLICATION) && of->plan.items[i].part == WALK_RELEASED)
            walk_print("", 0, "%s",
                       say("Release the pedal for the first reading. Before the second one you are asked for the "
                           "pressure and the pedal again."));
        walk_go_to(at, of->plan.items[i], true);
        return OUTCOME_BACK;
    }
    return reject(at, say("a wheel end or a check that was done is expected, such as again 2L"), 0);
}

static outcome add_air_rules(walk_session *at, const char *name)
{
    walk *of = at->of;
    if (walk_add_air_rules(of, name) != STATUS_CONTINUE)
        return walk_is_person(&of->input) ? OUTCOME_AGAIN : OUTCOME_FAILED;
    walk_print("= ", 2, say("air checks by %s from now on; they are asked in their turn"),
               of->record.head[HEAD_AIR_RULES].text);
    return OUTCOME_NEXT;
}

static outcome handle_line(walk_session *at)
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
    if (strcmp(text, "?") == 0)
        return take_question_mark(at);
    if (is_listed(WORDS_HELP, text))
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
    if (is_timed(&at->item) && walk_has_clock(&at->of->input) && (rest = walk_text_after(text, "t")) != NULL)
        return run_clock(at, rest);
    if (at->item.id == ASK_CHAMBER && (rest = text_after_listed(WORDS_CLUES, text)) != NULL)
        return take_clues(at, rest);
    if (at->item.id == ASK_CHAMBER && text_after_listed(WORDS_DIAMETER, text) != NULL)
        return take_clues(at, text); /* a clue by itself */
    if ((rest = text_after_listed(WORDS_NOTE, text)) != NULL)
        return add_note(at, rest);
    if ((rest = text_after_listed(WORDS_AIR, text)) != NULL)
        return add_air_rules(at, rest);
    return accept_answer(at, text);
}

/* The pull against the parking brake is left out, and asked for again when what stood against it is gone. */
static outcome refuse_pull(walk_session *at, const char *why)
{
    walk *of = at->of;
    walk_print("", 0, "%s", why);
    of->trial = of->record;
    if (!walk_skip_pull(of, &of->trial))
        return reject(at, say("no memory"), 0);
    return commit(at);
}

/* --- One question ------------------------------------------------------------------------------------ */

/* NEXT: a line is there. */
static outcome check_input(const walk_session *at, input_status status)
{
    switch (status) {
    case INPUT_LINE: return OUTCOME_NEXT;
    case INPUT_LONG: return reject(at, say("that is longer than any answer"), 0);
    case INPUT_CUT: return reject(at, say("the last line has no end; was it cut off?"), 0);
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

/* "k = keep 'yes', or < to change it" */
static const char *say_yes_no(const walk_session *at, char text[WALK_ANSWER_MAX])
{
    const char *word = walk_find_yes_no(at->doubted);
    snprintf(text, WALK_ANSWER_MAX, say("k = keep '%.40s', or < to change it"), word != NULL ? word : at->doubted);
    return text;
}

static outcome ask_to_keep(walk_session *at)
{
    char prompt[2 * WALK_ANSWER_MAX], first[WALK_ANSWER_MAX];
    if (at->asked == WALK_ASKED_KEEP_YES_NO)
        snprintf(prompt, sizeof prompt, say("Is that right? %s"), say_yes_no(at, first));
    else
        snprintf(prompt, sizeof prompt, "%s", say("Is that right? k = yes, keep it; or type it again"));
    walk_prompt(prompt);
    return OUTCOME_WAIT;
}

/* After a warning the answer must be kept, or replaced. */
static outcome doubt(walk_session *at)
{
    at->asked = at->asked == WALK_ASKED_QUESTION && is_yes_no(&at->item) ? WALK_ASKED_KEEP_YES_NO : WALK_ASKED_KEEP;
    snprintf(at->doubted, sizeof at->doubted, "%s", at->text);
    return ask_to_keep(at);
}

static outcome refuse_to_keep(walk_session *at, const char *why)
{
    return reject(at, why, 0) == OUTCOME_FAILED ? OUTCOME_FAILED : ask_to_keep(at);
}

/* A yes after "is that right?" would be taken for another answer to the question before. */
static outcome take_kept(walk_session *at)
{
    char first[WALK_ANSWER_MAX];
    bool yes_no = at->asked == WALK_ASKED_KEEP_YES_NO;
    if (is_listed(WORDS_KEEP, at->text))
        return commit(at);
    if (!yes_no && at->text[0] == '\0')
        return refuse_to_keep(at, say("type k to keep it, or type a new answer"));
    if (yes_no && strcmp(at->text, "<") == 0)
        return OUTCOME_AGAIN;
    if (yes_no && (at->text[0] == '\0' || walk_find_yes_no(at->text) != NULL))
        return refuse_to_keep(at, say_yes_no(at, first));
    return handle_line(at);
}

static outcome ask(walk_session *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX], prompt[2 * WALK_ANSWER_MAX + WALK_SAID_SIZE];
    const char *refused = at->item.check == RODT_AIR_CHECK_SPRING_BRAKE ? walk_refuse_pull(of) : NULL;
    if (refused != NULL)
        return refuse_pull(at, refused);
    walk_print_intro(of, &at->item);
    if (is_timed(&at->item) && walk_has_clock(&of->input))
        walk_print("", 0, "%s", at->item.id == ASK_SECONDS ? say("Enter starts a clock, and Enter stops it.")
                                                           : say("t counts the seconds down and rings."));
    if (walk_find_clues(of, &at->item, &at->seen))
        walk_print_clues(&at->seen);
    at->enter = at->fresh ? WALK_NO_DEFAULT : walk_find_default(of, &at->item, at->enter_text, at->enter_said);
    if (at->enter == WALK_NO_DEFAULT)
        snprintf(prompt, sizeof prompt, "%s", name_of(at, name));
    else
        snprintf(prompt, sizeof prompt, "%s [%s]", name_of(at, name), at->enter_said);
    at->asked = WALK_ASKED_QUESTION;
    walk_prompt(prompt);
    return OUTCOME_WAIT;
}

/* --- The whole --------------------------------------------------------------------------------------- */

static int stop(const walk_session *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX];
    walk_print("", 0, say("Stopped at: %s. Every answer before it is in %s."), name_of(at, name), of->file);
    walk_print_command(of, say("Go on with"), "walkround");
    return walk_status(of, false);
}

/* On to the next question, which waits for its line. False: it is over. */
static bool go_on(walk_session *at, outcome done)
{
    while (done != OUTCOME_WAIT) {
        if (done == OUTCOME_STOP || done == OUTCOME_CUT || done == OUTCOME_FAILED) {
            at->status = done == OUTCOME_FAILED ? STATUS_USAGE : stop(at);
            return false;
        }
        bool same = done == OUTCOME_BACK || done == OUTCOME_AGAIN;
        at->forward = at->forward || done == OUTCOME_BACK;
        at->fresh = at->fresh && same;
        if (!same && !walk_find_next(at)) {
            at->status = walk_finish(at->of);
            return false;
        }
        done = ask(at);
    }
    return true;
}

bool walk_begin(walk *of, walk_session *at)
{
    *at = (walk_session){.of = of};
    if (of->back != NULL && !walk_find_chosen(at, of->back)) {
        at->status = print_error("%s has no answer that is called \"%s\"; a wheel end or a check is, such as 2L or "
                                 "warning",
                                 of->file, of->back);
        return false;
    }
    if (of->back != NULL || walk_find_first(at))
        return go_on(at, ask(at));
    at->status = walk_finish(of);
    return false;
}

bool walk_take_line(walk_session *at, input_status status)
{
    if (at->asked == WALK_ASKED_FILE)
        return go_on(at, take_file(at, status));
    if (status != INPUT_LINE)
        at->text[0] = '\0';
    outcome done = check_input(at, status);
    if (done == OUTCOME_NEXT)
        done = at->asked == WALK_ASKED_QUESTION ? handle_line(at) : take_kept(at);
    return go_on(at, done == OUTCOME_WARNED ? doubt(at) : done);
}
