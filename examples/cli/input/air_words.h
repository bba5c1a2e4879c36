/* SPDX-License-Identifier: Apache-2.0 */
/* The words of an air check, as options and records have them. */
#ifndef AIR_WORDS_H
#define AIR_WORDS_H

#include "ui/options.h"

#define SPAN_WORDS ((size_t)3)
#define VEHICLE_WORDS ((size_t)3)

extern const choice span_words[SPAN_WORDS];       /* meanings: rodt_air_span */
extern const choice vehicle_words[VEHICLE_WORDS]; /* meanings: rodt_vehicle_class */

#endif
