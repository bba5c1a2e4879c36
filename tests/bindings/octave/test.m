% SPDX-License-Identifier: Apache-2.0
% What the package finds and refuses. Prints TAP.
1;

function ok(right, what, note = "")
  global count failed
  count++;
  if right
    printf("ok %d - %s\n", count, what);
  else
    failed++;
    printf("not ok %d - %s\n# %s\n", count, what, note);
  end
end

function is(found, wanted, what)
  ok(isequal(found, wanted) && strcmp(class(found), class(wanted)), what, [disp(found), " wanted ", disp(wanted)]);
end

% Status, field, column and line of what a call must refuse.
function refused(wanted, call)
  found = "nothing";
  try
    call();
  catch refused
    found = refused.message;
    if strncmp(refused.identifier, "rodtravel:", 10)
      error = rodtravel.last_error();
      field = [error.field, "-"(isempty(error.field))];
      found = sprintf("%s %s %d %d", error.status, field, error.column, error.line);
      ok(strcmp(refused.identifier, ["rodtravel:", error.status]), "the identifier has the status", refused.identifier);
    end
  end
  is(found, wanted, ["refused: ", wanted]);
end

function finding = judged(varargin)
  texts = struct("chamber", "30L", "released", "2 3/4", "applied", "5 5/16", "psi", 95);
  for i = 1:2:numel(varargin)
    texts.(varargin{i}) = varargin{i + 1};
  end
  finding = rodtravel.judge(texts);
end

% PHP's and R's tests ask the same of theirs.
function barred(what, call)
  try
    call();
    ok(false, what);
  catch refused
    ok(!isempty(regexp(refused.message, "holds nothing|No matching function", "once")), what, refused.message);
  end
end

function names = package_files()
  names = {dir(fullfile(fileparts(which("rodtravel.judge")), "*.m")).name};
end

function assign(value)
  value.verdict = "in-adjustment";
end

member = @(found, name) found.(name);
first = @(cell) cell{1};
global count = 0 failed = 0;

% --- A wheel end

over = judged();
is(over.verdict, "out-of-adjustment", "the verdict");
is(over.margin, "-1/16", "the margin is exact");
is({over.applied_stroke, over.limit}, {"41/16", "5/2"}, "stroke and limit");
is(over.reasons, {"over-limit"}, "reasons");
is(char(over), "2 3/4 to 5 5/16 is 2 9/16; limit 2 1/2; over by 1/16", "a finding as a text");
is(evalc("over"), sprintf("over =\n\n%s\n\n", char(over)), "displayed");
is(over.long_limit, "", "what is not given is empty");
is(over.defect, "half", "the defect");
ok(strncmp(over.source, "49 CFR Part 393, 393.47", 23), "the source");
is(rodtravel.get_text(over, "law_row.published"), "2 1/2", "a member by its path");
ok(!isempty(strfind(first(rodtravel.sentences(over, "fr")), "dépasse la limite")), "a reason in French");
ok(!isempty(strfind(rodtravel.sentence(over, "es"), "límite")), "the finding in Spanish");
ok(strncmp(rodtravel.spoken(over), "Released 2 3/4", 14), "what is said aloud");
is(jsondecode(rodtravel.json(over)).limit, "2 1/2", "as a struct");
ok(over == judged() && over != judged("applied", "5") && isequal(over, judged()), "equal by value");
is(member(judged("division", "1/8"), "proof"), "not-resolved", "what the division proves");
is(member(judged("date", "2024-05-06"), "day"), "2024-05-06", "a day in and out");
row = rodtravel.judge_row("chamber", "30", "released", "2 1/8", "applied", "2-Jan");
is({row.verdict, row.error.status, row.error.field, row.error.column}, ...
   {"undetermined", "date-cell", "applied", 1}, "a row");
ok(isempty(member(rodtravel.judge_row("chamber", "30", "released", "2", "applied", "4"), "error")), "a sound row");
is(member(rodtravel.judge("chamber", "30", "released", "50,8", "applied", "104,8", "default_unit", "mm", ...
                   "decimal_comma", true), "verdict"), "out-of-adjustment", ...
   "a form in millimetres with decimal commas");

% --- The rest of the job

ends = {struct("position", "1L", "finding", over, "adjuster", "automatic", "arm_length", 6), ...
        struct("position", "1R", "finding", judged("applied", "5"))};
