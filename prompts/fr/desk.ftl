# Ce que les soignants lisent au bureau.

## Partout

desk = bureau de coachbot
desk-word = bureau
skip = Aller au contenu
nav-label = Bureau
nav-alerts = Alertes
nav-children = Enfants
nav-enrol = Inscrire
nav-study = Étude
nav-clinic = Clinique
sign-out = Quitter
foot = coachbot ne donne pas de conseil médical. En cas d'urgence, on dit aux familles d'appeler le numéro d'urgence local.
banner-nobody = Personne n'est joignable.
banner-nobody-do = Une alerte n'atteindrait personne : aucun soignant actif de garde n'a de messagerie reliée. Surveillez cette page jusqu'à ce que ce soit réglé.
banner-clock = L'horloge est arrêtée.
banner-clock-do = Aucun message ne part et aucune alerte ne monte. Prévenez tout de suite la personne qui gère le service.
live-new = Il y a une nouvelle alerte.
live-show = Il y a du nouveau. L'afficher
go-home = Retour au début
go-child = Retour à l'enfant
none = aucun
none-chosen = aucune
more = Note, arrêt, fin
yes = Oui
no = Non
ago-minutes = { $count ->
    [0] à l'instant
    [one] il y a 1 minute
   *[other] il y a { $count } minutes
}
ago-hours = il y a { $count } heures
ago-days = il y a { $count } jours
in-minutes = { $count ->
    [0] maintenant
    [one] dans 1 minute
   *[other] dans { $count } minutes
}
in-hours = dans { $count } heures
in-days = dans { $count } jours
date-short = { $day } { $month ->
    [1] janv.
    [2] févr.
    [3] mars
    [4] avr.
    [5] mai
    [6] juin
    [7] juil.
    [8] août
    [9] sept.
    [10] oct.
    [11] nov.
   *[12] déc.
}
date-time = { $date }, { $time }
until = jusqu'au { $day }

## Ce qui n'a pas marché

wrong-title = Cela n'a pas marché
wrong-typed = Ce que vous avez écrit
wrong-no-case = Cet enfant n'est pas ici. La famille a peut-être été effacée.
wrong-store = La base de données est injoignable, rien n'a donc changé. Réessayez dans une minute ; si cela dure, prévenez la personne qui gère le service.
wrong-origin = Ce formulaire ne vient pas du bureau, rien n'a donc été fait. Rouvrez le bureau et utilisez son formulaire.
wrong-size = C'est trop pour un formulaire. Raccourcissez et renvoyez.
wrong-role = Votre rôle n'ouvre pas cette page. Demandez à la direction de la clinique si vous en avez besoin.
wrong-csrf = Ce formulaire est périmé, rien n'a donc été fait. Revenez, rechargez la page et renvoyez.
wrong-signed-out = Votre session est finie. Connectez-vous à nouveau.
words-needed = Écrivez quelques mots. Ils sont gardés avec votre nom.
words-long = Cela fait { $given } caractères ; { $most } est le maximum. Raccourcissez et renvoyez.
number-wrong = { $given } ne convient pas ici. Donnez un nombre entier de { $least } à { $most }.
time-wrong = { $given } n'est pas une heure. Donnez-en une comme 19:30.
date-wrong = { $given } n'est pas une date. Donnez-en une comme 2026-03-24.
date-past = { $given } n'est pas dans l'avenir. Choisissez un jour plus tard, ou laissez vide.
date-future = { $given } est encore à venir. Donnez le jour où la famille s'est exercée.
zone-wrong = { $given } n'est pas un fuseau horaire. Donnez-en un comme America/New_York.
choice-needed = Choisissez une des réponses.
confirm-needed = Confirmez ceci avant de continuer.
faults-some = { $count ->
    [one] Une chose est à corriger. Elle est marquée ci-dessous.
   *[other] { $count } choses sont à corriger. Elles sont marquées ci-dessous.
}

