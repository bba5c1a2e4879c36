% SPDX-License-Identifier: Apache-2.0

% exact = rodtravel.exact(found, "limit")
% A member as an exact text, "5/2"; "" = not given.
function exact = exact(found, path)
  exact = rodtravel.core.call([type_of(found), "_exact"], core_of(found), rodtravel.core.text("path", path));
end
