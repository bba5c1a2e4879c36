/* SPDX-License-Identifier: Apache-2.0 */
/* The commands that main.c dispatches to. */
#ifndef COMMANDS_H
#define COMMANDS_H

#include "ui/options.h"

extern const command_spec stroke_command;
extern const command_spec identify_command;
extern const command_spec limits_command;
extern const command_spec batch_command;
extern const command_spec air_command;
extern const command_spec vehicle_command;
extern const command_spec report_command;
extern const command_spec walkround_command;
extern const command_spec practice_command;
extern const command_spec cards_command;
extern const command_spec page_command;

#endif
