# SPDX-License-Identifier: Apache-2.0
# What the package does; man/ says what each function takes.

judge <- function(..., rules = default_rules) {
  value_of("Finding", "finding", core("Form_judge", form_of(list(...)), rules_of(rules)))
}

judge_row <- function(..., rules = default_rules) {
  value_of("Finding", "finding", core("Form_judge_row", form_of(list(...)), rules_of(rules)))
}

# The fields of headings; "" = none. Two columns of one field are an error, one that is nearly of a field is named.
fields_of <- function(headings) {
  fields <- vapply(headings, function(heading) routine("field_of", text_of("heading", heading)), "", USE.NAMES = FALSE)
  twice <- fields[duplicated(fields) & nzchar(fields)]
  if (length(twice) > 0) refuse("two columns are of one field", field = twice[1])
  lacking <- setdiff(c("chamber", "released", "applied"), fields)
  if (length(lacking) > 0) refuse("there is no column of this field", "empty", field = lacking[1])
  for (heading in headings[!nzchar(fields)]) {
    meant <- routine("field_meant", text_of("heading", heading))
    if (nzchar(meant)) warning("the column ", heading, " is not read; is it ", meant, "?", call. = FALSE)
  }
  fields
}

judge_rows <- function(df, ..., rules = default_rules) {
  if (!is.data.frame(df)) refuse("a data frame was expected", field = "df")
  headings <- texts_of("heading", names(df))
  fields <- fields_of(headings)
  columns <- Map(texts_of, headings[nzchar(fields)], df[nzchar(fields)])
  found <- as.data.frame(core("judge_columns", columns, form_of(list(...)), rules_of(rules)))
  for (name in c("stroke", "limit", "margin")) found[[paste0(name, "_rounded")]] <- as.double(new_ratio(found[[name]]))
  found$column <- as.integer(found$column)
  attr(found, "row.names") <- attr(df, "row.names")
  found
}

judge_vehicle <- function(ends, brakes = 0L) {
  if (!is.list(ends) || is.object(ends) || length(ends) == 0) refuse("wheel ends are a list of lists", field = "ends")
  if (length(brakes) != 1 || is.na(brakes) || brakes != trunc(brakes) || abs(brakes) >= 2^31)
    refuse("a whole number was expected", field = "brakes")
  vehicle <- core("new_Vehicle")
  for (line in seq_along(ends)) add_end(vehicle, ends[[line]], line)
  core("Vehicle_judge", vehicle, as.integer(brakes))
  value_of("Vehicle", "vehicle", vehicle)
}

add_end <- function(vehicle, of, line) {
  if (!is.list(of) || is.object(of) || !inherits(of$finding, "rodtravel_finding"))
    refuse("a wheel end needs a finding", field = "finding", line = line)
  odd <- setdiff(names(of), c("position", "finding", "adjuster", "arm_length"))
  if (length(odd) > 0) refuse("a wheel end has no such member", field = odd[1], line = line)
  core("Vehicle_add", vehicle, text_of("position", of$position), unclass(of$finding)$core,
       text_of("adjuster", of$adjuster), text_of("arm_length", of$arm_length), line = line)
}

judge_air <- function(check, ..., rules = default_rules) {
  values <- list(..., check = check)
  if (is.logical(values$answer) && length(values$answer) == 1) values$answer <- if (values$answer) "yes" else "no"
  value_of("Record", "air_finding", core("judge_air", record_of("rodt_air_form", values), rules_of(rules)))
}

count_brakes <- function(...) {
  value_of("Record", "count", core("judge_tally", record_of("rodt_tally", list(...)), 0L))
}

identify_chamber <- function(..., rules = default_rules, date = NULL) {
  value_of("Record", "identification",
           core("identify", record_of("rodt_clues", list(...)), rules_of(rules), text_of("date", date)))
}

find_limit <- function(mark, ..., rules = default_rules, date = NULL) {
  chamber <- read_chamber(mark)
  own <- c("family", "size", "spring_size", "stroke_class")
  values <- utils::modifyList(sapply(own, function(name) get_text(chamber, name), simplify = FALSE), list(...))
  value_of("Record", "limit",
           core("find_limit", record_of("rodt_chamber", values), rules_of(rules), text_of("date", date)))
}

read_chamber <- function(mark) value_of("Record", "chamber", core("chamber", text_of("chamber", mark)))

read_length <- function(text, unit = "") read_ratio(core("read_length", text_of("text", text), text_of("unit", unit)))

read_pressure <- function(text) read_ratio(core("read_pressure", text_of("text", text)))

read_seconds <- function(text) read_ratio(core("read_seconds", text_of("text", text)))

read_date <- function(text) as.Date(core("read_date", text_of("text", text)))

write_length <- function(length) {
  parts <- as.numeric(strsplit(paste0(ratio_text(length), "/1"), "/", fixed = TRUE)[[1]][1:2])
  if (any(is.na(parts) | abs(parts) >= 2^53)) refuse("R holds no such number exactly", "range", field = "length")
  core("write_length", parts[1], parts[2])
}

rule_set <- function(id) {
  if (inherits(id, "rodtravel_rules")) id else value_of("Rules", "rules", core("new_Rules", text_of("rules", id)))
}

rule_sets <- function() lapply(seq_len(routine("rules_count")) - 1L, function(i) rule_set(routine("rules_id", i)))

load_rules <- function(table, name, law = default_rules, air_law = NULL) {
  air <- if (!is.null(air_law)) rules_of(air_law)
  value_of("Rules", "rules", core("Rules_load", rules_of(law), text_of("name", name), text_of("table", table), air))
}

tables_edition <- function() routine("tables_edition")
