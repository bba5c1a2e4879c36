/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of the library in French. */
#ifndef CATALOGUE_FR_H
#define CATALOGUE_FR_H

#include <rodtravel/rodtravel.h>

extern const rodt_catalogue catalogue_fr;

#endif
