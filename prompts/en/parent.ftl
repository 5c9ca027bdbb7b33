# What a parent is told. Plain words, sixth grade at most. Praise is for practice, never for results.

## Joining

stranger-hello = Hello! This is a practice coach for families of one clinic. To join, open the link or send the code that your clinic gave you. This is not an emergency line.
which-child = This number is used for more than one child. Who is this about? Send just the name: { $names }
code-unknown = We do not know that code. Please check each letter and send it again, or ask your clinic for a new one.
code-used = That code has been used before. Please ask your clinic for a new one.
code-expired = That code is too old now. Please ask your clinic for a new one.
code-wait = That was a lot of tries. Please wait an hour, then send the code that your clinic gave you.
consent-ask =
    Welcome! Before we start, here is what you agree to.

    What we do: each night we send { $child } a short practice with small candies. You tell us how it went.

    What we keep: a first name, a birth year, your answers and your messages. Your clinic's team can read them. No one else can.

    Your choice: write PAUSE, STOP or DELETE at any time. You can ask your clinic to see all that we keep.

    To stay safe: candy can choke a child. An adult is there each time, close by. { $child } sits up tall and is 4 or older. No one is ever forced.

    This is not an emergency line. In an emergency, call { $emergency }.

    Do you agree?
    .sms =
    Welcome! Please read this first. Each night we send { $child } a short practice with small candies. You tell us how it went.
    We keep a first name, a birth year, your answers and messages. Only your clinic's team reads them. Write PAUSE, STOP or DELETE at any time. Ask your clinic to see what we keep.
    Candy can choke a child. An adult is there each time. { $child } sits up tall, is 4 or older, and is never forced.
    This is not an emergency line. In an emergency call { $emergency }.
    Do you agree? Reply YES or NO.
consent-needed = First we need to know if you agree. Please tap a button.
    .sms = First we need to know if you agree. Reply YES or NO.
consent-declined = That is fine. We will not write to you again. Your clinic will hear that you said no. Thank you for your time.
welcome = Thank you! On the first evening we start at { $bedtime } with a lesson of about half an hour. Then come { $nights } nights of practice, about five minutes each. Have some water and the small candies at hand. Write INFO at any time.
welcome-also = Welcome! You will get each night's practice at { $bedtime }, the same as the rest of the family. This is not an emergency line. In an emergency, call { $emergency }.

## Lesson

lesson-intro = Tonight is the lesson. It takes about half an hour. Sit down with { $child }, with a glass of water and one small candy. Take each step at your own pace.
lesson-again = Here is the lesson. Take each step at your own pace.
lesson-throat =
    The idea: a throat is soft and wide. It opens for each bite of food, and a bite is much bigger than a pill.

    Try this. Both of you, put a hand on the front of your neck and swallow. Feel it lift? That is the throat as it opens. Now think of the last bite of soft bread you ate. It went down whole, and you did not even look for it.

    Tap Next when you have both felt it.
    .sms =
    The idea: a throat is soft and wide. It opens for each bite of food, and a bite is much bigger than a pill.
    Try this: hand on the front of the neck, then swallow. Feel it lift? That is the throat as it opens.
    Reply NEXT when you both felt it.
lesson-posture = Now the seat. { $child } sits up tall on a firm chair, back straight, both feet flat. Not on a sofa, not lying down. You sit close, face to face. Swallows go down best in a straight line.
    .sms = Now the seat. { $child } sits up tall on a firm chair, back straight, feet flat. Not on a sofa. You sit close, face to face. Reply NEXT.
lesson-water =
    Just water now. { $position-key ->
        [left] { $child } turns the head to the left, as if to look at the left hand. A gentle turn is enough.
        [right] { $child } turns the head to the right, as if to look at the right hand. A gentle turn is enough.
        [up] { $child } lifts the chin just a little, as if to look at the top of a door. Only a small tilt, never far back.
        [down] { $child } lowers the chin to the chest, as if to look at a shirt button.
       *[center] { $child } looks straight ahead.
    } Hold the head there, take one small sip and swallow. If the neck hurts, leave this one out and tell us.
    .sms =
    Just water. { $position-key ->
        [left] Head turned gently to the left hand.
        [right] Head turned gently to the right hand.
        [up] Chin up just a little, never far back.
        [down] Chin down to the chest.
       *[center] Head straight ahead.
    } One small sip, and swallow. If the neck hurts, leave it out and tell us. Reply NEXT.
