# What clinicians read at the desk.

## Everywhere

desk = coachbot desk
desk-word = desk
skip = Skip to the page
nav-label = Desk
nav-alerts = Alerts
nav-children = Children
nav-enrol = Enroll
nav-study = Study
nav-clinic = Clinic
sign-out = Sign out
foot = coachbot gives no medical advice. In an emergency, families are told to call the local emergency number.
banner-nobody = Nobody can be reached.
banner-nobody-do = An alert would reach no one: there is no active clinician on duty whose chat is linked. Watch this page until that is mended.
banner-clock = The clock has stopped.
banner-clock-do = No prompts go out and no alerts climb. Tell whoever runs the service now.
live-new = There is a new alert.
live-show = There is news. Show it
go-home = Back to the start
go-child = Back to the child
none = none
none-chosen = none
more = Note, hold, end
yes = Yes
no = No
ago-minutes = { $count ->
    [0] just now
    [one] 1 minute ago
   *[other] { $count } minutes ago
}
ago-hours = { $count } hours ago
ago-days = { $count } days ago
in-minutes = { $count ->
    [0] now
    [one] in 1 minute
   *[other] in { $count } minutes
}
in-hours = in { $count } hours
in-days = in { $count } days
date-short = { $day } { $month ->
    [1] Jan
    [2] Feb
    [3] Mar
    [4] Apr
    [5] May
    [6] Jun
    [7] Jul
    [8] Aug
    [9] Sep
    [10] Oct
    [11] Nov
   *[12] Dec
}
date-time = { $date }, { $time }
until = until { $day }

## What went wrong

wrong-title = That did not work
wrong-typed = What you typed
wrong-no-case = There is no such child here. Perhaps the family has been erased.
wrong-store = The database cannot be reached, so nothing was changed. Try again in a minute; if it goes on, tell whoever runs the service.
wrong-origin = This form did not come from the desk, so nothing was done. Open the desk again and use its own form.
wrong-size = That is too much for one form. Shorten it and send it again.
wrong-role = Your role does not open this page. Ask the clinic's lead if you need it.
wrong-csrf = This form is out of date, so nothing was done. Go back, load the page anew and send it again.
wrong-signed-out = You are signed out. Sign in again.
words-needed = Write a few words. They are kept with your name.
words-long = That is { $given } characters; { $most } is the most. Shorten it and send it again.
number-wrong = { $given } cannot be used here. Give a whole number from { $least } to { $most }.
time-wrong = { $given } is no time of day. Give one like 19:30.
date-wrong = { $given } is no date. Give one like 2026-03-24.
date-past = { $given } is not in the future. Choose a later day, or leave it empty.
date-future = { $given } is still to come. Give the day on which the family practiced.
zone-wrong = { $given } is no time zone. Give one like America/New_York.
choice-needed = Choose one of the answers.
confirm-needed = Confirm this before you go on.
faults-some = { $count ->
    [one] One thing needs mending. It is marked below.
   *[other] { $count } things need mending. They are marked below.
}

## Signing in

sign-in = Sign in
name = Name
password = Password
code = One-time code
sign-in-help = The code is in your authenticator app. If you have lost your password or app, the clinic's lead can give you new ones.
sign-in-wrong = Name, password and code do not belong together. A code works once: wait for the next and try again.
sign-in-wait = Too many tries. Wait 15 minutes, then try again.

## States, levels, people

state-invited = invited
state-lesson = lesson
state-practising = practicing
state-paused = paused
state-on_hold = on hold
state-finished = finished
state-followed_up = followed up
state-withdrawn = ended
level-none = notice
level-medicine = Medicine
level-concern = Concern
level-urgent = Urgent
level-emergency = Emergency
role-parent = parent
role-child = child
role-clock = the clock
role-channel = the channel
who-on_call = clinician on call
who-backup = backup
who-all = everybody
staff-clinician = clinician
staff-lead = lead
staff-researcher = researcher
duty-on_call = on call
duty-backup = backup
duty-none = not on duty
channel-name = { $channel ->
    [telegram] Telegram
    [sms] text message
    [rehearsal] rehearsal phone
   *[other] { $channel }
}
ours-missed = nights missed in a row
ours-lesson = lesson not finished
ours-unreachable = family cannot be reached
ours-undelivered = a safety message did not arrive
ours-stuck = a child's program cannot go on; its number:

