% SPDX-License-Identifier: Apache-2.0

% rules = rodtravel.rule_set("us-fmcsr")
% A law that is compiled in, by its id.
function rules = rule_set(id)
  rules = rodtravel.Found("Rules", "rules", rodtravel.core.rules(id));
end
