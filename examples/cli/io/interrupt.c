/* SPDX-License-Identifier: Apache-2.0 */
/* A stop flag, set by the signal handler and polled by readers. */
#include "io/interrupt.h"

#include <poll.h>
#include <signal.h>
#include <stdatomic.h>
#include <stddef.h>

/* One for the process, like the signals. */
static atomic_bool requested;

/* Milliseconds between two looks at the flag. */
#define POLL_INTERVAL 100

static void handle_signal(int number)
{
    (void)number;
    atomic_store(&requested, true);
}

static void listen_to(int number)
{
    struct sigaction now = {.sa_handler = SIG_DFL};
    struct sigaction wanted = {.sa_handler = handle_signal};
    wanted.sa_flags = (int)(SA_RESETHAND | SA_RESTART); /* poll() ends all the same; stdio would lose what it moves */
    sigemptyset(&wanted.sa_mask);
    (void)sigaction(number, NULL, &now);
    if (now.sa_handler != SIG_IGN)
        (void)sigaction(number, &wanted, NULL);
}

void interrupt_listen(void)
{
    listen_to(SIGINT);
    listen_to(SIGTERM);
}

void interrupt_request(void) { atomic_store(&requested, true); }

bool interrupt_requested(void) { return atomic_load(&requested); }

/* A descriptor that cannot be waited for is left to read(), which says why. */
bool interrupt_or_ready(int descriptor)
{
    struct pollfd wait = {.fd = descriptor, .events = POLLIN};
    int ready = 0;
    while (!interrupt_requested() && ready <= 0) {
        ready = poll(&wait, 1, POLL_INTERVAL);
        if (ready < 0 && !interrupt_requested())
            return true;
    }
    return !interrupt_requested();
}
