/* SPDX-License-Identifier: Apache-2.0 */
/* Errors whose sentence is data: the English text is made here, at once, so that an error is complete by itself. */
#include "core/error.h"

#include "core/sentences.h"
#include "core/template.h"
#include "core/text.h"

#include <string.h>

static const rodt_enumerator rows[] = {ERROR_SENTENCES};
static const rodt_enumeration sentences = {.list = rows, .count = COUNT_OF(rows)};

const char *rodti_sentence(rodt_message_code code) { return rodti_text_of(&sentences, (int64_t)code); }

rodt_message_code rodti_status_code(rodt_status status)
{
    int code = (int)RODT_MESSAGE_STATUS_ARGUMENT - (int)RODT_E_ARGUMENT + (int)status;
    bool known = status != RODT_OK && rodt_status_name(status)[0] != '\0';
    return known ? (rodt_message_code)code : RODT_MESSAGE_NONE;
}

rodt_error_argument rodti_error_phrase(const char *name, rodt_message_code phrase)
{
    return (rodt_error_argument){.name = name, .code = phrase};
}

rodt_error_argument rodti_error_word(const char *name, const char *word)
{
    rodt_error_argument made = {.name = name};
    size_t size = strlen(word);
    memcpy(made.word, word, size < sizeof made.word ? size : rodti_text_cut(word, sizeof made.word - 1));
    return made;
}

rodt_error_argument rodti_error_character(const char *name, uint32_t character)
{
    char shown[TEXT_SHOWN_SIZE];
    if (character == TEXT_END)
        return rodti_error_phrase(name, RODT_MESSAGE_ERROR_FOUND_END);
    if (character == TEXT_BAD)
        return rodti_error_phrase(name, RODT_MESSAGE_ERROR_FOUND_BROKEN_BYTE);
    rodti_text_show(character, shown);
    return rodti_error_word(name, shown);
}

static void put_argument(text_writer *writer, const template_part *part, const rodt_error_argument *arguments,
                         size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const rodt_error_argument *argument = &arguments[i];
        if (rodti_template_is(part, argument->name))
            rodti_text_put(writer, argument->code != 0 ? rodti_sentence((rodt_message_code)argument->code)
                                                       : argument->word);
    }
}

rodt_status rodti_error_with(rodt_error *error, rodt_status status, uint32_t column, rodt_message_code code,
                             const rodt_error_argument *arguments, size_t count)
{
    if (error == NULL)
        return status;
    text_writer writer;
    rodti_text_begin(&writer);
    const char *at = rodti_sentence(code);
    for (template_part part = rodti_template_next(&at); part.kind != TEMPLATE_END; part = rodti_template_next(&at)) {
        if (part.kind == TEMPLATE_TEXT)
            rodti_text_putf(&writer, "%.*s", (int)part.size, part.text);
        else
            put_argument(&writer, &part, arguments, count);
    }
    rodti_text_error(error, status, column, "%s", writer.buffer);
    error->code = code;
    error->count = (uint32_t)count;
    for (size_t i = 0; i < count; i++)
        error->arguments[i] = arguments[i];
    return status;
}

rodt_status rodti_error(rodt_error *error, rodt_status status, uint32_t column, rodt_message_code code)
{
    return rodti_error_with(error, status, column, code, NULL, 0);
}

rodt_status rodti_error_status(rodt_error *error, rodt_status status)
{
    return rodti_error(error, status, 0, rodti_status_code(status));
}
