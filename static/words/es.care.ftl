# Avisos, listas de arranque, recordatorios y sus respuestas: care-<clave> para cada entrada de runboard/run/care/cautions.json.

## Junto al paso
care-stay-and-watch = Quédate y vigila. Nunca la dejes en marcha sin ti.
care-laser-beam = Radiación láser: gafas de protección láser para su longitud de onda, tapa y protecciones cerradas.
care-fire = Riesgo de incendio: el extintor que piden el manual y las normas locales, a mano, del lado de la salida.
care-exhaust-and-air = Extracción al exterior encendida, soplado de aire encendido.
care-hot = Caliente: deja que se enfríe antes de tocar.
care-no-gloves = Sin guantes ni mangas sueltas en herramientas que giran.
care-loose = Mangas ajustadas, pelo recogido, sin anillos ni cordones.
care-hands-clear = Manos lejos de la fresa: usa un empujador.
care-kickback = Retroceso: avanza contra el giro de la fresa, empujador en la mano, nunca te pongas en su línea.
care-disconnect = Desenchufa antes de cambiar la fresa.
care-eye-protection = Ponte gafas de protección.
care-hearing-protection = Ponte protección auditiva.
care-dust-mask = Ponte la mascarilla, hasta que el aire esté limpio y el depósito vacío.
care-extraction = Aspiración de polvo encendida.
care-blown-dust = Sin aire comprimido sobre el polvo o la ropa: usa la manguera de aspiración o un paño húmedo.
care-manual = Lee primero el manual de la máquina.
care-crushing = Riesgo de aplastamiento: dedos lejos de lo que se cierra.
care-sharp-edge = Cantos afilados: agárralos con cuidado.
care-electricity = Partes con tensión dentro: desconecta antes de abrir.
care-respirator = Ponte protección respiratoria, con el filtro que pide la etiqueta.
care-spraying = Niebla de pulverización: arde y daña los pulmones. Ponte protección respiratoria, en cabina o al aire libre, sin chispas cerca.
care-rags = Trapos, almohadillas, papel, brochas y polvo impregnados de aceite pueden arder solos: en una sola capa, al aire libre y a la sombra, lejos de edificios; o en agua en el cubo metálico con tapa. Nunca en un montón, en la basura, en un bolsillo, en una secadora.
care-solvent-air = Disolvente en el aire: sin llama, sin láser, sin lijado, sin calefactor ni cargador en este local.
care-no-smoking = Prohibido fumar.
care-gloves = Ponte guantes de protección, los que pide la etiqueta.
care-air-the-room = Ventila el local, como dice la etiqueta.
care-dry-not-cured = Seco al tacto no es curado.
care-climate = Temperatura y humedad como pide la etiqueta: el aire frío o húmedo lo mantiene mojado más tiempo.
care-oiled-dust = El polvo de madera aceitada puede calentarse solo: vacía la bolsa al aire libre, en agua en el cubo metálico con tapa.
care-lifting = Pesado: levanta entre dos personas, o usa el carro.
care-batteries = Baterías: carga solo con alguien presente, sobre algo que no arda; desconectadas al cerrar.
care-alone = No a solas: alguien que te oiga, o el teléfono encima y alguien que pregunte por ti a una hora fija.

## Antes de arrancar un láser o un calefactor
care-start-extinguisher = El extintor que piden el manual y las normas locales está a mano, del lado de la salida
care-start-eyewear = Todas las personas del local llevan gafas láser para esta longitud de onda
care-start-door = Puerta cerrada; sin niños ni animales aquí
care-start-guards = Ninguna protección, tapa o interruptor está anulado
care-start-exhaust = La extracción al exterior está encendida y aspira bien
care-start-bed = Mesa libre y limpia: sin restos, sin polvo, sin hollín
care-start-fresh = Ninguna pieza recién acabada dentro ni cerca
care-start-material = Material conocido, y no está en la lista prohibida del taller. Si no se sabe qué es, no entra

