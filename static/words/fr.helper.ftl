# Ce que lit la personne venue aider avec la carte d'un plateau : court, calme, complet. Seul le serveur le dit.

## Arriver
helper-card-tray = Plateau { $tray } de { $run }
helper-card-step = Aider ici : { $step }
helper-card-through = Ce plateau a passé toutes les étapes.
helper-card-name = Prénom
helper-card-go = Commencer à aider
helper-card-small = Ce téléphone montrera les étapes de ce plateau, et rien d'autre de l'atelier.
helper-card-shop = Ce téléphone est celui de l'atelier : l'ouvrir là
helper-card-code-title = Saisir le code de la carte du plateau
helper-card-code = Code
helper-card-code-go = Ouvrir le plateau
helper-card-code-hint = Huit signes, par exemple 7KQM-2WXR. Ils sont à côté du code carré.
helper-no-script = Cette page est dessinée dans le navigateur : il lui faut JavaScript.
helper-languages = Langue

## Le plateau
helper-tray = Plateau { $tray }
helper-step-of = Étape { $number } sur { $total }
helper-pieces = { $pieces ->
    [one] 1 pièce
   *[other] { $pieces } pièces
}
helper-until = { $name }, aide jusqu'à { $at }
helper-what-to-do = Ce qu'il faut faire
helper-no-instructions = Rien n'est écrit pour cette étape. Se la faire montrer par la personne responsable.
helper-watch-for = À quoi faire attention
helper-setup = Comment la machine est réglée
helper-texts = Quel texte à quelle place
helper-position = position { $place }
helper-after-dry = Ensuite : sèche au moins { $span }.
helper-after-cure = Ensuite : durcit au moins { $span }.
helper-after-clamp = Ensuite : reste dans les serre-joints au moins { $span }.
helper-after-cool = Ensuite : refroidit au moins { $span }.
helper-after-settle = Ensuite : repose au moins { $span }.
helper-after-latest = Continuer dans les { $span } après la première pièce.
helper-resting-dry = Sèche jusqu'à { $at }. Laisser en place.
helper-resting-cure = Durcit jusqu'à { $at }. Laisser en place.
helper-resting-clamp = Reste dans les serre-joints jusqu'à { $at }. Laisser en place.
helper-resting-cool = Refroidit jusqu'à { $at }. Laisser en place.
helper-resting-settle = Repose jusqu'à { $at }. Laisser en place.
helper-resting-latest = Continuer au plus tard à { $at }.
helper-held = Ces pièces attendent : { $why }. Appeler la personne responsable.
helper-finished = { $step } est terminé : { $good } bonnes.
helper-moved = { $step } est terminé : { $good } bonnes. Porter le plateau ici : { $place }
helper-lead-takes = Porter le plateau ici : { $place }. La personne responsable prend la suite.
helper-through = Ce plateau est terminé : { $good } bonnes. Le remettre à la personne responsable. Merci !

## Où cela en est
helper-state-none = Prêt à commencer
helper-state-loading = Mettre en place
helper-state-working = En travail
helper-state-running = En marche
helper-state-ended = Terminé
helper-state-unloading = Retirer
helper-state-stopped = Arrêté
helper-state-done = Fait
helper-running-until = En marche jusqu'à { $at }.
helper-running-stay = Rester et surveiller.
helper-running-overdue = Cela devrait être terminé. Regarder, et rester jusqu'à la fin.
helper-stopped-wait = Tout laisser en l'état. La personne responsable décide de la suite.
helper-done-wait = La suite s'affiche ici dès que c'est envoyé.
helper-watched-by = { $person } surveille.

## Appuyer
helper-go-start = Commencer
helper-go-on = Continuer
helper-go-running = En marche maintenant
helper-go-list = Avant de commencer : la liste
helper-go-at-it = C'est terminé : je m'en occupe
helper-go-done = Fait : les { $good } bonnes
helper-go-count = Toutes ne sont pas bonnes
helper-go-aside = Mettre de côté pour l'instant
helper-go-wrong = Quelque chose ne va pas
helper-go-call = Appeler la personne responsable
helper-go-show-me = Appeler pour qu'on me montre
helper-go-look = Montrer la première pièce
helper-go-watch = Regardé : { $kind ->
    [laser] pas de flamme, pièce à plat, soufflage et extraction en marche
    [cnc] pas de fumée, pièce bridée, aspiration en marche, bruit habituel
    [heater] pas de fumée, chaleur comme réglée, rien qui brûle à côté
   *[other] pas de fumée, pas d'odeur, pièce bridée, bruit habituel
  }
