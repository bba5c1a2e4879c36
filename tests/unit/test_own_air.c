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
#include "rules/air_choice.h"
#include "rules/air_row.h"
#include "rules/air_strict.h"
#include "rules/limit_row.h"
#include "rules/table_parts.h"
#include "rules/tables.h"

#define AIR "check,vehicle,towed,comparison,value,upper,measure\n"
#define SPANS "check,measure,value,start,stop,start_kpa,stop_kpa,applications,comparison\n"
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
    assert_ptr_not_equal(row->published, row->setup);
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
    assert_int_equal(rodt_rules_air_at(own, 0)->towed_units, -1);
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
    static const char warnings[] = "warning,single,,not-less-than,70,,psi\nwarning,bus,,not-less-than,70,,psi\n"
                                   "warning,bus,,not-less-than,75,,psi\n";
    static const char limits[] = "family,size,class,limit\nclamp,30,standard,2\nclamp,24,standard,1 3/4\n"
                                 "clamp,24,any,1 3/4\n";
    char text[600];
    snprintf(text, sizeof text, "%s%s%s", LIMITS, AIR, warnings);
    refused("us-cdl", text, RODT_E_TABLE, 6, 0, "", "the same check for the same vehicles is in line 5");
    snprintf(text, sizeof text, "%s%s", AIR "warning,single,,not-less-than,70,,psi\n", limits);
    refused("us-fmcsr", text, RODT_E_TABLE, 6, 0, "", "the same chamber on the same days is in line 5");
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

static const struct {
    const char *text;
    uint32_t line, column;
    const char *field, *sentence;
} broken_rows[] = {
    {"check,comparison,value\nwarning,not-less-than,70\n", 1, 0, "", "the column \"measure\" is missing"},
    {"check,comparison,value,measure,colour\n", 1, 32, "", "no column is called \"colour\""},
    {AIR "warnings,,,not-less-than,70,,psi\n", 2, 1, "check", NULL},
    {AIR ",,,not-less-than,70,,psi\n", 2, 1, "check", "the cell is empty"},
    {AIR "warning,,,,70,,psi\n", 2, 11, "comparison", "the cell is empty"},
    {AIR "warning,,,not-less-than,70,,\n", 2, 29, "measure", "the cell is empty"},
    {AIR "warning,lorry,,not-less-than,70,,psi\n", 2, 9, "vehicle",
     "expected any, single, combination or bus, found \"lorry\""},
    {AIR "warning,combination,two,not-less-than,70,,psi\n", 2, 21, "towed",
     "expected a number of towed units such as 1 or 2+"},
    {AIR "warning,combination,2x,not-less-than,70,,psi\n", 2, 21, "towed", NULL},
    {AIR "warning,combination,0,not-less-than,70,,psi\n", 2, 21, "towed", NULL},
    {AIR "warning,combination,12,not-less-than,70,,psi\n", 2, 21, "towed", NULL},
    {AIR "warning,combination,0+,not-less-than,70,,psi\n", 2, 21, "towed", NULL},
    {AIR "warning,,,at least,70,,psi\n", 2, 11, "comparison", NULL},
    {AIR "warning,,,not-less-than,7O,,psi\n", 2, 26, "value", "expected a number and nothing more"},
    {AIR "warning,,,not-less-than,,,psi\n", 2, 0, "", "the figures do not go with \"not-less-than\""},
    {AIR "cut-out,,,between,130,120,psi\n", 2, 0, "", "the figures do not go with \"between\""},
    {"check,comparison,value,measure,by\nbuild-up,not-more-than,25,seconds,volume\n", 2, 0, "",
     "a cell of the row has no place in check \"build-up\", or one is missing"},
    {"rules,check,comparison,value,measure\nx,warning,not-less-than,70,psi\n", 2, 1, "rules",
     "the table is based on \"us-cdl\", this row on another rule set"},
    {AIR "cut-out,,,between,130,,psi\n", 2, 0, "", "the figures do not go with \"between\""},
    {AIR "cut-out,,,not-less-than,130,140,psi\n", 2, 0, "", "the figures do not go with \"not-less-than\""},
    {AIR "tractor-protection,,,must-be-yes,,,psi\n", 2, 0, "", "the figures do not go with \"must-be-yes\""},
    {AIR "tractor-protection,,,not-less-than,20,,yes-no\n", 2, 0, "", "the figures do not go with \"not-less-than\""},
    {SPANS "build-up,seconds,40,85,,,,,not-more-than\n", 2, 0, "",
     "a cell of the row has no place in check \"build-up\", or one is missing"},
    {SPANS "build-up,seconds,40,85,85,,,,not-more-than\n", 2, 0, "",
     "a cell of the row has no place in check \"build-up\", or one is missing"},
    {SPANS "build-up,seconds,40,85,100,586 kPa,,,not-more-than\n", 2, 0, "",
     "a cell of the row has no place in check \"build-up\", or one is missing"},
    {SPANS "build-up,seconds,40,85,100,580 kPa,690 kPa,,not-more-than\n", 2, 0, "",
     "the printed kPa are more than 1 kPa off the psi"},
    {SPANS "build-up,seconds,40,85,100,586 kPa,700 kPa,,not-more-than\n", 2, 0, "",
     "the printed kPa are more than 1 kPa off the psi"},
    {SPANS "build-up,seconds,40,warning,,586 kPa,690 kPa,,not-more-than\n", 2, 0, "",
     "the printed kPa are more than 1 kPa off the psi"},
    {SPANS "build-up,seconds,40,14.123456789,100,97.123456789 kPa,690 kPa,,not-more-than\n", 2, 0, "",
     "the printed kPa are more than 1 kPa off the psi"}, /* the difference does not fit */
    {SPANS "build-up,seconds,40,warning,100,,,,not-more-than\n", 2, 29, "stop", "a time from \"warning\" has no pressure at its end"},
    {SPANS "build-up,seconds,40,pressures,100,,,,not-more-than\n", 2, 21, "start", NULL},
    {SPANS "reserve,percent-left,70,,,,,1/2,not-less-than\n", 2, 29, "applications", "expected a number of applications, 1 to 99"},
    {SPANS "reserve,percent-left,70,,,,,0,not-less-than\n", 2, 29, "applications", "expected a number of applications, 1 to 99"},
    {SPANS "reserve,percent-left,70,,,,,100,not-less-than\n", 2, 29, "applications", "expected a number of applications, 1 to 99"},
    {SPANS "reserve,percent-left,70,,,,,one,not-less-than\n", 2, 29, "applications", NULL},
    {"check,comparison,value,measure,by\nwarning,not-more-than,70,psi,half-cut-out\n", 2, 0, "",
     "a cell of the row has no place in check \"warning\", or one is missing"},
    {AIR "warning,,,not-less-than,70,,seconds\n", 2, 0, "", "check \"warning\" is not measured in \"seconds\""},
    {AIR "audible-leak,,,must-be-yes,,,yes-no\n", 2, 0, "",
     "a cell of the row has no place in check \"audible-leak\", or one is missing"},
    {"check,vehicle,towed,per_towed,comparison,value,measure\nloss-applied,combination,2,1,not-more-than,3,psi-per-minute\n",
     2, 0, "", "a cell of the row has no place in check \"loss-applied\", or one is missing"},
    {"check,vehicle,towed,per_towed,comparison,value,measure\nloss-applied,single,,1,not-more-than,3,psi-per-minute\n",
     2, 0, "", "a cell of the row has no place in check \"loss-applied\", or one is missing"},
    {SPANS "reserve,percent-left,80,,,,,,not-less-than\n", 2, 0, "",
     "a cell of the row has no place in check \"reserve\", or one is missing"},
    {SPANS "cut-out,psi,120,85,100,,,,not-more-than\n", 2, 0, "",
     "a cell of the row has no place in check \"cut-out\", or one is missing"},
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

static void broken_rows_are_refused(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(broken_rows); i++) {
        rodt_rules *rules = NULL;
        rodt_error error = {.status = RODT_OK};
        assert_int_equal(load_on("us-cdl", broken_rows[i].text, &rules, &error), RODT_E_TABLE);
        if (broken_rows[i].sentence != NULL)
            assert_string_equal(error.text, broken_rows[i].sentence);
        assert_string_equal(error.field, broken_rows[i].field);
        assert_int_equal(error.line, broken_rows[i].line);
        assert_int_equal(error.column, broken_rows[i].column);
        assert_null(rules);
    }
}

