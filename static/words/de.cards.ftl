# Was auf Karten steht: Laufkarten, Schilder, die Übersicht eines Laufs. Die Hinweise darauf stehen im Katalog der Sorgfalt.
card-good = gut
card-scrap = Ausschuss
card-initials = Kürzel
card-time = Uhrzeit
card-notes = Notizen
card-measured = gemessen
card-continued = weiter
card-trays = Tabletts
card-orders = Bestellungen
card-supplies = Verbrauch insgesamt
card-steps = Schritte
card-places = Plätze der Vorrichtung
card-position = Position { $place }
card-card = Karte
card-start-list = Startliste
card-on-the-jig-label = auf dem Schild an der Maschine
card-pieces = { $pieces ->
    [one] 1 Stück
   *[other] { $pieces } Stück
}
card-tray-of = { $trays ->
    [one] das einzige Tablett
   *[other] eins von { $trays } Tabletts
}
card-due = fällig { $at }
card-run-due = Lauf fällig { $at }
card-run-due-over = Lauf fällig { $first } bis { $last }
card-order-dated = { $pieces } für { $at }
card-order-undated = { $pieces } ohne Termin
card-board = Platte { $board }

## First pieces
card-first-piece-run = Erstes Stück des Laufs
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
card-finish-unknown = Nach dem Auftrag
card-go-on-from = weiter ab
card-latest = spätestens ({ $span })
card-recoat = nächster Auftrag ab ({ $span })
card-handle = anfassen ab ({ $span })
card-cure = durchgehärtet ({ $span })
card-label-of = Zeiten: Etikett, Datenblatt vom { $date }.
card-read-the-label = Zeiten sind nur üblich: das Etikett lesen.
card-do-not-move = Nicht bewegen vor
card-not-before = nicht vor { $at }

## The foot
card-the-lead = der Leitung
card-bad-piece = Ein schlechtes Stück: beiseite legen, kennzeichnen, als Ausschuss zählen, { $lead } sagen. Zwei gleiche: anhalten, rufen.
card-print = { $run } · Arbeitsplan { $revision } · Druck { $number } · { $at }

## The run's summary
card-wanted = { $wanted } gewünscht, { $started } begonnen, { $good } gut
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
