# What a child is told. Third grade at most. $tone is young (5 to 7), middle (8 to 12) or teen (13 and over).

## Joining

consent-wait = Hi { $child }! A grown-up has to say yes first. Ask them to look at their phone.
welcome = { $tone ->
    [young] Hi { $child }! I am your swallow coach. We start at { $bedtime } with a small lesson. Then we play { $nights } nights. A grown-up is with you each time.
    [teen] Hi { $child }. I am your swallow coach. We start at { $bedtime } with a short lesson. Then come { $nights } nights, five minutes each. An adult is there each time.
   *[middle] Hi { $child }! I am your swallow coach. We start at { $bedtime } with a short lesson. Then come { $nights } nights, five minutes each. A grown-up is there each time.
}
welcome-also = { $tone ->
    [teen] Hi { $child }. I am your swallow coach. I write each night at { $bedtime }. If you need help fast, do not wait for me. Tell an adult or call { $emergency }.
   *[middle] Hi { $child }! I am your swallow coach. I write each night at { $bedtime }. If you need help fast, do not wait for me. Tell a grown-up or call { $emergency }.
}

## Lesson

lesson-intro = { $tone ->
    [young] Time for the lesson! Get a cup of water, one small candy and your grown-up. Go slow. There is no rush.
    [teen] Time for the lesson. You need water, one small candy and an adult. Set your own pace.
   *[middle] Time for the lesson! You need water, one small candy and a grown-up. Take your time.
}
lesson-again = Here is the lesson. Go as slow as you like.
lesson-throat = { $tone ->
    [young]
        Your throat is soft and wide. It can stretch like the neck of a sock!

        Put your hand on your neck. Now swallow. Did you feel it jump? That was your throat. It just made room for you.

        Tap Next when you felt it.
    [teen]
        Your throat is soft, and it is wide. Each bite of lunch is much bigger than a pill.

        Put two fingers on your neck and swallow. Feel it lift? That is how the way down opens up. It does so all day long.

        Tap Next when you felt it.
   *[middle]
        Your throat is soft and wide. It can stretch like the neck of a sock. A bite of bread is much bigger than a pill.

        Put your hand on your neck and swallow. Did you feel it jump? That is how it makes room.

        Tap Next when you felt it.
}
    .sms =
    Your throat is soft and wide. It can stretch like the neck of a sock.
    Put your hand on your neck and swallow. Did you feel it jump? That is how it makes room.
    Reply NEXT when you felt it.
lesson-posture = { $tone ->
    [young] Sit tall like a king or a queen. Back straight. Feet flat. Not on the couch! Then the way down is straight too.
    [teen] Sit up tall on a firm chair. Back straight, feet flat. Not on the couch. Then the way down is straight too.
   *[middle] Sit tall on a firm chair. Back straight. Feet flat. Not on the couch! Then the way down is straight too.
}
    .sms = Sit tall on a firm chair. Back straight. Feet flat. Then the way down is straight too. Reply NEXT.
lesson-water =
    Just water now. { $position-key ->
        [left] Turn your head to your left hand. Be gentle.
        [right] Turn your head to your right hand. Be gentle.
        [up] Lift your chin just a bit. Not far back!
        [down] Put your chin down to your chest.
       *[center] Look straight ahead.
    } Stay like that. Take one small sip and swallow. Does your neck hurt? Then leave this one out.
    .sms =
    Just water. { $position-key ->
        [left] Turn your head to your left hand.
        [right] Turn your head to your right hand.
        [up] Lift your chin just a bit.
        [down] Put your chin down to your chest.
       *[center] Look straight ahead.
    } Take one small sip and swallow. Does your neck hurt? Then leave it out. Reply NEXT.
lesson-tongue = { $tone ->
    [young] Where does the candy sit? Far back on your tongue, in the middle. That is its seat for the ride. Point to the spot!
    [teen] The candy goes far back on your tongue, in the middle. At the front it just floats. Find the spot with a clean finger.
   *[middle] The candy goes far back on your tongue, in the middle. At the front it just floats. Can you point to the spot?
}
    .sms = The candy goes far back on your tongue, in the middle. At the front it just floats. Can you point to the spot? Reply NEXT.
