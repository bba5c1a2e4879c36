/* SPDX-License-Identifier: Apache-2.0 */
/* A carrier's figure of an air check beside the law's: every vehicle and every day of build on which both apply. */
#include "rules/air_strict.h"

#include "core/always.h"
#include "core/exact.h"
#include "rules/air_choice.h"
#include "rules/air_row.h"

/* --- Figures ----------------------------------------------------------------------------------------- */

/* The values that a row takes as good, in psi, psi per minute, seconds or percent left. */
typedef struct air_range {
    rodt_ratio low; /* not given = open */
    rodt_ratio high;
    bool low_outside; /* the end itself is no good value */
    bool high_outside;
} air_range;

static bool to_psi(rodt_ratio *value)
{
    rodt_pressure kpa;
    rodt_status made = rodt_pressure_from_kpa(1, 1, &kpa);
    return !rodt_ratio_given(*value) ||
           (ALWAYS(made == RODT_OK) /* it is a constant */ && rodti_exact_multiply(*value, EXACT(kpa), value));
}

static bool to_left(rodt_ratio *value)
{
    return !rodt_ratio_given(*value) || rodti_exact_subtract((rodt_ratio){100, 1}, *value, value);
}

static bool to_common_measure(rodt_air_measure measure, air_range *of)
{
    if (measure == RODT_AIR_MEASURE_KPA || measure == RODT_AIR_MEASURE_KPA_PER_MINUTE)
        return to_psi(&of->low) && to_psi(&of->high);
    if (measure != RODT_AIR_MEASURE_PERCENT_LOST)
        return true;
    air_range lost = *of;
    *of = (air_range){lost.high, lost.low, lost.high_outside, lost.low_outside};
    return to_left(&of->low) && to_left(&of->high);
}

/* False: the figure does not fit. */
static bool find_range(const rodt_air_limit *row, int towed_units, air_range *out)
{
    rodt_ratio value;
    bool upward = row->comparison == RODT_COMPARISON_LESS_THAN || row->comparison == RODT_COMPARISON_NOT_MORE_THAN;
    if (!rodti_air_allowed(row, towed_units, &value))
        return false;
    *out = (air_range){.low_outside = row->comparison == RODT_COMPARISON_MORE_THAN,
                       .high_outside = row->comparison == RODT_COMPARISON_LESS_THAN};
    if (upward)
        out->high = value;
    else
        out->low = value;
    if (row->comparison == RODT_COMPARISON_BETWEEN)
        out->high = row->upper;
    return to_common_measure(row->measure, out);
}

/* True if an end of the row is not beyond the law's. `order` is what compares as beyond. */
static bool end_holds(rodt_ratio end, bool outside, rodt_ratio law, bool law_outside, int order)
{
    if (!rodt_ratio_given(law))
        return true;
    int compared = rodt_ratio_given(end) ? rodti_exact_compare(end, law) : order;
    return compared != order && (compared != 0 || outside || !law_outside);
}

/* A figure that goes with a volume or with the cut-out can only be compared with one that does so, too; the plain one
 * of a warning is never below "or half of the cut-out, whichever is less". */
static bool goes_by_the_same(const rodt_air_limit *row, const rodt_air_limit *law)
{
    return row->by_volume == law->by_volume && (!row->half_cut_out || law->half_cut_out);
}

bool rodti_air_is_within(const rodt_air_limit *row, const rodt_air_limit *law, int towed_units)
{
    air_range own, other;
    if (row->measure == RODT_AIR_MEASURE_YES_NO)
        return row->comparison == law->comparison;
    if (!rodt_ratio_given(row->value) || !rodt_ratio_given(law->value)) /* half of the cut-out alone, or an answer */
        return !rodt_ratio_given(row->value) && law->half_cut_out;
    return goes_by_the_same(row, law) && find_range(row, towed_units, &own) && find_range(law, towed_units, &other) &&
           end_holds(own.low, own.low_outside, other.low, other.low_outside, -1) &&
           end_holds(own.high, own.high_outside, other.high, other.high_outside, 1);
}

/* --- Faults ------------------------------------------------------------------------------------------ */

static void put_vehicle(text_writer *writer, const air_vehicle *vehicle)
{
    static const char *const words[] = {"", "a single vehicle", "a combination", "a bus"};
    rodti_text_put(writer, words[vehicle->vehicle]);
    if (vehicle->towed_units > 0)
        rodti_text_putf(writer, " with %d towed unit%s", vehicle->towed_units, vehicle->towed_units == 1 ? "" : "s");
}

