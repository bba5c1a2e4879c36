% SPDX-License-Identifier: Apache-2.0
% A member of what was found: an exact number as a text, a count as a number, reasons as a cell, "" = not given.
function value = member(kind, type, core, name)
  persistent exact = struct("finding", {{"released", "applied", "applied_stroke", "limit", "law_limit", "long_limit", ...
                                         "margin", "division", "probability_over", "pressure", "pressure_after"}}, ...
                            "vehicle", {{"share", "worst_share", "defective"}}, ...
                            "count", {{"share", "worst_share", "known_share", "defective", "criterion"}}, ...
                            "identification", {{"strict_limit"}}, "limit", {{"limit", "law_limit"}}, ...
                            "chamber", {{"rated_stroke", "marked_limit"}});
  persistent whole = struct("vehicle", {{"brakes", "in_adjustment", "out_of_adjustment", "inoperative", ...
                                         "undetermined", "mismatched_axles"}}, ...
                            "count", {{"brakes", "whole_needed"}});
  path = name;
  if strcmp(kind, "vehicle") && any(strcmp(name, {"outcome", "share", "worst_share", "defective", "brakes"}))
    path = ["count.", name];
  end
  if isfield(exact, kind) && any(strcmp(name, exact.(kind)))
    value = rodtravel.core.call([type, "_exact"], core, path);
  elseif isfield(whole, kind) && any(strcmp(name, whole.(kind)))
    value = str2double(rodtravel.core.call([type, "_get"], core, path));
  else
    value = special(kind, type, core, name, path);
  end
end

function value = special(kind, type, core, name, path)
  switch [kind, ".", name]
    case "finding.reasons"
      value = regexp(rodtravel.core.call("Finding_get", core, name), "[^, ]+", "match");
    case {"finding.defect", "finding.source"}
      value = rodtravel.core.call(["Finding_", name], core);
    case "finding.error"
      value = row_error(core);
    case "air_finding.at_limit"
      value = strcmp(rodtravel.core.call("Record_get", core, name), "true");
    case "identification.candidates"
      value = jsondecode(rodtravel.core.call("Record_json", core)).candidates;
    case "rules.id"
      value = rodtravel.core.call("Rules_id", core);
    otherwise
      value = rodtravel.core.call([type, "_get"], core, path);
  end
end

% Of judge_row: the first text that could not be read, or [].
function value = row_error(core)
  value = [];
  status = rodtravel.core.call("Finding_row_status", core);
  if !strcmp(status, "ok")
    value = struct("status", status, "field", rodtravel.core.call("Finding_row_field", core), ...
                   "column", double(rodtravel.core.call("Finding_row_column", core)), ...
                   "text", rodtravel.core.call("Finding_row_text", core));
  end
end
