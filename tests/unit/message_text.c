/* SPDX-License-Identifier: Apache-2.0 */
/* Messages as lines. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <stdio.h>

#include "message_text.h"

static size_t put_argument(char *text, size_t size, const rodt_argument *argument)
{
    size_t used = (size_t)snprintf(text, size, " %s=", argument->name);
    if (argument->number.den != 0 || argument->number.num != 0)
        used += (size_t)snprintf(text + used, size - used, "%lld/%lld", (long long)argument->number.num,
                                 (long long)argument->number.den);
    if (argument->code != RODT_MESSAGE_NONE)
        used += (size_t)snprintf(text + used, size - used, "%s%s", used > 0 && text[used - 1] != '=' ? " " : "",
                                 rodt_message_code_name(argument->code));
    if (argument->digits != 0)
        used += (size_t)snprintf(text + used, size - used, " %d", argument->digits);
    if (argument->text != NULL)
        used += (size_t)snprintf(text + used, size - used, "\"%s\"", argument->text);
    return used;
}

void expect_message(const rodt_message *message, const char *text)
{
    char made[2000];
    size_t used = (size_t)snprintf(made, sizeof made, "%s", rodt_message_code_name(message->code));
    for (uint32_t i = 0; i < message->count; i++) {
        assert_true(used + 300 < sizeof made);
        used += put_argument(made + used, sizeof made - used, &message->arguments[i]);
    }
    assert_string_equal(made, text);
}