## Connexion

sign-in = Se connecter
name = Nom
password = Mot de passe
code = Code à usage unique
sign-in-help = Le code est dans votre application d'authentification. Si vous avez perdu le mot de passe ou l'application, la direction de la clinique peut vous en donner d'autres.
sign-in-wrong = Nom, mot de passe et code ne vont pas ensemble. Un code ne sert qu'une fois : attendez le suivant et réessayez.
sign-in-wait = Trop d'essais. Attendez 15 minutes, puis réessayez.

## États, niveaux, personnes

state-invited = invitation envoyée
state-lesson = leçon
state-practising = en exercice
state-paused = en pause
state-on_hold = suspendu
state-finished = terminé
state-followed_up = revu
state-withdrawn = clos
level-none = note
level-medicine = Médicament
level-concern = Inquiétude
level-urgent = Urgent
level-emergency = Urgence vitale
role-parent = parent
role-child = enfant
role-clock = l'horloge
role-channel = le canal
who-on_call = soignant de garde
who-backup = remplaçant
who-all = tout le monde
staff-clinician = soignant
staff-lead = direction
staff-researcher = recherche
duty-on_call = de garde
duty-backup = remplaçant
duty-none = pas de garde
channel-name = { $channel ->
    [telegram] Telegram
    [sms] SMS
    [rehearsal] téléphone de répétition
   *[other] { $channel }
}
ours-missed = soirs manqués de suite
ours-lesson = leçon pas finie
ours-unreachable = famille injoignable
ours-undelivered = un message de sécurité n'est pas arrivé
ours-stuck = le programme d'un enfant est bloqué ; son numéro :

## Alertes

alerts-title = Ce qui a besoin de vous
alerts-none = Rien n'est ouvert. Les nouvelles alertes apparaissent ici toutes seules.
alert-stranger = Quelqu'un d'aucune famille d'ici
alert-evidence = Ce qui a décidé :
alert-told = Prévenus :
alert-told-one = { $name } ({ $times ->
    [one] une fois
   *[other] { $times } fois
}, dernière { $when })
alert-told-nobody = personne encore
alert-next = Ensuite :
alert-around = La conversation autour
do-acknowledge = Je m'en occupe
do-call-back = Leur dire que nous appellerons
do-note = Garder la note
do-call = Garder : famille appelée
do-lift = Lever la suspension
do-end = Terminer le programme
do-read = Je l'ai lu
note-label = Note pour l'équipe
note-note = note
note-call = famille appelée
note-screening = questions confirmées
lift-label = Pourquoi l'exercice est-il de nouveau sûr ? Votre nom et cette note sont gardés.
end-label = Pourquoi le programme finit-il ? C'est définitif.
call-back-words = Nous avons lu votre message. Nous vous appellerons dès que possible. Si quelqu'un est en danger, appelez tout de suite le numéro d'urgence local.
unread-title = Messages à lire ({ $count })
unread-none = Rien n'attend d'être lu.
send-waiting = en attente
send-claimed = en cours d'envoi
send-sent = envoyé
send-delivered = remis
send-never = pas remis
send-gone = plus joignable
send-unknown = peut-être pas remis
send-expired = trop tard, pas envoyé
send-cancelled = repris

## Enfants

