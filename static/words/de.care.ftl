# Hinweise, Startlisten, Erinnerungen und Antworten darauf: care-<Schlüssel> zu jedem Eintrag in runboard/run/care/cautions.json.

## Beim Schritt
care-stay-and-watch = Dabeibleiben und zusehen. Nie unbeaufsichtigt laufen lassen.
care-laser-beam = Laserstrahlung: Laserschutzbrille für diese Wellenlänge tragen; Deckel und Schutzhauben geschlossen.
care-fire = Brandgefahr: der Löscher, den Anleitung und örtliche Vorschrift verlangen, in Reichweite, auf der Seite des Ausgangs.
care-exhaust-and-air = Abluft ins Freie an, Blasluft an.
care-hot = Heiß: abkühlen lassen, dann erst anfassen.
care-no-gloves = Keine Handschuhe, keine weiten Ärmel an drehenden Werkzeugen.
care-loose = Ärmel eng, Haare zusammengebunden, keine Ringe oder Bänder.
care-hands-clear = Hände weg vom Fräser: Schiebeholz benutzen.
care-kickback = Rückschlag: gegen die Drehrichtung des Fräsers schieben, Schiebeholz in der Hand, nie in Rückschlagrichtung stehen.
care-disconnect = Vor dem Werkzeugwechsel den Stecker ziehen.
care-eye-protection = Schutzbrille auf.
care-hearing-protection = Gehörschutz auf.
care-dust-mask = Staubmaske auf, bis die Luft sauber und der Behälter geleert ist.
care-extraction = Staubabsaugung an.
care-blown-dust = Keine Druckluft auf Staub oder Kleidung: Saugschlauch oder feuchtes Tuch benutzen.
care-manual = Zuerst die Anleitung der Maschine lesen.
care-crushing = Quetschgefahr: Finger weg von schließenden Teilen.
care-sharp-edge = Scharfe Kanten: vorsichtig anfassen.
care-electricity = Spannung im Innern: vor dem Öffnen vom Strom trennen.
care-respirator = Atemschutz auf, mit dem Filter, den das Etikett verlangt.
care-spraying = Sprühnebel brennt und schadet der Lunge. Atemschutz auf, in der Kabine oder draußen, keine Zündquelle in der Nähe.
care-rags = Ölige Lappen, Pads, Papier, Pinsel und öliger Staub entzünden sich von selbst: einzeln ausgebreitet draußen im Schatten, weg von Gebäuden; oder in Wasser im Metalleimer mit Deckel. Nie auf einen Haufen, nie in den Müll, in die Hosentasche oder in den Wäschetrockner.
care-solvent-air = Lösemittel in der Luft: keine Flamme, kein Laser, kein Schleifen, kein Heiz- oder Ladegerät in diesem Raum.
care-no-smoking = Nicht rauchen.
care-gloves = Schutzhandschuhe an, wie das Etikett sie verlangt.
care-air-the-room = Raum lüften, wie das Etikett sagt.
care-dry-not-cured = Grifftrocken heißt nicht ausgehärtet.
care-climate = Temperatur und Luftfeuchte, wie das Etikett sie verlangt: in kalter oder feuchter Luft bleibt es länger nass.
care-oiled-dust = Staub von geöltem Holz kann sich selbst erhitzen: den Beutel draußen leeren, in Wasser im Metalleimer mit Deckel.
care-lifting = Schwer: zu zweit heben, oder den Wagen nehmen.
care-batteries = Akkus nur laden, solange jemand dabeibleibt, auf nicht brennbarer Unterlage; vor dem Abschließen ausstecken.
care-alone = Nicht allein: jemand in Rufweite, oder Telefon am Körper und jemand, der zu fester Zeit nachfragt.

## Bevor Laser oder Heizgerät starten
care-start-extinguisher = Der Löscher, den Anleitung und örtliche Vorschrift verlangen, ist in Reichweite, auf der Seite des Ausgangs
care-start-eyewear = Alle im Raum tragen eine Laserschutzbrille für diese Wellenlänge
care-start-door = Tür zu; keine Kinder oder Tiere hier
care-start-guards = Keine Schutzeinrichtung, kein Deckel und kein Schalter ist überbrückt
care-start-exhaust = Die Abluft ins Freie ist an, und sie zieht
care-start-bed = Tisch frei und sauber: keine Reste, kein Staub, kein Ruß
care-start-fresh = Kein frisch behandeltes Stück darin oder daneben
care-start-material = Material bekannt und nicht auf der Verbotsliste der Werkstatt. Unbekanntes Material: nicht bearbeiten

