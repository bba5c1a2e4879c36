/* SPDX-License-Identifier: Apache-2.0 */
/* Cross-row consistency checks of the table compiler. */
#include <string.h>

#include "core/exact.h"
#include "quantity/calendar.h"
#include "rules/limit_row.h"
#include "tablec/steps.h"

static bool same(const char *a, const char *b) { return strcmp(a, b) == 0; }

/* A figure needs its source and its evidence, and neither is there without the figure. */
static void cite_figure(tables *t, int file, uint32_t line, const char *what, bool given, const citation *cited)
{
    if (given && (cited->source == NULL || !cited->has_evidence))
        tables_fault(t, file, line, "%s has no source or no evidence", what);
    else if (!given && (cited->source != NULL || cited->has_evidence))
        tables_fault(t, file, line, "%s is missing, but its source or evidence is there", what);
    else if (given)
        tables_cite(t, file, line, cited);
}

/* True if a and b differ by no more than num/den mm. */
static bool within_mm(rodt_length a, rodt_length b, int64_t num, int64_t den)
{
    rodt_ratio distance, bound;
    if (!rodti_exact_subtract(EXACT(a), EXACT(b), &distance) ||
        !rodti_exact_make(num * 5, den * 127, &bound))
        return false;
    if (distance.num < 0)
        distance.num = -distance.num;
    return rodti_exact_compare(distance, bound) <= 0;
}

static void check_sources(tables *t)
{
    for (size_t i = 0; i < t->source_count; i++) {
        const source_row *first = tables_source(t, t->sources[i].source.id);
        if (first != NULL && first != &t->sources[i])
            tables_fault(t, FILE_SOURCES, t->sources[i].line, "source \"%s\" is in line %u already",
                         first->source.id, (unsigned)first->line);
    }
}

static chamber_row *find_chamber(tables *t, rodt_family family, const char *size)
{
    for (size_t i = 0; i < t->chamber_count; i++) {
        if (t->chambers[i].row.family == family && same(t->chambers[i].row.size, size))
            return &t->chambers[i];
    }
    return NULL;
}

static void check_chamber(tables *t, chamber_row *chamber)
{
    const rodt_chamber_row *row = &chamber->row;
    const chamber_row *first = find_chamber(t, row->family, row->size);
    if (first != NULL && first != chamber)
        tables_fault(t, FILE_CHAMBERS, chamber->line, "%s %s is in line %u already",
                     rodt_family_name(row->family), row->size, (unsigned)first->line);
    if (!within_mm(row->outside_diameter, row->outside_diameter_mm, 1, 1))
        tables_fault(t, FILE_CHAMBERS, chamber->line, "the printed millimetres are more than 1 mm off the inches");
    tables_cite(t, FILE_CHAMBERS, chamber->line, &chamber->diameter);
    cite_figure(t, FILE_CHAMBERS, chamber->line, "the rated stroke", rodt_length_given(row->standard_rated_stroke),
                &chamber->rated);
}

static void check_figures(tables *t, const limit_row *limit)
{
    const rodt_limit *row = &limit->row;
    if (rodt_length_given(row->printed_mm) && !within_mm(row->limit, row->printed_mm, 6, 100))
        tables_fault(t, FILE_LIMITS, limit->line, "the printed millimetres are no rounding of %s in", row->published);
}

/* A rule set that refers to another's rows has rows of its own only in place of them. */
static bool replaces(const tables *t, const char *owner, const limit_row *limit)
{
    for (size_t i = 0; i < t->limit_count; i++) {
        if (same(t->limits[i].rules, owner) && tables_one_chamber(&t->limits[i], limit))
            return true;
    }
    return false;
}

static void check_limit_rules(tables *t, const limit_row *limit)
{
    const rules_row *rules = tables_rules(t, limit->rules);
    if (rules == NULL) {
        tables_fault(t, FILE_LIMITS, limit->line, "rule set \"%s\" is not in the table of rule sets", limit->rules);
        return;
    }
    const rodt_limit *row = &limit->row;
    bool starts_before = rodt_date_given(rules->from) && rodt_date_compare(row->from, rules->from) < 0;
    bool ends_after = rodt_date_given(rules->until) &&
                      (!rodt_date_given(row->until) || rodt_date_compare(row->until, rules->until) > 0);
    if (starts_before || ends_after)
        tables_fault(t, FILE_LIMITS, limit->line, "the row reaches beyond the days of rule set \"%s\"", limit->rules);
    if (rules->limits_of != NULL && !replaces(t, rules->limits_of, limit))
        tables_fault(t, FILE_LIMITS, limit->line,
                     "rule set \"%s\" takes its limits from \"%s\", which has no row that this one replaces",
                     limit->rules, rules->limits_of);
}

