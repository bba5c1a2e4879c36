/* SPDX-License-Identifier: Apache-2.0 */
/* A wheel end as texts: every field through its own reader. What cannot be read is named and never guessed. */
#include "chamber/chamber_check.h"
#include "core/error.h"
#include "core/fault.h"
#include "core/text.h"
#include "judge/fields.h"
#include "judge/judge.h"
#include "judge/reasons.h"
#include "quantity/fault.h"
#include "quantity/length_plain.h"
#include "quantity/lost_blank.h"
#include "quantity/pressure_plain.h"

#include <stdio.h>
#include <string.h>

/* The reading so far, and the first text that could not be read. */
typedef struct parser {
    const rodt_form *text;
    rodt_style style;
    bool explains;      /* errors are wanted */
    bool unit_unknown;  /* the unit cannot be read: nothing is known of a number without one */
    bool is_plain;      /* the length that was read last is plain: its blank is not lost */
    bool is_unreadable; /* *error is of a text that cannot be read, and none of an absent one */
    rodt_reading *reading;
    rodt_error *error;  /* NULL, or room for the first of an unreadable text, else of an absent one */
    rodt_error *errors; /* NULL, or room for all of them */
    size_t count;       /* unreadable and absent texts so far */
} parser;

/* --- Texts by field ---------------------------------------------------------------------------------- */

static size_t text_offset(rodt_field field)
{
    static const size_t offsets[RODT_READING_FIELDS] = {
        [RODT_FIELD_CHAMBER] = offsetof(rodt_form, chamber),
        [RODT_FIELD_RELEASED] = offsetof(rodt_form, released),
        [RODT_FIELD_APPLIED] = offsetof(rodt_form, applied),
        [RODT_FIELD_STROKE_CLASS] = offsetof(rodt_form, stroke_class),
        [RODT_FIELD_RATED_STROKE] = offsetof(rodt_form, rated_stroke),
        [RODT_FIELD_MARKED_LIMIT] = offsetof(rodt_form, marked_limit),
        [RODT_FIELD_PSI] = offsetof(rodt_form, psi),
        [RODT_FIELD_PSI_AFTER] = offsetof(rodt_form, psi_after),
        [RODT_FIELD_DIVISION] = offsetof(rodt_form, division),
        [RODT_FIELD_DATE] = offsetof(rodt_form, date),
        [RODT_FIELD_UNIT] = offsetof(rodt_form, unit),
        [RODT_FIELD_ENGINE] = offsetof(rodt_form, engine),
        [RODT_FIELD_SPRING_BRAKE] = offsetof(rodt_form, spring_brake),
        [RODT_FIELD_DRUM] = offsetof(rodt_form, drum)};
    return offsets[field];
}

static const char *text_of(const rodt_form *text, rodt_field field)
{
    const char *value;
    memcpy(&value, (const char *)text + text_offset(field), sizeof value);
    return value;
}

const char *rodt_form_get(const rodt_form *text, rodt_field field)
{
    return text == NULL || (unsigned)field >= RODT_READING_FIELDS ? NULL : text_of(text, field);
}

void rodt_form_set(rodt_form *text, rodt_field field, const char *value)
{
    if (text != NULL && (unsigned)field < RODT_READING_FIELDS)
        memcpy((char *)text + text_offset(field), &value, sizeof value);
}

/* --- Errors ------------------------------------------------------------------------------------------ */

static void set_field(rodt_error *error, rodt_field field)
{
    snprintf(error->field, sizeof error->field, "%s", rodt_field_name(field));
}

static rodt_reason reason_of(rodt_field field)
{
    switch ((int)field) {
    case RODT_FIELD_CHAMBER: return RODT_REASON_CHAMBER_UNREADABLE;
    case RODT_FIELD_RELEASED: return RODT_REASON_RELEASED_UNREADABLE;
    case RODT_FIELD_APPLIED: return RODT_REASON_APPLIED_UNREADABLE;
    case RODT_FIELD_DATE: return RODT_REASON_DATE_UNREADABLE;
    default: return RODT_REASON_OTHER_UNREADABLE;
    }
}

