# Consignes, listes de démarrage, rappels et leurs réponses : care-<clé> pour chaque entrée de runboard/run/care/cautions.json.

## À côté de l'étape
care-stay-and-watch = Restez et surveillez. Ne la laissez jamais tourner seule.
care-laser-beam = Rayonnement laser : lunettes de protection laser pour cette longueur d'onde, capot et protections fermés.
care-fire = Risque d'incendie : l'extincteur que demandent la notice et les règles locales, à portée, du côté de la sortie.
care-exhaust-and-air = Extraction vers l'extérieur en marche, soufflage d'air en marche.
care-hot = Chaud : laissez refroidir avant de toucher.
care-no-gloves = Ni gants ni manches amples près des outils qui tournent.
care-loose = Manches serrées, cheveux attachés, ni bague ni cordon.
care-hands-clear = Mains loin de la fraise : prenez un poussoir.
care-kickback = Rejet : poussez contre le sens de rotation de la fraise, poussoir en main, jamais dans son axe.
care-disconnect = Débranchez avant de changer la fraise.
care-eye-protection = Portez des lunettes de protection.
care-hearing-protection = Portez une protection auditive.
care-dust-mask = Portez le masque antipoussière, jusqu'à ce que l'air soit propre et le bac vidé.
care-extraction = Aspiration des poussières en marche.
care-blown-dust = Pas d'air comprimé sur la poussière ou les vêtements : prenez le tuyau d'aspiration ou un chiffon humide.
care-manual = Lisez d'abord la notice de la machine.
care-crushing = Risque de pincement : éloignez les doigts de ce qui se ferme.
care-sharp-edge = Arêtes vives : prenez avec soin.
care-electricity = Pièces sous tension à l'intérieur : débranchez avant d'ouvrir.
care-respirator = Portez une protection respiratoire, avec le filtre que demande l'étiquette.
care-spraying = Brouillard de pulvérisation : il brûle et nuit aux poumons. Portez un masque respiratoire, en cabine ou dehors, sans étincelle.
care-rags = Chiffons, tampons, papier, pinceaux, poussière huileux peuvent s'enflammer seuls : à plat en une seule couche, dehors à l'ombre, loin des bâtiments ; ou dans l'eau, dans le seau métallique à couvercle. Jamais en tas, à la poubelle, dans une poche, dans un sèche-linge.
care-solvent-air = Solvant dans l'air : ni flamme, ni laser, ni ponçage, ni chauffage, ni chargeur dans ce local.
care-no-smoking = Défense de fumer.
care-gloves = Portez des gants de protection, ceux que demande l'étiquette.
care-air-the-room = Aérez le local, comme le dit l'étiquette.
care-dry-not-cured = Sec au toucher ne veut pas dire durci.
care-climate = Température et humidité comme le demande l'étiquette : l'air froid ou humide garde la couche mouillée plus longtemps.
care-oiled-dust = La poussière de bois huilé peut chauffer seule : videz le sac dehors, dans l'eau, dans le seau métallique à couvercle.
care-lifting = Lourd : soulevez à deux, ou prenez le chariot.
care-batteries = Batteries : chargez seulement si quelqu'un reste, sur un support qui ne brûle pas ; débranchées à la fermeture.
care-alone = Pas en solo : quelqu'un à portée de voix, ou le téléphone sur vous et quelqu'un qui demande de vos nouvelles à heure fixe.

## Avant de démarrer un laser ou un appareil de chauffe
care-start-extinguisher = L'extincteur que demandent la notice et les règles locales est à portée, du côté de la sortie
care-start-eyewear = Toutes les personnes présentes portent des lunettes laser pour cette longueur d'onde
care-start-door = Porte fermée ; ni enfant ni animal ici
care-start-guards = Aucune protection, aucun capot, aucun contacteur de sécurité n'est neutralisé
care-start-exhaust = L'extraction vers l'extérieur est en marche, et elle aspire bien
care-start-bed = Table dégagée et propre : ni chutes, ni poussière, ni suie
care-start-fresh = Aucune pièce fraîchement finie dedans ou à côté
care-start-material = Matière connue, et absente de la liste interdite de l'atelier. Matière inconnue : on n'usine pas

