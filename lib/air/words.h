/* SPDX-License-Identifier: Apache-2.0 */
/* The words of results of air checks. */
#ifndef RODT_AIR_WORDS_H
#define RODT_AIR_WORDS_H

#include "core/words.h"
#include "rodtravel/aircheck.h"

extern const rodt_enumeration rodti_words_air_result, rodti_words_air_missing;

#endif