lesson-sip = { $tone ->
    [young] Take just a small sip. With too much, the candy goes for a swim! Close your lips. One, two, gulp!
    [teen] Take just one small sip. With too much, the candy floats. Then swallow it all in one go.
   *[middle] Take just one small sip. With too much, the candy swims off. Then swallow it all in one gulp.
}
    .sms = Take just one small sip. With too much, the candy swims off. Swallow it all in one gulp. Reply NEXT.
lesson-candy = Now one { candy-name }. Sit tall. Look straight ahead. Candy far back, small sip, gulp! You can say no. That is fine. Did it go down?
    .sms = Now one { candy-name }. Sit tall. Candy far back, small sip, gulp! You can say no. Did it go down? Reply YES, NO or SKIP.
lesson-unclear = Thank you! To go on, tap a button under the last step.
    .sms = Thank you! Reply NEXT to go on. Did you try the candy? Reply YES, NO or SKIP.
lesson-went-down = It went down! Now you know how that feels. Thank you for trying it.
lesson-not-down = It did not go down. That is fine! You gave it a try, and that is what counts.
lesson-later = No candy tonight. That is fine! You did the lesson, and that is what counts.
lesson-done = { $tone ->
    [teen] That was the lesson. I will write at { $bedtime }. There are { $nights } nights in all. See you then.
   *[middle] That was the lesson! I will write at { $bedtime }. There are { $nights } nights in all. Sleep well!
}

## The night

night-prompt =
    { $tone ->
        [young] Hi { $child }! It is night { $night } of { $nights }. Your moves:
       *[other] Hi { $child }. Night { $night } of { $nights }. Your moves:
    }
    { $order }
    One { candy-name } for each move. One small sip each.
    .sms = Night { $night } of { $nights }: { $order }. One { candy-name } each.
night-howto-1 = Sit tall. Head in place, candy far back, small sip, gulp!
    .sms = Sit tall, candy far back, small sip, gulp.
night-howto-2 = Back straight, feet flat. Set your head. Candy far back, one small sip, gulp!
    .sms = Sit tall, candy far back, small sip, gulp.
night-howto-3 = Sit up like a tree. Set your head. Candy far back, small sip, gulp!
    .sms = Sit tall, candy far back, small sip, gulp.
night-safety = { $tone ->
    [teen] Is an adult with you? If not, wait for one. You can stop at any time.
   *[middle] Is a grown-up with you? If not, wait for one. You can stop at any time.
}
    .sms = Is a grown-up with you? You can stop any time.
night-late = Last time I could not write. That was my fault, sorry! We go on now.
night-reminder = Hi there! How did it go? If you had a night off, that is fine.
ask-swallow = { $tone ->
    [young] How was { $position }? 1 is hard. 5 is easy.
   *[middle] How was { $position }? 1 is hard, 5 is easy. You can add a few words.
}
    .sms = How was { $position }? Send 1 to 5. 5 is easy. NO GO if it did not go down. SKIP if you left it out.
ask-best = Which one did you like best?
    .sms = Which one did you like best? Send its name, or NONE.
ask-note = Do you want to tell me more? Write it here, or tap the button.
    .sms = Do you want to tell me more? Write it here, or send NO.
unclear-swallow = Thank you! Now I need a number. How was { $position }? Tap 1 to 5.
    .sms = Thank you! Now I need a number. How was { $position }? Send 1 to 5, NO GO or SKIP.
unclear-best = Thank you! Which one did you like best? Tap its name.
    .sms = Thank you! Which one was best? Send its name, or NONE.
unclear-note = I did not get that. Write a few words, or tap the button.
    .sms = I did not get that. Write a few words, or send NO.
night-done =
    Thank you! I wrote down:
    { $marks }
    .sms = Thank you! I have: { $marks }.
