# Lo que se dice a madres, padres y tutores. De usted, en palabras sencillas. Se elogia la práctica, no el resultado.

## La entrada

stranger-hello = ¡Hola! Aquí se acompaña la práctica de las familias de una clínica. Para entrar, abra el enlace o mande el código que le dio su clínica. Esto no es una línea de emergencias.
which-child = Este número es de más de un niño o niña. ¿De quién se trata? Mande solo el nombre: { $names }
code-unknown = No conocemos ese código. Mire bien cada letra y mándelo otra vez, o pida uno nuevo a su clínica.
code-used = Ese código ya se usó. Pida uno nuevo a su clínica.
code-expired = Ese código ya no sirve. Pida uno nuevo a su clínica.
code-wait = Fueron muchos intentos. Espere una hora y mande el código que le dio su clínica.
consent-ask =
    ¡Hola! Antes de empezar, esto es lo que usted acepta.

    Qué hacemos: cada noche le mandamos a { $child } una práctica corta con caramelos pequeños. Usted nos cuenta cómo fue.

    Qué guardamos: un nombre, el año en que nació, sus respuestas y sus mensajes. Los lee el equipo de su clínica, y nadie más.

    Usted decide: escriba PAUSA, BAJA o BORRAR cuando quiera. Puede pedir a su clínica ver todo lo que guardamos.

    Para cuidar a { $child }: un caramelo puede ahogar. Siempre hay un adulto cerca. La espalda va recta. Se hace desde los 4 años. Nunca se obliga a nadie.

    Esto no es una línea de emergencias. En una emergencia, llame al { $emergency }.

    ¿Acepta?
    .sms =
    ¡Hola! Lea esto antes. Cada noche mandamos a { $child } una práctica corta con caramelos pequeños. Usted nos cuenta cómo fue.
    Guardamos un nombre, el año en que nació, sus respuestas y mensajes. Solo los lee su clínica. Escriba PAUSA, BAJA o BORRAR cuando quiera. Pida a su clínica ver lo que guardamos.
    Un caramelo puede ahogar. Siempre hay un adulto cerca. La espalda va recta. Se hace desde los 4 años. Nunca se obliga.
    Esto no es una línea de emergencias. En una emergencia llame al { $emergency }.
    ¿Acepta? Responda SI o NO.
consent-needed = Antes hay que saber si usted acepta. Toque un botón, por favor.
    .sms = Antes hay que saber si usted acepta. Responda SI o NO.
consent-declined = Está bien. Ya no le vamos a escribir. Su clínica va a saber que dijo que no. Gracias por su tiempo.
welcome = ¡Gracias! La primera tarde, a las { $bedtime }, hay una lección de una media hora. Luego vienen { $nights } noches de práctica, de unos cinco minutos. Tenga a mano agua y los caramelos pequeños. Escriba INFO cuando quiera.
welcome-also = ¡Hola! La práctica de cada noche le llega a las { $bedtime }, como al resto de la familia. Esto no es una línea de emergencias. En una emergencia, llame al { $emergency }.

## La lección

lesson-intro = Hoy toca la lección. Dura una media hora. Busque un sitio con { $child }, un vaso de agua y un caramelo pequeño. Vaya paso a paso, a su ritmo.
lesson-again = Aquí va la lección. Vaya paso a paso, a su ritmo.
lesson-throat =
    La idea: la garganta es blanda y ancha. Se abre con cada bocado, y un bocado es mucho más grande que una pastilla.

    Hagan una prueba los dos. Pongan una mano en el cuello, por delante, y traguen. ¿Notan cómo sube? Así se abre la garganta. Piense en su último bocado de pan. Bajó entero, y usted ni lo notó.

    Toque Siguiente cuando lo hayan notado los dos.
    .sms =
    La idea: la garganta es blanda y ancha. Se abre con cada bocado, y un bocado es mucho más grande que una pastilla.
    Una prueba: la mano en el cuello, por delante, y tragar. ¿Notan cómo sube? Así se abre.
    Responda SIGUIENTE cuando lo noten los dos.
