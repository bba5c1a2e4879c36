/* SPDX-License-Identifier: Apache-2.0 */
/* The words of kinds of members and options of JSON. */
#include "describe/words.h"

WORDS(member_kind, ENUMERATOR(RODT_MEMBER_KIND_LENGTH, "length", "an exact length"),
      ENUMERATOR(RODT_MEMBER_KIND_PRESSURE, "pressure", "an exact pressure"),
      ENUMERATOR(RODT_MEMBER_KIND_RATIO, "ratio", "an exact number"),
      ENUMERATOR(RODT_MEMBER_KIND_DATE, "date", "a day"),
      ENUMERATOR(RODT_MEMBER_KIND_POSITION, "position", "axle and side"),
      ENUMERATOR(RODT_MEMBER_KIND_ENUMERATOR, "enumerator", "a number of an enumeration"),
      ENUMERATOR(RODT_MEMBER_KIND_SET, "set", "a set of enumerators"),
      ENUMERATOR(RODT_MEMBER_KIND_BOOLEAN, "boolean", "true or false"),
      ENUMERATOR(RODT_MEMBER_KIND_INTEGER, "integer", "a signed integer"),
      ENUMERATOR(RODT_MEMBER_KIND_UNSIGNED, "unsigned", "an unsigned integer"),
      ENUMERATOR(RODT_MEMBER_KIND_INDEX, "index", "the index of an element of another array"),
      ENUMERATOR(RODT_MEMBER_KIND_TEXT, "text", "a text inside of the record"),
      ENUMERATOR(RODT_MEMBER_KIND_TEXT_POINTER, "text-pointer", "a pointer to a text"),
      ENUMERATOR(RODT_MEMBER_KIND_RECORD, "record", "a record inside of the record"),
      ENUMERATOR(RODT_MEMBER_KIND_RECORD_POINTER, "record-pointer", "a pointer to a record"),
      ENUMERATOR(RODT_MEMBER_KIND_RULES, "rules", "a pointer to a rule set"),
      ENUMERATOR(RODT_MEMBER_KIND_POINTER, "pointer", "a pointer to memory of the program"),
      ENUMERATOR(RODT_MEMBER_KIND_RESERVE, "reserve", "room for later versions"))

BIT_WORDS(json_option, ENUMERATOR(RODT_JSON_OPTION_PARTS, "parts", "exact numbers with numerator and denominator"))
