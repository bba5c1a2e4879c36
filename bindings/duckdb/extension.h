/* SPDX-License-Identifier: Apache-2.0 */
/* What the files of the extension share. */
#ifndef EXTENSION_H
#define EXTENSION_H

#include <duckdb_extension.h>

#include "sql.h"

DUCKDB_EXTENSION_EXTERN

/* Rows of a chunk, at most. An extension is refused where a vector has more (extension.c). */
#define ROWS 2048

#define SAID_SIZE 400

/* --- Arguments (arguments.c) --------------------------------------------------------------------------- */

/* Texts that are made of an argument that is none. */
typedef struct argument_room {
    rodt_text_span span[ROWS];
    char text[ROWS][24]; /* 64 bits with a sign and a point; a date */
} argument_room;

/* An argument as it lies in memory. */
typedef struct raw_argument {
    const void *data;
    const uint64_t *validity;            /* NULL = every row has a value */
    duckdb_type type, stored_type;       /* the second is of a DECIMAL alone */
    uint32_t digits, scale;              /* of a DECIMAL */
    uint32_t width;                      /* bytes of a value; 0 = of no type that is read, or empty */
    bool is_empty;                       /* NULL in every row */
    bool is_elsewhere;                   /* some values only point to what they are: their bytes prove nothing */
} raw_argument;

/* The arguments of a chunk as columns of texts. */
typedef struct arguments {
    idx_t rows;
    int count;
    bool is_given[SQL_ARGUMENTS]; /* where the last one is a struct */
    raw_argument raw[SQL_ARGUMENTS];
    rodt_text_columns columns;
    rodt_text_cells rules;
    argument_room *room[SQL_ARGUMENTS]; /* made where it is needed, kept */
} arguments;

/* Where a chunk has them. NULL = done; else what is wrong with the name of one, with that of the function in front. */
const char *look_at_arguments(const char *function, duckdb_data_chunk chunk, arguments *out, char said[SAID_SIZE]);

/* Reads what was looked at. NULL = done; else what is wrong with its type. */
const char *read_arguments(const char *function, arguments *of, char said[SAID_SIZE]);

/* In place of this, where the same bytes were read before, and may lie elsewhere now. */
void read_again(arguments *of);

/* The same for an argument of a function of single texts, the text or its unit. */
const char *read_text_argument(const char *function, int number, arguments *of, rodt_text_cells *cells,
                               char said[SAID_SIZE]);

/* --- The chunk before (repeat.c) ----------------------------------------------------------------------- */

#define WIDEST 16 /* bytes of a value */

typedef struct kept_argument {
    raw_argument of;
    uint64_t validity[ROWS / 64];
    char data[ROWS * WIDEST];
} kept_argument;

typedef struct kept_chunk {
    const char *function; /* that was asked last; NULL = none yet */
    idx_t rows;
    int count;
    const void *from[SQL_ARGUMENTS]; /* where the arguments lay; only compared */
    bool there;                      /* `argument` has them */
    bool used;                       /* since then they came again */
    kept_argument *argument[SQL_ARGUMENTS];
} kept_chunk;

/* Whether the answers of the chunk before are those of this one, too. */
bool is_repeated(kept_chunk *kept, const arguments *in);

/* Notes who asks of what; what was kept is gone. Whether keep_chunk is worth it once the chunk is judged. */
bool begin_chunk(kept_chunk *kept, const char *function, const arguments *in);
void keep_chunk(kept_chunk *kept, const arguments *in);
void free_chunk(kept_chunk *kept);

/* --- Judging (worker.c) -------------------------------------------------------------------------------- */

typedef struct answers {
    int32_t stroke[ROWS], limit[ROWS];
    int64_t parts[ROWS];
    uint64_t reasons[ROWS];
    uint8_t verdict[ROWS];
} answers;

/* Numbers in units of columns as texts: a yard has few. */
#define TEXTS_KEPT 4096
typedef struct kept_text {
    int32_t units;
    duckdb_string_t text; /* of no bytes: nothing is kept here */
} kept_text;

/* A row that was judged by itself. */
typedef struct judged_row {
    rodt_finding finding;
    rodt_error error; /* the first text that could not be read */
} judged_row;

/* What one thread judges a chunk with. */
typedef struct worker {
    const char *function; /* named in sentences */
    char said[SAID_SIZE];
    arguments in;
    arguments texts_in; /* of functions of single texts, which are often asked between others */
    kept_chunk kept;
    idx_t rows;
    answers out;
    const rodt_rules *rules[ROWS]; /* that judged the row */
    rodt_text_plan **plans;        /* by the number of their rule set */
    judged_row *judged;            /* room for ROWS, made where it is needed, kept */
    uint16_t judged_at[ROWS];      /* of the chunk: where its row is in `judged`, from 1; 0 = nowhere yet */
    uint16_t judged_count;
    kept_text texts[TEXTS_KEPT];
} worker;

/* A worker that no other thread has; NULL = no memory. */
worker *take_worker(void);
void give_worker(worker *of);

/* Judges a chunk. False: of->said says why. */
bool judge_chunk(worker *of, const char *function, duckdb_data_chunk chunk);

/* What the answers do not hold of a row of the chunk, until the next one; each row is judged once. NULL: of->said says
 * why. */
const judged_row *judge_row(worker *of, idx_t row);

/* A finding as far as rodt_finding_defect and rodt_tally_add look at it. False: as judge_chunk. */
bool judge_defect(worker *of, idx_t row, rodt_finding *finding);

/* --- Results (results.c) ------------------------------------------------------------------------------- */

/* The bytes of a text that a sentence shows, none of them the beginning of a character alone. */
int shown_bytes(const char *text, size_t size);

/* A vector of texts that is being filled. */
typedef struct result_texts {
    duckdb_vector vector;
    duckdb_string_t *data;
    uint64_t *validity;
} result_texts;

result_texts open_texts(duckdb_vector vector);

/* An empty text is NULL. */
void put_text(const result_texts *to, idx_t row, const char *text, size_t size);
void put_exact(const result_texts *to, idx_t row, int64_t num, int64_t den);

/* The text is not copied: it must live as long as the program. */
void put_constant(const result_texts *to, idx_t row, const char *text);

void put_units(worker *of, const result_texts *to, idx_t row, int32_t units);
void put_parts(const result_texts *to, idx_t row, int64_t parts);
void put_reasons(const result_texts *to, idx_t row, uint64_t reasons);
void put_null(const result_texts *to, idx_t row);

/* --- All that there is --------------------------------------------------------------------------------- */

/* False: not registered. */
bool register_functions(duckdb_connection connection);
bool register_texts(duckdb_connection connection);
bool register_vehicles(duckdb_connection connection);
bool register_tables(duckdb_connection connection);

#endif
