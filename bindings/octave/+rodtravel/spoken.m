% SPDX-License-Identifier: Apache-2.0

% text = rodtravel.spoken(finding, "fr")
% What a person says aloud.
function text = spoken(finding, language = "")
  text = rodtravel.core.call("Finding_spoken", core_of(finding), rodtravel.core.text("language", language));
end
