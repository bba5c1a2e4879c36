/* SPDX-License-Identifier: Apache-2.0 */
/* The table compiler's part for the tables of air checks and of volumes: read, compared with each other, written. */
#include <string.h>

#include "core/exact.h"
#include "rules/limit_row.h"
#include "tablec/model.h"

/* --- Words: each list in the order of its enumeration ------------------------------------------------ */

static const char *const check_words[] = {
    "warning",      "build-up",           "cut-out",      "cut-in",        "loss-released", "loss-applied", "reserve",
    "spring-brake", "tractor-protection", "supply-valve", "parking-valve", "drain",         "audible-leak",
    "contamination"};
static const char *const kind_words[] = {"limit", "major", "usual", "limit and major", "limit and minor",
                                         "either"};
static const char *const vehicle_words[] = {"any", "single", "combination", "bus"};
static const char *const comparison_words[] = {"less than",     "not more than", "more than", "not less than",
                                               "between",       "yes",           "no"};
static const char *const measure_words[] = {"psi",     "kPa",    "s",      "psi/min",
                                            "kPa/min", "% left", "% lost", "yes/no"};
static const char *const by_words[] = {"", "volume", "half cut-out", "below cut-out"};

enum { BY_NOTHING, BY_VOLUME, BY_HALF_CUT_OUT, BY_BELOW_CUT_OUT };

enum {
    AIR_RULES,
    AIR_CHECK,
    AIR_KIND,
    AIR_VEHICLE,
    AIR_TOWED,
    AIR_BUILT_FROM,
    AIR_BUILT_UNTIL,
    AIR_COMPARISON,
    AIR_VALUE,
    AIR_UPPER,
    AIR_PER_TOWED,
    AIR_MEASURE,
    AIR_START,
    AIR_STOP,
    AIR_START_KPA,
    AIR_STOP_KPA,
    AIR_APPLICATIONS,
    AIR_BY,
    AIR_PUBLISHED,
    AIR_SETUP,
    AIR_SOURCE,
    AIR_EVIDENCE
};

const table_column air_columns[AIR_COLUMNS] = {
    {"rules", true},        {"check", true},   {"kind", true},        {"vehicle", true},    {"towed", false},
    {"built_from", false},  {"built_until", false}, {"comparison", true}, {"value", false}, {"upper", false},
    {"per_towed", false},   {"measure", true}, {"start", false},      {"stop", false},      {"start_kpa", false}, {"stop_kpa", false},
    {"applications", false},
    {"by", false},          {"published", true}, {"setup", true},     {"source", true},     {"evidence", true}};

/* --- Reading ----------------------------------------------------------------------------------------- */

static bool read_enumerations(table_reader *reader, rodt_air_limit *row)
{
    unsigned check = 0, kind = 0, vehicle = 0, comparison = 0, measure = 0, by = 0;
    bool good = table_word(reader, AIR_CHECK, check_words, COUNT_OF(check_words), &check);
    good = table_word(reader, AIR_KIND, kind_words, COUNT_OF(kind_words), &kind) && good;
    good = table_word(reader, AIR_VEHICLE, vehicle_words, COUNT_OF(vehicle_words), &vehicle) && good;
    good = table_word(reader, AIR_COMPARISON, comparison_words, COUNT_OF(comparison_words), &comparison) && good;
    good = table_word(reader, AIR_MEASURE, measure_words, COUNT_OF(measure_words), &measure) && good;
    good = table_word(reader, AIR_BY, by_words, COUNT_OF(by_words), &by) && good;
    row->check = (rodt_check)(check + 1);
    row->kind = (rodt_kind)kind;
    row->vehicle = (rodt_vehicle_class)vehicle;
    row->comparison = (rodt_comparison)comparison;
    row->measure = (rodt_measure)measure;
    row->by_volume = by == BY_VOLUME;
    row->half_cut_out = by == BY_HALF_CUT_OUT;
    row->below_cut_out = by == BY_BELOW_CUT_OUT;
    return good;
}

/* "2" or "2+"; an empty cell is any number. */
static bool read_towed(table_reader *reader, rodt_air_limit *row)
{
    const table_cell *cell = &reader->cells[AIR_TOWED];
    row->towed_units = -1;
    if (cell->size == 0)
        return true;
    row->towed_or_more = cell->size == 2 && cell->text[1] == '+';
    if (text_is_digit((unsigned char)cell->text[0]) && cell->text[0] != '0' &&
        (cell->size == 1 || row->towed_or_more)) {
        row->towed_units = (int16_t)(cell->text[0] - '0');
        return true;
    }
    table_fault(reader, AIR_TOWED, 1, RODT_E_TABLE, "expected a number of towed units such as 1 or 2+");
    return false;
}