night-best = Best one tonight: { $position }.
corrected =
    I fixed it. Now it says:
    { $marks }
    .sms = I fixed it. Now: { $marks }.
corrected-best = I fixed it. Best one tonight: { $position }.
note-kept = Thank you! I kept your note.
stale-button = That button is old. Please tap the new one.
tonight-over = We stop for tonight. No more candy. Rest well!
passed-on = Thank you for telling me! Your clinic can read it. If it can't wait, tell a grown-up.

## Wishes

only-parent = A grown-up has to ask me that. Can you show them? You can say NOT TONIGHT at any time.
help = I write each night at { $bedtime }. You can say LESSON or NOT TONIGHT. Do you need help right now? Tell a grown-up or call { $emergency }. Do not wait for me.
asked-for = Someone in your family asked for this:
paused = We take a break now. I will be here when you come back.
paused-until = We take a break now. I write again on { $day }.
paused-reply = Thank you for telling me! Your clinic can read it. We are still on a break.
resumed = Good to have you back! We go on at { $bedtime }.
bedtime-changed = New time! I will write at { $bedtime }. If your moves for tonight are here, you can do them then.
bedtime-outside = I can just write from { $earliest } to { $latest }. Ask a grown-up for a time in there.
candy-changed = You get a new candy: a { candy-name }. It starts next night.
stopped = We stop here. Thank you for each try. Bye, { $child }!
started = Hi { $child }, good to see you! I write at { $bedtime }.
start-closed = I can't start this by myself. Ask a grown-up to call the clinic.
deleted = All that I knew is gone now. Take care!
from-clinician =
    Your clinic says:
    { $words }

## Safety: first words first

safety-breathing =
    Get a grown-up now! Call { $emergency } now.
    Do what they say on the phone.
    I can't send help.
safety-allergy =
    Get a grown-up now! Call { $emergency } now.
    Do what they say on the phone.
    I can't send help.
safety-object =
    Get a grown-up now! Call { $emergency } now.
    Do what they say on the phone.
    I can't send help.
safety-poison =
    Get a grown-up now! Call { $emergency } now.
    Show them what it was.
    I can't send help.
safety-self-harm =
    You are not alone. I am glad you told me.
    Go to a grown-up you trust now. Stay with them.
    If you are not safe, call { $emergency } now. People at your clinic have been told. They want to help.
safety-danger =
    If you are not safe, call { $emergency } now.
    Go to a safe place or to a grown-up you trust.
    It is not your fault. Your clinic has been told.
safety-urgent =
    Tell a grown-up now. They should call your clinic or a doctor today.
    Is it hard to breathe? Does it hurt? Then call { $emergency } now.
    I can't send help.
safety-forced =
    You can stop. No one may force you to swallow. It is not your fault.
    Go to a grown-up you trust. If you are not safe, call { $emergency } now.
    Your clinic has been told.
hold = We stop for now. No more candy till your clinic says so.
hold-reply = Thank you! I sent that to your clinic. We still wait. Do you need help right now? Tell a grown-up or call { $emergency }.
hold-by-clinician = Your clinic says we stop for now. No more candy till they say so. It is not your fault.
hold-lifted = Your clinic says we can go on. I write at { $bedtime }.
hold-lifted-rest = All is well. There is no more for you to do.

## Concerns

concern-distress = { $tone ->
    [teen] That sounds hard. Thank you for telling me. Talk to an adult you trust. We can wait. Your clinic knows now.
   *[middle] That sounds hard. Thank you for telling me. Go to a grown-up for a hug. We can wait. Your clinic knows now.
}
concern-refusal = No is a fine answer. You are the boss of your swallow. Your clinic knows now.
concern-gag = That feels bad, I know. Your throat just tried to keep you safe. Rest now. Is it hard to breathe? Then call { $emergency }. Your clinic knows now.
concern-pressure = You do not have to rush. You are the boss of your swallow. Your clinic knows now.
concern-exhausted = You sound worn out. Rest now. All you did still counts. Your clinic knows now.
concern-shame = You did not fail. Lots of kids find this hard. Some grown-ups do too. Your clinic knows now.
concern-ill = Oh no. Rest till you feel well. Tell a grown-up how you feel. Your clinic knows now.
medicine = I do not know about that. Ask a grown-up. They can ask the clinic. Please do not take it on your own.

