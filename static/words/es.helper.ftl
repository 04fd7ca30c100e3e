# Lo que lee quien ayuda y llegó con la tarjeta de una bandeja: breve, tranquilo, completo. Solo lo dice el servidor.

## Llegar
helper-card-tray = Bandeja { $tray } de { $run }
helper-card-step = Ayudar aquí: { $step }
helper-card-through = Esta bandeja ha pasado por todos los pasos.
helper-card-name = Nombre
helper-card-go = Empezar a ayudar
helper-card-small = Este teléfono mostrará los pasos de esta bandeja y nada más del taller.
helper-card-shop = Este teléfono es del taller: abrir allí
helper-card-code-title = Escribir el código de la tarjeta de la bandeja
helper-card-code = Código
helper-card-code-go = Abrir la bandeja
helper-card-code-hint = Ocho signos, por ejemplo 7KQM-2WXR. Están junto al código cuadrado.
helper-no-script = Esta página se dibuja en el navegador: necesita JavaScript.
helper-languages = Idioma

## La bandeja
helper-tray = Bandeja { $tray }
helper-step-of = Paso { $number } de { $total }
helper-pieces = { $pieces ->
    [one] 1 pieza
   *[other] { $pieces } piezas
}
helper-until = { $name }, ayuda hasta { $at }
helper-what-to-do = Qué hacer
helper-no-instructions = No hay nada escrito para este paso. Pedir que lo enseñe la persona responsable.
helper-watch-for = A qué prestar atención
helper-setup = Cómo está preparada la máquina
helper-texts = Qué texto en qué posición
helper-position = posición { $place }
helper-after-dry = Después: se seca al menos { $span }.
helper-after-cure = Después: cura al menos { $span }.
helper-after-clamp = Después: queda en los sargentos al menos { $span }.
helper-after-cool = Después: se enfría al menos { $span }.
helper-after-settle = Después: reposa al menos { $span }.
helper-after-latest = Continuar antes de { $span } desde la primera pieza.
helper-resting-dry = Se seca hasta { $at }. Dejarlo donde está.
helper-resting-cure = Cura hasta { $at }. Dejarlo donde está.
helper-resting-clamp = Queda en los sargentos hasta { $at }. Dejarlo donde está.
helper-resting-cool = Se enfría hasta { $at }. Dejarlo donde está.
helper-resting-settle = Reposa hasta { $at }. Dejarlo donde está.
helper-resting-latest = Continuar a más tardar { $at }.
helper-held = Estas piezas esperan: { $why }. Llamar a la persona responsable.
helper-finished = { $step } está hecho: { $good } buenas.
helper-moved = { $step } está hecho: { $good } buenas. Llevar la bandeja aquí: { $place }
helper-lead-takes = Llevar la bandeja aquí: { $place }. Allí sigue la persona responsable.
helper-through = Esta bandeja está terminada: { $good } buenas. Entregarla a la persona responsable. ¡Gracias!

## Cómo está
helper-state-none = Listo para empezar
helper-state-loading = Colocar
helper-state-working = En trabajo
helper-state-running = En marcha
helper-state-ended = Ha terminado
helper-state-unloading = Retirar
helper-state-stopped = Se ha parado
helper-state-done = Hecho
helper-running-until = En marcha hasta { $at }.
helper-running-stay = Quedarse y vigilar.
helper-running-overdue = Debería haber terminado. Mirar, y quedarse hasta que termine.
helper-stopped-wait = Dejar todo como está. La persona responsable decide cómo seguir.
helper-done-wait = Lo que sigue aparecerá aquí en cuanto se envíe.
helper-watched-by = { $person } vigila.

## Pulsar
helper-go-start = Empezar
helper-go-on = Continuar
helper-go-running = Ya está en marcha
helper-go-list = Antes de empezar: la lista
helper-go-at-it = Ha terminado: me pongo con ello
helper-go-done = Hecho: las { $good } buenas
helper-go-count = No todas son buenas
helper-go-aside = Dejarlo a un lado por ahora
helper-go-wrong = Algo va mal
helper-go-call = Llamar a la persona responsable
helper-go-show-me = Llamar para que me lo enseñen
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
helper-did-call = Persona responsable llamada
helper-did-stopped = Parado
helper-did-first-piece = Primera pieza comprobada
helper-did-undo = Deshecho
helper-minutes = Funciona unos
helper-min = min
helper-less = Menos
helper-more = Más
helper-list-title = Marcar cada punto, luego empezar
helper-list-left = faltan { $left } por marcar
helper-list-run = Todo marcado: ya está en marcha
helper-count-title = ¿Cuántas son buenas?
helper-good = Buenas
helper-scrap = Malas
helper-count-why = ¿Qué tienen mal?
helper-count-go = Hecho: { $good } buenas, { $scrap } malas
helper-back = Volver
helper-ok = OK
helper-undo = Deshacer

