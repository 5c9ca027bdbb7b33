# Ce qu'on dit aux enfants et aux ados. Tutoiement. $tone est young (5 à 7), middle (8 à 12) ou teen (13 et plus).

## L'entrée

consent-wait = Salut { $child } ! Un adulte doit d'abord dire oui. Dis-lui de voir son téléphone.
welcome = { $tone ->
    [young] Salut { $child } ! Je t'aide à avaler. À { $bedtime }, il y a une petite leçon. Puis on joue { $nights } soirs. Un adulte est là chaque fois.
    [teen] Salut { $child }. Je t'aide à avaler. À { $bedtime }, il y a une courte leçon. Puis viennent { $nights } soirs, cinq minutes chacun. Un adulte est là chaque fois.
   *[middle] Salut { $child } ! Je t'aide à avaler. À { $bedtime }, il y a une courte leçon. Puis viennent { $nights } soirs, cinq minutes chacun. Un adulte est là chaque fois.
}
welcome-also = Salut { $child } ! Je t'aide à avaler. J'écris chaque soir à { $bedtime }. Si c'est grave, ne m'attends pas. Dis-le à un adulte ou appelle le { $emergency }.

## La leçon

lesson-intro = { $tone ->
    [young] C'est la leçon ! Va chercher un verre d'eau, un petit bonbon et ton adulte. Va tout doux.
    [teen] C'est la leçon. Il te faut de l'eau, un petit bonbon et un adulte. Va à ton rythme.
   *[middle] C'est la leçon ! Il te faut de l'eau, un petit bonbon et un adulte. Prends ton temps.
}
lesson-again = Voici la leçon. Prends tout ton temps.
lesson-throat = { $tone ->
    [young]
        Ta gorge est souple et large. Elle s'étire comme une chaussette !

        Pose la main sur ton cou. Et avale. Tu sens le saut ? C'est ta gorge. Elle a fait de la place.

        Touche Suivant quand tu l'as senti.
    [teen]
        Ta gorge est souple et large. Une bouchée de pain est bien plus grosse qu'un comprimé.

        Pose deux doigts sur ton cou et avale. Tu sens que ça monte ? Le passage s'ouvre. Il le fait toute la journée.

        Touche Suivant quand tu l'as senti.
   *[middle]
        Ta gorge est souple et large. Elle s'étire comme une chaussette. Une bouchée de pain est bien plus grosse qu'un comprimé.

        Pose la main sur ton cou et avale. Tu sens le saut ? Elle fait de la place.

        Touche Suivant quand tu l'as senti.
}
    .sms =
    Ta gorge est souple et large. Elle s'étire comme une chaussette.
    Pose la main sur ton cou et avale. Tu sens le saut ? Elle fait de la place.
    Envoie SUIVANT quand tu l'as senti.
lesson-posture = { $tone ->
    [young] Tiens-toi comme un roi ou une reine. Le dos droit. Les pieds à plat. Pas dans le canapé ! Le chemin est droit aussi.
    [teen] Prends une chaise ferme. Le dos droit, les pieds à plat. Pas dans le canapé. Le chemin est droit aussi.
   *[middle] Prends une chaise ferme. Le dos droit. Les pieds à plat. Pas dans le canapé ! Le chemin est droit aussi.
}
    .sms = Prends une chaise ferme. Le dos droit. Les pieds à plat. Le chemin est droit aussi. Envoie SUIVANT.
lesson-water =
    Juste de l'eau. { $position-key ->
        [left] Tourne la tête vers ta main gauche. Tout doux.
        [right] Tourne la tête vers ta main droite. Tout doux.
        [up] Lève le menton juste un peu. Pas loin en arrière !
        [down] Baisse le menton.
       *[center] Regarde droit devant.
    } Ne bouge plus. Prends une gorgée et avale. Ton cou fait mal ? Saute celle-ci.
    .sms =
    Juste de l'eau. { $position-key ->
        [left] Tourne la tête vers ta main gauche.
        [right] Tourne la tête vers ta main droite.
        [up] Lève le menton juste un peu.
        [down] Baisse le menton.
       *[center] Regarde droit devant.
    } Prends une gorgée et avale. Ton cou fait mal ? Saute celle-ci. Envoie SUIVANT.
