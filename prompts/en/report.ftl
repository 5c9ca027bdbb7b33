# The papers that people hold in their hands: follow-up report, rating sheets, invitation card.
# $child is the name to be called by. `$position-key` and the like are for choosing a wording, never for showing.

## Shared by all papers

date = { $month ->
    [1] January
    [2] February
    [3] March
    [4] April
    [5] May
    [6] June
    [7] July
    [8] August
    [9] September
    [10] October
    [11] November
   *[12] December
} { $day }, { $year }
child = this child
name-line = Name:
left-right = Left and right are { $child }’s own. The heads are drawn as in a mirror.

## Follow-up report: the head

report-kind = Follow-up report
report-title = What { $child } found out
report-period = { $first } to { $last }
report-practised = { $practised } of { $planned } practice nights
report-held = Practice is on hold. Nobody should try a swallow until the clinic says so.

## Follow-up report: the answer

answer-clear = Most likely the best: { $favourite }
answer-unclear = Not clear yet
answer-none = No ratings yet
answer-clear-why = If 100 children told us the same as { $child }, { $favourite } would be the best one for { $chance }.
answer-unclear-why = { $favourite } is a bit ahead now: { $chance } in 100.
answer-level = No position is ahead of the others.
answer-more = About { $more ->
    [one] one more night
   *[other] { $more } more nights
} would likely tell.
answer-no-more = More nights would not likely tell. Some positions may be just as good as others.
answer-none-why = There is nothing to go by. Ratings from a few nights are needed first.
chance = { $edge ->
    [most] more than 99
    [least] less than 1
   *[between] about { $percent }
}
bars = How likely each position is the best one, in 100
bar = { $edge ->
    [most] > 99
    [least] < 1
   *[between] { $percent }
}

## Follow-up report: first and last favorite

first = First night
last = Last night
favourites = Favorite

## Follow-up report: all nights

grid = Every night
grid-night = Night
key-rating = 1 to 5: the rating, 5 is easiest
key-best = ring: best of the night
key-not-down = { $sign } did not go down
key-skipped = { $sign } left out
key-finished = { $sign } all done
key-partial = { $sign } part of it done
key-missed = { $sign } no practice
key-unsent = { $sign } our message came too late or not at all
key-open = { $sign } not over yet
grid-none = No nights yet.
grid-candy = Candy: { $candies }.
candy-later = from night { $night } a { $candy }

## Follow-up report: each position

courses = Each position, night by night
courses-key = Dots are ratings, ✕ did not go down.
courses-ahead = ★ is ahead at the end.
courses-line = The line shows where the ratings are heading. The wider the gray band, the less sure it is.
numbers = For the clinician: Friedman test over { $nights } whole nights, W = { $agreement }, p { $edge ->
    [small] < 0.001
   *[plain] = { $p }
}.
numbers-level = For the clinician: no difference between positions can be seen over { $nights } whole nights.
numbers-few = For the clinician: too few whole nights to test whether positions differ.
numbers-trend = Page’s test that ratings rise, p { $edge ->
    [small] < 0.001
   *[plain] = { $p }
}.
numbers-caution = One child’s nights follow on each other, so these only describe.
course-alt = { $position }, night by night
course-point = night { $night }: { $mark }
down = went down { $down } of { $tries }
down-none = not tried yet

## Follow-up report: what else to know

ready = Ready for the next step?
ready-answer = On the last practice nights { $position } went down { $down } of { $tries } times.
ready-none = No favorite, so nothing to say here yet.
ready-yes = Yes, three times out of three.
ready-unclear = It is not clear yet which position is best, so more practice comes first.
ready-held = Not while practice is on hold.
ready-not-yet = Not on all of the last three. More practice may help.
adherence = The nights
adherence-done = { $practised } of { $planned } practice nights done, in { $evenings ->
    [one] one evening
   *[other] { $evenings } evenings
}.
adherence-partial = { $count ->
    [one] One of them was
   *[other] { $count } of them were
} done in part.
adherence-missed = { $count ->
    [one] One evening
   *[other] { $count } evenings
} without practice.
adherence-unsent = { $count ->
    [one] One evening
   *[other] { $count } evenings
} without our message. That was our fault.
stops = Choking or trouble breathing
stops-more = And { $count } more. The clinic can show you.
stops-none = None were told to us.
stop-seen = { $date }: { $category }. The clinic has looked at it.
stop-open = { $date }: { $category }. The clinic has NOT looked at it yet.
notes = What you wrote
notes-none = No notes.
note-night = Night { $night }:
note-position = Night { $night }, { $position }:
notes-more = And { $count } more. The clinic can show you.

## Follow-up report: the choice and the cautions

choice = We choose together
choice-other = not yet
choice-date = Date:
cautions = Please keep in mind
caution-description = This page tells what one child did and felt. It is no test. No controlled study has shown that it tells how a real medicine will go.
caution-medicine = The real medicine is up to the prescriber and the pharmacist: which one, what form, what size, how to take it. Do not crush, split or change it without asking them.
caution-up = { $position } means the chin just a little up, never the head far back. The airway is less guarded then. Talk about it before you choose it.
caution-adult = Each swallow: sit up tall, an adult close by, never forced. Choking: call { $emergency }.
caution-desk = Other messages and alerts are not on this page. The clinic has them.

## Rating sheets

sheet-kind = Rating sheets
sheet-title = Practice nights for { $child }
sheet-how = One candy for each position, in this order, with one small mouthful of water. Head in place, candy far back on the tongue, then swallow. After each one, circle how it was: 1 is hard, 5 is easy.
sheet-missed = Missed a night? That is fine. Go on with the next box.
sheet-trouble = Stop and call your clinic if there is choking, a cough that stays, pain or tears. In an emergency, call { $emergency }.
sheet-bring = Give the sheets to your clinic.
sheet-night = Night { $night } of { $nights }
sheet-date = Date:
sheet-candy = One { $candy } each
sheet-hard = hard
sheet-easy = easy
sheet-down = did not go down
sheet-skip = left out
sheet-best = Best tonight:
sheet-best-none = none
sheet-note = Note:
sheet-safety = An adult sits close by the whole time. Sit up tall. Never force it. Choking: call { $emergency }.

## Invitation card

card-kind = Invitation
card-parent = For the parent of { $child }
card-child = For { $child }
card-parent-why = { $child } is going to learn to swallow pills, with small candies and no medicine: about five minutes each night, for { $nights } nights. We write each evening and tell you both what to do.
card-child-why = Your throat can learn to swallow pills. Each night you try small candies, five minutes, { $nights } nights. We write and tell you what to do.
card-scan = Point your phone at the square, or open:
card-scan-text = Point your phone at the square, or send a text to:
card-send = If you are asked for a code, send this:
card-parent-start = Read what you agree to and say yes. The first evening is a short lesson.
card-child-start = Get a grown-up. They stay with you each night. Then we start!
card-square = Square code that opens { $link }
card-expires = The code works once, until { $date }.
card-lost = Too old or lost? Ask your clinic for a new card.
card-private = Keep this card safe. Who has the code can join.
card-emergency = This is not an emergency line. In an emergency, call { $emergency }.