## Algo va mal
helper-wrong-title = ¿Qué va mal?
helper-wrong-hurt = Alguien está herido, o hay fuego
helper-wrong-bad = Una pieza mala
helper-wrong-stopped = Se ha parado
helper-hurt-phone = Llamar al { $number }
helper-hurt-call = Llamar también a la persona responsable
helper-bad-title = Apartar la pieza mala y marcar lo que está mal
helper-bad-count = Apartarla: al terminar cuenta como mala. Dos iguales: parar y esperar a la persona responsable.
helper-stop-title = Primero parar la máquina: parada de emergencia, si no hay peligro
helper-stop-hand-title = ¿Por qué se ha parado?
helper-scrap-tear-out = astillada
helper-scrap-crack = grieta
helper-scrap-size = medida equivocada
helper-scrap-surface = superficie
helper-scrap-engraving = grabado
helper-scrap-burnt = quemada
helper-scrap-knot = nudo
helper-scrap-other = otra cosa
helper-stop-power = corte de corriente
helper-stop-cutter = fresa
helper-stop-slip = la pieza se ha movido
helper-stop-failed = ha fallado
helper-stop-other = otra cosa

## Primeras piezas y la mirada de la persona responsable
helper-first-piece = Primera pieza: comprobarla antes de seguir con las demás
helper-first-piece-limits = { $nominal }, de { $least } a { $most }
helper-first-piece-measured = Medido
helper-first-piece-pass = Está bien
helper-first-piece-fail = No está bien
helper-look-first = La persona responsable quiere ver la primera pieza. Hacer una y enseñarla.
helper-look-waits = Se puede terminar en cuanto la persona responsable la haya visto.
helper-look-pass = La persona responsable la ha visto: seguir.
helper-look-fail = La persona responsable la ha visto: aún no está bien. Hacer otra y enseñarla.
helper-called = La persona responsable está avisada desde { $at } ({ $why ->
    [look] primera pieza
    [bad-piece] pieza mala
    [stopped] parada
    [hurt] herida o fuego
   *[help] ayuda
}).
helper-coming = La persona responsable ya viene.

## Lo que se ha pulsado
helper-saved = guardado aquí, se envía más tarde
helper-only-here = solo en esta página: dejarla abierta
helper-sent = enviado
helper-refused = no aceptado
helper-offline = El servidor no responde. Lo que se pulse queda guardado aquí y se envía cuando vuelva.
helper-clock-wrong = El reloj de este teléfono va mal. Lo que se pulse recibe la hora del taller y queda bien de todos modos.
helper-kept = Lo que se pulsó y no se envió queda en este teléfono.

## El final
helper-over-revoked = La ayuda en esta bandeja ha terminado. Preguntar a la persona responsable.
helper-over-hours-over = Las horas en esta bandeja han terminado. La persona responsable puede volver a abrir.
helper-over-run-over = Esta serie ha terminado. ¡Gracias por la ayuda!
helper-shut = Este teléfono solo abre la bandeja { $tray }. Todo lo demás es del taller.
helper-shut-go = A la bandeja
helper-leave = Dejar de ayudar
helper-leave-sure = Solo la persona responsable deja entrar otra vez a este teléfono.
helper-leave-go = Dejarlo ahora
helper-left = La ayuda ha terminado. ¡Gracias!

