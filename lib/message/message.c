/* SPDX-License-Identifier: Apache-2.0 */
/* Making messages, argument by argument. */
#include "message/message.h"

#include "core/exact.h"

#include <string.h>

void rodti_message_start(rodt_message *message, rodt_message_code code)
{
    memset(message, 0, sizeof *message);
    message->code = code;
}

/* No message of the library is full. */
static rodt_argument *add(rodt_message *message, const char *name, rodt_argument_kind kind)
{
    message->count += message->count < RODT_MESSAGE_ARGUMENTS;
    rodt_argument *argument = &message->arguments[message->count - 1];
    argument->name = name;
    argument->kind = kind;
    return argument;
}

void rodti_message_clause(rodt_message *message, const char *name, rodt_message_code code)
{
    add(message, name, RODT_ARGUMENT_KIND_CLAUSE)->code = code;
}

void rodti_message_append(rodt_message *message, const char *name, const rodt_message *other)
{
    rodti_message_clause(message, name, (rodt_message_code)other->code);
    for (uint32_t i = 0; i < other->count; i++)
        *add(message, other->arguments[i].name, RODT_ARGUMENT_KIND_NONE) = other->arguments[i];
}

static void add_number(rodt_message *message, const char *name, rodt_argument_kind kind, rodt_ratio number,
                       rodt_message_code phrase)
{
    rodt_argument *argument = add(message, name, kind);
    argument->number = number;
    argument->code = phrase;
}

/* Readings in centimetres are spoken of in millimetres. */
static rodt_message_code said_in(rodt_unit unit)
{
    return unit == RODT_UNIT_IN ? RODT_MESSAGE_VALUE_INCHES : RODT_MESSAGE_VALUE_MM;
}

void rodti_message_length(rodt_message *message, const char *name, rodt_length length, rodt_unit unit)
{
    add_number(message, name, RODT_ARGUMENT_KIND_LENGTH, EXACT(length), said_in(unit));
}

void rodti_message_limit(rodt_message *message, const char *name, rodt_length limit, rodt_unit unit)
{
    add_number(message, name, RODT_ARGUMENT_KIND_LIMIT, EXACT(limit), said_in(unit));
}

void rodti_message_number(rodt_message *message, const char *name, rodt_ratio number, rodt_message_code phrase)
{
    add_number(message, name, RODT_ARGUMENT_KIND_NUMBER, number, phrase);
}

void rodti_message_count(rodt_message *message, const char *name, uint64_t count)
{
    rodti_message_number(message, name, (rodt_ratio){(int64_t)count, 1}, RODT_MESSAGE_NONE);
}

void rodti_message_pressure(rodt_message *message, const char *name, rodt_pressure psi)
{
    rodti_message_number(message, name, EXACT(psi), RODT_MESSAGE_NONE);
}

void rodti_message_figure(rodt_message *message, const char *name, rodt_ratio number, rodt_message_code phrase,
                          unsigned digits)
{
    add_number(message, name, RODT_ARGUMENT_KIND_FIGURE, number, phrase);
    message->arguments[message->count - 1].digits = (int16_t)digits;
}

bool rodti_message_in_kpa(rodt_pressure pressure, rodt_pressure_unit unit, rodt_ratio *kpa)
{
    return unit == RODT_PRESSURE_UNIT_KPA && rodt_pressure_convert(pressure, unit, kpa) == RODT_OK &&
           rodti_exact_digits(*kpa) <= DIGITS_MAX;
}

void rodti_message_fraction(rodt_message *message, const char *name, rodt_ratio number)
{
    add_number(message, name, RODT_ARGUMENT_KIND_FRACTION, number, RODT_MESSAGE_NONE);
}

void rodti_message_date(rodt_message *message, const char *name, rodt_date date)
{
    add(message, name, RODT_ARGUMENT_KIND_DATE)->date = date;
}

void rodti_message_text(rodt_message *message, const char *name, const char *text)
{
    add(message, name, RODT_ARGUMENT_KIND_TEXT)->text = text;
}

const rodt_argument *rodt_message_argument(const rodt_message *message, const char *name)
{
    if (message == NULL || name == NULL)
        return NULL;
    for (uint32_t i = 0; i < message->count && i < RODT_MESSAGE_ARGUMENTS; i++) {
        if (message->arguments[i].name != NULL && strcmp(message->arguments[i].name, name) == 0)
            return &message->arguments[i];
    }
    return NULL;
}

rodt_status rodti_message_sentence(rodt_message_code code, rodt_message *out)
{
    if (out == NULL)
        return RODT_E_ARGUMENT;
    rodti_message_start(out, code);
    return RODT_OK;
}

rodt_status rodti_message_say(rodt_status made, const rodt_message *message, char *text, size_t size, size_t *needed)
{
    return made == RODT_OK ? rodt_message_format(message, NULL, text, size, needed) : made;
}
