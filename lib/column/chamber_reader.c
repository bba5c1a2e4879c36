/* SPDX-License-Identifier: Apache-2.0 */
/* Columns of chambers to codes of a plan, each text read once while it is cached. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "column/cache.h"
#include "column/plan.h"
#include "column/text_cells.h"
#include "core/fault.h"

#define CHAMBER_BITS 12

struct rodt_chamber_reader {
    rodt_column_plan *plan;
    cell_cache cells; /* the value of a cell is its code */
};

rodt_status rodt_chamber_reader_new(rodt_column_plan *plan, rodt_chamber_reader **reader)
{
    if (plan == NULL || reader == NULL)
        return RODT_E_ARGUMENT;
    rodt_chamber_reader *made = calloc(1, sizeof *made);
    if (made == NULL || !rodti_cell_cache_open(&made->cells, CHAMBER_BITS)) {
        free(made);
        return RODT_E_MEMORY;
    }
    made->plan = plan;
    *reader = made;
    return RODT_OK;
}

void rodt_chamber_reader_free(rodt_chamber_reader *reader)
{
    if (reader == NULL)
        return;
    rodti_cell_cache_close(&reader->cells);
    free(reader);
}

/* The code that the plan has for a chamber, or a new one: an evicted text takes no second code. */
static rodt_status code_of(rodt_column_plan *plan, const rodt_chamber *chamber, uint32_t *code, rodt_error *error)
{
    for (uint32_t i = plan->codes; i-- > RODT_COLUMN_CHAMBER_UNREADABLE + 1;) {
        if (memcmp(&plan->chambers[i], chamber, sizeof *chamber) == 0) {
            *code = i;
            return RODT_OK;
        }
    }
    return rodt_column_plan_add(plan, chamber, code, error);
}

static rodt_status read_chamber(rodt_chamber_reader *reader, rodt_text_span cell, uint32_t *code, rodt_error *error)
{
    rodt_chamber chamber;
    rodt_status status = rodt_chamber_parse_n(cell.text, cell.size, &chamber, NULL);
    if (status == RODT_OK) {
        status = code_of(reader->plan, &chamber, code, error);
    } else {
        *code = status == RODT_E_EMPTY ? RODT_COLUMN_CHAMBER_MISSING : RODT_COLUMN_CHAMBER_UNREADABLE;
        status = RODT_OK;
    }
    if (status == RODT_OK)
        rodti_cell_cache_keep(&reader->cells, cell.text, cell.size, 0, (cell_meaning){.value = *code});
    return status;
}

static rodt_status find_code(rodt_chamber_reader *reader, rodt_text_span cell, uint32_t *code, rodt_error *error)
{
    if (cell.text == NULL) {
        *code = RODT_COLUMN_CHAMBER_MISSING;
        return RODT_OK;
    }
    const cell_meaning *known = rodti_cell_cache_probe(&reader->cells, cell.text, cell.size, 0);
    if (known == NULL)
        return read_chamber(reader, cell, code, error);
    *code = known->value;
    return RODT_OK;
}

/* The error of rodt_column_plan_add, at its row. */
static rodt_status fail_at(size_t row, rodt_status status, rodt_error *error)
{
    if (error != NULL)
        snprintf(error->field, sizeof error->field, "chamber");
    return rodti_row_status(error, row, status);
}

rodt_status rodt_chamber_reader_read(rodt_chamber_reader *reader, const rodt_text_cells *cells, size_t rows,
                                     uint8_t *codes, rodt_error *error)
{
    if (reader == NULL || cells == NULL || codes == NULL)
        return rodti_field_error(error, "", "a reader, a column and room for the codes are needed");
    if (cells->layout == RODT_TEXT_LAYOUT_ABSENT)
        return rodti_field_error(error, "chamber", "this column is needed");
    rodt_status status = rodti_text_cells_check(cells, "chamber", error);
    if (status != RODT_OK)
        return status;
    for (size_t i = 0; i < rows; i++) {
        uint32_t code;
        status = find_code(reader, text_cells_at(cells, i), &code, error);
        if (status != RODT_OK)
            return fail_at(i, status, error);
        codes[i] = (uint8_t)code;
    }
    return RODT_OK;
}
