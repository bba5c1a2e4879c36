/* SPDX-License-Identifier: Apache-2.0 */
/* Files of the command where a call of the system fails: the older file stays as it was, or the new one is complete. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "io/atomic_file.h"
#include "ui/compiler.h"
#include "ui/exit_status.h"
#include "failing_calls.h"

/* --- A folder ----------------------------------------------------------------------------------------- */

static char folder[64];

static int make_folder(void **state)
{
    (void)state;
    snprintf(folder, sizeof folder, "atomic-file-XXXXXX");
    return mkdtemp(folder) != NULL && chdir(folder) == 0 ? 0 : -1;
}

static int remove_folder(void **state)
{
    (void)state;
    DIR *list = opendir(".");
    for (const struct dirent *entry = readdir(list); entry != NULL; entry = readdir(list))
        (void)remove(entry->d_name);
    closedir(list);
    return chdir("..") == 0 && rmdir(folder) == 0 ? 0 : -1;
}

static int count_files(void)
{
    int count = -2; /* "." and ".." */
    DIR *list = opendir(".");
    assert_non_null(list);
    while (readdir(list) != NULL)
        count++;
    closedir(list);
    return count;
}

static void write_text(const char *name, const char *text)
{
    FILE *file = fopen(name, "w");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
}

static void expect_text(const char *name, const char *wanted)
{
    char text[16] = "";
    FILE *file = fopen(name, "r");
    assert_int_equal(file != NULL, wanted != NULL);
    if (file == NULL)
        return;
    size_t size = fread(text, 1, sizeof text - 1, file);
    assert_int_equal(fclose(file), 0);
    assert_int_equal(size, strlen(wanted));
    assert_string_equal(text, wanted);
}

/* Writes "new", with a call that fails when the file is opened or when it is closed. */
typedef struct attempt {
    const char *call;
    int after, error;
    bool at_close, fresh, locks;
    int status;
    const char *text; /* of the file then; NULL = there is none */
} attempt;

static int write_file(const char *name, const attempt *how)
{
    atomic_file file;
    int lock = -1;
    if (!how->at_close && how->call != NULL)
        fail_call(how->call, how->after, how->error);
    int status = atomic_file_open(name, &file);
    if (status != STATUS_CONTINUE)
        return status;
    file.fresh = how->fresh;
    assert_true(fputs("new", file.to) >= 0);
    if (how->at_close && how->call != NULL)
        fail_call(how->call, how->after, how->error);
    status = how->locks ? atomic_file_close_locked(&file, true, &lock) : atomic_file_close(&file, true);
    assert_int_equal(lock >= 0, how->locks && strcmp(how->text, "new") == 0);
    if (lock >= 0)
        close(lock);
    return status;
}

static void try_each(const attempt *attempts, size_t count, const char *before)
{
    for (size_t i = 0; i < count; i++) {
        (void)remove("file");
        if (before != NULL)
            write_text("file", before);
        int status = write_file("file", &attempts[i]);
        assert_true(all_failed());
        assert_int_equal(status, attempts[i].status);
        expect_text("file", attempts[i].text);
        assert_int_equal(count_files(), attempts[i].text != NULL);
    }
}

static void an_older_file_stays_until_the_new_one_is_complete(void **state)
{
    (void)state;
    static const attempt attempts[] = {
        {NULL, 0, 0, false, false, false, STATUS_CONTINUE, "new"},
        {NULL, 0, 0, false, false, true, STATUS_CONTINUE, "new"},
        {"access", 0, EACCES, false, false, false, STATUS_USAGE, "old"},
        {"flock", 0, EWOULDBLOCK, false, false, false, STATUS_USAGE, "old"},
        {"flock", 0, ENOLCK, false, false, false, STATUS_CONTINUE, "new"}, /* a disk that has no locks */
        {"open", 0, EACCES, false, false, false, STATUS_CONTINUE, "new"},
        {"mkstemp", 0, EROFS, false, false, false, STATUS_USAGE, "old"},
        {"fstat", 0, EIO, false, false, false, STATUS_CONTINUE, "new"},
        {"fchmod", 0, EIO, false, false, false, STATUS_USAGE, "old"},
        {"fdopen", 0, ENOMEM, false, false, false, STATUS_USAGE, "old"},
        {"fsync", 0, EIO, true, false, false, STATUS_USAGE, "old"},
        {"rename", 0, EIO, true, false, false, STATUS_USAGE, "old"},
        {"fcntl", 0, EMFILE, true, false, true, STATUS_USAGE, "old"},
        {"rename", 0, EIO, true, false, true, STATUS_USAGE, "old"},
        {"fsync", 1, EIO, true, false, false, STATUS_USAGE, "new"}, /* of the folder */
        {"fsync", 1, EIO, true, false, true, STATUS_USAGE, "new"},
        {"fsync", 1, EINVAL, true, false, false, STATUS_CONTINUE, "new"}, /* no file system for that */
        {"open", 0, EMFILE, true, false, false, STATUS_USAGE, "new"},
        {"open", 0, EACCES, true, false, false, STATUS_CONTINUE, "new"},
        {"fclose", 0, EIO, true, false, false, STATUS_CONTINUE, "new"}}; /* after all is on the disk */
    try_each(attempts, COUNT_OF(attempts), "old");
}