static void applications_are_bounded(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", SPANS "reserve,percent-left,70,,,,,99,not-less-than\n");
    assert_int_equal(rodt_rules_air_at(own, 0)->applications, 99);
    rodt_rules_unref(own);
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
    strcpy(strstr(text, "warning,not-less-than,70,psi,2015"), /* these two are not counted */
           "warning,not-less-than,75,psi,,\ncut-in,not-less-than,90,psi,2001-01-01,\n");
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
    /* with 99 towed units the law has 102 psi, the carrier 101.98 or 102.96 */
    {"us-inuse", "loss-applied,combination,,not-more-than,3,,1.01,psi-per-minute,,,,,,", true},
    {"us-inuse", "loss-applied,combination,,not-more-than,3,,1.02,psi-per-minute,,,,,,", false},
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
    /* us-newvehicle: a bus from 1997-03-01 cuts in at 85 psi */
    {"us-newvehicle", "cut-in,,,not-less-than,84,,,psi,1998-01-01,,,,,", false},
    {"us-newvehicle", "cut-in,bus,,not-less-than,85,,,psi,1998-01-01,,,,,", true},
    /* a usual figure is no limit; a check without a row has none */
    {"us-cdl", "cut-out,,,between,120,120,,psi,,,,,,", true},
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

static void what_is_laxer_is_named(void **state)
{
    (void)state;
    refused("ca-on", AIR "loss-applied,combination,,not-more-than,6,,psi-per-minute\n", RODT_E_LAXER, 2, 41, "value",
            "\"not more than 6 psi/min\" is laxer than the law, which has not more than 4 psi/min for a combination with 1 "
            "towed unit");
    refused("ca-on", AIR "loss-applied,combination,2+,not-more-than,7,,psi-per-minute\n", RODT_E_LAXER, 2, 43, "value",
            "\"not more than 7 psi/min\" is laxer than the law, which has not more than 6 psi/min for a combination with 2 "
            "towed units");
    refused("us-fmcsr", "check,comparison,measure,by,built_from\nwarning,not-less-than,psi,half-cut-out,1980-01-01\n",
            RODT_E_LAXER, 2, 9, "comparison",
            "\"not less than half of the cut-out\" is laxer than the law, which has not less than 60 psi for a single "
            "vehicle built on 1980-01-01");
}

static void what_cannot_be_compared_is_refused(void **state)
{
    (void)state;
    refused("ca-on", "check,comparison,value,measure,start,stop\nbuild-up,not-more-than,30,seconds,50 psi,90 psi\n", RODT_E_TABLE,
            2, 35, "start", "the law times another span, so the two cannot be compared: 2 minutes or less; a "
            "slow build-up is minor in the daily schedule, and the handbook says not to drive");
    refused("ca-on", "check,comparison,value,measure,start,stop\nbuild-up,not-more-than,30,seconds,85 psi,90 psi\n", RODT_E_TABLE,
            2, 35, "start", "the law times another span, so the two cannot be compared: 2 minutes or less; a "
            "slow build-up is minor in the daily schedule, and the handbook says not to drive");
    refused("us-fmcsr", "check,comparison,value,measure,applications\nreserve,not-less-than,80,percent-left,2\n", RODT_E_TABLE, 2,
            39, "applications", "the law asks for 1 full application, so the two cannot be compared");
    refused("au", "check,comparison,value,measure,applications\nreserve,not-less-than,80,percent-left,1\n", RODT_E_TABLE, 2, 39,
            "applications", "the law asks for 4 full applications, so the two cannot be compared");
    static const char digits[] = "the figure has too many digits to be compared with the law's";
    refused("us-fmcsr", AIR "warning,,,not-less-than,500000000.123456789,,kPa\n", RODT_E_TABLE, 2, 25, "value", digits);
    refused("us-fmcsr", "check,comparison,value,upper,measure\nwarning,between,600,999999999.999999999,kPa\n", RODT_E_TABLE, 2,
            17, "value", digits);
    rodt_rules_unref(load("us-fmcsr", AIR "warning,,,not-less-than,800.1234567,,kPa\n"));
}

static void count_fault(void *context, const rodt_error *fault)
{
    (void)fault;
    ++*(unsigned *)context;
}

/* A carrier's figure of brakes applied, psi a minute, beside a law of such figures. */
static rodt_air_limit at_most(int64_t psi, rodt_vehicle_class vehicle, int16_t towed, bool or_more)
{
    return (rodt_air_limit){.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = vehicle, .towed_units = towed,
                            .towed_or_more = or_more, .comparison = RODT_COMPARISON_NOT_MORE_THAN, .value = {psi, 1},
                            .measure = RODT_AIR_MEASURE_PSI_PER_MINUTE, .published = "", .setup = ""};
}

/* One fault where the row is not strict enough for the law. */
static void expect_within(const rodt_air_limit *law, size_t count, const rodt_air_limit *row, bool within)
{
    const rodt_rules rules = {.air = law, .air_count = count};
    static const char text[] = "check,comparison,value,measure\nloss-applied,not-more-than,3,psi-per-minute\n";
    table_reader reader;
    unsigned faults = 0;
    assert_true(rodti_table_open(&reader, text, sizeof text - 1, rodti_part_kinds[PART_AIR].columns, AIR_COLUMNS,
                                 count_fault, &faults));
    assert_true(rodti_table_next(&reader));
    assert_int_equal(rodti_air_check_strict(&reader, &rules, row), within);
    assert_int_equal(faults, !within);
}

static void every_day_and_vehicle_of_a_law(void **state)
{
    (void)state;
    static const rodt_date day = {2001, 1, 1};
    const rodt_air_limit three = at_most(3, RODT_VEHICLE_CLASS_ANY, -1, false);
    /* two rows are broken by one row of the carrier, and named once */
    rodt_air_limit law[11] = {at_most(2, RODT_VEHICLE_CLASS_SINGLE, -1, false), at_most(2, RODT_VEHICLE_CLASS_SINGLE, -1, false)};
    expect_within(law, 2, &three, false);
    /* the first row begins; the first row ends, and another is in force again */
    law[0].built_from = day;
    expect_within(law, 1, &three, false);
    law[0] = law[1] = three;
    law[0].value.num = 5;
    law[0].built_until = day;
    expect_within(law, 2, &three, true);
    const rodt_air_limit four = at_most(4, RODT_VEHICLE_CLASS_ANY, -1, false);
    expect_within(law, 2, &four, false);
    /* what lies behind the last row is none of the law's; here it would add a day that no table has */
    law[0].value.num = 2;
    law[0].built_until = (rodt_date){1850, 1, 1};
    law[1] = law[2] = at_most(5, RODT_VEHICLE_CLASS_ANY, -1, false);
    law[2].built_from = (rodt_date){1800, 1, 1};
    expect_within(law, 2, &three, true);
    /* a combination has a towed unit */
    law[0] = three;
    law[1] = at_most(4, RODT_VEHICLE_CLASS_COMBINATION, 1, true);
    const rodt_air_limit combination = at_most(4, RODT_VEHICLE_CLASS_COMBINATION, -1, false);
    expect_within(law, 2, &combination, true);
    /* with ten towed units the law has 10 psi, with 99 it has 99, and up to nine far more than the carrier */
    for (int16_t i = 1; i <= 9; i++)
        law[i] = at_most(1000, RODT_VEHICLE_CLASS_COMBINATION, i, false);
    law[0] = law[10] = at_most(1, RODT_VEHICLE_CLASS_COMBINATION, -1, false);
    law[0].per_towed_unit = (rodt_ratio){1, 1};
    rodt_air_limit each = at_most(1, RODT_VEHICLE_CLASS_COMBINATION, -1, false);
    each.per_towed_unit = (rodt_ratio){1, 1};
    expect_within(law, 10, &each, true);
    each.value.num = 11;
    each.per_towed_unit = (rodt_ratio){1, 2};
    expect_within(law, 10, &each, false);
}

/* Of two rows for a vehicle the more exact one is the law; neither where they are about different things. */
static void the_more_exact_row_is_chosen(void **state)
{
    (void)state;
    static const air_vehicle bus = {.vehicle = RODT_VEHICLE_CLASS_BUS, .built = {2001, 1, 1}};
    static const air_vehicle two = {.vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = 2, .built = {2001, 1, 1}};
    static const air_vehicle three = {.vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = 3, .built = {2001, 1, 1}};
    static const air_vehicle none = {.vehicle = RODT_VEHICLE_CLASS_COMBINATION, .built = {2001, 1, 1}};
    const rodt_air_limit any = at_most(1, RODT_VEHICLE_CLASS_ANY, -1, false);
    const rodt_air_limit single = at_most(2, RODT_VEHICLE_CLASS_SINGLE, -1, false);
    const rodt_air_limit of_bus = at_most(3, RODT_VEHICLE_CLASS_BUS, -1, false);
    const rodt_air_limit combination = at_most(4, RODT_VEHICLE_CLASS_COMBINATION, -1, false);
    const rodt_air_limit exact = at_most(5, RODT_VEHICLE_CLASS_COMBINATION, 2, false);
    const rodt_air_limit of_three = at_most(5, RODT_VEHICLE_CLASS_COMBINATION, 3, false);
    const rodt_air_limit or_more = at_most(6, RODT_VEHICLE_CLASS_COMBINATION, 2, true);
    const rodt_air_limit of_none = at_most(7, RODT_VEHICLE_CLASS_COMBINATION, 0, false);
    rodt_air_limit usual = single, below = single, timed = single, of_two_timed = exact, either = single, dated = any;
    usual.kind = RODT_AIR_KIND_USUAL;
    below.below_cut_out = true;
    timed.start = of_two_timed.start = (rodt_pressure){85, 1};
    either.kind = RODT_AIR_KIND_EITHER;
    dated.built_from = (rodt_date){2000, 1, 1};
    const struct {
        const rodt_air_limit *row, *other;
        const air_vehicle *vehicle;
        bool row_is_chosen, other_is_chosen;
    } cases[] = {
        {&any, &single, &bus, false, true},         {&single, &of_bus, &bus, false, true},
        {&any, &of_bus, &bus, false, true},         {&any, &usual, &bus, true, true},
        {&any, &below, &bus, true, true},           {&any, &either, &bus, false, true},
        {&any, &timed, &bus, false, true},          {&single, &timed, &bus, true, true},
        {&combination, &exact, &two, false, true},  {&combination, &or_more, &two, false, true},
        {&combination, &or_more, &three, false, true}, {&or_more, &exact, &two, false, true},
        {&or_more, &of_three, &three, false, true}, {&combination, &exact, &three, true, false},
        {&combination, &of_two_timed, &two, true, true}, {&any, &dated, &bus, false, true},
        {&combination, &of_none, &two, true, false}, {&combination, &of_none, &none, false, true},
    };
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        for (size_t first = 0; first < 2; first++) {
            rodt_air_limit rows[2];
            rows[first] = *cases[i].row;
            rows[1 - first] = *cases[i].other;
            const air_rows both = {rows, 2};
            assert_int_equal(rodti_air_is_chosen(both, &rows[first], RODT_AIR_CHECK_LOSS_APPLIED, cases[i].vehicle),
                             cases[i].row_is_chosen);
            assert_int_equal(rodti_air_is_chosen(both, &rows[1 - first], RODT_AIR_CHECK_LOSS_APPLIED, cases[i].vehicle),
                             cases[i].other_is_chosen);
            assert_false(rodti_air_is_chosen(both, &rows[first], RODT_AIR_CHECK_LOSS_RELEASED, cases[i].vehicle));
        }
    }
}

