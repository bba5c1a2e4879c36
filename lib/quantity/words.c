/* SPDX-License-Identifier: Apache-2.0 */
/* The words of units and of the order of dates. */
#include "quantity/words.h"

WORDS(unit, ENUMERATOR(RODT_UNIT_IN, "in", "inch"), ENUMERATOR(RODT_UNIT_MM, "mm", "millimetre"),
      ENUMERATOR(RODT_UNIT_CM, "cm", "centimetre"))

WORDS(pressure_unit, ENUMERATOR(RODT_PRESSURE_UNIT_PSI, "psi", "pound per square inch"),
      ENUMERATOR(RODT_PRESSURE_UNIT_KPA, "kpa", "kilopascal"))

WORDS(date_order, ENUMERATOR(RODT_DATE_ORDER_UNKNOWN, "unknown", "the order of the numbers of a date is not known"),
      ENUMERATOR(RODT_DATE_ORDER_DAY_FIRST, "day-first", "day, month, year"),
      ENUMERATOR(RODT_DATE_ORDER_MONTH_FIRST, "month-first", "month, day, year"),
      ENUMERATOR(RODT_DATE_ORDER_YEAR_FIRST, "year-first", "year, month, day"))
