% SPDX-License-Identifier: Apache-2.0

% limit = rodtravel.find_limit("30L", "date", "2021-10-13")
% The limit for a chamber's mark on a day; stroke_class, rated_stroke, marked_limit, rules.
function limit = find_limit(mark, varargin)
  [names, values, rules] = rodtravel.core.pairs(varargin);
  at = strcmp(names, "date");
  day = rodtravel.core.text("date", [values(at), {""}]{1});
  own = {"family", "size", "spring_size", "stroke_class"};
  chamber = rodtravel.read_chamber(mark);
  of = cellfun(@(name) rodtravel.get_text(chamber, name), own, "UniformOutput", false);
  record = rodtravel.core.record("rodt_chamber", [own, names(!at)], [of, values(!at)]);
  limit = rodtravel.Found("Record", "limit", ...
                          rodtravel.core.call("core_find_limit", record, rodtravel.core.rules(rules), day));
end
