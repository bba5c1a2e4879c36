% SPDX-License-Identifier: Apache-2.0
% The rules of an id, or of a rule set.
function rules = rules(id)
  if isa(id, "rodtravel.Found") && strcmp(kind_of(id), "rules")
    rules = core_of(id);
  else
    rules = rodtravel.core.call("Rules", rodtravel.core.text("rules", id));
  end
end
