% SPDX-License-Identifier: Apache-2.0

% texts = rodtravel.sentences(finding, "fr")
% A sentence for each reason, in a cell.
function texts = sentences(finding, language = "")
  all = rodtravel.core.call("Finding_sentences", core_of(finding), rodtravel.core.text("language", language));
  texts = {};
  if !isempty(all)
    texts = strsplit(all, "\n");
  end
end
