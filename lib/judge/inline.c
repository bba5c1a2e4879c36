/* SPDX-License-Identifier: Apache-2.0 */
/* The functions that the headers define in one line, as symbols: other languages call no header. */
#define RODT_INLINE RODT_API extern inline
#include "rodtravel/stroke.h"
