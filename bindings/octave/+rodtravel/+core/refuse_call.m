% SPDX-License-Identifier: Apache-2.0
% Refuses what the last call of the library refused; "" and 0 = the argument and the line are those that C names.
function refuse_call(argument, line)
  rodtravel_core;
  if isempty(argument)
    argument = rodtravel_core.core_error_field();
  end
  if line == 0
    line = rodtravel_core.core_error_line();
  end
  rodtravel.core.refuse(rodtravel_core.core_error_text(), rodtravel_core.core_error_status(), argument, ...
                        rodtravel_core.core_error_column(), line);
end
