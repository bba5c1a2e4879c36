/* SPDX-License-Identifier: Apache-2.0 */
/* The walk-round itself: the first open question, its answer, the disk, the next one. */
#include "walkround/walkround.h"
#include "ui/exit_status.h"
#include "ui/message.h"
#include "ui/utf8.h"
#include "ui/wrap.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>

/* The outcome of one question. */
typedef enum outcome {
    OUTCOME_NEXT, OUTCOME_AGAIN, OUTCOME_BACK, OUTCOME_WARNED, OUTCOME_STOP, OUTCOME_CUT, OUTCOME_FAILED
} outcome;

/* The question that is open, and its answer. */
typedef struct asking {
    walk *of;
    walk_item item;
    walk_default enter;
    char enter_text[WALK_ANSWER_MAX];
    char enter_said[WALK_SAID_SIZE];
    char text[WALK_ANSWER_MAX];
} asking;

/* "2L released", "Unit number": the question as messages name it. */
static const char *name_of(const asking *at, char name[WALK_ANSWER_MAX])
{
    const char *position = at->item.end == WALK_NONE ? "" : at->of->record.ends[at->item.end][END_POSITION].text;
    snprintf(name, WALK_ANSWER_MAX, "%.20s%s%s", position, position[0] == '\0' ? "" : " ", walk_title(&at->item));
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
            print_place(stdout, line_width(stdout), at->text, place);
        walk_print("", 0, "Not accepted: %s%s", what, strchr(".?", what[strlen(what) - 1]) != NULL ? "" : ".");
        return OUTCOME_AGAIN;
    }
    print_error("%s:%lu: the answer to \"%s\" is not accepted", input->file, input->line, name_of(at, name));
    if (place > 0)
        print_place(stderr, line_width(stderr), at->text, place);
    print_wrapped(stderr, "    ", 4, what);
    return OUTCOME_FAILED;
}

/* --- The disk ---------------------------------------------------------------------------------------- */

static outcome commit(asking *at);

/* The last answer stays in memory until it is saved, or the person gives it up. */
static outcome save_again(asking *at)
{
    walk *of = at->of;
    walk_print("", 0, "This answer is not saved. %s is unchanged.", of->file);
    if (!walk_is_person(&of->input))
        return OUTCOME_FAILED;
    for (;;) {
        walk_prompt("Enter tries again, a new file name saves there, quit stops");
        if (walk_read_line(&of->input, at->text) != INPUT_LINE || strcasecmp(at->text, "quit") == 0) {
            walk_print("", 0, "The last answer is lost.");
            return OUTCOME_STOP;
        }
        int status = at->text[0] == '\0' ? walk_save(of, &of->trial) : walk_save_as(of, &of->trial, at->text);
        if (status != STATUS_CONTINUE)
            continue;
        walk_print("", 0, "Saved in %s.", of->file);
        return OUTCOME_NEXT;
    }
}

static outcome commit(asking *at)
{
    walk *of = at->of;
    outcome done = walk_save(of, &of->trial) == STATUS_CONTINUE ? OUTCOME_NEXT : save_again(at);
    if (done != OUTCOME_NEXT)
        return done;
    of->record = of->trial;
    walk_make_plan(of, &of->plan);
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
        return reject(at, "this step cannot be skipped", 0);
    of->trial = of->record;
    if (!walk_skip(of, &of->trial, &at->item))
        return reject(at, "no memory", 0);
    walk_print("= ", 2, "skipped");
    return commit(at);
}

static outcome accept_answer(asking *at, const char *text)
{
    walk *of = at->of;
    rodt_error error = {.status = RODT_OK};
    char said[WALK_SAID_SIZE];
    of->trial = of->record;
    rodt_status status = walk_read_answer(of, &of->trial, &at->item, text, said, &error);
    if (status == RODT_E_EMPTY)
        return skip(at);
    if (status == RODT_E_MEMORY)
        return reject(at, "no memory", 0);
    if (status != RODT_OK)
        return reject(at, error.text, error.column);
    walk_print("= ", 2, "%s", said);
    return walk_each_warning(of, &of->trial, &at->item, print_warning, NULL) > 0 ? OUTCOME_WARNED : commit(at);
}

static outcome copy_template(asking *at)
{
    walk *of = at->of;
    of->trial = of->record;
    if (!walk_copy_end(of, &of->trial, walk_template_end(&of->record, at->item.end), at->item.end))
        return reject(at, "no memory", 0);
    walk_print("= ", 2, "%s", at->enter_said);
    return commit(at);
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
    return reject(at, "an answer is needed; type skip to leave it out, help for more", 0);
}

