/* SPDX-License-Identifier: Apache-2.0 */
/* The words of kinds of members and options of JSON. */
#ifndef RODT_DESCRIBE_WORDS_H
#define RODT_DESCRIBE_WORDS_H

#include "core/words.h"
#include "rodtravel/describe.h"

extern const rodt_enumeration rodti_words_member_kind, rodti_words_json_option;

#endif
