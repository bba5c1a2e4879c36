/* SPDX-License-Identifier: Apache-2.0 */
/* Many wheel ends at once: columns of whole numbers in, columns of strokes, verdicts and reasons out. */
#ifndef RODTRAVEL_COLUMN_H
#define RODTRAVEL_COLUMN_H

#include <stdbool.h>

#include "arrow.h"
#include "stroke.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * The unit of a column of lengths is 5 nm, 1/5080000 in. It holds exactly what tapes, calipers and gauges show:
 * 1/64 in is 79375 of it, 1/10000 in is 508, 1/1000 mm is 200. A reading is 0 to
 * RODT_LENGTH_MAX_INCHES, as everywhere.
 */
#define RODT_COLUMN_PER_INCH 5080000
#define RODT_COLUMN_PER_64TH 79375
#define RODT_COLUMN_PER_MM 200000

/*
 * Parts are finer: every decimal of up to nine digits, in inches or a metric unit, and every fraction of a tape is a
 * whole number of them. A millimetre is 5000000000 of them, a unit 25000.
 */
#define RODT_COLUMN_PARTS_PER_INCH INT64_C(127000000000)

/* The unit of a column of pressures is 1/1000 psi. */
#define RODT_COLUMN_PER_PSI 1000

/* In a column of strokes: no stroke, because a reading is missing or the two are swapped, or one that is no whole
 * number of what the column counts in. */
#define RODT_COLUMN_NO_STROKE (-1)

/* In a column of limits: no limit, or one that is no whole number of units, such as a part of a marked stroke. */
#define RODT_COLUMN_NO_LIMIT (-1)

/* The codes that every plan has. Others come from rodt_column_plan_add. */
#define RODT_COLUMN_CHAMBER_MISSING 0
#define RODT_COLUMN_CHAMBER_UNREADABLE 1 /* so is every code that the plan did not give */

/* Bits in a column of flags. The reasons say which cell it was. */
typedef enum rodt_column_flag RODT_ENUM_TYPE {
    RODT_COLUMN_FLAG_MISSING = 1, /* a reading or the chamber is missing */
    RODT_COLUMN_FLAG_INVALID = 2  /* a cell holds no reading, pressure, day or code */
} rodt_column_flag;

/* The stable word of a flag, "missing"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_column_flag_name(rodt_column_flag flag);

/* Finds a flag by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_flag_find(const char *word, RODT_ENUM32(rodt_column_flag) *out);

/*
 * All that the columns are judged by, worked out beforehand. Any number of threads may judge with one plan at once;
 * while one adds a chamber, no other may use the plan.
 */
typedef struct rodt_column_plan rodt_column_plan;

/*
 * Makes a plan. It allocates memory; free it with rodt_column_plan_free.
 *
 * rules   the plan is a user of it (rodt_rules_ref)
 * common  what all rows share: the unit, the day and the pressure of a row that has none of its own, the conditions
 *         of the test. Its chamber, readings and division are not used. NULL = nothing is recorded
 * plan    gets the plan, which knows the codes of a missing and of an unreadable chamber; untouched on failure
 * error   NULL, or gets a sentence, and as its field the member of common that is wrong, as by rodt_reading_check
 *
 * RODT_OK               *plan can judge
 * RODT_E_UNKNOWN_RULES  rules is NULL
 * RODT_E_ARGUMENT       plan is NULL, or rodt_reading_check refuses what is used of common
 * RODT_E_MEMORY         no memory
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_plan_new(const rodt_rules *rules, const rodt_reading *common,
                                                          rodt_column_plan **plan, rodt_error *error);

/* Makes a plan that has the same chambers under the same codes, such as one to add to while others judge. Statuses of
 * rodt_column_plan_new; *copy is untouched on failure. */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_plan_copy(const rodt_column_plan *plan, rodt_column_plan **copy);

/* NULL is allowed. */
RODT_API void rodt_column_plan_free(rodt_column_plan *plan);

/*
 * Adds a chamber and gives its code. The same chamber added twice has two codes. It allocates memory.
 *
 * code   gets the number of the chamber in columns that are judged with the plan; untouched on failure
 * error  NULL, or gets a sentence, and as its field the member of the chamber that is wrong
 *
 * RODT_OK          the plan has one chamber more; other codes stay as they are
 * RODT_E_ARGUMENT  a pointer is NULL, or rodt_chamber_check refuses the chamber
 * RODT_E_SPACE     the plan has 254 chambers: a code is one byte, and two codes every plan has
 * RODT_E_MEMORY    no memory
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_plan_add(rodt_column_plan *plan, const rodt_chamber *chamber,
                                                          uint32_t *code, rodt_error *error);

/* Which cells of a column are there: a bitmap as Arrow has it. Bit i % 8 of byte i / 8 is 0 where the cell is missing.
 * bits NULL = no cell is missing. */
