# Les mots que tous les lecteurs partagent : noms, marques, heure, légendes des dessins et boutons.
# Dans tous les textes : $child est le nom par lequel on appelle l'enfant, $emergency le numéro d'urgence local,
# $tone l'âge (young, middle, teen).

## Positions, bonbons, marques. Les variables `-key` servent à choisir les mots, jamais à les montrer.

position = { $position-key ->
    [left] Gauche
    [right] Droite
    [up] Haut
    [down] Bas
   *[center] Centre
}
order-item = { $number }. { $position }
    .sms = { $number } { $position }
mark = { $mark ->
    [not_down] pas descendu
    [skipped] sautée
   *[other] { $mark }
}
mark-item = { $position } : { $mark }
    .sms = { $position }: { $mark }
candy-name = { $candy ->
    [mint] petit bonbon à la menthe
   *[hard] petit bonbon dur
}
candy = { candy-name } ({ $size } mm)
none = rien

## De quoi parlait une réponse, pour l'équipe de la clinique

category = { $category ->
    [choking] étouffement
    [breathing] mal à respirer
    [colour] teint bleu ou pâle
    [collapse] perte de connaissance
    [allergy] réaction allergique
    [battery_or_magnet] pile ou aimant avalé
    [overdose] trop de quelque chose
    [self_harm] automutilation ou idées de mort
    [danger] quelqu'un en danger
    [choked] étouffement plus tôt
    [airway] signes respiratoires
    [stuck] quelque chose de coincé
    [swallowing] mal à avaler
    [vomiting] vomissements
    [after_choke] signes après un étouffement
    [neck] mal au cou ou fourmillements
    [hives] urticaire
    [wrong_object] autre objet avalé
    [forced] forcé d'avaler
    [unsafe] pratique sans sécurité
    [distress] détresse
    [refusal] refus
    [gag] haut-le-cœur
    [pressure] pression sur l'enfant
    [exhausted] famille épuisée
    [shame] honte
    [ill] enfant malade
    [medicine] question sur un médicament
   *[other] { $category }
}

## L'heure et le jour

clock = { $sharp ->
    [sharp] { $hour } h
   *[past] { $hour } h { $minute }
}
day = { $weekday ->
    [1] lundi
    [2] mardi
    [3] mercredi
    [4] jeudi
    [5] vendredi
    [6] samedi
   *[7] dimanche
} { $day ->
    [1] 1er
   *[other] { $day }
} { $month ->
    [1] janvier
    [2] février
    [3] mars
    [4] avril
    [5] mai
    [6] juin
    [7] juillet
    [8] août
    [9] septembre
    [10] octobre
    [11] novembre
   *[12] décembre
}

## Ce qui est dit quand un texte ne peut pas être montré

fallback = Nous n'avons pas pu montrer un message. Si quelqu'un est en danger, appelez tout de suite le numéro d'urgence. Sinon, appelez votre clinique.

## Boutons

button-agree = J'accepte
button-decline = Non merci
button-next = Suivant
button-down = C'est descendu
button-not-down = Pas descendu
button-later = Pas ce soir
button-skip = Sauter
button-no-best = Aucune
button-no-note = Pas de note
button-yes = Oui
button-no = Non
button-rate = { $rating }
button-position = { $position }

## Légendes des dessins

picture-mirror = Comme dans un miroir
picture-left-hand = main GAUCHE
picture-right-hand = main DROITE
picture-left-letter = G
picture-right-letter = D
picture-position = { $position-key ->
    [left] GAUCHE : tourne vers ta main gauche
    [right] DROITE : tourne vers ta main droite
    [up] HAUT : lève le menton, juste un peu
    [down] BAS : baisse le menton
   *[center] CENTRE : regarde droit devant
}
picture-order = Ce soir, de la première à la dernière
picture-posture = Le dos droit sur la chaise
picture-posture-back = dos droit
picture-posture-feet = pieds à plat
picture-posture-adult = un adulte est là
picture-tongue = Le bonbon, au fond de la langue
picture-tongue-here = ici
picture-tongue-not = pas ici
picture-sip = Une petite gorgée
picture-sip-good = une gorgée
picture-sip-much = trop
picture-throat = Ta gorge est large et souple
picture-throat-candy = petit bonbon

## Diplôme

certificate-title = Diplôme de pratique
certificate-for = Pour
certificate-body = { $nights ->
    [1] pour une soirée de pratique.
   *[other] pour { $nights } soirées de pratique.
}
certificate-praise = Tu étais là. Tu as essayé. Tu nous as tout raconté.

## La page d'épreuve

proof-title = Tous les textes et dessins, à approuver
proof-intro = Lisez comme une famille. Les noms, heures et chiffres sont des exemples. Là où l'âge change le texte, chaque âge est montré.
proof-signed = Lu et approuvé (nom, date, signature)
proof-pictures = Dessins
proof-audience = { $audience ->
    [parent] Ce qu'on dit aux parents
    [child] Ce qu'on dit aux enfants
   *[clinician] Ce qu'on dit à la clinique
}
proof-tone = { $tone ->
    [young] 5 à 7
    [middle] 8 à 12
    [teen] 13 et plus
   *[all] tous les âges
}
proof-chat = chat, { $length } caractères
proof-sms = SMS, { $length } caractères, { $segments ->
    [1] un segment
   *[other] { $segments } segments
}
