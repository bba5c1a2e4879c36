% SPDX-License-Identifier: Apache-2.0

% exact = rodtravel.ratio_difference(a, b)
% a - b of exact texts such as "-1/16", whole numbers or structs of num and den; exact, or refused as range.
function exact = ratio_difference(a, b)
  exact = rodtravel.core.call("core_ratio_difference", rodtravel.core.number(a), rodtravel.core.number(b));
end
