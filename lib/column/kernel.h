/* SPDX-License-Identifier: Apache-2.0 */
/* The two ways to judge rows by a plan. */
#ifndef RODT_COLUMN_KERNEL_H
#define RODT_COLUMN_KERNEL_H

#include <stddef.h>

#include "rodtravel/column.h"

/* Judges rows of any kind, block by block. */
void rodti_column_judge_blocks(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out);

/* The same for 32-bit readings of which none is marked as missing, without pressure or day, by plans of one step:
 * one lookup finds the table row and its step. */
void rodti_column_judge_plain(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out);

/* The copies of both that run on any processor, for tests. */
void rodti_column_judge_blocks_anywhere(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                  const rodt_column_out *out);
void rodti_column_judge_plain_anywhere(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                                  const rodt_column_out *out);

#endif
