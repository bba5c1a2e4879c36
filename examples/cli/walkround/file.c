/* SPDX-License-Identifier: Apache-2.0 */
/* The record of a walk-round on the disk: begun or resumed, locked, and written completely after every answer. */
#include "walkround/walkround.h"
#include "input/rule_context.h"
#include "io/atomic_file.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/language.h"
#include "ui/message.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

/* --- Only one at a time ------------------------------------------------------------------------------ */

static bool is_same_file(const struct stat *a, const struct stat *b)
{
    return a->st_dev == b->st_dev && a->st_ino == b->st_ino;
}

/* Holds the file that has the name now. A file system without locks is no failure: whether the file is as it was
 * last written is looked at before each writing as well. */
static int hold(walk *of)
{
    struct stat held, named;
    int descriptor = open(of->file, O_RDONLY | O_CLOEXEC);
    if (descriptor < 0)
        return print_error("cannot open %s: %s", of->file, say_system_error(errno));
    bool taken = flock(descriptor, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK;
    bool known = fstat(descriptor, &held) == 0 && stat(of->file, &named) == 0;
    if (taken || !known || !is_same_file(&held, &named)) {
        close(descriptor);
        return print_error("another walk-round is writing %s; two at once would lose answers", of->file);
    }
    of->lock = descriptor;
    of->written = held;
    return STATUS_CONTINUE;
}

/* Somebody's editor, or a copy from elsewhere. */
static bool is_changed(const walk *of, bool *gone)
{
    struct stat named;
    *gone = stat(of->file, &named) != 0 && errno == ENOENT;
    if (of->lock < 0 || *gone)
        return false;
    return !is_same_file(&named, &of->written) || named.st_size != of->written.st_size ||
           named.st_mtim.tv_sec != of->written.st_mtim.tv_sec || named.st_mtim.tv_nsec != of->written.st_mtim.tv_nsec;
}

void walk_close(walk *of)
{
    if (of->lock >= 0)
        close(of->lock);
    of->lock = -1;
}

/* --- Writing ----------------------------------------------------------------------------------------- */

int walk_save(walk *of, const inspection_record *record)
{
    atomic_file file;
    bool gone;
    if (is_changed(of, &gone))
        return print_error("%s was changed by another program; it is not overwritten", of->file);
    int lock = of->lock;
    int status = lock >= 0 ? atomic_file_open_locked(of->file, &file) : atomic_file_open(of->file, &file);
    if (status != STATUS_CONTINUE)
        return status;
    file.fresh = lock < 0 || gone;
    status = record_write(record, file.to);
    status = atomic_file_close_locked(&file, status == STATUS_CONTINUE, &of->lock);
    if (status != STATUS_CONTINUE && of->lock == lock)
        return status;
    of->in_doubt = status != STATUS_CONTINUE;
    if (lock >= 0)
        close(lock);
    return fstat(of->lock, &of->written) == 0 ? status
                                              : print_error("cannot open %s: %s", of->file, say_system_error(errno));
}

int walk_save_as(walk *of, const inspection_record *record, const char *name)
{
    const char *old = of->file;
    int lock = of->lock;
    const char *kept = walk_keep(of, name);
    if (kept == NULL)
        return print_error("no memory");
    of->file = kept;
    of->lock = -1;
    int status = walk_save(of, record);
    if (of->lock < 0) {
        of->file = old;
        of->lock = lock;
    } else if (lock >= 0) {
        close(lock);
    }
    return status;
}

/* --- Beginning --------------------------------------------------------------------------------------- */

/* A rule set of air checks alone would leave every stroke without a limit. */
static int check_rules(const rodt_rules *rules)
{
    if (rodt_rules_limit_count(rules) > 0 || rodt_ratio_given(rodt_rules_rated_share(rules)))
        return STATUS_CONTINUE;
    return print_error("%s has air checks and no limits of strokes; give it as --air-rules %s", rodt_rules_id(rules),
                       rodt_rules_id(rules));
}

/* The record names the carrier's own limits: without them a brake that was out could pass. */
static int note_limits(walk *of)
{
    uint32_t place;
    const char *name = of->limits_file;
    if (name == NULL || record_step(&of->record, STEP_LIMITS) != NULL)
        return STATUS_CONTINUE;
    return walk_set_step(of, &of->record, STEP_LIMITS, walk_is_text(name, &place) ? name : "a file")
               ? STATUS_CONTINUE : print_error("no memory");
}

/* What the last record says is taken, where the command line says nothing. */
static int begin_from(walk *of, walk_start *start)
{
    int status = walk_take_from(of, start->last);
    const record_value *head = of->record.head;
    const char *unit = head[HEAD_LENGTH_UNIT].text;
    if (status != STATUS_CONTINUE)
        return status;
    if (start->unit != NULL && strcmp(start->unit, unit != NULL ? unit : "in") != 0)
        return print_error("%s has its lengths in %s; leave out --unit", start->last,
                           unit != NULL ? unit : say("inches"));
    start->unit = unit;
    start->rules = start->rules != NULL ? start->rules : head[HEAD_RULES].text;
    start->air_rules = start->air_rules != NULL ? start->air_rules : head[HEAD_AIR_RULES].text;
    return status;
}

static int begin(walk *of, const walk_start *given)
{
    char day[WORD_SIZE];
    walk_start options = *given, *start = &options;
    record_value *head = of->record.head;
    int status = given->last != NULL ? begin_from(of, start) : STATUS_CONTINUE;
    if (status == STATUS_CONTINUE && start->air_rules != NULL && rodt_rules_find(start->air_rules) == NULL)
        status = print_error("there is no rule set \"%s\"; see: rodtravel limits --list", start->air_rules);
    if (status == STATUS_CONTINUE)
        status = rule_context_open(start->rules, start->air_rules, of->limits_file, start->day, &of->context);
    if (status == STATUS_CONTINUE) {
        const rodt_rules *law = rodt_rules_law(of->context.rules);
        law = law != NULL ? law : of->context.rules;
        head[HEAD_DATE].text = walk_keep(of, format_date(of->context.day, day));
        head[HEAD_RULES].text = rodt_rules_id(law);
        status = head[HEAD_DATE].text != NULL ? check_rules(law) : print_error("no memory");
    }
    if (status == STATUS_CONTINUE)
        status = note_limits(of);
    head[HEAD_AIR_RULES].text = start->air_rules;
    head[HEAD_LENGTH_UNIT].text = start->unit;
    head[HEAD_PROGRAM].text = "rodtravel walkround";
    return status == STATUS_CONTINUE ? walk_save(of, &of->record) : status;
}

/* --- Resuming ---------------------------------------------------------------------------------------- */

int walk_add_air_rules(walk *of, const char *name)
{
    const rodt_rules *rules = rules_by_name(name);
    inspection_record trial = of->record;
    rule_context context;
    if (rules == NULL)
        return print_error("there is no rule set \"%s\"; see: rodtravel limits --list", name);
    if (trial.head[HEAD_AIR_RULES].text != NULL)
        return print_error("the air checks of this record go by %s; other ones need a new record",
                           trial.head[HEAD_AIR_RULES].text);
    trial.head[HEAD_AIR_RULES].text = rodt_rules_id(rules);
    int status = record_open_rules(&trial, of->limits_file, &context);
    if (status != STATUS_CONTINUE)
        return status;
    status = walk_save(of, &trial);
    rule_context_close(status == STATUS_CONTINUE ? &of->context : &context);
    if (status != STATUS_CONTINUE)
        return status;
    of->context = context;
    of->record = trial;
    return status;
}

/* An answer given under one rule set must not be judged by another one without a word. */
static int check_start(const walk *of, const walk_start *start)
{
    const struct {
        const char *option, *said;
        head_key key;
    } parts[] = {{"rules", start->rules, HEAD_RULES},
                 {"air-rules", start->air_rules, HEAD_AIR_RULES},
                 {"as-of", start->day, HEAD_DATE},
                 {"unit", start->unit, HEAD_LENGTH_UNIT}};
    for (size_t i = 0; i < COUNT_OF(parts); i++) {
        const char *has = of->record.head[parts[i].key].text;
        if (parts[i].said == NULL || (has == NULL && parts[i].key == HEAD_AIR_RULES) ||
            strcmp(parts[i].said, has != NULL ? has : "") == 0)
            continue;
        if (has == NULL)
            return print_error("%s was started without --%s; leave it out, or start a new record", of->file,
                               parts[i].option);
        return print_error("%s was started with --%s %s; leave it out, or start a new record", of->file,
                           parts[i].option, has);
    }
    const char *own = record_step(&of->record, STEP_LIMITS);
    if (own != NULL && of->limits_file == NULL)
        return print_error("%s was begun with the limits of a carrier's own; go on with --limits %s", of->file, own);
    return STATUS_CONTINUE;
}

static int resume(walk *of, const walk_start *start)
{
    int status = record_read(of->file, &of->record);
    if (status != STATUS_CONTINUE)
        return print_error("%s is unchanged", of->file);
    status = check_start(of, start);
    if (status == STATUS_CONTINUE)
        status = record_open_rules(&of->record, of->limits_file, &of->context);
    if (status == STATUS_CONTINUE && start->air_rules != NULL && of->record.head[HEAD_AIR_RULES].text == NULL)
        status = walk_add_air_rules(of, start->air_rules);
    if (status != STATUS_CONTINUE)
        return status;
    if (of->record.end_count > 0 && walk_judge(of, &of->record) == NULL)
        return print_error("%s is unchanged; correct it first", of->file);
    if (status == STATUS_CONTINUE)
        status = note_limits(of);
    if (of->again)
        walk_forget_skipped(&of->record);
    return status;
}

int walk_open(walk *of, const walk_start *start)
{
    struct stat found;
    of->lock = -1;
    if (strcmp(of->file, "-") == 0)
        return print_error("a walk-round is kept in a file; give its name");
    if (stat(of->file, &found) != 0 && errno == ENOENT)
        return begin(of, start);
    if (start->last != NULL)
        return print_error("%s is there already; leave out --from to go on with it, or name a new file", of->file);
    if (stat(of->file, &found) != 0)
        return print_error("cannot open %s: %s", of->file, say_system_error(errno));
    if (!S_ISREG(found.st_mode))
        return print_error("%s is no plain file", of->file);
    atomic_file_clean(of->file);
    int status = atomic_file_check(of->file);
    if (status == STATUS_CONTINUE)
        status = hold(of);
    return status == STATUS_CONTINUE ? resume(of, start) : status;
}
