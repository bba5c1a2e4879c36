% SPDX-License-Identifier: Apache-2.0

% text = rodtravel.sentence(found, "es")
% What was found in one line, in a language of the library; "" = English.
function text = sentence(found, language = "")
  text = rodtravel.core.call([type_of(found), "_say"], core_of(found), rodtravel.core.text("language", language));
end
