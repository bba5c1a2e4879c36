/* SPDX-License-Identifier: Apache-2.0 */
/* Preloaded into the command, it makes one thing fail. FAULT="KIND HOW N NUMBER" names it: KIND is allocate, thread, or
 * a kind of system call below, or any of these calls. HOW is
 *   once, from        the N-th fails with the errno NUMBER, or it and all after it
 *   half              the N-th moves half of its bytes, and all after it fail
 *   short             each moves 1 to N bytes, and none fails
 *   interrupt         each N-th fails with EINTR
 *   before, after     the signal NUMBER comes just before the N-th, or just after it
 * COUNT=FILE writes how many there were of each kind; SLOW_NAMES=MS waits before and after a file gets its name.
 *
 * The C library does not call its own write() through a symbol, so a filter of the kernel hands over the calls. */
#include <dlfcn.h>
#include <errno.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <pthread.h>
#include <signal.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/prctl.h>
#include <sys/syscall.h>
#include <time.h>
#include <ucontext.h>
#include <unistd.h>

#define COUNT_OF(array) (sizeof(array) / sizeof(array)[0])

/* --- What fails ----------------------------------------------------------------------------------------- */

typedef enum fault_kind {
    ALLOCATE, THREAD, READ, WRITE, SAY, OPEN, CLOSE, SYNC, NAME, REMOVE, LOOK, LOCK, CHANGE, COPY, LIST, WAIT, PIPE, ANY
} fault_kind;

static const char *const kinds[] = {"allocate", "thread", "read",   "write",  "say",  "open", "close", "sync", "name",
                                    "remove",   "look",   "lock",   "change", "copy", "list", "wait",  "pipe", "any"};

typedef enum fault_how { ONCE, FROM, HALF, SHORT, INTERRUPT, BEFORE, AFTER } fault_how;

static const char *const hows[] = {"once", "from", "half", "short", "interrupt", "before", "after"};

static const struct {
    long number;
    fault_kind kind;
} calls[] = {
    {SYS_read, READ},         {SYS_pread64, READ},    {SYS_write, WRITE},      {SYS_writev, WRITE},
    {SYS_openat, OPEN},       {SYS_close, CLOSE},     {SYS_fsync, SYNC},       {SYS_fdatasync, SYNC},
    {SYS_renameat, NAME},     {SYS_renameat2, NAME},  {SYS_linkat, NAME},      {SYS_unlinkat, REMOVE},
    {SYS_newfstatat, LOOK},   {SYS_fstat, LOOK},      {SYS_statx, LOOK},       {SYS_flock, LOCK},
    {SYS_fchmod, CHANGE},     {SYS_ftruncate, CHANGE}, {SYS_fcntl, COPY},      {SYS_getdents64, LIST},
    {SYS_ppoll, WAIT},        {SYS_pipe2, PIPE},
#ifdef SYS_open
    {SYS_open, OPEN},         {SYS_rename, NAME},     {SYS_link, NAME},        {SYS_unlink, REMOVE},
    {SYS_stat, LOOK},         {SYS_lstat, LOOK},      {SYS_poll, WAIT},        {SYS_pipe, PIPE},
#endif
};

static atomic_ulong counts[ANY + 1];
static atomic_bool over; /* main has returned: what instruments write then does not fail */
static _Thread_local bool starts; /* the address sanitizer starts a thread, and ends the program if it fails */
static fault_kind wanted = ANY + 1;
static fault_how how;
static unsigned long place, number, milliseconds;

static size_t find_word(const char *word, const char *const *words, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (strcmp(word, words[i]) == 0)
            return i;
    }
    fprintf(stderr, "faults: \"%s\" is not known\n", word);
    _exit(99);
}

static void read_fault(const char *text)
{
    char kind[20], manner[20];
    if (sscanf(text, "%19s %19s %lu %lu", kind, manner, &place, &number) != 4)
        find_word(text, NULL, 0);
    wanted = (fault_kind)find_word(kind, kinds, COUNT_OF(kinds));
    how = (fault_how)find_word(manner, hows, COUNT_OF(hows));
}

/* Is it the turn of this one? */
static bool is_due(fault_kind kind, unsigned long now)
{
    if (kind != wanted || starts || atomic_load(&over))
        return false;
    switch (how) {
    case FROM:
    case HALF: return now >= place;
    case SHORT: return true;
    case INTERRUPT: return now % place == 0;
    case ONCE:
    case BEFORE:
    case AFTER: break;
    }
    return now == place;
}

static unsigned long count_one(fault_kind kind) { return atomic_fetch_add(&counts[kind], 1) + 1; }

