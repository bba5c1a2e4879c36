/* SPDX-License-Identifier: Apache-2.0 */
/* The library described by itself: every record with its members, every enumeration, and what follows from that:
 * JSON, members by name. For bindings, and for programs that store records or show forms. */
#ifndef RODTRAVEL_DESCRIBE_H
#define RODTRAVEL_DESCRIBE_H

#include <stdbool.h>

#include "aircheck.h"
#include "enumeration.h"
#include "identify.h"
#include "status.h"
#include "vehicle.h"

#ifdef __cplusplus
extern "C" {
#endif

/* --- Enumerations ------------------------------------------------------------------------------------ */

/* Every enumeration of the library, sets of bits included; NULL beyond the count. */
RODT_API size_t rodt_enumeration_count(void);
RODT_API const rodt_enumeration *rodt_enumeration_at(size_t index);

/* The enumeration of a name, "rodt_verdict"; NULL if there is none, or name is NULL. */
RODT_API const rodt_enumeration *rodt_enumeration_find(const char *name);

/* --- Records ----------------------------------------------------------------------------------------- */

/* What a member holds. */
typedef enum rodt_member_kind RODT_ENUM_TYPE {
    RODT_MEMBER_KIND_LENGTH = 0,          /* rodt_length */
    RODT_MEMBER_KIND_PRESSURE = 1,        /* rodt_pressure */
    RODT_MEMBER_KIND_RATIO = 2,           /* rodt_ratio */
    RODT_MEMBER_KIND_DATE = 3,            /* rodt_date */
    RODT_MEMBER_KIND_POSITION = 4,        /* rodt_position */
    RODT_MEMBER_KIND_ENUMERATOR = 10,     /* a number of `enumeration`, in `size` bytes */
    RODT_MEMBER_KIND_SET = 11,            /* a set of `enumeration`, in `size` bytes (rodt_enumeration_is_bits) */
    RODT_MEMBER_KIND_BOOLEAN = 12,        /* bool */
    RODT_MEMBER_KIND_INTEGER = 13,        /* a signed integer of `size` bytes */
    RODT_MEMBER_KIND_UNSIGNED = 14,       /* an unsigned integer of `size` bytes */
    RODT_MEMBER_KIND_INDEX = 15,          /* size_t: the index of an element of another array; SIZE_MAX = none */
    RODT_MEMBER_KIND_TEXT = 20,           /* char[size], closed by a zero byte */
    RODT_MEMBER_KIND_TEXT_POINTER = 21,   /* const char *, zero-terminated; can be NULL */
    RODT_MEMBER_KIND_RECORD = 30,         /* `record`, inside this one */
    RODT_MEMBER_KIND_RECORD_POINTER = 31, /* a pointer to a constant `record`; can be NULL */
    RODT_MEMBER_KIND_RULES = 32,          /* const rodt_rules *; can be NULL */
    RODT_MEMBER_KIND_POINTER = 33,        /* memory that only the program knows the size of: columns, cells */
    RODT_MEMBER_KIND_RESERVE = 40         /* `size` bytes for later versions; zero */
} rodt_member_kind;
#define RODT_MEMBER_KIND_END 41 /* one more than the last; grows in later versions */

/* The stable word of a kind, "text-pointer"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_member_kind_name(rodt_member_kind kind);

/* Finds a kind by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_member_kind_find(const char *word, RODT_ENUM32(rodt_member_kind) *out);

/* A record, that is, a public struct; opaque, constant, alive as long as the program. */
typedef struct rodt_record rodt_record;

/* One member of a record. Rows live as long as the program, and a later version may add members: use pointers to rows
 * that the library gives, never copies. */
typedef struct rodt_member {
    const char *name; /* "released" */
    const char *unit; /* of a number: "in", "psi", "in3", "s", "brakes"; "" = none, or not always the same */
    const char *used; /* of an array: the member that says how many elements are used; NULL = all of them */
    const rodt_enumeration *enumeration; /* of an enumerator or a set; NULL otherwise */
    const rodt_record *record;           /* of a record or a pointer to one; NULL otherwise */
    uint32_t offset;                     /* of the first element, in bytes from the start of the record */
    uint32_t size;                       /* of one element, in bytes */
    uint32_t count;                      /* elements; 1 = no array */
    RODT_ENUM32(rodt_member_kind) kind;  /* what it holds */
} rodt_member;

/* Every record of the library; NULL beyond the count. */
RODT_API size_t rodt_record_count(void);
RODT_API const rodt_record *rodt_record_at(size_t index);

/* The record of a name, "rodt_reading"; NULL if there is none, or name is NULL. */
RODT_API const rodt_record *rodt_record_find(const char *name);

/* Its name in C, and its size in bytes. NULL gives "" and 0. */
RODT_API const char *rodt_record_name(const rodt_record *record);
RODT_API size_t rodt_record_size(const rodt_record *record);

/* True if a caller fills it (rodt_reading), false if the library does (rodt_finding). */
RODT_API bool rodt_record_is_input(const rodt_record *record);

/* Its members in the order of memory; NULL beyond the count. */
RODT_API size_t rodt_member_count(const rodt_record *record);
RODT_API const rodt_member *rodt_member_at(const rodt_record *record, size_t index);

/* The member of a name, compared as headings are (rodt_heading_equal): "Stroke Class" is stroke_class. In rodt_form
 * also by an alias that rodt_field_find knows. NULL if there is none. */
RODT_API const rodt_member *rodt_member_find(const rodt_record *record, const char *name);

/* As rodt_member_find, for size bytes that need not be closed by a zero byte. */
RODT_API const rodt_member *rodt_member_find_n(const rodt_record *record, const char *name, size_t size);

/* --- Values by path ---------------------------------------------------------------------------------- */

/*
 * A path names a value inside a record: "released", "chamber.size", "other_released[1]", "axles[0].stroke_difference",
 * and through pointers "law_row.source.document". Elements count from 0; a name of an array without a number is its
 * first element. In a reading or a finding the fields "stroke_class", "rated_stroke" and "marked_limit" are those of
 * its chamber, so the field of an error is a path, too.
 */

/*
 * Finds the value of a path.
 *
 * value  of the record
 * at     gets where the value is, an object of the member's kind and size
 *
 * Returns the member; NULL, and *at untouched: there is no such path, a pointer on the way is NULL, or an argument is.
 */
RODT_API const rodt_member *rodt_record_locate(const rodt_record *record, const void *value, const char *path,
                                               const void **at);

/*
 * Writes the value of a path as text: exact numbers as mixed fractions (a pressure that was read in kPa as "650 kPa"),
 * days as YYYY-MM-DD, a day of build also as its year alone, enumerators as words, sets as words with ", " between
 * them, booleans as true and false, a rule set as its id, a chamber as its name. What is not given is an empty text.
 * rodt_record_set_text reads it back to the same value.
 *
 * RODT_OK          text holds it
 * RODT_E_ARGUMENT  there is no such path, or the value has no text: another record than a chamber, memory, a reserve,
 *                  a number that is no enumerator
 * RODT_E_SPACE     size is too small
 */
RODT_API rodt_status rodt_record_text_format(const rodt_record *record, const void *value, const char *path, char *text,
                                             size_t size, size_t *needed);

/*
 * Sets the value of a path from a text, by the reader of its kind (length.h, pressure.h, date.h, chamber.h, vehicle.h;
 * words as above; RODT_MEMBER_KIND_RATIO: "1 3/4", "0.8"). An empty text means "not given", and so does NULL. In a
 * record that the library fills, a length, a pressure or a ratio can also be what rodt_record_text_format writes, such
 * as a margin below zero. A text pointer is set to `text` itself, which must outlive the record.
 *
 * A fraction that may have lost its blank is read as a form reads it: "31/8" for `released` or `applied` of a reading
 * also sets what else it may mean (`other_released`, `other_applied`; other texts clear them), so set these two later,
 * if at all. Any other length has no second value, and such a text is refused. A pressure in kPa also sets the record's
 * pressure_unit.
 *
 * value  of the record; changed at this path only, but for what the paragraph above says, and untouched on failure
 * text   zero-terminated UTF-8
 * error  NULL, or gets status, column, the member's name and a sentence
 *
 * RODT_OK          done
 * RODT_E_ARGUMENT  record, value or path is NULL, there is no such path, it leads through a pointer, or the value has
 *                  no text
 * RODT_E_SPACE     the text does not fit in the member
 * The statuses of the reader.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_record_set_text(const rodt_record *record, void *value, const char *path,
                                                          const char *text, rodt_error *error);

/* --- JSON -------------------------------------------------------------------------------------------- */

/* How JSON is written, as bits. */
typedef enum rodt_json_option RODT_ENUM_TYPE {
    RODT_JSON_OPTION_PARTS = 1 /* exact numbers as {"text": "2 1/8", "num": 17, "den": 8, "unit": "in"}; otherwise
                                  "2 1/8". A number without a unit has no such member */
} rodt_json_option;

/* The stable word of an option, "parts"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_json_option_name(rodt_json_option option);

/* Finds an option by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_json_option_find(const char *word, RODT_ENUM32(rodt_json_option) *out);

/*
 * Writes any record as one JSON object (RFC 8259, UTF-8, one line), its members in the order of memory and under their
 * names; the same value gives the same bytes on every machine. Exact numbers are texts in inches, psi or the member's
 * unit (rodt_member), and where there are lengths or pressures a last member `units` says so: {"length": "in",
 * "pressure": "psi"}. A pressure that was read in kPa, as the record's pressure_unit says, is a text with its unit,
 * "650 kPa"; its parts are of psi all the same. Days, positions and enumerators are texts, sets are arrays of words, a
 * rule set is its id, records are objects, also those behind pointers. What is not given, and a pointer that is NULL,
 * is null. Left out are reserves and memory of the program. An array has the elements in use; one that does not say how
 * many ends at the last one that is given. An enumerator that is unknown to this version is its number. Bytes that are
 * no UTF-8 become U+FFFD.
 *
 * Each text in it but `units` can be given to rodt_record_set_text under the path of the same names (but those behind
 * pointers).
 *
 * value    of the record
 * options  0, or a sum of rodt_json_option
 *
 * RODT_OK          text holds it
 * RODT_E_ARGUMENT  record or value is NULL, or an option is unknown
 * RODT_E_SPACE     size is too small
 */
RODT_API rodt_status rodt_record_json_format(const rodt_record *record, const void *value, uint32_t options, char *text,
                                             size_t size, size_t *needed);

/* Room for a sentence of a report in any language, with its closing zero byte. */
#define RODT_REPORT_SENTENCE_SIZE 1600

/*
 * Writes a finding as a report of one wheel end, for a page or a log: its values under the names of the command's JSON
 * (`rodtravel stroke --json`), each reason's word and sentence, the sources as one line each. Here and in the next
 * three `rules` is the id of the law, and `own_limits` that of a carrier's limits on it. The other function writes all
 * of a finding, to be stored, and its `rules` is the set that judged; this one what is to be read. `pressure` is what
 * the gauge showed, with its unit, `psi` the same in psi, and `units` names the units of the numbers.
 *
 * catalogue  the language of the sentences; NULL = English. Words, figures and what a table quotes stay as they are
 *
 * Statuses as above; RODT_E_ARGUMENT also for a finding without a rule set, or for a catalogue that is broken or has a
 * sentence of RODT_REPORT_SENTENCE_SIZE bytes or more.
 */
RODT_API rodt_status rodt_finding_json_format(const rodt_finding *finding, const rodt_catalogue *catalogue,
                                              uint32_t options, char *text, size_t size, size_t *needed);

/* As rodt_finding_json_format, of an air check: the names of `rodtravel air --json`. What the law says by itself is
 * beside a carrier's own figure. */
RODT_API rodt_status rodt_air_finding_json_format(const rodt_air_finding *finding, const rodt_catalogue *catalogue,
                                                  uint32_t options, char *text, size_t size, size_t *needed);

/*
 * Writes the report of a vehicle, under the names of `rodtravel vehicle --json`: the criterion, every wheel end with
 * the members of its stroke, every axle, the sources of the criterion. Percentages are exact numbers, too. An advice is
 * a sentence, and its word is `advice_code`; `unreadable` is a sentence, and `unreadable_field` says of which text.
 *
 * vehicle   as rodt_vehicle_judge or rodt_vehicle_combine made it
 * ends      its wheel ends
 * count     how many there are, at least one
 * findings  one for each wheel end
 * advice    NULL, or one for each wheel end
 * errors    NULL, or for each wheel end the first text that could not be read (rodt_form_judge_row)
 *
 * catalogue, options and statuses as rodt_finding_json_format; RODT_E_ARGUMENT also for another pointer that is NULL,
 * no wheel end, a finding with another rule set than the first, or, with a catalogue, an error that was filled by hand
 * and holds what no error has. What the sources of the criterion say is quoted, and stays in English.
 */
RODT_API rodt_status rodt_vehicle_json_format(const rodt_vehicle_finding *vehicle, const rodt_wheel_end *ends,
                                              size_t count, const rodt_finding *findings, const rodt_advice *advice,
                                              const rodt_error *errors, const rodt_catalogue *catalogue,
                                              uint32_t options, char *text, size_t size, size_t *needed);

/* Writes which chamber it can be, under the names of `rodtravel identify --json`. rules and day are those of
 * rodt_clues_identify. catalogue and statuses as rodt_finding_json_format. */
RODT_API rodt_status rodt_identification_json_format(const rodt_identification *answer, const rodt_rules *rules,
                                                     rodt_date day, const rodt_catalogue *catalogue,
                                                     uint32_t options, char *text, size_t size, size_t *needed);

/* Writes a row of a table of limits, a row of air checks, or what a rule set is, as `rodtravel limits --json` lists
 * them: the names of people beside stable words, sources as one line. Only a row of air checks has a
 * sentence: its edge. catalogue and statuses as rodt_finding_json_format. */
RODT_API rodt_status rodt_limit_json_format(const rodt_limit *row, uint32_t options, char *text, size_t size,
                                            size_t *needed);
RODT_API rodt_status rodt_air_limit_json_format(const rodt_air_limit *row, const rodt_catalogue *catalogue,
                                                uint32_t options, char *text, size_t size, size_t *needed);
RODT_API rodt_status rodt_rules_json_format(const rodt_rules *rules, uint32_t options, char *text, size_t size,
                                            size_t *needed);

/*
 * Writes the rows of limits of a rule set that are in force on a day, and what follows from them for one chamber, under
 * the names of `rodtravel limits [CHAMBER] --json`. The rows of the law, and of a carrier's limits on it, are listed
 * apart.
 *
 * rules    the law, or a carrier's limits
 * day      not given = the newest rows
 * finding  NULL = the whole table; otherwise of a wheel end that need not be measured: its chamber, its limit, the
 *          reasons that are about the limit, and only the rows of its family and size
 *
 * Statuses as above; RODT_E_ARGUMENT also where there is no such day.
 */
RODT_API rodt_status rodt_limits_json_format(const rodt_rules *rules, rodt_date day, const rodt_finding *finding,
                                             uint32_t options, char *text, size_t size, size_t *needed);

#ifdef __cplusplus
}
#endif
#endif
