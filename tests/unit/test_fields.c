/* SPDX-License-Identifier: Apache-2.0 */
/* Fields of a wheel end: names, headings as files have them, and first cells that belong to something else. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>
#include <string.h>

#include "rodtravel/rodtravel.h"

/* The number of none is the same in a variable and in a member of 32 bits. */
static const struct {
    RODT_ENUM32(rodt_field) field;
} member = {RODT_FIELD_NONE};

static rodt_field found(const char *heading)
{
    RODT_ENUM32(rodt_field) field = RODT_FIELD_NONE;
    RODT_ENUM32(rodt_field) cut = RODT_FIELD_NONE;
    assert_int_equal(rodt_field_find(heading, &field), rodt_field_find_n(heading, strlen(heading), &cut));
    assert_int_equal(field, cut);
    return (rodt_field)field;
}

static rodt_field meant(const char *heading) { return rodt_field_meant(heading, strlen(heading)); }

static void every_name_finds_its_field(void **state)
{
    (void)state;
    RODT_ENUM32(rodt_field) kept = RODT_FIELD_DRUM;
    for (int field = 0; field < RODT_FIELD_END; field++) {
        bool is_free = field >= RODT_READING_FIELDS && field < RODT_FIELD_ROOM;
        assert_int_equal(found(rodt_field_name((rodt_field)field)), is_free ? RODT_FIELD_NONE : field);
        assert_true(is_free == (rodt_field_name((rodt_field)field)[0] == '\0'));
    }
    assert_string_equal(rodt_field_name(RODT_FIELD_NONE), "");
    assert_string_equal(rodt_field_name((rodt_field)-1), "");
    assert_int_equal(rodt_field_find(NULL, &kept), RODT_E_ARGUMENT);
    assert_int_equal(rodt_field_find("psi", NULL), RODT_E_ARGUMENT);
    assert_int_equal(rodt_field_find("remarks", &kept), RODT_E_SYNTAX);
    assert_int_equal(kept, RODT_FIELD_DRUM);
    assert_true(member.field == rodt_field_meant(NULL, 0) && (int64_t)member.field == (int64_t)RODT_FIELD_NONE);
    assert_int_equal(found(""), RODT_FIELD_NONE);
    assert_int_equal(found("remarks"), RODT_FIELD_NONE);
    assert_int_equal(found("psi after dinner"), RODT_FIELD_NONE);
}

