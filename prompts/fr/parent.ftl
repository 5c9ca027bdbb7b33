# Ce qu'on dit aux parents. Vouvoiement, mots simples. On félicite la pratique, jamais le résultat.

## L'entrée

stranger-hello = Bonjour ! Ici, on aide à la pratique des familles d'une clinique. Pour entrer, ouvrez le lien ou envoyez le code que votre clinique vous a donné. Ceci n'est pas une ligne d'urgence.
which-child = Ce numéro sert pour plus d'un enfant. De qui parlez-vous ? Envoyez juste le nom : { $names }
code-unknown = Ce code, on ne le connaît pas. Vérifiez chaque lettre et envoyez-le encore une fois, ou demandez-en un autre à votre clinique.
code-used = Ce code a déjà servi. Demandez-en un autre à votre clinique.
code-expired = Ce code n'est plus bon. Demandez-en un autre à votre clinique.
code-wait = Cela fait beaucoup d'essais. Attendez une heure, puis envoyez le code que votre clinique vous a donné.
consent-ask =
    Bonjour ! Avant de commencer, voici ce que vous acceptez.

    Ce qu'on fait : chaque soir, on envoie à { $child } une courte pratique avec de petits bonbons. Vous nous dites comment c'était.

    Ce qu'on garde : un prénom, une année de naissance, vos réponses et vos messages. L'équipe de votre clinique les lit, et personne d'autre.

    Votre choix : écrivez PAUSE, STOP ou EFFACER quand vous voulez. Vous pouvez demander à votre clinique de voir tout ce qu'on garde.

    Pour la sécurité : un bonbon peut étouffer un enfant. Un adulte est toujours là, tout près. { $child } a le dos bien droit et 4 ans ou plus. On ne force jamais.

    Ceci n'est pas une ligne d'urgence. En cas d'urgence, appelez le { $emergency }.

    Acceptez-vous ?
    .sms =
    Bonjour ! À lire avant. Chaque soir, on envoie à { $child } une courte pratique avec de petits bonbons. Vous nous dites comment c'était.
    On garde un prénom, une année de naissance, vos réponses et messages. Seule votre clinique les lit. Écrivez PAUSE, STOP ou EFFACER quand vous voulez. Demandez à votre clinique de voir ce qu'on garde.
    Un bonbon peut étouffer. Un adulte est toujours là. { $child } a le dos bien droit et 4 ans ou plus. On ne force jamais.
    Ceci n'est pas une ligne d'urgence. En cas d'urgence, appelez le { $emergency }.
    Acceptez-vous ? Répondez OUI ou NON.
consent-needed = On doit d'abord savoir si vous acceptez. Touchez un bouton, s'il vous plaît.
    .sms = On doit d'abord savoir si vous acceptez. Répondez OUI ou NON.
consent-declined = C'est noté. On ne vous écrira plus. Votre clinique saura que vous avez dit non. Merci pour votre temps.
welcome = Merci ! Le premier soir, à { $bedtime }, il y a une leçon d'une demi-heure. Puis viennent { $nights } soirs de pratique, de cinq minutes environ. Gardez de l'eau et les petits bonbons sous la main. Écrivez INFO quand vous voulez.
welcome-also = Bonjour ! Vous recevrez la pratique de chaque soir à { $bedtime }, comme le reste de la famille. Ceci n'est pas une ligne d'urgence. En cas d'urgence, appelez le { $emergency }.

## La leçon

lesson-intro = Ce soir, c'est la leçon. Elle dure une demi-heure. Prenez place avec { $child }, un verre d'eau et un petit bonbon. Allez pas à pas, à votre rythme.
lesson-again = Voici la leçon. Allez pas à pas, à votre rythme.
lesson-throat =
    L'idée : la gorge est souple et large. Elle s'ouvre à chaque bouchée, et une bouchée est bien plus grosse qu'un comprimé.

    Faites l'essai tous les deux. Posez une main sur le devant du cou et avalez. Vous la sentez monter ? C'est la gorge qui s'ouvre. Pensez à votre dernière bouchée de pain. Elle est descendue, et vous n'avez rien vu passer.

    Touchez Suivant quand vous l'avez senti tous les deux.
    .sms =
    L'idée : la gorge est souple et large. Elle s'ouvre à chaque bouchée, et une bouchée est bien plus grosse qu'un comprimé.
    Un essai : la main sur le devant du cou, puis avaler. Vous la sentez monter ? C'est la gorge qui s'ouvre.
    Répondez SUIVANT quand vous l'avez senti.
