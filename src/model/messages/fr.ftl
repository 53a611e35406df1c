# Every word of the program's own that stands on a page, in French (Fluent syntax).

## The language, in its own words
language-name = Français
other-languages = Cette page dans d’autres langues :

## The frame of a page
skip = Aller au contenu
short-cuts = Raccourcis
you-are-here = Vous êtes ici
front-page = Que voyez-vous ?
jobs = Travaux
limits = Limites
all-pages = Toutes les pages
find = Chercher
link-page = Page
link-handbook = Manuel
link-kind = Genre
link-edition = Édition
link-code = Code de cette page
what-leads-here = Ce qui mène ici
used-in = Utilisé dans
used-in-n = Utilisé à { $n } endroits
print-sheet = Imprimer la fiche d’établi
back-to = Retour à : { $title }
start-again = Recommencer
forget = Effacer mes coches et mes mesures

## Kinds of pages
kind-front = Que voyez-vous ?
kind-kit = Matériel
kind-lamps = D’après la lampe
kind-symptom = Recherche de panne
kind-question = Question
kind-ending = Cause et remède
kind-procedure = Travail
kind-checklist = Contrôle
kind-circuit = Circuit
kind-limits = Limites
kind-stores = Magasin
kind-words = Mots
kind-sheet = Fiche d’établi
kind-sheets = Fiches d’établi
kind-jobs = Travaux et contrôles
kind-about = À propos de cette édition
kind-writing = Écrire des guides
kind-all = Toutes les pages
kind-word = Mot
kind-part = Pièce
kind-tool = Outil
kind-consumable = Consommable
kind-limit = Limite
kind-seen-on = { $kind }, { $seen }

## Search
search-label = Chercher une page
search-found = { $n ->
    [0] Aucune page trouvée. Essayez le nom du matériel ou de la pièce.
    [one] 1 page trouvée
    [12] 12 pages ou plus ; voici les 12 premières
   *[other] { $n } pages trouvées
}

## Wording
wording = Texte de cette page
wording-full = complet
wording-short = court

## Front page, items, lists
front-lead = Suivez la ligne de l’arme à l’appareil et pressez ce que vous soupçonnez.
front-by-lamp = Ou partez de ce que fait la lampe.
by-lamp = D’après la lampe
lamps-lead = Regardez d’abord la lampe, puis choisissez le matériel.
two-lamps = Deux lampes : d’abord au repos, puis pointe enfoncée.
checks = Contrôles
all-jobs = Tous les travaux et contrôles
any-item = Tout matériel
circuits = Circuits
symptom-note = { $seen } : { $causes ->
    [one] 1 cause
   *[other] { $causes } causes
}, environ { $minutes ->
    [0] une minute
    [one] 1 minute
   *[other] { $minutes } minutes
}
n-checks = { $n ->
    [one] 1 point à regarder
   *[other] { $n } points à regarder
}
seen-on-tester = sur un testeur
seen-on-apparatus = à l’appareil
seen-on-meter = sur un multimètre
seen-on-eye-and-hand = à l’œil et à la main
lamp-group-always-lit = Toujours allumée
lamp-group-never-lit = Jamais allumée
lamp-group-comes-and-goes = Par moments
lamp-group-other = Autre chose

## Lamps
lamp-lit = allumée
lamp-dark = éteinte
lamp-comes-and-goes = par moments
lamp-at-rest = { $state } au repos
lamp-pressed = { $state } pointe enfoncée
lamp-in-position = { $state } ({ $position })

## The chain on the front page
chain-drawn = La ligne de l’arme à l’appareil, dessinée
chain-listed = La ligne de l’arme à l’appareil, en liste
chain-note = Un fleuret, étalé. Le trait épais est le chemin du courant, de la pointe à la lampe.
on-the-line = Sur la ligne
on-the-bench = Sur l’établi
chain-weapon = Arme
chain-body-cord = Fil de corps
chain-jacket = Cuirasse
chain-mask = Masque
chain-reel = Enrouleur
chain-floor-cable = Câble de sol
chain-apparatus = Appareil
chain-tester = Testeur
chain-meter = Multimètre

