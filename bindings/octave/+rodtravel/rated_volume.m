% SPDX-License-Identifier: Apache-2.0

% volume = rodtravel.rated_volume("30")
% The rated volume of a chamber's mark, in cubic inches as an exact text.
function volume = rated_volume(mark)
  volume = rodtravel.core.call("core_chamber_rated_volume", ...
                               rodtravel.core.call("core_chamber", rodtravel.core.text("chamber", mark)));
end
