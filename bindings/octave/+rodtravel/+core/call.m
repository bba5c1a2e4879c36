% SPDX-License-Identifier: Apache-2.0
% Calls a function of the library, and refuses what it refused.
function varargout = call(name, varargin)
  [varargout{1:nargout}] = rodtravel.core.named("", 0, name, varargin{:});
end
