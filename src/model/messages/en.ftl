# Every word of the program's own that stands on a page, in English (Fluent syntax). Templates ask for them by id:
# say(id="still-possible"), say(id="hand-over-spent", n=7). Words of guides are not here.

## The language, in its own words
language-name = English
other-languages = This page in other languages:

## The frame of a page
skip = Skip to the page
short-cuts = Short cuts
you-are-here = You are here
front-page = What do you see?
jobs = Jobs
limits = Limits
all-pages = All pages
find = Find
link-page = Page
link-handbook = Handbook
link-kind = Kind
link-edition = Edition
link-code = Code of this page
what-leads-here = What leads here
used-in = Used in
used-in-n = Used in { $n } places
print-sheet = Print the bench sheet
back-to = Back to: { $title }
start-again = Start again
forget = Clear my ticks and readings

## Kinds of pages
kind-front = What do you see?
kind-kit = Item
kind-lamps = By what the lamp does
kind-lamps-tester = What the lamps of a tester show
kind-lamps-apparatus = What the lamps of the apparatus show
kind-how = How it works
kind-symptom = Fault finding
kind-question = Question
kind-ending = Cause and remedy
kind-procedure = Job
kind-checklist = Check
kind-circuit = Circuit
kind-limits = Limits
kind-stores = Stores
kind-words = Words
kind-sheet = Bench sheet
kind-sheets = Bench sheets
kind-jobs = Jobs and checks
kind-fetch = What to fetch
kind-learning = Way to learn
kind-stop = Stop on the way
kind-practices = Practice bench
kind-practice = Practice bench
kind-cards = Exercise cards
kind-about = About this edition
kind-writing = Writing guides
kind-all = All pages
kind-word = Word
kind-part = Part
kind-tool = Tool
kind-consumable = Consumable
kind-limit = Limit
kind-seen-on = { $kind }, { $seen }

## Search
search-label = Find a page
search-found = { $n ->
    [0] No page found. Try the name of the item or the part.
    [one] 1 page found
    [12] 12 pages or more; the first 12 stand here
   *[other] { $n } pages found
}

## Wording
wording = Wording on this page
wording-full = full
wording-short = short

## Front page, items, lists
front-lead = Follow the line from weapon to apparatus and press what you suspect.
front-by-lamp = Or go by what the lamp does.
by-lamp = By what the lamp does
lamps-lead = Choose the item and the instrument, or go by what the lamp does.
lamps-mean = What the lamps mean
lamps-mean-how = A lamp shows whether current runs round. Each of these pages says which lamp is which, and why it burns or stays dark.
lamp-key = The signs for a lamp
lamps-of-title = { $item } { $seen }: what the lamps show
nothing-wrong = Nothing wrong
two-lamps = One sign: what the lamp does all the time. Two: first at rest, then pressed. A guide about certain hits has one for each of them.
checks = Checks
all-jobs = All jobs and checks
kit-places = By part of the item
kit-places-how = Press a part on the drawing to come to its place here.
kit-place-causes = What can be wrong
kit-place-nothing = No guide is about this part.
all-see = { $kind }, see { $title }
any-item = Any item
circuits = Circuits
symptom-note = { $seen }: { $causes ->
    [one] 1 cause
   *[other] { $causes } causes
}, about { $minutes ->
    [0] a minute
    [one] 1 minute
   *[other] { $minutes } minutes
}
n-checks = { $n ->
    [one] 1 thing to look at
   *[other] { $n } things to look at
}
seen-on-tester = on a tester
seen-on-apparatus = at the apparatus
seen-on-meter = on a meter
seen-on-eye-and-hand = by eye and hand
lamp-group-always-lit = Always lit
lamp-group-never-lit = Never lit
lamp-group-comes-and-goes = Comes and goes
lamp-group-other = Anything else

## Lamps
lamp-lit = lit
lamp-dark = dark
lamp-comes-and-goes = comes and goes
lamp-light-white = white { $state }
lamp-light-coloured = red or green { $state }
lamp-light-yellow = yellow { $state }
lamp-at-rest = { $state } at rest
lamp-pressed = { $state } while pressed
lamp-in-position = { $state } ({ $position })

