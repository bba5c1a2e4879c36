/* SPDX-License-Identifier: Apache-2.0 */
/* Why a text is no number: the reason that helps the writer most. */
#include "number_text.h"

rodt_status number_text_refuse(const char *text, size_t size, bool decimal_comma, const number_problem *problem,
                               rodt_error *error)
{
    (void)text;
    (void)size;
    (void)decimal_comma;
    if (problem->wanted != NULL)
        return text_error(error, problem->status, problem->column, "%s was expected here", problem->wanted);
    return text_error(error, problem->status, problem->column, "%s", problem->sentence);
}
