/* SPDX-License-Identifier: Apache-2.0 */
/* How threads share a file in `rodtravel batch`. Each takes the next part of the input while no other does, judges it
 * while others judge theirs, and delivers it when all parts before it have been delivered. So the output has the
 * order of the input, whatever the number of threads, and no more parts are held than there are threads. */
#include "batch/workers.h"
#include "batch/chunk_run.h"
#include "batch/delivery.h"
#include "io/interrupt.h"

#include <pthread.h>
#include <stdlib.h>
#include <string.h>

/* Each half has a lock of its own: `taking` that of the input, `turn` that of the delivery. */
typedef struct relay {
    batch_run *run;
    const batch_input *input;
    pthread_mutex_t taking;
    csv_reader *reader;
    uint64_t taken;  /* parts */
    bool over;       /* the input is at its end, or must not be read on */
    pthread_mutex_t turn;
    pthread_cond_t turned;
    uint64_t delivered; /* parts */
    bool failed;        /* a part could not be delivered: none after it is */
} relay;

/* One that runs. */
typedef struct runner {
    relay *relay;
    batch_part *part;
    pthread_t thread;
} runner;

/* What is there goes out before more is waited for. */
static bool must_wait(const csv_reader *reader)
{
    return memchr(reader->buffer + reader->begin, '\n', reader->end - reader->begin) == NULL;
}

/* Reads one record by itself. False: there is none, or the run stops. */
static bool take_record(relay *from, batch_part *part)
{
    csv_record record;
    csv_status status = csv_next(from->reader, &record);
    if (status == CSV_RECORD)
        return batch_part_row(part, &record);
    if (status != CSV_END) {
        part->stopped = true;
        part->fault = status;
        part->stop_line = from->reader->fault_line;
    }
    from->over = true;
    return false;
}

/* Takes records one by one until a piece of whole records stands in the buffer. True: the part's reader holds it. */
static bool take_piece(relay *from, batch_part *part)
{
    csv_reader *reader = from->reader;
    reader->line = 1;
    for (;;) {
        size_t size = csv_complete_size(reader);
        if (size > 0) {
            csv_move_chunk(reader, size, &part->reader);
            return true;
        }
        bool full = part->out.used >= OUTPUT_BLOCK || (reader->line > 1 && must_wait(reader));
        if (full || !take_record(from, part))
            break;
    }
    part->lines = reader->line - 1;
    batch_part_flush(part);
    return false;
}

/* Takes the next part of the input. False: there is none. */
static bool take(relay *from, batch_part *part, uint64_t *number, bool *piece)
{
    batch_part_clear(part);
    pthread_mutex_lock(&from->taking);
    bool more = !from->over;
    if (more) {
        *number = from->taken++;
        *piece = take_piece(from, part);
        part->taken = from->input->taken;
        from->over = from->over || part->stopped;
    }
    pthread_mutex_unlock(&from->taking);
    return more;
}

/* Waits for the part's turn and delivers it. False: the run has stopped. */
static bool deliver(relay *to, batch_part *part, uint64_t number)
{
    pthread_mutex_lock(&to->turn);
    while (to->delivered != number)
        pthread_cond_wait(&to->turned, &to->turn);
    if (!to->failed)
        to->failed = !batch_deliver(part, to->input);
    to->delivered++;
    bool good = !to->failed;
    pthread_cond_broadcast(&to->turned);
    pthread_mutex_unlock(&to->turn);
    return good;
}

/* Whoever waits for input holds the lock. */
static void stop_taking(relay *from)
{
    interrupt_request();
    pthread_mutex_lock(&from->taking);
    from->over = true;
    pthread_mutex_unlock(&from->taking);
}

static void *run_parts(void *context)
{
    const runner *self = context;
    uint64_t number;
    bool piece;
    while (take(self->relay, self->part, &number, &piece)) {
        if (piece)
            batch_part_judge(self->part);
        if (!deliver(self->relay, self->part, number)) {
            stop_taking(self->relay);
            break;
        }
    }
    return NULL;
}

/* Starts as many more as can be had; fewer than wanted do the same work. */
static size_t start(relay *of, runner *runners, size_t wanted)
{
    size_t count = 0;
    for (; count < wanted; count++) {
        runner *next = &runners[count];
        *next = (runner){.relay = of, .part = calloc(1, sizeof *next->part)};
        if (next->part == NULL)
            break;
        if (!batch_part_open(next->part, of->run, of->reader) ||
            !batch_part_open_cache(next->part, (unsigned)wanted + 1) ||
            pthread_create(&next->thread, NULL, run_parts, next) != 0) {
            batch_part_close(next->part);
            free(next->part);
            break;
        }
    }
    return count;
}

static void finish(runner *runners, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        pthread_join(runners[i].thread, NULL);
        batch_part_close(runners[i].part);
        free(runners[i].part);
    }
}

bool batch_relay(batch_run *run, batch_part *first, csv_reader *reader, const batch_input *input, unsigned jobs)
{
    relay shared = {.run = run, .input = input, .reader = reader};
    runner self = {.relay = &shared, .part = first};
    runner others[BATCH_JOBS_MOST];
    pthread_mutex_init(&shared.taking, NULL);
    pthread_mutex_init(&shared.turn, NULL);
    pthread_cond_init(&shared.turned, NULL);
    size_t count = start(&shared, others, jobs - 1);
    (void)run_parts(&self);
    finish(others, count);
    pthread_cond_destroy(&shared.turned);
    pthread_mutex_destroy(&shared.turn);
    pthread_mutex_destroy(&shared.taking);
    return !shared.failed;
}
