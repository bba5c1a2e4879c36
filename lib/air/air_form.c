/* SPDX-License-Identifier: Apache-2.0 */
/* An air check as texts: each through its own reader. A text that cannot be read refuses the whole form. */
#include "air/aircheck.h"
#include "air/built.h"
#include "core/exact.h"
#include "core/number_parse.h"
#include "rodtravel/aircheck.h"

#include <stdio.h>
#include <string.h>

/* The form so far, and the first text that could not be read. */
typedef struct form_parser {
    const rodt_air_form *form;
    rodt_air_reading reading;
    rodt_error error;
    rodt_error *errors; /* NULL, or room for all of them */
    size_t count;
} form_parser;

static void refuse(form_parser *to, const char *field, rodt_error error)
{
    snprintf(error.field, sizeof error.field, "%s", field);
    if (to->errors != NULL)
        to->errors[to->count] = error;
    if (to->count++ == 0)
        to->error = error;
}

static void refuse_with(form_parser *to, const char *field, rodt_status status, rodt_message_code sentence)
{
    rodt_error error;
    rodti_error(&error, status, 1, sentence);
    refuse(to, field, error);
}

static void refuse_absent(form_parser *to, const char *field)
{
    const rodt_error_argument name = rodti_error_word("field", field);
    rodt_error error;
    rodti_error_with(&error, RODT_E_EMPTY, 0, RODT_MESSAGE_ERROR_NOT_WRITTEN, &name, 1);
    refuse(to, field, error);
}

/* A text of blanks says the same as none. */
static bool is_written(const char *text)
{
    if (text == NULL)
        return false;
    size_t size = strlen(text);
    rodti_text_trim(&text, &size);
    return size > 0;
}

/* "Not done" in the place of what is measured says the same as none, too. */
static bool is_measured(const char *text)
{
    if (!is_written(text))
        return false;
    size_t size = strlen(text);
    rodti_text_trim(&text, &size);
    return !rodti_text_is_word(text, size, "not done");
}

static void read_pressure(form_parser *to, const char *field, const char *text, rodt_pressure *out)
{
    rodt_error error;
    RODT_ENUM32(rodt_pressure_unit) written;
    if (!is_measured(text))
        return;
    rodt_status status = rodt_pressure_parse_n(text, strlen(text), &to->form->style, out, &written, &error);
    if (status == RODT_OK && written != RODT_PRESSURE_UNIT_PSI)
        to->reading.pressure_unit = written;
    else if (status != RODT_OK && status != RODT_E_EMPTY)
        refuse(to, field, error);
}

static void read_seconds(form_parser *to, const char *text)
{
    rodt_error error;
    if (!is_measured(text))
        return;
    rodt_status status =
        rodt_seconds_parse_n(text, strlen(text), &to->form->style, &to->reading.seconds, &error);
    if (status != RODT_OK && status != RODT_E_EMPTY)
        refuse(to, "seconds", error);
}

static void read_volume(form_parser *to, const char *field, const char *text, rodt_ratio *out)
{
    number_quantity written;
    number_problem problem;
    rodt_error error;
    const bool comma = to->form->style.decimal_comma;
    if (!is_measured(text))
        return;
    if (!rodti_number_parse_quantity(text, strlen(text), comma, &written, &problem)) {
        if (rodti_number_explain_error(text, strlen(text), comma, &problem, &error) != RODT_E_EMPTY)
            refuse(to, field, error);
    } else if (written.unit_size > 0) {
        refuse_with(to, field, RODT_E_UNIT, RODT_MESSAGE_ERROR_VOLUME_UNIT);
    } else if (written.read.is_too_large ||
               rodti_exact_compare(written.read.value, (rodt_ratio){RODT_VOLUME_MAX_CUBIC_INCHES, 1}) > 0) {
        refuse_with(to, field, RODT_E_IMPLAUSIBLE, RODT_MESSAGE_ERROR_VOLUME);
    } else {
        *out = written.read.value;
    }
}

static void read_count(form_parser *to, const char *field, const char *text, int16_t *out)
{
    text_cursor cursor;
    int16_t count = 0;
    unsigned digits = 0;
    if (!is_written(text))
        return;
    rodti_number_parse_start(&cursor, text, strlen(text));
    for (; text_is_digit(cursor.code) && digits < 2; digits++, rodti_text_next(&cursor))
        count = (int16_t)(count * 10 + (int16_t)(cursor.code - '0'));
    if (digits == 0 || cursor.code != TEXT_END)
        refuse_with(to, field, RODT_E_SYNTAX, RODT_MESSAGE_ERROR_COUNT);
    else
        *out = count;
}

rodt_status rodti_built_parse_n(const char *text, size_t size, rodt_date_order order, rodt_date *out,
                                rodt_error *error)
{
    text_cursor cursor;
    int16_t year = 0;
    unsigned digits = 0;
    rodti_number_parse_start(&cursor, text, size);
    for (; text_is_digit(cursor.code) && digits < 4; digits++, rodti_text_next(&cursor))
        year = (int16_t)(year * 10 + (int16_t)(cursor.code - '0'));
    if (cursor.code != TEXT_END || year < 1900 || year > 2199)
        return rodt_date_parse_n(text, size, order, out, error);
    *out = (rodt_date){year, 0, 0};
    return RODT_OK;
}

static void read_built(form_parser *to, const char *text)
{
    rodt_error error;
    if (is_written(text) &&
        rodti_built_parse_n(text, strlen(text), to->form->date_order, &to->reading.built, &error) != RODT_OK)
        refuse(to, "built", error);
}

