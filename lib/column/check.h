/* SPDX-License-Identifier: Apache-2.0 */
/* What a caller gave for columns is checked before the first row is judged. */
#ifndef RODT_COLUMN_CHECK_H
#define RODT_COLUMN_CHECK_H

#include "core/common.h"
#include "rodtravel/arrow.h"
#include "rodtravel/column.h"

/* The figures of an array can be: no sum of offsets and no count of bytes overflows, it has so many buffers at least,
 * and missing cells are told by a bitmap. */
static inline bool arrow_is_sane(const struct ArrowArray *array, int64_t buffers)
{
    const int64_t most = (int64_t)(SIZE_MAX / 32); /* cells */
    return array->length >= 0 && array->length <= most && array->offset >= 0 && array->offset <= most &&
           array->null_count >= -1 && array->n_buffers >= buffers && array->buffers != NULL &&
           (array->null_count <= 0 || array->buffers[0] != NULL);
}
#define ARROW_NOT_SANE "its length, offset, buffers or count of missing cells cannot be"

/* Each column that is needed is there, none overlaps another that is written, reserves are zero. RODT_OK, or
 * RODT_E_ARGUMENT with the column as the field of *error (may be NULL). */
rodt_status rodti_column_check_out(const rodt_column_out *out, size_t rows, rodt_error *error);
rodt_status rodti_column_check(const rodt_column_in *in, size_t rows, const rodt_column_out *out, rodt_error *error);

#endif
