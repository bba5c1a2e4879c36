/* SPDX-License-Identifier: Apache-2.0 */
/* The words of columns. */
#include "column/words.h"

BIT_WORDS(column_flag, ENUMERATOR(RODT_COLUMN_FLAG_MISSING, "missing", "a reading or the chamber is missing"),
          ENUMERATOR(RODT_COLUMN_FLAG_INVALID, "invalid", "a cell holds no reading, pressure, day or code"))

WORDS(text_layout, ENUMERATOR(RODT_TEXT_LAYOUT_ABSENT, "absent", "there is no such column"),
      ENUMERATOR(RODT_TEXT_LAYOUT_OFFSETS32, "offsets32", "where each text begins, in 32 bits"),
      ENUMERATOR(RODT_TEXT_LAYOUT_OFFSETS64, "offsets64", "where each text begins, in 64 bits"),
      ENUMERATOR(RODT_TEXT_LAYOUT_VIEWS, "views", "views of 16 bytes"),
      ENUMERATOR(RODT_TEXT_LAYOUT_SPANS, "spans", "pointers and sizes"))