lesson-tongue = { $tone ->
    [young] Où va le bonbon ? Au fond de ta langue, au milieu. C'est son siège. Montre du doigt !
    [teen] Le bonbon va au fond de ta langue, au milieu. À l'avant, il flotte. Trouve l'endroit avec un doigt propre.
   *[middle] Le bonbon va au fond de ta langue, au milieu. À l'avant, il flotte. Tu vois l'endroit ?
}
    .sms = Le bonbon va au fond de ta langue, au milieu. À l'avant, il flotte. Tu vois l'endroit ? Envoie SUIVANT.
lesson-sip = { $tone ->
    [young] Prends juste une gorgée. Avec trop d'eau, le bonbon nage ! Ferme la bouche. Un, deux, glou !
    [teen] Prends juste une gorgée. Avec trop d'eau, le bonbon flotte. Avale tout d'un coup.
   *[middle] Prends juste une gorgée. Avec trop d'eau, le bonbon nage. Avale tout d'un coup.
}
    .sms = Prends juste une gorgée. Avec trop d'eau, le bonbon nage. Avale tout d'un coup. Envoie SUIVANT.
lesson-candy = C'est le tour d'un { candy-name }. Le dos droit. Regarde devant. Bonbon au fond, une gorgée, glou ! Tu peux dire non. C'est descendu ?
    .sms = C'est le tour d'un { candy-name }. Le dos droit. Bonbon au fond, une gorgée, glou ! Tu peux dire non. C'est descendu ? Envoie OUI, NON ou SAUTER.
lesson-unclear = Merci ! Pour la suite, touche un bouton de la dernière étape.
    .sms = Merci ! Envoie SUIVANT pour la suite. Après le bonbon, envoie OUI, NON ou SAUTER.
lesson-went-down = C'est descendu ! Tu sais ce que ça fait. Merci d'avoir essayé.
lesson-not-down = Pas descendu. C'est bien quand même ! Tu as essayé, et ça compte.
lesson-later = Pas de bonbon ce soir. C'est bien quand même ! Tu as fait la leçon, et ça compte.
lesson-done = { $tone ->
    [teen] C'était la leçon. Je t'écris à { $bedtime }. Il y a { $nights } soirs en tout. À bientôt.
   *[middle] C'était la leçon ! Je t'écris à { $bedtime }. Il y a { $nights } soirs en tout. Dors bien !
}

## Le soir

night-prompt =
    { $tone ->
        [young] Salut { $child } ! C'est le soir { $night } sur { $nights }. Dans cet ordre :
       *[other] Salut { $child }. Soir { $night } sur { $nights }. Dans cet ordre :
    }
    { $order }
    Un { candy-name } à chaque fois. Et une gorgée.
    .sms = Soir { $night } sur { $nights }: { $order }. Un { candy-name } à chaque fois.
night-howto-1 = Le dos droit. La tête en place, le bonbon au fond, une gorgée, glou !
    .sms = Dos droit, bonbon au fond, une gorgée, glou !
night-howto-2 = Les pieds à plat, le dos droit. La tête en place, le bonbon au fond, une gorgée, glou !
    .sms = Dos droit, bonbon au fond, une gorgée, glou !
night-howto-3 = Le dos droit comme un arbre. La tête en place, le bonbon au fond, une gorgée, glou !
    .sms = Dos droit, bonbon au fond, une gorgée, glou !
night-safety = Un adulte est avec toi ? Sinon, attends. Tu peux dire stop quand tu veux.
    .sms = Un adulte est avec toi ? Tu peux dire stop.
night-late = La dernière fois, je n'ai pas pu écrire. C'est ma faute, pardon ! On reprend.
night-reminder = Coucou ! C'était comment ce soir ? Si tu as fait une pause, c'est bien aussi.
ask-swallow = { $tone ->
    [young] C'était comment, { $position } ? Le 1 est dur. Le 5 est facile.
   *[middle] C'était comment, { $position } ? Le 1 est dur, le 5 est facile. Tu peux dire un mot de plus.
}
    .sms = C'était comment, { $position } ? Envoie de 1 à 5. Le 5 est facile. Ou envoie PAS DESCENDU ou SAUTER.
