# Los papeles que la gente tiene en la mano: informe de la visita, hojas de notas, tarjeta de invitación.
# $child es el nombre con que se llama al niño o la niña.

## Común a todos los papeles

date = { $day } de { $month ->
    [1] enero
    [2] febrero
    [3] marzo
    [4] abril
    [5] mayo
    [6] junio
    [7] julio
    [8] agosto
    [9] septiembre
    [10] octubre
    [11] noviembre
   *[12] diciembre
} de { $year }
child = quien practica
name-line = Nombre:
left-right = Izquierda y derecha son las de { $child }. Las cabezas se ven como en un espejo.

## Informe: el encabezado

report-kind = Informe de la visita
report-title = Lo que descubrió { $child }
report-period = del { $first } al { $last }
report-practised = { $practised } de { $planned } noches de práctica
report-held = La práctica está en pausa por seguridad. Nadie debe probar a tragar hasta que la clínica lo diga.

## Informe: la respuesta

answer-clear = Seguramente la mejor: { $favourite }
answer-unclear = Todavía no está claro
answer-none = Todavía no hay notas
answer-clear-why = Si 100 niños nos contaran lo mismo que { $child }, la mejor sería { $favourite } para { $chance }.
answer-unclear-why = { $favourite } va un poco por delante: { $chance } de 100.
answer-level = Ninguna posición va por delante de las otras.
answer-more = { $more ->
    [one] Una noche más lo aclararía, más o menos.
   *[other] Unas { $more } noches más lo aclararían.
}
answer-no-more = Más noches no lo aclararían. Puede que varias posiciones sean igual de buenas.
answer-none-why = No hay en qué basarse. Antes hacen falta notas de unas cuantas noches.
chance = { $edge ->
    [most] más de 99
    [least] menos de 1
   *[between] unos { $percent }
}
bars = Probabilidad de ser la mejor, sobre 100
bar = { $edge ->
    [most] > 99
    [least] < 1
   *[between] { $percent }
}

## Informe: la preferida de la primera y de la última noche

first = Primera noche
last = Última noche
favourites = Preferida

## Informe: todas las noches

grid = Cada noche
grid-night = Noche
key-rating = 1 a 5: la nota, 5 es lo más fácil
key-best = círculo: la mejor de la noche
key-not-down = { $sign } no bajó
key-skipped = { $sign } saltada
key-finished = { $sign } completa
key-partial = { $sign } hecha en parte
key-missed = { $sign } sin práctica
key-unsent = { $sign } nuestro mensaje llegó tarde o no llegó
key-open = { $sign } aún no termina
grid-none = Todavía no hay noches.
grid-candy = Caramelo: { $candies }.
candy-later = desde la noche { $night }, { $candy }

## Informe: cada posición

courses = Cada posición, noche a noche
courses-key = Los puntos son notas, ✕ no bajó.
courses-ahead = ★ va por delante al final.
courses-line = La línea muestra hacia dónde van las notas. Cuanto más ancha la franja gris, menos seguro es.
numbers = Para la clínica: prueba de Friedman en { $nights } noches completas, W = { $agreement }, p { $edge ->
    [small] < 0,001
   *[plain] = { $p }
}.
numbers-level = Para la clínica: no se ve diferencia entre posiciones en { $nights } noches completas.
numbers-few = Para la clínica: muy pocas noches completas para comparar las posiciones.
numbers-trend = Prueba de Page de que las notas suben, p { $edge ->
    [small] < 0,001
   *[plain] = { $p }
}.
numbers-caution = Las noches de una misma persona dependen unas de otras: los números solo describen.
course-alt = { $position }, noche a noche
course-point = noche { $night }: { $mark }
down = bajó { $down } de { $tries }
down-none = sin probar

## Informe: qué más hay que saber

