/* SPDX-License-Identifier: Apache-2.0 */
/* One cell of a column of texts. */
#ifndef RODT_TEXT_CELLS_H
#define RODT_TEXT_CELLS_H

#include "core/common.h"
#include "rodtravel/column_text.h"

/* The text of a row; text NULL = missing, or a number that the dictionary does not have. */
rodt_text_span text_cells_at(const rodt_text_cells *column, size_t row);

#endif
