/* SPDX-License-Identifier: Apache-2.0 */
/* Writes JSON (RFC 8259) on one line into a buffer of the caller. */
#ifndef RODT_JSON_H
#define RODT_JSON_H

#include "core/common.h"
#include "rodtravel/rodtravel.h"

/* What does not fit is counted and not written. The writer sets the commas. */
typedef struct json_buffer {
    char *text;
    size_t size;
    size_t used;
    const rodt_catalogue *catalogue; /* NULL = English */
    bool broken;                     /* a sentence could not be written in the language of the catalogue */
    bool parts; /* RODT_JSON_OPTION_PARTS */
    bool first; /* the innermost object or array is still empty */
} json_buffer;

void rodti_json_open(json_buffer *json, char bracket);  /* '{' or '[' */
void rodti_json_close(json_buffer *json, char bracket); /* '}' or ']' */
void rodti_json_key(json_buffer *json, const char *key);

/* A value: a text of size bytes, in which those that are no UTF-8 become U+FFFD; NULL = null. */
void rodti_json_text_n(json_buffer *json, const char *text, size_t size);
void rodti_json_text(json_buffer *json, const char *text);
/* A value that is JSON already: a number, true, null. */
void rodti_json_plain(json_buffer *json, const char *text);

/* A value: an exact number as its text, or with parts and, if it has one, its unit; null if it is not given or cannot
 * be written. */
void rodti_json_exact(json_buffer *json, rodt_ratio value, const char *unit);
/* The same with another text of that value: "650 kPa"; NULL = null. */
void rodti_json_exact_text(json_buffer *json, rodt_ratio value, const char *text, const char *unit);

/* A value: a sentence in the language of the catalogue; null if it was not made or there is none. */
void rodti_json_message(json_buffer *json, rodt_status made, const rodt_message *message);

/* A key and its value; what is not given is null. */
void rodti_json_sentence(json_buffer *json, const char *key, rodt_status made, const rodt_message *message);
void rodti_json_pair(json_buffer *json, const char *key, const char *text);
void rodti_json_number(json_buffer *json, const char *key, int64_t number);
void rodti_json_boolean(json_buffer *json, const char *key, bool value);
void rodti_json_ratio(json_buffer *json, const char *key, rodt_ratio value);
void rodti_json_length(json_buffer *json, const char *key, rodt_length length);
void rodti_json_pressure(json_buffer *json, const char *key, rodt_pressure pressure);
void rodti_json_as_read(json_buffer *json, const char *key, rodt_pressure pressure, uint32_t unit); /* "650 kPa" */
void rodti_json_units(json_buffer *json, bool lengths, bool pressures); /* of the numbers of a report: "units" */
void rodti_json_date(json_buffer *json, const char *key, rodt_date day);
void rodti_json_chamber(json_buffer *json, const char *key, const rodt_chamber *chamber); /* its name */
void rodti_json_source(json_buffer *json, const char *key, const rodt_source *source);    /* one line */
void rodti_json_evidence(json_buffer *json, const char *key, const rodt_source *source, uint32_t evidence);

/* A row of a table of limits. */
void rodti_json_limit(json_buffer *json, const rodt_limit *row);
/* A stroke and its limits, from "chamber" to "verdict". */
void rodti_json_stroke(json_buffer *json, const rodt_finding *finding);
/* What the tape's divisions prove: "proof", "probability_over", "proof_sentence". */
void rodti_json_proof(json_buffer *json, const rodt_finding *finding);
/* What the limit rests on, and the pressures of the test: from "as_of" to "psi_after". */
void rodti_json_grounds(json_buffer *json, const rodt_finding *finding);
/* Three keys that several reports have: "reasons", the words; "source" and "evidence". */
void rodti_json_reasons(json_buffer *json, const rodt_finding *finding);
void rodti_json_read_in(json_buffer *json, const rodt_source *source, uint32_t evidence);
/* "rules", the id of the law, and "own_limits", that of the carrier's limits on it; law is NULL for a law. */
void rodti_json_rules(json_buffer *json, const rodt_rules *rules, const rodt_rules *law);

/* Writes a value twice, to count and to fill, so that the buffer is untouched if it does not fit. catalogue: NULL =
 * English. */
typedef void json_maker(json_buffer *json, const void *context);
rodt_status rodti_json_format(json_maker *make, const void *context, const rodt_catalogue *catalogue, uint32_t options,
                              char *text, size_t size, size_t *needed);

#endif