## The chain on the front page
chain-drawn = The line from weapon to apparatus, drawn
chain-listed = The line from weapon to apparatus, as a list
chain-note = A foil, laid out. The heavy line is the way of the current, from the tip to the lamp.
on-the-line = On the line
on-the-bench = On the bench
chain-weapon = Weapon
chain-body-cord = Body cord
chain-jacket = Jacket
chain-mask = Mask
chain-reel = Reel
chain-floor-cable = Floor cable
chain-apparatus = Apparatus
chain-tester = Tester
chain-meter = Meter

## Rails
rail = { $item }, place by place
rail-with-shares = { $item }, place by place, shares in 100
place-tip = Tip
place-barrel = Barrel
place-blade = Blade
place-guard = Guard
place-lining = Lining
place-socket = Socket
place-grip = Grip
place-pommel = Pommel
place-point = Point
place-weapon-plug = Weapon plug
place-weapon-end = Weapon end
place-clip = Clip
place-clip-lead = Clip lead
place-reel-end = Reel end
place-reel-plug = Reel plug
place-mask-clip = Mask clip
place-mask-end = Mask end
place-wire = Wire
place-jacket-end = Jacket end
place-jacket-clip = Jacket clip
place-strap = Strap
place-padding = Padding
place-mesh = Mesh
place-rim = Rim
place-bib = Bib
place-clip-point = Clip point
place-collar = Collar
place-flap = Flap
place-sleeve = Sleeve
place-front = Front
place-zip = Zip
place-seam = Seam
place-hem = Hem
place-cable-socket = Cable socket
place-cable = Cable
place-drum = Drum
place-spring = Spring
place-rings = Rings
place-frame = Frame
place-outlet = Outlet
place-sockets = Sockets
place-case = Case
place-leads = Leads
place-lamp = Lamp
place-switch = Switch
place-holder = Holder
place-battery = Battery

## Shares and minutes
in-100 = in 100
share-about = { $n }
share-under = under { $n }
share-over = over { $n }
not-on-this-list = Not on this list
minutes = Minutes
so-far = so far
to-go = to go
spent-n = { $n ->
    [0] none yet
   *[other] { $n }
}
about-n = { $n ->
    [0] none
   *[other] about { $n }
}
n-min = { $n ->
    [0] under 1 min
   *[other] { $n } min
}
n-h = { $n } h
n-h-min = { $h } h { $n } min
now = now
at-most-n = at most { $n }
open-now = Open now: { $what }. Closing takes { $n ->
    [0] under a minute
    [one] 1 minute
   *[other] { $n } minutes
}.

## A symptom page
another-fault = That is another fault: { $title }
first-heading = Is it this item at all?
go-on-here = Go on here.
question-1 = Question 1 of at most { $of }, about { $average ->
    [0] a minute
    [one] 1 minute
   *[other] { $average } minutes
} to the remedy, at most { $most }
what-it-can-be = What it can be
shares-estimated = The armourer’s estimate, tip to plug. The list covers { $listed } in 100 cases. Rounded figures need not add up to 100.
shares-counted = { $n ->
    [one] From 1 case
   *[other] From { $n } cases
} at the club, tip to plug. The list covers { $listed } in 100. Rounded figures need not add up to 100.
shares-few = Only { $n ->
    [one] 1 case was
   *[other] { $n } cases were
} counted. The shares may be far off: take them as a hint.
shares-few-how = How far each may be off
shares-few-row = { $seen } of { $of }; nine times in ten between { $low } and { $high } in 100
map-heading = Map of the questions
map-how = Time runs down each branch: a figure is the minutes spent when one comes there on it. The width of the stream is what is not yet explained, in 100 cases. The map numbers all its questions; on a page the number says how many you were asked.
map-in-words = The same in words
map-title = Map of the questions. Time runs down; the width of the stream is the share of cases not yet explained. The list below says the same in words.
n-others = { $n ->
    [one] 1 other
   *[other] { $n } others
}
after-minutes = { $n ->
    [0] known in under a minute
    [one] known after 1 minute
   *[other] known after { $n } minutes
}
on-to-question = on to question { $n }
why-heading = Why this order
order = Order
order-quickest = Quickest
order-as-written = As written
order-used = (used here)
orders-caption = Minutes until the remedy is known, closed up again
on-average = On average
at-most = At most
order-saves = The quickest order would save about { $n ->
    [one] 1 minute
   *[other] { $n } minutes
} on average.
order-not-proved = The quickest order is the best one found; there may be a better one.
not-told-apart = No question here tells these apart, though their remedies differ: { $causes }.
same-all-session = A fault that comes and goes is taken to behave the same for the whole session.
see-circuit = See it in the circuit

