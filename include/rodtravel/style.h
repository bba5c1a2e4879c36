/* SPDX-License-Identifier: Apache-2.0 */
/* How the texts of a form are written: the units of bare numbers, and the decimal sign. Every reader takes it. */
#ifndef RODTRAVEL_STYLE_H
#define RODTRAVEL_STYLE_H

#include <stdbool.h>

#include "status.h"

#ifdef __cplusplus
extern "C" {
#endif

/* The unit of a bare length, or the one in which a length was written. */
typedef enum rodt_unit RODT_ENUM_TYPE {
    RODT_UNIT_IN = 0, /* inches */
    RODT_UNIT_MM = 1,   /* millimetres */
    RODT_UNIT_CM = 2    /* centimetres */
} rodt_unit;
#define RODT_UNIT_END 3 /* one more than the last; grows in later versions */

/* The stable word of a unit, "in", "mm" or "cm"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_unit_name(rodt_unit unit);

/* Finds a unit by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there is none;
 * RODT_E_ARGUMENT: a pointer is NULL. rodt_unit_parse reads what people write in a form. */
RODT_API RODT_MUST_CHECK rodt_status rodt_unit_find(const char *word, RODT_ENUM32(rodt_unit) *out);

/* Reads a unit as written in a form: "in", "inches", "po", the inch mark, "mm", "centimetres" and the like, whatever
 * its capitals and the blanks around it. RODT_OK; RODT_E_EMPTY; RODT_E_SYNTAX: it names none; RODT_E_ARGUMENT. */
RODT_API RODT_MUST_CHECK rodt_status rodt_unit_parse(const char *text, RODT_ENUM32(rodt_unit) *out, rodt_error *error);

/* As rodt_unit_parse, for size bytes that need not be closed by a zero byte. */
RODT_API RODT_MUST_CHECK rodt_status rodt_unit_parse_n(const char *text, size_t size, RODT_ENUM32(rodt_unit) *out,
                                                       rodt_error *error);

/* The unit of a bare pressure, or the one in which a pressure was written. */
typedef enum rodt_pressure_unit RODT_ENUM_TYPE {
    RODT_PRESSURE_UNIT_PSI = 0, /* pounds per square inch */
    RODT_PRESSURE_UNIT_KPA = 1  /* kilopascals */
} rodt_pressure_unit;
#define RODT_PRESSURE_UNIT_END 2 /* one more than the last; grows in later versions */

/* The stable word of a unit of pressure, "psi" or "kpa"; "" for a number that is none. Constant, never NULL. */
RODT_API const char *rodt_pressure_unit_name(rodt_pressure_unit unit);

/* Finds a unit of pressure by its word, whatever its capitals and the blanks around it. RODT_OK; RODT_E_SYNTAX: there
 * is none; RODT_E_ARGUMENT: a pointer is NULL. */
RODT_API RODT_MUST_CHECK rodt_status rodt_pressure_unit_find(const char *word, RODT_ENUM32(rodt_pressure_unit) *out);

/* How the texts of a form are written. All zero: bare lengths are inches, bare pressures are psi, the decimal sign is a
 * point. */
typedef struct rodt_style {
    RODT_ENUM32(rodt_unit) unit; /* of a length that names none; a unit in the text is stronger */
    RODT_ENUM32(rodt_pressure_unit) pressure_unit; /* of a pressure that names none; the same */
    bool decimal_comma;   /* the decimal sign is a comma: "2,125" is 2 1/8, never 2125 */
    uint64_t reserved[2]; /* zero */
} rodt_style;

#ifdef __cplusplus
}
#endif
#endif
