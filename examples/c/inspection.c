/* SPDX-License-Identifier: Apache-2.0 */
/* A whole inspection as it is said aloud, by Ontario's rule set: an invented truck of two axles. Each step is said by
 * its sentences; after a reading comes what the reading says. */
#include <rodtravel/rodtravel.h>

#include <stdio.h>
#include <string.h>

#define COUNT_OF(array) (sizeof(array) / sizeof(array)[0])

static const rodt_air_reading truck = {.vehicle = RODT_VEHICLE_CLASS_SINGLE, .built = {2016, 0, 0}};

/* What was found at the air checks. */
static const struct {
    rodt_step step;
    rodt_air_form form;
} checks[] = {
    {RODT_STEP_DRAIN, {.check = "drain", .answer = "yes"}},
    {RODT_STEP_DRAIN, {.check = "contamination", .answer = "no"}},
    {RODT_STEP_WARNING, {.check = "warning", .pressure = "62"}},
    {RODT_STEP_BUILD_UP, {.check = "build-up", .before = "85", .after = "100", .seconds = "38"}},
    {RODT_STEP_CUT_OUT, {.check = "cut-out", .pressure = "125"}},
    {RODT_STEP_CUT_IN, {.check = "cut-in", .pressure = "100"}},
    {RODT_STEP_AUDIBLE_LEAK, {.check = "audible-leak", .answer = "yes"}},
    {RODT_STEP_LOSS_APPLIED, {.check = "loss-applied", .before = "110", .after = "108"}},
    {RODT_STEP_SPRING_BRAKE, {.check = "spring-brake", .answer = "yes"}},
};

static const struct {
    const char *position;
    rodt_form form;
} ends[] = {
    {"brake 1L", {.chamber = "clamp 20 standard", .released = "1 1/2", .applied = "3 1/8", .psi = "95"}},
    {"brake 1R", {.chamber = "clamp 20 standard", .released = "1 1/2", .applied = "3 1/4", .psi = "95"}},
    {"brake 2L", {.chamber = "clamp 30 standard", .released = "2 1/8", .applied = "3 7/8", .psi = "95"}},
    {"brake 2R", {.chamber = "clamp 30 standard", .released = "2 1/16", .applied = "4 1/4", .psi = "95"}},
};

/* Lines of at most 78 columns. */
static void say(unsigned indent, const char *text)
{
    size_t column = (size_t)printf("%*s", (int)indent, "");
    for (const char *first = text; *text != '\0';) {
        size_t size = strcspn(text, " ");
        if (column + 1 + size > 78)
            column = (size_t)printf("\n%*s", (int)indent, "") - 1;
        else if (text != first)
            column += (size_t)printf(" ");
        column += (size_t)printf("%.*s", (int)size, text);
        text += size + (text[size] == ' ');
    }
    putchar('\n');
}

/* What was not good, in the order in which it was found. */
static char defects[400];
static bool is_stopped; /* one of them is more than a minor defect */

static void keep_defect(const char *what, bool minor)
{
    size_t used = strlen(defects);
    snprintf(defects + used, sizeof defects - used, "%s%s", used > 0 ? ", " : "", what);
    is_stopped = is_stopped || !minor;
}

static void say_verdict(void)
{
    char text[sizeof defects + 100];
    snprintf(text, sizeof text, "I found: %s. %s", defects[0] != '\0' ? defects : "no defect",
             is_stopped          ? "Nobody drives this truck: I report it, and it stays chocked until it is repaired."
             : defects[0] != '\0' ? "I write it in the report, tell the carrier, and drive."
                                 : "The truck is good.");
    say(2, "And this truck?");
    say(4, text);
}

static bool say_check(const rodt_air_form *form, const rodt_rules *rules, const char *ask)
{
    rodt_air_reading reading;
    rodt_air_finding finding;
    char text[RODT_SENTENCE_SIZE];
    rodt_error error;
    bool said = rodt_air_form_parse(form, &reading, &error) == RODT_OK;
    reading.vehicle = truck.vehicle;
    reading.built = truck.built;
    said = said && rodt_air_reading_judge(&reading, rules, &finding, &error) == RODT_OK &&
           rodt_air_finding_spoken_format(&finding, text, sizeof text, NULL) == RODT_OK;
    if (said && finding.result == RODT_AIR_RESULT_DEFECTIVE)
        keep_defect(rodt_air_check_title((rodt_air_check)reading.check), finding.minor);
    if (said) {
        say(2, ask);
        say(4, text);
    }
    return said;
}

static bool say_strokes(const rodt_rules *rules)
{
    for (size_t i = 0; i < COUNT_OF(ends); i++) {
        rodt_finding finding;
        rodt_error error;
        char text[RODT_SENTENCE_SIZE], chamber[RODT_CHAMBER_TEXT_SIZE], ask[RODT_CHAMBER_TEXT_SIZE + 40];
        if (rodt_form_judge(&ends[i].form, rules, &finding, &error) != RODT_OK ||
            rodt_chamber_format(&finding.chamber, chamber, sizeof chamber, NULL) != RODT_OK ||
            rodt_finding_spoken_format(&finding, text, sizeof text, NULL) != RODT_OK)
            return false;
        if (finding.verdict != RODT_VERDICT_IN_ADJUSTMENT)
            keep_defect(ends[i].position, false);
        snprintf(ask, sizeof ask, "And %s, chamber %s?", ends[i].position, chamber);
        say(2, ask);
        say(4, text);
    }
    return true;
}

static bool say_step(rodt_step step, const rodt_rules *rules)
{
    static const char *const asks[RODT_STEP_PART_END] = {
        [RODT_STEP_PART_DO] = "What do you do?", [RODT_STEP_PART_SEE] = "What do you see?",
        [RODT_STEP_PART_GOOD] = "Why is that good?", [RODT_STEP_PART_DEFECTIVE] = "What would be defective?"};
    const rodt_air_limit *row = rodt_step_row_at(step, rules, &truck, 0);
    char text[RODT_SENTENCE_SIZE];
    for (int part = 0; part < RODT_STEP_PART_END; part++) {
        if (rodt_step_format(step, (rodt_step_part)part, rules, row, text, sizeof text, NULL) != RODT_OK)
            return false;
        if (part == RODT_STEP_PART_TITLE) {
            printf("\n%s\n", text);
            continue;
        }
        say(2, asks[part]);
        say(4, text);
    }
    return true;
}

int main(void)
{
    const rodt_rules *rules = rodt_rules_find("ca-on");
    rodt_step step;
    puts("An inspection by ca-on, said aloud. The truck is invented. The examiner asks, the driver answers.");
    for (size_t i = 0; (step = rodt_step_at(rules, RODT_VEHICLE_CLASS_SINGLE, i)) != RODT_STEP_NONE; i++) {
        bool said = say_step(step, rules);
        for (size_t k = 0; said && k < COUNT_OF(checks); k++) {
            if (checks[k].step == step)
                said = say_check(&checks[k].form, rules, "What did you find?");
        }
        if (said && step == RODT_STEP_COMPARE)
            said = say_strokes(rules);
        if (said && step == RODT_STEP_VEHICLE)
            say_verdict();
        if (!said)
            return 1;
    }
    return 0;
}
