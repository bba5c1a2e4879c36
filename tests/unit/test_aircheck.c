/* SPDX-License-Identifier: Apache-2.0 */
/* Air checks: each row of the tables is found, judged and explained; each published edge lies where its words put it.
 * Sources stand in tables/aircheck.csv and, beside each edge, in tests/cases/air_edges.csv. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <cmocka.h>

#include "air/aircheck.h"
#include "core/exact.h"
#include "rules/tables.h"
#include "rodtravel/stroke.h"
#include "support.h"

static rodt_pressure gauge(const char *text)
{
    rodt_pressure pressure = {0};
    if (text[0] != '\0' && rodt_pressure_parse(text, &pressure, NULL) != RODT_OK)
        fail_msg("\"%s\" is no pressure", text);
    return pressure;
}

static rodt_air_finding judge(const char *rules, const rodt_air_reading *reading)
{
    rodt_air_finding finding;
    memset(&finding, 0x5A, sizeof finding);
    assert_non_null(rodt_rules_find(rules));
    assert_int_equal(rodt_air_reading_judge(reading, rodt_rules_find(rules), &finding, NULL), RODT_OK);
    return finding;
}

static void expect_ratio(rodt_ratio ratio, int64_t num, int64_t den)
{
    assert_int_equal(ratio.num, num);
    assert_int_equal(ratio.den, den);
}

/* --- Published edges --------------------------------------------------------------------------------- */

enum {
    EDGE_RULES, EDGE_CHECK, EDGE_VEHICLE, EDGE_TOWED, EDGE_BUILT, EDGE_PRESSURE, EDGE_BEFORE, EDGE_AFTER, EDGE_SECONDS,
    EDGE_CUT_OUT, EDGE_SPAN, EDGE_APPLICATIONS, EDGE_ACTUAL_VOLUME, EDGE_REQUIRED_VOLUME, EDGE_ANSWER, EDGE_RESULT, EDGE_AT_LIMIT, EDGE_SOURCE, EDGES
};

static int word(const char *text, const char *const *words, int count)
{
    for (int i = 0; i < count; i++) {
        if (strcmp(text, words[i]) == 0)
            return i;
    }
    fail_msg("\"%s\" is none of the words", text);
    return 0;
}

static rodt_date built(const char *text)
{
    rodt_date date = {0};
    if (strlen(text) == 4)
        date.year = (int16_t)strtol(text, NULL, 10);
    else if (text[0] != '\0')
        assert_int_equal(rodt_date_parse_iso(text, &date, NULL), RODT_OK);
    return date;
}

/* Seconds in tenths, or whole cubic inches. */
static rodt_ratio tenths(const char *text)
{
    rodt_ratio ratio = {0};
    char *behind;
    if (text[0] == '\0')
        return ratio;
    ratio = (rodt_ratio){strtol(text, &behind, 10), 1};
    if (*behind == '.') /* tenths are all that a stop watch in these cases shows */
        ratio = (rodt_ratio){ratio.num * 10 + strtol(behind + 1, NULL, 10), 10};
    return ratio;
}

static rodt_air_check check_of(const char *word)
{
    rodt_air_check check = RODT_AIR_CHECK_NONE;
    assert_int_equal(rodt_air_check_find(word, &check), RODT_OK);
    return check;
}

static rodt_air_reading reading_of(char *cells[])
{
    static const char *const vehicles[] = {"", "single", "combination", "bus"};
    static const char *const spans[] = {"", "warning", "applications", "recovery"};
    static const char *const answers[] = {"", "no", "yes"};
    return (rodt_air_reading){.check = check_of(cells[EDGE_CHECK]),
                              .vehicle = (rodt_vehicle_class)word(cells[EDGE_VEHICLE], vehicles, 4),
                              .towed_units = (int16_t)strtol(cells[EDGE_TOWED], NULL, 10),
                              .applications = (int16_t)strtol(cells[EDGE_APPLICATIONS], NULL, 10),
                              .built = built(cells[EDGE_BUILT]),
                              .pressure = gauge(cells[EDGE_PRESSURE]),
                              .before = gauge(cells[EDGE_BEFORE]),
                              .after = gauge(cells[EDGE_AFTER]),
                              .cut_out = gauge(cells[EDGE_CUT_OUT]),
                              .span = (rodt_air_span)word(cells[EDGE_SPAN], spans, 4),
                              .seconds = tenths(cells[EDGE_SECONDS]),
                              .actual_volume = tenths(cells[EDGE_ACTUAL_VOLUME]),
                              .required_volume = tenths(cells[EDGE_REQUIRED_VOLUME]),
                              .answer = (rodt_recorded)word(cells[EDGE_ANSWER], answers, 3)};
}

static void every_published_edge(void **state)
{
    (void)state;
    csv_file file;
    char *cells[EDGES];
    unsigned count = 0;
    csv_open(&file, CASES "/air_edges.csv");
    while (csv_read_case(&file, cells, EDGES, "rules")) {
        rodt_air_reading reading = reading_of(cells);
        rodt_air_finding finding = judge(cells[EDGE_RULES], &reading);
        if (strcmp(rodt_air_result_name(finding.result), cells[EDGE_RESULT]) != 0 ||
            finding.at_limit != (strcmp(cells[EDGE_AT_LIMIT], "yes") == 0))
            fail_msg("air_edges.csv record %u: %s, missing \"%s\"; %s", file.record,
                     rodt_air_result_name(finding.result), rodt_air_missing_name(finding.missing), cells[EDGE_SOURCE]);
        count++;
    }
    csv_close(&file);
    assert_true(count > 500);
}

/* --- Every row --------------------------------------------------------------------------------------- */

static rodt_pressure in_unit(const rodt_air_limit *row, int64_t num, int64_t den)
{
    rodt_pressure pressure;
    bool kpa = row->measure == RODT_AIR_MEASURE_KPA || row->measure == RODT_AIR_MEASURE_KPA_PER_MINUTE;
    assert_int_equal((kpa ? rodt_pressure_from_kpa : rodt_pressure_from_psi)(num, den, &pressure), RODT_OK);
    return pressure;
}

static rodt_pressure less(rodt_pressure a, rodt_pressure b)
{
    rodt_ratio difference;
    assert_true(rodti_exact_subtract(EXACT(a), EXACT(b), &difference));
    return (rodt_pressure){difference.num, difference.den};
}

/* Sets a reading that measures num/den in the measure of the row. */
static void set_measured(rodt_air_reading *reading, const rodt_air_limit *row, int64_t num, int64_t den)
{
    const rodt_pressure full = {150, 1};
    switch (row->measure) {
    case RODT_AIR_MEASURE_PSI:
    case RODT_AIR_MEASURE_KPA:
        reading->pressure = in_unit(row, num, den);
        reading->cut_out = full;
        if (row->check == RODT_AIR_CHECK_CUT_IN)
            reading->cut_out = row->below_cut_out ? (rodt_pressure){130, 1} : less(reading->pressure, (rodt_pressure){-22, 1});
        if (row->below_cut_out)
            reading->pressure = less(reading->cut_out, in_unit(row, num, den));
        break;
    case RODT_AIR_MEASURE_SECONDS:
        assert_int_equal(rodt_ratio_make(num, den, &reading->seconds), RODT_OK);
        reading->span = row->span;
        reading->before = row->start;
        reading->after = row->stop;
        reading->actual_volume = reading->required_volume = (rodt_ratio){5568, 1};
        break;
    case RODT_AIR_MEASURE_PSI_PER_MINUTE:
    case RODT_AIR_MEASURE_KPA_PER_MINUTE:
        reading->before = full;
        reading->after = less(full, in_unit(row, num, den));
        break;
    case RODT_AIR_MEASURE_PERCENT_LEFT:
    case RODT_AIR_MEASURE_PERCENT_LOST:
        reading->applications = row->applications;
        reading->before = (rodt_pressure){100, 1};
        assert_int_equal(rodt_pressure_from_psi(num, den, &reading->after), RODT_OK);
        if (row->measure == RODT_AIR_MEASURE_PERCENT_LOST)
            reading->after = less(reading->before, reading->after);
        break;
    case RODT_AIR_MEASURE_YES_NO: break;
    }
}

/* What the words of the comparison say of a figure on one side of the bound (-1), at it (0), beyond (1). */
static bool keeps(rodt_comparison comparison, int side)
{
    switch (comparison) {
    case RODT_COMPARISON_LESS_THAN: return side < 0;
    case RODT_COMPARISON_NOT_MORE_THAN: return side <= 0;
    case RODT_COMPARISON_MORE_THAN: return side > 0;
    case RODT_COMPARISON_NOT_LESS_THAN:
    case RODT_COMPARISON_BETWEEN: return side >= 0;
    case RODT_COMPARISON_MUST_BE_YES: return side > 0;
    case RODT_COMPARISON_MUST_BE_NO: return side < 0;
    }
    return false;
}

