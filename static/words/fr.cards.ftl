# Ce que disent les cartes : fiches suiveuses, étiquettes, résumé d'une série. Les précautions sont dans leur catalogue.
card-good = bonnes
card-scrap = rebut
card-initials = initiales
card-time = heure
card-notes = notes
card-measured = mesuré
card-continued = suite
card-trays = Plateaux
card-orders = Commandes
card-supplies = Consommation totale
card-steps = Étapes
card-places = Positions du gabarit
card-position = position { $place }
card-card = carte
card-start-list = Liste de démarrage
card-on-the-jig-label = sur l'étiquette de la machine
card-pieces = { $pieces ->
    [one] { $pieces } pièce
   *[other] { $pieces } pièces
}
card-tray-of = { $trays ->
    [one] le seul plateau
   *[other] plateau { $tray } sur { $trays }
}
card-due = pour { $at }
card-run-due = série pour { $at }
card-run-due-over = série de { $first } à { $last }
card-order-dated = { $pieces } pour { $at }
card-order-undated = { $pieces } sans date
card-board = planche { $board }

## First pieces
card-first-piece-run = Première pièce de la série
card-first-piece-setup = Première pièce après réglage de la machine
card-first-piece-load = Première pièce de chaque charge
card-measure = { $nominal } +{ $plus } −{ $minus }
card-limits = { $least } à { $most }

## Waits
card-wait-dry = Laissez sécher : { $span } au moins
card-wait-cure = Laissez durcir : { $span } au moins
card-wait-clamp = Sous serre-joints : { $span } au moins
card-wait-cool = Laissez refroidir : { $span } au moins
card-wait-settle = Laissez reposer : { $span } au moins
card-finish = Après { $finish }
card-finish-unknown = Après la finition
card-go-on-from = continuez à partir de
card-latest = au plus tard ({ $span })
card-recoat = couche suivante à partir de ({ $span })
card-handle = manipuler à partir de ({ $span })
card-cure = durci à cœur ({ $span })
card-label-of = Durées : étiquette et fiche, { $date }.
card-read-the-label = Durées indicatives : lisez l'étiquette.
card-do-not-move = Ne déplacez pas avant
card-not-before = pas avant { $at }

## The foot
card-the-lead = le responsable
card-bad-piece = Pièce défectueuse : mettez-la de côté, marquez-la, comptez-la au rebut, prévenez { $lead }. Deux fois le même défaut : arrêtez et appelez.
card-print = { $run } · révision de gamme { $revision } · impression { $number } · { $at }

## The run's summary
card-wanted = { $wanted } demandées, { $started } commencées, { $good } bonnes
card-opened = ouverte { $at }
card-next = ensuite : { $step }
card-all-done = tout est fait

## Packing slips
card-slip = Contenu du colis
card-slip-text = Texte sur la pièce
card-slip-due = pour
card-slip-packed-on = emballé le
card-slip-part = { $left ->
    [0] { $parcel } sur { $pieces }
   *[other] { $parcel } sur { $pieces }, { $left } à suivre
  }
card-slip-packed-by = emballé par
card-slip-order = Commande { $line }
