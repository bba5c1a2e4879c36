/* SPDX-License-Identifier: Apache-2.0 */
/* The page that the build made, as it is written. */
#ifndef COMMAND_PAGE_H
#define COMMAND_PAGE_H

#include <stddef.h>

/* What follows the first tag, which names the language. */
extern const char page_text[];
extern const size_t page_size; /* 0 = this command was built without the page */
extern const char page_digest[]; /* of the text */

/* What keeps a page that came from a server, after the names that it needs. */
extern const char worker_text[];

#endif