/* The first unreadable text is named, or without one the first absent text. */
static void keep_error(parser *to, rodt_error error, rodt_field field, bool is_unreadable)
{
    set_field(&error, field);
    if (to->errors != NULL)
        to->errors[to->count] = error;
    if (to->error != NULL && (to->count == 0 || (is_unreadable && !to->is_unreadable)))
        *to->error = error;
    to->is_unreadable = to->is_unreadable || is_unreadable;
    to->count++;
}

static void add_unreadable(parser *to, rodt_field field, const rodt_error *error)
{
    to->reading->reasons |= REASON_BIT(reason_of(field));
    if (error->status == RODT_E_DATE_CELL)
        to->reading->reasons |= REASON_BIT(RODT_REASON_SPREADSHEET_DATE);
    if (to->explains)
        keep_error(to, *error, field, true);
}

static void refuse(parser *to, rodt_field field, rodt_status status, rodt_message_code sentence)
{
    rodt_error error;
    rodti_error(&error, status, 1, sentence);
    add_unreadable(to, field, &error);
}

static void add_missing(parser *to, rodt_field field)
{
    if (field >= RODT_FIELD_NEEDED || !to->explains)
        return;
    const rodt_error_argument name = rodti_error_word("field", rodt_field_name(field));
    rodt_error missing;
    rodti_error_with(&missing, RODT_E_EMPTY, 0, RODT_MESSAGE_ERROR_NOT_WRITTEN, &name, 1);
    keep_error(to, missing, field, false);
}

static bool says_something(const char *text, size_t size)
{
    rodti_text_trim(&text, &size);
    return size > 0;
}

/* The text of a field and its size. False: the form leaves it out, or it holds blanks only, which says the same. */
static bool find_text(parser *from, rodt_field field, const char **text, size_t *size)
{
    *text = text_of(from->text, field);
    if (*text != NULL) {
        *size = strlen(*text);
        if (says_something(*text, *size))
            return true;
    }
    add_missing(from, field);
    return false;
}

/* --- Readers ----------------------------------------------------------------------------------------- */

static void read_unit(parser *from)
{
    const char *text;
    size_t size;
    if (!find_text(from, RODT_FIELD_UNIT, &text, &size) ||
        rodt_unit_parse_n(text, size, &from->style.unit, NULL) == RODT_OK)
        return;
    from->unit_unknown = true;
    refuse(from, RODT_FIELD_UNIT, RODT_E_SYNTAX, RODT_MESSAGE_ERROR_UNIT_OF_FORM);
}

/* Without a known unit only a text that names its own can be read: the other ones would mean two lengths. */
static rodt_status read_without_unit(const parser *from, const char *text, size_t size, rodt_length *out,
                                     RODT_ENUM32(rodt_unit) *written, rodt_error *error)
{
    const rodt_style in = {.unit = RODT_UNIT_IN, .decimal_comma = from->style.decimal_comma};
    const rodt_style mm = {.unit = RODT_UNIT_MM, .decimal_comma = from->style.decimal_comma};
    rodt_length length;
    rodt_length other;
    rodt_status status = rodt_length_parse_n(text, size, &in, &length, written, error);
    if (status != RODT_OK)
        return status;
    if (rodt_length_parse_n(text, size, &mm, &other, NULL, NULL) != RODT_OK ||
        rodt_length_compare(length, other) != 0)
        return rodti_error(error, RODT_E_UNIT, 0, RODT_MESSAGE_ERROR_UNIT_UNKNOWN);
    *out = length;
    return RODT_OK;
}

/* False: there is none, or it cannot be read. */
static bool read_length(parser *from, rodt_field field, rodt_length *out, RODT_ENUM32(rodt_unit) *written)
{
    const char *text = text_of(from->text, field);
    size_t size;
    rodt_error error;
    from->is_plain =
        text != NULL && !from->unit_unknown && rodti_length_plain(text, NULL, &from->style, out, written);
    if (from->is_plain)
        return true;
    if (!find_text(from, field, &text, &size))
        return false;
    rodt_status status = from->unit_unknown ? read_without_unit(from, text, size, out, written, &error)
                                            : rodt_length_parse_n(text, size, &from->style, out, written, &error);
    if (status == RODT_E_EMPTY)
        add_missing(from, field);
    else if (status != RODT_OK)
        add_unreadable(from, field, &error);
    return status == RODT_OK;
}

