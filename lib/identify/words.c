/* SPDX-License-Identifier: Apache-2.0 */
/* The words of what can be seen of a chamber. */
#include "identify/words.h"

#include "message/english.h"

WORDS(port, ENUMERATOR(RODT_PORT_NOT_SEEN, "not-seen", "the air ports were not looked at"),
      ENUMERATOR(RODT_PORT_ROUND, "round", "round bosses; no proof of standard stroke"),
      ENUMERATOR(RODT_PORT_SQUARE, "square", "square bosses: a sign of long stroke"))

WORDS(tag, ENUMERATOR(RODT_TAG_NOT_SEEN, "not-seen", "the clamp bolts were not looked at"),
      ENUMERATOR(RODT_TAG_NONE, "none", "no tag; no proof of standard stroke"),
      ENUMERATOR(RODT_TAG_TRAPEZOID, "trapezoid", "a trapezoid tag: a sign of long stroke"))

BIT_WORDS(clue, ENUMERATOR(RODT_CLUE_STAMP, "stamp", "the stamped text"),
          ENUMERATOR(RODT_CLUE_FAMILY, "family", "how the housing is built"),
          ENUMERATOR(RODT_CLUE_PORT_SHAPE, "port-shape", "the shape of the air ports"),
          ENUMERATOR(RODT_CLUE_TAG, "tag", "the tag under a clamp bolt"),
          ENUMERATOR(RODT_CLUE_RATED_STROKE, "rated-stroke", "the marked rated stroke"),
          ENUMERATOR(RODT_CLUE_DIAMETER, "diameter", "the outside diameter"))

WORDS(observation, ENUMERATOR(RODT_OBSERVATION_NOTHING, "nothing", ENGLISH_OBSERVATION_NOTHING),
      ENUMERATOR(RODT_OBSERVATION_FAMILY, "family",
                 ENGLISH_OBSERVATION_FAMILY),
      ENUMERATOR(RODT_OBSERVATION_STAMP, "stamp",
                 ENGLISH_OBSERVATION_STAMP),
      ENUMERATOR(RODT_OBSERVATION_LONG_SIGN, "long-sign",
                 ENGLISH_OBSERVATION_LONG_SIGN),
      ENUMERATOR(RODT_OBSERVATION_RATED_STROKE, "rated-stroke",
                 ENGLISH_OBSERVATION_RATED_STROKE),
      ENUMERATOR(RODT_OBSERVATION_DIAMETER, "diameter", ENGLISH_OBSERVATION_DIAMETER))

const char *rodt_observation_text(rodt_observation observation)
{
    return rodti_text_of(&rodti_words_observation, observation);
}
