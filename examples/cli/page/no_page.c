/* SPDX-License-Identifier: Apache-2.0 */
/* The page of a command that was built without it. */
#include "page/page.h"

const char page_text[] = "";

const size_t page_size = 0;

const char page_digest[] = "";

const char worker_text[] = "";
