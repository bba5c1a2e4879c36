% SPDX-License-Identifier: Apache-2.0

% count = rodtravel.count_brakes("brakes", 6, "full", 1, "half", 1)
% Counts of brakes: brakes, full, half, unknown, inoperative.
function count = count_brakes(varargin)
  [names, values] = rodtravel.core.pairs(varargin);
  tally = rodtravel.core.record("rodt_tally", names, values);
  count = rodtravel.Found("Record", "count", rodtravel.core.call("core_judge_tally", tally, 0));
end
