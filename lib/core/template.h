/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of a template. */
#ifndef RODT_TEMPLATE_H
#define RODT_TEMPLATE_H

#include "core/common.h"

typedef enum template_kind {
    TEMPLATE_END,
    TEMPLATE_TEXT,     /* size bytes of text as they stand */
    TEMPLATE_ARGUMENT, /* {text}, or {^text} with a capital */
    TEMPLATE_PLURAL,   /* {text?forms} */
    TEMPLATE_BROKEN
} template_kind;

typedef struct template_part {
    template_kind kind;
    const char *text;
    size_t size;
    const char *forms;
    size_t forms_size;
    bool capital; /* what is written begins with a capital */
} template_part;

/* Takes the next part; *at goes behind it, and stays where it is broken. */
template_part rodti_template_next(const char **at);

bool rodti_template_is(const template_part *part, const char *name);

#endif
