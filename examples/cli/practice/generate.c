/* SPDX-License-Identifier: Apache-2.0 */
/* An invented vehicle: axles alike but for what goes wrong on purpose, strokes as a yard finds them. Every share and
 * every range here is our own choice. */
#include "practice/practice.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "ui/message.h"

#include <stdio.h>
#include <string.h>

typedef enum axle_role { ROLE_STEER, ROLE_DRIVE, ROLE_TRAILER, ROLES } axle_role;

/* The chambers of an axle. */
typedef struct axle_kind {
    rodt_chamber chamber; /* as the marks are to be read */
    rodt_length rated;    /* rated stroke that is marked on some housings of the kind; not given = unknown */
    bool shows_rated;     /* its limit depends on that mark, so it is there */
    bool is_long;
} axle_kind;

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
    {"30", RODT_FAMILY_DD_3, PRACTICE_HARD, false, false, 0, {0, 6, 0}},
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

static void fill_axle(const practice *of, size_t kind, axle_kind *out)
{
    *out = (axle_kind){.is_long = kinds[kind].is_long};
    rodt_chamber *chamber = &out->chamber;
    chamber->family = kinds[kind].family;
    snprintf(chamber->size, sizeof chamber->size, "%s", kinds[kind].size);
    chamber->stroke_class = kinds[kind].is_long ? RODT_STROKE_CLASS_LONG : RODT_STROKE_CLASS_UNKNOWN;
    out->rated = published_rated(chamber);
    if (kinds[kind].rated_quarters > 0 &&
        rodt_length_from_inches(kinds[kind].rated_quarters, 4, &out->rated) != RODT_OK)
        out->rated = (rodt_length){0, 0};
    out->shows_rated = kinds[kind].shows_rated || judges_by_rated(of);
    if (out->shows_rated)
        chamber->rated_stroke = out->rated;
}

/* No limit depends on the spring brake's size, but a person may take it for the chamber's. */
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