/* --- Functions that fail -------------------------------------------------------------------------------- */

static bool fails(fault_kind kind) { return is_due(kind, count_one(kind)); }

static void *no_memory(void)
{
    errno = ENOMEM;
    return NULL;
}

/* A function pointer cannot be converted from what dlsym returns. */
static void find(const char *name, void *function)
{
    void *found = dlsym(RTLD_NEXT, name);
    memcpy(function, &found, sizeof found);
}

void *malloc(size_t size)
{
    static void *(*next)(size_t);
    if (next == NULL)
        find("malloc", &next);
    return fails(ALLOCATE) ? no_memory() : next(size);
}

void *calloc(size_t nmemb, size_t size)
{
    static void *(*next)(size_t, size_t);
    if (next == NULL)
        find("calloc", &next);
    return fails(ALLOCATE) ? no_memory() : next(nmemb, size);
}

void *realloc(void *ptr, size_t size)
{
    static void *(*next)(void *, size_t);
    if (next == NULL)
        find("realloc", &next);
    return fails(ALLOCATE) ? no_memory() : next(ptr, size);
}

void *aligned_alloc(size_t alignment, size_t size)
{
    static void *(*next)(size_t, size_t);
    if (next == NULL)
        find("aligned_alloc", &next);
    return fails(ALLOCATE) ? no_memory() : next(alignment, size);
}

int pthread_create(pthread_t *newthread, const pthread_attr_t *attr, void *(*start_routine)(void *), void *arg)
{
    static int (*next)(pthread_t *, const pthread_attr_t *, void *(*)(void *), void *);
    find("pthread_create", &next);
    return fails(THREAD) ? EAGAIN : next(newthread, attr, start_routine, arg);
}

int pthread_getattr_np(pthread_t th, pthread_attr_t *attr)
{
    static int (*next)(pthread_t, pthread_attr_t *);
    find("pthread_getattr_np", &next);
    starts = true;
    int result = next(th, attr);
    starts = false;
    return result;
}

/* --- System calls that fail ------------------------------------------------------------------------------ */

/* What calls themselves carry lets them pass the filter. No call above has six arguments. */
#define PASS 0x5ca1ab1eL

typedef struct system_call {
    long number;
    long arguments[5];
} system_call;

/* Returns what the kernel does: a result, or the negative errno. */
static long pass(const system_call *of)
{
    const long *a = of->arguments;
    long result = syscall(of->number, a[0], a[1], a[2], a[3], a[4], PASS);
    return result == -1 ? -errno : result;
}

static fault_kind kind_of(const system_call *of)
{
    for (size_t i = 0; i < COUNT_OF(calls); i++) {
        if (calls[i].number == of->number)
            return calls[i].kind == WRITE && of->arguments[0] == STDERR_FILENO ? SAY : calls[i].kind;
    }
    return ANY;
}

static void wait_a_while(fault_kind kind)
{
    struct timespec rest = {(time_t)(milliseconds / 1000), (long)(milliseconds % 1000) * 1000000};
    if (milliseconds > 0 && kind == NAME)
        nanosleep(&rest, NULL);
}

static bool moves_bytes(const system_call *of) { return of->number == SYS_read || of->number == SYS_write; }

static long cut(system_call *of, unsigned long most)
{
    if (moves_bytes(of) && (unsigned long)of->arguments[2] > most)
        of->arguments[2] = (long)most;
    return pass(of);
}

/* A descriptor is closed even if that reports an error. */
static long fail(const system_call *of, long reason)
{
    if (of->number == SYS_close)
        (void)pass(of);
    return -reason;
}

static long signal_around(const system_call *of)
{
    if (how == BEFORE)
        kill(getpid(), (int)number);
    long result = pass(of);
    if (how == AFTER)
        kill(getpid(), (int)number);
    return result;
}

static long do_fault(system_call *of, unsigned long now)
{
    switch (how) {
    case SHORT: return cut(of, 1 + now % place);
    case INTERRUPT: return of->number == SYS_close ? pass(of) : -EINTR;
    case BEFORE:
    case AFTER: return signal_around(of);
    case HALF:
        if (now == place && moves_bytes(of) && of->arguments[2] > 1)
            return cut(of, (unsigned long)of->arguments[2] / 2);
        break;
    case ONCE:
    case FROM: break;
    }
    return fail(of, (long)number);
}

static long do_call(system_call *of)
{
    fault_kind kind = kind_of(of);
    unsigned long now = count_one(kind), of_any = count_one(ANY);
    wait_a_while(kind);
    long result = is_due(kind, now) ? do_fault(of, now) : is_due(ANY, of_any) ? do_fault(of, of_any) : pass(of);
    wait_a_while(kind);
    return result;
}

