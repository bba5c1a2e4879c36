/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The whole public interface, in the order in which one part uses another.
 *
 * Words. A reader or a finder of a text closed by a zero byte may have a twin for `size` bytes, which ends in _n. A
 * `_parse` function reads what people write; a `_find` function only looks up a stable word, a name or a tag, and has
 * one of two shapes: what is a row or an object of the library is returned, NULL = there is none; an enumerator is
 * written to *out and the status is RODT_OK, or RODT_E_SYNTAX = there is none of that word, RODT_E_ARGUMENT = a pointer
 * is NULL. Words of `size` bytes are looked up by rodt_enumerator_find_n, for every enumeration. How the texts of a
 * form are written, units and decimal sign, every reader is told by a rodt_style (style.h).
 *
 * Results. A function returns a rodt_status, and leaves its results as they were unless that is RODT_OK. Many also fill
 * a rodt_error: the place of the mistake, and a sentence for a person. NULL is accepted for it. Where structs are
 * judged, its field is the name of the rodt_field (fields.h), and in an array its line the element. Forms, columns and
 * Python have the names of the fields. A member of rodt_reading has the name of its field, but for psi = pressure,
 * psi_after = pressure_after, date = day or other_day, engine = engine_running, spring_brake = spring_brake_applied,
 * and chamber, stroke_class, rated_stroke and marked_limit, which are in its chamber; rodt_record_locate (describe.h)
 * takes the name of the field. What is no field goes by the name of the member ("reasons", "reserved").
 *
 * Values. Nearly everything is a plain struct of the caller, and all zero bytes mean "nothing given": begin with
 * `= {0}`, in C++ with `= {}`. A `reserved` member stays zero; another value is refused with RODT_E_ARGUMENT, so that
 * an older library never ignores what a newer program asks of it.
 *
 * Threads. The library has no state that changes. It reads no file, clock, environment or locale, never prints, and
 * never ends the program. Any number of threads may share rule sets, texts and rows of tables, and a column plan that
 * nothing is added to. A text plan, chamber reader, row cache or text map serves one thread at a time.
 *
 * Lifetimes. What a function with `_new` in its name makes is released by its `_free`, a rule set of rodt_rules_load
 * or rodt_rules_load_with_air by rodt_rules_unref; nothing else allocates. Names, sentences and rows of compiled-in
 * tables live as long as the program; those of a loaded rule set, and findings that point to them, as long as the rule
 * set: rodt_rules_ref keeps it. Arguments are read during the call only, unless the function says otherwise.
 *
 * Versions. RODT_VERSION_NUMBER is that of the headers, rodt_version_number that of the library. The library has a new
 * soname whenever a program must be built again. Within one soname functions, numbers of enumerators, and size and
 * layout of the structs that a caller makes stay; functions, enumerators, and members in the place of a
 * reserve may be added, and their zero means "not given". Structs that the library only hands out as pointers (rows,
 * sources) may grow at the end: use the pointer, never a copy. Before 1.0 a minor version may break names and layouts,
 * with a new soname; from 1.0 on only a major version may. Names of enumerators, codes of reasons and ids are stable.
 */
#ifndef RODTRAVEL_RODTRAVEL_H
#define RODTRAVEL_RODTRAVEL_H

#include "status.h"
#include "enumeration.h"

#include "ratio.h"
#include "style.h"
#include "length.h"
#include "pressure.h"
#include "date.h"
#include "message.h"

#include "chamber.h"
#include "rules.h"

#include "identify.h"
#include "fields.h"
#include "stroke.h"

#include "vehicle.h"
#include "aircheck.h"
#include "step.h"

#include "column.h"
#include "column_text.h"
#include "row_cache.h"

#include "describe.h"

#endif