vehicle = rodtravel.judge_vehicle(ends);
is({vehicle.outcome, vehicle.share}, {"ambiguous", "1/4"}, "half a brake of two");
is(vehicle.out_of_adjustment + vehicle.in_adjustment, 2, "counts are numbers");
is(jsondecode(rodtravel.json(vehicle)).wheel_ends(1).advice_code, "find-fault", "what to do next");
is(member(rodtravel.judge_vehicle(ends(1), 10), "outcome"), "undetermined", "brakes that were not measured");
is(member(rodtravel.judge_air("warning", "pressure", 62, "rules", "us-cdl"), "result"), "good", ...
   "the low-pressure warning");
is(member(rodtravel.judge_air("warning", "pressure", "60", "rules", "us-newvehicle"), "at_limit"), true, "at the edge");
is(member(rodtravel.count_brakes("brakes", 6, "full", 1, "half", 1), "outcome"), "ambiguous", ...
   "the chart of whole brakes");
which = rodtravel.identify("stamp", "24");
is({which.strict_limit, which.next_observation}, {"7/4", "long-sign"}, "which chamber it can be");
ok(numel(which.candidates) > 2, "candidates");
is(member(rodtravel.read_chamber("30LS"), "stroke_class"), "long", "a mark");
is(member(rodtravel.find_limit("36", "date", "2021-10-13"), "limit"), "9/4", "a limit on a day");
is(member(rodtravel.find_limit("24", "rated_stroke", 3), "limit"), "5/2", "with a mark more");
ok(numel(rodtravel.rule_sets()) > 5 && numel(rodtravel.limits("us-fmcsr")) > 30, "rules");
yard = rodtravel.load_rules("family,size,class,limit\nclamp,30,long,2 3/8\n", "yard");
kept = judged("applied", "5 1/4", "rules", yard);
clear yard
ok(any(strcmp(kept.reasons, "over-own-limit")) && rodtravel.ratio_compare(kept.limit, kept.law_limit) < 0 ...
   && strcmp(kept.rules, "yard"), "a carrier's own limit");

% --- Columns, steps, reservoirs

rows = struct("chamber", {{"30L", "30", [], "30L", "30"}}, ...
              "released", {{"2 3/4", "2 1/8", "1", "2-Jan", "2.750001"}}, ...
              "applied", {{"5 5/16", struct("num", 33, "den", 8), "2", 5, "4.612345"}});
answers = rodtravel.judge_columns(setfield(rows, "psi", 95));
for i = 1:5
  one = rodtravel.judge_row("chamber", rows.chamber{i}, "released", rows.released{i}, "applied", rows.applied{i}, ...
                            "psi", 95);
  is({answers.verdict{i}, answers.reasons{i}, answers.stroke{i}, answers.limit{i}}, ...
     {one.verdict, strjoin(one.reasons, ", "), one.applied_stroke, one.limit}, sprintf("row %d of columns", i));