#if defined __x86_64__
typedef greg_t register_value;
#define REGISTER(name) (at->uc_mcontext.gregs[REG_##name])
#define ARGUMENTS {REGISTER(RDI), REGISTER(RSI), REGISTER(RDX), REGISTER(R10), REGISTER(R8)}
#define RESULT REGISTER(RAX)
#else
typedef unsigned long long register_value;
#define REGISTER(number) ((long)at->uc_mcontext.regs[number])
#define ARGUMENTS {REGISTER(0), REGISTER(1), REGISTER(2), REGISTER(3), REGISTER(4)}
#define RESULT at->uc_mcontext.regs[0]
#endif

static void on_call(int signal, siginfo_t *info, void *context)
{
    ucontext_t *at = context;
    int before = errno;
    (void)signal;
    RESULT = (register_value)do_call(&(system_call){info->si_syscall, ARGUMENTS});
    errno = before;
}

#define LOAD(member) (struct sock_filter)BPF_STMT(BPF_LD | BPF_W | BPF_ABS, (unsigned)(member))
#define IF_EQUAL(value, then, otherwise)                                                                               \
    (struct sock_filter)BPF_JUMP(BPF_JMP | BPF_JEQ | BPF_K, (unsigned)(value), (unsigned char)(then), (otherwise))
#define RETURN(value) (struct sock_filter)BPF_STMT(BPF_RET | BPF_K, value)

static void catch_calls(void)
{
    struct sock_filter filter[COUNT_OF(calls) + 6];
    struct sigaction action = {.sa_sigaction = on_call, .sa_flags = SA_SIGINFO | SA_NODEFER};
    size_t count = 0, last = COUNT_OF(calls);
    filter[count++] = LOAD(offsetof(struct seccomp_data, nr));
    for (size_t i = 0; i < last; i++)
        filter[count++] = IF_EQUAL(calls[i].number, last - i, 0);
    filter[count++] = RETURN(SECCOMP_RET_ALLOW);
    filter[count++] = LOAD(offsetof(struct seccomp_data, args[5]));
    filter[count++] = IF_EQUAL(PASS, 0, 1);
    filter[count++] = RETURN(SECCOMP_RET_ALLOW);
    filter[count++] = RETURN(SECCOMP_RET_TRAP);
    struct sock_fprog program = {(unsigned short)count, filter};
    if (sigaction(SIGSYS, &action, NULL) != 0 || prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) != 0 ||
        prctl(PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program) != 0) {
        perror("faults: the system calls cannot be caught");
        _exit(99);
    }
}

/* --- The beginning and the end --------------------------------------------------------------------------- */

__attribute__((constructor)) static void start(void)
{
    const char *fault = getenv("FAULT"), *slow = getenv("SLOW_NAMES");
    milliseconds = slow == NULL ? 0 : strtoul(slow, NULL, 10);
    if (fault != NULL)
        read_fault(fault);
    if (wanted != ALLOCATE && wanted != THREAD)
        catch_calls();
    for (size_t i = 0; i < COUNT_OF(counts); i++)
        atomic_store(&counts[i], 0);
}

typedef int main_function(int, char **, char **);
static main_function *main_of_program;

static int run_main(int argc, char **argv, char **envp)
{
    int status = main_of_program(argc, argv, envp);
    atomic_store(&over, true);
    return status;
}

int __libc_start_main(main_function *main, int argc, char **argv, main_function *init, void (*fini)(void),
                      void (*rtld_fini)(void), void *stack_end);

int __libc_start_main(main_function *main, int argc, char **argv, main_function *init, void (*fini)(void),
                      void (*rtld_fini)(void), void *stack_end)
{
    int (*next)(main_function *, int, char **, main_function *, void (*)(void), void (*)(void), void *);
    find("__libc_start_main", &next);
    main_of_program = main;
    return next(run_main, argc, argv, init, fini, rtld_fini, stack_end);
}

__attribute__((destructor)) static void write_counts(void)
{
    unsigned long last[COUNT_OF(counts)];
    for (size_t i = 0; i < COUNT_OF(counts); i++)
        last[i] = atomic_load(&counts[i]);
    const char *name = getenv("COUNT");
    FILE *to = name == NULL ? NULL : fopen(name, "w");
    if (to == NULL)
        return;
    for (size_t i = 0; i < COUNT_OF(counts); i++)
        fprintf(to, "%s %lu\n", kinds[i], last[i]);
    fclose(to);
}