children-title = Enfants
children-none = Aucun enfant ne convient. Effacez la recherche ou choisissez un autre groupe.
children-count = { $count ->
    [one] Un enfant
   *[other] { $count } enfants
}
find = Chercher un nom
do-find = Chercher
sort = Trier par
sort-needs = besoin de vous
sort-name = nom
sort-nights = soirs d'exercice
sort-missed = soirs manqués
sort-evening = dernier soir
show-label = Groupes
show-all = Tous
show-needs = Besoin de vous
show-waiting = Pas commencé
show-practising = En exercice
show-on_hold = Suspendus
show-paused = En pause
show-finished = Terminés
show-ended = Clos
col-child = Enfant
col-state = État
col-night = Soir
col-weeks = Quatre dernières semaines
col-last = Dernier soir
col-favourite = Préférée jusqu'ici
col-missed = Manqués
col-waits = En attente
night-of = soir { $night } sur { $nights }
down-of = { $down } sur { $tried } avalés
clear = nette
working = en calcul
in-a-row = ({ $count } de suite)
alerts-count = { $count ->
    [one] 1 alerte
   *[other] { $count } alertes
}
unread-count = { $count } à lire
strip = { $done } soirs d'exercice sur { $evenings } dans les quatre dernières semaines
strip-key = Chaque signe est un soir : carré fait, demi-carré en partie, anneau manqué, trait ouvert ou pas envoyé. La note va de 1 (le plus dur) à 5 (le plus facile).
pages = Pages

## Un enfant : arriver au vrai médicament

