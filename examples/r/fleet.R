# SPDX-License-Identifier: Apache-2.0
# From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
#
#     Rscript fleet.R [FLEET.csv]
#
# Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.
library(rodtravel)

verdicts <- c("in-adjustment", "out-of-adjustment", "inoperative", "undetermined")
script <- sub("^--file=", "", grep("^--file=", commandArgs(FALSE), value = TRUE))
path <- c(commandArgs(TRUE), file.path(dirname(script), "..", "data", "fleet.csv"))[1]

# Records that are wheel ends: an empty one, or the heading once more, is none.
rows <- read.csv(path, colClasses = "character", fileEncoding = "UTF-8-BOM", encoding = "UTF-8", check.names = FALSE)
none <- rows$chamber %in% c("", "chamber") & !grepl("[^releasd]", rows$released)
rows <- rows[!none, ]
fields <- c("chamber", "stroke_class", "rated_stroke", "released", "applied", "psi", "division", "date")
found <- judge_rows(rows[fields])

cat(sprintf("%-8s%5s%5s%6s%6s   least to spare\n", "unit", "in", "out", "dead", "open"))
for (unit in sort(unique(rows$unit_no), method = "radix")) {
  of <- found[rows$unit_no == unit, ]
  counts <- table(factor(of$verdict, verdicts))
  margins <- ratio(of$margin[!is.na(of$margin)])
  least <- Reduce(function(a, b) if (a < b) a else b, lapply(seq_along(margins), function(i) margins[i]))
  cat(sprintf("%-8s%5d%5d%6d%6d   %s\n", unit, counts[1], counts[2], counts[3], counts[4],
              if (is.null(least)) "not known" else paste(write_length(least), "in")))
}