lesson-posture = Et maintenant, la chaise. { $child } a le dos bien droit, sur une chaise ferme, les deux pieds à plat. Pas dans le canapé, pas au lit. Vous êtes tout près, face à face. On avale mieux en ligne droite.
    .sms = La chaise : ferme, le dos droit, les pieds à plat. Pas dans le canapé. Vous êtes tout près, face à face. Répondez SUIVANT.
lesson-water =
    Juste de l'eau. { $position-key ->
        [left] { $child } tourne la tête à gauche, comme pour voir sa main gauche. Tout en douceur.
        [right] { $child } tourne la tête à droite, comme pour voir sa main droite. Tout en douceur.
        [up] { $child } lève le menton juste un peu, comme pour voir le haut d'une porte. Très peu, jamais loin en arrière.
        [down] { $child } baisse le menton vers la poitrine, comme pour voir un bouton de chemise.
       *[center] { $child } regarde droit devant.
    } Sans bouger la tête, une petite gorgée, et on avale. Si le cou fait mal, sautez celle-ci et dites-le-nous.
    .sms =
    Juste de l'eau. { $position-key ->
        [left] La tête tourne doucement vers la main gauche.
        [right] La tête tourne doucement vers la main droite.
        [up] Le menton monte juste un peu, jamais loin en arrière.
        [down] Le menton descend vers la poitrine.
       *[center] La tête droit devant.
    } Une petite gorgée, et on avale. Si le cou fait mal, sautez-la et dites-le. Répondez SUIVANT.
lesson-tongue = Où va le bonbon ? Au fond de la langue, au milieu, là où ça ne gêne pas. À l'avant, il flotte quand l'eau arrive. { $child } peut d'abord montrer l'endroit avec un doigt propre.
    .sms = Le bonbon va au fond de la langue, au milieu, là où ça ne gêne pas. À l'avant, il flotte. { $child } peut montrer l'endroit. Répondez SUIVANT.
lesson-sip = Combien d'eau ? Une petite gorgée, pas plus. Avec trop d'eau, le bonbon nage. Avec trop peu, il colle. On prend la gorgée, on ferme la bouche, et on avale tout d'un coup.
    .sms = Combien d'eau ? Une petite gorgée. Avec trop, le bonbon nage. Avec trop peu, il colle. Tout d'un coup. Répondez SUIVANT.
lesson-candy = Voici le tour d'un { candy }. Le dos droit, la tête droit devant. Le bonbon au fond de la langue, une petite gorgée, et on avale. { $child } peut dire non, et c'est bien. C'est descendu ?
    .sms = Voici le tour d'un { candy }. Le dos droit, la tête droit devant. Le bonbon au fond, une petite gorgée, on avale. On peut dire non. C'est descendu ? Répondez OUI, NON ou SAUTER.
lesson-unclear = Merci pour votre message. On le garde pour votre clinique. Pour la suite, touchez un bouton de la dernière étape.
    .sms = Merci, on le garde pour votre clinique. Répondez SUIVANT pour la suite. Après le bonbon, répondez OUI, NON ou SAUTER.
lesson-went-down = C'est descendu ! { $child } sait ce que ça fait. Merci à vous deux pour ce moment.
lesson-not-down = Ce n'est pas descendu, et c'est bien comme ça. C'était le premier essai. { $child } a fait la leçon, et c'est ce qui compte ce soir.
lesson-later = Pas de bonbon ce soir, et c'est bien comme ça. { $child } a fait la leçon, et c'est ce qui compte.
lesson-done = C'était la leçon. Le prochain message arrive à { $bedtime }. Il y a { $nights } soirs de pratique en tout. Écrivez LEÇON pour la revoir.

## Le soir

night-prompt =
    Soir { $night } sur { $nights } pour { $child }. L'ordre de ce soir :
    { $order }
    Un { candy } à chaque fois, avec une petite gorgée d'eau.
    .sms = Soir { $night } sur { $nights }: { $order }. Un { candy } à chaque fois.