static rodt_air_result expected(const rodt_air_limit *row, bool kept)
{
    if (row->kind == RODT_AIR_KIND_USUAL || (row->kind == RODT_AIR_KIND_MAJOR && kept))
        return RODT_AIR_RESULT_NOTED;
    if (row->kind == RODT_AIR_KIND_EITHER && !kept)
        return RODT_AIR_RESULT_UNDETERMINED;
    return kept ? RODT_AIR_RESULT_GOOD : RODT_AIR_RESULT_DEFECTIVE;
}

static void check_words(const rodt_air_finding *finding, const rodt_air_limit *row)
{
    char sentence[600], edge[300], alone[300];
    assert_int_equal(rodt_air_finding_format(finding, sentence, sizeof sentence, NULL), RODT_OK);
    assert_int_equal(rodt_air_finding_edge_format(finding, edge, sizeof edge, NULL), RODT_OK);
    assert_int_equal(rodt_air_limit_edge_format(row, alone, sizeof alone, NULL), RODT_OK);
    assert_non_null(strstr(sentence, rodt_air_result_name(finding->result)));
    bool practice = row->evidence == RODT_EVIDENCE_COMMON_PRACTICE;
    assert_int_equal(strstr(sentence, "common practice, no source") != NULL, practice);
    assert_int_equal(strstr(sentence, "unconfirmed") != NULL, !practice && row->evidence != RODT_EVIDENCE_CHECKED);
    assert_non_null(strstr(edge, "defect"));
    assert_non_null(strstr(alone, "defect"));
    assert_true(row->published[0] != '\0' && row->setup[0] != '\0' && row->source->document[0] != '\0');
}

/* Judges num/den by the rule set as a vehicle; true if this row spoke. */
static bool hits(const rodt_rules *rules, const rodt_air_limit *row, rodt_air_reading reading, int64_t num, int64_t den,
                 int side)
{
    rodt_air_finding finding;
    set_measured(&reading, row, num, den);
    if (row->measure == RODT_AIR_MEASURE_YES_NO)
        reading.answer = side > 0 ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    assert_int_equal(rodt_air_reading_judge(&reading, rules, &finding, NULL), RODT_OK);
    if (finding.row != row)
        return false;
    bool kept = keeps(row->comparison, side);
    assert_int_equal(finding.result, expected(row, kept));
    assert_int_equal(finding.major, !kept && (row->kind == RODT_AIR_KIND_MAJOR || row->kind == RODT_AIR_KIND_LIMIT_AND_MAJOR));
    assert_int_equal(finding.minor, !kept && row->kind == RODT_AIR_KIND_LIMIT_AND_MINOR);
    assert_int_equal(finding.minor, !kept && row->kind == RODT_AIR_KIND_LIMIT_AND_MINOR);
    assert_int_equal(finding.at_limit, side == 0 && row->measure != RODT_AIR_MEASURE_YES_NO);
    check_words(&finding, row);
    return true;
}

/* The bound of a row; half of the cut-out of set_measured where that alone is asked for. */
static rodt_ratio bound_of(const rodt_air_limit *row)
{
    return rodt_ratio_given(row->value) ? row->value : (rodt_ratio){row->half_cut_out ? 75 : 0, 1};
}

/* A hundredth below the bound, at it, a hundredth above. Returns on how many of the three sides the row spoke. */
static unsigned sides(const rodt_rules *rules, const rodt_air_limit *row, rodt_air_reading reading)
{
    unsigned count = 0;
    rodt_ratio bound = bound_of(row);
    for (int side = -1; side <= 1; side++) {
        if (side == 0 && row->measure == RODT_AIR_MEASURE_YES_NO)
            continue;
        count += hits(rules, row, reading, bound.num * 100 + side * bound.den, bound.den * 100, side);
    }
    return count;
}

/* A class, towed units and a day of build for which the row is the most exact one, if there are any. */
static unsigned reach(const rodt_rules *rules, const rodt_air_limit *row)
{
    const rodt_date days[] = {{2020, 1, 1}, row->built_from, row->built_until, {1960, 1, 1}};
    unsigned most = 0;
    for (int vehicle = RODT_VEHICLE_CLASS_SINGLE; vehicle <= RODT_VEHICLE_CLASS_BUS; vehicle++) {
        for (size_t d = 0; d < COUNT_OF(days); d++) {
            rodt_air_reading reading = {.check = row->check,
                                        .vehicle = (rodt_vehicle_class)vehicle,
                                        .built = days[d],
                                        .towed_units = vehicle != RODT_VEHICLE_CLASS_COMBINATION ? 0
                                                       : row->towed_units > 0              ? row->towed_units
                                                                                           : 1};
            unsigned count = rodt_date_given(days[d]) ? sides(rules, row, reading) : 0;
            most = count > most ? count : most;
        }
    }
    return most;
}

static void every_row_is_reached_and_explained(void **state)
{
    (void)state;
    size_t rows = 0, whole = 0;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *rules = rodt_rules_at(r);
        for (size_t i = 0; i < rodt_rules_air_count(rules); i++) {
            const rodt_air_limit *row = rodt_rules_air_at(rules, i);
            unsigned count = reach(rules, row);
            if (count == 0)
                fail_msg("%s: no reading is judged by row %zu (%s)", rodt_rules_id(rules), i, row->published);
            whole += count == (row->measure == RODT_AIR_MEASURE_YES_NO ? 2u : 3u);
            rows++;
        }
        assert_null(rodt_rules_air_at(rules, rodt_rules_air_count(rules)));
    }
    /* ca-qc: a row and the row of its major defect divide the sides; ca-sk: two rows must be kept together. */
    assert_int_equal(rows, 149);
    assert_true(whole >= rows - 6);
}

/* FNV-1a, 64 bits. */
static uint64_t hash(uint64_t seed, const char *text)
{
    for (; *text != '\0'; text++)
        seed = (seed ^ (unsigned char)*text) * 0x100000001b3u;
    return (seed ^ 0xFFu) * 0x100000001b3u;
}

static void put_pressure(rodt_pressure pressure, char text[RODT_PRESSURE_TEXT_SIZE])
{
    text[0] = '\0';
    if (rodt_pressure_given(pressure))
        assert_int_equal(rodt_pressure_format(pressure, text, RODT_PRESSURE_TEXT_SIZE, NULL), RODT_OK);
}

static uint64_t hash_row(uint64_t seed, const rodt_air_limit *row)
{
    char line[900];
    char start[RODT_PRESSURE_TEXT_SIZE], stop[RODT_PRESSURE_TEXT_SIZE];
    char start_kpa[RODT_PRESSURE_TEXT_SIZE], stop_kpa[RODT_PRESSURE_TEXT_SIZE];
    put_pressure(row->start, start);
    put_pressure(row->stop, stop);
    put_pressure(row->start_kpa, start_kpa);
    put_pressure(row->stop_kpa, stop_kpa);
    snprintf(line, sizeof line, "%d %d %d %d %d %d %d %lld/%lld %lld/%lld %lld/%lld %d %s %s %d %d%d%d %d-%d-%d %d-%d-%d",
             (int)row->check, (int)row->kind, (int)row->vehicle, row->towed_units, row->towed_or_more, (int)row->comparison,
             (int)row->measure, (long long)row->value.num, (long long)row->value.den, (long long)row->upper.num,
             (long long)row->upper.den, (long long)row->per_towed_unit.num, (long long)row->per_towed_unit.den,
             (int)row->span, start, stop, row->applications, row->by_volume, row->half_cut_out, row->below_cut_out,
             row->built_from.year, row->built_from.month, row->built_from.day, row->built_until.year,
             row->built_until.month, row->built_until.day);
    seed = hash(hash(hash(hash(hash(seed, line), start_kpa), stop_kpa), row->published), row->setup);
    return hash(hash(seed, row->source->id), rodt_evidence_text(row->evidence));
}

/* A tripwire as in test_tables.c: a changed figure is a deliberate act. */
static void fingerprint_of_all_air_rows(void **state)
{
    (void)state;
    const uint64_t wanted = 0x56f682d4b60000a4u;
    uint64_t seed = 0xcbf29ce484222325u;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        seed = hash(seed, rodt_rules_id(rodt_rules_at(r)));
        for (size_t i = 0; i < rodt_rules_air_count(rodt_rules_at(r)); i++)
            seed = hash_row(seed, rodt_rules_air_at(rodt_rules_at(r), i));
    }
    if (seed != wanted)
        fail_msg("a row has changed; the fingerprint is now 0x%016llx", (unsigned long long)seed);
}

/* --- Single rules of the judgement ------------------------------------------------------------------- */

static rodt_air_finding build_up(int64_t actual, int64_t required, int64_t time)
{
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_BUILD_UP,
                                      .before = {85, 1},
                                      .after = {100, 1},
                                      .actual_volume = {actual, actual != 0},
                                      .required_volume = {required, required != 0}};
    assert_int_equal(rodt_ratio_make(time, 4, &reading.seconds), RODT_OK);
    return judge("us-newvehicle", &reading);
}

