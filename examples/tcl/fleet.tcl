# SPDX-License-Identifier: Apache-2.0
# From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
#
#     tclsh fleet.tcl [FLEET.csv]
#
# Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.
package require rodtravel

set fields {chamber stroke_class rated_stroke released applied psi division date}
set verdicts {in-adjustment out-of-adjustment inoperative undetermined}

# The cells of a record: between commas, with quotes around what holds one, a quote doubled inside.
proc cells_of {record} {
    return [lmap {all cell} [regexp -all -inline {((?:"(?:[^"]|"")*"|[^,"])*),} $record,] {
        string map {\"\" \"} [regsub {^"(.*)"$} $cell {\1}]
    }]
}

# Rows as dicts by their headings; a record that is empty, or the heading once more, is none.
proc read_rows {path} {
    set file [open $path]
    fconfigure $file -encoding utf-8
    set headings {}
    set rows {}
    while {[gets $file record] >= 0} {
        # A line break inside of quotes.
        while {[regexp -all {"} $record] % 2 && [gets $file more] >= 0} { append record \n $more }
        set cells [cells_of [string trimright [string trimleft $record \uFEFF]]]
        if {$headings eq ""} {
            set headings $cells
            continue
        }
        set row [dict create]
        foreach heading $headings cell [lrange $cells 0 [llength $headings]-1] { dict set row $heading $cell }
        if {[dict get $row chamber] ni {{} chamber} || [string trim [dict get $row released] releasd] ne ""} {
            lappend rows $row
        }
    }
    close $file
    return $rows
}

set path [lindex $argv 0]
if {$path eq ""} { set path [file join [file dirname [info script]] .. data fleet.csv] }
set units [dict create]
foreach row [read_rows $path] {
    dict lappend units [dict get $row unit_no] [rodtravel judge_row {*}[dict filter $row script {name text} { expr {$name in $fields} }]]
}

puts [format "%-8s%5s%5s%6s%6s   least to spare" unit in out dead open]
foreach unit [lsort [dict keys $units]] {
    set counts [dict create]
    set least ""
    foreach finding [dict get $units $unit] {
        dict incr counts [dict get $finding verdict]
        if {![dict exists $finding margin]} continue
        set margin [dict get $finding margin]
        if {$least eq "" || [rodtravel ratio $margin <=> $least] < 0} { set least $margin }
    }
    set columns [lmap verdict $verdicts { expr {[dict exists $counts $verdict] ? [dict get $counts $verdict] : 0} }]
    puts [format "%-8s%5d%5d%6d%6d   %s" $unit {*}$columns \
        [expr {$least eq "" ? "not known" : "[rodtravel write_length $least] in"}]]
}
