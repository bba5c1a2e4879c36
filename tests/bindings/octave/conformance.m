% SPDX-License-Identifier: Apache-2.0
% Octave's judge of the conformance kit (tests/conformance): a question a line on standard input, an answer a line on
% standard output.
1;

function text = quoted(text)
  if isempty(text)
    text = "null";
  else
    text = ['"', strrep(strrep(text, '\', '\\'), '"', '\"'), '"'];
  end
end

function text = object(varargin)
  text = sprintf('"%s": %s, ', varargin{:})(1:end - 2);
end

function text = error_of(error)
  text = "null";
  if !isempty(error)
    text = ["{", object("status", ['"', error.status, '"'], "field", ['"', error.field, '"'], ...
                        "column", sprintf("%d", error.column)), "}"];
  end
end

function text = wheel_end(of)
  found = rodtravel.judge_row(of);
  reasons = found.reasons;
  reasons = sprintf('"%s", ', reasons{:})(1:end - 2);
  text = object("verdict", quoted(found.verdict), "stroke", quoted(found.applied_stroke), ...
                "limit", quoted(found.limit), "margin", quoted(found.margin), "proof", quoted(found.proof), ...
                "probability_over", quoted(found.probability_over), "reasons", ["[", reasons, "]"], ...
                "error", error_of(found.error));
end

function text = answer(ask, of)
  switch ask
    case "wheel-end"
      text = wheel_end(of);
    case "length"
      text = object("value", quoted(rodtravel.read_length(of.text)), "error", "null");
    case "chamber"
      read = rodtravel.read_chamber(of.text);
      names = {"family", "size", "spring_size", "stroke_class"};
      given = cellfun(@(name) {name, ['"', rodtravel.get_text(read, name), '"']}, names, "UniformOutput", false);
      text = object([given{:}]{:}, "error", "null");
    case "count"
      found = rodtravel.count_brakes(of);
      text = object("outcome", quoted(found.outcome), "share", quoted(found.share), "error", "null");
    case "air"
      check = of.check;
      found = rodtravel.judge_air(check, rmfield(of, "check"));
      text = object("result", quoted(found.result), "at_limit", {'"no"', '"yes"'}{1 + found.at_limit}, "error", "null");
  end
end

while ischar(line = fgetl(stdin))
  question = jsondecode(line);
  of = rmfield(question, {"id", "ask"});
  try
    said = answer(question.ask, of);
  catch refused
    if !strncmp(refused.identifier, "rodtravel:", 10)
      rethrow(refused);
    end
    said = object("error", error_of(rodtravel.last_error()));
  end
  printf("{%s, %s}\n", object("id", quoted(question.id)), said);
end