## Rails
rail = { $item }, endroit par endroit
rail-with-shares = { $item }, endroit par endroit, avec la part de chacun sur 100 de ce qui reste possible
place-tip = Pointe
place-barrel = Embase
place-blade = Lame
place-guard = Coquille
place-lining = Coussinet
place-socket = Prise
place-grip = Poignée
place-pommel = Pommeau
place-point = Bout
place-weapon-plug = Fiche côté arme
place-weapon-end = Côté arme
place-clip = Pince
place-clip-lead = Fil de pince
place-reel-end = Côté enrouleur
place-reel-plug = Fiche côté enrouleur
place-mask-clip = Pince du masque
place-mask-end = Côté masque
place-wire = Fil
place-jacket-end = Côté cuirasse
place-jacket-clip = Pince de cuirasse
place-strap = Sangle
place-padding = Garniture
place-mesh = Grillage
place-rim = Bord
place-bib = Bavette
place-clip-point = Point de pince
place-collar = Col
place-flap = Rabat
place-sleeve = Manche
place-front = Devant
place-zip = Fermeture
place-seam = Couture
place-hem = Ourlet
place-cable-socket = Prise du câble
place-cable = Câble
place-drum = Tambour
place-spring = Ressort
place-rings = Bagues
place-frame = Bâti
place-outlet = Sortie
place-sockets = Prises
place-case = Boîtier
place-leads = Cordons
place-lamp = Lampe
place-switch = Interrupteur
place-holder = Support
place-battery = Pile

## Shares and minutes
in-100 = sur 100
share-about = { $n }
share-under = moins de { $n }
share-over = plus de { $n }
not-on-this-list = Pas dans cette liste
minutes = Minutes
so-far = déjà passées
to-go = à venir
spent-n = { $n ->
    [0] aucune encore
   *[other] { $n }
}
about-n = { $n ->
    [0] aucune
   *[other] environ { $n }
}
n-min = { $n ->
    [0] moins de 1 min
   *[other] { $n } min
}
n-h = { $n } h
n-h-min = { $h } h { $n } min
now = maintenant
at-most-n = au plus { $n }
open-now = Ouvert en ce moment : { $what }. Refermer prend { $n ->
    [0] moins d’une minute
    [one] 1 minute
   *[other] { $n } minutes
}.

## A symptom page
another-fault = C’est une autre panne : { $title }
first-kind = Avant les questions
first-heading = Est-ce bien ce matériel ?
go-on-here = Continuez ici.
question-1 = Question 1 sur { $of }, environ { $average ->
    [0] une minute
    [one] 1 minute
   *[other] { $average } minutes
} jusqu’au remède, au plus { $most }
what-it-can-be = Ce que cela peut être
shares-estimated = L’estimation de l’armurier, de la pointe à la prise. La liste couvre { $listed } cas sur 100. Les chiffres arrondis ne font pas toujours 100.
shares-counted = { $n ->
    [one] D’après 1 cas
   *[other] D’après { $n } cas
} au club, de la pointe à la prise. La liste en couvre { $listed } sur 100. Les chiffres arrondis ne font pas toujours 100.
map-heading = Le plan des questions
map-how = Le temps descend. La largeur du courant est ce qui reste inexpliqué, sur 100 cas.
map-in-words = La même chose en mots
map-title = Plan des questions. Le temps descend ; la largeur du courant est la part des cas encore inexpliqués. La liste dessous dit la même chose.
n-others = { $n ->
    [one] 1 autre
   *[other] { $n } autres
}
after-minutes = { $n ->
    [0] connu en moins d’une minute
    [one] connu après 1 minute
   *[other] connu après { $n } minutes
}
on-to-question = vers la question { $n }
why-heading = Pourquoi cet ordre
order = Ordre
order-quickest = Le plus rapide
order-as-written = Comme écrit
order-used = (suivi ici)
orders-caption = Minutes jusqu’à ce que le remède soit connu et tout refermé
on-average = En moyenne
at-most = Au plus
order-saves = L’ordre le plus rapide ferait gagner environ { $n ->
    [one] 1 minute
   *[other] { $n } minutes
} en moyenne.
order-not-proved = L’ordre le plus rapide est le meilleur trouvé ; il en existe peut-être un meilleur.
not-told-apart = Aucune question ne les distingue, alors que leurs remèdes diffèrent : { $causes }.
same-all-session = Une panne qui va et vient est supposée se comporter de la même façon tout du long.
see-circuit = Voir dans le circuit

