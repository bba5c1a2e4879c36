// SPDX-License-Identifier: Apache-2.0

package rodtravel_test

import (
	"errors"
	"fmt"
	"log"
	"os"
	"regexp"
	"strings"
	"testing"

	"rodtravel"
)

func Example() {
	law := rodtravel.DefaultRules()
	finding, err := law.Judge(rodtravel.Form{Chamber: "30L", Released: "2 3/4", Applied: "5 5/16", PSI: "95"})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(finding.Verdict(), finding.Margin())
	fmt.Println(finding)
	fmt.Println(finding.Source())
	// Output:
	// out-of-adjustment -1/16
	// 2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16
	// 49 CFR Part 393, 393.47(e)(1), text as amended by 86 FR 57076
}

func Example_error() {
	form := rodtravel.Form{Chamber: "30", Released: "2 1/8", Applied: "2-Jan"}
	_, err := rodtravel.DefaultRules().Judge(form)
	if errors.Is(err, rodtravel.StatusDateCell) {
		fmt.Println(err)
	}
	row, _ := rodtravel.DefaultRules().JudgeRow(form) // a row of a file, which no text stops
	fmt.Println(row.Verdict(), row.Err().Field)
	// Output:
	// applied, column 1: this is a date; a spreadsheet makes dates of fractions
	// undetermined applied
}

func Example_vehicle() {
	yard, err := rodtravel.DefaultRules().Load("yard", "family,size,class,limit\nclamp,30,long,2 3/8\n", nil)
	if err != nil {
		log.Fatal(err)
	}
	var ends []rodtravel.WheelEnd
	for position, applied := range map[string]string{"1L": "5 1/4", "1R": "5 1/8"} {
		form := rodtravel.Form{Chamber: "30L", Released: "2 3/4", Applied: applied, PSI: "95"}
		finding, err := yard.Judge(form)
		if err != nil {
			log.Fatal(err)
		}
		ends = append(ends, rodtravel.WheelEnd{Position: position, Finding: finding, Adjuster: "automatic"})
	}
	vehicle, err := rodtravel.JudgeVehicle(ends, 0)
	spanish, _ := rodtravel.FindLanguage("es")
	air, _ := yard.JudgeAir(rodtravel.AirForm{Check: "warning", Pressure: "62"})
	fmt.Println(vehicle.Outcome(), vehicle.With(rodtravel.VerdictOutOfAdjustment), err)
	fmt.Println(air.Sentence(spanish))
	// Output:
	// below-criterion 1 <nil>
	// el aviso de baja presión se encendió a 62 psi; se exige: no menos de 60 psi: bien
}

// Each run of the README is one of the examples above.
func TestReadme(t *testing.T) {
	readme, err := os.ReadFile("README.md")
	if err != nil {
		t.Fatal(err)
	}
	source, err := os.ReadFile("example_test.go")
	if err != nil {
		t.Fatal(err)
	}
	runs := regexp.MustCompile("(?s)```go\n(.*?)```").FindAllStringSubmatch(string(readme), -1)
	same(t, len(runs), 3)
	for _, run := range runs {
		lines := strings.Split(strings.TrimSuffix(run[1], "\n"), "\n")
		if body := "\n\t" + strings.ReplaceAll(strings.Join(lines, "\n\t"), "\n\t\n", "\n\n") + "\n}\n"; !strings.Contains(string(source), ") {"+body) {
			t.Errorf("no example is\n%s", body)
		}
	}
}
