% SPDX-License-Identifier: Apache-2.0

% ids = rodtravel.rule_sets()
% The ids of all that is compiled in, in a cell.
function ids = rule_sets()
  count = double(rodtravel.core.call("core_rules_count"));
  ids = arrayfun(@(i) rodtravel.core.call("core_rules_id", i), 0:count - 1, "UniformOutput", false);
end
