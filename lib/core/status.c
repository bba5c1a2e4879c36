/* SPDX-License-Identifier: Apache-2.0 */
/* The words of a status, and the version. */
#include "core/sentences.h"

WORDS(status, ENUMERATOR(RODT_OK, "ok", "done"),
      ENUMERATOR(RODT_E_ARGUMENT, "argument", SENTENCE_STATUS_ARGUMENT),
      ENUMERATOR(RODT_E_SPACE, "space", SENTENCE_STATUS_SPACE),
      ENUMERATOR(RODT_E_EMPTY, "empty", SENTENCE_STATUS_EMPTY),
      ENUMERATOR(RODT_E_SYNTAX, "syntax", SENTENCE_STATUS_SYNTAX),
      ENUMERATOR(RODT_E_AMBIGUOUS, "ambiguous", SENTENCE_STATUS_AMBIGUOUS),
      ENUMERATOR(RODT_E_UNIT, "unit", SENTENCE_STATUS_UNIT),
      ENUMERATOR(RODT_E_DATE_CELL, "date-cell", SENTENCE_STATUS_DATE_CELL),
      ENUMERATOR(RODT_E_NEGATIVE, "negative", SENTENCE_STATUS_NEGATIVE),
      ENUMERATOR(RODT_E_IMPLAUSIBLE, "implausible", SENTENCE_STATUS_IMPLAUSIBLE),
      ENUMERATOR(RODT_E_RANGE, "range", SENTENCE_STATUS_RANGE),
      ENUMERATOR(RODT_E_UNKNOWN_RULES, "unknown-rules", SENTENCE_STATUS_UNKNOWN_RULES),
      ENUMERATOR(RODT_E_UNKNOWN_CHAMBER, "unknown-chamber", SENTENCE_STATUS_UNKNOWN_CHAMBER),
      ENUMERATOR(RODT_E_TABLE, "table", SENTENCE_STATUS_TABLE),
      ENUMERATOR(RODT_E_LAXER, "laxer", SENTENCE_STATUS_LAXER),
      ENUMERATOR(RODT_E_MEMORY, "memory", SENTENCE_STATUS_MEMORY),
      ENUMERATOR(RODT_E_INTERNAL, "internal", SENTENCE_STATUS_INTERNAL))

const char *rodt_status_text(rodt_status status)
{
    const rodt_enumerator *found = rodt_enumerator_of(&rodti_words_status, status);
    return found != NULL ? found->text : "unknown status";
}

WORDS(recorded, ENUMERATOR(RODT_RECORDED_NOT_RECORDED, "not-recorded", "nobody wrote it down"),
      ENUMERATOR(RODT_RECORDED_NO, "no", "it was not so"), ENUMERATOR(RODT_RECORDED_YES, "yes", "it was so"))

const char *rodt_version(void) { return RODT_VERSION; }

uint32_t rodt_version_number(void) { return RODT_VERSION_NUMBER; }
