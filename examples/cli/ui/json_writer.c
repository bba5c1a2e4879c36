/* SPDX-License-Identifier: Apache-2.0 */
/* JSON on one line, so that many answers make a file of lines. */
#include "ui/json_writer.h"
#include "ui/compiler.h"
#include "ui/format.h"

#include <stdio.h>

static void separate(json_writer *json)
{
    if (!json->first)
        fputs(", ", json->to);
    json->first = false;
}

void json_open(json_writer *json, char bracket)
{
    separate(json);
    fputc(bracket, json->to);
    json->first = true;
}

void json_close(json_writer *json, char bracket)
{
    fputc(bracket, json->to);
    json->first = false;
}

/* Bytes of the UTF-8 character here, by RFC 3629; 0 if there is none. */
static size_t character_bytes(const unsigned char *at)
{
    static const struct {
        unsigned char first, last, low, high, bytes;
    } forms[] = {{0x01, 0x7F, 0, 0, 1},       {0xC2, 0xDF, 0x80, 0xBF, 2}, {0xE0, 0xE0, 0xA0, 0xBF, 3},
                 {0xE1, 0xEC, 0x80, 0xBF, 3}, {0xED, 0xED, 0x80, 0x9F, 3}, {0xEE, 0xEF, 0x80, 0xBF, 3},
                 {0xF0, 0xF0, 0x90, 0xBF, 4}, {0xF1, 0xF3, 0x80, 0xBF, 4}, {0xF4, 0xF4, 0x80, 0x8F, 4}};
    for (size_t i = 0; i < COUNT_OF(forms); i++) {
        if (*at < forms[i].first || *at > forms[i].last)
            continue;
        if (forms[i].bytes > 1 && (at[1] < forms[i].low || at[1] > forms[i].high))
            return 0;
        for (size_t k = 2; k < forms[i].bytes; k++) {
            if ((at[k] & 0xC0) != 0x80)
                return 0;
        }
        return forms[i].bytes;
    }
    return 0;
}

static void put_quoted(FILE *to, const char *text)
{
    fputc('"', to);
    while (*text != '\0') {
        size_t bytes = character_bytes((const unsigned char *)text);
        unsigned char c = (unsigned char)*text;
        if (bytes == 0)
            fputs("\\ufffd", to);
        else if (c < 0x20 || c == 0x7F)
            fprintf(to, "\\u%04x", c);
        else if (c == '"' || c == '\\')
            fprintf(to, "\\%c", c);
        else
            fwrite(text, 1, bytes, to);
        text += bytes == 0 ? 1 : bytes;
    }
    fputc('"', to);
}

void json_key(json_writer *json, const char *key)
{
    separate(json);
    put_quoted(json->to, key);
    fputs(": ", json->to);
    json->first = true;
}

void json_text(json_writer *json, const char *text)
{
    separate(json);
    if (text == NULL)
        fputs("null", json->to);
    else
        put_quoted(json->to, text);
}

void json_bool(json_writer *json, bool value)
{
    separate(json);
    fputs(value ? "true" : "false", json->to);
}

void json_pair(json_writer *json, const char *key, const char *text)
{
    json_key(json, key);
    json_text(json, text);
}

void json_length(json_writer *json, const char *key, rodt_length length)
{
    char word[WORD_SIZE];
    json_pair(json, key, rodt_length_given(length) ? format_length(length, word) : NULL);
}

void json_date(json_writer *json, const char *key, rodt_date date)
{
    char word[WORD_SIZE];
    json_pair(json, key, rodt_date_given(date) ? format_date(date, word) : NULL);
}

void json_pressure(json_writer *json, const char *key, rodt_pressure pressure)
{
    char word[WORD_SIZE];
    json_pair(json, key, rodt_pressure_given(pressure) ? format_pressure(pressure, word) : NULL);
}

void json_source(json_writer *json, const char *key, const rodt_source *source)
{
    char words[RODT_SOURCE_TEXT_SIZE];
    json_pair(json, key, source != NULL ? format_source(source, words) : NULL);
}
