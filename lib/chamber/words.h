/* SPDX-License-Identifier: Apache-2.0 */
/* The words of families and stroke classes. */
#ifndef RODT_CHAMBER_WORDS_H
#define RODT_CHAMBER_WORDS_H

#include "core/words.h"
#include "rodtravel/chamber.h"

extern const rodt_enumeration rodti_words_family, rodti_words_stroke_class;

#endif
