% SPDX-License-Identifier: Apache-2.0

% error = rodtravel.last_error()
% What was refused last, a struct: status, a stable word; field, which argument; column, characters from 1, or 0; line
% of a table or number of a wheel end, or 0; text. The identifier of the error is rodtravel:STATUS.
function kept = last_error(given)
  persistent last = [];
  if nargin > 0
    last = given;
  end
  kept = last;
end
