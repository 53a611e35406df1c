# Every word of the program's own that stands on a page, in English (Fluent syntax). Templates ask for them by id:
# say(id="still-possible"), say(id="n-causes", n=7). Words of guides are not here.

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
law = The rules in force at an event, local law and the weapon control on the day decide. Anything that runs on mains power is for a qualified person.

## Search
search-label = Find a page
search-found = { $n ->
    [0] No page found. Try the name of the item or the part.
    [one] 1 page found
   *[other] { $n } pages found
}

## Wording
wording = Wording on this page
wording-full = full
wording-short = short

## Shares and minutes
in-100 = in 100
minutes = Minutes
so-far = so far
to-go = to go
about-n = about { $n }

## Where you are
where-you-are = Where you are
still-possible = Still possible
ruled-out = Ruled out
hand-over = Hand over
quoted = “{ $text }”
hand-over-how = Read it out, or send the address of this page: it holds the answers so far.

## Remedies
lasting = Lasting
stop-gap = Stop-gap
stop-gap-buys = Stop-gap: buys { $time }
do-it = Do it

## Steps, ticks, readings
step-done = Step { $n } done
proof-done = Proof { $n } done
ready = { $what } ready
not-read-yet = not read yet
not-a-number = not a number
inside = inside
outside = outside
too-close = too close to say

## Safety: the signal words of ANSI Z535.6
signal-danger = DANGER
signal-warning = WARNING
signal-caution = CAUTION
signal-notice = NOTICE

## Findings
finding-error = Error
finding-advice = Advice
accepted-because = Accepted because: { $because }

## The chain on the front page
chain-drawn = The line from weapon to apparatus, drawn
chain-listed = The line from weapon to apparatus, as a list
chain-note = A foil, laid out. The heavy line is the way of the current, from the tip to the lamp.
on-the-line = On the line
on-the-bench = On the bench
chain-weapon = Weapon
chain-cord = Body cord
chain-jacket = Jacket
chain-mask = Mask
chain-reel = Reel
chain-floor = Floor cable
chain-apparatus = Apparatus
chain-tester = Tester
chain-meter = Meter

## Places on the rails
place-tip = Tip
place-barrel = Barrel
place-blade = Blade
place-guard = Guard
place-socket = Socket
place-grip = Grip
place-pommel = Pommel
