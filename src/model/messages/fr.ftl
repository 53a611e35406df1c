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
lamps-lead = Choisissez le matériel et l’instrument, ou regardez ce que fait la lampe.
lamps-mean = Ce que disent les lampes
lamps-mean-how = Une lampe montre si le courant fait le tour. Chacune de ces pages dit quelle lampe est laquelle, et pourquoi elle s’allume ou reste éteinte.
lamp-key = Les signes d’une lampe
lamps-of-title = { $item } { $seen } : ce que montrent les lampes
nothing-wrong = Rien d’anormal
two-lamps = Un signe : ce que la lampe fait tout le temps. Deux : d’abord au repos, puis pointe enfoncée. Un guide sur certaines touches en a un pour chacune.
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
lamp-light-white = blanche { $state }
lamp-light-coloured = rouge ou verte { $state }
lamp-light-yellow = jaune { $state }
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
rail-with-shares = { $item }, endroit par endroit, parts sur 100
place-tip = Pointe
place-barrel = Embase
place-blade = Lame
place-guard = Coquille
place-lining = Coussinet
place-socket = Prise
place-grip = Poi­gnée
place-pommel = Pom­meau
place-point = Bout
place-weapon-plug = Fiche côté arme
place-weapon-end = Côté arme
place-clip = Pince
place-clip-lead = Fil de pince
place-reel-end = Côté enrou­leur
place-reel-plug = Fiche côté enrou­leur
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
first-heading = Est-ce bien ce matériel ?
go-on-here = Continuez ici.
question-1 = Question 1 sur { $of } au plus, environ { $average ->
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
map-how = Le temps descend sur chaque branche : un chiffre dit les minutes passées quand on y arrive. La largeur du courant est ce qui reste inexpliqué, sur 100 cas. Le plan numérote toutes ses questions ; sur une page, le numéro dit combien on vous en a posé.
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
who-supervised = Avec quelqu’un à côté de vous qui sait le faire
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
then-hand-over = Ensuite : passez la main.
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
below-nothing = moins que rien : mesurez à nouveau
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
range-to = à
colon = { " :" }
decimal-mark = ,
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
circuit-way-closed = Un chemin pour le courant : { $one } – { $other }.
circuit-way-open = Pas de chemin pour le courant : { $one } – { $other }.
circuit-open = La boucle est ouverte.
circuit-instrument = Fiche et testeur
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

## By place, by lamp, how it works
kind-lamps-tester = Ce que montrent les lampes d’un testeur
kind-lamps-apparatus = Ce que montrent les lampes de l’appareil
kind-how = Comment cela marche
kind-learning = Chemin pour apprendre
kind-stop = Étape du chemin
kind-practices = Établi d’exercice
kind-practice = Établi d’exercice
kind-cards = Cartes d’exercice
kit-places = Par partie du matériel
kit-places-how = Pressez une partie sur le dessin pour venir à sa place ici.
kit-place-causes = Ce qui peut ne pas aller
kit-place-nothing = Aucun guide ne parle de cette partie.
all-see = { $kind }, voir { $title }
hand-over-open = Ouvert en ce moment : { $what }.
hand-over-copy = Copier
hand-over-print = Imprimer ceci seul
hand-over-copied = Copié.
hand-over-not-copied = Ce navigateur ne laisse pas une page copier. Marquez les mots et copiez-les à la main.
way-back = Reprendre où vous étiez
way-back-forget = L’oublier
no-guide = Aucun guide
count-of-faults = { $n ->
    [one] une panne peut le montrer
   *[other] { $n } pannes peuvent le montrer
 }
lamps-of-lead = Trouvez la lampe, puis la ligne qui fait comme la vôtre.
lamps-of-lead-together = Cherchez la ligne où chaque lampe fait ce que font les vôtres. Si vous n’en avez vu qu’une, allez à son propre tableau.
lamps-together = Toutes les lampes ensemble, { $seen }
lamps-as-sound = { $n ->
    [one] l’autre lampe comme sur du matériel en bon état
   *[other] les { $n } autres lampes comme sur du matériel en bon état
}
lamps-of-others = Autres guides
lamps-of-other = { $title }, { $seen }

## Learning
way-stops = Les étapes, dans l’ordre où elles s’appuient l’une sur l’autre
way-minutes = en tout
way-done = { $title } : fait
way-can = Ensuite vous savez
way-after = Après la dernière étape
stop-n = Étape { $n } sur { $of }
stop-read = Lire
stop-practise = S’exercer
stop-on-the-bench = Trouver une panne sur l’établi d’exercice
stop-before = Étape d’avant : { $title }
stop-after = Étape d’après : { $title }
stop-way = Tout le chemin
check-heading = Vérifiez-vous
check-how = Les questions sont faites avec les guides de cette étape. Une seule réponse est juste.
check-limit = { $about }{ $of ->
    [none] {""}
   *[other] {" "}({ $of })
} : quelle est la limite ?
check-lamp-sound = { $about }, tout en bon état. Que fait cette lampe { $seen } : { $of } ?
check-lamp-fault = La panne est : { $about }. Que fait cette lampe { $seen } : { $of } ?
check-first-question = « { $of } » : laquelle de ces questions vient en premier ?
check-first-step = « { $of } » : laquelle de ces étapes vient en premier ?
check-danger = « { $of } » : à quoi devez-vous prendre garde ?
check-right = Juste.
check-wrong = Pas celle-là. Essayez encore, ou ouvrez la réponse.
check-answer = Réponse
check-told = Cela se trouve ici :
check-sum = Juste au premier essai :

## The practice bench
practice-lead = Trouvez une panne avant qu’une vraie ne vous trouve. L’établi pose un matériel en panne ; vous regardez, essayez, puis nommez la cause et le remède.
practice-level = Ce qui vous est dit
practice-level-1 = Avec de l’aide
practice-level-2 = Par vous-même
practice-level-3 = De mémoire
practice-level-says-1 = Vous voyez ce qui reste possible, et la question que poserait le chemin le plus rapide.
practice-level-says-2 = Vous voyez les minutes et les réponses, rien d’autre.
practice-level-says-3 = Pas de minutes, et le remède est l’un de tous les travaux sur ce matériel.
practice-teacher = Un mot choisit la panne : qui pose le même mot, ou ouvre la même adresse, trouve la même panne.
practice-without = Sans script, l’établi ne peut pas poser de panne. Les cartes d’exercice font de même sur papier.
practice-cards = Cartes d’exercice
practice-cards-n = { $n ->
    [one] 1 carte
   *[other] { $n } cartes
}
practice-bench = Établi d’exercice
practice-all = Tous les exercices
practice-set = Une panne est sur l’établi. Trouvez-la en aussi peu de minutes que possible ; elles comptent comme au vrai établi.
practice-seed = Mot qui choisit la panne
practice-use-seed = La poser
practice-again = Une autre panne
practice-seen = Ce qui se voit
practice-isolated = Que c’est ce matériel et aucun autre a été établi avant.
practice-spent = Minutes passées :
practice-open = Ouvert en ce moment :
practice-nothing = rien
practice-do = Ce que vous pouvez faire
practice-how = Comment on le fait
practice-opens = Ouvre d’abord : { $what }
practice-next = Le chemin le plus rapide ferait maintenant ceci.
practice-reading = Ou prendre une mesure du circuit
practice-reading-takes = Un regard sur une lampe compte une demi-minute, une mesure au multimètre une minute. L’ouverture n’est pas comptée.
practice-choose = Choisir
practice-read = Prendre la mesure
practice-unknown = Le circuit ne couvre pas ce qui est sur l’établi : rien à lire, aucune minute comptée.
practice-shows-lit = allumée
practice-shows-dark = éteinte
practice-shows-sounds = cela sonne
practice-shows-silent = c’est muet
practice-shows-in = dans la limite
practice-shows-over = au-dessus de la limite
practice-shows-open = pas de liaison
practice-shows-comes-and-goes = par moments
practice-possible-how = Sur 100 cas avec les mêmes réponses.
practice-enough = Vous en savez assez : nommez-la.
practice-name-it = La nommer
practice-cause = Qu’est-ce que c’est ?
practice-remedy = Qu’est-ce qui la répare durablement ?
practice-put-aside = Rien de cela : étiqueter et passer la main
practice-your-name = Votre nom, si vous voulez ; il reste sur cet appareil
practice-judge = Nommer et voir
practice-name-both = Choisissez d’abord une cause et un remède.
practice-outcome = Votre résultat
practice-was = C’était
practice-mends = Ce qui la répare durablement
practice-cause-right = La cause est juste.
practice-cause-same = Une autre cause, mais le même remède répare les deux : vous n’aviez pas à les distinguer.
practice-cause-wrong = La cause n’est pas juste.
practice-remedy-right = Le remède est juste.
practice-remedy-gap = Votre remède ne fait que gagner du temps ; le durable est au-dessus.
practice-remedy-wrong = Le remède n’est pas juste.
practice-guess = Vous l’avez nommée avant que ce soit certain. Restait possible :
practice-is-right = juste
practice-is-same = même remède
practice-is-gap = dépannage
practice-is-wrong = faux
practice-own-way = Votre chemin
practice-least-way = Le chemin qui attend le moins de minutes
practice-least-note = Ce chemin est le plus rapide en moyenne sur tous les cas. Pour une panne donnée, un autre peut être plus rapide par chance.
practice-did = Ce qui a été fait
practice-answer = Réponse
practice-out = Écarté
practice-less-likely = rien de certain
practice-needless = inutile : le remède était connu
practice-closing = Refermer
practice-total = En tout
practice-results = Résultats sur cet appareil
practice-results-where = Ce navigateur les garde et ne les envoie nulle part. Certains navigateurs les gardent page par page.
practice-csv = Enregistrer en tableau (CSV)
practice-print = Imprimer
practice-forget = Effacer les résultats
practice-field-when = Quand
practice-field-name = Nom
practice-field-guide = Guide
practice-field-seed = Mot
practice-field-level = Niveau
practice-field-cause = Cause
practice-field-remedy = Remède
practice-field-minutes = Minutes
practice-field-least = Chemin le plus rapide
practice-field-steps = Gestes
cards-lead = À deux avec une carte : l’un travaille avec le recto, l’autre tient le verso et répond.
cards-how = Imprimez recto verso : chaque verso est sur la page après son recto. Ne montrez pas le verso avant que la cause soit nommée. À l’établi, le mot CARD-1 pose la panne de la carte 1.
card-n = Carte { $n }
card-do = Dites ce que vous feriez ensuite ; on vous dit ce que vous voyez. Additionnez les minutes. L’ouverture compte une fois.
card-opening = Ouvrir, minutes pour ouvrir + pour refermer, une fois :
card-turn = Montrer le verso de la carte { $n }
card-back = Verso de la carte { $n }
card-answers = Réponses, dans l’ordre du recto
card-least = Le chemin qui attend le moins de minutes, avec les minutes passées
card-closed = Avec { $closing } min pour refermer : { $value } min en tout.
card-beside = Ce chemin ne la distingue pas de ce qui suit ; le même travail répare tout :
minutes-exact = { $value } min
writing-learning = Chemins pour apprendre

## Editions and prints
kind-changes = Ce qui a changé
kind-prints = Mon impression est-elle à jour ?
kind-notice = Avis de fiches retirées
changed-since = Modifié depuis { $edition } : voir ce qui était écrit
changed-within = Modifié au cours de cette édition : voir ce qui était écrit
changes-lead = Page par page, avec ce qui était écrit avant. Une impression de l’ancien texte n’est plus à jour.
changes-step = { $edition }, depuis { $since }
changes-within = Au cours de { $edition }
changes-sheets = Fiches à réimprimer
changes-pages = Pages
changes-no-words = Les mots sont les mêmes ; un chiffre, un dessin ou une image a changé.
change-came = Nouveau.
change-went = N’est plus dans le manuel.
change-codes = C’était { $was }, c’est maintenant { $now }.
it-said = C’était écrit
it-says = C’est écrit maintenant
it-adds = C’est écrit en plus
it-says-nothing = Rien à la place.
said-minutes = { $n } min
said-waiting = { $n } min d’attente
prints-lead = Chaque page et chaque fiche porte son code en bas. Tapez-le ici, ou cherchez-le dans la liste.
prints-label = Code sur l’impression
prints-look = Chercher
prints-odd = Ce n’est pas un code : il a huit lettres et chiffres, sans voyelles et sans 0, 1, 2, 5 ni 8.
prints-not-ours = Pas de nous : aucune page de ce manuel n’a ni n’a eu ce code. Il vient peut-être d’un autre club, ou d’avant le début de la liste.
prints-not-current = Pas la version actuelle. Ce manuel n’a pas de liste des anciens codes : il ne peut dire si l’impression est ancienne ou n’est pas de nous.
prints-list = Tous les codes, triés
prints-list-how = Chaque code avec ce qui le porte.
prints-not-listed = Un code absent de la liste n’est pas de nous.
prints-not-listed-none = Un code absent de la liste n’est pas l’actuel, ou n’est pas de nous.
print-current = À jour
print-older = Ancien : réimprimez
print-withdrawn = RETIRÉ : NE PAS UTILISER
print-gone = N’est plus dans le manuel.
print-changed-in = Modifié dans
print-what-changed = Ce qui a changé depuis
check-a-print = Mon impression est-elle à jour ? Vérifier son code
see-changes = Ce qui a changé depuis la dernière édition
print-notice = Imprimer l’avis à afficher
notice-heading = N’utilisez pas ces fiches
notice-how = Elles se sont révélées fausses après l’impression. Décrochez-les, où qu’elles soient.
notice-taken-down = décrochée

## A juniors’ evening
kind-juniors = Pour une soirée de jeunes
juniors-lead = Ce qui se fait sans adulte à ses côtés. Un adulte qui connaît l’atelier reste quand même dans la pièce. Cela découle de ce que disent les guides et de ce qu’ils emploient : solvants, fers, lames qui font ressort et secteur demandent plus.
juniors-jobs-anyone = Travaux ouverts à tous
juniors-jobs-supervised = Travaux avec quelqu’un qui sait les faire
juniors-jobs-adult = Travaux réservés aux adultes
juniors-faults = Chercher une panne
juniors-all = { $n ->
    [one] Sa question est ouverte à tous.
   *[other] Ses { $n } questions sont ouvertes à tous.
}

## A guide from elsewhere
packs-heading = Guides venus d’ailleurs
writing-pack = Guides venus d’ailleurs
from-elsewhere = De { $title }, par { $by }
from-licence = Licence : { $licence }
from-where = Obtenu : { $from }

## Few cases
shares-few = Seulement { $n ->
    [one] 1 cas a été compté
   *[other] { $n } cas ont été comptés
}. Les parts peuvent être loin du compte : prenez-les comme un indice.
shares-few-how = De combien chacune peut s’écarter
shares-few-row = { $seen } sur { $of } ; neuf fois sur dix entre { $low } et { $high } sur 100

## Sheets, queues, what to fetch
kind-fetch = À préparer
reading-doubt = { $tool } peut se tromper de { $off }
reading-leads = Cordons seuls, touches réunies
reading-less-leads = sans les cordons :
sheet-owner = Propriétaire
sheet-name = Nom
sheet-code = Code
sheet-page-of = Page { $n } sur { $m }
sheet-seen = Vu
sheet-qr = Code QR de { $address }
sheet-found = { $minutes }, { $share } sur 100 trouvés à ce point
sheet-open = { $job }, { $minutes }
sheet-it-is = C’est : { $causes }.
sheet-do = À faire : { $jobs }.
sheet-on-to = → question { $n }
sheet-else-on-to = Sinon : → question { $n }
sheet-not-listed = Absent de cette liste : voir la fin des questions.
sheet-print = Imprimer
sheet-notes = Notes
sheet-another = autre cause :
sheet-as-pdf = La même en PDF
sheet-queue-number = Numéro dans la file
sheet-fencer = Tireur
queue-piece = n° { $n } bon
queue-passed = bon
queue-why = Sinon, pourquoi :
slip-heading = N’a pas passé
slip-how = Découper et rendre. Ce qui est coché n’a pas passé.
slip-which = Entourez le numéro :
slip-mended-by = Comment le réparer :
failures-title = { $title } : ce qui n’a pas passé
failures-how = Une page pour toute la compétition. Pour chaque case cochée sur un coupon, tracer un bâton à côté du guide qu’il nomme. Compter à la fin : le guide qui a le plus de bâtons est le prochain à enseigner.
failures-event = Compétition
failures-fencers = Tireurs contrôlés
failures-guide = Comment le réparer
failures-items = N’a pas passé
failures-strokes = Bâtons
failures-total = Total
failures-no-guide = Pas encore de guide : en écrire un
by-feel = Au toucher :
torque-unjudged = Non comparé à une charge d’épreuve : aucune n’est publiée pour cette matière.
fetch-lead = Ce qu’il faut préparer pour chaque travail et chaque contrôle, et le temps pour plusieurs pièces.
fetch-model = Les temps valent pour une paire de mains : le travail s’additionne ; l’attente court pendant d’autres travaux, et seule la plus longue s’ajoute.
fetch-together = Pour plusieurs guides ensemble : coquille sheet --kit GUIDE GUIDE
fetch-several = Pour plusieurs à la fois
fetch-several-how = Cochez plus bas ce que vous ferez. Pièces et durées s’additionnent ici ; chaque outil ne se prend qu’une fois.
fetch-pieces = Pour combien de pièces de matériel ?
fetch-pick = Ajouter à la liste
fetch-print = Imprimer cette liste
fetch-untick = Recommencer
fetch-times = { $n } × { $what }
fetch-for = Pour { $n ->
    [one] 1 pièce
   *[other] { $n } pièces
}
fetch-in-all = en tout
stop-gap-holds = fait gagner { $time }
folded-title = Replié
folded-says = Ce qui suit « { cannot-tell } », les fiches, l’établi d’exercice, la liste des codes et la page sur l’écriture des guides sont repliés dans ce fichier unique, pour qu’il reste assez petit à envoyer. Les scripts du navigateur les déplient, et ici ils sont désactivés.
folded-instead = Activez les scripts pour ce fichier, ouvrez le manuel sous forme de dossier, ou passez la main à quelqu’un qui a un multimètre.