## Questions and answers
answers = Answers
question-n = Question { $n } of at most { $of }
cannot-tell = I cannot tell
how-to = How to: { $job }
shut-first = Shut first
open-first = Open first
trial-fix = A trial fix: if it helps, you are done.
answer-works = It works now
answer-no-change = No change
follows-found = Then it is: { $found }. You are done looking.
follows-mended = Mended: { $found }. You are done.
follows-choice = Then one remedy of a few is left. You are done looking.
follows-not-listed = Then it is not on this list.
follows-nothing-fits = Then no cause on the list fits what you saw.
follows-goes-on = { $left ->
    [one] Then 1 cause is left.
   *[other] Then { $left } causes are left.
} On to question { $next }.
who-anyone = Anyone
who-supervised = With somebody beside you who can do it
who-adult = Adults only

## Where you are
where-you-are = Where you are
still-possible = Still possible
ruled-out = Ruled out
by-question = by question { $n }
hand-over = Hand over
hand-over-seen = Seen: { $what }.
hand-over-spent = { $n ->
    [0] Under a minute spent.
    [one] 1 minute spent.
   *[other] { $n } minutes spent.
}
hand-over-open = Open now: { $what }.
hand-over-how = Read it out, copy it, print it, or send the address of this page: it holds the answers so far.
hand-over-copy = Copy
hand-over-print = Print this alone
hand-over-copied = Copied.
hand-over-not-copied = This browser does not let a page copy. Mark the words and copy them by hand.
way-back = Go on where you left
way-back-forget = Forget it

## Endings
mend-it = Mend it
if-it-is = If it is: { $what }
close-up = Close up, last opened first
lasting = Lasting
stop-gap = Stop-gap
stop-gap-buys = Stop-gap: buys { $time }
do-it = Do it
takes = takes
then-wait = then wait { $time }
ending-kind-one-cause = Cause found, after { $n } minutes
ending-kind-one-remedy = Remedy found, after { $n } minutes
ending-kind-mended = Mended, after { $n } minutes
ending-kind-choice = A choice of remedies, after { $n } minutes
ending-kind-not-listed = Not on this list, after { $n } minutes
ending-kind-nothing-fits = Nothing fits, after { $n } minutes
ending-kind-hand-over = Hand over, after { $n } minutes
ending-one-cause = Cause found
ending-one-remedy = One remedy mends it
ending-mended = It works again
ending-choice = A few remedies are left
ending-not-listed = Not on this list
ending-nothing-fits = Nothing on the list fits
then-hand-over = Then: hand over.
ending-hand-over = Hand over to somebody with a meter
ending-says-one-cause = This is what your answers leave.
ending-says-one-remedy = It is one of these, and one remedy mends them all.
ending-says-mended = It works again. Close up and prove it.
ending-says-choice = Your answers leave these, and they want different remedies. Begin with the likeliest.
ending-says-not-listed = No cause on the list is left: the damage is hidden or rare.
ending-says-nothing-fits = What you saw fits no cause on the list. Start again with fresh eyes, or ask somebody to look with you.
ending-says-hand-over = Too much could not be told. Hand over to somebody with a meter; what you found is at the side.