## Antes de arrancar una fresadora o una sierra
care-start-held = La pieza está sujeta, y nada queda en el camino de la fresa
care-start-no-gloves = Sin guantes, sin mangas sueltas, pelo recogido
care-start-small = Las piezas pequeñas en un soporte, nunca en los dedos
care-start-extraction = La aspiración de polvo está encendida
care-start-cutter = Fresa apretada, llave quitada, protecciones puestas
care-start-eyes-ears = Protección de ojos y oídos puesta
care-start-stop = Parada de emergencia a mano

## Recordatorios
care-watch-check = Quédate y vigila. Confirma: sin humo, sin olor, pieza sujeta, sonido de siempre.
care-watch-check-laser = Quédate y vigila. Confirma: sin llama, pieza plana, soplado y extracción encendidos.
care-watch-check-cnc = Quédate y vigila. Confirma: sin humo, pieza sujeta, aspiración encendida, sonido de siempre.
care-watch-check-heater = Quédate y vigila. Confirma: sin humo, calor como se fijó, nada cerca que arda.
care-nobody-near = Una máquina está en marcha y a todos se les vio por última vez en otro lugar. Ve ahora, y quédate.
care-rags-start = Antes de abrir el aceite: el cubo metálico con agua y tapa está listo, o un sitio al aire libre a la sombra.
care-rags-end = La capa está aplicada. Trapos, almohadillas, papel, brochas, ahora: en una sola capa, al aire libre y a la sombra, lejos de edificios; o en agua en el cubo metálico con tapa.
care-rags-morning = Mira otra vez los trapos, brochas y depósitos de ayer: ¿fríos, en una sola capa o bajo agua, sin olor?
care-dust-bag = Hay polvo de madera aceitada en la bolsa. Vacíala ahora al aire libre, en agua en el cubo metálico con tapa.
care-smoulder-bin = Un corte se ha quemado. Para, busca brasas, y vacía ahora el depósito de la aspiración al aire libre.
care-smoulder-again = Mira otra vez la aspiración, su manguera y el polvo vaciado: ¿sin humo, sin olor, sin calor?
care-power-back = Corte de luz: apaga cada máquina en su interruptor, antes de que vuelva.
care-lockup-rags = Trapos impregnados de aceite: en una sola capa al aire libre, o en agua en el cubo metálico con tapa
care-lockup-power = Máquinas apagadas, desenchufadas, compresor sin presión
care-lockup-chargers = Ninguna batería en un cargador
care-lockup-bins = Depósito de polvo vaciado, al aire libre
care-lockup-smoulder = Comprobado (vista y olfato) que nada arde sin llama: láser, lijadora, depósito
care-lockup-first-job = El primer trabajo de mañana está preparado

## Qué se hizo
care-rags-done-outdoors = Están en una sola capa al aire libre, a la sombra, lejos de edificios
care-rags-done-water = Están en agua en el cubo metálico, con la tapa puesta
care-rags-done-none = No se usaron trapos, almohadillas, papel ni brochas
care-rags-done-looked = Mirado: fríos, y sin olor
care-dust-done-water = El polvo está al aire libre, en agua en el cubo metálico, con la tapa puesta
care-dust-done-none = La bolsa estaba vacía
care-smoulder-done-outdoors = El depósito está vaciado, al aire libre
care-smoulder-done-cold = Mirado otra vez: sin humo, sin olor, sin calor

## Siempre
care-emergency = Incendio o persona herida: pulsa la parada de emergencia si puedes hacerlo sin riesgo, sal y llama al { $number }.
care-never-leave = Nunca dejes en marcha una máquina que hay que vigilar. Antes de irte: párala, mírala, corta la corriente.
care-watch-note = Muestra que alguien respondió. No es una vigilancia contra incendios.
care-manual-first = Primero vale el manual de la máquina, luego las normas locales y los profesionales autorizados.
care-which-extinguisher = Práctica común: dióxido de carbono junto a la electrónica y el láser, agua o espuma para madera maciza. El manual y las normas locales dicen cuál; pregunta a los bomberos.
care-finish-label = Práctica común: lee la etiqueta.
care-not-food-safe = Nada para alimentos antes del curado completo. Aquí ningún acabado se declara apto para alimentos, ni seco ni curado. Pregunta a su fabricante.
care-figures = Es información. Ninguna cifra de aquí quiere decir que no haya peligro.
