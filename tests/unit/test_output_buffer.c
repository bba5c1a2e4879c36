/* SPDX-License-Identifier: Apache-2.0 */
/* Output that the system takes in parts, or not: a file gets all of a block or nothing of it. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "io/output_buffer.h"
#include "failing_calls.h"

/* A new file without a name. */
static int open_file(void)
{
    char name[] = "output-XXXXXX";
    int descriptor = mkstemp(name);
    assert_true(descriptor >= 0);
    assert_int_equal(unlink(name), 0);
    return descriptor;
}

static void expect_file(int descriptor, const char *wanted)
{
    char text[32];
    ssize_t size = pread(descriptor, text, sizeof text, 0);
    assert_int_equal(size, strlen(wanted));
    assert_memory_equal(text, wanted, (size_t)size);
}

static void what_is_taken_in_parts_is_written_completely(void **state)
{
    (void)state;
    output to;
    int file = open_file();
    assert_true(output_open(&to, file));
    output_text(&to, "first");
    output_bytes(&to, NULL, 0);
    fail_call("write", 0, EINTR);
    fail_call("short write", 0, 0);
    assert_true(output_flush(&to));
    assert_true(all_failed());
    output_text(&to, ", second");
    assert_true(output_flush(&to));
    assert_true(output_flush(&to));
    expect_file(file, "first, second");
    output_close(&to);
    close(file);
}

/* Writes "first", then half of "secondly"; what happens after that is in the call that fails next. */
static void write_half(int descriptor, const char *call)
{
    output to;
    assert_true(output_open(&to, descriptor));
    output_text(&to, "first");
    assert_true(output_flush(&to));
    output_text(&to, "secondly");
    fail_call("short write", 0, 0);
    fail_call("write", 1, ENOSPC);
    if (call != NULL)
        fail_call(call, 0, EIO);
    assert_false(output_flush(&to));
    assert_true(all_failed());
    assert_int_equal(to.failure, ENOSPC);
    output_text(&to, "thirdly"); /* nothing is written after a failure */
    assert_false(output_room(&to, 1));
    assert_false(output_flush(&to));
    assert_int_equal(to.failure, ENOSPC);
    output_close(&to);
}

static void a_file_takes_back_what_was_cut_off(void **state)
{
    (void)state;
    static const struct {
        const char *call, *text;
    } files[] = {{NULL, "first"}, {"fstat", "firstseco"}, {"ftruncate", "firstseco"}};
    for (size_t i = 0; i < sizeof files / sizeof files[0]; i++) {
        int file = open_file();
        write_half(file, files[i].call);
        expect_file(file, files[i].text);
        assert_int_equal(lseek(file, 0, SEEK_CUR), strlen(files[i].text));
        close(file);
    }
}

/* A pipe has passed it on; in the middle of a file something else comes after it. */
static void what_cannot_be_taken_back_stays(void **state)
{
    (void)state;
    int ends[2], file = open_file();
    char text[32];
    assert_int_equal(pipe(ends), 0);
    write_half(ends[1], NULL);
    assert_int_equal(read(ends[0], text, sizeof text), 9);
    assert_memory_equal(text, "firstseco", 9);
    close(ends[0]);
    close(ends[1]);
    assert_int_equal(write(file, "0123456789", 10), 10);
    assert_int_equal(lseek(file, 0, SEEK_SET), 0);
    write_half(file, NULL);
    expect_file(file, "firstseco9");
    close(file);
}

static void nothing_is_taken_back_if_nothing_was_written(void **state)
{
    (void)state;
    output to;
    int file = open_file();
    assert_true(output_open(&to, file));
    output_text(&to, "first");
    assert_true(output_flush(&to));
    output_text(&to, "second");
    fail_call("write", 0, ENOSPC);
    assert_false(output_flush(&to));
    assert_true(all_failed());
    expect_file(file, "first");
    output_close(&to);
    close(file);
}

static void memory_that_is_missing_is_a_failure(void **state)
{
    (void)state;
    output to;
    int file = open_file();
    fail_call("malloc", 0, ENOMEM);
    assert_false(output_open(&to, file));
    assert_true(all_failed());
    assert_true(output_open(&to, file));
    assert_true(output_room(&to, 3 * OUTPUT_BLOCK));
    assert_true(to.capacity >= 3 * OUTPUT_BLOCK);
    output_text(&to, "first");
    fail_call("realloc", 0, ENOMEM);
    assert_false(output_room(&to, 9 * OUTPUT_BLOCK));
    assert_true(all_failed());
    assert_int_equal(to.failure, ENOMEM);
    assert_false(output_flush(&to));
    expect_file(file, "");
    output_close(&to);
    close(file);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(what_is_taken_in_parts_is_written_completely),
                                       cmocka_unit_test(a_file_takes_back_what_was_cut_off),
                                       cmocka_unit_test(what_cannot_be_taken_back_stays),
                                       cmocka_unit_test(nothing_is_taken_back_if_nothing_was_written),
                                       cmocka_unit_test(memory_that_is_missing_is_a_failure)};
    return cmocka_run_group_tests_name("output_buffer", tests, NULL, NULL);
}
