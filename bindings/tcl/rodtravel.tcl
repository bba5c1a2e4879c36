# SPDX-License-Identifier: Apache-2.0
# Pushrod stroke of air brakes: from a tape reading to a verdict with its reasons and source, exactly. README.md shows it.
package require Tcl 8.6-
package provide rodtravel 0.1.0

namespace eval rodtravel {
    namespace export judge judge_row judge_columns judge_vehicle judge_air count identify find_limit read_chamber \
        read_length read_pressure read_seconds read_date write_length rule_sets rules_json load_rules unload_rules \
        tables_edition steps rated_volume required_volume build_up_seconds estimate_application estimate_applications ratio
    namespace ensemble create

    # Arguments that are about a whole form, and what they are called in C.
    variable form_wide {default_unit style.unit decimal_comma style.decimal_comma date_order date_order
        default_date default_day}
    variable finding_words {verdict proof evidence law_evidence law_basis day unit chamber rules}
    variable finding_numbers {released applied applied_stroke limit law_limit long_limit margin division probability_over
        pressure pressure_after}
    variable loaded [dict create] ;# names of a carrier's rule sets, and their objects
}

# --- Errors: errorcode is RODTRAVEL status field column line ---------------------------------------------------------

proc rodtravel::Refuse {field text {line 0}} {
    return -level 0 -code error -errorcode [list RODTRAVEL argument $field 0 $line] "$field: $text"
}

