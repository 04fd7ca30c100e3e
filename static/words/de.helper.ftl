# Was eine Helferin oder ein Helfer liest, die mit der Karte eines Kastens kamen: kurz, ruhig, ganz. Nur der Server sagt es.

## Ankommen
helper-card-tray = Kasten { $tray } von { $run }
helper-card-step = Hier helfen: { $step }
helper-card-through = Dieser Kasten ist fertig.
helper-card-name = Vorname
helper-card-go = Mithelfen
helper-card-small = Dieses Telefon zeigt dann die Schritte dieses Kastens und nichts anderes aus der Werkstatt.
helper-card-shop = Telefon der Werkstatt? In der Werkstatt öffnen
helper-card-code-title = Code von der Karte eingeben
helper-card-code = Code
helper-card-code-go = Kasten öffnen
helper-card-code-hint = Acht Zeichen, zum Beispiel 7KQM-2WXR. Sie stehen neben dem QR-Code.
helper-no-script = Diese Seite braucht JavaScript.
helper-languages = Sprache

## Der Kasten
helper-tray = Kasten { $tray }
helper-step-of = Schritt { $number } von { $total }
helper-pieces = { $pieces ->
    [one] 1 Stück
   *[other] { $pieces } Stück
}
helper-until = { $name }, Hilfe bis { $at }
helper-what-to-do = Was zu tun ist
helper-no-instructions = Zu diesem Schritt steht nichts. Von der Werkstattleitung zeigen lassen.
helper-watch-for = Darauf achten
helper-setup = So ist die Maschine gerüstet
helper-texts = Welcher Text auf welcher Position
helper-position = Position { $place }
helper-after-dry = Danach: trocknet mindestens { $span }.
helper-after-cure = Danach: härtet mindestens { $span } aus.
helper-after-clamp = Danach: bleibt mindestens { $span } in den Zwingen.
helper-after-cool = Danach: kühlt mindestens { $span } ab.
helper-after-settle = Danach: ruht mindestens { $span }.
helper-after-latest = Spätestens { $span } nach dem ersten Stück weitermachen.
helper-resting-dry = Trocknet bis { $at }. Liegen lassen.
helper-resting-cure = Härtet aus bis { $at }. Liegen lassen.
helper-resting-clamp = Bleibt in den Zwingen bis { $at }. Liegen lassen.
helper-resting-cool = Kühlt ab bis { $at }. Liegen lassen.
helper-resting-settle = Ruht bis { $at }. Liegen lassen.
helper-resting-latest = Spätestens { $at } weitermachen.
helper-held = Diese Stücke sind gesperrt: { $why }. Werkstattleitung rufen.
helper-finished = { $step } ist fertig: { $good } gut.
helper-moved = { $step } ist fertig: { $good } gut. Den Kasten hierhin bringen: { $place }
helper-lead-takes = Den Kasten hierhin bringen: { $place }. Dort übernimmt die Werkstattleitung.
helper-through = Dieser Kasten ist fertig: { $good } gut. Der Werkstattleitung geben. Danke!

## Wie es steht
helper-state-none = Bereit
helper-state-loading = Einlegen
helper-state-working = In Arbeit
helper-state-running = Läuft
helper-state-ended = Fertig gelaufen
helper-state-unloading = Herausnehmen
helper-state-stopped = Steht still
helper-state-done = Fertig
helper-running-until = Läuft bis { $at }.
helper-running-stay = Dabeibleiben und zusehen.
helper-running-overdue = Müsste fertig sein. Hingehen und dabeibleiben, bis die Maschine steht.
helper-stopped-wait = Alles lassen, wie es ist. Die Werkstattleitung entscheidet, wie es weitergeht.
helper-done-wait = Der nächste Schritt erscheint, sobald gesendet wurde.
helper-watched-by = { $person } sieht zu.

## Tippen
helper-go-start = Anfangen
helper-go-on = Weitermachen
helper-go-running = Läuft jetzt
helper-go-list = Vor dem Start: Startliste
helper-go-at-it = Fertig gelaufen: ich übernehme
helper-go-done = Fertig: { $good } gut
helper-go-count = Nicht alle gut
helper-go-aside = Vorerst beiseitelegen
helper-go-wrong = Problem melden
helper-go-call = Werkstattleitung rufen
helper-go-show-me = Zeigen lassen: Werkstattleitung rufen
helper-go-look = Erstes Stück zeigen
helper-go-watch = Nachgesehen: { $kind ->
    [laser] keine Flamme, Werkstück liegt flach auf, Blasluft und Abluft an
    [cnc] kein Rauch, Werkstück fest, Absaugung an, Geräusch wie sonst
    [heater] kein Rauch, Hitze wie eingestellt, nichts Brennbares daneben
   *[other] kein Rauch, kein Geruch, Werkstück fest, Geräusch wie sonst
  }