night-howto-1 = Le dos droit. La tête en place, le bonbon au fond de la langue, une petite gorgée, et tout d'un coup.
    .sms = Dos droit, bonbon au fond, petite gorgée.
night-howto-2 = D'abord le dos droit, puis la tête en place. Le bonbon au fond de la langue. Une petite gorgée, et tout d'un coup.
    .sms = Dos droit, bonbon au fond, petite gorgée.
night-howto-3 = Les pieds à plat, le dos droit, la tête en place. Le bonbon va au fond de la langue. Une petite gorgée, et hop, d'un coup.
    .sms = Dos droit, bonbon au fond, petite gorgée.
night-safety = Restez tout près. Ne forcez jamais. Si { $child } s'étouffe, appelez le { $emergency } et faites vos gestes de premiers secours.
    .sms = Restez près, ne forcez jamais. Étouffement: { $emergency }.
night-late = Notre dernier message n'est pas arrivé à temps. C'est notre faute, et rien n'est perdu.
    .sms = Le dernier message est arrivé trop tard, pardon. Rien n'est perdu.
night-reminder = Un petit mot, au cas où la soirée a filé. Vous pouvez encore nous dire comment c'était. Sans pratique ce soir, c'est bien aussi.
    .sms = Vous pouvez encore nous dire comment c'était. Sans pratique ce soir, c'est bien aussi.
ask-swallow = Comment était { $position }, de 1 (dur) à 5 (facile) ? Vous pouvez ajouter un mot.
    .sms = Comment était { $position } ? Répondez de 1 à 5 (5 facile), PAS DESCENDU ou SAUTER.
ask-best = Laquelle { $child } a préférée ce soir ? C'est à { $child } de choisir.
    .sms = Laquelle { $child } a préférée ? Répondez par son nom, ou AUCUNE.
ask-note = Un mot à ajouter sur ce soir ? Écrivez-le ici, ou touchez le bouton.
    .sms = Un mot à ajouter sur ce soir ? Écrivez-le, ou répondez NON.
unclear-swallow = Merci pour votre message. Votre clinique peut le lire. Et ce soir, comment était { $position } ? Touchez de 1 à 5, ou dites si ce n'est pas descendu.
    .sms = Merci. Et comment était { $position } ? Répondez de 1 à 5 (5 facile), PAS DESCENDU ou SAUTER.
unclear-best = Merci pour votre message. Laquelle { $child } a préférée ? Touchez son nom, ou le dernier bouton si c'est aucune.
    .sms = Merci. Laquelle { $child } a préférée ? Répondez par son nom, ou AUCUNE.
unclear-note = On n'a pas compris. Écrivez votre note en peu de mots, ou touchez le bouton.
    .sms = Pas compris. Écrivez quelques mots, ou répondez NON.
night-done =
    Merci ! Voici ce qu'on a noté :
    { $marks }
    .sms = Merci ! On a noté : { $marks }.
night-best = La préférée de ce soir : { $position }.
corrected =
    C'est changé. On a noté :
    { $marks }
    .sms = C'est changé : { $marks }.
corrected-best = C'est changé. La préférée de ce soir : { $position }.
note-kept = Merci. On garde votre note pour votre clinique.
stale-button = Ce bouton vient d'un vieux message. Prenez le plus récent, s'il vous plaît.
tonight-over = C'est fini pour ce soir. On ne prend pas d'autre bonbon. Bon repos à vous.
passed-on = Merci pour votre message. L'équipe de votre clinique peut le lire. Si ça ne peut pas attendre, appelez-la.

## Ce qu'on peut demander

help = On écrit chaque soir à { $bedtime }. Vous pouvez dire : PAUSE, REPRENDRE, LEÇON, PAS CE SOIR, STOP, EFFACER, ou une autre heure, comme « coucher 19 h 30 ». Pour le reste, appelez votre clinique. Ceci n'est pas une ligne d'urgence. En cas d'urgence, appelez le { $emergency }.
    .sms = La pratique de votre clinique, une fois par soir à { $bedtime }. Des frais de message peuvent s'appliquer. Dites PAUSE, REPRENDRE, LEÇON, PAS CE SOIR, STOP, EFFACER, ou une autre heure, comme « coucher 19 h 30 ». Pour le reste, appelez votre clinique. En cas d'urgence, appelez le { $emergency }.