## Jobs
hands-on = hands on
waiting = waiting
who = who
not-when = When not to do it
what-proves-it = What proves it
lay-out = Lay out
before-you-start = Before you start
steps = Steps
prove-it = Prove it
then = Then
mends = What it mends
lasting-is = What lasts:
wait = wait
torque = torque
thread-dry = dry
thread-oiled = oiled
shop-value = shop value
shop-values = The club’s own values.

## Steps, ticks, readings
step-done = Step { $n } done
proof-done = Proof { $n } done
item-good = Item { $n } good
ready = { $what }: done
not-read-yet = not read yet
not-a-number = not a number
below-nothing = less than nothing: measure again
inside = inside
outside = outside
too-close = too close to call
reading-doubt = { $tool } may be off by { $off }
reading-leads = Leads alone, tips held together
reading-less-leads = without the leads:
limit = limit

## Checklists
check-items = What to look at
if-not = If not:
all-good = When all is good

## Limits
limits-lead = Rule limits say where they stand; shop values are the club’s own and say so.
what = What
limit-head = Limit
how-measured = How it is measured
source = Source
looked-up = Looked up on { $day }
range-to = to
colon = { ":" }
decimal-mark = .
bound-at-most = at most { $value }
bound-less-than = under { $value }
bound-at-least = at least { $value }
bound-more-than = over { $value }
bound-between = { $value }
bound-must-register = must register { $value }
bound-must-not-register = must not register { $value }
bound-must-lift = must lift { $value }
bound-must-pass = must pass { $value }

## Circuits, stores
value = Value
place = Place
circuit-parts = What it is made of
circuit-faults = Faults
circuit-positions = Positions
circuit-drawn = How the current runs
circuit-drawn-how = The wide band is the live loop.
circuit-at-rest = At rest, nothing touched
circuit-closed = The loop is closed.
circuit-way-closed = A way for the current: { $one } – { $other }.
circuit-way-open = No way for the current: { $one } – { $other }.
circuit-open = The loop is open.
circuit-instrument = Plug and tester
lamp-may = may be lit or dark
circuit-fault = fault
circuit-lamps = What you see and what it means
circuit-see = You see
circuit-means = It means
circuit-look-up = Look it up
circuit-sound = Sound
no-guide = No guide
count-of-faults = { $n ->
    [one] one fault can show it
   *[other] { $n } faults can show it
 }
circuit-figure-sound = Sound kit, held the same way:
lamps-by-kit = Choose the item and the instrument
lamps-of-lead = Find the lamp, then the row that does what yours does.
lamps-of-lead-together = Find the row in which every lamp does what yours does. If you saw only one lamp, go to its own table.
lamps-together = All lamps together, { $seen }
lamps-as-sound = { $n ->
    [one] the other lamp as with sound kit
   *[other] the other { $n } lamps as with sound kit
}
lamps-of-others = Other guides
lamps-of-other = { $title }, { $seen }
lamps-by-kit-how = Computed from the circuits. A fault stands in every row that it can show.
lamp-and-instrument = { $lamp }, { $seen }
circuit-guides = Where it is used
parts = Parts
tools = Tools
consumables = Consumables
substitute = Instead:

## Safety: the signal words of ANSI Z535.6
signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
signal-notice = NOTICE

