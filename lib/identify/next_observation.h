/* SPDX-License-Identifier: Apache-2.0 */
/* The next observation: the one that distinguishes the candidates best. */
#ifndef RODT_NEXT_OBSERVATION_H
#define RODT_NEXT_OBSERVATION_H

#include "core/common.h"
#include "rodtravel/identify.h"

/* The diameters of three families lie within this of each other: clamp 30 8 3/32, DD-3 30 8 1/8, bolt C 8 1/16.
 * No tape reading can be trusted to choose among them, so it is added to half a division. */
#define DIAMETERS_APART ((rodt_length){1, 16})

/* Inspection tapes are read to eighths unless somebody says otherwise (common practice, no source). */
#define USUAL_DIVISION ((rodt_length){1, 8})

/* How far a reading of that division, which was checked, may lie from the published diameter. */
rodt_length rodti_diameter_tolerance(rodt_length division);

/* How far two diameters lie from each other, never negative. False, and *out untouched: one of them is not given. */
bool rodti_diameter_distance(rodt_length a, rodt_length b, rodt_length *out);

/* The observation that leaves the fewest limits open in the worst case; the first of equals. */
rodt_observation rodti_find_next_observation(const rodt_identification *found, const rodt_clues *clues);

#endif
