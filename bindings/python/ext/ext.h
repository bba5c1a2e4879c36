/* SPDX-License-Identifier: Apache-2.0 */
/* What the C files of the Python module share. py_to_X reads a Python object into X and is false after it has raised;
 * py_from_X makes a new Python object and is NULL after it has raised. module.h has what Python calls. */
#ifndef RODTRAVEL_PYTHON_EXT_H
#define RODTRAVEL_PYTHON_EXT_H

#include <Python.h>

#include <rodtravel/rodtravel.h>
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "module.h"

/* --- value.c: errors, texts, exact numbers, days ------------------------------------------------------ */

/* Headers of Python 3.12 and later return None without a reference (Py_RETURN_NONE), as it needs none there. One module
 * serves 3.11, too, where it does. */
static inline PyObject *py_none(void)
{
    Py_INCREF(Py_None);
    return Py_None;
}

/* Looks up the classes of the standard library; once, when the module is loaded. */
bool py_find_classes(void);

/* Where a call of this thread leaves its error: empty until then. */
rodt_error *py_call_error(void);

/* rodtravel.Error, made but not raised. */
PyObject *py_from_error(const rodt_error *error);

/* Raises the error of py_call_error if it has this status, otherwise the sentence of the status. */
void py_raise_status(rodt_status status);

/* Raise an Error, false; the second gives an error of a reader the name that the caller knows. */
bool py_raise(rodt_status status, const char *field, const char *sentence);
bool py_raise_as(rodt_error *error, const char *field);

/* Raises a TypeError, false: what was expected, and the type of what was given. */
bool py_raise_type(PyObject *object, const char *field, const char *expected);
#define PLAIN_NUMBER "a plain number: an int, a fractions.Fraction or a decimal.Decimal"

/* UTF-8 that lives as long as the object. A zero byte, or half of a surrogate pair, is refused. */
const char *py_to_text(PyObject *object, const char *field);

/* None for NULL and "". */
PyObject *py_from_text(const char *text);