/* A pressure, or the word of an event that the time starts at. */
static bool read_span(table_reader *reader, rodt_air_limit *row)
{
    static const char *const events[] = {"", "warning", "applications", "recovery"};
    const char *text = reader->cells[AIR_START].text;
    for (size_t i = 1; i < COUNT_OF(events); i++) {
        if (!table_empty(reader, AIR_START) && strcmp(text, events[i]) == 0) {
            row->span = (rodt_span)i;
            if (table_empty(reader, AIR_STOP))
                return true;
            table_fault(reader, AIR_STOP, 1, RODT_E_TABLE, "a time from \"%s\" has no pressure at its end", text);
            return false;
        }
    }
    bool good = table_pressure(reader, AIR_START, &row->start);
    good = table_pressure(reader, AIR_STOP, &row->stop) && good;
    good = table_pressure(reader, AIR_START_KPA, &row->start_kpa) && good;
    return table_pressure(reader, AIR_STOP_KPA, &row->stop_kpa) && good;
}

static bool read_applications(table_reader *reader, rodt_air_limit *row)
{
    rodt_ratio count;
    if (!table_number(reader, AIR_APPLICATIONS, &count))
        return false;
    if (rodt_ratio_given(count) && (count.den != 1 || count.num < 1 || count.num > 99)) {
        table_fault(reader, AIR_APPLICATIONS, 1, RODT_E_TABLE, "expected a number of applications, 1 to 99");
        return false;
    }
    row->applications = (int16_t)count.num;
    return true;
}

void tables_read_air(tables *t, table_reader *reader)
{
    air_row air = {.line = reader->line};
    rodt_air_limit *row = &air.row;
    bool good = read_enumerations(reader, row);
    good = read_towed(reader, row) && good;
    good = read_span(reader, row) && good;
    good = read_applications(reader, row) && good;
    good = table_number(reader, AIR_VALUE, &row->value) && good;
    good = table_number(reader, AIR_UPPER, &row->upper) && good;
    good = table_number(reader, AIR_PER_TOWED, &row->per_towed_unit) && good;
    good = table_date(reader, AIR_BUILT_FROM, &row->built_from) && good;
    good = table_date(reader, AIR_BUILT_UNTIL, &row->built_until) && good;
    good = good && table_span(reader, AIR_BUILT_UNTIL, row->built_from, row->built_until);
    good = table_evidence(reader, AIR_EVIDENCE, &row->evidence) && good;
    air.rules = tables_keep(t, reader, AIR_RULES);
    air.source = tables_keep(t, reader, AIR_SOURCE);
    row->published = tables_keep(t, reader, AIR_PUBLISHED);
    row->setup = tables_keep(t, reader, AIR_SETUP);
    if (good)
        t->air[t->air_count++] = air;
}

enum { VOLUME_WHAT, VOLUME_SIZE, VOLUME_FROM, VOLUME_UNTIL, VOLUME_VALUE, VOLUME_SOURCE };

const table_column volume_columns[VOLUME_COLUMNS] = {{"what", true},          {"size", false}, {"stroke_from", false},
                                                     {"stroke_until", false}, {"value", true}, {"source", true}};

void tables_read_volume(tables *t, table_reader *reader)
{
    static const char *const words[] = {"chamber", "truck", "trailer"};
    volume_line line = {.line = reader->line};
    bool good = table_word(reader, VOLUME_WHAT, words, COUNT_OF(words), &line.what);
    if (good && line.what == VOLUME_CHAMBER)
        good = table_size(reader, VOLUME_SIZE, RODT_FAMILY_CLAMP);
    good = table_length(reader, VOLUME_FROM, RODT_UNIT_INCH, &line.row.stroke_from) && good;
    good = table_length(reader, VOLUME_UNTIL, RODT_UNIT_INCH, &line.row.stroke_until) && good;
    good = table_number(reader, VOLUME_VALUE, &line.row.volume) && good;
    line.row.size = tables_keep(t, reader, VOLUME_SIZE);
    line.source = tables_keep(t, reader, VOLUME_SOURCE);
    if (good)
        t->volumes[t->volume_count++] = line;
}

/* --- Checks ------------------------------------------------------------------------------------------ */

