# SPDX-License-Identifier: Apache-2.0
# Exact numbers: a vector of texts such as "-1/16", whose arithmetic is the library's.

new_ratio <- function(text) structure(as.character(text), class = "rodtravel_ratio")

# What the library wrote: "" is not given.
read_ratio <- function(text) new_ratio(if (nzchar(text)) text else NA)

# "-1/16", whatever stands for a number; refused by the name of its argument.
ratio_text <- function(value, name = "number") {
  if (inherits(value, "rodtravel_ratio")) return(unclass(value))
  if (is.character(value) || is.numeric(value) && !is.object(value)) return(texts_of(name, value))
  refuse(paste(class(value)[1], "is no exact number"), field = name)
}

ratio <- function(num, den = 1L) ratio_apply("ratio_quotient", ratio_text(num), ratio_text(den))

ratio_each <- function(call, first, second) {
  mapply(function(a, b) if (is.na(a) || is.na(b)) NA else core(call, a, b), first, second, USE.NAMES = FALSE)
}

ratio_apply <- function(call, first, second) new_ratio(ratio_each(call, first, second))

Ops.rodtravel_ratio <- function(e1, e2) {
  if (missing(e2)) return(switch(.Generic, "-" = ratio(0L) - e1, "+" = e1, refuse("this is no number for !")))
  calls <- c("+" = "sum", "-" = "difference", "*" = "product", "/" = "quotient")
  first <- ratio_text(e1)
  second <- ratio_text(e2)
  if (.Generic %in% names(calls)) return(ratio_apply(paste0("ratio_", calls[[.Generic]]), first, second))
  if (!.Generic %in% c("==", "!=", "<", "<=", ">", ">=")) refuse(paste("exact numbers have no", .Generic))
  get(.Generic, baseenv())(as.integer(ratio_each("ratio_compare", first, second)), 0L)
}

# As a decimal where it is a short one, so that 33/8 is not taken for 3 3/8.
short_decimal <- function(text) {
  if (is.na(text) || !grepl("/", text, fixed = TRUE)) return(text)
  parts <- as.numeric(strsplit(text, "/", fixed = TRUE)[[1]])
  digits <- Find(function(n) 10^n %% parts[2] == 0, 1:most_digits)
  if (is.null(digits) || abs(parts[1]) * 10^digits >= 2^53) return(text)
  size <- abs(parts[1]) * (10^digits / parts[2])
  whole <- formatC(size, width = digits + 1, flag = "0", format = "f", digits = 0)
  point <- nchar(whole) - digits
  paste0(if (parts[1] < 0) "-", substr(whole, 1, point), ".", substring(whole, point + 1))
}

as.character.rodtravel_ratio <- function(x, ...) unclass(x)

format.rodtravel_ratio <- function(x, ...) format(unclass(x), ...)

print.rodtravel_ratio <- function(x, ...) {
  print(unclass(x), quote = FALSE, ...)
  invisible(x)
}

# The nearest double, which is no longer exact.
as.double.rodtravel_ratio <- function(x, ...) {
  parts <- strsplit(sub("$", "/1", unclass(x)), "/", fixed = TRUE)
  vapply(parts, function(of) suppressWarnings(as.double(of[1]) / as.double(of[2])), 0)
}

`[.rodtravel_ratio` <- function(x, i) new_ratio(unclass(x)[i])

`[[.rodtravel_ratio` <- function(x, i) new_ratio(unclass(x)[[i]])

c.rodtravel_ratio <- function(...) new_ratio(unlist(lapply(list(...), ratio_text)))

# A column of a data frame.
as.data.frame.rodtravel_ratio <- as.data.frame.vector
