/* SPDX-License-Identifier: Apache-2.0 */
/* Service brake chambers: family, size, stroke class and rated stroke, read from a mark or a work order. */
#ifndef RODTRAVEL_CHAMBER_H
#define RODTRAVEL_CHAMBER_H

#include "length.h"
#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* How the housing is built: what holds its two halves together, and what moves in it. */
typedef enum rodt_family RODT_ENUM_TYPE {
    RODT_FAMILY_UNKNOWN = 0,     /* not known */
    RODT_FAMILY_CLAMP = 1,       /* two halves and a clamp band around them */
    RODT_FAMILY_BOLT = 2,        /* two halves and a flange with bolts; sizes A to G */
    RODT_FAMILY_ROTOCHAMBER = 3, /* rolling diaphragm */
    RODT_FAMILY_DD_3 = 4          /* double diaphragm with three air lines, "DD-3" */
} rodt_family;
#define RODT_FAMILY_END 5 /* one more than the last; grows in later versions */

/* A long-stroke chamber has more travel in the same diameter and other limits. Never a guess: a chamber
 * without a known sign of long stroke is RODT_STROKE_CLASS_UNKNOWN, and is judged as standard. */
typedef enum rodt_stroke_class RODT_ENUM_TYPE {
    RODT_STROKE_CLASS_UNKNOWN = 0,  /* not known; judged as standard */
    RODT_STROKE_CLASS_STANDARD = 1, /* standard stroke */
    RODT_STROKE_CLASS_LONG = 2,     /* long stroke */
    RODT_STROKE_CLASS_ANY = 3       /* of a row of limits that holds for every class; no chamber has it */
} rodt_stroke_class;
#define RODT_STROKE_CLASS_END 4 /* one more than the last; grows in later versions */

/* Room for a size, with its closing zero byte. */
#define RODT_SIZE_TEXT_SIZE 4
/* Room for any chamber written by this library, with the closing zero byte. */
#define RODT_CHAMBER_TEXT_SIZE 64

/*
 * One service brake chamber, as far as it is known. All zero bytes mean "nothing is known". Copy it
 * freely; it points to nothing. Set the members by hand or with rodt_chamber_parse.
 */
typedef struct rodt_chamber {
    RODT_ENUM32(rodt_family) family; /* how the housing is built */
    RODT_ENUM32(rodt_stroke_class) stroke_class; /* standard or long stroke */
    char size[RODT_SIZE_TEXT_SIZE];        /* type number "30" or letter "C"; "" = not known */
    char spring_size[RODT_SIZE_TEXT_SIZE]; /* spring brake part of a double mark such as 24/30; "" = none said */
    rodt_length rated_stroke; /* full travel marked on the housing; not given = no mark read. Not the limit! */
    rodt_length marked_limit; /* a readjustment limit marked on the housing; not given = none */
    uint64_t reserved[4];     /* zero */
} rodt_chamber;

/*
 * Reads a chamber as people write it: "30", "T30", "Type 30", "30L", "30LS", "24 long", "3030", "30/30",
 * "24/30 LS" (the first number is the service chamber), "bolt C", "roto 30", "rotochamber type 16",
 * "DD-3", "clamp 36"; "30.0" of a table that takes it for a number. Upper and lower case are alike. What the text
 * does not say stays unknown: "30" has no family and no class. A size that no table lists (18) is read; it is a rule
 * set that has no limit for it.
 *
 * text   zero-terminated UTF-8
 *
 * RODT_OK                 *out is the chamber
 * RODT_E_EMPTY            nothing but blanks
 * RODT_E_UNKNOWN_CHAMBER  no chamber mark; the column is where the reading stopped. A letter alone is
 *                         an error: on a housing it can be a bolt-type size or a rated-stroke code
 * RODT_E_AMBIGUOUS        it names two chambers, or two classes
 * RODT_E_DATE_CELL        a spreadsheet made a date of it ("24-Mar")
 * RODT_E_ARGUMENT         text or out is NULL
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_parse(const char *text, rodt_chamber *out, rodt_error *error);

/* As rodt_chamber_parse, for size bytes that need not be closed by a zero byte. */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_parse_n(const char *text, size_t size, rodt_chamber *out,
                                                          rodt_error *error);

/*
 * Tells whether a chamber is one that can be judged: family and stroke class are known enumerators; a size is "" or a
 * type number of 1 to 99, of a bolt-type chamber a letter from A to G, and closed by a zero byte; marks are not given,
 * or lengths of 3/4 to 6 in that a tape shows; the reserve is zero. Every function that judges asks it first, so a
 * program calls it only to point at an entry early.
 *
 * error  NULL, or gets a sentence, and as its field "chamber", "stroke_class", "rated_stroke", "marked_limit" or
 *        "reserved"
 *
 * RODT_OK; RODT_E_ARGUMENT: it cannot, or chamber is NULL.
 */
RODT_API RODT_MUST_CHECK rodt_status rodt_chamber_check(const rodt_chamber *chamber, rodt_error *error);

/* Reads a stroke class as written in a form: "standard", "std", "long", "L", "LS", "long stroke"; ""
 * and "unknown" give RODT_STROKE_CLASS_UNKNOWN. RODT_OK; RODT_E_SYNTAX: none of these; RODT_E_ARGUMENT. */
RODT_API RODT_MUST_CHECK rodt_status rodt_stroke_class_parse(const char *text, RODT_ENUM32(rodt_stroke_class) *out,
                                                             rodt_error *error);

/* As rodt_stroke_class_parse, for size bytes that need not be closed by a zero byte. */
RODT_API RODT_MUST_CHECK rodt_status rodt_stroke_class_parse_n(const char *text, size_t size,
                                                               RODT_ENUM32(rodt_stroke_class) *out, rodt_error *error);

/* Adds what a second source says of the stroke class. If both name one and they differ, the result is
 * RODT_STROKE_CLASS_STANDARD, the strict side, and false is returned; otherwise true. */
RODT_API bool rodt_chamber_add_class(rodt_chamber *chamber, rodt_stroke_class stroke_class);

/* Writes the name that rodt_chamber_parse reads back to the same family, sizes and class: "clamp 30 long",
 * "30", "24/30", "bolt C", "rotochamber 16", "DD-3 30". RODT_OK; RODT_E_ARGUMENT: NULL, or an enumerator
 * is unknown; RODT_E_EMPTY: neither family nor size is known; RODT_E_SPACE: RODT_CHAMBER_TEXT_SIZE bytes
 * are always enough. */
RODT_API rodt_status rodt_chamber_format(const rodt_chamber *chamber, char *text, size_t size, size_t *needed);

/* The stable word of a family, "clamp"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_family_name(rodt_family family);

/* Finds a family by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_family_find(const char *word, RODT_ENUM32(rodt_family) *out);

/* The stable word of a stroke class, "standard"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_stroke_class_name(rodt_stroke_class stroke_class);

/* Finds a stroke class by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is
 * none; RODT_E_ARGUMENT: a pointer is NULL. rodt_stroke_class_parse reads what people write in a form. */
RODT_API RODT_MUST_CHECK rodt_status rodt_stroke_class_find(const char *word, RODT_ENUM32(rodt_stroke_class) *out);

#ifdef __cplusplus
}
#endif
#endif
