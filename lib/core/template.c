/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of a template: text, {argument}, {^argument}, {argument?form|form}. */
#include "core/template.h"

#include <string.h>

/* "{name}", "{^name}" or "{name?forms}", from the brace. */
static template_part take_braces(const char **at)
{
    bool capital = (*at)[1] == '^';
    const char *name = *at + 1 + capital;
    size_t size = strcspn(name, "{}?");
    template_part part = {TEMPLATE_ARGUMENT, name, size, NULL, 0, capital};
    const char *end = name + size;
    if (*end == '?') {
        part.kind = TEMPLATE_PLURAL;
        part.forms = end + 1;
        part.forms_size = strcspn(part.forms, "{}");
        end = part.forms + part.forms_size;
    }
    if (*end != '}' || size == 0)
        return (template_part){TEMPLATE_BROKEN, *at, 1, NULL, 0, false};
    *at = end + 1;
    return part;
}

template_part rodti_template_next(const char **at)
{
    const char *start = *at;
    if (start[0] == '\0')
        return (template_part){TEMPLATE_END, start, 0, NULL, 0, false};
    if ((start[0] == '{' || start[0] == '}') && start[1] == start[0]) {
        *at += 2;
        return (template_part){TEMPLATE_TEXT, start, 1, NULL, 0, false};
    }
    if (start[0] == '{')
        return take_braces(at);
    if (start[0] == '}')
        return (template_part){TEMPLATE_BROKEN, start, 1, NULL, 0, false};
    size_t size = strcspn(start, "{}");
    *at += size;
    return (template_part){TEMPLATE_TEXT, start, size, NULL, 0, false};
}

bool rodti_template_is(const template_part *part, const char *name)
{
    return strlen(name) == part->size && memcmp(name, part->text, part->size) == 0;
}
