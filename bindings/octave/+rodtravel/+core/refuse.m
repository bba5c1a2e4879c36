% SPDX-License-Identifier: Apache-2.0
% Raises an error with the identifier rodtravel:STATUS, and keeps where it is for rodtravel.last_error.
function refuse(text, status = "argument", field = "", column = 0, line = 0)
  rodtravel.last_error(struct("status", status, "field", field, "column", double(column), "line", double(line), ...
                              "text", text));
  where = field;
  if line > 0
    where = [where, ", "(1:2 * !isempty(where)), sprintf("line %d", line)];
  end
  if column > 0
    where = [where, ", "(1:2 * !isempty(where)), sprintf("column %d", column)];
  end
  error(["rodtravel:", status], "%s", [where, ": "(1:2 * !isempty(where)), text]);
end
