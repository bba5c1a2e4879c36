% SPDX-License-Identifier: Apache-2.0

% count = rodtravel.estimate_applications(105, 60, 5568, 464, 1)
% An estimate, no figure of law: how many full applications keep at least so many psi, at most 99. Of psi before and
% least; the rest as of rodtravel.estimate_application.
function count = estimate_applications(pressure, least, reservoir, chambers, fill = 1)
  count = rodtravel.core.call("core_reservoir_estimate_applications", rodtravel.core.number(pressure, "pressure"), ...
                              rodtravel.core.number(least, "least"), rodtravel.core.number(reservoir, "reservoir"), ...
                              rodtravel.core.number(chambers, "chambers"), rodtravel.core.number(fill, "fill"));
  count = double(count);
end
