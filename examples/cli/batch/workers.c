/* SPDX-License-Identifier: Apache-2.0 */
/* The worker pool of `rodtravel batch`. A worker reads the next chunk under the input lock, judges it while others
 * judge theirs, and delivers it under the output lock when all chunks before it have been delivered. So the output
 * has the order of the input, whatever the number of threads, and no more chunks are held than there are threads. */
#include "batch/workers.h"
#include "batch/chunk_run.h"
#include "batch/delivery.h"
#include "io/interrupt.h"

#include <pthread.h>
#include <stdlib.h>
#include <string.h>

typedef struct worker_pool {
    batch_run *run;
    const input_file *input;
    pthread_mutex_t input_lock;
    csv_reader *reader;
    uint64_t chunks_read;
    bool input_done; /* the input is at its end, or must not be read on */
    pthread_mutex_t output_lock;
    pthread_cond_t output_ready; /* the next chunk may be delivered */
    uint64_t chunks_delivered;
    bool failed; /* a chunk could not be delivered: none after it is */
} worker_pool;

typedef struct worker {
    worker_pool *pool;
    batch_chunk *chunk;
    pthread_t thread;
} worker;

/* True if the buffer has no complete line: what was judged is written before anybody waits for more. */
static bool must_wait(const csv_reader *reader)
{
    return memchr(reader->buffer + reader->begin, '\n', reader->end - reader->begin) == NULL;
}

/* Reads one record by itself. False: there is none, or the run stops. */
static bool read_record(worker_pool *from, batch_chunk *chunk)
{
    csv_record record;
    csv_status status = csv_next(from->reader, &record);
    if (status == CSV_RECORD)
        return batch_chunk_row(chunk, &record);
    if (status != CSV_END) {
        chunk->stopped = true;
        chunk->fault = status;
        chunk->stop_line = from->reader->fault_line;
    }
    from->input_done = true;
    return false;
}

/* Judges records one by one until the buffer has complete records whose end is sure. True: the reader of the chunk
 * has them. */
static bool read_chunk(worker_pool *from, batch_chunk *chunk)
{
    csv_reader *reader = from->reader;
    reader->line = 1;
    for (;;) {
        size_t size = csv_complete_size(reader);
        if (size > 0) {
            csv_move_chunk(reader, size, &chunk->reader);
            return true;
        }
        bool full = chunk->out.used >= OUTPUT_BLOCK || (reader->line > 1 && must_wait(reader));
        if (full || !read_record(from, chunk))
            break;
    }
    chunk->lines = reader->line - 1;
    batch_chunk_flush(chunk);
    return false;
}

/* Reads the next chunk of the input; `pending` = it is still to be judged. False: there is none. */
static bool take_chunk(worker_pool *from, batch_chunk *chunk, uint64_t *number, bool *pending)
{
    batch_chunk_clear(chunk);
    pthread_mutex_lock(&from->input_lock);
    bool more = !from->input_done;
    if (more) {
        *number = from->chunks_read++;
        *pending = read_chunk(from, chunk);
        chunk->bytes_read = from->input->bytes_read;
        from->input_done = from->input_done || chunk->stopped;
    }
    pthread_mutex_unlock(&from->input_lock);
    return more;
}

/* Delivers the chunk after all before it. False: the run has stopped. */
static bool deliver(worker_pool *to, batch_chunk *chunk, uint64_t number)
{
    pthread_mutex_lock(&to->output_lock);
    while (to->chunks_delivered != number)
        pthread_cond_wait(&to->output_ready, &to->output_lock);
    if (!to->failed)
        to->failed = !batch_deliver(chunk, to->input);
    to->chunks_delivered++;
    bool good = !to->failed;
    pthread_cond_broadcast(&to->output_ready);
    pthread_mutex_unlock(&to->output_lock);
    return good;
}

/* A worker that waits for input holds the lock until it sees the request. */
static void stop_reading(worker_pool *from)
{
    interrupt_request();
    pthread_mutex_lock(&from->input_lock);
    from->input_done = true;
    pthread_mutex_unlock(&from->input_lock);
}

static void *run_chunks(void *context)
{
    const worker *self = context;
    uint64_t number;
    bool pending;
    while (take_chunk(self->pool, self->chunk, &number, &pending)) {
        if (pending)
            batch_chunk_judge(self->chunk);
        if (!deliver(self->pool, self->chunk, number)) {
            stop_reading(self->pool);
            break;
        }
    }
    return NULL;
}

/* Starts as many workers as can be had; fewer than wanted do the same work. */
static size_t start(worker_pool *of, worker *workers, size_t wanted)
{
    size_t count = 0;
    for (; count < wanted; count++) {
        worker *next = &workers[count];
        *next = (worker){.pool = of, .chunk = calloc(1, sizeof *next->chunk)};
        if (next->chunk == NULL)
            break;
        if (!batch_chunk_open(next->chunk, of->run, of->reader) ||
            !batch_chunk_open_cache(next->chunk, (unsigned)wanted + 1) ||
            pthread_create(&next->thread, NULL, run_chunks, next) != 0) {
            batch_chunk_close(next->chunk);
            free(next->chunk);
            break;
        }
    }
    return count;
}

static void finish(worker *workers, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        pthread_join(workers[i].thread, NULL);
        batch_chunk_close(workers[i].chunk);
        free(workers[i].chunk);
    }
}

bool batch_run_workers(batch_run *run, batch_chunk *first, csv_reader *reader, const input_file *input, unsigned jobs)
{
    worker_pool shared = {.run = run, .input = input, .reader = reader};
    worker self = {.pool = &shared, .chunk = first};
    worker others[BATCH_JOBS_MOST];
    pthread_mutex_init(&shared.input_lock, NULL);
    pthread_mutex_init(&shared.output_lock, NULL);
    pthread_cond_init(&shared.output_ready, NULL);
    size_t count = start(&shared, others, jobs - 1);
    /* With several threads the first one only waits for the others: signals come to it, and while it waited for a lock
     * the thread checker would not deliver them. */
    if (count > 0 && pthread_create(&self.thread, NULL, run_chunks, &self) == 0)
        pthread_join(self.thread, NULL);
    else
        (void)run_chunks(&self);
    finish(others, count);
    pthread_cond_destroy(&shared.output_ready);
    pthread_mutex_destroy(&shared.output_lock);
    pthread_mutex_destroy(&shared.input_lock);
    return !shared.failed;
}
