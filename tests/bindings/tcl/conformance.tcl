# SPDX-License-Identifier: Apache-2.0
# Tcl's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
# standard output.
package require rodtravel
fconfigure stdin -encoding utf-8
fconfigure stdout -encoding utf-8

# A flat object of texts, as questions are, as a dict.
proc read_question {line} {
    set question [dict create]
    foreach {all name text} [regexp -all -inline {"((?:[^"\\]|\\.)*)": "((?:[^"\\]|\\.)*)"} $line] {
        # The escapes of JSON are Tcl's, but for the slash.
        dict set question $name [subst -nocommands -novariables [string map {\\/ /} $text]]
    }
    return $question
}

proc quoted {text} { return "\"[string map [list \\ \\\\ \" \\\" \n \\n \t \\t] $text]\"" }
proc member {of name} { return [expr {[dict exists $of $name] ? [quoted [dict get $of $name]] : "null"}] }

proc error_of {status field column} {
    return "{\"status\":[quoted $status],\"field\":[quoted $field],\"column\":$column}"
}

proc members {of args} { return [join [lmap name $args { string cat \"$name\": [member $of $name] }] ,] }

proc wheel-end {question} {
    set found [rodtravel judge_row {*}$question]
    set error null
    if {[dict exists $found error]} {
        set error [error_of {*}[lmap name {status field column} { dict get $found error $name }]]
    }
    if {[dict exists $found applied_stroke]} { dict set found stroke [dict get $found applied_stroke] }
    set reasons [join [lmap reason [dict get $found reasons] { quoted $reason }] ,]
    return "[members $found verdict stroke limit margin proof probability_over],\"reasons\":\[$reasons\],\"error\":$error"
}
proc length {question} {
    return "\"value\":[quoted [rodtravel read_length [dict get $question text]]],\"error\":null"
}
proc chamber {question} {
    set read [dict merge {family {} size {} spring_size {} stroke_class {}} [rodtravel read_chamber [dict get $question text]]]
    return "[members $read family size spring_size stroke_class],\"error\":null"
}
proc count {question} { return "[members [rodtravel count {*}$question] outcome share],\"error\":null" }
proc air {question} {
    set check [expr {[dict exists $question check] ? [dict get $question check] : ""}]
    set found [rodtravel judge_air $check {*}[dict remove $question check]]
    dict set found at_limit [expr {[dict get $found at_limit] ? "yes" : "no"}]
    return "[members $found result at_limit],\"error\":null"
}

while {[gets stdin line] >= 0} {
    set question [read_question $line]
    set asked [dict remove $question id ask]
    try {
        set answer [[dict get $question ask] $asked]
    } trap RODTRAVEL {sentence options} {
        set answer "\"error\":[error_of {*}[lrange [dict get $options -errorcode] 1 3]]"
    }
    puts "{\"id\":[quoted [dict get $question id]],$answer}"
}