## Sheets
sheets-lead = Sheets to print, tick, write on and sign. Each carries its code: the same code today means it is still current.
sheet-of = { $book }, bench sheet
print-how = Print with no scaling.
sheet-number = Number
sheet-owner = Owner
sheet-name = Name
sheet-date = Date
sheet-signed = Signed
sheet-code = Code
sheet-page-of = Page { $n } of { $m }
sheet-seen = Seen
sheet-qr = QR code of { $address }
sheet-found = { $minutes }, { $share } in 100 found by then
sheet-open = { $job }, { $minutes }
sheet-it-is = It is: { $causes }.
sheet-do = Do: { $jobs }.
sheet-on-to = → question { $n }
sheet-else-on-to = If not: → question { $n }
sheet-not-listed = Not on this list: see the end of the questions.
sheet-print = Print
sheet-notes = Notes
sheet-done = What was done
sheet-stop-gap = stop-gap, marked, lasting remedy due
sheet-what-it-was = What it was
sheet-another = another cause:
sheet-as-pdf = The same as a PDF
sheet-queue-number = Number in the queue
sheet-fencer = Fencer
queue-piece = no. { $n } passed
queue-passed = passed
queue-why = If not, why:
slip-heading = Did not pass
slip-how = Cut off and hand back. What is ticked did not pass.
slip-which = Ring which:
slip-mended-by = How to mend it:
failures-title = { $title }: what failed
failures-how = One page for the whole event. For every tick on a slip, draw a stroke beside the guide that it names. Add up afterwards: the guide with the most strokes is what to teach next.
failures-event = Event
failures-fencers = Fencers controlled
failures-guide = How to mend it
failures-items = Did not pass
failures-strokes = Strokes
failures-total = In all
failures-no-guide = No guide yet: write one
by-feel = By feel:
torque-unjudged = Not held against a proof load: none is published for this material.
fetch-lead = What to lay out for each job and check, and how long it takes for several pieces.
fetch-model = The times are for one pair of hands: hands-on times add up; waiting goes on beside other work, so that only the longest wait is added.
fetch-together = For several guides together: coquille sheet --kit GUIDE GUIDE
fetch-several = For several together
fetch-several-how = Tick below what you will do. Parts and times add up here; each tool is fetched once.
fetch-pieces = For how many pieces?
fetch-pick = Take this along
fetch-print = Print this list
fetch-untick = Start again
fetch-times = { $n } × { $what }
fetch-for = For { $n ->
    [one] 1 piece
   *[other] { $n } pieces
}
fetch-in-all = in all
stop-gap-holds = buys { $time }
good = good
not-good = not good
go-on = go on
since = since

## Ways to learn and self-checks
way-stops = Stops, in the order that builds up
way-minutes = in all
way-done = { $title }: done
way-can = Afterwards you can
way-after = After the last stop
stop-n = Stop { $n } of { $of }
stop-read = Read
stop-practise = Practise
stop-on-the-bench = Find a fault on the practice bench
stop-before = Stop before: { $title }
stop-after = Next stop: { $title }
stop-way = The whole way
check-heading = Check yourself
check-how = The questions are made from the guides that this stop names, to read and to practise, and from their limits and circuits. One answer is right.
check-limit = { $about }{ $of ->
    [none] {""}
   *[other] {" "}({ $of })
}: what is the limit?
check-lamp-sound = { $about }, all sound. What does this lamp do { $seen }: { $of }?
check-lamp-fault = The fault is: { $about }. What does this lamp do { $seen }: { $of }?
check-first-question = “{ $of }”: which of these questions comes first?
check-first-step = “{ $of }”: which of these steps comes first?
check-danger = “{ $of }”: what must you take care of?
check-right = Right.
check-wrong = Not that one. Try again, or open the answer.
check-answer = Answer
check-told = It stands here:
check-sum = Right at the first try:

