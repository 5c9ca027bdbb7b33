# La página de ensayo: la lee el equipo del centro, y se enseña a una familia antes de empezar.

title = Ensayo de coachbot
intro = Cuatro teléfonos y un reloj, solo en este ordenador. No se envía nada fuera. { $child } es un nombre inventado.
step-bedtime = Hasta la próxima hora de dormir
step-five-minutes = Cinco minutos más
step-hour = Una hora más
restart = Empezar de nuevo
phone-parent = Madre o padre
phone-child = { $child }
phone-clinician = { $name }, de guardia
phone-backup = { $name }, de apoyo
open-invitation = Abrir la invitación
write-here = Escriba un mensaje
send = Enviar
by-text = Por SMS
segments = Segmentos: { $count }
nothing-yet = Todavía no hay nada.
mistake = No ha funcionado: { $why }
desk = El escritorio del centro muestra a la misma familia, y a su alrededor un centro inventado, que llega cuando usted lo abre por primera vez: los teléfonos esperan ese rato. Entre como { $name }.
desk-open = Abrir el escritorio
desk-password = Contraseña
desk-code = Código de un solo uso

# La función sin nadie, en la terminal.

auto-lesson = La lección está hecha: { $child } ha tragado un primer caramelo pequeño.
auto-night = { $bar } { $practised }/{ $nights }  { $day }  { $status ->
    [missed] sin práctica
    [partial] en parte  { $marks }
   *[finished] hecha  { $marks }
  }
auto-alert = ! { $time }  para { $name }: { $words }
auto-taken = ! { $name } se ha hecho cargo.
auto-lifted = ! { $name } ha levantado la pausa de seguridad: { $note }
auto-report = El informe está en { $path }

# La conversación de familias inventadas.

transcript-own = **{ $time } { $phones }**
transcript-sent = **{ $time }** a { $phones }
transcript-picture = [imagen: { $name }]
transcript-file = [archivo: { $name }]
