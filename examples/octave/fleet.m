% SPDX-License-Identifier: Apache-2.0
% From a file of recorded strokes to one line a unit: how many wheel ends have each verdict, and the least to spare.
%
%     octave-cli fleet.m [FLEET.csv]
%
% Reads examples/data/fleet.csv, and judges each row by the law of its day. A row that cannot be read stops nothing.
1;

% The cells of a record: between commas, with quotes around what holds one, a quote doubled inside.
function cells = cells_of(record)
  cells = regexp(record, '(?:^|,)("(?:[^"]|"")*"|[^,]*)', "tokens");
  cells = cellfun(@(cell) regexprep(regexprep(cell{1}, '^"(.*)"$', '$1'), '""', '"'), cells, "UniformOutput", false);
end

given = argv();
path = fullfile(fileparts(mfilename("fullpath")), "..", "data", "fleet.csv");
if !isempty(given)
  path = given{end};
end
lines = strsplit(strtrim(strrep(fileread(path), "\r", "")), "\n");
headings = cells_of(regexprep(lines{1}, '^\xEF\xBB\xBF', ""));
fields = {"chamber", "stroke_class", "rated_stroke", "released", "applied", "psi", "division", "date"};
verdicts = {"in-adjustment", "out-of-adjustment", "inoperative", "undetermined"};

% Records that are wheel ends: an empty one, or the heading once more, is none.
units = struct();
for line = lines(2:end)
  row = cell2struct([cells_of(line{1}), repmat({""}, 1, numel(headings))](1:numel(headings))', headings', 1);
  if any(strcmp(row.chamber, {"", "chamber"})) && all(ismember(row.released, "releasd"))
    continue
  end
  values = cellfun(@(name) row.(name), fields, "UniformOutput", false);
  finding = rodtravel.judge_row(cell2struct(values', fields', 1));
  if !isfield(units, row.unit_no)
    units.(row.unit_no) = {};
  end
  units.(row.unit_no){end + 1} = struct("verdict", finding.verdict, "margin", finding.margin);
end

printf("%-8s%5s%5s%6s%6s   least to spare\n", "unit", "in", "out", "dead", "open");
for unit = sort(fieldnames(units))'
  found = [units.(unit{1}){:}];
  counts = cellfun(@(verdict) sum(strcmp({found.verdict}, verdict)), verdicts);
  least = "";
  for margin = {found.margin}
    if !isempty(margin{1}) && (isempty(least) || rodtravel.ratio_compare(margin{1}, least) < 0)
      least = margin{1};
    end
  end
  spare = "not known";
  if !isempty(least)
    spare = [rodtravel.write_length(least), " in"];
  end
  printf("%-8s%5d%5d%6d%6d   %s\n", unit{1}, counts, spare);
end
