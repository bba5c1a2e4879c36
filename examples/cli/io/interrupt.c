/* SPDX-License-Identifier: Apache-2.0 */
/* The wish to stop. A signal comes to any thread at any time, so it only leaves a word, and whoever waits for input
 * looks for that word now and then. */
#include "io/interrupt.h"

#include <poll.h>
#include <signal.h>
#include <stdatomic.h>
#include <stddef.h>

/* Of the whole program, as signals are. */
static atomic_bool asked;

/* How long a wait lasts before it looks again, in milliseconds. */
#define LOOK_AGAIN 100

static void take_signal(int number)
{
    (void)number;
    atomic_store(&asked, true);
}

static void listen_to(int number)
{
    struct sigaction now;
    struct sigaction wanted = {.sa_handler = take_signal};
    wanted.sa_flags = (int)SA_RESETHAND;
    sigemptyset(&wanted.sa_mask);
    if (sigaction(number, NULL, &now) == 0 && now.sa_handler != SIG_IGN)
        (void)sigaction(number, &wanted, NULL);
}

void interrupt_listen(void)
{
    listen_to(SIGINT);
    listen_to(SIGTERM);
}

void interrupt_request(void) { atomic_store(&asked, true); }

bool interrupt_requested(void) { return atomic_load(&asked); }

/* A descriptor that cannot be waited for is left to read(), which says why. */
bool interrupt_or_ready(int descriptor)
{
    struct pollfd wait = {.fd = descriptor, .events = POLLIN};
    int ready = 0;
    while (!interrupt_requested() && ready <= 0) {
        ready = poll(&wait, 1, LOOK_AGAIN);
        if (ready < 0 && !interrupt_requested())
            return true;
    }
    return !interrupt_requested();
}
