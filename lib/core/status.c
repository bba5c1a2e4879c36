/* SPDX-License-Identifier: Apache-2.0 */
/* One sentence for every status, and the version. */
#include "rodtravel/status.h"

#include "core/common.h"

static const char *const sentences[] = {
    [RODT_OK] = "done",
    [RODT_E_ARGUMENT] = "the program passed a missing or impossible value",
    [RODT_E_SPACE] = "the buffer for the text is too small",
    [RODT_E_EMPTY] = "nothing is written here",
    [RODT_E_SYNTAX] = "this cannot be read as what is asked for here",
    [RODT_E_AMBIGUOUS] = "this can mean more than one value",
    [RODT_E_UNIT] = "the unit does not fit here",
    [RODT_E_DATE_CELL] = "a spreadsheet has turned this value into a date",
    [RODT_E_NEGATIVE] = "this cannot be below zero",
    [RODT_E_IMPLAUSIBLE] = "this is larger than any such reading can be",
    [RODT_E_RANGE] = "this has more digits than can be kept exactly",
    [RODT_E_UNKNOWN_RULES] = "there is no rule set of this name",
    [RODT_E_UNKNOWN_CHAMBER] = "this is no chamber mark that is known",
    [RODT_E_TABLE] = "the table is not valid",
    [RODT_E_LAXER] = "a limit in the table is laxer than the law",
    [RODT_E_MEMORY] = "there is no memory left",
    [RODT_E_INTERNAL] = "this is a fault in the library, please report it",
};

const char *rodt_status_text(rodt_status status)
{
    size_t index = (size_t)status;
    if (index >= COUNT_OF(sentences) || sentences[index] == NULL)
        return "unknown status";
    return sentences[index];
}

const char *rodt_version(void) { return RODT_VERSION; }

uint32_t rodt_version_number(void) { return RODT_VERSION_NUMBER; }
