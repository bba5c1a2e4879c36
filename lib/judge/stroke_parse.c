/* SPDX-License-Identifier: Apache-2.0 */
/* A wheel end as text: every field through its own reader, strictly for one, leniently for a file. */
#include "judge/judge.h"
#include "core/text.h"

#include <stdio.h>
#include <string.h>

/* The reading as it grows. `strict` stops at the first unreadable text; otherwise it is noted. */
typedef struct reading_form {
    const rodt_reading_text *text;
    rodt_length_style style;
    rodt_reading reading;
    uint64_t noted;
    bool strict;
    bool failed;      /* some text could not be read, and `error` describes the first */
    rodt_error error;
} reading_form;

/* What became of one text. Returns false if the reading must stop. */
static bool settle(reading_form *form, const char *field, rodt_reason reason, const rodt_error *error)
{
    if (!form->failed) {
        form->failed = true;
        form->error = *error;
        snprintf(form->error.field, sizeof form->error.field, "%s", field);
    }
    form->noted |= REASON_BIT(reason);
    if (error->status == RODT_E_DATE_CELL)
        form->noted |= REASON_BIT(RODT_REASON_SPREADSHEET_DATE);
    return !form->strict;
}

/* A form that leaves a field out, and a cell with blanks only, say the same: nothing. */
static bool is_absent(const char *text)
{
    if (text == NULL)
        return true;
    size_t size = strlen(text);
    text_trim(&text, &size);
    return size == 0;
}

/* A needed text that holds nothing: an error for one wheel end, a missing fact in a file. */
static bool settle_empty(reading_form *form, const char *field)
{
    if (!form->failed) {
        form->failed = true;
        text_error(&form->error, RODT_E_EMPTY, 0, "nothing is written for %s", field);
        snprintf(form->error.field, sizeof form->error.field, "%s", field);
    }
    return !form->strict;
}

/* A word of a form and what it stands for. */
typedef struct form_word {
    const char *word;
    int meaning;
} form_word;

/* An entry that is one word of a few; *meaning stays as it is if there is none. */
static bool read_word(reading_form *form, const char *field, const char *text, const form_word *words, size_t count,
                      const char *expected, int *meaning)
{
    if (is_absent(text))
        return true;
    size_t size = strlen(text);
    text_trim(&text, &size);
    for (size_t i = 0; i < count; i++) {
        if (text_is_word(text, size, words[i].word)) {
            *meaning = words[i].meaning;
            return true;
        }
    }
    rodt_error error;
    text_error(&error, RODT_E_SYNTAX, 1, "%s", expected);
    return settle(form, field, RODT_REASON_OTHER_UNREADABLE, &error);
}

static bool read_unit(reading_form *form)
{
    static const form_word words[] = {{"in", RODT_UNIT_INCH},     {"inch", RODT_UNIT_INCH}, {"inches", RODT_UNIT_INCH},
                                      {"\"", RODT_UNIT_INCH},     {"po", RODT_UNIT_INCH},   {"mm", RODT_UNIT_MM},
                                      {"cm", RODT_UNIT_CM}};
    int unit = (int)form->style.unit;
    bool go_on = read_word(form, "unit", form->text->unit, words, COUNT_OF(words),
                           "the unit of a length is in, mm or cm", &unit);
    form->style.unit = (rodt_unit)unit;
    return go_on;
}

