% SPDX-License-Identifier: Apache-2.0

% answers = rodtravel.judge_columns("chamber", {"30", "24"}, "released", {"2", "2"}, "applied", {"4", "3"}, "psi", 95)
% Many wheel ends at once, as judge_row judges them, by the names of judge: chamber, released and applied are cells with
% a value for each row; of the rest a cell is a column, anything else is that of every row. Gives a struct of cells in
% the shape of the first: verdict, flags and reasons as words with commas; stroke and limit in inches as exact texts,
% "" = there is none, or a stroke is no whole number of 1/127000000000 in (up to nine decimals are), a limit none of
% 1/5080000 in.
function answers = judge_columns(varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  lists = cellfun(@iscell, values);
  columns = rodtravel.core.call("Columns");
  for i = find(lists)
    rodtravel.core.call("Columns_set", columns, names{i}, column(names{i}, values{i}(:)'), numel(values{i}));
  end
  form = rodtravel.core.form(names(!lists), values(!lists));
  rows = max([0, cellfun(@numel, values(lists))]);
  rodtravel.core.call("Columns_judge", columns, rodtravel.core.rules(rules), form, rows);
  shape = size(values(lists){1});
  for name = {"verdict", "flags", "reasons", "stroke", "limit"}
    answers.(name{1}) = answer(columns, name{1}, shape);
  end
end

% Cells that are texts, as most are, are looked at all at once; a cell by itself costs a hundred times as much.
function joined = column(name, cells)
  joined = "";
  plain = iscellstr(cells) && all(cellfun("size", cells, 1) == 1 | cellfun("isempty", cells));
  if plain
    joined = strjoin(cells, "\x1f");
  end
  if !plain || any(joined == 0)
    cells = cellfun(@(cell) rodtravel.core.text(name, cell), cells, "UniformOutput", false);
    joined = strjoin(cells, "\x1f");
  end
end

function cells = answer(columns, name, shape)
  cells = cell(shape);
  if !isempty(cells)
    cells(:) = ostrsplit([rodtravel.core.call("Columns_column", columns, name), "\x1f"], "\x1f")(1:end - 1);
    cells(cellfun(@isempty, cells)) = {""};
  end
end