## Alerts

alerts-title = What needs you now
alerts-none = Nothing is open. New alerts appear here by themselves.
alert-stranger = Somebody of no family here
alert-evidence = What decided:
alert-told = Told:
alert-told-one = { $name } ({ $times ->
    [one] once
   *[other] { $times } times
}, last { $when })
alert-told-nobody = nobody yet
alert-next = Next:
alert-around = The conversation around it
do-acknowledge = I take this on
do-call-back = Tell them we will call
do-note = Keep note
do-call = Keep: family was called
do-lift = Lift the hold
do-end = End the program
do-read = I have read this
note-label = Note for your colleagues
note-note = note
note-call = family called
note-screening = screening confirmed
lift-label = Why is practice safe again? Your name and this note are kept.
end-label = Why does the program end? It cannot be undone.
call-back-words = We have read your message. We will call you as soon as we can. If anyone is in danger, call your local emergency number now.
unread-title = Messages to read ({ $count })
unread-none = Nothing waits to be read.
send-waiting = waiting
send-claimed = being sent
send-sent = sent
send-delivered = delivered
send-never = not delivered
send-gone = no longer reachable
send-unknown = perhaps not delivered
send-expired = too late, not sent
send-cancelled = taken back

## Children

children-title = Children
children-none = No child fits. Clear the search or choose another group.
children-count = { $count ->
    [one] One child
   *[other] { $count } children
}
find = Find a name
do-find = Find
sort = Sort by
sort-needs = who needs you
sort-name = name
sort-nights = nights practiced
sort-missed = nights missed
sort-evening = latest evening
show-label = Groups
show-all = All
show-needs = Need you
show-waiting = Not begun
show-practising = Practicing
show-on_hold = On hold
show-paused = Paused
show-finished = Finished
show-ended = Ended
col-child = Child
col-state = State
col-night = Night
col-weeks = Last four weeks
col-last = Last night
col-favourite = Favorite so far
col-missed = Missed
col-waits = Waiting
night-of = night { $night } of { $nights }
down-of = { $down } of { $tried } down
clear = clear
working = being worked out
in-a-row = ({ $count } in a row)
alerts-count = { $count ->
    [one] 1 alert
   *[other] { $count } alerts
}
unread-count = { $count } to read
strip = { $done } of { $evenings } evenings practiced in the last four weeks
strip-key = Each mark is an evening: square practiced, half square in part, ring missed, line open or not sent. A rating runs from 1 (hardest) to 5 (easiest).
pages = Pages

## One child: reaching the real medicine