lesson-tongue = Where does the candy go? As far back on the tongue as feels fine, right in the middle. At the front it just floats when the water comes. You can practice with a clean fingertip first: { $child } points to the spot.
    .sms = The candy goes as far back on the tongue as feels fine, in the middle. At the front it just floats. { $child } can point to the spot first. Reply NEXT.
lesson-sip = How much water? One small mouthful, no more. Too much water makes the candy swim off. With too little, it sticks. Take a sip, keep it in for a blink, then swallow it all in one go.
    .sms = How much water? One small mouthful. With too much, the candy swims off. With too little, it sticks. Swallow it all in one go. Reply NEXT.
lesson-candy = Now one candy: a { candy }. Sit up tall, head straight. Candy far back on the tongue, one small sip, and swallow. { $child } may say no, and that is fine. Did it go down?
    .sms = Now one candy: a { candy }. Sit tall, head straight. Candy far back on the tongue, one small sip, swallow. A no is fine. Did it go down? Reply YES, NO or SKIP.
lesson-unclear = Thank you for writing. We kept that for your clinic. To go on, tap a button under the last step.
    .sms = Thank you, we kept that for your clinic. Reply NEXT for the next step. After the candy, reply YES, NO or SKIP.
lesson-went-down = It went down! Now { $child } knows how that feels. Thank you both for the time you took.
lesson-not-down = It did not go down, and that is fine. It was only the first try. { $child } did the lesson, and that is what counts tonight.
lesson-later = No candy tonight, and that is fine. { $child } did the lesson, and that is what counts.
lesson-done = That was the lesson. The next message comes at { $bedtime }. There are { $nights } nights of practice in all. Write LESSON to see it again.

## The night

night-prompt =
    Night { $night } of { $nights } for { $child }. Tonight's order:
    { $order }
    One { candy } for each, with one small mouthful of water.
    .sms = Night { $night } of { $nights }: { $order }. One { candy } each.
night-howto-1 = Sit up tall. Head in place, candy far back on the tongue, a small sip, then swallow it all in one go.
    .sms = Sit tall, candy far back on tongue, small sip.
night-howto-2 = First the back straight, then the head in place. Candy far back on the tongue. One small sip, and swallow it all in one go.
    .sms = Sit tall, candy far back on tongue, small sip.
night-howto-3 = Feet flat, sit up tall, head in place. The candy goes far back on the tongue. Then a small sip, and down it goes in one swallow.
    .sms = Sit tall, candy far back on tongue, small sip.
night-safety = Stay close the whole time. Never force it. If { $child } chokes, call { $emergency } and use your first aid.
    .sms = Stay close, never force. Choking: call { $emergency }.
night-late = Our last message did not reach you in time. That was our fault, and nothing is lost.
    .sms = Our last message came too late, sorry. Nothing is lost.
night-reminder = A small note, in case the evening ran away with you. There is still time to tell us how it went. If there was no practice, that is fine too.
    .sms = There is still time to tell us how tonight went. If there was no practice, that is fine too.
ask-swallow = How was { $position }, from 1 (hard) to 5 (easy)? You can add a few words.
    .sms = How was { $position }? Reply 1 to 5 (5 easy), NO GO if it did not go down, or SKIP.
ask-best = Which one did { $child } like best tonight? Let { $child } choose.
    .sms = Which one did { $child } like best? Reply its name, or NONE.
ask-note = Is there anything you want to add about tonight? Write it here, or tap the button.
    .sms = Want to add anything about tonight? Write it, or reply NO.
unclear-swallow = Thank you for writing. Your clinic's team can read it. And tonight: how was { $position }? Tap a number from 1 to 5, or say if it did not go down.
    .sms = Thank you. And how was { $position }? Reply 1 to 5 (5 easy), NO GO if it did not go down, or SKIP.
unclear-best = Thank you for writing. Which one did { $child } like best? Tap its name, or the last button if it was none of them.
    .sms = Thank you. Which one was best? Reply its name, or NONE.
unclear-note = We did not get that. Write your note in a few words, or tap the button.
    .sms = We did not get that. Write a few words, or reply NO.
night-done =
    Thank you! We wrote down:
    { $marks }
    .sms = Thank you! We have: { $marks }.
night-best = Best tonight: { $position }.
corrected =
    Changed. Now it says:
    { $marks }
    .sms = Changed. Now: { $marks }.
corrected-best = Changed. Best tonight: { $position }.
note-kept = Thank you. Your note is kept for your clinic.
stale-button = That button is from an old message. Please use the newest one.
tonight-over = Tonight's practice is over. No more candy tonight. Rest well.
passed-on = Thank you for writing. Your clinic's team can read it. If it cannot wait, please call them.