bool tables_has_air(const tables *t, const char *rules)
{
    for (size_t i = 0; i < t->air_count; i++) {
        if (strcmp(t->air[i].rules, rules) == 0)
            return true;
    }
    return false;
}

/* The measures that a reading of the check can be brought to. */
static bool fits_measure(const rodt_air_limit *row)
{
    bool pressure = row->measure == RODT_MEASURE_PSI || row->measure == RODT_MEASURE_KPA;
    switch (row->check) {
    case RODT_CHECK_WARNING:
    case RODT_CHECK_CUT_OUT:
    case RODT_CHECK_CUT_IN:
    case RODT_CHECK_TRACTOR_PROTECTION:
    case RODT_CHECK_SUPPLY_VALVE:
    case RODT_CHECK_PARKING_VALVE: return pressure;
    case RODT_CHECK_BUILD_UP: return row->measure == RODT_MEASURE_SECONDS;
    case RODT_CHECK_LOSS_RELEASED:
    case RODT_CHECK_LOSS_APPLIED:
        return row->measure == RODT_MEASURE_PSI_PER_MINUTE || row->measure == RODT_MEASURE_KPA_PER_MINUTE;
    case RODT_CHECK_RESERVE:
        return row->measure == RODT_MEASURE_PERCENT_LEFT || row->measure == RODT_MEASURE_PERCENT_LOST;
    case RODT_CHECK_SPRING_BRAKE:
    case RODT_CHECK_DRAIN:
    case RODT_CHECK_AUDIBLE_LEAK:
    case RODT_CHECK_CONTAMINATION: return row->measure == RODT_MEASURE_YES_NO;
    case RODT_CHECK_NONE:
    case RODT_CHECK_END: break;
    }
    return false;
}

static bool is_above(rodt_ratio a, rodt_ratio b)
{
    return exact_compare(EXACT(a), EXACT(b)) > 0;
}

/* A comparison has the figures that it needs and no others. */
static bool fits_comparison(const rodt_air_limit *row)
{
    bool words = row->comparison == RODT_MUST_BE_YES || row->comparison == RODT_MUST_BE_NO;
    bool between = row->comparison == RODT_BETWEEN;
    if (words != (row->measure == RODT_MEASURE_YES_NO) || words == rodt_ratio_given(row->value) ||
        between != rodt_ratio_given(row->upper))
        return false;
    return !between || !is_above(row->value, row->upper);
}

/* kPa printed beside psi, or neither of them. */
static bool is_printed_beside(rodt_pressure kpa, rodt_pressure psi)
{
    rodt_pressure one;
    rodt_ratio distance;
    if (!rodt_pressure_given(kpa))
        return true;
    if (!rodt_pressure_given(psi) || rodt_pressure_from_kpa(1, 1, &one) != RODT_OK ||
        !exact_subtract(EXACT(kpa), EXACT(psi), &distance))
        return false;
    distance.num = distance.num < 0 ? -distance.num : distance.num;
    return !is_above(distance, EXACT(one));
}

/* What belongs to one check alone stands there, and nowhere else. */
static bool fits_check(const rodt_air_limit *row)
{
    bool span = row->span != RODT_SPAN_PRESSURES || rodt_pressure_given(row->start);
    if (span != (row->check == RODT_CHECK_BUILD_UP) ||
        rodt_pressure_given(row->start) != rodt_pressure_given(row->stop) ||
        (rodt_pressure_given(row->start) && rodt_pressure_compare(row->start, row->stop) >= 0) ||
        rodt_pressure_given(row->start_kpa) != rodt_pressure_given(row->stop_kpa))
        return false;
    if ((row->applications != 0) != (row->check == RODT_CHECK_RESERVE))
        return false;
    if (row->per_towed_unit.den != 0 && (row->vehicle != RODT_VEHICLE_COMBINATION || row->towed_units >= 0))
        return false;
    if (row->towed_units >= 0 && row->vehicle != RODT_VEHICLE_COMBINATION)
        return false;
    bool no = row->check == RODT_CHECK_AUDIBLE_LEAK || row->check == RODT_CHECK_CONTAMINATION;
    if (row->measure == RODT_MEASURE_YES_NO && no != (row->comparison == RODT_MUST_BE_NO))
        return false;
    return (!row->by_volume || row->check == RODT_CHECK_BUILD_UP) &&
           (!row->half_cut_out || (row->check == RODT_CHECK_WARNING && row->comparison == RODT_NOT_LESS_THAN)) &&
           (!row->below_cut_out || row->check == RODT_CHECK_CUT_IN);
}

