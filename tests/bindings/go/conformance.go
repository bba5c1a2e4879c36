// SPDX-License-Identifier: Apache-2.0

// Go's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
// standard output.
package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"log"
	"math/big"
	"os"
	"strings"

	"rodtravel"
)

type answer map[string]any

func number(of *big.Rat) any {
	if of == nil {
		return nil
	}
	return of.RatString()
}

func errorOf(err *rodtravel.Error) any {
	if err == nil {
		return nil
	}
	return answer{"status": err.Status, "field": err.Field, "column": err.Column}
}

// fill sets the fields of a form by their names, PSIAfter by psi_after; a name that is none ends the program.
func fill(form any, asked map[string]string) {
	plain := map[string]string{}
	for name, text := range asked {
		plain[strings.ReplaceAll(name, "_", "")] = text
	}
	text, err := json.Marshal(plain)
	if err != nil {
		log.Fatal(err)
	}
	reader := json.NewDecoder(bytes.NewReader(text))
	reader.DisallowUnknownFields()
	if err := reader.Decode(form); err != nil {
		log.Fatal(err)
	}
}

func wheelEnd(rules *rodtravel.RuleSet, asked map[string]string) (answer, error) {
	var form rodtravel.Form
	fill(&form, asked)
	found, err := rules.JudgeRow(form)
	reasons := append([]rodtravel.Reason{}, found.Reasons()...)
	return answer{"verdict": found.Verdict(), "stroke": number(found.AppliedStroke()), "limit": number(found.Limit()),
		"margin": number(found.Margin()), "proof": found.Proof(), "probability_over": number(found.ProbabilityOver()),
		"reasons": reasons, "error": errorOf(found.Err())}, err
}

func length(asked map[string]string) (answer, error) {
	found, err := rodtravel.ReadLength(asked["text"], "")
	return answer{"value": number(found), "error": nil}, err
}

func chamber(asked map[string]string) (answer, error) {
	found, err := rodtravel.ReadChamber(asked["text"])
	return answer{"family": found.Family(), "size": found.Size(), "spring_size": found.SpringSize(),
		"stroke_class": found.StrokeClass(), "error": nil}, err
}

func count(asked map[string]string) (answer, error) {
	var tally rodtravel.Tally
	for name, to := range map[string]*int{"brakes": &tally.Brakes, "full": &tally.Full, "half": &tally.Half} {
		if err := json.Unmarshal([]byte(asked[name]), to); err != nil {
			log.Fatal(err)
		}
	}
	found, err := tally.Judge(0)
	return answer{"outcome": found.Outcome(), "share": number(found.Share()), "error": nil}, err
}

func air(rules *rodtravel.RuleSet, asked map[string]string) (answer, error) {
	var form rodtravel.AirForm
	fill(&form, asked)
	found, err := rules.JudgeAir(form)
	atLimit := "no"
	if found.AtLimit() {
		atLimit = "yes"
	}
	return answer{"result": found.Result(), "at_limit": atLimit, "error": nil}, err
}

func reply(asked map[string]string) answer {
	id, ask := asked["id"], asked["ask"]
	rules, err := rodtravel.FindRules(asked["rules"])
	if _, given := asked["rules"]; given && err != nil {
		log.Fatal(err)
	}
	delete(asked, "id")
	delete(asked, "ask")
	delete(asked, "rules")
	var said answer
	switch ask {
	case "wheel-end":
		said, err = wheelEnd(rules, asked)
	case "length":
		said, err = length(asked)
	case "chamber":
		said, err = chamber(asked)
	case "count":
		said, err = count(asked)
	case "air":
		said, err = air(rules, asked)
	default:
		log.Fatalf("nothing answers %q", ask)
	}
	var refused *rodtravel.Error
	if errors.As(err, &refused) {
		said = answer{"error": errorOf(refused)}
	}
	said["id"] = id
	return said
}

func main() {
	out := bufio.NewWriter(os.Stdout)
	in := bufio.NewScanner(os.Stdin)
	for in.Scan() {
		asked := map[string]string{}
		if err := json.Unmarshal(in.Bytes(), &asked); err != nil {
			log.Fatal(err)
		}
		line, err := json.Marshal(reply(asked))
		if err != nil {
			log.Fatal(err)
		}
		out.Write(append(line, '\n'))
	}
	if err := in.Err(); err != nil {
		log.Fatal(err)
	}
	if err := out.Flush(); err != nil {
		log.Fatal(err)
	}
}
