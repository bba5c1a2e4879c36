// SPDX-License-Identifier: Apache-2.0

// What languages.py asks of Go: bench call|lists|column COUNT. Rows are judged one by one.
package main

import (
	"fmt"
	"log"
	"os"
	"strconv"

	"rodtravel"
)

func main() {
	rules := rodtravel.DefaultRules()
	what := os.Args[1]
	count, err := strconv.Atoi(os.Args[2])
	if err != nil {
		log.Fatal(err)
	}
	form := rodtravel.Form{Chamber: "30L", Released: "2 3/4", Applied: "5 5/16", PSI: "95"}
	if what == "call" {
		for i := 0; i < count; i++ {
			if found, err := rules.Judge(form); err != nil || found.Verdict() == "" {
				log.Fatal(err)
			}
		}
		return
	}
	rows := make([]rodtravel.Form, count)
	for i := range rows {
		rows[i] = form
		rows[i].Applied = fmt.Sprintf("%d %d/16", 4+i%2, 1+2*(i%8))
	}
	if what == "column" {
		verdicts := make([]rodtravel.Verdict, count)
		for i, row := range rows {
			found, err := rules.JudgeRow(row)
			if err != nil {
				log.Fatal(err)
			}
			verdicts[i] = found.Verdict()
		}
	}
}
