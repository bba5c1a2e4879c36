/* SPDX-License-Identifier: Apache-2.0 */
/* Columns: what the caller gave is checked, then judged in one pass if it is plain, and block by block if cells can
 * be missing, have 64 bits, or a pressure or a day of their own. */
#include "column.h"

#include <string.h>

/* Rows that are looked at together: what is worked out of them stays in the nearest cache. */
#define BLOCK 256

typedef struct block {
    int32_t released[BLOCK];
    int32_t applied[BLOCK];
    int32_t kind[BLOCK];
    int32_t entry[BLOCK];
    int32_t word[BLOCK];
    uint8_t row[BLOCK]; /* 1 = the row is there */
    uint8_t valid[BLOCK];
} block;

/* --- Arguments --------------------------------------------------------------------------------------- */

typedef struct span {
    const void *start;
    size_t width; /* bytes of one cell */
} span;

static bool overlap(span a, span b, size_t rows)
{
    uintptr_t first = (uintptr_t)a.start;
    uintptr_t second = (uintptr_t)b.start;
    if (a.start == NULL || b.start == NULL)
        return false;
    return first < second + b.width * rows && second < first + a.width * rows;
}

/* Columns of answers may meet nothing; columns that are only read may meet each other. */
static bool are_apart(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows, const rodt_column_out *out)
{
    const span all[] = {{out->stroke, 4},    {out->verdict, 1},     {out->reasons, 4},    {out->flags, 1},
                        {in->released, 4},   {in->applied, 4},      {in->released64, 8},  {in->applied64, 8},
                        {in->chamber, 1},    {in->pressure, 4},     {in->day, 4}};
    for (size_t i = 0; i < 4; i++) {
        uintptr_t start = (uintptr_t)all[i].start;
        uintptr_t of_plan = (uintptr_t)plan;
        if (start < of_plan + sizeof *plan && of_plan < start + all[i].width * rows)
            return false;
        for (size_t k = i + 1; k < COUNT_OF(all); k++) {
            if (overlap(all[i], all[k], rows))
                return false;
        }
    }
    return true;
}

static bool is_sound(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows, const rodt_column_out *out)
{
    if (plan == NULL || in == NULL || out == NULL || plan->codes < 2)
        return false;
    if ((in->released != NULL) == (in->released64 != NULL) || (in->applied != NULL) == (in->applied64 != NULL))
        return false;
    if (in->chamber == NULL || out->stroke == NULL || out->verdict == NULL || out->reasons == NULL)
        return false;
    return rows <= SIZE_MAX / 16 && are_apart(plan, in, rows, out);
}

/* --- Cells ------------------------------------------------------------------------------------------- */

static void read_bits(rodt_column_bits bits, size_t row, size_t count, uint8_t *out)
{
    if (bits.bits == NULL) {
        memset(out, 1, count);
        return;
    }
    size_t first = bits.from + row;
    for (size_t i = 0; i < count; i++)
        out[i] = bits.bits[(first + i) / 8] >> ((first + i) % 8) & 1;
}

/* Adds `weight` times the kind of each cell to the kind of its row. */
static void take32(const int32_t *cells, size_t count, int32_t weight, block *rows, int32_t *out)
{
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t valid = -(int32_t)(rows->valid[i] & rows->row[i]);
        int32_t given = valid & column_mask(cells[i] >= 0);
        out[i] = given & cells[i];
        rows->kind[i] += ~given & ((weight * CELL_MISSING) + (valid & weight * (CELL_UNREADABLE - CELL_MISSING)));
    }
}

static void take64(const int64_t *cells, size_t count, int32_t weight, block *rows, int32_t *out)
{
    for (size_t i = 0; i < count; i++) {
        bool valid = rows->valid[i] & rows->row[i];
        bool given = valid & (cells[i] >= 0) & (cells[i] <= INT32_MAX);
        out[i] = given ? (int32_t)cells[i] : 0;
        rows->kind[i] += given ? 0 : weight * (valid ? CELL_UNREADABLE : CELL_MISSING);
    }
}

static void take_readings(const rodt_column_in *in, size_t row, size_t count, block *rows)
{
    memset(rows->kind, 0, count * sizeof rows->kind[0]);
    read_bits(in->released_valid, row, count, rows->valid);
    if (in->released != NULL)
        take32(in->released + row, count, CELL_KINDS, rows, rows->released);
    else
        take64(in->released64 + row, count, CELL_KINDS, rows, rows->released);
    read_bits(in->applied_valid, row, count, rows->valid);
    if (in->applied != NULL)
        take32(in->applied + row, count, 1, rows, rows->applied);
    else
        take64(in->applied64 + row, count, 1, rows, rows->applied);
}

_Static_assert(RODT_COLUMN_CHAMBER_MISSING == 0, "a code that is masked away must be the missing one");

static void take_codes(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count, block *rows)
{
    const uint8_t *codes = in->chamber + row;
    const int32_t known = (int32_t)plan->codes;
    const int32_t eras = (int32_t)plan->eras;
    const int32_t era = (int32_t)COLUMN_ERA_OF_PLAN(plan);
    read_bits(in->chamber_valid, row, count, rows->valid);
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t code = codes[i] < known ? codes[i] : RODT_COLUMN_CHAMBER_UNREADABLE;
        int32_t given = -(int32_t)(rows->valid[i] & rows->row[i]);
        rows->entry[i] = (code & given) * eras + era;
    }
}

