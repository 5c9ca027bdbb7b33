# The rehearsal page: read by a clinic's staff, and shown to a parent before they join.

title = coachbot rehearsal
intro = Four phones and a clock, on this computer only. Nothing is sent anywhere. { $child } is invented.
step-bedtime = To the next bedtime
step-five-minutes = Five minutes on
step-hour = One hour on
restart = Start over
phone-parent = Parent
phone-child = { $child }, child
phone-clinician = { $name }, on call
phone-backup = { $name }, backup
open-invitation = Open the invitation
write-here = Write a message
send = Send
by-text = By text message
segments = Segments: { $count }
nothing-yet = Nothing here yet.
mistake = That did not work: { $why }
desk = The clinic's desk shows the same family, and an invented clinic around it, which moves in when you first open it: the phones wait that long. Sign in as { $name }.
desk-open = Open the desk
desk-password = Password
desk-code = One-time code

# The unattended play, in the terminal.

auto-lesson = The lesson is done: { $child } swallowed a first small candy.
auto-night = { $bar } { $practised }/{ $nights }  { $day }  { $status ->
    [missed] missed
    [partial] partial  { $marks }
   *[finished] done  { $marks }
  }
auto-alert = ! { $time }  to { $name }: { $words }
auto-taken = ! { $name } has taken it on.
auto-lifted = ! { $name } lifted the hold: { $note }
auto-report = The follow-up report is in { $path }

# A transcript of invented families.

transcript-own = **{ $time } { $phones }**
transcript-sent = **{ $time }** to { $phones }
transcript-picture = [picture: { $name }]
transcript-file = [file: { $name }]
