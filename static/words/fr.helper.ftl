# Ce que lit la personne venue aider avec la carte d'un plateau : court, calme, complet. Seul le serveur le dit. Les phrases
# disent vous ; un bouton dit à l'infinitif ce qu'il fait.

## Arriver
helper-card-tray = Plateau { $tray } de { $run }
helper-card-step = Votre étape : { $step }
helper-card-through = Ce plateau est terminé.
helper-card-name = Votre prénom
helper-card-go = Commencer à aider
helper-card-small = Ce téléphone montrera les étapes de ce plateau, et rien d'autre de l'atelier.
helper-card-shop = Téléphone de l'atelier ? Ouvrir l'application
helper-card-code-title = Saisissez le code de la carte
helper-card-code = Code
helper-card-code-go = Ouvrir le plateau
helper-card-code-hint = Huit caractères, par exemple 7KQM-2WXR. Ils sont à côté du code QR.
helper-no-script = Cette page a besoin de JavaScript.
helper-languages = Langue

## Le plateau
helper-tray = Plateau { $tray }
helper-step-of = Étape { $number } sur { $total }
helper-pieces = { $pieces ->
    [one] 1 pièce
   *[other] { $pieces } pièces
}
helper-until = { $name }, vous aidez jusqu'à { $at }
helper-what-to-do = Ce qu'il faut faire
helper-no-instructions = Rien n'est écrit pour cette étape. Demandez au responsable de vous montrer.
helper-watch-for = Points de vigilance
helper-setup = Comment la machine est réglée
helper-texts = Quel texte à quelle position
helper-position = position { $place }
helper-after-dry = Ensuite : sèche au moins { $span }.
helper-after-cure = Ensuite : durcit au moins { $span }.
helper-after-clamp = Ensuite : reste dans les serre-joints au moins { $span }.
helper-after-cool = Ensuite : refroidit au moins { $span }.
helper-after-settle = Ensuite : repose au moins { $span }.
helper-after-latest = Continuez au plus tard { $span } après la première pièce.
helper-resting-dry = Sèche jusqu'à { $at }. Laissez en place.
helper-resting-cure = Durcit jusqu'à { $at }. Laissez en place.
helper-resting-clamp = Reste dans les serre-joints jusqu'à { $at }. Laissez en place.
helper-resting-cool = Refroidit jusqu'à { $at }. Laissez en place.
helper-resting-settle = Repose jusqu'à { $at }. Laissez en place.
helper-resting-latest = Continuez avant { $at }.
helper-held = Ces pièces sont bloquées : { $why }. Appelez le responsable.
helper-finished = { $step }, terminé : { $good } { $good ->
    [one] bonne
   *[other] bonnes
  }.
helper-moved = { $step }, terminé : { $good } { $good ->
    [one] bonne
   *[other] bonnes
  }. Portez le plateau ici : { $place }
helper-lead-takes = Portez le plateau ici : { $place }. Le responsable prend la suite.
helper-through = Plateau terminé : { $good } { $good ->
    [one] bonne
   *[other] bonnes
  }. Remettez-le au responsable. Merci !

## Où cela en est
helper-state-none = Prêt à commencer
helper-state-loading = Charger
helper-state-working = En cours
helper-state-running = En marche
helper-state-ended = Terminé
helper-state-unloading = Décharger
helper-state-stopped = À l'arrêt
helper-state-done = Fait
helper-running-until = En marche jusqu'à { $at }.
helper-running-stay = Restez et surveillez.
helper-running-overdue = Cela devrait être terminé. Allez voir, et restez jusqu'à l'arrêt.
helper-stopped-wait = Laissez tout en l'état. Le responsable décide de la suite.
helper-done-wait = L'étape suivante s'affiche ici dès l'envoi.
helper-watched-by = { $person } surveille.

## Appuyer
helper-go-start = Commencer
helper-go-on = Continuer
helper-go-running = En marche maintenant
helper-go-list = Avant de commencer : la liste
helper-go-at-it = Terminé : j'y vais
helper-go-done = Terminé : { $good } { $good ->
    [one] bonne
   *[other] bonnes
  }
helper-go-count = Toutes ne sont pas bonnes
helper-go-aside = Mettre de côté pour l'instant
helper-go-wrong = Signaler un problème
helper-go-call = Appeler le responsable
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
helper-did-done = Terminé
helper-did-aside = Mis de côté
helper-did-watch = Regardé
helper-did-call = Responsable appelé
helper-did-stopped = Arrêté
helper-did-first-piece = Première pièce contrôlée
helper-did-undo = Annulé
helper-minutes = Tourne environ
helper-min = min
helper-less = Moins
helper-more = Plus
helper-list-title = Cochez tout, puis démarrez
helper-list-left = encore { $left } à cocher
helper-list-run = Tout est coché : en marche maintenant
helper-count-title = Combien sont bonnes ?
helper-good = Bonnes
helper-scrap = Rebut
helper-count-why = Qu'est-ce qui ne va pas ?
helper-count-go = Terminé : bonnes { $good }, rebut { $scrap }
helper-back = Retour
helper-ok = OK
helper-undo = Annuler

