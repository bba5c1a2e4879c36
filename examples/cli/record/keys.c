/* SPDX-License-Identifier: Apache-2.0 */
/* The entries of a record: the one list that reading, writing and judging go by. */
#include "record/record.h"

const record_key record_head_keys[HEAD_KEYS] = {
    [HEAD_UNIT] = {"unit", 0, false},
    [HEAD_DATE] = {"date", 0, true},
    [HEAD_INSPECTOR] = {"inspector", 0, false},
    [HEAD_PLACE] = {"place", 0, false},
    [HEAD_ODOMETER] = {"odometer", 0, false},
    [HEAD_RULES] = {"rules", 0, true},
    [HEAD_AIR_RULES] = {"air_rules", 0, false},
    [HEAD_LENGTH_UNIT] = {"length_unit", 0, false},
    [HEAD_VEHICLE] = {"vehicle", 0, false},
    [HEAD_TOWED] = {"towed_units", 99, false},
    [HEAD_BUILT] = {"built", 0, false},
    [HEAD_BRAKES] = {"brakes", 999, false},
    [HEAD_PROGRAM] = {"program", 0, false},
    [HEAD_REMARKS] = {"remarks", 0, false},
};

const record_key record_end_keys[END_KEYS] = {
    [END_POSITION] = {"position", 0, true},
    [END_CHAMBER] = {"chamber", 0, false},
    [END_CLASS] = {"stroke_class", 0, false},
    [END_RATED] = {"rated_stroke", 0, false},
    [END_MARKED] = {"marked_limit", 0, false},
    [END_RELEASED] = {"released", 0, false},
    [END_APPLIED] = {"applied", 0, false},
    [END_DIVISION] = {"division", 0, false},
    [END_PSI] = {"psi", 0, false},
    [END_PSI_AFTER] = {"psi_after", 0, false},
    [END_ENGINE] = {"engine", 0, false},
    [END_SPRING] = {"spring_brake", 0, false},
    [END_DRUM] = {"drum", 0, false},
    [END_ADJUSTER] = {"adjuster", 0, false},
    [END_ARM] = {"arm_length", 0, false},
    [END_REMARK] = {"remark", 0, false},
};

const record_key record_check_keys[CHECK_KEYS] = {
    [CHECK_NAME] = {"check", 0, true},
    [CHECK_PRESSURE] = {"pressure", 0, false},
    [CHECK_BEFORE] = {"before", 0, false},
    [CHECK_AFTER] = {"after", 0, false},
    [CHECK_SECONDS] = {"seconds", 0, false},
    [CHECK_SPAN] = {"span", 0, false},
    [CHECK_APPLICATIONS] = {"applications", 99, false},
    [CHECK_CUT_OUT] = {"cut_out", 0, false},
    [CHECK_ACTUAL] = {"reservoir_volume", 0, false},
    [CHECK_REQUIRED] = {"required_volume", 0, false},
    [CHECK_ANSWER] = {"answer", 0, false},
    [CHECK_REMARK] = {"remark", 0, false},
};

const record_key record_step_keys[STEP_KEYS] = {
    [STEP_NAME] = {"step", 0, true},
    [STEP_ANSWER] = {"answer", 0, true},
};
