% SPDX-License-Identifier: Apache-2.0

% finding = rodtravel.judge_air("warning", "pressure", 62)
% A check of the air system, by the names of rodt_air_form; rules as of judge.
function finding = judge_air(check, varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  at = strcmp(names, "answer") & cellfun(@islogical, values);
  if any(at)
    values(at) = {"no", "yes"}(1 + values{find(at, 1)});
  end
  form = rodtravel.core.record("rodt_air_form", [{"check"}, names], [{check}, values]);
  finding = rodtravel.Found("Record", "air_finding", ...
                            rodtravel.core.call("core_judge_air", form, rodtravel.core.rules(rules)));
end