/* 3 psi with one towed unit, and 3/2 more for each further one. */
static void a_figure_for_each_towed_unit(void **state)
{
    (void)state;
    static const rodt_ratio wanted[] = {{3, 1}, {3, 1}, {9, 2}, {6, 1}};
    rodt_air_limit row = at_most(3, RODT_VEHICLE_CLASS_COMBINATION, -1, false);
    row.per_towed_unit = (rodt_ratio){3, 2};
    for (int towed = 0; towed < 4; towed++) {
        rodt_ratio allowed;
        assert_true(rodti_air_allowed(&row, towed, &allowed));
        assert_memory_equal(&allowed, &wanted[towed], sizeof allowed);
    }
    rodt_rules *own = load("us-inuse", "check,vehicle,comparison,value,per_towed,measure\n"
                                       "loss-applied,combination,not-more-than,2,1,psi-per-minute\n");
    assert_string_equal(rodt_rules_air_at(own, 0)->published, "not more than 2 psi/min");
    rodt_rules_unref(own);
}

static rodt_pressure kilopascals(int64_t kpa)
{
    rodt_pressure pressure = {0, 0};
    assert_int_equal(rodt_pressure_from_kpa(kpa, 1, &pressure), RODT_OK);
    return pressure;
}

/* The printed kPa may be 1 kPa off, at either end of the span. */
static void printed_kpa_are_those_of_the_psi(void **state)
{
    (void)state;
    static const struct {
        int64_t start, stop;
        bool fits;
    } cases[] = {{586, 690, true},  {587, 690, true},  {585, 690, true},  {588, 690, false}, {584, 690, false},
                 {586, 691, true},  {586, 689, true},  {586, 692, false}, {586, 688, false}};
    for (size_t i = 0; i < COUNT_OF(cases); i++) {
        char sentence[RODT_ERROR_TEXT_SIZE];
        const rodt_air_limit row = {.check = RODT_AIR_CHECK_BUILD_UP, .measure = RODT_AIR_MEASURE_SECONDS, .towed_units = -1,
                                    .comparison = RODT_COMPARISON_NOT_MORE_THAN, .value = {40, 1}, .start = kilopascals(586),
                                    .stop = kilopascals(690), .start_kpa = kilopascals(cases[i].start),
                                    .stop_kpa = kilopascals(cases[i].stop)};
        assert_int_equal(rodti_air_row_fits(&row, sentence, sizeof sentence), cases[i].fits);
    }
    char sentence[RODT_ERROR_TEXT_SIZE];
    rodt_air_limit row = at_most(3, RODT_VEHICLE_CLASS_SINGLE, 0, false);
    assert_false(rodti_air_row_fits(&row, sentence, sizeof sentence));
    row.vehicle = RODT_VEHICLE_CLASS_COMBINATION;
    assert_true(rodti_air_row_fits(&row, sentence, sizeof sentence));
}

