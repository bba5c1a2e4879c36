/* SPDX-License-Identifier: Apache-2.0 */
/* Classes of days, pressures and lengths: wherever two readings must have the same answer, rodt_reading_judge gives it. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "column/equivalence.h"
#include "rodtravel/rodtravel.h"
#include "support.h"

static const char own_text[] = "family,size,class,limit,from,until\nclamp,30,standard,1 3/4,2022-03-01,2023-04-30\n"
                               "clamp,30,standard,1 7/8,2023-05-01,\n";

static const char *const marks[] = {"20", "24L", "30", "30L", "36", "clamp 36", "bolt C", "roto 30", "DD-3 30", "18", "3030"};

static rodt_date day_of(int year, int month, int day)
{
    rodt_date date;
    assert_int_equal(rodt_date_make(year, month, day, &date), RODT_OK);
    return date;
}

static rodt_pressure psi(int64_t num, int64_t den)
{
    rodt_pressure pressure;
    assert_int_equal(rodt_pressure_from_psi(num, den, &pressure), RODT_OK);
    return pressure;
}

/* A reading with whole units, and perhaps a day and pressures. */
static rodt_reading some_reading(uint64_t *state)
{
    rodt_reading reading = {0};
    assert_int_equal(rodt_chamber_parse(marks[chance(state) % 11], &reading.chamber, NULL), RODT_OK);
    int64_t released = (int64_t)(chance(state) % 48);
    assert_int_equal(rodt_length_from_inches(released, 16, &reading.released), RODT_OK);
    assert_int_equal(rodt_length_from_inches(released + (int64_t)(chance(state) % 48) - 2, 16, &reading.applied),
                     RODT_OK);
    if (reading.applied.num < 0)
        reading.applied = reading.released;
    reading.unit = (rodt_unit)(chance(state) % 3);
    if (chance(state) % 4 != 0)
        reading.day = day_of(2012 + (int)(chance(state) % 14), 1 + (int)(chance(state) % 12), 1 + (int)(chance(state) % 28));
    if (chance(state) % 4 != 0)
        reading.pressure = psi(chance(state) % 8 == 0 ? 0 : (int64_t)(840 + chance(state) % 200), 10);
    if (chance(state) % 4 == 0)
        reading.pressure_after = psi((int64_t)(84 + chance(state) % 20), 1);
    return reading;
}

/* Another reading of the same class: moved along the tape, on another day, at another pressure, by another tape. */
static rodt_reading moved(const rodt_reading *from, const rodt_rules *rules, uint64_t *state)
{
    rodt_reading other = *from;
    rodt_length by;
    rodt_reading drawn;
    assert_int_equal(rodt_length_from_inches((int64_t)(chance(state) % 64), 64, &by), RODT_OK);
    assert_int_equal(rodt_length_add(from->released, by, &other.released), RODT_OK);
    assert_int_equal(rodt_length_add(from->applied, by, &other.applied), RODT_OK);
    assert_int_equal(rodt_length_from_inches(1, 16, &other.division), RODT_OK);
    for (int i = 0; i < 40; i++) {
        drawn = some_reading(state);
        if (rodti_equivalence_day(rules, drawn.day) == rodti_equivalence_day(rules, from->day))
            other.day = drawn.day;
        if (rodti_equivalence_pressure(rules, drawn.pressure) == rodti_equivalence_pressure(rules, from->pressure))
            other.pressure = drawn.pressure;
        if (rodti_equivalence_pressure(rules, drawn.pressure_after) == rodti_equivalence_pressure(rules, from->pressure_after))
            other.pressure_after = drawn.pressure_after;
    }
    return other;
}

static void compare(const rodt_reading *a, const rodt_reading *b, const rodt_rules *rules)
{
    rodt_finding first;
    rodt_finding second;
    assert_int_equal(rodt_reading_judge(a, rules, &first, NULL), RODT_OK);
    assert_int_equal(rodt_reading_judge(b, rules, &second, NULL), RODT_OK);
    assert_int_equal(first.verdict, second.verdict);
    assert_true(first.reasons == second.reasons);
    assert_memory_equal(&first.applied_stroke, &second.applied_stroke, sizeof first.applied_stroke);
    assert_memory_equal(&first.limit, &second.limit, sizeof first.limit);
    assert_memory_equal(&first.margin, &second.margin, sizeof first.margin);
}

/* A reading is taken away from both, or the readings of both are swapped: then what is left does not count. */
static void spoil(rodt_reading *a, rodt_reading *b, uint64_t *state)
{
    rodt_length none = {0, 0};
    uint64_t way = chance(state) % 4;
    if (way % 2 == 1)
        a->released = b->released = none;
    if (way >= 2)
        a->applied = b->applied = none;
    if (way != 0)
        return;
    assert_int_equal(rodt_length_from_inches(5, 1, &a->released), RODT_OK);
    assert_int_equal(rodt_length_from_inches((int64_t)(chance(state) % 5), 1, &a->applied), RODT_OK);
    assert_int_equal(rodt_length_from_inches(3, 1, &b->released), RODT_OK);
    assert_int_equal(rodt_length_from_inches((int64_t)(chance(state) % 3), 1, &b->applied), RODT_OK);
}

static void check_rules(const rodt_rules *rules)
{
    uint64_t state = 7;
    for (int i = 0; i < 700; i++) {
        rodt_reading reading = some_reading(&state);
        rodt_reading other = moved(&reading, rules, &state);
        compare(&reading, &other, rules);
        spoil(&reading, &other, &state);
        compare(&reading, &other, rules);
    }
}

static void test_same_answers(void **unused)
{
    (void)unused;
    for (size_t i = 0; i < rodt_rules_count(); i++)
        check_rules(rodt_rules_at(i));
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", own_text, strlen(own_text), &own, NULL), RODT_OK);
    check_rules(own);
    rodt_rules_unref(own);
}

