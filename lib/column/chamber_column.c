/* SPDX-License-Identifier: Apache-2.0 */
/* Chamber marks of a column to codes of a plan, each mark read once. */
#include "column/text_cells.h"

#include <string.h>

static uint32_t hash(rodt_text_span cell)
{
    uint32_t sum = (uint32_t)cell.size;
    for (size_t i = 0; i < cell.size; i++)
        sum = (sum ^ (unsigned char)cell.text[i]) * 0x01000193u;
    return sum ^ sum >> 15;
}

static rodt_status read_mark(rodt_column_plan *plan, rodt_text_span cell, uint8_t *code)
{
    rodt_chamber chamber;
    rodt_status status = rodt_chamber_read(cell.text, cell.size, &chamber, NULL);
    if (status == RODT_OK)
        return rodt_column_plan_add(plan, &chamber, code);
    *code = status == RODT_E_EMPTY ? RODT_COLUMN_CHAMBER_MISSING : RODT_COLUMN_CHAMBER_UNREADABLE;
    return RODT_OK;
}

/* A mark longer than any chamber is written is unreadable without being looked up. */
static rodt_status find_code(rodt_column_marks *marks, rodt_column_plan *plan, rodt_text_span cell, uint8_t *code)
{
    *code = cell.text == NULL ? RODT_COLUMN_CHAMBER_MISSING : RODT_COLUMN_CHAMBER_UNREADABLE;
    if (cell.text == NULL || cell.size > sizeof marks->mark[0].text)
        return RODT_OK;
    uint32_t at = hash(cell) % RODT_TEXT_CHAMBERS;
    for (; marks->mark[at].is_there; at = (at + 1) % RODT_TEXT_CHAMBERS) {
        const rodt_column_mark *mark = &marks->mark[at];
        if (mark->size == cell.size && (cell.size == 0 || memcmp(mark->text, cell.text, cell.size) == 0)) {
            *code = mark->code;
            return RODT_OK;
        }
    }
    rodt_status status = read_mark(plan, cell, code);
    if (status != RODT_OK || marks->count >= RODT_TEXT_CHAMBERS - 1)
        return status != RODT_OK ? status : RODT_E_SPACE;
    rodt_column_mark *mark = &marks->mark[at];
    if (cell.size > 0)
        memcpy(mark->text, cell.text, cell.size);
    mark->size = (uint8_t)cell.size;
    mark->code = *code;
    mark->is_there = true;
    marks->count++;
    return RODT_OK;
}

rodt_status rodt_column_read_marks(rodt_column_marks *marks, rodt_column_plan *plan, const rodt_text_cells *cells,
                                   size_t rows, uint8_t *codes)
{
    if (marks == NULL || plan == NULL || cells == NULL || codes == NULL || plan->codes < 2 ||
        cells->layout == RODT_TEXT_ABSENT)
        return RODT_E_ARGUMENT;
    for (size_t i = 0; i < rows; i++) {
        rodt_status status = find_code(marks, plan, text_cells_at(cells, i), &codes[i]);
        if (status != RODT_OK)
            return status;
    }
    return RODT_OK;
}