## The practice bench
practice-lead = Find a fault before a real one finds you. The bench sets a faulty item; you look, test, and name the cause and the remedy.
practice-level = How much you are told
practice-level-1 = With help
practice-level-2 = On your own
practice-level-3 = From memory
practice-level-says-1 = You see what is still possible, and which question the quickest way would ask next.
practice-level-says-2 = You see minutes and answers, nothing else.
practice-level-says-3 = No minutes, and the remedy is one of all jobs on that item.
practice-teacher = A word sets the fault: everybody who sets the same word, or opens the same address, finds the same fault.
practice-without = Without scripting the bench cannot set a fault. The exercise cards do the same on paper.
practice-cards = Exercise cards
practice-cards-n = { $n ->
    [one] 1 card
   *[other] { $n } cards
}
practice-bench = Practice bench
practice-all = All exercises
practice-set = A fault is on the bench. Find it in as few minutes as you can; the minutes are counted as on the real bench.
practice-seed = Word that sets the fault
practice-use-seed = Set it
practice-again = Another fault
practice-seen = What is seen
practice-isolated = That it is this item, and no other, was found out before.
practice-spent = Minutes so far:
practice-open = Open now:
practice-nothing = nothing
practice-do = What you can do
practice-how = How it is done
practice-opens = Opens first: { $what }
practice-next = The quickest way would do this next.
practice-reading = Or take a reading of the circuit
practice-reading-takes = A look at a lamp counts half a minute, a reading of a meter one. Opening is not counted.
practice-choose = Choose
practice-read = Take the reading
practice-unknown = The circuit does not cover what is on the bench: nothing to read, no minutes counted.
practice-shows-lit = lit
practice-shows-dark = dark
practice-shows-sounds = it sounds
practice-shows-silent = it is silent
practice-shows-in = within the limit
practice-shows-over = over the limit
practice-shows-open = no connection
practice-shows-comes-and-goes = it comes and goes
practice-possible-how = In 100 cases with the same answers.
practice-enough = You know enough: name it.
practice-name-it = Name it
practice-cause = What is it?
practice-remedy = What mends it for good?
practice-put-aside = None of these: tag it and hand it over
practice-your-name = Your name, if you like; it stays on this device
practice-judge = Name it and see
practice-name-both = Choose a cause and a remedy first.
practice-outcome = How you did
practice-was = It was
practice-mends = What mends it for good
practice-cause-right = The cause is right.
practice-cause-same = Another cause, but the same remedy mends both: you did not have to tell them apart.
practice-cause-wrong = The cause is not right.
practice-remedy-right = The remedy is right.
practice-remedy-gap = Your remedy only buys time; the lasting one stands above.
practice-remedy-wrong = The remedy is not right.
practice-guess = You named it before it was certain. Still possible was:
practice-is-right = right
practice-is-same = same remedy
practice-is-gap = stop-gap
practice-is-wrong = wrong
practice-own-way = Your way
practice-least-way = The way with the least expected minutes
practice-least-note = That way is the quickest on average over all cases. For one fault another way can be quicker by luck.
practice-did = What was done
practice-answer = Answer
practice-out = Ruled out
practice-less-likely = nothing for certain
practice-needless = not needed: the remedy was known
practice-closing = Closing up
practice-total = In all
practice-results = Results on this device
practice-results-where = They are kept by this browser and are sent nowhere. Some browsers keep them for each page by itself.
practice-csv = Save as a table (CSV)
practice-print = Print
practice-forget = Clear the results
practice-field-when = When
practice-field-name = Name
practice-field-guide = Guide
practice-field-seed = Word
practice-field-level = Level
practice-field-cause = Cause
practice-field-remedy = Remedy
practice-field-minutes = Minutes
practice-field-least = Quickest way
practice-field-steps = Steps
cards-lead = Two people and a card: one works from the front, the other holds the back and answers.
cards-how = Print on both sides: each back stands on the page after its front. Do not show the number’s back before the cause is named. On the bench the word CARD-1 sets the fault of card 1.
card-n = Card { $n }
card-do = Say what you would do next; you are told what you see. Add up the minutes. Opening counts once.
card-opening = Opening, minutes to open + to close again, once:
card-turn = Show the back of card { $n }
card-back = Back of card { $n }
card-answers = Answers, in the order of the front
card-least = The way with the least expected minutes, with the minutes so far
card-closed = With { $closing } min for closing up: { $value } min in all.
card-beside = This way does not part it from the following; the same job mends them all:
minutes-exact = { $value } min

## About this edition
code-of-handbook = code of the handbook
open-heading = What remains open
open-count = { $n ->
    [0] Proofed, and nothing is open.
    [one] Proofed: 1 advice is open.
   *[other] Proofed: { $n } advices are open.
}
accepted-heading = Accepted
accepted-because = Accepted because: { $because }
sources-heading = Sources of the limits
estimated-heading = Shares that are estimates
counted-heading = Shares that were counted
withdrawn-heading = Withdrawn sheets: do not use
use-instead = Use instead:

