/* SPDX-License-Identifier: Apache-2.0 */
/* The program of the command, to be called. */
int rodtravel_main(int argc, char **argv);
#define main rodtravel_main
#include "main.c"
