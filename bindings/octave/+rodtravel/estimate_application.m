% SPDX-License-Identifier: Apache-2.0

% psi = rodtravel.estimate_application(105, 5568, 464, 1)
% An estimate, no figure of law: psi after one full application, engine off, as an exact text. Of psi before, volumes of
% reservoir and chambers in cubic inches, and how full the chambers are, 0 to 1; 1 = the worst case.
function psi = estimate_application(pressure, reservoir, chambers, fill = 1)
  psi = rodtravel.core.call("core_reservoir_estimate_application", rodtravel.core.number(pressure, "pressure"), ...
                            rodtravel.core.number(reservoir, "reservoir"), ...
                            rodtravel.core.number(chambers, "chambers"), rodtravel.core.number(fill, "fill"));
end
