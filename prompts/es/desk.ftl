# Lo que el equipo clínico lee en el escritorio.

## En todas partes

desk = escritorio de coachbot
desk-word = escritorio
skip = Ir al contenido
nav-label = Escritorio
nav-alerts = Avisos
nav-children = Niños
nav-enrol = Inscribir
nav-study = Estudio
nav-clinic = Clínica
sign-out = Salir
foot = coachbot no da consejo médico. En una emergencia se dice a las familias que llamen al número local de emergencias.
banner-nobody = No se puede localizar a nadie.
banner-nobody-do = Un aviso no llegaría a nadie: no hay ningún profesional activo de guardia con un chat enlazado. Vigile esta página hasta que se arregle.
banner-clock = El reloj se ha parado.
banner-clock-do = No salen mensajes y los avisos no escalan. Avise ya a quien lleva el servicio.
live-new = Hay un aviso nuevo.
live-show = Hay novedades. Mostrarlas
go-home = Volver al inicio
go-child = Volver al niño
none = ninguno
none-chosen = ninguna
more = Nota, suspensión, fin
yes = Sí
no = No
ago-minutes = { $count ->
    [0] ahora mismo
    [one] hace 1 minuto
   *[other] hace { $count } minutos
}
ago-hours = hace { $count } horas
ago-days = hace { $count } días
in-minutes = { $count ->
    [0] ahora
    [one] en 1 minuto
   *[other] en { $count } minutos
}
in-hours = en { $count } horas
in-days = en { $count } días
date-short = { $day } { $month ->
    [1] ene
    [2] feb
    [3] mar
    [4] abr
    [5] may
    [6] jun
    [7] jul
    [8] ago
    [9] sept
    [10] oct
    [11] nov
   *[12] dic
}
date-time = { $date }, { $time }
until = hasta el { $day }

## Lo que salió mal

wrong-title = No ha funcionado
wrong-typed = Lo que usted escribió
wrong-no-case = Aquí no hay tal niño. Quizá la familia fue borrada.
wrong-store = No se llega a la base de datos, así que nada ha cambiado. Inténtelo en un minuto; si sigue igual, avise a quien lleva el servicio.
wrong-origin = Este formulario no vino del escritorio, así que no se hizo nada. Abra de nuevo el escritorio y use su propio formulario.
wrong-size = Es demasiado para un formulario. Acórtelo y envíelo otra vez.
wrong-role = Su función no abre esta página. Pídalo a quien dirige la clínica si la necesita.
wrong-csrf = Este formulario ha caducado, así que no se hizo nada. Vuelva atrás, cargue la página de nuevo y envíelo otra vez.
wrong-signed-out = Su sesión ha terminado. Entre de nuevo.
words-needed = Escriba unas palabras. Se guardan con su nombre.
words-long = Son { $given } caracteres; el máximo es { $most }. Acórtelo y envíelo otra vez.
number-wrong = { $given } no sirve aquí. Dé un número entero de { $least } a { $most }.
time-wrong = { $given } no es una hora. Dé una como 19:30.
date-wrong = { $given } no es una fecha. Dé una como 2026-03-24.
date-past = { $given } no está en el futuro. Elija un día posterior, o déjelo vacío.
date-future = { $given } aún no ha llegado. Dé el día en que la familia practicó.
zone-wrong = { $given } no es una zona horaria. Dé una como America/New_York.
choice-needed = Elija una de las respuestas.
confirm-needed = Confirme esto antes de seguir.
faults-some = { $count ->
    [one] Hay una cosa por corregir. Está marcada abajo.
   *[other] Hay { $count } cosas por corregir. Están marcadas abajo.
}

## Entrar

sign-in = Entrar
name = Nombre
password = Contraseña
code = Código de un solo uso
sign-in-help = El código está en su aplicación de autenticación. Si perdió la contraseña o la aplicación, quien dirige la clínica puede darle otras.
sign-in-wrong = Nombre, contraseña y código no van juntos. Cada código sirve una vez: espere el siguiente e inténtelo de nuevo.
sign-in-wait = Demasiados intentos. Espere 15 minutos e inténtelo de nuevo.

## Estados, niveles, personas