helper-did-start = Commencé
helper-did-running = En marche
helper-did-at-it = En cours
helper-did-done = Fait
helper-did-aside = Mis de côté
helper-did-watch = Regardé
helper-did-call = Personne responsable appelée
helper-did-stopped = Arrêté
helper-did-first-piece = Première pièce contrôlée
helper-did-undo = Annulé
helper-minutes = Tourne environ
helper-min = min
helper-less = Moins
helper-more = Plus
helper-list-title = Cocher chaque point, puis démarrer
helper-list-left = encore { $left } à cocher
helper-list-run = Tout est coché : en marche maintenant
helper-count-title = Combien sont bonnes ?
helper-good = Bonnes
helper-scrap = Mauvaises
helper-count-why = Qu'est-ce qui ne va pas ?
helper-count-go = Fait : { $good } bonnes, { $scrap } mauvaises
helper-back = Retour
helper-ok = OK
helper-undo = Annuler

## Quelque chose ne va pas
helper-wrong-title = Qu'est-ce qui ne va pas ?
helper-wrong-hurt = Quelqu'un est blessé, ou il y a le feu
helper-wrong-bad = Une mauvaise pièce
helper-wrong-stopped = Arrêt imprévu
helper-hurt-phone = Appeler le { $number }
helper-hurt-call = Appeler aussi la personne responsable
helper-bad-title = Mettre la mauvaise pièce de côté et marquer ce qui ne va pas
helper-bad-count = La mettre de côté : elle compte comme mauvaise à la fin. Deux pareilles : arrêter et attendre la personne responsable.
helper-stop-title = D'abord arrêter la machine : arrêt d'urgence, si c'est sans danger
helper-stop-hand-title = Pourquoi l'arrêt ?
helper-scrap-tear-out = éclatée
helper-scrap-crack = fente
helper-scrap-size = mauvaise cote
helper-scrap-surface = surface
helper-scrap-engraving = gravure
helper-scrap-burnt = brûlée
helper-scrap-knot = nœud
helper-scrap-other = autre chose
helper-stop-power = panne de courant
helper-stop-cutter = fraise
helper-stop-slip = pièce déplacée
helper-stop-failed = raté
helper-stop-other = autre chose

## Premières pièces et regard de la personne responsable
helper-first-piece = Première pièce : la contrôler avant de faire les autres
helper-first-piece-limits = { $nominal }, de { $least } à { $most }
helper-first-piece-measured = Mesuré
helper-first-piece-pass = C'est bon
helper-first-piece-fail = Ce n'est pas bon
helper-look-first = La personne responsable veut voir la première pièce. En faire une et la montrer.
helper-look-waits = On peut terminer dès que la personne responsable l'a vue.
helper-look-pass = La personne responsable l'a vue : continuer.
helper-look-fail = La personne responsable l'a vue : ce n'est pas encore bon. En faire une autre et la montrer.
helper-called = La personne responsable est appelée depuis { $at } ({ $why ->
    [look] première pièce
    [bad-piece] mauvaise pièce
    [stopped] arrêt
    [hurt] blessure ou feu
   *[help] aide
}).
helper-coming = La personne responsable arrive.

## Ce qui a été pressé
helper-saved = enregistré ici, envoyé plus tard
helper-only-here = seulement sur cette page : la laisser ouverte
helper-sent = envoyé
helper-refused = non accepté
helper-offline = Le serveur ne répond pas. Ce qui est pressé est enregistré ici et envoyé à son retour.
helper-clock-wrong = L’horloge de ce téléphone est fausse. Ce qui est pressé reçoit l’heure de l’atelier et reste juste.
helper-kept = Ce qui a été pressé et n'est pas envoyé reste sur ce téléphone.

## La fin
helper-over-revoked = L'aide à ce plateau est terminée. Demander à la personne responsable.
helper-over-hours-over = Les heures à ce plateau sont écoulées. La personne responsable peut rouvrir.
helper-over-run-over = Cette série est terminée. Merci pour l'aide !
helper-shut = Ce téléphone n'ouvre que le plateau { $tray }. Tout le reste est à l'atelier.
helper-shut-go = Au plateau
helper-leave = Arrêter d'aider
helper-leave-sure = Seule la personne responsable laisse de nouveau entrer ce téléphone.
helper-leave-go = Arrêter maintenant
helper-left = L'aide est terminée. Merci !

