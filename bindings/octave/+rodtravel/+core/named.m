% SPDX-License-Identifier: Apache-2.0
% As call: the argument is one that C calls by another name, the line that of a wheel end.
function varargout = named(argument, line, name, varargin)
  rodtravel_core;
  [varargout{1:nargout}] = rodtravel_core.(name)(varargin{:});
  if !strcmp(rodtravel_core.core_error_status(), "ok")
    rodtravel.core.refuse_call(argument, line);
  end
end
