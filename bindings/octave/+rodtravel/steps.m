% SPDX-License-Identifier: Apache-2.0

% steps = rodtravel.steps("vehicle", "single", "rules", "ca-on", "language", "fr")
% The steps of an inspection as they are said aloud, for a vehicle, by the names of rodt_air_reading: structs with step,
% row, title, do, see, good and defective, one for each row of the rule set that a step can have; row is [] without one.
function steps = steps(varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  at = strcmp(names, "language");
  language = rodtravel.core.text("language", [values(at), {""}]{1});
  on = {rodtravel.core.rules(rules), rodtravel.core.record("rodt_air_reading", names(!at), values(!at))};
  steps = struct("step", {}, "row", {}, "title", {}, "do", {}, "see", {}, "good", {}, "defective", {});
  for index = 0:double(rodtravel.core.call("core_step_count", on{:})) - 1
    rows = double(rodtravel.core.call("core_step_row_count", on{:}, index));
    for row = [0:rows - 1, -1(rows == 0)]
      steps(end + 1) = one_step([on, {index}], row, language);
    end
  end
end

function step = one_step(of, row, language)
  step = struct("step", rodtravel.core.call("core_step_name", of{:}), "row", []);
  if row >= 0
    step.row = jsondecode(rodtravel.core.call("core_step_row_json", of{:}, row, language));
  end
  for part = {"title", "do", "see", "good", "defective"}
    step.(part{1}) = rodtravel.core.call("core_step_text", of{:}, row, part{1}, language);
  end
end
