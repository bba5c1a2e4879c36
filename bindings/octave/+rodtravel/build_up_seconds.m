% SPDX-License-Identifier: Apache-2.0

% seconds = rodtravel.build_up_seconds(11136, 5568)
% Seconds allowed from 85 to 100 psi, for an actual and a required volume of the reservoirs, as an exact text.
function seconds = build_up_seconds(actual, required)
  seconds = rodtravel.core.call("core_reservoir_build_up_seconds", rodtravel.core.number(actual, "actual"), ...
                                rodtravel.core.number(required, "required"));
end
