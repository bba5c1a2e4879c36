/* SPDX-License-Identifier: Apache-2.0 */
/* The words of units and of the order of dates. */
#ifndef RODT_QUANTITY_WORDS_H
#define RODT_QUANTITY_WORDS_H

#include "core/words.h"
#include "rodtravel/date.h"
#include "rodtravel/style.h"

extern const rodt_enumeration rodti_words_unit, rodti_words_pressure_unit, rodti_words_date_order;

#endif