lesson-posture = Ahora, la silla. { $child } se sienta en una silla firme, con la espalda recta y los pies en el suelo. No en el sofá ni en la cama. Usted se sienta cerca, cara a cara. Se traga mejor en línea recta.
    .sms = Ahora, la silla: firme, la espalda recta, los pies en el suelo. No en el sofá. Usted cerca, cara a cara. Responda SIGUIENTE.
lesson-water =
    Ahora solo agua. { $position-key ->
        [left] { $child } gira la cabeza a la izquierda, como para mirarse la mano izquierda. Basta con un giro suave.
        [right] { $child } gira la cabeza a la derecha, como para mirarse la mano derecha. Basta con un giro suave.
        [up] { $child } sube la barbilla solo un poco, como para mirar lo alto de una puerta. Muy poco, nunca del todo atrás.
        [down] { $child } baja la barbilla al pecho, como para mirarse un botón de la camisa.
       *[center] { $child } mira al frente.
    } Sin mover la cabeza, un sorbo pequeño y a tragar. Si le duele el cuello, deje esta y díganos.
    .sms =
    Solo agua. { $position-key ->
        [left] La cabeza gira suave hacia la mano izquierda.
        [right] La cabeza gira suave hacia la mano derecha.
        [up] La barbilla sube solo un poco, nunca del todo atrás.
        [down] La barbilla baja al pecho.
       *[center] La cabeza, al frente.
    } Un sorbo pequeño y tragar. Si duele el cuello, deje esta y díganos. Responda SIGUIENTE.
lesson-tongue = ¿Dónde va el caramelo? Atrás en la lengua, en el medio, hasta donde no moleste. Si está adelante, flota cuando llega el agua. Primero, { $child } puede señalar el sitio con un dedo limpio.
    .sms = El caramelo va atrás en la lengua, en el medio, hasta donde no moleste. Adelante, flota. { $child } puede señalar el sitio. Responda SIGUIENTE.
lesson-sip = ¿Cuánta agua? Un sorbo pequeño, y no más. Con mucha agua, el caramelo nada. Con muy poca, se pega. Se toma el sorbo, se cierra la boca y se traga todo de una vez.
    .sms = ¿Cuánta agua? Un sorbo pequeño. Con mucha, el caramelo nada. Con muy poca, se pega. Todo de una vez. Responda SIGUIENTE.
lesson-candy = Ahora sí, un { candy }. La espalda recta, la cabeza al frente. El caramelo atrás en la lengua, un sorbo pequeño y a tragar. { $child } puede decir que no, y está bien. ¿Bajó?
    .sms = Ahora un { candy }. La espalda recta, la cabeza al frente. El caramelo atrás, un sorbo y tragar. Se puede decir que no. ¿Bajó? Responda SI, NO o SALTAR.
lesson-unclear = Gracias por escribir. Lo guardamos para su clínica. Para seguir, toque un botón del último paso.
    .sms = Gracias, lo guardamos para su clínica. Responda SIGUIENTE para seguir. Tras el caramelo, responda SI, NO o SALTAR.
lesson-went-down = ¡Bajó! Ahora { $child } sabe qué se siente. Gracias a los dos por este rato.
lesson-not-down = No bajó, y está bien. Fue la primera vez. { $child } hizo la lección, y eso es lo que vale hoy.
lesson-later = Hoy sin caramelo, y está bien. { $child } hizo la lección, y eso es lo que vale.
lesson-done = Esa fue la lección. El próximo mensaje llega a las { $bedtime }. Son { $nights } noches de práctica en total. Escriba LECCIÓN para verla otra vez.

## La noche

night-prompt =
    Noche { $night } de { $nights } para { $child }. El orden de hoy:
    { $order }
    Un { candy } en cada una, con un sorbo pequeño de agua.
    .sms = Noche { $night } de { $nights }: { $order }. Un { candy } en cada una.
night-howto-1 = La espalda recta. La cabeza en su sitio, el caramelo atrás en la lengua, un sorbo pequeño y todo de una vez.
    .sms = Espalda recta, caramelo atrás, sorbo pequeño.