/* Clamp 36: 86 FR 57076, in force on 2021-10-14. */
static void test_days(void **unused)
{
    (void)unused;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodti_equivalence_day(rules, (rodt_date){0}), 0);
    assert_int_not_equal(rodti_equivalence_day(rules, day_of(2021, 10, 13)), rodti_equivalence_day(rules, day_of(2021, 10, 14)));
    assert_int_equal(rodti_equivalence_day(rules, day_of(2021, 10, 14)), rodti_equivalence_day(rules, day_of(2024, 1, 1)));
    rodt_rules *own;
    assert_int_equal(rodt_rules_load(rules, "own", own_text, strlen(own_text), &own, NULL), RODT_OK);
    const rodt_date days[] = {day_of(2022, 2, 28), day_of(2022, 3, 1), day_of(2023, 4, 30), day_of(2023, 5, 1)};
    assert_int_not_equal(rodti_equivalence_day(own, days[0]), rodti_equivalence_day(own, days[1]));
    assert_int_equal(rodti_equivalence_day(own, days[1]), rodti_equivalence_day(own, days[2]));
    assert_int_not_equal(rodti_equivalence_day(own, days[2]), rodti_equivalence_day(own, days[3]));
    rodt_rules_unref(own);
}

static bool is_day(rodt_date a, rodt_date b) { return rodt_date_given(a) && rodt_date_compare(a, b) == 0; }

/* What begins on a day, and what ended on the day before. */
static uint32_t changes_on(const rodt_rules *rules, rodt_date before, rodt_date day)
{
    uint32_t count = is_day(rodt_rules_from(rules), day) + is_day(rodt_rules_until(rules), before);
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        count += is_day(row->from, day) + is_day(row->until, before);
    }
    return count;
}

/* From one day to the next the class grows by what changes, from the first day of the calendar to the last. */
static void check_each_day(const rodt_rules *rules)
{
    const rodt_rules *law = rodt_rules_law(rules);
    rodt_date before = {0};
    uint32_t class_of = 1;
    for (int year = 1900; year < 2200; year += year < 1989 ? 89 : year < 2030 ? 1 : 13)
        for (int i = 0; i < 12 * 31; i++) {
            rodt_date day;
            if (rodt_date_make(year, i / 31 + 1, i % 31 + 1, &day) != RODT_OK)
                continue;
            class_of += changes_on(rules, before, day) + (law != NULL ? changes_on(law, before, day) : 0);
            assert_int_equal(rodti_equivalence_day(rules, day), class_of);
            before = day;
        }
}

static void test_each_day(void **unused)
{
    (void)unused;
    static const char table[] = "family,size,class,limit,from,until\nclamp,30,standard,1 3/4,1900-01-01,1900-01-01\n"
                                "clamp,30,standard,1 7/8,2012-09-05,2021-10-13\nclamp,24,standard,1 5/8,2021-10-14,2199-12-31\n";
    rodt_rules *own;
    for (size_t i = 0; i < rodt_rules_count(); i++)
        check_each_day(rodt_rules_at(i));
    assert_int_equal(rodt_rules_load(rodt_rules_find("us-fmcsr"), "own", table, strlen(table), &own, NULL), RODT_OK);
    check_each_day(own);
    rodt_rules_unref(own);
}

static void test_pressures(void **unused)
{
    (void)unused;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr"); /* 90 to 100 psi, both inside */
    assert_int_equal(rodti_equivalence_pressure(rules, (rodt_pressure){0}), PRESSURE_NOT_GIVEN);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(0, 1)), PRESSURE_NO_AIR);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(899999, 10000)), PRESSURE_BELOW);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(90, 1)), PRESSURE_INSIDE);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(100, 1)), PRESSURE_INSIDE);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(1000001, 10000)), PRESSURE_ABOVE);
    rules = rodt_rules_find("rated-80"); /* without a window */
    assert_int_equal(rodti_equivalence_pressure(rules, (rodt_pressure){0}), PRESSURE_NOT_GIVEN);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(0, 1)), PRESSURE_NO_AIR);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(1, 1000)), PRESSURE_INSIDE);
    assert_int_equal(rodti_equivalence_pressure(rules, psi(150, 1)), PRESSURE_INSIDE);
}

static void test_lengths(void **unused)
{
    (void)unused;
    int32_t units = -5;
    assert_false(rodti_equivalence_length((rodt_length){0}, &units));
    assert_false(rodti_equivalence_length((rodt_length){1, 3}, &units));
    assert_false(rodti_equivalence_length((rodt_length){-1, 2}, &units));
    assert_false(rodti_equivalence_length((rodt_length){423, 1}, &units));
    assert_false(rodti_equivalence_length((rodt_length){1, -2}, &units));
    assert_int_equal(units, -5);
    assert_true(rodti_equivalence_length((rodt_length){1, 64}, &units));
    assert_int_equal(units, RODT_COLUMN_PER_64TH);
    assert_true(rodti_equivalence_length((rodt_length){5, 127}, &units)); /* 1 mm */
    assert_int_equal(units, RODT_COLUMN_PER_MM);
    assert_true(rodti_equivalence_length((rodt_length){0, 1}, &units));
    assert_int_equal(units, 0);
    assert_true(rodti_equivalence_length((rodt_length){INT32_MAX, RODT_COLUMN_PER_INCH}, &units));
    assert_int_equal(units, INT32_MAX);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(test_lengths), cmocka_unit_test(test_pressures),
                                       cmocka_unit_test(test_days), cmocka_unit_test(test_each_day),
                                       cmocka_unit_test(test_same_answers)};
    return cmocka_run_group_tests_name("equivalence", tests, NULL, NULL);
}
