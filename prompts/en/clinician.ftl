# What a clinician is told, by chat or text message.

alert =
    { $level ->
        [emergency] EMERGENCY
        [urgent] URGENT
        [concern] CONCERN
        [medicine] MEDICINE
       *[other] NOTICE
    } { $code }: { $child }, { category }.
    What decided: { $words }
    .sms =
    { $level ->
        [emergency] EMERGENCY
        [urgent] URGENT
        [concern] CONCERN
        [medicine] MEDICINE
       *[other] NOTICE
    } { $code }: { $child }, { category }. "{ $words }" Reply TAKE { $code }.
alert-again = Nobody has taken this on yet. This is call number { $steps }.
alert-hold = Practice is on hold until a clinician lifts it with a note.
    .sms = Practice is on hold. To lift it reply LIFT and the code, then a note.
alert-missed = NOTICE { $code }: { $child } has missed { $count } nights in a row. A call may help the family.
    .sms = NOTICE { $code }: { $child } has missed { $count } nights in a row. Reply TAKE { $code }.
alert-unreachable = NOTICE { $code }: messages to { $child }'s family no longer arrive. Please reach them another way.
    .sms = NOTICE { $code }: messages to { $child }'s family no longer arrive. Please reach them another way. Reply TAKE { $code }.
alert-undelivered = EMERGENCY { $code }: a safety message to { $child }'s family could not be delivered. Please call them now.
    .sms = EMERGENCY { $code }: a safety message to { $child }'s family could not be delivered. Call them now. Reply TAKE { $code }.
alert-lesson = NOTICE { $code }: { $child }'s lesson has not been finished on { $count } evenings. A call may help the family.
    .sms = NOTICE { $code }: { $child }'s lesson has not been finished on { $count } evenings. Reply TAKE { $code }.
alert-stuck = URGENT { $code }: a fault of ours keeps the program of child number { $words } from going on. Please look after that family yourself, and tell whoever runs this coach.
    .sms = URGENT { $code }: a fault of ours stops the program of child number { $words }. Look after that family yourself, tell who runs this coach. Reply TAKE { $code }.
alert-stranger =
    { $level ->
        [emergency] EMERGENCY
        [urgent] URGENT
        [concern] CONCERN
        [medicine] MEDICINE
       *[other] NOTICE
    } { $code }: somebody who belongs to no family here wrote: { $words }
    .sms =
    { $level ->
        [emergency] EMERGENCY
        [urgent] URGENT
        [concern] CONCERN
        [medicine] MEDICINE
       *[other] NOTICE
    } { $code }: somebody who belongs to no family here wrote: "{ $words }" Reply TAKE { $code }.
alert-taken = Taken on by { $by }. It will not be sent again.
alert-taken-already = { $by } has already taken this on.
lift-ask-note = To lift the hold for { $child }, write in a few words why practice is safe again. Your name and the note are kept.
end-ask-note = To end the program for { $child }, write in a few words why. Your name and the note are kept. This cannot be undone.
lift-done = The hold for { $child } is lifted by { $by }. The family has been told.
lift-not-held = Practice for { $child } is not on hold, so there is nothing to lift.
ended-already = The program for { $child } has already ended.
no-such-alert = There is no such alert. Please use the buttons under the newest message.
    .sms = There is no such alert. Please check the code in the newest message.
not-running = That is not possible in the state that { $child }'s program is in. Look at the desk to see where it stands.
night-taken = There is already a night on { $day } for { $child }. Choose another date.
night-none-left = All of { $child }'s nights are used. No more can be entered.
night-wrong-positions = The positions on the sheet are not those of that night's order. Please check the order at the desk.
bedtime-refused = The bedtime must lie from { $earliest } to { $latest }. Choose a time in between.
end-done = The program for { $child } is ended by { $by }. The family has been told.
note-empty = The note is empty. Please write in a few words why; it is kept with your name.
clinician-help = Use the buttons under an alert to take it on, lift a hold or end a program. Everything else is at the desk. Messages that a family should get are sent from the desk.
    .sms = Reply TAKE, LIFT or END with an alert's code, such as TAKE 12-1. All else is at the desk.
news-unread = Two replies in a row from { $child }'s family could not be read. They are at the desk, marked as unread.
news-declined = { $child }'s family did not agree to take part. Nothing more is sent to them.
news-stopped = { $child }'s family has stopped the program. Nothing more is sent to them.
news-deleted = { $child }'s family has asked to have everything erased.
summary = { $child }: { $practised } of { $nights } nights practiced, over { $evenings } evenings.
summary-favourites = Favorite on the first night: { $first }. On the last night: { $last }.
summary-clear = Estimated favorite: { $favourite } ({ $percent } % likely to be the best of those tried).
summary-unclear = No clear favorite yet. Ahead is { $favourite } ({ $percent } %).
summary-cautions = Descriptive only: one child's own ratings over nights that depend on each other. It does not predict how a real medicine will go. Talk it over with the child and family before you choose.

## Buttons

button-acknowledge = I take this on
button-lift = Lift the hold
button-end = End the program
