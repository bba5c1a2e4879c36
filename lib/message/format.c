/* SPDX-License-Identifier: Apache-2.0 */
/* Messages as texts: the one place where templates are filled. */
#include "message/message.h"

#include "core/always.h"
#include "core/exact.h"
#include "core/fault.h"

#include <stdio.h>
#include <string.h>

#define NUMBER_SIZE 96

/* Written twice: first only counted, then into a text that has room for it. */
typedef struct text_sink {
    const rodt_catalogue *catalogue;
    char *text; /* NULL = counted */
    size_t used;
} text_sink;

static void put(text_sink *sink, const char *text, size_t size)
{
    if (sink->text != NULL)
        memcpy(sink->text + sink->used, text, size);
    sink->used += size;
}

static bool put_arguments(text_sink *sink, uint32_t code, const rodt_argument *arguments, size_t count);

/* --- Numbers ----------------------------------------------------------------------------------------- */

unsigned rodti_exact_digits(rodt_ratio value)
{
    unsigned digits = 0;
    while (value.den != 1 && digits <= DIGITS_MAX) {
        if (!rodti_exact_multiply(value, (rodt_ratio){10, 1}, &value))
            return DIGITS_MAX + 1;
        digits++;
    }
    return digits;
}

bool rodti_is_halved(rodt_ratio value, int64_t den) { return (value.den & (value.den - 1)) == 0 && value.den <= den; }

/* The next digit of rest / den, and what it leaves. Ten times the rest may not fit, so it is added ten times. */
static int64_t take_digit(int64_t *rest, int64_t den)
{
    int64_t digit = 0, left = 0;
    for (int i = 0; i < 10; i++) {
        bool full = left >= den - *rest;
        left = full ? left - (den - *rest) : left + *rest;
        digit += full;
    }
    *rest = left;
    return digit;
}

/* A half is rounded away from zero. */
static void write_decimal(const text_sink *sink, rodt_ratio value, unsigned digits, char text[NUMBER_SIZE])
{
    const char *sign = sink->catalogue != NULL ? sink->catalogue->decimal_sign : ".";
    bool negative = value.num < 0;
    int64_t num = negative ? -value.num : value.num;
    int64_t whole = num / value.den, rest = num % value.den, part = 0, scale = 1;
    for (unsigned i = 0; i < digits; i++) {
        part = part * 10 + take_digit(&rest, value.den);
        scale *= 10;
    }
    part += rest >= value.den - rest;
    whole += part / scale;
    part %= scale;
    if (digits == 0)
        snprintf(text, NUMBER_SIZE, "%s%lld", negative ? "-" : "", (long long)whole);
    else
        snprintf(text, NUMBER_SIZE, "%s%lld%s%0*lld", negative ? "-" : "", (long long)whole, sign, (int)digits,
                 (long long)part);
}

/* A clause finds what it names only among the arguments after it, so clauses within clauses end.
 * NOLINTBEGIN(misc-no-recursion) */

/* "about {number}" in a unit phrase: the phrase finds the clause first, and the clause the text behind it. */
static bool put_number(text_sink *sink, const char *text, bool about, uint32_t phrase)
{
    rodt_argument inner[3] = {{.name = "number", .kind = RODT_ARGUMENT_KIND_CLAUSE, .code = RODT_MESSAGE_VALUE_ABOUT},
                              {.name = "number", .kind = RODT_ARGUMENT_KIND_TEXT, .text = text},
                              {.name = NULL}};
    const rodt_argument *first = about ? inner : inner + 1;
    size_t count = about ? 2 : 1;
    if (phrase != RODT_MESSAGE_NONE)
        return put_arguments(sink, phrase, first, count);
    if (about)
        return put_arguments(sink, RODT_MESSAGE_VALUE_ABOUT, inner + 1, 1);
    put(sink, text, strlen(text));
    return true;
}

static bool put_mixed(text_sink *sink, rodt_ratio value, uint32_t phrase)
{
    char text[NUMBER_SIZE];
    rodt_status status = rodt_ratio_format(value, text, sizeof text, NULL);
    return ALWAYS(status == RODT_OK) /* it is a number, and there is room */ && put_number(sink, text, false, phrase);
}

static bool put_decimal(text_sink *sink, rodt_ratio value, unsigned digits, bool about, uint32_t phrase)
{
    char text[NUMBER_SIZE];
    write_decimal(sink, value, digits, text);
    return put_number(sink, text, about, phrase);
}

