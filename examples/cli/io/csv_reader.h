/* SPDX-License-Identifier: Apache-2.0 */
/* Reads comma-separated values (RFC 4180) as a stream: record by record, every byte kept as it came. */
#ifndef CSV_H
#define CSV_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A record, its line end included, is at most this long, and has at most this many cells: what is longer
 * is no table, or a quote was left open. Memory stays below twice the first figure. */
#define CSV_RECORD_MAX ((size_t)16 << 20)
#define CSV_CELLS_MAX 65536u

/* The buffer of a reader begins with this size, and so many bytes behind what was read may be loaded, whatever they
 * hold. */
#ifndef CSV_BLOCK /* a test makes it small, so that everything is once the end of a block */
#define CSV_BLOCK ((size_t)128 << 10)
#endif
#define CSV_PAD 96u

/* Where bytes come from. Gives 1 to size bytes, 0 at the end, -1 on an error (which the source describes). */
typedef struct csv_source {
    long (*read)(void *context, char *buffer, size_t size);
    void *context;
} csv_source;

/* A cell as it stands in the record, its quotes included: bytes start to end - 1 of the record. */
typedef struct csv_cell {
    uint32_t start;
    uint32_t end;
} csv_cell;

/*
 * One record. Its cells, joined by the separator and followed by the line end, are the bytes that were
 * read, whatever the input. Valid until the next call of csv_next.
 */
typedef struct csv_record {
    const char *bytes;    /* without the line end */
    size_t size;
    const char *line_end; /* LF, CRLF or CR; nothing if the input ends without one */
    size_t line_end_size;
    uint64_t line;        /* number of its first line, from 1 */
    const csv_cell *cells;
    size_t count;         /* at least 1: an empty line has one empty cell */
    bool bad_quotes;      /* a quote is never closed (or not within the limit), or something stands behind a
                             closing one. The record is then its first line, parted at every separator, and
                             quotes are signs like any other; so no line is lost to a stray quote */
} csv_record;

typedef enum csv_status {
    CSV_RECORD = 0,
    CSV_END,
    CSV_E_SOURCE,     /* the source failed */
    CSV_E_MEMORY,
    CSV_E_QUOTES,     /* so many stray quotes that looking for their ends would take for ever */
    CSV_E_LONG,       /* a record above CSV_RECORD_MAX */
    CSV_E_CELLS       /* a record of more than CSV_CELLS_MAX cells */
} csv_status;

/* A reader. Look at `bom` and `fault_line` only. */
typedef struct csv_reader {
    csv_source source;
    char *buffer;
    size_t capacity;
    size_t begin;        /* first byte of the record that is being read */
    size_t end;          /* behind the last byte that was read; a line feed is kept there as a stop */
    size_t scan;         /* offset of the next byte to look at, from begin */
    csv_cell *cells;
    size_t count;
    uint64_t line;       /* of the byte at scan */
    uint64_t fault_line; /* where the record began that caused an error */
    bool source_done;
    bool cr_ends;        /* a carriage return alone ends a line: so it does in the first line */
    bool first_line;
    size_t debt;         /* bytes that were read in vain for stray quotes, less those that went well since */
    bool bom;            /* the input began with the UTF-8 byte order mark; no record holds it */
    csv_status fault;
    char separator;
    bool lines;          /* a record is a line, whatever it holds */
    unsigned char plain_stop[256]; /* 1 = the fast scan of a plain cell looks closer here */
} csv_reader;

/* Makes a reader; separator is one ASCII character, no quote and no line end. False: no memory. */
bool csv_open(csv_reader *reader, csv_source source, char separator);

/* The same for lines that are no CSV: a record is a line, as one cell without quotes. */
bool csv_open_lines(csv_reader *reader, csv_source source);

/* Reads the next record. CSV_RECORD: *record is it; anything else: there is no more. */
csv_status csv_next(csv_reader *reader, csv_record *record);

/* The record that csv_next gave last is the next one again. */
void csv_unread(csv_reader *reader, const csv_record *record);

void csv_close(csv_reader *reader);

/* --- Parts (csv_part.c): records that stand in the buffer are handed to the reader of another thread --- */

/* Size of the records that csv_next would give next, as far as they stand in the buffer as a whole and are surely
 * sound: no stray quote is among them, and none could swallow what comes after. At most CSV_BLOCK; 0 = read the next
 * one with csv_next. */
size_t csv_complete_size(const csv_reader *reader);

/* Makes a reader for the parts of another. False: no memory. */
bool csv_open_chunk(csv_reader *part, const csv_reader *whole);

/* Hands over the next `size` bytes, as csv_complete_size gave them: `part` reads them to their end, its lines counted
 * on from those of `whole`, whose line then no longer counts. What it read before is gone. */
void csv_move_chunk(csv_reader *whole, size_t size, csv_reader *part);

/* Returned by csv_text for a cell that does not fit. */
#define CSV_NO_FIT ((size_t)-1)

/* Copies the text of a cell, quotes taken off and doubled quotes made single, closes it with a zero byte,
 * and returns its size (the text may hold zero bytes of its own). CSV_NO_FIT: size is too small. */
size_t csv_text(const csv_record *record, size_t index, char *text, size_t size);

/* True if every cell is empty or blank. */
bool csv_is_blank(const csv_record *record);

#endif
