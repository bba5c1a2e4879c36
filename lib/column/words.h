/* SPDX-License-Identifier: Apache-2.0 */
/* The words of columns. */
#ifndef RODT_COLUMN_WORDS_H
#define RODT_COLUMN_WORDS_H

#include "core/words.h"
#include "rodtravel/column_text.h"

extern const rodt_enumeration rodti_words_column_flag, rodti_words_text_layout;

#endif