helper-did-start = Angefangen
helper-did-running = Läuft
helper-did-at-it = In Arbeit
helper-did-done = Fertig
helper-did-aside = Beiseitegelegt
helper-did-watch = Nachgesehen
helper-did-call = Werkstattleitung gerufen
helper-did-stopped = Angehalten
helper-did-first-piece = Erstes Stück geprüft
helper-did-undo = Zurückgenommen
helper-minutes = Läuft ungefähr
helper-min = min
helper-less = Weniger
helper-more = Mehr
helper-list-title = Alles abhaken, dann starten
helper-list-left = noch { $left } abzuhaken
helper-list-run = Alles abgehakt: läuft jetzt
helper-count-title = Wie viele sind gut?
helper-good = Gut
helper-scrap = Ausschuss
helper-count-why = Was stimmt damit nicht?
helper-count-go = Fertig: { $good } gut, { $scrap } Ausschuss
helper-back = Zurück
helper-ok = OK
helper-undo = Rückgängig

## Etwas stimmt nicht
helper-wrong-title = Was stimmt nicht?
helper-wrong-hurt = Jemand ist verletzt oder es brennt
helper-wrong-bad = Fehlerhaftes Stück
helper-wrong-stopped = Es steht still
helper-hurt-phone = { $number } anrufen
helper-hurt-call = Auch die Werkstattleitung rufen
helper-bad-title = Beiseitelegen, Fehler anzeichnen
helper-bad-count = Es zählt am Ende als Ausschuss. Derselbe Fehler zweimal: anhalten und auf die Werkstattleitung warten.
helper-stop-title = Not-Halt drücken, wenn gefahrlos
helper-stop-hand-title = Warum angehalten?
helper-scrap-tear-out = ausgerissen
helper-scrap-crack = Riss
helper-scrap-broke = zerbrochen
helper-scrap-size = falsches Maß
helper-scrap-surface = Oberfläche
helper-scrap-engraving = Gravur
helper-scrap-burnt = verbrannt
helper-scrap-knot = Ast
helper-scrap-other = etwas anderes
helper-stop-power = Stromausfall
helper-stop-cutter = Fräser
helper-stop-slip = Werkstück verrutscht
helper-stop-failed = misslungen
helper-stop-other = etwas anderes

## Erste Stücke, von der Werkstattleitung angesehen
helper-first-piece = Erstes Stück: prüfen, bevor die anderen folgen
helper-first-piece-limits = { $nominal }, von { $least } bis { $most }
helper-first-piece-measured = Gemessen
helper-first-piece-pass = In Ordnung
helper-first-piece-fail = Nicht in Ordnung
helper-look-first = Die Werkstattleitung will das erste Stück sehen. Eines machen und zeigen.
helper-look-waits = Fertigmelden geht, sobald die Werkstattleitung es gesehen hat.
helper-look-pass = Die Werkstattleitung hat es gesehen: weitermachen.
helper-look-fail = Die Werkstattleitung hat es gesehen: noch nicht in Ordnung. Ein neues machen und zeigen.
helper-called = Werkstattleitung gerufen, { $at } ({ $why ->
    [look] erstes Stück
    [bad-piece] fehlerhaftes Stück
    [stopped] Stillstand
    [hurt] Verletzung oder Feuer
   *[help] Hilfe
}).
helper-coming = Die Werkstattleitung kommt.

## Was getippt wurde
helper-saved = hier gespeichert, wird später gesendet
helper-only-here = nur auf dieser Seite: offen lassen
helper-sent = gesendet
helper-refused = nicht angenommen
helper-offline = Der Server antwortet nicht. Eingaben werden hier gespeichert und gesendet, sobald er wieder da ist.
helper-clock-wrong = Die Uhr dieses Telefons geht falsch. Eingaben bekommen die Uhrzeit der Werkstatt und stimmen trotzdem.
helper-kept = Nicht gesendete Eingaben bleiben auf diesem Telefon.

## Das Ende
helper-over-revoked = Die Hilfe an diesem Kasten ist beendet. Werkstattleitung fragen.
helper-over-hours-over = Die Zeit an diesem Kasten ist um. Die Werkstattleitung kann verlängern.
helper-over-run-over = Diese Serie ist fertig. Danke für die Hilfe!
helper-shut = Dieses Telefon öffnet nur Kasten { $tray }. Alles andere gehört der Werkstatt.
helper-shut-go = Zum Kasten
helper-leave = Mit dem Helfen aufhören
helper-leave-sure = Nur die Werkstattleitung lässt dieses Telefon wieder zu.
helper-leave-go = Jetzt aufhören
helper-left = Die Hilfe ist beendet. Danke!