## Quelque chose ne va pas
helper-wrong-title = Qu'est-ce qui ne va pas ?
helper-wrong-hurt = Quelqu'un est blessé ou il y a le feu
helper-wrong-bad = Une pièce défectueuse
helper-wrong-stopped = Arrêt imprévu
helper-hurt-phone = Appeler le { $number }
helper-hurt-call = Appeler aussi le responsable
helper-bad-title = Mettez-la de côté, marquez le défaut
helper-bad-count = À la fin, elle compte au rebut. Deux fois le même défaut : arrêtez et attendez le responsable.
helper-stop-title = Arrêt d'urgence, si sans danger
helper-stop-hand-title = Pourquoi cet arrêt ?
helper-scrap-tear-out = éclatée
helper-scrap-crack = fente
helper-scrap-broke = cassée
helper-scrap-size = mauvaise cote
helper-scrap-surface = surface
helper-scrap-engraving = gravure
helper-scrap-burnt = brûlée
helper-scrap-knot = nœud
helper-scrap-other = autre chose
helper-stop-power = coupure de courant
helper-stop-cutter = fraise
helper-stop-slip = pièce déplacée
helper-stop-failed = raté
helper-stop-other = autre chose

## Premières pièces et regard du responsable
helper-first-piece = Première pièce : contrôlez-la avant de faire les autres
helper-first-piece-limits = { $nominal }, de { $least } à { $most }
helper-first-piece-measured = Mesuré
helper-first-piece-pass = C'est bon
helper-first-piece-fail = Ce n'est pas bon
helper-look-first = Le responsable veut voir la première pièce. Faites-en une et montrez-la.
helper-look-waits = Vous pourrez terminer dès que le responsable l'aura vue.
helper-look-pass = Le responsable l'a vue : continuez.
helper-look-fail = Le responsable l'a vue : ce n'est pas encore bon. Faites-en une autre et montrez-la.
helper-called = Responsable appelé, { $at } ({ $why ->
    [look] première pièce
    [bad-piece] pièce défectueuse
    [stopped] arrêt
    [hurt] blessure ou feu
   *[help] aide
}).
helper-coming = Le responsable arrive.

## Ce qui a été saisi
helper-saved = enregistré ici, envoyé plus tard
helper-only-here = seulement sur cette page : laissez-la ouverte
helper-sent = envoyé
helper-refused = non accepté
helper-offline = Le serveur ne répond pas. Ce que vous saisissez est enregistré ici et envoyé à son retour.
helper-clock-wrong = L'horloge de ce téléphone est fausse. Ce que vous saisissez prend l'heure de l'atelier et reste juste.
helper-kept = Ce que vous avez saisi sans l'envoyer reste sur ce téléphone.

## La fin
helper-over-revoked = Votre aide à ce plateau est terminée. Demandez au responsable.
helper-over-hours-over = Vos heures à ce plateau sont écoulées. Le responsable peut les prolonger.
helper-over-run-over = Cette série est terminée. Merci pour votre aide !
helper-shut = Ce téléphone n'ouvre que le plateau { $tray }. Tout le reste est à l'atelier.
helper-shut-go = Aller au plateau
helper-leave = Arrêter d'aider
helper-leave-sure = Seul le responsable peut laisser de nouveau entrer ce téléphone.
helper-leave-go = Arrêter d'aider maintenant
helper-left = Votre aide est terminée. Merci !

