/* SPDX-License-Identifier: Apache-2.0 */
/* Counting brakes: how a finding counts, and whether the sum meets the roadside criterion. */
#include "rodtravel/vehicle.h"

#include "core/always.h"
#include "core/error.h"
#include "core/exact.h"
#include "core/fault.h"
#include "core/text.h"
#include "rules/find_limit.h"
#include "rules/tables.h"

#include <string.h>

/* --- How one finding counts --------------------------------------------------------------------------- */

/* A pass of the law is no defect, whatever a carrier's own limit says of it. */
static bool passes_law(const rodt_finding *finding, int order)
{
    return order > 0 || (order == 0 && rodt_rules_at_limit_passes(finding->rules));
}

/* The limit that no misread mark has made smaller: the table's, where the marked rated stroke contradicts it. */
static rodt_length find_law_limit(const rodt_finding *finding)
{
    rodt_limit_answer answer;
    rodt_chamber chamber = finding->chamber;
    if (!rodt_finding_has(finding, RODT_REASON_CONFLICTING_MARKS) || finding->law_basis == RODT_BASIS_TABLE)
        return finding->law_limit;
    chamber.rated_stroke = (rodt_length){0};
    rodti_rules_find_limit(finding->rules, &chamber, finding->day, &answer);
    return answer.law_limit;
}

/* Without a limit of the law, or with a stroke that the law would pass and the marks on the housing do not allow,
 * nobody can say by how much the brake is over. */
static rodt_defect classify_excess(const rodt_finding *finding)
{
    rodt_length excess;
    if (!rodt_length_given(finding->applied_stroke) || finding->rules == NULL)
        return RODT_DEFECT_UNKNOWN;
    rodt_length limit = find_law_limit(finding);
    bool by_marks = rodt_finding_has(finding, RODT_REASON_BEYOND_RATED_STROKE) ||
                    rodt_finding_has(finding, RODT_REASON_CONFLICTING_MARKS);
    if (!rodt_length_given(limit))
        return RODT_DEFECT_UNKNOWN;
    if (passes_law(finding, rodt_length_compare(limit, finding->applied_stroke)))
        return by_marks ? RODT_DEFECT_UNKNOWN : RODT_DEFECT_NONE;
    if (rodt_length_subtract(finding->applied_stroke, limit, &excess) != RODT_OK)
        return RODT_DEFECT_UNKNOWN;
    rodt_ratio full_from = rodti_table_vehicle[VEHICLE_FULL_FROM].value;
    return rodti_exact_compare(EXACT(excess), full_from) >= 0 ? RODT_DEFECT_FULL : RODT_DEFECT_HALF;
}

rodt_defect rodt_finding_defect(const rodt_finding *finding)
{
    if (finding == NULL)
        return RODT_DEFECT_UNKNOWN;
    switch (finding->verdict) {
    case RODT_VERDICT_IN_ADJUSTMENT: return RODT_DEFECT_NONE;
    case RODT_VERDICT_OUT_OF_ADJUSTMENT: return classify_excess(finding);
    case RODT_VERDICT_INOPERATIVE: return RODT_DEFECT_FULL;
    case RODT_VERDICT_UNDETERMINED: break;
    }
    return RODT_DEFECT_UNKNOWN;
}

static rodt_status too_many_error(rodt_error *error)
{
    (void)rodti_field_error(error, "brakes", "these are more brakes than any vehicle has");
    if (error != NULL)
        error->status = RODT_E_RANGE;
    return RODT_E_RANGE;
}

rodt_status rodt_tally_add(rodt_tally *tally, const rodt_finding *finding, rodt_error *error)
{
    if (tally == NULL || finding == NULL)
        return rodti_field_error(error, "", "a tally and a finding are needed");
    if (finding->verdict >= RODT_VERDICT_END)
        return rodti_field_error(error, "verdict", "there is no such verdict");
    if (tally->brakes >= RODT_BRAKES_MAX)
        return too_many_error(error);
    rodt_defect defect = rodt_finding_defect(finding);
    tally->brakes++;
    tally->full += defect == RODT_DEFECT_FULL;
    tally->half += defect == RODT_DEFECT_HALF;
    tally->unknown += defect == RODT_DEFECT_UNKNOWN;
    tally->inoperative += finding->verdict == RODT_VERDICT_INOPERATIVE;
    return RODT_OK;
}

/* --- Whether the sum meets the criterion -------------------------------------------------------------- */

