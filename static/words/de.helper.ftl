# Was eine Helferin oder ein Helfer liest, die mit der Karte eines Kastens kamen: kurz, ruhig, ganz. Nur der Server sagt es.

## Ankommen
helper-card-tray = Kasten { $tray } von { $run }
helper-card-step = Hier helfen: { $step }
helper-card-through = Dieser Kasten hat alle Schritte hinter sich.
helper-card-name = Vorname
helper-card-go = Mithelfen
helper-card-small = Dieses Telefon zeigt dann die Schritte dieses Kastens und nichts anderes aus der Werkstatt.
helper-card-shop = Dieses Telefon gehört zur Werkstatt: dort öffnen
helper-card-code-title = Den Code von der Karte des Kastens eingeben
helper-card-code = Code
helper-card-code-go = Kasten öffnen
helper-card-code-hint = Acht Zeichen, zum Beispiel 7KQM-2WXR. Sie stehen neben dem quadratischen Code.
helper-no-script = Diese Seite entsteht im Browser: sie braucht JavaScript.
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
helper-no-instructions = Zu diesem Schritt ist nichts aufgeschrieben. Von der Leitung zeigen lassen.
helper-watch-for = Worauf zu achten ist
helper-setup = So ist die Maschine eingerichtet
helper-texts = Welcher Text an welchem Platz
helper-position = Position { $place }
helper-after-dry = Danach: trocknet mindestens { $span }.
helper-after-cure = Danach: härtet mindestens { $span } aus.
helper-after-clamp = Danach: bleibt mindestens { $span } in den Zwingen.
helper-after-cool = Danach: kühlt mindestens { $span } ab.
helper-after-settle = Danach: ruht mindestens { $span }.
helper-after-latest = Innerhalb von { $span } ab dem ersten Stück weitermachen.
helper-resting-dry = Trocknet bis { $at }. Liegen lassen.
helper-resting-cure = Härtet aus bis { $at }. Liegen lassen.
helper-resting-clamp = Bleibt in den Zwingen bis { $at }. Liegen lassen.
helper-resting-cool = Kühlt ab bis { $at }. Liegen lassen.
helper-resting-settle = Ruht bis { $at }. Liegen lassen.
helper-resting-latest = Spätestens { $at } weitermachen.
helper-held = Diese Stücke warten: { $why }. Die Leitung rufen.
helper-finished = { $step } ist fertig: { $good } gut.
helper-moved = { $step } ist fertig: { $good } gut. Den Kasten hierhin bringen: { $place }
helper-lead-takes = Den Kasten hierhin bringen: { $place }. Dort übernimmt die Leitung.
helper-through = Dieser Kasten ist ganz fertig: { $good } gut. Der Leitung geben. Danke!

## Wie es steht
helper-state-none = Bereit
helper-state-loading = Einlegen
helper-state-working = In Arbeit
helper-state-running = Läuft
helper-state-ended = Ist zu Ende
helper-state-unloading = Herausnehmen
helper-state-stopped = Steht still
helper-state-done = Fertig
helper-running-until = Läuft bis { $at }.
helper-running-stay = Dabeibleiben und zusehen.
helper-running-overdue = Sollte zu Ende sein. Nachsehen und dabeibleiben, bis es so ist.
helper-stopped-wait = Alles lassen, wie es ist. Die Leitung entscheidet, wie es weitergeht.
helper-done-wait = Wie es weitergeht, steht hier, sobald es gesendet ist.
helper-watched-by = { $person } sieht zu.

## Tippen
helper-go-start = Anfangen
helper-go-on = Weitermachen
helper-go-running = Läuft jetzt
helper-go-list = Vor dem Start: die Liste
helper-go-at-it = Zu Ende: bin dran
helper-go-done = Fertig: alle { $good } gut
helper-go-count = Nicht alle sind gut
helper-go-aside = Vorerst beiseitelegen
helper-go-wrong = Etwas stimmt nicht
helper-go-call = Die Leitung rufen
helper-go-show-me = Die Leitung rufen, damit sie es zeigt
helper-go-look = Erstes Stück zeigen
helper-go-watch = Nachgesehen: { $kind ->
    [laser] keine Flamme, Werkstück flach, Blasluft und Abluft an
    [cnc] kein Rauch, Werkstück fest, Absaugung an, Geräusch wie sonst
    [heater] kein Rauch, Hitze wie eingestellt, nichts Brennbares daneben
   *[other] kein Rauch, kein Geruch, Werkstück fest, Geräusch wie sonst
  }
