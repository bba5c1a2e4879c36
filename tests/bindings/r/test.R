# SPDX-License-Identifier: Apache-2.0
# What the package finds and refuses. Prints TAP.
library(rodtravel)

count <- failed <- 0

ok <- function(right, what, note = "") {
  count <<- count + 1
  failed <<- failed + !isTRUE(right)
  cat(if (!isTRUE(right)) "not ", "ok ", count, " - ", what, "\n", if (!isTRUE(right)) c("# ", note, "\n"), sep = "")
}

is <- function(found, wanted, what) {
  ok(identical(found, wanted), what, paste(c("found", deparse(found), "wanted", deparse(wanted)), collapse = " "))
}

# Status, field, column and line of what a call must refuse.
refused <- function(wanted, call) {
  error <- tryCatch({
    call
    NULL
  }, rodtravel_error = identity)
  field <- if (is.null(error) || !nzchar(error$field)) "-" else error$field
  found <- if (is.null(error)) "nothing" else paste(error$status, field, error$column, error$line)
  is(found, wanted, paste("refused:", wanted))
}

text <- as.character
judged <- function(..., call = judge) {
  do.call(call, utils::modifyList(list(chamber = "30L", released = "2 3/4", applied = "5 5/16", psi = 95), list(...)))
}

# --- A wheel end ----------------------------------------------------------------------------------------------------

over <- judged()
is(over$verdict, "out-of-adjustment", "the verdict")
is(text(over$margin), "-1/16", "the margin is exact")
is(text(c(over$applied_stroke, over$limit)), c("41/16", "5/2"), "stroke and limit")
is(over$reasons, "over-limit", "reasons")
is(text(over), "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16", "a finding as a text")
is(utils::capture.output(print(over)), text(over), "printed")
is(text(over$long_limit), NA_character_, "what is not given is NA")
is(over$defect, "half", "the defect")
ok(startsWith(over$source, "49 CFR Part 393, 393.47"), "the source")
is(get_text(over, "law_row.published"), "2 1/2", "a member by its path")
ok(grepl("dépasse la limite", sentences(over, "fr")), "a reason in French")
ok(grepl("límite", sentence(over, "es")), "the finding in Spanish")
ok(startsWith(spoken(over), "Released 2 3/4"), "what is said aloud")
is(as.list(over)$limit, "2 1/2", "as a list")
ok(over == judged() && over != judged(applied = "5"), "equal by value")
is(judged(division = "1/8")$proof, "not-resolved", "what the division proves")
is(judged(date = as.Date("2024-05-06"))$day, as.Date("2024-05-06"), "a day in and out")
row <- judged(applied = "2-Jan", call = judge_row)
is(c(row$verdict, row$error$status, row$error$field), c("undetermined", "date-cell", "applied"), "a row")
is(judged(call = judge_row)$error, NULL, "a sound row")
ok(judged(call = judge_row) == over, "is judged as by judge")
is(judge(chamber = "30", released = "50,8", applied = "104,8", default_unit = "mm", decimal_comma = TRUE)$verdict,
   "out-of-adjustment", "a form in millimetres with decimal commas")

# --- A data frame ---------------------------------------------------------------------------------------------------

frame <- data.frame(`Unit No` = 1:4, Chamber = factor(c("30L", "30L", "30", NA)),
                    Released = c("2 3/4", "2 3/4", "2", "2"), Applied = c("5 5/16", "2-Jan", NA, "4"),
                    PSI = c(95L, 95L, NA, 90L), check.names = FALSE, row.names = c("a", "b", "c", "d"))
found <- judge_rows(frame)
is(found$verdict, c("out-of-adjustment", rep("undetermined", 3)), "verdicts of rows")
is(found$margin, c("-1/16", NA, NA, NA), "exact margins")
is(found$margin_rounded, c(-0.0625, NA, NA, NA), "rounded margins")
is(found$status, c(NA, "date-cell", "empty", "empty"), "what could not be read")
is(found$field, c(NA, "applied", "applied", "chamber"), "and where")
is(found$column, c(NA, 1L, NA, NA), "and its column")
is(row.names(found), row.names(frame), "names of rows stay")
is(nrow(judge_rows(frame[0, ])), 0L, "no rows")
is(judge_rows(data.frame(chamber = "30", released = "50,8", applied = "104,8"), default_unit = "mm",
              decimal_comma = TRUE)$verdict, "out-of-adjustment", "what holds for every row")