## Wishes

help = We write each night at { $bedtime }. You can say: PAUSE, RESUME, LESSON, NOT TONIGHT, STOP, DELETE, or a new time such as "bedtime 7:30 pm". For more, call your clinic. This is not an emergency line. In an emergency, call { $emergency }.
    .sms = The practice coach of your clinic, one practice a night at { $bedtime }. Message rates may apply. Say PAUSE, RESUME, LESSON, NOT TONIGHT, STOP, DELETE, or a new time such as "bedtime 7:30 pm". For more, call your clinic. In an emergency, call { $emergency }.
asked-for = Someone in your family asked us for this:
paused = Practice is paused. Write RESUME when you are ready. There is no rush.
paused-until = Practice is paused. We write again on { $day }. Write RESUME to start sooner.
paused-reply = Thank you for writing. Your clinic's team can read it. Practice is still paused. Write RESUME when you are ready.
resumed = Good to have you back. We go on at { $bedtime }.
bedtime-changed = Done. We now write at { $bedtime }. If tonight's practice is here already, you can do it then.
bedtime-outside = We can only write from { $earliest } to { $latest }. Please send a time in between, such as "bedtime 7:30 pm".
candy-changed = Your clinic chose a new candy: a { candy }. Please use it from the next night on.
stopped = We have stopped. You will not hear from us again. Write START if you change your mind. Thank you for all your practice.
started = Welcome back! We write at { $bedtime }.
start-closed = We cannot start again from here. Please ask your clinic.
delete-ask = This erases all that we keep about { $child }, for good. Are you sure?
    .sms = This erases all that we keep about { $child }, for good. Are you sure? Reply YES or NO.
delete-kept = Fine, we keep it all as it was.
delete-waits = We have stopped. Your clinic must first look at one thing you told us. Then we erase all of it and tell you.
deleted = It is all erased. Thank you, and take care.
wrong-number = Sorry for the mix-up. We will not write to this number again.
from-clinician =
    A message from your clinic:
    { $words }

## Safety: first words first

safety-breathing =
    Call { $emergency } now.
    Do what your first-aid training taught you.
    This chat cannot send help.
safety-allergy =
    Call { $emergency } now.
    Do what your first-aid training taught you.
    This chat cannot send help.
safety-object =
    Call { $emergency } now. Do not wait for signs.
    Do what your first-aid training taught you.
    This chat cannot send help.
safety-poison =
    Call { $emergency } now. Keep the pack at hand.
    Do what your first-aid training taught you.
    This chat cannot send help.
safety-self-harm =
    Call { $emergency } now if life is at risk.
    Stay close to each other. No one should be alone tonight.
    You are not alone in this. Your clinic has been told. This chat cannot send help.
safety-danger =
    Call { $emergency } now if anyone is not safe.
    Go to a safe place if you can. Your clinic has been told. This chat cannot send help.
safety-urgent =
    Call your clinic or a doctor today, even if { $child } seems fine.
    Call { $emergency } at once for: hard or noisy breathing, drooling, blue lips, pain, or a voice that has changed.
    This chat cannot send help.
safety-forced =
    Please stop for tonight. A swallow must never be forced.
    If anyone is not safe, call { $emergency } now.
    Your clinic has been told and will talk with you.
safety-child-wrote = We sent this to you as well, since { $child } wrote to us just now.
hold = Practice is on hold. No more candy until your clinic says so. Your clinic has been told.
    .sms = Practice is on hold. No candy until your clinic says so. They have been told.
hold-reply = Thank you. We passed this on to your clinic. Practice is still on hold. In an emergency, call { $emergency } now.
hold-by-clinician = Your clinic has put practice on hold. No more candy until they say so. They can tell you why.
hold-lifted = Good news: your clinic says that practice can go on. We write at { $bedtime }.
hold-lifted-rest = Your clinic has closed the hold. There is nothing you need to do.
watch-ask = How is { $child } today? Look for: a cough that stays, noisy or fast breathing, a fever, a hoarse voice, drooling, or pain in the throat or chest. Is there any of these?
    .sms = How is { $child } today? Any cough that stays, noisy or fast breathing, fever, hoarse voice, drooling, or pain in throat or chest? Reply YES or NO.
watch-fine = Good to hear. Keep an eye out. If one of these signs comes, call a doctor the same day. If breathing is hard, call { $emergency }.

## Concerns