/* 49 CFR 571.121 S5.1.1: 2 x type 20 and 4 x type 30 need 5,568 in3; with 6,960 in3 the time is 31.25 s. */
static void build_up_time_goes_with_the_volume(void **state)
{
    (void)state;
    expect_ratio(build_up(5568, 5568, 100).allowed, 25, 1);
    assert_int_equal(build_up(5568, 5568, 100).result, RODT_AIR_RESULT_GOOD);
    assert_int_equal(build_up(5568, 5568, 101).result, RODT_AIR_RESULT_DEFECTIVE);
    expect_ratio(build_up(6960, 5568, 125).allowed, 125, 4);
    assert_int_equal(build_up(6960, 5568, 125).result, RODT_AIR_RESULT_GOOD);
    assert_true(build_up(6960, 5568, 125).at_limit);
    assert_int_equal(build_up(6960, 5568, 126).result, RODT_AIR_RESULT_DEFECTIVE);
    assert_int_equal(build_up(0, 5568, 100).missing, RODT_AIR_MISSING_VOLUME);
    assert_int_equal(build_up(6960, 0, 100).missing, RODT_AIR_MISSING_VOLUME);
}

static rodt_air_missing missing_of(const char *rules, rodt_air_reading reading)
{
    rodt_air_finding finding = judge(rules, &reading);
    assert_int_equal(finding.result, RODT_AIR_RESULT_UNDETERMINED);
    return finding.missing;
}

static void what_is_missing_is_said(void **state)
{
    (void)state;
    const rodt_pressure p100 = {100, 1}, p110 = {110, 1};
    rodt_air_reading loss = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .before = p100};
    assert_int_equal(missing_of("us-cdl", loss), RODT_AIR_MISSING_VALUE);
    loss.after = p110;
    assert_int_equal(missing_of("us-cdl", loss), RODT_AIR_MISSING_SENSE);
    assert_int_equal(missing_of("us-tx", loss), RODT_AIR_MISSING_ROW);
    loss = (rodt_air_reading){.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .before = p110, .after = p100,
                              .seconds = {0, 1}};
    assert_int_equal(missing_of("us-cdl", loss), RODT_AIR_MISSING_VALUE);
    rodt_air_reading time = {.check = RODT_AIR_CHECK_BUILD_UP, .before = p110, .after = p100, .seconds = {30, 1}};
    assert_int_equal(missing_of("us-cdl", time), RODT_AIR_MISSING_SENSE);
    time = (rodt_air_reading){.check = RODT_AIR_CHECK_BUILD_UP, .seconds = {30, 1}};
    assert_int_equal(missing_of("us-cdl", time), RODT_AIR_MISSING_SPAN);
    rodt_air_reading empty = {.check = RODT_AIR_CHECK_RESERVE, .before = {0, 1}, .after = {0, 1}};
    assert_int_equal(missing_of("us-tx", empty), RODT_AIR_MISSING_VALUE);
    rodt_air_reading wrong = {.check = RODT_AIR_CHECK_SPRING_BRAKE, .pressure = p100};
    assert_int_equal(missing_of("us-cdl", wrong), RODT_AIR_MISSING_VALUE);
    rodt_air_reading above = {.check = RODT_AIR_CHECK_CUT_IN, .pressure = p110, .cut_out = p100};
    assert_int_equal(missing_of("ca-sk", above), RODT_AIR_MISSING_SENSE);
    rodt_air_reading nothing = {.check = RODT_AIR_CHECK_WARNING, .cut_out = p100};
    assert_int_equal(judge("us-cdl", &nothing).result, RODT_AIR_RESULT_NOT_DONE);
    assert_int_equal(judge("us-cdl", &nothing).missing, RODT_AIR_MISSING_NOTHING);
}

/* A figure beside it would contradict it; a rule set without the check has nothing to say. */
static void what_never_came_is_defective(void **state)
{
    (void)state;
    static const struct {
        const char *rules;
        rodt_air_check check;
        bool major;
    } cases[] = {{"ca-on", RODT_AIR_CHECK_WARNING, true},      {"us-fmcsr", RODT_AIR_CHECK_WARNING, false},
                 {"ca-on", RODT_AIR_CHECK_BUILD_UP, false},    {"us-newvehicle", RODT_AIR_CHECK_BUILD_UP, false},
                 {"nz", RODT_AIR_CHECK_BUILD_UP, false},       {"ca-on", RODT_AIR_CHECK_CUT_OUT, false},
                 {"us-cdl", RODT_AIR_CHECK_CUT_OUT, false},    {"us-cdl", RODT_AIR_CHECK_CUT_IN, false},
                 {"ca-bc", RODT_AIR_CHECK_SUPPLY_VALVE, false}, {"ca-ab", RODT_AIR_CHECK_PARKING_VALVE, false},
                 {"ca-qc", RODT_AIR_CHECK_TRACTOR_PROTECTION, true}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_air_reading reading = {.check = cases[i].check, .answer = RODT_RECORDED_NO};
        rodt_air_finding finding = judge(cases[i].rules, &reading);
        assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
        assert_int_equal(finding.major, cases[i].major);
        reading.pressure = (rodt_pressure){62, 1};
        assert_int_equal(missing_of(cases[i].rules, reading), RODT_AIR_MISSING_SENSE);
    }
    assert_int_equal(missing_of("us-tx", (rodt_air_reading){.check = RODT_AIR_CHECK_WARNING, .answer = RODT_RECORDED_NO}),
                     RODT_AIR_MISSING_ROW);
}

/* One step below the bound of plausibility each of them is judged by its row. */
static void what_cannot_be_is_never_good(void **state)
{
    (void)state;
    static const struct {
        const char *rules;
        rodt_air_check check;
        const char *pressure, *cut_out, *cut_in;
        rodt_air_result result;
    } cases[] = {{"ca-on", RODT_AIR_CHECK_WARNING, "99", "", "", RODT_AIR_RESULT_GOOD},
                 {"ca-on", RODT_AIR_CHECK_WARNING, "100", "", "", RODT_AIR_RESULT_UNDETERMINED},
                 {"ca-on", RODT_AIR_CHECK_WARNING, "85", "", "86", RODT_AIR_RESULT_GOOD},
                 {"ca-on", RODT_AIR_CHECK_WARNING, "85", "", "85", RODT_AIR_RESULT_UNDETERMINED},
                 {"ca-on", RODT_AIR_CHECK_WARNING, "85", "85", "", RODT_AIR_RESULT_UNDETERMINED},
                 {"ca-on", RODT_AIR_CHECK_CUT_OUT, "81", "", "", RODT_AIR_RESULT_GOOD},
                 {"ca-on", RODT_AIR_CHECK_CUT_OUT, "80", "", "", RODT_AIR_RESULT_UNDETERMINED},
                 {"ca-on", RODT_AIR_CHECK_CUT_OUT, "120", "", "119", RODT_AIR_RESULT_GOOD},
                 {"ca-on", RODT_AIR_CHECK_CUT_OUT, "120", "", "120", RODT_AIR_RESULT_UNDETERMINED},
                 {"ca-on", RODT_AIR_CHECK_CUT_IN, "100", "101", "", RODT_AIR_RESULT_GOOD},
                 {"ca-on", RODT_AIR_CHECK_CUT_IN, "100", "100", "", RODT_AIR_RESULT_UNDETERMINED},
                 {"us-cdl", RODT_AIR_CHECK_CUT_IN, "61", "", "", RODT_AIR_RESULT_NOTED},
                 {"us-cdl", RODT_AIR_CHECK_CUT_IN, "60", "", "", RODT_AIR_RESULT_UNDETERMINED},
                 {"ca-on", RODT_AIR_CHECK_CUT_IN, "79", "79", "", RODT_AIR_RESULT_DEFECTIVE},
                 {"ca-ab", RODT_AIR_CHECK_SUPPLY_VALVE, "99", "", "", RODT_AIR_RESULT_GOOD},
                 {"ca-ab", RODT_AIR_CHECK_SUPPLY_VALVE, "100", "", "", RODT_AIR_RESULT_UNDETERMINED}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_air_reading reading = {.check = cases[i].check, .pressure = gauge(cases[i].pressure),
                                    .cut_out = gauge(cases[i].cut_out), .cut_in = gauge(cases[i].cut_in)};
        rodt_air_finding finding = judge(cases[i].rules, &reading);
        if (finding.result != cases[i].result)
            fail_msg("case %zu: %s", i, rodt_air_result_name(finding.result));
        assert_int_equal(finding.missing == RODT_AIR_MISSING_SENSE, finding.result == RODT_AIR_RESULT_UNDETERMINED);
    }
    rodt_air_reading instant = {.check = RODT_AIR_CHECK_BUILD_UP, .before = {85, 1}, .after = {100, 1}, .seconds = {0, 1}};
    assert_int_equal(missing_of("ca-on", instant), RODT_AIR_MISSING_SENSE);
}

