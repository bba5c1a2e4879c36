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

/* What came of one question. */
typedef enum turn { TURN_NEXT, TURN_AGAIN, TURN_BACK, TURN_ODD, TURN_STOP, TURN_CUT, TURN_FAILED } turn;

/* A question while it is asked. */
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

/* A person is asked again; a file of answers ends the run, with its line. `place` may be 0. */
static turn refuse(const asking *at, const char *what, uint32_t place)
{
    const walk_input *input = &at->of->input;
    char name[WALK_ANSWER_MAX];
    if (walk_is_person(input)) {
        if (place > 0)
            print_place(stdout, walk_columns(), at->text, place);
        walk_say("", 0, "Not taken: %s%s", what, strchr(".?", what[strlen(what) - 1]) != NULL ? "" : ".");
        return TURN_AGAIN;
    }
    print_error("%s:%lu: the answer to \"%s\" is not taken", input->file, input->line, name_of(at, name));
    if (place > 0)
        print_place(stderr, LINE_WIDTH, at->text, place);
    print_wrapped(stderr, "    ", 4, what);
    return TURN_FAILED;
}

/* --- The disk ---------------------------------------------------------------------------------------- */

static turn commit(asking *at);

/* What was just said stays in memory until it is on a disk, or the person gives it up. */
static turn save_again(asking *at)
{
    walk *of = at->of;
    walk_say("", 0, "This answer is not on the disk. %s is as it was before it.", of->file);
    if (!walk_is_person(&of->input))
        return TURN_FAILED;
    for (;;) {
        walk_prompt("Enter tries again, a new file name saves there, quit stops");
        if (walk_read_line(&of->input, at->text) != INPUT_LINE || strcasecmp(at->text, "quit") == 0) {
            walk_say("", 0, "The last answer is lost.");
            return TURN_STOP;
        }
        int status = at->text[0] == '\0' ? walk_save(of, &of->trial) : walk_save_as(of, &of->trial, at->text);
        if (status != STATUS_CONTINUE)
            continue;
        walk_say("", 0, "Saved in %s.", of->file);
        return TURN_NEXT;
    }
}

static turn commit(asking *at)
{
    walk *of = at->of;
    turn done = walk_save(of, &of->trial) == STATUS_CONTINUE ? TURN_NEXT : save_again(at);
    if (done != TURN_NEXT)
        return done;
    of->record = of->trial;
    walk_make_plan(of, &of->plan);
    walk_print_result(of, &at->item);
    return TURN_NEXT;
}

/* --- Answers ----------------------------------------------------------------------------------------- */

static void say_odd(void *context, const char *label, const char *text)
{
    (void)context;
    walk_say("! ", 2, "%s%s", label, text);
}

static turn leave_out(asking *at)
{
    walk *of = at->of;
    if (walk_questions[at->item.id].firm)
        return refuse(at, "this step cannot be skipped", 0);
    of->trial = of->record;
    if (!walk_skip(of, &of->trial, &at->item))
        return refuse(at, "no memory", 0);
    walk_say("= ", 2, "left out");
    return commit(at);
}

static turn take(asking *at, const char *text)
{
    walk *of = at->of;
    rodt_error error = {.status = RODT_OK};
    char said[WALK_SAID_SIZE];
    of->trial = of->record;
    rodt_status status = walk_take(of, &of->trial, &at->item, text, said, &error);
    if (status == RODT_E_EMPTY)
        return leave_out(at);
    if (status == RODT_E_MEMORY)
        return refuse(at, "no memory", 0);
    if (status != RODT_OK)
        return refuse(at, error.text, error.column);
    walk_say("= ", 2, "%s", said);
    return walk_each_warning(of, &of->trial, &at->item, say_odd, NULL) > 0 ? TURN_ODD : commit(at);
}

static turn copy(asking *at)
{
    walk *of = at->of;
    of->trial = of->record;
    if (!walk_copy_end(of, &of->trial, walk_template_end(&of->record, at->item.end), at->item.end))
        return refuse(at, "no memory", 0);
    walk_say("= ", 2, "%s", at->enter_said);
    return commit(at);
}

static turn press_enter(asking *at)
{
    switch (at->enter) {
    case WALK_STAY: return TURN_NEXT;
    case WALK_TAKE: return take(at, at->enter_text);
    case WALK_COPY: return copy(at);
    case WALK_LEAVE: return leave_out(at);
    case WALK_NO_DEFAULT: break;
    }
    return refuse(at, "an answer is needed; skip leaves it out, help tells more", 0);
}

