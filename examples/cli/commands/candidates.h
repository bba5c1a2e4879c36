/* SPDX-License-Identifier: Apache-2.0 */
/* What is said of the chambers that the clues allow, by whoever asks for the clues. */
#ifndef COMMANDS_CANDIDATES_H
#define COMMANDS_CANDIDATES_H

#include "ui/language.h"

#include <rodtravel/rodtravel.h>

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* What is stamped on a housing of that family, which may be unknown. RODT_OK, or what rodt_chamber_parse refuses. */
rodt_status read_stamp_clue(const char *text, rodt_family family, rodt_chamber *out, rodt_error *error);

/* "stamp, port shape": RODT_CLUE_ bits. */
void name_clues(uint32_t clues, char *words, size_t size);

/* Which clues cannot all be true. */
const char *say_contradiction(uint32_t clues, char text[SAID_SIZE]);

/* Whatever it is, the limit is the same. */
bool candidates_have_one_limit(const rodt_identification *answer);

/* What to look at next. */
const char *say_next_observation(const rodt_identification *answer, char text[SAID_SIZE]);

#endif