concern-distress = That sounds hard, and we are sorry. Thank you for telling us. { $child } comes first, and practice can wait. Your clinic has been told.
concern-refusal = A no is a fine answer. Please do not push. Sit close, do something nice, and let it rest. Your clinic has been told.
concern-gag = Gagging feels bad, but it is a reflex that guards the throat. Stop here and let { $child } rest. If breathing is hard, call { $emergency }. Your clinic has been told.
concern-pressure = It is easy to push when you care so much. Let it go for tonight. It works best when { $child } is the boss of each swallow. Your clinic has been told.
concern-exhausted = You are doing a lot, and it shows. Rest comes first, for you too. Nothing is lost. Your clinic has been told.
concern-shame = No one has failed here. Many children find this hard, and so do many adults. Thank you for telling us. Your clinic has been told.
concern-ill = Sorry to hear that. Please do not practice while { $child } is ill. Call your doctor if you are worried. Write PAUSE to take a break. Your clinic has been told.
medicine = We cannot answer questions about medicine. Please ask your pharmacist or the person who prescribed it. Do not change, crush or split it before you ask. Your clinic has been told.

## The end

finish = That was it! { $child } practiced { $practised ->
        [one] one night
       *[other] { $practised } nights
    } of { $nights }. Thank you for each of those evenings. You made the time, and that is worth a lot.
    .sms = That was it! { $child } practiced { $practised ->
        [one] one night
       *[other] { $practised } nights
    } of { $nights }. Thank you for each evening.
finish-favourites = At first { $child } liked { $first } best. At the end it was { $last }.
finish-same = { $child } liked { $last } best from first to last.
finish-next = Next, your clinic looks at the numbers with you both. You choose a head position as a team. Please do not try a real pill before that.
certificate = This is for { $child }. Print it or show it off!
    .sms = { $child } has earned a certificate. Your clinic can print it for you.
ended = Your clinic has ended the program. We will not write again. Thank you for all your practice. If you have questions, please call them.

## Cheer

cheer-first-night-1 = The first night is done. You sat down and tried it as a team. That is the start that counts.
cheer-first-night-2 = One night in. { $child } now knows how it goes, and so do you. The rest is small steps.
cheer-first-night-3 = Thank you for making time tonight. The first step is often the big one.
cheer-first-night-hard-1 = First nights are often the hard ones. { $child } tried, and you were there. That is all tonight had to be.
cheer-first-night-hard-2 = That was not easy, and you both stayed with it. Tomorrow starts fresh.
cheer-first-night-hard-3 = Hard is normal on night one. The body learns this bit by bit, as with riding a bike.
cheer-nothing-down-1 = None went down tonight, and still { $child } practiced. Each try teaches the throat a bit. Tell { $child } you saw the effort.
cheer-nothing-down-2 = A night like this is part of learning. You do not need to fix it. Just come back tomorrow.
cheer-nothing-down-3 = Trying counts, and { $child } tried. If you like, end with a sip of plain water and a hug.
cheer-one-missed-1 = Last night was a night off. That happens to all of us. Tonight we just go on.
cheer-one-missed-2 = One missed night does no harm. Nothing is lost. Here is tonight.
cheer-one-missed-3 = Evenings can be full. Good that you are here now. We pick up where we were.
cheer-several-missed-1 = It has been a few nights. No need to catch up. Five calm minutes tonight are plenty.
cheer-several-missed-2 = Life got in the way, and that is fine. You can start small: just do what feels good tonight.
cheer-several-missed-3 = We kept your place. If this time of day does not suit you, send us a new one, such as "bedtime 7 pm".
cheer-coming-back-1 = Good to see you both again. We go on from where you stopped.
cheer-coming-back-2 = Welcome back. What { $child } has learned does not go away with a break.
cheer-coming-back-3 = Back again! Take it slow tonight. A sip of plain water first is a nice warm-up.
cheer-steady-1 = Night { $night } is done. Showing up is the whole trick, and you showed up.
cheer-steady-2 = Another night in the book. Thank you both.
cheer-steady-3 = You keep coming back. That is how a skill grows.
cheer-steady-4 = { $night } nights of practice so far. Each one adds to the rest.
cheer-steady-5 = Thank you for tonight. It may feel small, but small steps add up.
cheer-steady-6 = You gave { $child } five good minutes tonight. That is time well spent.
cheer-steady-7 = Done for tonight. Tell { $child } one thing you liked.
cheer-improving-1 = Tonight felt a bit easier than last time. That is what practice does. It will go up and down, and that is fine.
cheer-improving-2 = All these evenings are doing their work. Tell { $child } you have seen how they keep at it.
cheer-improving-3 = A smoother night. Enjoy it! Some nights will still be bumpy, and they count just the same.
cheer-favourite-changed-1 = A new favorite tonight. Good to know! This is just what we want to find out.
cheer-favourite-changed-2 = { $child } liked a new one best. Trying them all is what shows the way.
cheer-favourite-changed-3 = The favorite has moved. That is normal. Each night tells us more.
cheer-half-way-1 = Half way! { $night } nights done, { $left } to go. Thank you for each one.
cheer-half-way-2 = You are at the half-way mark. Do something nice with { $child } to mark it. A game or a story will do.
cheer-half-way-3 = Half of the nights are behind you. You have made this a habit, and that is the hard part.
cheer-last-nights-1 = We are close to the end. After tonight there are { $left } more.
cheer-last-nights-2 = The last stretch starts tonight. No need to push now. Just do it the way you always do.
cheer-last-nights-3 = Only a few nights are left. { $child } has put in real work, night after night.
cheer-last-night-1 = This is the last night. Take your time and enjoy it as a team.
cheer-last-night-2 = One last time. However it goes, you have both done what you set out to do.
cheer-last-night-3 = Last night of practice! After this you and your clinic look at what { $child } found out.
cheer-yucky-1 = Not every candy tastes nice to every child. Your clinic can choose another. Just ask them.
cheer-yucky-2 = Thank you for telling us about the taste. A sip of water before and after can help.
cheer-yucky-3 = Yucky and still tried! That takes nerve. Tell { $child } so.
cheer-tired-1 = Tired nights are the hardest nights. Thank you for trying. An earlier time may help. Just send us one.
cheer-tired-2 = You were tired and still came. If tomorrow is the same, write NOT TONIGHT. That is fine.
cheer-tired-3 = It has been a long day for you all. Enough for now. Sleep well.
cheer-partial-1 = Last time you did a part of it. A part counts. Tonight you have the same order once more.
cheer-partial-2 = Some of it is better than none of it. Here is the same order for tonight.
cheer-partial-3 = You stopped when it was enough, and that was right. Tonight is a new try.
cheer-skipped-1 = Skipping one is fine. { $child } is the boss of each swallow.
cheer-skipped-2 = You left one out tonight. Thank you for telling us, that is good to know.
cheer-skipped-3 = No need to do them all. A calm night with fewer beats a hard night with more.

