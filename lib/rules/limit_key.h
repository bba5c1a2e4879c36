/* SPDX-License-Identifier: Apache-2.0 */
/* Family and size of a chamber as one number: most rows of limits are passed over by it alone. */
#ifndef RODT_LIMIT_KEY_H
#define RODT_LIMIT_KEY_H

#include "core/common.h"
#include "rodtravel/chamber.h"

/* Two chambers of one family and size have one key. A size is a type number or a letter, and not empty. */
static inline uint32_t limit_key(rodt_family family, const char *size)
{
    return (uint32_t)family << 16 | (uint32_t)(unsigned char)size[0] << 8 | (unsigned char)size[1];
}

#endif
