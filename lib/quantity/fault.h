/* SPDX-License-Identifier: Apache-2.0 */
/* What is wrong with a length, a pressure or a day that a program filled by hand: the values that no text could have.
 * Each function gives a sentence, or NULL: the value is all zero bytes, or it is one that a text can have. */
#ifndef RODT_QUANTITY_FAULT_H
#define RODT_QUANTITY_FAULT_H

#include "rodtravel/date.h"
#include "rodtravel/length.h"
#include "rodtravel/pressure.h"

const char *rodti_length_fault(rodt_length length);
const char *rodti_pressure_fault(rodt_pressure pressure);
const char *rodti_date_fault(rodt_date date);

#endif