static void check_limit(tables *t, const limit_row *limit)
{
    chamber_row *chamber = find_chamber(t, limit->row.family, limit->row.size);
    if (chamber == NULL)
        tables_fault(t, FILE_LIMITS, limit->line, "%s %s is not in the table of chambers",
                     rodt_family_name(limit->row.family), limit->row.size);
    else
        chamber->used = true;
    tables_cite(t, FILE_LIMITS, limit->line, &limit->cited);
    check_limit_rules(t, limit);
    check_figures(t, limit);
}

static bool same_days(const rodt_limit *a, const rodt_limit *b)
{
    return rodt_date_compare(a->from, b->from) == 0 && rodt_date_compare(a->until, b->until) == 0;
}

static void check_clash(tables *t, const limit_row *earlier, const limit_row *later)
{
    if (!same(earlier->rules, later->rules) || !rodti_limits_clash(&earlier->row, &later->row))
        return;
    if (same_days(&earlier->row, &later->row))
        tables_fault(t, FILE_LIMITS, later->line, "the chamber is in line %u already", (unsigned)earlier->line);
    else
        tables_fault(t, FILE_LIMITS, later->line, "the days overlap those of line %u", (unsigned)earlier->line);
}

/* Two rows that differ in nothing but their days and figures. */
static bool one_history(const limit_row *a, const limit_row *b)
{
    return same(a->rules, b->rules) && tables_one_chamber(a, b);
}

/* A row that ends needs a row of the same chamber that begins on the next day, if any begins later. */
static void check_gap(tables *t, const limit_row *ends)
{
    if (!rodt_date_given(ends->row.until))
        return;
    rodt_date next = calendar_date(calendar_day_number(ends->row.until) + 1);
    const limit_row *later = NULL;
    for (size_t i = 0; i < t->limit_count; i++) {
        const limit_row *other = &t->limits[i];
        if (!one_history(ends, other) || rodt_date_compare(other->row.from, ends->row.until) <= 0)
            continue;
        if (rodt_date_compare(other->row.from, next) == 0)
            return;
        later = other;
    }
    if (later != NULL)
        tables_fault(t, FILE_LIMITS, ends->line, "no row for the days between this one and line %u",
                     (unsigned)later->line);
}

static void check_limits(tables *t)
{
    for (size_t i = 0; i < t->limit_count; i++) {
        check_limit(t, &t->limits[i]);
        for (size_t k = 0; k < i; k++)
            check_clash(t, &t->limits[k], &t->limits[i]);
        check_gap(t, &t->limits[i]);
    }
}

static bool has_rows(const tables *t, const char *rules)
{
    for (size_t i = 0; i < t->limit_count; i++) {
        if (same(t->limits[i].rules, rules))
            return true;
    }
    return false;
}

static void check_limits_of(tables *t, const rules_row *row)
{
    const rules_row *owner = row->limits_of == NULL ? NULL : tables_rules(t, row->limits_of);
    if (row->limits_of == NULL) {
        if (!has_rows(t, row->id) && !rodt_ratio_given(row->rated_share) && !tables_has_air(t, row->id))
            tables_fault(t, FILE_RULES, row->line, "rule set \"%s\" has no limits and no air checks", row->id);
    } else if (owner == NULL) {
        tables_fault(t, FILE_RULES, row->line, "rule set \"%s\" is not in the table of rule sets", row->limits_of);
    } else if (owner->limits_of != NULL || !has_rows(t, owner->id)) {
        tables_fault(t, FILE_RULES, row->line, "rule set \"%s\" has no rows of its own", row->limits_of);
    }
}

/* What happens at the limit must be said where there is one, and nowhere else. */
static void check_at_limit(tables *t, const rules_row *row)
{
    bool limits = has_rows(t, row->id) || row->limits_of != NULL || rodt_ratio_given(row->rated_share);
    if (limits && row->at_limit == AT_LIMIT_NOT_SAID)
        tables_fault(t, FILE_RULES, row->line,
                     "rule set \"%s\" limits strokes, but does not say what holds at the limit", row->id);
    else if (!limits && row->at_limit != AT_LIMIT_NOT_SAID && tables_has_air(t, row->id))
        tables_fault(t, FILE_RULES, row->line, "rule set \"%s\" limits no stroke, so nothing holds at a limit",
                     row->id);
}

