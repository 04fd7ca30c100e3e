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
card-print = { $run } · gamme { $revision } · impression { $number } · { $at }

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

## One card a tray: what is long stands on the station's sheet
card-cautions-on-sheet = Consignes de sécurité : sur la fiche du poste. Lisez-la d'abord.
card-bad-piece-short = Pièce défectueuse : mettez-la de côté, marquez-la, comptez-la au rebut, prévenez { $lead }.
card-scrap-box = rebut
card-side = face
card-turn-over = tournez
card-on-more-cards = Trop long pour une carte : d'autres cartes vont avec ce plateau.
card-texts = Textes par position

## The station's sheet
card-station-sheet = Fiche du poste
card-at-step = { $last ->
    [0] étape { $first } sur { $steps }
   *[other] étapes { $first } à { $last } sur { $steps }
  }
card-at-this-station = À ce poste
card-before-starting = Avant de démarrer
card-setting-up = Réglage
card-supplies-each = Consommé par pièce : { $supplies }
card-on-a-phone = Le code sur la carte d'un plateau montre chaque étape sur un téléphone, avec ses images.

## A caution in two words beside its sign; in full it is care-…
card-sign-stay-and-watch = restez et surveillez
card-sign-laser-beam = lunettes laser, capot fermé
card-sign-fire = extincteur à portée
card-sign-exhaust-and-air = extraction et soufflage
card-sign-hot = chaud, laissez refroidir
card-sign-no-gloves = pas de gants
card-sign-loose = manches et cheveux serrés
card-sign-hands-clear = poussoir, mains loin
card-sign-kickback = rejet, restez de côté
card-sign-disconnect = débranchez pour changer
card-sign-eye-protection = lunettes
card-sign-hearing-protection = oreilles
card-sign-dust-mask = masque
card-sign-extraction = avec aspiration
card-sign-blown-dust = pas d'air comprimé
card-sign-manual = lisez la notice
card-sign-crushing = doigts à l'écart
card-sign-sharp-edge = arêtes vives
card-sign-electricity = débranchez pour ouvrir
card-sign-respirator = masque à cartouche
card-sign-spraying = masque à cartouche, pas d'étincelle
card-sign-rags = chiffons dehors ou dans l'eau
card-sign-solvent-air = solvant, pas de flamme
card-sign-no-smoking = défense de fumer
card-sign-gloves = mettez des gants
card-sign-air-the-room = aérez le local
card-sign-dry-not-cured = sec ne veut pas dire durci
card-sign-climate = ni froid ni humide
card-sign-oiled-dust = poussière huilée dehors, à l'eau
card-sign-lifting = soulevez à deux
card-sign-batteries = restez pendant la charge
card-sign-alone = pas en solo