state-invited = con invitación
state-lesson = lección
state-practising = practica
state-paused = en pausa
state-on_hold = suspendido
state-finished = terminado
state-followed_up = con seguimiento
state-withdrawn = cerrado
level-none = nota
level-medicine = Medicamento
level-concern = Preocupación
level-urgent = Urgente
level-emergency = Emergencia
role-parent = madre o padre
role-child = niño
role-clock = el reloj
role-channel = el canal
who-on_call = profesional de guardia
who-backup = suplente
who-all = todos
staff-clinician = profesional clínico
staff-lead = dirección
staff-researcher = investigación
duty-on_call = de guardia
duty-backup = suplente
duty-none = sin guardia
channel-name = { $channel ->
    [telegram] Telegram
    [sms] mensaje de texto
    [rehearsal] teléfono de ensayo
   *[other] { $channel }
}
ours-missed = noches perdidas seguidas
ours-lesson = lección sin terminar
ours-unreachable = no se localiza a la familia
ours-undelivered = un mensaje de seguridad no llegó
ours-stuck = el programa de un niño no puede seguir; su número:

## Avisos

alerts-title = Lo que le necesita ahora
alerts-none = No hay nada abierto. Los avisos nuevos aparecen aquí solos.
alert-stranger = Alguien que no es de ninguna familia
alert-evidence = Lo que decidió:
alert-told = Avisados:
alert-told-one = { $name } ({ $times ->
    [one] una vez
   *[other] { $times } veces
}, la última { $when })
alert-told-nobody = nadie todavía
alert-next = Sigue:
alert-around = La conversación alrededor
do-acknowledge = Me encargo yo
do-call-back = Decirles que llamaremos
do-note = Guardar nota
do-call = Guardar: se llamó a la familia
do-lift = Levantar la suspensión
do-end = Terminar el programa
do-read = Lo he leído
note-label = Nota para el equipo
note-note = nota
note-call = llamada a la familia
note-screening = evaluación confirmada
lift-label = ¿Por qué es segura otra vez la práctica? Se guardan su nombre y esta nota.
end-label = ¿Por qué termina el programa? No se puede deshacer.
call-back-words = Hemos leído su mensaje. Les llamaremos en cuanto podamos. Si alguien está en peligro, llamen ya al número local de emergencias.
unread-title = Mensajes por leer ({ $count })
unread-none = No hay nada por leer.
send-waiting = en espera
send-claimed = enviándose
send-sent = enviado
send-delivered = entregado
send-never = no entregado
send-gone = ya no se localiza
send-unknown = quizá no entregado
send-expired = demasiado tarde, no enviado
send-cancelled = retirado

## Niños

children-title = Niños
children-none = Ningún niño encaja. Borre la búsqueda o elija otro grupo.
children-count = { $count ->
    [one] Un niño
   *[other] { $count } niños
}
find = Buscar un nombre
do-find = Buscar
sort = Ordenar por
sort-needs = quién le necesita
sort-name = nombre
sort-nights = noches practicadas
sort-missed = noches perdidas
sort-evening = última noche
show-label = Grupos
show-all = Todos
show-needs = Le necesitan
show-waiting = Sin empezar
show-practising = Practican
show-on_hold = Suspendidos
show-paused = En pausa
show-finished = Terminados
show-ended = Cerrados
col-child = Niño
col-state = Estado
col-night = Noche
col-weeks = Últimas cuatro semanas
col-last = Última noche
col-favourite = Favorita hasta ahora
col-missed = Perdidas
col-waits = Pendiente
night-of = noche { $night } de { $nights }
down-of = { $down } de { $tried } tragados
clear = clara
working = calculándose
in-a-row = ({ $count } seguidas)
alerts-count = { $count ->
    [one] 1 aviso
   *[other] { $count } avisos
}
unread-count = { $count } por leer
strip = { $done } de { $evenings } noches practicadas en las últimas cuatro semanas
strip-key = Cada marca es una noche: cuadrado practicada, medio cuadrado en parte, anillo perdida, raya abierta o no enviada. La nota va de 1 (lo más difícil) a 5 (lo más fácil).
pages = Páginas

## Un niño: llegar al medicamento real

