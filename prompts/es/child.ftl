# Lo que se dice a niñas, niños y adolescentes. De tú. $tone es young (5 a 7), middle (8 a 12) o teen (13 o más).

## La entrada

consent-wait = ¡Hola, { $child }! Antes, un adulto tiene que decir que sí. Pídele que mire su teléfono.
welcome = { $tone ->
    [young] ¡Hola, { $child }! Te voy a ayudar a tragar. A las { $bedtime } hay una lección corta. Luego jugamos { $nights } noches. Siempre hay un adulto contigo.
    [teen] Hola, { $child }. Te voy a ayudar a tragar. A las { $bedtime } hay una lección corta. Luego van { $nights } noches, de cinco minutos. Siempre hay un adulto contigo.
   *[middle] ¡Hola, { $child }! Te voy a ayudar a tragar. A las { $bedtime } hay una lección corta. Luego van { $nights } noches, de cinco minutos. Siempre hay un adulto contigo.
}
welcome-also = ¡Hola, { $child }! Te voy a ayudar a tragar. Te escribo cada noche a las { $bedtime }. Si pasa algo grave, no me esperes. Díselo a un adulto o llama al { $emergency }.

## La lección

lesson-intro = { $tone ->
    [young] ¡Hoy toca la lección! Trae un vaso de agua, un caramelo pequeño y a tu adulto. Ve sin prisa.
    [teen] Hoy toca la lección. Necesitas agua, un caramelo pequeño y un adulto. Ve a tu ritmo.
   *[middle] ¡Hoy toca la lección! Necesitas agua, un caramelo pequeño y un adulto. Ve sin prisa.
}
lesson-again = Aquí va la lección. Ve tan lento como quieras.
lesson-throat = { $tone ->
    [young]
        Tu garganta es blanda y ancha. ¡Se estira como un calcetín!

        Pon la mano en el cuello. Ahora traga. ¿Notas cómo salta? Es tu garganta. Te hizo sitio.

        Toca Siguiente cuando lo notes.
    [teen]
        Tu garganta es blanda y ancha. Un bocado de pan es mucho más grande que una pastilla.

        Pon dos dedos en el cuello y traga. ¿Notas cómo sube? Así se abre el paso. Lo hace todo el día.

        Toca Siguiente cuando lo notes.
   *[middle]
        Tu garganta es blanda y ancha. Se estira como un calcetín. Un bocado de pan es mucho más grande que una pastilla.

        Pon la mano en el cuello y traga. ¿Notas cómo salta? Así te hace sitio.

        Toca Siguiente cuando lo notes.
}
    .sms =
    Tu garganta es blanda y ancha. Se estira como un calcetín.
    Pon la mano en el cuello y traga. ¿Notas cómo salta? Así te hace sitio.
    Manda SIGUIENTE cuando lo notes.
lesson-posture = { $tone ->
    [young] Siéntate como un rey o una reina. La espalda, recta. Los pies, en el suelo. ¡En el sofá no! Así el paso va recto.
    [teen] Siéntate en una silla firme. La espalda, recta. Los pies, en el suelo. En el sofá no. Así el paso va recto.
   *[middle] Siéntate en una silla firme. La espalda, recta. Los pies, en el suelo. ¡En el sofá no! Así el paso va recto.
}
    .sms = Siéntate en una silla firme. La espalda, recta. Los pies, en el suelo. Así el paso va recto. Manda SIGUIENTE.
lesson-water =
    Ahora solo agua. { $position-key ->
        [left] Gira la cabeza a tu mano izquierda. Muy suave.
        [right] Gira la cabeza a tu mano derecha. Muy suave.
        [up] Sube la barbilla solo un poco. ¡No del todo atrás!
        [down] Baja la barbilla al pecho.
       *[center] Mira al frente.
    } Sin moverte, toma un sorbo y traga. ¿Te duele el cuello? Pues deja esta.
    .sms =
    Solo agua. { $position-key ->
        [left] Gira la cabeza a tu mano izquierda.
        [right] Gira la cabeza a tu mano derecha.
        [up] Sube la barbilla solo un poco.
        [down] Baja la barbilla al pecho.
       *[center] Mira al frente.
    } Toma un sorbo y traga. ¿Te duele el cuello? Pues deja esta. Manda SIGUIENTE.