/* What a row without `published` says, and that each row keeps its own texts. */
static void rows_in_words(void **state)
{
    (void)state;
    static const char *const rows[][2] = {
        {"cut-out,,between,110,130,,psi,,,a,A", "between 110 and 130 psi"},
        {"cut-in,,not-more-than,25,,,psi,below-cut-out,,b,B", "not more than 25 psi below the cut-out"},
        {"warning,,not-less-than,,,,psi,half-cut-out,,c,C", "not less than half of the cut-out"},
        {"spring-brake,,must-be-yes,,,,yes-no,,,d,D", "must hold"}};
    char text[1000] = "family,size,class,limit,source\nclamp,30,standard,1,U\nclamp,24,standard,1,V\nclamp,20,standard,1,W\n"
                      "clamp,16,standard,1,X\nclamp,12,standard,1,Y\n"
                      "check,vehicle,comparison,value,upper,per_towed,measure,by,published,setup,source\n";
    for (size_t i = 0; i < COUNT_OF(rows); i++)
        strcat(strcat(text, rows[i][0]), "\n");
    rodt_rules *own = load("us-nh", text);
    for (size_t i = 0; i < COUNT_OF(rows); i++) {
        const rodt_air_limit *row = rodt_rules_air_at(own, i);
        const char setup[] = {(char)('a' + i), '\0'}, source[] = {(char)('A' + i), '\0'};
        assert_string_equal(row->published, rows[i][1]);
        assert_string_equal(row->setup, setup);
        assert_string_equal(row->source->document, source);
    }
    for (size_t i = 0; i < 5; i++) {
        const char source[] = {(char)('U' + i), '\0'};
        assert_string_equal(rodt_rules_limit_at(own, i)->source->document, source);
    }
    rodt_rules_unref(own);
}