static rodt_status check_tally(const rodt_tally *tally, uint32_t brakes, rodt_error *error)
{
    uint64_t classified = (uint64_t)tally->full + tally->half + tally->unknown;
    if (tally->brakes > RODT_BRAKES_MAX || brakes > RODT_BRAKES_MAX)
        return too_many_error(error);
    if (classified > tally->brakes || tally->inoperative > tally->full)
        return rodti_field_error(error, "tally", "the tally counts more defects than brakes");
    if (brakes != 0 && brakes < tally->brakes)
        return rodti_field_error(error, "brakes", "more brakes were counted than the vehicle has");
    if ((tally->reserved[0] | tally->reserved[1] | tally->reserved[2]) != 0)
        return rodti_field_error(error, "reserved", "the reserve of a tally is zero");
    return RODT_OK;
}

static rodt_ratio count(uint32_t brakes) { return (rodt_ratio){brakes, 1}; }

/* full + half x its weight. */
static bool add_defects(uint64_t full, uint32_t half, rodt_ratio *out)
{
    rodt_ratio halves = {0, 1};
    bool fits = rodti_exact_multiply(count(half), rodti_table_vehicle[VEHICLE_HALF].value, &halves);
    fits &= rodti_exact_add((rodt_ratio){(int64_t)full, 1}, halves, out);
    return fits;
}

static bool divide(rodt_ratio sum, uint64_t brakes, rodt_ratio *out)
{
    if (brakes == 0)
        return true;
    return rodti_exact_divide(sum, (rodt_ratio){(int64_t)brakes, 1}, out);
}

static bool find_shares(rodt_count *out)
{
    const rodt_tally *tally = &out->tally;
    uint64_t open = (uint64_t)tally->unknown + out->unmeasured;
    rodt_ratio worst = {0, 1};
    bool fits = add_defects(tally->full, tally->half, &out->defective);
    fits &= add_defects(tally->full + open, tally->half, &worst);
    fits &= divide(out->defective, out->brakes, &out->share);
    fits &= divide(worst, out->brakes, &out->worst_share);
    fits &= divide(out->defective, out->brakes - open, &out->known_share);
    return fits;
}

/* The chart lists whole brakes only: the share of the brakes, rounded up to its step. */
static bool find_whole_needed(rodt_count *out)
{
    rodt_ratio step = rodti_table_vehicle[VEHICLE_CHART].value;
    rodt_ratio needed = {0, 1};
    bool fits = rodti_exact_multiply(count(out->brakes), out->criterion, &needed);
    fits &= rodti_exact_divide(needed, step, &needed);
    out->whole_needed = (uint32_t)(rodti_exact_round(needed, RODT_ROUNDING_UP) * step.num);
    return fits;
}

static rodt_outcome find_outcome(const rodt_count *count_made)
{
    rodt_ratio criterion = count_made->criterion;
    if (count_made->brakes == 0)
        return RODT_OUTCOME_UNDETERMINED;
    if (rodti_exact_compare(count_made->share, criterion) >= 0) {
        bool whole = rodti_exact_compare(count_made->defective, count(count_made->whole_needed)) >= 0;
        return whole ? RODT_OUTCOME_OUT_OF_SERVICE : RODT_OUTCOME_AMBIGUOUS;
    }
    bool open = rodti_exact_compare(count_made->worst_share, criterion) >= 0;
    return open ? RODT_OUTCOME_UNDETERMINED : RODT_OUTCOME_BELOW_CRITERION;
}

rodt_status rodt_tally_judge(const rodt_tally *tally, uint32_t brakes, rodt_count *out, rodt_error *error)
{
    rodt_count made;
    if (tally == NULL || out == NULL)
        return rodti_field_error(error, "", "a tally and room for its count are needed");
    rodt_status status = check_tally(tally, brakes, error);
    if (status != RODT_OK)
        return status;
    memset(&made, 0, sizeof made);
    made.tally = *tally;
    made.brakes = brakes == 0 ? tally->brakes : brakes;
    made.unmeasured = made.brakes - tally->brakes;
    made.criterion = rodti_table_vehicle[VEHICLE_SHARE].value;
    bool fits = find_shares(&made);
    fits &= find_whole_needed(&made);
    if (NEVER(!fits)) /* counts are bounded, and the figures of the criterion are small */
        return rodti_error_status(error, RODT_E_RANGE);
    made.outcome = find_outcome(&made);
    *out = made;
    return RODT_OK;
}