target-title = Reaching the real medicine
target-none = No size is set.
target-set = Set its size
target-change = Change the size
target-private = For clinicians only: the family is not told, and it is not on the report.
target-form = { $child }: size of the real medicine
target-capsule = Two-piece capsule, by its size
target-measured = none: length and width below
target-length = Length (longest side), mm
target-width = Width, mm
target-steps = Sizes between the candy and it, if you like: one a line, length x width in mm, shortest first
target-steps-hint = The practice candy is { $candy } mm at its longest side. Example of a line: 10 x 6
do-target = Keep the size
do-target-remove = Remove the size
capsules-title = Two-piece capsules, closed
capsule-name = Size
capsule-size = Length × width
capsule-volume = Volume
capsules-source = From a manufacturer’s table; makers differ by tenths of a millimeter.
volume = { $ml } ml
size-both = { $length } × { $width } mm
size-longest = { $length } mm at its longest
rung-what = What
rung-size = Length × width
rung-growth = Length, times the one before
rung-candy = Candy
rung-step = Step { $number }
rung-target = Real medicine
rung-capsule = Capsule { $name }
rung-times = × { $factor }
rung-passed = no longer than the candy
target-drawing = Candy, sizes between and real medicine, to one scale
limit-over_largest = Over 22 mm, the largest dimension of a tablet or capsule in the FDA’s guidance of 2015. (The guidance allows capsules by name up to size 00, which is longer.)
limit-no_larger = 17 mm or longer: the FDA’s guidance of 2015 wants no generic of it to be larger. The pharmacist knows whether there is a smaller one.
limit-over_largest_capsule = Over size 00, the largest capsule in the FDA’s guidance of 2015.
limit-none = Under the limits of the FDA’s guidance of 2015 (17 mm, 22 mm, capsule size 00).
target-caution = These limits are for generic products; they do not say what is safe for a child. Medicine, form and size, and whether it may be opened, crushed or cut, are the prescriber’s and the pharmacist’s. That a candy goes down does not show that a medicine will.
target-needed = Choose a capsule’s size, or give length and width.
target-both = Choose a capsule’s size or give length and width, not both.
mm-wrong = “{ $given }” cannot be used here. Give millimeters from { $least } to { $most }, such as 12.5.
size-sides = The length is the longest side, but { $length } mm is less than { $width } mm. Swap them if they were mixed up.
steps-wrong = “{ $given }” is not a size. Write length x width in mm, such as 10 x 6, each size on its own line.
steps-order = The lengths must rise from line to line, all above { $candy } mm (the candy) and none above { $target } mm.
steps-many = { $given } sizes are too many. Give { $most } at most.

## One child