static rodt_air_reading loss_of(rodt_vehicle_class vehicle, int16_t towed, const char *after)
{
    return (rodt_air_reading){.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = vehicle, .towed_units = towed,
                              .before = {110, 1}, .after = gauge(after)};
}

/* A combination whose towed units were not counted may be one that the rule set allows more. */
static void towed_units_that_are_not_said_stay_open(void **state)
{
    (void)state;
    static const char *const ids[] = {"us-ca", "us-inuse", "ca-on"};
    for (size_t i = 0; i < COUNT_OF(ids); i++) {
        for (int vehicle = RODT_VEHICLE_CLASS_ANY; vehicle <= RODT_VEHICLE_CLASS_COMBINATION; vehicle += RODT_VEHICLE_CLASS_COMBINATION) {
            rodt_air_reading small = loss_of((rodt_vehicle_class)vehicle, 0, "107");
            assert_int_equal(judge(ids[i], &small).result, RODT_AIR_RESULT_GOOD);
            assert_int_equal(missing_of(ids[i], loss_of((rodt_vehicle_class)vehicle, 0, "105")), RODT_AIR_MISSING_VEHICLE);
            rodt_air_reading large = loss_of((rodt_vehicle_class)vehicle, 0, "100");
            assert_int_equal(judge(ids[i], &large).result, RODT_AIR_RESULT_DEFECTIVE);
        }
        rodt_air_reading two = loss_of(RODT_VEHICLE_CLASS_COMBINATION, 2, "105");
        assert_int_equal(judge(ids[i], &two).result, RODT_AIR_RESULT_GOOD);
        rodt_air_reading one = loss_of(RODT_VEHICLE_CLASS_COMBINATION, 1, "105");
        assert_int_equal(judge(ids[i], &one).result, RODT_AIR_RESULT_DEFECTIVE);
        assert_int_equal(judge(ids[i], &one).major, strcmp(ids[i], "ca-on") == 0);
    }
    /* ca-qc has no row for three towed units; such a train is not thought of. */
    rodt_air_reading noted = loss_of(RODT_VEHICLE_CLASS_ANY, 0, "107");
    assert_int_equal(judge("ca-qc", &noted).result, RODT_AIR_RESULT_NOTED);
    assert_int_equal(missing_of("ca-qc", loss_of(RODT_VEHICLE_CLASS_COMBINATION, 3, "107")), RODT_AIR_MISSING_ROW);
}

static rodt_air_finding build_up_by(const char *rules, rodt_vehicle_class vehicle, rodt_air_span span, int64_t time)
{
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_BUILD_UP, .vehicle = vehicle, .built = {2001, 0, 0},
                                      .span = span, .seconds = {time, 1}};
    return judge(rules, &reading);
}

/* "3 minutes ... or 90 seconds": one way that fails leaves the other open. A bus has the 90 seconds alone. */
static void one_of_two_ways_is_enough(void **state)
{
    (void)state;
    char text[400];
    rodt_air_finding finding = build_up_by("nz", RODT_VEHICLE_CLASS_SINGLE, RODT_AIR_SPAN_APPLICATIONS, 95);
    assert_int_equal(finding.result, RODT_AIR_RESULT_UNDETERMINED);
    assert_int_equal(finding.missing, RODT_AIR_MISSING_OTHER_WAY);
    expect_ratio(finding.allowed, 90, 1);
    assert_int_equal(rodt_air_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, "another way"));
    finding = build_up_by("nz", RODT_VEHICLE_CLASS_SINGLE, RODT_AIR_SPAN_WARNING, 185);
    assert_int_equal(finding.missing, RODT_AIR_MISSING_OTHER_WAY);
    finding = build_up_by("nz", RODT_VEHICLE_CLASS_SINGLE, RODT_AIR_SPAN_WARNING, 180);
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    finding = build_up_by("nz", RODT_VEHICLE_CLASS_BUS, RODT_AIR_SPAN_APPLICATIONS, 95);
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    finding = build_up_by("nz", RODT_VEHICLE_CLASS_BUS, RODT_AIR_SPAN_WARNING, 60);
    assert_int_equal(finding.missing, RODT_AIR_MISSING_SPAN);
}

/* The kPa that a source prints beside the psi of a span are read off a gauge in kPa. */
static void printed_kpa_time_the_span(void **state)
{
    (void)state;
    static const struct {
        const char *rules, *before, *after;
        rodt_air_result result;
    } cases[] = {
        {"ca-on", "587 kPa", "690 kPa", RODT_AIR_RESULT_GOOD}, {"ca-bc", "345 kPa", "620 kPa", RODT_AIR_RESULT_GOOD},
        {"ca-ab", "345 kPa", "621 kPa", RODT_AIR_RESULT_GOOD}, {"ca-bc", "345 kPa", "90", RODT_AIR_RESULT_GOOD},
        {"ca-bc", "345 kPa", "621 kPa", RODT_AIR_RESULT_UNDETERMINED}, {"ca-nb", "345 kPa", "620 kPa", RODT_AIR_RESULT_UNDETERMINED},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_air_reading reading = {.check = RODT_AIR_CHECK_BUILD_UP, .before = gauge(cases[i].before),
                                          .after = gauge(cases[i].after), .seconds = {100, 1}};
        assert_int_equal(judge(cases[i].rules, &reading).result, cases[i].result);
    }
}

/* 55 psi in kPa to the last digit, by the factor of NIST SP 811, appendix B: 55 x 8896443230521/1290320000000. */
static void units_are_exact_both_ways(void **state)
{
    (void)state;
    rodt_air_reading loss = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .before = gauge("800 kPa"),
                             .after = gauge("760 kPa")};
    expect_ratio(judge("ca-qc", &loss).measured, 40, 1);
    rodt_air_reading mixed = {.check = RODT_AIR_CHECK_WARNING, .pressure = gauge("55")};
    rodt_air_finding finding = judge("ca-qc", &mixed);
    expect_ratio(finding.measured, 97860875535731, 258064000000);
}

/* Each member by itself, with the name that the error gives it. */
static void wrong_readings_are_refused_by_member(void **state)
{
    (void)state;
    const rodt_pressure p100 = {100, 1};
    const struct {
        const char *field;
        rodt_air_reading reading;
    } cases[] = {
        {"check", {.pressure = p100}},
        {"check", {.check = RODT_AIR_CHECK_END, .pressure = p100}},
        {"check", {.check = (rodt_air_check)-1, .pressure = p100}},
        {"vehicle", {.check = RODT_AIR_CHECK_WARNING, .vehicle = RODT_VEHICLE_CLASS_END}},
        {"span", {.check = RODT_AIR_CHECK_BUILD_UP, .span = RODT_AIR_SPAN_END}},
        {"answer", {.check = RODT_AIR_CHECK_WARNING, .answer = (rodt_recorded)3}},
        {"towed_units", {.check = RODT_AIR_CHECK_WARNING, .towed_units = -1}},
        {"towed_units", {.check = RODT_AIR_CHECK_WARNING, .towed_units = RODT_AIR_COUNT_MAX + 1}},
        {"towed_units", {.check = RODT_AIR_CHECK_WARNING, .vehicle = RODT_VEHICLE_CLASS_SINGLE, .towed_units = 1}},
        {"towed_units", {.check = RODT_AIR_CHECK_WARNING, .vehicle = RODT_VEHICLE_CLASS_BUS, .towed_units = 1}},
        {"applications", {.check = RODT_AIR_CHECK_RESERVE, .applications = -1}},
        {"applications", {.check = RODT_AIR_CHECK_RESERVE, .applications = RODT_AIR_COUNT_MAX + 1}},
        {"pressure_unit", {.check = RODT_AIR_CHECK_WARNING, .pressure_unit = RODT_PRESSURE_UNIT_END}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {2001, 0, 5}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {2001, 2, 29}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {2001, 2, 0}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {2001, 13, 40}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {0, 3, 1}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {1899, 0, 0}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {2200, 0, 0}}},
        {"built", {.check = RODT_AIR_CHECK_WARNING, .built = {-1, 0, 0}}},
        {"pressure", {.check = RODT_AIR_CHECK_WARNING, .pressure = {-1, 1}}},
        {"pressure", {.check = RODT_AIR_CHECK_WARNING, .pressure = {1, -1}}},
        {"pressure", {.check = RODT_AIR_CHECK_WARNING, .pressure = {5, 0}}},
        {"pressure", {.check = RODT_AIR_CHECK_WARNING, .pressure = {4, 2}}},
        {"pressure", {.check = RODT_AIR_CHECK_WARNING, .pressure = {301, 1}}},
        {"before", {.check = RODT_AIR_CHECK_RESERVE, .before = {0, 2}}},
        {"after", {.check = RODT_AIR_CHECK_RESERVE, .after = {INT64_MIN, 1}}},
        {"cut_out", {.check = RODT_AIR_CHECK_CUT_IN, .cut_out = {120, INT64_MIN}}},
        {"seconds", {.check = RODT_AIR_CHECK_BUILD_UP, .seconds = {-5, 1}}},
        {"seconds", {.check = RODT_AIR_CHECK_BUILD_UP, .seconds = {RODT_SECONDS_MAX + 1, 1}}},
        {"actual_volume", {.check = RODT_AIR_CHECK_BUILD_UP, .actual_volume = {6, 4}}},
        {"required_volume", {.check = RODT_AIR_CHECK_BUILD_UP, .required_volume = {RODT_VOLUME_MAX_CUBIC_INCHES + 1, 1}}},
        {"reserved", {.check = RODT_AIR_CHECK_WARNING, .reserved = {0, 0, 0, 1}}},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_air_finding finding, before;
        rodt_error error = {.status = RODT_OK};
        memset(&finding, 0x5A, sizeof finding);
        before = finding;
        assert_int_equal(rodt_air_reading_judge(&cases[i].reading, rodt_rules_find("us-cdl"), &finding, &error),
                         RODT_E_ARGUMENT);
        assert_string_equal(error.field, cases[i].field);
        assert_int_equal(error.status, RODT_E_ARGUMENT);
        assert_true(error.text[0] != '\0' && error.line == 0 && error.column == 0);
        assert_memory_equal(&finding, &before, sizeof finding);
        assert_int_equal(rodt_air_reading_check(&cases[i].reading, NULL), RODT_E_ARGUMENT);
    }
}