static bool read_conditions(reading_form *form)
{
    static const form_word engine[] = {{"off", RODT_RECORDED_NO}, {"on", RODT_RECORDED_YES}};
    static const form_word spring[] = {{"released", RODT_RECORDED_NO}, {"off", RODT_RECORDED_NO},
                                       {"on", RODT_RECORDED_YES}, {"applied", RODT_RECORDED_YES}};
    static const form_word drum[] = {{"cold", RODT_DRUM_COLD}, {"warm", RODT_DRUM_WARM}, {"hot", RODT_DRUM_HOT}};
    const rodt_reading_text *text = form->text;
    int meaning[3] = {RODT_NOT_RECORDED, RODT_NOT_RECORDED, RODT_DRUM_NOT_RECORDED};
    bool go_on = read_word(form, "engine", text->engine, engine, COUNT_OF(engine),
                           "the engine was on or off", &meaning[0]) &&
                 read_word(form, "spring brake", text->spring_brake, spring, COUNT_OF(spring),
                           "the spring brake was released or on", &meaning[1]) &&
                 read_word(form, "drum", text->drum, drum, COUNT_OF(drum), "a drum is cold, warm or hot",
                           &meaning[2]);
    form->reading.engine_running = (rodt_recorded)meaning[0];
    form->reading.spring_brake_applied = (rodt_recorded)meaning[1];
    form->reading.drum = (rodt_drum)meaning[2];
    return go_on;
}

static bool read_needed_length(reading_form *form, const char *field, const char *text, rodt_reason reason,
                               rodt_length *out)
{
    if (is_absent(text))
        return settle_empty(form, field);
    rodt_error error;
    rodt_unit written;
    rodt_status status = rodt_length_read(text, strlen(text), &form->style, out, &written, &error);
    if (status == RODT_E_EMPTY)
        return settle_empty(form, field);
    if (status != RODT_OK)
        return settle(form, field, reason, &error);
    if (written != RODT_UNIT_INCH)
        form->reading.unit = written;
    return true;
}

static bool read_length(reading_form *form, const char *field, const char *text, rodt_length *out)
{
    if (is_absent(text))
        return true;
    rodt_error error;
    rodt_status status = rodt_length_read(text, strlen(text), &form->style, out, NULL, &error);
    if (status == RODT_OK || (status == RODT_E_EMPTY && !form->strict))
        return true;
    return settle(form, field, RODT_REASON_OTHER_UNREADABLE, &error);
}

static bool read_division(reading_form *form)
{
    rodt_length *division = &form->reading.division;
    if (!read_length(form, "division", form->text->division, division))
        return false;
    if (!rodt_length_given(*division) || division->num > 0)
        return true;
    *division = (rodt_length){0, 0};
    rodt_error error;
    text_error(&error, RODT_E_IMPLAUSIBLE, 1, "a division of the tape is longer than nothing");
    return settle(form, "division", RODT_REASON_OTHER_UNREADABLE, &error);
}

static bool read_pressure(reading_form *form, const char *field, const char *text, rodt_pressure *out)
{
    if (is_absent(text))
        return true;
    rodt_error error;
    rodt_status status = rodt_pressure_read(text, strlen(text), form->style.decimal_comma, out, &error);
    if (status == RODT_OK || (status == RODT_E_EMPTY && !form->strict))
        return true;
    return settle(form, field, RODT_REASON_OTHER_UNREADABLE, &error);
}

static bool read_chamber(reading_form *form)
{
    const char *text = form->text->chamber;
    if (is_absent(text))
        return settle_empty(form, "chamber");
    rodt_error error;
    if (rodt_chamber_parse(text, &form->reading.chamber, &error) != RODT_OK)
        return settle(form, "chamber", RODT_REASON_CHAMBER_UNREADABLE, &error);
    return true;
}

static bool read_class(reading_form *form)
{
    rodt_error error;
    rodt_stroke_class stroke_class;
    if (is_absent(form->text->stroke_class))
        return true;
    const char *text = form->text->stroke_class;
    if (rodt_stroke_class_read(text, strlen(text), &stroke_class, &error) != RODT_OK)
        return settle(form, "stroke class", RODT_REASON_OTHER_UNREADABLE, &error);
    if (!rodt_chamber_add_class(&form->reading.chamber, stroke_class))
        form->noted |= REASON_BIT(RODT_REASON_CONFLICTING_MARKS);
    return true;
}

