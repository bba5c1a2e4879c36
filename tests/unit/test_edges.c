/* SPDX-License-Identifier: Apache-2.0 */
/* Limits of strokes and figures of the vehicle: just below each, at it, just above it. Where each is published stands
 * in tests/cases/limit_edges.csv and vehicle_edges.csv. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <cmocka.h>

#include "rodtravel/rodtravel.h"
#include "support.h"

/* --- Limits ------------------------------------------------------------------------------------------ */

enum {
    LIMIT_RULES, LIMIT_FAMILY, LIMIT_SIZE, LIMIT_CLASS, LIMIT_RATED, LIMIT_AS_OF, LIMIT_STROKE, LIMIT_VERDICT,
    LIMIT_SOURCE, LIMIT_CELLS
};

/* Released at 2 in, at 85 or 95 psi: inside the window of the rule set. */
static rodt_reading reading_of(char *cells[])
{
    rodt_reading reading = {0};
    char chamber[60];
    rodt_length stroke;
    bool periodic = strcmp(cells[LIMIT_RULES], "us-periodic") == 0;
    snprintf(chamber, sizeof chamber, "%s %s %s", cells[LIMIT_FAMILY], cells[LIMIT_SIZE],
             strcmp(cells[LIMIT_CLASS], "any") == 0 ? "" : cells[LIMIT_CLASS]);
    assert_int_equal(rodt_chamber_parse(chamber, &reading.chamber, NULL), RODT_OK);
    if (cells[LIMIT_RATED][0] != '\0')
        assert_int_equal(rodt_length_parse(cells[LIMIT_RATED], &reading.chamber.rated_stroke, NULL), RODT_OK);
    if (cells[LIMIT_AS_OF][0] != '\0')
        assert_int_equal(rodt_date_parse_iso(cells[LIMIT_AS_OF], &reading.day, NULL), RODT_OK);
    assert_int_equal(rodt_length_parse(cells[LIMIT_STROKE], &stroke, NULL), RODT_OK);
    assert_int_equal(rodt_length_from_inches(2, 1, &reading.released), RODT_OK);
    assert_int_equal(rodt_length_from_inches(2 * stroke.den + stroke.num, stroke.den, &reading.applied), RODT_OK);
    assert_int_equal(rodt_pressure_from_psi(periodic ? 85 : 95, 1, &reading.pressure), RODT_OK);
    return reading;
}

static void every_limit(void **state)
{
    (void)state;
    csv_file file;
    char *cells[LIMIT_CELLS];
    unsigned count = 0;
    csv_open(&file, CASES "/limit_edges.csv");
    while (csv_read_case(&file, cells, LIMIT_CELLS, "rules")) {
        rodt_finding finding;
        rodt_reading reading = reading_of(cells);
        assert_int_equal(rodt_reading_judge(&reading, rodt_rules_find(cells[LIMIT_RULES]), &finding, NULL), RODT_OK);
        if (strcmp(rodt_verdict_name(finding.verdict), cells[LIMIT_VERDICT]) != 0)
            fail_msg("limit_edges.csv record %u: %s", file.record, rodt_verdict_name(finding.verdict));
        count++;
    }
    csv_close(&file);
    assert_int_equal(count % 3, 0);
    assert_true(count > 180);
}

/* --- The vehicle ------------------------------------------------------------------------------------- */

enum { PART, MEASURED, EXPECT, SOURCE, VEHICLE_CELLS };

/* A type 30, limit 2 in, over it by so many 64ths of an inch; without a stroke a dead one. */
static rodt_wheel_end brake(int16_t axle, rodt_side side, int64_t over)
{
    rodt_wheel_end end = {.position = {.axle = axle, .side = side}};
    assert_int_equal(rodt_chamber_parse("30 standard", &end.reading.chamber, NULL), RODT_OK);
    assert_int_equal(rodt_length_from_inches(2, 1, &end.reading.released), RODT_OK);
    assert_int_equal(rodt_length_from_inches(256 + over, 64, &end.reading.applied), RODT_OK);
    assert_int_equal(rodt_pressure_from_psi(95, 1, &end.reading.pressure), RODT_OK);
    return end;
}

/* 64ths by which a brake is over. */
enum { GOOD = -16, HALF = 8, FULL = 16, DEAD = -128 };

static rodt_finding judge_brake(int64_t over)
{
    rodt_finding finding;
    rodt_wheel_end end = brake(1, RODT_SIDE_LEFT, over);
    assert_int_equal(rodt_reading_judge(&end.reading, rodt_rules_find("us-fmcsr"), &finding, NULL), RODT_OK);
    return finding;
}

