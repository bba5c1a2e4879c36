// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <stdlib.h>
#include <rodtravel/rodtravel.h>
*/
import "C"

import (
	"fmt"
	"math/big"
	"reflect"
	"strconv"
	"strings"
	"sync"
	"unsafe"
)

// texts are strings in the memory of C, for the time of a call.
type texts []*C.char

// A pointer, so that what is deferred sees the texts that are there then.
func (t *texts) free() {
	for _, each := range *t {
		C.free(unsafe.Pointer(each))
	}
}

// text is a copy with a closing zero byte; a text that holds one is refused.
func (t *texts) text(field, of string) (*C.char, error) {
	if strings.IndexByte(of, 0) >= 0 {
		return nil, refusal(StatusArgument, field, "a text of the library has no zero character")
	}
	made := C.CString(of)
	*t = append(*t, made)
	return made, nil
}

// A member of a struct of Go, and the path in the C record that it sets.
type member struct {
	index int
	name  string
	path  *C.char // kept as long as the program
}

var membersOf sync.Map // reflect.Type to []member

// members are the fields of a type: StrokeClass sets stroke_class, or what its tag says.
func members(of reflect.Type) []member {
	if known, ok := membersOf.Load(of); ok {
		return known.([]member)
	}
	var made []member
	for i := 0; i < of.NumField(); i++ {
		field := of.Field(i)
		name := snake(field.Name)
		path := field.Tag.Get("path")
		if path == "" {
			path = name
		}
		if path != "-" {
			made = append(made, member{i, name, C.CString(path)})
		}
	}
	known, _ := membersOf.LoadOrStore(of, made)
	return known.([]member)
}

// snake is PSIAfter as psi_after.
func snake(name string) string {
	var made strings.Builder
	for i, r := range name {
		upper := r >= 'A' && r <= 'Z'
		starts := upper && i > 0 && (name[i-1] >= 'a' || i+1 < len(name) && name[i+1] >= 'a')
		if starts {
			made.WriteByte('_')
		}
		made.WriteRune(r)
	}
	return strings.ToLower(made.String())
}

// textOf is a field of a form as a text; empty = not given.
func textOf(of reflect.Value) string {
	switch of.Kind() {
	case reflect.Bool:
		if !of.Bool() {
			return ""
		}
		return "true"
	case reflect.Int:
		return strconv.FormatInt(of.Int(), 10)
	case reflect.String:
		return of.String()
	}
	return fmt.Sprint(of.Interface())
}

// fill sets the members of a C record from a struct of Go. Text pointers point to the texts.
func (t *texts) fill(record string, to unsafe.Pointer, form any) error {
	of := recordOf(record)
	value := reflect.ValueOf(form)
	for _, each := range members(value.Type()) {
		given := textOf(value.Field(each.index))
		if given == "" {
			continue
		}
		at, err := t.text(each.name, given)
		if err != nil {
			return err
		}
		var c C.rodt_error
		if status := C.rodt_record_set_text(of, to, each.path, at, &c); status != C.RODT_OK {
			refused := errorOf(status, &c)
			refused.Field = each.name
			return refused
		}
	}
	return nil
}

var records sync.Map // string to *C.rodt_record

func recordOf(name string) *C.rodt_record {
	if known, ok := records.Load(name); ok {
		return known.(*C.rodt_record)
	}
	c := C.CString(name)
	defer C.free(unsafe.Pointer(c))
	found := C.rodt_record_find(c)
	records.Store(name, found)
	return found
}

// written is what a function of the library writes; empty where it fails.
func written(format func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status) string {
	said, _ := writtenOr(format)
	return said
}

func writtenOr(format func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status) (string, C.rodt_status) {
	room := make([]byte, 512)
	for {
		var needed C.size_t
		status := format((*C.char)(unsafe.Pointer(&room[0])), C.size_t(len(room)), &needed)
		if status == C.RODT_OK {
			return string(room[:needed-1]), status
		}
		if status != C.RODT_E_SPACE || needed <= C.size_t(len(room)) {
			return "", status
		}
		room = make([]byte, needed)
	}
}

// get is a member by its path, as a text.
func get(record string, value unsafe.Pointer, path string) (string, error) {
	var kept texts
	defer kept.free()
	at, err := kept.text("path", path)
	if err != nil {
		return "", err
	}
	said, status := writtenOr(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_record_text_format(recordOf(record), value, at, to, size, needed)
	})
	if status != C.RODT_OK {
		return "", refusal(StatusArgument, path, "no text has this path")
	}
	return said, nil
}

// number is an exact number by its path.
func number(record string, value unsafe.Pointer, path string) (*big.Rat, error) {
	var kept texts
	defer kept.free()
	name, err := kept.text("path", path)
	if err != nil {
		return nil, err
	}
	var at unsafe.Pointer
	found := C.rodt_record_locate(recordOf(record), value, name, &at)
	if found != nil {
		switch found.kind {
		case C.RODT_MEMBER_KIND_LENGTH, C.RODT_MEMBER_KIND_PRESSURE, C.RODT_MEMBER_KIND_RATIO:
			return ratio(*(*C.rodt_ratio)(at)), nil // all three are a numerator and a denominator
		}
	}
	return nil, refusal(StatusArgument, path, "no exact number has this path")
}

// recordJSON is all of a record.
func recordJSON(record string, value unsafe.Pointer) []byte {
	return []byte(written(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_record_json_format(recordOf(record), value, 0, to, size, needed)
	}))
}

// --- Words --------------------------------------------------------------------------------------------

var enumerations sync.Map // string to *C.rodt_enumeration

func enumeration(name string) *C.rodt_enumeration {
	if known, ok := enumerations.Load(name); ok {
		return known.(*C.rodt_enumeration)
	}
	c := C.CString(name)
	defer C.free(unsafe.Pointer(c))
	found := C.rodt_enumeration_find(c)
	enumerations.Store(name, found)
	return found
}

// wordOf is the stable word of a number; empty for one that has none.
func wordOf(name string, of int64) string {
	if row := C.rodt_enumerator_of(enumeration(name), C.int64_t(of)); row != nil {
		return C.GoString(row.word)
	}
	return ""
}

// numberOf is the number of a word; -1 for one that is none.
func numberOf(name, word string) int64 {
	var kept texts
	defer kept.free()
	if at, err := kept.text("", word); err == nil {
		if row := C.rodt_enumerator_find(enumeration(name), at); row != nil {
			return int64(row.number)
		}
	}
	return -1
}

// wordsOf are the words of a set, in the order of their numbers.
func wordsOf[T ~string](name string, set uint64) []T {
	var found []T
	of := enumeration(name)
	bits := bool(C.rodt_enumeration_is_bits(of))
	for i := C.size_t(0); i < C.rodt_enumerator_count(of); i++ {
		row := C.rodt_enumerator_at(of, i)
		bit := uint64(row.number)
		if !bits {
			bit = 1 << bit
		}
		if set&bit != 0 {
			found = append(found, T(C.GoString(row.word)))
		}
	}
	return found
}
