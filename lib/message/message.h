/* SPDX-License-Identifier: Apache-2.0 */
/* Inside messages: how they are made, and the parts of a template. */
#ifndef RODT_MESSAGE_INTERNAL_H
#define RODT_MESSAGE_INTERNAL_H

#include "core/template.h"
#include "rodtravel/length.h"
#include "rodtravel/message.h"
#include "rodtravel/pressure.h"

/* --- Making ------------------------------------------------------------------------------------------ */

/* Arguments are found in the order in which they are added, behind the clause that names them: so a clause comes before
 * its arguments, and nothing can name itself. */
void rodti_message_start(rodt_message *message, rodt_message_code code);
void rodti_message_clause(rodt_message *message, const char *name, rodt_message_code code);
void rodti_message_length(rodt_message *message, const char *name, rodt_length length, rodt_unit unit);
void rodti_message_limit(rodt_message *message, const char *name, rodt_length limit, rodt_unit unit);
void rodti_message_number(rodt_message *message, const char *name, rodt_ratio number, rodt_message_code phrase);
void rodti_message_count(rodt_message *message, const char *name, uint64_t count);
void rodti_message_pressure(rodt_message *message, const char *name, rodt_pressure psi);
/* True if a pressure was read in kPa: the gauge's unit says so, and it has a number there that a gauge can show. */
bool rodti_message_in_kpa(rodt_pressure pressure, rodt_pressure_unit unit, rodt_ratio *kpa);
void rodti_message_figure(rodt_message *message, const char *name, rodt_ratio number, rodt_message_code phrase,
                          unsigned digits);
void rodti_message_fraction(rodt_message *message, const char *name, rodt_ratio number);
void rodti_message_date(rodt_message *message, const char *name, rodt_date date);
/* All that another message says, as a clause. */
void rodti_message_append(rodt_message *message, const char *name, const rodt_message *other);
void rodti_message_text(rodt_message *message, const char *name, const char *text);

/* A sentence without arguments. RODT_OK; RODT_E_ARGUMENT: out is NULL. */
rodt_status rodti_message_sentence(rodt_message_code code, rodt_message *out);

/* Writes what a function that makes messages has made, in English. */
rodt_status rodti_message_say(rodt_status made, const rodt_message *message, char *text, size_t size, size_t *needed);

/* --- Figures ----------------------------------------------------------------------------------------- */

#define DIGITS_MAX 6u

/* Digits after the point that write the value exactly; DIGITS_MAX + 1 = it takes more. */
unsigned rodti_exact_digits(rodt_ratio value);

/* True for halves of halves, as gauges and tapes have them, down to 1 / den. */
bool rodti_is_halved(rodt_ratio value, int64_t den);

/* --- Templates --------------------------------------------------------------------------------------- */

/* The plural form of that index, which is *size bytes long; NULL if there are not so many. */
const char *rodti_template_form(const template_part *part, size_t index, size_t *size);

size_t rodti_plural_forms(uint32_t rule); /* 0 = no rule */
size_t rodti_plural_index(uint32_t rule, rodt_ratio number);

/* The template of a code; where the catalogue has none the English one, and *catalogue becomes NULL. NULL = no code. */
const char *rodti_template_of(const rodt_catalogue **catalogue, uint32_t code);

#endif
