% SPDX-License-Identifier: Apache-2.0

% finding = rodtravel.judge("chamber", "30L", "released", "2 3/4", "applied", "5 5/16", "psi", 95)
% One wheel end, by pairs of names and values or a struct: chamber, released, applied, and what else rodt_form has;
% default_unit, decimal_comma, date_order, default_date; rules, an id or a rule set. An error tells the first text that
% cannot be read.
function finding = judge(varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  form = rodtravel.core.form(names, values);
  finding = rodtravel.Found("Finding", "finding", ...
                            rodtravel.core.call("Form_judge", form, rodtravel.core.rules(rules)));
end
