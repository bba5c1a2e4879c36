/* SPDX-License-Identifier: Apache-2.0 */
/* The limits of one rule set as one page for the cab. */
#ifndef LIMIT_CARD_H
#define LIMIT_CARD_H

#include "input/rule_context.h"

#include <stdio.h>

/* The drawing alone, or in a page of HTML. */
void limit_card_write(const rule_context *context, bool html, FILE *to);

#endif
