/* SPDX-License-Identifier: Apache-2.0 */
/* What the walk-round says, line by line, with what kind of line it is. */
#ifndef SAID_H
#define SAID_H

#include "ui/json_writer.h"

#include <stdbool.h>

/* From now on lines are as long as their texts, and are kept; false: they fold as in a file. */
void said_keep(bool kept);

/* What was printed since the last call, as an array of {"kind", "label", "text"}. */
void said_write(json_writer *json);
void said_forget(void);

/* The text of the last prompt, "" = none since then. */
const char *said_prompt(void);

#endif