## The end

finish = { $tone ->
    [young] You did it, { $child }! You came back { $practised } times. You tried and tried. That is a big thing!
    [teen] That was it, { $child }. { $practised } of { $nights } nights. You kept at it. That is worth a lot.
   *[middle] You did it, { $child }! { $practised } of { $nights } nights. You kept on trying. That is a big thing!
}
finish-favourites = At first you liked { $first } best. At the end it was { $last }.
finish-same = You liked { $last } best, from first to last.
finish-next = Next you go to the clinic. You can show them what you found out. Please do not try a real pill till then.
certificate = This one is for you, { $child }!
    .sms = You made it, { $child }! Your clinic can print a page for you.
ended = Your clinic says we are done now. Thank you for each try, { $child }!

## Cheer

cheer-first-night-1 = Night one is done! You gave it a try. That is how it starts.
cheer-first-night-2 = Now you know how it goes. Thank you for your first night!
cheer-first-night-3 = You sat down and you tried. That takes guts!
cheer-first-night-hard-1 = That was hard, and you tried. That is all you had to do.
cheer-first-night-hard-2 = First nights can be hard. It was brave to try. Now rest!
cheer-first-night-hard-3 = New things feel odd at first. Think of your first bike ride!
cheer-nothing-down-1 = None went down, and that is fine. Each try counts. Your throat learns bit by bit.
cheer-nothing-down-2 = You kept on trying. That is the part that counts.
cheer-nothing-down-3 = Some nights are like that. You came, and you tried. Thank you!
cheer-one-missed-1 = You had a night off. Now we just go on!
cheer-one-missed-2 = We go on right where we were. No rush!
cheer-one-missed-3 = One night off does not hurt. Good that you are here!
cheer-several-missed-1 = Long time no see! No need to catch up. Just do tonight.
cheer-several-missed-2 = I kept your place. Start as small as you like.
cheer-several-missed-3 = It is good to see you. Let us take it slow.
cheer-coming-back-1 = You are back! We go on where you stopped.
cheer-coming-back-2 = Good to see you! Your throat still knows the trick.
cheer-coming-back-3 = Back again! Start with a sip of plain water. Then we go on.
cheer-steady-1 = That was night { $night }. You showed up, and that is the trick.
cheer-steady-2 = One more night done. Thank you for trying!
cheer-steady-3 = You keep coming back. That is how you learn new things.
cheer-steady-4 = Step by step. You took one more step tonight.
cheer-steady-5 = You know the moves by now. Nice work tonight!
cheer-steady-6 = Thank you for five good minutes!
cheer-steady-7 = You did your part. Now it is time to rest.
cheer-improving-1 = Some moves felt a bit less hard. That is what all your tries can do.
cheer-improving-2 = Can you feel it? Your throat learns from each try.
cheer-improving-3 = That went a bit more smoothly. Some nights go up, some go down. All of them count.
cheer-favourite-changed-1 = You have a new best one! Good to know.
cheer-favourite-changed-2 = You like a new move now. That is just what we want to find out.
cheer-favourite-changed-3 = A new best one! You know how to find things out.
cheer-half-way-1 = You are half way! { $night } nights done. Wow!
cheer-half-way-2 = Half way there! You kept at it, night by night.
cheer-half-way-3 = Half of it is done. Put on a song you like!
cheer-last-nights-1 = Not long now! { $left } more after tonight.
cheer-last-nights-2 = You are close to the end. Just keep on as you do.
cheer-last-nights-3 = Just a few nights are left. You know what to do!
cheer-last-night-1 = This is the last night! Have fun with it.
cheer-last-night-2 = One last time, { $child }! Take it slow.
cheer-last-night-3 = Last night! You can be glad of all your tries.
cheer-yucky-1 = It was yucky, and still you tried. That takes guts!
cheer-yucky-2 = Yuck! Thank you for telling me. Your clinic can pick a new taste.
cheer-yucky-3 = Not all candy tastes good to all. A sip of cold water can help.
cheer-tired-1 = You were tired, and you still came. Sleep well!
cheer-tired-2 = That was a long day. Thank you for trying. Good night!
cheer-tired-3 = Time to rest now. You did your part.
cheer-partial-1 = You did some of it last time. That counts! Here are the same moves.
cheer-partial-2 = You stopped when you had enough. That was right. Now we try once more.
cheer-partial-3 = Some is more than none! Here we go, same moves as last time.
cheer-skipped-1 = You left one out. That is fine! You are the boss.
cheer-skipped-2 = Thank you for telling me. You do not have to do them all.
cheer-skipped-3 = A few good tries are a good night.