helper-did-start = Angefangen
helper-did-running = Läuft
helper-did-at-it = Dran
helper-did-done = Fertig
helper-did-aside = Beiseitegelegt
helper-did-watch = Nachgesehen
helper-did-call = Leitung gerufen
helper-did-stopped = Angehalten
helper-did-first-piece = Erstes Stück geprüft
helper-did-undo = Zurückgenommen
helper-minutes = Läuft ungefähr
helper-min = min
helper-less = Weniger
helper-more = Mehr
helper-list-title = Jeden Punkt abhaken, dann starten
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
helper-wrong-hurt = Jemand ist verletzt, oder es brennt
helper-wrong-bad = Ein schlechtes Stück
helper-wrong-stopped = Es ist stehen geblieben
helper-hurt-phone = { $number } anrufen
helper-hurt-call = Auch die Leitung rufen
helper-bad-title = Das schlechte Stück beiseitelegen und anzeichnen, was falsch ist
helper-bad-count = Zur Seite legen: es zählt am Ende als Ausschuss. Zwei gleiche: anhalten und auf die Leitung warten.
helper-stop-title = Zuerst die Maschine anhalten: Not-Halt, wenn es gefahrlos geht
helper-stop-hand-title = Warum angehalten?
helper-scrap-tear-out = ausgerissen
helper-scrap-crack = Riss
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

## Erste Stücke und der Blick der Leitung
helper-first-piece = Erstes Stück: prüfen, bevor die anderen folgen
helper-first-piece-limits = { $nominal }, von { $least } bis { $most }
helper-first-piece-measured = Gemessen
helper-first-piece-pass = Ist richtig
helper-first-piece-fail = Ist nicht richtig
helper-look-first = Die Leitung möchte das erste Stück sehen. Eines machen und zeigen.
helper-look-waits = Fertig ist möglich, sobald die Leitung es angesehen hat.
helper-look-pass = Die Leitung hat es angesehen: weitermachen.
helper-look-fail = Die Leitung hat es angesehen: noch nicht richtig. Ein neues machen und zeigen.
helper-called = Die Leitung ist gerufen seit { $at } ({ $why ->
    [look] erstes Stück
    [bad-piece] schlechtes Stück
    [stopped] Stillstand
    [hurt] Verletzung oder Feuer
   *[help] Hilfe
}).
helper-coming = Die Leitung kommt.

## Was getippt wurde
helper-saved = hier gespeichert, wird später gesendet
helper-only-here = nur auf dieser Seite: offen lassen
helper-sent = gesendet
helper-refused = nicht angenommen
helper-offline = Der Server antwortet nicht. Was getippt wird, ist hier gespeichert und wird gesendet, sobald er wieder da ist.
helper-clock-wrong = Die Uhr dieses Telefons geht falsch. Was gedrückt wird, bekommt die Zeit der Werkstatt und stimmt trotzdem.
helper-kept = Was getippt und nicht gesendet wurde, bleibt auf diesem Telefon.

## Das Ende
helper-over-revoked = Die Hilfe an diesem Kasten ist beendet. Die Leitung fragen.
helper-over-hours-over = Die Stunden an diesem Kasten sind um. Die Leitung kann wieder öffnen.
helper-over-run-over = Diese Serie ist fertig. Danke für die Hilfe!
helper-shut = Dieses Telefon öffnet nur Kasten { $tray }. Alles andere gehört der Werkstatt.
helper-shut-go = Zum Kasten
helper-leave = Mit dem Helfen aufhören
helper-leave-sure = Nur die Leitung lässt dieses Telefon wieder ein.
helper-leave-go = Jetzt aufhören
helper-left = Die Hilfe ist beendet. Danke!

