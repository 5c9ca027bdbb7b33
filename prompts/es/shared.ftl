# Palabras que comparten todos los lectores: nombres, marcas, la hora, rótulos de dibujos y botones.
# En todos los textos: $child es el nombre con que se llama al niño o la niña, $emergency el número local de
# emergencias, $tone la edad (young, middle, teen).

## Posiciones, caramelos, marcas. Las variables `-key` sirven para elegir las palabras, nunca para mostrarlas.

position = { $position-key ->
    [left] Izquierda
    [right] Derecha
    [up] Arriba
    [down] Abajo
   *[center] Centro
}
order-item = { $number }. { $position }
    .sms = { $number } { $position }
mark = { $mark ->
    [not_down] no bajó
    [skipped] saltada
   *[other] { $mark }
}
mark-item = { $position }: { $mark }
candy-name = { $candy ->
    [mint] caramelo pequeño de menta
   *[hard] caramelo pequeño y duro
}
candy = { candy-name } ({ $size } mm)
none = nada

## De qué trataba una respuesta, para el personal de la clínica

category = { $category ->
    [choking] atragantamiento
    [breathing] dificultad para respirar
    [colour] color azul o pálido
    [collapse] desmayo
    [allergy] reacción alérgica
    [battery_or_magnet] tragó una pila o un imán
    [overdose] tomó demasiado de algo
    [self_harm] autolesión
    [danger] alguien en peligro
    [choked] se atragantó antes
    [airway] signos en la vía aérea
    [stuck] algo atascado
    [swallowing] dificultad para tragar
    [vomiting] vómitos
    [after_choke] signos después de un atragantamiento
    [neck] dolor de cuello u hormigueo
    [hives] ronchas
    [wrong_object] tragó otra cosa
    [forced] obligado a tragar
    [unsafe] práctica sin seguridad
    [distress] angustia
    [refusal] negativa
    [gag] arcadas
    [pressure] presión sobre el niño o la niña
    [exhausted] familia agotada
    [shame] vergüenza
    [ill] enfermedad
    [medicine] pregunta sobre un medicamento
   *[other] { $category }
}

## La hora y el día

clock = { $hour }:{ $minute }
day = { $weekday ->
    [1] lunes
    [2] martes
    [3] miércoles
    [4] jueves
    [5] viernes
    [6] sábado
   *[7] domingo
} { $day } de { $month ->
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
}

## Lo que se dice cuando un texto no se puede mostrar

fallback = No pudimos mostrar un mensaje. Si alguien está en peligro, llame ya al número de emergencias. Si no, llame a su clínica.

## Botones

button-agree = Acepto
button-decline = No, gracias
button-next = Siguiente
button-down = Bajó
button-not-down = No bajó
button-later = Hoy no
button-skip = Saltar
button-no-best = Ninguna
button-no-note = Sin nota
button-yes = Sí
button-no = No
button-rate = { $rating }
button-position = { $position }

## Rótulos de los dibujos

picture-mirror = Como en un espejo
picture-left-hand = mano IZQUIERDA
picture-right-hand = mano DERECHA
picture-left-letter = I
picture-right-letter = D
picture-position = { $position-key ->
    [left] IZQUIERDA: gira hacia tu mano izquierda
    [right] DERECHA: gira hacia tu mano derecha
    [up] ARRIBA: sube la barbilla, solo un poco
    [down] ABAJO: baja la barbilla al pecho
   *[center] CENTRO: mira al frente
}
picture-order = Esta noche, de la primera a la última
picture-posture = Con la espalda recta
picture-posture-back = espalda recta
picture-posture-feet = pies en el suelo
picture-posture-adult = un adulto al lado
picture-tongue = El caramelo, atrás en la lengua
picture-tongue-here = aquí
picture-tongue-not = aquí no
picture-sip = Un sorbo pequeño
picture-sip-good = un sorbo
picture-sip-much = demasiado
picture-throat = Tu garganta es ancha y blanda
picture-throat-candy = caramelo pequeño

## Diploma

certificate-title = Diploma de práctica
certificate-for = Para
certificate-body = { $nights ->
    [one] por una noche de práctica.
   *[other] por { $nights } noches de práctica.
}
certificate-praise = Viniste. Lo intentaste. Nos contaste cómo fue.

## La página de prueba

proof-title = Todos los textos y dibujos, para su visto bueno
proof-intro = Léalos como una familia. Los nombres, horas y números son ejemplos. Donde cambia según la edad, se muestra cada una.
proof-signed = Leído y aprobado (nombre, fecha, firma)
proof-pictures = Dibujos
proof-audience = { $audience ->
    [parent] Lo que se dice a madres y padres
    [child] Lo que se dice a niñas y niños
   *[clinician] Lo que se dice a la clínica
}
proof-tone = { $tone ->
    [young] 5 a 7
    [middle] 8 a 12
    [teen] 13 o más
   *[all] todas las edades
}
proof-chat = chat, { $length } caracteres
proof-sms = SMS, { $length } caracteres, { $segments ->
    [one] un segmento
   *[other] { $segments } segmentos
}