static size_t find_lost_blanks(const parser *from, rodt_field field, rodt_unit written,
                               rodt_length other[LOST_BLANK_MAX])
{
    const char *text = text_of(from->text, field);
    return from->is_plain ? 0 : rodti_lost_blank_values(text, strlen(text), written, other);
}

static void read_measurement(parser *from, rodt_field field, rodt_length *out, rodt_length other[LOST_BLANK_MAX])
{
    RODT_ENUM32(rodt_unit) written;
    if (!read_length(from, field, out, &written))
        return;
    if (written != RODT_UNIT_IN)
        from->reading->unit = written;
    (void)find_lost_blanks(from, field, written, other);
}

/* A mark has no second value in a reading, so a fraction whose blank may be lost is no mark at all. */
static void read_mark(parser *from, rodt_field field, rodt_length *out)
{
    RODT_ENUM32(rodt_unit) written;
    if (text_of(from->text, field) == NULL || !read_length(from, field, out, &written))
        return;
    rodt_length other[LOST_BLANK_MAX];
    bool lost_blank = find_lost_blanks(from, field, written, other) > 0;
    if (!lost_blank && rodti_is_mark(*out))
        return;
    *out = (rodt_length){0, 0};
    if (lost_blank)
        refuse(from, field, RODT_E_AMBIGUOUS, RODT_MESSAGE_ERROR_LOST_BLANK);
    else
        refuse(from, field, RODT_E_IMPLAUSIBLE, RODT_MESSAGE_ERROR_MARK);
}

static void read_division(parser *from)
{
    rodt_length *division = &from->reading->division;
    RODT_ENUM32(rodt_unit) written;
    if (from->text->division == NULL || !read_length(from, RODT_FIELD_DIVISION, division, &written) ||
        rodti_is_division(*division))
        return;
    *division = (rodt_length){0, 0};
    refuse(from, RODT_FIELD_DIVISION, RODT_E_IMPLAUSIBLE, RODT_MESSAGE_ERROR_DIVISION);
}

static void read_pressure(parser *from, rodt_field field, rodt_pressure *out)
{
    const char *text = text_of(from->text, field);
    size_t size;
    rodt_error error;
    RODT_ENUM32(rodt_pressure_unit) written;
    if (text == NULL || rodti_pressure_plain(text, NULL, &from->style, out, &written) ||
        !find_text(from, field, &text, &size))
        return;
    rodt_status status = rodt_pressure_parse_n(text, size, &from->style, out, &written, &error);
    if (status == RODT_OK && written != RODT_PRESSURE_UNIT_PSI)
        from->reading->pressure_unit = written;
    else if (status != RODT_OK && status != RODT_E_EMPTY)
        add_unreadable(from, field, &error);
}

static void read_chamber(parser *from)
{
    const char *text;
    size_t size;
    rodt_error error;
    if (find_text(from, RODT_FIELD_CHAMBER, &text, &size) &&
        rodt_chamber_parse_n(text, size, &from->reading->chamber, &error) != RODT_OK)
        add_unreadable(from, RODT_FIELD_CHAMBER, &error);
}

static void read_class(parser *from)
{
    const char *text;
    size_t size;
    rodt_error error;
    RODT_ENUM32(rodt_stroke_class) stroke_class;
    if (!find_text(from, RODT_FIELD_STROKE_CLASS, &text, &size))
        return;
    if (rodt_stroke_class_parse_n(text, size, &stroke_class, &error) != RODT_OK)
        add_unreadable(from, RODT_FIELD_STROKE_CLASS, &error);
    else if (!rodt_chamber_add_class(&from->reading->chamber, stroke_class))
        from->reading->reasons |= REASON_BIT(RODT_REASON_CONFLICTING_MARKS);
}

static int read_word(parser *from, rodt_field field, rodt_message_code expected)
{
    const char *text;
    size_t size;
    int meaning = 0;
    if (find_text(from, field, &text, &size) &&
        !rodti_field_word_find(rodti_words_of_field(field), text, size, &meaning))
        refuse(from, field, RODT_E_SYNTAX, expected);
    return meaning;
}