typedef struct rodt_column_bits {
    const uint8_t *bits; /* the bitmap; NULL = no cell is missing */
    size_t from;         /* the bit of the first row */
} rodt_column_bits;

/*
 * Columns to be judged, each with as many rows as the call says; they may overlap each other. All zero bytes mean "no
 * such column". A column's *_valid says which of its cells are there.
 */
typedef struct rodt_column_in {
    const int32_t *released;         /* chamber face to clevis pin, brakes released; this or released64 */
    const int32_t *applied;          /* the same, full application held; this or applied64 */
    const int64_t *released64;       /* the same in 64 bits */
    const int64_t *applied64;        /* applied in 64 bits */
    const uint8_t *chamber;          /* codes of the plan */
    const int32_t *psi;              /* in RODT_COLUMN_PER_PSI; NULL = every row has the pressure of the plan */
    const int32_t *date;             /* days since 1970-01-01; NULL = every row has the day of the plan */
    rodt_column_bits released_valid; /* missing = no reading */
    rodt_column_bits applied_valid;  /* missing = no reading */
    rodt_column_bits chamber_valid;  /* missing = no chamber */
    rodt_column_bits psi_valid;      /* missing = the pressure of the plan */
    rodt_column_bits date_valid;     /* missing = the day of the plan */
    rodt_column_bits row_valid;      /* missing = no reading, no chamber, and the rest from the plan */
    uint64_t reserved[4];            /* zero */
} rodt_column_in;

/* Where the answers go: room for as many rows as the call says. None may overlap another column, in or out. */
typedef struct rodt_column_out {
    int32_t *stroke;      /* applied - released, in units of RODT_COLUMN_PER_INCH, or RODT_COLUMN_NO_STROKE */
    uint8_t *verdict;     /* rodt_verdict */
    uint64_t *reasons;    /* sets of RODT_REASON_BIT */
    uint8_t *flags;       /* RODT_COLUMN_FLAG_*; NULL = not wanted */
    int32_t *limit;       /* the limit that judged, in the same units, or RODT_COLUMN_NO_LIMIT; NULL = not wanted */
    int64_t *stroke_parts; /* the stroke in RODT_COLUMN_PARTS_PER_INCH, or RODT_COLUMN_NO_STROKE; NULL = not wanted */
    uint64_t reserved[2]; /* zero */
} rodt_column_out;

/*
 * Judges every row as rodt_reading_judge would, to the last reason. No cell makes it fail: a missing one is missing to
 * rodt_reading_judge too; one that holds no reading (below zero, or above 24 in), no pressure (below zero, or above
 * 300 psi), no day of 1900 to 2199 or no code is unreadable, as a text would be to rodt_form_judge_row.
 *
 * error  NULL, or gets a sentence, and as its field the column by the name of its member, without its bits
 *        ("released"), or "reserved"
 *
 * RODT_OK          every row is answered
 * RODT_E_ARGUMENT  plan, in or out is NULL; one of released, applied, chamber, stroke, verdict and reasons is missing,
 *                  or a reading is given twice; columns overlap; a reserve is not zero; or so many rows fit in no
 *                  memory. Nothing was written
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_plan_judge(const rodt_column_plan *plan, const rodt_column_in *in,
                                                            size_t rows, const rodt_column_out *out, rodt_error *error);

/*
 * Finds the columns of an Arrow record batch (a struct, format "+s") without a copy: "released" and "applied" (int32
 * or int64), "chamber" (uint8), and as far as they are there "pressure" (int32) and "day" (date32). Other children
 * are left alone. Nothing is released: the batch stays the caller's, and must outlive *in.
 *
 * error  NULL, or gets a sentence, and as its field the column by its name; none where the batch itself is wrong
 *
 * RODT_OK          *in and *rows are for rodt_column_plan_judge
 * RODT_E_ARGUMENT  a pointer is NULL, the batch was released, is no struct, lacks a column or has one twice, or a
 *                  column has another type, a dictionary, too few rows, missing cells without a bitmap of them, or
 *                  a length, an offset or a number of buffers that cannot be
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_in_from_arrow(const struct ArrowSchema *schema,
                                                               const struct ArrowArray *array, rodt_column_in *in,
                                                               size_t *rows, rodt_error *error);

/* rodt_column_in_from_arrow and rodt_column_plan_judge in one. Each column of out must have room for array->length
 * rows; they have the layout of Arrow buffers without missing cells. */
RODT_API RODT_MUST_CHECK rodt_status rodt_column_plan_judge_arrow(const rodt_column_plan *plan,
                                                                  const struct ArrowSchema *schema,
                                                                  const struct ArrowArray *array,
                                                                  const rodt_column_out *out, rodt_error *error);

#ifdef __cplusplus
}
#endif
#endif
