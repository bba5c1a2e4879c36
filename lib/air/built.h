/* SPDX-License-Identifier: Apache-2.0 */
/* The day of build of a vehicle, from text. */
#ifndef RODT_AIR_BUILT_H
#define RODT_AIR_BUILT_H

#include "rodtravel/aircheck.h"

/* Reads a day, or a year by itself, which has month and day 0. Statuses as rodt_date_parse_n. */
rodt_status rodti_built_parse_n(const char *text, size_t size, rodt_date_order order, rodt_date *out,
                                rodt_error *error);

#endif
