# Lo que lee quien ayuda y llegó con la tarjeta de una bandeja: breve, tranquilo, completo. Solo lo dice el servidor. Las frases
# hablan de tú; un botón dice en infinitivo lo que hace.

## Llegar
helper-card-tray = Bandeja { $tray } de { $run }
helper-card-step = Tu paso: { $step }
helper-card-through = Esta bandeja está terminada.
helper-card-name = Tu nombre
helper-card-go = Empezar a ayudar
helper-card-small = Este teléfono mostrará los pasos de esta bandeja y nada más del taller.
helper-card-shop = ¿Es un teléfono del taller? Abrir allí
helper-card-code-title = Escribe el código de la tarjeta
helper-card-code = Código
helper-card-code-go = Abrir la bandeja
helper-card-code-hint = Ocho caracteres, por ejemplo 7KQM-2WXR. Están junto al código QR.
helper-no-script = Esta página necesita JavaScript.
helper-languages = Idioma

## La bandeja
helper-tray = Bandeja { $tray }
helper-step-of = Paso { $number } de { $total }
helper-pieces = { $pieces ->
    [one] 1 pieza
   *[other] { $pieces } piezas
}
helper-until = { $name }, ayudas hasta { $at }
helper-what-to-do = Qué hacer
helper-no-instructions = No hay nada escrito para este paso. Pide al responsable que te lo enseñe.
helper-watch-for = Presta atención
helper-setup = Cómo está preparada la máquina
helper-texts = Qué texto en qué posición
helper-position = posición { $place }
helper-after-dry = Después: se seca { $span } como mínimo.
helper-after-cure = Después: cura { $span } como mínimo.
helper-after-clamp = Después: queda en los sargentos { $span } como mínimo.
helper-after-cool = Después: se enfría { $span } como mínimo.
helper-after-settle = Después: reposa { $span } como mínimo.
helper-after-latest = Continúa como máximo { $span } después de la primera pieza.
helper-resting-dry = Se seca hasta { $at }. Déjalo donde está.
helper-resting-cure = Cura hasta { $at }. Déjalo donde está.
helper-resting-clamp = Queda en los sargentos hasta { $at }. Déjalo donde está.
helper-resting-cool = Se enfría hasta { $at }. Déjalo donde está.
helper-resting-settle = Reposa hasta { $at }. Déjalo donde está.
helper-resting-latest = Continúa a más tardar { $at }.
helper-held = Estas piezas están retenidas: { $why }. Llama al responsable.
helper-finished = { $step }, hecho: { $good } { $good ->
    [one] buena
   *[other] buenas
  }.
helper-moved = { $step }, hecho: { $good } { $good ->
    [one] buena
   *[other] buenas
  }. Lleva la bandeja aquí: { $place }
helper-lead-takes = Lleva la bandeja aquí: { $place }. Allí sigue el responsable.
helper-through = Bandeja terminada: { $good } { $good ->
    [one] buena
   *[other] buenas
  }. Entrégala al responsable. ¡Gracias!

## Cómo está
helper-state-none = Listo para empezar
helper-state-loading = Cargar
helper-state-working = En curso
helper-state-running = En marcha
helper-state-ended = Ha terminado
helper-state-unloading = Descargar
helper-state-stopped = Se ha parado
helper-state-done = Hecho
helper-running-until = En marcha hasta { $at }.
helper-running-stay = Quédate y vigila.
helper-running-overdue = Debería haber terminado. Mira, y quédate hasta que la máquina esté parada.
helper-stopped-wait = Deja todo como está. El responsable decide cómo seguir.
helper-done-wait = El paso siguiente aparece aquí cuando se envíe.
helper-watched-by = { $person } vigila.

## Pulsar
helper-go-start = Empezar
helper-go-on = Continuar
helper-go-running = Ya está en marcha
helper-go-list = Antes de empezar: la lista
helper-go-at-it = Ha terminado: voy yo
helper-go-done = Hecho: { $good } { $good ->
    [one] buena
   *[other] buenas
  }
helper-go-count = No todas son buenas
helper-go-aside = Dejar a un lado por ahora
helper-go-wrong = Algo va mal
helper-go-call = Llamar al responsable
helper-go-show-me = Llamar para que me enseñen
helper-go-look = Enseñar la primera pieza
helper-go-watch = Mirado: { $kind ->
    [laser] sin llama, pieza plana, soplado y extracción en marcha
    [cnc] sin humo, pieza sujeta, aspiración en marcha, sonido de siempre
    [heater] sin humo, calor como se fijó, nada cerca que arda
   *[other] sin humo, sin olor, pieza sujeta, sonido de siempre
  }
