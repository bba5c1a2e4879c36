/* SPDX-License-Identifier: Apache-2.0 */
/* A carrier's own air checks on top of a law: read, proved to be at least as strict, and judged beside the law's. The
 * figures of the carrier are invented; those of the law are rows of tables/aircheck.csv. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>
#include <cmocka.h>

#include "core/common.h"
#include "rodtravel/rodtravel.h"

#define AIR "check,vehicle,towed,comparison,value,upper,measure\n"
#define LIMITS "family,size,class,limit\nclamp,30,standard,1 7/8\n"

static rodt_status load_on(const char *law, const char *text, rodt_rules **out, rodt_error *error)
{
    return rodt_rules_load(rodt_rules_find(law), "own.csv", text, strlen(text), out, error);
}

static rodt_rules *load(const char *law, const char *text)
{
    rodt_rules *rules = NULL;
    rodt_error error = {.status = RODT_OK};
    if (load_on(law, text, &rules, &error) != RODT_OK)
        fail_msg("%u:%u: %s: %s", (unsigned)error.line, (unsigned)error.column, error.field, error.text);
    return rules;
}

static void refused(const char *law, const char *text, rodt_status status, uint32_t line, uint32_t column,
                    const char *field, const char *sentence)
{
    rodt_rules *rules = NULL;
    rodt_error error = {.status = RODT_OK};
    assert_int_equal(load_on(law, text, &rules, &error), status);
    assert_null(rules);
    assert_string_equal(error.text, sentence);
    assert_string_equal(error.field, field);
    assert_int_equal(error.status, status);
    assert_int_equal(error.line, line);
    assert_int_equal(error.column, column);
}

static rodt_air_finding judge(const rodt_rules *rules, rodt_air_reading reading)
{
    rodt_air_finding finding;
    rodt_error error;
    if (rodt_air_reading_judge(&reading, rules, &finding, &error) != RODT_OK)
        fail_msg("%s: %s", error.field, error.text);
    return finding;
}

static rodt_air_reading loss(rodt_vehicle_class vehicle, int16_t towed, int64_t after)
{
    return (rodt_air_reading){.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = vehicle, .towed_units = towed,
                              .before = {110, 1}, .after = {after, 1}};
}

/* --- Reading ----------------------------------------------------------------------------------------- */

static void rows_are_read_as_the_laws_are(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", "measure,check,comparison,value,vehicle,towed,built_from,source,setup\n"
                                     "kPa-per-minute,loss-applied,not-more-than,13 1/2,combination,1,2001-02-03,Bulletin 7,"
                                     "\"engine off, brakes held\"\n");
    assert_int_equal(rodt_rules_air_count(own), 1);
    assert_int_equal(rodt_rules_limit_count(own), 0);
    assert_null(rodt_rules_air_at(own, 1));
    const rodt_air_limit *row = rodt_rules_air_at(own, 0);
    assert_int_equal(row->check, RODT_AIR_CHECK_LOSS_APPLIED);
    assert_int_equal(row->kind, RODT_AIR_KIND_LIMIT);
    assert_int_equal(row->measure, RODT_AIR_MEASURE_KPA_PER_MINUTE);
    assert_int_equal(row->towed_units, 1);
    assert_int_equal(row->built_from.year, 2001);
    assert_int_equal(row->value.num, 27);
    assert_int_equal(row->value.den, 2);
    assert_string_equal(row->published, "not more than 13 1/2 kPa/min");
    assert_string_equal(row->setup, "engine off, brakes held");
    assert_string_equal(row->source->document, "Bulletin 7");
    assert_string_equal(row->source->body, "the carrier");
    assert_int_equal(row->evidence, RODT_EVIDENCE_NONE);
    assert_ptr_equal(rodt_rules_air_law(own), rodt_rules_find("us-cdl"));
    rodt_rules_unref(own);
}

/* A row without a source or without evidence is the carrier's own word, never law that was read. */
static void evidence_is_never_invented(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", "check,comparison,value,measure,evidence\nwarning,not-less-than,70,psi,\n"
                                     "cut-in,not-less-than,90,psi,from-memory\n");
    assert_int_equal(rodt_rules_air_at(own, 0)->evidence, RODT_EVIDENCE_NONE);
    assert_string_equal(rodt_rules_air_at(own, 0)->source->document, "own.csv");
    assert_int_equal(rodt_rules_air_at(own, 1)->evidence, RODT_EVIDENCE_FROM_MEMORY);
    rodt_rules_unref(own);
}

