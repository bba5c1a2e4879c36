/* SPDX-License-Identifier: Apache-2.0 */
/* The words of a status, and the version. */
#include "core/words.h"

WORDS(status, ENUMERATOR(RODT_OK, "ok", "done"),
      ENUMERATOR(RODT_E_ARGUMENT, "argument", "the program passed a missing or impossible value"),
      ENUMERATOR(RODT_E_SPACE, "space", "the buffer for the text is too small"),
      ENUMERATOR(RODT_E_EMPTY, "empty", "nothing is written here"),
      ENUMERATOR(RODT_E_SYNTAX, "syntax", "this cannot be read as what is asked for here"),
      ENUMERATOR(RODT_E_AMBIGUOUS, "ambiguous", "this can mean more than one value"),
      ENUMERATOR(RODT_E_UNIT, "unit", "the unit does not fit here"),
      ENUMERATOR(RODT_E_DATE_CELL, "date-cell", "a spreadsheet has turned this value into a date"),
      ENUMERATOR(RODT_E_NEGATIVE, "negative", "this cannot be below zero"),
      ENUMERATOR(RODT_E_IMPLAUSIBLE, "implausible", "this is larger than any such reading can be"),
      ENUMERATOR(RODT_E_RANGE, "range", "this has more digits than can be kept exactly"),
      ENUMERATOR(RODT_E_UNKNOWN_RULES, "unknown-rules", "there is no rule set of this name"),
      ENUMERATOR(RODT_E_UNKNOWN_CHAMBER, "unknown-chamber", "this is no chamber mark that is known"),
      ENUMERATOR(RODT_E_TABLE, "table", "the table is not valid"),
      ENUMERATOR(RODT_E_LAXER, "laxer", "a limit in the table is laxer than the law"),
      ENUMERATOR(RODT_E_MEMORY, "memory", "there is no memory left"),
      ENUMERATOR(RODT_E_INTERNAL, "internal", "this is a fault in the library, please report it"))

const char *rodt_status_text(rodt_status status)
{
    const rodt_enumerator *found = rodt_enumerator_of(&rodti_words_status, status);
    return found != NULL ? found->text : "unknown status";
}

WORDS(recorded, ENUMERATOR(RODT_RECORDED_NOT_RECORDED, "not-recorded", "nobody wrote it down"),
      ENUMERATOR(RODT_RECORDED_NO, "no", "it was not so"), ENUMERATOR(RODT_RECORDED_YES, "yes", "it was so"))

const char *rodt_version(void) { return RODT_VERSION; }

uint32_t rodt_version_number(void) { return RODT_VERSION_NUMBER; }
