% SPDX-License-Identifier: Apache-2.0

% vehicle = rodtravel.judge_vehicle(ends, brakes)
% The roadside criterion. ends is a cell of structs with position, finding and, as they are known, adjuster and
% arm_length; brakes of the vehicle, measured or not, 0 = both ends of every axle.
function vehicle = judge_vehicle(ends, brakes = 0)
  if !iscell(ends) || isempty(ends)
    rodtravel.core.refuse("wheel ends are a cell of structs", "argument", "ends");
  end
  if !(isnumeric(brakes) && isscalar(brakes) && brakes == fix(brakes) && abs(brakes) < 2 ^ 31)
    rodtravel.core.refuse("a whole number was expected", "argument", "brakes");
  end
  made = rodtravel.core.call("Vehicle");
  for line = 1:numel(ends)
    add_end(made, ends{line}, line);
  end
  rodtravel.core.call("Vehicle_judge", made, double(brakes));
  vehicle = rodtravel.Found("Vehicle", "vehicle", made);
end

function add_end(made, of, line)
  if !(isstruct(of) && isscalar(of) && isfield(of, "finding") && isa(of.finding, "rodtravel.Found") ...
       && strcmp(kind_of(of.finding), "finding"))
    rodtravel.core.refuse("a wheel end needs a finding", "argument", "finding", 0, line);
  end
  odd = setdiff(fieldnames(of), {"position", "finding", "adjuster", "arm_length"});
  if !isempty(odd)
    rodtravel.core.refuse("a wheel end has no such member", "argument", odd{1}, 0, line);
  end
  texts = struct("position", "", "adjuster", "", "arm_length", "");
  for name = intersect(fieldnames(texts), fieldnames(of))'
    texts.(name{1}) = rodtravel.core.text(name{1}, of.(name{1}));
  end
  rodtravel.core.named("", line, "Vehicle_add", made, texts.position, core_of(of.finding), texts.adjuster, ...
                       texts.arm_length);
end
