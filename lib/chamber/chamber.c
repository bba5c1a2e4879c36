/* SPDX-License-Identifier: Apache-2.0 */
/* What a chamber is called: names, classes said twice, and the text that the reader takes back. */
#include "rodtravel/chamber.h"

#include "core/text.h"

#include <string.h>

bool rodt_chamber_add_class(rodt_chamber *chamber, rodt_stroke_class stroke_class)
{
    if (stroke_class == RODT_STROKE_CLASS_UNKNOWN || stroke_class == chamber->stroke_class)
        return true;
    if (chamber->stroke_class == RODT_STROKE_CLASS_UNKNOWN) {
        chamber->stroke_class = stroke_class;
        return true;
    }
    chamber->stroke_class = RODT_STROKE_CLASS_STANDARD;
    return false;
}

/* A size is text of a fixed room that a program may have filled by hand. */
static bool is_closed(const char size[RODT_SIZE_TEXT_SIZE])
{
    return memchr(size, '\0', RODT_SIZE_TEXT_SIZE) != NULL;
}

static bool can_be_written(const rodt_chamber *chamber)
{
    return chamber != NULL && (unsigned)chamber->family < RODT_FAMILY_END &&
           (unsigned)chamber->stroke_class <= RODT_STROKE_CLASS_LONG && is_closed(chamber->size) &&
           is_closed(chamber->spring_size);
}

rodt_status rodt_chamber_format(const rodt_chamber *chamber, char *text, size_t size, size_t *needed)
{
    if (!can_be_written(chamber))
        return RODT_E_ARGUMENT;
    if (chamber->family == RODT_FAMILY_UNKNOWN && chamber->size[0] == '\0')
        return RODT_E_EMPTY;
    text_writer writer;
    rodti_text_begin(&writer);
    if (chamber->family != RODT_FAMILY_UNKNOWN)
        rodti_text_put(&writer, rodt_family_name(chamber->family));
    if (chamber->size[0] != '\0') {
        rodti_text_put(&writer, writer.used > 0 ? " " : "");
        rodti_text_put(&writer, chamber->size);
    }
    if (chamber->spring_size[0] != '\0') {
        rodti_text_put(&writer, "/");
        rodti_text_put(&writer, chamber->spring_size);
    }
    if (chamber->stroke_class != RODT_STROKE_CLASS_UNKNOWN) {
        rodti_text_put(&writer, " ");
        rodti_text_put(&writer, rodt_stroke_class_name(chamber->stroke_class));
    }
    return rodti_text_copy_out(&writer, text, size, needed);
}
