/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Conditions that nothing outside the library can turn, and that are written all the same: a guard against a fault of
 * the library itself. ALWAYS(x) is expected to be true, NEVER(x) to be false; a comment beside it says why.
 *
 * A usual build has the plain condition. In a build for tests the program ends where the expectation is wrong. Where
 * coverage is measured it is a constant, and the check `conditions` asks for no test of the other outcome. A condition
 * that an input can turn is never marked; it is tested. A label of a switch that no value has returns ALWAYS(false).
 */
#ifndef RODT_ALWAYS_H
#define RODT_ALWAYS_H

#include "core/common.h"

#if defined(RODT_COVERAGE)
#define ALWAYS(x) (true)
#define NEVER(x) (false)
#elif defined(RODT_STRICT)
#include <assert.h>
#define ALWAYS(x) ((x) ? true : (assert(false && "ALWAYS"), false))
#define NEVER(x) ((x) ? (assert(false && "NEVER"), true) : false)
#else
#define ALWAYS(x) (x)
#define NEVER(x) (x)
#endif

#endif