asked-for = Quelqu'un de votre famille l'a demandé :
paused = La pratique est en pause. Écrivez REPRENDRE quand vous voulez. Rien ne presse.
paused-until = La pratique est en pause. On vous écrit de nouveau le { $day }. Écrivez REPRENDRE pour revenir plus tôt.
paused-reply = Merci pour votre message. L'équipe de votre clinique peut le lire. La pratique est toujours en pause. Écrivez REPRENDRE quand vous voulez.
resumed = Vous revoilà, c'est bien ! On reprend à { $bedtime }.
bedtime-changed = C'est fait. On vous écrit à { $bedtime } désormais. Si la pratique de ce soir est déjà là, faites-la à cette heure.
bedtime-outside = On peut écrire de { $earliest } à { $latest }. Envoyez une heure entre les deux, comme « coucher 19 h 30 ».
candy-changed = Votre clinique a choisi un autre bonbon : un { candy }. Prenez-le dès le prochain soir.
stopped = C'est fini. On ne vous écrira plus. Si vous changez d'avis, écrivez COMMENCER. Merci pour toute la pratique.
started = Vous revoilà, c'est bien ! On vous écrit à { $bedtime }.
start-closed = D'ici, on ne peut pas recommencer. Demandez à votre clinique.
delete-ask = Cela efface pour toujours tout ce qu'on garde sur { $child }. On efface ?
    .sms = Cela efface pour toujours tout ce qu'on garde sur { $child }. On efface ? Répondez OUI ou NON.
delete-kept = Bien, tout reste comme avant.
delete-waits = C'est fini. Votre clinique doit d'abord voir une chose que vous nous avez dite. Puis on efface tout et on vous le dit.
deleted = Tout est effacé. Merci, et bonne route.
wrong-number = Pardon pour l'erreur. On n'écrira plus à ce numéro.
from-clinician =
    Un message de votre clinique :
    { $words }

## Sécurité : les premiers mots d'abord

safety-breathing =
    Appelez le { $emergency } tout de suite.
    Faites vos gestes de premiers secours.
    Ce chat ne peut pas envoyer d'aide.
safety-allergy =
    Appelez le { $emergency } tout de suite.
    Faites vos gestes de premiers secours.
    Ce chat ne peut pas envoyer d'aide.
safety-object =
    Appelez le { $emergency } tout de suite. N'attendez pas de signe.
    Faites vos gestes de premiers secours.
    Ce chat ne peut pas envoyer d'aide.
safety-poison =
    Appelez le { $emergency } tout de suite. Gardez la boîte sous la main.
    Faites vos gestes de premiers secours.
    Ce chat ne peut pas envoyer d'aide.
safety-self-harm =
    Appelez le { $emergency } tout de suite si une vie est en danger.
    Restez tout près. Ce soir, personne ne doit être sans compagnie.
    Vous n'êtes pas sans aide. Votre clinique le sait. Ce chat ne peut pas envoyer d'aide.
safety-danger =
    Appelez le { $emergency } tout de suite si quelqu'un est en danger.
    Allez en lieu sûr si vous le pouvez. Votre clinique le sait. Ce chat ne peut pas envoyer d'aide.
safety-urgent =
    Appelez votre clinique ou un médecin aujourd'hui, même si { $child } semble aller bien.
    Appelez le { $emergency } tout de suite en cas de souffle difficile ou bruyant, de bave, de lèvres bleues, de douleur ou d'une voix qui a changé.
    Ce chat ne peut pas envoyer d'aide.
safety-forced =
    Arrêtez pour ce soir, s'il vous plaît. On ne force jamais à avaler.
    Si quelqu'un est en danger, appelez le { $emergency } tout de suite.
    Votre clinique le sait et va vous parler.
safety-child-wrote = On vous l'envoie aussi, car { $child } vient de nous écrire.
hold = La pratique est arrêtée. Aucun bonbon tant que votre clinique ne dit pas oui. Elle est au courant.
    .sms = Pratique arrêtée. Aucun bonbon tant que la clinique ne dit pas oui. Elle le sait.
