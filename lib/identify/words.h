/* SPDX-License-Identifier: Apache-2.0 */
/* The words of what can be seen of a chamber. */
#ifndef RODT_IDENTIFY_WORDS_H
#define RODT_IDENTIFY_WORDS_H

#include "core/words.h"
#include "rodtravel/identify.h"

extern const rodt_enumeration rodti_words_port, rodti_words_tag, rodti_words_clue, rodti_words_observation;

#endif
