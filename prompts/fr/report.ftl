# Les papiers que l'on tient en main : compte rendu, feuilles de notes, carte d'invitation.
# $child est le nom par lequel on appelle l'enfant.

## Commun à tous les papiers

date = { $day ->
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
} { $year }
child = cet enfant
name-line = Nom :
left-right = Gauche et droite telles que { $child } les voit. Les têtes sont dessinées comme dans un miroir.

## Compte rendu : l'en-tête

report-kind = Compte rendu de suivi
report-title = Ce que { $child } a découvert
report-period = du { $first } au { $last }
report-practised = { $practised } soirs de pratique sur { $planned }
report-held = La pratique est suspendue. Personne ne doit essayer d'avaler avant l'accord de la clinique.

## Compte rendu : la réponse

answer-clear = Sans doute la meilleure : { $favourite }
answer-unclear = Pas encore clair
answer-none = Pas encore de notes
answer-clear-why = Si 100 enfants nous disaient la même chose que { $child }, la meilleure serait { $favourite } pour { $chance }.
answer-unclear-why = { $favourite } est un peu devant : { $chance } sur 100.
answer-level = Aucune position n'est devant les autres.
answer-more = { $more ->
    [one] Un soir de plus devrait suffire à le savoir.
   *[other] Environ { $more } soirs de plus devraient suffire à le savoir.
}
answer-no-more = Plus de soirs n'y changeraient sans doute rien. Des positions sont peut-être aussi bonnes l'une que l'autre.
answer-none-why = Rien ne permet encore de le dire. Il faut d'abord les notes de quelques soirs.
chance = { $edge ->
    [most] plus de 99
    [least] moins de 1
   *[between] environ { $percent }
}
bars = Chances d'être la meilleure, sur 100
bar = { $edge ->
    [most] > 99
    [least] < 1
   *[between] { $percent }
}

## Compte rendu : la préférée du premier et du dernier soir

first = Premier soir
last = Dernier soir
favourites = Préférée

## Compte rendu : tous les soirs

grid = Chaque soir
grid-night = Soir
key-rating = 1 à 5 : la note, 5 est le plus facile
key-best = cercle : la meilleure du soir
key-not-down = { $sign } pas descendu
key-skipped = { $sign } sautée
key-finished = { $sign } tout est fait
key-partial = { $sign } fait en partie
key-missed = { $sign } pas de pratique
key-unsent = { $sign } notre message est arrivé trop tard ou pas du tout
key-open = { $sign } pas encore fini
grid-none = Pas encore de soirs.
grid-candy = Bonbon : { $candies }.
candy-later = dès le soir { $night }, { $candy }

## Compte rendu : chaque position

courses = Chaque position, soir après soir
courses-key = Les points sont des notes, ✕ pas descendu.
courses-ahead = ★ est devant à la fin.
courses-line = La ligne montre où vont les notes. Plus la bande grise est large, moins c'est sûr.
numbers = Pour la clinique : test de Friedman sur { $nights } soirs complets, W = { $agreement }, p { $edge ->
    [small] < 0,001
   *[plain] = { $p }
}.
numbers-level = Pour la clinique : aucune différence entre positions ne se voit sur { $nights } soirs complets.
numbers-few = Pour la clinique : trop peu de soirs complets pour comparer les positions.
numbers-trend = Test de Page que les notes montent, p { $edge ->
    [small] < 0,001
   *[plain] = { $p }
}.
numbers-caution = Les soirs d'un même enfant se suivent : ces chiffres ne font que décrire.
course-alt = { $position }, soir après soir
course-point = soir { $night } : { $mark }
down = descendu { $down } sur { $tries }
down-none = pas essayée

## Compte rendu : ce qu'il faut aussi savoir

