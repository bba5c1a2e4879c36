/* SPDX-License-Identifier: Apache-2.0 */
/* Errors and statuses as messages. */
#include "core/error.h"
#include "message/message.h"

#include <string.h>

static bool is_closed(const char *text, size_t room) { return memchr(text, '\0', room) != NULL; }

static bool is_error(const rodt_error *error)
{
    if (error == NULL || error->count > RODT_ERROR_ARGUMENTS || !is_closed(error->text, sizeof error->text))
        return false;
    for (uint32_t i = 0; i < error->count; i++) {
        const rodt_error_argument *argument = &error->arguments[i];
        if (argument->name == NULL || !is_closed(argument->word, sizeof argument->word))
            return false;
    }
    return true;
}

rodt_status rodt_error_message(const rodt_error *error, rodt_message *out)
{
    if (!is_error(error) || out == NULL)
        return RODT_E_ARGUMENT;
    if (error->code == RODT_MESSAGE_NONE) {
        rodti_message_start(out, RODT_MESSAGE_ERROR_ENGLISH);
        rodti_message_text(out, "text", error->text);
        return RODT_OK;
    }
    rodti_message_start(out, (rodt_message_code)error->code);
    for (uint32_t i = 0; i < error->count; i++) {
        const rodt_error_argument *argument = &error->arguments[i];
        if (argument->code != RODT_MESSAGE_NONE)
            rodti_message_clause(out, argument->name, (rodt_message_code)argument->code);
        else
            rodti_message_text(out, argument->name, argument->word);
    }
    return RODT_OK;
}

rodt_status rodt_status_message(rodt_status status, rodt_message *out)
{
    rodt_message_code code = rodti_status_code(status);
    return code != RODT_MESSAGE_NONE ? rodti_message_sentence(code, out) : RODT_E_ARGUMENT;
}
