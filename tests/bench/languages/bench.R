# SPDX-License-Identifier: Apache-2.0
# bench.R call|lists|column COUNT (../languages.py)
library(rodtravel)

given <- commandArgs(trailingOnly = TRUE)
count <- as.integer(given[2])
if (given[1] == "call") {
  for (i in seq_len(count)) judge(chamber = "30L", released = "2 3/4", applied = "5 5/16", psi = "95")$verdict
  quit()
}
i <- seq_len(count)
rows <- data.frame(chamber = rep("30L", count), released = rep("2 3/4", count),
                   applied = paste0(4 + i %% 2, " ", 1 + 2 * (i %% 8), "/16"), psi = rep("95", count))
if (given[1] == "column") invisible(judge_rows(rows))