target-title = Llegar al medicamento real
target-none = No hay ningún tamaño puesto.
target-set = Poner su tamaño
target-change = Cambiar el tamaño
target-private = Solo para clínicos: no se dice a la familia y no está en el informe.
target-form = { $child }: tamaño del medicamento real
target-capsule = Cápsula de dos piezas, por su tamaño
target-measured = ninguna: largo y ancho abajo
target-length = Largo (lado más largo), mm
target-width = Ancho, mm
target-steps = Tamaños entre el caramelo y él, si quiere: uno por línea, largo x ancho en mm, el más corto primero
target-steps-hint = El caramelo de práctica mide { $candy } mm en su lado más largo. Ejemplo de línea: 10 x 6
do-target = Guardar el tamaño
do-target-remove = Quitar el tamaño
capsules-title = Cápsulas de dos piezas, cerradas
capsule-name = Tamaño
capsule-size = Largo × ancho
capsule-volume = Volumen
capsules-source = De la tabla de un fabricante; los fabricantes difieren en décimas de milímetro.
volume = { $ml } ml
size-both = { $length } × { $width } mm
size-longest = { $length } mm en su lado más largo
rung-what = Qué
rung-size = Largo × ancho
rung-growth = Largo, veces el anterior
rung-candy = Caramelo
rung-step = Paso { $number }
rung-target = Medicamento
rung-capsule = Cápsula { $name }
rung-times = × { $factor }
rung-passed = no más largo que el caramelo
target-drawing = Caramelo, tamaños intermedios y medicamento real, a una misma escala
limit-over_largest = Más de 22 mm, la mayor dimensión de un comprimido o cápsula en la guía de la FDA de 2015. (La guía admite cápsulas por su nombre hasta el tamaño 00, que es más largo.)
limit-no_larger = 17 mm o más: la guía de la FDA de 2015 pide que ningún genérico sea mayor. El farmacéutico sabe si hay uno más pequeño.
limit-over_largest_capsule = Mayor que el tamaño 00, la mayor cápsula en la guía de la FDA de 2015.
limit-none = Por debajo de los límites de la guía de la FDA de 2015 (17 mm, 22 mm, cápsula de tamaño 00).
target-caution = Estos límites son para genéricos; no dicen qué es seguro para un niño. El medicamento, su forma y tamaño, y si se puede abrir, triturar o partir, son cosa de quien lo receta y del farmacéutico. Que baje un caramelo no muestra que bajará un medicamento.
target-needed = Elija el tamaño de una cápsula, o dé largo y ancho.
target-both = Elija el tamaño de una cápsula o dé largo y ancho, no ambos.
mm-wrong = «{ $given }» no sirve aquí. Dé milímetros de { $least } a { $most }, por ejemplo 12,5.
size-sides = El largo es el lado más largo, pero { $length } mm es menos que { $width } mm. Cámbielos si se confundieron.
steps-wrong = «{ $given }» no es un tamaño. Escriba largo x ancho en mm, por ejemplo 10 x 6, cada tamaño en su línea.
steps-order = Los largos deben subir de línea en línea, todos por encima de { $candy } mm (el caramelo) y ninguno por encima de { $target } mm.
steps-many = { $given } tamaños son demasiados. Dé { $most } como mucho.

## Un niño