target-title = Arriver au vrai médicament
target-none = Aucune taille n'est donnée.
target-set = Donner sa taille
target-change = Changer la taille
target-private = Pour les cliniciens seulement : la famille n'en est pas informée, et le rapport ne le montre pas.
target-form = { $child } : taille du vrai médicament
target-capsule = Gélule en deux pièces, par sa taille
target-measured = aucune : longueur et largeur ci-dessous
target-length = Longueur (plus grand côté), mm
target-width = Largeur, mm
target-steps = Tailles entre le bonbon et lui, si vous voulez : une par ligne, longueur x largeur en mm, la plus courte d'abord
target-steps-hint = Le bonbon d'exercice fait { $candy } mm à son plus grand côté. Exemple de ligne : 10 x 6
do-target = Garder la taille
do-target-remove = Retirer la taille
capsules-title = Gélules en deux pièces, fermées
capsule-name = Taille
capsule-size = Longueur × largeur
capsule-volume = Volume
capsules-source = D'après la table d'un fabricant ; les fabricants diffèrent de dixièmes de millimètre.
volume = { $ml } ml
size-both = { $length } × { $width } mm
size-longest = { $length } mm au plus long
rung-what = Quoi
rung-size = Longueur × largeur
rung-growth = Longueur, fois la précédente
rung-candy = Bonbon
rung-step = Étape { $number }
rung-target = Vrai médicament
rung-capsule = Gélule { $name }
rung-times = × { $factor }
rung-passed = pas plus long que le bonbon
target-drawing = Bonbon, tailles entre les deux et vrai médicament, à une même échelle
limit-over_largest = Plus de 22 mm, la plus grande dimension d'un comprimé ou d'une gélule dans le guide de la FDA de 2015. (Le guide admet les gélules par leur nom jusqu'à la taille 00, qui est plus longue.)
limit-no_larger = 17 mm ou plus : le guide de la FDA de 2015 veut qu'aucun générique ne soit plus grand. Le pharmacien sait s'il en existe un plus petit.
limit-over_largest_capsule = Au-dessus de la taille 00, la plus grande gélule dans le guide de la FDA de 2015.
limit-none = Sous les limites du guide de la FDA de 2015 (17 mm, 22 mm, gélule de taille 00).
target-caution = Ces limites valent pour des génériques ; elles ne disent pas ce qui est sûr pour un enfant. Le médicament, sa forme et sa taille, et s'il peut être ouvert, écrasé ou coupé, relèvent du prescripteur et du pharmacien. Qu'un bonbon soit avalé ne montre pas qu'un médicament le sera.
target-needed = Choisissez la taille d'une gélule, ou donnez longueur et largeur.
target-both = Choisissez la taille d'une gélule ou donnez longueur et largeur, pas les deux.
mm-wrong = « { $given } » ne convient pas ici. Donnez des millimètres de { $least } à { $most }, par exemple 12,5.
size-sides = La longueur est le plus grand côté, mais { $length } mm est moins que { $width } mm. Échangez-les s'ils ont été confondus.
steps-wrong = « { $given } » n'est pas une taille. Écrivez longueur x largeur en mm, par exemple 10 x 6, chaque taille sur sa ligne.
steps-order = Les longueurs doivent croître de ligne en ligne, toutes au-dessus de { $candy } mm (le bonbon) et aucune au-dessus de { $target } mm.
steps-many = { $given } tailles, c'est trop. Donnez-en { $most } au plus.

## Un enfant

born = naissance { $year }
bedtime-is = coucher { $time } ({ $zone })
case-number = dossier { $number }
nights-title = Soir après soir
nights-none = Pas encore de soir.
night = Soir
night-status = Déroulement
night-open = ouvert
night-finished = fini
night-partial = en partie
night-missed = manqué
night-unsent = message pas envoyé
night-short-open = …
night-short-finished = ✓
night-short-partial = ½
night-short-missed = ○
night-short-unsent = –
mark-none = pas de note
mark-not_down = pas avalé
mark-skipped = sautée
best = la meilleure du soir
grid-key = De 1 le plus dur à 5 le plus facile. × pas avalé, – sautée, ★ nommée meilleure ce soir-là. ✓ fini, ½ en partie, ○ manqué.
adherence = { $evenings } soirs : { $finished } finis, { $partial } en partie, { $missed } manqués{ $unsent ->
    [0] .
   *[other] , { $unsent } pas envoyés par nous.
}
notes-title = Ce que la famille a noté
favourite-title = Quelle position
favourite-none = Encore rien sur quoi se fonder.
favourite-clear = { $position } est la préférée : { $percent } % de chances d'être la meilleure de celles essayées.
favourite-unclear = Pas encore net. { $position } est en tête avec { $percent } %.
favourite-more = Environ { $nights } soirs de plus peuvent trancher.
favourite-first-last = Préférée le premier soir : { $first } ; le dernier : { $last }.
favourite-caution = Descriptif seulement : les notes d'un seul enfant, des soirs qui dépendent les uns des autres. Cela ne prédit pas comment ira un vrai médicament. Choisissez avec l'enfant et la famille.
ready-yes = Avec la préférée, le bonbon est descendu chacun des trois derniers soirs d'exercice.
ready-no = Avec la préférée, le bonbon n'est pas descendu chacun des trois derniers soirs d'exercice.
ready-unknown = Trop peu de soirs pour dire si l'enfant est prêt.
shares-title = Chances de chaque position d'être la meilleure
course-title = { $position } : notes soir après soir
not-down-short = non
chosen-is = Choisie au suivi : { $position }
talk-title = La conversation
talk-none = Rien n'a encore été écrit.
talk-coach = coach à { $to }
talk-button = par bouton
changes-title = Ce qui a changé, et par qui
change-state = de { $old } à { $new }
change-candy = le bonbon est maintenant : { $new }
change-bedtime = coucher de { $old } à { $new }
change-zone = fuseau horaire de { $old } à { $new }
change-chosen = position pour le vrai médicament : { $new }
change-target = la taille du vrai médicament est maintenant { $size }
change-target-none = la taille du vrai médicament est retirée
did-Told = message à la famille
did-NightEntered = soir saisi depuis le papier
did-Acknowledged = a pris une alerte en charge
did-Joined = a rejoint
did-ClinicianWrote = note par messagerie
did-ClinicianPressed = bouton dans la messagerie
did-Held = exercice suspendu
did-HoldLifted = suspension levée
did-Ended = programme terminé
did-Paused = exercice en pause
did-Resumed = exercice repris
did-BedtimeSet = coucher changé
did-CandySet = bonbon changé
did-TargetSet = taille du vrai médicament, ou étapes vers elle
did-FollowedUp = suivi fait
did-Erased = effacement demandé
access-title = Qui a regardé ce dossier ({ $count })
deeds-title = Ce que vous pouvez faire
do-resume = Reprendre l'exercice
follow-up-label = Position choisie avec l'enfant
note-optional = Note (facultative)
do-follow-up = Garder le choix
tell-label = Message à la famille, avec vos mots
do-tell = Envoyer
practice-title = Pause, suspension, coucher, bonbon
pause-until = Pause jusqu'au (vide : jusqu'à la reprise)
do-pause = Mettre en pause
hold-label = Pourquoi l'exercice est-il suspendu ?
do-hold = Suspendre
bedtime = Coucher
zone = Fuseau horaire
do-bedtime = Changer le coucher
candy-kind = Bonbon
candy-mint = petite menthe
candy-hard = petit bonbon dur
candy-size = Plus long côté, mm
do-candy = Changer le bonbon
papers-title = Sur papier
report-pdf = Rapport de suivi (PDF)
report-png = Rapport de suivi (image)
certificate = Diplôme pour l'enfant
sheets = Feuilles de notes à imprimer
enter-sheet = Saisir une feuille remplie
family-title = Les messageries de la famille
contact-left = mauvais numéro, on n'y écrit plus
contact-lost = injoignable
contacts-none = Aucune messagerie n'est encore reliée.
consent-given = Accord donné le { $when }
consent-none = Pas encore d'accord
invite-parent = Inviter un parent
invite-child = Inviter l'enfant
record-title = Dossier : emporter, terminer, effacer
kept = Tout ce qui est gardé (JSON)
fhir = Lot FHIR R4 (JSON)
erase-label = Effacer cette famille pour toujours. Tapez le numéro de dossier { $number } pour confirmer.
do-erase = Effacer
erase-sure = Rien n'a été effacé. Tapez { $number } pour confirmer.
erased-none = Aucune famille du dossier { $number } n'a été effacée.
erased-title = Le dossier { $number } est effacé
erased-opened = Ouvert
erased-at = Effacé
erased-events = Événements effacés
erased-nights = Soirs effacés
erased-received = Messages reçus, effacés
erased-sent = Messages envoyés, effacés
erased-backups = Les sauvegardes faites avant peuvent le contenir jusqu'au { $day } ; ensuite elles sont effacées aussi.
erased-stays = Ce qui reste : ces comptes, et qui a regardé le dossier et quand ({ $count } inscriptions, sans nom d'enfant).
done-acknowledge = Vous vous en occupez. L'alerte ne monte plus.
done-lift = La suspension est levée et la famille le sait.
done-hold = L'exercice est suspendu et la famille le sait.
done-end = Le programme est terminé et la famille le sait.
done-pause = L'exercice est en pause et la famille le sait.
done-resume = L'exercice continue et la famille le sait.
done-bedtime = Le coucher a changé et la famille le sait.
done-candy = Le bonbon a changé et la famille le sait.
done-tell = Votre message est en route.
done-call-back = La famille sait que vous appellerez.
done-follow-up = Le choix est gardé.
done-target = Enregistré. La famille n'en est pas informée.
done-note = La note est gardée.
done-call = L'appel est gardé.
done-night = Le soir est saisi.
done-password = Votre mot de passe est changé. Vos autres sessions sont finies.
done-clinic = Enregistré. Cela vaut pour les familles inscrites à partir de maintenant.
done-people = Enregistré.

## Inscription

enrol-title = Inscrire une famille
enrol-child = L'enfant
child-called = Nom par lequel on l'appelle
child-name = Donnez un nom de 1 à 40 caractères.
child-born = Naissance
born-hint = La date sert à vérifier l'âge. Seule l'année est gardée.
enrol-screening = Questions préalables
ask-swallowing = Y a-t-il un trouble de la déglutition connu, ou des fausses routes par le passé ?
ask-ill = L'enfant est-il trop malade, ou trop somnolent, pour s'exercer ?
ask-allergy = Y a-t-il une allergie à un composant du bonbon ?
ask-neck = Le cou
neck-sound = Aucun problème connu
neck-cleared = Un problème, mais un spécialiste permet toutes les positions choisies
neck-unstable = Instable, ou pas encore examiné
confirm-asked = J'ai posé moi-même ces questions à la famille.
confirm-adult = Un adulte sera là chaque soir, et l'enfant sera assis bien droit.
confirm-never-forced = La famille le sait : ne jamais forcer un enfant, et arrêter à la moindre détresse.
confirm-young = L'enfant a moins de 5 ans : j'ai pesé avec la famille le risque d'étouffement avec un bonbon dur.
confirm-neck = L'avis d'un spécialiste sur le cou est dans le dossier de l'enfant.
confirm-hint = Gardé avec l'heure et votre nom, { $name }. Les réponses elles-mêmes ne sont pas gardées.
stops-title = Cet enfant ne peut pas être inscrit maintenant
stop-too_young = Moins de 4 ans : on ne donne pas de bonbon dur à un enfant si jeune (AAP, Pediatrics 2010;125:601).
stop-not_born = La date de naissance est dans l'avenir.
stop-swallowing = Trouble de la déglutition ou fausses routes : l'exercice relève d'un spécialiste.
stop-ill = Trop malade ou somnolent : attendez que l'enfant aille bien.
stop-allergy = Allergie au bonbon : choisissez un autre bonbon et répondez à nouveau.
stop-neck = Cou instable : aucune position qui tourne ou incline la tête sans l'avis d'un spécialiste.
stops-do = Rien n'a été gardé. Si une réponse était fausse, corrigez-la ci-dessous ; sinon, arrêtez ici.
enrol-practice = Exercice
positions = Positions, selon la gauche et la droite de l'enfant
positions-few = Choisissez au moins deux positions.
nights = Soirs
bedtime-hours = Le coucher doit être entre { $earliest } et { $latest }, les heures de la clinique.
language = Langue
candy-first = Bonbon dès le premier soir
candy-later = Ensuite (facultatif)
candy-from = À partir du soir
candy-order = Les bonbons se suivent : donnez un soir plus tard.
enrol-chats = Qui reçoit les messages
chats-first = Un parent reçoit tous les messages. Il choisit le canal par la façon d'ouvrir l'invitation.
chats-second = Un deuxième parent aussi
chats-own = L'enfant sur son propre téléphone
do-enrol = Vérifier et inscrire
invitation-title = { $child } : invitation
invitation-once = Affiché une demi-heure seulement. Chaque code relie une messagerie, sert une fois et vaut { $days } jours.
invitation-gone = Ces codes ne sont plus affichés. Faites-en d'autres à la page de l'enfant ; ceux déjà donnés restent bons.
invite-for = Pour : { $role }
qr = Code QR du lien
copy = Copier le lien
copied = Copié
code-how = Demandez à la famille d'envoyer ce code comme premier message.
card = Carte à imprimer (PDF)
enrol-next = Inscrire une autre famille

## Papier

entry-title = { $child } : saisir une feuille remplie
entry-turn = Ordre { $turn }, comme imprimé sur la feuille.
entry-day = Jour de l'exercice
entry-best = La meilleure ce soir-là
entry-none = Tous les soirs sont utilisés. On ne peut plus en saisir.
mark-wrong = { $given } n'est pas une note. Choisissez 1 à 5, pas avalé, ou sautée.
marks-needed = Donnez au moins une note.
do-enter = Enregistrer le soir

## Étude

study-title = Fichiers de l'étude
study-what = Tables désidentifiées avec un dictionnaire des données, sur { $count } enfants : numéros de soir au lieu de dates, sans noms, sans texte libre, sans petites cellules.
study-refused = Les fichiers sont retenus, car ils pourraient dire qui est quelqu'un : { $why }.
study-files = Prendre les fichiers (ZIP)
study-caution = Chaque consultation de ces chiffres et chaque prise des fichiers est notée. Les notes des enfants sont descriptives ; il n'y a pas de groupe témoin.

## Étude : tous les enfants ensemble

cohort-title = Tous les enfants ensemble
cohort-none = Aucun enfant n'a encore eu un soir ; il n'y a rien à montrer.
cohort-few = Moins de { $least } enfants ont eu un soir. Tout chiffre pourrait parler de l'un d'eux ; aucun n'est montré.
cohort-who = { $count } enfants dont le premier soir est passé, qu'ils s'exercent encore ou aient fini. Ce soir n'est pas compté, ni les familles effacées ou arrêtées avant leur premier soir.
cohort-small = Les petits groupes sont cachés ici comme dans les fichiers. Un nombre de 1 à { $most } enfants est montré comme une limite, de même que tous sauf 1 à { $most } ; si un nombre caché pouvait se déduire des autres, un autre est caché par …. Rien n'est testé ni moyenné sur moins de { $least } enfants. Aucun est montré par 0.
cohort-adherence = Exercés, par soir (% des familles)
cohort-staying = Toujours là, par soir (% des familles, Kaplan-Meier)
cohort-adherence-key = Exercés : parmi les familles qui ont eu ce soir et reçu notre message, celles qui se sont exercées ; point et intervalle à 95 % (Wilson), ou seulement un intervalle là où un petit groupe est caché.
cohort-staying-key = Toujours là : familles qui n'ont pas arrêté d'elles-mêmes, avec la bande à 95 % ; elle ne descend que là où { $least } ou plus ont arrêté depuis la descente précédente.
stopped-none = Aucune famille n'a arrêté avant la fin.
stopped = Arrêtées avant la fin : { $count } familles sur { $total }.
staying-few = Elles sont moins de { $least } ; il n'y a donc pas de courbe.
numbers-show = Montrer les nombres
col-practised = Exercées
col-share = Part
col-range = Intervalle à 95 %
col-after = Après le soir
col-position = Position
col-down = Avalé
col-place = Place dans le soir
col-children = Enfants
col-effect = Note par rapport à la moyenne du soir
not-told = caché
of-total = { $count } sur { $total }
range = { $low } à { $high } %
effect-range = { $low } à { $high }
number = { $value }
moved-title = Préférées, de la première (lignes) à la dernière (colonnes), en enfants
moved-corner = Première \ dernière
off-centre = Dernière préférée autre que { $position } : { $percent } % de { $total } enfants qui ont une préférée (intervalle à 95 % : { $low } à { $high } %, Wilson).
off-centre-few = Trop peu d'enfants ont une préférée pour dire combien finissent avec une autre que le centre.
down-title = Le dernier bonbon essayé a-t-il été avalé ?
differs = Q de Cochran sur les { $children } enfants qui ont essayé toutes les positions : { $statistic } à { $degrees } degrés de liberté, p { $edge ->
    [small] < 0,001
   *[plain] = { $p }
}.
differs-level = Sur les { $children } enfants qui ont essayé toutes les positions, aucune différence ne se voit : chaque enfant a avalé tous ses bonbons, ou aucun.
differs-few = Moins de { $least } enfants ont essayé toutes les positions, ou ont différé entre elles ; aucune différence n'est testée.
places-title = La place dans le soir compte-t-elle ?
places-few = Moins de { $least } enfants ont noté chaque place ; on ne peut rien dire.
places-key = De combien un bonbon est noté plus haut (ou, avec un moins, plus bas) à sa place que la moyenne du soir. Pas avalé compte 0. Moyenne d'abord pour chaque enfant ; intervalle : t de Student entre enfants.
cohort-caution = Descriptif seulement. Les enfants d'une clinique ne sont pas un échantillon au hasard, ceux qui continuent diffèrent de ceux qui arrêtent, et il n'y a pas de groupe témoin.

## Clinique

clinic-title = Réglages de la clinique
texts = Ce qu'on dit aux familles
texts-hint = Chaque texte tel qu'il est envoyé, avec un enfant inventé. Pour d'autres mots, mettez-les dans le dossier que nomme le réglage COACHBOT_TEXTS.
texts-parent = Aux parents
texts-child = Aux enfants
texts-clinician = Aux soignants, par messagerie
log-title = Journal des accès
log-hint = Les inscriptions les plus récentes. On peut en ajouter, jamais les changer.
set-general = La clinique
set-emergency = Numéro d'urgence local
set-practice = Exercice
set-nights = Soirs d'exercice
set-max_nights = Soirs au plus
set-earliest = Messages dès
set-latest = Messages jusqu'à
set-late_limit = Un message en retard part encore, minutes
set-reminder_after = Rappel après, minutes
set-close_after = Le soir se ferme après, minutes
set-missed_limit = Manqués de suite qui donnent une alerte
set-watch_days = Jours de questions après un étouffement
set-ladder = Échelle des alertes vitales et urgentes
set-calm_ladder = Échelle des autres alertes
set-after = Minutes après l'alerte
set-who = Prévenir
do-set = Enregistrer
set-hint = Les familles déjà inscrites gardent ce qu'elles ont. Le dernier échelon se répète jusqu'à ce que quelqu'un prenne l'alerte en charge.
protocol-wrong = Cela ne peut pas être : { $why }.
people-title = Personnes
people-add = Ajouter une personne
role = Rôle
duty = Garde
account = Compte
account-open = ouvert
account-closed = fermé
channel = Canal
address = Identifiant ou numéro sur ce canal
reach-none = pas de messagerie
reach-wrong = Donnez un canal disponible et une adresse sur ce canal : un téléphone avec l'indicatif du pays, ou le numéro d'une conversation.
do-save = Enregistrer
do-renew = Nouveau mot de passe et code
do-add = Ajouter
account-name = Donnez un nom de 1 à 80 caractères.
account-taken = Il y a déjà un compte de ce nom. Choisissez-en un autre.
account-none = Il n'y a pas de tel compte.
account-own = Vous ne pouvez pas fermer votre propre compte.
account-once = Affiché cette seule fois. Remettez-le en personne ; le code est pour une application d'authentification.
code-secret = Pour l'application d'authentification
qr-code = Code QR pour l'application d'authentification
password-change = Changer le mot de passe
password-hint = { $least } caractères ou plus, de toute sorte. Le mieux : quelques mots dont vous vous souvenez.
password-old = Mot de passe actuel
password-new = Nouveau mot de passe
password-again = Nouveau mot de passe encore une fois
password-differs = Les deux nouveaux mots de passe diffèrent. Tapez deux fois le même.
password-wrong = Le mot de passe actuel est un autre. Réessayez.
password-weak = Prenez { $least } caractères ou plus, pas votre nom, ni quelques signes répétés.
password-common = C'est l'un des premiers que quelqu'un essaierait. Prenez quelques mots sans lien entre eux.

## État du service

status = État du service
status-clock = Horloge
status-reach = Quelqu'un à alerter
status-beats = Processus
status-outbox = En attente d'envoi
status-since = le plus ancien { $when }
status-fine = marche
status-beat = dernier battement { $when }
status-channels = Canaux
status-up = en ligne { $when }
status-never = jamais en ligne
status-down = Des messages n'entrent peut-être pas.
status-alerts = Alertes que personne n'a prises en charge
status-undelivered = Alertes qui n'ont atteint aucun soignant
status-unreachable = Familles injoignables
status-urgency = Quoi
status-count = Combien
status-oldest = Le plus ancien, écrit
urgency-safety = sécurité
urgency-alert = alertes
urgency-reply = réponses
urgency-prompt = messages du soir
urgency-news = nouvelles
