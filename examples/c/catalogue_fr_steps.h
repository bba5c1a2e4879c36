/* SPDX-License-Identifier: Apache-2.0 */
/* The steps of an inspection in French: rows of the catalogue, by which it is included. */
    [RODT_MESSAGE_STEP_SECURE_TITLE] =
        "Immobiliser le véhicule",
    [RODT_MESSAGE_STEP_SECURE_DO] =
        "Je stationne sur un sol ferme et plat, je serre le frein de stationnement, j'arrête le "
        "moteur, je garde la clé et je pose des cales devant et derrière les roues.",
    [RODT_MESSAGE_STEP_SECURE_SEE] =
        "Je vois les cales contre les pneus, le frein de stationnement serré, et je sais où se trouve"
        " chacun" NB ": personne sous le véhicule ni près de ses roues.",
    [RODT_MESSAGE_STEP_SECURE_GOOD] =
        "C'est bon, parce que le véhicule ne peut pas rouler quand ses freins sont relâchés, et que "
        "personne n'est là où une pièce peut bouger.",
    [RODT_MESSAGE_STEP_SECURE_DEFECTIVE] =
        "Ce ne serait pas sûr s'il manquait une cale ou si elle bougeait, si le sol était en pente, "
        "ou si je ne savais pas où se trouve chacun. Alors je ne continue pas.",
    [RODT_MESSAGE_STEP_DRAIN_TITLE] =
        "Purger les réservoirs",
    [RODT_MESSAGE_STEP_DRAIN_DO] =
        "J'ouvre le purgeur de chaque réservoir, d'abord celui d'alimentation, je le laisse se vider,"
        " je regarde ce qui sort et je le referme.",
    [RODT_MESSAGE_STEP_DRAIN_SEE] =
        "Je vois chaque purgeur s'ouvrir et se fermer à la main, chaque réservoir se vider, et "
        "seulement de l'air et un peu d'eau en sortir.",
    [RODT_MESSAGE_STEP_DRAIN_GOOD] =
        "C'est bon, parce que rien dans les réservoirs ne peut geler, coller ni boucher une valve.",
    [RODT_MESSAGE_STEP_DRAIN_DEFECTIVE] =
        "Ce serait défectueux si un purgeur était grippé ou si un réservoir ne se vidait pas, ou s'il"
        " sortait de l'huile, de la boue ou beaucoup d'eau" NB ": alors le compresseur ou le dessiccateur "
        "est en défaut.{rank}",
    [RODT_MESSAGE_STEP_COMPRESSOR_TITLE] =
        "Compresseur et courroie",
    [RODT_MESSAGE_STEP_COMPRESSOR_DO] =
        "Moteur arrêté, je regarde le compresseur, sa fixation, sa courroie et ses poulies ou son "
        "autre entraînement, son filtre et ses conduites.",
    [RODT_MESSAGE_STEP_COMPRESSOR_SEE] =
        "Je vois les boulons serrés, la courroie entière et tendue, les conduites entières, et pas "
        "d'huile là où il n'en faut pas.",
    [RODT_MESSAGE_STEP_COMPRESSOR_GOOD] =
        "C'est bon, parce que le compresseur est entraîné sans patiner et peut remplir les "
        "réservoirs.",
    [RODT_MESSAGE_STEP_COMPRESSOR_DEFECTIVE] =
        "Ce serait défectueux si un boulon était desserré, si la courroie était fendue, effilochée, "
        "lâche ou huileuse, ou si une conduite était usée ou fuyait.",
    [RODT_MESSAGE_STEP_WARNING_TITLE] =
        "Avertisseur de basse pression",
    [RODT_MESSAGE_STEP_WARNING_DO] =
        "Je fais baisser la pression jusqu'à ce que l'avertisseur de basse pression se "
        "déclenche{how}.",
    [RODT_MESSAGE_STEP_WARNING_SEE] =
        "Je vois le voyant ou j'entends l'avertisseur, et je lis le manomètre à ce moment.",
    [RODT_MESSAGE_STEP_WARNING_GOOD] =
        "C'est bon, parce que l'avertisseur se déclenche quand il reste de l'air pour "
        "s'arrêter{required}.",
    [RODT_MESSAGE_STEP_WARNING_DEFECTIVE] =
        "Ce serait défectueux si l'avertisseur se déclenchait trop tard{limit}, ou ne se déclenchait "
        "pas du tout.{rank}",
    [RODT_MESSAGE_STEP_BUILD_UP_TITLE] =
        "Montée en pression",
    [RODT_MESSAGE_STEP_BUILD_UP_DO] =
        "Je fais tourner le moteur et je chronomètre la montée en pression{how}.",
    [RODT_MESSAGE_STEP_BUILD_UP_SEE] =
        "Je vois l'aiguille monter sans arrêt{span} et je lis le temps qu'il a fallu.",
    [RODT_MESSAGE_STEP_BUILD_UP_GOOD] =
        "C'est bon, parce que le compresseur donne assez d'air, assez vite{required}.",
    [RODT_MESSAGE_STEP_BUILD_UP_DEFECTIVE] =
        "Ce serait défectueux si cela durait trop longtemps{limit}, ou si l'aiguille s'arrêtait avant"
        " la coupure du compresseur.{rank}",
    [RODT_MESSAGE_STEP_CUT_OUT_TITLE] =
        "Coupure du régulateur",
    [RODT_MESSAGE_STEP_CUT_OUT_DO] =
        "Moteur en marche, je regarde le manomètre jusqu'à ce que le compresseur cesse de pomper.",
    [RODT_MESSAGE_STEP_CUT_OUT_SEE] =
        "Je vois l'aiguille s'arrêter, j'entends le compresseur ou le dessiccateur se décharger, et "
        "je lis le manomètre.",
    [RODT_MESSAGE_STEP_CUT_OUT_GOOD] =
        "C'est bon, parce que le régulateur arrête le compresseur à la bonne pression{required}.",
    [RODT_MESSAGE_STEP_CUT_OUT_DEFECTIVE] =
        "Ce serait défectueux si le compresseur s'arrêtait à une mauvaise pression{limit}, ou ne "
        "s'arrêtait pas du tout.{rank}",
    [RODT_MESSAGE_STEP_CUT_IN_TITLE] =
        "Enclenchement du régulateur",
    [RODT_MESSAGE_STEP_CUT_IN_DO] =
        "Moteur en marche, j'appuie plusieurs fois sur la pédale pour faire baisser lentement la "
        "pression jusqu'à ce que le compresseur pompe de nouveau.",
    [RODT_MESSAGE_STEP_CUT_IN_SEE] =
        "Je vois l'aiguille cesser de baisser et remonter, et je la lis là où elle a tourné.",
    [RODT_MESSAGE_STEP_CUT_IN_GOOD] =
        "C'est bon, parce que le compresseur repart avant que l'air ne manque{required}.",
    [RODT_MESSAGE_STEP_CUT_IN_DEFECTIVE] =
        "Ce serait défectueux si le compresseur repartait à une mauvaise pression{limit}, ou ne "
        "repartait pas du tout.{rank}",
    [RODT_MESSAGE_STEP_AUDIBLE_LEAK_TITLE] =
        "Écouter les fuites",
    [RODT_MESSAGE_STEP_AUDIBLE_LEAK_DO] =
        "J'arrête le moteur et j'écoute s'il y a des fuites tout autour du véhicule{how}.",
    [RODT_MESSAGE_STEP_AUDIBLE_LEAK_SEE] =
        "Je n'entends pas d'air aux conduites, aux valves, aux récepteurs ni aux têtes "
        "d'accouplement.",
    [RODT_MESSAGE_STEP_AUDIBLE_LEAK_GOOD] =
        "C'est bon, parce que le circuit garde son air.",
    [RODT_MESSAGE_STEP_AUDIBLE_LEAK_DEFECTIVE] =
        "Ce serait défectueux si j'entendais une fuite. Alors je chronomètre aussi la perte "
        "d'air.{rank}",
    [RODT_MESSAGE_STEP_LOSS_RELEASED_TITLE] =
        "Perte d'air, freins relâchés",
    [RODT_MESSAGE_STEP_LOSS_RELEASED_DO] =
        "J'arrête le moteur, je laisse les freins relâchés et je chronomètre la baisse de "
        "l'aiguille{how}.",
    [RODT_MESSAGE_STEP_LOSS_RELEASED_SEE] =
        "Je vois où est l'aiguille au début et à la fin, et je soustrais.",
    [RODT_MESSAGE_STEP_LOSS_RELEASED_GOOD] =
        "C'est bon, parce que le circuit ne perd pas plus d'air qu'il n'est permis{required}.",
    [RODT_MESSAGE_STEP_LOSS_RELEASED_DEFECTIVE] =
        "Ce serait défectueux si l'aiguille baissait trop vite{limit}.{rank}",
    [RODT_MESSAGE_STEP_LOSS_APPLIED_TITLE] =
        "Perte d'air, freins appliqués",
    [RODT_MESSAGE_STEP_LOSS_APPLIED_DO] =
        "J'arrête le moteur, j'appuie à fond sur la pédale, je la tiens et je chronomètre la baisse "
        "de l'aiguille{how}.",
    [RODT_MESSAGE_STEP_LOSS_APPLIED_SEE] =
        "Je vois où est l'aiguille au début et à la fin du temps, et je soustrais.",
    [RODT_MESSAGE_STEP_LOSS_APPLIED_GOOD] =
        "C'est bon, parce que les freins peuvent être tenus sans perdre plus d'air qu'il n'est "
        "permis{required}.",
    [RODT_MESSAGE_STEP_LOSS_APPLIED_DEFECTIVE] =
        "Ce serait défectueux si l'aiguille baissait trop vite{limit}.{rank}",
    [RODT_MESSAGE_STEP_RESERVE_TITLE] =
        "Réserve d'air",
    [RODT_MESSAGE_STEP_RESERVE_DO] =
        "Je lis le manomètre, j'appuie à fond sur la pédale et je lis de nouveau{how}.",
    [RODT_MESSAGE_STEP_RESERVE_SEE] =
        "Je vois combien de pression il reste.",
    [RODT_MESSAGE_STEP_RESERVE_GOOD] =
        "C'est bon, parce que les réservoirs gardent assez d'air pour les arrêts suivants{required}.",
    [RODT_MESSAGE_STEP_RESERVE_DEFECTIVE] =
        "Ce serait défectueux s'il en manquait trop{limit}.{rank}",
    [RODT_MESSAGE_STEP_TRACTOR_PROTECTION_TITLE] =
        "Protection du tracteur",
    [RODT_MESSAGE_STEP_TRACTOR_PROTECTION_DO] =
        "Je laisse sortir l'air des conduites de la remorque et je regarde le manomètre du "
        "tracteur{how}.",
    [RODT_MESSAGE_STEP_TRACTOR_PROTECTION_SEE] =
        "J'entends l'air vers la remorque se couper, et je vois le tracteur garder sa pression.",
    [RODT_MESSAGE_STEP_TRACTOR_PROTECTION_GOOD] =
        "C'est bon, parce qu'un tracteur qui perd sa remorque peut encore s'arrêter{required}.",
    [RODT_MESSAGE_STEP_TRACTOR_PROTECTION_DEFECTIVE] =
        "Ce serait défectueux si l'air continuait de sortir du tracteur, ou s'il y en restait trop "
        "peu{limit}.{rank}",
    [RODT_MESSAGE_STEP_SUPPLY_VALVE_TITLE] =
        "Alimentation et freins d'urgence de la remorque",
    [RODT_MESSAGE_STEP_SUPPLY_VALVE_DO] =
        "La remorque étant remplie d'air, je tire la valve d'alimentation de la remorque et je tire "
        "doucement sur la remorque. Là où une pression est demandée, je fais aussi baisser l'air "
        "jusqu'à ce que la valve se ferme d'elle-même.",
    [RODT_MESSAGE_STEP_SUPPLY_VALVE_SEE] =
        "Je vois les freins de la remorque s'appliquer aussitôt et tenir.",
    [RODT_MESSAGE_STEP_SUPPLY_VALVE_GOOD] =
        "C'est bon, parce qu'une remorque qui perd son air s'arrête d'elle-même{required}.",
    [RODT_MESSAGE_STEP_SUPPLY_VALVE_DEFECTIVE] =
        "Ce serait défectueux si les freins de la remorque ne s'appliquaient pas ou ne tenaient pas, "
        "ou si la valve se fermait à une mauvaise pression{limit} ou pas du tout. Alors personne ne "
        "conduit le véhicule.{rank}",
    [RODT_MESSAGE_STEP_PARKING_VALVE_TITLE] =
        "Valve de stationnement",
    [RODT_MESSAGE_STEP_PARKING_VALVE_DO] =
        "Moteur arrêté, je fais baisser la pression jusqu'à ce que la valve de stationnement sorte.",
    [RODT_MESSAGE_STEP_PARKING_VALVE_SEE] =
        "Je vois la valve sortir, et je lis le manomètre à ce moment.",
    [RODT_MESSAGE_STEP_PARKING_VALVE_GOOD] =
        "C'est bon, parce que les freins à ressort s'appliquent d'eux-mêmes quand il n'y a presque "
        "plus d'air{required}.",
    [RODT_MESSAGE_STEP_PARKING_VALVE_DEFECTIVE] =
        "Ce serait défectueux si la valve sortait à une mauvaise pression{limit}, ou restait "
        "enfoncée.{rank}",
    [RODT_MESSAGE_STEP_SPRING_BRAKE_TITLE] =
        "Frein de stationnement",
    [RODT_MESSAGE_STEP_SPRING_BRAKE_DO] =
        "Le frein de stationnement serré et les cales retirées, je tire doucement contre lui sur un "
        "petit rapport. Puis je remets les cales.",
    [RODT_MESSAGE_STEP_SPRING_BRAKE_SEE] =
        "Je vois que le véhicule ne bouge pas.",
    [RODT_MESSAGE_STEP_SPRING_BRAKE_GOOD] =
        "C'est bon, parce que les freins à ressort tiennent le véhicule sans air.",
    [RODT_MESSAGE_STEP_SPRING_BRAKE_DEFECTIVE] =
        "Ce serait défectueux si le véhicule bougeait.{rank}",
    [RODT_MESSAGE_STEP_SERVICE_BRAKE_TITLE] =
        "Frein de service",
    [RODT_MESSAGE_STEP_SERVICE_BRAKE_DO] =
        "Là où il y a de la place, je relâche le frein de stationnement, je roule au pas et j'appuie "
        "sur la pédale.",
    [RODT_MESSAGE_STEP_SERVICE_BRAKE_SEE] =
        "Je sens le véhicule s'arrêter aussitôt et en ligne droite, et les freins se relâcher.",
    [RODT_MESSAGE_STEP_SERVICE_BRAKE_GOOD] =
        "C'est bon, parce que les freins des deux côtés agissent et se relâchent.",
    [RODT_MESSAGE_STEP_SERVICE_BRAKE_DEFECTIVE] =
        "Ce serait défectueux si le véhicule tirait d'un côté, ralentissait à peine, ou ne roulait "
        "pas librement après.",
    [RODT_MESSAGE_STEP_CHAMBER_TITLE] =
        "Quel récepteur c'est",
    [RODT_MESSAGE_STEP_CHAMBER_DO] =
        "À la roue, je lis la taille sur le récepteur, je regarde comment son boîtier est tenu et je "
        "cherche les signes d'une longue course" NB ": orifices carrés, étiquette trapézoïdale, L ou LS "
        "dans la marque.",
    [RODT_MESSAGE_STEP_CHAMBER_SEE] =
        "Je vois la taille et le genre, et s'il y a un signe de longue course.",
    [RODT_MESSAGE_STEP_CHAMBER_GOOD] =
        "C'est bon, parce que la taille et le genre donnent la limite, et que les deux bouts de "
        "l'essieu ont le même récepteur.",
    [RODT_MESSAGE_STEP_CHAMBER_DEFECTIVE] =
        "Ce serait défectueux si les récepteurs d'un essieu différaient. Sans signe de longue course,"
        " je tiens le récepteur pour ordinaire.",
    [RODT_MESSAGE_STEP_RELEASED_TITLE] =
        "Lecture relâchée",
    [RODT_MESSAGE_STEP_RELEASED_DO] =
        "Les roues calées et assez d'air dans le circuit, je relâche le frein de stationnement et je "
        "mesure de la face du récepteur au centre de l'axe de chape.",
    [RODT_MESSAGE_STEP_RELEASED_SEE] =
        "Je vois la tige tout au fond, et j'écris la lecture.",
    [RODT_MESSAGE_STEP_RELEASED_GOOD] =
        "C'est bon, parce qu'aucun frein ne tient la tige sortie, et que je sais d'où mesurer de "
        "nouveau.",
    [RODT_MESSAGE_STEP_RELEASED_DEFECTIVE] =
        "Cela ne compterait pas si le frein de stationnement était encore serré, si la tige était "
        "grippée ou pliée, ou si je ne retrouvais pas le même point.",
    [RODT_MESSAGE_STEP_APPLICATION_TITLE] =
        "Le freinage à fond",
    [RODT_MESSAGE_STEP_APPLICATION_DO] =
        "J'amène les réservoirs à {window}, j'arrête le moteur, je m'assure que personne n'est près "
        "des tiges, j'appuie à fond sur la pédale et je la tiens.",
    [RODT_MESSAGE_STEP_APPLICATION_SEE] =
        "Je vois le manomètre à cette pression avant d'appuyer et pendant que je tiens.",
    [RODT_MESSAGE_STEP_APPLICATION_GOOD] =
        "C'est bon, parce que la limite est faite pour cette pression.",
    [RODT_MESSAGE_STEP_APPLICATION_DEFECTIVE] =
        "Cela ne compterait pas à une autre pression" NB ": avec trop peu d'air, un mauvais frein paraît "
        "bon" NB "; avec trop d'air, un bon frein paraît mauvais.",
    [RODT_MESSAGE_STEP_APPLIED_TITLE] =
        "Lecture appliquée",
    [RODT_MESSAGE_STEP_APPLIED_DO] =
        "La pédale tenue, je mesure de nouveau, du même point au même axe.",
    [RODT_MESSAGE_STEP_APPLIED_SEE] =
        "Je vois de combien la tige est sortie, et j'écris la lecture.",
    [RODT_MESSAGE_STEP_APPLIED_GOOD] =
        "C'est bon, parce que la tige a bougé et reste où elle est.",
    [RODT_MESSAGE_STEP_APPLIED_DEFECTIVE] =
        "Ce serait défectueux si la tige ne bougeait pas. Une deuxième lecture plus courte que la "
        "première est une erreur de lecture, et je mesure de nouveau.",
    [RODT_MESSAGE_STEP_SUBTRACT_TITLE] =
        "La course",
    [RODT_MESSAGE_STEP_SUBTRACT_DO] =
        "Je soustrais la lecture relâchée de la lecture appliquée.",
    [RODT_MESSAGE_STEP_SUBTRACT_SEE] =
        "Je vois la course appliquée" NB ": de combien la tige a bougé.",
    [RODT_MESSAGE_STEP_SUBTRACT_GOOD] =
        "C'est bon, parce que la différence est la course, d'où que j'aie mesuré.",
    [RODT_MESSAGE_STEP_SUBTRACT_DEFECTIVE] =
        "Ce serait une erreur de prendre la lecture appliquée pour la course, ou de comparer avec la "
        "limite une traction à la main.",
    [RODT_MESSAGE_STEP_COMPARE_TITLE] =
        "La course et la limite",
    [RODT_MESSAGE_STEP_COMPARE_DO] =
        "Je cherche la limite pour la taille et le genre du récepteur et je compare la course avec "
        "elle.",
    [RODT_MESSAGE_STEP_COMPARE_SEE] =
        "Je vois si la course est en deçà de la limite, à la limite ou au-delà.",
    [RODT_MESSAGE_STEP_COMPARE_GOOD] =
        "C'est bon, parce que la course respecte la limite et que le frein a encore de la "
        "poussée.{at_limit}",
    [RODT_MESSAGE_STEP_COMPARE_DEFECTIVE] =
        "Ce serait défectueux si la course dépassait la limite. Je ne règle pas à la main un régleur "
        "automatique pour qu'il passe" NB ": je fais trouver et réparer la cause.",
    [RODT_MESSAGE_STEP_VEHICLE_TITLE] =
        "Le verdict, et que faire",
    [RODT_MESSAGE_STEP_VEHICLE_DO] =
        "Je repasse tout ce que j'ai trouvé, je l'écris au rapport et je dis ce qui se fait "
        "maintenant.",
    [RODT_MESSAGE_STEP_VEHICLE_SEE] =
        "Je vois chaque vérification faite et chaque frein mesuré, ou je nomme ce qui reste ouvert.",
    [RODT_MESSAGE_STEP_VEHICLE_GOOD] =
        "Le véhicule est bon, parce que chaque vérification est faite et qu'aucune n'a trouvé de "
        "défaut.",
    [RODT_MESSAGE_STEP_VEHICLE_DEFECTIVE] =
        "Il serait défectueux si une vérification ou un frein l'était. {action}",
