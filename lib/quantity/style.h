/* SPDX-License-Identifier: Apache-2.0 */
/* Whether a style is one that this version knows. */
#ifndef RODT_QUANTITY_STYLE_H
#define RODT_QUANTITY_STYLE_H

#include "core/common.h"
#include "core/fault.h"
#include "rodtravel/style.h"

/* NULL is the plain style. */
static inline bool rodti_is_style(const rodt_style *style)
{
    return style == NULL ||
           ((unsigned)style->unit < RODT_UNIT_END && (unsigned)style->pressure_unit < RODT_PRESSURE_UNIT_END &&
            rodti_is_zero(style->reserved, COUNT_OF(style->reserved)));
}

/* The decimal sign is a comma. */
static inline bool rodti_has_comma(const rodt_style *style) { return style != NULL && style->decimal_comma; }

#endif