static void sound_readings_are_taken(void **state)
{
    (void)state;
    const rodt_air_reading cases[] = {
        {.check = RODT_AIR_CHECK_WARNING},
        {.check = RODT_AIR_CHECK_WARNING, .built = {1900, 0, 0}},
        {.check = RODT_AIR_CHECK_WARNING, .built = {2199, 0, 0}},
        {.check = RODT_AIR_CHECK_WARNING, .built = {2001, 0, 0}, .pressure = {0, 1}, .cut_out = gauge("655 kPa")},
        {.check = RODT_AIR_CHECK_CONTAMINATION, .vehicle = RODT_VEHICLE_CLASS_BUS, .built = {2000, 2, 29}},
        {.check = RODT_AIR_CHECK_BUILD_UP, .towed_units = RODT_AIR_COUNT_MAX, .applications = RODT_AIR_COUNT_MAX,
         .seconds = {RODT_SECONDS_MAX, 1}, .actual_volume = {RODT_VOLUME_MAX_CUBIC_INCHES, 1}, .before = {300, 1}},
    };
    rodt_error error = {.status = RODT_E_INTERNAL};
    for (size_t i = 0; i < COUNT_OF(cases); i++)
        assert_int_equal(rodt_air_reading_check(&cases[i], &error), RODT_OK);
    assert_int_equal(error.status, RODT_E_INTERNAL);
}

static void missing_arguments_are_said(void **state)
{
    (void)state;
    rodt_error error;
    rodt_air_finding finding;
    const rodt_air_reading sound = {.check = RODT_AIR_CHECK_WARNING, .pressure = {100, 1}};
    assert_int_equal(rodt_air_reading_check(NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "a reading is needed");
    assert_int_equal(error.column, 0);
    assert_int_equal(rodt_air_reading_judge(NULL, rodt_rules_find("us-cdl"), &finding, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_reading_judge(&sound, rodt_rules_find("us-cdl"), NULL, NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_air_reading_judge(&sound, rodt_rules_find("us-cdl"), NULL, &error), RODT_E_ARGUMENT);
    assert_string_equal(error.text, "room for a finding is needed");
    assert_int_equal(error.column, 0);
    assert_int_equal(rodt_air_reading_judge(&sound, NULL, &finding, NULL), RODT_E_UNKNOWN_RULES);
    assert_int_equal(rodt_air_reading_judge(&sound, NULL, &finding, &error), RODT_E_UNKNOWN_RULES);
    assert_int_equal(error.status, RODT_E_UNKNOWN_RULES);
}

static void a_figure_that_does_not_fit_is_said(void **state)
{
    (void)state;
    rodt_error error;
    rodt_air_finding finding;
    const rodt_air_reading loss = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE,
                                   .before = {INT64_MAX, INT64_MAX / 100 - 1}, .after = {1, INT64_MAX}};
    assert_int_equal(rodt_air_reading_judge(&loss, rodt_rules_find("us-cdl"), &finding, &error), RODT_E_RANGE);
    assert_int_equal(error.status, RODT_E_RANGE);
}

/* Rows and readings by hand: whatever does not fit in 64 bits is a status, and nothing is judged. */
static void no_figure_is_rounded_to_fit(void **state)
{
    (void)state;
    enum { P = 1000000007 };
    static const int64_t q = 4000000007, r = 4000000009;
#define ROW(of, by, ...) {.check = (of), .measure = (by), .comparison = RODT_COMPARISON_NOT_LESS_THAN, .value = {25, 1}, __VA_ARGS__}
    const struct {
        rodt_air_limit row;
        rodt_air_reading reading;
        int towed;
    } cases[] = {
        {ROW(RODT_AIR_CHECK_CUT_IN, RODT_AIR_MEASURE_PSI, .below_cut_out = true),
         {.pressure = {1, q}, .cut_out = {1, r - 3}}, 0},
        {ROW(RODT_AIR_CHECK_CUT_IN, RODT_AIR_MEASURE_KPA, .applications = 0), {.pressure = {1, q}}, 0},
        {ROW(RODT_AIR_CHECK_LOSS_APPLIED, RODT_AIR_MEASURE_PSI_PER_MINUTE, .applications = 0),
         {.before = {1, q}, .after = {1, r}}, 0},
        {ROW(RODT_AIR_CHECK_LOSS_APPLIED, RODT_AIR_MEASURE_PSI_PER_MINUTE, .applications = 0),
         {.before = {INT64_MAX, 1}, .after = {0, 1}}, 0},
        {ROW(RODT_AIR_CHECK_LOSS_APPLIED, RODT_AIR_MEASURE_PSI_PER_MINUTE, .applications = 0),
         {.before = {1000000000000000, 1}, .after = {0, 1}, .seconds = {1, P}}, 0},
        {ROW(RODT_AIR_CHECK_LOSS_APPLIED, RODT_AIR_MEASURE_KPA_PER_MINUTE, .applications = 0),
         {.before = {1, q}, .after = {0, 1}}, 0},
        {ROW(RODT_AIR_CHECK_RESERVE, RODT_AIR_MEASURE_PERCENT_LEFT, .applications = 1),
         {.before = {r, 1}, .after = {1, q}}, 0},
        {ROW(RODT_AIR_CHECK_RESERVE, RODT_AIR_MEASURE_PERCENT_LEFT, .applications = 1),
         {.before = {4000000000000000003, 1}, .after = {4000000000000000001, 1}}, 0},
        {ROW(RODT_AIR_CHECK_RESERVE, RODT_AIR_MEASURE_PERCENT_LOST, .applications = 1),
         {.before = {100000000000000003, 1}, .after = {1, 1}}, 0},
        {ROW(RODT_AIR_CHECK_BUILD_UP, RODT_AIR_MEASURE_SECONDS, .span = RODT_AIR_SPAN_WARNING, .by_volume = true),
         {.span = RODT_AIR_SPAN_WARNING, .seconds = {20, 1}, .actual_volume = {INT64_MAX, 1}, .required_volume = {1, 1}}, 0},
        {ROW(RODT_AIR_CHECK_BUILD_UP, RODT_AIR_MEASURE_SECONDS, .span = RODT_AIR_SPAN_WARNING, .by_volume = true),
         {.span = RODT_AIR_SPAN_WARNING, .seconds = {20, 1}, .actual_volume = {100000000000000003, 1},
          .required_volume = {1, P}}, 0},
        {ROW(RODT_AIR_CHECK_WARNING, RODT_AIR_MEASURE_PSI, .half_cut_out = true),
         {.pressure = {60, 1}, .cut_out = {1, INT64_MAX}}, 0},
        {ROW(RODT_AIR_CHECK_WARNING, RODT_AIR_MEASURE_KPA, .half_cut_out = true), {.pressure = {60, 1}, .cut_out = {1, q}}, 0},
        {ROW(RODT_AIR_CHECK_CUT_IN, RODT_AIR_MEASURE_PSI, .per_towed_unit = {INT64_MAX / 2, 1}), {.pressure = {60, 1}}, 99},
    };
#undef ROW
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        air_outcome out;
        rodt_air_reading reading = cases[i].reading;
        const air_vehicle vehicle = {RODT_VEHICLE_CLASS_COMBINATION, cases[i].towed, {2001, 1, 1}};
        reading.check = cases[i].row.check;
        if (rodti_air_judge_row(&cases[i].row, &reading, &vehicle, &out) != RODT_E_RANGE)
            fail_msg("case %u fits", (unsigned)i);
    }
}

/* By hand: what each measure asks for, and what it makes of the least and the nearest figures. */
#define ROW(of, by, ...) {.check = RODT_AIR_CHECK_##of, .measure = RODT_AIR_MEASURE_##by, .value = {25, 1}, \
                          .comparison = RODT_COMPARISON_NOT_LESS_THAN, __VA_ARGS__}
