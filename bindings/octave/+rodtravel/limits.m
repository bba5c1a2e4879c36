% SPDX-License-Identifier: Apache-2.0

% rows = rodtravel.limits(rules, day)
% The rows of limits in force on a day, "" = the newest, as structs.
function rows = limits(rules, day = "")
  rows = jsondecode(rodtravel.core.call("Rules_limits_json", rodtravel.core.rules(rules), ...
                                        rodtravel.core.text("date", day))).limits;
end
