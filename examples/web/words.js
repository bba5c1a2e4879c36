// SPDX-License-Identifier: Apache-2.0
// The page's own labels. Questions, sentences and verdicts come from the command in the same languages.
"use strict";

const LANGUAGES = ["en", "fr", "es"];
const LANGUAGE_NAMES = ["English", "Français", "Español"];

const WORDS = {
  title: ["Brake walk-round", "Inspection des freins", "Inspección de frenos"],
  offline: [
    "Works without a signal. Nothing leaves this phone.",
    "Fonctionne sans réseau. Rien ne quitte ce téléphone.",
    "Funciona sin señal. Nada sale de este teléfono.",
  ],
  fresh: ["New inspection", "Nouvelle inspection", "Nueva inspección"],
  unfinished: ["Go on with", "Continuer", "Continuar"],
  finished: ["Finished", "Terminées", "Terminadas"],
  goOn: ["Go on", "Continuer", "Continuar"],
  see: ["See", "Voir", "Ver"],
  importFile: ["Open a record file", "Ouvrir un fichier", "Abrir un archivo"],
  learn: ["Practice and cards", "Exercices et fiches", "Práctica y fichas"],
  settings: ["Settings", "Réglages", "Ajustes"],
  bestEffort: [
    "The browser may clear what it keeps. Save each record as a file.",
    "Le navigateur peut effacer ce qu’il garde. Enregistrez chaque inspection dans un fichier.",
    "El navegador puede borrar lo que guarda. Guarde cada registro en un archivo.",
  ],
  notKept: [
    "This browser keeps nothing. Save the file before you close the page.",
    "Ce navigateur ne garde rien. Enregistrez le fichier avant de fermer la page.",
    "Este navegador no guarda nada. Guarde el archivo antes de cerrar la página.",
  ],
  chooseRules: ["Which rules?", "Quelles règles ?", "¿Qué reglas?"],
  airRules: ["Air checks", "Contrôles d’air", "Controles de aire"],
  sameRules: ["of the same rules", "des mêmes règles", "de las mismas reglas"],
  lastTime: ["As last time", "Comme la dernière fois", "Como la última vez"],
  again: [
    "New inspection of this vehicle",
    "Nouvelle inspection de ce véhicule",
    "Nueva inspección de este vehículo",
  ],
  back: ["Back", "Retour", "Atrás"],
  help: ["Help", "Aide", "Ayuda"],
  more: ["More", "Plus", "Más"],
  map: ["Vehicle", "Véhicule", "Vehículo"],
  close: ["Close", "Fermer", "Cerrar"],
  home: ["Home", "Accueil", "Inicio"],
  skip: ["Skip", "Passer", "Omitir"],
  skipEnd: ["Skip the rest of", "Passer le reste de", "Omitir el resto de"],
  typeIt: ["Type it", "Saisir au clavier", "Escribirlo"],
  useTape: ["Tape in inches", "Ruban en pouces", "Cinta en pulgadas"],
  useMm: ["Tape in millimetres", "Ruban en millimètres", "Cinta en milímetros"],
  usePsi: ["Gauge in psi", "Manomètre en psi", "Manómetro en psi"],
  useKpa: ["Gauge in kPa", "Manomètre en kPa", "Manómetro en kPa"],
  useClock: ["Clock", "Chronomètre", "Reloj"],
  answer: ["Your answer", "Votre réponse", "Su respuesta"],
  enter: ["Enter", "Valider", "Aceptar"],
  keep: ["Keep it as it is", "La garder telle quelle", "Dejarlo así"],
  answerAgain: ["Answer again", "Répondre de nouveau", "Responder otra vez"],
  keepHint: [
    "Odd, but true? Press here.",
    "Étrange, mais vrai ? Appuyez ici.",
    "¿Raro, pero cierto? Pulse aquí.",
  ],
  wholeInches: ["Whole inches", "Pouces entiers", "Pulgadas enteras"],
  sixteenths: ["The mark after", "Le trait après", "La marca después de"],
  centimetres: ["Whole centimetres", "Centimètres entiers", "Centímetros enteros"],
  millimetres: ["Millimetres after", "Millimètres après", "Milímetros después de"],
  otherPressure: ["Other pressure", "Autre pression", "Otra presión"],
  ones: ["from", "à partir de", "desde"],
  inches: ["inches", "pouces", "pulgadas"],
  erase: ["Erase", "Effacer", "Borrar"],
  dolly: ["dolly", "diabolo", "dolly"],
  axlesOf: ["Axles of this unit", "Essieux de cette unité", "Ejes de esta unidad"],
  done: ["Done", "Terminé", "Listo"],
  start: ["Start", "Démarrer", "Empezar"],
  stop: ["Stop", "Arrêter", "Parar"],
  restart: ["From the beginning", "Recommencer", "Desde el principio"],
  use: ["Use", "Prendre", "Usar"],
  lessSecond: ["1 s less", "1 s de moins", "1 s menos"],
  moreSecond: ["1 s more", "1 s de plus", "1 s más"],
  timeIsUp: [
    "Time is up. Read the gauge.",
    "C’est le temps. Lisez le manomètre.",
    "Tiempo cumplido. Lea el manómetro.",
  ],
  running: [
    "The clock runs, even with the phone locked.",
    "Le chronomètre tourne, même téléphone verrouillé.",
    "El reloj corre, incluso con el teléfono bloqueado.",
  ],
  seconds: ["seconds", "secondes", "segundos"],
  understood: ["Understood", "Compris", "Entendido"],
  progress: ["Question", "Question", "Pregunta"],
  of: ["of", "sur", "de"],
  front: ["front", "avant", "frente"],
  released: ["released", "desserré", "liberado"],
  applied: ["applied", "serré", "aplicado"],
  stroke: ["stroke", "course", "carrera"],
  stamp: ["stamp", "marque", "marca"],
  tag: ["tag", "plaque", "placa"],
  port: ["ports", "orifices", "orificios"],
  clevis: ["clevis pin", "axe de chape", "pasador de horquilla"],
  adjuster: ["adjuster", "levier", "ajustador"],
  measureHere: ["chamber face to pin", "face de la chambre à l’axe", "cara de la cámara al pasador"],
  armHere: ["camshaft to pin", "arbre à came à l’axe", "árbol de levas al pasador"],
  openEnd: ["open", "à faire", "abierto"],
  changeEnd: ["Change the last answer of", "Changer la dernière réponse de", "Cambiar la última respuesta de"],
  againEnd: ["Measure again", "Mesurer de nouveau", "Medir de nuevo"],
  mapHint: [
    "Tap a wheel end to see it or to go back to it.",
    "Touchez une roue pour la voir ou y revenir.",
    "Toque una rueda para verla o volver a ella.",
  ],
  note: ["Write a note", "Écrire une note", "Escribir una nota"],
  noteText: ["Note", "Note", "Nota"],
  showAll: ["Everything so far", "Tout jusqu’ici", "Todo hasta ahora"],
  speakOn: ["Words to say aloud", "Phrases à dire", "Frases para decir en voz alta"],
  on: ["on", "oui", "sí"],
  off: ["off", "non", "no"],
  leftHand: ["Left hand", "Main gauche", "Mano izquierda"],
  sun: ["Sun (strong contrast)", "Soleil (fort contraste)", "Sol (alto contraste)"],
  sound: ["Sound at the end of a count", "Son à la fin d’un décompte", "Sonido al final de una cuenta"],
  vibration: ["Vibration", "Vibration", "Vibración"],
  language: ["Language", "Langue", "Idioma"],
  saveFile: [
    "Save the record as a file",
    "Enregistrer l’inspection en fichier",
    "Guardar el registro en un archivo",
  ],
  share: ["Share", "Partager", "Compartir"],
  report: ["Report", "Rapport", "Informe"],
  print: ["Print", "Imprimer", "Imprimir"],
  savePage: ["Save the report", "Enregistrer le rapport", "Guardar el informe"],
  remove: ["Delete from this phone", "Supprimer de ce téléphone", "Borrar de este teléfono"],
  removeSure: ["Delete it for good?", "Supprimer pour de bon ?", "¿Borrar para siempre?"],
  removeYes: ["Yes, delete", "Oui, supprimer", "Sí, borrar"],
  cancel: ["No, keep it", "Non, garder", "No, conservar"],
  theEnd: ["The walk-round is done", "L’inspection est terminée", "La inspección ha terminado"],
  saveNow: [
    "Save the file now: the browser may clear what it keeps.",
    "Enregistrez le fichier maintenant : le navigateur peut effacer ce qu’il garde.",
    "Guarde el archivo ahora: el navegador puede borrar lo que guarda.",
  ],
  cards: ["Cards to say aloud", "Fiches à dire", "Fichas para decir"],
  limits: ["Limits for the cab", "Limites pour la cabine", "Límites para la cabina"],
  practiceBrakes: ["Practice: read the tape", "Exercice : lire le ruban", "Práctica: leer la cinta"],
  practiceChecks: [
    "Practice: checks in the cab",
    "Exercice : contrôles en cabine",
    "Práctica: controles en cabina",
  ],
  paperBrakes: ["On paper: the tape", "Sur papier : le ruban", "En papel: la cinta"],
  paperChecks: [
    "On paper: checks in the cab",
    "Sur papier : contrôles en cabine",
    "En papel: controles en cabina",
  ],
  sheet: ["Sheet", "Feuille", "Hoja"],
  key: ["Answers", "Corrigé", "Respuestas"],
  another: ["Another one", "Une autre", "Otra"],
  firstReading: ["First reading", "Première lecture", "Primera lectura"],
  secondReading: ["Second reading", "Deuxième lecture", "Segunda lectura"],
  yourVerdict: ["Stroke, limit and verdict?", "Course, limite et verdict ?", "¿Carrera, límite y veredicto?"],
  right: ["Right", "Juste", "Correcto"],
  wrong: ["Not right", "Faux", "Incorrecto"],
  next: ["Next", "Suivant", "Siguiente"],
  yourScore: ["Right answers", "Réponses justes", "Respuestas correctas"],
  marks: ["Marks", "Marques", "Marcas"],
  failed: ["This file cannot be read.", "Ce fichier ne peut pas être lu.", "No se puede leer este archivo."],
  finishedOne: ["finished", "terminée", "terminada"],
  unfinishedOne: ["not finished", "non terminée", "sin terminar"],
  words: ["Other words", "Autres mots", "Otras palabras"],
  allSame: ["Yes, all as listed", "Oui, tout est comme indiqué", "Sí, todo como se indica"],
  verdict: ["verdict", "verdict", "veredicto"],
  noStroke: ["No stroke", "Pas de course", "Sin carrera"],
  inAdjustment: ["in adjustment", "réglé", "ajustado"],
  outOfAdjustment: ["out of adjustment", "déréglé", "desajustado"],
  inoperative: ["inoperative", "inopérant", "no funciona"],
  undetermined: ["undetermined", "indéterminé", "sin determinar"],
  otherChamber: ["Other mark", "Autre marque", "Otra marca"],
  notLegible: ["Not legible", "Illisible", "Ilegible"],
  diameter: ["diameter", "diamètre", "diámetro"],
  heldBy: ["clamp, bolts …", "collier, boulons …", "abrazadera, tornillos …"],
  cannotTell: ["Cannot tell", "Impossible à dire", "No se puede saber"],
  otherSign: ["Another sign", "Un autre signe", "Otra señal"],
  takeChamber: ["Answer:", "Réponse :", "Respuesta:"],
  settled: ["One chamber is left", "Il reste un récepteur", "Queda una cámara"],
  notSettled: ["Not settled", "Pas tranché", "No está claro"],
};

let language = 0; // index into LANGUAGES

function word(key) {
  return WORDS[key][language];
}

/* The first language of the browser that the page has. */
function languageOfBrowser() {
  for (const wanted of navigator.languages || []) {
    const at = LANGUAGES.indexOf(wanted.slice(0, 2));
    if (at >= 0) return at;
  }
  return 0;
}

function setLanguage(at) {
  language = at;
  document.documentElement.lang = LANGUAGES[at];
  document.title = word("title");
}