end
is({answers.stroke{1}, answers.limit{1}, answers.limit{3}}, {"41/16", "5/2", ""}, "exact texts, or nothing");
is(answers.flags, {"", "", "missing", "invalid", ""}, "flags of cells");
columns = @(varargin) rodtravel.judge_columns("chamber", {"30"; "30"}, "released", {"1"; "1"}, varargin{:});
is(columns("applied", {"2"; "4"}).verdict, {"in-adjustment"; "out-of-adjustment"}, "in the shape of the chambers");
none = rodtravel.judge_columns("chamber", {}, "released", {}, "applied", {});
is(none.verdict, {}, "no rows");
blank = rodtravel.judge_columns("chamber", {""}, "released", {[]}, "applied", {NA});
is({blank.verdict, blank.stroke}, {{"undetermined"}, {""}}, "one blank row");
refused("argument applied 0 0", @() columns("applied", {"2"}));
refused("argument chamber 0 0", @() columns("applied", {"2", "2", "2"}));
refused("argument applied 0 0", @() columns("applied", {"2\x1f2"}));
refused("argument applied 0 0", @() columns("applied", {"2", 2.5}));
refused("argument applied 0 0", @() columns("applied", {"2", {"2"}}));
refused("argument applied 0 0", @() columns("applied", {"2", "2\0"}));
refused("argument applied 0 0", @() columns("applied", {"2", ["2"; "3"]}));
refused("argument applied 0 0", @() columns("psi", 95));
refused("argument chamber 0 0", @() rodtravel.judge_columns("chamber", "30", "released", {"1"}, "applied", {"2"}));
refused("argument colour 0 0", @() columns("applied", {"2", "2"}, "colour", {"red", "red"}));
refused("syntax psi 1 0", @() columns("applied", {"2", "2"}, "psi", "high"));
refused("unknown-rules - 0 0", @() columns("applied", {"2", "2"}, "rules", "atlantis"));
steps = rodtravel.steps("rules", "ca-on", "vehicle", "single");
is({steps(4).step, steps(4).row.check}, {"warning", "warning"}, "a step and its row");
ok(!isempty(strfind(steps(4).defective, "below 55 psi")), "its figures");
is(fieldnames(steps)', {"step", "row", "title", "do", "see", "good", "defective"}, "what a step has");
french = rodtravel.steps("rules", "ca-on", "language", "fr");
ok(!strcmp(french(1).title, steps(1).title), "in French");
ok(numel(rodtravel.steps("rules", "ca-on", "vehicle", "combination")) > numel(steps), "a combination has more steps");
refused("syntax vehicle 1 0", @() rodtravel.steps("vehicle", "sledge"));
refused("argument colour 0 0", @() rodtravel.steps("colour", "red"));
refused("argument language 0 0", @() rodtravel.steps("language", "xx"));
refused("unknown-rules - 0 0", @() rodtravel.steps("rules", "atlantis"));
is(rodtravel.rated_volume("30"), "89", "the volume of a chamber");
is(rodtravel.required_volume(89 * 4 + 54 * 2), "5568", "of its reservoirs");
is(rodtravel.required_volume("464", true), "3712", "of a trailer's");
is(rodtravel.build_up_seconds(11136, struct("num", 5568, "den", 1)), "50", "seconds");
is(rodtravel.estimate_application(105, 5568, 464), "12453/130", "an estimate");
is(rodtravel.estimate_application(105, 5568, 464, "0"), "105", "of chambers that take nothing");
is(rodtravel.estimate_applications(105, 60, 5568, 464), 5, "another");
refused("argument chambers 0 0", @() rodtravel.required_volume(-1));
refused("argument chambers 0 0", @() rodtravel.required_volume(1.5));
refused("argument trailer 0 0", @() rodtravel.required_volume(464, "yes"));
refused("argument volumes 0 0", @() rodtravel.build_up_seconds(1, 0));
refused("argument required 0 0", @() rodtravel.build_up_seconds(1, {1}));
refused("syntax number 0 0", @() rodtravel.build_up_seconds("1.5", 1));
refused("argument estimate 0 0", @() rodtravel.estimate_application(1, 1, 1, 2));
refused("argument least 0 0", @() rodtravel.estimate_applications(1, 0.5, 1, 1));
refused("unknown-chamber chamber 0 0", @() rodtravel.rated_volume("bolt A"));

% --- Numbers

for applied = {"4 1/8", "4.125", "4⅛", struct("num", 33, "den", 8), struct("num", "33", "den", int8(8))}
  finding = rodtravel.judge("chamber", "30", "released", "2 1/8", "applied", applied{1});
  is(finding.applied_stroke, "2", class(applied{1}));
end
for applied = {4, int32(4), single(4), "4"}
  finding = rodtravel.judge("chamber", "30", "released", "2 1/8", "applied", applied{1});
  is(finding.applied_stroke, "15/8", class(applied{1}));
end
is(rodtravel.read_length("44.45 mm"), "7/4", "millimetres");
is(rodtravel.read_length("44.45", "mm"), "7/4", "by their unit");
is(rodtravel.read_length(struct("num", 1, "den", 512)), "1/512", "a number with nine decimal digits");
is({rodtravel.read_pressure("95"), rodtravel.read_seconds("1:30"), rodtravel.read_date("14-OCT-21")}, ...
   {"95", "90", "2021-10-14"}, "readers");
is(rodtravel.write_length("-7/4"), "-1 3/4", "back to a text");
sum_less_two = rodtravel.ratio_difference(rodtravel.ratio_sum("-1/2", "1/3"), 2);
is(rodtravel.ratio_quotient(rodtravel.ratio_product(sum_less_two, "-1/2"), 5), "13/60", "arithmetic");
is([rodtravel.ratio_compare("-1/2", "-1/3"), rodtravel.ratio_compare(1, "2/2")], [-1, 0], "comparison");
is(rodtravel.to_double("-1/16"), -0.0625, "as a double");
is(isnan(rodtravel.to_double("")), true, "what is not given is no number");
refused("range - 0 0", @() rodtravel.ratio_product("9223372036854775807", 2));
refused("argument number 0 0", @() rodtravel.ratio_sum("1/2", 0.5));
refused("syntax number 0 0", @() rodtravel.ratio_sum("1.5", 1));

% --- What is refused

for float = {4.125, 1e300, Inf, single(0.1)}
  refused("argument applied 0 0", @() judged("applied", float{1}));
end
refused("date-cell applied 1 0", @() judged("applied", "2-Jan"));
refused("syntax applied 5 0", @() judged("applied", "4 1/"));
refused("negative applied 1 0", @() judged("applied", struct("num", -1, "den", 8)));
refused("empty applied 0 0", @() judged("applied", []));
refused("empty applied 0 0", @() judged("applied", NA));
refused("argument colour 0 0", @() judged("colour", "red"));
refused("argument applied 0 0", @() judged("applied", "4\0"));
refused("argument applied 0 0", @() judged("applied", {4}));
refused("argument applied 0 0", @() judged("applied", [4, 5]));
refused("argument applied 0 0", @() judged("applied", 4i));
refused("argument - 0 0", @() rodtravel.judge("30L", "2 3/4", "5"));
refused("argument - 0 0", @() rodtravel.judge(30, "2 3/4"));
refused("syntax default_unit 1 0", @() judged("default_unit", "ells"));
refused("unknown-rules - 0 0", @() judged("rules", "atlantis"));
refused("unknown-rules - 0 0", @() rodtravel.rule_set(""));
refused("argument unit 0 0", @() rodtravel.read_length("3", "ells"));
refused("syntax - 3 0", @() rodtravel.read_length("4½¼"));
refused("argument text 0 0", @() rodtravel.read_length(1.75));
refused("range length 0 0", @() rodtravel.write_length("9223372036854775807"));
refused("laxer limit 19 2", @() rodtravel.load_rules("family,size,class,limit\nclamp,30,standard,3\n", "yard"));
refused("argument ends 0 0", @() rodtravel.judge_vehicle("1L"));
refused("argument ends 0 0", @() rodtravel.judge_vehicle({}));
refused("argument finding 0 1", @() rodtravel.judge_vehicle({struct("position", "1L")}));
refused("argument finding 0 1", @() rodtravel.judge_vehicle({struct("position", "1L", "finding", vehicle)}));
refused("argument colour 0 1", @() rodtravel.judge_vehicle({setfield(ends{1}, "colour", "red")}));
refused("syntax position 1 2", @() rodtravel.judge_vehicle({ends{1}, setfield(ends{2}, "position", "left")}));
refused("argument brakes 0 0", @() rodtravel.judge_vehicle(ends, 1.5));
refused("argument brakes 0 0", @() rodtravel.judge_vehicle(ends, -1));
refused("syntax pressure 1 0", @() rodtravel.judge_air("warning", "pressure", "high"));
refused("argument tally 0 0", @() rodtravel.count_brakes("brakes", 1, "full", 2));
refused("argument language 0 0", @() rodtravel.json(over, "xx"));
refused("argument colour 0 0", @() over.colour);
refused("argument verdict 0 0", @() rodtravel.exact(over, "verdict"));
refused("argument - 0 0", @() assign(over));
several = rodtravel.judge_row("chamber", "30", "released", "2 1/8", "applied", "5");
refused("argument - 0 0", @() numel({several.reasons{:}}));
refused("argument - 0 0", @() numel({several.reasons{[]}}));
is({several.reasons{1}, several.reasons{2}}, several.reasons(1:2), "one reason at a time");
try
  judged("applied", "2-Jan");
catch refusal
  is(refusal.message, "applied, column 1: this is a date; a spreadsheet makes dates of fractions", "as a text");
end
ok(judged() == over, "after an error all is well");

% --- Objects that were deleted by name

rodtravel_core;
form = rodtravel_core.Form();
copy = form;
rodtravel_core.delete_Form(form);
barred("a deleted form", @() form.set("chamber", "30"));
barred("another name of it", @() copy.get("chamber"));
barred("deleted twice", @() rodtravel_core.delete_Form(copy));
vehicle = rodtravel_core.Vehicle();
barred("a form in place of a finding", @() vehicle.add("1L", rodtravel_core.Form()));
barred("nothing in place of a finding", @() vehicle.add("1L", []));
barred("a number in place of rules", @() rodtravel_core.Form().judge(1));

% --- Help, which Octave takes from the first comment that is no licence

names = cellfun(@(file) file(1:end - 2), package_files(), "UniformOutput", false);
ok(numel(names) > 30, "functions of the package");
for name = setdiff(names, {"Found"})
  ok(!isempty(strfind(get_help_text(["rodtravel.", name{1}]), ["rodtravel.", name{1}, "("])), ["help of ", name{1}]);
end

% --- The README

runs = regexp(fileread(argv(){end}), '```octave\n(.*?)```', "tokens");
is(numel(runs), 3, "three runs");
for run = runs
  said = evalc(run{1}{1});
  wanted = regexp(run{1}{1}, '^ *(?:disp|printf|fprintf)[^\n]*?;\s+% ([^\n]*)$', "tokens", "lineanchors");
  is(strsplit(strtrim(said), "\n"), cellfun(@(line) line{1}, wanted, "UniformOutput", false), "a run of the README");
end

printf("1..%d\n", count);
exit(failed > 0);
