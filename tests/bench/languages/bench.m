% SPDX-License-Identifier: Apache-2.0
% bench.m call|lists|column COUNT (../languages.py)
[what, count] = argv(){end - 1:end};
count = str2double(count);
if strcmp(what, "call")
  for i = 1:count
    found = rodtravel.judge("chamber", "30L", "released", "2 3/4", "applied", "5 5/16", "psi", "95");
    found.verdict;
  end
  exit
end
kinds = arrayfun(@(i) sprintf("%d %d/16", 4 + mod(i, 2), 1 + 2 * i), 0:7, "UniformOutput", false);
applied = kinds(1 + mod(0:count - 1, 8));
every = @(text) repmat({text}, 1, count);
columns = struct("chamber", {every("30L")}, "released", {every("2 3/4")}, "applied", {applied}, "psi", {every("95")});
if strcmp(what, "column")
  rodtravel.judge_columns(columns);
end
