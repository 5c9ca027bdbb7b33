# Lo que se dice al personal de la clínica, por chat o mensaje de texto.

alert =
    { $level ->
        [emergency] EMERGENCIA
        [urgent] URGENTE
        [concern] PREOCUPACIÓN
        [medicine] MEDICAMENTO
       *[other] AVISO
    } { $code }: { $child }, { category }.
    Lo que decidió: { $words }
    .sms =
    { $level ->
        [emergency] EMERGENCIA
        [urgent] URGENTE
        [concern] PREOCUPACIÓN
        [medicine] MEDICAMENTO
       *[other] AVISO
    } { $code }: { $child }, { category }. "{ $words }" Responda TOMAR { $code }.
alert-again = Nadie se ha hecho cargo todavía. Este es el aviso número { $steps }.
alert-hold = La práctica está suspendida hasta que alguien de la clínica la reabra con una nota.
    .sms = La práctica está suspendida. Para reabrirla responda REABRIR y el código, luego una nota.
alert-missed = AVISO { $code }: { $child } lleva { $count } noches seguidas sin practicar. Una llamada puede ayudar a la familia.
    .sms = AVISO { $code }: { $child } lleva { $count } noches seguidas sin practicar. Responda TOMAR { $code }.
alert-unreachable = AVISO { $code }: los mensajes a la familia de { $child } ya no llegan. Búsquela por otra vía.
    .sms = AVISO { $code }: los mensajes a la familia de { $child } ya no llegan. Búsquela por otra vía. Responda TOMAR { $code }.
alert-undelivered = EMERGENCIA { $code }: no se pudo entregar un mensaje de seguridad a la familia de { $child }. Llámela ahora.
    .sms = EMERGENCIA { $code }: no se pudo entregar un mensaje de seguridad a la familia de { $child }. Llámela ahora. Responda TOMAR { $code }.
alert-lesson = AVISO { $code }: la lección de { $child } quedó sin terminar { $count } tardes. Una llamada puede ayudar a la familia.
    .sms = AVISO { $code }: la lección de { $child } quedó sin terminar { $count } tardes. Responda TOMAR { $code }.
alert-stuck = URGENTE { $code }: un fallo nuestro impide que siga el programa del niño número { $words }. Atienda usted a esa familia y avise a quien lleva este sistema.
    .sms = URGENTE { $code }: un fallo nuestro detiene el programa del niño { $words }. Atienda a esa familia y avise a quien lleva este sistema. Responda TOMAR { $code }.
alert-stranger =
    { $level ->
        [emergency] EMERGENCIA
        [urgent] URGENTE
        [concern] PREOCUPACIÓN
        [medicine] MEDICAMENTO
       *[other] AVISO
    } { $code }: alguien que no es de ninguna familia de aquí escribió: { $words }
    .sms =
    { $level ->
        [emergency] EMERGENCIA
        [urgent] URGENTE
        [concern] PREOCUPACIÓN
        [medicine] MEDICAMENTO
       *[other] AVISO
    } { $code }: alguien que no es de ninguna familia de aquí escribió: "{ $words }" Responda TOMAR { $code }.
alert-taken = Se hace cargo { $by }. No se enviará más.
alert-taken-already = { $by } ya se hizo cargo.
lift-ask-note = Para reabrir la práctica de { $child }, escriba en pocas palabras por qué vuelve a ser segura. Se guardan su nombre y la nota.
end-ask-note = Para terminar el programa de { $child }, escriba en pocas palabras por qué. Se guardan su nombre y la nota. No se puede deshacer.
lift-done = { $by } reabrió la práctica de { $child }. La familia ya lo sabe.
lift-not-held = La práctica de { $child } no está suspendida; no hay nada que reabrir.
ended-already = El programa de { $child } ya terminó.
no-such-alert = No existe ese aviso. Use los botones del mensaje más nuevo.
    .sms = No existe ese aviso. Mire el código en el mensaje más nuevo.
not-running = Eso no es posible en el estado en que está el programa de { $child }. Mire en el panel cómo va.
night-taken = { $child } ya tiene una noche el { $day }. Elija otra fecha.
night-none-left = Todas las noches de { $child } están usadas. No se pueden anotar más.
night-wrong-positions = Las posiciones de la hoja no son las del orden de esa noche. Compruebe el orden en el panel.
bedtime-refused = La hora debe estar entre { $earliest } y { $latest }. Elija una hora entre esas dos.
end-done = { $by } terminó el programa de { $child }. La familia ya lo sabe.
note-empty = La nota está vacía. Escriba en pocas palabras por qué; se guarda con su nombre.
clinician-help = Con los botones de un aviso puede hacerse cargo, reabrir la práctica o terminar el programa. Lo demás está en el panel. Los mensajes para una familia se mandan desde el panel.
    .sms = Responda TOMAR, REABRIR o TERMINAR con el código de un aviso, como TOMAR 12-1. Lo demás está en el panel.
news-unread = Dos respuestas seguidas de la familia de { $child } no se pudieron leer. Están en el panel, marcadas como no leídas.
news-declined = La familia de { $child } no aceptó participar. No se le manda nada más.
news-stopped = La familia de { $child } dejó el programa. No se le manda nada más.
news-deleted = La familia de { $child } pidió que se borre todo.
summary = { $child }: { $practised } de { $nights } noches practicadas, en { $evenings } tardes.
summary-favourites = Favorita la primera noche: { $first }. La última: { $last }.
summary-clear = Favorita estimada: { $favourite } ({ $percent } % de probabilidad de ser la mejor de las probadas).
summary-unclear = Aún no hay una favorita clara. Va por delante { $favourite } ({ $percent } %).
summary-cautions = Solo descriptivo: las notas de una sola persona en noches que dependen unas de otras. No predice cómo irá un medicamento real. Háblelo con la familia antes de elegir.

## Botones

button-acknowledge = Me hago cargo
button-lift = Reabrir la práctica
button-end = Terminar el programa
