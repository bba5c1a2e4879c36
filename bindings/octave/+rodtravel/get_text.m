% SPDX-License-Identifier: Apache-2.0

% text = rodtravel.get_text(found, "law_row.published")
% A member by its path, as a text.
function text = get_text(found, path)
  text = rodtravel.core.call([type_of(found), "_get"], core_of(found), rodtravel.core.text("path", path));
end
