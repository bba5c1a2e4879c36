# SPDX-License-Identifier: Apache-2.0
# What the package finds and refuses. Prints TAP.
encoding system utf-8
package require rodtravel

set count 0
set failed 0

proc is {found wanted what} {
    global count failed
    incr count
    if {$found eq $wanted} {
        puts "ok $count - $what"
    } else {
        incr failed
        puts "not ok $count - $what\n# found [string map {\n { }} $found], wanted $wanted"
    }
}
proc ok {right what} { is [expr {$right ? 1 : 0}] 1 $what }

# Status, field, column and line of what a script must refuse.
proc refused {wanted script} {
    set found nothing
    if {[catch {uplevel 1 $script} result options]} {
        set found [dict get $options -errorcode]
        set found [expr {[lindex $found 0] eq "RODTRAVEL" ? [lrange $found 1 end] : $result}]
    }
    is $found $wanted "refused: $wanted"
}

set texts {chamber 30L released {2 3/4} applied {5 5/16} psi 95}
proc with {args} { return [dict merge $::texts $args] }

# --- A wheel end -----------------------------------------------------------------------------------------------------

set over [rodtravel judge {*}$texts]
is [dict get $over verdict] out-of-adjustment "the verdict"
is [dict get $over margin] -1/16 "the margin is exact"
is [list [dict get $over applied_stroke] [dict get $over limit]] {41/16 5/2} "stroke and limit"
is [dict get $over reasons] over-limit "reasons"
is [dict get $over sentence] "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16" "a finding as a text"
is [dict exists $over long_limit] 0 "what is not given is no member"
is [dict get $over defect] half "the defect"
ok [string match "49 CFR Part 393, 393.47*" [dict get $over source]] "the source"
ok [string match "*dépasse la limite*" [lindex [dict get [rodtravel judge {*}$texts language fr] sentences] 0]] "in French"
ok [string match "*límite*" [dict get [rodtravel judge {*}$texts language es] sentence]] "in Spanish"
ok [string match "Released 2 3/4*" [dict get $over spoken]] "what is said aloud"
ok [string match {*"margin": "-1/16"*} [dict get $over json]] "as JSON"
is [rodtravel judge {*}$texts] $over "findings are equal by value"
is [dict get [rodtravel judge {*}[with division 1/8]] proof] not-resolved "what the division proves"
set row [rodtravel judge_row {*}[with applied 2-Jan]]
is [dict get $row verdict] undetermined "a row that cannot be read"
is [dict get $row error] {status date-cell field applied column 1 text {this is a date; a spreadsheet makes dates of fractions}} \
    "and why"
is [rodtravel judge_row {*}$texts] $over "a sound row"
is [dict get [rodtravel judge chamber 30 released 50,8 applied 104,8 default_unit mm decimal_comma 1] verdict] \
    out-of-adjustment "a form in millimetres with decimal commas"

# --- The rest of the job ---------------------------------------------------------------------------------------------

set ends [list [with position 1L adjuster automatic arm_length 6] [with position 1R applied 5]]
set vehicle [rodtravel judge_vehicle $ends]
is [list [dict get $vehicle outcome] [dict get $vehicle share]] {ambiguous 1/4} "half a brake of two"
is [expr {[dict get $vehicle out_of_adjustment] + [dict get $vehicle in_adjustment]}] 2 "counts"
ok [string match *find-fault* [dict get $vehicle json]] "what to do next"
ok [string match *frein* [dict get [rodtravel judge_vehicle $ends language fr] sentence]] "in French"
is [dict get [rodtravel judge_vehicle [lrange $ends 0 0] brakes 10] outcome] undetermined "brakes that were not measured"
is [dict get [rodtravel judge_air warning pressure 62 rules us-cdl] result] good "the low-pressure warning"
is [dict get [rodtravel judge_air warning pressure 60 rules us-newvehicle] at_limit] true "at the edge"
is [dict get [rodtravel count brakes 6 full 1 half 1] outcome] ambiguous "the chart of whole brakes"
set which [rodtravel identify stamp 24]
is [list [dict get $which strict_limit] [dict get $which next_observation]] {7/4 long-sign} "which chamber it can be"
is [rodtravel read_chamber 30LS] {family clamp size 30 stroke_class long} "a mark"
is [dict get [rodtravel find_limit 36 date 2021-10-13] limit] 9/4 "a limit on a day"
is [dict get [rodtravel find_limit 24 rated_stroke 3] limit] 5/2 "with a mark more"
ok [expr {[llength [rodtravel rule_sets]] > 5 && [string match "*United States*" [rodtravel rules_json us-fmcsr]]}] "rule sets"
is [rodtravel load_rules "family,size,class,limit\nclamp,30,long,2 3/8\n" yard] yard "a carrier's own limits"
set kept [rodtravel judge {*}[with applied {5 1/4} rules yard]]
ok [expr {"over-own-limit" in [dict get $kept reasons] && [dict get $kept rules] eq "yard"}] "judge"
is [rodtravel ratio [dict get $kept limit] <=> [dict get $kept law_limit]] -1 "stricter than the law"
refused {argument name 0 0} { rodtravel load_rules {} yard }
rodtravel unload_rules yard
refused {unknown-rules {} 0 0} { rodtravel judge {*}[with rules yard] }
refused {argument name 0 0} { rodtravel unload_rules yard }

