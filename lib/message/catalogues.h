/* SPDX-License-Identifier: Apache-2.0 */
/* The catalogues that the library brings along; catalogc makes them of lib/message/languages. */
#ifndef RODT_CATALOGUES_H
#define RODT_CATALOGUES_H

#include "rodtravel/message.h"

extern const rodt_catalogue rodti_catalogues[];
extern const size_t rodti_catalogue_count;

#endif
