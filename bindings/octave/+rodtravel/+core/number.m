% SPDX-License-Identifier: Apache-2.0
% The text of an exact number, refused by the name of its argument.
function text = number(value, name = "number")
  if isstruct(value) && isscalar(value) && isequal(sort(fieldnames(value)), {"den"; "num"})
    text = rodtravel.ratio_quotient(value.num, value.den);
  else
    text = rodtravel.core.text(name, value);
  end
end