## Ce qui n'est pas accepté, et que faire
helper-refused-other = Ce n'est pas accepté. Appelez le responsable.
helper-refused-card-unknown = Cette carte n'est pas valable. Demandez-en une nouvelle au responsable.
helper-refused-card-too-often = Trop de codes erronés. Attendez { $minutes } min, puis regardez bien chaque caractère.
helper-refused-card-over = La série de cette carte est terminée.
helper-refused-guest-nameless = Saisissez votre prénom.
helper-refused-guest-revoked = Ce téléphone n'a plus accès. Demandez au responsable.
helper-refused-guest-hours-over = Vos heures sont écoulées. Le responsable peut les prolonger.
helper-refused-guest-too-many = Il y a déjà assez de téléphones à ce plateau. Demandez au responsable.
helper-refused-too-fast = C'est trop à la fois. Le téléphone garde tout et renvoie dans { $seconds } s.
helper-refused-press-too-large = C'est trop long. Dites-le en moins de mots.
helper-refused-access = C'est au responsable de le faire. Appelez-le.
helper-refused-not-yourself = Ne saisissez que pour vous-même.
helper-refused-not-your-tray = Ce téléphone ne sert qu'au plateau { $tray }.
helper-refused-not-your-press = Cette saisie vient de quelqu'un d'autre.
helper-refused-not-this-step = Le plateau est maintenant à une autre étape : { $step }.
helper-refused-tray-through = Ce plateau est terminé. Remettez-le au responsable.
helper-refused-shared-load = D'autres plateaux sont sur la machine. Appelez le responsable.
helper-refused-not-begun = { $step } n'est pas encore commencé.
helper-refused-given-to-another = Cette étape est confiée à { $person ->
    [0] quelqu'un d'autre
   *[other] { $person }
  }. Demandez { $lead ->
    [0] au responsable
   *[other] à { $lead }
  }.
helper-refused-not-early = Il faut attendre. Seul le responsable peut continuer plus tôt.
helper-refused-texts-changed = Les textes de ce plateau ont changé. Regardez-les de nouveau, puis commencez.
helper-refused-list-first = Cochez d'abord la liste de démarrage.
helper-refused-not-shown = Demandez au responsable de vous montrer : { $station }
helper-refused-look-first = Montrez d'abord la première pièce au responsable.
helper-refused-watch-first = Cette machine doit être surveillée : { $station }. Restez auprès d'elle.
helper-refused-hands-elsewhere = D'ici, on ne peut pas surveiller cette machine.
helper-refused-station-busy = Occupé : { $station }. Attendez, ou appelez le responsable.
helper-refused-station-out = Hors service : { $station }. Appelez le responsable.
helper-refused-first-piece-failed = La première pièce n'était pas bonne. Attendez le responsable.
helper-refused-still-waiting = Il faut attendre jusqu'à { $ready_at }. Laissez en place.
helper-refused-supply-out = Il n'y en a plus : { $supply }. Appelez le responsable.
helper-refused-skill = Il faut quelqu'un qui l'a appris. Appelez le responsable.
helper-refused-air-not-clear = Il y a des vapeurs de solvant dans ce local jusqu'à { $until }. Attendez.
helper-refused-solvent-beside-heat = Une machine chaude tourne dans ce local : { $station }. Attendez le responsable.
helper-refused-material-unknown = Matière inconnue : appelez le responsable avant de démarrer la machine.
helper-refused-material-look = Il faut d'abord regarder la fiche technique : { $material }. Appelez le responsable.
helper-refused-material-forbidden = Cette matière ne va pas là-dedans : { $material }. Appelez le responsable.
helper-refused-ahead = { $at } n'est pas encore passé. Indiquez un moment antérieur.
helper-refused-before-run = La série a été ouverte à { $opened_at }. Indiquez un moment postérieur.
helper-refused-station-runs = { $station } tourne. Restez auprès ; rien ne peut y être changé maintenant.
helper-refused-machine-runs = Une machine tourne encore. Restez auprès d'elle.
helper-refused-load-in-hands = Quelqu'un travaille encore au poste { $station }. Prévenez le responsable.
helper-refused-care-open = D'abord les chiffons, la poussière ou ce qui a brûlé : dites ce qui en a été fait. Appelez le responsable.
helper-refused-wait-open = Le plateau { $tray } attend encore et ne doit pas attendre trop longtemps. Prévenez le responsable.
helper-refused-rags-first = D'abord les chiffons : étalés à plat, sans les superposer, dehors, ou dans l'eau dans le seau métallique à couvercle. Puis prévenez le responsable.
helper-refused-transition = Cela ne correspond pas à l'état du plateau. Regardez la page de nouveau.
helper-refused-pieces-not-there = Il n'y a pas autant de pièces ici. Recomptez, ou appelez le responsable.
helper-refused-counts-do-not-fit = Il y en a { $there } ici, et { $counted } ont été comptées. Recomptez.
helper-refused-counts-gone-on = Certaines sont déjà plus loin. Appelez le responsable.
helper-refused-later-press = Autre chose a été saisi après. Appelez le responsable.
helper-refused-does-not-fit = Cela ne correspond pas à l'état du plateau. Appelez le responsable.
helper-refused-run-closed = Cette série est terminée.
helper-refused-form = Cette page est périmée. Rechargez-la.
helper-refused-unknown = Cela n'existe plus dans l'atelier. Rechargez la page.
