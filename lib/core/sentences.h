/* SPDX-License-Identifier: Apache-2.0 */
/* The English sentences of statuses and errors: templates, as in message.h. The catalogue of English has them too. */
#ifndef RODT_SENTENCES_H
#define RODT_SENTENCES_H

#include "core/words.h"

/* Sentences that are the text of an enumerator, or of a character, too. */
#define SENTENCE_STATUS_ARGUMENT "the program passed a missing or impossible value"
#define SENTENCE_STATUS_SPACE "the buffer for the text is too small"
#define SENTENCE_STATUS_EMPTY "nothing is written here"
#define SENTENCE_STATUS_SYNTAX "this cannot be read as what is asked for here"
#define SENTENCE_STATUS_AMBIGUOUS "this can mean more than one value"
#define SENTENCE_STATUS_UNIT "the unit does not fit here"
#define SENTENCE_STATUS_DATE_CELL "a spreadsheet has turned this value into a date"
#define SENTENCE_STATUS_NEGATIVE "this cannot be below zero"
#define SENTENCE_STATUS_IMPLAUSIBLE "this is larger than any such reading can be"
#define SENTENCE_STATUS_RANGE "this has more digits than can be kept exactly"
#define SENTENCE_STATUS_UNKNOWN_RULES "there is no rule set of this name"
#define SENTENCE_STATUS_UNKNOWN_CHAMBER "this is no chamber mark that is known"
#define SENTENCE_STATUS_TABLE "the table is not valid"
#define SENTENCE_STATUS_LAXER "a limit in the table is laxer than the law"
#define SENTENCE_STATUS_MEMORY "there is no memory left"
#define SENTENCE_STATUS_INTERNAL "this is a fault in the library, please report it"
#define SENTENCE_END "the end"
#define SENTENCE_BROKEN_BYTE "a broken byte"

