/* SPDX-License-Identifier: Apache-2.0 */
/* Many wheel ends at once, as text: columns of cells as people wrote them, columns of strokes, verdicts and reasons. */
#ifndef RODTRAVEL_COLUMN_TEXT_H
#define RODTRAVEL_COLUMN_TEXT_H

#include "column.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How the cells of a column of texts lie in memory. Those of Arrow are the formats u, U and vu. */
typedef enum rodt_text_layout RODT_ENUM_TYPE {
    RODT_TEXT_LAYOUT_ABSENT = 0,    /* there is no such column */
    RODT_TEXT_LAYOUT_OFFSETS32 = 1, /* cells: int32_t, where each begins in `bytes`, and one more */
    RODT_TEXT_LAYOUT_OFFSETS64 = 2, /* cells: int64_t, likewise */
    RODT_TEXT_LAYOUT_VIEWS = 3,     /* cells: 16 bytes each, long texts lie in `buffers` */
    RODT_TEXT_LAYOUT_SPANS = 4      /* cells: rodt_text_span */
} rodt_text_layout;
#define RODT_TEXT_LAYOUT_END 5 /* one more than the last; grows in later versions */

/* The stable word of a layout, "views"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_text_layout_name(rodt_text_layout layout);

/* Finds a layout by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_text_layout_find(const char *word, RODT_ENUM32(rodt_text_layout) *out);

/* One text, not closed by a zero byte; NULL = missing. */
typedef struct rodt_text_span {
    const char *text; /* UTF-8; NULL = missing */
    size_t size;      /* bytes */
} rodt_text_span;

/* A column of texts. It points into memory of the caller. All zero bytes mean "no such column". */
typedef struct rodt_text_cells {
    RODT_ENUM32(rodt_text_layout) layout; /* how `cells` is to be read */
    uint32_t index_width;        /* bytes of one number of `index`: 1, 2, 4 or 8 */
    const void *cells;           /* see rodt_text_layout */
    const char *bytes;           /* the texts of offsets */
    const void *const *buffers;  /* the long texts of views */
    size_t from;                 /* the cell of the first row, or of number 0 of a dictionary */
    size_t count;                /* cells of a dictionary */
    rodt_column_bits valid;      /* of the cells */
    const void *index;           /* not NULL = the cells are a dictionary, and this is the number of each row */
    size_t index_from;           /* the number of the first row */
    rodt_column_bits index_valid; /* of the rows */
    uint64_t reserved[2];        /* zero */
} rodt_text_cells;

/* The text of a row; text NULL = missing, or an index that the dictionary does not have. */
RODT_API rodt_text_span rodt_text_cells_at(const rodt_text_cells *cells, size_t row);

/* Columns by rodt_field. Chamber, released and applied are needed; what is no field has no column. */
typedef struct rodt_text_columns {
    rodt_text_cells field[RODT_FIELD_ROOM]; /* by rodt_field */
} rodt_text_columns;

/*
 * What columns of texts are judged by, with a cache of the cells and of the kinds of rows that were read so far: a yard
 * writes few different things. The cache is bounded, some hundred kB, and changes no answer. A plan may be used for
 * any number of calls, by one thread at a time; make one for each thread.
 */
typedef struct rodt_text_plan rodt_text_plan;

/*
 * Makes a plan. It allocates memory; free it with rodt_text_plan_free.
 *
 * rules  the plan is a user of it (rodt_rules_ref)
 * form   what all rows share, and how they are written: its texts hold where a row has no cell of its own or a blank
 *        one; they must live as long as the plan. NULL = nothing, inches, a decimal point
 * plan   gets the plan; untouched on failure
 * error  NULL, or gets what is wrong with a text of the form
 *
 * RODT_OK          *plan can judge
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT  plan is NULL, or the form holds an unknown enumerator
 * RODT_E_MEMORY    no memory
 * The statuses of rodt_form_judge for a text of the form that cannot be read.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_text_plan_new(const rodt_rules *rules, const rodt_form *form,
                                                        rodt_text_plan **plan, rodt_error *error);

/* NULL is allowed. */
RODT_API void rodt_text_plan_free(rodt_text_plan *plan);

/*
 * Judges every row as rodt_form_judge_row would, to the last reason; cells with blanks only are missing. A cell of
 * more than 255 bytes, or with a zero byte inside, is unreadable. A stroke that is no whole number of units, or does
 * not fit, is RODT_COLUMN_NO_STROKE in its column; verdict and reasons are exact all the same.
 *
 * error  NULL, or gets a sentence, and as its field the column: its rodt_field_name, the name of a member of out,
 *        "reserved", or "field" for a column of no field
 *
 * RODT_OK          every row is answered
 * RODT_E_ARGUMENT  a pointer is NULL, a needed column or answer is missing, columns of answers overlap, a column has a
 *                  layout or a width of indices that is none, a field that this version does not know has a column,
 *                  or a reserve is not zero; nothing was written
 * RODT_E_RANGE     as rodt_form_judge_row for the row that is the line of the error, from 1; rows before it are judged
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_text_plan_judge(rodt_text_plan *plan, const rodt_text_columns *in,
                                                          size_t rows, const rodt_column_out *out, rodt_error *error);

/*
 * Reads columns of chambers into codes of a column plan, for rodt_column_plan_judge, with a cache of the texts that
 * were read so far. It belongs to one plan, which must outlive it. It adds to the plan: no other thread may use one of
 * the two meanwhile.
 */
typedef struct rodt_chamber_reader rodt_chamber_reader;

/* Makes a reader; it allocates memory. RODT_OK; RODT_E_ARGUMENT: a pointer is NULL; RODT_E_MEMORY. *reader is untouched
 * on failure. */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_reader_new(rodt_column_plan *plan, rodt_chamber_reader **reader);

/* NULL is allowed. */
RODT_API void rodt_chamber_reader_free(rodt_chamber_reader *reader);

/*
 * Gives every row its code: a chamber that is new is added to the plan, a cell with nothing in it is the missing
 * chamber, one that is no chamber the unreadable one.
 *
 * codes  gets one code a row
 * error  NULL, or gets a sentence, the field "chamber" or "reserved", and as its line the number of the row, from 1,
 *        whose chamber could not be added
 *
 * RODT_OK          every row has its code
 * RODT_E_ARGUMENT  a pointer is NULL, there is no column, it has a layout or a width of indices that is none, or its
 *                  reserve is not zero
 * RODT_E_SPACE     more chambers than the plan has room for; codes before that row are written
 * RODT_E_MEMORY    as rodt_column_plan_add; the same
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_reader_read(rodt_chamber_reader *reader, const rodt_text_cells *cells,
                                                              size_t rows, uint8_t *codes, rodt_error *error);

/*
 * Finds the cells of an Arrow array of texts (u, U, vu, or a dictionary of them) without a copy. Nothing is released:
 * the array stays the caller's, and must outlive *out.
 *
 * error  NULL, or gets a sentence
 *
 * RODT_OK          *out is for rodt_text_plan_judge, with array->length rows
 * RODT_E_ARGUMENT  a pointer is NULL, the array was released, it has another type, or lengths, offsets, buffers or a
 *                  count of missing cells that cannot be
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_text_cells_from_arrow(const struct ArrowSchema *schema,
                                                                const struct ArrowArray *array, rodt_text_cells *out,
                                                                rodt_error *error);

#ifdef __cplusplus
}
#endif
#endif