/* Draws chambers that have a limit; `size` "" = any. False: the rule set has none for this role. */
static bool draw_axle(practice_random *random, const practice *of, axle_role role, const char *size, axle_kind *out)
{
    unsigned char weights[COUNT_OF(kinds)];
    unsigned sum = 0;
    for (size_t i = 0; i < COUNT_OF(kinds); i++) {
        rodt_limit_answer answer;
        axle_kind axle;
        fill_axle(of, i, &axle);
        bool wanted = size[0] == '\0' ? kinds[i].level <= of->setting.level
                                      : strcmp(size, kinds[i].size) == 0 && !axle.is_long;
        bool fits = wanted && (!axle.shows_rated || rodt_length_given(axle.rated)) &&
                    rodt_rules_find_limit(of->setting.rules, &axle.chamber, of->day, &answer, NULL) == RODT_OK &&
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

/* --- Marks ------------------------------------------------------------------------------------------- */

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

/* Reads the marks with the library's own parsers, so the answer key judges what the marks say. */
static void read_marks(const axle_kind *axle, const practice_end *seen, bool rated, rodt_chamber *chamber)
{
    *chamber = (rodt_chamber){.family = axle->chamber.family};
    if (axle->chamber.family != RODT_FAMILY_CLAMP)
        snprintf(chamber->size, sizeof chamber->size, "%s", axle->chamber.size);
    else if (rodt_chamber_parse(seen->stamp, chamber, NULL) != RODT_OK)
        *chamber = (rodt_chamber){.size = ""};
    chamber->family = axle->chamber.family;
    if (seen->port == RODT_PORT_SQUARE || seen->tag == RODT_TAG_TRAPEZOID)
        (void)rodt_chamber_add_class(chamber, RODT_STROKE_CLASS_LONG);
    if (rated)
        chamber->rated_stroke = axle->rated;
}

/* Draws the marks of one of them, and reads them again as a person must: stamp, ports, tag, rated stroke. */
static void draw_marks(practice_random *random, const practice *of, const axle_kind *axle, practice_end *seen,
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

/* --- The vehicle being made --------------------------------------------------------------------------- */

typedef struct maker {
    practice_random random;
    practice *of;
    char dated_size[RODT_SIZE_TEXT_SIZE]; /* an axle gets this size, whose limit changed near the day; "" = none */
    rodt_length dated_limit;              /* the lower of its two limits */
    int psi;                              /* of this vehicle, before an application */
    int psi_least;                        /* the window that the rule set asks for */
    int psi_most;
    bool window;
} maker;

/* Of one axle: what its ends have in common. */
typedef struct axle_plan {
    axle_kind axle;
    axle_role role;
    int released; /* sixteenths of an inch */
    int slack;    /* by how much an ordinary stroke is below the limit */
} axle_plan;

/* --- Units -------------------------------------------------------------------------------------------- */

static bool is_metric(const practice *of) { return of->setting.unit == RODT_UNIT_MM; }

/* Ticks of the sheet's tape that come nearest to so many sixteenths of an inch. */
static int ticks_of(const practice *of, int sixteenths)
{
    return is_metric(of) ? (sixteenths * 127 + (sixteenths < 0 ? -40 : 40)) / 80 : sixteenths;
}

static rodt_length length_of(const practice *of, int ticks)
{
    rodt_length length;
    rodt_status status = is_metric(of) ? rodt_length_from_mm(ticks, 1, &length)
                                       : rodt_length_from_inches(ticks, 16, &length);
    return status == RODT_OK ? length : (rodt_length){0, 0};
}

/* Whole ticks that a length holds; 0 for one that is not given. */
static int whole_ticks(const practice *of, rodt_length length)
{
    rodt_ratio scale = is_metric(of) ? (rodt_ratio){127, 5} : (rodt_ratio){16, 1};
    rodt_length ticks;
    if (!rodt_length_given(length) || rodt_length_scale(length, scale, &ticks) != RODT_OK)
        return 0;
    return (int)(ticks.num / ticks.den);
}

/* --- Day ---------------------------------------------------------------------------------------------- */

/* The row that came after one that has ended: its first day is the other side of the change. */
static const rodt_limit *successor(const rodt_rules *rules, const rodt_limit *ended)
{
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        if (row->family == ended->family && row->stroke_class == ended->stroke_class &&
            strcmp(row->size, ended->size) == 0 && rodt_date_compare(row->from, ended->until) > 0)
            return row;
    }
    return NULL;
}

static bool draw_dated(maker *make)
{
    const rodt_rules *rules = make->of->setting.rules;
    for (size_t i = 0; i < rodt_rules_limit_count(rules); i++) {
        const rodt_limit *row = rodt_rules_limit_at(rules, i);
        const rodt_limit *next = rodt_date_given(row->until) ? successor(rules, row) : NULL;
        if (next == NULL)
            continue;
        snprintf(make->dated_size, sizeof make->dated_size, "%s", row->size);
        make->dated_limit = rodt_length_compare(row->limit, next->limit) < 0 ? row->limit : next->limit;
        make->of->day = practice_below(&make->random, 2) == 0 ? row->until : next->from;
        return true;
    }
    return false;
}

/* Never today: the sheet of a seed would be another one tomorrow. */
static void draw_day(maker *make)
{
    static const unsigned odds[PRACTICE_LEVELS] = {0, 10, 5};
    practice *of = make->of;
    unsigned one_in = odds[of->setting.level];
    of->day = of->setting.day;
    if (rodt_date_given(of->day))
        return;
    if (one_in > 0 && practice_below(&make->random, one_in) == 0 && draw_dated(make))
        return;
    int year = practice_between(&make->random, 2022, 2025);
    int month = practice_between(&make->random, 1, 12);
    int day = practice_between(&make->random, 1, 28);
    if (rodt_date_make(year, month, day, &of->day) != RODT_OK)
        of->day = of->setting.day;
}

/* --- One wheel end ------------------------------------------------------------------------------------ */

static practice_trap draw_trap(maker *make)
{
    static const unsigned char weights[PRACTICE_LEVELS][TRAP_COUNT] = {
        [PRACTICE_BASIC] = {[TRAP_NONE] = 150, [TRAP_NEAR] = 20, [TRAP_AT_LIMIT] = 8, [TRAP_TICK_OVER] = 10,
                            [TRAP_OVER] = 12, [TRAP_NO_MOVEMENT] = 2},
        [PRACTICE_MIXED] = {[TRAP_NONE] = 130, [TRAP_NEAR] = 22, [TRAP_AT_LIMIT] = 10, [TRAP_TICK_OVER] = 11,
                            [TRAP_OVER] = 10, [TRAP_NO_MOVEMENT] = 2, [TRAP_SWAPPED] = 2, [TRAP_MIXED_METHODS] = 2,
                            [TRAP_PRESSURE_LOW] = 5, [TRAP_PRESSURE_HIGH] = 3, [TRAP_ENGINE] = 1, [TRAP_PARKING] = 2,
                            [TRAP_HOT] = 2, [TRAP_HEARSAY] = 3},
        [PRACTICE_HARD] = {[TRAP_NONE] = 70, [TRAP_NEAR] = 24, [TRAP_AT_LIMIT] = 16, [TRAP_TICK_OVER] = 18,
                           [TRAP_OVER] = 14, [TRAP_NO_MOVEMENT] = 5, [TRAP_SWAPPED] = 5, [TRAP_MIXED_METHODS] = 4,
                           [TRAP_PRESSURE_LOW] = 12, [TRAP_PRESSURE_HIGH] = 8, [TRAP_ENGINE] = 4, [TRAP_PARKING] = 5,
                           [TRAP_HOT] = 5, [TRAP_HEARSAY] = 7, [TRAP_BEYOND] = 3}};
    return (practice_trap)practice_pick(&make->random, weights[make->of->setting.level], TRAP_COUNT);
}

/* A trap that the wheel end cannot have becomes the nearest one that it can. */
static practice_trap possible_trap(const maker *make, const axle_plan *plan, const practice_end *seen,
                              const rodt_chamber *chamber, rodt_length long_limit)
{
    bool dated = make->dated_size[0] != '\0' && plan->axle.chamber.family == RODT_FAMILY_CLAMP &&
                 strcmp(chamber->size, make->dated_size) == 0;
    if (dated)
        return TRAP_DAY;
    switch (seen->trap) {
    case TRAP_HEARSAY: return rodt_length_given(long_limit) ? TRAP_HEARSAY : TRAP_OVER;
    case TRAP_BEYOND: return rodt_length_given(chamber->rated_stroke) ? TRAP_BEYOND : TRAP_OVER;
    case TRAP_PARKING: return plan->role == ROLE_STEER ? TRAP_ENGINE : TRAP_PARKING;
    case TRAP_PRESSURE_LOW:
    case TRAP_PRESSURE_HIGH: return make->window ? seen->trap : TRAP_NEAR;
    case TRAP_NONE: case TRAP_NEAR: case TRAP_AT_LIMIT: case TRAP_TICK_OVER: case TRAP_OVER: case TRAP_NO_MOVEMENT:
    case TRAP_SWAPPED: case TRAP_MIXED_METHODS: case TRAP_ENGINE: case TRAP_HOT: case TRAP_DAY: case TRAP_COUNT: break;
    }
    return seen->trap;
}

/* The limit as ticks, and the end of the rod's travel where it is known; 0 = not known. */
typedef struct stroke_range {
    int limit;
    int rated;
    int other; /* of TRAP_HEARSAY and TRAP_DAY: the other limit */
} stroke_range;

static int over_by(maker *make, const stroke_range *of, int least, int most)
{
    int stroke = of->limit + practice_between(&make->random, ticks_of(make->of, least), ticks_of(make->of, most));
    return of->rated > of->limit && stroke > of->rated ? of->rated : stroke;
}

static int ordinary(maker *make, const stroke_range *of, int slack)
{
    int below = ticks_of(make->of, slack + practice_between(&make->random, -2, 2));
    int least = ticks_of(make->of, 6);
    int stroke = of->limit - (below < 1 ? 1 : below);
    return stroke < least ? least : stroke;
}

static int draw_stroke(maker *make, practice_trap trap, const stroke_range *of, int slack)
{
    practice_random *random = &make->random;
    int least = of->limit < of->other ? of->limit : of->other, most = of->limit + of->other - least;
    switch (trap) {
    case TRAP_NEAR: return of->limit - practice_between(random, 1, 2);
    case TRAP_AT_LIMIT: return of->limit;
    case TRAP_TICK_OVER: return over_by(make, of, 1, 3);
    case TRAP_OVER: return over_by(make, of, 4, 8);
    case TRAP_NO_MOVEMENT: return 0;
    case TRAP_PRESSURE_LOW:
        return practice_below(random, 3) == 0 ? over_by(make, of, 1, 5) : ordinary(make, of, slack);
    case TRAP_PRESSURE_HIGH:
        return practice_below(random, 2) == 0 ? over_by(make, of, 1, 4) : ordinary(make, of, slack);
    case TRAP_PARKING: return ordinary(make, of, slack + 8);
    case TRAP_HOT: return practice_below(random, 2) == 0 ? over_by(make, of, 1, 4) : of->limit;
    case TRAP_HEARSAY:
    case TRAP_DAY: return practice_between(random, least + 1, most);
    case TRAP_BEYOND: return of->rated + practice_between(random, 1, ticks_of(make->of, 3));
    case TRAP_NONE: case TRAP_SWAPPED: case TRAP_MIXED_METHODS: case TRAP_ENGINE: case TRAP_COUNT: break;
    }
    return ordinary(make, of, slack);
}

static void set_readings(const maker *make, practice_trap trap, int released, int stroke, rodt_reading *out)
{
    int applied = released + stroke;
    if (trap == TRAP_MIXED_METHODS && stroke < released)
        applied = stroke; /* measured from a mark at the chamber face instead of from the face */
    bool swapped = trap == TRAP_SWAPPED || (trap == TRAP_MIXED_METHODS && stroke >= released);
    out->released = length_of(make->of, swapped ? applied : released);
    out->applied = length_of(make->of, swapped ? released : applied);
}

static void draw_conditions(maker *make, practice_trap trap, rodt_reading *out)
{
    practice_random *random = &make->random;
    int psi = make->psi + practice_between(random, -1, 1), after = 0;
    bool late = trap == TRAP_PRESSURE_LOW && practice_below(random, 3) == 0;
    if (late)
        after = make->psi_least - practice_between(random, 2, 8);
    else if (trap == TRAP_PRESSURE_LOW)
        psi = make->psi_least - practice_between(random, 2, 16);
    else if (trap == TRAP_PRESSURE_HIGH)
        psi = make->psi_most + practice_between(random, 2, 20);
    bool recorded = trap == TRAP_PRESSURE_LOW || trap == TRAP_PRESSURE_HIGH ||
                    make->of->setting.level == PRACTICE_BASIC || practice_below(random, 25) != 0;
    if (recorded && rodt_pressure_from_psi(psi, 1, &out->pressure) != RODT_OK)
        out->pressure = (rodt_pressure){0, 0};
    if (late && rodt_pressure_from_psi(after, 1, &out->pressure_after) != RODT_OK)
        out->pressure_after = (rodt_pressure){0, 0};
    out->engine_running = trap == TRAP_ENGINE ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    out->spring_brake_applied = trap == TRAP_PARKING ? RODT_RECORDED_YES : RODT_RECORDED_NO;
    out->drum = trap == TRAP_HOT ? RODT_DRUM_HOT : RODT_DRUM_COLD;
    out->unit = make->of->setting.unit;
    out->day = make->of->day;
}

/* The limit that a chamber would have if a sign of long stroke were there; not given = it has none of its own. */
static rodt_length limit_if_long(const maker *make, const rodt_chamber *chamber)
{
    rodt_limit_answer answer;
    rodt_chamber other = *chamber;
    other.stroke_class = RODT_STROKE_CLASS_LONG;
    bool differs = chamber->family == RODT_FAMILY_CLAMP && chamber->stroke_class == RODT_STROKE_CLASS_UNKNOWN &&
                   rodt_rules_find_limit(make->of->setting.rules, &other, make->of->day, &answer, NULL) == RODT_OK &&
                   answer.law_basis == RODT_BASIS_TABLE && !answer.conflicting_marks;
    return differs ? answer.limit : (rodt_length){0, 0};
}

static void draw_hand_pull(maker *make, practice_end *seen)
{
    unsigned drawn = practice_below(&make->random, 6);
    int eighths = practice_between(&make->random, 3, 9);
    if (drawn == 0 && make->of->setting.level != PRACTICE_BASIC)
        seen->hand_pull = length_of(make->of, ticks_of(make->of, eighths * 2));
}

static bool make_end(maker *make, const axle_plan *plan, size_t index, rodt_side side)
{
    practice *of = make->of;
    practice_end *seen = &of->seen[index];
    rodt_wheel_end *end = &of->judged.ends[index];
    rodt_limit_answer answer;
    draw_marks(&make->random, of, &plan->axle, seen, &end->reading.chamber);
    if (rodt_rules_find_limit(of->setting.rules, &end->reading.chamber, of->day, &answer, NULL) != RODT_OK ||
        !rodt_length_given(answer.limit))
        return false;
    rodt_length long_limit = limit_if_long(make, &end->reading.chamber);
    seen->trap = draw_trap(make);
    seen->trap = possible_trap(make, plan, seen, &end->reading.chamber, long_limit);
    seen->hearsay = seen->trap == TRAP_HEARSAY;
    stroke_range ticks = {whole_ticks(of, answer.limit), whole_ticks(of, plan->axle.rated), 0};
    bool is_late = rodt_length_compare(answer.limit, make->dated_limit) > 0;
    ticks.other = whole_ticks(of, seen->hearsay ? long_limit : make->dated_limit);
    if (seen->trap == TRAP_DAY && !is_late)
        ticks.other = ticks.limit + ticks_of(of, 4);
    int stroke = draw_stroke(make, seen->trap, &ticks, plan->slack);
    int released = ticks_of(of, plan->released + practice_between(&make->random, -2, 2));
    set_readings(make, seen->trap, released, stroke, &end->reading);
    draw_conditions(make, seen->trap, &end->reading);
    draw_hand_pull(make, seen);
    end->position = (rodt_position){(int16_t)(index / 2 + 1), (rodt_side)side};
    return true;
}

/* --- Axles -------------------------------------------------------------------------------------------- */

/* The second end is alike, except on an axle that somebody repaired with whatever was at hand. */
static bool make_axle(maker *make, axle_role role, const char *size, size_t index)
{
    static const unsigned odds[PRACTICE_LEVELS] = {0, 40, 15};
    unsigned one_in = odds[make->of->setting.level];
    axle_plan plan = {.role = role};
    if (!draw_axle(&make->random, make->of, role, size, &plan.axle))
        return false;
    plan.released = practice_between(&make->random, 26, 42);
    plan.slack = practice_between(&make->random, 4, 9);
    if (!make_end(make, &plan, index, RODT_SIDE_LEFT))
        return false;
    if (one_in > 0 && practice_below(&make->random, one_in) == 0 &&
        !draw_axle(&make->random, make->of, role, "", &plan.axle))
        return false;
    return make_end(make, &plan, index + 1, RODT_SIDE_RIGHT);
}

static size_t draw_roles(maker *make, axle_role roles[PRACTICE_ENDS_MAX / 2])
{
    static const unsigned char builds[] = {[PRACTICE_TRUCK] = 40, [PRACTICE_BUS] = 20, [PRACTICE_COMBINATION] = 40};
    practice *of = make->of;
    of->build = of->setting.build;
    if (of->build == PRACTICE_ANY)
        of->build = (practice_build)practice_pick(&make->random, builds, COUNT_OF(builds));
    unsigned form = practice_below(&make->random, 10);
    size_t drive = of->build == PRACTICE_COMBINATION ? (form < 8 ? 2 : 1) : form < 5 ? 1 : 2;
    size_t trailer = of->build != PRACTICE_COMBINATION ? 0 : form == 0 ? 3 : form == 9 ? 1 : 2;
    for (size_t i = 0; i < 1 + drive + trailer; i++)
        roles[i] = i == 0 ? ROLE_STEER : i <= drive ? ROLE_DRIVE : ROLE_TRAILER;
    return 1 + drive + trailer;
}

static void draw_pressure(maker *make)
{
    rodt_pressure from = rodt_rules_pressure_from(make->of->setting.rules);
    rodt_pressure until = rodt_rules_pressure_until(make->of->setting.rules);
    make->window = rodt_pressure_given(from) && rodt_pressure_given(until);
    make->psi_least = make->window ? (int)(from.num / from.den) : 90;
    make->psi_most = make->window ? (int)(until.num / until.den) : 100;
    make->psi = practice_between(&make->random, make->psi_least + 1, make->psi_most - 1);
}

static bool make_axles(maker *make)
{
    axle_role roles[PRACTICE_ENDS_MAX / 2];
    size_t axles = draw_roles(make, roles);
    size_t dated = make->dated_size[0] != '\0' ? 1 + practice_below(&make->random, (unsigned)axles - 1) : axles;
    draw_pressure(make);
    for (size_t i = 0; i < axles; i++) {
        if (!make_axle(make, roles[i], i == dated ? make->dated_size : "", 2 * i))
            return false;
    }
    make->of->judged.count = 2 * axles;
    make->of->judged.brakes_given = true;
    make->of->judged.axle_1_steers = true;
    return true;
}

int practice_generate(const practice_setting *setting, practice *out)
{
    maker make = {.random = {setting->seed}, .of = out};
    memset(out, 0, sizeof *out);
    out->setting = *setting;
    draw_day(&make);
    if (!make_axles(&make))
        return print_error("%s has no limits for the chambers of this vehicle on this day: nothing to practise",
                        rodt_rules_id(setting->rules));
    vehicle_record *judged = &out->judged;
    rodt_status status = rodt_vehicle_judge(judged->ends, judged->count, (uint32_t)judged->count, setting->rules,
                                            judged->findings, judged->advice, &judged->vehicle, NULL);
    return status == RODT_OK ? STATUS_CONTINUE : print_error("%s", rodt_status_text(status));
}

unsigned practice_faults(const practice *of)
{
    return of->judged.vehicle.out_of_adjustment + of->judged.vehicle.inoperative;
}
