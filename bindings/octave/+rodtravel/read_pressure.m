% SPDX-License-Identifier: Apache-2.0

% psi = rodtravel.read_pressure("95")
% A pressure in psi as an exact text, whatever unit it is written in.
function psi = read_pressure(text)
  psi = rodtravel.core.call("core_read_pressure", rodtravel.core.text("text", text));
end
