# Hinweise, Startlisten, Erinnerungen und Antworten darauf: care-<Schlüssel> zu jedem Eintrag in runboard/run/cautions.json.

## Beim Schritt
care-stay-and-watch = Dabeibleiben und zusehen. Nie laufen lassen und weggehen.
care-laser-beam = Laserstrahl: Schutzbrille für seine Wellenlänge, Deckel und Schutz zu.
care-fire = Es kann brennen: der richtige Feuerlöscher in Reichweite, auf der Seite des Ausgangs.
care-exhaust-and-air = Absaugung ins Freie an, Luft an.
care-hot = Heiß: abkühlen lassen, dann erst anfassen.
care-no-gloves = Keine Handschuhe, keine weiten Ärmel an drehenden Werkzeugen.
care-loose = Ärmel eng, Haare zusammengebunden, keine Ringe oder Bänder.
care-hands-clear = Hände weg vom Fräser: Schiebeholz benutzen.
care-disconnect = Vor dem Werkzeugwechsel den Stecker ziehen.
care-eye-protection = Schutzbrille auf.
care-hearing-protection = Gehörschutz auf.
care-dust-mask = Staubmaske auf, bis die Luft klar und der Behälter geleert ist.
care-extraction = Staubabsaugung an.
care-manual = Zuerst die Anleitung der Maschine lesen.
care-crushing = Finger weg, wo es sich schließt.
care-sharp-edge = Scharfe Kanten: vorsichtig anfassen.
care-electricity = Spannung im Innern: vor dem Öffnen vom Strom trennen.
care-respirator = Atemschutz auf, mit dem Filter, den das Etikett verlangt.
care-rags = Lappen, Pads, Papier, Pinsel, öliger Staub: einzeln ausgebreitet draußen im Schatten, weg von Gebäuden; oder in Wasser in der Blechdose mit Deckel. Nie auf einen Haufen, in den Müll, in die Tasche, in den Trockner.
care-solvent-air = Lösemittel in der Luft: keine Flamme, kein Laser, Schleifen, Heizgerät oder Ladegerät in diesem Raum.
care-no-smoking = Nicht rauchen.
care-gloves = Schutzhandschuhe an, wie das Etikett sie verlangt.
care-air-the-room = Raum lüften, wie das Etikett sagt.
care-dry-not-cured = Trocken beim Anfassen heißt nicht ausgehärtet.
care-oiled-dust = Staub von geöltem Holz kann sich selbst erhitzen: den Beutel draußen leeren, in Wasser in der Blechdose mit Deckel.
care-lifting = Schwer: zu zweit, oder mit dem Wagen.
care-batteries = Akkus nur laden, solange jemand dabeibleibt, auf etwas, das nicht brennt; aus, wenn abgeschlossen wird.

## Bevor Laser oder Heizgerät starten
care-start-extinguisher = Der richtige Feuerlöscher ist in Reichweite, auf der Seite des Ausgangs
care-start-eyewear = Schutzbrille für diese Wellenlänge auf: alle im Raum
care-start-door = Tür zu; keine Kinder oder Tiere hier
care-start-guards = Kein Schutz, Deckel oder Schalter ist überbrückt
care-start-exhaust = Die Absaugung ins Freie ist an, und sie zieht
care-start-bed = Tisch frei und sauber: keine Reste, kein Staub, kein Ruß
care-start-fresh = Kein frisch behandeltes Stück darin oder daneben
care-start-material = Material bekannt und nicht auf der Verbotsliste der Werkstatt. Unbekannt heißt nein

## Bevor ein Fräser oder eine Säge startet
care-start-held = Das Werkstück ist fest gespannt, nichts liegt im Weg des Fräsers
care-start-no-gloves = Keine Handschuhe, keine weiten Ärmel, Haare zusammengebunden
care-start-small = Kleine Stücke in einer Halterung, nie in den Fingern
care-start-extraction = Die Staubabsaugung ist an
care-start-cutter = Fräser fest, Schlüssel abgezogen, Schutz dran
care-start-eyes-ears = Schutzbrille und Gehörschutz auf
care-start-stop = Not-Halt in Reichweite

## Erinnerungen
care-watch-check = Dabeibleiben und zusehen. Bestätigen: keine Flamme, Werkstück flach, Luft und Absaugung an.
care-nobody-near = Eine Maschine läuft, und alle wurden zuletzt woanders gesehen. Jetzt hingehen und dabeibleiben.
care-rags-start = Bevor die Dose aufgeht: die Blechdose mit Deckel und Wasser steht bereit, oder ein Platz draußen im Schatten.
care-rags-end = Die Schicht ist aufgetragen. Lappen, Pads, Papier, Pinsel, jetzt: einzeln ausgebreitet draußen im Schatten, weg von Gebäuden; oder in Wasser in der Blechdose mit Deckel.
care-rags-morning = Die Lappen, Pinsel und Behälter von gestern noch einmal ansehen: kalt, einzeln ausgebreitet oder unter Wasser, kein Geruch?
care-dust-bag = Staub von geöltem Holz ist im Beutel. Jetzt draußen leeren, in Wasser in der Blechdose mit Deckel.
care-smoulder-bin = Ein Schnitt ist verbrannt. Anhalten, nach Glut sehen, und den Behälter der Absaugung jetzt draußen leeren.
care-smoulder-again = Absaugung, Schlauch und geleerten Staub noch einmal ansehen: kein Rauch, kein Geruch, keine Wärme?
care-power-back = Der Strom ist weg. Schalter aus, bevor er wiederkommt.
care-lockup-rags = Ölige Lappen: einzeln ausgebreitet draußen, oder in Wasser in der Blechdose mit Deckel
care-lockup-power = Maschinen aus, Stecker gezogen, Kompressor leer
care-lockup-chargers = Kein Akku am Ladegerät
care-lockup-bins = Staubbehälter geleert, draußen
care-lockup-smoulder = Nach Schwelbrand gesehen und gerochen: Laser, Schleifer, Behälter
care-lockup-first-job = Die erste Arbeit für morgen liegt bereit

## Was getan wurde
care-rags-done-outdoors = Sie liegen einzeln ausgebreitet draußen, im Schatten, weg von Gebäuden
care-rags-done-water = Sie sind in Wasser in der Blechdose, Deckel drauf
care-rags-done-none = Keine Lappen, Pads, Papiere oder Pinsel wurden benutzt
care-rags-done-looked = Angesehen: kalt, und kein Geruch
care-dust-done-water = Der Staub ist draußen, in Wasser in der Blechdose, Deckel drauf
care-dust-done-none = Der Beutel war leer
care-smoulder-done-outdoors = Der Behälter ist geleert, draußen
care-smoulder-done-cold = Noch einmal angesehen: kein Rauch, kein Geruch, keine Wärme

## Immer
care-emergency = Feuer oder Verletzung: Not-Halt, wenn es gefahrlos geht, hinausgehen, { $number } anrufen.
care-never-leave = Nie von einer laufenden Maschine weggehen, die beaufsichtigt werden muss. Wer gehen will, hält sie zuerst an und macht sie sicher.
care-watch-note = Es zeigt, dass jemand geantwortet hat. Es ist keine Brandwache.
care-manual-first = Zuerst gilt die Anleitung der Maschine, dann die örtlichen Vorschriften und zugelassene Fachleute.
care-finish-label = Übliche Praxis: das Etikett lesen.
care-not-food-safe = Kein Mittel wird hier lebensmittelecht genannt, weder trocken noch ausgehärtet. Den Hersteller fragen.
care-figures = Zur Information. Keine Zahl hier heißt, dass es ungefährlich ist.
