/* SPDX-License-Identifier: Apache-2.0 */
/* Which chambers an invented axle has, and what can be seen of them. How often each is drawn is our own choice; no
 * limit stands here: those are the library's. */
#include "practice/practice.h"
#include "ui/compiler.h"

#include <stdio.h>
#include <string.h>

/* Rated strokes are those of a mark that may be on the housing, in quarter inches; 0 = the published one of the
 * standard stroke class, if the library knows it. Common practice, no source. */
static const struct {
    char size[RODT_SIZE_TEXT_SIZE];
    rodt_family family;
    practice_level level; /* from which it is drawn */
    bool is_long;
    bool shows_rated; /* the sign that tells it from its shorter namesake */
    unsigned char rated_quarters;
    unsigned char weights[ROLES];
} kinds[] = {
    {"16", RODT_FAMILY_CLAMP, PRACTICE_BASIC, false, false, 0, {20, 0, 0}},
    {"20", RODT_FAMILY_CLAMP, PRACTICE_BASIC, false, false, 0, {40, 0, 0}},
    {"24", RODT_FAMILY_CLAMP, PRACTICE_BASIC, false, false, 0, {15, 10, 8}},
    {"30", RODT_FAMILY_CLAMP, PRACTICE_BASIC, false, false, 0, {0, 50, 50}},
    {"12", RODT_FAMILY_CLAMP, PRACTICE_MIXED, false, false, 0, {6, 0, 0}},
    {"36", RODT_FAMILY_CLAMP, PRACTICE_MIXED, false, false, 0, {0, 4, 8}},
    {"16", RODT_FAMILY_CLAMP, PRACTICE_BASIC, true, false, 10, {6, 0, 0}},
    {"20", RODT_FAMILY_CLAMP, PRACTICE_BASIC, true, false, 10, {14, 0, 0}},
    {"24", RODT_FAMILY_CLAMP, PRACTICE_BASIC, true, false, 10, {8, 8, 6}},
    {"30", RODT_FAMILY_CLAMP, PRACTICE_BASIC, true, false, 12, {0, 24, 24}},
    {"20", RODT_FAMILY_CLAMP, PRACTICE_MIXED, true, true, 12, {6, 0, 0}},
    {"24", RODT_FAMILY_CLAMP, PRACTICE_MIXED, true, true, 12, {4, 8, 12}},
    {"A", RODT_FAMILY_BOLT, PRACTICE_HARD, false, false, 0, {6, 0, 0}},
    {"C", RODT_FAMILY_BOLT, PRACTICE_HARD, false, false, 0, {0, 6, 6}},
    {"30", RODT_FAMILY_ROTOCHAMBER, PRACTICE_HARD, false, false, 0, {0, 6, 4}},
    {"30", RODT_FAMILY_DD3, PRACTICE_HARD, false, false, 0, {0, 6, 0}},
};

/* --- Chambers of an axle ------------------------------------------------------------------------------ */

static rodt_length published_rated(const rodt_chamber *chamber)
{
    for (size_t i = 0; i < rodt_chamber_row_count(); i++) {
        const rodt_chamber_row *row = rodt_chamber_row_at(i);
        if (row->family == chamber->family && strcmp(row->size, chamber->size) == 0)
            return row->standard_rated_stroke;
    }
    return (rodt_length){0, 0};
}

/* A rule set without rows of limits judges by the marked rated stroke alone. */
static bool judges_by_rated(const practice *of) { return rodt_rules_limit_count(of->setting.rules) == 0; }

static void fill_axle(const practice *of, size_t kind, practice_axle *out)
{
    *out = (practice_axle){.is_long = kinds[kind].is_long};
    rodt_chamber *chamber = &out->chamber;
    chamber->family = kinds[kind].family;
    snprintf(chamber->size, sizeof chamber->size, "%s", kinds[kind].size);
    chamber->stroke_class = kinds[kind].is_long ? RODT_CLASS_LONG : RODT_CLASS_UNKNOWN;
    out->rated = published_rated(chamber);
    if (kinds[kind].rated_quarters > 0)
        (void)rodt_length_from_inches(kinds[kind].rated_quarters, 4, &out->rated);
    out->shows_rated = kinds[kind].shows_rated || judges_by_rated(of);
    if (out->shows_rated)
        chamber->rated_stroke = out->rated;
}

