/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as one JSON object: the reader over its members stays inside, ends, and what it gives lies in order. What it
 * takes for an object or an array is one. */
#include "io/json_object.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "source.h"

static void check_text(json_span has_chunk)
{
    char text[64];
    size_t size = json_object_text(has_chunk, text, sizeof text);
    demand(size == JSON_NO_TEXT || (size <= has_chunk.size && size < sizeof text && text[size] == '\0'));
}

static void check_nested(json_span whole)
{
    json_object_reader reader;
    json_member found;
    json_status status;
    bool is_array = whole.bytes[0] == '[';
    json_object_open(&reader, whole.bytes, whole.size);
    while ((status = is_array ? json_array_next(&reader, &found) : json_object_next(&reader, &found)) == JSON_MEMBER) {
        if (found.kind == JSON_NESTED)
            check_nested(found.value);
    }
    demand(status == JSON_END);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *bytes = malloc(size + 1); /* of its own, so that a step too far is seen */
    if (bytes == NULL)
        return 0;
    if (size > 0)
        memcpy(bytes, data, size);
    json_object_reader reader;
    json_member found;
    json_object_open(&reader, bytes, size);
    const char *after = bytes;
    json_status status;
    while ((status = json_object_next(&reader, &found)) == JSON_MEMBER) {
        demand(found.name.bytes > after && found.value.bytes > found.name.bytes + found.name.size);
        after = found.value.bytes + found.value.size;
        demand(after <= bytes + size);
        check_text(found.name);
        if (found.kind == JSON_TEXT)
            check_text(found.value);
        if (found.kind == JSON_NESTED)
            check_nested(found.value);
    }
    if (status == JSON_END)
        demand(reader.close >= after && reader.close < bytes + size && *reader.close == '}');
    free(bytes);
    return 0;
}
