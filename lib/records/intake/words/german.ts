import type { Words } from './concepts';

/** German trade words and abbreviations. */
export const german: Words = {
  thrust_play:
    'Axialspiel, Axialluft, axiales Spiel, Längsspiel, Lagerspiel axial, axiales Lagerspiel, Drucklagerspiel, Spiel axial, Axiallagerspiel, Ax Spiel, Axsp, Axspiel, Axialspalt, Axialverschiebung, Läuferspiel axial',
  thrust_hint: 'axial',
  runout:
    'Rundlauf, Rundlauffehler, Rundlaufabweichung, Schlag, Wellenschlag, Läuferschlag, Rundl, Exzentrizität, Unrundheit, Wellenendenschlag, Planschlag Welle',
  nut_stand_out: 'Mutterüberstand, Überstand Mutter, Überstand der Mutter, Mutternüberstand, Überstand',
  tip: 'Schaufelspalt, Spitzenspalt, Schaufelspitzenspiel, Schaufelspiel, Laufradspalt, Spaltmaß, Spitzenspiel',
  gap: 'Spalt, Spiel, Radialspalt, Radialspiel, Spaltweite, Luftspalt',
  compressor: 'Verdichter*, Verd, Verdichterrad, Verdichterseite, VS, Kompressor*, Laufrad Verdichter',
  turbine: 'Turbine*, Turb, Turbinenseite, TS, Turbinenrad',
  found:
    'vor, vorher, vor Zerlegung, vor Demontage, vor Ausbau, vor dem Zerlegen, vor Überholung, Zerlegung, Demontage, Ausbau, vorgefunden, Eingang, Eingangsmessung, Befund, Anlieferung',
  left: 'nach, nachher, nach Montage, nach Zusammenbau, nach Einbau, nach Überholung, Montage, Zusammenbau, Einbau, Endmontage, Ausgang, Ausgangsmessung, Endmessung, hinterlassen',
  '12': 'oben',
  '3': 'rechts, re, rechte Seite',
  '6': 'unten, unt',
  '9': 'links, li, linke Seite',
  clock_word: 'Uhr, U',
  seen_from: 'gesehen von, gesehen, von, vom, Blick von, Blickrichtung, Blick auf',
  hours:
    'Betriebsstunden, Betriebsstd, Betr Std, Bh, Bstd, Std, Stunden, Laufstunden, Laufzeit, Betriebszeit, Betriebsh, Stundenzähler, Zählerstand, Betriebsstundenzähler, Bh Stand, Stunde',
  engine:
    'Motor, Aggregat, Maschine, Motor Nr, Hauptmotor, Diesel, Hauptmaschine, Mot, Motornummer, Aggregate',
  unit: 'Läufer, Lfr, Turbolader, Lader, ATL, Abgasturbolader, Rumpfgruppe, Läuferwelle, Gerät, Turbo, Rotor, Laufzeug',
  serial:
    'Seriennummer, Serien Nr, Serien Nummer, Werknummer, Werk Nr, Fabriknummer, Fabrik Nr, Ser Nr, Serial Nr, Werksnummer, Serie Nr, Fabr Nr',
  number: 'Nummer, Nr, Bezeichnung, Kennung, Kennzeichen',
  frame: 'Baugröße, Baureihe, Größe, Modell, Typenbezeichnung',
  type: 'Typ, Bauart',
  site: 'Standort, Kraftwerk, Schiff, Anlage, Ort, Station, Einsatzort',
  bank: 'Bank, Seite, Zylinderbank, Zylinderreihe, Reihe, Motorseite',
  workshop: 'Werkstatt, Betrieb, Firma, ausgeführt von, gemessen von, Monteur Firma, Servicebetrieb',
  kind: 'Art, Anlass, Grund, Art der Überholung, Überholungsart, Überholungsgrund',
  planned: 'geplant, planmäßig, Routine, regulär, turnusmäßig',
  unplanned: 'ungeplant, außerplanmäßig, Schaden, Ausfall, Störung, Havarie',
  fitted:
    'eingebaute Teile, Neuteile, erneuerte Teile, Ersatzteile, getauschte Teile, erneuert, ersetzt, neue Teile, verbaute Teile',
  remarks: 'Bemerkung*, Anmerkung*, Notiz, Notizen, Kommentar, Kommentare, Bem, Hinweis, Hinweise, Vermerk',
  revision: 'Revisionsnummer, Revisionsstand, Ausgabe, Änderungsstand, Fassung',
  overhaul:
    'Überholung, Auftrag, Auftragsnummer, Auftrags Nr, Auftragsnr, Bericht, Berichtsnummer, Berichts Nr, Protokollnummer, Protokoll Nr, Befundnummer',
  characteristic: 'Merkmal, Messgröße, Messung, Messpunkt, Prüfmerkmal, Kenngröße, Größe gemessen, Maß',
  stage: 'Zustand, Stadium, Zeitpunkt, Messzeitpunkt, vor nach, Stufe',
  position: 'Lage, Stelle, Messstelle, Uhrzeigerstellung, Uhrstellung, Umfangsposition',
  value: 'Wert, Messwert, Istwert, Ist, Istmaß, gemessen, Ergebnis, Ablesung',
  uom: 'Einheit, Maßeinheit, Messeinheit',
  lower: 'geht, geht noch, geht durch, Fühler geht, Lehre geht',
  upper: 'geht nicht, geht nicht mehr, geht nicht durch, Fühler geht nicht, Lehre geht nicht',
  date: 'Datum, Tag, Überholungsdatum, Messdatum, Befunddatum, Dat, Prüfdatum',
  extreme: 'größte, kleinste, Mittel, Mittelwert, größter, kleinster, Durchschnitt',
  other:
    'Grenze, Grenzwert, Grenzmaß, Sollwert, Soll, Sollmaß, zulässig, zul, Toleranz, Nennmaß, seit, nächste*, fällig*, Preis, Menge, Anzahl, Stück, Kosten, Kunde, Rechnung, Lieferung, Baujahr, Hersteller, Messmittel, Differenz, Abweichung, Verschleiß, Vorgabe, Intervall, Temperatur, Druck, Drehzahl, Wuchtung',
  elsewhere:
    'Lager, Gleitlager, Radiallager, Dichtung, Labyrinth, Düsenring, Diffusor, Gehäuse, Kolbenring, Buchse',
  filler:
    'der, des, dem, den, die, das, aus, bei, zu, im, in, und, oder, Welle, Läuferwelle bei, mm, Spitze, Rad, am, an, Wellenende, seitig',
};
