/* SPDX-License-Identifier: Apache-2.0 */
/* Sets of reasons. */
#ifndef RODT_REASONS_H
#define RODT_REASONS_H

#include "core/common.h"
#include "rodtravel/stroke.h"

#define REASON_BIT(reason) RODT_REASON_BIT(reason)

#endif