born = nacimiento { $year }
bedtime-is = hora de dormir { $time } ({ $zone })
case-number = caso { $number }
nights-title = Noche a noche
nights-none = Todavía ninguna noche.
night = Noche
night-status = Cómo quedó
night-open = abierta
night-finished = terminada
night-partial = en parte
night-missed = perdida
night-unsent = mensaje no enviado
night-short-open = …
night-short-finished = ✓
night-short-partial = ½
night-short-missed = ○
night-short-unsent = –
mark-none = sin nota
mark-not_down = no bajó
mark-skipped = omitida
best = la mejor de la noche
grid-key = De 1 lo más difícil a 5 lo más fácil. × no bajó, – omitida, ★ elegida como mejor esa noche. ✓ terminada, ½ en parte, ○ perdida.
adherence = { $evenings } noches: { $finished } terminadas, { $partial } en parte, { $missed } perdidas{ $unsent ->
    [0] .
   *[other] , { $unsent } no enviadas por nosotros.
}
notes-title = Lo que anotó la familia
favourite-title = Qué posición
favourite-none = Todavía no hay datos.
favourite-clear = { $position } es la favorita: { $percent } % de probabilidad de ser la mejor de las probadas.
favourite-unclear = Aún no está claro. { $position } va delante con { $percent } %.
favourite-more = Unas { $nights } noches más pueden decidirlo.
favourite-first-last = Favorita la primera noche: { $first }; la última: { $last }.
favourite-caution = Solo descriptivo: las notas de un solo niño en noches que dependen unas de otras. No predice cómo irá un medicamento real. Elijan junto con el niño y la familia.
ready-yes = Con la favorita, el caramelo bajó en cada una de las tres últimas noches practicadas.
ready-no = Con la favorita, el caramelo no bajó en cada una de las tres últimas noches practicadas.
ready-unknown = Hay muy pocas noches para decir si el niño está listo.
shares-title = Probabilidad de que cada posición sea la mejor
course-title = { $position }: notas noche a noche
not-down-short = no
chosen-is = Elegida en el seguimiento: { $position }
talk-title = La conversación
talk-none = Todavía no se ha escrito nada.
talk-coach = coach a { $to }
talk-button = con botón
changes-title = Qué cambió y quién lo hizo
change-state = de { $old } a { $new }
change-candy = el caramelo es ahora { $new }
change-bedtime = hora de dormir de { $old } a { $new }
change-zone = zona horaria de { $old } a { $new }
change-chosen = posición para el medicamento real: { $new }
change-target = el tamaño del medicamento real es ahora { $size }
change-target-none = el tamaño del medicamento real se quitó
did-Told = mensaje a la familia
did-NightEntered = noche copiada del papel
did-Acknowledged = se encargó de un aviso
did-Joined = se unió
did-ClinicianWrote = nota por chat
did-ClinicianPressed = botón en el chat
did-Held = práctica suspendida
did-HoldLifted = suspensión levantada
did-Ended = programa terminado
did-Paused = práctica en pausa
did-Resumed = práctica reanudada
did-BedtimeSet = hora de dormir cambiada
did-CandySet = caramelo cambiado
did-TargetSet = tamaño del medicamento real, o pasos hacia él
did-FollowedUp = seguimiento hecho
did-Erased = borrado pedido
access-title = Quién miró este expediente ({ $count })
deeds-title = Lo que puede hacer
do-resume = Seguir con la práctica
follow-up-label = Posición elegida con el niño
note-optional = Nota (opcional)
do-follow-up = Guardar la elección
tell-label = Mensaje a la familia, con sus palabras
do-tell = Enviar
practice-title = Pausa, suspensión, hora, caramelo
pause-until = Pausa hasta (vacío: hasta reanudar)
do-pause = Pausar
hold-label = ¿Por qué se suspende la práctica?
do-hold = Suspender
bedtime = Hora de dormir
zone = Zona horaria
do-bedtime = Cambiar la hora
candy-kind = Caramelo
candy-mint = pastilla de menta pequeña
candy-hard = caramelo duro pequeño
candy-size = Lado más largo, mm
do-candy = Cambiar el caramelo
papers-title = En papel
report-pdf = Informe de seguimiento (PDF)
report-png = Informe de seguimiento (imagen)
certificate = Diploma para el niño
sheets = Hojas de notas para imprimir
enter-sheet = Copiar una hoja rellena
family-title = Los chats de la familia
contact-left = número equivocado, no se le escribe
contact-lost = no se localiza
contacts-none = Todavía no hay ningún chat enlazado.
consent-given = Consentimiento dado el { $when }
consent-none = Todavía sin consentimiento
invite-parent = Invitar a madre o padre
invite-child = Invitar al niño
record-title = Expediente: llevarse, terminar, borrar
kept = Todo lo que se guarda (JSON)
fhir = Paquete FHIR R4 (JSON)
erase-label = Borrar esta familia para siempre. Escriba el número de caso { $number } para confirmar.
do-erase = Borrar
erase-sure = No se borró nada. Escriba { $number } para confirmar.
erased-none = No se ha borrado ninguna familia con el número de caso { $number }.
erased-title = El caso { $number } está borrado
erased-opened = Abierto
erased-at = Borrado
erased-events = Sucesos borrados
erased-nights = Noches borradas
erased-received = Mensajes recibidos, borrados
erased-sent = Mensajes enviados, borrados
erased-backups = Las copias de seguridad hechas antes pueden contenerlo hasta el { $day }; luego se borran también.
erased-stays = Lo que queda: estas cuentas, y quién miró el expediente y cuándo ({ $count } anotaciones, sin nombre de niño).
done-acknowledge = Usted se encarga. No escala más.
done-lift = La suspensión está levantada y la familia lo sabe.
done-hold = La práctica está suspendida y la familia lo sabe.
done-end = El programa ha terminado y la familia lo sabe.
done-pause = La práctica está en pausa y la familia lo sabe.
done-resume = La práctica sigue y la familia lo sabe.
done-bedtime = La hora de dormir ha cambiado y la familia lo sabe.
done-candy = El caramelo ha cambiado y la familia lo sabe.
done-tell = Su mensaje está en camino.
done-call-back = La familia sabe que ustedes llamarán.
done-follow-up = La elección está guardada.
done-target = Guardado. No se dice a la familia.
done-note = La nota está guardada.
done-call = La llamada está guardada.
done-night = La noche está copiada.
done-password = Su contraseña ha cambiado. Sus otras sesiones han terminado.
done-clinic = Guardado. Vale para las familias que se inscriban desde ahora.
done-people = Guardado.

