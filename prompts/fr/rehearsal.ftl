# La page de répétition : lue par l'équipe, et montrée à un parent avant de commencer.

title = Répétition de coachbot
intro = Quatre téléphones et une horloge, sur cet ordinateur seulement. Rien n'est envoyé ailleurs. { $child } est un nom inventé.
step-bedtime = Au prochain coucher
step-five-minutes = Cinq minutes de plus
step-hour = Une heure de plus
restart = Recommencer
phone-parent = Parent
phone-child = { $child }
phone-clinician = { $name }, de garde
phone-backup = { $name }, en renfort
open-invitation = Ouvrir l'invitation
write-here = Écrivez un message
send = Envoyer
by-text = Par SMS
segments = Segments : { $count }
nothing-yet = Rien pour l'instant.
mistake = Cela n'a pas marché : { $why }
desk = Le bureau du centre montre la même famille, et autour d'elle un centre inventé, qui arrive quand vous l'ouvrez la première fois : les téléphones attendent ce temps-là. Entrez comme { $name }.
desk-open = Ouvrir le bureau
desk-password = Mot de passe
desk-code = Code à usage unique

# La pièce jouée seule, dans le terminal.

auto-lesson = La leçon est faite : { $child } a avalé un premier petit bonbon.
auto-night = { $bar } { $practised }/{ $nights }  { $day }  { $status ->
    [missed] manqué
    [partial] en partie  { $marks }
   *[finished] fait  { $marks }
  }
auto-alert = ! { $time }  à { $name } : { $words }
auto-taken = ! { $name } s'en occupe.
auto-lifted = ! { $name } a levé la pause de sécurité : { $note }
auto-report = Le bilan est dans { $path }

# La conversation de familles inventées.

transcript-own = **{ $time } { $phones }**
transcript-sent = **{ $time }** à { $phones }
transcript-picture = [image: { $name }]
transcript-file = [fichier: { $name }]
