/* SPDX-License-Identifier: Apache-2.0 */
/* The words of sides, adjusters, defects, outcomes, parts of the criterion, mismatches and advice. */
#ifndef RODT_VEHICLE_WORDS_H
#define RODT_VEHICLE_WORDS_H

#include "core/words.h"
#include "rodtravel/vehicle.h"

extern const rodt_enumeration rodti_words_side, rodti_words_adjuster, rodti_words_defect,
    rodti_words_outcome, rodti_words_count_part, rodti_words_axle_mismatch, rodti_words_advice;

#endif
