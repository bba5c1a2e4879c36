/* SPDX-License-Identifier: Apache-2.0 */
/* The fields of a wheel end: their names, and the headings under which files have them. */
#ifndef RODTRAVEL_FIELDS_H
#define RODTRAVEL_FIELDS_H

#include <stdbool.h>
#include <stddef.h>

#include "length.h"

#ifdef __cplusplus
extern "C" {
#endif

/*
 * A field of a wheel end. Columns of a file, members of a JSON object, entries of a record and the texts of
 * rodt_form are all named by it. The numbers are stable. The fields of a reading have those below RODT_FIELD_ROOM and
 * the fields of a vehicle those from it on, so that both can grow.
 */
typedef enum rodt_field RODT_ENUM_TYPE {
    RODT_FIELD_CHAMBER = 0,       /* the mark of the chamber, "30L" */
    RODT_FIELD_RELEASED = 1,      /* chamber face to clevis pin, brakes released */
    RODT_FIELD_APPLIED = 2,       /* the same, full application held */
    RODT_FIELD_STROKE_CLASS = 3,  /* standard or long */
    RODT_FIELD_RATED_STROKE = 4,  /* full travel marked on the housing */
    RODT_FIELD_MARKED_LIMIT = 5,  /* a readjustment limit marked on the housing */
    RODT_FIELD_PSI = 6,           /* reservoir pressure before the application */
    RODT_FIELD_PSI_AFTER = 7,     /* the same after it */
    RODT_FIELD_DIVISION = 8,      /* smallest graduation of the tape */
    RODT_FIELD_DATE = 9,          /* day of the inspection */
    RODT_FIELD_UNIT = 10,         /* unit of bare lengths */
    RODT_FIELD_ENGINE = 11,       /* off or on during the test */
    RODT_FIELD_SPRING_BRAKE = 12, /* released or on during the test */
    RODT_FIELD_DRUM = 13,         /* cold, warm or hot */

    RODT_FIELD_POSITION = 24,     /* the wheel end, "1L" */
    RODT_FIELD_ARM_LENGTH = 25,   /* effective length of the slack adjuster */
    RODT_FIELD_ADJUSTER = 26,     /* manual or automatic */

    /* No field, in every version. The greatest number that an enum of C and 32 bits without a sign both hold: -1 would
     * be another number in a member of a struct than in a variable. */
    RODT_FIELD_NONE = 0x7fffffff
} rodt_field;
#define RODT_FIELD_END 27 /* one more than the last; grows in later versions */

/* The fields before this one are needed to judge. */
#define RODT_FIELD_NEEDED 3
/* One more than the last field of a reading; grows in later versions, up to RODT_FIELD_ROOM. */
#define RODT_READING_FIELDS 14
/* The elements of an array by field of a reading, in every version. Those from RODT_READING_FIELDS on are kept free. */
#define RODT_FIELD_ROOM 24

/* "stroke_class": the name of a field in every interface. Constant; "" for a number that is none. */
RODT_API const char *rodt_field_name(rodt_field field);

/* True if two headings are the same: capitals, blanks, underscores, hyphens, points and camelCase make no difference,
 * nor does a byte order mark in front. "Stroke Class", "stroke_class" and "strokeClass" are one heading. */
RODT_API bool rodt_heading_equal(const char *a, size_t a_size, const char *b, size_t b_size);

/* Finds the field that a heading names, by its name or one of its aliases ("pressure", "inspection date"), compared as
 * above. RODT_OK; RODT_E_SYNTAX: it names none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_field_find(const char *heading, RODT_ENUM32(rodt_field) *out);

/* As rodt_field_find, for size bytes that need not be closed by a zero byte. */
RODT_API RODT_MUST_CHECK rodt_status rodt_field_find_n(const char *heading, size_t size, RODT_ENUM32(rodt_field) *out);

/* The field that a heading probably means although rodt_field_find does not take it ("psi reading", "stroke type",
 * "day", or one slip of the keys: "engin"): worth a word to whoever owns the file, because the column is not read.
 * RODT_FIELD_NONE: none. */
RODT_API rodt_field rodt_field_meant(const char *heading, size_t size);

/* True if a text can be a value of the field, blanks and nothing at all included. False for a first cell means that the
 * column may be about something else (an "engine" named D13, a "division" named North). Fields whose readers explain
 * more than that (readings, chamber, date, pressures) take every text. */
RODT_API bool rodt_field_accepts(rodt_field field, const char *text, size_t size);

/* True if a text under "unit" can only be the name of a vehicle, such as T-104: fleets call a vehicle a unit. Such a
 * column is not the unit of the lengths. */
RODT_API bool rodt_unit_is_vehicle(const char *text, size_t size);

/* True if the first unit of length that a heading names is this one: "Released (mm)", "applied_in". Numbers below it
 * that name no unit are then in that unit, whatever a program would else read them in. heading is size bytes of
 * UTF-8; NULL, or a heading without a unit, is false for every unit. */
RODT_API bool rodt_heading_names_unit(const char *heading, size_t size, rodt_unit unit);

#ifdef __cplusplus
}
#endif
#endif