born = born { $year }
bedtime-is = bedtime { $time } ({ $zone })
case-number = case { $number }
nights-title = Night by night
nights-none = No night yet.
night = Night
night-status = Evening
night-open = open
night-finished = finished
night-partial = in part
night-missed = missed
night-unsent = prompt not sent
night-short-open = …
night-short-finished = ✓
night-short-partial = ½
night-short-missed = ○
night-short-unsent = –
mark-none = no rating
mark-not_down = did not go down
mark-skipped = skipped
best = best of the night
grid-key = 1 hardest to 5 easiest. × did not go down, – skipped, ★ named best that night. ✓ finished, ½ in part, ○ missed.
adherence = { $evenings } evenings: { $finished } finished, { $partial } in part, { $missed } missed{ $unsent ->
    [0] .
   *[other] , { $unsent } not sent by us.
}
notes-title = What the family noted
favourite-title = Which position
favourite-none = Nothing to go by yet.
favourite-clear = { $position } is the favorite: { $percent } % likely to be the best of those tried.
favourite-unclear = Not clear yet. { $position } is ahead with { $percent } %.
favourite-more = About { $nights } more nights may settle it.
favourite-first-last = Favorite on the first night: { $first }; on the last: { $last }.
favourite-caution = Descriptive only: one child's own ratings on nights that depend on each other. It does not predict how a real medicine will go. Choose together with the child and the family.
ready-yes = With the favorite, the candy went down on each of the last three practiced nights.
ready-no = With the favorite, the candy did not go down on each of the last three practiced nights.
ready-unknown = Too few nights to say whether the child is ready.
shares-title = How likely each position is the best
course-title = { $position }: ratings night by night
not-down-short = no
chosen-is = Chosen at follow-up: { $position }
talk-title = The conversation
talk-none = Nothing was written yet.
talk-coach = coach to { $to }
talk-button = by button
changes-title = What changed, and who did it
change-state = from { $old } to { $new }
change-candy = candy is now a { $new }
change-bedtime = bedtime from { $old } to { $new }
change-zone = time zone from { $old } to { $new }
change-chosen = position for the real medicine: { $new }
change-target = the real medicine’s size is now { $size }
change-target-none = the real medicine’s size is removed
did-Told = message to the family
did-NightEntered = night entered from paper
did-Acknowledged = took an alert on
did-Joined = joined
did-ClinicianWrote = note by chat
did-ClinicianPressed = button in chat
did-Held = practice put on hold
did-HoldLifted = hold lifted
did-Ended = program ended
did-Paused = practice paused
did-Resumed = practice resumed
did-BedtimeSet = bedtime changed
did-CandySet = candy changed
did-TargetSet = size of the real medicine, or the steps to it
did-FollowedUp = followed up
did-Erased = erasure asked for
access-title = Who looked at this record ({ $count })
deeds-title = What you can do
do-resume = Go on with practice
follow-up-label = Position that child and clinician chose
note-optional = Note (optional)
do-follow-up = Keep the choice
tell-label = Message to the family, sent with your words
do-tell = Send
practice-title = Pause, hold, bedtime, candy
pause-until = Pause until (empty: until resumed)
do-pause = Pause
hold-label = Why is practice put on hold?
do-hold = Put on hold
bedtime = Bedtime
zone = Time zone
do-bedtime = Change bedtime
candy-kind = Candy
candy-mint = small mint
candy-hard = small hard candy
candy-size = Longest side, mm
do-candy = Change candy
papers-title = On paper
report-pdf = Follow-up report (PDF)
report-png = Follow-up report (picture)
certificate = Certificate for the child
sheets = Rating sheets to print
enter-sheet = Enter a filled sheet
family-title = The family's chats
contact-left = wrong number, not written to
contact-lost = cannot be reached
contacts-none = No chat is linked yet.
consent-given = Consent given { $when }
consent-none = No consent yet
invite-parent = Invite a parent
invite-child = Invite the child
record-title = Record: take out, end, erase
kept = All that is kept (JSON)
fhir = FHIR R4 bundle (JSON)
erase-label = Erase this family for good. Type the case number { $number } to confirm.
do-erase = Erase
erase-sure = Nothing was erased. Type { $number } to confirm.
erased-none = No family with case number { $number } has been erased.
erased-title = Case { $number } is erased
erased-opened = Opened
erased-at = Erased
erased-events = Events erased
erased-nights = Nights erased
erased-received = Messages received, erased
erased-sent = Messages sent, erased
erased-backups = Backups made before may hold it until { $day }; then they are deleted too.
erased-stays = What stays: these counts, and who looked at the record when ({ $count } entries, without a name).
done-acknowledge = You have taken it on. It climbs no further.
done-lift = The hold is lifted and the family has been told.
done-hold = Practice is on hold and the family has been told.
done-end = The program is ended and the family has been told.
done-pause = Practice is paused and the family has been told.
done-resume = Practice goes on and the family has been told.
done-bedtime = The bedtime is changed and the family has been told.
done-candy = The candy is changed and the family has been told.
done-tell = Your message is on its way.
done-call-back = The family has been told that you will call.
done-follow-up = The choice is kept.
done-target = Kept. The family is not told.
done-note = The note is kept.
done-call = The call is kept.
done-night = The night is entered.
done-password = Your password is changed. All your other sessions have ended.
done-clinic = Saved. It holds for families enrolled from now on.
done-people = Saved.

## Enrollment

