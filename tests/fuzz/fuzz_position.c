/* SPDX-License-Identifier: Apache-2.0 */
/* Any bytes as a position: refused with a reason, or read to one that is written and read again as the same. */
#include <rodtravel/rodtravel.h>

#include <stdlib.h>
#include <string.h>

#include "source.h"

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size);

int LLVMFuzzerTestOneInput(const uint8_t *bytes, size_t size)
{
    rodt_position position = {77, 78}, again = {0, 0};
    rodt_error error = {.status = RODT_OK};
    char written[RODT_POSITION_TEXT_SIZE];
    rodt_status status = rodt_position_parse_n((const char *)bytes, size, &position, &error);
    if (status != RODT_OK) {
        demand(position.axle == 77 && position.side == 78);
        demand(error.status == status && error.text[0] != '\0' && error.column <= size + 1);
        demand(memchr(error.text, '\0', sizeof error.text) != NULL);
        return 0;
    }
    demand(rodt_position_format(position, written, sizeof written, NULL) == RODT_OK);
    demand(rodt_position_parse_n(written, strlen(written), &again, NULL) == RODT_OK);
    demand(again.axle == position.axle && again.side == position.side);
    return 0;
}
