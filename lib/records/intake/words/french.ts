import type { Words } from './concepts';

/** French trade words and abbreviations. */
export const french: Words = {
  thrust_play:
    'jeu axial, jeu axial butée, jeu de butée, jeu butée, jeu longitudinal, jeu axial rotor, j axial, flottement axial, déplacement axial',
  thrust_hint: 'axial, butée',
  runout:
    'faux rond, faux ronds, battement, battement radial, excentricité, voile, voilage, concentricité, battement arbre, faux rond arbre',
  nut_stand_out: 'dépassement écrou, dépassement de écrou, saillie écrou, dépassement, dépass écrou',
  tip: 'jeu en bout d aubes, jeu en bout d ailettes, jeu en bout, jeu bout d aube, jeu bout d ailette, jeu bout d aubes, jeu bout d ailettes, jeu d aubes, jeu des aubes, jeu d ailettes, jeu sommet aubes, bout d aubes, bout d ailettes',
  gap: 'jeu, jeux, jeu radial, entrefer',
  compressor: 'compresseur, compr, côté compresseur, roue compresseur, côté air, soufflante',
  turbine: 'turbine, côté turbine, roue turbine, côté gaz, turb',
  found:
    'avant, avant démontage, avant dépose, avant révision, avant ouverture, démontage, à ouverture, ouverture, à arrivée, arrivée, trouvé, constaté, dépose, à la réception',
  left: 'après, après remontage, après montage, après révision, remontage, montage, laissé, au départ, départ, relevé final, apr, repose, après repose, après visite',
  '12': 'haut, en haut',
  '3': 'droite, droit, côté droit, dr',
  '6': 'bas, en bas',
  '9': 'gauche, côté gauche, gche',
  clock_word: 'heures, heure, h',
  seen_from: 'vu du, vu de, vue du, vue de, vu, vue, vu côté',
  hours:
    'heures, heures de marche, heures de fonctionnement, heures de service, h marche, hdm, heures marche, heures fonctionnement, compteur, compteur horaire, horamètre, nb heures, nombre d heures, hres, heure',
  engine: 'moteur, groupe, groupe électrogène, machine, moteur principal, diesel, mot',
  unit: 'turbo, turbocompresseur, turbosoufflante, rotor, ensemble tournant, équipage mobile, cartouche, TC, unité',
  serial:
    'numéro de série, n série, n de série, no série, no de série, num série, matricule, série, n fabrication',
  number: 'numéro, repère, rep, identifiant, désignation machine',
  frame: 'taille, modèle, gabarit',
  type: 'type',
  site: 'site, centrale, navire, usine, lieu, station',
  bank: 'banc, rangée, côté, ligne de cylindres, rangée de cylindres',
  workshop: 'atelier, effectué par, réalisé par, mesuré par, prestataire, société',
  kind: 'motif, nature, type d intervention, type de visite, motif de visite, type de révision, raison',
  planned: 'planifié, planifiée, programmé, programmée, systématique, prévu, prévue, préventif',
  unplanned:
    'non planifié, non planifiée, non programmé, non programmée, imprévu, imprévue, avarie, panne, fortuit, correctif',
  fitted:
    'pièces montées, pièces neuves, pièces remplacées, pièces changées, rechanges, remplacé, pièces de rechange',
  remarks: 'remarque*, commentaire*, observation*, note, notes, obs',
  revision: 'révision document, indice, indice de révision, version',
  overhaul:
    'visite, intervention, ordre de travail, n ot, ot, bon de travail, rapport, n rapport, n intervention, n visite, numéro ot, révision générale',
  characteristic: 'caractéristique, grandeur, mesure, paramètre, cote, point de mesure, point mesuré',
  stage: 'état, étape, phase, avant après, moment',
  position: 'position, pos, position horaire, emplacement, point',
  value: 'valeur, relevé, valeur mesurée, mesuré, résultat, lecture, val',
  uom: 'unité, unité de mesure, unités',
  lower: 'passe, entre, cale passe',
  upper: 'ne passe pas, ne passe plus, n entre pas, cale ne passe pas',
  date: 'date, date de visite, date intervention, date révision, date d intervention, jour, date de révision',
  extreme: 'maxi, mini, maximum, minimum, moyenne, moyen',
  other:
    'limite, limites, tolérance, admissible, nominal, nominale, depuis, prochaine, prochain, précédente, précédent, prix, quantité, qté, coût, client, facture, livraison, fabrication, constructeur, appareil de mesure, écart, usure, température, pression, vitesse, référence, désignation, équilibrage',
  elsewhere:
    'palier, paliers, roulement, joint, labyrinthe, distributeur, diffuseur, carter, bague, coussinet',
  filler:
    'de, du, la, le, les, d, des, en, au, aux, à, et, ou, arbre, bout, aubes, ailettes, roue, mm, rotor arbre, sur, par',
};
