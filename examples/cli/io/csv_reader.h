/* SPDX-License-Identifier: Apache-2.0 */
/* Reads comma-separated values (RFC 4180) as a stream: record by record, every byte kept as it came. */
#ifndef CSV_READER_H
#define CSV_READER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A record, its line end included, is at most this long, and has at most this many cells: what is longer
 * is no table, or a quote is open. Memory stays below twice the first figure. */
#define CSV_RECORD_MAX ((size_t)16 << 20)
#ifndef CSV_CELLS_MAX /* a test makes it small, as the size below */
#define CSV_CELLS_MAX 65536u
#endif

/* First size of the buffer of a reader, and bytes after its contents that may be loaded, whatever they hold. */
#ifndef CSV_BLOCK /* a test makes it small, so that everything is at the end of a block once */
#define CSV_BLOCK ((size_t)128 << 10)
#endif
#define CSV_PAD 96u

/* Where bytes come from. Gives 1 to size bytes, 0 at the end, -1 on an error (which the source describes). */
typedef struct csv_source {
    long (*read)(void *context, char *buffer, size_t size);
    void *context;
} csv_source;

/* A cell with its quotes: bytes start to end - 1 of the record. */
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
    bool bad_quotes;      /* a quote is never closed (or not within the limit), or something follows a
                             closing one. The record is then its first line, split at every separator, and
                             quotes are bytes like any other; so no line is lost to a stray quote */
} csv_record;

typedef enum csv_status {
    CSV_RECORD = 0,
    CSV_END,
    CSV_E_SOURCE,     /* the source failed */
    CSV_E_MEMORY,
    CSV_E_QUOTES,     /* so many stray quotes that the search for their ends must stop */
    CSV_E_LONG,       /* a record above CSV_RECORD_MAX */
    CSV_E_CELLS       /* a record of more than CSV_CELLS_MAX cells */
} csv_status;

/* Read `bom` and `fault_line` only. */
typedef struct csv_reader {
    csv_source source;
    char *buffer;
    size_t capacity;
    size_t begin;        /* first byte of the record that is being read */
    size_t end;          /* after the last byte that was read; a line feed is kept there as a sentinel */
    size_t scan;         /* offset of the next byte to scan, from begin */
    csv_cell *cells;
    size_t count;
    uint64_t line;       /* of the byte at scan */
    uint64_t fault_line; /* where the record began that caused an error */
    bool source_done;
    bool cr_ends;        /* a carriage return alone ends a line: so it does in the first line */
    bool first_line;
    size_t rescan_used;  /* bytes that were scanned twice for stray quotes, less those that were read since */
    bool bom;            /* the input began with the UTF-8 byte order mark; no record holds it */
    csv_status fault;
    char separator;
    bool lines;          /* a record is a line, whatever it holds */
    unsigned char plain_stop[256]; /* 1 = the fast scan of a plain cell stops here */
} csv_reader;

/* Opens a reader; separator is one ASCII character, no quote and no line end. False: no memory. */
bool csv_open(csv_reader *reader, csv_source source, char separator);

/* The same for lines that are no CSV: a record is a line, as one cell without quotes. */
bool csv_open_lines(csv_reader *reader, csv_source source);

/* Splits the records that follow at another character. */
void csv_set_separator(csv_reader *reader, char separator);

/* Reads the next record. CSV_RECORD: *record is it; anything else: there is no more. */
csv_status csv_next(csv_reader *reader, csv_record *record);

/* Pushes the record back that csv_next gave last. */
void csv_unread(csv_reader *reader, const csv_record *record);

void csv_close(csv_reader *reader);

/* --- Chunks (csv_chunk.c): complete records move to the reader of another thread ------------------------ */

/* Size of the records that csv_next would give next, as far as they are complete in the buffer and their quotes are
 * good, so that none could swallow what comes after. At most CSV_BLOCK; 0 = read the next one with csv_next. */
size_t csv_complete_size(const csv_reader *reader);

/* Opens a reader for the chunks of another. False: no memory. */
bool csv_open_chunk(csv_reader *chunk, const csv_reader *input);

/* Moves the next `size` bytes, as csv_complete_size gave them, to `chunk`, which reads them to their end and counts
 * lines on from those of `input`; the line of `input` is then void. What `chunk` held before is gone. */
void csv_move_chunk(csv_reader *input, size_t size, csv_reader *chunk);

/* Returned by csv_text for a cell that does not fit. */
#define CSV_NO_FIT ((size_t)-1)

/* Copies the text of a cell without its quotes, doubled ones made single, closes it with a zero byte,
 * and returns its size (the text may hold zero bytes of its own). CSV_NO_FIT: size is too small. */
size_t csv_text(const csv_record *record, size_t index, char *text, size_t size);

/* True if every cell is empty or blank. */
bool csv_is_blank(const csv_record *record);

#endif