night-howto-2 = Primero la espalda recta, luego la cabeza en su sitio. El caramelo atrás en la lengua. Un sorbo pequeño y todo de una vez.
    .sms = Espalda recta, caramelo atrás, sorbo pequeño.
night-howto-3 = Los pies en el suelo, la espalda recta, la cabeza en su sitio. El caramelo va atrás en la lengua. Un sorbo pequeño y abajo, de una vez.
    .sms = Espalda recta, caramelo atrás, sorbo pequeño.
night-safety = Esté cerca todo el rato. Nunca obligue. Si { $child } se ahoga, llame al { $emergency } y haga sus primeros auxilios.
    .sms = Esté cerca, nunca obligue. Si se ahoga: { $emergency }.
night-late = Nuestro último mensaje no llegó a tiempo. Fue culpa nuestra, y nada se pierde.
    .sms = El último mensaje llegó tarde, perdón. Nada se pierde.
night-reminder = Una nota por si la tarde se le fue volando. Aún puede contarnos cómo fue. Si hoy no hubo práctica, está bien también.
    .sms = Aún puede contarnos cómo fue hoy. Si no hubo práctica, está bien también.
ask-swallow = ¿Cómo fue { $position }, de 1 (difícil) a 5 (fácil)? Puede añadir una nota.
    .sms = ¿Cómo fue { $position }? Responda de 1 a 5 (5 fácil), NO BAJO o SALTAR.
ask-best = ¿Cuál le gustó más a { $child } esta noche? Que elija { $child }.
    .sms = ¿Cuál le gustó más a { $child }? Responda con su nombre, o NINGUNA.
ask-note = ¿Quiere añadir algo sobre esta noche? Escríbalo aquí, o toque el botón.
    .sms = ¿Quiere añadir algo sobre esta noche? Escríbalo, o responda NO.
unclear-swallow = Gracias por escribir. Su clínica lo puede leer. Y hoy, ¿cómo fue { $position }? Toque un número de 1 a 5, o diga si no bajó.
    .sms = Gracias. ¿Y cómo fue { $position }? Responda de 1 a 5 (5 fácil), NO BAJO o SALTAR.
unclear-best = Gracias por escribir. ¿Cuál le gustó más a { $child }? Toque su nombre, o el último botón si no fue ninguna.
    .sms = Gracias. ¿Cuál le gustó más? Responda con su nombre, o NINGUNA.
unclear-note = Eso no lo entendimos. Escriba su nota en pocas palabras, o toque el botón.
    .sms = No lo entendimos. Escriba unas palabras, o responda NO.
night-done =
    ¡Gracias! Esto es lo que apuntamos:
    { $marks }
    .sms = ¡Gracias! Apuntamos: { $marks }.
night-best = La favorita de hoy: { $position }.
corrected =
    Cambiado. Ahora dice:
    { $marks }
    .sms = Cambiado. Ahora: { $marks }.
corrected-best = Cambiado. La favorita de hoy: { $position }.
note-kept = Gracias. Guardamos su nota para su clínica.
stale-button = Ese botón es de un mensaje viejo. Use el más nuevo, por favor.
tonight-over = Por hoy se acabó la práctica. No más caramelos esta noche. Que descansen.
passed-on = Gracias por escribir. El equipo de su clínica lo puede leer. Si no puede esperar, llame a la clínica.

## Lo que se puede pedir

help = Escribimos cada noche a las { $bedtime }. Puede decir: PAUSA, REANUDAR, LECCIÓN, HOY NO, BAJA, BORRAR, o una hora nueva, como "mejor a las 19:30". Para lo demás, llame a su clínica. Esto no es una línea de emergencias. En una emergencia, llame al { $emergency }.
    .sms = La práctica de su clínica, una vez cada noche a las { $bedtime }. Los mensajes pueden tener costo. Diga PAUSA, REANUDAR, LECCIÓN, HOY NO, BAJA, BORRAR, o una hora nueva, como "mejor a las 19:30". Para lo demás, llame a su clínica. En una emergencia, llame al { $emergency }.