enrol-title = Enroll a family
enrol-child = The child
child-called = Name to be called by
child-name = Give a name of 1 to 40 characters.
child-born = Born
born-hint = The date is for the check of age. Only the year is kept.
enrol-screening = Screening
ask-swallowing = Is there a known swallowing disorder, or a history of aspiration?
ask-ill = Is the child too ill, or too sleepy, to practice?
ask-allergy = Is there an allergy to anything in the candy?
ask-neck = The neck
neck-sound = No known trouble
neck-cleared = Trouble, but a specialist allows every position chosen
neck-unstable = Unstable, or not yet looked at
confirm-asked = I asked the family these questions myself.
confirm-adult = An adult will be there each night, and the child will sit upright.
confirm-never-forced = The family knows: never force a child, and stop at any distress.
confirm-young = The child is under 5: I have weighed the risk of choking on hard candy with the family.
confirm-neck = A specialist's word on the neck is in the child's notes.
confirm-hint = Kept with the time and your name, { $name }. The answers themselves are not kept.
stops-title = This child cannot be enrolled now
stop-too_young = Under 4: hard candy is not given to a child so young (AAP, Pediatrics 2010;125:601).
stop-not_born = The date of birth is in the future.
stop-swallowing = A swallowing disorder or aspiration: practice belongs with a specialist.
stop-ill = Too ill or too sleepy: wait until the child is well.
stop-allergy = Allergy to the candy: choose another candy and answer again.
stop-neck = Unstable neck: no position that turns or tips the head without a specialist's word.
stops-do = Nothing was kept. If an answer was wrong, mend it below; otherwise stop here.
enrol-practice = Practice
positions = Positions, as the child's own left and right
positions-few = Choose at least two positions.
nights = Nights
bedtime-hours = The bedtime must lie from { $earliest } to { $latest }, the clinic's hours.
language = Language
candy-first = Candy from the first night
candy-later = Then (optional)
candy-from = From night
candy-order = Candies must follow each other: give a later night.
enrol-chats = Who gets messages
chats-first = One parent gets every message. They choose the channel by the way they open the invitation.
chats-second = A second parent too
chats-own = The child on a phone of their own
do-enrol = Screen and enroll
invitation-title = { $child }: invitation
invitation-once = Shown for half an hour only. Each code links one chat, works once, and opens for { $days } days.
invitation-gone = These codes are no longer shown. Make new ones on the child's page; codes given out before stay good.
invite-for = For the { $role }
qr = QR code of the link
copy = Copy link
copied = Copied
code-how = Ask the family to send this code as their first message.
card = Card to print (PDF)
enrol-next = Enroll another family

## Paper

entry-title = { $child }: enter a filled sheet
entry-turn = Order { $turn }, as printed on the sheet.
entry-day = Day of practice
entry-best = Best that night
entry-none = All nights are used. No more can be entered.
mark-wrong = { $given } is no rating. Choose 1 to 5, did not go down, or skipped.
marks-needed = Enter at least one rating.
do-enter = Enter the night

## Study

study-title = Study files
study-what = De-identified tables with a data dictionary, about { $count } children: night numbers instead of dates, no names, no free words, small cells left out.
study-refused = The files were held back, for they might tell who somebody is: { $why }.
study-files = Get the files (ZIP)
study-caution = Each time these figures are looked at or the files are taken is written down. Children's ratings are descriptive; there is no control group.

## Study: all children together

cohort-title = All children together
cohort-none = No child has had a night yet, so there is nothing to show.
cohort-few = Fewer than { $least } children have had a night. Any figure could tell about one of them, so none is shown.
cohort-who = { $count } children whose first night is over, whether still practicing or done. Tonight is not counted, nor are families that were erased or that stopped before their first night.
cohort-small = Small groups are hidden here in the same way as in the files. A count of 1 to { $most } children is shown as a limit, and so is a count of all but 1 to { $most }; where one hidden count could be worked out from the rest, another is hidden as … too. Nothing is tested or averaged over fewer than { $least } children. None at all is shown as 0.
cohort-adherence = Practiced, by night (% of families)
cohort-staying = Staying in, by night (% of families, Kaplan-Meier)
cohort-adherence-key = Practiced: of the families who had that night and got our message, those who practiced; dot and 95 % interval (Wilson), or only an interval where a small group is hidden.
cohort-staying-key = Staying in: families who have not stopped on their own, with the 95 % band; it falls only where { $least } or more have stopped since its last fall.
stopped-none = No family has stopped early.
stopped = Stopped early: { $count } of { $total } families.
staying-few = Fewer than { $least } have, so there is no curve of staying in.
numbers-show = Show the numbers
col-practised = Practiced
col-share = Share
col-range = 95 % interval
col-after = After night
col-position = Position
col-down = Went down
col-place = Place in the night
col-children = Children
col-effect = Rating against the night’s mean
not-told = hidden
of-total = { $count } of { $total }
range = { $low } to { $high } %
effect-range = { $low } to { $high }
number = { $value }
moved-title = Favorites, from the first (rows) to the last (columns), in children
moved-corner = First \ last
off-centre = Last favorite other than { $position }: { $percent } % of { $total } children who have a favorite (95 % interval { $low } to { $high } %, Wilson).
off-centre-few = Too few children have a favorite to say how many end with another than the center.
down-title = Did the last candy tried go down?
differs = Cochran’s Q over the { $children } children who tried every position: { $statistic } with { $degrees } degrees of freedom, p { $edge ->
    [small] < 0.001
   *[plain] = { $p }
}.
differs-level = Over the { $children } children who tried every position no difference can be seen: each child’s candies all went down, or none did.
differs-few = Fewer than { $least } children have tried every position, or differed between positions, so no test of a difference.
places-title = Does the place in the night matter?
places-few = Fewer than { $least } children have rated each place, so nothing can be said.
places-key = How much higher (or, with a minus, lower) a candy is rated at its place than that night’s mean. Not down counts as 0. Averaged within each child first; interval: Student’s t over children.
cohort-caution = Descriptive only. The children of one clinic are no random sample, those who go on differ from those who stop, and there is no control group.

