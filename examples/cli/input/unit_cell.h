/* SPDX-License-Identifier: Apache-2.0 */
/* A column headed "unit": a unit of length, or the name of a vehicle? */
#ifndef UNIT_CELL_H
#define UNIT_CELL_H

#include <stdbool.h>

/* True if the text under "unit" in a first row is no unit of length but names a vehicle, such as T-104; that is said on
 * stderr. what = "column" or "member"; NULL is no text (unit_cell.c). */
bool is_vehicle_unit(const char *text, const char *what);

#endif
