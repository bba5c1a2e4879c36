/* SPDX-License-Identifier: Apache-2.0 */
/* Writes JSON (RFC 8259) on one line, so that many answers make a file of lines. */
#ifndef JSON_WRITER_H
#define JSON_WRITER_H

#include <rodtravel/rodtravel.h>

#include <stdio.h>

/* The writer sets the commas. */
typedef struct json_writer {
    FILE *to;
    bool first;    /* the innermost object or array is still empty */
    bool no_memory; /* for a value; json_end says so */
} json_writer;

void json_open(json_writer *json, char bracket);  /* '{' or '[' */
void json_close(json_writer *json, char bracket); /* '}' or ']' */
void json_key(json_writer *json, const char *key);
void json_text(json_writer *json, const char *text); /* NULL = null; bytes that are no UTF-8 become U+FFFD */
void json_bool(json_writer *json, bool value);

/* A value that a function of the library writes, rodt_..._json_format with what it needs from `value`. */
typedef rodt_status json_format(const void *value, char *text, size_t size, size_t *needed);
void json_record(json_writer *json, json_format *format, const void *value);

/* Ends the line. STATUS_CONTINUE, or an exit status; what was wrong is said. */
int json_end(json_writer *json);

/* The whole line on standard output. Statuses as json_end. */
int json_print(json_format *format, const void *value);

/* A key and its value; what is not given is null. */
void json_pair(json_writer *json, const char *key, const char *text);
void json_length(json_writer *json, const char *key, rodt_length length);
void json_date(json_writer *json, const char *key, rodt_date date);
void json_pressure(json_writer *json, const char *key, rodt_pressure pressure);
void json_source(json_writer *json, const char *key, const rodt_source *source);
void json_ratio(json_writer *json, const char *key, rodt_ratio ratio); /* "1 1/2" */

void json_number(json_writer *json, const char *key, uint64_t number);
void json_count(json_writer *json, uint64_t number);
void json_tenths(json_writer *json, uint64_t tenths); /* 505 is 50.5 */

/* "reasons": the codes of a set of RODT_REASON_BIT. */
void json_reasons(json_writer *json, uint64_t reasons);

#endif
