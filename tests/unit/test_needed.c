/* SPDX-License-Identifier: Apache-2.0 */
/* Every function that writes a text says how much room it needs, and writes all of it or nothing. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

#define ROOM 512

/* One of each of what can be written. */
static struct {
    rodt_length length;
    rodt_ratio ratio;
    rodt_pressure pressure;
    rodt_date date;
    rodt_position position;
    rodt_chamber chamber;
    rodt_finding finding;
    rodt_count count;
    rodt_axle_finding axle;
    rodt_air_finding air;
    const rodt_air_limit *air_row;
} of;

static int prepare(void **state)
{
    (void)state;
    const rodt_rules *rules = rodt_rules_find("us-fmcsr");
    rodt_form form = {.chamber = "30", .released = "2 1/8", .applied = "4 1/8", .division = "1/4", .psi = "80"};
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {50, 1}};
    of.length = (rodt_length){17, 8};
    of.ratio = (rodt_ratio){-17, 8};
    of.pressure = (rodt_pressure){185, 2};
    of.date = (rodt_date){2021, 10, 14};
    of.position = (rodt_position){12, RODT_SIDE_LEFT};
    of.axle = (rodt_axle_finding){.axle = 3, .mismatches = RODT_AXLE_MISMATCH_SIZE_DIFFERS};
    of.air_row = rodt_rules_air_at(rules, 0);
    assert_int_equal(rodt_form_judge(&form, rules, &of.finding, NULL), RODT_OK);
    assert_int_equal(rodt_air_reading_judge(&reading, rules, &of.air, NULL), RODT_OK);
    assert_int_equal(rodt_tally_judge(&(rodt_tally){.brakes = 6, .full = 1, .half = 1}, 0, &of.count, NULL), RODT_OK);
    of.chamber = of.finding.chamber;
    return of.air_row == NULL;
}

#define WRITER(name, call)                                                                                             \
    static rodt_status name(char *text, size_t size, size_t *needed) { return call; }
WRITER(length, rodt_length_format(of.length, text, size, needed))
WRITER(decimal, rodt_length_format_decimal(of.length, RODT_UNIT_MM, 3, RODT_ROUNDING_UP, text, size, needed))
WRITER(ratio, rodt_ratio_format(of.ratio, text, size, needed))
WRITER(pressure, rodt_pressure_format(of.pressure, text, size, needed))
WRITER(date, rodt_date_format(of.date, text, size, needed))
WRITER(position, rodt_position_format(of.position, text, size, needed))
WRITER(chamber, rodt_chamber_format(&of.chamber, text, size, needed))
WRITER(source, rodt_source_format(of.finding.source, text, size, needed))
WRITER(finding, rodt_finding_format(&of.finding, text, size, needed))
WRITER(reason, rodt_finding_reason_format(&of.finding, RODT_REASON_PRESSURE_LOW, text, size, needed))
WRITER(proof, rodt_finding_proof_format(&of.finding, text, size, needed))
WRITER(counted, rodt_count_format(&of.count, text, size, needed))
WRITER(axle, rodt_axle_mismatch_format(&of.axle, RODT_AXLE_MISMATCH_SIZE_DIFFERS, text, size, needed))
WRITER(air, rodt_air_finding_format(&of.air, text, size, needed))
WRITER(edge, rodt_air_finding_edge_format(&of.air, text, size, needed))
WRITER(row, rodt_air_limit_edge_format(of.air_row, text, size, needed))

static rodt_status (*const writers[])(char *, size_t, size_t *) = {
    length, decimal, ratio, pressure, date,    position, chamber, source,
    finding, reason, proof, counted,  axle,    air,      edge,    row};
#define WRITERS (sizeof writers / sizeof writers[0])

static void asked_first_it_says_the_size(void **state)
{
    (void)state;
    for (size_t i = 0; i < WRITERS; i++) {
        char text[ROOM];
        size_t needed = 0, again = 0;
        assert_int_equal(writers[i](NULL, 0, &needed), RODT_E_SPACE);
        assert_int_equal(writers[i](text, needed, &again), RODT_OK);
        assert_int_equal(again, needed);
        assert_int_equal(strlen(text) + 1, needed);
        assert_int_equal(writers[i](text, needed, NULL), RODT_OK);
    }
}

static void every_smaller_size_is_refused_with_the_text_untouched(void **state)
{
    (void)state;
    for (size_t i = 0; i < WRITERS; i++) {
        size_t needed = 0;
        assert_int_equal(writers[i](NULL, 0, &needed), RODT_E_SPACE);
        for (size_t size = 0; size < needed; size++) {
            char text[ROOM], before[ROOM];
            size_t again = 0;
            memset(text, '#', sizeof text);
            memcpy(before, text, sizeof text);
            assert_int_equal(writers[i](text, size, &again), RODT_E_SPACE);
            assert_int_equal(again, needed);
            assert_memory_equal(text, before, sizeof text);
        }
    }
}

static void no_text_with_a_size_is_a_mistake(void **state)
{
    (void)state;
    for (size_t i = 0; i < WRITERS; i++) {
        size_t needed = 77;
        assert_int_equal(writers[i](NULL, 1, &needed), RODT_E_ARGUMENT);
        assert_int_equal(needed, 77);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(asked_first_it_says_the_size),
        cmocka_unit_test(every_smaller_size_is_refused_with_the_text_untouched),
        cmocka_unit_test(no_text_with_a_size_is_a_mistake),
    };
    return cmocka_run_group_tests_name("needed", tests, prepare, NULL);
}