/* A row that is refused is not written. */
static void expect_row(const char *text, bool good)
{
    table_reader reader;
    unsigned faults = 0;
    rodt_air_limit row = {.towed_units = 77};
    assert_true(rodti_table_open(&reader, text, strlen(text), rodti_part_kinds[PART_AIR].columns, AIR_COLUMNS, count_fault,
                                 &faults));
    assert_true(rodti_table_next(&reader));
    assert_int_equal(rodti_table_air(&reader, &row), good);
    assert_int_equal(row.towed_units, good ? -1 : 77);
}

static void each_cell_without_sense_is_refused(void **state)
{
    (void)state;
    expect_row(SPANS "build-up,seconds,40,85,100,,,,not-more-than\n", true);
    expect_row(SPANS "build-up,seconds,40,warning,,,,,not-more-than\n", true);
    expect_row(SPANS "build-up,seconds,40,warning,100,,,,not-more-than\n", false);
    expect_row(SPANS "reserve,percent-left,70,,,,,1,not-less-than\n", true);
    expect_row(SPANS "reserve,percent-left,70,,,,,1/2,not-less-than\n", false);
    expect_row(SPANS "reserve,percent-left,70,,,,,0,not-less-than\n", false);
    expect_row(SPANS "reserve,percent-left,70,,,,,100,not-less-than\n", false);
}

/* Every column alone is a reason to refuse a row; the place is the first one's. */
static void each_unreadable_cell_is_refused(void **state)
{
    (void)state;
    static const char *const names[] = {"check", "kind", "vehicle", "towed", "built_from", "built_until", "comparison", "value",
                                        "upper", "per_towed", "measure", "by", "start", "stop", "start_kpa", "stop_kpa",
                                        "applications", "evidence"};
    static const char *const good[] = {"warning", "limit", "any", "", "2001-01-01", "2010-12-31", "not-less-than", "70", "", "",
                                       "psi", "", "", "", "", "", "", "checked"};
    for (size_t broken = 0; broken <= COUNT_OF(names); broken++) {
        for (size_t second = broken; second <= COUNT_OF(names); second++) {
            char text[800] = "";
            rodt_rules *rules = NULL;
            rodt_error error = {.status = RODT_OK};
            for (size_t i = 0; i < COUNT_OF(names); i++)
                strcat(strcat(text, names[i]), i + 1 < COUNT_OF(names) ? "," : "\n");
            for (size_t i = 0; i < COUNT_OF(names); i++)
                strcat(strcat(text, i == broken || i == second ? "?" : good[i]), i + 1 < COUNT_OF(names) ? "," : "\n");
            rodt_status status = load_on("us-cdl", text, &rules, &error);
            rodt_rules_unref(rules);
            assert_int_equal(status, broken < COUNT_OF(names) ? RODT_E_TABLE : RODT_OK);
            bool first = broken < COUNT_OF(names) && strcmp(error.field, names[broken]) == 0;
            bool other = second < COUNT_OF(names) && strcmp(error.field, names[second]) == 0;
            assert_true(first || other || broken == COUNT_OF(names));
            expect_row(text, broken == COUNT_OF(names));
        }
    }
}

/* Two rows of one table say the same thing twice where all of this is alike. */
static void rows_that_differ_in_one_thing_stand_together(void **state)
{
    (void)state;
    const rodt_air_limit row = {.check = RODT_AIR_CHECK_CUT_IN, .towed_units = -1, .built_from = {2001, 1, 1},
                                .start = {85, 1}, .stop = {100, 1}};
    rodt_air_limit others[10];
    for (size_t i = 0; i < COUNT_OF(others); i++)
        others[i] = row;
    assert_true(rodti_air_rows_clash(&row, &others[0]));
    others[0].check = RODT_AIR_CHECK_CUT_OUT;
    others[1].kind = RODT_AIR_KIND_USUAL;
    others[2].vehicle = RODT_VEHICLE_CLASS_BUS;
    others[3].towed_units = 1;
    others[4].below_cut_out = true;
    others[5].span = RODT_AIR_SPAN_WARNING;
    others[6].start.num = 86;
    others[7].stop.num = 101;
    others[8].built_from = (rodt_date){0, 0, 0};
    others[9].built_from = (rodt_date){0, 0, 0};
    others[9].built_until = (rodt_date){2000, 12, 31};
    for (size_t i = 0; i < COUNT_OF(others); i++)
        assert_false(rodti_air_rows_clash(&row, &others[i]));
}

