# SPDX-License-Identifier: Apache-2.0
# A million calls lose nothing, whether they find or refuse. Prints TAP.
package require rodtravel

proc pages {} {
    if {[catch {open /proc/self/statm} file]} { return 0 }
    set found [lindex [read $file] 1]
    close $file
    return $found
}

proc work {calls} {
    for {set i 0} {$i < $calls} {incr i 10} {
        rodtravel judge chamber 30L released "2 3/4" applied "5 1/4" language fr
        rodtravel load_rules "family,size,class,limit\nclamp,30,long,2 3/8\n" yard
        rodtravel judge_vehicle {{position 1L chamber 30L released {2 3/4} applied {5 1/4}}} rules yard
        rodtravel judge_columns {chamber {30 x} released {1 1} applied {2 2}} rules yard
        rodtravel unload_rules yard
        foreach wrong {{applied 2-Jan} {applied {}} {rules atlantis} {colour red}} {
            if {![catch {rodtravel judge chamber 30 released "2 1/8" applied 4 {*}$wrong}]} { error "it was not refused" }
        }
    }
}

puts 1..1
work 100000
set before [pages]
work 1000000
set more [expr {[pages] - $before}]
puts "[expr {$more < 500 ? {} : {not }}]ok 1 - memory after a million calls # $more pages more"
exit [expr {$more >= 500}]
