/* SPDX-License-Identifier: Apache-2.0 */
/* A text that cannot be read never makes a verdict more favourable than the same text read rightly. Random wheel ends
 * near every edge, one text of each damaged at random: the verdict may become undetermined or stricter, never better,
 * unless the damaged text is another value that its own reader takes. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

#include "support.h"

#define ROWS 60000
#define TEXT_ROOM 40

typedef struct choices {
    const char *text[16];
} choices;

/* Texts of each field; NULL ends the list, "" leaves the field out. Limits are met exactly by many pairs of readings. */
static const choices fields[RODT_READING_FIELDS] = {
    [RODT_FIELD_CHAMBER] = {{"30", "36", "20", "24L", "T30", "clamp 16", "bolt C", "roto 30", "30/30", "dd3", "20LS"}},
    [RODT_FIELD_RELEASED] = {{"1", "1 1/8", "2 1/8", "1.25", "1 in", "25.4 mm", "2,125", "11/8", "1½"}},
    [RODT_FIELD_APPLIED] = {{"2 3/4", "3", "3 1/8", "3 3/8", "3 1/2", "4 1/8", "31/8", "76.2 mm", "1", "5", "88.9 mm"}},
    [RODT_FIELD_STROKE_CLASS] = {{"", "standard", "long"}},
    [RODT_FIELD_RATED_STROKE] = {{"", "", "2 1/2", "3", "76 mm", "2 1/4"}},
    [RODT_FIELD_MARKED_LIMIT] = {{"", "", "", "2", "1 3/4 in"}},
    [RODT_FIELD_PSI] = {{"95", "90", "100", "60", "120", "0", "620 kPa", "690 kPa", ""}},
    [RODT_FIELD_PSI_AFTER] = {{"", "", "92", "70", "0"}},
    [RODT_FIELD_DIVISION] = {{"", "", "1/16", "1 mm"}},
    [RODT_FIELD_DATE] = {{"", "2024-05-06", "2013-09-01", "9/1/2013", "10/11/2021", "10/14/2021", "2010-09-01",
                          "14-OCT-21", "21/10/14", "2021-10-13T08:00", "12/11/2010"}},
    [RODT_FIELD_UNIT] = {{"", "", "in", "mm", "cm", "inches"}},
    [RODT_FIELD_ENGINE] = {{"", "off", "on"}},
    [RODT_FIELD_SPRING_BRAKE] = {{"", "released", "applied", "on"}},
    [RODT_FIELD_DRUM] = {{"", "", "cold", "hot"}}};

typedef struct row {
    char text[RODT_READING_FIELDS][TEXT_ROOM];
    rodt_form form;
} row;

static void fill(row *of, uint64_t *state)
{
    memset(of, 0, sizeof *of);
    for (int field = 0; field < RODT_READING_FIELDS; field++) {
        size_t count = 0;
        while (count < 16 && fields[field].text[count] != NULL)
            count++;
        snprintf(of->text[field], TEXT_ROOM, "%s", fields[field].text[chance(state) % count]);
        /* Conditions and marks are there now and then only, so that most rows have a verdict. */
        if (field > RODT_FIELD_PSI && field != RODT_FIELD_DATE && chance(state) % 3 != 0)
            of->text[field][0] = '\0';
    }
    of->form.style.decimal_comma = chance(state) % 4 == 0;
    of->form.date_order = (rodt_date_order)(chance(state) % 4);
    of->form.default_day = (rodt_date){2026, 1, 1};
}

static rodt_form *form_of(row *of)
{
    for (int field = 0; field < RODT_READING_FIELDS; field++)
        rodt_form_set(&of->form, (rodt_field)field, of->text[field][0] != '\0' ? of->text[field] : NULL);
    return &of->form;
}

/* One byte more, less or another, two that change places, a tail, or something else altogether. */
static void damage(char text[TEXT_ROOM], uint64_t *state)
{
    static const char bytes[] = "0123456789/. -:,xoOlI\"'T?";
    static const char *const others[] = {"?", "n.m.", "8:00", " 8:00 AM", "x", "#REF!", "1899", "45293", "on/off", "2-Jan"};
    size_t size = strlen(text);
    size_t at = size > 0 ? (size_t)(chance(state) % size) : 0;
    char byte = bytes[chance(state) % (sizeof bytes - 1)];
    switch (chance(state) % 6) {
    case 0: text[at] = byte; break;
    case 1:
        memmove(text + at + 1, text + at, TEXT_ROOM - 2 - at);
        text[at] = byte;
        break;
    case 2: memmove(text + at, text + at + 1, TEXT_ROOM - 1 - at); break;
    case 3:
        if (at + 1 < size) {
            char kept = text[at];
            text[at] = text[at + 1];
            text[at + 1] = kept;
        }
        break;
    case 4: snprintf(text + size, TEXT_ROOM - size, "%s", others[chance(state) % 10]); break;
    default: snprintf(text, TEXT_ROOM, "%s", others[chance(state) % 10]); break;
    }
    text[TEXT_ROOM - 1] = '\0';
}

