/* SPDX-License-Identifier: Apache-2.0 */
/* One slip of an option, and the page would be where the record was. */
#include "ui/files.h"
#include "ui/exit_status.h"
#include "ui/language.h"
#include "ui/message.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>
#include <unistd.h>

/* --- Paths -------------------------------------------------------------------------------------------- */

#define LINKS_MAX 40

const char *file_base(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

const char *file_folder(const char *path, char folder[FILE_PATH_SIZE])
{
    size_t size = (size_t)(file_base(path) - path);
    snprintf(folder, FILE_PATH_SIZE, "%.*s", size == 0 ? 2 : (int)size, size == 0 ? "./" : path);
    return folder;
}

/* A link counts from the folder that it is in. */
static bool follow(char path[FILE_PATH_SIZE], const char *link)
{
    size_t before = link[0] == '/' ? 0 : (size_t)(file_base(path) - path);
    size_t size = strlen(link);
    errno = ENAMETOOLONG;
    if (before + size >= FILE_PATH_SIZE)
        return false;
    memcpy(path + before, link, size + 1);
    return true;
}

bool file_target(const char *name, char target[FILE_PATH_SIZE])
{
    char link[FILE_PATH_SIZE];
    target[0] = '\0';
    bool good = follow(target, name);
    for (int i = 0; i < LINKS_MAX && good; i++) {
        ssize_t size = readlink(target, link, sizeof link - 1);
        if (size < 0)
            return true;
        link[size] = '\0';
        good = follow(target, link);
    }
    if (good)
        errno = ELOOP;
    return false;
}

/* --- Files of a command line -------------------------------------------------------------------------- */

#define FILES_MAX 8
#define LABEL_SIZE 400

typedef struct named_file {
    const char *option; /* NULL = an operand, or standard output */
    const char *name;
    bool written;
    bool standard;
    bool exists;
    struct stat file;
    struct stat folder; /* where it is, or will be */
    char base[256];
} named_file;

/* What is not found is like no other file. */
static void find_file(named_file *of)
{
    char target[FILE_PATH_SIZE], folder[FILE_PATH_SIZE];
    of->standard = strcmp(of->name, "-") == 0;
    if (of->standard) {
        of->name = of->option != NULL ? "-" : of->written ? say("standard output") : say("standard input");
        of->exists = fstat(of->written ? STDOUT_FILENO : STDIN_FILENO, &of->file) == 0;
        return;
    }
    of->exists = stat(of->name, &of->file) == 0;
    if (!file_target(of->name, target) || stat(file_folder(target, folder), &of->folder) != 0)
        return;
    size_t size = strlen(file_base(target)) + 1;
    if (size <= sizeof of->base) /* no disk has a longer one */
        memcpy(of->base, file_base(target), size);
}

static bool is_same(const struct stat *a, const struct stat *b)
{
    return a->st_dev == b->st_dev && a->st_ino == b->st_ino;
}

/* Names that differ only in case are one file on many disks; of two that are there the disk itself tells. */
static bool is_same_file(const named_file *a, const named_file *b)
{
    if (a->standard && b->standard)
        return a->written && b->written;
    if (a->exists && b->exists)
        return S_ISREG(a->file.st_mode) && is_same(&a->file, &b->file);
    return a->base[0] != '\0' && is_same(&a->folder, &b->folder) && strcasecmp(a->base, b->base) == 0;
}

static const char *label_of(const named_file *file, char label[LABEL_SIZE])
{
    if (file->option != NULL)
        snprintf(label, LABEL_SIZE, "--%s %s", file->option, file->name);
    else
        snprintf(label, LABEL_SIZE, "%s", file->name);
    return label;
}

static int compare_with(const named_file *one, const named_file *others, size_t count)
{
    char label[LABEL_SIZE], other[LABEL_SIZE];
    for (size_t i = 0; i < count; i++) {
        if ((one->written || others[i].written) && is_same_file(one, &others[i]))
            return print_error("%s and %s are the same file; nothing is written: give the output another name",
                               label_of(&others[i], other), label_of(one, label));
    }
    return STATUS_CONTINUE;
}

/* The values of the command line that are files of this kind. Returns their number. */
static size_t list_files(const command_line *from, const file_argument *kind, named_file *files, size_t room)
{
    size_t count = 0;
    if (kind->option == FILE_OPERAND) {
        const char *name = from->operand_count > 0 ? from->operands[0] : "-";
        files[count++] = (named_file){.name = name, .written = kind->written};
    }
    for (size_t i = 0; i < from->given_count && count < room; i++) {
        if (from->given[i].option == kind->option)
            files[count++] = (named_file){.option = from->command->options[kind->option].name,
                                          .name = from->given[i].value, .written = kind->written};
    }
    return count;
}

int check_files(const command_line *from)
{
    named_file files[FILES_MAX];
    const command_spec *command = from->command;
    bool standard = false;
    size_t count = 0;
    int status = STATUS_CONTINUE;
    for (size_t i = 0; i < command->file_count && count + 1 < FILES_MAX; i++)
        count += list_files(from, &command->files[i], files + count, FILES_MAX - 1 - count);
    for (size_t i = 0; i < count && status == STATUS_CONTINUE; i++) {
        find_file(&files[i]);
        standard = standard || (files[i].standard && files[i].written);
        status = compare_with(&files[i], files, i);
    }
    if (standard || status != STATUS_CONTINUE)
        return status;
    files[count] = (named_file){.name = "-", .written = true};
    find_file(&files[count]);
    files[count].standard = false;
    return compare_with(&files[count], files, count);
}