static void days_that_overlap(void **state)
{
    (void)state;
    static const rodt_date none = {0, 0, 0}, a = {2001, 1, 1}, b = {2002, 1, 1}, c = {2003, 1, 1};
    assert_true(rodti_days_overlap(none, none, none, none));
    assert_true(rodti_days_overlap(a, b, b, c));
    assert_true(rodti_days_overlap(b, c, a, b));
    assert_false(rodti_days_overlap(a, a, b, c));
    assert_false(rodti_days_overlap(b, c, a, a));
    assert_false(rodti_days_overlap(c, none, a, b));
    assert_true(rodti_days_overlap(a, none, b, none));
}

static void the_day_after(void **state)
{
    (void)state;
    static const rodt_date days[][2] = {{{2021, 2, 27}, {2021, 2, 28}}, {{2021, 2, 28}, {2021, 3, 1}},
                                        {{2020, 2, 28}, {2020, 2, 29}}, {{2021, 12, 31}, {2022, 1, 1}},
                                        {{0, 0, 0}, {0, 0, 0}},         {{2199, 12, 31}, {0, 0, 0}}};
    for (size_t i = 0; i < COUNT_OF(days); i++)
        assert_int_equal(rodt_date_compare(rodti_air_day_after(days[i][0]), days[i][1]), 0);
    assert_null(rodt_rules_air_law(NULL));
    assert_int_equal(rodt_rules_air_count(NULL), 0);
}

/* A figure that does not fit in the common measure is not proved to be strict enough, on either side. */
static void what_does_not_fit_is_not_within(void **state)
{
    (void)state;
    const rodt_air_limit psi = {.comparison = RODT_COMPARISON_BETWEEN, .measure = RODT_AIR_MEASURE_PSI, .value = {1, 1},
                                .upper = {200, 1}};
    rodt_air_limit kpa = {.comparison = RODT_COMPARISON_BETWEEN, .measure = RODT_AIR_MEASURE_KPA, .value = {100, 1},
                          .upper = {200, 1}};
    assert_true(rodti_air_is_within(&kpa, &psi, 0));
    kpa.value = (rodt_ratio){100000000000000001, 1000000000000000};
    assert_false(rodti_air_is_within(&kpa, &psi, 0));
    assert_false(rodti_air_is_within(&psi, &kpa, 0));
    kpa.value = (rodt_ratio){100, 1};
    kpa.upper = (rodt_ratio){200000000000000001, 1000000000000000};
    assert_false(rodti_air_is_within(&kpa, &psi, 0));
    const rodt_air_limit left = {.comparison = RODT_COMPARISON_NOT_LESS_THAN, .measure = RODT_AIR_MEASURE_PERCENT_LEFT,
                                 .value = {70, 1}};
    rodt_air_limit lost = {.comparison = RODT_COMPARISON_NOT_MORE_THAN, .measure = RODT_AIR_MEASURE_PERCENT_LOST,
                           .value = {30, 1}};
    assert_true(rodti_air_is_within(&lost, &left, 0));
    /* both ends of a range are brought to the measure */
    const rodt_air_limit most_left = {.comparison = RODT_COMPARISON_NOT_MORE_THAN, .measure = RODT_AIR_MEASURE_PERCENT_LEFT,
                                      .value = {89, 1}};
    const rodt_air_limit range = {.comparison = RODT_COMPARISON_BETWEEN, .measure = RODT_AIR_MEASURE_PERCENT_LOST,
                                  .value = {10, 1}, .upper = {30, 1}};
    assert_true(rodti_air_is_within(&range, &left, 0));
    assert_false(rodti_air_is_within(&range, &most_left, 0));
    lost.value = (rodt_ratio){INT64_MAX - 1, INT64_MAX};
    assert_false(rodti_air_is_within(&lost, &left, 0));
    lost.comparison = RODT_COMPARISON_NOT_LESS_THAN;
    assert_false(rodti_air_is_within(&lost, &left, 0));
    /* An answer and a figure are never the same rule. */
    const rodt_air_limit yes = {.comparison = RODT_COMPARISON_MUST_BE_YES, .measure = RODT_AIR_MEASURE_YES_NO};
    assert_false(rodti_air_is_within(&psi, &yes, 0));
    assert_false(rodti_air_is_within(&yes, &psi, 0));
    assert_true(rodti_air_is_within(&yes, &yes, 0));
    const rodt_air_limit half = {.comparison = RODT_COMPARISON_NOT_LESS_THAN, .half_cut_out = true};
    assert_false(rodti_air_is_within(&yes, &half, 0));
    assert_false(rodti_air_is_within(&half, &yes, 0));
    /* A figure for each towed unit: the product, or the sum, does not fit. */
    rodt_air_limit each = {.comparison = RODT_COMPARISON_NOT_MORE_THAN, .measure = RODT_AIR_MEASURE_PSI, .value = {1, 1},
                           .per_towed_unit = {1, 1}};
    const rodt_air_limit most = {.comparison = RODT_COMPARISON_NOT_MORE_THAN, .measure = RODT_AIR_MEASURE_PSI,
                                 .value = {200, 1}};
    assert_true(rodti_air_is_within(&each, &most, 99));
    each.per_towed_unit = (rodt_ratio){INT64_MAX / 2, 1};
    assert_true(rodti_air_is_within(&each, &most, 1));
    assert_false(rodti_air_is_within(&each, &most, 99));
    assert_false(rodti_air_is_within(&most, &each, 99));
    each.per_towed_unit = (rodt_ratio){1, 1000000007};
    each.value = (rodt_ratio){100000000000, 999999937};
    assert_false(rodti_air_is_within(&each, &most, 99));
}