## Questions and answers
answers = Réponses
question-n = Question { $n } sur { $of } au plus
cannot-tell = Je ne peux pas le dire
how-to = Comment faire : { $job }
shut-first = Refermer d’abord
open-first = Ouvrir d’abord
trial-fix = Un essai de remède : si cela aide, vous avez fini.
answer-works = Cela marche maintenant
answer-no-change = Rien ne change
follows-found = Alors c’est : { $found }. La recherche est finie.
follows-mended = Réparé : { $found }. Vous avez fini.
follows-choice = Alors il reste un remède parmi quelques-uns. La recherche est finie.
follows-not-listed = Alors ce n’est pas dans cette liste.
follows-nothing-fits = Alors aucune cause de la liste ne va avec ce que vous avez vu.
follows-goes-on = { $left ->
    [one] Alors il reste 1 cause.
   *[other] Alors il reste { $left } causes.
} Vers la question { $next }.
who-anyone = Tout le monde
who-supervised = Avec à côté de vous quelqu’un qui sait le faire
who-adult = Adultes seulement

## Where you are
where-you-are = Où vous en êtes
still-possible = Encore possible
ruled-out = Écarté
by-question = par la question { $n }
hand-over = Passer la main
hand-over-seen = Vu : { $what }.
hand-over-spent = { $n ->
    [0] Moins d’une minute passée.
    [one] 1 minute passée.
   *[other] { $n } minutes passées.
}
hand-over-how = Lisez-le à voix haute, ou envoyez l’adresse de cette page : elle contient les réponses données.

## Endings
mend-it = Réparer
if-it-is = Si c’est : { $what }
close-up = Refermer, le dernier ouvert d’abord
lasting = Durable
stop-gap = Dépannage
stop-gap-buys = Dépannage : fait gagner { $time }
do-it = Le faire
takes = dure
then-wait = puis attendre { $time }
ending-kind-one-cause = Cause trouvée, après { $n } minutes
ending-kind-one-remedy = Remède trouvé, après { $n } minutes
ending-kind-mended = Réparé, après { $n } minutes
ending-kind-choice = Un choix de remèdes, après { $n } minutes
ending-kind-not-listed = Pas dans cette liste, après { $n } minutes
ending-kind-nothing-fits = Rien ne convient, après { $n } minutes
ending-kind-hand-over = Passer la main, après { $n } minutes
ending-one-cause = Cause trouvée
ending-one-remedy = Un seul remède suffit
ending-mended = Cela marche à nouveau
ending-choice = Il reste quelques remèdes
ending-not-listed = Pas dans cette liste
ending-nothing-fits = Rien dans la liste ne convient
ending-hand-over = Passer la main à quelqu’un qui a un multimètre
ending-says-one-cause = C’est ce que laissent vos réponses.
ending-says-one-remedy = C’est l’une d’elles, et un même remède les répare toutes.
ending-says-mended = Cela marche à nouveau. Refermez et vérifiez.
ending-says-choice = Vos réponses laissent ces causes, et leurs remèdes diffèrent. Commencez par la plus probable.
ending-says-not-listed = Aucune cause de la liste ne reste : le dommage est caché ou rare.
ending-says-nothing-fits = Ce que vous avez vu ne va avec aucune cause de la liste. Recommencez l’esprit reposé, ou demandez à quelqu’un de regarder avec vous.
ending-says-hand-over = Trop de choses n’ont pas pu être dites. Passez la main à quelqu’un qui a un multimètre ; ce que vous avez trouvé est à côté.

## Jobs
hands-on = de travail
waiting = d’attente
who = qui
not-when = Quand ne pas le faire
what-proves-it = Ce qui le prouve
lay-out = À préparer
before-you-start = Avant de commencer
steps = Étapes
prove-it = Vérifier
then = Ensuite
mends = Ce que cela répare
lasting-is = Ce qui dure :
wait = attendre
torque = couple
thread-dry = sec
thread-oiled = huilé
shop-value = valeur du club
shop-values = Les valeurs propres au club.

## Steps, ticks, readings
step-done = Étape { $n } faite
proof-done = Vérification { $n } faite
item-good = Point { $n } bon
ready = { $what } : prêt
not-read-yet = pas encore mesuré
not-a-number = ce n’est pas un nombre
inside = dans la limite
outside = hors limite
too-close = trop juste pour le dire
limit = limite

