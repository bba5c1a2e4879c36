% SPDX-License-Identifier: Apache-2.0

% text = rodtravel.json(found, "fr")
% The report as JSON; jsondecode makes a struct of it.
function text = json(found, language = "")
  if strcmp(kind_of(found), "rules")
    text = rodtravel.core.call("Rules_json", core_of(found));
  else
    text = rodtravel.core.call([type_of(found), "_json"], core_of(found), rodtravel.core.text("language", language));
  end
end
