% SPDX-License-Identifier: Apache-2.0
% A form of a wheel end.
function form = form(names, values)
  wide = struct("default_unit", "style.unit", "decimal_comma", "style.decimal_comma", "date_order", "date_order", ...
                "default_date", "default_day");
  form = rodtravel.core.call("Form");
  for i = 1:numel(names)
    if isfield(wide, names{i})
      rodtravel.core.named(names{i}, 0, "Form_set", form, wide.(names{i}), rodtravel.core.text(names{i}, values{i}));
    else
      rodtravel.core.call("Form_set", form, names{i}, rodtravel.core.text(names{i}, values{i}));
    end
  end
end
