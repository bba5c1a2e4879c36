/* SPDX-License-Identifier: Apache-2.0 */
/* What a chamber can be. */
#ifndef RODT_CHAMBER_CHECK_H
#define RODT_CHAMBER_CHECK_H

#include "core/common.h"
#include "rodtravel/chamber.h"

/* True for a length that can be marked on a housing as its rated stroke or its limit. Rated strokes of service chambers
 * are 1 3/8 to 3 in and more, their limits from 1 1/4 on; the bounds of 3/4 to 6 in only tell a number in another unit,
 * or a 0 that means "none". (Plausibility bounds of this library, not figures of law.) */
bool rodti_is_mark(rodt_length length);

/* True for the text of a type number, 1 to 99, and for the letter of a bolt-type chamber, A to G. */
bool rodti_is_type_number(const char *size);
bool rodti_is_bolt_letter(const char *size);

#endif