static void both_tables_in_one_text_in_either_order(void **state)
{
    (void)state;
    static const char *const texts[] = {
        LIMITS AIR "warning,,,not-less-than,70,,psi\n",
        AIR "warning,,,not-less-than,70,,psi\n" LIMITS,
        "# both\r\n\r\n" AIR "warning,,,not-less-than,70,,psi\r\n# and\r\n\r\n" LIMITS,
        "\xEF\xBB\xBF" LIMITS "\n\n" AIR "warning,,,not-less-than,70,,psi",
    };
    for (size_t i = 0; i < COUNT_OF(texts); i++) {
        rodt_rules *own = load("us-fmcsr", texts[i]);
        assert_int_equal(rodt_rules_limit_count(own), 1);
        assert_int_equal(rodt_rules_air_count(own), 1);
        assert_string_equal(rodt_rules_limit_at(own, 0)->size, "30");
        rodt_rules_unref(own);
    }
}

static void faults_of_both_tables_have_their_line(void **state)
{
    (void)state;
    refused("us-fmcsr", LIMITS AIR "warning,,,not-less-than,70,,bar\n", RODT_E_TABLE, 4, 29, "measure",
            "expected psi, kPa, seconds, psi-per-minute, kPa-per-minute, percent-left, percent-lost or yes-no, found \"bar\"");
    refused("us-fmcsr", AIR "warning,,,not-less-than,70,,psi\n\nfamily,size,class,limit\nclamp,30,standard,2 1/8\n",
            RODT_E_LAXER, 5, 19, "limit", "2 1/8 is laxer than the law, which has 2 for clamp 30 standard");
    refused("us-fmcsr", LIMITS AIR "warning,,,not-less-than,50,,psi\n", RODT_E_LAXER, 4, 25, "value",
            "\"not less than 50 psi\" is laxer than the law, which has not less than 55 psi or half of the cut-out for a "
            "single vehicle built on 1900-01-01");
    refused("us-fmcsr", LIMITS AIR "warning,,,not-less-than,70,,psi\n" AIR, RODT_E_TABLE, 5, 0, "",
            "a second table of air checks begins here");
    refused("us-fmcsr", LIMITS AIR "warning,,,not-less-than,70,,psi\n" LIMITS, RODT_E_TABLE, 5, 0, "",
            "a second table of limits begins here");
    refused("us-fmcsr", LIMITS AIR, RODT_E_TABLE, 0, 0, "", "the table has no rows");
    refused("us-fmcsr", AIR LIMITS, RODT_E_TABLE, 0, 0, "", "the table has no rows");
}

static void broken_rows_are_refused(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        uint32_t line, column;
        const char *field, *sentence;
    } cases[] = {
        {"check,comparison,value\nwarning,not-less-than,70\n", 1, 0, "", "the column \"measure\" is missing"},
        {"check,comparison,value,measure,colour\n", 1, 32, "", "no column is called \"colour\""},
        {AIR "warnings,,,not-less-than,70,,psi\n", 2, 1, "check", NULL},
        {AIR ",,,not-less-than,70,,psi\n", 2, 1, "check", "the cell is empty"},
        {AIR "warning,lorry,,not-less-than,70,,psi\n", 2, 9, "vehicle",
         "expected any, single, combination or bus, found \"lorry\""},
        {AIR "warning,combination,two,not-less-than,70,,psi\n", 2, 21, "towed",
         "expected a number of towed units such as 1 or 2+"},
        {AIR "warning,,,at least,70,,psi\n", 2, 11, "comparison", NULL},
        {AIR "warning,,,not-less-than,7O,,psi\n", 2, 26, "value", "expected a number and nothing more"},
        {AIR "warning,,,not-less-than,,,psi\n", 2, 0, "", "the figures do not go with \"not-less-than\""},
        {AIR "cut-out,,,between,130,120,psi\n", 2, 0, "", "the figures do not go with \"between\""},
        {AIR "warning,,,not-less-than,70,,seconds\n", 2, 0, "", "check \"warning\" is not measured in \"seconds\""},
        {AIR "audible-leak,,,must-be-yes,,,yes-no\n", 2, 0, "",
         "a cell of the row has no place in check \"audible-leak\", or one is missing"},
        {AIR "warning,single,2,not-less-than,70,,psi\n", 2, 0, "",
         "a cell of the row has no place in check \"warning\", or one is missing"},
        {AIR "warning,,,not-less-than,70,,psi\nwarning,any,,not-less-than,75,,psi\n", 3, 0, "",
         "the same check for the same vehicles is in line 2"},
        {"check,kind,comparison,value,measure\nwarning,usual,not-less-than,70,psi\n", 2, 9, "kind",
         "a carrier's own figure is a limit"},
        {"rules,check,comparison,value,measure\nca-on,warning,not-less-than,70,psi\n", 2, 1, "rules",
         "the table is based on \"us-cdl\", this row on another rule set"},
        {"check,comparison,value,measure,built_from,built_until\nwarning,not-less-than,70,psi,2020-01-01,2019-12-31\n", 2,
         41, "built_until", "the last day is before the first"},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        rodt_rules *rules = NULL;
        rodt_error error = {.status = RODT_OK};
        assert_int_equal(load_on("us-cdl", cases[i].text, &rules, &error), RODT_E_TABLE);
        if (cases[i].sentence != NULL)
            assert_string_equal(error.text, cases[i].sentence);
        assert_string_equal(error.field, cases[i].field);
        assert_int_equal(error.line, cases[i].line);
        assert_int_equal(error.column, cases[i].column);
        assert_null(rules);
    }
}

