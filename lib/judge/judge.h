/* SPDX-License-Identifier: Apache-2.0 */
/* The judgement behind rodt_judge, with what was already noted while texts were read. */
#ifndef RODT_JUDGE_H
#define RODT_JUDGE_H

#include "core/common.h"
#include "rodtravel/stroke.h"

#define REASON_BIT(reason) ((uint64_t)1 << (reason))

/* As rodt_judge; `noted` are reasons that only the reader of the texts can know: what was unreadable, and
 * marks that contradict each other. Unreadable inputs are "not given" in the reading. */
rodt_status judge_with_reasons(const rodt_reading *reading, const rodt_rules *rules, uint64_t noted, rodt_finding *out);

#endif