/* So many brakes, of which halves / 2 are defective, in whole ones as far as they go. */
static rodt_count count_brakes(uint32_t brakes, int64_t halves)
{
    rodt_tally tally = {0};
    rodt_count count;
    for (uint32_t i = 0; i < brakes; i++) {
        int64_t left = halves - 2 * (int64_t)i;
        rodt_finding finding = judge_brake(left > 1 ? FULL : left == 1 ? HALF : GOOD);
        assert_int_equal(rodt_tally_add(&tally, &finding, NULL), RODT_OK);
    }
    assert_int_equal(rodt_tally_judge(&tally, brakes, &count, NULL), RODT_OK);
    return count;
}

static void say_fraction(rodt_ratio of, char text[60])
{
    snprintf(text, 60, of.den == 1 ? "%lld" : "%lld/%lld", (long long)of.num, (long long)of.den);
}

static uint32_t mismatches_of(rodt_wheel_end left, rodt_wheel_end right)
{
    const rodt_wheel_end ends[] = {left, right};
    rodt_finding findings[2];
    rodt_vehicle_finding vehicle;
    assert_int_equal(rodt_vehicle_judge(ends, 2, 0, rodt_rules_find("us-fmcsr"), findings, NULL, &vehicle, NULL), RODT_OK);
    return vehicle.axles[0].mismatches;
}

/* What the library says of num/den of a part, in the words of the file. */
static void answer(const char *part, int64_t num, int64_t den, char text[60])
{
    rodt_wheel_end left = brake(1, RODT_SIDE_LEFT, GOOD), right = brake(1, RODT_SIDE_RIGHT, GOOD);
    if (strcmp(part, "share") == 0) { /* of forty brakes */
        snprintf(text, 60, "%s", rodt_outcome_name(count_brakes(40, 80 * num / den).outcome));
    } else if (strcmp(part, "full_from") == 0) {
        rodt_finding finding = judge_brake(64 * num / den);
        rodt_defect defect = rodt_finding_defect(&finding);
        snprintf(text, 60, "%s", defect == RODT_DEFECT_FULL ? "full" : defect == RODT_DEFECT_HALF ? "half" : "none");
    } else if (strcmp(part, "half") == 0) { /* brakes over by less, of ten */
        say_fraction(count_brakes(10, 2 * num / den).defective, text);
    } else if (strcmp(part, "chart") == 0) { /* a fifth of the brakes */
        snprintf(text, 60, "%u", (unsigned)count_brakes((uint32_t)(5 * num / den), 0).whole_needed);
    } else if (strcmp(part, "steering") == 0) { /* dead brakes of axle 1 */
        left = num > 0 ? brake(1, RODT_SIDE_LEFT, DEAD) : left;
        right = num > 1 ? brake(1, RODT_SIDE_RIGHT, DEAD) : right;
        snprintf(text, 60, "%s", (mismatches_of(left, right) & RODT_AXLE_MISMATCH_STEERING_DEAD) != 0 ? "yes" : "no");
    } else if (strcmp(part, "axle_size") == 0) { /* types below 30 */
        char size[20];
        snprintf(size, sizeof size, "%d standard", (int)(30 - num));
        assert_int_equal(rodt_chamber_parse(size, &right.reading.chamber, NULL), RODT_OK);
        snprintf(text, 60, "%s", (mismatches_of(left, right) & RODT_AXLE_MISMATCH_SIZE_DIFFERS) != 0 ? "unlike" : "alike");
    } else { /* inches above 5 1/2 */
        assert_string_equal(part, "axle_arm");
        assert_int_equal(rodt_length_from_inches(11, 2, &left.arm_length), RODT_OK);
        assert_int_equal(rodt_length_from_inches(11 * den + 2 * num, 2 * den, &right.arm_length), RODT_OK);
        snprintf(text, 60, "%s", (mismatches_of(left, right) & RODT_AXLE_MISMATCH_ARM_DIFFERS) != 0 ? "unlike" : "alike");
    }
}

static void every_figure_of_the_vehicle(void **state)
{
    (void)state;
    csv_file file;
    char *cells[VEHICLE_CELLS];
    unsigned count = 0;
    csv_open(&file, CASES "/vehicle_edges.csv");
    while (csv_read_case(&file, cells, VEHICLE_CELLS, "part")) {
        int64_t num, den;
        char text[60];
        assert_true(read_fraction(cells[MEASURED], &num, &den));
        answer(cells[PART], num, den, text);
        if (strcmp(text, cells[EXPECT]) != 0)
            fail_msg("vehicle_edges.csv record %u: %s", file.record, text);
        count++;
    }
    csv_close(&file);
    assert_int_equal(count, 19);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(every_limit), cmocka_unit_test(every_figure_of_the_vehicle)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