static void dated_rows_of_one_check_are_bounded(void **state)
{
    (void)state;
    char text[2000] = "check,comparison,value,measure,built_from,built_until\n";
    for (int year = 2001; year <= 2015; year++) {
        size_t used = strlen(text);
        snprintf(text + used, sizeof text - used, "warning,not-less-than,70,psi,%d-01-01,%d-12-31\n", year, year);
    }
    refused("us-cdl", text, RODT_E_TABLE, 16, 0, "", "more than 14 rows of one check have days of build");
    *strstr(text, "warning,not-less-than,70,psi,2015") = '\0';
    rodt_rules_unref(load("us-cdl", text));
}

/* --- Stricter only ----------------------------------------------------------------------------------- */

static void expect_strict(const char *law, const char *row, bool strict)
{
    char text[400];
    rodt_rules *rules = NULL;
    rodt_error error = {.text = ""};
    snprintf(text, sizeof text, "check,vehicle,towed,comparison,value,upper,per_towed,measure,built_from,built_until,by,"
             "applications,start,stop\n%s\n", row);
    rodt_status status = load_on(law, text, &rules, &error);
    if (status != (strict ? RODT_OK : RODT_E_LAXER))
        fail_msg("%s on %s: %s (line %u, column %u)", row, law, error.text, (unsigned)error.line, (unsigned)error.column);
    rodt_rules_unref(rules);
}