#define JUDGED(as, measured, allowed) RODT_AIR_RESULT_##as, RODT_AIR_MISSING_NOTHING, {measured, 1}, {allowed, 1}
#define OPEN(what) RODT_AIR_RESULT_UNDETERMINED, RODT_AIR_MISSING_##what, {0, 0}, {0, 0}
#define HALF_OPEN(measured) RODT_AIR_RESULT_UNDETERMINED, RODT_AIR_MISSING_CUT_OUT, {measured, 1}, {0, 0}
#define NEVER_CAME RODT_AIR_RESULT_DEFECTIVE, RODT_AIR_MISSING_NOTHING, {0, 0}, {0, 0}
#define BELOW ROW(CUT_IN, PSI, .below_cut_out = true)
#define LOSS ROW(LOSS_APPLIED, PSI_PER_MINUTE, .applications = 0)
#define RESERVE ROW(RESERVE, PERCENT_LEFT, .applications = 4)
#define PRESSURES ROW(BUILD_UP, SECONDS, .start = {85, 1}, .stop = {100, 1})
#define EVENT ROW(BUILD_UP, SECONDS, .span = RODT_AIR_SPAN_WARNING)
#define VOLUME ROW(BUILD_UP, SECONDS, .span = RODT_AIR_SPAN_WARNING, .by_volume = true)
#define HALF ROW(WARNING, PSI, .half_cut_out = true)
#define HALF_ALONE {.check = RODT_AIR_CHECK_WARNING, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .half_cut_out = true}
#define TIMED .span = RODT_AIR_SPAN_WARNING, .seconds = {30, 1}
static const struct {
    rodt_air_limit row;
    rodt_air_reading reading;
    rodt_air_result result;
    rodt_air_missing missing;
    rodt_ratio measured, allowed;
    bool at_limit;
} single_rows[] = {
    {BELOW, {.cut_out = {100, 1}}, OPEN(VALUE), false},
    {BELOW, {.pressure = {100, 1}}, OPEN(CUT_OUT), false},
    {BELOW, {.pressure = {100, 1}, .cut_out = {100, 1}}, JUDGED(DEFECTIVE, 0, 25), false},
    {BELOW, {.pressure = {101, 1}, .cut_out = {100, 1}}, OPEN(SENSE), false},
    {BELOW, {.pressure = {95, 1}, .cut_out = {120, 1}}, JUDGED(GOOD, 25, 25), true},
    {LOSS, {.before = {100, 1}}, OPEN(VALUE), false},
    {LOSS, {.after = {100, 1}}, OPEN(VALUE), false},
    {LOSS, {.before = {99, 1}, .after = {100, 1}}, OPEN(SENSE), false},
    {LOSS, {.before = {100, 1}, .after = {100, 1}}, JUDGED(DEFECTIVE, 0, 25), false},
    {LOSS, {.before = {100, 1}, .after = {75, 1}}, JUDGED(GOOD, 25, 25), true},
    {LOSS, {.before = {100, 1}, .after = {99, 1}, .seconds = {1, 1}}, JUDGED(GOOD, 60, 25), false},
    {LOSS, {.before = {100, 1}, .after = {99, 1}, .seconds = {0, 1}}, OPEN(VALUE), false},
    {RESERVE, {.before = {1, 1}, .after = {1, 2}}, JUDGED(GOOD, 50, 25), false},
    {RESERVE, {.before = {1, 1}, .after = {1, 2}, .applications = 4}, JUDGED(GOOD, 50, 25), false},
    {RESERVE, {.before = {1, 1}, .after = {1, 2}, .applications = 1}, OPEN(APPLICATIONS), false},
    {RESERVE, {.before = {0, 1}, .after = {0, 1}}, OPEN(VALUE), false},
    {RESERVE, {.before = {1, 1}, .applications = 1}, OPEN(VALUE), false},
    {RESERVE, {.before = {1, 1}, .after = {2, 1}, .applications = 1}, OPEN(SENSE), false},
    {RESERVE, {.before = {1, 1}, .after = {2, 1}}, OPEN(SENSE), false},
    {ROW(RESERVE, PERCENT_LOST, .applications = 4), {.before = {100, 1}, .after = {80, 1}}, JUDGED(DEFECTIVE, 20, 25), false},
    {PRESSURES, {.before = {85, 1}, .after = {100, 1}, .seconds = {30, 1}}, JUDGED(GOOD, 30, 25), false},
    {PRESSURES, {.before = {85, 1}, .after = {100, 1}}, OPEN(VALUE), false},
    {PRESSURES, {.before = {80, 1}, .after = {99, 1}, .seconds = {30, 1}}, OPEN(SPAN), false},
    {PRESSURES, {.before = {85, 1}, .after = {101, 1}, .seconds = {30, 1}}, OPEN(SPAN), false},
    {PRESSURES, {.after = {100, 1}, .seconds = {30, 1}}, OPEN(SPAN), false},
    {PRESSURES, {.before = {85, 1}, .seconds = {30, 1}}, OPEN(SPAN), false},
    {PRESSURES, {.before = {85, 1}, .after = {85, 1}, .seconds = {30, 1}}, OPEN(SENSE), false},
    {EVENT, {TIMED, .before = {100, 1}, .after = {85, 1}}, JUDGED(GOOD, 30, 25), false},
    {VOLUME, {TIMED, .required_volume = {1, 1}}, OPEN(VOLUME), false},
    {VOLUME, {TIMED, .actual_volume = {1, 1}}, OPEN(VOLUME), false},
    {VOLUME, {TIMED, .actual_volume = {1, 1}, .required_volume = {1, 1}}, JUDGED(GOOD, 30, 25), false},
    {VOLUME, {TIMED, .actual_volume = {2, 1}, .required_volume = {1, 1}}, JUDGED(DEFECTIVE, 30, 50), false},
    {HALF, {.pressure = {25, 1}}, JUDGED(GOOD, 25, 25), true},
    {HALF, {.pressure = {26, 1}}, JUDGED(GOOD, 26, 25), false},
    {HALF, {.pressure = {24, 1}}, HALF_OPEN(24), false},
    {HALF, {.pressure = {24, 1}, .cut_out = {60, 1}}, JUDGED(DEFECTIVE, 24, 25), false},
    {HALF, {.pressure = {24, 1}, .cut_out = {40, 1}}, JUDGED(GOOD, 24, 20), false},
    {HALF_ALONE, {.pressure = {90, 1}}, HALF_OPEN(90), false},
    {HALF_ALONE, {.pressure = {24, 1}, .cut_out = {60, 1}}, JUDGED(DEFECTIVE, 24, 30), false},
    {EVENT, {.answer = RODT_RECORDED_NO, .seconds = {30, 1}}, OPEN(SENSE), false},
    {ROW(BUILD_UP, SECONDS, .kind = RODT_AIR_KIND_EITHER), {.answer = RODT_RECORDED_NO}, NEVER_CAME, false},
    {ROW(BUILD_UP, SECONDS, .kind = RODT_AIR_KIND_LIMIT_AND_MINOR), {.answer = RODT_RECORDED_NO}, NEVER_CAME, false},
};
#undef ROW

static void one_row_and_one_reading(void **state)
{
    (void)state;
    const air_vehicle vehicle = {.vehicle = RODT_VEHICLE_CLASS_SINGLE};
    for (size_t i = 0; i < COUNT_OF(single_rows); i++) {
        air_outcome out;
        rodt_air_reading reading = single_rows[i].reading;
        reading.check = single_rows[i].row.check;
        assert_int_equal(rodti_air_judge_row(&single_rows[i].row, &reading, &vehicle, &out), RODT_OK);
        if (out.result != single_rows[i].result || out.missing != single_rows[i].missing)
            fail_msg("case %zu: %s, missing \"%s\"", i, rodt_air_result_name(out.result), rodt_air_missing_name(out.missing));
        expect_ratio(out.measured, single_rows[i].measured.num, single_rows[i].measured.den);
        expect_ratio(out.allowed, single_rows[i].allowed.num, single_rows[i].allowed.den);
        assert_int_equal(out.at_limit, single_rows[i].at_limit);
        assert_ptr_equal(out.row, &single_rows[i].row);
        assert_false(out.major || out.minor);
    }
}