/* The words of a row whose figure does not fit end before it. */
static void a_row_below_the_cut_out_in_words(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", "check,comparison,value,measure,by,published\n"
                                     "cut-in,not-more-than,25,psi,below-cut-out,\ncut-in,not-less-than,90,psi,,at 90 or more\n");
    assert_string_equal(rodt_rules_air_at(own, 0)->published, "not more than 25 psi below the cut-out");
    assert_string_equal(rodt_rules_air_at(own, 1)->published, "at 90 or more");
    rodt_rules_unref(own);
    rodt_air_limit each = {.comparison = RODT_COMPARISON_NOT_MORE_THAN, .measure = RODT_AIR_MEASURE_PSI, .value = {1, 1},
                           .per_towed_unit = {INT64_MAX, 1}};
    text_writer writer;
    rodti_text_begin(&writer);
    rodti_air_row_put(&writer, &each, 3);
    assert_string_equal(writer.buffer, "not more than");
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

/* Between 60 and 70 psi the carrier's row, which begins in 2001, decides by the day of build. */
static void a_day_of_build_that_is_not_said_stays_open(void **state)
{
    (void)state;
    rodt_rules *own = load("us-fmcsr", "check,comparison,value,measure,built_from\nwarning,not-less-than,70,psi,2001-01-01\n");
    rodt_air_reading reading = {.check = RODT_AIR_CHECK_WARNING, .pressure = {65, 1}, .cut_out = {120, 1}};
    rodt_air_finding finding = judge(own, reading);
    assert_int_equal(finding.result, RODT_AIR_RESULT_UNDETERMINED);
    assert_int_equal(finding.missing, RODT_AIR_MISSING_BUILT);
    assert_int_equal(finding.law_result, RODT_AIR_RESULT_GOOD);
    reading.built = (rodt_date){2000, 12, 31};
    assert_int_equal(judge(own, reading).result, RODT_AIR_RESULT_GOOD);
    reading.built = (rodt_date){2001, 1, 1};
    assert_int_equal(judge(own, reading).result, RODT_AIR_RESULT_DEFECTIVE);
    rodt_rules_unref(own);
}

