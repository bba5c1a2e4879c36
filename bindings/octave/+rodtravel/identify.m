% SPDX-License-Identifier: Apache-2.0

% which = rodtravel.identify("stamp", "24")
% Which chamber it can be, by what was seen: stamp, family, port, tag, rated_stroke, diameter; date, rules.
function which = identify(varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  at = strcmp(names, "date");
  day = rodtravel.core.text("date", [values(at), {""}]{1});
  clues = rodtravel.core.record("rodt_clues", names(!at), values(!at));
  which = rodtravel.Found("Record", "identification", ...
                          rodtravel.core.call("core_identify", clues, rodtravel.core.rules(rules), day));
end
