/* SPDX-License-Identifier: Apache-2.0 */
/* Which law judges, on which day: the options that the commands have in common. */
#include "input/rule_context.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"

#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <time.h>

static bool has_word(const char *title, const char *word)
{
    size_t size = strlen(word);
    for (; size > 2 && strlen(title) >= size; title++) {
        if (strncasecmp(title, word, size) == 0)
            return true;
    }
    return false;
}

const rodt_rules *rules_by_name(const char *name)
{
    const rodt_rules *found = rodt_rules_find(name);
    for (size_t i = 0; found == NULL && i < rodt_rules_count(); i++) {
        const rodt_rules *rules = rodt_rules_at(i);
        if (!has_word(rodt_rules_title(rules), name))
            continue;
        for (size_t k = i + 1; k < rodt_rules_count(); k++) {
            if (has_word(rodt_rules_title(rodt_rules_at(k)), name))
                return NULL;
        }
        found = rules;
    }
    return found;
}

static int find_rules(const char *id, const rodt_rules **out)
{
    const char *wanted = id == NULL ? RODT_DEFAULT_RULES : id;
    *out = rules_by_name(wanted);
    if (*out != NULL)
        return STATUS_CONTINUE;
    char known[400] = "";
    for (size_t i = 0; i < rodt_rules_count(); i++) {
        size_t used = strlen(known);
        snprintf(known + used, sizeof known - used, "%s%s", i == 0 ? "" : ", ", rodt_rules_id(rodt_rules_at(i)));
    }
    print_error("there is no rule set \"%s\"", wanted);
    return print_error("rule sets are %s; see: rodtravel limits --list", known);
}

/* A library has no clock; a person at a command means today, where the person is. */
static int find_today(rodt_date *out)
{
    time_t now = time(NULL);
    struct tm local;
    if (localtime_r(&now, &local) == NULL ||
        rodt_date_make(local.tm_year + 1900, local.tm_mon + 1, local.tm_mday, out) != RODT_OK)
        return print_error("the clock of this computer is not set; give the day with --as-of");
    return STATUS_CONTINUE;
}

static int read_day(const char *text, rodt_date *out)
{
    rodt_error error;
    if (text == NULL)
        return find_today(out);
    if (rodt_date_parse(text, out, &error) == RODT_OK)
        return STATUS_CONTINUE;
    char what[80];
    snprintf(what, sizeof what, say("the value of --%s"), "as-of");
    print_text_error(what, text, &error);
    return print_error("year-month-day is always clear: 2021-10-14");
}

/* A table of limits is a page; anything far longer is some other file. */
#define FILE_MAX ((size_t)1 << 20)

static int read_file(const char *name, char **text, size_t *size)
{
    FILE *file = fopen(name, "rb");
    if (file == NULL)
        return print_error("cannot open %s: %s", name, say_system_error(errno));
    *text = malloc(FILE_MAX);
    if (*text == NULL) {
        fclose(file);
        return print_error("no memory to read %s", name);
    }
    *size = fread(*text, 1, FILE_MAX, file);
    bool failed = ferror(file) != 0;
    int reason = errno;
    fclose(file);
    if (!failed && *size < FILE_MAX)
        return STATUS_CONTINUE;
    free(*text);
    *text = NULL;
    return failed ? print_error("cannot read %s: %s", name, say_system_error(reason))
                  : print_error("%s is too long for a table of limits", name);
}

static int print_table_error(const char *name, const rodt_error *error)
{
    char place[48] = "", said[SAID_SIZE];
    if (error->line > 0)
        snprintf(place, sizeof place, ":%lu", (unsigned long)error->line);
    const char *field = error->field;
    say_error(error, said);
    if (error->code == RODT_MESSAGE_NONE && strcmp(chosen_language(), "en") != 0) /* the library says it in English */
        snprintf(said, sizeof said, say("in English: %s"), error->text);
    return print_error("%s%s: %s%s%s", name, place, field, field[0] == '\0' ? "" : ": ", said);
}

static int load_own(const char *name, rule_context *out)
{
    char *text = NULL;
    size_t size = 0;
    rodt_error error = {.status = RODT_OK};
    int status = read_file(name, &text, &size);
    if (status != STATUS_CONTINUE)
        return status;
    rodt_status loaded =
        rodt_rules_load_with_air(out->rules, out->air_rules, name, text, size, &out->own, &error);
    free(text);
    if (loaded != RODT_OK && error.status != RODT_OK)
        return print_table_error(name, &error);
    if (loaded != RODT_OK)
        return print_status(name, loaded);
    out->rules = out->air_rules = out->own;
    return STATUS_CONTINUE;
}

int rule_context_open(const char *rules, const char *air_rules, const char *limits_file, const char *day,
                      rule_context *out)
{
    memset(out, 0, sizeof *out);
    out->today = day == NULL;
    int status = find_rules(rules, &out->rules);
    if (status == STATUS_CONTINUE)
        status = find_rules(air_rules != NULL ? air_rules : rules, &out->air_rules);
    if (status == STATUS_CONTINUE)
        status = read_day(day, &out->day);
    if (status == STATUS_CONTINUE && limits_file != NULL)
        status = load_own(limits_file, out);
    return status;
}

void rule_context_close(rule_context *context) { rodt_rules_unref(context->own); }

const rodt_air_limit *air_row_at(const rodt_rules *rules, size_t index)
{
    const rodt_rules *law = rodt_rules_air_law(rules);
    size_t count = law == NULL ? 0 : rodt_rules_air_count(law);
    return index < count ? rodt_rules_air_at(law, index) : rodt_rules_air_at(rules, index - count);
}

void rule_context_note_undated(const rule_context *context, uint64_t rows)
{
    char day[RODT_DATE_TEXT_SIZE];
    if (context->today && rows > 0 && rodt_date_format(context->day, day, sizeof day, NULL) == RODT_OK)
        print_error(say_number("%lu row has no date: judged by the law of today, %s (--as-of sets another day)",
                               "%lu rows have no date: judged by the law of today, %s (--as-of sets another day)",
                               (unsigned long)rows), (unsigned long)rows, day);
}
