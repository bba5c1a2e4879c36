/* SPDX-License-Identifier: Apache-2.0 */
/* The functions of WASI that the C library calls, over files in memory. Their names and numbers are those of its
 * preview 1; what is not here is refused by its linker. */
#include "memory_files.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <wasi/api.h>

#define STREAMS 3
#define FOLDER STREAMS /* the descriptor of the folder that all files are in */
#define FILES_MAX 40   /* the streams are the first ones */
#define DESCRIPTORS_MAX 24
#define NAME_MAX_SIZE ((size_t)4096)

static memory_file files[FILES_MAX];
static int64_t clock_seconds;

/* An open file; those of the streams have their own numbers. */
static struct {
    bool open;
    int file;
    uint64_t at;
} descriptors[DESCRIPTORS_MAX];

/* --- Files --------------------------------------------------------------------------------------------- */

static bool grow(memory_file *file, size_t room)
{
    if (room <= file->room)
        return true;
    size_t wanted = file->room * 2 > room ? file->room * 2 : room;
    char *bytes = realloc(file->bytes, wanted);
    if (bytes == NULL)
        return false;
    file->bytes = bytes;
    file->room = wanted;
    return true;
}

static void drop(memory_file *file)
{
    free(file->name);
    free(file->bytes);
    *file = (memory_file){.name = NULL};
}

static int find(const char *name, size_t size)
{
    for (int i = STREAMS; i < FILES_MAX; i++) {
        if (files[i].name != NULL && strlen(files[i].name) == size && memcmp(files[i].name, name, size) == 0)
            return i;
    }
    return -1;
}

static bool is_open(int file)
{
    for (int i = 0; i < DESCRIPTORS_MAX; i++) {
        if (descriptors[i].open && descriptors[i].file == file)
            return true;
    }
    return false;
}

/* An empty one; -1 = no room. A place whose file is gone and still open is not used again. */
static int make(const char *name, size_t size)
{
    for (int i = STREAMS; i < FILES_MAX; i++) {
        if (files[i].name != NULL || is_open(i))
            continue;
        files[i].name = strndup(name, size);
        return files[i].name != NULL ? i : -1;
    }
    return -1;
}

bool memory_file_set(const char *name, const char *bytes, size_t size)
{
    int at = find(name, strlen(name));
    if (at < 0)
        at = make(name, strlen(name));
    if (at < 0 || !grow(&files[at], size + 1))
        return false;
    memcpy(files[at].bytes, bytes, size);
    files[at].size = size;
    return true;
}

const memory_file *memory_file_find(const char *name)
{
    int at = find(name, strlen(name));
    return at < 0 ? NULL : &files[at];
}

bool memory_file_rename(const char *from, const char *to)
{
    char *name = strdup(to);
    if (name == NULL)
        return false;
    memory_file_remove(to);
    int at = find(from, strlen(from));
    if (at < 0) {
        free(name);
        return false;
    }
    free(files[at].name);
    files[at].name = name;
    files[at].written = true;
    return true;
}

const memory_file *memory_file_written(int *at)
{
    while (*at < FILES_MAX) {
        const memory_file *file = &files[(*at)++];
        if (file->name != NULL && file->written)
            return file;
    }
    return NULL;
}

void memory_file_remove(const char *name)
{
    int at = find(name, strlen(name));
    if (at >= 0)
        drop(&files[at]);
}

void memory_files_remove_all(void)
{
    for (int i = 0; i < FILES_MAX; i++)
        drop(&files[i]);
}

const memory_file *memory_stream(int number) { return &files[number]; }

void memory_streams_clear(void)
{
    for (int i = 1; i < STREAMS; i++)
        files[i].size = 0;
}

bool memory_input_set(const char *bytes, size_t size)
{
    descriptors[0].at = 0;
    if (!grow(&files[0], size + 1))
        return false;
    memcpy(files[0].bytes, bytes, size);
    files[0].size = size;
    return true;
}

void memory_clock_set(int64_t seconds) { clock_seconds = seconds; }

/* --- WASI ---------------------------------------------------------------------------------------------- */

/* Numbers of 32 bits are addresses in the memory of the module. Names of the C library, which declares none of them. */
#define WASI(name) __imported_wasi_snapshot_preview1_##name
#define AT(type, address) ((type *)(uintptr_t)(address))

/* The file of a descriptor, or NULL. */
static memory_file *file_of(int32_t descriptor)
{
    if (descriptor >= 0 && descriptor < STREAMS)
        return &files[descriptor];
    if (descriptor <= FOLDER || descriptor >= DESCRIPTORS_MAX || !descriptors[descriptor].open)
        return NULL;
    return &files[descriptors[descriptor].file];
}