asked-for = Alguien de su familia lo pidió:
paused = La práctica está en pausa. Escriba REANUDAR cuando quieran volver. No hay prisa.
paused-until = La práctica está en pausa. Le escribimos de nuevo el { $day }. Escriba REANUDAR para volver antes.
paused-reply = Gracias por escribir. El equipo de su clínica lo puede leer. La práctica sigue en pausa. Escriba REANUDAR cuando quieran volver.
resumed = ¡Qué gusto que estén de vuelta! Seguimos a las { $bedtime }.
bedtime-changed = Hecho. Ahora le escribimos a las { $bedtime }. Si la práctica de hoy ya llegó, la pueden hacer a esa hora.
bedtime-outside = Solo podemos escribir de { $earliest } a { $latest }. Mande una hora entre esas dos, como "mejor a las 19:30".
candy-changed = Su clínica eligió otro caramelo: un { candy }. Úselo desde la próxima noche.
stopped = Ya paramos. No le vamos a escribir más. Si cambia de idea, escriba EMPEZAR. Gracias por toda la práctica.
started = ¡Qué gusto que hayan vuelto! Le escribimos a las { $bedtime }.
start-closed = Desde aquí no se puede empezar otra vez. Pregunte a su clínica.
delete-ask = Esto borra para siempre todo lo que guardamos sobre { $child }. ¿Lo borramos?
    .sms = Esto borra para siempre todo lo que guardamos sobre { $child }. ¿Lo borramos? Responda SI o NO.
delete-kept = Bien, todo queda como estaba.
delete-waits = Ya paramos. Antes, su clínica tiene que mirar una cosa que nos contó. Luego lo borramos todo y le avisamos.
deleted = Ya está todo borrado. Gracias, y que les vaya bien.
wrong-number = Perdone el error. No vamos a escribir más a este número.
from-clinician =
    Un mensaje de su clínica:
    { $words }

## Seguridad: lo primero va primero

safety-breathing =
    Llame al { $emergency } ya.
    Haga lo que aprendió en primeros auxilios.
    Este chat no puede mandar ayuda.
safety-allergy =
    Llame al { $emergency } ya.
    Haga lo que aprendió en primeros auxilios.
    Este chat no puede mandar ayuda.
safety-object =
    Llame al { $emergency } ya. No espere a ver señales.
    Haga lo que aprendió en primeros auxilios.
    Este chat no puede mandar ayuda.
safety-poison =
    Llame al { $emergency } ya. Tenga el envase a mano.
    Haga lo que aprendió en primeros auxilios.
    Este chat no puede mandar ayuda.
safety-self-harm =
    Llame al { $emergency } ya si hay una vida en peligro.
    Quédense cerca. Esta noche nadie debe estar a solas.
    No tienen que pasar esto a solas. Su clínica ya lo sabe. Este chat no puede mandar ayuda.
safety-danger =
    Llame al { $emergency } ya si alguien está en peligro.
    Vaya a un sitio seguro si puede. Su clínica ya lo sabe. Este chat no puede mandar ayuda.
safety-urgent =
    Llame hoy a su clínica o a un médico, aunque { $child } se vea bien.
    Llame al { $emergency } ya si le cuesta respirar, hace ruido al respirar, babea, tiene los labios azules, le duele o le cambió la voz.
    Este chat no puede mandar ayuda.
safety-forced =
    Por favor, paren por hoy. Nunca se obliga a tragar.
    Si alguien está en peligro, llame al { $emergency } ya.
    Su clínica ya lo sabe y va a hablar con ustedes.
safety-child-wrote = Se lo mandamos también a usted, pues { $child } nos acaba de escribir.
hold = La práctica está suspendida. No más caramelos hasta que su clínica diga. Su clínica ya lo sabe.
    .sms = Práctica suspendida. No más caramelos hasta que su clínica diga. Ya lo sabe.
