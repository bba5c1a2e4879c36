/* SPDX-License-Identifier: Apache-2.0 */
/* What a rated stroke marked on a housing says: which row asks for it, and whether it fits the stroke class. */
#ifndef RODT_RATED_STROKE_H
#define RODT_RATED_STROKE_H

#include "core/common.h"
#include "rodtravel/rules.h"

/* True if the mark is the rated stroke: in inches, in the millimetres printed beside it (may be not given), or rounded
 * to a whole millimetre, as 3 in is 76 mm on a housing. False where either is not given. */
bool rodti_rated_stroke_is_marked(rodt_length rated, rodt_length printed_mm, rodt_length mark);

/* True if the mark contradicts a row of limits: it is not above the limit, though every chamber travels further than
 * its limit, or the row is for long stroke and the mark is too short for its limit: that of a standard chamber. */
bool rodti_rated_stroke_contradicts(const rodt_limit *row, rodt_length mark);

#endif
