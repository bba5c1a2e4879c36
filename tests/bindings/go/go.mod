// SPDX-License-Identifier: Apache-2.0
module rodtravel.test

go 1.19

require rodtravel v0.0.0

replace rodtravel => ../../../bindings/go
