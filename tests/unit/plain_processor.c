/* SPDX-License-Identifier: Apache-2.0 */
#include "plain_processor.h"

bool plain_processor_has(const char *feature) { return feature[0] == '\0'; }
