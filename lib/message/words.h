/* SPDX-License-Identifier: Apache-2.0 */
/* The words of message codes, argument kinds and plural rules. */
#ifndef RODT_MESSAGE_WORDS_H
#define RODT_MESSAGE_WORDS_H

#include "core/words.h"
#include "message/message.h"

extern const rodt_enumeration rodti_words_message_code, rodti_words_argument_kind, rodti_words_plural_rule;

#endif