## Writing guides
writing-lead = A guide is one file of plain text. Here is each kind with its keys and a guide of this handbook as an example.
writing-handbook = The handbook itself
writing-symptom = Fault-finding guides
writing-procedure = Jobs
writing-checklist = Checklists
writing-circuit = Circuits
writing-stores = Stores
writing-limits = Limits
writing-words = Words
writing-pack = Guides from elsewhere
writing-learning = Ways to learn
writing-keys = Its { $n ->
    [one] 1 key
   *[other] { $n } keys
}
writing-from = An example: { $file }
must = must be there
findings-heading = Every finding
finding-error = error
finding-advice = advice

## What a handbook holds
count-symptoms = Fault-finding guides
count-procedures = Jobs
count-checklists = Checks
count-circuits = Circuits
count-limits = Limits

## The proof of a remedy, at an ending
then-prove-it = When it is mended, prove it
prove-after = After “{ $job }”, prove it

## Editions and prints
kind-changes = What changed
kind-prints = Is my print current?
kind-notice = Notice of withdrawn sheets
changed-since = Changed since { $edition }: see what it said before
changed-within = Changed within this edition: see what it said before
changes-lead = Page by page, with what it said before. A print of the old wording is out of date.
changes-step = { $edition }, since { $since }
changes-within = Within { $edition }
changes-sheets = Sheets to print again
changes-pages = Pages
changes-no-words = The words are the same; a figure, a drawing or a picture changed.
change-came = New.
change-went = No longer in the handbook.
change-codes = It was { $was } and is now { $now }.
it-said = It said
it-says = It says now
it-adds = It says now as well
it-says-nothing = Nothing in its place.
said-minutes = { $n } min
said-waiting = { $n } min of waiting
prints-lead = Every page and sheet has its own code at the foot. Type it here, or look for it in the list.
prints-label = Code on the print
prints-look = Look it up
prints-odd = That is no code: it has eight letters and digits, without vowels and without 0, 1, 2, 5 and 8.
prints-not-ours = Not ours: no page of this handbook has or had this code. It may be from another club, or from before the list begins.
prints-not-current = Not the current one. This handbook carries no list of former codes, so it cannot tell an older print from one that is not ours.
prints-list = All codes, sorted
prints-list-how = Each code with what it stands on.
prints-not-listed = A code that is not in the list is not ours.
prints-not-listed-none = A code that is not in the list is not the current one, or not ours.
print-current = Current
print-older = Older: print it again
print-withdrawn = WITHDRAWN: DO NOT USE
print-gone = It is no longer in the handbook.
print-changed-in = Changed in
print-what-changed = What changed since
check-a-print = Is my print current? Check its code
see-changes = What changed since the last edition
print-notice = Print the notice for the wall
notice-heading = Do not use these sheets
notice-how = They turned out wrong after they were printed. Take them down, wherever they hang.
notice-taken-down = taken down

## A juniors’ evening
kind-juniors = For a juniors’ evening
juniors-lead = What may be done without an adult at one’s side. An adult who knows the bench is in the room all the same. It follows from what the guides say and from what they use: solvents, irons, blades under load and mains ask for more.
juniors-jobs-anyone = Jobs that anyone may do
juniors-jobs-supervised = Jobs with somebody beside who can do it
juniors-jobs-adult = Jobs for adults only
juniors-faults = Finding a fault
juniors-all = { $n ->
    [one] Its one question may be answered by anyone.
   *[other] All { $n } questions may be answered by anyone.
}

## A guide from elsewhere
packs-heading = Guides from elsewhere
from-elsewhere = From { $title }, by { $by }
from-licence = Licence: { $licence }
from-where = Got from { $from }
folded-title = Folded away
folded-says = What comes after “{ cannot-tell }”, the sheets, the practice bench, the list of codes and how guides are written are folded up in this one file, to keep it small enough to send. The browser’s scripting unfolds them, and here it is switched off.
folded-instead = Switch scripting on for this file, open the handbook as a folder, or hand over to somebody with a meter.