## Ce qui n'est pas accepté, et que faire
helper-refused-other = Ce n'est pas accepté. Appeler la personne responsable.
helper-refused-card-unknown = Cette carte n'ouvre rien. En demander une nouvelle à la personne responsable.
helper-refused-card-too-often = Trop de codes erronés. Attendre { $minutes } min, puis bien regarder chaque signe.
helper-refused-card-over = La série de cette carte est terminée.
helper-refused-guest-nameless = Écrire le prénom.
helper-refused-guest-revoked = Ce téléphone n'a plus accès. Demander à la personne responsable.
helper-refused-guest-hours-over = Les heures sont écoulées. La personne responsable peut rouvrir.
helper-refused-guest-too-many = Il y a déjà assez de téléphones à ce plateau. Demander à la personne responsable.
helper-refused-too-fast = C'est trop à la fois. Le téléphone garde tout et renvoie dans { $seconds } s.
helper-refused-press-too-large = C'est trop long. Le dire en moins de mots.
helper-refused-access = C'est à la personne responsable de le faire. L'appeler.
helper-refused-not-yourself = N'appuyer que pour soi.
helper-refused-not-your-tray = Ce téléphone ne travaille que le plateau { $tray }.
helper-refused-not-your-press = Quelqu'un d'autre a appuyé là.
helper-refused-not-this-step = Le plateau est maintenant à une autre étape : { $step }.
helper-refused-tray-through = Ce plateau a passé toutes les étapes. Le remettre à la personne responsable.
helper-refused-shared-load = D'autres plateaux y sont aussi. Appeler la personne responsable.
helper-refused-not-begun = { $step } n'est pas encore commencé.
helper-refused-given-to-another = Cette étape est confiée à quelqu'un d'autre. Demander à la personne responsable.
helper-refused-not-early = Il faut attendre. Seule la personne responsable peut continuer plus tôt.
helper-refused-texts-changed = Les textes de ce plateau ont changé. Les regarder de nouveau, puis commencer.
helper-refused-list-first = D'abord cocher la liste de démarrage.
helper-refused-not-shown = Se faire montrer par la personne responsable : { $station }
helper-refused-look-first = D'abord montrer la première pièce à la personne responsable.
helper-refused-watch-first = Cette machine doit être surveillée : { $station }. Rester auprès d'elle.
helper-refused-hands-elsewhere = De là où sont les mains, cette machine ne peut pas être surveillée.
helper-refused-station-busy = Un autre travail s'y trouve : { $station }. Attendre, ou appeler la personne responsable.
helper-refused-station-out = Inutilisable maintenant : { $station }. Appeler la personne responsable.
helper-refused-first-piece-failed = La première pièce n'était pas bonne. Attendre la personne responsable.
helper-refused-still-waiting = Il faut attendre jusqu'à { $ready_at }. Laisser en place.
helper-refused-supply-out = Il manque quelque chose : { $supply }. Appeler la personne responsable.
helper-refused-skill = Il faut quelqu'un qui l'a appris. Appeler la personne responsable.
helper-refused-air-not-clear = L'air de ce local n'est pas sain avant { $until }. Attendre.
helper-refused-solvent-beside-heat = Une machine chaude tourne dans ce local : { $station }. Attendre la personne responsable.
helper-refused-material-unknown = Personne n'a dit en quoi c'est fait. Appeler la personne responsable avant de démarrer la machine.
helper-refused-material-look = D'abord regarder sa fiche technique : { $material }. Appeler la personne responsable.
helper-refused-material-forbidden = Ce matériau n'a rien à faire là-dedans : { $material }. Appeler la personne responsable.
helper-refused-ahead = Ce moment, { $at }, n’est pas encore venu. En indiquer un plus tôt.
helper-refused-before-run = La série a été ouverte à { $opened_at }. Indiquer un moment postérieur.
helper-refused-station-runs = { $station } tourne. Rester auprès ; rien ne peut y être changé maintenant.
helper-refused-machine-runs = Une machine tourne encore. Rester auprès d'elle.
helper-refused-load-in-hands = Quelqu'un travaille encore au poste { $station }. Prévenir la personne responsable.
helper-refused-care-open = D'abord les chiffons, la poussière ou ce qui a brûlé : dire ce qu'on en a fait. Appeler la personne responsable.
helper-refused-wait-open = Le plateau { $tray } attend encore et ne doit pas attendre trop longtemps. Prévenir la personne responsable.
helper-refused-rags-first = D'abord les chiffons : étalés à plat, sans les superposer, dehors, ou dans l'eau dans le seau métallique à couvercle. Puis le dire à la personne responsable.
helper-refused-transition = Cela ne correspond pas à l'état du plateau. Regarder la page de nouveau.
helper-refused-pieces-not-there = Il n'y a pas autant de pièces ici. Recompter, ou appeler la personne responsable.
helper-refused-counts-do-not-fit = Il y en a { $there } ici, et { $counted } ont été comptées. Recompter.
helper-refused-counts-gone-on = Certaines sont déjà plus loin. Appeler la personne responsable.
helper-refused-later-press = Quelque chose a été pressé après. Appeler la personne responsable.
helper-refused-does-not-fit = Cela ne correspond pas à l'état du plateau. Appeler la personne responsable.
helper-refused-run-closed = Cette série est terminée.
helper-refused-form = Cette page est ancienne. La charger de nouveau.
helper-refused-unknown = L'atelier ne connaît plus cela. Charger la page de nouveau.