static void check_window(tables *t, const rules_row *row)
{
    bool from = rodt_pressure_given(row->pressure_from);
    bool until = rodt_pressure_given(row->pressure_until);
    if (from != until)
        tables_fault(t, FILE_RULES, row->line, "a pressure window needs both ends");
    else if (from && rodt_pressure_compare(row->pressure_from, row->pressure_until) >= 0)
        tables_fault(t, FILE_RULES, row->line, "the pressure window is reversed");
    cite_figure(t, FILE_RULES, row->line, "the pressure window", from || until, &row->pressure);
}

static void check_rules_row(tables *t, const rules_row *row)
{
    const rules_row *first = tables_rules(t, row->id);
    if (first != NULL && first != row)
        tables_fault(t, FILE_RULES, row->line, "rule set \"%s\" is in line %u already", row->id,
                     (unsigned)first->line);
    tables_cite(t, FILE_RULES, row->line, &row->cited);
    check_limits_of(t, row);
    check_at_limit(t, row);
    check_window(t, row);
    bool share = rodt_ratio_given(row->rated_share);
    if (share && (row->rated_share.num <= 0 || row->rated_share.num >= row->rated_share.den))
        tables_fault(t, FILE_RULES, row->line, "the share of the rated stroke must be between 0 and 1");
    cite_figure(t, FILE_RULES, row->line, "the share of the rated stroke", share, &row->share);
    if (row->major.source != NULL)
        tables_cite(t, FILE_RULES, row->line, &row->major);
    if (row->major.source != NULL && row->at_limit == AT_LIMIT_NOT_SAID)
        tables_fault(t, FILE_RULES, row->line, "rule set \"%s\" limits no stroke, so none is a major defect", row->id);
}

/* A part has a figure of its kind: a share of the whole, a count or a length above zero, no difference at all, or
 * none. */
static bool fits_part(const vehicle_row *row)
{
    switch ((vehicle_part)row->part) {
    case VEHICLE_SHARE:
    case VEHICLE_HALF: return row->value.num > 0 && row->value.num < row->value.den;
    case VEHICLE_FULL_FROM: return row->value.num > 0;
    case VEHICLE_CHART:
    case VEHICLE_STEERING: return row->value.num > 0 && row->value.den == 1;
    case VEHICLE_AXLE_SIZE:
    case VEHICLE_AXLE_ARM: return row->value.num == 0 && row->value.den == 1;
    case VEHICLE_ADJUSTER: return !rodt_ratio_given(row->value);
    case VEHICLE_PARTS: break;
    }
    return false;
}

static void check_vehicle(tables *t)
{
    const vehicle_row *first[VEHICLE_PARTS] = {0};
    for (size_t i = 0; i < t->vehicle_count; i++) {
        const vehicle_row *row = &t->vehicle[i];
        const char *name = vehicle_part_words[row->part];
        if (first[row->part] != NULL)
            tables_fault(t, FILE_VEHICLE, row->line, "part \"%s\" is in line %u already", name,
                         (unsigned)first[row->part]->line);
        else
            first[row->part] = row;
        if (!fits_part(row))
            tables_fault(t, FILE_VEHICLE, row->line, "the figure is none for part \"%s\"", name);
        tables_cite(t, FILE_VEHICLE, row->line, &row->cited);
    }
    for (size_t part = 0; part < VEHICLE_PARTS; part++) {
        if (first[part] == NULL)
            tables_fault(t, FILE_VEHICLE, 0, "part \"%s\" is missing", vehicle_part_words[part]);
    }
}

/* A repeated row was reported as that; only the first one counts as used. */
static void check_unused(tables *t)
{
    for (size_t i = 0; i < t->source_count; i++) {
        const source_row *row = &t->sources[i];
        if (!row->used && tables_source(t, row->source.id) == row)
            tables_fault(t, FILE_SOURCES, row->line, "source \"%s\" is never cited", row->source.id);
    }
    for (size_t i = 0; i < t->chamber_count; i++) {
        const chamber_row *row = &t->chambers[i];
        if (!row->used && find_chamber(t, row->row.family, row->row.size) == row)
            tables_fault(t, FILE_CHAMBERS, row->line, "%s %s has no limit in any rule set",
                         rodt_family_name(row->row.family), row->row.size);
    }
}

void tables_check(tables *t)
{
    check_sources(t);
    for (size_t i = 0; i < t->chamber_count; i++)
        check_chamber(t, &t->chambers[i]);
    check_limits(t);
    for (size_t i = 0; i < t->rules_count; i++)
        check_rules_row(t, &t->rules[i]);
    check_vehicle(t);
    tables_check_air(t);
    tables_check_volumes(t);
    tables_check_steps(t);
    check_unused(t);
}