is(judge_rows(data.frame(chamber = 30, released = ratio(17, 8), applied = I("4")))$stroke, "15/8", "numbers in columns")
warned <- tryCatch(judge_rows(cbind(frame[-5], `psi reading` = 95)), warning = conditionMessage)
is(warned, "the column psi reading is not read; is it psi?", "a column that is nearly of a field")
refused("argument applied 0 0", judge_rows(cbind(frame, applied = "4")))
refused("empty released 0 0", judge_rows(frame[-3]))
refused("argument df 0 0", judge_rows(as.list(frame)))
refused("argument psi 0 2", judge_rows(data.frame(chamber = "30", released = "2", applied = "4", psi = c(95, 95.5))))
refused("argument Applied 0 0", judge_rows(data.frame(chamber = "30", released = "2", Applied = I(list("4")))))
refused("unknown-rules - 0 0", judge_rows(frame, rules = "atlantis"))

# --- The rest of the job --------------------------------------------------------------------------------------------

ends <- list(list(position = "1L", finding = over, adjuster = "automatic", arm_length = 6),
             list(position = "1R", finding = judged(applied = "5")))
vehicle <- judge_vehicle(ends)
is(c(vehicle$outcome, text(vehicle$share)), c("ambiguous", "1/4"), "half a brake of two")
is(vehicle$out_of_adjustment + vehicle$in_adjustment, 2L, "counts are numbers")
is(as.list(vehicle)$wheel_ends[[1]]$advice_code, "find-fault", "what to do next")
is(judge_vehicle(ends[1], brakes = 10)$outcome, "undetermined", "brakes that were not measured")
is(judge_air("warning", pressure = 62, rules = "us-cdl")$result, "good", "the low-pressure warning")
is(judge_air("warning", pressure = "60", rules = "us-newvehicle")$at_limit, TRUE, "at the edge")
is(count_brakes(brakes = 6, full = 1, half = 1)$outcome, "ambiguous", "the chart of whole brakes")
which <- identify_chamber(stamp = "24")
is(c(text(which$strict_limit), which$next_observation), c("7/4", "long-sign"), "which chamber it can be")
ok(length(which$candidates) > 2, "candidates")
is(c(read_chamber("30LS")$size, read_chamber("30LS")$stroke_class), c("30", "long"), "a mark")
is(text(read_chamber("30LS")), "clamp 30 long", "as a text")
is(text(find_limit("36", date = as.Date("2021-10-13"))$limit), "9/4", "a limit on a day")
is(text(find_limit("24", rated_stroke = 3)$limit), "5/2", "with a mark more")
ok(length(rule_sets()) > 5 && length(limits(rule_set("us-fmcsr"))) > 30
   && length(air_limits(rule_set("us-cdl"), "fr")) > 3, "rules")