## Inscripción

enrol-title = Inscribir a una familia
enrol-child = El niño
child-called = Nombre con que se le llama
child-name = Dé un nombre de 1 a 40 caracteres.
child-born = Nacimiento
born-hint = La fecha es para comprobar la edad. Solo se guarda el año.
enrol-screening = Evaluación
ask-swallowing = ¿Hay un trastorno de deglución conocido, o antecedentes de aspiración?
ask-ill = ¿Está el niño demasiado enfermo, o demasiado dormido, para practicar?
ask-allergy = ¿Hay alergia a algo del caramelo?
ask-neck = El cuello
neck-sound = Ningún problema conocido
neck-cleared = Hay un problema, pero un especialista permite todas las posiciones elegidas
neck-unstable = Inestable, o todavía sin examinar
confirm-asked = Hice yo estas preguntas a la familia.
confirm-adult = Un adulto estará presente cada noche y el niño se sentará erguido.
confirm-never-forced = La familia lo sabe: nunca forzar al niño, y parar ante cualquier angustia.
confirm-young = El niño tiene menos de 5 años: he valorado con la familia el riesgo de atragantarse con caramelo duro.
confirm-neck = La opinión del especialista sobre el cuello está en la historia del niño.
confirm-hint = Se guarda con la hora y su nombre, { $name }. Las respuestas mismas no se guardan.
stops-title = Este niño no se puede inscribir ahora
stop-too_young = Menos de 4 años: no se da caramelo duro a un niño tan pequeño (AAP, Pediatrics 2010;125:601).
stop-not_born = La fecha de nacimiento está en el futuro.
stop-swallowing = Trastorno de deglución o aspiración: la práctica corresponde a un especialista.
stop-ill = Demasiado enfermo o dormido: espere a que el niño esté bien.
stop-allergy = Alergia al caramelo: elija otro caramelo y responda de nuevo.
stop-neck = Cuello inestable: ninguna posición que gire o incline la cabeza sin la opinión de un especialista.
stops-do = No se guardó nada. Si una respuesta estaba mal, corríjala abajo; si no, pare aquí.
enrol-practice = Práctica
positions = Posiciones, según la izquierda y la derecha del niño
positions-few = Elija al menos dos posiciones.
nights = Noches
bedtime-hours = La hora debe estar entre { $earliest } y { $latest }, el horario de la clínica.
language = Idioma
candy-first = Caramelo desde la primera noche
candy-later = Después (opcional)
candy-from = Desde la noche
candy-order = Los caramelos van uno tras otro: dé una noche posterior.
enrol-chats = Quién recibe mensajes
chats-first = La madre o el padre recibe todos los mensajes. Elige el canal según abra la invitación.
chats-second = También otro adulto de la familia
chats-own = El niño en su propio teléfono
do-enrol = Evaluar e inscribir
invitation-title = { $child }: invitación
invitation-once = Se muestra solo media hora. Cada código enlaza un chat, sirve una vez y vale { $days } días.
invitation-gone = Estos códigos ya no se muestran. Haga otros en la página del niño; los entregados antes siguen valiendo.
invite-for = Para { $role }
qr = Código QR del enlace
copy = Copiar enlace
copied = Copiado
code-how = Pida a la familia que envíe este código como primer mensaje.
card = Tarjeta para imprimir (PDF)
enrol-next = Inscribir a otra familia

