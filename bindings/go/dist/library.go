// SPDX-License-Identifier: Apache-2.0

package rodtravel

// The library is in this directory, with exact arithmetic in plain C.

/*
#cgo CFLAGS: -I${SRCDIR}/include -I${SRCDIR}/src
#cgo CFLAGS: -DRODT_BUILDING -DRODT_STATIC -DRODT_EXACT_PLAIN -DNDEBUG -D_POSIX_C_SOURCE=200809L
*/
import "C"
