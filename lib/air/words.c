/* SPDX-License-Identifier: Apache-2.0 */
/* The words of results of air checks. */
#include "air/words.h"

#include "message/english.h"

WORDS(air_result, ENUMERATOR(RODT_AIR_RESULT_NOT_DONE, "not-done", "nothing was recorded"),
      ENUMERATOR(RODT_AIR_RESULT_GOOD, "good", "the check is passed"),
      ENUMERATOR(RODT_AIR_RESULT_DEFECTIVE, "defective", "the check is failed"),
      ENUMERATOR(RODT_AIR_RESULT_UNDETERMINED, "undetermined", "a fact that decides is missing, or no row is for it"),
      ENUMERATOR(RODT_AIR_RESULT_NOTED, "noted", "no limit was passed or failed"))

WORDS(air_missing, ENUMERATOR(RODT_AIR_MISSING_NOTHING, "nothing", "nothing is missing"),
      ENUMERATOR(RODT_AIR_MISSING_ROW, "row", "the rule set has no figure for this check and vehicle"),
      ENUMERATOR(RODT_AIR_MISSING_VEHICLE, "vehicle", "the kind of vehicle decides, or the number of its towed units"),
      ENUMERATOR(RODT_AIR_MISSING_BUILT, "built", ENGLISH_AIR_MISSING_BUILT),
      ENUMERATOR(RODT_AIR_MISSING_VOLUME, "volume", "the volumes of the reservoirs decide"),
      ENUMERATOR(RODT_AIR_MISSING_SPAN, "span", "the rule times another span"),
      ENUMERATOR(RODT_AIR_MISSING_VALUE, "value", "a pressure or time of the check itself"),
      ENUMERATOR(RODT_AIR_MISSING_SENSE, "sense", "the readings contradict each other"),
      ENUMERATOR(RODT_AIR_MISSING_CUT_OUT, "cut-out", ENGLISH_AIR_MISSING_CUT_OUT),
      ENUMERATOR(RODT_AIR_MISSING_APPLICATIONS, "applications",
                 "the rule set asks for another number of full applications"),
      ENUMERATOR(RODT_AIR_MISSING_OTHER_WAY, "other-way",
                 "this way failed; the rule set accepts another one, which was not done"))
