/* SPDX-License-Identifier: Apache-2.0 */
/* Many wheel ends at once, as text: columns of cells as people wrote them, columns of strokes, verdicts and reasons. */
#ifndef RODTRAVEL_COLUMN_TEXT_H
#define RODTRAVEL_COLUMN_TEXT_H

#include "column.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How the cells of a column of texts lie in memory. Those of Arrow are the formats u, U and vu. */
typedef enum rodt_text_layout {
    RODT_TEXT_ABSENT = 0,    /* there is no such column */
    RODT_TEXT_OFFSETS32 = 1, /* cells: int32_t, where each begins in `bytes`, and one more */
    RODT_TEXT_OFFSETS64 = 2, /* cells: int64_t, likewise */
    RODT_TEXT_VIEWS = 3,     /* cells: 16 bytes each, long texts lie in `buffers` */
    RODT_TEXT_SPANS = 4      /* cells: rodt_text_span */
} rodt_text_layout;

/* One text, not closed by a zero byte; NULL = missing. */
typedef struct rodt_text_span {
    const char *text;
    size_t size;
} rodt_text_span;

/* A column of texts. It points into memory of the caller. All zero bytes mean "no such column". */
typedef struct rodt_text_cells {
    rodt_text_layout layout;
    uint32_t index_width;        /* bytes of one number of `index`: 1, 2, 4 or 8 */
    const void *cells;
    const char *bytes;
    const void *const *buffers;
    size_t from;                 /* the cell of the first row, or of number 0 of a dictionary */
    size_t count;                /* cells of a dictionary */
    rodt_column_bits valid;      /* of the cells */
    const void *index;           /* not NULL = the cells are a dictionary, and this is the number of each row */
    size_t index_from;           /* the number of the first row */
    rodt_column_bits index_valid;
    uint64_t reserved[2];        /* zero */
} rodt_text_cells;

/* Columns named as in rodt_reading_text. Chamber, released and applied are needed. */
typedef struct rodt_text_columns {
    rodt_text_cells chamber;
    rodt_text_cells released;
    rodt_text_cells applied;
    rodt_text_cells stroke_class;
    rodt_text_cells rated_stroke;
    rodt_text_cells marked_limit;
    rodt_text_cells psi;
    rodt_text_cells psi_after;
    rodt_text_cells division;
    rodt_text_cells date;
    rodt_text_cells unit;
    rodt_text_cells engine;
    rodt_text_cells spring_brake;
    rodt_text_cells drum;
} rodt_text_columns;

/* A cell that was read before. */
typedef struct rodt_text_seen {
    char text[15];
    uint8_t size;
    int32_t value;
    uint8_t kind;
    uint8_t reserved[3];
} rodt_text_seen;

/* A chamber that was read before, with its class and marks. */
typedef struct rodt_text_chamber {
    char text[62];
    uint8_t size;
    uint8_t code;
} rodt_text_chamber;

#define RODT_TEXT_SEEN 1024
#define RODT_TEXT_CHAMBERS 512

/*
 * What is judged by, and what was read so far. Make it with rodt_text_plan_start; one for each thread, because judging
 * adds to it. It needs no freeing and takes about 350 kB: allocate it. Its members are the library's own and may
 * change.
 */
typedef struct rodt_text_plan {
    rodt_reading_text form;
    bool is_slow;
    uint32_t chambers;
    rodt_text_seen readings[RODT_TEXT_SEEN];
    rodt_text_seen pressures[RODT_TEXT_SEEN];
    rodt_text_seen days[RODT_TEXT_SEEN];
    rodt_text_chamber chamber[RODT_TEXT_CHAMBERS];
    rodt_column_plan plan;
} rodt_text_plan;

/*
 * Starts a plan.
 *
 * form   what all rows share, and how they are written: its texts hold where a row has no cell of its own or a blank
 *        one; they must live as long as the plan. NULL = nothing, inches, a decimal point
 * error  NULL, or gets what is wrong with the form's pressure
 *
 * RODT_OK          *plan can judge
 * RODT_E_ARGUMENT  rules or plan is NULL, or the form holds an unknown enumerator
 * RODT_E_SPACE     as rodt_column_plan_start; and the statuses of rodt_pressure_read for the form's pressure
 */
RODT_API rodt_status rodt_text_plan_start(const rodt_rules *rules, const rodt_reading_text *form,
                                          rodt_text_plan *plan, rodt_error *error);

/*
 * Judges every row as rodt_judge_row would, to the last reason; cells with blanks only are missing. A cell of more than
 * 255 bytes, or with a zero byte inside, is unreadable. A stroke that is no whole number of units, or does not fit,
 * is RODT_COLUMN_NO_STROKE in its column; verdict and reasons are exact all the same.
 *
 * RODT_OK          every row is answered
 * RODT_E_ARGUMENT  a pointer is NULL, the plan was not started, a needed column or answer is missing; nothing was
 *                  written
 */
RODT_API rodt_status rodt_column_judge_text(rodt_text_plan *plan, const rodt_text_columns *in, size_t rows,
                                            const rodt_column_out *out);

/* A chamber mark that was read before. */
typedef struct rodt_column_mark {
    char text[28];
    uint8_t size;
    uint8_t code;
    bool is_there;
    uint8_t reserved;
} rodt_column_mark;

/* The marks that were read for a plan so far. All zero bytes mean "none"; its members are the library's own. */
typedef struct rodt_column_marks {
    uint32_t count;
    rodt_column_mark mark[RODT_TEXT_CHAMBERS];
} rodt_column_marks;

/*
 * Reads a column of chamber marks into codes of a plan, for rodt_column_judge: a mark that is new is added to the plan,
 * a cell with nothing in it is the missing chamber, one that is no mark or longer than 28 bytes the unreadable one.
 *
 * marks  goes with the plan: start both together, and give the same to every call
 * codes  gets one code a row
 *
 * RODT_OK          every row has its code
 * RODT_E_ARGUMENT  a pointer is NULL, there is no column, or the plan was not started
 * RODT_E_SPACE     more marks, or more chambers, than there is room for; codes before that row are written
 * RODT_E_RANGE     as rodt_column_plan_add
 */
RODT_API rodt_status rodt_column_read_marks(rodt_column_marks *marks, rodt_column_plan *plan,
                                            const rodt_text_cells *cells, size_t rows, uint8_t *codes);

/*
 * Finds the cells of an Arrow array of texts (u, U, vu, or a dictionary of them) without a copy. Nothing is released:
 * the array stays the caller's, and must outlive *out.
 *
 * RODT_OK          *out is for rodt_column_judge_text, with array->length rows
 * RODT_E_ARGUMENT  a pointer is NULL, the array was released, or it has another type
 */
RODT_API rodt_status rodt_text_cells_from_arrow(const struct ArrowSchema *schema, const struct ArrowArray *array,
                                                rodt_text_cells *out);

#ifdef __cplusplus
}
#endif
#endif