static bool share_a_day(const rodt_air_limit *a, const rodt_air_limit *b)
{
    bool a_first = rodt_date_given(a->built_until) && rodt_date_compare(a->built_until, b->built_from) < 0;
    bool b_first = rodt_date_given(b->built_until) && rodt_date_compare(b->built_until, a->built_from) < 0;
    return !a_first && !b_first;
}

static bool is_dated(const rodt_air_limit *row)
{
    return rodt_date_given(row->built_from) || rodt_date_given(row->built_until);
}

/* Two rows for the same vehicles, neither of which is the more exact one. */
static bool clash(const air_row *x, const air_row *y)
{
    const rodt_air_limit *a = &x->row, *b = &y->row;
    return strcmp(x->rules, y->rules) == 0 && a->check == b->check && a->kind == b->kind && a->vehicle == b->vehicle &&
           a->towed_units == b->towed_units && a->below_cut_out == b->below_cut_out && a->span == b->span &&
           rodt_pressure_compare(a->start, b->start) == 0 && rodt_pressure_compare(a->stop, b->stop) == 0 &&
           is_dated(a) == is_dated(b) && share_a_day(a, b);
}

static void check_air_row(tables *t, const air_row *air)
{
    const char *check = check_words[air->row.check - 1];
    if (tables_rules(t, air->rules) == NULL)
        tables_fault(t, FILE_AIR, air->line, "rule set \"%s\" is not in the table of rule sets", air->rules);
    if (!fits_measure(&air->row))
        tables_fault(t, FILE_AIR, air->line, "check \"%s\" is not measured in \"%s\"", check,
                     measure_words[air->row.measure]);
    else if (!fits_comparison(&air->row))
        tables_fault(t, FILE_AIR, air->line, "the figures do not go with \"%s\"",
                     comparison_words[air->row.comparison]);
    if (!fits_check(&air->row))
        tables_fault(t, FILE_AIR, air->line, "a cell of the row has no place in check \"%s\", or one is missing",
                     check);
    if (!is_printed_beside(air->row.start_kpa, air->row.start) || !is_printed_beside(air->row.stop_kpa, air->row.stop))
        tables_fault(t, FILE_AIR, air->line, "the printed kPa are more than 1 kPa off the psi");
    tables_cite(t, FILE_AIR, air->line, air->source, air->row.evidence);
}

void tables_check_air(tables *t)
{
    for (size_t i = 0; i < t->air_count; i++) {
        check_air_row(t, &t->air[i]);
        for (size_t k = 0; k < i; k++) {
            if (clash(&t->air[k], &t->air[i]))
                tables_fault(t, FILE_AIR, t->air[i].line, "the check stands in line %u already",
                             (unsigned)t->air[k].line);
        }
    }
}

static bool is_same_volume(const volume_line *a, const volume_line *b)
{
    return a->what == b->what && strcmp(a->row.size, b->row.size) == 0;
}

static void check_volume(tables *t, const volume_line *line)
{
    bool chamber = line->what == VOLUME_CHAMBER;
    if (line->row.volume.num <= 0)
        tables_fault(t, FILE_VOLUMES, line->line, "the figure must be above zero");
    if (chamber && rodt_length_compare(line->row.stroke_from, line->row.stroke_until) >= 0)
        tables_fault(t, FILE_VOLUMES, line->line, "the full strokes are not in order");
    if (!chamber && (line->row.size[0] != '\0' || rodt_length_given(line->row.stroke_from) ||
                     rodt_length_given(line->row.stroke_until)))
        tables_fault(t, FILE_VOLUMES, line->line, "a multiple has neither a size nor a full stroke");
    tables_cite(t, FILE_VOLUMES, line->line, line->source, RODT_CHECKED);
}

void tables_check_volumes(tables *t)
{
    static const char *const missing[] = {"chamber", "truck", "trailer"};
    size_t count[VOLUME_WHATS] = {0};
    for (size_t i = 0; i < t->volume_count; i++) {
        check_volume(t, &t->volumes[i]);
        count[t->volumes[i].what]++;
        for (size_t k = 0; k < i; k++) {
            if (is_same_volume(&t->volumes[k], &t->volumes[i]))
                tables_fault(t, FILE_VOLUMES, t->volumes[i].line, "the volume stands in line %u already",
                             (unsigned)t->volumes[k].line);
        }
    }
    for (size_t what = 0; what < VOLUME_WHATS; what++) {
        if (count[what] == 0)
            tables_fault(t, FILE_VOLUMES, 0, "no row for \"%s\"", missing[what]);
    }
}