static void read_words(form_parser *to)
{
    const rodt_air_form *form = to->form;
    rodt_air_reading *reading = &to->reading;
    if (!is_written(form->check))
        refuse_absent(to, "check");
    else if (rodt_air_check_find(form->check, &reading->check) != RODT_OK ||
             reading->check == RODT_AIR_CHECK_NONE)
        refuse_with(to, "check", RODT_E_SYNTAX, RODT_MESSAGE_ERROR_CHECK);
    if (is_written(form->vehicle) && rodt_vehicle_class_find(form->vehicle, &reading->vehicle) != RODT_OK)
        refuse_with(to, "vehicle", RODT_E_SYNTAX, RODT_MESSAGE_ERROR_VEHICLE);
    if (is_written(form->span) && rodt_air_span_find(form->span, &reading->span) != RODT_OK)
        refuse_with(to, "span", RODT_E_SYNTAX, RODT_MESSAGE_ERROR_SPAN);
}

/* The check waits for something to come, and the text says that it never came. */
static bool can_be_never(const form_parser *to, const char *text)
{
    const rodt_air_reading never = {.check = to->reading.check, .answer = RODT_RECORDED_NO};
    return text != NULL && rodti_air_never_came(&never) && rodt_air_says_never(text, strlen(text));
}

static void read_answer(form_parser *to, const char *text)
{
    const char *trimmed = text;
    if (!is_measured(text))
        return;
    size_t size = strlen(text);
    rodti_text_trim(&trimmed, &size);
    if (rodti_text_is_word(trimmed, size, "yes") || rodti_text_is_word(trimmed, size, "y") ||
        rodti_text_is_word(trimmed, size, "oui"))
        to->reading.answer = RODT_RECORDED_YES;
    else if (rodti_text_is_word(trimmed, size, "no") || rodti_text_is_word(trimmed, size, "n") ||
             rodti_text_is_word(trimmed, size, "non") || can_be_never(to, text))
        to->reading.answer = RODT_RECORDED_NO;
    else
        refuse_with(to, "answer", RODT_E_SYNTAX, RODT_MESSAGE_ERROR_ANSWER);
}

static void refuse_reserve(form_parser *to)
{
    rodt_error error;
    rodti_text_error(&error, RODT_E_ARGUMENT, 1, "the reserve must be NULL");
    refuse(to, "reserved", error);
}

/* The figure of the check itself; in its place it may be said that it never came. */
static void read_figures(form_parser *to)
{
    if (to->reading.check != RODT_AIR_CHECK_BUILD_UP && can_be_never(to, to->form->pressure))
        to->reading.answer = RODT_RECORDED_NO;
    else
        read_pressure(to, "pressure", to->form->pressure, &to->reading.pressure);
    if (to->reading.check == RODT_AIR_CHECK_BUILD_UP && can_be_never(to, to->form->seconds))
        to->reading.answer = RODT_RECORDED_NO;
    else
        read_seconds(to, to->form->seconds);
}

/* What the form says, and what is wrong with it. */
static void read_form(form_parser *to)
{
    const rodt_air_form *form = to->form;
    rodt_error error;
    read_words(to);
    read_count(to, "towed_units", form->towed_units, &to->reading.towed_units);
    read_count(to, "applications", form->applications, &to->reading.applications);
    read_built(to, form->built);
    read_figures(to);
    read_pressure(to, "before", form->before, &to->reading.before);
    read_pressure(to, "after", form->after, &to->reading.after);
    read_pressure(to, "cut_out", form->cut_out, &to->reading.cut_out);
    read_pressure(to, "cut_in", form->cut_in, &to->reading.cut_in);
    read_volume(to, "actual_volume", form->actual_volume, &to->reading.actual_volume);
    read_volume(to, "required_volume", form->required_volume, &to->reading.required_volume);
    read_answer(to, form->answer);
    for (size_t i = 0; i < COUNT_OF(form->reserved); i++) {
        if (form->reserved[i] != NULL) {
            refuse_reserve(to);
            break;
        }
    }
    if (to->count == 0 && rodt_air_reading_check(&to->reading, &error) != RODT_OK)
        refuse(to, error.field, error);
}

rodt_status rodt_air_form_parse(const rodt_air_form *form, rodt_air_reading *out, rodt_error *error)
{
    if (form == NULL || out == NULL)
        return rodti_text_error(error, RODT_E_ARGUMENT, 0, "a form and a reading are needed");
    form_parser to = {.form = form};
    read_form(&to);
    if (to.count > 0) {
        if (error != NULL)
            *error = to.error;
        return (rodt_status)to.error.status;
    }
    *out = to.reading;
    return RODT_OK;
}

rodt_status rodt_air_form_errors(const rodt_air_form *form, rodt_error *errors, size_t size, size_t *count)
{
    if (form == NULL || (errors == NULL && size > 0))
        return RODT_E_ARGUMENT;
    form_parser to = {.form = form};
    read_form(&to);
    if (count != NULL)
        *count = to.count;
    if (to.count > size)
        return RODT_E_SPACE;
    form_parser again = {.form = form, .errors = errors};
    read_form(&again);
    return RODT_OK;
}

rodt_status rodt_air_form_judge(const rodt_air_form *form, const rodt_rules *rules, rodt_air_finding *out,
                                rodt_error *error)
{
    rodt_air_reading reading;
    rodt_status status = rodt_air_form_parse(form, &reading, error);
    return status == RODT_OK ? rodt_air_reading_judge(&reading, rules, out, error) : status;
}
