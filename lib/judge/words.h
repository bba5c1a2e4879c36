/* SPDX-License-Identifier: Apache-2.0 */
/* The words of fields, verdicts, proofs and reasons. */
#ifndef RODT_JUDGE_WORDS_H
#define RODT_JUDGE_WORDS_H

#include "core/words.h"
#include "rodtravel/stroke.h"

extern const rodt_enumeration rodti_words_field, rodti_words_verdict, rodti_words_proof, rodti_words_drum,
    rodti_words_reason;

#endif