lesson-tongue = { $tone ->
    [young] ¿Dónde va el caramelo? Atrás en la lengua, en el medio. Es su silla. ¡Toca el sitio con el dedo!
    [teen] El caramelo va atrás en la lengua, en el medio. Si va delante, flota. Busca el sitio con un dedo limpio.
   *[middle] El caramelo va atrás en la lengua, en el medio. Si va delante, flota. ¿Ves el sitio?
}
    .sms = El caramelo va atrás en la lengua, en el medio. Si va delante, flota. ¿Ves el sitio? Manda SIGUIENTE.
lesson-sip = { $tone ->
    [young] Toma solo un sorbo. Con mucha agua, ¡el caramelo nada! Cierra la boca. Uno, dos, ¡glup!
    [teen] Toma solo un sorbo. Con mucha agua, el caramelo flota. Traga todo de una vez.
   *[middle] Toma solo un sorbo. Con mucha agua, el caramelo nada. Traga todo de un golpe.
}
    .sms = Toma solo un sorbo. Con mucha agua, el caramelo nada. Traga todo de un golpe. Manda SIGUIENTE.
lesson-candy = Ahora, un { candy-name }. La espalda recta. Mira al frente. Caramelo atrás, un sorbo, ¡glup! Si no quieres, está bien. ¿Bajó?
    .sms = Ahora, un { candy-name }. La espalda recta. Caramelo atrás, un sorbo, ¡glup! Si no quieres, está bien. ¿Bajó? Manda SI, NO o SALTAR.
lesson-unclear = ¡Gracias! Para seguir, toca un botón del último paso.
    .sms = ¡Gracias! Manda SIGUIENTE para seguir. Tras el caramelo, manda SI, NO o SALTAR.
lesson-went-down = ¡Bajó! Ya sabes qué se siente. Gracias por probar.
lesson-not-down = No bajó. ¡Y está bien! Probaste, y eso vale.
lesson-later = Hoy sin caramelo. ¡Y está bien! Hiciste la lección, y eso vale.
lesson-done = { $tone ->
    [teen] Esa fue la lección. Te escribo a las { $bedtime }. Son { $nights } noches en total. Nos vemos.
   *[middle] ¡Esa fue la lección! Te escribo a las { $bedtime }. Son { $nights } noches en total. ¡Que duermas bien!
}

## La noche

night-prompt =
    { $tone ->
        [young] ¡Hola, { $child }! Es la noche { $night } de { $nights }. En este orden:
       *[other] Hola, { $child }. Noche { $night } de { $nights }. En este orden:
    }
    { $order }
    Un { candy-name } en cada una. Y un sorbo.
    .sms = Noche { $night } de { $nights }: { $order }. Un { candy-name } en cada una.
night-howto-1 = La espalda recta. La cabeza en su sitio, el caramelo atrás, un sorbo, ¡glup!
    .sms = Espalda recta, caramelo atrás, un sorbo, ¡glup!
night-howto-2 = Los pies en el suelo y la espalda recta. La cabeza en su sitio, el caramelo atrás, un sorbo, ¡glup!
    .sms = Espalda recta, caramelo atrás, un sorbo, ¡glup!
night-howto-3 = La espalda recta como un árbol. La cabeza en su sitio, el caramelo atrás, un sorbo, ¡glup!
    .sms = Espalda recta, caramelo atrás, un sorbo, ¡glup!
night-safety = ¿Hay un adulto contigo? Si no, espera. Para cuando quieras.
    .sms = ¿Hay un adulto contigo? Para cuando quieras.