/* A carrier's row that says what the law says judges nothing. */
static void the_same_figure_is_the_laws(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", AIR "loss-applied,single,,not-more-than,3,,psi-per-minute\n");
    rodt_air_finding finding = judge(own, loss(RODT_VEHICLE_CLASS_SINGLE, 0, 108));
    assert_int_equal(finding.result, RODT_AIR_RESULT_GOOD);
    assert_ptr_equal(finding.row, finding.law_row);
    assert_ptr_equal(finding.own_row, rodt_rules_air_at(own, 0));
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

/* Rows by hand, good from `psi` on for the vehicles that are named, and a cut-in at 90 psi. */
#define FROM(psi, ...) {.check = RODT_AIR_CHECK_CUT_IN, .comparison = RODT_COMPARISON_NOT_LESS_THAN, .value = {psi, 1}, __VA_ARGS__}
#define FOR_ALL .towed_units = -1
#define FOR(class) .vehicle = RODT_VEHICLE_CLASS_##class, .towed_units = -1
#define TOWING(units) .vehicle = RODT_VEHICLE_CLASS_COMBINATION, .towed_units = units
#define TRAIN .vehicle = RODT_VEHICLE_CLASS_COMBINATION
#define GOOD RODT_AIR_RESULT_GOOD, RODT_AIR_MISSING_NOTHING
#define DEFECTIVE RODT_AIR_RESULT_DEFECTIVE, RODT_AIR_MISSING_NOTHING
#define OPEN(what) RODT_AIR_RESULT_UNDETERMINED, RODT_AIR_MISSING_##what
static const struct {
    rodt_air_limit law[2], own[2]; /* the check NONE: no row */
    rodt_air_reading reading;
    rodt_air_result result;
    rodt_air_missing missing;
    bool own_judges;
} by_hand[] = {
    {{FROM(85, FOR_ALL)}, {{0}}, {.pressure = {90, 1}}, GOOD, false},
    {{FROM(85, FOR_ALL)}, {FROM(88, FOR_ALL)}, {.pressure = {90, 1}}, GOOD, true},
    {{FROM(85, FOR_ALL)}, {FROM(95, FOR_ALL)}, {.pressure = {90, 1}}, DEFECTIVE, true},
    {{FROM(95, FOR_ALL)}, {FROM(88, FOR_ALL)}, {.pressure = {90, 1}}, DEFECTIVE, false},
    /* a law without a row */
    {{{0}}, {FROM(85, FOR_ALL)}, {.pressure = {90, 1}}, GOOD, true},
    {{{0}}, {FROM(85, TRAIN, .towed_units = -1)}, {.pressure = {90, 1}}, OPEN(VEHICLE), true},
    {{{0}}, {FROM(85, FOR_ALL)}, {.pressure = {90, 1}, .cut_out = {90, 1}}, OPEN(SENSE), true},
    {{{0}}, {{0}}, {.pressure = {90, 1}}, OPEN(ROW), false},
    /* a law that the kind of vehicle decides; what a carrier does not ask of the others is kept */
    {{FROM(95, FOR(SINGLE)), FROM(85, FOR(COMBINATION))}, {FROM(80, FOR_ALL)}, {.pressure = {90, 1}}, OPEN(VEHICLE), false},
    {{FROM(85, FOR_ALL)}, {FROM(88, FOR(BUS))}, {.pressure = {90, 1}}, GOOD, true},
    {{FROM(85, FOR_ALL)}, {FROM(95, FOR(BUS))}, {.pressure = {90, 1}}, OPEN(VEHICLE), true},
    /* towed units that are not said: one is thought of in any case, others where there is a row */
    {{FROM(85, TOWING(2))}, {{0}}, {TRAIN, .pressure = {90, 1}}, OPEN(VEHICLE), false},
    {{FROM(85, TOWING(1)), FROM(85, TOWING(3))}, {{0}}, {TRAIN, .pressure = {90, 1}}, GOOD, false},
    {{FROM(85, TOWING(1)), FROM(95, TOWING(3))}, {{0}}, {TRAIN, .pressure = {90, 1}}, OPEN(VEHICLE), false},
    /* a carrier that times another span */
    {{{.check = RODT_AIR_CHECK_BUILD_UP, .comparison = RODT_COMPARISON_NOT_MORE_THAN, .value = {40, 1}, FOR_ALL,
       .measure = RODT_AIR_MEASURE_SECONDS, .span = RODT_AIR_SPAN_WARNING}},
     {{.check = RODT_AIR_CHECK_BUILD_UP, .comparison = RODT_COMPARISON_NOT_MORE_THAN, .value = {20, 1}, FOR_ALL,
       .measure = RODT_AIR_MEASURE_SECONDS, .span = RODT_AIR_SPAN_RECOVERY}},
     {.check = RODT_AIR_CHECK_BUILD_UP, .span = RODT_AIR_SPAN_WARNING, .seconds = {30, 1}}, GOOD, false},
};
#undef FROM
#undef FOR
#undef GOOD
#undef OPEN

static size_t rows_of(const rodt_air_limit rows[2]) { return (size_t)(rows[0].check != 0) + (rows[1].check != 0); }

static void laws_and_carriers_by_hand(void **state)
{
    (void)state;
    for (size_t i = 0; i < COUNT_OF(by_hand); i++) {
        const rodt_rules law = {.id = "law", .air = by_hand[i].law, .air_count = rows_of(by_hand[i].law)};
        const rodt_rules own = {.id = "own", .air = by_hand[i].own, .air_count = rows_of(by_hand[i].own), .law = &law, .air_law = &law};
        rodt_air_reading reading = by_hand[i].reading;
        reading.check = reading.check != 0 ? reading.check : RODT_AIR_CHECK_CUT_IN;
        rodt_air_finding finding = judge(&own, reading), alone = judge(&law, reading);
        if (finding.result != by_hand[i].result || finding.missing != by_hand[i].missing)
            fail_msg("case %zu: %s, missing \"%s\"", i, rodt_air_result_name(finding.result), rodt_air_missing_name(finding.missing));
        assert_int_equal(finding.law_result, alone.result);
        if (by_hand[i].own_judges)
            assert_ptr_equal(finding.row, finding.own_row);
        else
            assert_true(finding.row == finding.law_row && finding.missing == alone.missing);
    }
}

/* Where a figure of the law does not fit, the carrier's alone is no finding. */
static void a_figure_that_does_not_fit_the_law(void **state)
{
    (void)state;
    rodt_rules *own = load("us-cdl", AIR "cut-out,,,not-more-than,130,,psi\n");
    const rodt_air_reading reading = {.check = RODT_AIR_CHECK_LOSS_APPLIED, .vehicle = RODT_VEHICLE_CLASS_SINGLE,
                                      .before = {INT64_MAX, INT64_MAX / 100 - 1}, .after = {1, INT64_MAX}};
    rodt_air_finding finding;
    assert_int_equal(rodt_air_reading_judge(&reading, own, &finding, NULL), RODT_E_RANGE);
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
        cmocka_unit_test(applications_are_bounded),
        cmocka_unit_test(dated_rows_of_one_check_are_bounded),
        cmocka_unit_test(every_comparison_is_proved),
        cmocka_unit_test(each_cell_without_sense_is_refused),
        cmocka_unit_test(each_unreadable_cell_is_refused),
        cmocka_unit_test(rows_that_differ_in_one_thing_stand_together),
        cmocka_unit_test(days_that_overlap),
        cmocka_unit_test(the_day_after),
        cmocka_unit_test(what_does_not_fit_is_not_within),
        cmocka_unit_test(a_row_below_the_cut_out_in_words),
        cmocka_unit_test(what_is_laxer_is_named),
        cmocka_unit_test(what_cannot_be_compared_is_refused),
        cmocka_unit_test(every_day_and_vehicle_of_a_law),
        cmocka_unit_test(the_more_exact_row_is_chosen),
        cmocka_unit_test(a_figure_for_each_towed_unit),
        cmocka_unit_test(printed_kpa_are_those_of_the_psi),
        cmocka_unit_test(rows_in_words),
        cmocka_unit_test(every_row_of_every_law),
        cmocka_unit_test(the_stricter_figure_judges),
        cmocka_unit_test(what_is_open_stays_open),
        cmocka_unit_test(a_day_of_build_that_is_not_said_stays_open),
        cmocka_unit_test(the_same_figure_is_the_laws),
        cmocka_unit_test(a_check_that_the_law_has_not),
        cmocka_unit_test(words_of_a_carrier),
        cmocka_unit_test(laws_and_carriers_by_hand),
        cmocka_unit_test(a_figure_that_does_not_fit_the_law),
        cmocka_unit_test(spans_of_a_carrier),
        cmocka_unit_test(steps_of_a_carrier),
        cmocka_unit_test(another_law_for_the_air),
        cmocka_unit_test(never_better_than_the_law),
        cmocka_unit_test(every_changed_byte_is_safe),
    };
    return cmocka_run_group_tests_name("own_air", tests, NULL, NULL);
}