/* A date of two meanings is two days, and both are judged (stroke.c); one of three is none. */
static bool find_both_days(const char *text, size_t size, rodt_reading *reading)
{
    rodt_date days[RODT_DATE_ORDER_END];
    size_t count = 0;
    for (int order = RODT_DATE_ORDER_DAY_FIRST; order < RODT_DATE_ORDER_END; order++) {
        /* the third order can give the first day again, but the second one only where all three are the same */
        if (rodt_date_parse_n(text, size, (rodt_date_order)order, &days[count], NULL) == RODT_OK &&
            (count == 0 || rodt_date_compare(days[0], days[count]) != 0))
            count++;
    }
    if (count != 2)
        return false;
    reading->day = days[0];
    reading->other_day = days[1];
    return true;
}

static void read_day(parser *from)
{
    const char *text;
    size_t size;
    rodt_error error;
    rodt_reading *reading = from->reading;
    reading->day = from->text->default_day;
    if (!find_text(from, RODT_FIELD_DATE, &text, &size))
        return;
    rodt_status status = rodt_date_parse_n(text, size, from->text->date_order, &reading->day, &error);
    if (status == RODT_OK || (status == RODT_E_AMBIGUOUS && find_both_days(text, size, reading)))
        return;
    reading->day = (rodt_date){0, 0, 0};
    add_unreadable(from, RODT_FIELD_DATE, &error);
}

static void read_fields(parser *from)
{
    rodt_reading *reading = from->reading;
    read_unit(from);
    read_chamber(from);
    read_class(from);
    read_mark(from, RODT_FIELD_RATED_STROKE, &reading->chamber.rated_stroke);
    read_mark(from, RODT_FIELD_MARKED_LIMIT, &reading->chamber.marked_limit);
    read_measurement(from, RODT_FIELD_RELEASED, &reading->released, reading->other_released);
    read_measurement(from, RODT_FIELD_APPLIED, &reading->applied, reading->other_applied);
    read_pressure(from, RODT_FIELD_PSI, &reading->pressure);
    read_pressure(from, RODT_FIELD_PSI_AFTER, &reading->pressure_after);
    read_division(from);
    reading->engine_running =
        (rodt_recorded)read_word(from, RODT_FIELD_ENGINE, RODT_MESSAGE_ERROR_ENGINE);
    reading->spring_brake_applied =
        (rodt_recorded)read_word(from, RODT_FIELD_SPRING_BRAKE, RODT_MESSAGE_ERROR_SPRING_BRAKE);
    reading->drum = (rodt_drum)read_word(from, RODT_FIELD_DRUM, RODT_MESSAGE_ERROR_DRUM);
    read_day(from);
}

/* What a form says beside its texts. */
static rodt_status check_form(const rodt_form *text, rodt_error *error)
{
    if (text->style.unit >= RODT_UNIT_END)
        return rodti_field_error(error, rodt_field_name(RODT_FIELD_UNIT),
                                 rodti_sentence(RODT_MESSAGE_ERROR_UNIT_OF_FORM));
    if (text->style.pressure_unit >= RODT_PRESSURE_UNIT_END)
        return rodti_field_error(error, rodt_field_name(RODT_FIELD_PSI), "the unit of a pressure is psi or kPa");
    if (text->date_order >= RODT_DATE_ORDER_END)
        return rodti_field_error(error, rodt_field_name(RODT_FIELD_DATE), "there is no such order of a date");
    if (rodti_date_fault(text->default_day) != NULL)
        return rodti_field_error(error, rodt_field_name(RODT_FIELD_DATE), rodti_date_fault(text->default_day));
    if (!rodti_is_zero(text->style.reserved, COUNT_OF(text->style.reserved)))
        return rodti_field_error(error, "reserved", "the reserve of a style is zero");
    for (size_t i = 0; i < COUNT_OF(text->reserved); i++) {
        if (text->reserved[i] != NULL)
            return rodti_field_error(error, "reserved", "the reserve of a form is NULL");
    }
    return RODT_OK;
}