night-late = La otra vez no pude escribir. Fue culpa mía, ¡perdón! Hoy seguimos.
night-reminder = ¡Hola! ¿Cómo fue hoy? Si no hubo nada, está bien.
ask-swallow = { $tone ->
    [young] ¿Cómo fue { $position }? El 1 cuesta. El 5 es fácil.
   *[middle] ¿Cómo fue { $position }? El 1 cuesta, el 5 es fácil. Si quieres, dime algo más.
}
    .sms = ¿Cómo fue { $position }? Manda de 1 a 5. El 5 es fácil. O manda NO BAJO o SALTAR.
ask-best = ¿Cuál te gustó más?
    .sms = ¿Cuál te gustó más? Manda su nombre, o NINGUNA.
ask-note = ¿Me cuentas algo más? Si no, toca el botón.
    .sms = ¿Me cuentas algo más? Si no, manda NO.
unclear-swallow = ¡Gracias! Ahora dime un número. ¿Cómo fue { $position }? Toca de 1 a 5.
    .sms = ¡Gracias! Ahora un número. ¿Cómo fue { $position }? Manda de 1 a 5, NO BAJO o SALTAR.
unclear-best = ¡Gracias! ¿Cuál te gustó más? Toca su nombre.
    .sms = ¡Gracias! ¿Cuál te gustó más? Manda su nombre, o NINGUNA.
unclear-note = No te entendí. Dime algo en pocas palabras, o toca el botón.
    .sms = No te entendí. Dime algo en pocas palabras, o manda NO.
night-done =
    ¡Gracias! Esto apunté:
    { $marks }
    .sms = ¡Gracias! Apunté: { $marks }.
night-best = La favorita de hoy: { $position }.
corrected =
    Ya lo cambié. Ahora dice:
    { $marks }
    .sms = Ya lo cambié. Ahora: { $marks }.
corrected-best = Ya lo cambié. La favorita de hoy: { $position }.
note-kept = ¡Gracias! Guardé tu nota.
stale-button = Ese botón es viejo. Toca el nuevo.
tonight-over = Por hoy paramos. No más caramelos. ¡Que descanses!
passed-on = ¡Gracias por contarlo! Tu clínica lo puede leer. Si no puede esperar, díselo a un adulto.

## Lo que se puede pedir

only-parent = Eso lo pide un adulto. ¿Se lo enseñas? Tú puedes decir HOY NO cuando quieras.
help = Te escribo cada noche a las { $bedtime }. Puedes decir LECCIÓN o HOY NO. ¿Pasa algo grave? Díselo a un adulto o llama al { $emergency }. No me esperes.
asked-for = Alguien de tu familia lo pidió:
paused = Ahora paramos un rato. Aquí estoy cuando vuelvas.
paused-until = Ahora paramos un rato. Te escribo el { $day }.
paused-reply = ¡Gracias por contarlo! Tu clínica lo puede leer. Aún estamos en pausa.
resumed = ¡Ya estás aquí! Seguimos a las { $bedtime }.
bedtime-changed = ¡Nueva hora! Te escribo a las { $bedtime }. Si ya tienes lo de hoy, hazlo a esa hora.
bedtime-outside = Solo puedo escribir de { $earliest } a { $latest }. Pide a un adulto una hora de esas.
candy-changed = La otra noche hay otro: un { candy-name }.
stopped = Aquí paramos. Gracias por todo lo que probaste. ¡Chao, { $child }!
started = ¡Hola, { $child }! Te escribo a las { $bedtime }.
start-closed = Yo no lo puedo empezar. Pide a un adulto que llame a la clínica.
deleted = Ya borré todo lo que sabía. ¡Que te vaya bien!
from-clinician =
    Tu clínica dice:
    { $words }

## Seguridad: lo primero va primero

safety-breathing =
    ¡Llama a un adulto ya! Llama al { $emergency } ya.
    Haz lo que te digan por teléfono.
    Yo no puedo mandar ayuda.
safety-allergy =
    ¡Llama a un adulto ya! Llama al { $emergency } ya.
    Haz lo que te digan por teléfono.
    Yo no puedo mandar ayuda.
safety-object =
    ¡Llama a un adulto ya! Llama al { $emergency } ya.
    Haz lo que te digan por teléfono.
    Yo no puedo mandar ayuda.
