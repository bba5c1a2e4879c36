// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <rodtravel/rodtravel.h>
*/
import "C"

import (
	"math/big"
)

// ReadLength reads one length as a person writes it, "1 3/4", "2-1/8 in", "44.45 mm", as inches from 0 to 24. unit is
// that of a bare number; empty = inches. A blank that was lost is not noticed here: texts that are judged go into a
// Form.
func ReadLength(text string, unit Unit) (*big.Rat, error) {
	var kept texts
	defer kept.free()
	at, err := kept.text("", text)
	if err != nil {
		return nil, err
	}
	var style C.rodt_style
	if unit != "" {
		of := numberOf("rodt_unit", string(unit))
		if of < 0 {
			return nil, refusal(StatusArgument, "unit", "a unit of lengths is in, mm or cm")
		}
		style.unit = C.uint32_t(of)
	}
	var made C.rodt_length
	var refused C.rodt_error
	status := C.rodt_length_parse_n(at, C.size_t(len(text)), &style, &made, nil, &refused)
	return length(made), failure(status, &refused)
}

// ReadPressure reads a gauge pressure, "95", "92.5 psi", "655 kPa", as psi from 0 to 300.
func ReadPressure(text string) (*big.Rat, error) {
	var made C.rodt_pressure
	err := read(text, func(at *C.char, refused *C.rodt_error) C.rodt_status {
		return C.rodt_pressure_parse(at, &made, refused)
	})
	return pressure(made), err
}

// ReadSeconds reads a time, "45", "31.5 s", "1:30", as seconds of a day at most.
func ReadSeconds(text string) (*big.Rat, error) {
	var made C.rodt_ratio
	err := read(text, func(at *C.char, refused *C.rodt_error) C.rodt_status {
		return C.rodt_seconds_parse(at, &made, refused)
	})
	return ratio(made), err
}

// ReadDate reads a day from a form, "2021-10-14", "14-OCT-21". One that can be two days is an error.
func ReadDate(text string) (Date, error) {
	var made C.rodt_date
	err := read(text, func(at *C.char, refused *C.rodt_error) C.rodt_status {
		return C.rodt_date_parse(at, &made, refused)
	})
	return dateFrom(made), err
}

func read(text string, by func(at *C.char, refused *C.rodt_error) C.rodt_status) error {
	var kept texts
	defer kept.free()
	at, err := kept.text("", text)
	if err != nil {
		return err
	}
	var refused C.rodt_error
	status := by(at, &refused)
	return failure(status, &refused)
}

// WriteLength writes inches as a mixed fraction, "1 3/4", "-1/8".
func WriteLength(inches *big.Rat) (string, error) {
	num, den, err := parts("length", inches)
	if err != nil {
		return "", err
	}
	var made C.rodt_length
	if status := C.rodt_length_from_inches(num, den, &made); status != C.RODT_OK {
		return "", named(errorOf(status, nil), "length")
	}
	said, status := writtenOr(func(to *C.char, size C.size_t, needed *C.size_t) C.rodt_status {
		return C.rodt_length_format(made, to, size, needed)
	})
	return said, failure(status, nil)
}
