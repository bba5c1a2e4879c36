% SPDX-License-Identifier: Apache-2.0
% A form of a wheel end.
function form = form(names, values)
  persistent wide = struct("default_unit", "style.unit", "decimal_comma", "style.decimal_comma", ...
                           "date_order", "date_order", "default_date", "default_day");
  form = rodtravel.core.call("Form");
  for i = 1:numel(names)
    value = values{i};
    if !(ischar(value) && isrow(value) && all(value)) % most are texts, and each call of Octave costs
      value = rodtravel.core.text(names{i}, value);
    end
    if isfield(wide, names{i})
      rodtravel.core.named(names{i}, 0, "Form_set", form, wide.(names{i}), value);
    else
      rodtravel.core.call("Form_set", form, names{i}, value);
    end
  end
end
