/* SPDX-License-Identifier: Apache-2.0 */
/* A chamber that a program filled by hand must be one that rodt_chamber_parse could give. */
#include "chamber/chamber_check.h"

#include "core/fault.h"
#include "core/text.h"
#include "quantity/fault.h"

#include <string.h>

bool rodti_is_mark(rodt_length length)
{
    static const rodt_length least = {3, 4};
    static const rodt_length most = {6, 1};
    return rodt_length_compare(length, least) >= 0 && rodt_length_compare(length, most) <= 0;
}

bool rodti_is_type_number(const char *size)
{
    return size[0] != '0' && text_is_digit((unsigned char)size[0]) &&
           (size[1] == '\0' || (text_is_digit((unsigned char)size[1]) && size[2] == '\0'));
}

bool rodti_is_bolt_letter(const char *size)
{
    return size[0] >= 'A' && size[0] <= 'G' && size[1] == '\0';
}

static const char *size_fault(const rodt_chamber *chamber)
{
    if (memchr(chamber->size, '\0', RODT_SIZE_TEXT_SIZE) == NULL ||
        memchr(chamber->spring_size, '\0', RODT_SIZE_TEXT_SIZE) == NULL)
        return "the text of a size is not closed by a zero byte";
    bool bolt = chamber->family == RODT_FAMILY_BOLT;
    if (chamber->size[0] != '\0' && !(bolt ? rodti_is_bolt_letter(chamber->size) : rodti_is_type_number(chamber->size)))
        return bolt ? "the size of a bolt-type chamber is a letter, A to G"
                    : "the size of a chamber is its type number, 1 to 99, or the letter of a bolt-type chamber";
    if (chamber->spring_size[0] == '\0')
        return NULL;
    return rodti_is_type_number(chamber->spring_size) ? NULL : "the size of a spring brake is its type number, 1 to 99";
}

static const char *mark_fault(rodt_length mark)
{
    const char *fault = rodti_length_fault(mark);
    if (fault != NULL || !rodt_length_given(mark))
        return fault;
    return rodti_is_mark(mark) ? NULL : "a chamber is marked with 3/4 to 6 in";
}

rodt_status rodt_chamber_check(const rodt_chamber *chamber, rodt_error *error)
{
    const char *fault;
    if (chamber == NULL)
        return rodti_field_error(error, "chamber", "a chamber is needed");
    if (chamber->family >= RODT_FAMILY_END)
        return rodti_field_error(error, "chamber", "there is no such family of chambers");
    if ((fault = size_fault(chamber)) != NULL)
        return rodti_field_error(error, "chamber", fault);
    if (chamber->stroke_class > RODT_STROKE_CLASS_LONG)
        return rodti_field_error(error, "stroke_class", "the stroke class of a chamber is standard, long or unknown");
    if ((fault = mark_fault(chamber->rated_stroke)) != NULL)
        return rodti_field_error(error, "rated_stroke", fault);
    if ((fault = mark_fault(chamber->marked_limit)) != NULL)
        return rodti_field_error(error, "marked_limit", fault);
    if (!rodti_is_zero(chamber->reserved, COUNT_OF(chamber->reserved)))
        return rodti_field_error(error, "reserved", "the reserve of a chamber is zero");
    return RODT_OK;
}
