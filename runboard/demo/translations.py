"""The demo's operations in other languages, each text in the order of the original."""

from typing import Any

CLEAN: dict[str, Any] = {
    "de": {
        "name": "Kanten säubern",
        "instructions": [
            "Leisten vom Brett lösen: die drei Haltestege durchsägen.",
            "Stegreste mit dem Blockhobel bündig hobeln, vom Körper weg.",
            "Bohrungen für die Haken ausbürsten, den Saugschlauch daneben. Schutzbrille auflassen.",
            "Gute Stücke in den Kasten, gerissene daneben legen.",
        ],
    },
    "es": {
        "name": "Limpiar los cantos",
        "instructions": [
            "Suelta los listones de la tabla: sierra los tres puentes.",
            "Cepilla los restos a ras, siempre alejando el cepillo del cuerpo.",
            "Limpia los agujeros de los ganchos con la escobilla, la manguera de aspiración al lado. No te quites las gafas.",
            "Las piezas buenas, a la bandeja; las rajadas, al lado.",
        ],
    },
    "fr": {
        "name": "Nettoyer les chants",
        "instructions": [
            "Détachez les barres de la planche : sciez les trois attaches.",
            "Rabotez les restes à fleur, toujours en s'éloignant du corps.",
            "Brossez les trous des crochets, le tuyau d'aspiration à côté. Gardez les lunettes.",
            "Les bonnes pièces dans le plateau, les fendues à côté.",
        ],
    },
}

SAND: dict[str, Any] = {
    "de": {
        "name": "Schleifen",
        "instructions": [
            "Absaugung anschließen und einschalten, Maske auf.",
            "Erst 120, dann 180: Flächen mit der Maschine, in Faserrichtung.",
            "Kanten von Hand brechen, zwei Striche reichen.",
            "Gegen das Licht halten: kein Querkratzer mehr zu sehen.",
        ],
    },
    "es": {
        "name": "Lijar",
        "instructions": [
            "Conecta y enciende la aspiración, ponte la mascarilla.",
            "Primero 120, después 180: las caras con la máquina, a favor de la veta.",
            "Mata los cantos a mano, bastan dos pasadas.",
            "Mira a contraluz: ya no se ve ninguna raya de través.",
        ],
    },
    "fr": {
        "name": "Poncer",
        "instructions": [
            "Branchez et allumez l'aspiration, mettez le masque.",
            "D'abord 120, puis 180 : les faces à la machine, dans le sens du fil.",
            "Cassez les arêtes à la main, deux coups suffisent.",
            "Regardez à contre-jour : plus aucune rayure en travers.",
        ],
    },
}

OIL: dict[str, Any] = {
    "de": {
        "name": "Ölen",
        "instructions": [
            "Handschuhe an, beide Türen auf, Metalleimer mit Wasser und Deckel bereit.",
            "Öl dünn auftragen, die Zahl nicht fluten.",
            "Nach zehn Minuten abwischen, bis nichts mehr glänzt.",
            "Auf das Trockengestell stellen, nichts berührt sich.",
            "Jeden Lappen in den Metalleimer mit Wasser, Deckel zu. Nie auf einen Haufen.",
        ],
    },
    "es": {
        "name": "Aceitar",
        "instructions": [
            "Ponte los guantes, abre las dos puertas, ten a mano el cubo metálico con agua y tapa.",
            "Da una capa fina de aceite, sin encharcar el número.",
            "A los diez minutos, limpia hasta que nada brille.",
            "Pon las piezas en el secadero sin que se toquen.",
            "Cada trapo, al cubo metálico con agua, tapa puesta. Nunca en un montón.",
        ],
    },
    "fr": {
        "name": "Huiler",
        "instructions": [
            "Mettez les gants, ouvrez les deux portes, préparez le seau métallique à couvercle, avec de l'eau.",
            "Passez l'huile en couche mince, sans noyer le numéro.",
            "Au bout de dix minutes, essuyez jusqu'à ce que plus rien ne brille.",
            "Posez les pièces sur le séchoir sans qu'elles se touchent.",
            "Chaque chiffon dans l'eau du seau métallique, couvercle fermé. Jamais en tas.",
        ],
    },
}

HOOKS: dict[str, Any] = {
    "de": {
        "name": "Haken setzen",
        "instructions": [
            "Leiste in die Vorrichtung legen, Zahl nach oben.",
            "Vier Haken von Hand ansetzen, dann mit Drehmoment 3 festziehen.",
            "Haken gerade? Keine Schraubenspitze auf der Rückseite?",
        ],
        "checks": ["Haken steht gerade, Schraube ist nicht zu sehen"],
    },
    "es": {
        "name": "Poner los ganchos",
        "instructions": [
            "Coloca el listón en la plantilla, con el número hacia arriba.",
            "Empieza los cuatro ganchos a mano y apriétalos con par 3.",
            "¿Están rectos? ¿No asoma ninguna punta por detrás?",
        ],
        "checks": ["El gancho está recto y el tornillo no se ve"],
    },
    "fr": {
        "name": "Poser les crochets",
        "instructions": [
            "Posez la barre dans le gabarit, le numéro vers le haut.",
            "Amorcez les quatre crochets à la main, puis serrez au couple 3.",
            "Sont-ils droits ? Aucune pointe ne dépasse derrière ?",
        ],
        "checks": ["Le crochet est droit, la vis ne se voit pas"],
    },
}
