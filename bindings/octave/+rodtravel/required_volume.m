% SPDX-License-Identifier: Apache-2.0

% volume = rodtravel.required_volume(464, trailer)
% The volume that reservoirs need for chambers of so many cubic inches in all, as an exact text; trailer is true or
% false.
function volume = required_volume(chambers, trailer = false)
  if !(islogical(trailer) && isscalar(trailer))
    rodtravel.core.refuse("true or false was expected", "argument", "trailer");
  end
  chambers = rodtravel.core.number(chambers, "chambers");
  volume = rodtravel.core.call("core_reservoir_required_volume", chambers, double(trailer));
end
