/* SPDX-License-Identifier: Apache-2.0 */
/* The JSON writer: brackets, commas, texts in quotes. */
#include "describe/json.h"

#include "core/text.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

static void put_n(json_buffer *json, const char *text, size_t size)
{
    if (json->used + size <= json->size)
        memcpy(json->text + json->used, text, size);
    json->used += size;
}

static void put(json_buffer *json, const char *text) { put_n(json, text, strlen(text)); }

static void separate(json_buffer *json)
{
    if (!json->first)
        put(json, ", ");
    json->first = false;
}

void rodti_json_open(json_buffer *json, char bracket)
{
    separate(json);
    put_n(json, &bracket, 1);
    json->first = true;
}

void rodti_json_close(json_buffer *json, char bracket)
{
    put_n(json, &bracket, 1);
    json->first = false;
}

static void put_character(json_buffer *json, const text_cursor *cursor)
{
    char escape[8] = "\\";
    if (cursor->code == TEXT_BAD)
        put(json, "\\ufffd");
    else if (cursor->code < 0x20 || cursor->code == 0x7F)
        put_n(json, escape, (size_t)snprintf(escape, sizeof escape, "\\u%04x", (unsigned)cursor->code));
    else if (cursor->code == '"' || cursor->code == '\\')
        escape[1] = (char)cursor->code, put_n(json, escape, 2);
    else
        put_n(json, (const char *)cursor->at, cursor->bytes);
}

static void put_quoted(json_buffer *json, const char *text, size_t size)
{
    text_cursor cursor;
    put(json, "\"");
    for (rodti_text_start(&cursor, text, size); cursor.code != TEXT_END; rodti_text_next(&cursor))
        put_character(json, &cursor);
    put(json, "\"");
}

void rodti_json_key(json_buffer *json, const char *key)
{
    separate(json);
    put_quoted(json, key, strlen(key));
    put(json, ": ");
    json->first = true;
}

void rodti_json_text_n(json_buffer *json, const char *text, size_t size)
{
    separate(json);
    if (text == NULL)
        put(json, "null");
    else
        put_quoted(json, text, size);
}

void rodti_json_text(json_buffer *json, const char *text)
{
    rodti_json_text_n(json, text, text != NULL ? strlen(text) : 0);
}

void rodti_json_plain(json_buffer *json, const char *text)
{
    separate(json);
    put(json, text);
}

void rodti_json_exact(json_buffer *json, rodt_ratio value, const char *unit)
{
    char text[RODT_RATIO_TEXT_SIZE];
    bool given = rodt_ratio_format(value, text, sizeof text, NULL) == RODT_OK;
    rodti_json_exact_text(json, value, given ? text : NULL, unit);
}

void rodti_json_exact_text(json_buffer *json, rodt_ratio value, const char *text, const char *unit)
{
    if (text == NULL || !json->parts) {
        rodti_json_text(json, text);
        return;
    }
    rodti_json_open(json, '{');
    rodti_json_pair(json, "text", text);
    rodti_json_number(json, "num", value.num);
    rodti_json_number(json, "den", value.den);
    if (unit[0] != '\0')
        rodti_json_pair(json, "unit", unit);
    rodti_json_close(json, '}');
}

void rodti_json_pair(json_buffer *json, const char *key, const char *text)
{
    rodti_json_key(json, key);
    rodti_json_text(json, text);
}

void rodti_json_number(json_buffer *json, const char *key, int64_t number)
{
    char digits[24];
    snprintf(digits, sizeof digits, "%" PRId64, number);
    rodti_json_key(json, key);
    rodti_json_plain(json, digits);
}

void rodti_json_boolean(json_buffer *json, const char *key, bool value)
{
    rodti_json_key(json, key);
    rodti_json_plain(json, value ? "true" : "false");
}

rodt_status rodti_json_format(json_maker *make, const void *context, const rodt_catalogue *catalogue, uint32_t options,
                              char *text, size_t size, size_t *needed)
{
    if ((text == NULL && size > 0) || (options & ~(uint32_t)RODT_JSON_OPTION_PARTS) != 0)
        return RODT_E_ARGUMENT;
    if (catalogue != NULL && (catalogue->templates == NULL || catalogue->decimal_sign == NULL))
        return RODT_E_ARGUMENT;
    json_buffer counted = {.catalogue = catalogue, .parts = (options & RODT_JSON_OPTION_PARTS) != 0, .first = true};
    json_buffer json = counted;
    make(&counted, context);
    if (counted.broken)
        return RODT_E_ARGUMENT;
    if (needed != NULL)
        *needed = counted.used + 1;
    if (counted.used >= size)
        return RODT_E_SPACE;
    json.text = text;
    json.size = size;
    make(&json, context);
    text[json.used] = '\0';
    return RODT_OK;
}
