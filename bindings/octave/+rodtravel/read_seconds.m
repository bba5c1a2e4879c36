% SPDX-License-Identifier: Apache-2.0

% seconds = rodtravel.read_seconds("1:30")
% A time in seconds as an exact text.
function seconds = read_seconds(text)
  seconds = rodtravel.core.call("core_read_seconds", rodtravel.core.text("text", text));
end
