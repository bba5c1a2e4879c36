/* SPDX-License-Identifier: Apache-2.0 */
/* rodt_reading_judge for a reading that was checked before, or that a reader of texts made. */
#ifndef RODT_JUDGE_H
#define RODT_JUDGE_H

#include "rodtravel/stroke.h"

/* A full application moves a rod further than this: common practice, no source. */
#define STROKE_HARDLY ((rodt_length){1, 2})

/* RODT_OK; RODT_E_RANGE. No pointer is NULL. */
rodt_status rodti_reading_judge(const rodt_reading *reading, const rodt_rules *rules, rodt_finding *out);

#endif