ask-best = Laquelle tu aimes le plus ?
    .sms = Laquelle tu aimes le plus ? Envoie son nom, ou AUCUNE.
ask-note = Tu veux dire un mot de plus ? Sinon, touche le bouton.
    .sms = Tu veux dire un mot de plus ? Sinon, envoie NON.
unclear-swallow = Merci ! Il me faut un chiffre. C'était comment, { $position } ? Touche de 1 à 5.
    .sms = Merci ! Il me faut un chiffre. C'était comment, { $position } ? Envoie de 1 à 5, PAS DESCENDU ou SAUTER.
unclear-best = Merci ! Laquelle tu aimes le plus ? Touche son nom.
    .sms = Merci ! Laquelle tu aimes le plus ? Envoie son nom, ou AUCUNE.
unclear-note = Je n'ai pas compris. Dis-le en peu de mots, ou touche le bouton.
    .sms = Pas compris. Dis-le en peu de mots, ou envoie NON.
night-done =
    Merci ! J'ai noté :
    { $marks }
    .sms = Merci ! J'ai noté : { $marks }.
night-best = La préférée de ce soir : { $position }.
corrected =
    C'est changé. J'ai noté :
    { $marks }
    .sms = C'est changé : { $marks }.
corrected-best = C'est changé. La préférée de ce soir : { $position }.
note-kept = Merci ! Je garde ta note.
stale-button = Ce bouton est vieux. Touche le neuf.
tonight-over = C'est fini pour ce soir. On ne prend pas d'autre bonbon. Repose-toi bien !
passed-on = Merci de le dire ! Ta clinique peut le lire. Si ça presse, dis-le à un adulte.

## Ce qu'on peut demander

only-parent = Un adulte doit le dire. Tu lui montres ? Toi, tu peux dire PAS CE SOIR quand tu veux.
help = J'écris chaque soir à { $bedtime }. Tu peux dire LEÇON ou PAS CE SOIR. C'est grave ? Dis-le à un adulte ou appelle le { $emergency }. Ne m'attends pas.
asked-for = Quelqu'un de ta famille l'a demandé :
paused = On fait une pause. Je suis là quand tu reviens.
paused-until = On fait une pause. Je t'écris le { $day }.
paused-reply = Merci de le dire ! Ta clinique peut le lire. On est encore en pause.
resumed = Te revoilà ! On reprend à { $bedtime }.
bedtime-changed = Une autre heure ! Je t'écris à { $bedtime }. Si tu as déjà ce soir, fais-le à cette heure.
bedtime-outside = Je peux écrire de { $earliest } à { $latest }. Un adulte peut dire une heure entre les deux.
candy-changed = Tu as un autre bonbon : un { candy-name }. Il vient au prochain soir.
stopped = On arrête là. Merci pour chaque essai. Salut, { $child } !
started = Salut { $child } ! Je t'écris à { $bedtime }.
start-closed = Ça, je ne peux pas le faire. Un adulte doit appeler la clinique.
deleted = J'ai effacé tout ce que je savais. Bonne route !
from-clinician =
    Ta clinique dit :
    { $words }

## Sécurité : les premiers mots d'abord

safety-breathing =
    Va chercher un adulte ! Appelle le { $emergency } tout de suite.
    Fais ce qu'on te dit au téléphone.
    Je ne peux pas envoyer d'aide.
safety-allergy =
    Va chercher un adulte ! Appelle le { $emergency } tout de suite.
    Fais ce qu'on te dit au téléphone.
    Je ne peux pas envoyer d'aide.
safety-object =
    Va chercher un adulte ! Appelle le { $emergency } tout de suite.
    Fais ce qu'on te dit au téléphone.
    Je ne peux pas envoyer d'aide.
safety-poison =
    Va chercher un adulte ! Appelle le { $emergency } tout de suite.
    Montre ce que c'était.
    Je ne peux pas envoyer d'aide.
