// SPDX-License-Identifier: Apache-2.0

package rodtravel

/*
#include <rodtravel/rodtravel.h>
*/
import "C"

import (
	"fmt"
	"math/big"
	"time"
)

// A Date is a day of the Gregorian calendar, 1900 to 2199. The zero value is one that is not given.
type Date struct {
	Year  int
	Month time.Month
	Day   int
}

// DateOf is the day of a time in its own place.
func DateOf(t time.Time) Date {
	year, month, day := t.Date()
	return Date{year, month, day}
}

// IsZero tells whether the day is not given.
func (d Date) IsZero() bool { return d == Date{} }

// String is "2021-10-14", or empty.
func (d Date) String() string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, int(d.Month), d.Day)
}

// Time is midnight of the day.
func (d Date) Time(in *time.Location) time.Time {
	return time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, in)
}

// Days since 1970-01-01, as a column has them; an error where there is no such day.
func (d Date) Days() (int32, error) {
	c, err := d.checked()
	if err != nil {
		return 0, err
	}
	var days C.int32_t
	status := C.rodt_date_to_days(c, &days)
	return int32(days), failure(status, nil)
}

// checked is the day in C; one that is not given stays so.
func (d Date) checked() (C.rodt_date, error) {
	var made C.rodt_date
	if d.IsZero() {
		return made, nil
	}
	if d.Year < 0 || d.Year > 9999 || d.Day < 0 || d.Day > 99 ||
		C.rodt_date_make(C.int(d.Year), C.int(d.Month), C.int(d.Day), &made) != C.RODT_OK {
		return made, refusal(StatusArgument, "date", "there is no such day from 1900 to 2199")
	}
	return made, nil
}

func dateFrom(c C.rodt_date) Date { return Date{int(c.year), time.Month(c.month), int(c.day)} }

// Exact are the types that [Text] makes a text of.
type Exact interface {
	string | int | int32 | int64 | *big.Int | *big.Rat | Date | time.Time
}

// Most digits after the point that a number is written with; one that needs more is written as a fraction.
const mostDigits = 9

// Text is a value as the text of a form: a number as a decimal where it is a short one, so that 33/8 is never taken for
// 3 3/8 with its blank lost, otherwise as a fraction; a time as its day. What is nil or a zero Date is empty: not given.
func Text[T Exact](value T) string {
	switch of := any(value).(type) {
	case string:
		return of
	case *big.Int:
		if of == nil {
			return ""
		}
		return of.String()
	case *big.Rat:
		return numberText(of)
	case time.Time:
		return DateOf(of).String()
	}
	return fmt.Sprint(value)
}

func numberText(number *big.Rat) string {
	if number == nil {
		return ""
	}
	scaled, ten := new(big.Rat).Set(number), big.NewRat(10, 1)
	for digits := 0; digits <= mostDigits; digits++ {
		if scaled.IsInt() {
			return number.FloatString(digits)
		}
		scaled.Mul(scaled, ten)
	}
	return number.RatString()
}

// exact is a number of the library; nil if it is not given.
func exact(num, den C.int64_t) *big.Rat {
	if den == 0 {
		return nil
	}
	return big.NewRat(int64(num), int64(den))
}

func length(of C.rodt_length) *big.Rat     { return exact(of.num, of.den) }
func pressure(of C.rodt_pressure) *big.Rat { return exact(of.num, of.den) }
func ratio(of C.rodt_ratio) *big.Rat       { return exact(of.num, of.den) }

// parts are those of a number as the library holds it.
func parts(field string, number *big.Rat) (C.int64_t, C.int64_t, error) {
	if number == nil {
		return 0, 0, refusal(StatusArgument, field, "an exact number was expected")
	}
	if !number.Num().IsInt64() || !number.Denom().IsInt64() {
		return 0, 0, refusal(StatusRange, field, "the number has more digits than an exact 64-bit fraction holds")
	}
	return C.int64_t(number.Num().Int64()), C.int64_t(number.Denom().Int64()), nil
}
