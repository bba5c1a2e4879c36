% SPDX-License-Identifier: Apache-2.0

% rounded = rodtravel.to_double("-1/16")
% The nearest double of an exact number, which is no longer exact; NaN for "".
function rounded = to_double(exact)
  rounded = NaN;
  if !isempty(exact)
    parts = rodtravel.core.parts(rodtravel.core.number(exact));
    rounded = parts(1) / parts(2);
  end
end