helper-did-start = Empezado
helper-did-running = En marcha
helper-did-at-it = En ello
helper-did-done = Hecho
helper-did-aside = Dejado a un lado
helper-did-watch = Mirado
helper-did-call = Responsable avisado
helper-did-stopped = Parado
helper-did-first-piece = Primera pieza comprobada
helper-did-undo = Deshecho
helper-minutes = En marcha unos
helper-min = min
helper-less = Menos
helper-more = Más
helper-list-title = Marca cada punto, luego empieza
helper-list-left = faltan { $left } por marcar
helper-list-run = Todo marcado: ya está en marcha
helper-count-title = ¿Cuántas son buenas?
helper-good = Buenas
helper-scrap = Defectuosas
helper-count-why = ¿Qué tienen mal?
helper-count-go = Hecho: buenas { $good }, defectuosas { $scrap }
helper-back = Volver
helper-ok = OK
helper-undo = Deshacer

## Algo va mal
helper-wrong-title = ¿Qué va mal?
helper-wrong-hurt = Alguien está herido o hay fuego
helper-wrong-bad = Una pieza defectuosa
helper-wrong-stopped = Se ha parado
helper-hurt-phone = Llamar al { $number }
helper-hurt-call = Llamar también al responsable
helper-bad-title = Apártala y marca el defecto
helper-bad-count = Al terminar cuenta como defectuosa. Dos con el mismo defecto: para y espera al responsable.
helper-stop-title = Para la máquina, si es seguro
helper-stop-hand-title = ¿Por qué se ha parado?
helper-scrap-tear-out = astillada
helper-scrap-crack = grieta
helper-scrap-broke = rota
helper-scrap-size = medida equivocada
helper-scrap-surface = superficie
helper-scrap-engraving = grabado
helper-scrap-burnt = quemada
helper-scrap-knot = nudo
helper-scrap-other = otra cosa
helper-stop-power = corte de luz
helper-stop-cutter = fresa
helper-stop-slip = la pieza se ha movido
helper-stop-failed = ha salido mal
helper-stop-other = otra cosa

## Primeras piezas y la mirada del responsable
helper-first-piece = Primera pieza: compruébala antes de seguir con las demás
helper-first-piece-limits = { $nominal }, de { $least } a { $most }
helper-first-piece-measured = Medido
helper-first-piece-pass = Está bien
helper-first-piece-fail = No está bien
helper-look-first = El responsable quiere ver la primera pieza. Haz una y enséñala.
helper-look-waits = Se puede terminar cuando el responsable la haya visto.
helper-look-pass = El responsable la ha visto: continúa.
helper-look-fail = El responsable la ha visto: aún no está bien. Haz otra y enséñala.
helper-called = Responsable avisado, { $at } ({ $why ->
    [look] primera pieza
    [bad-piece] pieza defectuosa
    [stopped] parada
    [hurt] herida o fuego
   *[help] ayuda
}).
helper-coming = El responsable ya viene.

## Lo que se ha pulsado
helper-saved = guardado aquí, se envía más tarde
helper-only-here = solo en esta página: déjala abierta
helper-sent = enviado
helper-refused = no aceptado
helper-offline = El servidor no responde. Lo que pulses queda guardado aquí y se envía cuando vuelva.
helper-clock-wrong = El reloj de este teléfono va mal. Lo que pulses lleva la hora del taller y queda bien.
helper-kept = Lo que pulsaste y no se envió queda en este teléfono.

## El final
helper-over-revoked = Tu ayuda en esta bandeja ha terminado. Pregunta al responsable.
helper-over-hours-over = Tus horas en esta bandeja han terminado. El responsable puede ampliarlas.
helper-over-run-over = Esta tanda ha terminado. ¡Gracias por tu ayuda!
helper-shut = Este teléfono solo abre la bandeja { $tray }. Todo lo demás es del taller.
helper-shut-go = Ir a la bandeja
helper-leave = Dejar de ayudar
helper-leave-sure = Solo el responsable puede dejar entrar otra vez a este teléfono.
helper-leave-go = Dejar de ayudar ahora
helper-left = Tu ayuda ha terminado. ¡Gracias!

