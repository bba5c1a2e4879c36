/* SPDX-License-Identifier: Apache-2.0 */
/* Small helpers of the command on top of the system, where it refuses: temporary files, random numbers, interrupts. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <poll.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "io/interrupt.h"
#include "io/system_random.h"
#include "io/temporary_file.h"
#include "failing_calls.h"

/* The descriptor that would be opened next. */
static int next_descriptor(void)
{
    int next = dup(STDIN_FILENO);
    assert_true(next >= 0);
    close(next);
    return next;
}

static void a_temporary_file_has_no_name_and_is_not_inherited(void **state)
{
    (void)state;
    static const char *const folders[] = {".", "", NULL};
    char text[8] = "";
    for (size_t i = 0; i < sizeof folders / sizeof folders[0]; i++) {
        assert_int_equal(folders[i] != NULL ? setenv("TMPDIR", folders[i], 1) : unsetenv("TMPDIR"), 0);
        FILE *file = temporary_file();
        assert_non_null(file);
        assert_int_equal(fcntl(fileno(file), F_GETFD) & FD_CLOEXEC, FD_CLOEXEC);
        assert_true(fputs("text", file) >= 0);
        rewind(file);
        assert_string_equal(fgets(text, sizeof text, file), "text");
        assert_int_equal(fclose(file), 0);
    }
}

/* errno says why, and nothing stays open. */
static void a_temporary_file_that_fails_is_told(void **state)
{
    (void)state;
    static const char *const calls[] = {"mkstemp", "unlink", "fcntl", "fdopen"};
    static char folder[PATH_MAX];
    char template[] = "temporary-XXXXXX";
    int next = next_descriptor();
    memset(folder, 'x', sizeof folder - 1);
    assert_int_equal(setenv("TMPDIR", folder, 1), 0);
    assert_null(temporary_file());
    assert_int_equal(errno, ENAMETOOLONG);
    assert_non_null(mkdtemp(template));
    assert_int_equal(setenv("TMPDIR", template, 1), 0);
    for (size_t i = 0; i < sizeof calls / sizeof calls[0]; i++) {
        fail_call(calls[i], 0, ENFILE);
        assert_null(temporary_file());
        assert_int_equal(errno, ENFILE);
        assert_true(all_failed());
        assert_int_equal(next_descriptor(), next);
    }
    DIR *list = opendir(template);
    assert_non_null(list);
    for (const struct dirent *entry = readdir(list); entry != NULL; entry = readdir(list))
        (void)unlinkat(dirfd(list), entry->d_name, 0); /* the one whose name could not be taken away */
    closedir(list);
    assert_int_equal(rmdir(template), 0);
    assert_int_equal(unsetenv("TMPDIR"), 0);
}

/* Without the device, a number that differs from run to run will do. */
static void a_random_number_is_always_given(void **state)
{
    (void)state;
    static const char *const calls[] = {"fopen", "fread"};
    int next = next_descriptor();
    for (size_t i = 0; i < sizeof calls / sizeof calls[0]; i++) {
        uint64_t before = (uint64_t)time(NULL) * 1000003u + (uint64_t)getpid();
        fail_call(calls[i], 0, EMFILE);
        uint64_t number = system_random();
        assert_true(all_failed());
        assert_true(number >= before && number <= (uint64_t)time(NULL) * 1000003u + (uint64_t)getpid());
        assert_int_equal(next_descriptor(), next);
    }
    assert_int_not_equal(system_random(), system_random());
}

/* The last part asks to stop, which holds for the rest of the process. */
static void a_run_is_stopped_by_a_signal_that_is_not_ignored(void **state)
{
    (void)state;
    struct sigaction action;
    int ends[2];
    assert_int_equal(pipe(ends), 0);
    assert_int_equal(write(ends[1], "x", 1), 1);
    assert_true(signal(SIGINT, SIG_IGN) != SIG_ERR);
    interrupt_listen();
    assert_int_equal(sigaction(SIGINT, NULL, &action), 0);
    assert_true(action.sa_handler == SIG_IGN);
    assert_true(interrupt_or_ready(ends[0]));
    fail_call("poll", 0, ENOMEM); /* read() may still work */
    assert_true(interrupt_or_ready(ends[0]));
    assert_true(all_failed());
    assert_false(interrupt_requested());
    fail_call("interrupted poll", 0, EINTR);
    assert_false(interrupt_or_ready(ends[0]));
    assert_true(all_failed());
    assert_true(interrupt_requested());
    assert_false(interrupt_or_ready(ends[0]));
    close(ends[0]);
    close(ends[1]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(a_temporary_file_has_no_name_and_is_not_inherited),
                                       cmocka_unit_test(a_temporary_file_that_fails_is_told),
                                       cmocka_unit_test(a_random_number_is_always_given),
                                       cmocka_unit_test(a_run_is_stopped_by_a_signal_that_is_not_ignored)};
    return cmocka_run_group_tests_name("system_calls", tests, NULL, NULL);
}