ready = ¿Se puede dar el siguiente paso?
ready-answer = En las últimas noches de práctica, { $position } bajó { $down } de { $tries } veces.
ready-none = No hay preferida, así que aún no se sabe.
ready-yes = Sí, tres veces de tres.
ready-unclear = Aún no está claro qué posición es la mejor, así que antes toca practicar más.
ready-held = No mientras la práctica esté en pausa por seguridad.
ready-not-yet = No en las tres últimas. Practicar más puede ayudar.
adherence = Las noches
adherence-done = { $practised } de { $planned } noches de práctica, en { $evenings ->
    [one] un día
   *[other] { $evenings } días
}.
adherence-partial = { $count ->
    [one] Una se hizo
   *[other] { $count } se hicieron
} en parte.
adherence-missed = { $count ->
    [one] Un día
   *[other] { $count } días
} sin práctica.
adherence-unsent = { $count ->
    [one] Un día
   *[other] { $count } días
} sin nuestro mensaje. Fue culpa nuestra.
stops = Atragantarse o respirar mal
stops-more = Y { $count } más. La clínica puede mostrarlas.
stops-none = No nos contaron nada de eso.
stop-seen = { $date }: { $category }. La clínica ya lo revisó.
stop-open = { $date }: { $category }. La clínica AÚN NO lo ha revisado.
notes = Lo que escribieron
notes-none = Sin notas escritas.
note-night = Noche { $night }:
note-position = Noche { $night }, { $position }:
notes-more = Y { $count } más. La clínica puede mostrarlas.

## Informe: la elección y las advertencias

choice = Elegimos juntos
choice-other = todavía no
choice-date = Fecha:
cautions = Para tener en cuenta
caution-description = Esta hoja cuenta lo que hizo y sintió una sola persona. No es una prueba. Ningún estudio controlado ha mostrado que diga cómo irá un medicamento de verdad.
caution-medicine = El medicamento de verdad es cosa de quien lo receta y de la farmacia: cuál, en qué forma, de qué tamaño y cómo se toma. No lo triture, parta ni cambie sin preguntarles.
caution-up = { $position } es la barbilla solo un poco alta, nunca la cabeza muy atrás. Así las vías respiratorias quedan menos protegidas. Háblenlo antes de elegirla.
caution-adult = En cada intento: la espalda recta, un adulto cerca, nunca a la fuerza. Si se ahoga: llame al { $emergency }.
caution-desk = En esta hoja no están los demás mensajes y avisos. Los tiene la clínica.

## Hojas de notas

sheet-kind = Hojas de notas
sheet-title = Noches de práctica de { $child }
sheet-how = Un caramelo en cada posición, en este orden, con un sorbo pequeño de agua. La cabeza en su sitio, el caramelo atrás en la lengua, y a tragar. Después de cada uno, rodee cómo fue: 1 es difícil, 5 es fácil.
sheet-missed = ¿Faltó una noche? No pasa nada. Siga con el recuadro que toca.
sheet-trouble = Pare y llame a su clínica si se atraganta, si la tos no se va, si hay dolor o llanto. En una emergencia, llame al { $emergency }.
sheet-bring = Entregue las hojas a su clínica.
sheet-night = Noche { $night } de { $nights }
sheet-date = Fecha:
sheet-candy = Un { $candy } en cada una
sheet-hard = difícil
sheet-easy = fácil
sheet-down = no bajó
sheet-skip = saltada
sheet-best = La mejor de hoy:
sheet-best-none = ninguna
sheet-note = Nota:
sheet-safety = Un adulto está cerca todo el rato. La espalda recta. Nunca a la fuerza. Si se ahoga: llame al { $emergency }.

## Tarjeta de invitación

card-kind = Invitación
card-parent = Para la madre, el padre o tutor de { $child }
card-child = Para { $child }
card-parent-why = { $child } va a aprender a tragar pastillas, con caramelos pequeños y sin medicamentos: unos cinco minutos cada noche, { $nights } noches. Cada tarde les escribimos y decimos qué hacer.
card-child-why = Tu garganta puede aprender a tragar pastillas. Cada noche pruebas caramelos pequeños, cinco minutos, { $nights } noches. Te escribimos y te decimos qué hacer.
card-scan = Apuntar al cuadro con el teléfono, o abrir:
card-scan-text = Apuntar al cuadro con el teléfono, o mandar un mensaje de texto al:
card-send = Si hace falta un código, mandar este:
card-parent-start = Lea lo que acepta y diga que sí. La primera tarde hay una lección corta.
card-child-start = Busca a un adulto. Se queda contigo cada noche. ¡Y empezamos!
card-square = Cuadro de código que abre { $link }
card-expires = El código sirve una vez, hasta el { $date }.
card-lost = ¿Ya no sirve o se perdió? La clínica da otra tarjeta.
card-private = Hay que guardar bien esta tarjeta: quien tiene el código puede entrar.
card-emergency = Esto no es una línea de emergencias. En una emergencia, llamar al { $emergency }.
