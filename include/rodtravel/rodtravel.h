/* SPDX-License-Identifier: Apache-2.0 */
/* The whole public interface, in the order in which one part stands on another. */
#ifndef RODTRAVEL_RODTRAVEL_H
#define RODTRAVEL_RODTRAVEL_H

#include "status.h"
#include "enumeration.h"

#include "ratio.h"
#include "length.h"
#include "pressure.h"
#include "date.h"

#include "chamber.h"
#include "rules.h"

#include "identify.h"
#include "fields.h"
#include "stroke.h"

#include "vehicle.h"
#include "aircheck.h"

#include "column.h"
#include "column_text.h"
#include "row_cache.h"

#endif