kept <- judged(applied = "5 1/4", rules = load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard"))
invisible(gc())
ok("over-own-limit" %in% kept$reasons && kept$limit < kept$law_limit && kept$rules == "yard", "a carrier's own limit")

# --- Steps and reservoirs -------------------------------------------------------------------------------------------

said <- steps(rules = "ca-on", vehicle = "single")
is(c(said[[4]]$step, said[[4]]$row$check), c("warning", "warning"), "a step and its row")
ok(grepl("below 55 psi", said[[4]]$defective), "its figures")
is(unique(lapply(said, names)), list(c("step", "row", "title", "do", "see", "good", "defective")), "what a step has")
ok(any(vapply(said, function(step) is.null(step$row), NA)), "a step without a row")
ok(steps(rules = "ca-on", language = "fr")[[1]]$title != said[[1]]$title, "in French")
ok(length(steps(rules = rule_set("ca-on"), vehicle = "combination")) > length(said), "a combination has more steps")
refused("syntax vehicle 1 0", steps(vehicle = "sledge"))
refused("argument colour 0 0", steps(colour = "red"))
refused("argument language 0 0", steps(language = "xx"))
refused("argument - 0 0", steps("single"))
refused("unknown-rules - 0 0", steps(rules = "atlantis"))
is(text(rated_volume("30")), "89", "the volume of a chamber")
is(text(required_volume(4 * rated_volume("30") + 54 * 2)), "5568", "of its reservoirs")
is(text(required_volume("464", trailer = TRUE)), "3712", "of a trailer's")
is(text(build_up_seconds(11136, ratio(5568))), "50", "seconds")
is(text(estimate_application(105, 5568, 464L)), "12453/130", "an estimate")
is(text(estimate_application(105, 5568, 464, fill = 0)), "105", "of chambers that take nothing")
is(estimate_applications(105, least = 60, reservoir = 5568, chambers = 464), 5L, "another")
refused("argument chambers 0 0", required_volume(-1))
refused("argument chambers 0 0", required_volume(1.5))
refused("argument chambers 0 0", required_volume(c(1, 2)))
refused("argument chambers 0 0", required_volume(NA_character_))
refused("argument trailer 0 0", required_volume(464, trailer = "yes"))
refused("argument volumes 0 0", build_up_seconds(1, 0))
refused("argument required 0 0", build_up_seconds(1, Sys.Date()))
refused("syntax number 0 0", build_up_seconds("1.5", 1))
refused("argument estimate 0 0", estimate_application(1, 1, 1, fill = 2))
refused("argument least 0 0", estimate_applications(1, NULL, 1, 1))
refused("unknown-chamber chamber 0 0", rated_volume("bolt A"))

# --- Numbers --------------------------------------------------------------------------------------------------------

for (applied in list("4 1/8", "4.125", "4\u215b", ratio(33, 8), ratio("33/8")))
  is(text(judge(chamber = "30", released = "2 1/8", applied = applied)$applied_stroke), "2", class(applied))
is(text(judge(chamber = "30", released = "2 1/8", applied = 4)$applied_stroke), "15/8", "a whole double")
is(text(judge(chamber = "30", released = "2 1/8", applied = 4L)$applied_stroke), "15/8", "an integer")
is(text(read_length("44.45 mm")), "7/4", "millimetres")
is(text(read_length("44.45", unit = "mm")), "7/4", "by their unit")
is(text(read_length(ratio(1, 512))), "1/512", "a number with nine decimal digits")
is(text(c(read_pressure("95"), read_seconds("1:30"))), c("95", "90"), "readers")
is(read_date("14-OCT-21"), as.Date("2021-10-14"), "a day")
is(write_length(ratio(-7, 4)), "-1 3/4", "back to a text")
half <- ratio(2, -4)
is(text(((half + "1/3") - 2) * half / 5), "13/60", "arithmetic")
is(text(-half), "1/2", "negation")
ok(half == ratio(-1, 2) && half < "-1/3" && half != 1 && !(half >= 0), "comparison")
is(text(ratio(1:3, 2)[2:3] + 1), c("2", "5/2"), "vectors")
is(as.numeric(ratio(c("1/8", NA, "-2"))), c(0.125, NA, -2), "as doubles")
is(text(ratio("9223372036854775807")), "9223372036854775807", "64 bits")
refused("range - 0 0", ratio("9223372036854775807") * 2)
refused("argument - 0 0", half / 0)
refused("argument number 0 0", half + 0.5)
refused("syntax number 0 0", ratio("1.5"))
refused("argument - 0 0", half^2)

# --- What is refused ------------------------------------------------------------------------------------------------

for (float in list(4.125, 1e300, Inf))
  refused("argument applied 0 0", judged(applied = float))
ok(grepl("binary float", tryCatch(judged(applied = 4.125), rodtravel_error = conditionMessage)), "says why")
refused("date-cell applied 1 0", judged(applied = "2-Jan"))
refused("syntax applied 5 0", judged(applied = "4 1/"))
refused("negative applied 1 0", judged(applied = ratio(-1, 8)))
refused("empty applied 0 0", judge(chamber = "30", released = "2", applied = NULL))
refused("empty applied 0 0", judged(applied = NA))
refused("empty applied 0 0", judged(applied = NaN))
refused("argument colour 0 0", judged(colour = "red"))
refused("argument applied 0 0", judged(applied = "4\xff"))
refused("argument applied 0 2", judge_rows(data.frame(chamber = "30", released = "2", applied = c("4", "4\xff"))))
latin <- "4\xbd"
Encoding(latin) <- "latin1"
is(text(judged(applied = latin)$applied), "9/2", "a text in Latin-1")
refused("argument applied 0 0", judged(applied = c("4", "5")))
refused("argument applied 0 0", judged(applied = 4i))
refused("argument applied 0 0", judged(applied = Sys.time()))
refused("argument - 0 0", judge("30L", "2 3/4"))
refused("syntax default_unit 1 0", judged(default_unit = "ells"))
refused("unknown-rules - 0 0", judged(rules = "atlantis"))
refused("unknown-rules - 0 0", rule_set(NULL))
refused("argument unit 0 0", read_length("3", unit = "ells"))
refused("syntax - 3 0", read_length("4\u00bd\u00bc"))
refused("argument text 0 0", read_length(1.75))
refused("range length 0 0", write_length("9223372036854775807"))
refused("laxer limit 19 2", load_rules("family,size,class,limit\nclamp,30,standard,3\n", "yard"))
refused("argument ends 0 0", judge_vehicle("1L"))
refused("argument ends 0 0", judge_vehicle(list()))
refused("argument finding 0 1", judge_vehicle(list(list(position = "1L"))))
refused("argument colour 0 1", judge_vehicle(list(c(ends[[1]], colour = "red"))))
refused("syntax position 1 2", judge_vehicle(list(ends[[1]], utils::modifyList(ends[[2]], list(position = "left")))))
refused("argument brakes 0 0", judge_vehicle(ends, brakes = 1.5))
refused("argument brakes 0 0", judge_vehicle(ends, brakes = -1))
refused("argument brakes 0 0", judge_vehicle(ends, brakes = 2^40))
refused("syntax pressure 1 0", judge_air("warning", pressure = "high"))
refused("argument tally 0 0", count_brakes(brakes = 1, full = 2))
refused("argument language 0 0", json(over, "xx"))
refused("argument colour 0 0", over$colour)
refused("argument verdict 0 0", exact(over, "verdict"))
refused("argument - 0 0", over$verdict <- "in-adjustment")
refused("argument - 0 0", over[["verdict"]] <- "in-adjustment")
refused("argument - 0 0", over + 1)
is(tryCatch(judged(applied = "2-Jan"), error = conditionMessage),
   "applied, column 1: this is a date; a spreadsheet makes dates of fractions", "an error as a text")
ok(judged() == over, "after an error all is well")

# --- Objects of C that the library did not make, or that a workspace kept -------------------------------------------

barred <- function(what, call) {
  ok(grepl("holds nothing", tryCatch({
    call
    "nothing"
  }, error = conditionMessage)), what)
}
again <- unserialize(serialize(over, NULL))
ok(again == over && json(again) == json(over), "JSON is kept")
barred("a finding that was read back", again$verdict)
barred("rules that were read back", judged(rules = unserialize(serialize(rule_set("us-fmcsr"), NULL))))
barred("a finding of a vehicle", judge_vehicle(list(list(position = "1L", finding = again))))
forged <- structure(list(kind = "Finding", core = unclass(vehicle)$core, json = ""), class = class(over))
barred("a vehicle in place of a finding", forged$verdict)
forged <- structure(list(kind = "Finding", core = "finding", json = ""), class = class(over))
barred("a text in place of a finding", forged$verdict)

# --- Documentation --------------------------------------------------------------------------------------------------

quiet <- function(checked) length(utils::capture.output(print(checked)))
is(quiet(tools::undoc("rodtravel")), 0L, "every name has a page")
is(quiet(tools::codoc("rodtravel")), 0L, "pages have the arguments of the code")
readme <- commandArgs(TRUE)[1]
page <- paste(readLines(readme, encoding = "UTF-8"), collapse = "\n")
runs <- regmatches(page, gregexpr("(?s)```r\n.*?```", page, perl = TRUE))[[1]]
is(length(runs), 3L, "three runs")
for (run in runs) {
  lines <- strsplit(gsub("```r?", "", run), "\n")[[1]]
  here <- new.env()
  parsed <- parse(text = lines, keep.source = TRUE, encoding = "UTF-8")
  places <- utils::getSrcref(parsed)
  for (i in seq_along(parsed)) {
    value <- eval(parsed[[i]], here)
    wanted <- regmatches(lines[places[[i]][3]], regexpr("\\S\\s+# .*$", lines[places[[i]][3]]))
    if (length(wanted) == 1)
      is(paste(as.character(value), collapse = " "), sub("^\\S\\s+# ", "", wanted), paste("a run of the README:", i))
  }
}

cat("1..", count, "\n", sep = "")
quit(status = as.integer(failed > 0))