safety-self-harm =
    Tu n'es pas sans aide. C'est bien de me le dire.
    Va tout de suite vers un adulte que tu aimes bien. Reste avec lui.
    Si tu es en danger, appelle le { $emergency }. À ta clinique, on le sait. On veut t'aider.
safety-danger =
    Si tu es en danger, appelle le { $emergency } tout de suite.
    Va en lieu sûr, ou vers un adulte que tu aimes bien.
    Ce n'est pas ta faute. Ta clinique le sait.
safety-urgent =
    Dis-le tout de suite à un adulte. Il doit appeler ta clinique ou un médecin aujourd'hui.
    C'est dur de respirer ? Tu as mal ? Appelle le { $emergency } tout de suite.
    Je ne peux pas envoyer d'aide.
safety-forced =
    Tu peux arrêter. On ne peut pas te forcer à avaler. Ce n'est pas ta faute.
    Va vers un adulte que tu aimes bien. Si tu es en danger, appelle le { $emergency } tout de suite.
    Ta clinique le sait.
hold = On arrête pour le moment. Aucun bonbon tant que ta clinique ne dit pas oui.
hold-reply = Merci ! Je l'ai dit à ta clinique. On attend encore. C'est grave ? Dis-le à un adulte ou appelle le { $emergency }.
hold-by-clinician = Ta clinique dit qu'on arrête pour le moment. Aucun bonbon tant qu'elle ne dit pas oui. Ce n'est pas ta faute.
hold-lifted = Ta clinique dit qu'on peut reprendre. Je t'écris à { $bedtime }.
hold-lifted-rest = Tout va bien. Tu n'as plus rien à faire.

## Quand ça ne va pas

concern-distress = { $tone ->
    [teen] Ça a l'air dur. Merci de l'avoir dit. Parle avec un adulte que tu aimes bien. On peut attendre. Ta clinique le sait.
   *[middle] Ça a l'air dur. Merci de l'avoir dit. Va chercher un câlin. On peut attendre. Ta clinique le sait.
}
concern-refusal = Dire non, c'est bien. C'est toi qui mènes. Ta clinique le sait.
concern-gag = Ça fait bizarre, je sais. Ta gorge te protège. Repose-toi. C'est dur de respirer ? Appelle le { $emergency }. Ta clinique le sait.
concern-pressure = Rien ne presse. C'est toi qui mènes. Ta clinique le sait.
concern-exhausted = Tu as fait beaucoup. Repose-toi. Tout ce que tu as fait compte. Ta clinique le sait.
concern-shame = Tu n'as rien raté. C'est dur pour beaucoup d'enfants. Et pour des grands aussi. Ta clinique le sait.
concern-ill = Oh non. Repose-toi bien. Dis à un adulte où tu as mal. Ta clinique le sait.
medicine = Ça, je ne sais pas. Demande à un adulte. À la clinique, on le sait. N'en prends pas sans adulte.

## La fin

finish = { $tone ->
    [young] Tu l'as fait, { $child } ! { $practised } soirs, et tu étais là. Tu as essayé et essayé. C'est beaucoup !
    [teen] C'est fini, { $child }. { $practised } soirs sur { $nights }. Tu as tenu bon. Ça vaut beaucoup.
   *[middle] Tu l'as fait, { $child } ! { $practised } soirs sur { $nights }. Tu as tenu bon. C'est beaucoup !
}
finish-favourites = Au début, tu aimais { $first }. À la fin, { $last }.
finish-same = Tu as aimé { $last }, du début à la fin.
finish-next = La suite, c'est la clinique. Tu peux y dire ce que tu as trouvé. Pas de vrai comprimé avant.
certificate = C'est pour toi, { $child } !
    .sms = Tu es au bout, { $child } ! Ta clinique a un diplôme pour toi.
ended = Ta clinique dit que c'est fini. Merci pour chaque essai, { $child } !

## Courage