static bool put_figure(text_sink *sink, const rodt_argument *argument)
{
    unsigned digits = rodti_exact_digits(argument->number);
    bool rounded = digits > 3;
    unsigned asked = argument->digits < 1                 ? 1
                     : argument->digits > (int)DIGITS_MAX ? DIGITS_MAX
                                                          : (unsigned)argument->digits;
    if (rodti_is_halved(argument->number, 16))
        return put_mixed(sink, argument->number, argument->code);
    return put_decimal(sink, argument->number, rounded ? asked : digits, rounded, argument->code);
}

static bool put_inches(text_sink *sink, rodt_ratio inches, uint32_t phrase)
{
    unsigned digits = rodti_exact_digits(inches);
    if (rodti_is_halved(inches, 128) || digits > DIGITS_MAX)
        return put_mixed(sink, inches, phrase);
    return put_decimal(sink, inches, digits, false, phrase);
}

/* Where the product does not fit, less exact inches still give the digits that are written. */
static bool put_mm(text_sink *sink, rodt_ratio inches)
{
    rodt_ratio mm;
    bool about = false;
    for (; !rodti_exact_multiply(inches, (rodt_ratio){127, 5}, &mm); about = true) {
        if (!rodti_exact_make(inches.num / 2, inches.den / 2, &inches))
            return false;
    }
    unsigned digits = rodti_exact_digits(mm);
    about = about || digits > DIGITS_MAX;
    return put_decimal(sink, mm, about ? 3 : digits, about, RODT_MESSAGE_VALUE_MM);
}

static bool put_length(text_sink *sink, const rodt_argument *argument)
{
    return argument->code == RODT_MESSAGE_VALUE_MM ? put_mm(sink, argument->number)
                                                   : put_inches(sink, argument->number, argument->code);
}

static bool put_limit(text_sink *sink, const rodt_argument *argument)
{
    if (argument->code != RODT_MESSAGE_VALUE_MM)
        return put_length(sink, argument);
    const rodt_argument both[3] = {{.name = "number", .kind = RODT_ARGUMENT_KIND_LENGTH, .number = argument->number},
                                   {.name = "mm",
                                    .kind = RODT_ARGUMENT_KIND_LENGTH,
                                    .code = RODT_MESSAGE_VALUE_MM,
                                    .number = argument->number},
                                   {.name = NULL}};
    return put_arguments(sink, RODT_MESSAGE_VALUE_LIMIT_MM, both, 2);
}

static bool put_fraction(text_sink *sink, rodt_ratio number)
{
    char text[NUMBER_SIZE];
    int size = snprintf(text, sizeof text, "%lld/%lld", (long long)number.num, (long long)number.den);
    put(sink, text, (size_t)size);
    return true;
}

/* --- Arguments --------------------------------------------------------------------------------------- */

static bool put_value(text_sink *sink, const rodt_argument *argument)
{
    if (argument->number.den == 0)
        return put_arguments(sink, RODT_MESSAGE_VALUE_NOT_GIVEN, NULL, 0);
    if (argument->number.den < 0 || argument->number.num == INT64_MIN)
        return false;
    switch (argument->kind) {
    case RODT_ARGUMENT_KIND_LENGTH: return put_length(sink, argument);
    case RODT_ARGUMENT_KIND_LIMIT: return put_limit(sink, argument);
    case RODT_ARGUMENT_KIND_NUMBER: return put_mixed(sink, argument->number, argument->code);
    case RODT_ARGUMENT_KIND_FIGURE: return put_figure(sink, argument);
    case RODT_ARGUMENT_KIND_FRACTION: return put_fraction(sink, argument->number);
    default: return false;
    }
}

static bool put_date(text_sink *sink, rodt_date date)
{
    char text[RODT_DATE_TEXT_SIZE];
    if (!rodt_date_given(date))
        return put_arguments(sink, RODT_MESSAGE_VALUE_NOT_GIVEN, NULL, 0);
    if (rodt_date_format(date, text, sizeof text, NULL) != RODT_OK)
        return false;
    put(sink, text, RODT_DATE_TEXT_SIZE - 1);
    return true;
}

static bool put_text(text_sink *sink, const char *text)
{
    if (text != NULL)
        put(sink, text, strlen(text));
    return text != NULL;
}