static bool is_better(rodt_verdict now, rodt_verdict before)
{
    return now == RODT_VERDICT_IN_ADJUSTMENT && before != RODT_VERDICT_IN_ADJUSTMENT;
}

static bool is_length(rodt_field field)
{
    return field == RODT_FIELD_RELEASED || field == RODT_FIELD_APPLIED || field == RODT_FIELD_RATED_STROKE ||
           field == RODT_FIELD_MARKED_LIMIT || field == RODT_FIELD_DIVISION;
}

/* True if some way of reading the text gives a value or says that it holds nothing. */
static bool is_date(const rodt_form *form, const char *text)
{
    for (int order = RODT_DATE_ORDER_UNKNOWN; order < RODT_DATE_ORDER_END; order++) {
        rodt_date date;
        bool asked = form->date_order == RODT_DATE_ORDER_UNKNOWN || (int)form->date_order == order;
        if (asked && rodt_date_parse_n(text, strlen(text), (rodt_date_order)order, &date, NULL) == RODT_OK)
            return true;
    }
    return false;
}

/* Asks the reader of the field itself, so that a tail or a text that is dropped without a word is found. */
static bool is_value(const rodt_form *form, rodt_field field, const char *text)
{
    size_t size = strlen(text);
    rodt_length length;
    rodt_pressure pressure;
    rodt_chamber chamber;
    RODT_ENUM32(rodt_stroke_class) stroke_class;
    rodt_style style = form->style;
    if (text[strspn(text, " ")] == '\0')
        return true;
    if (form->unit != NULL && rodt_unit_find(form->unit, &style.unit) != RODT_OK)
        style.unit = form->style.unit;
    rodt_status status = RODT_E_SYNTAX;
    if (is_length(field))
        status = rodt_length_parse_n(text, size, &style, &length, NULL, NULL);
    else if (field == RODT_FIELD_PSI || field == RODT_FIELD_PSI_AFTER)
        status = rodt_pressure_parse_n(text, size, &style, &pressure, NULL, NULL);
    else if (field == RODT_FIELD_CHAMBER)
        status = rodt_chamber_parse(text, &chamber, NULL);
    else if (field == RODT_FIELD_STROKE_CLASS)
        status = rodt_stroke_class_parse_n(text, size, &stroke_class, NULL);
    else
        return field == RODT_FIELD_DATE ? is_date(form, text) : rodt_field_accepts(field, text, size);
    return status == RODT_OK || status == RODT_E_EMPTY;
}

static void check_row(const rodt_rules *rules, uint64_t *state, unsigned counts[3])
{
    row whole;
    rodt_finding before;
    rodt_finding after;
    rodt_error error;
    fill(&whole, state);
    assert_int_equal(rodt_form_judge_row(form_of(&whole), rules, &before, &error), RODT_OK);
    if (error.status != RODT_OK && error.status != RODT_E_EMPTY)
        return; /* unreadable from the start: nothing says what it should have been */
    row damaged = whole;
    rodt_field field = (rodt_field)(chance(state) % RODT_READING_FIELDS);
    damage(damaged.text[field], state);
    rodt_form *form = form_of(&damaged);
    const char *text = damaged.text[field];
    assert_int_equal(rodt_form_judge_row(form, rules, &after, &error), RODT_OK);
    bool is_read = error.status == RODT_OK || error.status == RODT_E_EMPTY;
    counts[before.verdict == RODT_VERDICT_IN_ADJUSTMENT ? 0 : 1]++;
    counts[2] += !is_read;
    if (is_read && !is_value(form, field, text))
        fail_msg("%s \"%s\": no reader takes it, and nothing was said", rodt_field_name(field), text);
    if (!is_read && is_better(after.verdict, before.verdict))
        fail_msg("%s \"%s\" damaged to \"%s\": %s became %s (chamber %s, %s to %s, psi %s, date %s)",
                 rodt_field_name(field), whole.text[field], text, rodt_verdict_name(before.verdict),
                 rodt_verdict_name(after.verdict), whole.text[RODT_FIELD_CHAMBER], whole.text[RODT_FIELD_RELEASED],
                 whole.text[RODT_FIELD_APPLIED], whole.text[RODT_FIELD_PSI], whole.text[RODT_FIELD_DATE]);
}

static void no_damaged_text_makes_a_verdict_better(void **state)
{
    (void)state;
    uint64_t random = 20260711;
    unsigned counts[3] = {0, 0, 0};
    for (size_t i = 0; i < ROWS; i++)
        check_row(rodt_rules_at(i % rodt_rules_count()), &random, counts);
    /* The test means something only if it met enough of everything. */
    assert_true(counts[0] > ROWS / 50);
    assert_true(counts[1] > ROWS / 5);
    assert_true(counts[2] > ROWS / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_damaged_text_makes_a_verdict_better),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