## Tips: each a small game, for teenagers plain words

tip-slouch-1 = { $tone ->
    [teen] A tip: think of a string that pulls you up by the top of your head. Sit that tall.
   *[middle] Try this game: a string pulls you up by the top of your head. How tall can you sit?
}
tip-slouch-2 = { $tone ->
    [teen] Try a firm chair with both feet flat. A long neck helps it go down.
   *[middle] Sit with a small book on your head. Can you keep it there? Now put it down and swallow.
}
tip-front-1 = { $tone ->
    [teen] A tip: put it on the back half of your tongue. At the front it just floats.
   *[middle] Try this game: the candy is a bus. The stop is at the back of your tongue. Park it there!
}
tip-front-2 = { $tone ->
    [teen] Check the spot in a mirror first. Tongue out, candy far back.
   *[middle] Look in a mirror. Tongue out. Put the candy far back. Can you still see it?
}
tip-water-1 = { $tone ->
    [teen] A tip: take less water. In a full mouth the candy just floats off.
   *[middle] Try this game: your candy can't swim. Take such a small sip that it stays in its seat.
}
tip-water-2 = { $tone ->
    [teen] Pour just one small sip in a cup. Then you can't take too much.
   *[middle] Pour one small sip in a cup. Make it all gone in one gulp!
}
tip-bite-1 = { $tone ->
    [teen] A tip: keep your teeth apart and your tongue flat. Then sip right away.
   *[middle] Try this game: your teeth are asleep. Shh! Do not wake them till it is gone.
}
tip-bite-2 = { $tone ->
    [teen] Hold the cup at your lips. Candy, sip, gulp. Then there is no time to bite.
   *[middle] Hold the cup at your lips. Candy, sip, gulp! Then there is no time to bite.
}
tip-fear-1 = { $tone ->
    [teen] A tip: breathe out slow, three times. That makes your throat soft.
   *[middle] Try this game: blow out three cakes full of lights. Blow slow! Now your throat is soft.
}
tip-fear-2 = It is fine to be scared. Hold a hand. You say when to go.
tip-taste-1 = { $tone ->
    [teen] A tip: take a cold sip first. Then you can't taste so much.
   *[middle] Try this game: take a cold sip first. It makes your tongue sleepy. Then it can't taste much.
}
tip-taste-2 = { $tone ->
    [teen] Does it taste bad? Tell an adult. Your clinic can pick a new one.
   *[middle] Does it taste bad? Tell a grown-up. Your clinic can pick a new one.
}
tip-tired-1 = { $tone ->
    [teen] A tip: stand up and stretch first. Then sit down and do one.
   *[middle] Try this game: shake your arms, shake your legs, and stop. Now you are awake for one swallow.
}
tip-tired-2 = So tired? Do just two moves. That counts too.
tip-gag-1 = Try this: put the candy a bit less far back. Then sip right away.
tip-gag-2 = { $tone ->
    [teen] Breathe in through your nose, slow and deep. Do you want to go on? You choose.
   *[middle] Smell a flower, slow and deep. Do it three times. Do you want to go on? You choose.
}
