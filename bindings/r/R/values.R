# SPDX-License-Identifier: Apache-2.0
# What the library found: a list that is not changed, and == where its JSON is the same.

value_of <- function(kind, class, pointer) {
  json <- if (kind == "Rules") core("Rules_json", pointer) else core(paste0(kind, "_json"), pointer, "")
  structure(list(kind = kind, core = pointer, json = json),
            class = c(paste0("rodtravel_", class), "rodtravel_value"))
}

exact_members <- list(
  rodtravel_finding = c("released", "applied", "applied_stroke", "limit", "law_limit", "long_limit", "margin",
                        "division", "probability_over", "pressure", "pressure_after"),
  rodtravel_vehicle = c("share", "worst_share", "defective"),
  rodtravel_count = c("share", "worst_share", "known_share", "defective", "criterion"),
  rodtravel_identification = "strict_limit", rodtravel_limit = c("limit", "law_limit"),
  rodtravel_chamber = c("rated_stroke", "marked_limit"))
whole_members <- list(
  rodtravel_vehicle = c("brakes", "in_adjustment", "out_of_adjustment", "inoperative", "undetermined",
                        "mismatched_axles"),
  rodtravel_count = c("brakes", "whole_needed"))
vehicle_paths <- c(outcome = "count.outcome", share = "count.share", worst_share = "count.worst_share",
                   defective = "count.defective", brakes = "count.brakes")

method <- function(x, name, ...) {
  of <- unclass(x)
  core(paste0(of$kind, "_", name), of$core, ...)
}

get_text <- function(x, path) method(x, "get", text_of("path", path))

exact <- function(x, path) read_ratio(method(x, "exact", text_of("path", path)))

json <- function(x, language = "") {
  if (language == "" || inherits(x, "rodtravel_rules")) unclass(x)$json
  else method(x, "json", text_of("language", language))
}

sentence <- function(x, language = "") method(x, "say", text_of("language", language))

spoken <- function(x, language = "") method(x, "spoken", text_of("language", language))

sentences <- function(x, language = "") {
  all <- method(x, "sentences", text_of("language", language))
  if (is.null(all)) character() else strsplit(all, "\n", fixed = TRUE)[[1]]
}

# Of judge_row: the first text that could not be read, or NULL.
row_error <- function(x) {
  status <- method(x, "row_status")
  if (status == "ok") return(NULL)
  refusal(method(x, "row_text"), status, method(x, "row_field"), method(x, "row_column"))
}

# Members that are more than a text, by class.
special_member <- function(x, name) {
  switch(paste0(class(x)[1], "$", name),
         "rodtravel_finding$reasons" = strsplit(get_text(x, name), ", ", fixed = TRUE)[[1]],
         "rodtravel_finding$defect" = method(x, "defect"),
         "rodtravel_finding$source" = method(x, "source"),
         "rodtravel_finding$error" = row_error(x),
         "rodtravel_finding$day" = as.Date(text_or_na(x, name)),
         "rodtravel_air_finding$at_limit" = get_text(x, name) == "true",
         "rodtravel_identification$candidates" = as.list(x)$candidates,
         "rodtravel_rules$id" = method(x, "id"),
         text_or_na(x, name))
}

text_or_na <- function(x, name) {
  text <- get_text(x, name)
  if (nzchar(text)) text else NA_character_
}

`$.rodtravel_value` <- function(x, name) {
  path <- if (inherits(x, "rodtravel_vehicle") && name %in% names(vehicle_paths)) vehicle_paths[[name]] else name
  if (name %in% exact_members[[class(x)[1]]]) return(exact(x, path))
  if (name %in% whole_members[[class(x)[1]]]) return(as.integer(get_text(x, path)))
  if (path != name) get_text(x, path) else special_member(x, name)
}

`[[.rodtravel_value` <- function(x, i) `$.rodtravel_value`(x, text_of("path", i))

unchanged <- function(x, i, ..., value) refuse("what was found is not changed")
`$<-.rodtravel_value` <- function(x, name, value) unchanged(x)
`[[<-.rodtravel_value` <- unchanged
`[<-.rodtravel_value` <- unchanged

Ops.rodtravel_value <- function(e1, e2) {
  same <- identical(class(e1), class(e2)) && identical(unclass(e1)$json, unclass(e2)$json)
  switch(.Generic, "==" = same, "!=" = !same, refuse(paste("what was found has no", .Generic)))
}

as.list.rodtravel_value <- function(x, ...) json_read(unclass(x)$json)

as.character.rodtravel_value <- function(x, ...) {
  switch(class(x)[1],
         rodtravel_rules = x$id,
         rodtravel_chamber = paste(setdiff(c(x$family, x$size, x$stroke_class), c("unknown", NA)), collapse = " "),
         rodtravel_identification = , rodtravel_limit = json(x),
         sentence(x))
}

format.rodtravel_value <- function(x, ...) as.character(x)

print.rodtravel_value <- function(x, ...) {
  cat(format(x), "\n", sep = "")
  invisible(x)
}

str.rodtravel_value <- function(object, ...) cat(" <", class(object)[1], "> ", format(object), "\n", sep = "")

limits <- function(rules, day = NULL) json_read(method(rules, "limits_json", text_of("date", day)))$limits

air_limits <- function(rules, language = "") {
  lapply(seq_len(method(rules, "air_limit_count")) - 1L,
         function(row) json_read(method(rules, "air_limit_json", row, text_of("language", language))))
}