## Papel

entry-title = { $child }: copiar una hoja rellena
entry-turn = Orden { $turn }, como está impreso en la hoja.
entry-day = Día de la práctica
entry-best = La mejor esa noche
entry-none = Todas las noches están usadas. No se puede copiar ninguna más.
mark-wrong = { $given } no es una nota. Elija de 1 a 5, no bajó, u omitida.
marks-needed = Dé al menos una nota.
do-enter = Guardar la noche

## Estudio

study-title = Archivos del estudio
study-what = Tablas sin identificación con diccionario de datos, de { $count } niños: números de noche en lugar de fechas, sin nombres, sin texto libre, sin celdas pequeñas.
study-refused = Los archivos se retuvieron porque podrían decir quién es alguien: { $why }.
study-files = Descargar los archivos (ZIP)
study-caution = Se anota cada vez que se miran estas cifras o se descargan los archivos. Las notas de los niños son descriptivas; no hay grupo de control.

## Estudio: todos los niños juntos

cohort-title = Todos los niños juntos
cohort-none = Ningún niño ha tenido todavía una noche; no hay nada que mostrar.
cohort-few = Menos de { $least } niños han tenido una noche. Cualquier cifra podría decir algo de uno de ellos; no se muestra ninguna.
cohort-who = { $count } niños cuya primera noche ya pasó, sigan practicando o hayan terminado. No se cuenta la noche de hoy, ni las familias borradas o que pararon antes de la primera noche.
cohort-small = Los grupos pequeños se ocultan aquí igual que en los archivos. Un recuento de 1 a { $most } niños se muestra como límite, y también el de todos menos 1 a { $most }; si un recuento oculto se pudiera deducir de los demás, se oculta otro con …. Nada se prueba ni se promedia con menos de { $least } niños. Ninguno se muestra como 0.
cohort-adherence = Practicaron, por noche (% de familias)
cohort-staying = Siguen dentro, por noche (% de familias, Kaplan-Meier)
cohort-adherence-key = Practicaron: de las familias que tuvieron esa noche y recibieron nuestro mensaje, las que practicaron; punto e intervalo del 95 % (Wilson), o solo un intervalo donde se oculta un grupo pequeño.
cohort-staying-key = Siguen dentro: familias que no han parado por su cuenta, con la banda del 95 %; solo baja donde { $least } o más han parado desde la bajada anterior.
stopped-none = Ninguna familia ha parado antes de tiempo.
stopped = Pararon antes de tiempo: { $count } de { $total } familias.
staying-few = Son menos de { $least }; por eso no hay curva.
numbers-show = Mostrar los números
col-practised = Practicaron
col-share = Parte
col-range = Intervalo del 95 %
col-after = Tras la noche
col-position = Posición
col-down = Bajó
col-place = Lugar en la noche
col-children = Niños
col-effect = Nota frente a la media de la noche
not-told = oculto
of-total = { $count } de { $total }
range = { $low } a { $high } %
effect-range = { $low } a { $high }
number = { $value }
moved-title = Favoritas, de la primera (filas) a la última (columnas), en niños
moved-corner = Primera \ última
off-centre = Última favorita distinta de { $position }: { $percent } % de { $total } niños que tienen una favorita (intervalo del 95 %: { $low } a { $high } %, Wilson).
off-centre-few = Muy pocos niños tienen una favorita para decir cuántos acaban con otra que el centro.
down-title = ¿Bajó el último caramelo probado?
differs = Q de Cochran con los { $children } niños que probaron todas las posiciones: { $statistic } con { $degrees } grados de libertad, p { $edge ->
    [small] < 0,001
   *[plain] = { $p }
}.
differs-level = Con los { $children } niños que probaron todas las posiciones no se ve ninguna diferencia: a cada niño le bajaron todos los caramelos, o ninguno.
differs-few = Menos de { $least } niños han probado todas las posiciones, o difirieron entre ellas; no se prueba ninguna diferencia.
places-title = ¿Importa el lugar en la noche?
places-few = Menos de { $least } niños han puntuado cada lugar; no se puede decir nada.
places-key = Cuánto más alta (o, con un menos, más baja) es la nota de un caramelo en su lugar que la media de esa noche. Si no bajó, cuenta como 0. Primero se promedia en cada niño; intervalo: t de Student entre niños.
cohort-caution = Solo descriptivo. Los niños de una clínica no son una muestra al azar, los que siguen difieren de los que paran, y no hay grupo de control.