hold-reply = Gracias. Se lo pasamos a su clínica. La práctica sigue suspendida. En una emergencia, llame ya al { $emergency }.
hold-by-clinician = Su clínica suspendió la práctica. No más caramelos hasta que diga. Allí le pueden contar por qué.
hold-lifted = Buenas noticias: su clínica dice que se puede seguir. Le escribimos a las { $bedtime }.
hold-lifted-rest = Su clínica ya cerró el aviso. No tiene que hacer nada.
watch-ask = ¿Cómo está { $child } hoy? Fíjese si hay: tos que no se va, ruido al respirar, respiración rápida, fiebre, voz ronca, babeo, dolor de pecho o de garganta. ¿Hay algo de esto?
    .sms = ¿Cómo está { $child } hoy? ¿Tos que no se va, ruido al respirar, fiebre, voz ronca, babeo, dolor de pecho o garganta? Responda SI o NO.
watch-fine = Qué bien. Siga mirando unos días. Si llega una de estas señales, llame al médico ese mismo día. Si le cuesta respirar, llame al { $emergency }.

## Cuando algo va mal

concern-distress = Suena difícil, y lo sentimos. Gracias por contarlo. Primero está { $child }, y la práctica puede esperar. Su clínica ya lo sabe.
concern-refusal = Un no es una buena respuesta. No empuje, por favor. Siéntense juntos, hagan algo bonito y déjenlo por hoy. Su clínica ya lo sabe.
concern-gag = Las arcadas se sienten mal, pero así se cuida la garganta. Paren aquí y que { $child } descanse. Si le cuesta respirar, llame al { $emergency }. Su clínica ya lo sabe.
concern-pressure = Es fácil empujar cuando algo nos importa tanto. Déjenlo por hoy. Va mejor cuando { $child } manda en cada trago. Su clínica ya lo sabe.
concern-exhausted = Hace usted mucho, y se nota. Primero va el descanso, también el suyo. Nada se pierde. Su clínica ya lo sabe.
concern-shame = Aquí nadie hizo nada mal. A muchos niños les cuesta, y a muchos adultos también. Gracias por contarlo. Su clínica ya lo sabe.
concern-ill = Lo sentimos. No practiquen hasta que { $child } esté bien. Si algo le preocupa, llame a su médico. Escriba PAUSA para parar unos días. Su clínica ya lo sabe.
medicine = De medicinas no podemos decir nada. Pregunte en su farmacia o a quien la recetó. No la cambie, parta ni muela sin preguntar. Su clínica ya lo sabe.

## El final

finish = ¡Eso fue todo! { $child } practicó { $practised ->
        [one] una noche
       *[other] { $practised } noches
    } de { $nights }. Gracias por cada una de esas tardes. Usted puso el tiempo, y sin eso no hay práctica.
    .sms = ¡Eso fue todo! { $child } practicó { $practised ->
        [one] una noche
       *[other] { $practised } noches
    } de { $nights }. Gracias por cada tarde.
finish-favourites = Al principio, a { $child } le gustó más { $first }. Al final, { $last }.
finish-same = A { $child } le gustó más { $last }, de principio a fin.
finish-next = Ahora su clínica mira los números con ustedes dos. Juntos eligen cómo poner la cabeza. No prueben una pastilla de verdad antes de eso.
certificate = Esto es para { $child }. ¡Para colgar o enseñar!
    .sms = { $child } tiene un diploma. Su clínica se lo puede imprimir.
ended = Su clínica cerró el programa. Ya no le vamos a escribir. Gracias por toda la práctica. Si tiene preguntas, llame a la clínica.

## Ánimo