/* No limit hangs on the spring brake's size, but a person may take it for the chamber's. */
static void draw_spring(practice_random *random, const practice *of, axle_role role, rodt_chamber *chamber)
{
    bool may = role != ROLE_STEER && chamber->family == RODT_FAMILY_CLAMP && strcmp(chamber->size, "36") != 0;
    if (!may || practice_below(random, 5) < 2)
        return;
    bool other = practice_below(random, 2) == 0;
    if (strcmp(chamber->size, "24") == 0)
        snprintf(chamber->spring_size, sizeof chamber->spring_size, "%s", other ? "30" : "24");
    else
        snprintf(chamber->spring_size, sizeof chamber->spring_size, "%s",
                 other && of->setting.level == PRACTICE_HARD ? "36" : "30");
}

bool practice_draw_axle(practice_random *random, const practice *of, axle_role role, const char *size,
                        practice_axle *out)
{
    unsigned char weights[COUNT_OF(kinds)];
    unsigned sum = 0;
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        rodt_limit_answer answer;
        practice_axle axle;
        fill_axle(of, i, &axle);
        bool wanted = size[0] == '\0' ? kinds[i].level <= of->setting.level
                                      : strcmp(size, kinds[i].size) == 0 && !axle.is_long;
        bool fits = wanted && (!axle.shows_rated || rodt_length_given(axle.rated)) &&
                    rodt_rules_find_limit(of->setting.rules, &axle.chamber, of->day, &answer) == RODT_OK &&
                    rodt_length_given(answer.limit) && !answer.conflicting_marks;
        weights[i] = fits ? kinds[i].weights[role] : 0;
        sum += weights[i];
    }
    if (sum == 0)
        return false;
    fill_axle(of, practice_pick(random, weights, COUNT_OF(kinds)), out);
    draw_spring(random, of, role, &out->chamber);
    return true;
}

/* --- What is seen ------------------------------------------------------------------------------------- */

static void write_stamp(practice_random *random, const rodt_chamber *chamber, bool letters, practice_end *seen)
{
    const char *size = chamber->size, *spring = chamber->spring_size;
    unsigned form = practice_below(random, 3);
    if (spring[0] != '\0')
        snprintf(seen->stamp, sizeof seen->stamp, form == 0 ? "%s%s%s" : "%s/%s%s", size, spring, letters ? " LS" : "");
    else if (chamber->family != RODT_FAMILY_CLAMP)
        snprintf(seen->stamp, sizeof seen->stamp, "%s", size);
    else
        snprintf(seen->stamp, sizeof seen->stamp, "%s%s%s", form == 0 ? "TYPE " : form == 1 ? "T" : "", size,
                 !letters ? "" : form == 2 ? "L" : " LS");
}

/* A long-stroke chamber shows one of its signs at least. */
static void draw_signs(practice_random *random, bool is_long, bool *letters, practice_end *seen)
{
    static const unsigned char signs[] = {1, 2, 4, 3, 5, 6, 7}; /* letters, square ports, trapezoid tag, as bits */
    unsigned shown = is_long ? signs[practice_below(random, COUNT_OF(signs))] : 0;
    *letters = (shown & 1u) != 0;
    seen->port = (shown & 2u) != 0 ? RODT_PORT_SQUARE : RODT_PORT_ROUND;
    seen->tag = (shown & 4u) != 0 ? RODT_TAG_TRAPEZOID : RODT_TAG_NONE;
}

/* The way back, by the library's own readers: what the marks say is what is judged. */
static void read_marks(const practice_axle *axle, const practice_end *seen, bool rated, rodt_chamber *chamber)
{
    *chamber = (rodt_chamber){.family = axle->chamber.family};
    if (axle->chamber.family == RODT_FAMILY_CLAMP)
        (void)rodt_chamber_parse(seen->stamp, chamber, NULL);
    else
        snprintf(chamber->size, sizeof chamber->size, "%s", axle->chamber.size);
    chamber->family = axle->chamber.family;
    if (seen->port == RODT_PORT_SQUARE || seen->tag == RODT_TAG_TRAPEZOID)
        (void)rodt_chamber_add_class(chamber, RODT_CLASS_LONG);
    if (rated)
        chamber->rated_stroke = axle->rated;
}

void practice_draw_marks(practice_random *random, const practice *of, const practice_axle *axle, practice_end *seen,
                         rodt_chamber *chamber)
{
    bool letters = false;
    if (axle->chamber.family == RODT_FAMILY_CLAMP)
        draw_signs(random, axle->is_long, &letters, seen);
    write_stamp(random, &axle->chamber, letters, seen);
    unsigned marked = practice_below(random, 10);
    bool may = rodt_length_given(axle->rated) && of->setting.level != PRACTICE_BASIC;
    read_marks(axle, seen, axle->shows_rated || (may && marked < 3), chamber);
}