## Was nicht angenommen wird, und was dann zu tun ist
helper-refused-other = Das wurde nicht angenommen. Werkstattleitung rufen.
helper-refused-card-unknown = Diese Karte ist nicht gültig. Die Werkstattleitung um eine neue bitten.
helper-refused-card-too-often = Zu viele falsche Codes. { $minutes } min warten, dann jedes Zeichen genau ansehen.
helper-refused-card-over = Die Serie dieser Karte ist fertig.
helper-refused-guest-nameless = Vornamen eingeben.
helper-refused-guest-revoked = Dieses Telefon ist gesperrt. Werkstattleitung fragen.
helper-refused-guest-hours-over = Die Zeit ist um. Die Werkstattleitung kann verlängern.
helper-refused-guest-too-many = An diesem Kasten sind schon genug Telefone. Werkstattleitung fragen.
helper-refused-too-fast = Das waren zu viele Eingaben auf einmal. Das Telefon sendet sie in { $seconds } s noch einmal.
helper-refused-press-too-large = Das ist zu lang. Kürzer fassen.
helper-refused-access = Das macht die Werkstattleitung. Werkstattleitung rufen.
helper-refused-not-yourself = Nur für sich selbst tippen.
helper-refused-not-your-tray = Dieses Telefon gilt nur für Kasten { $tray }.
helper-refused-not-your-press = Diese Eingabe kam von jemand anderem.
helper-refused-not-this-step = Der Kasten ist jetzt bei einem anderen Schritt: { $step }.
helper-refused-tray-through = Dieser Kasten ist fertig. Der Werkstattleitung geben.
helper-refused-shared-load = Es liegen noch andere Kästen mit auf. Werkstattleitung rufen.
helper-refused-not-begun = { $step } wurde noch nicht angefangen.
helper-refused-given-to-another = Diesen Schritt macht { $person ->
    [0] jemand anderes
   *[other] { $person }
  }. { $lead ->
    [0] Werkstattleitung
   *[other] { $lead }
  } fragen.
helper-refused-not-early = Das muss noch warten. Nur die Werkstattleitung darf früher weitermachen.
helper-refused-texts-changed = Die Texte für diesen Kasten haben sich geändert. Noch einmal ansehen, dann anfangen.
helper-refused-list-first = Zuerst die Startliste abhaken.
helper-refused-not-shown = Von der Werkstattleitung zeigen lassen: { $station }
helper-refused-look-first = Zuerst der Werkstattleitung das erste Stück zeigen.
helper-refused-watch-first = Diese Maschine muss beaufsichtigt werden: { $station }. Dabeibleiben.
helper-refused-hands-elsewhere = Von hier aus lässt sich diese Maschine nicht beaufsichtigen.
helper-refused-station-busy = Belegt: { $station }. Warten oder die Werkstattleitung rufen.
helper-refused-station-out = Außer Betrieb: { $station }. Werkstattleitung rufen.
helper-refused-first-piece-failed = Das erste Stück war nicht in Ordnung. Auf die Werkstattleitung warten.
helper-refused-still-waiting = Das muss bis { $ready_at } warten. Liegen lassen.
helper-refused-supply-out = Aufgebraucht: { $supply }. Werkstattleitung rufen.
helper-refused-skill = Das darf nur machen, wer es gelernt hat. Werkstattleitung rufen.
helper-refused-air-not-clear = Bis { $until } sind Lösemitteldämpfe in diesem Raum. Warten.
helper-refused-solvent-beside-heat = In diesem Raum läuft eine heiße Maschine: { $station }. Auf die Werkstattleitung warten.
helper-refused-material-unknown = Material unbekannt: vor dem Start der Maschine die Werkstattleitung rufen.
helper-refused-material-look = Zuerst das Datenblatt ansehen: { $material }. Werkstattleitung rufen.
helper-refused-material-forbidden = Dieses Material darf nicht hinein: { $material }. Werkstattleitung rufen.
helper-refused-ahead = { $at } ist noch nicht gewesen. Einen früheren Zeitpunkt angeben.
helper-refused-before-run = Die Serie wurde { $opened_at } eröffnet. Einen späteren Zeitpunkt angeben.
helper-refused-station-runs = { $station } läuft. Dabeibleiben; daran lässt sich jetzt nichts ändern.
helper-refused-machine-runs = Eine Maschine läuft noch. Dabeibleiben.
helper-refused-load-in-hands = An der Station { $station } arbeitet noch jemand. Der Werkstattleitung Bescheid sagen.
helper-refused-care-open = Zuerst Lappen, Staub oder Verbranntes: angeben, was damit geschehen ist. Werkstattleitung rufen.
helper-refused-wait-open = Kasten { $tray } wartet noch und darf nicht zu lange warten. Der Werkstattleitung Bescheid sagen.
helper-refused-rags-first = Zuerst die Lappen: einzeln ausgebreitet draußen, oder in Wasser im Metalleimer mit Deckel. Dann der Werkstattleitung Bescheid sagen.
helper-refused-transition = Das passt nicht mehr zum Stand des Kastens. Die Seite noch einmal ansehen.
helper-refused-pieces-not-there = So viele Stücke sind nicht da. Noch einmal zählen oder die Werkstattleitung rufen.
helper-refused-counts-do-not-fit = Hier sind { $there }, gezählt wurden { $counted }. Noch einmal zählen.
helper-refused-counts-gone-on = Einige davon sind schon weiter. Werkstattleitung rufen.
helper-refused-later-press = Danach kam noch eine Eingabe. Werkstattleitung rufen.
helper-refused-does-not-fit = Das passt nicht zum Stand des Kastens. Werkstattleitung rufen.
helper-refused-run-closed = Diese Serie ist fertig.
helper-refused-form = Diese Seite ist veraltet. Neu laden.
helper-refused-unknown = Das gibt es in der Werkstatt nicht mehr. Die Seite neu laden.