is [package present rodtravel] [rodtravel_core::version] "the version of the library"

# --- Columns, steps, reservoirs --------------------------------------------------------------------------------------

set columns {
    chamber {30L 30 {} 30L 30} released {{2 3/4} {2 1/8} 1 2-Jan 2.750001} applied {{5 5/16} 4.125 2 5 4.612345}
}
set answers [rodtravel judge_columns $columns psi 95]
for {set i 0} {$i < 5} {incr i} {
    set row [dict map {name cells} $columns { lindex $cells $i }]
    set one [dict merge {stroke {} limit {}} [rodtravel judge_row {*}$row psi 95]]
    if {[dict exists $one applied_stroke]} { dict set one stroke [dict get $one applied_stroke] }
    dict set one reasons [join [dict get $one reasons] {, }]
    foreach name {verdict reasons stroke limit} {
        is [lindex [dict get $answers $name] $i] [dict get $one $name] "$name of row $i of columns"
    }
}
is [dict get $answers flags] {{} {} missing invalid {}} "flags of cells"
is [dict get [rodtravel judge_columns {chamber {} released {} applied {}}] verdict] {} "no rows"
is [dict get [rodtravel judge_columns {chamber {{}} released {{}} applied {{}}}] verdict] undetermined "one blank row"
refused {argument released 0 0} { rodtravel judge_columns {chamber {30 30} released 1 applied {2 2}} }
refused {argument released 0 0} { rodtravel judge_columns "chamber {30 30} released 1\x1f1 applied 2\x1f2" }
refused {argument colour 0 0} { rodtravel judge_columns {chamber 30 released 1 applied 2 colour red} }
refused {argument applied 0 0} { rodtravel judge_columns [list chamber 30 released 1 applied [list [expr {5 / 2.0}]]] }
refused {argument applied 0 0} { rodtravel judge_columns {chamber 30 released 1} }
refused {syntax psi 1 0} { rodtravel judge_columns {chamber 30 released 1 applied 2} psi high }
set steps [rodtravel steps rules ca-on vehicle single]
is [dict get [lindex $steps 3] step] warning "a step"
ok [string match "*below 55 psi*" [dict get [lindex $steps 3] defective]] "its figures"
ok [string match {*"warning"*} [dict get [lindex $steps 3] row]] "its row"
ok [expr {[dict get [lindex [rodtravel steps rules ca-on language fr] 0] title] ne [dict get [lindex $steps 0] title]}] \
    "in French"
ok [expr {[llength [rodtravel steps rules ca-on vehicle combination]] > [llength $steps]}] "a combination has more steps"
refused {syntax vehicle 1 0} { rodtravel steps vehicle sledge }
is [rodtravel rated_volume 30] 89 "the volume of a chamber"
is [rodtravel required_volume [expr {89 * 4 + 54 * 2}]] 5568 "of its reservoirs"
is [rodtravel required_volume 464 yes] 3712 "of a trailer's"
is [rodtravel build_up_seconds 11136 5568] 50 "seconds"
is [rodtravel estimate_application pressure 105 reservoir 5568 chambers 464] 12453/130 "an estimate"
is [rodtravel estimate_applications pressure 105 least 60 reservoir 5568 chambers 464] 5 "another"
refused {argument chambers 0 0} { rodtravel required_volume -1 }
refused {argument volumes 0 0} { rodtravel build_up_seconds 1 0 }
refused {argument estimate 0 0} { rodtravel estimate_application pressure 1 reservoir 1 chambers 1 fill 2 }
refused {unknown-chamber chamber 0 0} { rodtravel rated_volume "bolt A" }

# --- Numbers ---------------------------------------------------------------------------------------------------------

