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

    /* What the tape proves. */
    [RODT_MESSAGE_PROOF_WITHIN] =
        "conformité prouvée" NB ": même au pire, le ruban, lu à {division} près, laisse la course "
        "dans la limite",
    [RODT_MESSAGE_PROOF_OVER] =
        "dépassement prouvé" NB ": même au mieux, le ruban, lu à {division} près, met la course "
        "au-dessus de la limite",
    [RODT_MESSAGE_PROOF_AT_BEST] =
        "ce ruban ne tranche pas" NB ": lu à {division} près, la vraie course est au mieux égale à"
        " la limite; probabilité de dépassement {chance}",
    [RODT_MESSAGE_PROOF_AT_WORST] =
        "ce ruban ne tranche pas" NB ": lu à {division} près, la vraie course est au pire égale à "
        "la limite; probabilité de dépassement {chance}",
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
        "régleur automatique" NB ": trouver la défectuosité (régleur, sa pose, bagues, came, "
        "tambour, récepteur); le resserrer à la main cache la défectuosité",
    [RODT_MESSAGE_ADVICE_FIND_ADJUSTER] =
        "trouver quel régleur c'est" NB ": un régleur manuel se règle et on mesure de nouveau; un "
        "automatique a une défectuosité qu'il faut trouver, et ne se resserre pas à la main",
    [RODT_MESSAGE_ADVICE_REPAIR] =
        "il ne freine pas" NB ": chercher une pièce brisée ou grippée, ou un manque d'air; le "
        "réparer",
    [RODT_MESSAGE_ADVICE_MEASURE] = "rien n'est prouvé" NB ": corriger ce qui est nommé, mesurer de nouveau",
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
    [RODT_MESSAGE_AIR_TITLE_CONTAMINATION] = "huile ou boue dans les réservoirs",

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
    [RODT_MESSAGE_AIR_FOUND_CONTAMINATION_YES] = "de l'huile ou de la boue est sortie d'un réservoir",
    [RODT_MESSAGE_AIR_FOUND_CONTAMINATION_NO] = "il n'est sorti ni huile ni boue",
    [RODT_MESSAGE_AIR_FOUND_FALL] = "de {before} à {after}",
    [RODT_MESSAGE_AIR_FOUND_NO_FALL] = "la pression n'a pas été lue deux fois",

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
    [RODT_MESSAGE_AIR_EDGE_CONTAMINATION] = "s'il sort de l'huile ou de la boue",

    [RODT_MESSAGE_AIR_NEVER] = "{found} : {result}",
    [RODT_MESSAGE_AIR_NEVER_WARNING] = "l'avertisseur de basse pression ne s'est jamais déclenché",
    [RODT_MESSAGE_AIR_NEVER_BUILD_UP] = "la pression n'est jamais montée",
    [RODT_MESSAGE_AIR_NEVER_CUT_OUT] = "le régulateur n'a jamais coupé",
    [RODT_MESSAGE_AIR_NEVER_CUT_IN] = "le régulateur n'a jamais réenclenché",
    [RODT_MESSAGE_AIR_NEVER_TRACTOR_PROTECTION] = "la protection du tracteur n'a pas fonctionné",
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
};

const rodt_catalogue catalogue_fr = {.language = "fr-CA",
                                     .templates = templates,
                                     .count = RODT_MESSAGE_END,
                                     .decimal_sign = ",",
                                     .plural = RODT_PLURAL_RULE_BELOW_TWO};