## Avant de démarrer une fraise ou une scie
care-start-held = La pièce est bridée, rien sur le chemin de la fraise
care-start-no-gloves = Pas de gants, pas de manches amples, cheveux attachés
care-start-small = Les petites pièces dans un support, jamais dans les doigts
care-start-extraction = L'aspiration des poussières est en marche
care-start-cutter = Fraise serrée, clé retirée, protections en place
care-start-eyes-ears = Yeux et oreilles protégés
care-start-stop = Arrêt d'urgence à portée

## Rappels
care-watch-check = Restez et surveillez. Confirmez : pas de fumée, pas d'odeur, pièce bridée, bruit habituel.
care-watch-check-laser = Restez et surveillez. Confirmez : pas de flamme, pièce à plat, soufflage et extraction en marche.
care-watch-check-cnc = Restez et surveillez. Confirmez : pas de fumée, pièce bridée, aspiration en marche, bruit habituel.
care-watch-check-heater = Restez et surveillez. Confirmez : pas de fumée, chaleur comme réglée, rien qui brûle à côté.
care-nobody-near = Une machine tourne, et tout le monde a été vu ailleurs en dernier. Allez-y maintenant, et restez.
care-rags-start = Avant d'ouvrir l'huile : le seau métallique à couvercle, avec de l'eau, est prêt, ou une place dehors à l'ombre.
care-rags-end = La couche est passée. Chiffons, tampons, papier, pinceaux, maintenant : à plat en une seule couche, dehors à l'ombre, loin des bâtiments ; ou dans l'eau, dans le seau métallique à couvercle.
care-rags-morning = Regardez encore les chiffons, pinceaux et bacs d'hier : froids, en une seule couche ou sous l'eau, sans odeur ?
care-dust-bag = De la poussière de bois huilé est dans le sac. Videz-le maintenant dehors, dans l'eau, dans le seau métallique à couvercle.
care-smoulder-bin = Une coupe a brûlé. Arrêtez, cherchez des braises, et videz maintenant le bac de l'aspiration dehors.
care-smoulder-again = Regardez encore l'aspiration, son tuyau et la poussière vidée : ni fumée, ni odeur, ni chaleur ?
care-power-back = Coupure de courant : arrêtez chaque machine à son interrupteur, avant qu'il revienne.
care-lockup-rags = Chiffons huileux : à plat en une seule couche dehors, ou dans l'eau, dans le seau métallique à couvercle
care-lockup-power = Machines arrêtées, débranchées, compresseur sans pression
care-lockup-chargers = Aucune batterie sur un chargeur
care-lockup-bins = Bac à poussière vidé, dehors
care-lockup-smoulder = Vérifié à l'œil et au nez : rien ne couve : laser, ponceuse, bac
care-lockup-first-job = Le premier travail de demain est prêt

## Ce qui a été fait
care-rags-done-outdoors = Ils sont à plat en une seule couche dehors, à l'ombre, loin des bâtiments
care-rags-done-water = Ils sont dans l'eau, dans le seau métallique, couvercle fermé
care-rags-done-none = Ni chiffon, ni tampon, ni papier, ni pinceau n'a servi
care-rags-done-looked = Regardé : froid, et sans odeur
care-dust-done-water = La poussière est dehors, dans l'eau, dans le seau métallique, couvercle fermé
care-dust-done-none = Le sac était vide
care-smoulder-done-outdoors = Le bac est vidé, dehors
care-smoulder-done-cold = Regardé encore : ni fumée, ni odeur, ni chaleur

## Toujours
care-emergency = Feu ou blessure : appuyez sur l'arrêt d'urgence si c'est sans danger, sortez, appelez le { $number }.
care-never-leave = Ne quittez jamais une machine en marche qu'il faut surveiller. Avant de partir : arrêtez-la, regardez, coupez le courant.
care-watch-note = Cela montre que quelqu'un a répondu. Ce n'est pas une surveillance incendie.
care-manual-first = La notice de la machine passe d'abord, puis les règles locales et les professionnels habilités.
care-which-extinguisher = Usage courant : dioxyde de carbone près de l'électronique et du laser, eau ou mousse pour le bois massif. La notice et les règles locales disent lequel ; demandez aux pompiers.
care-finish-label = Usage courant : lisez l'étiquette.
care-not-food-safe = Rien d'alimentaire avant le durcissement complet. Ici, aucune finition n'est déclarée apte au contact alimentaire, ni sèche ni durcie. Demandez à son fabricant.
care-figures = À titre d'information. Aucun chiffre ici ne veut dire que c'est sans danger.