hold-reply = Merci. On l'a transmis à votre clinique. La pratique est toujours arrêtée. En cas d'urgence, appelez le { $emergency } tout de suite.
hold-by-clinician = Votre clinique a arrêté la pratique. Aucun bonbon tant qu'elle ne dit pas oui. Elle peut vous dire pourquoi.
hold-lifted = Bonne nouvelle : votre clinique dit qu'on peut reprendre. On vous écrit à { $bedtime }.
hold-lifted-rest = Votre clinique a levé l'arrêt. Vous n'avez rien à faire.
watch-ask = Comment va { $child } aujourd'hui ? Regardez s'il y a : une toux qui reste, un souffle rapide ou bruyant, de la fièvre, une voix rauque, de la bave, mal à la gorge ou à la poitrine. Y a-t-il un de ces signes ?
    .sms = Comment va { $child } ? Une toux qui reste, un souffle rapide ou bruyant, fièvre, voix rauque, bave, mal à la gorge ou à la poitrine ? Répondez OUI ou NON.
watch-fine = Tant mieux. Gardez l'œil ouvert. Si un de ces signes arrive, appelez un médecin le jour même. Si respirer est dur, appelez le { $emergency }.

## Quand ça ne va pas

concern-distress = Cela semble dur, et on est de tout cœur avec vous. Merci de l'avoir dit. { $child } passe avant tout, et la pratique peut attendre. Votre clinique le sait.
concern-refusal = Un non est une bonne réponse. Ne poussez pas, s'il vous plaît. Restez ensemble, faites une chose qui plaît, et laissez ça pour ce soir. Votre clinique le sait.
concern-gag = Un haut-le-cœur, c'est pénible, mais c'est ainsi que la gorge se protège. Arrêtez là, et que { $child } se repose. Si respirer est dur, appelez le { $emergency }. Votre clinique le sait.
concern-pressure = On pousse vite quand on tient tant à une chose. Laissez pour ce soir. Ça marche mieux quand { $child } mène chaque gorgée. Votre clinique le sait.
concern-exhausted = Vous faites beaucoup, et ça se voit. Le repos passe avant, pour vous aussi. Rien n'est perdu. Votre clinique le sait.
concern-shame = Ici, personne n'a mal fait. C'est dur pour beaucoup d'enfants, et pour beaucoup d'adultes aussi. Merci de l'avoir dit. Votre clinique le sait.
concern-ill = On vous souhaite que ça passe vite. Pas de pratique tant que { $child } ne va pas bien. En cas de souci, appelez votre médecin. Écrivez PAUSE pour faire un arrêt. Votre clinique le sait.
medicine = On ne peut rien dire sur un médicament. Demandez à votre pharmacie ou à la personne qui l'a prescrit. Ne le changez pas, ne le coupez pas, ne l'écrasez pas sans demander. Votre clinique le sait.

## La fin

finish = C'est fini ! { $child } a pratiqué { $practised ->
        [1] un soir
       *[other] { $practised } soirs
    } sur { $nights }. Merci pour chacun de ces soirs. Vous avez donné le temps, et sans lui il n'y a pas de pratique.
    .sms = C'est fini ! { $child } a pratiqué { $practised ->
        [1] un soir
       *[other] { $practised } soirs
    } sur { $nights }. Merci pour chaque soir.
finish-favourites = Au début, { $child } a préféré { $first }. À la fin, { $last }.
finish-same = { $child } a préféré { $last }, du début à la fin.
finish-next = La suite : votre clinique regarde les chiffres avec vous deux. Ensemble, vous choisissez comment mettre la tête. Pas de vrai comprimé avant cela, s'il vous plaît.
certificate = Voici pour { $child }. À mettre au mur ou à montrer !
    .sms = { $child } a un diplôme. Votre clinique peut l'imprimer pour vous.
ended = Votre clinique a clos le programme. On ne vous écrira plus. Merci pour toute la pratique. En cas de question, appelez-la.

## Courage

