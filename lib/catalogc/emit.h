/* SPDX-License-Identifier: Apache-2.0 */
/* Inside catalogc: texts as C. */
#ifndef RODT_CATALOGC_EMIT_H
#define RODT_CATALOGC_EMIT_H

#include <stdio.h>

/* The text in quotes; its bytes above ASCII as they are. */
void emit_string(FILE *out, const char *text);

#endif
