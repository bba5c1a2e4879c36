% SPDX-License-Identifier: Apache-2.0
% Names and values of arguments that are pairs, or one struct; and what is called rules.
function [names, values, rules] = pairs(given, rules = "us-fmcsr")
  if numel(given) == 1 && isstruct(given{1}) && isscalar(given{1})
    names = fieldnames(given{1})';
    values = struct2cell(given{1})';
  else
    names = given(1:2:end);
    values = given(2:2:end);
  end
  if numel(names) != numel(values) || !iscellstr(names)
    rodtravel.core.refuse("arguments are pairs of a name and a value, or a struct");
  end
  at = strcmp(names, "rules");
  if any(at)
    rules = values{find(at, 1)};
  end
  names = names(!at);
  values = values(!at);
end
