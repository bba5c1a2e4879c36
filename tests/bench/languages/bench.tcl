# SPDX-License-Identifier: Apache-2.0
# bench.tcl call|lists|column COUNT (../languages.py)
package require rodtravel

proc bench {what count} {
    if {$what eq "call"} {
        for {set i 0} {$i < $count} {incr i} {
            dict get [rodtravel judge chamber 30L released "2 3/4" applied "5 5/16" psi 95] verdict
        }
        return
    }
    set applied [list]
    for {set i 0} {$i < $count} {incr i} { lappend applied "[expr {4 + $i % 2}] [expr {1 + 2 * ($i % 8)}]/16" }
    set columns [dict create chamber [lrepeat $count 30L] released [lrepeat $count "2 3/4"] applied $applied \
        psi [lrepeat $count 95]]
    if {$what eq "column"} { rodtravel judge_columns $columns }
}
bench {*}$argv