## Clínica

clinic-title = Ajustes de la clínica
texts = Lo que se dice a las familias
texts-hint = Cada texto como se envía, con un niño inventado. Para usar otras palabras, póngalas en la carpeta que nombra el ajuste COACHBOT_TEXTS.
texts-parent = A madres y padres
texts-child = A niños
texts-clinician = Al equipo clínico, por chat
log-title = Registro de accesos
log-hint = Las anotaciones más recientes. Se pueden añadir, nunca cambiar.
set-general = La clínica
set-emergency = Número local de emergencias
set-practice = Práctica
set-nights = Noches de práctica
set-max_nights = Noches como máximo
set-earliest = Mensajes desde
set-latest = Mensajes hasta
set-late_limit = Un mensaje tardío aún se envía, minutos
set-reminder_after = Recordatorio tras, minutos
set-close_after = La noche se cierra tras, minutos
set-missed_limit = Perdidas seguidas que dan un aviso
set-watch_days = Días de preguntar tras un atragantamiento
set-ladder = Escalera de avisos de emergencia y urgentes
set-calm_ladder = Escalera de los demás avisos
set-after = Minutos tras el aviso
set-who = Avisar a
do-set = Guardar
set-hint = Las familias ya inscritas conservan lo suyo. El último paso de una escalera se repite hasta que alguien se encarga.
protocol-wrong = Esto no puede ser: { $why }.
people-title = Personas
people-add = Añadir a una persona
role = Función
duty = Guardia
account = Cuenta
account-open = abierta
account-closed = cerrada
channel = Canal
address = Identificador de chat o número
reach-none = sin chat
reach-wrong = Dé un canal disponible y una dirección en él: un teléfono con el código del país, o el número de un chat.
do-save = Guardar
do-renew = Nueva contraseña y código
do-add = Añadir
account-name = Dé un nombre de 1 a 80 caracteres.
account-taken = Ya hay una cuenta con ese nombre. Elija otro.
account-none = No hay tal cuenta.
account-own = No puede cerrar su propia cuenta.
account-once = Se muestra solo esta vez. Entréguelo en persona; el código es para una aplicación de autenticación.
code-secret = Para la aplicación de autenticación
qr-code = Código QR para la aplicación de autenticación
password-change = Cambiar la contraseña
password-hint = { $least } caracteres o más, de cualquier clase. Lo mejor son unas palabras que recuerde.
password-old = Contraseña actual
password-new = Contraseña nueva
password-again = Contraseña nueva otra vez
password-differs = Las dos contraseñas nuevas no son iguales. Escriba la misma dos veces.
password-wrong = La contraseña actual es otra. Inténtelo de nuevo.
password-weak = Use { $least } caracteres o más, no su nombre, ni unos pocos repetidos.
password-common = Es de las primeras que alguien probaría. Elija unas cuantas palabras que no tengan que ver entre sí.

## Estado

status = Estado
status-clock = Reloj
status-reach = Alguien a quien avisar
status-beats = Procesos
status-outbox = En espera de envío
status-since = el más antiguo { $when }
status-fine = funciona
status-beat = último latido { $when }
status-channels = Canales
status-up = en línea { $when }
status-never = nunca en línea
status-down = Puede que no entren mensajes.
status-alerts = Avisos que nadie ha atendido
status-undelivered = Avisos que no han llegado a ningún profesional
status-unreachable = Familias que no se pueden localizar
status-urgency = Qué
status-count = Cuántos
status-oldest = El más antiguo, escrito
urgency-safety = seguridad
urgency-alert = avisos
urgency-reply = respuestas
urgency-prompt = mensajes de la noche
urgency-news = noticias