# Calls the library; raises what it refused. The line is that of a wheel end, the name that of the argument.
proc rodtravel::Call {line name args} {
    if {![catch {uplevel #0 $args} found]} {
        return $found
    }
    set status [rodtravel_core::error_status]
    if {$status eq "ok"} {
        Refuse $name $found $line
    }
    if {$name eq ""} { set name [rodtravel_core::error_field] }
    if {!$line} { set line [rodtravel_core::error_line] }
    set column [rodtravel_core::error_column]
    set where [list]
    if {$name ne ""} { lappend where $name }
    if {$line} { lappend where "line $line" }
    if {$column} { lappend where "column $column" }
    set sentence [rodtravel_core::error_text]
    if {[llength $where]} { set sentence "[join $where {, }]: $sentence" }
    return -level 0 -code error -errorcode [list RODTRAVEL $status $name $column $line] $sentence
}

# --- In --------------------------------------------------------------------------------------------------------------

# A value as a text. What is a binary float and was never a text is only nearly what was read.
proc rodtravel::In {name value} {
    set how [tcl::unsupported::representation $value]
    if {[string match "value is a double *no string representation*" $how]} {
        Refuse $name "$value is a binary float, which is only nearly what was read; give it as a text"
    }
    if {[string first \0 $value] >= 0} {
        Refuse $name "a text of the library has no zero character"
    }
    return $value
}

# The rule set of an id, or of a name that load_rules gave: an object, and whether it is to be deleted.
proc rodtravel::Rules {id} {
    variable loaded
    if {[dict exists $loaded $id]} {
        return [list [dict get $loaded $id] 0]
    }
    return [list [Call 0 "" rodtravel_core::new_Rules [In rules $id]] 1]
}

# Runs a script with an object in a variable, and deletes the object whatever happens.
proc rodtravel::With {kind variable object script} {
    upvar 1 $variable held
    set held $object
    set code [catch {uplevel 1 $script} result options]
    rodtravel_core::delete_$kind $object
    dict incr options -level
    return -options $options $result
}

proc rodtravel::WithRules {given variable script} {
    upvar 1 $variable held
    set id us-fmcsr
    if {[dict exists $given rules]} { set id [dict get $given rules] }
    lassign [Rules $id] held owned
    set code [catch {uplevel 1 $script} result options]
    if {$owned} { rodtravel_core::delete_Rules $held }
    dict incr options -level
    return -options $options $result
}

# Pairs as a dict. Tcl's own conversion makes a text of every value where a name is there twice.
proc rodtravel::Given {what given} {
    if {[catch {llength $given} size] || $size % 2} {
        Refuse $what "arguments are pairs of a name and a value"
    }
    set pairs [dict create]
    foreach {name value} $given { dict set pairs $name $value }
    return $pairs
}

proc rodtravel::Fill {kind object given except} {
    variable form_wide
    dict for {name value} $given {
        if {$name in $except} continue
        set path $name
        set as ""
        if {$kind eq "Form" && [dict exists $form_wide $name]} {
            set path [dict get $form_wide $name]
            set as $name
            if {$name eq "decimal_comma"} { set value [expr {$value ? "true" : "false"}] }
        }
        Call 0 $as rodtravel_core::${kind}_set $object $path [In $name $value]
    }
}

proc rodtravel::Take {given name {otherwise ""}} {
    return [expr {[dict exists $given $name] ? [In $name [dict get $given $name]] : $otherwise}]
}

# --- Out: what was found is a dict -----------------------------------------------------------------------------------

# Members by their names and paths; what is not given is no member.
proc rodtravel::Members {kind object how names} {
    set found [dict create]
    foreach {name path} $names {
        set text [Call 0 "" rodtravel_core::${kind}_$how $object $path]
        if {$text ne ""} { dict set found $name $text }
    }
    return $found
}

proc rodtravel::Own {names} {
    return [concat {*}[lmap name $names { list $name $name }]]
}

proc rodtravel::Finding {object language} {
    variable finding_words
    variable finding_numbers
    set sentences [split [Call 0 "" rodtravel_core::Finding_sentences $object $language] \n]
    set reasons [split [string map {", " ,} [Call 0 "" rodtravel_core::Finding_get $object reasons]] ,]
    return [dict merge [Members Finding $object get [Own $finding_words]] \
        [Members Finding $object exact [Own $finding_numbers]] \
        [dict create reasons $reasons sentences $sentences sentence [Call 0 "" rodtravel_core::Finding_say $object $language] \
            spoken [Call 0 "" rodtravel_core::Finding_spoken $object $language] \
            source [Call 0 "" rodtravel_core::Finding_source $object] defect [rodtravel_core::Finding_defect $object] \
            json [Call 0 "" rodtravel_core::Finding_json $object $language]]]
}

# Of a row: the error as a dict; nothing where all could be read.
proc rodtravel::RowError {object} {
    set status [rodtravel_core::Finding_row_status $object]
    if {$status eq "ok"} { return {} }
    return [dict create status $status field [rodtravel_core::Finding_row_field $object] \
        column [rodtravel_core::Finding_row_column $object] text [rodtravel_core::Finding_row_text $object]]
}

# --- Functions -------------------------------------------------------------------------------------------------------

proc rodtravel::JudgeBy {how given script} {
    WithRules $given rules {
        With Form form [rodtravel_core::new_Form] {
            Fill Form $form $given {rules language position adjuster arm_length}
            With Finding finding [Call 0 "" rodtravel_core::Form_$how $form $rules] $script
        }
    }
}

# One wheel end: chamber, released, applied, and what else rodt_form has; rules, language, default_unit, decimal_comma,
# date_order, default_date. Raises for the first text that cannot be read.
proc rodtravel::judge {args} {
    set given [Given judge $args]
    JudgeBy judge $given { Finding $finding [Take $given language] }
}

# The same for a row of a file, which no text stops: the finding, with a member `error` where something was not read.
proc rodtravel::judge_row {args} {
    set given [Given judge_row $args]
    JudgeBy judge_row $given {
        set found [Finding $finding [Take $given language]]
        set error [RowError $finding]
        if {[dict size $error]} { dict set found error $error }
        set found
    }
}

# Many wheel ends at once, as judge_row judges them: columns are a dict of lists by the names of judge, the arguments what all
# rows share. Gives a dict of lists: verdict, flags and reasons as words with commas, stroke and limit in inches, nothing
# where there is none or a stroke is no whole number of 1/127000000000 in (up to nine decimals are), a limit none of
# 1/5080000 in.
proc rodtravel::judge_columns {columns args} {
    set given [Given judge_columns $args]
    WithRules $given rules {
        With Form form [rodtravel_core::new_Form] {
            Fill Form $form $given {rules}
            With Columns held [rodtravel_core::new_Columns] {
                set rows 0
                dict for {name cells} [Given columns $columns] {
                    Call 0 "" rodtravel_core::Columns_set $held $name [join [lmap cell $cells { In $name $cell }] \x1f] \
                        [llength $cells]
                    set rows [expr {max($rows, [llength $cells])}]
                }
                Call 0 "" rodtravel_core::Columns_judge $held $rules $form $rows
                Answers $held $rows
            }
        }
    }
}

proc rodtravel::Answers {held rows} {
    set found [dict create]
    foreach name {verdict flags reasons stroke limit} {
        set text [Call 0 "" rodtravel_core::Columns_column $held $name]
        dict set found $name [expr {$rows > 1 ? [split $text \x1f] : [lrepeat $rows $text]}]
    }
    return $found
}

# The roadside criterion: wheel ends as dicts of `position`, adjuster, arm_length and what judge takes; brakes, rules,
# language. Each is judged as a row.
proc rodtravel::judge_vehicle {ends args} {
    set given [Given judge_vehicle $args]
    foreach name [dict keys $given] {
        if {$name ni {brakes rules language}} { Refuse $name "judge_vehicle has no such argument" }
    }
    set brakes [Take $given brakes 0]
    if {![string is integer -strict $brakes]} { Refuse brakes "a whole number was expected" }
    WithRules $given law {
        With Vehicle vehicle [rodtravel_core::new_Vehicle] {
            set line 0
            foreach end $ends {
                incr line
                set end [Given ends $end]
                With Form form [rodtravel_core::new_Form] {
                    Fill Form $form $end {position adjuster arm_length}
                    With Finding finding [Call $line "" rodtravel_core::Form_judge_row $form $law] {
                        Call $line "" rodtravel_core::Vehicle_add $vehicle [Take $end position] $finding \
                            [Take $end adjuster] [Take $end arm_length]
                    }
                }
            }
            Call 0 "" rodtravel_core::Vehicle_judge $vehicle $brakes
            set language [Take $given language]
            dict merge [Members Vehicle $vehicle get {outcome count.outcome brakes count.brakes in_adjustment in_adjustment
                out_of_adjustment out_of_adjustment inoperative inoperative undetermined undetermined}] \
                [Members Vehicle $vehicle exact {share count.share defective count.defective}] \
                [dict create sentence [Call 0 "" rodtravel_core::Vehicle_say $vehicle $language] \
                    json [Call 0 "" rodtravel_core::Vehicle_json $vehicle $language]]
        }
    }
}

# A check of the air system, by the names of rodt_air_form.
proc rodtravel::judge_air {check args} {
    set given [Given judge_air $args]
    set language [Take $given language]
    WithRules $given rules {
        With Record form [rodtravel_core::new_Record rodt_air_form] {
            Fill Record $form [dict replace $given check $check] {rules language}
            With Record found [Call 0 "" rodtravel_core::judge_air $form $rules] {
                dict merge [Members Record $found get [Own {result at_limit missing}]] \
                    [dict create sentence [Call 0 "" rodtravel_core::Record_say $found $language] \
                        json [Call 0 "" rodtravel_core::Record_json $found $language]]
            }
        }
    }
}

# Counts of brakes: brakes, full, half, unknown, inoperative.
proc rodtravel::count {args} {
    set given [Given count $args]
    With Record tally [rodtravel_core::new_Record rodt_tally] {
        Fill Record $tally $given {}
        With Record found [Call 0 "" rodtravel_core::judge_tally $tally 0] {
            dict merge [Members Record $found get [Own {outcome whole_needed}]] \
                [Members Record $found exact [Own {share defective criterion}]] \
                [dict create sentence [Call 0 "" rodtravel_core::Record_say $found ""]]
        }
    }
}

# Which chamber it can be, by what was seen: stamp, family, port, tag, rated_stroke, diameter; rules, date, language.
proc rodtravel::identify {args} {
    set given [Given identify $args]
    WithRules $given rules {
        With Record clues [rodtravel_core::new_Record rodt_clues] {
            Fill Record $clues $given {rules date language}
            With Record found [Call 0 "" rodtravel_core::identify $clues $rules [Take $given date]] {
                dict merge [Members Record $found get [Own {count next_observation}]] \
                    [Members Record $found exact [Own {strict_limit}]] \
                    [dict create json [Call 0 "" rodtravel_core::Record_json $found [Take $given language]]]
            }
        }
    }
}

# The limit for a chamber's mark: stroke_class, rated_stroke, marked_limit; rules, date.
proc rodtravel::find_limit {mark args} {
    set given [Given find_limit $args]
    set marks [dict filter [dict remove [read_chamber $mark] rated_stroke marked_limit] value ?*]
    WithRules $given rules {
        With Record chamber [rodtravel_core::new_Record rodt_chamber] {
            Fill Record $chamber [dict merge $marks $given] {rules date}
            With Record found [Call 0 "" rodtravel_core::find_limit $chamber $rules [Take $given date]] {
                dict merge [Members Record $found get [Own {evidence law_evidence law_basis}]] \
                    [Members Record $found exact [Own {limit law_limit}]]
            }
        }
    }
}

proc rodtravel::read_chamber {mark} {
    With Record chamber [Call 0 "" rodtravel_core::chamber [In chamber $mark]] {
        dict merge [Members Record $chamber get [Own {family size spring_size stroke_class}]] \
            [Members Record $chamber exact [Own {rated_stroke marked_limit}]]
    }
}

# The steps of an inspection as they are said aloud, a list of dicts: step, title, do, see, good, defective, and row, its JSON;
# one for each row of the rule set that a step can have. rules, vehicle, towed_units, built, language.
proc rodtravel::steps {args} {
    set given [Given steps $args]
    set language [Take $given language]
    set found [list]
    WithRules $given rules {
        With Record vehicle [rodtravel_core::new_Record rodt_air_reading] {
            Fill Record $vehicle $given {rules language}
            set count [Call 0 "" rodtravel_core::step_count $rules $vehicle]
            for {set index 0} {$index < $count} {incr index} {
                set rows [Call 0 "" rodtravel_core::step_row_count $rules $vehicle $index]
                for {set row [expr {$rows ? 0 : -1}]} {$row < $rows} {incr row} {
                    lappend found [Step $rules $vehicle $index $row $language]
                    if {$row < 0} break
                }
            }
        }
    }
    return $found
}

proc rodtravel::Step {rules vehicle index row language} {
    set step [dict create step [rodtravel_core::step_name $rules $vehicle $index]]
    foreach part {title do see good defective} {
        dict set step $part [Call 0 "" rodtravel_core::step_text $rules $vehicle $index $row $part $language]
    }
    if {$row >= 0} { dict set step row [Call 0 "" rodtravel_core::step_row_json $rules $vehicle $index $row $language] }
    return $step
}

# Cubic inches: rated volume of a chamber's mark, and required volume of the reservoirs for chambers of so many.
proc rodtravel::rated_volume {mark} {
    With Record chamber [Call 0 "" rodtravel_core::chamber [In chamber $mark]] {
        Call 0 "" rodtravel_core::chamber_rated_volume $chamber
    }
}
proc rodtravel::required_volume {chambers {trailer 0}} {
    Call 0 "" rodtravel_core::reservoir_required_volume [Exact chambers $chambers] [expr {$trailer ? 1 : 0}]
}

# Seconds allowed from 85 to 100 psi.
proc rodtravel::build_up_seconds {actual required} {
    Call 0 "" rodtravel_core::reservoir_build_up_seconds [Exact actual $actual] [Exact required $required]
}

# Estimates, no figures of law: psi after one full application, and how many keep at least so many psi, up to 99; pressure,
# least, reservoir, chambers, fill (1).
proc rodtravel::Estimate {function given names} {
    set given [dict merge {fill 1} [Given estimate $given]]
    Call 0 "" rodtravel_core::reservoir_$function {*}[lmap name $names { Exact $name [Take $given $name] }]
}
proc rodtravel::estimate_application {args} { Estimate estimate_application $args {pressure reservoir chambers fill} }
proc rodtravel::estimate_applications {args} { Estimate estimate_applications $args {pressure least reservoir chambers fill} }

# Readers give an exact number, "7/4"; a day as YYYY-MM-DD.
proc rodtravel::read_length {text {unit ""}} { Call 0 "" rodtravel_core::read_length [In text $text] [In unit $unit] }
proc rodtravel::read_pressure {text} { Call 0 "" rodtravel_core::read_pressure [In text $text] }
proc rodtravel::read_seconds {text} { Call 0 "" rodtravel_core::read_seconds [In text $text] }
proc rodtravel::read_date {text} { Call 0 "" rodtravel_core::read_date [In text $text] }

# Inches as a mixed fraction, "1 3/4", of an exact number.
proc rodtravel::write_length {length} {
    lassign [Parts length $length] num den
    if {abs($num) >= 2 ** 63 || $den >= 2 ** 63} { Refuse length "the number has more digits than 64 bits hold" }
    Call 0 "" rodtravel_core::write_length $num $den
}

proc rodtravel::rule_sets {} {
    set found [list]
    for {set i 0} {$i < [rodtravel_core::rules_count]} {incr i} { lappend found [rodtravel_core::rules_id $i] }
    return $found
}

proc rodtravel::rules_json {id} {
    WithRules [dict create rules $id] rules { Call 0 "" rodtravel_core::Rules_json $rules }
}

# A carrier's own limits, the text of a table, on top of a law; `name` is then a rule set, until unload_rules.
proc rodtravel::load_rules {table name {law us-fmcsr}} {
    variable loaded
    if {[dict exists $loaded $name]} { Refuse name "a rule set of this name is loaded" }
    WithRules [dict create rules $law] rules {
        dict set loaded $name [Call 0 "" rodtravel_core::Rules_load $rules [In name $name] [In table $table]]
    }
    return $name
}

proc rodtravel::unload_rules {name} {
    variable loaded
    if {![dict exists $loaded $name]} { Refuse name "no rule set of this name is loaded" }
    rodtravel_core::delete_Rules [dict get $loaded $name]
    dict unset loaded $name
    return
}

proc rodtravel::tables_edition {} { return [rodtravel_core::tables_edition] }

# --- Exact numbers: fractions of whole numbers of any size, "-1/16" --------------------------------------------------

proc rodtravel::Parts {name value} {
    if {![regexp {^\s*(-?\d+)(?:/(\d+))?\s*$} [In $name $value] -> num den]} {
        Refuse $name "a whole number or a fraction was expected, such as -1/16"
    }
    scan $num %lld num
    if {$den eq ""} { set den 1 } else { scan $den %lld den }
    if {$den == 0} { Refuse $name "a fraction has no zero below its bar" }
    return [list $num $den]
}

proc rodtravel::Exact {name value} { return [join [Parts $name $value] /] }

proc rodtravel::Reduced {num den} {
    if {$den < 0} { lassign [list [expr {-$num}] [expr {-$den}]] num den }
    lassign [list [expr {abs($num)}] $den] a b
    while {$b} { lassign [list $b [expr {$a % $b}]] a b }
    set den [expr {$den / $a}]
    return [expr {$num / $a}][expr {$den == 1 ? "" : "/$den"}]
}

# ratio 17/8 - 2 is 1/8; +, -, *, / and <=>, which is -1, 0 or 1.
proc rodtravel::ratio {a operator b} {
    lassign [Parts number $a] n d
    lassign [Parts number $b] m e
    switch -- $operator {
        + { return [Reduced [expr {$n * $e + $m * $d}] [expr {$d * $e}]] }
        - { return [Reduced [expr {$n * $e - $m * $d}] [expr {$d * $e}]] }
        * { return [Reduced [expr {$n * $m}] [expr {$d * $e}]] }
        / {
            if {$m == 0} { Refuse number "a number was divided by zero" }
            return [Reduced [expr {$n * $e}] [expr {$d * $m}]]
        }
        <=> { return [expr {($n * $e > $m * $d) - ($n * $e < $m * $d)}] }
        default { Refuse operator "an operator is +, -, *, / or <=>" }
    }
}