static turn note(asking *at, const char *text)
{
    walk *of = at->of;
    text += strspn(text, " \t");
    if (*text == '\0')
        return refuse(at, "the words of the note stand behind note", 0);
    of->trial = of->record;
    if (!walk_note(of, &of->trial, &at->item, text))
        return refuse(at, "there is no room for a longer note", 0);
    turn done = walk_save(of, &of->trial) == STATUS_CONTINUE ? TURN_NEXT : save_again(at);
    if (done != TURN_NEXT)
        return done;
    of->record = of->trial;
    walk_say("= ", 2, "noted");
    return TURN_AGAIN;
}

/* --- Words ------------------------------------------------------------------------------------------- */

/* The text behind the word, or NULL if it is another word. */
static const char *behind(const char *text, const char *word)
{
    size_t size = strlen(word);
    if (strncasecmp(text, word, size) != 0 || (text[size] != '\0' && text[size] != ' '))
        return NULL;
    return text + size + strspn(text + size, " ");
}

static bool is_word(const char *text, const char *word, const char *sign)
{
    return strcasecmp(text, word) == 0 || strcmp(text, sign) == 0;
}

static void say_help(const asking *at)
{
    walk_say("", 0, "%s", walk_questions[at->item.id].help);
    walk_say("", 0, "Words: back (<), back 3L, skip (-), show (=), note TEXT, quit. Enter takes what stands in "
                    "brackets.");
}

/* The last question in front of this place of the plan; with a name the last one about it: a wheel end, a check, a
 * step. */
static bool find_before(const walk *of, size_t here, const char *where, walk_item *out)
{
    char name[WALK_NAME_SIZE];
    while (here-- > 0) {
        walk_step_name(&of->record, &of->plan.items[here], name);
        if (where[0] != '\0' && behind(name, where) == NULL)
            continue;
        *out = of->plan.items[here];
        return true;
    }
    return false;
}

static turn go_back(asking *at, const char *where)
{
    const walk *of = at->of;
    size_t here = 0;
    while (here < of->plan.count && !walk_same(&of->plan.items[here], &at->item))
        here++;
    if (find_before(of, here, where, &at->item))
        return TURN_BACK;
    return refuse(at, where[0] == '\0' ? "this is the first question" : "no earlier question has that name", 0);
}

static turn identify(asking *at, const char *text)
{
    rodt_error error;
    if (!walk_identify(at->of, text, &error))
        return refuse(at, error.text, error.column > 0 ? error.column + (uint32_t)(text - at->text) : 0);
    return TURN_AGAIN;
}

static turn hear(asking *at)
{
    const char *text = at->text, *rest;
    uint32_t place;
    if (!walk_is_text(text, &place))
        return refuse(at, "there is a sign that is no text, such as an arrow key", place);
    if (text[0] == '\0' || (at->enter == WALK_STAY && is_word(text, "keep", "k")))
        return press_enter(at);
    if (is_word(text, "quit", "quit"))
        return TURN_STOP;
    if (is_word(text, "skip", "-"))
        return leave_out(at);
    if (is_word(text, "help", "?") || is_word(text, "show", "=")) {
        if (is_word(text, "help", "?"))
            say_help(at);
        else
            walk_say_entered(at->of);
        return TURN_AGAIN;
    }
    if (strcmp(text, "<") == 0)
        return go_back(at, "");
    if ((rest = behind(text, "back")) != NULL)
        return go_back(at, rest);
    if (at->item.id == ASK_CHAMBER && (rest = behind(text, "diameter")) != NULL)
        return identify(at, rest);
    if ((rest = behind(text, "note")) != NULL)
        return note(at, rest);
    return take(at, text);
}

/* --- One question ------------------------------------------------------------------------------------ */

static turn hear_line(asking *at)
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
    case INPUT_LINE: return TURN_NEXT;
    case INPUT_LONG:
        at->text[0] = '\0';
        return refuse(at, "that is longer than any answer", 0);
    case INPUT_CUT:
        at->text[0] = '\0';
        return refuse(at, "the last line has no end; was it cut off?", 0);
    case INPUT_END:
    case INPUT_STOPPED: break;
    case INPUT_FAILED:
        print_error("the answers cannot be read: %s", strerror(errno));
        return TURN_FAILED;
    }
    putchar('\n');
    return TURN_CUT;
}

/* An odd answer stands until it is kept or another one is given. */
static turn settle(asking *at)
{
    turn done = TURN_ODD;
    while (done == TURN_ODD) {
        walk_prompt("keep it (k), or answer again");
        done = hear_line(at);
        if (done == TURN_NEXT && is_word(at->text, "keep", "k"))
            return commit(at);
        if (done == TURN_NEXT && at->text[0] == '\0')
            done = refuse(at, "type k to keep it, or the answer again", 0) == TURN_FAILED ? TURN_FAILED : TURN_ODD;
        else if (done == TURN_NEXT)
            done = hear(at);
    }
    return done;
}