static outcome add_note(asking *at, const char *text)
{
    walk *of = at->of;
    text += strspn(text, " \t");
    if (*text == '\0')
        return reject(at, "write the note after the word note", 0);
    of->trial = of->record;
    if (!walk_note(of, &of->trial, &at->item, text))
        return reject(at, "there is no room for a longer note", 0);
    outcome done = walk_save(of, &of->trial) == STATUS_CONTINUE ? OUTCOME_NEXT : save_again(at);
    if (done != OUTCOME_NEXT)
        return done;
    of->record = of->trial;
    walk_print("= ", 2, "noted");
    return OUTCOME_AGAIN;
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

static bool is_word(const char *text, const char *word, const char *short_word)
{
    return strcasecmp(text, word) == 0 || strcmp(text, short_word) == 0;
}

static void print_help(const asking *at)
{
    walk_print("", 0, "%s", walk_questions[at->item.id].help);
    walk_print("", 0, "Words: back (<), back 3L, skip (-), show (=), note TEXT, quit. Enter takes the answer in "
               "brackets.");
}

/* The last question before this place of the plan; with a name the last one about it: a wheel end, a check, a
 * step. */
static bool find_before(const walk *of, size_t here, const char *where, walk_item *out)
{
    char name[WALK_NAME_SIZE];
    while (here-- > 0) {
        walk_step_name(&of->record, &of->plan.items[here], name);
        if (where[0] != '\0' && text_after(name, where) == NULL)
            continue;
        *out = of->plan.items[here];
        return true;
    }
    return false;
}

static outcome go_back(asking *at, const char *where)
{
    const walk *of = at->of;
    size_t here = 0;
    while (here < of->plan.count && !walk_same(&of->plan.items[here], &at->item))
        here++;
    if (find_before(of, here, where, &at->item))
        return OUTCOME_BACK;
    return reject(at, where[0] == '\0' ? "this is the first question" : "no earlier question has that name", 0);
}

static outcome identify(asking *at, const char *text)
{
    rodt_error error;
    if (!walk_identify(at->of, text, &error))
        return reject(at, error.text, error.column > 0 ? error.column + (uint32_t)(text - at->text) : 0);
    return OUTCOME_AGAIN;
}

static outcome handle_line(asking *at)
{
    const char *text = at->text, *rest;
    uint32_t place;
    if (!walk_is_text(text, &place))
        return reject(at, "the answer holds a character that is no text, such as an arrow key", place);
    if (text[0] == '\0' || (at->enter == WALK_STAY && is_word(text, "keep", "k")))
        return press_enter(at);
    if (is_word(text, "quit", "quit"))
        return OUTCOME_STOP;
    if (is_word(text, "skip", "-"))
        return skip(at);
    if (is_word(text, "help", "?") || is_word(text, "show", "=")) {
        if (is_word(text, "help", "?"))
            print_help(at);
        else
            walk_print_entered(at->of);
        return OUTCOME_AGAIN;
    }
    if (strcmp(text, "<") == 0)
        return go_back(at, "");
    if ((rest = text_after(text, "back")) != NULL)
        return go_back(at, rest);
    if (at->item.id == ASK_CHAMBER && (rest = text_after(text, "diameter")) != NULL)
        return identify(at, rest);
    if ((rest = text_after(text, "note")) != NULL)
        return add_note(at, rest);
    return accept_answer(at, text);
}

/* --- One question ------------------------------------------------------------------------------------ */

static outcome read_line(asking *at)
{
    walk_input *input = &at->of->input;
    input_status status;
    do
        status = walk_read_line(input, at->text);
    while (status == INPUT_LINE && !walk_is_person(input) && at->text[0] == '#');
    if (!walk_is_person(input) && status == INPUT_LINE) {
        print_safely(stdout, at->text);
        putchar('\n');
    }
    switch (status) {
    case INPUT_LINE: return OUTCOME_NEXT;
    case INPUT_LONG:
        at->text[0] = '\0';
        return reject(at, "that is longer than any answer", 0);
    case INPUT_CUT:
        at->text[0] = '\0';
        return reject(at, "the last line has no end; was it cut off?", 0);
    case INPUT_END:
    case INPUT_STOPPED: break;
    case INPUT_FAILED:
        print_error("the answers cannot be read: %s", strerror(errno));
        return OUTCOME_FAILED;
    }
    putchar('\n');
    return OUTCOME_CUT;
}

/* After a warning the answer must be kept, or replaced. */
static outcome confirm(asking *at)
{
    outcome done = OUTCOME_WARNED;
    while (done == OUTCOME_WARNED) {
        walk_prompt("keep it (k), or type it again");
        done = read_line(at);
        if (done == OUTCOME_NEXT && is_word(at->text, "keep", "k"))
            return commit(at);
        if (done == OUTCOME_NEXT && at->text[0] == '\0')
            done = reject(at, "type k to keep it, or type a new answer", 0) == OUTCOME_FAILED ? OUTCOME_FAILED
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
    walk_print_intro(of, &at->item);
    at->enter = walk_find_default(of, &at->item, at->enter_text, at->enter_said);
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
    walk_make_plan(of, &of->plan);
    for (size_t i = 0; i < of->plan.count; i++) {
        if (!walk_answered(&of->record, &of->plan.items[i])) {
            *out = of->plan.items[i];
            return true;
        }
    }
    return false;
}

/* As it can be typed; a record that was judged with limits of a carrier's own needs them again. */
static void print_command(const walk *of, const char *what, const char *command)
{
    const char *own = of->limits_file != NULL ? of->limits_file : "";
    const char *mark = strpbrk(of->file, " '$`\"\\*?&;|<>()") != NULL && strchr(of->file, '\'') == NULL ? "'" : "";
    const char *other = strpbrk(own, " '$`\"\\*?&;|<>()") != NULL && strchr(own, '\'') == NULL ? "'" : "";
    walk_print("", 0, "%s: rodtravel %s %s%s%s%s%s%s%s", what, command, mark, of->file, mark,
               own[0] != '\0' ? " --limits " : "", other, own, other);
}

static int stop(const asking *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX];
    walk_print("", 0, "Stopped at: %s. Every answer before it is in %s.", name_of(at, name), of->file);
    print_command(of, "Go on with", "walkround");
    return walk_status(of, false);
}

/* Answers after the last question mean that answers went to other questions than they were written for. */
static int refuse_rest(walk *of)
{
    char text[WALK_ANSWER_MAX];
    walk_input *input = &of->input;
    bool pipe = strcmp(input->file, "standard input") == 0;
    while (!pipe || memchr(input->bytes + input->at, '\n', input->used - input->at) != NULL) {
        input_status status = walk_read_line(input, text);
        if (status == INPUT_END)
            break;
        if (status != INPUT_LINE || (text[0] != '\0' && text[0] != '#'))
            return print_error("%s:%lu: there is an answer after the last question", input->file, input->line);
    }
    return STATUS_CONTINUE;
}

static int finish(walk *of)
{
    walk_print_verdict(of);
    walk_print("", 0, "Done; all is in %s.", of->file);
    print_command(of, "Whole report", "report");
    if (walk_is_person(&of->input))
        walk_print("", 0, "An answer is wrong? walkround again, with --back 2L for the last one of that wheel end.");
    int status = walk_is_person(&of->input) ? STATUS_CONTINUE : refuse_rest(of);
    return status == STATUS_CONTINUE ? walk_status(of, true) : status;
}

static bool reopen(asking *at, walk_id id)
{
    at->item = (walk_item){id, walk_questions[id].part, WALK_NONE, RODT_AIR_CHECK_NONE};
    return walk_value(&at->of->record, &at->item).text != NULL;
}

/* Conditions may have changed during a break: the parking brake was set overnight, the pedal was released, the pressure
 * fell. A person is asked again; a file of answers is not. */
static bool resume_wheel_ends(asking *at)
{
    walk *of = at->of;
    if (!walk_is_person(&of->input) || !find_open(of, &at->item))
        return false;
    if (at->item.part == WALK_RELEASED)
        return reopen(at, ASK_SPRING);
    if (at->item.part != WALK_APPLIED || walk_skipped(&of->record, &(walk_item){ASK_HELD, WALK_APPLICATION, WALK_NONE,
                                                                               RODT_AIR_CHECK_NONE}))
        return false;
    walk_print("", 0, "The pedal was released during the break: build up the air, press the pedal and hold it again.");
    (void)walk_set_step(of, &of->record, walk_questions[ASK_HELD].name, NULL);
    return reopen(at, ASK_PSI);
}

int walk_run(walk *of)
{
    asking at = {.of = of};
    bool chosen = of->back == NULL && resume_wheel_ends(&at);
    if (of->back != NULL) {
        walk_make_plan(of, &of->plan);
        chosen = find_before(of, of->plan.count, of->back, &at.item) && walk_answered(&of->record, &at.item);
        if (!chosen)
            return print_error("%s has no answer that is called \"%s\"; a wheel end or a check is, such as 2L or "
                               "warning", of->file, of->back);
    }
    while (chosen || find_open(of, &at.item)) {
        outcome done = ask(&at);
        chosen = done == OUTCOME_BACK || done == OUTCOME_AGAIN;
        if (done == OUTCOME_STOP || done == OUTCOME_CUT)
            return stop(&at);
        if (done == OUTCOME_FAILED)
            return STATUS_USAGE;
    }
    return finish(of);
}