/* The law beside each row, from tables/aircheck.csv. */
static const struct {
    const char *law, *row;
    bool strict;
} strict_cases[] = {
    /* us-cdl, single: less than 2 psi a minute released, not more than 3 applied */
    {"us-cdl", "loss-released,single,,less-than,2,,,psi-per-minute,,,,,,", true},
    {"us-cdl", "loss-released,single,,not-more-than,2,,,psi-per-minute,,,,,,", false},
    {"us-cdl", "loss-released,single,,not-more-than,1 99/100,,,psi-per-minute,,,,,,", true},
    {"us-cdl", "loss-applied,single,,not-more-than,3,,,psi-per-minute,,,,,,", true},
    {"us-cdl", "loss-applied,single,,less-than,3,,,psi-per-minute,,,,,,", true},
    {"us-cdl", "loss-applied,single,,not-more-than,3.01,,,psi-per-minute,,,,,,", false},
    {"us-cdl", "loss-applied,single,,not-less-than,3,,,psi-per-minute,,,,,,", false},
    {"us-cdl", "loss-applied,single,,between,1,3,,psi-per-minute,,,,,,", true},
    {"us-cdl", "loss-applied,single,,between,1,3.5,,psi-per-minute,,,,,,", false},
    /* 3 psi are 20.684 kPa */
    {"us-cdl", "loss-applied,single,,not-more-than,20.684,,,kPa-per-minute,,,,,,", true},
    {"us-cdl", "loss-applied,single,,not-more-than,20.685,,,kPa-per-minute,,,,,,", false},
    /* a figure for every vehicle is also that of a single one */
    {"us-cdl", "loss-applied,,,not-more-than,4,,,psi-per-minute,,,,,,", false},
    {"us-cdl", "loss-applied,,,not-more-than,3,,,psi-per-minute,,,,,,", true},
    {"us-cdl", "loss-applied,combination,,not-more-than,4,,,psi-per-minute,,,,,,", true},
    /* ca-on: 3 single, 4 with one towed unit, 6 with more */
    {"ca-on", "loss-applied,combination,2+,not-more-than,6,,,psi-per-minute,,,,,,", true},
    {"ca-on", "loss-applied,combination,,not-more-than,6,,,psi-per-minute,,,,,,", false},
    {"ca-on", "loss-applied,combination,,not-more-than,4,,1,psi-per-minute,,,,,,", false},
    {"ca-on", "loss-applied,combination,,not-more-than,4,,,psi-per-minute,,,,,,", true},
    /* us-inuse has a figure for each towed unit */
    {"us-inuse", "loss-applied,combination,,not-more-than,2,,1,psi-per-minute,,,,,,", true},
    {"us-inuse", "loss-applied,combination,,not-more-than,2,,3/2,psi-per-minute,,,,,,", false},
    /* us-fmcsr warning: 55 psi, or half of the cut-out, until 1975-02-28; 60 psi from 1975-03-01 */
    {"us-fmcsr", "warning,,,not-less-than,60,,,psi,,,,,,", true},
    {"us-fmcsr", "warning,,,more-than,60,,,psi,,,,,,", true},
    {"us-fmcsr", "warning,,,not-less-than,59.9,,,psi,,,,,,", false},
    {"us-fmcsr", "warning,,,not-less-than,57,,,psi,,1975-02-28,,,,", true},
    {"us-fmcsr", "warning,,,not-less-than,57,,,psi,,1975-03-01,,,,", false},
    {"us-fmcsr", "warning,,,not-less-than,57,,,psi,1960-01-01,1970-12-31,half-cut-out,,,", true},
    {"us-fmcsr", "warning,,,not-less-than,65,,,psi,1980-01-01,,half-cut-out,,,", false},
    {"us-fmcsr", "warning,,,not-less-than,,,,psi,,1975-02-28,half-cut-out,,,", true},
    {"us-fmcsr", "warning,,,not-less-than,,,,psi,1980-01-01,,half-cut-out,,,", false},
    {"us-fmcsr", "warning,,,not-less-than,413.7,,,kPa,,,,,,", true},
    {"us-fmcsr", "warning,,,not-less-than,413.6,,,kPa,,,,,,", false},
    /* us-nh: half of the cut-out, whatever it is; a figure beside it may be less */
    {"us-nh", "warning,,,not-less-than,,,,psi,,,half-cut-out,,,", true},
    {"us-nh", "warning,,,not-less-than,60,,,psi,,,half-cut-out,,,", false},
    {"us-nh", "warning,,,not-less-than,60,,,psi,,,,,,", false},
    /* reserve: not below 70 percent after one application */
    {"us-fmcsr", "reserve,,,not-less-than,80,,,percent-left,,,,1,,", true},
    {"us-fmcsr", "reserve,,,not-less-than,69,,,percent-left,,,,1,,", false},
    {"us-fmcsr", "reserve,,,not-more-than,30,,,percent-lost,,,,1,,", true},
    {"us-fmcsr", "reserve,,,less-than,30,,,percent-lost,,,,1,,", true},
    {"us-fmcsr", "reserve,,,not-more-than,31,,,percent-lost,,,,1,,", false},
    /* ca-on: not more than 120 s for 85 to 100 psi */
    {"ca-on", "build-up,,,not-more-than,100,,,seconds,,,,,85 psi,100 psi", true},
    {"ca-on", "build-up,,,not-more-than,121,,,seconds,,,,,85 psi,100 psi", false},
    {"us-newvehicle", "build-up,,,not-more-than,25,,,seconds,,,volume,,85 psi,100 psi", true},
    {"us-newvehicle", "build-up,,,not-more-than,26,,,seconds,,,volume,,85 psi,100 psi", false},
    {"us-newvehicle", "build-up,,,not-more-than,20,,,seconds,,,,,85 psi,100 psi", false},
    /* a usual figure is no limit; a check without a row has none */
    {"us-cdl", "cut-out,,,not-more-than,200,,,psi,,,,,,", true},
    {"us-fmcsr", "cut-out,,,between,100,130,,psi,,,,,,", true},
    {"us-fmcsr", "drain,,,must-be-yes,,,,yes-no,,,,,,", true},
    {"us-fmcsr", "contamination,,,must-be-no,,,,yes-no,,,,,,", true},
};

