#!/bin/sh
# SPDX-License-Identifier: Apache-2.0
# go.sh ARCHIVE FOLDER: unpacks the Go module in a folder of its own, tests it, and asks it from a program that names it,
# all without a network and without the library of the build.
set -eu
archive=$1
folder=$2
rm -rf "$folder"
mkdir -p "$folder/program"
tar -xzf "$archive" -C "$folder"
unset CGO_CFLAGS CGO_LDFLAGS
export GOPROXY=off GOTOOLCHAIN=local GOFLAGS=-mod=mod CGO_ENABLED=1
module=$(cd "$folder"/rodtravel-go-* && pwd)
(cd "$module" && go vet . && go test .)
cd "$folder/program"
cat >go.mod <<END
module program

go 1.19

require rodtravel v0.0.0

replace rodtravel => $module
END
cat >main.go <<'END'
package main

import (
	"fmt"

	"rodtravel"
)

func main() {
	form := rodtravel.Form{Chamber: "30", Released: "2 1/8", Applied: "4 1/8", PSI: "95"}
	finding, err := rodtravel.DefaultRules().Judge(form)
	fmt.Println(finding.Verdict(), err)
}
END
said=$(go run .)
[ "$said" = 'in-adjustment <nil>' ] || { echo "said: $said"; exit 1; }