static void a_fresh_file_replaces_none(void **state)
{
    (void)state;
    static const attempt attempts[] = {
        {NULL, 0, 0, true, true, false, STATUS_CONTINUE, "new"},
        {"link", 0, EPERM, true, true, false, STATUS_CONTINUE, "new"}, /* a disk that has no links */
        {"unlink", 0, EIO, true, true, false, STATUS_USAGE, "new"}};
    static const attempt taken[] = {{NULL, 0, 0, true, true, false, STATUS_USAGE, "old"},
                                    {"link", 0, EPERM, true, true, false, STATUS_USAGE, "old"}};
    try_each(attempts, COUNT_OF(attempts), NULL);
    try_each(taken, COUNT_OF(taken), "old");
}

/* Also where it cannot even be closed. */
static void what_is_not_wanted_leaves_the_older_file(void **state)
{
    (void)state;
    write_text("file", "old");
    for (int closes = 0; closes < 2; closes++) {
        atomic_file file;
        int lock = -1;
        assert_int_equal(atomic_file_open("file", &file), STATUS_CONTINUE);
        if (!closes)
            fail_call("fclose", 0, EIO);
        assert_int_equal(atomic_file_close_locked(&file, false, &lock), STATUS_USAGE);
        assert_true(all_failed());
        assert_int_equal(lock, -1);
        expect_text("file", "old");
        assert_int_equal(count_files(), 1);
    }
}

/* Without links, a name that cannot be given is told. */
static void a_fresh_file_that_cannot_be_named(void **state)
{
    (void)state;
    atomic_file file;
    (void)remove("file");
    assert_int_equal(atomic_file_open("file", &file), STATUS_CONTINUE);
    file.fresh = true;
    assert_int_equal(remove(file.temporary), 0);
    assert_int_equal(atomic_file_close(&file, true), STATUS_USAGE);
    assert_int_equal(count_files(), 0);
}

/* An error that was seen before the end is asked for again. */
static void what_failed_earlier_is_told(void **state)
{
    (void)state;
    for (int writes = 0; writes < 2; writes++) {
        atomic_file file;
        assert_int_equal(atomic_file_open("file", &file), STATUS_CONTINUE);
        assert_int_equal(fgetc(file.to), EOF); /* a file that is written cannot be read: its error is kept */
        if (writes)
            fail_call("write", 0, ENOSPC);
        assert_int_equal(atomic_file_close(&file, true), STATUS_USAGE);
        assert_true(all_failed());
        assert_int_equal(count_files(), 0);
    }
}

static void a_temporary_file_that_lost_its_name_is_made_again(void **state)
{
    (void)state;
    static const attempt again = {"unnamed", 0, 0, false, false, false, STATUS_CONTINUE, "new"};
    assert_int_equal(write_file("file", &again), STATUS_CONTINUE);
    expect_text("file", "new");
    assert_int_equal(count_files(), 2); /* the first one still has its name in this test */
}