## Clinic

clinic-title = Clinic set-up
texts = What families are told
texts-hint = Every text as it is sent, with an invented child. To use other words, put them in the folder that the setting COACHBOT_TEXTS names.
texts-parent = To parents
texts-child = To children
texts-clinician = To clinicians, by chat
log-title = Log of access
log-hint = The newest entries. They can be added to, never changed.
set-general = The clinic
set-emergency = Local emergency number
set-practice = Practice
set-nights = Nights to practice
set-max_nights = Evenings at most
set-earliest = Prompts from
set-latest = Prompts until
set-late_limit = A late prompt is still sent, minutes
set-reminder_after = Reminder after, minutes
set-close_after = Evening closes after, minutes
set-missed_limit = Missed in a row that raise an alert
set-watch_days = Days to ask after a choke
set-ladder = Ladder of emergency and urgent alerts
set-calm_ladder = Ladder of other alerts
set-after = Minutes after the alert
set-who = Tell
do-set = Save
set-hint = Families that are enrolled already keep what they were enrolled with. The last step of a ladder repeats until somebody takes the alert on.
protocol-wrong = This cannot be: { $why }.
people-title = People
people-add = Add a person
role = Role
duty = Duty
account = Account
account-open = open
account-closed = closed
channel = Channel
address = Chat id or number there
reach-none = no chat
reach-wrong = Give a channel that is set up, with an address on it: a phone number with its country code, or the number of a chat.
do-save = Save
do-renew = New password and code
do-add = Add
account-name = Give a name of 1 to 80 characters.
account-taken = There is an account of that name already. Choose another.
account-none = There is no such account.
account-own = You cannot close your own account.
account-once = Shown this once. Hand it over in person; the code is for an authenticator app.
code-secret = For the authenticator app
qr-code = QR code for the authenticator app
password-change = Change password
password-hint = { $least } characters or more, of any kind. A few words you can remember are best.
password-old = Present password
password-new = New password
password-again = New password again
password-differs = The two new passwords differ. Type the same one twice.
password-wrong = The present password is another. Try again.
password-weak = Take { $least } characters or more, not your name, and not the same few over and over.
password-common = That is among the first that somebody would guess. Take a few words that do not belong together.

## Status

status = Status
status-clock = Clock
status-reach = Somebody to alert
status-beats = Processes
status-outbox = Waiting to be sent
status-since = oldest { $when }
status-fine = works
status-beat = last felt { $when }
status-channels = Channels
status-up = heard { $when }
status-never = never heard
status-down = Messages may not be coming in.
status-alerts = Alerts that nobody has taken on
status-undelivered = Alerts that have reached no clinician
status-unreachable = Families that cannot be reached
status-urgency = What
status-count = How many
status-oldest = Oldest written
urgency-safety = safety
urgency-alert = alerts
urgency-reply = replies
urgency-prompt = prompts
urgency-news = news