/* One row for each code, by number, rising. */
#define ERROR_SENTENCES \
    ENUMERATOR(RODT_MESSAGE_STATUS_ARGUMENT, "status.argument", SENTENCE_STATUS_ARGUMENT), \
    ENUMERATOR(RODT_MESSAGE_STATUS_SPACE, "status.space", SENTENCE_STATUS_SPACE), \
    ENUMERATOR(RODT_MESSAGE_STATUS_EMPTY, "status.empty", SENTENCE_STATUS_EMPTY), \
    ENUMERATOR(RODT_MESSAGE_STATUS_SYNTAX, "status.syntax", SENTENCE_STATUS_SYNTAX), \
    ENUMERATOR(RODT_MESSAGE_STATUS_AMBIGUOUS, "status.ambiguous", SENTENCE_STATUS_AMBIGUOUS), \
    ENUMERATOR(RODT_MESSAGE_STATUS_UNIT, "status.unit", SENTENCE_STATUS_UNIT), \
    ENUMERATOR(RODT_MESSAGE_STATUS_DATE_CELL, "status.date-cell", SENTENCE_STATUS_DATE_CELL), \
    ENUMERATOR(RODT_MESSAGE_STATUS_NEGATIVE, "status.negative", SENTENCE_STATUS_NEGATIVE), \
    ENUMERATOR(RODT_MESSAGE_STATUS_IMPLAUSIBLE, "status.implausible", SENTENCE_STATUS_IMPLAUSIBLE), \
    ENUMERATOR(RODT_MESSAGE_STATUS_RANGE, "status.range", SENTENCE_STATUS_RANGE), \
    ENUMERATOR(RODT_MESSAGE_STATUS_UNKNOWN_RULES, "status.unknown-rules", SENTENCE_STATUS_UNKNOWN_RULES), \
    ENUMERATOR(RODT_MESSAGE_STATUS_UNKNOWN_CHAMBER, "status.unknown-chamber", SENTENCE_STATUS_UNKNOWN_CHAMBER), \
    ENUMERATOR(RODT_MESSAGE_STATUS_TABLE, "status.table", SENTENCE_STATUS_TABLE), \
    ENUMERATOR(RODT_MESSAGE_STATUS_LAXER, "status.laxer", SENTENCE_STATUS_LAXER), \
    ENUMERATOR(RODT_MESSAGE_STATUS_MEMORY, "status.memory", SENTENCE_STATUS_MEMORY), \
    ENUMERATOR(RODT_MESSAGE_STATUS_INTERNAL, "status.internal", SENTENCE_STATUS_INTERNAL), \
    ENUMERATOR(RODT_MESSAGE_ERROR_ENGLISH, "error.english", "{text}"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_EXPECTED, "error.expected", "{wanted} was expected here, not {found}"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WRITTEN_FOR, "error.written-for", \
               "{found} is written where {wanted} was expected"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NOT_WRITTEN, "error.not-written", "nothing is written for {field}"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NO_RULES, "error.no-rules", "no rule set was given"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_FOUND_END, "error.found.end", SENTENCE_END), \
    ENUMERATOR(RODT_MESSAGE_ERROR_FOUND_BROKEN_BYTE, "error.found.broken-byte", SENTENCE_BROKEN_BYTE), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_NUMBER, "error.wanted.number", "a number"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_DIGIT, "error.wanted.digit", "a digit"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_DECIMAL, "error.wanted.decimal", "a digit after the decimal sign"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_LENGTH_UNIT, "error.wanted.length-unit", \
               "in, mm, cm or the end of the text"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_PRESSURE_UNIT, "error.wanted.pressure-unit", \
               "psi, kPa or the end of the text"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_TIME_UNIT, "error.wanted.time-unit", "s, min or the end of the text"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_AXLE, "error.wanted.axle", "the number of the axle"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_SIDE, "error.wanted.side", "left or right"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_WANTED_END, "error.wanted.end", "the end"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DATE_CELL, "error.date-cell", \
               "this is a date; a spreadsheet makes dates of fractions"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DAY_NUMBER, "error.day-number", \
               "this is the day number of a spreadsheet's date"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NEGATIVE, "error.negative", "a reading cannot be below zero"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_INVISIBLE, "error.invisible", \
               "invisible character here ({found}); type the reading again"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_COMMA, "error.comma", \
               "a comma can part decimals or thousands; write a point, or set the decimal comma"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_THOUSANDS, "error.thousands", \
               "the point can separate thousands here; write the decimals with a comma"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_FEET, "error.feet", "feet do not fit here; write inches or millimetres"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_BOUND, "error.bound", \
               "this is a bound or an estimate; write the one value that was read"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_RANGE, "error.range", \
               "this can be a range or a difference; write one value, such as 2 1/8"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_HYPHEN, "error.hyphen", "two numbers with a hyphen can be a range; write one"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_SECOND_NUMBER, "error.second-number", \
               "this is a second number; missing slash or decimal point?"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NO_BLANK, "error.no-blank", \
               "this can be a whole number and a fraction without the blank between them"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_LEADING_ZERO, "error.leading-zero", "the number has a leading zero"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DECIMALS, "error.decimals", "there are more decimals than a reading can have"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DIGITS, "error.digits", "there are more digits than a reading can have"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_ZERO_BELOW_BAR, "error.zero-below-bar", \
               "a fraction cannot have zero below its bar"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_BELOW_BAR, "error.below-bar", \
               "the number below the fraction bar is too large"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_IMPROPER, "error.improper", \
               "a fraction after a whole number must be less than one"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DIVISIONS, "error.divisions", \
               "no tape is divided like this; halves to sixty-fourths or tenths were expected"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NO_TAPE, "error.no-tape", "no tape is divided like this"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_ALONE, "error.unit-alone", "the number before the unit is missing"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_WRONG, "error.unit-wrong", "this unit does not fit here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_TWICE, "error.unit-twice", "there are two units after one number"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_MORE, "error.unit-more", \
               "nothing more was expected after the unit; write one reading, such as 2 1/8"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_UNKNOWN, "error.unit-unknown", "the unit of this number is not known"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_WORD, "error.unit-word", "a unit of length is in, mm or cm"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_UNIT_OF_FORM, "error.unit-of-form", "the unit of a length is in, mm or cm"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_TOO_LONG, "error.too-long", \
               "no rod position or stroke is longer than 24 in; is a decimal point lost?"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_METRIC_FRACTION, "error.metric-fraction", \
               "no metric tape has fractions; write inches (2 1/8 in) or a decimal (54.0 mm)"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_LOST_BLANK, "error.lost-blank", \
               "a blank may be lost here: write 2 1/4, not 21/4"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_MARK, "error.mark", \
               "a chamber is marked with 3/4 to 6 in; leave it blank for none, and write the unit: 3 in"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DIVISION, "error.division", \
               "a tape division is above 0 and at most 1/2 in; for sixteenths write 1/16"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_TOO_HIGH, "error.too-high", \
               "no brake gauge shows more than 300 psi; is a decimal point lost?"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_TOO_LATE, "error.too-late", "no check takes more than a day"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_SIXTY, "error.sixty", "the seconds beside minutes are below 60"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_PART_OF_MINUTE, "error.part-of-minute", \
               "a part of a minute and seconds beside it: write 1 min 30 s"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_SECONDS_AFTER, "error.seconds-after", "seconds are expected after minutes"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_HOURS, "error.hours", \
               "a spreadsheet may have made hours of it: write 1 min 30 s"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_COLON, "error.colon", \
               "two digits of seconds are expected after the colon: 1:30"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_TIME_UNIT, "error.time-unit", "a time is in s or min"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_VOLUME_UNIT, "error.volume-unit", "a volume is a number of cubic inches"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_VOLUME, "error.volume", "no vehicle has so many cubic inches of reservoirs"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_COUNT, "error.count", "a whole number from 0 to 99 is expected"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DATE, "error.date", "a date was expected, such as 2021-10-14"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DATE_HERE, "error.date-here", "a date was expected here, such as 2021-10-14"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DATE_END, "error.date-end", "the date ends before this"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NO_SUCH_DAY, "error.no-such-day", \
               "there is no such day in the calendar, or it is not between 1900 and 2199"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_MONTH_AND_DAY, "error.month-and-day", \
               "two digits of the month and the day were expected here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DAY, "error.day", "two digits of the day were expected here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_MONTH, "error.month", "a month was expected here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_YEAR, "error.year", "the year was expected here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_YEAR_DIGITS, "error.year-digits", \
               "a year of two or four digits was expected here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_SECOND_AND_YEAR, "error.second-and-year", \
               "a second number and the year were expected here"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DAYS, "error.days", \
               "the numbers can mean {count} days; which comes first, day, month or year?"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DATE_ORDER, "error.date-order", \
               "the date contradicts the order of day, month and year that was declared"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_NO_CHAMBER, "error.no-chamber", "there is no chamber"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_CHAMBER_DATE, "error.chamber-date", \
               "a spreadsheet made a date of this chamber mark"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_CHAMBER_LETTER, "error.chamber-letter", \
               "a letter alone can be a bolt-type size or a rated-stroke code: write \"bolt {size}\""), \
    ENUMERATOR(RODT_MESSAGE_ERROR_BOLT_LETTER, "error.bolt-letter", "a bolt-type chamber has a letter, A to G"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_CHAMBER_INCOMPLETE, "error.chamber-incomplete", \
               "this is not a complete chamber mark: a type number such as 30, 24/30 or 30L was expected"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_CHAMBER_UNEXPECTED, "error.chamber-unexpected", \
               "{found} does not belong to a chamber mark such as 30, 24/30, 30L, bolt C or roto 30"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_CHAMBER_TWICE, "error.chamber-twice", \
               "this names two kinds of chamber at once"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_STROKE_CLASS, "error.stroke-class", \
               "a stroke class is standard, long or unknown"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_POSITION_EXPECTED, "error.position-expected", \
               "{wanted} was expected here, as in 1L or 2R; found {found}"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_POSITION_AXLE, "error.position-axle", "axles are numbered from 1 to {most}"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_POSITION_NONE, "error.position-none", \
               "no position; expected one such as 1L or 2R"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_ADJUSTER, "error.adjuster", "an adjuster is manual, automatic or unknown"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_ENGINE, "error.engine", "the engine was on or off"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_SPRING_BRAKE, "error.spring-brake", "the spring brake was released or on"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_DRUM, "error.drum", "a drum is cold, warm or hot"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_CHECK, "error.check", "there is no such check"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_VEHICLE, "error.vehicle", "a vehicle is single, combination, bus or any"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_SPAN, "error.span", "a span is pressures, warning, applications or recovery"), \
    ENUMERATOR(RODT_MESSAGE_ERROR_ANSWER, "error.answer", "an answer is yes or no")

#endif