cheer-first-night-1 = La primera noche ya está. Se sentaron y probaron juntos. Así se empieza.
cheer-first-night-2 = Ya va una noche. { $child } sabe cómo es, y usted también. Lo demás son pasos pequeños.
cheer-first-night-3 = Gracias por hacer sitio para esto hoy. El primer paso suele ser el más grande.
cheer-first-night-hard-1 = La primera noche suele costar. { $child } probó, y usted estuvo ahí. Hoy no hacía falta más.
cheer-first-night-hard-2 = No fue fácil, y ahí estuvieron los dos. Mañana es otro día.
cheer-first-night-hard-3 = El primer día cuesta, es normal. El cuerpo aprende poco a poco, como con la bici.
cheer-nothing-down-1 = Hoy no bajó ninguno, y { $child } practicó igual. Cada intento le enseña algo a la garganta. Cuéntele que usted lo vio.
cheer-nothing-down-2 = Una noche así es parte de aprender. No hay nada que arreglar. Basta con volver mañana.
cheer-nothing-down-3 = Probar ya vale, y { $child } probó. Si quieren, cierren con un sorbo de agua y un abrazo.
cheer-one-missed-1 = Anoche hubo descanso. Nos pasa a todos. Hoy seguimos.
cheer-one-missed-2 = Una noche sin práctica no hace daño. Nada se pierde. Aquí va la de hoy.
cheer-one-missed-3 = Hay tardes muy llenas. Qué bien que hoy están aquí. Seguimos donde íbamos.
cheer-several-missed-1 = Han pasado unas noches. No hay que ponerse al día. Hoy bastan cinco minutos con calma.
cheer-several-missed-2 = A veces la vida manda, y está bien. Pueden empezar con poco: solo lo que hoy les siente bien.
cheer-several-missed-3 = Les guardamos el sitio. Si esta hora no les va bien, mande otra, como "mejor a las 19:00".
cheer-coming-back-1 = Qué gusto verles por aquí otra vez. Seguimos donde lo dejaron.
cheer-coming-back-2 = ¡Ya están de vuelta! Lo que { $child } aprendió no se va con un descanso.
cheer-coming-back-3 = ¡Otra vez aquí! Hoy, con calma. Un sorbo de agua sola va bien para empezar.
cheer-steady-1 = La noche { $night } ya está. El truco es estar ahí, y ahí estuvieron.
cheer-steady-2 = Otra noche hecha. Gracias a los dos.
cheer-steady-3 = Ustedes siguen, noche tras noche. Así se aprende algo nuevo.
cheer-steady-4 = Ya van { $night } noches de práctica. Cada una suma.
cheer-steady-5 = Gracias por lo de hoy. Parece poco, pero los pasos pequeños suman.
cheer-steady-6 = Hoy le dio a { $child } cinco buenos minutos. Es tiempo bien usado.
cheer-steady-7 = Por hoy ya está. Dígale a { $child } una cosa que le gustó.
cheer-improving-1 = Hoy costó un poco menos que la otra vez. Eso hace la práctica. Unas noches sube y otras baja, y está bien.
cheer-improving-2 = Tantas tardes hacen su trabajo. Dígale a { $child } que usted ve todo lo que prueba.
cheer-improving-3 = Una noche más suave. ¡Disfruten! Habrá otras con baches, y valen lo mismo.
cheer-favourite-changed-1 = Hoy ganó otra. ¡Qué bueno saberlo! Justo eso es lo que buscamos.
cheer-favourite-changed-2 = A { $child } le gustó más otra. Probar todas es lo que enseña el camino.
cheer-favourite-changed-3 = La favorita cambió. Es normal. Cada noche nos dice algo más.
cheer-half-way-1 = ¡La mitad! Van { $night } noches, quedan { $left }. Gracias por cada una.
cheer-half-way-2 = Ya van por la mitad. Hagan algo bonito con { $child } para verlo. Un juego o un cuento bastan.
cheer-half-way-3 = La mitad de las noches ya pasó. Ya es costumbre, y eso es lo que más cuesta.
cheer-last-nights-1 = Ya falta poco. Tras esta noche quedan { $left }.
cheer-last-nights-2 = Hoy empieza el último tramo. No hay que apretar. Basta con hacerlo como siempre.
cheer-last-nights-3 = Quedan pocas noches. { $child } le puso trabajo, noche tras noche.
cheer-last-night-1 = Esta es la última noche. Con calma, y a pasarlo bien juntos.
cheer-last-night-2 = Una última vez. Salga como salga, ya hicieron lo que se propusieron.
cheer-last-night-3 = ¡La última noche de práctica! Luego miran con su clínica lo que { $child } descubrió.
cheer-yucky-1 = No todos los caramelos le gustan a todo el mundo. Su clínica puede elegir otro. Solo pregunte.
cheer-yucky-2 = Gracias por contarnos lo del sabor. Un sorbo de agua antes y después puede ayudar.
cheer-yucky-3 = Sabía mal, ¡y { $child } probó igual! Hace falta valor. Dígaselo.
cheer-tired-1 = Con sueño cuesta más. Gracias por probar. Quizá ayude una hora más temprana. Basta con mandarla.
cheer-tired-2 = Había sueño, y vinieron igual. Si mañana pasa lo mismo, escriba HOY NO. Está bien.
cheer-tired-3 = Fue un día largo para todos. Ya basta por hoy. Que duerman bien.
cheer-partial-1 = La otra vez hicieron una parte. Una parte vale. Hoy va otra vez el mismo orden.
cheer-partial-2 = Algo es mejor que nada. Aquí va el mismo orden para hoy.
cheer-partial-3 = Pararon cuando ya era suficiente, y fue lo justo. Hoy se prueba de nuevo.
cheer-skipped-1 = Saltar una está bien. { $child } manda en cada trago.
cheer-skipped-2 = Hoy dejaron una. Gracias por contarlo, es bueno saberlo.
cheer-skipped-3 = No hace falta hacerlas todas. Pocas y con calma valen más que muchas a la fuerza.

