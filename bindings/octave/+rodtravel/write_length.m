% SPDX-License-Identifier: Apache-2.0

% text = rodtravel.write_length("7/4")
% Inches, an exact text or a whole number, as a mixed fraction, "1 3/4".
function text = write_length(length)
  parts = rodtravel.core.parts(rodtravel.ratio_quotient(length, 1));
  if any(abs(parts) >= flintmax())
    rodtravel.core.refuse("Octave holds no such number exactly", "range", "length");
  end
  text = rodtravel.core.call("core_write_length", parts(1), parts(2));
end
