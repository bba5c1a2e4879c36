/* SPDX-License-Identifier: Apache-2.0 */
/* The vehicle in words: the count in one line, what does not match on an axle, what to do next, and the sources. */
#include "rodtravel/vehicle.h"

#include "core/number_parse.h"
#include "rules/tables.h"
#include "vehicle/words.h"

/* --- Sources ------------------------------------------------------------------------------------------ */

static const rodt_source *source_of(vehicle_part part, RODT_ENUM32(rodt_evidence) *evidence)
{
    if (part >= VEHICLE_PARTS)
        return NULL;
    if (evidence != NULL)
        *evidence = rodti_table_vehicle[part].evidence;
    return rodti_table_vehicle[part].source;
}

static const vehicle_part count_parts[RODT_COUNT_PARTS] = {VEHICLE_SHARE, VEHICLE_FULL_FROM, VEHICLE_HALF,
                                                           VEHICLE_CHART, VEHICLE_STEERING};

const rodt_source *rodt_count_source(size_t part, RODT_ENUM32(rodt_evidence) *evidence)
{
    return part < RODT_COUNT_PARTS ? source_of(count_parts[part], evidence) : NULL;
}

const char *rodt_count_words(size_t part)
{
    return part < RODT_COUNT_PARTS ? rodti_table_vehicle[count_parts[part]].wording : "";
}

static vehicle_part part_of_axle(uint32_t bit)
{
    switch (bit) {
    case RODT_AXLE_SIZE_DIFFERS:
    case RODT_AXLE_SPRING_DIFFERS: return VEHICLE_AXLE_SIZE;
    case RODT_AXLE_ARM_DIFFERS: return VEHICLE_AXLE_ARM;
    case RODT_AXLE_STEERING_DEAD: return VEHICLE_STEERING;
    default: return VEHICLE_PARTS;
    }
}

const rodt_source *rodt_axle_source(uint32_t bit, RODT_ENUM32(rodt_evidence) *evidence)
{
    return source_of(part_of_axle(bit), evidence);
}

const rodt_source *rodt_advice_source(rodt_advice advice, RODT_ENUM32(rodt_evidence) *evidence)
{
    bool cited = advice == RODT_ADVICE_FIND_FAULT || advice == RODT_ADVICE_FIND_ADJUSTER;
    return source_of(cited ? VEHICLE_ADJUSTER : VEHICLE_PARTS, evidence);
}

/* --- The count ---------------------------------------------------------------------------------------- */

static void put_number(text_writer *writer, rodt_ratio value)
{
    char text[RODT_LENGTH_TEXT_SIZE];
    if (rodt_ratio_format(value, text, sizeof text, NULL) == RODT_OK)
        rodti_text_put(writer, text);
}

static void put_percent(text_writer *writer, rodt_ratio share)
{
    const rodt_ratio hundred = {100, 1};
    rodt_ratio percent;
    if (rodti_exact_multiply(EXACT(share), hundred, &percent))
        put_number(writer, percent);
    rodti_text_put(writer, " %");
}

static void put_brakes(text_writer *writer, uint64_t brakes)
{
    rodti_text_putf(writer, "%llu brake%s", (unsigned long long)brakes, brakes == 1 ? "" : "s");
}

static uint64_t open_brakes(const rodt_count *count) { return (uint64_t)count->tally.unknown + count->unmeasured; }

static void put_reached(text_writer *writer, const rodt_count *count)
{
    put_percent(writer, count->criterion);
    if (count->outcome == RODT_OUTCOME_OUT_OF_SERVICE) {
        rodti_text_put(writer, " is reached");
        return;
    }
    rodti_text_putf(writer, " is reached, but not the %lu whole brake%s of the chart",
                    (unsigned long)count->whole_needed, count->whole_needed == 1 ? "" : "s");
}