static void devices_are_written_in_place(void **state)
{
    (void)state;
    atomic_file file;
    static const attempt plain = {NULL, 0, 0, false, false, false, STATUS_CONTINUE, NULL};
    static const attempt at_end = {"fclose", 0, EIO, true, false, false, STATUS_USAGE, NULL};
    assert_int_equal(atomic_file_check("/dev/null"), STATUS_CONTINUE);
    assert_int_equal(write_file("/dev/null", &plain), STATUS_CONTINUE);
    assert_int_equal(write_file("/dev/null", &at_end), STATUS_USAGE);
    assert_int_equal(write_file("/dev/full", &plain), STATUS_USAGE);
    assert_int_equal(write_file("/dev/full", &at_end), STATUS_USAGE);
    assert_int_equal(write_file(".", &plain), STATUS_USAGE);
    assert_int_equal(atomic_file_open("/dev/null", &file), STATUS_CONTINUE);
    assert_int_equal(fgetc(file.to), EOF);
    assert_int_equal(atomic_file_close(&file, true), STATUS_USAGE);
    assert_int_equal(atomic_file_open("/dev/null", &file), STATUS_CONTINUE);
    assert_int_equal(atomic_file_close(&file, false), STATUS_USAGE);
    assert_int_equal(atomic_file_open("-", &file), STATUS_CONTINUE);
    assert_int_equal(atomic_file_close(&file, false), STATUS_USAGE);
    assert_int_equal(atomic_file_close(&file, true), STATUS_CONTINUE);
}

static void links_in_a_circle_and_long_names_are_refused(void **state)
{
    (void)state;
    static const attempt plain = {NULL, 0, 0, false, false, false, STATUS_USAGE, NULL};
    char name[FILE_PATH_SIZE + 8];
    assert_int_equal(symlink("one", "other"), 0);
    assert_int_equal(symlink("other", "one"), 0);
    atomic_file_clean("one");
    assert_int_equal(write_file("one", &plain), STATUS_USAGE);
    for (size_t size = FILE_PATH_SIZE - 6; size < FILE_PATH_SIZE + 2; size++) {
        memset(name, 'x', size);
        for (size_t at = 200; at < size; at += 200)
            name[at] = '/';
        name[size] = '\0';
        assert_int_equal(write_file(name, &plain), STATUS_USAGE);
    }
}

/* What stays of a name of 250 bytes is whole characters, and nothing where there are none. */
static void long_names_are_cut_between_characters(void **state)
{
    (void)state;
    static const attempt plain = {NULL, 0, 0, false, false, false, STATUS_CONTINUE, NULL};
    char name[256];
    for (int shift = 0; shift < 3; shift++) {
        memset(name, shift < 2 ? 'x' : 0x80, 250);
        for (size_t at = (size_t)shift; at + 1 < 250 && shift < 2; at += 2)
            memcpy(name + at, "\xC3\xA9", 2);
        name[250] = '\0';
        assert_int_equal(write_file(name, &plain), STATUS_CONTINUE);
        expect_text(name, "new");
        assert_int_equal(count_files(), 1);
        assert_int_equal(remove(name), 0);
    }
}

/* Only a file that is plain, ours, and that nobody has locked. */
static void what_a_killed_run_left_is_removed(void **state)
{
    (void)state;
    static const char left[] = "file.rodtravel-AbCdEf";
    static const char *const keep[] = {"fstat", "geteuid", "flock"};
    for (size_t i = 0; i < COUNT_OF(keep); i++) {
        write_text(left, "half");
        fail_call(keep[i], 0, EWOULDBLOCK);
        atomic_file_clean("file");
        assert_true(all_failed());
        expect_text(left, "half");
    }
    atomic_file_clean("file");
    expect_text(left, NULL);
    assert_int_equal(mkdir(left, 0700), 0);
    assert_int_equal(symlink("elsewhere", "file.rodtravel-GhIjKl"), 0);
    write_text("file.rodtravel-", "short");
    atomic_file_clean("file");
    assert_int_equal(count_files(), 3);
    atomic_file_clean("nowhere/file");
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test_setup_teardown(an_older_file_stays_until_the_new_one_is_complete, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(a_fresh_file_replaces_none, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(what_is_not_wanted_leaves_the_older_file, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(a_fresh_file_that_cannot_be_named, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(what_failed_earlier_is_told, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(a_temporary_file_that_lost_its_name_is_made_again, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(devices_are_written_in_place, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(links_in_a_circle_and_long_names_are_refused, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(long_names_are_cut_between_characters, make_folder, remove_folder),
        cmocka_unit_test_setup_teardown(what_a_killed_run_left_is_removed, make_folder, remove_folder),
    };
    return cmocka_run_group_tests_name("atomic_file", tests, NULL, NULL);
}
