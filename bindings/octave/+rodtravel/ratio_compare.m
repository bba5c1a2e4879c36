% SPDX-License-Identifier: Apache-2.0

% order = rodtravel.ratio_compare(a, b)
% -1, 0 or 1 for exact numbers as rodtravel.ratio_sum takes them.
function order = ratio_compare(a, b)
  order = double(rodtravel.core.call("core_ratio_compare", rodtravel.core.number(a), rodtravel.core.number(b)));
end