/* The first of `left` arguments. A clause finds its own among those behind it, so every chain of clauses ends. */
static bool put_argument(text_sink *sink, const rodt_argument *argument, size_t left)
{
    switch (argument->kind) {
    case RODT_ARGUMENT_KIND_CLAUSE: return put_arguments(sink, argument->code, argument + 1, left - 1);
    case RODT_ARGUMENT_KIND_DATE: return put_date(sink, argument->date);
    case RODT_ARGUMENT_KIND_TEXT: return put_text(sink, rodt_catalogue_text(sink->catalogue, argument->text));
    default: return put_value(sink, argument);
    }
}

static bool put_plural(text_sink *sink, const template_part *part, const rodt_argument *argument)
{
    uint32_t rule = sink->catalogue != NULL ? sink->catalogue->plural : RODT_PLURAL_RULE_ONE_OTHER;
    size_t size = 0;
    if (argument->number.den <= 0)
        return false;
    const char *form = rodti_template_form(part, rodti_plural_index(rule, argument->number), &size);
    if (form != NULL)
        put(sink, form, size);
    return form != NULL;
}

/* The first letter from `start` on as a capital: ASCII, and the letters of Latin-1, which are two bytes. */
static void capitalize(const text_sink *sink, size_t start)
{
    if (sink->text == NULL || sink->used == start)
        return;
    char *first = sink->text + start;
    if (*first >= 'a' && *first <= 'z')
        *first = (char)(*first - 'a' + 'A');
    unsigned char second = sink->used - start > 1 ? (unsigned char)first[1] : 0;
    if ((unsigned char)*first == 0xC3 && second >= 0xA0 && second <= 0xBE && second != 0xB7)
        first[1] = (char)(second - 0x20);
}

static bool put_part(text_sink *sink, const template_part *part, const rodt_argument *arguments, size_t count)
{
    if (part->kind == TEMPLATE_TEXT) {
        put(sink, part->text, part->size);
        return true;
    }
    for (size_t i = 0; i < count && part->kind != TEMPLATE_BROKEN; i++) {
        if (arguments[i].name == NULL || !rodti_template_is(part, arguments[i].name))
            continue;
        size_t start = sink->used;
        bool done = part->kind == TEMPLATE_PLURAL ? put_plural(sink, part, &arguments[i])
                                                  : put_argument(sink, &arguments[i], count - i);
        if (done && part->capital)
            capitalize(sink, start);
        return done;
    }
    return false;
}

/* A sentence that the catalogue lacks is English as a whole, its clauses and numbers too. */
static bool put_arguments(text_sink *sink, uint32_t code, const rodt_argument *arguments, size_t count)
{
    const rodt_catalogue *kept = sink->catalogue;
    const char *at = rodti_template_of(&sink->catalogue, code);
    bool done = at != NULL;
    while (done) {
        template_part part = rodti_template_next(&at);
        if (part.kind == TEMPLATE_END)
            break;
        done = put_part(sink, &part, arguments, count);
    }
    sink->catalogue = kept;
    return done;
}

/* NOLINTEND(misc-no-recursion) */

static bool has_no_reserve(const rodt_message *message)
{
    bool zero = rodti_is_zero(message->reserved, COUNT_OF(message->reserved));
    for (uint32_t i = 0; i < message->count; i++)
        zero = zero && rodti_is_zero(message->arguments[i].reserved, COUNT_OF(message->arguments[i].reserved));
    return zero;
}

rodt_status rodt_message_format(const rodt_message *message, const rodt_catalogue *catalogue, char *text, size_t size,
                                size_t *needed)
{
    text_sink sink = {catalogue, NULL, 0};
    if (message == NULL || (text == NULL && size > 0) || message->count > RODT_MESSAGE_ARGUMENTS ||
        !has_no_reserve(message) ||
        (catalogue != NULL && (catalogue->templates == NULL || catalogue->decimal_sign == NULL)))
        return RODT_E_ARGUMENT;
    if (!put_arguments(&sink, message->code, message->arguments, message->count))
        return RODT_E_ARGUMENT;
    if (needed != NULL)
        *needed = sink.used + 1;
    if (sink.used >= size)
        return RODT_E_SPACE;
    sink = (text_sink){catalogue, text, 0};
    put_arguments(&sink, message->code, message->arguments, message->count);
    text[sink.used] = '\0';
    return RODT_OK;
}
