/* SPDX-License-Identifier: Apache-2.0 */
/* Which files of a command line are one file. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "ui/exit_status.h"
#include "ui/files.h"

enum { PAGE, DRAWING, DECIMALS, OPTIONS };

static const option_spec options[OPTIONS] = {
    [PAGE] = {.name = "html"}, [DRAWING] = {.name = "svg"}, [DECIMALS] = {.name = "decimals"}};
static const file_argument reading[] = {{FILE_OPERAND, false}, {PAGE, true}, {DRAWING, true}};
static const file_argument writing[] = {{PAGE, true}, {DRAWING, false}, {FILE_OPERAND, true}};
static const command_spec reads = {.name = "report", .options = options, .option_count = OPTIONS, .files = reading, .file_count = 3};
static const command_spec writes = {.name = "walkround", .options = options, .option_count = OPTIONS, .files = writing, .file_count = 3};

/* NULL = not given. */
static int check(const command_spec *command, const char *operand, const char *page, const char *drawing)
{
    command_line line = {.command = command, .given = {{DECIMALS, "a"}}, .given_count = 1};
    if (operand != NULL)
        line.operands[line.operand_count++] = operand;
    if (page != NULL) {
        line.given[line.given_count].option = PAGE;
        line.given[line.given_count++].value = page;
    }
    if (drawing != NULL) {
        line.given[line.given_count].option = DRAWING;
        line.given[line.given_count++].value = drawing;
    }
    return check_files(&line);
}

static void make_file(const char *name)
{
    FILE *file = fopen(name, "w");
    assert_non_null(file);
    assert_int_equal(fclose(file), 0);
}

static char folder[] = "files-XXXXXX";
static const char *const made[] = {"circle", "hard", "soft", "other", "sub", "a"};

static int make_folder(void **state)
{
    (void)state;
    if (mkdtemp(folder) == NULL || chdir(folder) != 0)
        return -1;
    make_file("a");
    make_file("other");
    return mkdir("sub", 0700) | link("a", "hard") | symlink("a", "soft") | symlink("circle", "circle");
}

static int remove_folder(void **state)
{
    int status = 0;
    (void)state;
    for (size_t i = 0; i < sizeof made / sizeof made[0]; i++)
        status |= remove(made[i]);
    return status | chdir("..") | rmdir(folder);
}

static void names_of_one_file_are_found(void **state)
{
    (void)state;
    char longest[300];
    memset(longest, 'x', sizeof longest - 1);
    longest[sizeof longest - 1] = '\0';
    const struct {
        const char *operand, *page, *drawing;
        int status;
    } lines[] = {{"a", NULL, NULL, STATUS_CONTINUE},
                 {"a", "b", "c", STATUS_CONTINUE},
                 {"a", "other", "sub", STATUS_CONTINUE},
                 {"a", "a", NULL, STATUS_USAGE},
                 {"a", NULL, "hard", STATUS_USAGE},
                 {"a", "b", "soft", STATUS_USAGE},
                 {"a", "sub/../a", "c", STATUS_USAGE}, /* the next one is not looked at */
                 {"a", "A", NULL, STATUS_USAGE},        /* not there: it may become the same */
                 {"a", "b", "B", STATUS_USAGE},
                 {"a", "b", "sub/b", STATUS_CONTINUE},
                 {"a", "/dev/null", "/dev/null", STATUS_CONTINUE},
                 {"a", "nowhere/b", "nowhere/b", STATUS_CONTINUE}, /* cannot be written anyway */
                 {"a", "circle", "circle", STATUS_CONTINUE},
                 {"a", longest, longest, STATUS_CONTINUE},
                 {"a", "-", NULL, STATUS_CONTINUE},
                 {"a", "-", "-", STATUS_USAGE},
                 {"-", "-", "b", STATUS_CONTINUE},
                 {NULL, "b", NULL, STATUS_CONTINUE}};
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++)
        assert_int_equal(check(&reads, lines[i].operand, lines[i].page, lines[i].drawing), lines[i].status);
    assert_int_equal(check(&writes, "a", "b", "c"), STATUS_CONTINUE);
    assert_int_equal(check(&writes, "a", "b", "a"), STATUS_USAGE);
    assert_int_equal(check(&writes, "a", "b", "b"), STATUS_USAGE);
    assert_int_equal(check(&writes, "-", NULL, "b"), STATUS_CONTINUE);
    assert_int_equal(check(&writes, NULL, "-", NULL), STATUS_USAGE);
}

/* Standard input and output are the file "a". */
static int check_redirected(const char *operand, const char *page, const char *drawing)
{
    int in = dup(STDIN_FILENO), out = dup(STDOUT_FILENO), file = open("a", O_RDWR);
    assert_true(in >= 0 && out >= 0 && file >= 0);
    fflush(stdout);
    assert_true(dup2(file, STDIN_FILENO) >= 0 && dup2(file, STDOUT_FILENO) >= 0);
    int status = check(&reads, operand, page, drawing);
    fflush(stdout);
    assert_true(dup2(in, STDIN_FILENO) >= 0 && dup2(out, STDOUT_FILENO) >= 0);
    close(in);
    close(out);
    close(file);
    return status;
}

static void standard_output_may_be_one_of_them(void **state)
{
    (void)state;
    assert_int_equal(check_redirected("other", NULL, NULL), STATUS_CONTINUE);
    assert_int_equal(check_redirected("other", "-", NULL), STATUS_CONTINUE);
    assert_int_equal(check_redirected("other", "b", NULL), STATUS_CONTINUE);
    assert_int_equal(check_redirected("a", NULL, NULL), STATUS_USAGE);
    assert_int_equal(check_redirected("-", NULL, NULL), STATUS_USAGE);
    assert_int_equal(check_redirected("-", "-", NULL), STATUS_USAGE);
    assert_int_equal(check_redirected("other", "hard", NULL), STATUS_USAGE);
    assert_int_equal(check_redirected("other", "-", "soft"), STATUS_USAGE);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(names_of_one_file_are_found),
                                       cmocka_unit_test(standard_output_may_be_one_of_them)};
    return cmocka_run_group_tests_name("files", tests, make_folder, remove_folder);
}
