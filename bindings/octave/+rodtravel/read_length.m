% SPDX-License-Identifier: Apache-2.0

% inches = rodtravel.read_length("44.45", "mm")
% A length in inches as an exact text, "7/4"; unit is "in", "mm" or "cm" where the text has none.
function inches = read_length(text, unit = "")
  unit = rodtravel.core.text("unit", unit);
  inches = rodtravel.core.call("core_read_length", rodtravel.core.text("text", text), unit);
end