/* Between two figures: what is allowed is named by the end that is nearer to what was found. */
static void between_names_the_nearer_end(void **state)
{
    (void)state;
    static const struct {
        int64_t measured, allowed;
        bool at_limit;
        rodt_air_result result;
    } cases[] = {{99, 100, false, RODT_AIR_RESULT_DEFECTIVE}, {100, 100, true, RODT_AIR_RESULT_GOOD},
                 {115, 100, false, RODT_AIR_RESULT_GOOD},     {130, 130, true, RODT_AIR_RESULT_GOOD},
                 {131, 130, false, RODT_AIR_RESULT_DEFECTIVE}};
    const rodt_air_limit row = {.check = RODT_AIR_CHECK_CUT_OUT, .measure = RODT_AIR_MEASURE_PSI, .towed_units = -1,
                                .comparison = RODT_COMPARISON_BETWEEN, .value = {100, 1}, .upper = {130, 1}};
    const air_vehicle vehicle = {.vehicle = RODT_VEHICLE_CLASS_SINGLE};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        const rodt_air_reading reading = {.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {cases[i].measured, 1}};
        air_outcome out;
        assert_int_equal(rodti_air_judge_row(&row, &reading, &vehicle, &out), RODT_OK);
        assert_int_equal(out.allowed.num, cases[i].allowed);
        assert_int_equal(out.at_limit, cases[i].at_limit);
        assert_int_equal(out.result, cases[i].result);
    }
}

static void a_volume_of_zero_is_none(void **state)
{
    (void)state;
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_BUILD_UP, .before = {85, 1}, .after = {100, 1},
                                      .seconds = {20, 1}, .actual_volume = {6960, 1}, .required_volume = {0, 1}};
    assert_int_equal(missing_of("us-newvehicle", reading), RODT_AIR_MISSING_VOLUME);
}

/* Defective as every vehicle, but of another rank: the vehicle decides. */
static void ranks_that_differ_stay_open(void **state)
{
    (void)state;
    static const rodt_air_kind kinds[] = {RODT_AIR_KIND_LIMIT, RODT_AIR_KIND_LIMIT_AND_MAJOR, RODT_AIR_KIND_LIMIT_AND_MINOR};
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_CUT_IN, .built = {2001, 1, 1}, .pressure = {90, 1}};
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        rodt_air_limit rows[3];
        for (size_t v = 0; v < COUNT_OF(rows); v++)
            rows[v] = (rodt_air_limit){.check = RODT_AIR_CHECK_CUT_IN, .comparison = RODT_COMPARISON_NOT_LESS_THAN,
                                       .vehicle = RODT_VEHICLE_CLASS_SINGLE + (uint32_t)v, .towed_units = -1, .value = {95, 1},
                                       .source = rodt_rules_source(rodt_rules_at(0))};
        rows[0].kind = kinds[i];
        const rodt_rules rules = {.id = "invented", .air = rows, .air_count = COUNT_OF(rows)};
        rodt_air_finding finding;
        assert_int_equal(rodt_air_reading_judge(&reading, &rules, &finding, NULL), RODT_OK);
        bool alike = kinds[i] == RODT_AIR_KIND_LIMIT;
        assert_int_equal(finding.result, alike ? RODT_AIR_RESULT_DEFECTIVE : RODT_AIR_RESULT_UNDETERMINED);
        assert_int_equal(finding.missing, alike ? RODT_AIR_MISSING_NOTHING : RODT_AIR_MISSING_VEHICLE);
    }
}

/* Each doubt by its code, one step beside it, and without the figure that it needs. */
static void each_doubt_by_its_code(void **state)
{
    (void)state;
    static const struct {
        rodt_air_reading reading;
        rodt_message_code code;
    } cases[] = {
        {{.check = RODT_AIR_CHECK_WARNING, .pressure = {100, 1}}, RODT_MESSAGE_AIR_DOUBT_TOO_HIGH},
        {{.check = RODT_AIR_CHECK_WARNING, .pressure = {199, 2}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_WARNING, .pressure = {85, 1}, .cut_in = {85, 1}}, RODT_MESSAGE_AIR_DOUBT_WARNING_ABOVE_CUT_IN},
        {{.check = RODT_AIR_CHECK_WARNING, .pressure = {85, 1}, .cut_in = {86, 1}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_WARNING, .pressure = {85, 1}, .cut_out = {85, 1}}, RODT_MESSAGE_AIR_DOUBT_WARNING_ABOVE_CUT_IN},
        {{.check = RODT_AIR_CHECK_WARNING, .pressure = {85, 1}, .cut_out = {86, 1}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_WARNING, .cut_in = {100, 1}, .cut_out = {120, 1}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_SUPPLY_VALVE, .pressure = {100, 1}}, RODT_MESSAGE_AIR_DOUBT_TOO_HIGH},
        {{.check = RODT_AIR_CHECK_PARKING_VALVE, .pressure = {100, 1}}, RODT_MESSAGE_AIR_DOUBT_TOO_HIGH},
        {{.check = RODT_AIR_CHECK_PARKING_VALVE, .pressure = {199, 2}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {120, 1}, .cut_in = {120, 1}}, RODT_MESSAGE_AIR_DOUBT_CUT_IN_ABOVE_CUT_OUT},
        {{.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {120, 1}, .cut_in = {119, 1}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {80, 1}}, RODT_MESSAGE_AIR_DOUBT_CUT_OUT_LOW},
        {{.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {161, 2}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_CUT_IN, .pressure = {100, 1}, .cut_out = {100, 1}}, RODT_MESSAGE_AIR_DOUBT_CUT_IN_ABOVE_CUT_OUT},
        {{.check = RODT_AIR_CHECK_CUT_IN, .pressure = {100, 1}, .cut_out = {101, 1}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_CUT_IN, .pressure = {60, 1}}, RODT_MESSAGE_AIR_DOUBT_CUT_IN_LOW},
        {{.check = RODT_AIR_CHECK_CUT_IN, .pressure = {121, 2}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_BUILD_UP, .seconds = {0, 1}}, RODT_MESSAGE_AIR_DOUBT_NO_TIME},
        {{.check = RODT_AIR_CHECK_BUILD_UP, .seconds = {1, 2}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_BUILD_UP}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_RESERVE, .pressure = {200, 1}}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_SUPPLY_VALVE}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_CUT_OUT}, RODT_MESSAGE_NONE},
        {{.check = RODT_AIR_CHECK_CUT_IN}, RODT_MESSAGE_NONE},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        if (rodti_air_doubt(&cases[i].reading) != cases[i].code)
            fail_msg("case %zu: %s", i, rodt_message_code_name(rodti_air_doubt(&cases[i].reading)));
    }
}

static int64_t bound_for(const rodt_rules *rules, rodt_vehicle_class vehicle, int16_t towed, rodt_date day)
{
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_CUT_IN, .vehicle = vehicle, .towed_units = towed, .built = day,
                                      .pressure = {90, 1}};
    rodt_air_finding finding;
    assert_int_equal(rodt_air_reading_judge(&reading, rules, &finding, NULL), RODT_OK);
    return finding.allowed.num;
}

/* Invented rows: the most exact one for the vehicle takes the place of the others. */
static void the_most_exact_row_is_chosen(void **state)
{
    (void)state;
    const rodt_date old = {1960, 1, 1}, late = {2001, 1, 1}, end = {1969, 12, 31};
    rodt_air_limit rows[7];
    for (size_t i = 0; i < COUNT_OF(rows); i++)
        rows[i] = (rodt_air_limit){.check = RODT_AIR_CHECK_CUT_IN, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .towed_units = -1,
                                   .value = {(int64_t)i + 1, 1}, .source = rodt_rules_source(rodt_rules_at(0))};
    rows[1].vehicle = RODT_VEHICLE_CLASS_SINGLE;
    rows[2].vehicle = RODT_VEHICLE_CLASS_BUS;
    rows[3].vehicle = rows[4].vehicle = rows[5].vehicle = RODT_VEHICLE_CLASS_COMBINATION;
    rows[4].towed_units = 2;
    rows[4].towed_or_more = true;
    rows[5].towed_units = 3;
    rows[6].vehicle = RODT_VEHICLE_CLASS_SINGLE;
    rows[6].built_until = end;
    rodt_rules rules = {.id = "invented", .air = rows, .air_count = COUNT_OF(rows)};
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_SINGLE, 0, late), 2);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_SINGLE, 0, old), 7);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_BUS, 0, late), 3);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_COMBINATION, 0, late), 4);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_COMBINATION, 2, late), 5);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_ANY, 3, late), 6);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_COMBINATION, 4, late), 5);
    rules.air_count = 2; /* without a row for buses a bus is a single vehicle */
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_BUS, 0, late), 2);
    assert_int_equal(bound_for(&rules, RODT_VEHICLE_CLASS_COMBINATION, 0, late), 1);
}

/* Of a limit that is kept and a usual figure the limit is reported, whichever stands first; a usual figure rather than a
 * row that times another span. */
