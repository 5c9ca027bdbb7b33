# Words that every reader shares: names, marks, the clock, labels of pictures and buttons.
# Dial: $child is the name to be called by, $emergency the local emergency number, $tone the child's age group.

## Positions, candies, marks. `-key` variables are for choosing a wording, never for showing.

position = { $position-key ->
    [left] Left
    [right] Right
    [up] Up
    [down] Down
   *[center] Center
}
order-item = { $number }. { $position }
    .sms = { $number } { $position }
mark = { $mark ->
    [not_down] did not go down
    [skipped] skipped
   *[other] { $mark }
}
mark-item = { $position }: { $mark }
candy-name = { $candy ->
    [mint] small mint
   *[hard] small hard candy
}
candy = { candy-name } ({ $size } mm)
none = none

## What a reply was about, for clinicians

category = { $category ->
    [choking] choking
    [breathing] trouble breathing
    [colour] blue or pale
    [collapse] collapse
    [allergy] allergic reaction
    [battery_or_magnet] swallowed a battery or magnet
    [overdose] took too much of something
    [self_harm] self-harm
    [danger] somebody in danger
    [choked] choked earlier
    [airway] airway signs
    [stuck] something stuck
    [swallowing] trouble swallowing
    [vomiting] vomiting
    [after_choke] signs after a choke
    [neck] neck pain or tingling
    [hives] hives
    [wrong_object] swallowed something else
    [forced] forced to swallow
    [unsafe] practice not safe
    [distress] distress
    [refusal] refusal
    [gag] gagging
    [pressure] pressure on the child
    [exhausted] family exhausted
    [shame] shame
    [ill] child ill
    [medicine] question about a medicine
   *[other] { $category }
}

## Time

clock = { $hour12 }:{ $minute } { $half }
day = { $weekday ->
    [1] Monday
    [2] Tuesday
    [3] Wednesday
    [4] Thursday
    [5] Friday
    [6] Saturday
   *[7] Sunday
}, { $month ->
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
} { $day }

## Said when a text cannot be shown

fallback = We could not show a message here. If anyone is in danger, call your local emergency number now. If not, please call your clinic.

## Buttons

button-agree = I agree
button-decline = No, thank you
button-next = Next
button-down = It went down
button-not-down = It did not go down
button-later = Leave it for now
button-skip = Skip
button-no-best = None of them
button-no-note = No note
button-yes = Yes
button-no = No
button-rate = { $rating }
button-position = { $position }

## Labels of pictures

picture-mirror = Like in a mirror
picture-left-hand = LEFT hand
picture-right-hand = RIGHT hand
picture-left-letter = L
picture-right-letter = R
picture-position = { $position-key ->
    [left] LEFT: turn to your left hand
    [right] RIGHT: turn to your right hand
    [up] UP: chin up, just a little
    [down] DOWN: chin to your chest
   *[center] CENTER: look straight ahead
}
picture-order = Tonight, from first to last
picture-posture = Sit up tall
picture-posture-back = back straight
picture-posture-feet = feet flat
picture-posture-adult = an adult is there
picture-tongue = Candy on the back of the tongue
picture-tongue-here = here
picture-tongue-not = not here
picture-sip = One small mouthful
picture-sip-good = a small sip
picture-sip-much = too much
picture-throat = Your throat is wide and soft
picture-throat-candy = small candy

## Certificate

certificate-title = Certificate of practice
certificate-for = This is for
certificate-body = { $nights ->
    [one] for one night of swallow practice.
   *[other] for { $nights } nights of swallow practice.
}
certificate-praise = You showed up. You tried. You told us how it felt.

## The proof page

proof-title = All texts and pictures, to be signed off
proof-intro = Read as a family would. Names, times and numbers are examples. Where three ages differ, each is shown.
proof-signed = Read and approved (name, date, signature)
proof-pictures = Pictures
proof-audience = { $audience ->
    [parent] What parents are told
    [child] What children are told
   *[clinician] What the clinic is told
}
proof-tone = { $tone ->
    [young] 5 to 7
    [middle] 8 to 12
    [teen] 13 and over
   *[all] all ages
}
proof-chat = chat, { $length } characters
proof-sms = SMS, { $length } characters, { $segments ->
    [one] one segment
   *[other] { $segments } segments
}