## Lo que no se acepta, y qué hacer
helper-refused-other = No se ha aceptado. Llama al responsable.
helper-refused-card-unknown = Esta tarjeta no vale. Pide una nueva al responsable.
helper-refused-card-too-often = Demasiados códigos equivocados. Espera { $minutes } min y mira bien cada carácter.
helper-refused-card-over = La tanda de esta tarjeta ha terminado.
helper-refused-guest-nameless = Escribe tu nombre.
helper-refused-guest-revoked = Este teléfono ya no puede entrar. Pregunta al responsable.
helper-refused-guest-hours-over = Tus horas han terminado. El responsable puede ampliarlas.
helper-refused-guest-too-many = En esta bandeja ya hay bastantes teléfonos. Pregunta al responsable.
helper-refused-too-fast = Son demasiadas pulsaciones de una vez. El teléfono las guarda y las envía en { $seconds } s.
helper-refused-press-too-large = Es demasiado largo. Dilo con menos palabras.
helper-refused-access = Eso le toca al responsable. Llámalo.
helper-refused-not-yourself = Pulsa solo en tu nombre.
helper-refused-not-your-tray = Este teléfono solo sirve para la bandeja { $tray }.
helper-refused-not-your-press = Eso lo pulsó otra persona.
helper-refused-not-this-step = La bandeja está ahora en otro paso: { $step }.
helper-refused-tray-through = Esta bandeja está terminada. Entrégala al responsable.
helper-refused-shared-load = Hay otras bandejas en esta carga. Llama al responsable.
helper-refused-not-begun = { $step } aún no se ha empezado.
helper-refused-given-to-another = Este paso lo hace { $person ->
    [0] otra persona
   *[other] { $person }
  }. Pregunta { $lead ->
    [0] al responsable
   *[other] a { $lead }
  }.
helper-refused-not-early = Tiene que esperar. Solo el responsable puede seguir antes.
helper-refused-texts-changed = Los textos de esta bandeja han cambiado. Míralos otra vez y empieza.
helper-refused-list-first = Marca primero la lista de arranque.
helper-refused-not-shown = Pide al responsable que te lo enseñe: { $station }
helper-refused-look-first = Enseña primero la primera pieza al responsable.
helper-refused-watch-first = Esta máquina hay que vigilarla: { $station }. Quédate con ella.
helper-refused-hands-elsewhere = Desde donde estás no se puede vigilar esta máquina.
helper-refused-station-busy = Ocupada: { $station }. Espera o llama al responsable.
helper-refused-station-out = Fuera de servicio: { $station }. Llama al responsable.
helper-refused-first-piece-failed = La primera pieza no estaba bien. Espera al responsable.
helper-refused-still-waiting = Tiene que esperar hasta { $ready_at }. Déjalo donde está.
helper-refused-supply-out = Se ha acabado: { $supply }. Llama al responsable.
helper-refused-skill = Hace falta alguien que lo haya aprendido. Llama al responsable.
helper-refused-air-not-clear = Hay vapores de disolvente en este local hasta { $until }. Espera.
helper-refused-solvent-beside-heat = En este local hay una máquina caliente en marcha: { $station }. Espera al responsable.
helper-refused-material-unknown = Material desconocido: llama al responsable antes de poner en marcha la máquina.
helper-refused-material-look = Primero hay que mirar la ficha técnica: { $material }. Llama al responsable.
helper-refused-material-forbidden = Este material no puede entrar ahí: { $material }. Llama al responsable.
helper-refused-ahead = { $at } aún no ha llegado. Indica un momento anterior.
helper-refused-before-run = La tanda se abrió { $opened_at }. Indica un momento posterior.
helper-refused-station-runs = { $station } está en marcha. Quédate con ella; ahora no se puede cambiar nada.
helper-refused-machine-runs = Una máquina sigue en marcha. Quédate con ella.
helper-refused-load-in-hands = Alguien trabaja todavía en { $station }. Avisa al responsable.
helper-refused-care-open = Primero los trapos, el polvo o lo quemado: di qué se ha hecho con ello. Llama al responsable.
helper-refused-wait-open = La bandeja { $tray } todavía espera y no debe esperar demasiado. Avisa al responsable.
helper-refused-rags-first = Primero los trapos: extendidos en una sola capa, sin encimar, al aire libre, o en agua en el cubo metálico con tapa. Luego avisa al responsable.
helper-refused-transition = No encaja con cómo está ahora la bandeja. Mira la página otra vez.
helper-refused-pieces-not-there = Aquí no hay tantas piezas. Cuenta otra vez o llama al responsable.
helper-refused-counts-do-not-fit = Aquí hay { $there }, y se contaron { $counted }. Cuenta otra vez.
helper-refused-counts-gone-on = Algunas de estas ya han seguido. Llama al responsable.
helper-refused-later-press = Después se pulsó algo más. Llama al responsable.
helper-refused-does-not-fit = No encaja con cómo está ahora la bandeja. Llama al responsable.
helper-refused-run-closed = Esta tanda ha terminado.
helper-refused-form = Esta página es antigua. Cárgala otra vez.
helper-refused-unknown = Eso ya no existe en el taller. Carga la página otra vez.