## Checklists
check-items = À regarder
if-not = Sinon :
all-good = Quand tout est bon

## Limits
limits-lead = Les limites du règlement disent où elles se trouvent ; les valeurs du club le disent aussi.
what = Quoi
limit-head = Limite
how-measured = Comment on la mesure
source = Source
looked-up = Consulté le { $day }
bound-at-most = au plus { $value }
bound-less-than = moins de { $value }
bound-at-least = au moins { $value }
bound-more-than = plus de { $value }
bound-between = { $value }
bound-must-register = doit signaler avec { $value }
bound-must-not-register = ne doit pas signaler avec { $value }
bound-must-lift = doit soulever { $value }
bound-must-pass = doit laisser passer { $value }

## Circuits, stores
value = Valeur
place = Endroit
circuit-parts = De quoi c’est fait
circuit-faults = Pannes
circuit-positions = Positions
circuit-drawn = Comment passe le courant
circuit-drawn-how = La large bande est la boucle sous tension.
circuit-at-rest = Au repos, rien n’est touché
circuit-closed = La boucle est fermée.
circuit-open = La boucle est ouverte.
circuit-instrument = Fiche et instrument
lamp-may = peut être allumée ou éteinte
circuit-fault = panne
circuit-lamps = Ce que vous voyez et ce que cela veut dire
circuit-see = Vous voyez
circuit-means = Cela veut dire
circuit-look-up = Où chercher
circuit-sound = En bon état
circuit-figure-sound = Matériel en bon état, tenu de la même façon :
lamps-by-kit = Par matériel, instrument et lampe
lamps-by-kit-how = Calculé d’après les circuits. Une panne figure dans chaque ligne qu’elle peut montrer.
lamp-and-instrument = { $lamp }, { $seen }
circuit-guides = Où il sert
parts = Pièces
tools = Outils
consumables = Consommables
substitute = À défaut :

## Safety: the signal words of ANSI Z535.6, as they are said in Canada's French
signal-danger = DANGER
signal-warning = AVERTISSEMENT
signal-caution = ATTENTION
signal-notice = AVIS

## Sheets
sheets-lead = Des fiches à imprimer, cocher, remplir et signer. Chacune porte son code : le même code aujourd’hui veut dire qu’elle vaut encore.
sheet-of = { $book }, fiche d’établi
print-how = Imprimer sans mise à l’échelle.
sheet-number = Numéro
sheet-date = Date
sheet-signed = Signature
sheet-done = Ce qui a été fait
sheet-stop-gap = dépannage, marqué, remède durable à faire
sheet-what-it-was = Ce que c’était
good = bon
not-good = pas bon
go-on = continuer
since = depuis

## About this edition
code-of-handbook = code du manuel
open-heading = Ce qui reste ouvert
open-count = { $n ->
    [0] Relu, et rien ne reste ouvert.
    [one] Relu : 1 conseil reste ouvert.
   *[other] Relu : { $n } conseils restent ouverts.
}
accepted-heading = Accepté
accepted-because = Accepté parce que : { $because }
sources-heading = Sources des limites
estimated-heading = Parts estimées
counted-heading = Parts comptées
withdrawn-heading = Fiches retirées : ne plus utiliser
use-instead = À utiliser à la place :

## Writing guides
writing-lead = Un guide est un fichier de texte simple. Voici chaque genre avec ses clés et un guide de ce manuel en exemple.
writing-handbook = Le manuel lui-même
writing-symptom = Guides de recherche de panne
writing-procedure = Travaux
writing-checklist = Contrôles
writing-circuit = Circuits
writing-stores = Magasin
writing-limits = Limites
writing-words = Mots
writing-keys = { $n ->
    [one] Sa clé
   *[other] Ses { $n } clés
}
writing-from = Un exemple : { $file }
must = obligatoire
findings-heading = Toutes les remarques
finding-error = erreur
finding-advice = conseil

## What a handbook holds
count-symptoms = Guides de recherche de panne
count-procedures = Travaux
count-checklists = Contrôles
count-circuits = Circuits
count-limits = Limites

## The proof of a remedy, at an ending
then-prove-it = Une fois réparé, vérifier
prove-after = Après « { $job } », vérifier
