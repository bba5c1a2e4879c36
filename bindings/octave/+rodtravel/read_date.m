% SPDX-License-Identifier: Apache-2.0

% day = rodtravel.read_date("14-OCT-21")
% A day as a text, "2021-10-14".
function day = read_date(text)
  day = rodtravel.core.call("core_read_date", rodtravel.core.text("text", text));
end