cheer-first-night-1 = Le premier soir est fait ! Tu as essayé. C'est comme ça qu'on commence.
cheer-first-night-2 = Tu sais comment ça se passe. Merci pour ce premier soir !
cheer-first-night-3 = Tu as pris place et tu as essayé. Il faut du cran !
cheer-first-night-hard-1 = C'était dur, et tu as essayé. C'est tout ce qu'il fallait.
cheer-first-night-hard-2 = Le premier soir est dur. Tu as eu du cran. Repose-toi bien !
cheer-first-night-hard-3 = Au début, ça fait drôle. Tu te souviens de ton premier vélo ?
cheer-nothing-down-1 = Rien n'est descendu, et c'est bien quand même. Chaque essai compte. Ta gorge apprend.
cheer-nothing-down-2 = Tu as essayé encore et encore. C'est ça qui compte.
cheer-nothing-down-3 = Il y a des soirs comme ça. Tu étais là, et tu as essayé. Merci !
cheer-one-missed-1 = Hier, c'était relâche. Ce soir, on reprend !
cheer-one-missed-2 = On reprend où on en était. Rien ne presse !
cheer-one-missed-3 = Un soir sans pratique, ce n'est rien. C'est bien que tu sois là !
cheer-several-missed-1 = Ça fait longtemps ! Pas besoin de tout faire. Juste ce soir.
cheer-several-missed-2 = J'ai gardé ta place. Fais juste un peu, si tu veux.
cheer-several-missed-3 = C'est bien de te voir. On y va tout doux.
cheer-coming-back-1 = Te revoilà ! On reprend où tu en étais.
cheer-coming-back-2 = C'est bien de te voir ! Ta gorge sait encore le truc.
cheer-coming-back-3 = Te revoilà, c'est bien ! Prends une gorgée d'eau. Et puis on reprend.
cheer-steady-1 = C'était le soir { $night }. Tu étais là, et c'est ça le truc.
cheer-steady-2 = Un soir de plus. Merci d'avoir essayé !
cheer-steady-3 = Tu viens et tu reviens. C'est comme ça qu'on apprend.
cheer-steady-4 = Pas à pas. Ce soir, tu en as fait un de plus.
cheer-steady-5 = Tu sais comment faire. Beau travail ce soir !
cheer-steady-6 = Merci pour cinq bonnes minutes !
cheer-steady-7 = Tu as fait ta part. C'est le moment de dormir.
cheer-improving-1 = C'était un peu moins dur. Voilà ce que font tous tes essais.
cheer-improving-2 = Tu le sens ? Ta gorge apprend à chaque fois.
cheer-improving-3 = C'était plus doux ce soir. Ça monte, ça descend. Tout compte.
cheer-favourite-changed-1 = Tu as une autre préférée ! C'est bon à savoir.
cheer-favourite-changed-2 = Tu en aimes une autre. C'est juste ce qu'on cherche.
cheer-favourite-changed-3 = Une autre préférée ! Tu sais bien chercher.
cheer-half-way-1 = C'est la moitié ! { $night } soirs de faits. Bravo !
cheer-half-way-2 = La moitié ! Soir après soir, tu as tenu bon.
cheer-half-way-3 = La moitié est faite. Mets un air que tu aimes !
cheer-last-nights-1 = C'est bientôt fini ! Encore { $left } après ce soir.
cheer-last-nights-2 = Tu vois le bout. Fais comme tu fais.
cheer-last-nights-3 = Il reste peu de soirs. Tu sais quoi faire !
cheer-last-night-1 = C'est le dernier soir ! Amuse-toi bien.
cheer-last-night-2 = Une dernière fois, { $child } ! Tout doux.
cheer-last-night-3 = Dernier soir ! Pense à tous tes essais.
cheer-yucky-1 = Beurk, et tu as essayé quand même. Il faut du cran !
cheer-yucky-2 = Beurk ! Merci de le dire. Ta clinique peut choisir un autre goût.
cheer-yucky-3 = Tout n'est pas bon pour tous. Une gorgée d'eau froide peut aider.
cheer-tired-1 = Tu avais sommeil, et tu étais là. Dors bien !
cheer-tired-2 = La journée a été longue. Merci d'avoir essayé. Bonne nuit !
cheer-tired-3 = C'est le moment de dormir. Tu as fait ta part.
cheer-partial-1 = La dernière fois, tu en as fait une partie. Ça compte ! Voici les mêmes.
cheer-partial-2 = Tu as dit stop quand ça suffisait. C'est bien. On essaie encore.
cheer-partial-3 = Un peu vaut mieux que rien ! Voici les mêmes.
cheer-skipped-1 = Tu en as sauté une. C'est bien ! C'est toi qui mènes.
cheer-skipped-2 = Merci de le dire. Pas besoin de les faire toutes.
cheer-skipped-3 = Quelques bons essais font un bon soir.

