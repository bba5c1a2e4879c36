/* SPDX-License-Identifier: Apache-2.0 */
/* The scalar way to judge one row of columns: what every answer of columns is compared with, by the unit test and
 * the fuzz target. */
#ifndef COLUMN_EXPECT_H
#define COLUMN_EXPECT_H

#include <stdbool.h>

#include "rodtravel/rodtravel.h"

typedef struct column_expected {
    int32_t stroke;
    uint8_t verdict;
    uint64_t reasons;
    uint8_t flags;
    int32_t limit;
} column_expected;

/* `chambers` by the codes of the plan; `common` as the plan was started with. False = rodt_reading_judge refused the row. */
bool column_expect(const rodt_column_plan *plan, const rodt_chamber *chambers, const rodt_reading *common,
                   const rodt_column_in *in, size_t row, column_expected *out);

#endif
