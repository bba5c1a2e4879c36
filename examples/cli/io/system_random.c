/* SPDX-License-Identifier: Apache-2.0 */
#include "io/system_random.h"

#include <stdbool.h>
#include <stdio.h>
#include <time.h>
#include <unistd.h>

uint64_t system_random(void)
{
    uint64_t number = 0;
    FILE *device = fopen("/dev/urandom", "rb");
    bool read = device != NULL && fread(&number, sizeof number, 1, device) == 1;
    if (device != NULL)
        fclose(device);
    return read ? number : (uint64_t)time(NULL) * 1000003u + (uint64_t)getpid();
}
