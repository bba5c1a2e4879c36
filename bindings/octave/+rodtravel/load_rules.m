% SPDX-License-Identifier: Apache-2.0

% rules = rodtravel.load_rules(table, name, law, air_law)
% A carrier's own limits, the text of a table, on top of a law; its air checks may have another law.
function rules = load_rules(table, name, law = "us-fmcsr", air_law = [])
  of = {rodtravel.core.rules(law), rodtravel.core.text("name", name), rodtravel.core.text("table", table)};
  if !isempty(air_law)
    of{end + 1} = rodtravel.core.rules(air_law);
  end
  rules = rodtravel.Found("Rules", "rules", rodtravel.core.call("Rules_load", of{:}));
end
