/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of a page's module: requests about a walk-round, and about what else the command does. */
#ifndef PAGE_H
#define PAGE_H

#include "request.h"
#include "ui/json_writer.h"
#include "walkround/walkround.h"

/* Each writes the members of a reply. NULL, or a stable word of what is wrong; then nothing is written. */
const char *walk_reply_begin(const request *from, json_writer *json);
const char *walk_reply_answer(const request *from, json_writer *json);
const char *run_reply(const request *from, json_writer *json);
const char *report_reply(const request *from, json_writer *json);
const char *about_reply(const request *from, json_writer *json);
const char *checks_reply(const request *from, json_writer *json);

/* (question.c) What is asked now, and what is known of the vehicle. */
void put_question(json_writer *json, walk_session *at);
void put_vehicle(json_writer *json, walk *of);
void put_outcome(json_writer *json, walk *of);

#endif
