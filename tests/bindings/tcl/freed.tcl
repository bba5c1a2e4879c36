# SPDX-License-Identifier: Apache-2.0
# What was deleted is refused, deleted twice or not. Prints TAP; run.sh exhaustive runs it under valgrind.
package require rodtravel

set count 0
set failed 0
proc ok {right what} {
    global count failed
    incr count
    if {!$right} { incr failed }
    puts "[expr {$right ? {} : {not }}]ok $count - $what"
}

foreach {name call} {Form error_count Vehicle judge Columns column Record json Rules json} {
    set object [rodtravel_core::new_$name {*}[dict get {Form {} Vehicle {} Columns {} Record rodt_clues Rules us-fmcsr} $name]]
    set twice [catch {rodtravel_core::delete_$name $object; rodtravel_core::delete_$name $object}]
    set more [expr {$name eq "Columns" ? "verdict" : {}}]
    ok [expr {[catch {rodtravel_core::${name}_$call $object {*}$more} said] && $said ne ""}] "a deleted $name ($twice, $said)"
}
set gone [rodtravel_core::new_Rules us-fmcsr]
set form [rodtravel_core::new_Form]
rodtravel_core::delete_Rules $gone
ok [catch {rodtravel_core::Form_judge $form $gone}] "a deleted argument"
ok [catch {rodtravel_core::Form_judge NULL $gone}] "no object"
ok [catch {rodtravel_core::Form_judge $gone $gone}] "an object of another kind"
rodtravel_core::delete_Form $form

rodtravel load_rules "family,size,class,limit\nclamp,30,long,2 3/8\n" yard
ok [expr {"over-own-limit" in [dict get [rodtravel judge chamber 30L released "2 3/4" applied "5 1/4" rules yard] reasons]}] \
    "a rule set that is there"
rodtravel unload_rules yard
ok [catch {rodtravel unload_rules yard}] "unloaded twice"
ok [catch {rodtravel judge chamber 30L released "2 3/4" applied "5 1/4" rules yard}] "judged by what was unloaded"
for {set i 0} {$i < 50} {incr i} {
    rodtravel load_rules "family,size,class,limit\nclamp,30,long,2 3/8\n" yard
    set kept [rodtravel judge chamber 30L released "2 3/4" applied "5 1/4" rules yard]
    catch {rodtravel judge chamber 30L released 2-Jan applied 5 rules yard}
    rodtravel judge_columns {chamber 30 released 1 applied 2} rules yard
    rodtravel unload_rules yard
}
ok [expr {[dict get $kept rules] eq "yard"}] "a finding outlives its rule set"

puts "1..$count"
exit [expr {$failed != 0}]
