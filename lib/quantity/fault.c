/* SPDX-License-Identifier: Apache-2.0 */
/* Values that no text could have. */
#include "quantity/fault.h"

#include "core/fault.h"
#include "core/number_parse.h"

const char *rodti_length_fault(rodt_length length)
{
    const char *fault = rodti_ratio_fault(EXACT(length), RODT_LENGTH_MAX_INCHES,
                                          "no rod position or stroke is longer than 24 in");
    if (fault != NULL || !rodt_length_given(length))
        return fault;
    if (length.den > NUMBER_DEN_MAX)
        return rodti_sentence(RODT_MESSAGE_ERROR_DIGITS);
    return rodti_number_is_on_a_tape(length.den) ? NULL : rodti_sentence(RODT_MESSAGE_ERROR_NO_TAPE);
}

const char *rodti_pressure_fault(rodt_pressure pressure)
{
    return rodti_ratio_fault(EXACT(pressure), RODT_PRESSURE_MAX_PSI, "no brake gauge shows more than 300 psi");
}

const char *rodti_date_fault(rodt_date date)
{
    rodt_date made;
    bool absent = date.year == 0 && date.month == 0 && date.day == 0;
    if (absent || rodt_date_make(date.year, date.month, date.day, &made) == RODT_OK)
        return NULL;
    return rodti_sentence(RODT_MESSAGE_ERROR_NO_SUCH_DAY);
}
