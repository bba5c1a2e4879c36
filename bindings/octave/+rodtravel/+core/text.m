% SPDX-License-Identifier: Apache-2.0
% A value as a text of the library; "" = not given. Doubles that are not whole are refused.
function text = text(name, value)
  if isstruct(value) && isscalar(value) && isequal(sort(fieldnames(value)), {"den"; "num"})
    text = short_decimal(rodtravel.ratio_quotient(value.num, value.den));
  elseif ischar(value) && (isrow(value) || isempty(value))
    if any(value == 0)
      rodtravel.core.refuse("a text of the library has no zero character", "argument", name);
    end
    text = value;
  elseif isempty(value) && isnumeric(value)
    text = "";
  elseif islogical(value) && isscalar(value)
    text = {"false", "true"}{1 + value};
  elseif isnumeric(value) && isscalar(value) && isreal(value)
    text = whole(name, value);
  else
    rodtravel.core.refuse([class(value), " is no text, whole number or struct of num and den"], "argument", name);
  end
end

function text = whole(name, value)
  if isnan(value)
    text = "";
  elseif isinteger(value)
    text = sprintf("%d", value);
  elseif isinf(value) || value != fix(value) || abs(value) >= flintmax(class(value))
    why = " is a binary float, which is only nearly what was read; give it as a text";
    rodtravel.core.refuse([num2str(value, 15), why], "argument", name);
  else
    text = sprintf("%d", value);
  end
end

% As a decimal where it is a short one, so that 33/8 is not taken for 3 3/8.
function text = short_decimal(text)
  parts = rodtravel.core.parts(text);
  if parts(2) == 1 || any(abs(parts) >= flintmax())
    return
  end
  digits = find(mod(10 .^ (1:9), parts(2)) == 0, 1);
  if isempty(digits) || abs(parts(1)) * 10 ^ digits >= flintmax()
    return
  end
  all = sprintf("%0*d", digits + 1, abs(parts(1)) * (10 ^ digits / parts(2)));
  text = ["-"(parts(1) < 0), all(1:end - digits), ".", all(end - digits + 1:end)];
end
