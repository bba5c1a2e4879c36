% SPDX-License-Identifier: Apache-2.0
% A record of the library that a caller fills.
function record = record(kind, names, values)
  record = rodtravel.core.call("Record", kind);
  for i = 1:numel(names)
    if !(isnumeric(values{i}) && isempty(values{i}))
      rodtravel.core.call("Record_set", record, names{i}, rodtravel.core.text(names{i}, values{i}));
    end
  end
end
