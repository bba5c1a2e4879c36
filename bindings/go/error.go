// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <stdlib.h>
#include <rodtravel/rodtravel.h>
*/
import "C"

import (
	"fmt"
	"strings"
	"unsafe"
)

// An Error says what was refused, and where. Its status is what errors.Is compares:
//
//	errors.Is(err, rodtravel.StatusDateCell)
type Error struct {
	Status Status // why, as a stable word
	Field  string // which text: "applied", "chamber", the column of a table; empty if there is one only
	Column int    // the character, from 1; 0 = the whole text
	Line   int    // the line of a table or the number of a wheel end, from 1; 0 = neither
	Text   string // one English sentence
	c      C.rodt_error
}

// Error is the place and the sentence: "applied, column 1: this is a date".
func (e *Error) Error() string {
	var where []string
	if e.Field != "" {
		where = append(where, e.Field)
	}
	if e.Line > 0 {
		where = append(where, fmt.Sprintf("line %d", e.Line))
	}
	if e.Column > 0 {
		where = append(where, fmt.Sprintf("column %d", e.Column))
	}
	if len(where) == 0 {
		return e.Text
	}
	return strings.Join(where, ", ") + ": " + e.Text
}

// Is tells whether the target is the status, or an error of the same status.
func (e *Error) Is(target error) bool {
	switch other := target.(type) {
	case Status:
		return e.Status == other
	case *Error:
		return other != nil && e.Status == other.Status
	}
	return false
}

// Say is the sentence in a language; English where the library has no other.
func (e *Error) Say(language Language) string {
	// The message points to the error, which therefore lies in the memory of C.
	c := (*C.rodt_error)(C.malloc(C.sizeof_rodt_error))
	defer C.free(unsafe.Pointer(c))
	*c = e.c
	var message C.rodt_message
	said := language.said(&message, C.rodt_error_message(c, &message))
	if said == "" {
		return e.Text
	}
	return said
}

// Error is the sentence of a status, so that each is an error that errors.Is can look for.
func (s Status) Error() string {
	return C.GoString(C.rodt_status_text(C.rodt_status(numberOf("rodt_status", string(s)))))
}

// refusal is an error of this package, for what the library is never asked.
func refusal(status Status, field, text string) *Error {
	return &Error{Status: status, Field: field, Text: text}
}

// failure is the error of a call, nil if there is none. The status is what the call returned.
func failure(status C.rodt_status, c *C.rodt_error) error {
	if status == C.RODT_OK {
		return nil
	}
	return errorOf(status, c)
}

func errorOf(status C.rodt_status, c *C.rodt_error) *Error {
	made := &Error{
		Status: Status(wordOf("rodt_status", int64(status))),
		Text:   C.GoString(C.rodt_status_text(status)),
	}
	if c != nil && c.status != C.RODT_OK {
		made.Field = C.GoString(&c.field[0])
		made.Column, made.Line = int(c.column), int(c.line)
		made.c = *c
		if c.text[0] != 0 {
			made.Text = C.GoString(&c.text[0])
		}
	}
	return made
}

// named gives an error that has no field the name of what was refused.
func named(err error, field string) error {
	if of, ok := err.(*Error); ok && of.Field == "" {
		of.Field = field
	}
	return err
}