int32_t WASI(fd_write)(int32_t descriptor, int32_t parts, int32_t count, int32_t written);
int32_t WASI(fd_write)(int32_t descriptor, int32_t parts, int32_t count, int32_t written)
{
    memory_file *file = file_of(descriptor);
    uint64_t *at = file != NULL ? &descriptors[descriptor].at : NULL;
    uint32_t sum = 0;
    if (file == NULL)
        return __WASI_ERRNO_BADF;
    for (int32_t i = 0; i < count; i++) {
        const __wasi_ciovec_t *part = AT(const __wasi_ciovec_t, parts) + i;
        size_t place = descriptor < STREAMS ? file->size : (size_t)*at;
        if (!grow(file, place + part->buf_len + 1))
            return __WASI_ERRNO_NOSPC;
        if (place > file->size)
            memset(file->bytes + file->size, 0, place - file->size);
        if (part->buf_len > 0)
            memcpy(file->bytes + place, part->buf, part->buf_len);
        *at = place + part->buf_len;
        file->size = *at > file->size ? (size_t)*at : file->size;
        sum += part->buf_len;
    }
    *AT(uint32_t, written) = sum;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(fd_read)(int32_t descriptor, int32_t parts, int32_t count, int32_t got);
int32_t WASI(fd_read)(int32_t descriptor, int32_t parts, int32_t count, int32_t got)
{
    const memory_file *file = file_of(descriptor);
    uint32_t sum = 0;
    if (file == NULL)
        return __WASI_ERRNO_BADF;
    for (int32_t i = 0; i < count; i++) {
        const __wasi_iovec_t *part = AT(const __wasi_iovec_t, parts) + i;
        uint64_t *at = &descriptors[descriptor].at;
        size_t left = *at < file->size ? file->size - (size_t)*at : 0;
        size_t size = part->buf_len < left ? part->buf_len : left;
        if (size > 0)
            memcpy(part->buf, file->bytes + *at, size);
        *at += size;
        sum += (uint32_t)size;
    }
    *AT(uint32_t, got) = sum;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(fd_seek)(int32_t descriptor, int64_t offset, int32_t whence, int32_t place);
int32_t WASI(fd_seek)(int32_t descriptor, int64_t offset, int32_t whence, int32_t place)
{
    const memory_file *file = file_of(descriptor);
    if (file == NULL)
        return __WASI_ERRNO_BADF;
    int64_t from = whence == __WASI_WHENCE_SET   ? 0
                   : whence == __WASI_WHENCE_CUR ? (int64_t)descriptors[descriptor].at : (int64_t)file->size;
    if (from + offset < 0)
        return __WASI_ERRNO_INVAL;
    descriptors[descriptor].at = (uint64_t)(from + offset);
    *AT(uint64_t, place) = descriptors[descriptor].at;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(fd_close)(int32_t descriptor);
int32_t WASI(fd_close)(int32_t descriptor)
{
    if (descriptor <= FOLDER || descriptor >= DESCRIPTORS_MAX || !descriptors[descriptor].open)
        return __WASI_ERRNO_BADF;
    descriptors[descriptor].open = false;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(fd_fdstat_get)(int32_t descriptor, int32_t out);
int32_t WASI(fd_fdstat_get)(int32_t descriptor, int32_t out)
{
    __wasi_fdstat_t *status = AT(__wasi_fdstat_t, out);
    if (descriptor != FOLDER && file_of(descriptor) == NULL)
        return __WASI_ERRNO_BADF;
    memset(status, 0, sizeof *status);
    status->fs_filetype = descriptor == FOLDER ? __WASI_FILETYPE_DIRECTORY : __WASI_FILETYPE_REGULAR_FILE;
    status->fs_rights_base = status->fs_rights_inheriting = UINT64_MAX;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(fd_fdstat_set_flags)(int32_t descriptor, int32_t flags);
int32_t WASI(fd_fdstat_set_flags)(int32_t descriptor, int32_t flags)
{
    (void)flags;
    return file_of(descriptor) == NULL ? __WASI_ERRNO_BADF : __WASI_ERRNO_SUCCESS;
}

/* The number tells one file from another; the streams and the folder have theirs. */
static void describe(int32_t number, const memory_file *file, __wasi_filestat_t *out)
{
    memset(out, 0, sizeof *out);
    out->ino = (uint64_t)number + 1;
    out->nlink = 1;
    out->filetype = file == NULL ? __WASI_FILETYPE_DIRECTORY : __WASI_FILETYPE_REGULAR_FILE;
    out->size = file == NULL ? 0 : file->size;
}

int32_t WASI(fd_filestat_get)(int32_t descriptor, int32_t out);
int32_t WASI(fd_filestat_get)(int32_t descriptor, int32_t out)
{
    const memory_file *file = file_of(descriptor);
    if (file == NULL)
        return __WASI_ERRNO_BADF;
    describe((int32_t)(file - files), file, AT(__wasi_filestat_t, out));
    return __WASI_ERRNO_SUCCESS;
}

/* --- Names --------------------------------------------------------------------------------------------- */

/* All files are in one folder: what is before a name does not count. */
static bool is_folder(const char *path, int32_t size)
{
    return size == 0 || path[size - 1] == '/' || (size == 1 && path[0] == '.');
}

int32_t WASI(path_filestat_get)(int32_t folder, int32_t flags, int32_t path, int32_t size, int32_t out);
int32_t WASI(path_filestat_get)(int32_t folder, int32_t flags, int32_t path, int32_t size, int32_t out)
{
    (void)folder;
    (void)flags;
    int at = find(AT(const char, path), (size_t)size);
    if (at < 0 && !is_folder(AT(const char, path), size))
        return __WASI_ERRNO_NOENT;
    describe(at < 0 ? FILES_MAX : at, at < 0 ? NULL : &files[at], AT(__wasi_filestat_t, out));
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(path_readlink)(int32_t folder, int32_t path, int32_t size, int32_t out, int32_t room, int32_t used);
int32_t WASI(path_readlink)(int32_t folder, int32_t path, int32_t size, int32_t out, int32_t room, int32_t used)
{
    (void)folder;
    (void)path;
    (void)size;
    (void)out;
    (void)room;
    (void)used;
    return __WASI_ERRNO_INVAL; /* there are no links */
}

static int32_t open_file(int file, int32_t out)
{
    for (int i = FOLDER + 1; i < DESCRIPTORS_MAX; i++) {
        if (descriptors[i].open)
            continue;
        descriptors[i].open = true;
        descriptors[i].file = file;
        descriptors[i].at = 0;
        *AT(int32_t, out) = i;
        return __WASI_ERRNO_SUCCESS;
    }
    return __WASI_ERRNO_NFILE;
}

int32_t WASI(path_open)(int32_t folder, int32_t lookup, int32_t path, int32_t size, int32_t how, int64_t base,
                        int64_t inheriting, int32_t flags, int32_t out);
int32_t WASI(path_open)(int32_t folder, int32_t lookup, int32_t path, int32_t size, int32_t how, int64_t base,
                        int64_t inheriting, int32_t flags, int32_t out)
{
    (void)folder;
    (void)lookup;
    (void)base;
    (void)inheriting;
    (void)flags;
    if (is_folder(AT(const char, path), size) || (size_t)size > NAME_MAX_SIZE)
        return __WASI_ERRNO_ISDIR;
    int at = find(AT(const char, path), (size_t)size);
    if (at < 0 && (how & __WASI_OFLAGS_CREAT) == 0)
        return __WASI_ERRNO_NOENT;
    if (at >= 0 && (how & __WASI_OFLAGS_EXCL) != 0)
        return __WASI_ERRNO_EXIST;
    if (at < 0)
        at = make(AT(const char, path), (size_t)size);
    if (at < 0)
        return __WASI_ERRNO_NOSPC;
    if ((how & __WASI_OFLAGS_TRUNC) != 0)
        files[at].size = 0;
    return open_file(at, out);
}

int32_t WASI(fd_prestat_get)(int32_t descriptor, int32_t out);
int32_t WASI(fd_prestat_get)(int32_t descriptor, int32_t out)
{
    __wasi_prestat_t *status = AT(__wasi_prestat_t, out);
    if (descriptor != FOLDER)
        return __WASI_ERRNO_BADF;
    memset(status, 0, sizeof *status);
    status->tag = __WASI_PREOPENTYPE_DIR;
    status->u.dir.pr_name_len = 1;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(fd_prestat_dir_name)(int32_t descriptor, int32_t name, int32_t size);
int32_t WASI(fd_prestat_dir_name)(int32_t descriptor, int32_t name, int32_t size)
{
    if (descriptor != FOLDER || size < 1)
        return __WASI_ERRNO_BADF;
    *AT(char, name) = '/';
    return __WASI_ERRNO_SUCCESS;
}

/* --- The rest of a system ------------------------------------------------------------------------------ */

int32_t WASI(clock_time_get)(int32_t which, int64_t precision, int32_t out);
int32_t WASI(clock_time_get)(int32_t which, int64_t precision, int32_t out)
{
    (void)which;
    (void)precision;
    *AT(uint64_t, out) = (uint64_t)clock_seconds * 1000000000u;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(environ_sizes_get)(int32_t count, int32_t size);
int32_t WASI(environ_sizes_get)(int32_t count, int32_t size)
{
    *AT(uint32_t, count) = 0;
    *AT(uint32_t, size) = 0;
    return __WASI_ERRNO_SUCCESS;
}

int32_t WASI(environ_get)(int32_t names, int32_t bytes);
int32_t WASI(environ_get)(int32_t names, int32_t bytes)
{
    (void)names;
    (void)bytes;
    return __WASI_ERRNO_SUCCESS;
}

/* Whoever runs the module sees a trap, and begins a new one with the record as it was last given out. */
_Noreturn void WASI(proc_exit)(int32_t status);
_Noreturn void WASI(proc_exit)(int32_t status)
{
    (void)status;
    __builtin_trap();
}

/* Nobody else is there to write a file. */
int flock(int descriptor, int operation);
int flock(int descriptor, int operation)
{
    (void)descriptor;
    (void)operation;
    return 0;
}
