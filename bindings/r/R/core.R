# SPDX-License-Identifier: Apache-2.0
# Values of R as texts of the library, and its answers as values of R.

# Arguments that are about a whole form, and what they are called in C.
form_wide <- c(default_unit = "style.unit", decimal_comma = "style.decimal_comma", date_order = "date_order",
               default_date = "default_day")
default_rules <- "us-fmcsr"
most_digits <- 9 # after the point; a number with more is written as a fraction

# A condition of class rodtravel_error.
refusal <- function(text, status = "argument", field = "", column = 0L, line = 0L) {
  where <- c(field, if (line > 0) paste("line", line), if (column > 0) paste("column", column))
  message <- paste(c(if (any(nzchar(where))) paste(where[nzchar(where)], collapse = ", "), text), collapse = ": ")
  structure(class = c("rodtravel_error", "error", "condition"),
            list(message = message, call = NULL, status = status, field = field, column = as.integer(column),
                 line = as.integer(line), text = text))
}

refuse <- function(...) stop(refusal(...))

# A routine of the library; what SWIG adds at the end is not given.
routine <- function(name, ...) {
  symbol <- get(paste0("C_R_swig_", name))
  given <- list(symbol, ...)
  found <- do.call(.Call, c(given, vector("list", symbol$numParameters - length(given) + 1)))
  if (is.character(found)) Encoding(found) <- "UTF-8"
  found
}

# Calls it and refuses what it refused. The line is that of a wheel end, the argument one that C calls by another name.
core <- function(name, ..., line = NULL, argument = NULL) {
  found <- routine(name, ...)
  status <- routine("error_status")
  if (status != "ok") {
    refuse(routine("error_text"), status, if (is.null(argument)) routine("error_field") else argument,
           routine("error_column"), if (is.null(line)) routine("error_line") else line)
  }
  found
}

# Doubles that are whole as texts; others are refused.
whole_text <- function(name, value) {
  odd <- which(!is.na(value) & (is.infinite(value) | value != trunc(value) | abs(value) >= 2^53))
  if (length(odd) > 0) {
    why <- "is a binary float, which is only nearly what was read; give it as a text"
    refuse(paste(format(value[odd[1]], digits = 15), why), field = name, line = if (length(value) > 1) odd[1] else 0L)
  }
  ifelse(is.nan(value) | is.na(value), NA_character_, format(value, scientific = FALSE, trim = TRUE))
}

# Texts of a vector; NA stays, and means that nothing is given.
texts_of <- function(name, value) {
  if (inherits(value, "AsIs")) class(value) <- setdiff(class(value), "AsIs")
  if (inherits(value, "rodtravel_ratio")) return(vapply(unclass(value), short_decimal, "", USE.NAMES = FALSE))
  if (inherits(value, "Date")) return(format(value, "%Y-%m-%d"))
  if (is.factor(value)) value <- as.character(value)
  if (is.logical(value)) return(ifelse(is.na(value), NA_character_, ifelse(value, "true", "false")))
  if (is.object(value)) refuse(paste(class(value)[1], "is no text, exact number or day"), field = name)
  if (is.integer(value)) return(as.character(value))
  if (is.double(value)) return(whole_text(name, value))
  if (!is.character(value)) refuse(paste(typeof(value), "is no text, exact number or day"), field = name)
  utf8_of(name, value)
}

# What is marked as another encoding, or is in that of the locale, becomes UTF-8.
utf8_of <- function(name, value) {
  marked <- Encoding(value) == "latin1"
  value[marked] <- enc2utf8(value[marked])
  odd <- which(!is.na(value) & !validUTF8(value))
  value[odd] <- iconv(value[odd], "", "UTF-8")
  lost <- odd[is.na(value[odd])]
  if (length(lost) > 0) {
    refuse("the text is not in the encoding that it names", field = name, line = if (length(value) > 1) lost[1] else 0L)
  }
  Encoding(value) <- "UTF-8"
  value
}

# One text; "" where nothing is given.
text_of <- function(name, value) {
  if (is.null(value)) return("")
  if (length(value) != 1) refuse("one value was expected; judge_rows takes columns", field = name)
  text <- texts_of(name, value)
  if (is.na(text)) "" else text
}

argument_names <- function(values) {
  if (length(values) > 0 && (is.null(names(values)) || any(!nzchar(names(values)))))
    refuse("give arguments by their names")
  names(values)
}

record_of <- function(name, values) {
  made <- core("new_Record", name)
  for (path in argument_names(values))
    if (!is.null(values[[path]])) core("Record_set", made, path, text_of(path, values[[path]]))
  made
}

form_of <- function(values) {
  made <- core("new_Form")
  for (name in argument_names(values)) {
    path <- unname(form_wide[name])
    if (!is.null(values[[name]]))
      core("Form_set", made, if (is.na(path)) name else path, text_of(name, values[[name]]),
           argument = if (!is.na(path)) name)
  }
  made
}

rules_of <- function(rules) {
  if (inherits(rules, "rodtravel_rules")) return(unclass(rules)$core)
  core("new_Rules", text_of("rules", rules))
}