is [rodtravel ratio 17/8 - 2] 1/8 "a difference"
is [rodtravel ratio -6/4 + 0] -3/2 "lowest terms"
is [rodtravel ratio 1/2 * 2] 1 "a product"
is [rodtravel ratio 1 / -1/2] -2 "a quotient"
is [rodtravel ratio 1/3 <=> 1/2] -1 "a comparison"
is [rodtravel ratio 9223372036854775807 * 9223372036854775807] 85070591730234615847396907784232501249 "of any size"
foreach applied {{4 1/8} 4.125 4⅛ 4-1/8} {
    is [dict get [rodtravel judge chamber 30 released {2 1/8} applied $applied] applied_stroke] 2 $applied
}
is [rodtravel read_length "44.45 mm"] 7/4 "millimetres"
is [rodtravel read_length 44.45 mm] 7/4 "by their unit"
is [list [rodtravel read_pressure 95] [rodtravel read_seconds 1:30] [rodtravel read_date 14-OCT-21]] {95 90 2021-10-14} "readers"
is [rodtravel write_length -7/4] "-1 3/4" "back to a text"

# --- What is refused -------------------------------------------------------------------------------------------------

set eight 8.0
refused {argument applied 0 0} { rodtravel judge {*}$texts applied [expr {33 / $eight}] }
refused {argument number 0 0} { rodtravel ratio [expr {0.1 + 0.2}] + 1 }
refused {argument number 0 0} { rodtravel ratio half + 1 }
refused {argument number 0 0} { rodtravel ratio 1/0 + 1 }
refused {argument number 0 0} { rodtravel ratio 1 / 0 }
refused {argument operator 0 0} { rodtravel ratio 1 ** 2 }
refused {date-cell applied 1 0} { rodtravel judge {*}[with applied 2-Jan] }
refused {syntax applied 5 0} { rodtravel judge {*}[with applied "4 1/"] }
refused {empty applied 0 0} { rodtravel judge {*}[with applied ""] }
refused {argument colour 0 0} { rodtravel judge {*}[with colour red] }
refused {argument judge 0 0} { rodtravel judge chamber }
refused {argument applied 0 0} { rodtravel judge {*}[with applied "4\0"] }
refused {syntax default_unit 1 0} { rodtravel judge {*}[with default_unit ells] }
refused {unknown-rules {} 0 0} { rodtravel judge {*}[with rules atlantis] }
refused {argument language 0 0} { rodtravel judge {*}[with language xx] }
refused {argument unit 0 0} { rodtravel read_length 3 ells }
refused {syntax {} 3 0} { rodtravel read_length 4½¼ }
refused {argument length 0 0} { rodtravel write_length long }
refused {argument length 0 0} { rodtravel write_length 9223372036854775808 }
refused {laxer limit 19 2} { rodtravel load_rules "family,size,class,limit\nclamp,30,standard,3\n" yard }
refused {argument ends 0 0} { rodtravel judge_vehicle {} }
refused {syntax position 1 2} { rodtravel judge_vehicle [list [with position 1L] [with position left]] }
refused {argument colour 0 0} { rodtravel judge_vehicle $ends colour red }
refused {argument brakes 0 0} { rodtravel judge_vehicle $ends brakes many }
refused {argument brakes 0 0} { rodtravel judge_vehicle $ends brakes -1 }
refused {syntax pressure 1 0} { rodtravel judge_air warning pressure high }
refused {argument tally 0 0} { rodtravel count brakes 1 full 2 }
catch {rodtravel judge {*}[with applied 2-Jan]} sentence
is $sentence "applied, column 1: this is a date; a spreadsheet makes dates of fractions" "an error as a text"
is [rodtravel judge {*}$texts] $over "after an error all is well"

# --- Memory ----------------------------------------------------------------------------------------------------------

proc pages {} {
    if {[catch {open /proc/self/statm} file]} { return 0 }
    set found [lindex [read $file] 1]
    close $file
    return $found
}
proc work {} {
    for {set i 0} {$i < 1500} {incr i} {
        rodtravel judge_row {*}$::texts
        catch {rodtravel judge {*}[with applied 2-Jan]}
    }
}
work
set before [pages]
work
work
ok [expr {[pages] - $before < 300}] "nothing is lost"

# --- The README ------------------------------------------------------------------------------------------------------

set file [open [lindex $argv 0]]
fconfigure $file -encoding utf-8
set runs [lmap {all run} [regexp -all -inline {```tcl\n(.*?)```} [read $file]] { set run }]
close $file
is [llength $runs] 3 "three runs"
foreach run $runs {
    set said {}
    set reader [interp create]
    $reader eval [list set auto_path $auto_path]
    $reader alias puts apply {line { lappend ::said $line }}
    $reader eval $run
    interp delete $reader
    is $said [lmap {all line} [regexp -all -inline -line {^\s*puts .*;# (.*)$} $run] { set line }] "a run of the README"
}

puts "1..$count"
exit [expr {$failed != 0}]