## Conseils : chacun est un jeu, et pour les ados des mots simples

tip-slouch-1 = { $tone ->
    [teen] Une astuce : pense à un fil qui tire ta tête vers le haut. Grandis avec lui.
   *[middle] Un jeu : un fil tire ta tête vers le haut. Jusqu'où tu montes ?
}
tip-slouch-2 = { $tone ->
    [teen] Prends une chaise ferme, les pieds à plat. Un long cou fait un bon chemin.
   *[middle] Pose un livre sur ta tête. Il tient ? Pose-le et avale.
}
tip-front-1 = { $tone ->
    [teen] Une astuce : pose-le au fond de ta langue. À l'avant, il flotte.
   *[middle] Un jeu : le bonbon est un bus. L'arrêt est au fond de ta langue. Pose-le là !
}
tip-front-2 = { $tone ->
    [teen] Vois d'abord l'endroit dans un miroir. Langue dehors, bonbon au fond.
   *[middle] Prends un miroir. Tire la langue. Mets le bonbon au fond. Tu le vois encore ?
}
tip-water-1 = { $tone ->
    [teen] Une astuce : prends moins d'eau. Dans une bouche pleine, le bonbon flotte.
   *[middle] Un jeu : ton bonbon ne sait pas nager. Prends si peu d'eau qu'il ne bouge pas.
}
tip-water-2 = { $tone ->
    [teen] Mets juste une gorgée dans un verre. Tu n'en prends pas trop.
   *[middle] Mets une gorgée dans un verre. Et glou, tout d'un coup !
}
tip-bite-1 = { $tone ->
    [teen] Une astuce : garde les dents loin du bonbon, la langue à plat. Et la gorgée tout de suite.
   *[middle] Un jeu : tes dents dorment. Chut ! On ne les réveille pas.
}
tip-bite-2 = { $tone ->
    [teen] Tiens le verre aux lèvres. Bonbon, gorgée, avale. Pas le temps de croquer.
   *[middle] Tiens le verre aux lèvres. Bonbon, gorgée, glou ! Pas le temps de croquer.
}
tip-fear-1 = { $tone ->
    [teen] Une astuce : souffle trois fois, tout doux. Ta gorge est plus souple.
   *[middle] Un jeu : souffle trois bougies, tout doux. Ta gorge est souple.
}
tip-fear-2 = Avoir peur, c'est permis. Prends une main. C'est toi qui dis quand.
tip-taste-1 = { $tone ->
    [teen] Une astuce : prends d'abord une gorgée d'eau froide. Tu sens moins le goût.
   *[middle] Un jeu : prends d'abord une gorgée d'eau froide. Ta langue s'endort. Elle sent moins le goût.
}
tip-taste-2 = Ce n'est pas bon ? Dis-le à un adulte. Ta clinique peut choisir autre chose.
tip-tired-1 = { $tone ->
    [teen] Une astuce : lève-toi et bouge les bras. Et puis avale juste une fois.
   *[middle] Un jeu : bouge les bras, bouge les pieds, et stop. Tu peux avaler une fois.
}
tip-tired-2 = Tu as sommeil ? Fais-en juste deux. Ça compte.
tip-gag-1 = Essaie ça : pose le bonbon un peu moins au fond. Et la gorgée tout de suite.
tip-gag-2 = { $tone ->
    [teen] Prends l'air par le nez, tout doux. Tu veux continuer ? C'est toi qui dis.
   *[middle] Sens une fleur, tout doux. Trois fois. Tu veux continuer ? C'est toi qui dis.
}