static void what_is_reported_of_two_rows(void **state)
{
    (void)state;
    for (int first = 0; first <= 1; first++) {
        rodt_air_limit rows[2] = {{.check = RODT_AIR_CHECK_BUILD_UP, .comparison = RODT_COMPARISON_NOT_MORE_THAN, .towed_units = -1,
                                   .measure = RODT_AIR_MEASURE_SECONDS, .value = {60, 1}, .span = RODT_AIR_SPAN_WARNING}};
        rows[1] = rows[0];
        rows[first].kind = RODT_AIR_KIND_USUAL;
        const rodt_rules rules = {.id = "invented", .air = rows, .air_count = COUNT_OF(rows)};
        const rodt_air_reading reading = {.check = RODT_AIR_CHECK_BUILD_UP, .span = RODT_AIR_SPAN_WARNING, .seconds = {50, 1}};
        rodt_air_finding finding;
        assert_int_equal(rodt_air_reading_judge(&reading, &rules, &finding, NULL), RODT_OK);
        assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
        rows[1 - first].span = RODT_AIR_SPAN_RECOVERY;
        assert_int_equal(rodt_air_reading_judge(&reading, &rules, &finding, NULL), RODT_OK);
        assert_int_equal(finding.result, RODT_AIR_RESULT_NOTED);
    }
}

/* Invented rows: 95 psi for vehicles of some days of build, 85 psi for all others; 90 psi is read. The days of another
 * check, in front of them, are no matter. */
static const struct {
    rodt_date from, until, built;
    rodt_air_missing missing;
    rodt_air_result result;
} built_cases[] = {
#define OPEN_BUILT RODT_AIR_MISSING_BUILT, RODT_AIR_RESULT_UNDETERMINED
#define GOOD_BUILT RODT_AIR_MISSING_NOTHING, RODT_AIR_RESULT_GOOD
#define BAD_BUILT RODT_AIR_MISSING_NOTHING, RODT_AIR_RESULT_DEFECTIVE
    {{1970, 1, 1}, {1979, 12, 31}, {0, 0, 0}, OPEN_BUILT},   {{2199, 12, 31}, {0, 0, 0}, {0, 0, 0}, OPEN_BUILT},
    {{0, 0, 0}, {2199, 12, 31}, {0, 0, 0}, BAD_BUILT},       {{1900, 1, 1}, {0, 0, 0}, {0, 0, 0}, BAD_BUILT},
    {{0, 0, 0}, {1900, 1, 1}, {0, 0, 0}, OPEN_BUILT},        {{0, 0, 0}, {1900, 6, 30}, {0, 0, 0}, OPEN_BUILT},
    {{1978, 3, 1}, {1978, 6, 30}, {0, 0, 0}, OPEN_BUILT},
    {{2015, 3, 1}, {2015, 6, 30}, {2015, 0, 0}, OPEN_BUILT}, {{2015, 12, 31}, {0, 0, 0}, {2015, 0, 0}, OPEN_BUILT},
    {{0, 0, 0}, {2015, 12, 31}, {2015, 0, 0}, BAD_BUILT},    {{2015, 1, 1}, {0, 0, 0}, {2015, 0, 0}, BAD_BUILT},
    {{0, 0, 0}, {2015, 1, 1}, {2015, 0, 0}, OPEN_BUILT},     {{2016, 1, 1}, {0, 0, 0}, {2015, 0, 0}, GOOD_BUILT},
    {{0, 0, 0}, {2014, 12, 31}, {2015, 0, 0}, GOOD_BUILT},   {{2015, 5, 5}, {0, 0, 0}, {2015, 5, 5}, BAD_BUILT},
    {{0, 0, 0}, {2015, 5, 4}, {2015, 5, 5}, GOOD_BUILT},     {{2015, 5, 6}, {0, 0, 0}, {2015, 5, 5}, GOOD_BUILT},
};

static void days_of_build_at_their_ends(void **state)
{
    (void)state;
    enum { OTHERS = 20 };
    for (size_t i = 0; i < 2 * COUNT_OF(built_cases); i++) {
        const rodt_date built = built_cases[i / 2].built;
        rodt_air_limit rows[OTHERS + 2];
        for (size_t r = 0; r < COUNT_OF(rows); r++)
            rows[r] = (rodt_air_limit){.check = r < OTHERS ? RODT_AIR_CHECK_WARNING : RODT_AIR_CHECK_CUT_IN, .towed_units = -1,
                                       .comparison = RODT_COMPARISON_NOT_LESS_THAN, .value = {85, 1},
                                       .built_from = {(int16_t)(1901 + 10 * r), 1, 1}, .built_until = {(int16_t)(1905 + 10 * r), 1, 1},
                                       .source = rodt_rules_source(rodt_rules_at(0))};
        rodt_air_limit *dated = &rows[OTHERS + i % 2], *other = &rows[OTHERS + 1 - i % 2];
        other->built_from = other->built_until = (rodt_date){0, 0, 0};
        dated->built_from = built_cases[i / 2].from;
        dated->built_until = built_cases[i / 2].until;
        dated->value.num = 95;
        const rodt_rules rules = {.id = "invented", .air = rows, .air_count = COUNT_OF(rows)};
        const rodt_rules alone = {.id = "invented", .air = rows + OTHERS, .air_count = 2};
        const rodt_air_reading reading = {.check = RODT_AIR_CHECK_CUT_IN, .built = built, .pressure = {90, 1}};
        rodt_air_finding finding, same;
        assert_int_equal(rodt_air_reading_judge(&reading, &rules, &finding, NULL), RODT_OK);
        assert_int_equal(rodt_air_reading_judge(&reading, &alone, &same, NULL), RODT_OK);
        if (finding.result != built_cases[i / 2].result || same.result != finding.result)
            fail_msg("case %zu: %s", i, rodt_air_result_name(finding.result));
        assert_int_equal(finding.missing, built_cases[i / 2].missing);
    }
}

/* A rule set without limits of strokes has air checks; a stroke judged by it has no published limit. */
static void strokes_have_no_limit_there(void **state)
{
    (void)state;
    rodt_reading reading = {.released = {2, 1}, .applied = {4, 1}};
    rodt_finding finding;
    assert_int_equal(rodt_chamber_parse("30", &reading.chamber, NULL), RODT_OK);
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *rules = rodt_rules_at(r);
        if (rodt_rules_limit_count(rules) > 0 || rodt_ratio_given(rodt_rules_rated_share(rules)))
            continue;
        assert_int_equal(rodt_reading_judge(&reading, rules, &finding, NULL), RODT_OK);
        assert_int_equal(finding.verdict, RODT_VERDICT_UNDETERMINED);
        assert_true(rodt_finding_has(&finding, RODT_REASON_NO_PUBLISHED_LIMIT));
    }
}

/* A carrier's limits stand on a law: the air checks are those of the law. */
static void a_carriers_limits_keep_the_air_checks(void **state)
{
    (void)state;
    static const char table[] = "family,size,class,limit\nclamp,30,standard,1 7/8\n";
    rodt_rules *own = NULL;
    const rodt_rules *law = rodt_rules_find("us-fmcsr");
    assert_int_equal(rodt_rules_load(law, "own", table, sizeof table - 1, &own, NULL), RODT_OK);
    assert_int_equal(rodt_rules_air_count(own), 0);
    assert_ptr_equal(rodt_rules_air_law(own), law);
    assert_null(rodt_rules_air_law(law));
    const rodt_air_reading warning = {.check = RODT_AIR_CHECK_WARNING, .pressure = {59, 1}, .built = {2015, 0, 0}};
    rodt_air_finding finding;
    assert_int_equal(rodt_air_reading_judge(&warning, own, &finding, NULL), RODT_OK);
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    assert_ptr_equal(finding.row, finding.law_row);
    assert_null(finding.own_row);
    rodt_rules_unref(own);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_figure_is_rounded_to_fit),
        cmocka_unit_test(one_row_and_one_reading),
        cmocka_unit_test(between_names_the_nearer_end),
        cmocka_unit_test(a_volume_of_zero_is_none),
        cmocka_unit_test(ranks_that_differ_stay_open),
        cmocka_unit_test(each_doubt_by_its_code),
        cmocka_unit_test(every_published_edge),
        cmocka_unit_test(every_row_is_reached_and_explained),
        cmocka_unit_test(fingerprint_of_all_air_rows),
        cmocka_unit_test(build_up_time_goes_with_the_volume),
        cmocka_unit_test(what_is_missing_is_said),
        cmocka_unit_test(what_never_came_is_defective),
        cmocka_unit_test(what_cannot_be_is_never_good),
        cmocka_unit_test(towed_units_that_are_not_said_stay_open),
        cmocka_unit_test(one_of_two_ways_is_enough),
        cmocka_unit_test(printed_kpa_time_the_span),
        cmocka_unit_test(units_are_exact_both_ways),
        cmocka_unit_test(wrong_readings_are_refused_by_member),
        cmocka_unit_test(sound_readings_are_taken),
        cmocka_unit_test(missing_arguments_are_said),
        cmocka_unit_test(a_figure_that_does_not_fit_is_said),
        cmocka_unit_test(the_most_exact_row_is_chosen),
        cmocka_unit_test(what_is_reported_of_two_rows),
        cmocka_unit_test(days_of_build_at_their_ends),
        cmocka_unit_test(strokes_have_no_limit_there),
        cmocka_unit_test(a_carriers_limits_keep_the_air_checks),
    };
    return cmocka_run_group_tests_name("aircheck", tests, NULL, NULL);
}