/* The texts of a form that was checked. True: *error is the first fault; otherwise it is as it was. */
static bool read_form(const rodt_form *text, rodt_reading *out, rodt_error *error)
{
    parser from = {
        .text = text, .style = text->style, .explains = error != NULL, .reading = out, .error = error};
    memset(out, 0, sizeof *out);
    read_fields(&from);
    return from.count > 0;
}

rodt_status rodt_form_parse(const rodt_form *text, rodt_reading *out, rodt_error *error)
{
    if (text == NULL || out == NULL)
        return rodti_field_error(error, "", "a form and room for its result are needed");
    rodt_status status = check_form(text, error);
    if (status != RODT_OK)
        return status;
    if (!read_form(text, out, error) && error != NULL)
        *error = (rodt_error){.status = RODT_OK};
    return RODT_OK;
}

/* --- Reading and judging ----------------------------------------------------------------------------- */

/* One wheel end is asked which day it was; a file is judged by both. */
static rodt_status check_day(const rodt_form *text, const rodt_reading *reading, rodt_error *error)
{
    rodt_date day;
    if (!rodt_date_given(reading->other_day))
        return RODT_OK;
    rodt_status status = rodt_date_parse_n(text->date, strlen(text->date), text->date_order, &day, error);
    set_field(error, RODT_FIELD_DATE);
    return status;
}

/* How many errors there are; they are kept where `errors` has room for all. */
static size_t find_errors(const rodt_form *text, rodt_error *errors)
{
    rodt_reading reading = {.reasons = 0};
    rodt_error day;
    parser from = {.text = text, .style = text->style, .explains = true, .reading = &reading, .errors = errors};
    read_fields(&from);
    if (check_day(text, &reading, &day) != RODT_OK)
        keep_error(&from, day, RODT_FIELD_DATE, true);
    return from.count;
}

_Static_assert(RODT_FORM_ERRORS_MAX >= RODT_READING_FIELDS, "one error for each text");

rodt_status rodt_form_errors(const rodt_form *text, rodt_error *errors, size_t size, size_t *count)
{
    if (text == NULL || (errors == NULL && size > 0) || check_form(text, NULL) != RODT_OK)
        return RODT_E_ARGUMENT;
    size_t found = find_errors(text, NULL);
    if (count != NULL)
        *count = found;
    if (found > size)
        return RODT_E_SPACE;
    (void)find_errors(text, errors);
    return RODT_OK;
}

static rodt_status check_arguments(const rodt_form *text, const rodt_rules *rules, const rodt_finding *out,
                                   rodt_error *error)
{
    if (out == NULL)
        return rodti_field_error(error, "", "room for a finding is needed");
    if (rules == NULL)
        return rodti_rules_error(error);
    if (text == NULL)
        return rodti_field_error(error, "", "a form and room for its result are needed");
    return check_form(text, error);
}

rodt_status rodt_form_judge(const rodt_form *text, const rodt_rules *rules, rodt_finding *out,
                            rodt_error *error)
{
    rodt_reading reading;
    rodt_error found;
    rodt_status status = check_arguments(text, rules, out, error);
    if (status != RODT_OK)
        return status;
    if (read_form(text, &reading, &found) || check_day(text, &reading, &found) != RODT_OK) {
        if (error != NULL)
            *error = found;
        return found.status;
    }
    status = rodti_reading_judge(&reading, rules, out);
    return status == RODT_OK ? status : rodti_error_status(error, status);
}

rodt_status rodt_form_judge_row(const rodt_form *text, const rodt_rules *rules, rodt_finding *out,
                           rodt_error *error)
{
    rodt_reading reading;
    rodt_error found;
    rodt_status status = check_arguments(text, rules, out, error);
    if (status != RODT_OK)
        return status;
    bool is_faulty = read_form(text, &reading, error != NULL ? &found : NULL);
    status = rodti_reading_judge(&reading, rules, out);
    if (status != RODT_OK)
        return rodti_error_status(error, status);
    if (error != NULL)
        *error = is_faulty ? found : (rodt_error){.status = RODT_OK};
    return RODT_OK;
}
