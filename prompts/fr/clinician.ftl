# Ce qu'on dit à l'équipe de la clinique, par chat ou par texto.

alert =
    { $level ->
        [emergency] URGENCE VITALE
        [urgent] URGENT
        [concern] INQUIÉTUDE
        [medicine] MÉDICAMENT
       *[other] AVIS
    } { $code } : { $child }, { category }.
    Ce qui a décidé : { $words }
    .sms =
    { $level ->
        [emergency] URGENCE VITALE
        [urgent] URGENT
        [concern] INQUIETUDE
        [medicine] MEDICAMENT
       *[other] AVIS
    } { $code }: { $child }, { category }. "{ $words }" Répondez PRENDRE { $code }.
alert-again = Personne ne s'en est encore chargé. C'est l'appel numéro { $steps }.
alert-hold = La pratique est arrêtée tant que l'équipe ne l'a pas rouverte avec une note.
    .sms = La pratique est arrêtée. Pour la rouvrir, répondez ROUVRIR et le code, puis une note.
alert-missed = AVIS { $code } : { $child } a manqué { $count } soirs de suite. Un appel peut aider la famille.
    .sms = AVIS { $code }: { $child } a manqué { $count } soirs de suite. Répondez PRENDRE { $code }.
alert-unreachable = AVIS { $code } : les messages à la famille de { $child } n'arrivent plus. Joignez-la autrement.
    .sms = AVIS { $code }: les messages à la famille de { $child } n'arrivent plus. Joignez-la autrement. Répondez PRENDRE { $code }.
alert-undelivered = URGENCE VITALE { $code } : un message de sécurité n'a pas pu être remis à la famille de { $child }. Appelez-la tout de suite.
    .sms = URGENCE VITALE { $code }: un message de sécurité n'a pas pu être remis à la famille de { $child }. Appelez-la tout de suite. Répondez PRENDRE { $code }.
alert-lesson = AVIS { $code } : la leçon de { $child } n'a pas été finie { $count } soirs. Un appel peut aider la famille.
    .sms = AVIS { $code }: la leçon de { $child } n'a pas été finie { $count } soirs. Répondez PRENDRE { $code }.
alert-stuck = URGENT { $code } : une panne de notre part bloque le programme de l'enfant numéro { $words }. Suivez vous-même cette famille et prévenez qui gère ce coach.
    .sms = URGENT { $code }: une panne de notre part bloque le programme de l'enfant { $words }. Suivez cette famille, prévenez qui gère ce coach. Répondez PRENDRE { $code }.
alert-stranger =
    { $level ->
        [emergency] URGENCE VITALE
        [urgent] URGENT
        [concern] INQUIÉTUDE
        [medicine] MÉDICAMENT
       *[other] AVIS
    } { $code } : quelqu'un qui n'est d'aucune famille d'ici a écrit : { $words }
    .sms =
    { $level ->
        [emergency] URGENCE VITALE
        [urgent] URGENT
        [concern] INQUIETUDE
        [medicine] MEDICAMENT
       *[other] AVIS
    } { $code }: quelqu'un qui n'est d'aucune famille d'ici a écrit: "{ $words }" Répondez PRENDRE { $code }.
alert-taken = { $by } s'en charge. Plus de rappel.
alert-taken-already = { $by } s'en est déjà chargé.
lift-ask-note = Pour rouvrir la pratique de { $child }, écrivez en quelques mots pourquoi elle est de nouveau sûre. Votre nom et la note sont gardés.
end-ask-note = Pour finir le programme de { $child }, écrivez en quelques mots pourquoi. Votre nom et la note sont gardés. C'est sans retour.
lift-done = { $by } a rouvert la pratique de { $child }. La famille le sait.
lift-not-held = La pratique de { $child } n'est pas arrêtée ; il n'y a rien à rouvrir.
ended-already = Le programme de { $child } est déjà fini.
no-such-alert = Cet avis n'existe pas. Prenez les boutons du message le plus récent.
    .sms = Cet avis n'existe pas. Regardez le code dans le message le plus récent.
not-running = Ce n'est pas possible dans l'état où en est le programme de { $child }. Regardez où il en est sur le tableau de suivi.
night-taken = { $child } a déjà un soir le { $day }. Choisissez une autre date.
night-none-left = Tous les soirs de { $child } sont pris. On ne peut pas en ajouter.
night-wrong-positions = Les positions de la feuille ne sont pas celles de l'ordre de ce soir-là. Vérifiez l'ordre sur le tableau de suivi.
bedtime-refused = L'heure doit être entre { $earliest } et { $latest }. Choisissez une heure entre les deux.
end-done = { $by } a mis fin au programme de { $child }. La famille le sait.
note-empty = La note est vide. Écrivez en quelques mots pourquoi ; elle est gardée avec votre nom.
clinician-help = Avec les boutons d'un avis, vous pouvez vous en charger, rouvrir la pratique ou finir le programme. Le reste est sur le tableau de suivi. C'est de là qu'on écrit à une famille.
    .sms = Répondez PRENDRE, ROUVRIR ou FINIR avec le code d'un avis, comme PRENDRE 12-1. Le reste est sur le tableau de suivi.
news-unread = Deux réponses de suite de la famille de { $child } n'ont pas pu être lues. Elles sont sur le tableau de suivi, marquées non lues.
news-declined = La famille de { $child } n'a pas accepté. On ne lui envoie plus rien.
news-stopped = La famille de { $child } a arrêté le programme. On ne lui envoie plus rien.
news-deleted = La famille de { $child } a demandé que tout soit effacé.
summary = { $child } : { $practised } soirs de pratique sur { $nights }, en { $evenings } soirées.
summary-favourites = Préférée du premier soir : { $first }. Du dernier : { $last }.
summary-clear = Préférée estimée : { $favourite } ({ $percent } % de chances d'être la meilleure de celles essayées).
summary-unclear = Pas encore de préférée claire. En tête : { $favourite } ({ $percent } %).
summary-cautions = À titre descriptif : les notes d'un seul enfant, sur des soirs qui dépendent les uns des autres. Cela ne prédit pas ce qui se passera avec un vrai médicament. Parlez-en avec l'enfant et la famille avant de choisir.

## Boutons

button-acknowledge = Je m'en charge
button-lift = Rouvrir la pratique
button-end = Finir le programme