static void every_comparison_is_proved(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(strict_cases); i++)
        expect_strict(strict_cases[i].law, strict_cases[i].row, strict_cases[i].strict);
}

static void what_cannot_be_compared_is_refused(void **state)
{
    (void)state;
    refused("ca-on", "check,comparison,value,measure,start,stop\nbuild-up,not-more-than,30,seconds,50 psi,90 psi\n", RODT_E_TABLE,
            2, 35, "start", "the law times another span, so the two cannot be compared: 2 minutes or less; a "
            "slow build-up is minor in the daily schedule, and the handbook says not to drive");
    refused("us-fmcsr", "check,comparison,value,measure,applications\nreserve,not-less-than,80,percent-left,2\n", RODT_E_TABLE, 2,
            39, "applications", "the law asks for 1 full application, so the two cannot be compared");
}

/* Every row of every law, taken over as it is, is strict enough for that law; so is one that is a hundredth tighter, and
 * none that is a hundredth laxer. */
static void every_row_of_every_law(void **state)
{
    (void)state;
    unsigned tried = 0;
    for (size_t r = 0; r < rodt_rules_count(); r++) {
        const rodt_rules *law = rodt_rules_at(r);
        for (size_t i = 0; i < rodt_rules_air_count(law); i++) {
            const rodt_air_limit *row = rodt_rules_air_at(law, i);
            static const char *const vehicles[] = {"any", "single", "combination", "bus"};
            char text[300], towed[8] = "", from[RODT_DATE_TEXT_SIZE] = "", until[RODT_DATE_TEXT_SIZE] = "";
            if (row->measure != RODT_AIR_MEASURE_PSI || row->comparison != RODT_COMPARISON_NOT_LESS_THAN ||
                row->kind == RODT_AIR_KIND_USUAL || row->below_cut_out || !rodt_ratio_given(row->value))
                continue;
            if (row->towed_units >= 0)
                snprintf(towed, sizeof towed, "%d%s", row->towed_units, row->towed_or_more ? "+" : "");
            (void)rodt_date_format(row->built_from, from, sizeof from, NULL);
            (void)rodt_date_format(row->built_until, until, sizeof until, NULL);
            for (int side = -1; side <= 1; side++) {
                rodt_rules *own = NULL;
                int64_t hundredths = row->value.num * 100 / row->value.den + side;
                snprintf(text, sizeof text, "check,vehicle,towed,built_from,built_until,comparison,value,measure,by\n"
                         "%s,%s,%s,%s,%s,not-less-than,%lld/100,psi,%s\n", rodt_air_check_name(row->check),
                         vehicles[row->vehicle], towed, from, until, (long long)hundredths,
                         row->half_cut_out ? "half-cut-out" : "");
                rodt_status status = rodt_rules_load(law, "own", text, strlen(text), &own, NULL);
                /* a row beside it may ask for more: then even the law's own row is not the whole law */
                if (side < 0)
                    assert_int_equal(status, RODT_E_LAXER);
                else
                    assert_true(status == RODT_OK || status == RODT_E_LAXER);
                rodt_rules_unref(own);
                tried++;
            }
        }
    }
    assert_true(tried > 60);
}

/* --- Judging ----------------------------------------------------------------------------------------- */

