// SPDX-License-Identifier: Apache-2.0

// From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
//
//	fleet FLEET.csv
//
// Judges each row by the law of its day. A row that cannot be read stops nothing.
package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"log"
	"math/big"
	"os"
	"sort"
	"strings"

	"rodtravel"
)

// unit is what was found on the wheel ends of one vehicle.
type unit struct {
	counts map[rodtravel.Verdict]int
	least  *big.Rat
}

func (u *unit) add(finding rodtravel.Finding) {
	u.counts[finding.Verdict()]++
	if margin := finding.Margin(); margin != nil && (u.least == nil || margin.Cmp(u.least) < 0) {
		u.least = margin
	}
}

// isWheelEnd tells whether a record is one: an empty one, or the heading once more, is none.
func isWheelEnd(row map[string]string) bool {
	return row["chamber"] != "" && row["chamber"] != "chamber" || strings.Trim(row["released"], "releasd") != ""
}

func judge(row map[string]string) rodtravel.Finding {
	finding, err := rodtravel.DefaultRules().JudgeRow(rodtravel.Form{
		Chamber: row["chamber"], StrokeClass: row["stroke_class"], RatedStroke: row["rated_stroke"],
		Released: row["released"], Applied: row["applied"], PSI: row["psi"], Division: row["division"], Date: row["date"],
	})
	if err != nil {
		log.Fatal(err)
	}
	return finding
}

// rows gives each record of the file by its headings.
func rows(path string, each func(map[string]string)) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.FieldsPerRecord = -1
	headings, err := reader.Read()
	for err == nil {
		var record []string
		if record, err = reader.Read(); err != nil {
			break
		}
		row := map[string]string{}
		for i, cell := range record {
			if i < len(headings) {
				row[strings.TrimPrefix(headings[i], "\uFEFF")] = cell
			}
		}
		each(row)
	}
	if err == io.EOF {
		return nil
	}
	return err
}

func main() {
	if len(os.Args) != 2 {
		log.Fatal("usage: fleet FLEET.csv")
	}
	units := map[string]*unit{}
	err := rows(os.Args[1], func(row map[string]string) {
		if !isWheelEnd(row) {
			return
		}
		of := units[row["unit_no"]]
		if of == nil {
			of = &unit{counts: map[rodtravel.Verdict]int{}}
			units[row["unit_no"]] = of
		}
		of.add(judge(row))
	})
	if err != nil {
		log.Fatal(err)
	}
	names := make([]string, 0, len(units))
	for name := range units {
		names = append(names, name)
	}
	sort.Strings(names)
	fmt.Printf("%-8s%5s%5s%6s%6s   least to spare\n", "unit", "in", "out", "dead", "open")
	for _, name := range names {
		of, least := units[name], "not known"
		if of.least != nil {
			text, err := rodtravel.WriteLength(of.least)
			if err != nil {
				log.Fatal(err)
			}
			least = text + " in"
		}
		fmt.Printf("%-8s%5d%5d%6d%6d   %s\n", name, of.counts[rodtravel.VerdictInAdjustment],
			of.counts[rodtravel.VerdictOutOfAdjustment], of.counts[rodtravel.VerdictInoperative],
			of.counts[rodtravel.VerdictUndetermined], least)
	}
}