static turn ask(asking *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX], prompt[2 * WALK_ANSWER_MAX + WALK_SAID_SIZE];
    walk_say_before(of, &at->item);
    at->enter = walk_find_default(of, &at->item, at->enter_text, at->enter_said);
    if (at->enter == WALK_NO_DEFAULT)
        snprintf(prompt, sizeof prompt, "%s", name_of(at, name));
    else
        snprintf(prompt, sizeof prompt, "%s [%s]", name_of(at, name), at->enter_said);
    walk_prompt(prompt);
    turn done = hear_line(at);
    if (done == TURN_NEXT)
        done = hear(at);
    return done == TURN_ODD ? settle(at) : done;
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
static void say_command(const walk *of, const char *what, const char *command)
{
    const char *own = of->limits_file != NULL ? of->limits_file : "";
    const char *mark = strpbrk(of->file, " '$`\"\\*?&;|<>()") != NULL && strchr(of->file, '\'') == NULL ? "'" : "";
    const char *other = strpbrk(own, " '$`\"\\*?&;|<>()") != NULL && strchr(own, '\'') == NULL ? "'" : "";
    walk_say("", 0, "%s: rodtravel %s %s%s%s%s%s%s%s", what, command, mark, of->file, mark,
             own[0] != '\0' ? " --limits " : "", other, own, other);
}

static int stop(const asking *at)
{
    walk *of = at->of;
    char name[WALK_ANSWER_MAX];
    walk_say("", 0, "Stopped at: %s. Every answer before it is in %s.", name_of(at, name), of->file);
    say_command(of, "Go on with", "walkround");
    return walk_status(of, false);
}

/* Answers behind the last question mean that they were given to other questions than they were written for. */
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
            return print_error("%s:%lu: an answer is left over behind the last question", input->file, input->line);
    }
    return STATUS_CONTINUE;
}

static int finish(walk *of)
{
    walk_say_verdict(of);
    walk_say("", 0, "Done; all is in %s.", of->file);
    say_command(of, "Whole report", "report");
    if (walk_is_person(&of->input))
        walk_say("", 0, "An answer is wrong? walkround again, with --back 2L for the last one of that wheel end.");
    int status = walk_is_person(&of->input) ? STATUS_CONTINUE : refuse_rest(of);
    return status == STATUS_CONTINUE ? walk_status(of, true) : status;
}

static bool ask_again(asking *at, walk_id id)
{
    at->item = (walk_item){id, walk_questions[id].part, WALK_NONE, RODT_CHECK_NONE};
    return walk_value(&at->of->record, &at->item).text != NULL;
}

/* What held the readings together may be gone after a break: the parking brake was set over night, the pedal came up,
 * the pressure fell. A person is asked once more; a script says what it said. */
static bool take_up_wheel_ends(asking *at)
{
    walk *of = at->of;
    if (!walk_is_person(&of->input) || !find_open(of, &at->item))
        return false;
    if (at->item.part == WALK_RELEASED)
        return ask_again(at, ASK_SPRING);
    if (at->item.part != WALK_APPLIED || walk_skipped(&of->record, &(walk_item){ASK_HELD, WALK_APPLICATION, WALK_NONE,
                                                                               RODT_CHECK_NONE}))
        return false;
    walk_say("", 0, "The pedal is down no more since the break: air up, press it and hold it again.");
    (void)walk_set_step(of, &of->record, walk_questions[ASK_HELD].name, NULL);
    return ask_again(at, ASK_PSI);
}

int walk_go(walk *of)
{
    asking at = {.of = of};
    bool chosen = of->back == NULL && take_up_wheel_ends(&at);
    if (of->back != NULL) {
        walk_make_plan(of, &of->plan);
        chosen = find_before(of, of->plan.count, of->back, &at.item) && walk_answered(&of->record, &at.item);
        if (!chosen)
            return print_error("%s has no answer that is called \"%s\"; a wheel end or a check is, such as 2L or "
                               "warning", of->file, of->back);
    }
    while (chosen || find_open(of, &at.item)) {
        turn done = ask(&at);
        chosen = done == TURN_BACK || done == TURN_AGAIN;
        if (done == TURN_STOP || done == TURN_CUT)
            return stop(&at);
        if (done == TURN_FAILED)
            return STATUS_USAGE;
    }
    return finish(of);
}
