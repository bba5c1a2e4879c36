/* SPDX-License-Identifier: Apache-2.0 */
/* The words of an air check, as options and records have them. */
#ifndef AIR_WORDS_H
#define AIR_WORDS_H

#include "ui/options.h"

#include <rodtravel/rodtravel.h>

#define SPAN_WORDS ((size_t)3)
#define VEHICLE_WORDS ((size_t)3)

extern const choice span_words[SPAN_WORDS];       /* meanings: rodt_air_span */
extern const choice vehicle_words[VEHICLE_WORDS]; /* meanings: rodt_vehicle_class */

/* RODT_AIR_CHECK_NONE: there is no such check, or text is NULL. */
rodt_air_check air_check_of(const char *text);

#endif
