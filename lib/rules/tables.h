/* SPDX-License-Identifier: Apache-2.0 */
/* The generated tables: what a rule set is made of, and the names of the arrays that the table compiler
 * writes. A row of limits, a chamber and a source have their public form already (rules.h). */
#ifndef RODT_TABLES_H
#define RODT_TABLES_H

#include "core/common.h"
#include "rodtravel/aircheck.h"
#include "rodtravel/rules.h"

struct rodt_rules {
    const char *id;
    const char *title;
    const char *authority;
    const rodt_source *source;
    RODT_ENUM32(rodt_evidence) evidence;
    rodt_date from;
    rodt_date until;
    bool at_limit_passes;

    rodt_pressure pressure_from;
    rodt_pressure pressure_until;
    const rodt_source *pressure_source;
    RODT_ENUM32(rodt_evidence) pressure_evidence;

    rodt_ratio rated_share;
    const rodt_source *rated_share_source;
    RODT_ENUM32(rodt_evidence) rated_share_evidence;

    const rodt_source *major_source; /* calls a brake over its limit a major defect; NULL = none */

    const rodt_limit *limits; /* shared with another rule set where the law refers to all of it */
    const uint32_t *limit_keys; /* of each row (limit_key.h) */
    size_t limit_count;

    const rodt_air_limit *air; /* NULL without rows; of a carrier its own rows */
    size_t air_count;
    const rodt_rules *air_law; /* what a carrier's air checks are based on; NULL = this is a law */

    const rodt_rules *law; /* NULL = this is a law; otherwise a carrier's limits on top of it */
    void *memory;          /* of a loaded rule set; NULL = compiled in */
};

/* The criteria of a whole vehicle, and the source of each. */
typedef enum vehicle_part {
    VEHICLE_SHARE,
    VEHICLE_FULL_FROM,
    VEHICLE_HALF,
    VEHICLE_CHART,
    VEHICLE_STEERING,
    VEHICLE_AXLE_SIZE,
    VEHICLE_AXLE_ARM,
    VEHICLE_ADJUSTER,
    VEHICLE_PARTS
} vehicle_part;

typedef struct vehicle_figure {
    rodt_ratio value; /* not given = the part has no figure */
    const char *wording;
    const rodt_source *source;
    RODT_ENUM32(rodt_evidence) evidence;
} vehicle_figure;

/* How much reservoir goes with the chambers that it serves. */
typedef struct volume_multiple {
    rodt_ratio value;
    const rodt_source *source;
} volume_multiple;

/* Where a step is one. */
typedef enum step_when { STEP_ALWAYS, STEP_WITH_ROW, STEP_OF_COMBINATION, STEP_WITH_LIMITS, STEP_WHENS } step_when;

typedef struct step_use {
    RODT_ENUM32(rodt_air_check) check; /* RODT_AIR_CHECK_NONE = it is none */
    RODT_ENUM32(step_when) when;
} step_use;

extern const step_use rodti_table_steps[]; /* by rodt_step */
extern const vehicle_figure rodti_table_vehicle[VEHICLE_PARTS];
extern const rodt_volume_row rodti_table_volumes[];
extern const size_t rodti_table_volumes_count;
extern const volume_multiple rodti_table_multiple_truck;
extern const volume_multiple rodti_table_multiple_trailer;
extern const rodt_rules rodti_table_rules[];
extern const size_t rodti_table_rules_count;
extern const rodt_chamber_row rodti_table_chambers[];
extern const size_t rodti_table_chambers_count;
extern const char rodti_table_edition[];

/* The clause that says how a figure was checked. */
rodt_message_code rodti_evidence_code(rodt_evidence evidence);

#endif
