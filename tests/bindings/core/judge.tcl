# SPDX-License-Identifier: Apache-2.0
# A wheel end by core.i in Tcl: judge.tcl MODULE
load [lindex $argv 0] Rodtravel_core

proc expect {found wanted} {
    if {![string match $wanted $found]} { error "$found is not $wanted" }
}

set law [new_Rules us-fmcsr]
set form [new_Form]
foreach {name text} {Chamber 30L released {2 3/4} applied {5 5/16} PSI 95} { Form_set $form $name $text }
set found [Form_judge $form $law]
expect [Finding_verdict $found] out-of-adjustment
expect [Finding_get $found margin] -1/16
expect [Finding_json $found] {*"2 1/2"*}
Form_set $form applied 2-Jan
catch { Form_judge $form $law } sentence
expect $sentence {*applied, column 1: *}

Form_set $form applied {5 1/4}
set own [Rules_load $law yard "family,size,class,limit\nclamp,30,long,2 3/8\n"]
set kept [Form_judge $form $own]
foreach {class object} [list Form $form Rules $own Rules $law Finding $found] { delete_$class $object }
expect [Finding_get $kept own_row.published] {2 3/8}
delete_Finding $kept