## Was nicht angenommen wird, und was dann zu tun ist
helper-refused-other = Das wurde nicht angenommen. Die Leitung rufen.
helper-refused-card-unknown = Diese Karte öffnet nichts. Die Leitung um eine neue bitten.
helper-refused-card-too-often = Zu viele falsche Codes. { $minutes } min warten, dann jedes Zeichen genau ansehen.
helper-refused-card-over = Die Serie dieser Karte ist fertig.
helper-refused-guest-nameless = Bitte den Vornamen eingeben.
helper-refused-guest-revoked = Dieses Telefon wurde ausgeschlossen. Die Leitung fragen.
helper-refused-guest-hours-over = Die Stunden sind um. Die Leitung kann wieder öffnen.
helper-refused-guest-too-many = An diesem Kasten sind schon genug Telefone. Die Leitung fragen.
helper-refused-too-fast = Das war sehr viel auf einmal. Das Telefon merkt es sich und sendet in { $seconds } s von selbst noch einmal.
helper-refused-press-too-large = Das ist zu lang. Bitte kürzer fassen.
helper-refused-access = Das ist Sache der Leitung. Die Leitung rufen.
helper-refused-not-yourself = Nur für sich selbst tippen.
helper-refused-not-your-tray = Dieses Telefon arbeitet nur an Kasten { $tray }.
helper-refused-not-your-press = Das hat jemand anderes getippt.
helper-refused-not-this-step = Der Kasten ist jetzt bei einem anderen Schritt: { $step }.
helper-refused-tray-through = Dieser Kasten hat alle Schritte hinter sich. Der Leitung geben.
helper-refused-shared-load = Andere Kästen gehören dazu. Die Leitung rufen.
helper-refused-not-begun = { $step } wurde noch nicht angefangen.
helper-refused-given-to-another = Diesen Schritt macht jemand anderes. Die Leitung fragen.
helper-refused-not-early = Es muss warten. Nur die Leitung darf früher weitermachen.
helper-refused-texts-changed = Die Texte für diesen Kasten haben sich geändert. Noch einmal ansehen, dann anfangen.
helper-refused-list-first = Zuerst die Startliste abhaken.
helper-refused-not-shown = Von der Leitung zeigen lassen: { $station }
helper-refused-look-first = Zuerst der Leitung das erste Stück zeigen.
helper-refused-watch-first = Diese Maschine muss beaufsichtigt werden: { $station }. Dabeibleiben.
helper-refused-hands-elsewhere = Von dort, wo die Hände sind, lässt sich diese Maschine nicht beaufsichtigen.
helper-refused-station-busy = Andere Arbeit ist darauf: { $station }. Warten oder die Leitung rufen.
helper-refused-station-out = Jetzt nicht zu benutzen: { $station }. Die Leitung rufen.
helper-refused-first-piece-failed = Das erste Stück war nicht richtig. Auf die Leitung warten.
helper-refused-still-waiting = Es muss bis { $ready_at } warten. Liegen lassen.
helper-refused-supply-out = Etwas ist ausgegangen: { $supply }. Die Leitung rufen.
helper-refused-skill = Das braucht jemanden, der es gelernt hat. Die Leitung rufen.
helper-refused-air-not-clear = Bis { $until } sind Lösemitteldämpfe in diesem Raum. Warten.
helper-refused-solvent-beside-heat = In diesem Raum läuft eine heiße Maschine: { $station }. Auf die Leitung warten.
helper-refused-material-unknown = Niemand hat gesagt, woraus das ist. Vor dem Start der Maschine die Leitung rufen.
helper-refused-material-look = Erst das Datenblatt ansehen: { $material }. Die Leitung rufen.
helper-refused-material-forbidden = Dieses Material darf dort nicht hinein: { $material }. Die Leitung rufen.
helper-refused-ahead = Dieser Zeitpunkt, { $at }, liegt noch vor uns. Einen früheren angeben.
helper-refused-before-run = Die Serie wurde um { $opened_at } begonnen. Einen späteren Zeitpunkt angeben.
helper-refused-station-runs = { $station } läuft. Dabeibleiben; daran lässt sich jetzt nichts ändern.
helper-refused-machine-runs = Eine Maschine läuft noch. Dabeibleiben.
helper-refused-load-in-hands = An der Station { $station } arbeitet noch jemand. Der Leitung Bescheid sagen.
helper-refused-care-open = Zuerst die Lappen, der Staub oder das Verbrannte: sagen, was damit geschehen ist. Die Leitung rufen.
helper-refused-wait-open = Kasten { $tray } wartet noch und darf nicht zu lange warten. Der Leitung Bescheid sagen.
helper-refused-rags-first = Zuerst die Lappen: einzeln ausgebreitet draußen, oder in Wasser im Metalleimer mit Deckel. Dann der Werkstattleitung sagen.
helper-refused-transition = Das passt nicht dazu, wie der Kasten jetzt steht. Die Seite noch einmal ansehen.
helper-refused-pieces-not-there = So viele Stücke sind nicht hier. Noch einmal zählen oder die Leitung rufen.
helper-refused-counts-do-not-fit = Hier sind { $there }, und { $counted } wurden gezählt. Noch einmal zählen.
helper-refused-counts-gone-on = Einige davon sind schon weiter. Die Leitung rufen.
helper-refused-later-press = Danach wurde noch etwas getippt. Die Leitung rufen.
helper-refused-does-not-fit = Das passt nicht dazu, wie der Kasten jetzt steht. Die Leitung rufen.
helper-refused-run-closed = Diese Serie ist fertig.
helper-refused-form = Diese Seite ist alt. Noch einmal laden.
helper-refused-unknown = Das kennt die Werkstatt nicht mehr. Die Seite noch einmal laden.
