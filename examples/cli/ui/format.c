/* SPDX-License-Identifier: Apache-2.0 */
/* Values of the library as texts for people. */
#include "ui/format.h"
#include "ui/language.h"

#include <stdio.h>
#include <string.h>

const char *format_length(rodt_length length, char word[WORD_SIZE])
{
    return rodt_length_format(length, word, WORD_SIZE, NULL) == RODT_OK ? word : "-";
}

/* Printed millimetres have one decimal; the exact value may have more. */
const char *format_mm(rodt_length length, char word[WORD_SIZE])
{
    rodt_status status =
        rodt_length_format_decimal(length, RODT_UNIT_MM, 1, RODT_ROUNDING_HALF_UP, word, WORD_SIZE, NULL);
    return status == RODT_OK ? word : "-";
}

const char *format_date(rodt_date date, char word[WORD_SIZE])
{
    return rodt_date_format(date, word, WORD_SIZE, NULL) == RODT_OK ? word : "-";
}

const char *format_pressure(rodt_pressure pressure, char word[WORD_SIZE])
{
    return rodt_pressure_format(pressure, word, WORD_SIZE, NULL) == RODT_OK ? word : "-";
}

const char *format_chamber(const rodt_chamber *chamber, char word[RODT_CHAMBER_TEXT_SIZE])
{
    if (rodt_chamber_format(chamber, word, RODT_CHAMBER_TEXT_SIZE, NULL) != RODT_OK)
        return "-";
    char *class = strrchr(word, ' ');
    const char *said = class != NULL ? say(class + 1) : NULL;
    if (class != NULL && said != class + 1)
        snprintf(class + 1, RODT_CHAMBER_TEXT_SIZE - (size_t)(class + 1 - word), "%s", said);
    return word;
}

const char *format_source(const rodt_source *source, char words[RODT_SOURCE_TEXT_SIZE])
{
    return rodt_source_format(source, words, RODT_SOURCE_TEXT_SIZE, NULL) == RODT_OK ? words : "-";
}

const char *format_ratio(rodt_ratio ratio, char word[WORD_SIZE])
{
    if (!rodt_ratio_given(ratio))
        return "-";
    snprintf(word, WORD_SIZE, ratio.den == 1 ? "%lld" : "%lld/%lld", (long long)ratio.num, (long long)ratio.den);
    return word;
}

const char *format_capitals(const char *text, char *out, size_t size)
{
    snprintf(out, size, "%s", text);
    for (char *at = out; *at != '\0'; at++) {
        if (*at >= 'a' && *at <= 'z')
            *at = (char)(*at - 'a' + 'A');
        else if (*at == '\xC3' && at[1] >= '\xA0' && at[1] <= '\xBE' && at[1] != '\xB7')
            *++at -= 0x20;
    }
    return out;
}
