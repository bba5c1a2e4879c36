/* SPDX-License-Identifier: Apache-2.0 */
/* JSON on one line, so that many answers make a file of lines. */
#include "ui/json_writer.h"
#include "ui/exit_status.h"
#include "ui/format.h"
#include "ui/message.h"
#include "ui/utf8.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

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

static void put_quoted(FILE *to, const char *text)
{
    size_t left = strlen(text);
    fputc('"', to);
    while (left > 0) {
        size_t bytes = utf8_bytes(text, left);
        unsigned char c = (unsigned char)*text;
        if (bytes == 0)
            fputs("\\ufffd", to);
        else if (c < 0x20 || c == 0x7F)
            fprintf(to, "\\u%04x", c);
        else if (c == '"' || c == '\\')
            fprintf(to, "\\%c", c);
        else
            fwrite(text, 1, bytes, to);
        size_t taken = bytes == 0 ? 1 : bytes;
        text += taken;
        left -= taken;
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

void json_record(json_writer *json, json_format *format, const void *value)
{
    size_t needed = 0;
    bool writes = format(value, NULL, 0, &needed) == RODT_E_SPACE;
    char *text = writes ? malloc(needed) : NULL;
    separate(json);
    if (text != NULL && format(value, text, needed, NULL) == RODT_OK)
        fputs(text, json->to);
    else
        json->no_memory = true;
    free(text);
}

int json_end(json_writer *json)
{
    fputc('\n', json->to);
    return json->no_memory ? print_error("%s", rodt_status_text(RODT_E_MEMORY)) : STATUS_CONTINUE;
}

int json_print(json_format *format, const void *value)
{
    json_writer json = {.to = stdout, .first = true};
    json_record(&json, format, value);
    return json_end(&json);
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

void json_ratio(json_writer *json, const char *key, rodt_ratio ratio)
{
    char text[RODT_RATIO_TEXT_SIZE];
    json_pair(json, key, rodt_ratio_format(ratio, text, sizeof text, NULL) == RODT_OK ? text : NULL);
}

void json_count(json_writer *json, uint64_t number)
{
    separate(json);
    fprintf(json->to, "%" PRIu64, number);
}

void json_number(json_writer *json, const char *key, uint64_t number)
{
    json_key(json, key);
    json_count(json, number);
}

void json_tenths(json_writer *json, uint64_t tenths)
{
    separate(json);
    fprintf(json->to, "%" PRIu64 ".%" PRIu64, tenths / 10, tenths % 10);
}

void json_reasons(json_writer *json, uint64_t reasons)
{
    json_key(json, "reasons");
    json_open(json, '[');
    for (int i = 0; i < RODT_REASON_END; i++) {
        if ((reasons >> i & 1u) != 0)
            json_text(json, rodt_reason_name((rodt_reason)i));
    }
    json_close(json, ']');
}
