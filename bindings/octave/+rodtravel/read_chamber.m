% SPDX-License-Identifier: Apache-2.0

% chamber = rodtravel.read_chamber("30LS")
% A chamber by the mark on its housing: family, size, spring_size, stroke_class, rated_stroke, marked_limit.
function chamber = read_chamber(mark)
  chamber = rodtravel.Found("Record", "chamber", ...
                            rodtravel.core.call("core_chamber", rodtravel.core.text("chamber", mark)));
end