cheer-first-night-1 = Le premier soir est fait. Vous avez pris place et essayé ensemble. C'est ainsi qu'on commence.
cheer-first-night-2 = Et d'un ! { $child } sait comment ça se passe, et vous aussi. Le reste, ce sont de petits pas.
cheer-first-night-3 = Merci d'avoir fait de la place ce soir. Le premier pas est souvent le plus grand.
cheer-first-night-hard-1 = Le premier soir est souvent le plus dur. { $child } a essayé, et vous étiez là. C'est tout ce qu'il fallait.
cheer-first-night-hard-2 = Ce n'était pas facile, et vous avez tenu bon tous les deux. Demain est un autre jour.
cheer-first-night-hard-3 = C'est dur le premier soir, et c'est normal. Le corps apprend peu à peu, comme à vélo.
cheer-nothing-down-1 = Rien n'est descendu ce soir, et { $child } a pratiqué quand même. Chaque essai apprend un peu à la gorge. Dites-lui que vous l'avez vu.
cheer-nothing-down-2 = Un tel soir fait partie du chemin. Il n'y a rien à réparer. Revenez demain, c'est tout.
cheer-nothing-down-3 = Essayer, ça compte, et { $child } a essayé. Pour finir, une gorgée d'eau et un câlin feront du bien.
cheer-one-missed-1 = Hier soir, c'était relâche. Ça arrive à tout le monde. Ce soir, on reprend.
cheer-one-missed-2 = Un soir sans pratique ne fait pas de mal. Rien n'est perdu. Voici ce soir.
cheer-one-missed-3 = Il y a des soirs bien pleins. C'est bien que vous soyez là. On reprend où on en était.
cheer-several-missed-1 = Quelques soirs ont passé. Rien à rattraper. Cinq minutes au calme suffisent ce soir.
cheer-several-missed-2 = La vie passe parfois devant, et c'est bien ainsi. Commencez par peu : juste ce qui fait du bien ce soir.
cheer-several-missed-3 = On a gardé votre place. Si l'heure ne va pas, envoyez-en une autre, comme « coucher 19 h ».
cheer-coming-back-1 = C'est bien de vous revoir tous les deux. On reprend où vous en étiez.
cheer-coming-back-2 = Vous revoilà ! Ce que { $child } a appris ne s'en va pas avec une pause.
cheer-coming-back-3 = De retour ! Allez-y doucement ce soir. Une gorgée d'eau seule fait un bon début.
cheer-steady-1 = Le soir { $night } est fait. Le truc, c'est d'être là, et vous étiez là.
cheer-steady-2 = Encore un soir de fait. Merci à vous deux.
cheer-steady-3 = Vous revenez, soir après soir. C'est ainsi qu'on apprend.
cheer-steady-4 = Déjà { $night } soirs de pratique. Chacun compte.
cheer-steady-5 = Merci pour ce soir. Ça semble peu, mais les petits pas font le chemin.
cheer-steady-6 = Vous avez donné à { $child } cinq bonnes minutes ce soir. C'est du temps bien passé.
cheer-steady-7 = C'est fait pour ce soir. Dites à { $child } une chose que vous avez aimée.
cheer-improving-1 = Ce soir, c'était un peu moins dur. Voilà ce que fait la pratique. Ça monte et ça descend, et c'est bien ainsi.
cheer-improving-2 = Tous ces soirs font leur travail. Dites à { $child } que vous voyez ses efforts.
cheer-improving-3 = Un soir plus doux. Profitez-en ! Il y aura encore des bosses, et ces soirs comptent autant.
cheer-favourite-changed-1 = Une autre préférée ce soir. C'est bon à savoir ! C'est juste ce qu'on cherche.
cheer-favourite-changed-2 = { $child } en a préféré une autre. C'est en les essayant toutes qu'on trouve.
cheer-favourite-changed-3 = La préférée a changé. C'est normal. Chaque soir en dit un peu plus.
cheer-half-way-1 = La moitié ! { $night } soirs de faits, encore { $left }. Merci pour chacun.
cheer-half-way-2 = Vous êtes à la moitié. Faites une jolie chose avec { $child } pour le marquer. Un jeu ou une histoire suffit.
cheer-half-way-3 = La moitié des soirs est faite. C'est devenu une habitude, et c'est le plus dur.
cheer-last-nights-1 = La fin est proche. Après ce soir, il en reste { $left }.
cheer-last-nights-2 = Voici la dernière ligne droite. Pas besoin de pousser. Faites comme toujours.
cheer-last-nights-3 = Il reste peu de soirs. { $child } y a mis du travail, soir après soir.
cheer-last-night-1 = C'est le dernier soir. Prenez votre temps, et du plaisir à deux.
cheer-last-night-2 = Une dernière fois. Quoi qu'il arrive, vous avez fait ce que vous vouliez faire.
cheer-last-night-3 = Dernier soir de pratique ! Puis votre clinique regarde avec vous ce que { $child } a trouvé.
cheer-yucky-1 = Tous les bonbons ne plaisent pas à tout le monde. Votre clinique peut en choisir un autre. Il suffit de demander.
cheer-yucky-2 = Merci de nous parler du goût. Une gorgée d'eau avant et après peut aider.
cheer-yucky-3 = Pas bon, et { $child } a essayé quand même ! Il faut du cran. Dites-le-lui.
cheer-tired-1 = Un soir de fatigue est un soir dur. Merci d'avoir essayé. Plus tôt, ce serait mieux ? Envoyez une autre heure.
cheer-tired-2 = Tout le monde avait sommeil, et vous étiez là. Si c'est pareil demain, écrivez PAS CE SOIR. C'est bien aussi.
cheer-tired-3 = La journée a été longue pour tout le monde. Ça suffit pour ce soir. Dormez bien.
cheer-partial-1 = La dernière fois, vous en avez fait une partie. Ça compte. Ce soir, c'est encore le même ordre.
cheer-partial-2 = Un peu vaut mieux que rien. Voici le même ordre pour ce soir.
cheer-partial-3 = Vous avez arrêté quand ça suffisait, et c'était juste. Ce soir, on essaie encore.
cheer-skipped-1 = En sauter une, c'est bien aussi. { $child } mène chaque gorgée.
cheer-skipped-2 = Vous en avez laissé une ce soir. Merci de l'avoir dit, c'est bon à savoir.
cheer-skipped-3 = Pas besoin de les faire toutes. Peu et au calme vaut mieux que beaucoup et de force.

