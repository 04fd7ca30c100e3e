# Lo que dicen las tarjetas: hojas de ruta, etiquetas, el resumen de una tanda. Las precauciones están en su catálogo.
card-good = buenas
card-scrap = defectuosas
card-initials = iniciales
card-time = hora
card-notes = notas
card-measured = medido
card-continued = continuación
card-trays = Bandejas
card-orders = Pedidos
card-supplies = Consumo total
card-steps = Pasos
card-places = Posiciones de la plantilla
card-position = posición { $place }
card-card = tarjeta
card-start-list = Lista de arranque
card-on-the-jig-label = en la etiqueta de la máquina
card-pieces = { $pieces ->
    [one] 1 pieza
   *[other] { $pieces } piezas
}
card-tray-of = { $trays ->
    [one] la única bandeja
   *[other] bandeja { $tray } de { $trays }
}
card-due = para { $at }
card-run-due = la tanda para { $at }
card-run-due-over = la tanda de { $first } a { $last }
card-order-dated = { $pieces } para { $at }
card-order-undated = { $pieces } sin fecha
card-board = tabla { $board }

## First pieces
card-first-piece-run = Primera pieza de la tanda
card-first-piece-setup = Primera pieza tras preparar la máquina
card-first-piece-load = Primera pieza de cada carga
card-measure = { $nominal } +{ $plus } −{ $minus }
card-limits = { $least } a { $most }

## Waits
card-wait-dry = Deja secar: { $span } como mínimo
card-wait-cure = Deja curar: { $span } como mínimo
card-wait-clamp = En sargentos: { $span } como mínimo
card-wait-cool = Deja enfriar: { $span } como mínimo
card-wait-settle = Deja reposar: { $span } como mínimo
card-finish = Después de { $finish }
card-finish-unknown = Después de dar el acabado
card-go-on-from = sigue desde
card-latest = como máximo ({ $span })
card-recoat = siguiente capa desde ({ $span })
card-handle = manipular desde ({ $span })
card-cure = curado total ({ $span })
card-label-of = Tiempos: etiqueta, ficha del { $date }.
card-read-the-label = Tiempos orientativos: lee la etiqueta.
card-do-not-move = No muevas antes de
card-not-before = no antes de { $at }

## The foot
card-the-lead = tu responsable
card-bad-piece = Pieza defectuosa: apártala, márcala, cuéntala como tal, avisa a { $lead }. Dos con el mismo defecto: para y avisa.
card-print = { $run } · revisión de ruta { $revision } · impresión { $number } · { $at }

## The run's summary
card-wanted = { $wanted } pedidas, { $started } empezadas, { $good } buenas
card-opened = abierta { $at }
card-next = después: { $step }
card-all-done = todo hecho

## Packing slips
card-slip = Contenido del paquete
card-slip-text = Texto en la pieza
card-slip-due = para
card-slip-packed-on = empaquetado el
card-slip-part = { $left ->
    [0] { $parcel } de { $pieces }
   *[other] { $parcel } de { $pieces }, faltan { $left }
  }
card-slip-packed-by = empaquetado por
card-slip-order = Pedido { $line }

## One card a tray: what is long stands on the station's sheet
card-cautions-on-sheet = Avisos de seguridad: en la hoja del puesto. Léela primero.
card-bad-piece-short = Pieza defectuosa: apártala, márcala, cuéntala como tal, avisa a { $lead }.
card-scrap-box = defect.
card-side = cara
card-turn-over = gira
card-on-more-cards = Demasiado larga para una tarjeta: esta bandeja lleva más tarjetas.
card-texts = Textos por posición

## The station's sheet
card-station-sheet = Hoja del puesto
card-at-step = { $last ->
    [0] paso { $first } de { $steps }
   *[other] pasos { $first } a { $last } de { $steps }
  }
card-at-this-station = En este puesto
card-before-starting = Antes de arrancar
card-setting-up = Preparación
card-supplies-each = Se gasta por pieza: { $supplies }
card-on-a-phone = El código de la tarjeta de una bandeja muestra cada paso en el teléfono, con sus imágenes.

## A caution in two words beside its sign; in full it is care-…
card-sign-stay-and-watch = quédate y vigila
card-sign-laser-beam = gafas láser, tapa cerrada
card-sign-fire = extintor a mano
card-sign-exhaust-and-air = extracción y soplado
card-sign-hot = caliente, deja enfriar
card-sign-no-gloves = sin guantes
card-sign-loose = mangas y pelo sujetos
card-sign-hands-clear = empujador, manos lejos
card-sign-kickback = retroceso, ponte a un lado
card-sign-disconnect = desenchufa para cambiar
card-sign-eye-protection = gafas
card-sign-hearing-protection = oídos
card-sign-dust-mask = mascarilla
card-sign-extraction = con aspiración
card-sign-blown-dust = sin aire comprimido
card-sign-manual = lee el manual
card-sign-crushing = dedos lejos
card-sign-sharp-edge = cantos afilados
card-sign-electricity = desconecta para abrir
card-sign-respirator = mascarilla con filtro
card-sign-spraying = mascarilla con filtro, sin chispas
card-sign-rags = trapos al aire libre o en agua
card-sign-solvent-air = disolvente, sin llama
card-sign-no-smoking = prohibido fumar
card-sign-gloves = guantes puestos
card-sign-air-the-room = ventila el local
card-sign-dry-not-cured = seco no es curado
card-sign-climate = ni frío ni humedad
card-sign-oiled-dust = polvo con aceite afuera, en agua
card-sign-lifting = levanta entre dos
card-sign-batteries = carga con alguien delante
card-sign-alone = no a solas