safety-poison =
    ¡Llama a un adulto ya! Llama al { $emergency } ya.
    Muestra lo que era.
    Yo no puedo mandar ayuda.
safety-self-harm =
    No estás en esto a solas. Qué bueno que me lo dices.
    Ve ya con un adulto en quien confías. Quédate ahí.
    Si estás en peligro, llama al { $emergency } ya. En tu clínica ya lo saben. Te quieren ayudar.
safety-danger =
    Si estás en peligro, llama al { $emergency } ya.
    Ve a un sitio seguro, o con un adulto en quien confías.
    No es tu culpa. Tu clínica ya lo sabe.
safety-urgent =
    Díselo ya a un adulto. Hoy tiene que llamar a tu clínica o a un médico.
    ¿Te cuesta respirar? ¿Te duele? Llama al { $emergency } ya.
    Yo no puedo mandar ayuda.
safety-forced =
    Puedes parar. Nadie te puede obligar a tragar. No es tu culpa.
    Ve con un adulto en quien confías. Si estás en peligro, llama al { $emergency } ya.
    Tu clínica ya lo sabe.
hold = Ahora paramos. No más caramelos hasta que tu clínica diga.
hold-reply = ¡Gracias! Se lo mandé a tu clínica. Aún hay que esperar. ¿Pasa algo grave? Díselo a un adulto o llama al { $emergency }.
hold-by-clinician = Tu clínica dice que ahora paramos. No más caramelos hasta que diga. No es tu culpa.
hold-lifted = Tu clínica dice que ya se puede. Te escribo a las { $bedtime }.
hold-lifted-rest = Todo bien. Ya no tienes que hacer nada.

## Cuando algo va mal

concern-distress = { $tone ->
    [teen] Suena duro. Gracias por contarlo. Habla con un adulto en quien confías. Esto puede esperar. Tu clínica ya lo sabe.
   *[middle] Suena duro. Gracias por contarlo. Ve a que te den un abrazo. Esto puede esperar. Tu clínica ya lo sabe.
}
concern-refusal = Decir que no está bien. Tú mandas en tu trago. Tu clínica ya lo sabe.
concern-gag = Se siente mal, lo sé. Tu garganta solo te cuida. Ahora, a descansar. ¿Te cuesta respirar? Llama al { $emergency }. Tu clínica ya lo sabe.
concern-pressure = No hay prisa. Tú mandas en tu trago. Tu clínica ya lo sabe.
concern-exhausted = Ya hiciste mucho. Ahora toca descansar. Todo lo que hiciste vale. Tu clínica ya lo sabe.
concern-shame = No hiciste nada mal. A muchos les cuesta. También a gente grande. Tu clínica ya lo sabe.
concern-ill = Ay, lo siento. Descansa hasta que estés bien. Cuéntale a un adulto qué sientes. Tu clínica ya lo sabe.
medicine = De eso no sé. Pregunta a un adulto. En la clínica lo saben. No la tomes por tu cuenta.

## El final

finish = { $tone ->
    [young] ¡Lo hiciste, { $child }! Viniste { $practised } veces. Probaste y probaste. ¡Eso es mucho!
    [teen] Eso fue todo, { $child }. { $practised } de { $nights } noches. Seguiste hasta el final. Eso vale mucho.
   *[middle] ¡Lo hiciste, { $child }! { $practised } de { $nights } noches. Probaste y probaste. ¡Eso es mucho!
}
finish-favourites = Al principio te gustó más { $first }. Al final, { $last }.
finish-same = La que más te gustó: { $last }, de principio a fin.
finish-next = Ahora vas a la clínica. Ahí cuentas lo que viste. No pruebes antes una pastilla de verdad.
certificate = ¡Esto es para ti, { $child }!
    .sms = ¡Llegaste al final, { $child }! Pide tu diploma en la clínica.
ended = Tu clínica dice que ya está. Gracias por todo lo que probaste, { $child }.

## Ánimo

