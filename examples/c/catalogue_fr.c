/* SPDX-License-Identifier: Apache-2.0 */
/* The sentences of the library in French, as an inspector in Canada may read them: a catalogue, and no code. A
 * translation by the authors of the library; nobody of the trade whose language it is has checked it. */
#include "catalogue_fr.h"

/* No line ends before a colon or a percent sign. */
#define NB "\u00A0"

static const char *const templates[RODT_MESSAGE_END] = {
    /* How a value is put into a sentence. */
    [RODT_MESSAGE_VALUE_ABOUT] = "environ {number}",
    [RODT_MESSAGE_VALUE_INCHES] = "{number} po",
    [RODT_MESSAGE_VALUE_MM] = "{number} mm",
    [RODT_MESSAGE_VALUE_LIMIT_MM] = "{number} po ({mm})",
    [RODT_MESSAGE_VALUE_NOT_GIVEN] = "(non mesuré)",
    [RODT_MESSAGE_VALUE_NOT_READABLE] = "(illisible)",
    [RODT_MESSAGE_VALUE_PSI] = "{number} lb/po²",
    [RODT_MESSAGE_VALUE_KPA] = "{number} kPa",
    [RODT_MESSAGE_VALUE_SECONDS] = "{number} s",
    [RODT_MESSAGE_VALUE_PSI_PER_MINUTE] = "{number} lb/po² par minute",
    [RODT_MESSAGE_VALUE_KPA_PER_MINUTE] = "{number} kPa par minute",
    [RODT_MESSAGE_VALUE_PERCENT] = "{number}" NB "%",
    [RODT_MESSAGE_VALUE_PERCENT_LEFT] = "{number}" NB "% restants",
    [RODT_MESSAGE_VALUE_PERCENT_LOST] = "{number}" NB "% perdus",

    /* How a figure was checked. */
    [RODT_MESSAGE_EVIDENCE_NONE] = "aucune",
    [RODT_MESSAGE_EVIDENCE_CHECKED] = "lu dans la source",
    [RODT_MESSAGE_EVIDENCE_SECOND_HAND] = "de seconde main, non confirmé",
    [RODT_MESSAGE_EVIDENCE_FROM_MEMORY] = "de mémoire, non confirmé",
    [RODT_MESSAGE_EVIDENCE_COMMON_PRACTICE] = "usage du métier, sans source",

    /* The comparison of one wheel end in one line. */
    [RODT_MESSAGE_LINE_SPARE] = "de {released} à {applied}, course de {stroke}; limite {limit}; marge de {margin}",
    [RODT_MESSAGE_LINE_OVER] =
        "de {released} à {applied}, course de {stroke}; limite {limit}; dépassement de "
        "{excess}",
    [RODT_MESSAGE_LINE_AT_LIMIT] =
        "de {released} à {applied}, course de {stroke}; limite {limit}; exactement à la "
        "limite",
    [RODT_MESSAGE_LINE_LIMIT] = "de {released} à {applied}, course de {stroke}; limite {limit}",
    [RODT_MESSAGE_LINE_NO_LIMIT] = "de {released} à {applied}, course de {stroke}; aucune limite connue",
    [RODT_MESSAGE_LINE_NO_STROKE] = "de {released} à {applied}, aucune course calculable; limite {limit}",
    [RODT_MESSAGE_LINE_NOTHING] = "de {released} à {applied}, aucune course calculable; aucune limite connue",

    /* Reasons of a finding: the word is that of the reason, and of its form. */
    [RODT_MESSAGE_STROKE_OVER_LIMIT] = "la course dépasse la limite de {excess}",
    [RODT_MESSAGE_STROKE_OVER_OWN_LIMIT] = "la course dépasse la limite du transporteur, {limit}",
    [RODT_MESSAGE_STROKE_OVER_OWN_LIMIT_LAW] =
        "la course dépasse la limite du transporteur, {limit}, mais respecte celle de la loi,"
        " {law_limit}",
    [RODT_MESSAGE_STROKE_AT_LIMIT_PASSES] =
        "la course est exactement à la limite" NB ": la règle dit «" NB "pas plus que" NB "», donc elle est "
        "conforme, sans aucune marge",
    [RODT_MESSAGE_STROKE_AT_LIMIT_FAILS] =
        "la course est exactement à la limite" NB ": la règle dit «" NB "moins que" NB "», donc elle n'est "
        "pas conforme",
    [RODT_MESSAGE_STROKE_WITHIN_LIMIT] = "la course respecte la limite, avec une marge de {margin}",
    [RODT_MESSAGE_STROKE_NO_MOVEMENT] =
        "la tige n'a pas bougé" NB ": chercher une pièce brisée ou grippée, ou un manque d'air",
    [RODT_MESSAGE_STROKE_READINGS_SWAPPED] =
        "la mesure freins serrés est plus petite que la mesure freins desserrés" NB ": les mesures"
        " sont inversées, ou l'une est fausse, ou l'une a été prise à partir d'une marque et "
        "non de la face du récepteur; mesurer de nouveau",
    [RODT_MESSAGE_STROKE_BEYOND_RATED_STROKE] =
        "la course est plus longue que la course nominale de {rated_stroke}, ce que ce "
        "récepteur ne permet pas" NB ": identifier le récepteur et mesurer de nouveau",
    [RODT_MESSAGE_STROKE_PRESSURE_LOW] =
        "{pressure} lb/po² est sous la plage d'essai de {from} à {until} lb/po²" NB ": plus d'air "
        "allongerait la course, donc une réussite ne prouve rien et un échec reste un échec",
    [RODT_MESSAGE_STROKE_PRESSURE_LOW_AFTER] =
        "{pressure} lb/po² après le freinage est sous la plage d'essai de {from} à {until} "
        "lb/po²" NB ": plus d'air allongerait la course, donc une réussite ne prouve rien et un "
        "échec reste un échec",
    [RODT_MESSAGE_STROKE_PRESSURE_LOW_NO_AIR] =
        "la pression notée est 0" NB ": sans air, aucune tige ne bouge; remplir les réservoirs et "
        "mesurer de nouveau",
    [RODT_MESSAGE_STROKE_PRESSURE_HIGH] =
        "{pressure} lb/po² est au-dessus de la plage d'essai de {from} à {until} lb/po²" NB ": "
        "moins d'air raccourcirait la course, donc un échec ne prouve rien et une réussite "
        "reste une réussite",
    [RODT_MESSAGE_STROKE_PRESSURE_HIGH_AFTER] =
        "{pressure} lb/po² après le freinage est au-dessus de la plage d'essai de {from} à "
        "{until} lb/po²" NB ": moins d'air raccourcirait la course, donc un échec ne prouve rien "
        "et une réussite reste une réussite",
    [RODT_MESSAGE_STROKE_PRESSURE_NOT_RECORDED] =
        "pression des réservoirs non notée; l'essai demande de {from} à {until} lb/po²",
    [RODT_MESSAGE_STROKE_ENGINE_RUNNING] = "le moteur tournait" NB ": la course se mesure moteur arrêté",
    [RODT_MESSAGE_STROKE_SPRING_BRAKE_APPLIED] =
        "le frein à ressort était serré" NB ": il retient la tige sortie, donc la mesure n'est pas"
        " celle d'une course; le desserrer et mesurer de nouveau",
    [RODT_MESSAGE_STROKE_ASSUMED_STANDARD] = "type de course inconnu" NB ": jugé comme course standard",
    [RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LONG] =
        "type de course inconnu" NB ": jugé comme course standard; à course longue, ce format a la"
        " limite {long_limit}",
    [RODT_MESSAGE_STROKE_ASSUMED_STANDARD_WITHIN] =
        "type de course inconnu" NB ": jugé comme course standard; à course longue, ce format a la"
        " limite {long_limit}, donc la course est conforme dans les deux cas",
    [RODT_MESSAGE_STROKE_ASSUMED_STANDARD_OVER] =
        "type de course inconnu" NB ": jugé comme course standard; à course longue, ce format a la"
        " limite {long_limit}, donc la course est trop longue dans les deux cas",
    [RODT_MESSAGE_STROKE_ASSUMED_STANDARD_LOOK] =
        "type de course inconnu" NB ": jugé comme course standard; à course longue, ce format a la"
        " limite {long_limit}, et la course la respecte" NB ": chercher un signe (L ou LS dans la "
        "marque, orifices carrés, étiquette trapézoïdale)",
    [RODT_MESSAGE_STROKE_ASSUMED_CLAMP_STRICT] =
        "le genre de récepteur n'a pas été précisé" NB ": pris comme récepteur à collier, le cas "
        "le plus sévère",
    [RODT_MESSAGE_STROKE_ASSUMED_CLAMP_LOOK] =
        "le genre de récepteur n'a pas été précisé" NB ": pris comme récepteur à collier; un autre"
        " genre de ce format a une limite plus petite, donc aller voir",
    [RODT_MESSAGE_STROKE_CONFLICTING_MARKS] =
        "les marques du récepteur se contredisent" NB ": jugé du côté le plus sévère; l'identifier"
        " de nouveau",
    [RODT_MESSAGE_STROKE_NO_PUBLISHED_LIMIT] =
        "aucune limite n'est publiée pour ce récepteur, et aucune course nominale ni limite "
        "marquée dessus n'a été donnée",
    [RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE] = "{rules} n'a pas de texte pour ce jour",
    [RODT_MESSAGE_STROKE_RULES_NOT_IN_FORCE_FROM] = "{rules} n'a pas de texte pour ce jour; il commence le {day}",
    [RODT_MESSAGE_STROKE_LIMIT_UNCONFIRMED_SECOND_HAND] =
        "la limite n'est pas confirmée (de seconde main)" NB ": elle n'a pas été lue dans sa "
        "source et n'est pas la loi; la vérifier avant de s'y fier",
    [RODT_MESSAGE_STROKE_LIMIT_UNCONFIRMED_FROM_MEMORY] =
        "la limite n'est pas confirmée (de mémoire)" NB ": elle n'a pas été lue dans sa source et "
        "n'est pas la loi; la vérifier avant de s'y fier",
    [RODT_MESSAGE_STROKE_LIMIT_FROM_RATED] =
        "la limite est {share} de la course nominale de {rated_stroke} marquée sur le "
        "récepteur",
    [RODT_MESSAGE_STROKE_LIMIT_MARKED] =
        "ce récepteur n'est dans aucun tableau" NB ": la limite est celle marquée dessus",
    [RODT_MESSAGE_STROKE_PRINTED_MM_DIFFERS] =
        "la valeur imprimée de {printed} donnerait un autre résultat; la valeur en pouces "
        "décide" NB ": {limit}",
    [RODT_MESSAGE_STROKE_DRUM_HOT] =
        "le tambour était chaud, ce qui allonge la course" NB ": jugé tel quel; mesurer de nouveau"
        " à froid",
    [RODT_MESSAGE_STROKE_CHAMBER_MISSING] = "le récepteur n'a pas été indiqué",
    [RODT_MESSAGE_STROKE_RELEASED_MISSING] = "la position freins desserrés n'a pas été mesurée",
    [RODT_MESSAGE_STROKE_APPLIED_MISSING] = "la position freins serrés n'a pas été mesurée",
    [RODT_MESSAGE_STROKE_CHAMBER_UNREADABLE] = "le récepteur est illisible",
    [RODT_MESSAGE_STROKE_RELEASED_UNREADABLE] = "la position freins desserrés est illisible",
    [RODT_MESSAGE_STROKE_APPLIED_UNREADABLE] = "la position freins serrés est illisible",
    [RODT_MESSAGE_STROKE_OTHER_UNREADABLE] = "une autre donnée de cette roue est illisible",
    [RODT_MESSAGE_STROKE_SPREADSHEET_DATE] =
        "un tableur a changé la donnée en date; l'écrire comme texte, ou en décimales",
    [RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_SAME] = "la date peut désigner deux jours; la limite est la même aux deux",
    [RODT_MESSAGE_STROKE_DATE_AMBIGUOUS_DEPENDS] = "la date peut désigner deux jours; la limite dépend duquel",
    [RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME] = "la date est illisible; la limite n'a jamais changé",
    [RODT_MESSAGE_STROKE_DATE_UNREADABLE_SAME_FROM] =
        "la date est illisible; la limite n'a jamais changé, mais une inspection avant le "
        "{day} ne relève d'aucun texte de ces règles",
    [RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS] = "la date est illisible; la limite en dépend",
    [RODT_MESSAGE_STROKE_DATE_UNREADABLE_DEPENDS_FROM] =
        "la date est illisible; la limite en dépend, et une inspection avant le {day} ne "
        "relève d'aucun texte de ces règles",
    [RODT_MESSAGE_STROKE_LOST_BLANK] =
        "{said}" NB ": le résultat dépend de ce qu'on voulait écrire; l'écrire avec son espace",
    [RODT_MESSAGE_STROKE_LOST_BLANK_BOTH] =
        "{said}; {said_too}" NB ": le résultat dépend de ce qu'on voulait écrire; l'écrire avec "
        "son espace",
    [RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED] = "freins desserrés, lu {released}, et avec une espace perdue {meant}",
    [RODT_MESSAGE_STROKE_LOST_BLANK_RELEASED_TWO] =
        "freins desserrés, lu {released}, et avec une espace perdue {meant} ou {meant_too}",
    [RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED] = "freins serrés, lu {applied}, et avec une espace perdue {meant}",
    [RODT_MESSAGE_STROKE_LOST_BLANK_APPLIED_TWO] =
        "freins serrés, lu {applied}, et avec une espace perdue {meant} ou {meant_too}",
    [RODT_MESSAGE_STROKE_LIMIT_COMMON_PRACTICE] =
        "la limite est d'usage dans le métier, sans source" NB ": la vérifier avant de s'y fier",
    [RODT_MESSAGE_STROKE_MAJOR_DEFECT] =
        "un frein qui dépasse sa limite ou ne fonctionne pas est une défectuosité majeure ({document}, {section})" NB
        ": ne pas conduire, la signaler",
    [RODT_MESSAGE_STROKE_NO_PUBLISHED_LIMIT_AIR_CHECKS_ONLY] =
        "{rules} n'a que des contrôles d'air et ne limite aucune course" NB "; choisir un jeu de règles qui le fait",
    [RODT_MESSAGE_STROKE_ASSUMED_CLAMP_OPEN] =
        "le type de boîtier n'a pas été indiqué" NB ": traité comme à collier" NB "; un autre type de cette taille n'a "
        "pas de limite ici, à vérifier",

    /* What the tape proves. */
    [RODT_MESSAGE_PROOF_WITHIN] =
        "conformité prouvée" NB ": même au pire, le ruban, lu à {division} près, laisse la course "
        "dans la limite",
    [RODT_MESSAGE_PROOF_OVER] =
        "dépassement prouvé" NB ": même au mieux, le ruban, lu à {division} près, met la course "
        "au-dessus de la limite",
    [RODT_MESSAGE_PROOF_AT_BEST] =
        "ce ruban ne tranche pas" NB ": lu à {division} près, la vraie course est au mieux exactement à"
        " la limite",
    [RODT_MESSAGE_PROOF_AT_WORST] =
        "ce ruban ne tranche pas" NB ": lu à {division} près, la vraie course est au pire exactement à "
        "la limite",
    [RODT_MESSAGE_PROOF_EITHER] =
        "ce ruban ne tranche pas" NB ": lu à {division} près, la vraie course peut être d'un côté "
        "ou de l'autre de la limite; probabilité de dépassement {chance}",
    [RODT_MESSAGE_PROOF_NO_CHANCE] =
        "ce ruban ne tranche pas" NB ": lu à {division} près, la vraie course peut être d'un côté "
        "ou de l'autre de la limite",

    /* What to look at next to identify a chamber. */
    [RODT_MESSAGE_OBSERVATION_NOTHING] = "il ne reste rien à chercher",
    [RODT_MESSAGE_OBSERVATION_FAMILY] =
        "regarder comment le récepteur est assemblé" NB ": un collier, une bride boulonnée, un "
        "diaphragme déroulant, ou trois conduites d'air (DD-3)",
    [RODT_MESSAGE_OBSERVATION_STAMP] =
        "nettoyer le récepteur et lire le type estampé" NB ": un nombre comme 30, ou une lettre "
        "sur un récepteur boulonné",
    [RODT_MESSAGE_OBSERVATION_LONG_SIGN] =
        "chercher un signe de course longue" NB ": orifices carrés, étiquette trapézoïdale, ou les"
        " lettres L ou LS; sans signe, il est jugé comme standard",
    [RODT_MESSAGE_OBSERVATION_RATED_STROKE] =
        "lire la course nominale marquée sur le récepteur" NB ": 3 po a sa propre limite",
    [RODT_MESSAGE_OBSERVATION_DIAMETER] = "mesurer le diamètre extérieur du récepteur avec un ruban",

    /* What to do next about a wheel end. */
    [RODT_MESSAGE_ADVICE_ADJUST] = "le régler, mesurer de nouveau, et examiner la garniture et le tambour",
    [RODT_MESSAGE_ADVICE_FIND_FAULT] =
        "régleur automatique" NB ": ne pas le régler à la main pour qu'il passe; trouver la cause "
        "(régleur, sa pose, bagues, came, tambour, récepteur) et la réparer",
    [RODT_MESSAGE_ADVICE_FIND_ADJUSTER] =
        "trouver quel régleur c'est" NB ": régler un manuel et mesurer de nouveau; ne pas régler "
        "un automatique à la main pour qu'il passe, trouver la cause et la réparer",
    [RODT_MESSAGE_ADVICE_REPAIR] =
        "il ne freine pas" NB ": chercher une pièce brisée ou grippée, ou un manque d'air; le "
        "réparer",
    [RODT_MESSAGE_ADVICE_MEASURE] = "non vérifié" NB ": corriger ce qui est nommé, mesurer de nouveau",
    [RODT_MESSAGE_ADVICE_LOOK] =
        "bien réglé, mais beaucoup plus court que l'autre côté" NB ": voir s'il est trop serré ou "
        "s'il frotte",

    /* The roadside count of a vehicle. */
    [RODT_MESSAGE_COUNT_NONE] = "aucun frein n'a été compté",
    [RODT_MESSAGE_COUNT_ALL] =
        "{defective} {defective?frein défectueux|freins défectueux} sur {brakes}, {share}" NB ": "
        "{outcome}",
    [RODT_MESSAGE_COUNT_OPEN] =
        "{defective} {defective?frein défectueux|freins défectueux} sur {brakes}, {share}" NB ": "
        "{outcome}; {open}",
    [RODT_MESSAGE_COUNT_REACHED] = "le seuil de {criterion} est atteint",
    [RODT_MESSAGE_COUNT_CHART] =
        "le seuil de {criterion} est atteint, mais non {whole?celui|ceux} du tableau, {whole}"
        " {whole?frein entier|freins entiers}",
    [RODT_MESSAGE_COUNT_BELOW] = "sous le seuil de {criterion}",
    [RODT_MESSAGE_COUNT_UNKNOWN] = "{unknown} {unknown?frein inconnu|freins inconnus}",
    [RODT_MESSAGE_COUNT_UNKNOWN_WORST] =
        "{unknown} {unknown?frein inconnu|freins inconnus}, au pire {worst_share} de tous",
    [RODT_MESSAGE_COUNT_UNKNOWN_KNOWN] =
        "{unknown} {unknown?frein inconnu|freins inconnus}, et {known_share} {known?du|des} "
        "{known} {known?frein connu|freins connus}",
    [RODT_MESSAGE_COUNT_UNKNOWN_BOTH] =
        "{unknown} {unknown?frein inconnu|freins inconnus}, et {known_share} {known?du|des} "
        "{known} {known?frein connu|freins connus}, au pire {worst_share} de tous",

    /* One axle: the sentence around, and what is said. */
    [RODT_MESSAGE_AXLE_SAID] = "essieu {axle}" NB ": {said}",
    [RODT_MESSAGE_AXLE_CITED] = "essieu {axle}" NB ": {said} ({document}, {section})",
    [RODT_MESSAGE_AXLE_CITED_UNCONFIRMED] = "essieu {axle}" NB ": {said} ({document}, {section}; {evidence})",
    [RODT_MESSAGE_AXLE_SIZE_DIFFERS] =
        "les récepteurs sont de formats différents; les deux bouts d'un essieu doivent avoir "
        "le même",
    [RODT_MESSAGE_AXLE_SPRING_DIFFERS] =
        "les récepteurs de frein à ressort sont de formats différents; les deux bouts d'un "
        "essieu doivent avoir le même",
    [RODT_MESSAGE_AXLE_FAMILY_DIFFERS] =
        "les récepteurs sont de genres différents" NB ": voir si l'un a été mal identifié",
    [RODT_MESSAGE_AXLE_CLASS_DIFFERS] =
        "un récepteur est jugé à course longue et l'autre standard" NB ": examiner les marques des"
        " deux",
    [RODT_MESSAGE_AXLE_ARM_DIFFERS] =
        "les bras des régleurs de jeu n'ont pas la même longueur; les deux bouts d'un essieu "
        "doivent avoir la même",
    [RODT_MESSAGE_AXLE_STROKES_DIFFER] =
        "les courses diffèrent de {difference} po" NB ": aucune loi n'a de chiffre pour cela; en "
        "chercher la cause",
    [RODT_MESSAGE_AXLE_TORQUE_DIFFERS] =
        "format x longueur du bras donne {left} à gauche et {right} à droite" NB ": les deux bouts"
        " ne freinent pas également (information)",
    [RODT_MESSAGE_AXLE_LEFT_MISSING] = "le bout gauche n'a pas été donné, donc on n'en sait rien",
    [RODT_MESSAGE_AXLE_RIGHT_MISSING] = "le bout droit n'a pas été donné, donc on n'en sait rien",
    [RODT_MESSAGE_AXLE_STEERING_DEAD] =
        "un frein ne fonctionne pas" NB ": si cet essieu est directeur, cela suffit à mettre le "
        "véhicule hors service",

    /* Air checks: their titles. */
    [RODT_MESSAGE_AIR_TITLE_WARNING] = "avertisseur de basse pression",
    [RODT_MESSAGE_AIR_TITLE_BUILD_UP] = "montée en pression",
    [RODT_MESSAGE_AIR_TITLE_CUT_OUT] = "coupure du régulateur",
    [RODT_MESSAGE_AIR_TITLE_CUT_IN] = "reprise du régulateur",
    [RODT_MESSAGE_AIR_TITLE_LOSS_RELEASED] = "perte de pression, freins desserrés",
    [RODT_MESSAGE_AIR_TITLE_LOSS_APPLIED] = "perte de pression, freins serrés",
    [RODT_MESSAGE_AIR_TITLE_RESERVE] = "réserve après des freinages à fond",
    [RODT_MESSAGE_AIR_TITLE_SPRING_BRAKE] = "tenue du frein de stationnement",
    [RODT_MESSAGE_AIR_TITLE_TRACTOR_PROTECTION] = "protection du tracteur",
    [RODT_MESSAGE_AIR_TITLE_SUPPLY_VALVE] = "valve d'alimentation de la remorque",
    [RODT_MESSAGE_AIR_TITLE_PARKING_VALVE] = "valve de stationnement",
    [RODT_MESSAGE_AIR_TITLE_DRAIN] = "purgeurs",
    [RODT_MESSAGE_AIR_TITLE_AUDIBLE_LEAK] = "fuite audible",
    [RODT_MESSAGE_AIR_TITLE_CONTAMINATION] = "humidité, huile ou boue dans les réservoirs",
    [RODT_MESSAGE_AIR_TITLE_TRAILER_BRAKES] = "freins à ressort de la remorque sans alimentation",

    /* The sentence of an air check as a whole. */
    [RODT_MESSAGE_AIR_NOT_DONE] = "{title}" NB ": non fait",
    [RODT_MESSAGE_AIR_UNDETERMINED] = "{found}" NB ": indéterminé, {missing}",
    [RODT_MESSAGE_AIR_REQUIRED] = "{found}; exigé" NB ": {required}" NB ": {result}",
    [RODT_MESSAGE_AIR_EDGE_PASSES] =
        "{found}; exigé" NB ": {required}, et c'est exactement le bord, qui est conforme" NB ": "
        "{result}",
    [RODT_MESSAGE_AIR_EDGE_FAILS] =
        "{found}; exigé" NB ": {required}, et c'est exactement le bord, qui n'est pas conforme" NB ": "
        "{result}",
    [RODT_MESSAGE_AIR_RULE] = "{found}; la règle" NB ": {required}" NB ": {result}",
    [RODT_MESSAGE_AIR_USUAL] = "{found}; habituel" NB ": {required}" NB ": noté, ce n'est pas une limite",
    [RODT_MESSAGE_AIR_UNLESS] =
        "{found}; défectuosité majeure sauf" NB ": {required}" NB ": noté, les défectuosités moindres "
        "ne sont pas jugées",
    [RODT_MESSAGE_AIR_FIGURE_UNCONFIRMED] = "{finding} (chiffre {evidence})",
    [RODT_MESSAGE_AIR_RULE_UNCONFIRMED] = "{finding} (règle {evidence})",
    [RODT_MESSAGE_AIR_GOOD] = "bon",
    [RODT_MESSAGE_AIR_DEFECTIVE] = "défectueux",
    [RODT_MESSAGE_AIR_DEFECTIVE_MAJOR] = "défectueux, une défectuosité majeure",
    [RODT_MESSAGE_AIR_DEFECTIVE_MINOR] = "défectueux, une défectuosité mineure",
    [RODT_MESSAGE_AIR_FIGURE_OWN] = "{finding} (chiffre du transporteur)",
    [RODT_MESSAGE_AIR_RULE_OWN] = "{finding} (règle du transporteur)",
    [RODT_MESSAGE_AIR_FIGURE_OWN_BESIDE_LAW] = "{finding} (chiffre du transporteur; selon la loi" NB ": {law})",
    [RODT_MESSAGE_AIR_RULE_OWN_BESIDE_LAW] = "{finding} (règle du transporteur; selon la loi" NB ": {law})",
    [RODT_MESSAGE_AIR_LAW_NOTED] = "noté",
    [RODT_MESSAGE_AIR_LAW_UNDETERMINED] = "indéterminé",

    /* What an air check found. */
    [RODT_MESSAGE_AIR_FOUND_WARNING] = "l'avertisseur de basse pression s'est déclenché à {figure}",
    [RODT_MESSAGE_AIR_FOUND_BUILD_UP] = "{span}" NB ": {seconds}",
    [RODT_MESSAGE_AIR_FOUND_BUILD_UP_UNTIMED] = "{span}" NB ": non chronométré",
    [RODT_MESSAGE_AIR_FOUND_CUT_OUT] = "le régulateur a coupé à {figure}",
    [RODT_MESSAGE_AIR_FOUND_CUT_IN] = "le régulateur a repris à {figure}",
    [RODT_MESSAGE_AIR_FOUND_CUT_IN_BELOW] = "le régulateur a repris {figure} sous sa coupure",
    [RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED] = "freins desserrés, {fall} en {seconds}",
    [RODT_MESSAGE_AIR_FOUND_LOSS_RELEASED_IS] = "freins desserrés, {fall} en {seconds}, soit {figure}",
    [RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED] = "freins serrés, {fall} en {seconds}",
    [RODT_MESSAGE_AIR_FOUND_LOSS_APPLIED_IS] = "freins serrés, {fall} en {seconds}, soit {figure}",
    [RODT_MESSAGE_AIR_FOUND_RESERVE_IS] = "{fall}, soit {figure}",
    [RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION] = "le tracteur a gardé {figure}",
    [RODT_MESSAGE_AIR_FOUND_SUPPLY_VALVE] = "la valve d'alimentation de la remorque s'est fermée à {figure}",
    [RODT_MESSAGE_AIR_FOUND_PARKING_VALVE] = "la valve de stationnement est sortie à {figure}",
    [RODT_MESSAGE_AIR_FOUND_SPRING_BRAKE_YES] = "le frein de stationnement a tenu",
    [RODT_MESSAGE_AIR_FOUND_SPRING_BRAKE_NO] = "le frein de stationnement n'a pas tenu",
    [RODT_MESSAGE_AIR_FOUND_DRAIN_YES] = "les purgeurs bougent librement et les réservoirs se sont vidés",
    [RODT_MESSAGE_AIR_FOUND_DRAIN_NO] = "un purgeur est grippé ou un réservoir ne s'est pas vidé",
    [RODT_MESSAGE_AIR_FOUND_AUDIBLE_LEAK_YES] = "une fuite a été entendue",
    [RODT_MESSAGE_AIR_FOUND_AUDIBLE_LEAK_NO] = "aucune fuite n'a été entendue",
    [RODT_MESSAGE_AIR_FOUND_CONTAMINATION_YES] = "trop d'humidité, de l'huile ou de la boue est sortie d'un réservoir",
    [RODT_MESSAGE_AIR_FOUND_CONTAMINATION_NO] = "il n'est sorti ni huile ni boue, et peu d'humidité",
    [RODT_MESSAGE_AIR_FOUND_FALL] = "de {before} à {after}",
    [RODT_MESSAGE_AIR_FOUND_NO_FALL] = "la pression n'a pas été lue deux fois",
    [RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION_YES] = "la protection du tracteur a tenu",
    [RODT_MESSAGE_AIR_FOUND_TRACTOR_PROTECTION_NO] = "la protection du tracteur n'a pas tenu",
    [RODT_MESSAGE_AIR_FOUND_TRAILER_BRAKES_YES] =
        "les freins à ressort de la remorque se sont serrés sans alimentation",
    [RODT_MESSAGE_AIR_FOUND_TRAILER_BRAKES_NO] =
        "les freins à ressort de la remorque ne se sont pas serrés sans alimentation",

    /* What a build-up is timed over. */
    [RODT_MESSAGE_AIR_SPAN_UNKNOWN] = "la montée en pression",
    [RODT_MESSAGE_AIR_SPAN_PRESSURES] = "de {start} à {stop}",
    [RODT_MESSAGE_AIR_SPAN_PRESSURES_BOTH] = "de {start} à {stop} ou de {start_kpa} à {stop_kpa}",
    [RODT_MESSAGE_AIR_SPAN_WARNING] = "de l'arrêt de l'avertisseur à la pression maximale",
    [RODT_MESSAGE_AIR_SPAN_APPLICATIONS] = "d'après cinq freinages à fond à la pression maximale",
    [RODT_MESSAGE_AIR_SPAN_RECOVERY] = "d'après un freinage à fond au retour à la pression d'avant",

    /* What an air check asks for. */
    [RODT_MESSAGE_AIR_REQUIRED_PUBLISHED] = "{published}",
    [RODT_MESSAGE_AIR_REQUIRED_LESS_THAN] = "moins de {bound}",
    [RODT_MESSAGE_AIR_REQUIRED_NOT_MORE_THAN] = "pas plus de {bound}",
    [RODT_MESSAGE_AIR_REQUIRED_MORE_THAN] = "plus de {bound}",
    [RODT_MESSAGE_AIR_REQUIRED_NOT_LESS_THAN] = "pas moins de {bound}",
    [RODT_MESSAGE_AIR_REQUIRED_BETWEEN] = "de {from} à {bound}",
    [RODT_MESSAGE_AIR_REQUIRED_ABOUT] = "environ {bound}",
    [RODT_MESSAGE_AIR_REQUIRED_BELOW_CUT_OUT] = "{required} sous la coupure",

    /* What an undetermined air check lacks. */
    [RODT_MESSAGE_AIR_MISSING_ROW] = "{rules} n'a pas de chiffre pour cette vérification et ce véhicule",
    [RODT_MESSAGE_AIR_MISSING_VEHICLE] = "véhicule seul, ensemble ou autobus en décide",
    [RODT_MESSAGE_AIR_MISSING_TOWED_UNITS] = "le nombre de véhicules remorqués en décide",
    [RODT_MESSAGE_AIR_MISSING_BUILT] = "le jour de construction en décide",
    [RODT_MESSAGE_AIR_MISSING_VOLUME] = "les volumes réel et exigé des réservoirs en décident",
    [RODT_MESSAGE_AIR_MISSING_SPAN] = "la règle chronomètre autre chose, {span}",
    [RODT_MESSAGE_AIR_MISSING_VALUE] = "il manque une pression, un temps ou une réponse",
    [RODT_MESSAGE_AIR_MISSING_SENSE] = "les lectures se contredisent" NB ": les refaire",
    [RODT_MESSAGE_AIR_MISSING_CUT_OUT] = "la pression de coupure du régulateur en décide",
    [RODT_MESSAGE_AIR_MISSING_APPLICATIONS] = "la règle demande un autre nombre de freinages à fond, {applications}",
    [RODT_MESSAGE_AIR_MISSING_OTHER_WAY] =
        "cette façon échoue, mais la règle en accepte une autre" NB ": la vérifier",

    /* What would have been defective. */
    [RODT_MESSAGE_AIR_EDGE_DEFECTIVE] = "défectueux {when}",
    [RODT_MESSAGE_AIR_EDGE_EITHER] = "défectueux {when}, à moins qu'une autre façon ne soit conforme",
    [RODT_MESSAGE_AIR_EDGE_MAJOR] = "défectuosité majeure {when}",
    [RODT_MESSAGE_AIR_EDGE_MINOR] = "défectuosité mineure {when}",
    [RODT_MESSAGE_AIR_EDGE_USUAL] = "rien n'est défectueux d'après un chiffre habituel" NB ": {published}",
    [RODT_MESSAGE_AIR_EDGE_OR_MORE] = "à {bound} ou plus",
    [RODT_MESSAGE_AIR_EDGE_ABOVE] = "au-dessus de {bound}",
    [RODT_MESSAGE_AIR_EDGE_OR_BELOW] = "à {bound} ou moins",
    [RODT_MESSAGE_AIR_EDGE_BELOW] = "au-dessous de {bound}",
    [RODT_MESSAGE_AIR_EDGE_OUTSIDE] = "au-dessous de {bound} ou au-dessus de {upper}",
    [RODT_MESSAGE_AIR_EDGE_BY_VOLUME] = "{when} x volume réel / exigé",
    [RODT_MESSAGE_AIR_EDGE_HALF_CUT_OUT] = "{when}, ou sous la moitié de la coupure du régulateur si c'est moins",
    [RODT_MESSAGE_AIR_EDGE_UNDER_CUT_OUT] = "{when} sous la coupure",
    [RODT_MESSAGE_AIR_EDGE_PER_TOWED_UNIT] = "{when}, {more} de plus par véhicule remorqué après le premier",
    [RODT_MESSAGE_AIR_EDGE_SPRING_BRAKE] = "si le frein de stationnement ne tient pas",
    [RODT_MESSAGE_AIR_EDGE_DRAIN] = "si un purgeur est grippé ou si un réservoir ne se vide pas",
    [RODT_MESSAGE_AIR_EDGE_AUDIBLE_LEAK] = "si une fuite est entendue",
    [RODT_MESSAGE_AIR_EDGE_CONTAMINATION] = "s'il sort trop d'humidité, de l'huile ou de la boue",
    [RODT_MESSAGE_AIR_EDGE_TRACTOR_PROTECTION] = "si de l'air s'échappe de la conduite de service",
    [RODT_MESSAGE_AIR_EDGE_TRAILER_BRAKES] = "si les freins à ressort de la remorque ne se serrent pas d'eux-mêmes",

    [RODT_MESSAGE_AIR_NEVER] = "{found} : {result}",
    [RODT_MESSAGE_AIR_NEVER_WARNING] = "l'avertisseur de basse pression ne s'est jamais déclenché",
    [RODT_MESSAGE_AIR_NEVER_BUILD_UP] = "la pression n'est jamais montée",
    [RODT_MESSAGE_AIR_NEVER_CUT_OUT] = "le régulateur n'a jamais coupé",
    [RODT_MESSAGE_AIR_NEVER_CUT_IN] = "le régulateur n'a jamais réenclenché",
    [RODT_MESSAGE_AIR_NEVER_SUPPLY_VALVE] = "le robinet d'alimentation de la remorque ne s'est jamais fermé",
    [RODT_MESSAGE_AIR_NEVER_PARKING_VALVE] = "le robinet de stationnement n'est jamais sorti",
    [RODT_MESSAGE_AIR_NEVER_EDGE] = "défectueux si cela ne vient jamais ; {published}",

    [RODT_MESSAGE_AIR_DOUBT_CUT_IN_ABOVE_CUT_OUT] =
        "un régulateur réenclenche au-dessous de sa coupure : relire les deux",
    [RODT_MESSAGE_AIR_DOUBT_WARNING_ABOVE_CUT_IN] =
        "l'avertisseur se déclenche au-dessous du réenclenchement du régulateur : relire les deux",
    [RODT_MESSAGE_AIR_DOUBT_TOO_HIGH] = "une pression si haute est celle d'un système plein : relire le manomètre",
    [RODT_MESSAGE_AIR_DOUBT_CUT_OUT_LOW] = "aucun régulateur ne coupe si bas : relire le manomètre",
    [RODT_MESSAGE_AIR_DOUBT_CUT_IN_LOW] =
        "l'avertisseur se déclenche avant que la pression soit si basse : relire le manomètre",
    [RODT_MESSAGE_AIR_DOUBT_NO_TIME] = "aucune pression ne monte en un temps nul : chronométrer de nouveau",

    /* A finding as the person who made it says it aloud. */
    [RODT_MESSAGE_AIR_SPOKEN_GOOD] =
        "{^found}" NB "; c'est bon. {^when}, {would_be}.",
    [RODT_MESSAGE_AIR_SPOKEN_GOOD_IF] =
        "{^found}" NB "; c'est bon. {^when}, {is}.",
    [RODT_MESSAGE_AIR_SPOKEN_DEFECTIVE] =
        "{^found}" NB "; {is}. Exigé" NB ": {required}.",
    [RODT_MESSAGE_AIR_SPOKEN_DEFECTIVE_RULE] =
        "{^found}" NB "; {is}.",
    [RODT_MESSAGE_AIR_SPOKEN_NOTED] =
        "{^found}. {^edge}.",
    [RODT_MESSAGE_AIR_SPOKEN_UNDETERMINED] =
        "{^found}" NB "; cela ne décide rien" NB ": {missing}.",
    [RODT_MESSAGE_AIR_SPOKEN_NOT_DONE] =
        "{^title}" NB ": je n'ai pas fait cette vérification.",
    [RODT_MESSAGE_AIR_SPOKEN_UNCONFIRMED] =
        "{spoken} (Ce chiffre est {evidence}.)",
    [RODT_MESSAGE_AIR_SPOKEN_BE_DEFECTIVE] =
        "ce serait défectueux",
    [RODT_MESSAGE_AIR_SPOKEN_BE_MAJOR] =
        "ce serait une défectuosité majeure",
    [RODT_MESSAGE_AIR_SPOKEN_BE_MINOR] =
        "ce serait une défectuosité mineure",
    [RODT_MESSAGE_AIR_SPOKEN_IS_DEFECTIVE] =
        "c'est défectueux, je le signale et je ne conduis pas",
    [RODT_MESSAGE_AIR_SPOKEN_IS_MAJOR] =
        "c'est une défectuosité majeure, et personne ne conduit le véhicule avant la réparation",
    [RODT_MESSAGE_AIR_SPOKEN_IS_MINOR] =
        "c'est une défectuosité mineure, je l'écris au rapport et je le dis au transporteur",
    [RODT_MESSAGE_STROKE_SPOKEN_GOOD] =
        "Relâché {released}, appliqué {applied}" NB ": la course est de {stroke}. La limite est de "
        "{limit}" NB "; c'est bon. {^edge}, ce serait défectueux.",
    [RODT_MESSAGE_STROKE_SPOKEN_GOOD_AT_LIMIT] =
        "Relâché {released}, appliqué {applied}" NB ": la course est de {stroke}, exactement la limite" NB "; "
        "c'est encore bon. {^edge}, ce serait défectueux.",
    [RODT_MESSAGE_STROKE_SPOKEN_OUT] =
        "Relâché {released}, appliqué {applied}" NB ": la course est de {stroke}. La limite est de "
        "{limit}" NB "; elle est dépassée de {excess}, donc le frein est déréglé et défectueux.",
    [RODT_MESSAGE_STROKE_SPOKEN_OUT_AT_LIMIT] =
        "Relâché {released}, appliqué {applied}" NB ": la course est de {stroke}, exactement la limite, et"
        " elle doit être moindre" NB "; le frein est déréglé et défectueux.",
    [RODT_MESSAGE_STROKE_SPOKEN_INOPERATIVE] =
        "Relâché {released}, appliqué {applied}" NB ": la tige n'a pas bougé. Le frein ne fonctionne pas" NB ";"
        " c'est défectueux.",
    [RODT_MESSAGE_STROKE_SPOKEN_UNDETERMINED] =
        "Relâché {released}, appliqué {applied}" NB ": cela ne décide rien. {^reason}.",
    [RODT_MESSAGE_STROKE_SPOKEN_ABOVE] =
        "au-dessus de {limit}",
    [RODT_MESSAGE_STROKE_SPOKEN_AT_OR_ABOVE] =
        "à {limit} ou plus",
    [RODT_MESSAGE_STROKE_SPOKEN_OUT_NO_LIMIT] =
        "Relâché {released}, appliqué {applied}" NB ": la course est de {stroke}, et c'est défectueux. {^reason}.",
    [RODT_MESSAGE_STROKE_SPOKEN_UNCONFIRMED] = "{spoken} (Cette limite est {evidence}.)",
    [RODT_MESSAGE_AIR_SPOKEN_RULE_UNCONFIRMED] = "{spoken} (Cette règle est {evidence}.)",

    /* What is put into the sentences of a step where its rule set has a figure. */
    [RODT_MESSAGE_STEP_HOW] =
        " ({setup})",
    [RODT_MESSAGE_STEP_SPAN] =
        " ({span})",
    [RODT_MESSAGE_STEP_REQUIRED] =
        NB ": {published}",
    [RODT_MESSAGE_STEP_LIMIT] =
        " ({when})",
    [RODT_MESSAGE_STEP_MAJOR] =
        " C'est une défectuosité majeure.",
    [RODT_MESSAGE_STEP_MINOR] =
        " C'est une défectuosité mineure.",
    [RODT_MESSAGE_STEP_WINDOW] =
        "de {from} à {until} lb/po²",
    [RODT_MESSAGE_STEP_WINDOW_NONE] =
        "la pression que donne le fabricant",
    [RODT_MESSAGE_STEP_AT_LIMIT_PASSES] =
        " Une course exactement à la limite est encore bonne.",
    [RODT_MESSAGE_STEP_AT_LIMIT_FAILS] =
        " Une course exactement à la limite n'est pas bonne.",
    [RODT_MESSAGE_STEP_ACTION] =
        "Alors je ne conduis pas" NB ": je le signale et je le fais réparer.",
    [RODT_MESSAGE_STEP_ACTION_RANKED] =
        "Une défectuosité mineure, je l'écris au rapport et je la dis au transporteur. Avec une "
        "défectuosité majeure, personne ne conduit le véhicule" NB ": je la signale et je la fais réparer.",

    /* The sentences of statuses, at 500 and the number of the status. */
    [RODT_MESSAGE_STATUS_ARGUMENT] = "le programme a transmis une valeur absente ou impossible",
    [RODT_MESSAGE_STATUS_SPACE] = "l'espace réservé au texte est trop petit",
    [RODT_MESSAGE_STATUS_EMPTY] = "rien n'est écrit ici",
    [RODT_MESSAGE_STATUS_SYNTAX] = "ceci ne peut pas être lu comme ce qui est demandé ici",
    [RODT_MESSAGE_STATUS_AMBIGUOUS] = "ceci peut désigner plus d'une valeur",
    [RODT_MESSAGE_STATUS_UNIT] = "l'unité ne convient pas ici",
    [RODT_MESSAGE_STATUS_DATE_CELL] = "un tableur a changé cette valeur en date",
    [RODT_MESSAGE_STATUS_NEGATIVE] = "ceci ne peut pas être sous zéro",
    [RODT_MESSAGE_STATUS_IMPLAUSIBLE] = "ceci est plus grand que toute mesure de ce genre",
    [RODT_MESSAGE_STATUS_RANGE] = "ceci a plus de chiffres qu'on ne peut en garder exactement",
    [RODT_MESSAGE_STATUS_UNKNOWN_RULES] = "aucun règlement ne porte ce nom",
    [RODT_MESSAGE_STATUS_UNKNOWN_CHAMBER] = "ceci n'est pas une marque de récepteur connue",
    [RODT_MESSAGE_STATUS_TABLE] = "le tableau n'est pas valide",
    [RODT_MESSAGE_STATUS_LAXER] = "une limite du tableau est moins sévère que la loi",
    [RODT_MESSAGE_STATUS_MEMORY] = "il ne reste plus de mémoire",
    [RODT_MESSAGE_STATUS_INTERNAL] = "ceci est une faute de la bibliothèque, prière de la signaler",

    /* Errors: forms that several readers share, and what was found. */
    [RODT_MESSAGE_ERROR_ENGLISH] = "{text}",
    [RODT_MESSAGE_ERROR_EXPECTED] = "{wanted}" NB ": attendu ici, et non {found}",
    [RODT_MESSAGE_ERROR_WRITTEN_FOR] = "{found} est écrit là où était attendu" NB ": {wanted}",
    [RODT_MESSAGE_ERROR_NOT_WRITTEN] = "rien n'est écrit pour {field}",
    [RODT_MESSAGE_ERROR_NO_RULES] = "aucun règlement n'a été donné",
    [RODT_MESSAGE_ERROR_FOUND_END] = "la fin",
    [RODT_MESSAGE_ERROR_FOUND_BROKEN_BYTE] = "un octet fautif",

    /* Errors: what was expected. */
    [RODT_MESSAGE_ERROR_WANTED_NUMBER] = "un nombre",
    [RODT_MESSAGE_ERROR_WANTED_DIGIT] = "un chiffre",
    [RODT_MESSAGE_ERROR_WANTED_DECIMAL] = "un chiffre après le signe décimal",
    [RODT_MESSAGE_ERROR_WANTED_LENGTH_UNIT] = "po, mm, cm ou la fin du texte",
    [RODT_MESSAGE_ERROR_WANTED_PRESSURE_UNIT] = "psi, kPa ou la fin du texte",
    [RODT_MESSAGE_ERROR_WANTED_TIME_UNIT] = "s, min ou la fin du texte",
    [RODT_MESSAGE_ERROR_WANTED_AXLE] = "le numéro de l'essieu",
    [RODT_MESSAGE_ERROR_WANTED_SIDE] = "gauche ou droite",
    [RODT_MESSAGE_ERROR_WANTED_END] = "la fin",

    /* Errors: numbers and their units. */
    [RODT_MESSAGE_ERROR_DATE_CELL] = "ceci est une date; un tableur change les fractions en dates",
    [RODT_MESSAGE_ERROR_DAY_NUMBER] = "ceci est le numéro de jour d'une date de tableur",
    [RODT_MESSAGE_ERROR_NEGATIVE] = "une mesure ne peut pas être sous zéro",
    [RODT_MESSAGE_ERROR_INVISIBLE] = "caractère invisible ici ({found}); écrire la mesure de nouveau",
    [RODT_MESSAGE_ERROR_COMMA] =
        "une virgule peut séparer des décimales ou des milliers; écrire un point, ou choisir la virgule décimale",
    [RODT_MESSAGE_ERROR_THOUSANDS] = "le point peut séparer des milliers ici; écrire les décimales avec une virgule",
    [RODT_MESSAGE_ERROR_FEET] = "les pieds ne conviennent pas ici; écrire des pouces ou des millimètres",
    [RODT_MESSAGE_ERROR_BOUND] = "ceci est une borne ou une estimation; écrire la seule valeur lue",
    [RODT_MESSAGE_ERROR_RANGE] = "ceci peut être un intervalle ou une différence; écrire la seule valeur lue",
    [RODT_MESSAGE_ERROR_HYPHEN] = "deux nombres avec un trait d'union peuvent être un intervalle; en écrire un",
    [RODT_MESSAGE_ERROR_SECOND_NUMBER] = "ceci est un deuxième nombre; manque-t-il une barre ou un point décimal?",
    [RODT_MESSAGE_ERROR_NO_BLANK] = "ceci peut être un nombre entier et une fraction sans l'espace qui les sépare",
    [RODT_MESSAGE_ERROR_LEADING_ZERO] = "le nombre commence par un zéro",
    [RODT_MESSAGE_ERROR_DECIMALS] = "il y a plus de décimales qu'une mesure ne peut en avoir",
    [RODT_MESSAGE_ERROR_DIGITS] = "il y a plus de chiffres qu'une mesure ne peut en avoir",
    [RODT_MESSAGE_ERROR_ZERO_BELOW_BAR] = "une fraction ne peut pas avoir zéro sous sa barre",
    [RODT_MESSAGE_ERROR_BELOW_BAR] = "le nombre sous la barre de fraction est trop grand",
    [RODT_MESSAGE_ERROR_IMPROPER] = "une fraction après un nombre entier doit être plus petite que un",
    [RODT_MESSAGE_ERROR_DIVISIONS] =
        "aucun ruban n'est divisé ainsi; des demies aux soixante-quatrièmes ou des dixièmes étaient attendus",
    [RODT_MESSAGE_ERROR_NO_TAPE] = "aucun ruban n'est divisé ainsi",
    [RODT_MESSAGE_ERROR_UNIT_ALONE] = "il manque le nombre avant l'unité",
    [RODT_MESSAGE_ERROR_UNIT_WRONG] = "cette unité ne convient pas ici",
    [RODT_MESSAGE_ERROR_UNIT_TWICE] = "il y a deux unités après un nombre",
    [RODT_MESSAGE_ERROR_UNIT_MORE] = "rien de plus n'était attendu après l'unité; écrire une seule mesure",
    [RODT_MESSAGE_ERROR_UNIT_UNKNOWN] = "l'unité de ce nombre n'est pas connue",
    [RODT_MESSAGE_ERROR_UNIT_WORD] = "une unité de longueur est po, mm ou cm",
    [RODT_MESSAGE_ERROR_UNIT_OF_FORM] = "l'unité d'une longueur est po, mm ou cm",

    /* Errors: lengths, pressures, times and counts. */
    [RODT_MESSAGE_ERROR_TOO_LONG] =
        "aucune position de tige ni aucune course ne dépasse 24 po; un point décimal est-il perdu?",
    [RODT_MESSAGE_ERROR_METRIC_FRACTION] =
        "aucun ruban métrique n'a de fractions; écrire des pouces (2 1/8 po) ou des décimales (54.0 mm)",
    [RODT_MESSAGE_ERROR_LOST_BLANK] = "un espace peut être perdu ici" NB ": écrire 2 1/4, et non 21/4",
    [RODT_MESSAGE_ERROR_MARK] =
        "un récepteur porte une marque de 3/4 à 6 po; laisser vide s'il n'en a pas, et écrire l'unité" NB ": 3 po",
    [RODT_MESSAGE_ERROR_DIVISION] =
        "une division de ruban est au-dessus de 0 et d'au plus 1/2 po; pour des seizièmes, écrire 1/16",
    [RODT_MESSAGE_ERROR_TOO_HIGH] =
        "aucun manomètre de frein n'indique plus de 300 lb/po²; un point décimal est-il perdu?",
    [RODT_MESSAGE_ERROR_TOO_LATE] = "aucune vérification ne dure plus d'une journée",
    [RODT_MESSAGE_ERROR_SIXTY] = "les secondes à côté de minutes sont sous 60",
    [RODT_MESSAGE_ERROR_PART_OF_MINUTE] = "une partie de minute avec des secondes à côté" NB ": écrire 1 min 30 s",
    [RODT_MESSAGE_ERROR_SECONDS_AFTER] = "des secondes sont attendues après des minutes",
    [RODT_MESSAGE_ERROR_HOURS] = "un tableur peut en avoir fait des heures" NB ": écrire 1 min 30 s",
    [RODT_MESSAGE_ERROR_COLON] = "deux chiffres de secondes sont attendus après le deux-points" NB ": 1:30",
    [RODT_MESSAGE_ERROR_TIME_UNIT] = "une durée est en s ou en min",
    [RODT_MESSAGE_ERROR_VOLUME_UNIT] = "un volume est un nombre de pouces cubes",
    [RODT_MESSAGE_ERROR_VOLUME] = "aucun véhicule n'a autant de pouces cubes de réservoirs",
    [RODT_MESSAGE_ERROR_COUNT] = "un nombre entier de 0 à 99 est attendu",

    /* Errors: dates. */
    [RODT_MESSAGE_ERROR_DATE] = "une date était attendue, par exemple 2021-10-14",
    [RODT_MESSAGE_ERROR_DATE_HERE] = "une date était attendue ici, par exemple 2021-10-14",
    [RODT_MESSAGE_ERROR_DATE_END] = "la date se termine avant ceci",
    [RODT_MESSAGE_ERROR_NO_SUCH_DAY] = "ce jour n'existe pas au calendrier, ou n'est pas entre 1900 et 2199",
    [RODT_MESSAGE_ERROR_MONTH_AND_DAY] = "deux chiffres du mois et le jour étaient attendus ici",
    [RODT_MESSAGE_ERROR_DAY] = "deux chiffres du jour étaient attendus ici",
    [RODT_MESSAGE_ERROR_MONTH] = "un mois était attendu ici",
    [RODT_MESSAGE_ERROR_YEAR] = "l'année était attendue ici",
    [RODT_MESSAGE_ERROR_YEAR_DIGITS] = "une année de deux ou quatre chiffres était attendue ici",
    [RODT_MESSAGE_ERROR_SECOND_AND_YEAR] = "un deuxième nombre et l'année étaient attendus ici",
    [RODT_MESSAGE_ERROR_DAYS] =
        "les nombres peuvent désigner {count} jours; lequel vient d'abord, le jour, le mois ou l'année?",
    [RODT_MESSAGE_ERROR_DATE_ORDER] = "la date contredit l'ordre du jour, du mois et de l'année qui a été déclaré",

    /* Errors: chambers, stroke classes, positions and adjusters. */
    [RODT_MESSAGE_ERROR_NO_CHAMBER] = "il n'y a pas de récepteur",
    [RODT_MESSAGE_ERROR_CHAMBER_DATE] = "un tableur a fait une date de cette marque de récepteur",
    [RODT_MESSAGE_ERROR_CHAMBER_LETTER] =
        "une lettre seule peut être le format d'un récepteur à boulons ou un code de course nominale" NB ": "
        "écrire «" NB "bolt {size}" NB "»",
    [RODT_MESSAGE_ERROR_BOLT_LETTER] = "un récepteur à boulons a une lettre, de A à G",
    [RODT_MESSAGE_ERROR_CHAMBER_INCOMPLETE] =
        "ceci n'est pas une marque de récepteur complète" NB ": un numéro de type tel que 30, 24/30 ou 30L "
        "était attendu",
    [RODT_MESSAGE_ERROR_CHAMBER_UNEXPECTED] =
        "{found} ne fait pas partie d'une marque de récepteur telle que 30, 24/30, 30L, bolt C ou roto 30",
    [RODT_MESSAGE_ERROR_CHAMBER_TWICE] = "ceci nomme deux genres de récepteur à la fois",
    [RODT_MESSAGE_ERROR_STROKE_CLASS] = "un type de course est standard, long ou unknown",
    [RODT_MESSAGE_ERROR_POSITION_EXPECTED] =
        "{wanted}" NB ": attendu ici, comme dans 1L ou 2R; trouvé" NB ": {found}",
    [RODT_MESSAGE_ERROR_POSITION_AXLE] = "les essieux sont numérotés de 1 à {most}",
    [RODT_MESSAGE_ERROR_POSITION_NONE] = "aucune position; il en était attendu une telle que 1L ou 2R",
    [RODT_MESSAGE_ERROR_ADJUSTER] = "un régleur est manual, automatic ou unknown",

    /* Errors: the words of a form. */
    [RODT_MESSAGE_ERROR_ENGINE] = "le moteur était en marche ou arrêté" NB ": on ou off",
    [RODT_MESSAGE_ERROR_SPRING_BRAKE] = "le frein à ressort était desserré ou serré" NB ": released ou on",
    [RODT_MESSAGE_ERROR_DRUM] = "un tambour est froid, tiède ou chaud" NB ": cold, warm ou hot",
    [RODT_MESSAGE_ERROR_CHECK] = "cette vérification n'existe pas",
    [RODT_MESSAGE_ERROR_VEHICLE] = "un véhicule est single, combination, bus ou any",
    [RODT_MESSAGE_ERROR_SPAN] = "un intervalle est pressures, warning, applications ou recovery",
    [RODT_MESSAGE_ERROR_ANSWER] = "une réponse est yes ou no, oui ou non",

#include "catalogue_fr_steps.h"
};

const rodt_catalogue catalogue_fr = {.language = "fr-CA",
                                     .templates = templates,
                                     .count = RODT_MESSAGE_END,
                                     .decimal_sign = ",",
                                     .plural = RODT_PLURAL_RULE_BELOW_TWO};
