/* SPDX-License-Identifier: Apache-2.0 */
/* The words of evidence, of the basis of a limit, and of rows of air checks. */
#ifndef RODT_RULES_WORDS_H
#define RODT_RULES_WORDS_H

#include "core/words.h"
#include "rodtravel/step.h"

extern const rodt_enumeration rodti_words_evidence, rodti_words_basis, rodti_words_air_check,
    rodti_words_vehicle_class, rodti_words_comparison, rodti_words_air_measure, rodti_words_air_kind,
    rodti_words_air_span, rodti_words_step, rodti_words_step_part;

#endif