static void report_laxer(table_reader *reader, const rodt_air_limit *row, const rodt_air_limit *law,
                         const air_vehicle *vehicle)
{
    text_writer own, other;
    char day[RODT_DATE_TEXT_SIZE] = "";
    rodti_text_begin(&own);
    rodti_air_row_put(&own, row, vehicle->towed_units);
    rodti_text_begin(&other);
    rodti_air_row_put(&other, law, vehicle->towed_units);
    rodti_text_put(&other, " for ");
    put_vehicle(&other, vehicle);
    rodt_status written = rodt_date_format(vehicle->built, day, sizeof day, NULL);
    if (rodti_air_is_dated(law) && ALWAYS(written == RODT_OK)) /* only days that there are are looked at */
        rodti_text_putf(&other, " built on %s", day);
    rodti_table_fault(reader, table_empty(reader, AIR_VALUE) ? AIR_COMPARISON : AIR_VALUE, 1, RODT_E_LAXER,
                      "\"%s\" is laxer than the law, which has %s", own.buffer, other.buffer);
}

static void report_unlike(table_reader *reader, const rodt_air_limit *row, const rodt_air_limit *law)
{
    if (row->applications != law->applications)
        rodti_table_fault(reader, AIR_APPLICATIONS, 1, RODT_E_TABLE,
                          "the law asks for %d full application%s, so the two cannot be compared", law->applications,
                          law->applications == 1 ? "" : "s");
    else
        rodti_table_fault(reader, AIR_START, 1, RODT_E_TABLE,
                          "the law times another span, so the two cannot be compared: %s", law->published);
}

/* A figure is compared in psi and as what is left; one with many digits does not fit there, and is not judged by it. */
static bool is_comparable(const rodt_air_limit *row, int towed_units)
{
    air_range range;
    return !rodt_ratio_given(row->value) || find_range(row, towed_units, &range);
}

static void report_digits(table_reader *reader)
{
    rodti_table_fault(reader, AIR_VALUE, 1, RODT_E_TABLE,
                      "the figure has too many digits to be compared with the law's");
}

/* --- Every vehicle, every day ------------------------------------------------------------------------ */

static bool is_alike(const rodt_air_limit *row, const rodt_air_limit *law)
{
    return row->applications == law->applications && rodti_air_is_one_span(row, law);
}

/* A usual figure is no limit. A cut-in and how far it lies below the cut-out are two things, and both are judged. */
static bool is_beside(const rodt_air_limit *row, const rodt_air_limit *law)
{
    return law->kind != RODT_AIR_KIND_USUAL && law->below_cut_out == row->below_cut_out;
}

static bool check_vehicle(table_reader *reader, air_rows law, const rodt_air_limit *row, const air_vehicle *vehicle)
{
    const rodt_air_limit *unlike = NULL;
    bool compared = false;
    if (!rodti_air_is_for(row, vehicle))
        return true;
    for (size_t i = 0; i < law.count; i++) {
        const rodt_air_limit *other = &law.row[i];
        if (!is_beside(row, other) || !rodti_air_is_chosen(law, other, row->check, vehicle))
            continue;
        if (!is_alike(row, other)) {
            unlike = other;
            continue;
        }
        compared = true;
        if (!is_comparable(row, vehicle->towed_units)) {
            report_digits(reader);
            return false;
        }
        if (!rodti_air_is_within(row, other, vehicle->towed_units)) {
            report_laxer(reader, row, other, vehicle);
            return false;
        }
    }
    if (!compared && unlike != NULL)
        report_unlike(reader, row, unlike);
    return compared || unlike == NULL;
}

/* A row names one to nine towed units, so that beyond them only a figure for each goes on, and evenly. */
static bool check_day(table_reader *reader, air_rows law, const rodt_air_limit *row, rodt_date built)
{
    air_vehicle vehicle = {.vehicle = RODT_VEHICLE_CLASS_SINGLE, .built = built};
    if (!rodt_date_given(built))
        return true;
    bool good = check_vehicle(reader, law, row, &vehicle);
    vehicle.vehicle = RODT_VEHICLE_CLASS_BUS;
    good = good && check_vehicle(reader, law, row, &vehicle);
    vehicle.vehicle = RODT_VEHICLE_CLASS_COMBINATION;
    for (vehicle.towed_units = 1; vehicle.towed_units <= 10 && good; vehicle.towed_units++)
        good = check_vehicle(reader, law, row, &vehicle);
    vehicle.towed_units = RODT_AIR_COUNT_MAX;
    return good && check_vehicle(reader, law, row, &vehicle);
}

/* The law changes only where one of its rows begins or has ended. */
bool rodti_air_check_strict(table_reader *reader, const rodt_rules *law, const rodt_air_limit *row)
{
    const air_rows rows = rodti_air_rows(law);
    bool good = check_day(reader, rows, row, (rodt_date){1900, 1, 1}) && check_day(reader, rows, row, row->built_from);
    for (size_t i = 0; i < rows.count && good; i++)
        good = rows.row[i].check != row->check ||
               (check_day(reader, rows, row, rows.row[i].built_from) &&
                check_day(reader, rows, row, rodti_air_day_after(rows.row[i].built_until)));
    return good;
}