## Consejos

tip-slouch-1 = Un consejo: una silla firme y los pies en el suelo o en una caja. Si la espalda se dobla, el camino se dobla también.
tip-slouch-2 = Para probar: antes de tragar, los dos crecen, como si un hilo tirara de la cabeza hacia arriba. Con el cuello largo baja mejor.
tip-front-1 = Un consejo: quizá el caramelo está muy adelante. Ahí flota cuando llega el agua. Va en la parte de atrás de la lengua, en el medio.
tip-front-2 = Para probar: { $child } puede mirar el sitio en un espejo. Lengua fuera, caramelo atrás, lengua dentro, sorbo y a tragar.
tip-water-1 = Un consejo: pruebe con menos agua. Con la boca llena, el caramelo nada, y hay que tragar dos veces. Un sorbo pequeño baja de una vez.
tip-water-2 = Para probar: ponga en un vaso solo un sorbo pequeño. Así { $child } no toma de más.
tip-bite-1 = Un consejo: morder es costumbre, no es culpa de nadie. Los dientes, separados; la lengua, plana. El sorbo va justo tras el caramelo, y no da tiempo a morder.
tip-bite-2 = Para probar: que { $child } tenga el vaso ya en los labios. Caramelo, sorbo, tragar: si va rápido, hay menos que morder.
tip-fear-1 = Un consejo: más despacio. Soltar el aire tres veces, lento, ablanda la garganta. Pueden empezar con agua sola.
tip-fear-2 = Si da miedo, no hace falta quitarle importancia. Diga "veo que da miedo, y estoy aquí". Que { $child } diga cuándo.
tip-taste-1 = Un consejo: un sorbo de agua fría antes quita sabor. Y si el caramelo está poco rato en la boca, sabe menos.
tip-taste-2 = Puede pedir a su clínica un caramelo de otro sabor. No lo cambie sin preguntar, por favor.
tip-tired-1 = Un consejo: pruebe media hora antes. Con sueño, la boca va lenta. Mande otra hora, como "mejor a las 19:00".
tip-tired-2 = Si hay sueño, paren cuando aún va bien. Dos tragos con calma valen más que cinco a la fuerza.
tip-gag-1 = Un consejo: la arcada llega cuando el caramelo toca muy atrás. Póngalo un poco más adelante, y el sorbo enseguida.
tip-gag-2 = Tras una arcada, esperen a que pase, con aire lento por la nariz. Solo sigan si { $child } quiere.