cheer-first-night-1 = ¡La primera noche ya está! Probaste. Así se empieza.
cheer-first-night-2 = Ya sabes cómo va. ¡Gracias por tu primera noche!
cheer-first-night-3 = Te sentaste y probaste. ¡Hace falta valor!
cheer-first-night-hard-1 = Costó, y probaste. No hacía falta más.
cheer-first-night-hard-2 = La primera noche cuesta. Tuviste valor. ¡Ahora, a descansar!
cheer-first-night-hard-3 = Lo nuevo se siente raro. ¿Te acuerdas de tu primera bici?
cheer-nothing-down-1 = Hoy no bajó, y está bien. Cada vez vale. Tu garganta va aprendiendo.
cheer-nothing-down-2 = Probaste una y otra vez. Eso es lo que vale.
cheer-nothing-down-3 = Hay noches así. Viniste y probaste. ¡Gracias!
cheer-one-missed-1 = Anoche hubo descanso. ¡Hoy seguimos!
cheer-one-missed-2 = Hoy vamos a seguir, paso a paso.
cheer-one-missed-3 = Por una noche sin práctica no pasa nada. ¡Qué bien que estás aquí!
cheer-several-missed-1 = ¡Cuánto sin verte! No hay que hacerlo todo. Solo lo de hoy.
cheer-several-missed-2 = Te guardé el sitio. Empieza con poco, si quieres.
cheer-several-missed-3 = ¡Qué gusto verte! Vamos sin prisa.
cheer-coming-back-1 = ¡Ya estás aquí! Seguimos donde lo dejaste.
cheer-coming-back-2 = ¡Qué gusto verte! Tu garganta aún sabe el truco.
cheer-coming-back-3 = ¡De vuelta! Toma un sorbo de agua sola. Y luego seguimos.
cheer-steady-1 = Esta fue la noche { $night }. Estuviste ahí, y ese es el truco.
cheer-steady-2 = Otra noche más. ¡Gracias por probar!
cheer-steady-3 = Sigues y sigues. Así se aprende.
cheer-steady-4 = Paso a paso. Hoy diste uno más.
cheer-steady-5 = Ya sabes cómo va. ¡Buen trabajo hoy!
cheer-steady-6 = ¡Gracias por cinco buenos minutos!
cheer-steady-7 = Ya hiciste tu parte. Ahora, a descansar.
cheer-improving-1 = Hoy costó un poco menos. Es por probar tanto.
cheer-improving-2 = ¿Lo notas? Tu garganta aprende cada vez.
cheer-improving-3 = Hoy fue más suave. Unas noches sube, otras baja. Todas valen.
cheer-favourite-changed-1 = ¡Tienes otra favorita! Es bueno saberlo.
cheer-favourite-changed-2 = Ahora te gusta otra. Eso es lo que buscamos.
cheer-favourite-changed-3 = ¡Otra favorita! Sabes buscar muy bien.
cheer-half-way-1 = ¡Vas por la mitad! Van { $night } noches. ¡Guau!
cheer-half-way-2 = ¡La mitad! Noche a noche, sin parar.
cheer-half-way-3 = La mitad ya está. ¡Pon una canción que te guste!
cheer-last-nights-1 = ¡Falta poco! Tras hoy quedan { $left }.
cheer-last-nights-2 = Ya ves el final. Sigue así.
cheer-last-nights-3 = Quedan pocas noches. ¡Ya sabes qué hacer!
cheer-last-night-1 = ¡Es la última noche! Pásalo bien.
cheer-last-night-2 = ¡Una última vez, { $child }! Sin prisa.
cheer-last-night-3 = ¡Es la última noche! Mira todo lo que ya sabes.
cheer-yucky-1 = Sabía mal, y probaste igual. ¡Hace falta valor!
cheer-yucky-2 = ¡Puaj! Gracias por decirlo. Tu clínica puede elegir otro sabor.
cheer-yucky-3 = No todo sabe bien a todos. Un sorbo de agua fría puede ayudar.
cheer-tired-1 = Había sueño, y viniste igual. ¡Que duermas bien!
cheer-tired-2 = Fue un día largo. Gracias por probar. ¡Buenas noches!
cheer-tired-3 = Es hora de dormir. Ya hiciste tu parte.
cheer-partial-1 = La otra vez hiciste una parte. ¡Eso vale! Hoy va lo mismo.
cheer-partial-2 = Paraste cuando ya no querías. Muy bien. Hoy se prueba de nuevo.
cheer-partial-3 = ¡Algo es más que nada! Hoy va lo mismo otra vez.
cheer-skipped-1 = Dejaste una. ¡Está bien! Tú mandas.
cheer-skipped-2 = Gracias por decirlo. No hay que hacerlas todas.
cheer-skipped-3 = Unas pocas ya hacen una buena noche.