static void spelling_of_a_heading_makes_no_difference(void **state)
{
    (void)state;
    static const struct {
        const char *heading;
        rodt_field field;
    } cases[] = {{"Stroke Class", RODT_FIELD_STROKE_CLASS}, {"strokeClass", RODT_FIELD_STROKE_CLASS},
                 {"STROKECLASS", RODT_FIELD_STROKE_CLASS},  {"stroke-class", RODT_FIELD_STROKE_CLASS},
                 {" stroke__class ", RODT_FIELD_STROKE_CLASS}, {"stroke.class", RODT_FIELD_STROKE_CLASS},
                 {"psiAfter", RODT_FIELD_PSI_AFTER},        {"PSI after", RODT_FIELD_PSI_AFTER},
                 {"Rated\tStroke", RODT_FIELD_RATED_STROKE}, {"\xEF\xBB\xBF" "Chamber", RODT_FIELD_CHAMBER},
                 {"Insp. Date", RODT_FIELD_DATE},           {"Inspection\xC2\xA0" "date", RODT_FIELD_DATE},
                 {"date of inspection", RODT_FIELD_DATE},   {"Pressure", RODT_FIELD_PSI},
                 {"armLength", RODT_FIELD_ARM_LENGTH},      {"Class", RODT_FIELD_STROKE_CLASS},
                 {"Pressure after", RODT_FIELD_PSI_AFTER},  {"vehicle class", RODT_FIELD_NONE}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        assert_int_equal(found(cases[i].heading), cases[i].field);
    assert_true(rodt_heading_equal("Unit No", 7, "unit_no", 7));
    assert_true(rodt_heading_equal("AZ", 2, "az", 2));
    assert_false(rodt_heading_equal("[", 1, "{", 1));
    assert_false(rodt_heading_equal("a\0b", 3, "a", 1));
    assert_false(rodt_heading_equal("a\0b", 3, "ab", 2));
    assert_true(rodt_heading_equal("a\0", 2, "a\1", 2)); /* a sign that no heading has */
    assert_true(rodt_heading_equal(NULL, 0, NULL, 0));
    assert_false(rodt_heading_equal(NULL, 0, "", 0));
    assert_false(rodt_heading_equal("", 0, NULL, 0));
    /* A mark or a blank of several bytes at the end, cut, and nearly one. */
    assert_true(rodt_heading_equal("psi\xEF\xBB\xBF", 6, "psi", 3));
    assert_false(rodt_heading_equal("psi\xEF\xBB\xBF", 5, "psi", 3));
    assert_false(rodt_heading_equal("psi\xEF\xBB\xBE", 6, "psi", 3));
    assert_true(rodt_heading_equal("psi\xC2\xA0", 5, "psi", 3));
    assert_false(rodt_heading_equal("psi\xC2\xA0", 4, "psi", 3));
    assert_false(rodt_heading_equal("psi\xC2\xA1", 5, "psi", 3));
    assert_false(rodt_heading_equal("psi\xC2\xA1", 5, "psi", 3));
    assert_false(rodt_heading_equal("unit", 4, "units", 5));
    assert_false(rodt_heading_equal("a\0b", 3, "ab", 2));
    assert_false(rodt_heading_equal(NULL, 0, "a", 1));
    assert_false(rodt_heading_equal("a", 1, NULL, 0));
    assert_true(rodt_heading_equal(NULL, 0, NULL, 0));
}

static void expect_meant(const char *slip, rodt_field field)
{
    RODT_ENUM32(rodt_field) found = RODT_FIELD_NONE;
    if (rodt_field_find(slip, &found) != RODT_OK && meant(slip) != field)
        fail_msg("\"%s\" for %s is not seen", slip, rodt_field_name(field));
}

/* A column whose heading has one slip of the keys would not be read, and nobody would know. */
static void every_slip_of_a_heading_is_told(void **state)
{
    (void)state;
    for (int field = 0; field < RODT_FIELD_END; field++) {
        const char *name = rodt_field_name((rodt_field)field);
        char slip[40];
        for (size_t i = 0; i < strlen(name); i++) {
            snprintf(slip, sizeof slip, "%.*s%s", (int)i, name, name + i + 1);
            expect_meant(slip, (rodt_field)field);
            snprintf(slip, sizeof slip, "%.*s%c%s", (int)i, name, name[i], name + i);
            expect_meant(slip, (rodt_field)field);
            snprintf(slip, sizeof slip, "%.*sx%s", (int)i, name, name + i + 1);
            expect_meant(slip, (rodt_field)field);
            snprintf(slip, sizeof slip, "%.*s%.1s%c%s", (int)i, name, name + i + 1, name[i], name + i + 1 + (name[i + 1] != '\0'));
            expect_meant(slip, (rodt_field)field);
        }
    }
    assert_int_equal(meant("insp dte"), RODT_FIELD_DATE);
    /* two slips are another word */
    static const char *const others[] = {"note",    "name",    "site",    "state",   "plate",   "axle",    "side",
                                         "line",    "fleet",   "",        "x",       "chamb",   "chamberxx", "cxamxer",
                                         "caxmber", "cxhmber", "cahmbre", "chaxmbe", "chamxxber", "hamxber", "ch4mber",
                                         "chaxxber", "off",    "on",      "cold"};
    for (size_t i = 0; i < sizeof others / sizeof others[0]; i++)
        assert_int_equal(meant(others[i]), RODT_FIELD_NONE);
}

static void a_heading_that_looks_meant_is_told(void **state)
{
    (void)state;
    assert_int_equal(meant("Date tested"), RODT_FIELD_DATE);
    assert_int_equal(meant("day"), RODT_FIELD_DATE);
    assert_int_equal(meant("Pressure (psi)"), RODT_FIELD_PSI);
    assert_int_equal(meant("PSI reading"), RODT_FIELD_PSI);
    assert_int_equal(meant("Stroke type"), RODT_FIELD_STROKE_CLASS);
    assert_int_equal(meant("Drum temperature"), RODT_FIELD_DRUM);
    assert_int_equal(meant("Engine running"), RODT_FIELD_ENGINE);
    static const struct {
        const char *heading;
        rodt_field field;
    } cases[] = {{"units", RODT_FIELD_UNIT},           {"UOM", RODT_FIELD_UNIT},
                 {"length_unit", RODT_FIELD_UNIT},     {"Unit of measure", RODT_FIELD_UNIT},
                 {"timestamp", RODT_FIELD_DATE},       {"inspected_at", RODT_FIELD_DATE},
                 {"measured_on", RODT_FIELD_DATE},     {"when", RODT_FIELD_DATE},
                 {"engine_on", RODT_FIELD_ENGINE},     {"Engine status", RODT_FIELD_ENGINE},
                 {"park brake", RODT_FIELD_SPRING_BRAKE}, {"Parking", RODT_FIELD_SPRING_BRAKE},
                 {"kPa_after", RODT_FIELD_PSI_AFTER},  {"psi2", RODT_FIELD_PSI_AFTER},
                 {"class", RODT_FIELD_NONE},           {"Rated", RODT_FIELD_RATED_STROKE},
                 {"Slack arm", RODT_FIELD_ARM_LENGTH}, {"unit_no", RODT_FIELD_NONE},
                 {"engine_model", RODT_FIELD_NONE},    {"brakes", RODT_FIELD_NONE},
                 {"Datum", RODT_FIELD_DATE},           {"Fecha", RODT_FIELD_DATE},
                 {"inspected by", RODT_FIELD_DATE},    {"measured at", RODT_FIELD_DATE},
                 {"tested on", RODT_FIELD_DATE},       {"tested at", RODT_FIELD_DATE},
                 {"the stroke class", RODT_FIELD_STROKE_CLASS}, {"rated stroke (in)", RODT_FIELD_RATED_STROKE},
                 {"marked limit (in)", RODT_FIELD_MARKED_LIMIT}, {"psi after test", RODT_FIELD_PSI_AFTER},
                 {"after kPa", RODT_FIELD_PSI_AFTER},  {"after psi", RODT_FIELD_PSI_AFTER},
                 {"pressure after test", RODT_FIELD_PSI_AFTER}, {"pressure 2", RODT_FIELD_PSI_AFTER},
                 {"kPa", RODT_FIELD_PSI},              {"unit of length", RODT_FIELD_UNIT},
                 {"measurement unit", RODT_FIELD_UNIT}, {"spring brake state", RODT_FIELD_SPRING_BRAKE},
                 {"parking brake", RODT_FIELD_SPRING_BRAKE}, {"engine off", RODT_FIELD_ENGINE},
                 {"arm length (in)", RODT_FIELD_ARM_LENGTH}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++)
        assert_int_equal(meant(cases[i].heading), cases[i].field);
    assert_int_equal(meant("psi"), RODT_FIELD_NONE); /* it is read */
    assert_int_equal(meant("presure"), RODT_FIELD_PSI); /* a slip of another name of the field */
    assert_int_equal(meant("remarks"), RODT_FIELD_NONE);
    assert_int_equal(rodt_field_meant(NULL, 0), RODT_FIELD_NONE);
    assert_int_equal(rodt_field_meant("x\0pressure", 10), RODT_FIELD_PSI);
    /* What is longer than any hint needs is cut, not looked through: a paragraph is no heading. */
    char paragraph[400];
    memset(paragraph, 'x', sizeof paragraph);
    memcpy(paragraph + 200, "pressure", 8);
    assert_int_equal(rodt_field_meant(paragraph, sizeof paragraph), RODT_FIELD_PSI);
    memset(paragraph + 200, 'x', 8);
    memcpy(paragraph + 248, "pressure", 8);
    assert_int_equal(rodt_field_meant(paragraph, sizeof paragraph), RODT_FIELD_NONE);
    memset(paragraph + 248, 'x', 8);
    memcpy(paragraph + 247, "pressure", 8);
    assert_int_equal(rodt_field_meant(paragraph, sizeof paragraph), RODT_FIELD_PSI);
    assert_int_equal(rodt_field_meant(paragraph, 250), RODT_FIELD_NONE);
}

static bool accepts(rodt_field field, const char *text) { return rodt_field_accepts(field, text, strlen(text)); }

static void a_first_cell_tells_what_a_column_is_about(void **state)
{
    (void)state;
    assert_true(accepts(RODT_FIELD_ENGINE, "OFF"));
    assert_true(accepts(RODT_FIELD_ENGINE, " "));
    assert_false(accepts(RODT_FIELD_ENGINE, "D13"));
    assert_true(accepts(RODT_FIELD_SPRING_BRAKE, "released"));
    assert_false(accepts(RODT_FIELD_SPRING_BRAKE, "yes"));
    assert_true(accepts(RODT_FIELD_DRUM, "hot"));
    assert_false(accepts(RODT_FIELD_DRUM, "16.5 x 7"));
    assert_true(accepts(RODT_FIELD_DIVISION, "1/16"));
    assert_true(accepts(RODT_FIELD_DIVISION, "0,5 mm"));
    assert_false(accepts(RODT_FIELD_DIVISION, "North"));
    assert_false(accepts(RODT_FIELD_DIVISION, "16"));
    assert_false(accepts(RODT_FIELD_DIVISION, "0"));
    assert_true(accepts(RODT_FIELD_DIVISION, "1")); /* a millimetre */
    assert_true(accepts(RODT_FIELD_DIVISION, "12"));
    assert_true(accepts(RODT_FIELD_DIVISION, "12,5"));
    assert_true(accepts(RODT_FIELD_DIVISION, "1.375"));
    assert_false(accepts(RODT_FIELD_DIVISION, "13"));
    static const char *const of_others[][3] = {{"released", "applied", "warm"}, {"cold", "hot", "1"}, {"off", "on", "released"}};
    for (int field = RODT_FIELD_ENGINE; field <= RODT_FIELD_DRUM; field++)
        for (size_t i = 0; i < 3; i++)
            assert_false(accepts((rodt_field)field, of_others[field - RODT_FIELD_ENGINE][i]));
    assert_true(accepts(RODT_FIELD_SPRING_BRAKE, "off"));
    assert_true(accepts(RODT_FIELD_UNIT, ""));
    assert_true(accepts(RODT_FIELD_UNIT, "pouces"));
    assert_false(accepts(RODT_FIELD_UNIT, "T-104"));
    assert_true(accepts(RODT_FIELD_CHAMBER, "anything"));
    assert_true(rodt_field_accepts(RODT_FIELD_UNIT, NULL, 0));
    assert_true(rodt_field_accepts(RODT_FIELD_UNIT, NULL, 3));
}

static bool is_vehicle(const char *text) { return rodt_unit_is_vehicle(text, strlen(text)); }

static void a_unit_can_be_a_vehicle(void **state)
{
    (void)state;
    assert_true(is_vehicle("T-104"));
    assert_true(is_vehicle(" 4711 "));
    assert_false(is_vehicle("mm"));
    assert_false(is_vehicle("64ths"));
    assert_false(is_vehicle("1/64"));
    assert_false(is_vehicle("64"));
    assert_false(is_vehicle("0.1 mm"));
    assert_false(is_vehicle("Bertha")); /* without a number it may be a unit that was misspelt */
    assert_false(is_vehicle(""));
    assert_false(rodt_unit_is_vehicle(NULL, 0));
    assert_false(rodt_unit_is_vehicle(NULL, 3));
    assert_false(is_vehicle(" 64 "));
    assert_false(rodt_unit_is_vehicle("T-\0" "104", 6));
    assert_false(is_vehicle("T-104\xC2\xBD")); /* a raised half */
    static const char *const vehicles[] = {"T-104", "T-1", "T-2", "T-9", "0", "9", "3", "A 64", "101", "11", "12", "1001", "64 thx", "T-10\x7F"};
    static const char *const divisions[] = {"1",  "2",   "4",   "8",    "10",   "16",    "32",    "64",  "100",
                                            "128", "1000", "64th", "10 mm", "1 cm", "8 in", "8 inch", "8 inches", "8 po"};
    static const char *const neither[] = {"1.5", "1,5", "1'", "1\"", "1/2", "T-10\x80", "T", ":", "/"};
    for (size_t i = 0; i < sizeof vehicles / sizeof vehicles[0]; i++)
        assert_true(is_vehicle(vehicles[i]));
    for (size_t i = 0; i < sizeof divisions / sizeof divisions[0]; i++)
        assert_false(is_vehicle(divisions[i]));
    for (size_t i = 0; i < sizeof neither / sizeof neither[0]; i++)
        assert_false(is_vehicle(neither[i]));
}

static bool names(const char *heading, rodt_unit unit) { return rodt_heading_names_unit(heading, strlen(heading), unit); }

static void a_heading_can_name_a_unit(void **state)
{
    (void)state;
    static const struct {
        const char *heading;
        int unit; /* -1 = none */
    } cases[] = {{"Released (mm)", RODT_UNIT_MM}, {"applied_in", RODT_UNIT_IN},  {"applied in", RODT_UNIT_IN},
                 {"in (mm)", RODT_UNIT_MM},       {"in (mm) cm", RODT_UNIT_MM},  {"measured in the yard", -1},
                 {"[cm] applied", RODT_UNIT_CM},  {"applied, in.", RODT_UNIT_IN}, {"in", RODT_UNIT_IN},
                 {"IN ", RODT_UNIT_IN},           {"mmm", -1},                   {"released", -1},
                 {"", -1},                        {" - ", -1},                   {"a\tmm\r\n", RODT_UNIT_MM},
                 {"x{mm}", RODT_UNIT_MM},         {"x/cm;", RODT_UNIT_CM},       {"x:mm=", RODT_UNIT_MM},
                 {"inches rod", RODT_UNIT_IN},    {"rod-cm", RODT_UNIT_CM},      {"x)mm", RODT_UNIT_MM}};
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        for (int unit = 0; unit < RODT_UNIT_END; unit++) {
            if (names(cases[i].heading, (rodt_unit)unit) != (unit == cases[i].unit))
                fail_msg("%s: %d", cases[i].heading, unit);
        }
    }
    assert_false(rodt_heading_names_unit(NULL, 0, RODT_UNIT_IN));
    assert_false(rodt_heading_names_unit(NULL, 2, RODT_UNIT_IN));
    assert_true(rodt_heading_names_unit("mmx", 2, RODT_UNIT_MM)); /* nothing behind the size is read */
    assert_true(rodt_heading_names_unit("x mmm", 4, RODT_UNIT_MM));
    assert_false(rodt_heading_names_unit("x  mm", 2, RODT_UNIT_MM));
    assert_false(rodt_heading_names_unit("x \"", 2, RODT_UNIT_IN));
    assert_true(rodt_heading_names_unit("in mm", 3, RODT_UNIT_IN));
    assert_true(rodt_heading_names_unit("a\0mm", 4, RODT_UNIT_MM));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_name_finds_its_field),
        cmocka_unit_test(spelling_of_a_heading_makes_no_difference),
        cmocka_unit_test(a_heading_that_looks_meant_is_told),
        cmocka_unit_test(every_slip_of_a_heading_is_told),
        cmocka_unit_test(a_first_cell_tells_what_a_column_is_about),
        cmocka_unit_test(a_unit_can_be_a_vehicle),
        cmocka_unit_test(a_heading_can_name_a_unit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