/* Unknown brakes can only add to what is counted; how far is what a person must know. */
static void put_open(text_writer *writer, const rodt_count *count)
{
    uint64_t open = open_brakes(count);
    if (open == 0)
        return;
    rodti_text_put(writer, "; ");
    put_brakes(writer, open);
    rodti_text_put(writer, " not known");
    if (rodt_ratio_given(count->known_share)) {
        rodti_text_put(writer, ", of the ");
        put_brakes(writer, count->brakes - open);
        rodti_text_put(writer, " known it is ");
        put_percent(writer, count->known_share);
    }
    if (count->outcome == RODT_OUTCOME_UNDETERMINED) {
        rodti_text_put(writer, ", at worst ");
        put_percent(writer, count->worst_share);
        rodti_text_put(writer, " of all");
    }
}

rodt_status rodt_count_format(const rodt_count *count, char *text, size_t size, size_t *needed)
{
    if (count == NULL)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    if (!rodt_ratio_given(count->share)) {
        rodti_text_put(&writer, "no brake was counted");
        return rodti_text_copy_out(&writer, text, size, needed);
    }
    put_number(&writer, EXACT(count->defective));
    rodti_text_put(&writer, " of ");
    put_brakes(&writer, count->brakes);
    rodti_text_put(&writer, " defective, ");
    put_percent(&writer, count->share);
    rodti_text_put(&writer, ": ");
    if (count->outcome == RODT_OUTCOME_OUT_OF_SERVICE || count->outcome == RODT_OUTCOME_AMBIGUOUS) {
        put_reached(&writer, count);
    } else {
        rodti_text_put(&writer, "below ");
        put_percent(&writer, count->criterion);
    }
    put_open(&writer, count);
    return rodti_text_copy_out(&writer, text, size, needed);
}

/* --- Axles -------------------------------------------------------------------------------------------- */

static void put_source(text_writer *writer, uint32_t bit)
{
    RODT_ENUM32(rodt_evidence) evidence;
    const rodt_source *source = rodt_axle_source(bit, &evidence);
    if (source == NULL)
        return;
    rodti_text_putf(writer, " (%s, %s", source->document, source->section);
    rodti_text_putf(writer, "%s%s)", evidence == RODT_EVIDENCE_CHECKED ? "" : "; ",
              evidence == RODT_EVIDENCE_CHECKED ? "" : rodt_evidence_text(evidence));
}

static void put_strokes(text_writer *writer, const rodt_axle_finding *axle)
{
    rodti_text_put(writer, "the strokes differ by ");
    put_number(writer, EXACT(axle->stroke_difference));
    rodti_text_put(writer, " in: no law has a figure for it; look for the cause");
}

static void put_torque(text_writer *writer, const rodt_axle_finding *axle)
{
    rodti_text_put(writer, "type number x arm length is ");
    put_number(writer, EXACT(axle->al_left));
    rodti_text_put(writer, " left and ");
    put_number(writer, EXACT(axle->al_right));
    rodti_text_put(writer, " right: the ends do not brake alike (information)");
}

static void put_missing(text_writer *writer, const rodt_axle_finding *axle)
{
    rodti_text_putf(writer, "the %s end was not given, so nothing is known of it",
              axle->left == SIZE_MAX ? "left" : "right");
}

static bool is_one_bit(uint32_t bits)
{
    return bits != 0 && (bits & (bits - 1)) == 0 && bits <= RODT_AXLE_STEERING_DEAD;
}

rodt_status rodt_axle_format(const rodt_axle_finding *axle, uint32_t bit, char *text, size_t size, size_t *needed)
{
    if (axle == NULL || !is_one_bit(bit) || (axle->mismatches & bit) == 0)
        return RODT_E_ARGUMENT;
    text_writer writer;
    rodti_text_begin(&writer);
    rodti_text_putf(&writer, "axle %d: ", axle->axle);
    if (bit == RODT_AXLE_STROKES_DIFFER)
        put_strokes(&writer, axle);
    else if (bit == RODT_AXLE_TORQUE_DIFFERS)
        put_torque(&writer, axle);
    else if (bit == RODT_AXLE_END_MISSING)
        put_missing(&writer, axle);
    else
        rodti_text_put(&writer, rodti_text_of(&rodti_words_axle_mismatch, bit));
    put_source(&writer, bit);
    return rodti_text_copy_out(&writer, text, size, needed);
}