static void the_stricter_figure_judges(void **state)
{
    (void)state;
    char text[400];
    rodt_rules *own = load("us-cdl", AIR "loss-applied,single,,not-more-than,2,,psi-per-minute\n");
    const rodt_rules *law = rodt_rules_find("us-cdl");
    rodt_air_finding finding = judge(own, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 108));
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    assert_ptr_equal(finding.row, rodt_rules_air_at(own, 0));
    assert_true(finding.at_limit);
    assert_int_equal(finding.allowed.num, 2);
    finding = judge(own, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 107));
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_GOOD);
    assert_ptr_equal(finding.row, finding.own_row);
    assert_ptr_equal(finding.own_row, rodt_rules_air_at(own, 0));
    assert_ptr_equal(finding.law_row, judge(law, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 107)).row);
    assert_ptr_equal(finding.rules, own);
    assert_int_equal(rodt_air_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "brakes applied, 110 psi to 107 psi in 60 s is 3 psi per minute; required: not more than 2 psi "
                              "per minute: defective (the carrier's own figure; by the law: good)");
    finding = judge(own, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 106));
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_DEFECTIVE);
    assert_ptr_equal(finding.row, finding.law_row);
    assert_int_equal(finding.allowed.num, 3);
    /* The carrier says nothing of combinations. */
    finding = judge(own, loss(RODT_VEHICLE_CLASS_COMBINATION, 1, 107));
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    assert_ptr_equal(finding.row, finding.law_row);
    assert_null(finding.own_row);
    rodt_rules_unref(own);
}

static void what_is_open_stays_open(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", AIR "loss-applied,combination,,not-more-than,2,,psi-per-minute\n");
    /* by the law 3 psi pass every vehicle; by the carrier they fail a combination alone */
    rodt_air_finding finding = judge(own, loss(RODT_VEHICLE_CLASS_ANY, 0, 107));
    assert_int_equal(finding.result, RODT_AIR_RESULT_UNDETERMINED);
    assert_int_equal(finding.missing, RODT_AIR_MISSING_VEHICLE);
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_GOOD);
    finding = judge(own, loss(RODT_VEHICLE_CLASS_ANY, 0, 108));
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    assert_ptr_equal(finding.own_row, rodt_rules_air_at(own, 0)); /* of vehicles alike, the one with a row */
    finding = judge(own, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 107));
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    /* 4 psi fail a single vehicle by the law, and a combination by the carrier: by the law it stays open */
    finding = judge(own, loss(RODT_VEHICLE_CLASS_ANY, 0, 106));
    assert_int_equal(finding.result, RODT_AIR_RESULT_UNDETERMINED);
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_UNDETERMINED);
    rodt_rules_unref(own);
    /* what the carrier refuses on every vehicle is defective, though the law would have to know which it is */
    own = load("us-cdl", AIR "loss-applied,any,,not-more-than,2,,psi-per-minute\n");
    finding = judge(own, loss(RODT_VEHICLE_CLASS_ANY, 0, 106));
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    assert_ptr_equal(finding.row, rodt_rules_air_at(own, 0));
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_UNDETERMINED);
    rodt_rules_unref(own);
}

static void a_check_that_the_law_has_not(void **state)
{
    (void)state;
    char text[400];
    rodt_rules *own = load("us-fmcsr", AIR "cut-out,,,between,110,130,psi\n");
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_CUT_OUT, .pressure = {140, 1}};
    rodt_air_finding finding = judge(own, reading);
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_UNDETERMINED);
    assert_null(finding.law_row);
    assert_int_equal(rodt_air_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_string_equal(text, "the governor cut out at 140 psi; required: 110 to 130 psi: defective (the carrier's own "
                              "figure)");
    rodt_rules_unref(own);
    /* A usual figure of the law is no limit: the carrier's is. */
    own = load("us-cdl", AIR "cut-out,,,not-more-than,130,,psi\n");
    finding = judge(own, reading);
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_NOTED);
    rodt_rules_unref(own);
}

static void words_of_a_carrier(void **state)
{
    (void)state;
    char text[400];
    rodt_rules *own = load("us-oos", "check,comparison,measure\nspring-brake,must-be-yes,yes-no\naudible-leak,must-be-no,yes-no\n");
    const rodt_air_reading heard = {.check = RODT_AIR_CHECK_AUDIBLE_LEAK, .answer = RODT_RECORDED_YES};
    rodt_air_finding finding = judge(own, heard);
    assert_int_equal(finding.result, RODT_AIR_RESULT_DEFECTIVE);
    assert_ptr_equal(finding.row, finding.own_row);
    assert_int_equal(rodt_air_finding_format(&finding, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, "a leak was heard; the rule: no leak heard: defective (the carrier's own rule"));
    rodt_rules_unref(own);
}

