% SPDX-License-Identifier: Apache-2.0
% Numerator and denominator of an exact text as doubles; NaN for what is none.
function parts = parts(text)
  parts = str2double(strsplit(text, "/"));
  if numel(parts) == 1
    parts(2) = 1;
  end
end