## Bevor ein Fräser oder eine Säge startet
care-start-held = Das Werkstück ist fest gespannt, nichts liegt im Weg des Fräsers
care-start-no-gloves = Keine Handschuhe, keine weiten Ärmel, Haare zusammengebunden
care-start-small = Kleine Stücke in einer Halterung, nie in den Fingern
care-start-extraction = Die Staubabsaugung ist an
care-start-cutter = Fräser fest, Schlüssel abgezogen, Schutzhaube montiert
care-start-eyes-ears = Schutzbrille und Gehörschutz auf
care-start-stop = Not-Halt in Reichweite

## Erinnerungen
care-watch-check = Dabeibleiben und zusehen. Bestätigen: kein Rauch, kein Geruch, Werkstück fest, Geräusch wie sonst.
care-watch-check-laser = Dabeibleiben und zusehen. Bestätigen: keine Flamme, Werkstück liegt flach auf, Blasluft und Abluft an.
care-watch-check-cnc = Dabeibleiben und zusehen. Bestätigen: kein Rauch, Werkstück fest, Absaugung an, Geräusch wie sonst.
care-watch-check-heater = Dabeibleiben und zusehen. Bestätigen: kein Rauch, Hitze wie eingestellt, nichts Brennbares daneben.
care-nobody-near = Eine Maschine läuft, und alle wurden zuletzt woanders gesehen. Jetzt hingehen und dabeibleiben.
care-rags-start = Vor dem Öffnen des Öls: der Metalleimer mit Wasser und Deckel steht bereit, oder ein Platz draußen im Schatten.
care-rags-end = Die Schicht ist aufgetragen. Lappen, Pads, Papier, Pinsel, jetzt: einzeln ausgebreitet draußen im Schatten, weg von Gebäuden; oder in Wasser im Metalleimer mit Deckel.
care-rags-morning = Die Lappen, Pinsel und Behälter von gestern noch einmal ansehen: kalt, einzeln ausgebreitet oder unter Wasser, kein Geruch?
care-dust-bag = Staub von geöltem Holz ist im Beutel. Jetzt draußen leeren, in Wasser im Metalleimer mit Deckel.
care-smoulder-bin = Ein Schnitt ist verbrannt. Anhalten, auf Glutnester prüfen, und den Behälter der Absaugung jetzt draußen leeren.
care-smoulder-again = Absaugung, Schlauch und geleerten Staub noch einmal ansehen: kein Rauch, kein Geruch, keine Wärme?
care-power-back = Stromausfall: jede Maschine am Schalter ausschalten, bevor der Strom wiederkommt.
care-lockup-rags = Ölige Lappen: einzeln ausgebreitet draußen, oder in Wasser im Metalleimer mit Deckel
care-lockup-power = Maschinen aus, Stecker gezogen, Kompressor drucklos
care-lockup-chargers = Kein Akku am Ladegerät
care-lockup-bins = Staubbehälter geleert, draußen
care-lockup-smoulder = Auf Schwelbrand geprüft (sehen und riechen): Laser, Schleifer, Behälter
care-lockup-first-job = Die erste Arbeit für morgen liegt bereit

## Was getan wurde
care-rags-done-outdoors = Sie liegen einzeln ausgebreitet draußen, im Schatten, weg von Gebäuden
care-rags-done-water = Sie sind in Wasser im Metalleimer, Deckel drauf
care-rags-done-none = Keine Lappen, Pads, Papiere oder Pinsel wurden benutzt
care-rags-done-looked = Angesehen: kalt, und kein Geruch
care-dust-done-water = Der Staub ist draußen, in Wasser im Metalleimer, Deckel drauf
care-dust-done-none = Der Beutel war leer
care-smoulder-done-outdoors = Der Behälter ist geleert, draußen
care-smoulder-done-cold = Noch einmal angesehen: kein Rauch, kein Geruch, keine Wärme

## Immer
care-emergency = Feuer oder Verletzung: Not-Halt drücken, wenn es gefahrlos geht. Hinausgehen. { $number } anrufen.
care-never-leave = Nie von einer laufenden Maschine weggehen, die beaufsichtigt werden muss. Vor dem Gehen: anhalten, nachsehen, Strom aus.
care-watch-note = Es zeigt, dass jemand geantwortet hat. Es ist keine Brandwache.
care-manual-first = Zuerst gilt die Anleitung der Maschine, dann die örtlichen Vorschriften und zugelassene Fachleute.
care-which-extinguisher = Übliche Praxis: Kohlendioxid neben Elektronik und Laser, Wasser oder Schaum für Massivholz. Anleitung und örtliche Vorschrift sagen, welcher; die Feuerwehr fragen.
care-finish-label = Übliche Praxis: das Etikett lesen.
care-not-food-safe = Nichts für Lebensmittel vor dem vollen Aushärten. Kein Mittel gilt hier als lebensmittelecht, weder trocken noch ausgehärtet. Den Hersteller fragen.
care-figures = Zur Information. Keine Zahl hier heißt, dass es ungefährlich ist.