/* A carrier's row for one of several spans says nothing of a reading of another. */
static void spans_of_a_carrier(void **state)
{
    (void)state;
    rodt_rules *own = load("nz", "check,vehicle,comparison,value,measure,start\n"
                                 "build-up,bus,not-more-than,60,seconds,applications\n");
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_BUILD_UP, .vehicle = RODT_VEHICLE_CLASS_BUS, .built = {2001, 0, 0},
                                .span = RODT_AIR_SPAN_APPLICATIONS, .seconds = {70, 1}};
    assert_int_equal(judge(rodt_rules_find("nz"), reading).result, RODT_AIR_RESULT_GOOD);
    assert_int_equal(judge(own, reading).result, RODT_AIR_RESULT_DEFECTIVE);
    reading.span = RODT_AIR_SPAN_WARNING;
    assert_int_equal(judge(own, reading).missing, RODT_AIR_MISSING_SPAN);
    rodt_rules_unref(own);
}

static void another_law_for_the_air(void **state)
{
    (void)state;
    static const char text[] = LIMITS AIR "loss-applied,single,,not-more-than,2,,psi-per-minute\n";
    rodt_rules *own = NULL;
    const rodt_rules *strokes = rodt_rules_find("us-fmcsr"), *air = rodt_rules_find("us-cdl");
    assert_int_equal(rodt_rules_load_with_air(strokes, air, "own", text, sizeof text - 1, &own, NULL), RODT_OK);
    assert_ptr_equal(rodt_rules_law(own), strokes);
    assert_ptr_equal(rodt_rules_air_law(own), air);
    rodt_air_finding finding = judge(own, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 106));
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_DEFECTIVE);
    rodt_rules *other = NULL;
    assert_int_equal(rodt_rules_load_with_air(strokes, own, "own", text, sizeof text - 1, &other, NULL), RODT_E_ARGUMENT);
    assert_null(other);
    rodt_rules_unref(own);
}

/* No reading gets a better result by a carrier's rules than by the law alone. */
static void never_better_than_the_law(void **state)
{
    (void)state;
    static const int weight[RODT_AIR_RESULT_END] = {[RODT_AIR_RESULT_NOTED] = 1,
                                                    [RODT_AIR_RESULT_GOOD] = 2,
                                                    [RODT_AIR_RESULT_UNDETERMINED] = 3,
                                                    [RODT_AIR_RESULT_DEFECTIVE] = 4};
    rodt_rules *own = load("ca-on", AIR "loss-applied,,,not-more-than,2,,psi-per-minute\n"
                                        "loss-applied,combination,2+,not-more-than,5,,psi-per-minute\n"
                                        "cut-out,bus,,between,100,120,psi\nwarning,,,not-less-than,65,,psi\n");
    unsigned differ = 0;
    for (int vehicle = 0; vehicle < RODT_VEHICLE_CLASS_END; vehicle++) {
        for (int16_t towed = 0; towed <= (vehicle % 2 == 0 ? 4 : 0); towed++) {
            for (int64_t after = 100; after <= 110; after++) {
                rodt_air_finding finding = judge(own, loss((rodt_vehicle_class)vehicle, towed, after));
                rodt_air_finding alone = judge(rodt_rules_find("ca-on"), loss((rodt_vehicle_class)vehicle, towed, after));
                assert_int_equal(finding.law_result, alone.result);
                assert_true(weight[finding.result] >= weight[alone.result]);
                assert_true(finding.result != alone.result || finding.major == alone.major);
                differ += finding.result != alone.result;
            }
        }
    }
    assert_true(differ > 10);
    rodt_rules_unref(own);
}

/* --- Hostile texts ----------------------------------------------------------------------------------- */

static void every_changed_byte_is_safe(void **state)
{
    (void)state;
    static const char good[] = LIMITS AIR "loss-applied,single,,not-more-than,2,,psi-per-minute\ncut-out,,,between,110,130,psi\n";
    static const char bytes[] = ",\n\"#\r\0\xFFx2";
    char text[sizeof good];
    unsigned loaded = 0;
    for (size_t at = 0; at < sizeof good - 1; at++) {
        for (size_t i = 0; i < sizeof bytes; i++) {
            rodt_rules *own = NULL;
            rodt_error error = {.status = RODT_OK};
            memcpy(text, good, sizeof good);
            text[at] = bytes[i];
            rodt_status status = rodt_rules_load(rodt_rules_find("us-cdl"), "own", text, sizeof good - 1, &own, &error);
            assert_int_equal(status, error.status);
            assert_int_equal(status == RODT_OK, own != NULL);
            loaded += own != NULL;
            rodt_rules_unref(own);
        }
        rodt_rules *cut = NULL;
        if (rodt_rules_load(rodt_rules_find("us-cdl"), "own", good, at, &cut, NULL) == RODT_OK)
            rodt_rules_unref(cut);
    }
    assert_true(loaded > 0);
}