/* The era of a day is the number of cuts that have passed; it is counted where the words will stand. */
static void take_days(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count, block *rows)
{
    const int32_t of_plan = (int32_t)COLUMN_ERA_OF_PLAN(plan);
    const int32_t unreadable = (int32_t)COLUMN_ERA_UNREADABLE(plan);
    if (in->day == NULL)
        return;
    const int32_t *days = in->day + row;
    read_bits(in->day_valid, row, count, rows->valid);
    memset(rows->word, 0, count * sizeof rows->word[0]);
    for (uint32_t k = 0; k < plan->cuts; k++) {
        const int32_t cut = plan->cut[k];
        ROWS_ARE_INDEPENDENT
        for (size_t i = 0; i < count; i++)
            rows->word[i] += days[i] >= cut;
    }
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t given = -(int32_t)(rows->valid[i] & rows->row[i]);
        int32_t is_day = column_mask(days[i] >= COLUMN_FIRST_DAY) & column_mask(days[i] <= COLUMN_LAST_DAY);
        int32_t era = (is_day & rows->word[i]) | (~is_day & unreadable);
        rows->entry[i] += given & (era - of_plan);
    }
}

static void take_pressures(const rodt_column_plan *plan, const rodt_column_in *in, size_t row, size_t count,
                           block *rows)
{
    for (size_t i = 0; i < count; i++)
        rows->word[i] = rows->entry[i] * REGIONS_OF_ENTRY;
    if (in->pressure == NULL)
        return;
    const int32_t *pressures = in->pressure + row;
    read_bits(in->pressure_valid, row, count, rows->valid);
    const int32_t from = plan->pressure_from;
    const int32_t until = plan->pressure_until;
    ROWS_ARE_INDEPENDENT
    for (size_t i = 0; i < count; i++) {
        int32_t slot = PRESSURE_LOW + (pressures[i] >= from) + (pressures[i] > until);
        int32_t given = -(int32_t)(rows->valid[i] & rows->row[i]);
        int32_t none = column_mask(pressures[i] < 0);
        slot = (none & PRESSURE_UNREADABLE) | (~none & slot);
        rows->word[i] += (given & slot) * RODT_COLUMN_REGIONS; /* PRESSURE_OF_PLAN is 0 */
    }
}

static void judge_blocks(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                         const rodt_column_out *out)
{
    block taken;
    for (size_t row = 0; row < rows; row += BLOCK) {
        size_t count = rows - row < BLOCK ? rows - row : BLOCK;
        read_bits(in->row_valid, row, count, taken.row);
        take_readings(in, row, count, &taken);
        take_codes(plan, in, row, count, &taken);
        take_days(plan, in, row, count, &taken);
        take_pressures(plan, in, row, count, &taken);
        column_rows cells = {taken.released, taken.applied, taken.kind, taken.entry, taken.word};
        column_answers answers = {out->stroke + row, out->verdict + row, out->reasons + row};
        column_judge_rows(plan, &cells, count, &answers);
    }
}

/* --- The whole --------------------------------------------------------------------------------------- */

static bool is_plain(const rodt_column_in *in)
{
    return in->released != NULL && in->applied != NULL && in->pressure == NULL && in->day == NULL &&
           in->released_valid.bits == NULL && in->applied_valid.bits == NULL && in->chamber_valid.bits == NULL &&
           in->row_valid.bits == NULL;
}

#define BIT(reason) (1u << (reason))

static void write_flags(const rodt_column_out *out, size_t rows)
{
    const uint32_t missing = BIT(RODT_REASON_RELEASED_MISSING) | BIT(RODT_REASON_APPLIED_MISSING) |
                             BIT(RODT_REASON_CHAMBER_MISSING);
    const uint32_t invalid = BIT(RODT_REASON_RELEASED_UNREADABLE) | BIT(RODT_REASON_APPLIED_UNREADABLE) |
                             BIT(RODT_REASON_CHAMBER_UNREADABLE) | BIT(RODT_REASON_OTHER_UNREADABLE) |
                             BIT(RODT_REASON_DATE_UNREADABLE);
    for (size_t i = 0; out->flags != NULL && i < rows; i++) {
        int flags = ((out->reasons[i] & missing) != 0 ? RODT_COLUMN_FLAG_MISSING : 0) |
                    ((out->reasons[i] & invalid) != 0 ? RODT_COLUMN_FLAG_INVALID : 0);
        out->flags[i] = (uint8_t)flags;
    }
}

rodt_status rodt_column_judge(const rodt_column_plan *plan, const rodt_column_in *in, size_t rows,
                              const rodt_column_out *out)
{
    if (!is_sound(plan, in, rows, out))
        return RODT_E_ARGUMENT;
    if (is_plain(in)) {
        column_plain cells = {in->released, in->applied, in->chamber};
        column_answers answers = {out->stroke, out->verdict, out->reasons};
        if (plan->changes.hold)
            column_judge_packed(plan, &cells, rows, &answers);
        else
            column_judge_plain(plan, &cells, rows, &answers);
    } else {
        judge_blocks(plan, in, rows, out);
    }
    write_flags(out, rows);
    return RODT_OK;
}
