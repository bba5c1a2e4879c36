% SPDX-License-Identifier: Apache-2.0
% Calls a function of the library, and refuses what it refused.
function varargout = call(name, varargin)
  rodtravel_core;
  [varargout{1:nargout}] = rodtravel_core.(name)(varargin{:});
  if !strcmp(rodtravel_core.core_error_status(), "ok")
    rodtravel.core.refuse_call("", 0);
  end
end