## Consejos: cada uno, un juego; para adolescentes, en llano

tip-slouch-1 = { $tone ->
    [teen] Un truco: piensa en un hilo que tira de tu cabeza hacia arriba. Crece con él.
   *[middle] Un juego: un hilo tira de tu cabeza hacia arriba. ¿Hasta dónde llegas?
}
tip-slouch-2 = { $tone ->
    [teen] Usa una silla firme, con los pies en el suelo. Con el cuello largo baja mejor.
   *[middle] Ponte un libro en la cabeza. ¿Se queda ahí? Ahora déjalo y traga.
}
tip-front-1 = { $tone ->
    [teen] Un truco: ponlo en la parte de atrás de la lengua. Si va delante, flota.
   *[middle] Un juego: el caramelo es un bus. La parada está atrás en la lengua. ¡Déjalo ahí!
}
tip-front-2 = { $tone ->
    [teen] Mira antes el sitio en un espejo. Lengua fuera, caramelo atrás.
   *[middle] Mira en un espejo. Saca la lengua. Pon el caramelo atrás. ¿Aún lo ves?
}
tip-water-1 = { $tone ->
    [teen] Un truco: toma menos agua. Con la boca llena, el caramelo flota.
   *[middle] Un juego: tu caramelo no sabe nadar. Toma un sorbo tan corto que no se mueva.
}
tip-water-2 = { $tone ->
    [teen] Pon solo un sorbo en el vaso. Así no tomas de más.
   *[middle] Pon solo un sorbo en el vaso. ¡Y glup, todo de un golpe!
}
tip-bite-1 = { $tone ->
    [teen] Un truco: los dientes, sin tocarse. La lengua, plana. Y el sorbo enseguida.
   *[middle] Un juego: tus dientes duermen. ¡Chis! Que no se despierten hasta que baje.
}
tip-bite-2 = { $tone ->
    [teen] Ten el vaso en los labios. Caramelo, sorbo, y traga. Así no da tiempo a morder.
   *[middle] Ten el vaso en los labios. Caramelo, sorbo, ¡glup! Así no da tiempo a morder.
}
tip-fear-1 = { $tone ->
    [teen] Un truco: suelta el aire tres veces, muy lento. Eso ablanda la garganta.
   *[middle] Un juego: sopla tres velas, muy lento. Ya tienes la garganta blanda.
}
tip-fear-2 = Tener miedo está bien. Dale la mano a alguien. Tú dices cuándo.
tip-taste-1 = { $tone ->
    [teen] Un truco: toma un sorbo de agua fría antes. Así sabe menos.
   *[middle] Un juego: toma un sorbo de agua fría antes. La lengua se duerme y ya no sabe tanto.
}
tip-taste-2 = ¿Sabe mal? Díselo a un adulto. Tu clínica puede elegir otro.
tip-tired-1 = { $tone ->
    [teen] Un truco: ponte de pie y estira los brazos. Luego traga solo una vez.
   *[middle] Un juego: mueve los brazos, mueve los pies, y para. Ya puedes tragar una vez.
}
tip-tired-2 = ¿Tienes sueño? Haz solo dos. También vale.
tip-gag-1 = Prueba esto: pon el caramelo no tan atrás. Y un sorbo enseguida.
tip-gag-2 = { $tone ->
    [teen] Toma aire por la nariz, lento y hondo. ¿Quieres seguir? Tú eliges.
   *[middle] Huele una flor, lento y hondo. Tres veces. ¿Quieres seguir? Tú eliges.
}