/* A step says the carrier's figure, that it is the carrier's, and what the law says and where. */
static void steps_of_a_carrier(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", AIR "warning,any,,not-less-than,65,,psi\n");
    const rodt_air_reading vehicle = {.built = {2015, 0, 0}};
    const rodt_air_limit *row = rodt_step_row_at(RODT_STEP_WARNING, own, &vehicle, 0);
    const rodt_air_limit *law = rodt_step_row_at(RODT_STEP_WARNING, rodt_rules_find("us-cdl"), &vehicle, 0);
    char text[RODT_SENTENCE_SIZE];
    assert_ptr_equal(row, rodt_rules_air_at(own, 0));
    assert_non_null(law);
    assert_int_equal(rodt_step_format(RODT_STEP_WARNING, RODT_STEP_PART_GOOD, own, row, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, ": not less than 65 psi (the carrier's own figure; the law: "));
    assert_non_null(strstr(text, law->published));
    assert_non_null(strstr(text, law->source->section));
    assert_int_equal(rodt_step_format(RODT_STEP_WARNING, RODT_STEP_PART_DEFECTIVE, own, row, text, sizeof text, NULL),
                     RODT_OK);
    assert_non_null(strstr(text, "below 65 psi"));
    assert_null(rodt_step_row_at(RODT_STEP_WARNING, own, &vehicle, 1)); /* the law's row is beside it in the sentence */
    rodt_rules_unref(own);
    own = load("us-inuse", AIR "warning,any,,not-less-than,65,,psi\n"); /* the day of build decides about the law's */
    row = rodt_step_row_at(RODT_STEP_WARNING, own, NULL, 0);
    assert_int_equal(rodt_step_format(RODT_STEP_WARNING, RODT_STEP_PART_GOOD, own, row, text, sizeof text, NULL), RODT_OK);
    assert_non_null(strstr(text, ": not less than 65 psi (the carrier's own figure)."));
    rodt_rules_unref(own);
    own = load("us-cdl", AIR "loss-applied,single,,not-more-than,2,,psi-per-minute\n");
    assert_ptr_equal(rodt_step_row_at(RODT_STEP_LOSS_APPLIED, own, NULL, 0), rodt_rules_air_at(own, 0));
    row = rodt_step_row_at(RODT_STEP_LOSS_APPLIED, own, NULL, 1); /* other vehicles have the law's */
    assert_non_null(row);
    assert_int_equal(row->vehicle, RODT_VEHICLE_CLASS_COMBINATION);
    assert_int_equal(rodt_step_format(RODT_STEP_LOSS_APPLIED, RODT_STEP_PART_GOOD, own, row, text, sizeof text, NULL),
                     RODT_OK);
    assert_null(strstr(text, "carrier"));
    rodt_rules_unref(own);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_are_read_as_the_laws_are),
        cmocka_unit_test(evidence_is_never_invented),
        cmocka_unit_test(both_tables_in_one_text_in_either_order),
        cmocka_unit_test(faults_of_both_tables_have_their_line),
        cmocka_unit_test(broken_rows_are_refused),
        cmocka_unit_test(dated_rows_of_one_check_are_bounded),
        cmocka_unit_test(every_comparison_is_proved),
        cmocka_unit_test(what_cannot_be_compared_is_refused),
        cmocka_unit_test(every_row_of_every_law),
        cmocka_unit_test(the_stricter_figure_judges),
        cmocka_unit_test(what_is_open_stays_open),
        cmocka_unit_test(a_check_that_the_law_has_not),
        cmocka_unit_test(words_of_a_carrier),
        cmocka_unit_test(spans_of_a_carrier),
        cmocka_unit_test(steps_of_a_carrier),
        cmocka_unit_test(another_law_for_the_air),
        cmocka_unit_test(never_better_than_the_law),
        cmocka_unit_test(every_changed_byte_is_safe),
    };
    return cmocka_run_group_tests_name("own_air", tests, NULL, NULL);
}