/* A file does not stop at a date with two meanings: both days are judged (stroke.c). */
static bool read_day(reading_form *form)
{
    const char *text = form->text->day;
    form->reading.day = form->text->default_day;
    if (is_absent(text))
        return true;
    rodt_error error;
    size_t size = strlen(text);
    rodt_status status = rodt_date_read(text, size, form->text->date_order, &form->reading.day, &error);
    if (status == RODT_OK)
        return true;
    if (status == RODT_E_AMBIGUOUS && !form->strict) {
        rodt_date_read(text, size, RODT_DATE_ORDER_DAY_FIRST, &form->reading.day, NULL);
        rodt_date_read(text, size, RODT_DATE_ORDER_MONTH_FIRST, &form->reading.other_day, NULL);
        return true;
    }
    form->reading.day = (rodt_date){0, 0, 0};
    return settle(form, "date", RODT_REASON_DATE_UNREADABLE, &error);
}

static bool read_form(reading_form *form)
{
    const rodt_reading_text *text = form->text;
    rodt_reading *reading = &form->reading;
    return read_unit(form) && read_chamber(form) && read_class(form) &&
           read_length(form, "rated stroke", text->rated_stroke, &reading->chamber.rated_stroke) &&
           read_length(form, "marked limit", text->marked_limit, &reading->chamber.marked_limit) &&
           read_needed_length(form, "released", text->released, RODT_REASON_RELEASED_UNREADABLE,
                              &reading->released) &&
           read_needed_length(form, "applied", text->applied, RODT_REASON_APPLIED_UNREADABLE,
                              &reading->applied) &&
           read_pressure(form, "pressure", text->pressure, &reading->pressure) &&
           read_pressure(form, "pressure after", text->pressure_after, &reading->pressure_after) &&
           read_division(form) && read_conditions(form) && read_day(form);
}

static void open_form(const rodt_reading_text *text, bool strict, reading_form *form)
{
    memset(form, 0, sizeof *form);
    form->text = text;
    form->style = text->style;
    form->strict = strict;
}

rodt_status rodt_judge_text(const rodt_reading_text *text, const rodt_rules *rules, rodt_finding *out,
                            rodt_error *error)
{
    if (text == NULL || rules == NULL || out == NULL)
        return text_error(error, RODT_E_ARGUMENT, 0, "a text, a rule set and a finding are needed");
    reading_form form;
    open_form(text, true, &form);
    if (!read_form(&form)) {
        if (error != NULL)
            *error = form.error;
        return form.error.status;
    }
    rodt_status status = judge_with_reasons(&form.reading, rules, form.noted, out);
    if (status != RODT_OK)
        return text_error(error, status, 0, "%s", rodt_status_text(status));
    return RODT_OK;
}

/* Readings that are too fine to subtract are unreadable too: nobody read that from a tape. */
static rodt_status judge_too_fine(reading_form *form, const rodt_rules *rules, rodt_finding *out)
{
    form->noted |= REASON_BIT(RODT_REASON_RELEASED_UNREADABLE) | REASON_BIT(RODT_REASON_APPLIED_UNREADABLE);
    form->reading.released = form->reading.applied = (rodt_length){0, 0};
    if (!form->failed)
        text_error(&form->error, RODT_E_RANGE, 0, "%s", rodt_status_text(RODT_E_RANGE));
    return judge_with_reasons(&form->reading, rules, form->noted, out);
}

rodt_status rodt_judge_row(const rodt_reading_text *text, const rodt_rules *rules, rodt_finding *out,
                           rodt_error *error)
{
    if (text == NULL || rules == NULL || out == NULL)
        return text_error(error, RODT_E_ARGUMENT, 0, "a text, a rule set and a finding are needed");
    reading_form form;
    open_form(text, false, &form);
    (void)read_form(&form); /* lenient: it notes and goes on */
    rodt_status status = judge_with_reasons(&form.reading, rules, form.noted, out);
    if (status == RODT_E_RANGE)
        status = judge_too_fine(&form, rules, out);
    if (status == RODT_OK && error != NULL)
        *error = form.error;
    return status;
}
