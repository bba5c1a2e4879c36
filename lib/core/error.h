/* SPDX-License-Identifier: Apache-2.0 */
/* Errors whose sentence is data: a code, and what it is said with. */
#ifndef RODT_ERROR_H
#define RODT_ERROR_H

#include "core/common.h"
#include "rodtravel/status.h"

/* The English sentence of a code of sentences.h, with its arguments as they stand in the template; "" for another. */
const char *rodti_sentence(rodt_message_code code);

/* The sentence of a status; RODT_MESSAGE_NONE for RODT_OK and a number that is none. */
rodt_message_code rodti_status_code(rodt_status status);

/* Arguments of the name: a phrase; words as they stand, cut to their room; a character of the text as it is shown. */
rodt_error_argument rodti_error_phrase(const char *name, rodt_message_code phrase);
rodt_error_argument rodti_error_word(const char *name, const char *word);
rodt_error_argument rodti_error_character(const char *name, uint32_t character);

/* Each fills *error (may be NULL) and returns status. The field stays empty. The first is for a sentence without
 * arguments, the last for that of the status itself. */
rodt_status rodti_error(rodt_error *error, rodt_status status, uint32_t column, rodt_message_code code);
rodt_status rodti_error_with(rodt_error *error, rodt_status status, uint32_t column, rodt_message_code code,
                             const rodt_error_argument *arguments, size_t count);
rodt_status rodti_error_status(rodt_error *error, rodt_status status);

#endif