## Conseils

tip-slouch-1 = Un conseil : une chaise ferme, les pieds à plat au sol ou sur une boîte. Quand le dos plie, le chemin plie aussi.
tip-slouch-2 = À essayer : avant d'avaler, grandissez tous les deux, comme si un fil tirait la tête vers le haut. Un long cou fait un bon chemin.
tip-front-1 = Un conseil : le bonbon est peut-être trop à l'avant. Là, il flotte quand l'eau arrive. Posez-le au fond de la langue, au milieu.
tip-front-2 = À essayer : { $child } peut voir l'endroit dans un miroir. Langue dehors, bonbon au fond, langue dedans, gorgée, on avale.
tip-water-1 = Un conseil : essayez avec moins d'eau. Dans une bouche pleine, le bonbon nage, et la gorge avale deux fois. Une petite gorgée passe d'un coup.
tip-water-2 = À essayer : versez une seule petite gorgée dans un verre. Ainsi { $child } n'en prend pas trop.
tip-bite-1 = Un conseil : mordre est une habitude, pas une faute. Les dents sont écartées, la langue est à plat. La gorgée vient juste après le bonbon, sans le temps de croquer.
tip-bite-2 = À essayer : que { $child } tienne le verre aux lèvres. Bonbon, gorgée, on avale : plus c'est vite fait, moins on croque.
tip-fear-1 = Un conseil : tout doux. Trois longs souffles avant chaque gorgée rendent la gorge souple. Commencez par de l'eau seule si vous voulez.
tip-fear-2 = Si ça fait peur, pas besoin de dire le contraire. Dites « je vois que ça fait peur, et je suis là ». C'est { $child } qui dit quand.
tip-taste-1 = Un conseil : une gorgée d'eau froide avant, et le goût baisse. Moins le bonbon reste là, moins on le goûte.
tip-taste-2 = Vous pouvez demander à votre clinique un bonbon à un autre goût. Ne le changez pas sans demander, s'il vous plaît.
tip-tired-1 = Un conseil : essayez une demi-heure plus tôt. Avec la fatigue, la bouche va lentement. Envoyez une autre heure, comme « coucher 19 h ».
tip-tired-2 = Un soir de fatigue, arrêtez tant que c'est bon. Deux gorgées au calme valent mieux que cinq de force.
tip-gag-1 = Un conseil : le haut-le-cœur vient quand le bonbon touche trop au fond. Posez-le un peu plus à l'avant, puis la gorgée tout de suite.
tip-gag-2 = Après un haut-le-cœur, attendez que ça passe, en soufflant doucement par le nez. On reprend si { $child } le veut.
