/* SPDX-License-Identifier: Apache-2.0 */
/* Cells of a column of texts as keys of the cache. */
#ifndef RODT_TEXT_KEYS_H
#define RODT_TEXT_KEYS_H

#include "column/cache.h"
#include "column/key.h"
#include "rodtravel/column_text.h"

/* The key of a text that is too long for one; no text that is cached has it. */
#define KEY_OF_LONG_TEXT (cell_key){{1, UINT64_MAX}}

/* Keys of some rows of a column whose layout was checked. A missing text is an empty one; all have the tag 0. */
void rodti_text_keys(const rodt_text_cells *column, size_t first, size_t count, cell_key *keys);

#endif
