# SPDX-License-Identifier: Apache-2.0
package ifneeded rodtravel 0.1.0 "load [list [file join $dir rodtravel_core.so]] Rodtravel_core
source -encoding utf-8 [list [file join $dir rodtravel.tcl]]"
