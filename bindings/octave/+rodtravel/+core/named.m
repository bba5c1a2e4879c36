% SPDX-License-Identifier: Apache-2.0
% As call: the argument is one that C calls by another name, the line that of a wheel end.
function varargout = named(argument, line, name, varargin)
  rodtravel_core;
  [varargout{1:nargout}] = rodtravel_core.(name)(varargin{:});
  status = rodtravel_core.core_error_status();
  if strcmp(status, "ok")
    return
  end
  if isempty(argument)
    argument = rodtravel_core.core_error_field();
  end
  if line == 0
    line = rodtravel_core.core_error_line();
  end
  rodtravel.core.refuse(rodtravel_core.core_error_text(), status, argument, rodtravel_core.core_error_column(), line);
end
