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

#define LABEL_SIZE 400

typedef struct named_file {
    const char *option; /* NULL = an operand, or standard output */
    const char *name;
    int descriptor; /* of "-"; -1 = another file */
    bool written;
    bool implied; /* standard output, which nothing names */
    bool exists;
    struct stat file;
    struct stat folder; /* where it is, or will be */
    char base[256];
} named_file;

/* What is not found is like no other file. */
static void look_at(named_file *of)
{
    char target[FILE_PATH_SIZE], folder[FILE_PATH_SIZE];
    if (strcmp(of->name, "-") == 0) {
        of->name = of->option != NULL ? "-" : of->written ? say("standard output") : say("standard input");
        of->descriptor = of->written ? STDOUT_FILENO : STDIN_FILENO;
        of->exists = fstat(of->descriptor, &of->file) == 0;
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
    if (a->descriptor >= 0 && a->descriptor == b->descriptor)
        return !a->implied;
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

/* What the command line names as a file of this kind, or NULL. */
static const char *name_of(const command_line *from, const file_argument *kind)
{
    if (kind->option == FILE_OPERAND)
        return from->operand_count > 0 ? from->operands[0] : "-";
    for (size_t i = 0; i < from->given_count; i++) {
        if (from->given[i].option == kind->option)
            return from->given[i].value;
    }
    return NULL;
}

/* The file of the command's kind of that number; standard output comes after the last one. False: there is none. */
static bool find_file(const command_line *from, size_t number, named_file *out)
{
    static const file_argument standard_output = {FILE_OPERAND, true};
    const command_spec *command = from->command;
    bool implied = number == command->file_count;
    const file_argument *kind = implied ? &standard_output : &command->files[number];
    const char *name = implied ? "-" : name_of(from, kind);
    if (name == NULL)
        return false;
    *out = (named_file){.name = name, .descriptor = -1, .written = kind->written, .implied = implied};
    out->option = kind->option == FILE_OPERAND ? NULL : command->options[kind->option].name;
    look_at(out);
    return true;
}

/* Compares a file with those before it. */
static int compare_with(const command_line *from, const named_file *one, size_t before)
{
    named_file other;
    char label[LABEL_SIZE], other_label[LABEL_SIZE];
    for (size_t i = 0; i < before; i++) {
        if (find_file(from, i, &other) && (one->written || other.written) && is_same_file(one, &other))
            return print_error("%s and %s are the same file; nothing is written: give the output another name",
                               label_of(&other, other_label), label_of(one, label));
    }
    return STATUS_CONTINUE;
}

int check_files(const command_line *from)
{
    named_file one;
    int status = STATUS_CONTINUE;
    for (size_t i = 0; i <= from->command->file_count && status == STATUS_CONTINUE; i++) {
        if (find_file(from, i, &one))
            status = compare_with(from, &one, i);
    }
    return status;
}
