/* SPDX-License-Identifier: Apache-2.0 */
/* What a finding does not settle. A source that prints kPa beside psi rounds one of them; at the edge this decides, so
 * it is noted. */
#include "core/always.h"
#include "message/message.h"
#include "rodtravel/aircheck.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

/* Half kPa to half kPa: what a gauge in whole kPa shows as this figure. */
static bool reads_as_kpa(rodt_ratio psi, int64_t kpa)
{
    rodt_pressure low, high;
    const rodt_pressure at = {psi.num, psi.den};
    bool made = rodt_pressure_from_kpa(2 * kpa - 1, 2, &low) == RODT_OK;
    made &= rodt_pressure_from_kpa(2 * kpa + 1, 2, &high) == RODT_OK;
    return ALWAYS(made) /* edges are bounded */ && rodt_pressure_compare(at, low) >= 0 &&
           rodt_pressure_compare(at, high) < 0;
}

/* True if the published words have the figure. */
static bool is_printed(const char *published, int64_t kpa)
{
    char digits[32];
    size_t size = (size_t)snprintf(digits, sizeof digits, "%" PRId64, kpa);
    for (const char *at = published; (at = strstr(at, digits)) != NULL; at++) {
        bool begins = at == published || strchr("0123456789.", at[-1]) == NULL;
        if (begins && strspn(at + size, "0123456789") == 0)
            return true;
    }
    return false;
}

/* At the edge as a gauge in whole kPa shows it, or at the figure in kPa that is printed for it. */
static bool is_at_kpa_edge(const rodt_air_finding *finding, rodt_ratio edge)
{
    if (!rodt_ratio_given(edge) || (uint64_t)edge.num > 100000 || (uint64_t)edge.den > 1000) /* no edge of a table */
        return false;
    int64_t nearest = (edge.num * 6894757 / edge.den + 500000) / 1000000;
    for (int64_t kpa = nearest - 2; kpa <= nearest + 2; kpa++)
        if (reads_as_kpa(finding->measured, kpa))
            return kpa == nearest || is_printed(finding->row->published, kpa);
    return false;
}

static bool is_judged_by_a_twin(const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    return row != NULL && (row->measure == RODT_AIR_MEASURE_PSI || row->measure == RODT_AIR_MEASURE_PSI_PER_MINUTE) &&
           !finding->at_limit && strstr(row->published, "kPa") != NULL && rodt_ratio_given(finding->measured);
}

static rodt_message_code note_of(const rodt_air_finding *finding)
{
    const rodt_air_limit *row = finding->row;
    if (is_judged_by_a_twin(finding) &&
        (is_at_kpa_edge(finding, finding->allowed) || is_at_kpa_edge(finding, row->upper)))
        return RODT_MESSAGE_AIR_NOTE_PRINTED_KPA;
    /* What is required goes by the lower of Table V and the actual volume: beyond a time by Table V nothing is sure. */
    return row != NULL && row->by_volume && finding->result == RODT_AIR_RESULT_DEFECTIVE ? RODT_MESSAGE_AIR_NOTE_VOLUME
                                                                                         : RODT_MESSAGE_NONE;
}

rodt_status rodt_air_finding_note_message(const rodt_air_finding *finding, rodt_message *out)
{
    return finding == NULL ? RODT_E_ARGUMENT : rodti_message_sentence(note_of(finding), out);
}

rodt_status rodt_air_finding_note_format(const rodt_air_finding *finding, char *text, size_t size, size_t *needed)
{
    rodt_message message;
    return rodti_message_say(rodt_air_finding_note_message(finding, &message), &message, text, size, needed);
}