ready = Prêt pour la suite ?
ready-answer = Aux derniers soirs de pratique, { $position } : descendu { $down } fois sur { $tries }.
ready-none = Pas de préférée, on ne peut pas encore le dire.
ready-yes = Oui, trois fois sur trois.
ready-unclear = On ne sait pas encore quelle position est la meilleure ; il faut d'abord s'exercer encore.
ready-held = Pas tant que la pratique est suspendue.
ready-not-yet = Pas les trois dernières fois. S'exercer encore peut aider.
adherence = Les soirs
adherence-done = { $practised } soirs de pratique sur { $planned }, en { $evenings ->
    [one] un jour
   *[other] { $evenings } jours
}.
adherence-partial = { $count ->
    [one] Dont un
   *[other] Dont { $count }
} en partie.
adherence-missed = { $count ->
    [one] Un jour
   *[other] { $count } jours
} sans pratique.
adherence-unsent = { $count ->
    [one] Un jour
   *[other] { $count } jours
} sans notre message. C'était notre faute.
stops = Étouffement ou mal à respirer
stops-more = Et encore { $count }. La clinique peut les montrer.
stops-none = On ne nous a rien signalé.
stop-seen = { $date } : { $category }. La clinique s'en est occupée.
stop-open = { $date } : { $category }. La clinique ne s'en est PAS ENCORE occupée.
notes = Ce que vous avez écrit
notes-none = Rien d'écrit.
note-night = Soir { $night } :
note-position = Soir { $night }, { $position } :
notes-more = Et encore { $count }. La clinique peut les montrer.

## Compte rendu : le choix et les précautions

choice = Nous choisissons ensemble
choice-other = pas encore
choice-date = Date :
cautions = À garder en tête
caution-description = Cette page dit ce qu'un seul enfant a fait et ressenti. Ce n'est pas un test. Aucune étude contrôlée n'a montré qu'elle dise comment ira un vrai médicament.
caution-medicine = Le vrai médicament est l'affaire du prescripteur et du pharmacien : lequel, sous quelle forme, de quelle taille, comment le prendre. Ne pas l'écraser, le couper ni le changer sans leur demander.
caution-up = { $position } veut dire le menton à peine levé, jamais la tête loin en arrière. Les voies respiratoires sont alors moins protégées. Parlez-en avant de la choisir.
caution-adult = À chaque fois : le dos bien droit, un adulte tout près, jamais de force. Étouffement : appeler le { $emergency }.
caution-desk = Les autres messages et alertes ne sont pas sur cette page. La clinique les a.

## Feuilles de notes

sheet-kind = Feuilles de notes
sheet-title = { $child } : soirs de pratique
sheet-how = Un bonbon par position, dans cet ordre, avec une petite gorgée d'eau. La tête en place, le bonbon au fond de la langue, puis on avale. Après chacun, entourez comment c'était : 1 difficile, 5 facile.
sheet-missed = Un soir sans pratique ? Ce n'est pas grave. Continuez au cadre suivant.
sheet-trouble = Arrêtez et appelez votre clinique en cas d'étouffement, de toux qui dure, de douleur ou de larmes. En cas d'urgence, appelez le { $emergency }.
sheet-bring = Remettez les feuilles à votre clinique.
sheet-night = Soir { $night } sur { $nights }
sheet-date = Date :
sheet-candy = Un { $candy } à chaque fois
sheet-hard = difficile
sheet-easy = facile
sheet-down = pas descendu
sheet-skip = sautée
sheet-best = La meilleure ce soir :
sheet-best-none = aucune
sheet-note = Note :
sheet-safety = Un adulte reste tout près. Le dos bien droit. Ne jamais forcer. Étouffement : appeler le { $emergency }.

## Carte d'invitation

card-kind = Invitation
card-parent = Pour le parent de { $child }
card-child = Pour { $child }
card-parent-why = { $child } va apprendre à avaler des comprimés, avec de petits bonbons et sans médicament : cinq minutes environ chaque soir, pendant { $nights } soirs. Chaque soir, on vous écrit et on vous dit quoi faire.
card-child-why = Ta gorge peut apprendre à avaler des comprimés. Chaque soir, tu essaies de petits bonbons, cinq minutes, { $nights } soirs. On t'écrit et on te dit quoi faire.
card-scan = Viser le carré avec le téléphone, ou ouvrir :
card-scan-text = Viser le carré avec le téléphone, ou envoyer un SMS au :
card-send = Si un code est demandé, envoyer :
card-parent-start = Lisez ce que vous acceptez et dites oui. Le premier soir, il y a une courte leçon.
card-child-start = Va chercher un adulte. Il reste avec toi chaque soir. Et on commence !
card-square = Carré à scanner qui ouvre { $link }
card-expires = Le code sert une fois, jusqu'au { $date }.
card-lost = Trop vieille ou perdue ? La clinique en donne une autre.
card-private = Carte à bien garder : qui a le code peut entrer.
card-emergency = Ceci n'est pas une ligne d'urgence. En cas d'urgence, appeler le { $emergency }.