/* The JSON that a function of the library writes of a value that it knows, as a new str called `made`. */
#define PY_JSON(made, function, ...)                                                                                   \
    size_t made##_needed = 1;                                                                                          \
    (void)function(__VA_ARGS__, NULL, 0, &made##_needed);                                                              \
    char *made##_text = calloc(made##_needed, 1);                                                                      \
    if (made##_text != NULL)                                                                                           \
        (void)function(__VA_ARGS__, made##_text, made##_needed, NULL);                                                 \
    PyObject *made = made##_text != NULL ? PyUnicode_FromString(made##_text) : PyErr_NoMemory();                       \
    free(made##_text)

/* A tuple of what `make` gives for 0 to count - 1. */
PyObject *py_from_each(size_t count, PyObject *(*make)(const void *all, size_t i), const void *all);

/* Puts an item into a new tuple; *tuple is freed and NULL where the item is. */
void py_tuple_put(PyObject **tuple, size_t i, PyObject *item);

/* An int, a Fraction or another rational number, or a Decimal; exactly. */
bool py_to_int64(PyObject *object, const char *field, int64_t *out);
bool py_to_number(PyObject *object, const char *field, int64_t *num, int64_t *den);

/* None is "not given". A length and a pressure may be text; a ratio may not. */
bool py_to_length(PyObject *object, const char *field, rodt_length *out);
bool py_to_pressure(PyObject *object, const char *field, rodt_pressure *out);
bool py_to_ratio(PyObject *object, const char *field, rodt_ratio *out);
bool py_to_date(PyObject *object, const char *field, rodt_date *out);

/* A Fraction of numbers in lowest terms; None for "not given". */
PyObject *py_from_parts(int64_t num, int64_t den);
#define FROM_EXACT(value) py_from_parts((value).num, (value).den)
PyObject *py_from_date(rodt_date date);

/* --- record.c: records as tuples ---------------------------------------------------------------------- */

#define RULES_CAPSULE "rodtravel.rules"

PyObject *py_from_rules(const rodt_rules *rules);

/* A tuple of the members that the library describes, in their order and without reserves, memory and rule sets; then
 * the sentences of sentence.c. Enumerators and sets are numbers, records are tuples; what is not given is None, NULL
 * too. rows_of: NULL, or rows of limits are given as their numbers in that rule set or its law, -1 = none. */
PyObject *py_from_record(const rodt_record *record, const void *value, const rodt_rules *rows_of);
#define FROM_RECORD(type, value) py_from_record(rodt_record_find(#type), value, NULL)

/* One item of that tuple. */
PyObject *py_from_member(const rodt_record *record, int item, const void *value, const rodt_rules *rows_of);

/* From the same tuple, with or without sentences; pointers stay NULL. */
bool py_to_record(const rodt_record *record, PyObject *tuple, void *out);
#define TO_RECORD(type, tuple, out) py_to_record(rodt_record_find(#type), tuple, out)

/* A message as a tuple that can be kept: its code and its arguments. None where it was not made. catalogue.c */
PyObject *py_from_message(rodt_status made, const rodt_message *message);

/* The catalogue of a capsule, NULL of None. False: it is neither. catalogue.c */
bool py_to_catalogue(PyObject *object, const rodt_catalogue **out);

/* --- sentence.c --------------------------------------------------------------------------------------- */

size_t py_sentence_count(const rodt_record *record);
PyObject *py_sentence_at(const rodt_record *record, size_t i, const void *value);

/* --- finding.c ---------------------------------------------------------------------------------------- */

#define FINDING_CAPSULE "rodtravel.finding"

/* Adds the functions that SWIG does not wrap; once, when the module is loaded. */
bool py_add_functions(PyObject *module);

/* Owns the finding, which was allocated by malloc, and is a user of its rule set. */
PyObject *py_own_finding(rodt_finding *finding);

/* Where numbers of a reading are written so that they are read like text. */
typedef struct number_texts {
    char text[RODT_READING_FIELDS][RODT_LENGTH_TEXT_SIZE];
} number_texts;

/* From a tuple of the texts of a reading in the order of rodt_field, then unit, decimal comma, order of dates and
 * default day. */
bool py_to_reading_text(PyObject *tuple, number_texts *room, rodt_form *out);

/* --- column.c: columns of the caller, never copied ---------------------------------------------------- */

#define COLUMN_CAPSULE "rodtravel.column"

typedef enum column_kind {
    COLUMN_INT32,
    COLUMN_INT64,
    COLUMN_CODE,
    COLUMN_DAY,
    COLUMN_FLOAT32,
    COLUMN_FLOAT64,
    COLUMN_TEXT
} column_kind;

/* Bytes of a cell of each kind but text. */
extern const size_t py_kind_width[];

/* Rows whose cells are contiguous. */
typedef struct column_chunk {
    size_t rows;
    const void *cells;
    rodt_column_bits valid;
    rodt_text_cells text;
    uint8_t *no_bits; /* of a column of nulls; NULL otherwise */
} column_chunk;

typedef struct held_column {
    column_kind kind;
    size_t rows;
    size_t count; /* chunks */
    column_chunk *chunks;
    bool has_buffer;
    Py_buffer buffer;
    PyObject *texts;
    rodt_text_span *spans;
    struct ArrowSchema schema;
    struct ArrowArray *arrays; /* one a chunk; NULL where the table owns them */
    PyObject *table;           /* the table that the column is part of, if that is held as a whole */
} held_column;

held_column *py_new_column(void);
column_chunk *py_add_chunk(held_column *column);

/* Releases an array that was not released; an exception that is pending stays. */
void py_release_array(struct ArrowArray *array);

/* A capsule that owns the column; and NULL after freeing it. */
PyObject *py_own_column(held_column *column);
PyObject *py_free_column(held_column *column);

bool py_raise_column(const char *field, const char *sentence);
#define FLOATS "these are binary floats; a column holds text (read files with dtype=str), or whole numbers for a Plan"

/* The letter of a native buffer format; 0 = none that is read here. */
char py_format_letter(const char *format);
bool py_check_buffer(const Py_buffer *buffer, const char *field);

/* --- judge_columns.c: columns side by side, and plans for texts ---------------------------------------- */

/* Columns by field, then of positions, then those that name a vehicle. */
#define CURSOR_POSITION RODT_READING_FIELDS
#define CURSOR_NAMES (CURSOR_POSITION + 1)
#define CURSOR_NAMES_MAX 8
#define CURSOR_COLUMNS (CURSOR_NAMES + CURSOR_NAMES_MAX)

/* Columns that are read side by side, chunk by chunk. */
typedef struct cursor {
    const held_column *column[CURSOR_COLUMNS]; /* NULL = there is none */
    size_t chunk[CURSOR_COLUMNS];
    size_t at[CURSOR_COLUMNS]; /* row in the chunk */
    size_t most;               /* rows at a time; 0 = as many as are contiguous */
    size_t rows;
    size_t done;
} cursor;

/* From a tuple of as many columns or None as it has. False: raised, as where columns differ in their rows. */
bool py_open_cursor(PyObject *tuple, cursor *w);

/* Does something with rows that are contiguous in each column; another status than RODT_OK ends the walk. */
typedef rodt_status chunk_worker(const void *job, const cursor *w, size_t rows);
rodt_status py_each_chunk(cursor *w, chunk_worker *worker, const void *job);

/* The cells of a column of texts from the first row of the chunk on. */
rodt_text_cells py_text_at(const cursor *w, int i);

/* False, raised: a column that is there is no text. */
bool py_check_texts(const cursor *w);

/* Judges the rows of a chunk into the beginning of `out`. */
rodt_status py_judge_chunk(rodt_text_plan *plan, const cursor *w, size_t rows, const rodt_column_out *out);

/*
 * Rooms for answers that a plan keeps and gives out again once nobody else has them: memory that was written before
 * costs no page of the kernel, and giving out pages takes a quarter of the time of judging the rows that are written
 * into them. There are two because the answers of one call are often held until those of the next are there. Larger
 * ones are not kept; most of their pages are huge.
 */
#define ROOMS_KEPT 2
#define ROOM_KEPT_MOST ((size_t)8 << 20)
typedef struct kept_rooms {
    PyObject *room[ROOMS_KEPT]; /* NULL = there is none */
    int next;                   /* the one that makes way */
} kept_rooms;

/* What columns of texts are judged by, and what it points into. */
typedef struct text_plan {
    rodt_text_plan *plan;
    kept_rooms rooms; /* the context of the capsule points to them */
    kept_rooms parts; /* of strokes */
    const rodt_rules *rules;
    PyObject *defaults;
    number_texts numbers;
    rodt_form form; /* of what all rows share */
} text_plan;

#define TEXT_PLAN_CAPSULE "rodtravel.text_plan"

/* --- answers.c: writable buffers for results, made by the package or given by the caller --------------- */

#define OVERLAP "columns of answers must not overlap one another or the readings"

#define ANSWERS 5

typedef struct held_answers {
    Py_buffer buffer[ANSWERS]; /* stroke, verdict, reasons, flags, limit */
    int count;
} held_answers;

bool py_to_answers(PyObject *tuple, size_t rows, held_answers *answers, rodt_column_out *out);
void py_release_answers(held_answers *answers);
rodt_column_out py_answers_at(const rodt_column_out *out, size_t row);

/* A bytearray of that size, whose bytes are anything. */
PyObject *py_new_room(long long size);

/* The same or a larger one, which may be one of those that are kept. */
PyObject *py_take_room(kept_rooms *kept, size_t size);
void py_free_rooms(kept_rooms *kept);

/* A memoryview of some of its bytes. */
PyObject *py_view_room(PyObject *room, size_t from, size_t size);

/* True if a chunk of cells overlaps an answer: the library checks the rows of one call, not later chunks. */
bool py_overlaps(const held_answers *answers, const void *cells, size_t size);

/* --- numbers.c: answers for tables and drawings --------------------------------------------------------- */

/* What a frame has as doubles, in the order of its columns; the last is a part of the limit in percent. */
typedef enum py_number {
    PY_NUMBER_STROKE,
    PY_NUMBER_LIMIT,
    PY_NUMBER_MARGIN,
    PY_NUMBER_USED,
    PY_NUMBERS
} py_number;

void py_fill_numbers(py_number kind, const int32_t *stroke, const int32_t *limit, size_t rows, double per_unit,
                     double *to);

/* The same in the rows whose stroke is no whole number of units, but one of parts. */
void py_fill_finer(py_number kind, const int32_t *stroke, const int64_t *parts, const int32_t *limit, size_t rows,
                   double per_unit, double *to);

/* Whether a row has such a stroke. */
bool py_has_finer(const int32_t *stroke, const int64_t *parts, size_t rows);

/* The strokes in parts, where all are whole units. */
void py_fill_parts(const int32_t *stroke, size_t rows, int64_t *parts);

/* Different sets of reasons in the order of their first rows. The slots are an open hash table, at most half full. */
typedef struct reason_sets {
    uint64_t *set, *rows;
    uint32_t *slot; /* number of a set, from 1; 0 = free */
    size_t count, room;
} reason_sets;

/* The number of the set of each row, from 0. False: no memory. */
bool py_number_sets(const uint64_t *row, size_t count, int32_t *number, reason_sets *sets);
PyObject *py_from_sets(const reason_sets *sets);
void py_free_sets(reason_sets *sets);

/* --- Arrow -------------------------------------------------------------------------------------------- */

#ifndef ARROW_C_STREAM_INTERFACE
#define ARROW_C_STREAM_INTERFACE

/* As the specification has it. */
struct ArrowArrayStream {
    int (*get_schema)(struct ArrowArrayStream *, struct ArrowSchema *out);
    int (*get_next)(struct ArrowArrayStream *, struct ArrowArray *out);
    const char *(*get_last_error)(struct ArrowArrayStream *);
    void (*release)(struct ArrowArrayStream *);
    void *private_data;
};

#endif
#endif
