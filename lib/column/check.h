/* SPDX-License-Identifier: Apache-2.0 */
/* What a caller gave for columns is checked before the first row is judged. */
#ifndef RODT_COLUMN_CHECK_H
#define RODT_COLUMN_CHECK_H

#include "core/common.h"
#include "rodtravel/column.h"

/* Each column that is needed is there, none overlaps another that is written, reserves are zero. RODT_OK, or
 * RODT_E_ARGUMENT with the column as the field of *error (may be NULL). */
rodt_status rodti_column_check_out(const rodt_column_out *out, size_t rows, rodt_error *error);
rodt_status rodti_column_check(const rodt_column_in *in, size_t rows, const rodt_column_out *out, rodt_error *error);

#endif