## Tips

tip-slouch-1 = A tip: use a firm chair with feet flat on the floor or on a box. When the back is bent, the way down is bent too.
tip-slouch-2 = Something to try: before each swallow, both of you stretch up as if a string pulls at the top of the head. A long neck makes an easy way down.
tip-front-1 = A tip: the candy may lie too far in front. There it floats when the water comes. Set it on the back half of the tongue, in the middle.
tip-front-2 = Something to try: { $child } can check the spot in a mirror first. Tongue out, candy far back, tongue in, sip, swallow.
tip-water-1 = A tip: try less water. In a full mouth the candy swims, and the throat has to swallow twice. A small mouthful goes down in one go.
tip-water-2 = Something to try: pour one small mouthful into a cup, and no more. Then { $child } cannot take too much by mistake.
tip-bite-1 = A tip: biting is a habit, not a fault. Teeth stay apart and the tongue stays flat. Sip right after the candy, so there is no time to chew.
tip-bite-2 = Something to try: let { $child } hold the sip in a cup, ready at the lips. Candy, sip, swallow: the quicker it goes, the less there is to bite.
tip-fear-1 = A tip: slow it down. Three slow breaths out before each swallow make the throat soft. Start with plain water if you like.
tip-fear-2 = When it feels scary, there is no need to talk { $child } out of it. Say "I see it is scary, and I am here". Let { $child } say when to go.
tip-taste-1 = A tip: a sip of cold water first makes the taste weaker. The less time the candy lies there, the less there is to taste.
tip-taste-2 = You can ask your clinic for a candy with another taste. Please do not swap it on your own.
tip-tired-1 = A tip: try half an hour sooner. A tired mouth works slowly. Send us a new time, such as "bedtime 7 pm".
tip-tired-2 = On a tired night, stop while it still feels good. Two calm swallows beat five hard ones.
tip-gag-1 = A tip: a gag comes when the candy touches the spot too soon. Set it a bit further front, then sip at once.
tip-gag-2 = After a gag, wait until it has passed, with slow breaths through the nose. Only go on if { $child } wants to.
