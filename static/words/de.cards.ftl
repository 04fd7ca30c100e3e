# Was auf Karten steht: Laufkarten, Schilder, die Übersicht einer Serie. Die Hinweise darauf stehen im Katalog der Sorgfalt.
card-good = gut
card-scrap = Ausschuss
card-initials = Kürzel
card-time = Uhrzeit
card-notes = Notizen
card-measured = gemessen
card-continued = Fortsetzung
card-trays = Kästen
card-orders = Bestellungen
card-supplies = Verbrauch insgesamt
card-steps = Schritte
card-places = Positionen in der Vorrichtung
card-position = Position { $place }
card-card = Karte
card-start-list = Startliste
card-on-the-jig-label = auf dem Schild an der Maschine
card-pieces = { $pieces ->
    [one] 1 Stück
   *[other] { $pieces } Stück
}
card-tray-of = { $trays ->
    [one] der einzige Kasten
   *[other] Kasten { $tray } von { $trays }
}
card-due = fällig { $at }
card-run-due = Serie fällig { $at }
card-run-due-over = Serie fällig { $first } bis { $last }
card-order-dated = { $pieces } für { $at }
card-order-undated = { $pieces } ohne Termin
card-board = Brett { $board }

## First pieces
card-first-piece-run = Erstes Stück der Serie
card-first-piece-setup = Erstes Stück nach dem Rüsten
card-first-piece-load = Erstes Stück jeder Ladung
card-measure = { $nominal } +{ $plus } −{ $minus }
card-limits = { $least } bis { $most }

## Waits
card-wait-dry = Trocknen lassen: mindestens { $span }
card-wait-cure = Aushärten lassen: mindestens { $span }
card-wait-clamp = In Zwingen: mindestens { $span }
card-wait-cool = Abkühlen lassen: mindestens { $span }
card-wait-settle = Ruhen lassen: mindestens { $span }
card-finish = Nach { $finish }
card-finish-unknown = Nach dem Auftragen
card-go-on-from = weiterarbeiten ab
card-latest = spätestens ({ $span })
card-recoat = nächste Schicht ab ({ $span })
card-handle = anfassen ab ({ $span })
card-cure = ausgehärtet ({ $span })
card-label-of = Zeiten nach Etikett und Datenblatt, Stand { $date }.
card-read-the-label = Richtwerte: Etikett beachten.
card-do-not-move = Nicht bewegen vor
card-not-before = nicht vor { $at }

## The foot
card-the-lead = der Werkstattleitung
card-bad-piece = Fehlerhaftes Stück: beiseitelegen, kennzeichnen, als Ausschuss zählen, { $lead } Bescheid sagen. Derselbe Fehler zweimal: anhalten und rufen.
card-print = { $run } · Arbeitsplan { $revision } · Druck { $number } · { $at }

## The run's summary
card-wanted = { $wanted } bestellt, { $started } begonnen, { $good } gut
card-opened = eröffnet { $at }
card-next = als Nächstes: { $step }
card-all-done = alles fertig

## Packing slips
card-slip = Packzettel
card-slip-text = Text darauf
card-slip-due = fällig
card-slip-packed-on = gepackt am
card-slip-part = { $left ->
    [0] { $parcel } von { $pieces }
   *[other] { $parcel } von { $pieces }, { $left } folgen noch
  }
card-slip-packed-by = gepackt von
card-slip-order = Bestellung { $line }

## One card a tray: what is long stands on the station's sheet
card-cautions-on-sheet = Warnhinweise: auf dem Stationsblatt. Zuerst lesen.
card-bad-piece-short = Fehlerhaftes Stück: beiseitelegen, kennzeichnen, als Ausschuss zählen, { $lead } Bescheid sagen.
card-scrap-box = Aussch.
card-side = Seite
card-turn-over = umdrehen
card-on-more-cards = Zu lang für eine Karte: weitere Karten gehören zu diesem Kasten.
card-texts = Texte nach Position

## The station's sheet
card-station-sheet = Stationsblatt
card-at-step = { $last ->
    [0] Schritt { $first } von { $steps }
   *[other] Schritte { $first } bis { $last } von { $steps }
  }
card-at-this-station = An dieser Station
card-before-starting = Vor dem Start
card-setting-up = Rüsten
card-supplies-each = Verbrauch je Stück: { $supplies }
card-on-a-phone = Der Code auf der Karte eines Kastens zeigt jeden Schritt auf dem Telefon, mit Bildern.

## A caution in two words beside its sign; in full it is care-…
card-sign-stay-and-watch = dabeibleiben, zusehen
card-sign-laser-beam = Laserbrille auf, Deckel zu
card-sign-fire = Löscher in Reichweite
card-sign-exhaust-and-air = Abluft, Blasluft an
card-sign-hot = heiß, abkühlen lassen
card-sign-no-gloves = keine Handschuhe
card-sign-loose = Ärmel eng, Haare fest
card-sign-hands-clear = Schiebeholz, Hände weg
card-sign-kickback = Rückschlag, seitlich stehen
card-sign-disconnect = Wechsel: Stecker ziehen
card-sign-eye-protection = Augenschutz
card-sign-hearing-protection = Gehörschutz
card-sign-dust-mask = Maske auf
card-sign-extraction = Absaugung an
card-sign-blown-dust = keine Druckluft
card-sign-manual = Anleitung lesen
card-sign-crushing = Finger weg
card-sign-sharp-edge = scharfe Kanten
card-sign-electricity = Öffnen: Stecker ziehen
card-sign-respirator = Atemschutz auf
card-sign-spraying = Atemschutz, keine Funken
card-sign-rags = Lappen ins Freie oder ins Wasser
card-sign-solvent-air = Lösemittel, keine Flamme
card-sign-no-smoking = nicht rauchen
card-sign-gloves = Handschuhe an
card-sign-air-the-room = Raum lüften
card-sign-dry-not-cured = grifftrocken, nicht hart
card-sign-climate = nicht kalt, nicht feucht
card-sign-oiled-dust = Ölstaub nach draußen, ins Wasser
card-sign-lifting = zu zweit heben
card-sign-batteries = beim Laden dabeibleiben
card-sign-alone = nicht allein