## Lo que no se acepta, y qué hacer
helper-refused-other = No se ha aceptado. Llamar a la persona responsable.
helper-refused-card-unknown = Esta tarjeta no abre nada. Pedir una nueva a la persona responsable.
helper-refused-card-too-often = Demasiados códigos equivocados. Esperar { $minutes } min y mirar bien cada signo.
helper-refused-card-over = La serie de esta tarjeta ha terminado.
helper-refused-guest-nameless = Escribir el nombre.
helper-refused-guest-revoked = Este teléfono ya no puede entrar. Preguntar a la persona responsable.
helper-refused-guest-hours-over = Las horas han terminado. La persona responsable puede volver a abrir.
helper-refused-guest-too-many = En esta bandeja ya hay bastantes teléfonos. Preguntar a la persona responsable.
helper-refused-too-fast = Es demasiado de una vez. El teléfono lo guarda y lo envía de nuevo en { $seconds } s.
helper-refused-press-too-large = Es demasiado largo. Decirlo con menos palabras.
helper-refused-access = Eso le toca a la persona responsable. Llamarla.
helper-refused-not-yourself = Pulsar solo por cuenta propia.
helper-refused-not-your-tray = Este teléfono solo trabaja la bandeja { $tray }.
helper-refused-not-your-press = Eso lo pulsó otra persona.
helper-refused-not-this-step = La bandeja está ahora en otro paso: { $step }.
helper-refused-tray-through = Esta bandeja ha pasado por todos los pasos. Entregarla a la persona responsable.
helper-refused-shared-load = También hay otras bandejas. Llamar a la persona responsable.
helper-refused-not-begun = { $step } aún no se ha empezado.
helper-refused-given-to-another = Este paso lo hace otra persona. Preguntar a la persona responsable.
helper-refused-not-early = Tiene que esperar. Solo la persona responsable puede seguir antes.
helper-refused-texts-changed = Los textos de esta bandeja han cambiado. Mirarlos otra vez y empezar.
helper-refused-list-first = Primero marcar la lista de arranque.
helper-refused-not-shown = Pedir a la persona responsable que lo enseñe: { $station }
helper-refused-look-first = Primero enseñar la primera pieza a la persona responsable.
helper-refused-watch-first = Esta máquina hay que vigilarla: { $station }. Quedarse con ella.
helper-refused-hands-elsewhere = Desde donde están las manos no se puede vigilar esta máquina.
helper-refused-station-busy = Hay otro trabajo en ella: { $station }. Esperar o llamar a la persona responsable.
helper-refused-station-out = Ahora no se puede usar: { $station }. Llamar a la persona responsable.
helper-refused-first-piece-failed = La primera pieza no estaba bien. Esperar a la persona responsable.
helper-refused-still-waiting = Tiene que esperar hasta { $ready_at }. Dejarlo donde está.
helper-refused-supply-out = Se ha acabado algo: { $supply }. Llamar a la persona responsable.
helper-refused-skill = Hace falta alguien que lo haya aprendido. Llamar a la persona responsable.
helper-refused-air-not-clear = El aire de este local no está limpio hasta { $until }. Esperar.
helper-refused-solvent-beside-heat = En este local hay una máquina caliente en marcha: { $station }. Esperar a la persona responsable.
helper-refused-material-unknown = Nadie ha dicho de qué material es. Llamar a la persona responsable antes de poner en marcha la máquina.
helper-refused-material-look = Primero se mira su ficha técnica: { $material }. Llamar a la persona responsable.
helper-refused-material-forbidden = Este material no puede entrar ahí: { $material }. Llamar a la persona responsable.
helper-refused-ahead = Ese momento, { $at }, aún no ha llegado. Indicar uno anterior.
helper-refused-before-run = La serie se abrió a las { $opened_at }. Indicar un momento posterior.
helper-refused-station-runs = { $station } está en marcha. Quedarse allí; ahora no se puede cambiar nada de la máquina.
helper-refused-machine-runs = Una máquina sigue en marcha. Quedarse con ella.
helper-refused-load-in-hands = Alguien trabaja todavía en { $station }. Avisar a la persona responsable.
helper-refused-care-open = Primero los trapos, el polvo o lo quemado: decir qué se ha hecho con ello. Llamar a la persona responsable.
helper-refused-wait-open = La bandeja { $tray } todavía espera y no debe esperar demasiado. Avisar a la persona responsable.
helper-refused-rags-first = Primero los trapos: extendidos en una sola capa, sin encimar, al aire libre, o en agua en el cubo metálico con tapa. Luego avisar a la persona responsable.
helper-refused-transition = No encaja con cómo está ahora la bandeja. Mirar la página otra vez.
helper-refused-pieces-not-there = Aquí no hay tantas piezas. Contar otra vez o llamar a la persona responsable.
helper-refused-counts-do-not-fit = Aquí hay { $there }, y se contaron { $counted }. Contar otra vez.
helper-refused-counts-gone-on = Algunas de estas ya han seguido. Llamar a la persona responsable.
helper-refused-later-press = Después se pulsó algo más. Llamar a la persona responsable.
helper-refused-does-not-fit = No encaja con cómo está ahora la bandeja. Llamar a la persona responsable.
helper-refused-run-closed = Esta serie ha terminado.
helper-refused-form = Esta página es antigua. Cargarla otra vez.
helper-refused-unknown = El taller ya no conoce eso. Cargar la página otra vez.
