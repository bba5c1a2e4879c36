% SPDX-License-Identifier: Apache-2.0

% text = rodtravel.tables_edition()
% The edition of the tables of law.
function text = tables_edition()
  text = rodtravel.core.call("core_tables_edition");
end
