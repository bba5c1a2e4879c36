/* SPDX-License-Identifier: Apache-2.0 */
/* A message as one line, so that a test can hold all that it is made of. */
#ifndef TEST_MESSAGE_TEXT_H
#define TEST_MESSAGE_TEXT_H

#include "rodtravel/message.h"

/* The code, then each argument in its order: its name, and what it holds: "air.required found=air.found.warning
 * figure=60/1 value.psi 1". Words are in quotes; what is not given is left out. Ends the test where the room is too
 * small or the text another one. */
void expect_message(const rodt_message *message, const char *text);

#endif
