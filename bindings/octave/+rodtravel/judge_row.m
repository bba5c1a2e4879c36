% SPDX-License-Identifier: Apache-2.0

% finding = rodtravel.judge_row(...)
% As judge, for a row of a file, which no text stops: finding.error says what could not be read, [] = all could.
function finding = judge_row(varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  form = rodtravel.core.form(names, values);
  finding = rodtravel.Found("Finding", "finding", ...
                            rodtravel.core.call("Form_judge_row", form, rodtravel.core.rules(rules)));
end
