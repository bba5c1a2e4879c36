/* SPDX-License-Identifier: Apache-2.0 */
/* The words of families and stroke classes. */
#include "chamber/words.h"

WORDS(family, ENUMERATOR(RODT_FAMILY_UNKNOWN, "unknown", "how the housing is built is not known"),
      ENUMERATOR(RODT_FAMILY_CLAMP, "clamp", "two halves and a clamp band around them"),
      ENUMERATOR(RODT_FAMILY_BOLT, "bolt", "two halves and a flange with bolts"),
      ENUMERATOR(RODT_FAMILY_ROTOCHAMBER, "rotochamber", "a rolling diaphragm"),
      ENUMERATOR(RODT_FAMILY_DD_3, "DD-3", "a double diaphragm with three air lines"))

WORDS(stroke_class,
      ENUMERATOR(RODT_STROKE_CLASS_UNKNOWN, "unknown", "no sign of long stroke is known; judged as standard"),
      ENUMERATOR(RODT_STROKE_CLASS_STANDARD, "standard", "standard stroke"),
      ENUMERATOR(RODT_STROKE_CLASS_LONG, "long", "long stroke: more travel in the same diameter"),
      ENUMERATOR(RODT_STROKE_CLASS_ANY, "any", "of a row of limits: every class"))
