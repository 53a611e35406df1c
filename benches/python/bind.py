"""The pages of a generated handbook, made in the plain way: PyYAML reads, Markdown sets the texts, Jinja2 fills templates.

What the benchmark `bind` is held against. It makes the same pages (a page per guide, question, ending and sheet, the lists, the
search index) with comparable content: answers, what is possible, what is ruled out, minutes so far and to go, remedies, the rail
and the bars as SVG. It leaves out what Coquille does beside: proofing, the quickest order, codes, writing in one step.

    bind.py GUIDES OUT
"""

import hashlib
import json
import pathlib
import re
import sys

import jinja2
import markdown
import markupsafe
import yaml

# The loader written in C, if there is one: the script is not to be slower than it must.
LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
FOLDERS = {"symptom": "faults", "procedure": "jobs"}
MOST_UNREAD = 2


def many(value):
    """A list, whether one or several were written."""
    if not value:
        return []
    return value if isinstance(value, list) else [value]


def spoken(name):
    return name.replace("-", " ").capitalize()


class Handbook:
    def __init__(self, folder, out):
        self.out = out
        self.guides = {"symptom": {}, "procedure": {}}
        self.lists = {}
        for path in sorted(folder.rglob("*.yaml")):
            guide = yaml.load(path.read_text("utf-8"), LOADER)
            kind = next(iter(guide))
            if kind in self.guides:
                self.guides[kind][guide[kind]] = guide
            else:
                self.lists[kind] = guide
        self.targets = self.find_targets()
        self.markdown = markdown.Markdown()
        self.backlinks = {}
        self.pages = []
        loader = jinja2.FileSystemLoader(pathlib.Path(__file__).parent / "templates")
        self.jinja = jinja2.Environment(loader=loader, autoescape=True)
        self.jinja.filters["spoken"] = spoken
        self.note_backlinks()

    def find_targets(self):
        targets = {}
        for kind, folder in FOLDERS.items():
            for name, guide in self.guides[kind].items():
                targets[f"{kind}:{name}"] = (guide["title"], f"{folder}/{name}.html")
        for key, noun in (("parts", "part"), ("tools", "tool"), ("consumables", "consumable")):
            for item in self.lists["stores"][key]:
                targets[f"{noun}:{item[noun]}"] = (item["title"], f"stores.html#{noun}-{item[noun]}")
        for limit in self.lists["limits"]["entries"]:
            shown = f"{limit['at most']} (shop value)"
            targets[f"limit:{limit['limit']}"] = (shown, f"limits.html#limit-{limit['limit']}")
        for word in self.lists["words"]["entries"]:
            targets[f"word:{word['word']}"] = (spoken(word["word"]), f"words.html#word-{word['word']}")
        return targets

    def note_backlinks(self):
        for guide in self.guides["symptom"].values():
            own = self.targets[f"symptom:{guide['symptom']}"]
            for cause in guide["causes"]:
                for job in (cause.get("lasting"), cause.get("stop-gap")):
                    self.backlinks.setdefault(job, set()).add(own)
        for guide in self.guides["procedure"].values():
            own = self.targets[f"procedure:{guide['procedure']}"]
            for link in re.findall(r"symptom:([\w-]+)", json.dumps(guide, default=str)):
                self.backlinks.setdefault(link, set()).add(own)

    def prose(self, text, root):
        """Markdown as HTML, with the short links of the handbook."""
        if not text:
            return ""

        def linked(match):
            title, address = self.targets[match[1]]
            return f"[{title}]({root}{address})"

        text = re.sub(r"<(\w+:[\w-]+)>", linked, str(text))
        return markupsafe.Markup(self.markdown.reset().convert(text))

    def page(self, address, template, title, **said):
        root = "../" * address.count("/")
        path = self.out / address
        path.parent.mkdir(parents=True, exist_ok=True)
        html = self.jinja.get_template(template).render(
            title=title,
            root=root,
            book=self.lists["handbook"],
            prose=lambda text: self.prose(text, root),
            target=self.targets,
            jobs=self.guides["procedure"],
            linked_from=sorted(self.backlinks.get(pathlib.PurePath(address).stem, ())),
            **said,
        )
        path.write_text(html, "utf-8")
        self.pages.append((title, address))

    def bind(self):
        for guide in self.guides["symptom"].values():
            Ways(self, guide).pages()
        for name, guide in self.guides["procedure"].items():
            self.page(f"jobs/{name}.html", "procedure.html", guide["title"], guide=guide, many=many)
            self.page(f"sheets/{name}.html", "procedure.html", guide["title"], guide=guide, many=many)
        faults = [(guide["title"], f"faults/{name}.html", guide) for name, guide in self.guides["symptom"].items()]
        self.page("index.html", "list.html", "What do you see?", rows=faults)
        self.page("lamps.html", "list.html", "By what the lamp does", rows=faults)
        for item in self.lists["handbook"]["kit"]:
            self.page(f"kit/{item}.html", "list.html", spoken(item), rows=[row for row in faults if row[2]["kit"] == item])
        jobs = [(guide["title"], f"jobs/{name}.html", guide) for name, guide in self.guides["procedure"].items()]
        self.page("jobs.html", "list.html", "Jobs", rows=jobs)
        self.page("all.html", "list.html", "All pages", rows=faults + jobs)
        for kind in ("stores", "limits", "words"):
            self.page(f"{kind}.html", "entries.html", spoken(kind), entries=self.entries(kind))
        self.search()

    def entries(self, kind):
        lists = ("parts", "tools", "consumables") if kind == "stores" else ("entries",)
        found = [(next(iter(item)), item) for key in lists for item in self.lists[kind][key]]
        return [(f"{noun}-{item[noun]}", item.get("title", spoken(item[noun])), item) for noun, item in found]

    def search(self):
        guides = [*self.guides["symptom"].items(), *self.guides["procedure"].items()]
        entries = [
            {"title": guide["title"], "also": ", ".join(many(guide.get("also"))), "text": guide.get("says") or guide.get("for")}
            for _, guide in guides
        ]
        (self.out / "look").mkdir(exist_ok=True)
        (self.out / "look/search-index.js").write_text(f"window.searchIndex = {json.dumps(entries)};\n", "utf-8")


class Ways:
    """Every question and ending of a guide in the author's order; an answer that parts nothing that is left is passed over."""

    def __init__(self, handbook, guide):
        self.handbook, self.guide = handbook, guide
        self.causes = {cause["cause"]: cause for cause in guide["causes"]}
        rest = guide["not on this list"]
        self.shares = {name: cause["share"] for name, cause in self.causes.items()}
        self.shares["rest"] = 100 - sum(self.shares.values())
        self.remedy = {name: cause["lasting"] for name, cause in self.causes.items()}
        self.remedy["rest"] = rest.get("lasting")
        self.access = {job["access"]: job for job in many(guide.get("access"))}

    def answers(self, probe):
        """Pairs of an answer in words and the suspects that give it."""
        if "mends" in probe:
            works = set(many(probe["mends"]))
            return [("It works now", works), ("No change", set(self.shares) - works)]
        named = [(a["title"], set(many(a["means"])) - {"otherwise"}, a["means"] == "otherwise") for a in probe["answers"]]
        taken = set().union(*(means for _, means, _ in named))
        return [(title, means | (set(self.shares) - taken if other else set())) for title, means, other in named]

    def next_probe(self, left, asked):
        if len({self.remedy[name] for name in left}) == 1:
            return None
        for probe in self.guide["probes"]:
            if probe["probe"] not in asked:
                parts = [means & left for _, means in self.answers(probe)]
                if sum(1 for part in parts if part) > 1:
                    return probe
        return None

    def opening(self, probe, opened):
        jobs = []

        def open_first(name):
            if name in opened or name in jobs:
                return
            for need in many(self.access[name].get("needs")):
                open_first(need)
            jobs.append(name)

        for need in many(probe.get("needs")):
            open_first(need)
        return jobs

    def node(self, left, asked, opened, so_far, way, unread):
        """The tree from here, as a nested dictionary."""
        answers = "/".join(f"{probe}={answer}" for probe, answer in way)
        digest = hashlib.blake2b(answers.encode(), digest_size=4).hexdigest()
        probe = None if unread == MOST_UNREAD else self.next_probe(left, asked)
        closing = sum(self.access[job]["close"] for job in opened)
        here = {"left": left, "way": way, "opened": opened, "so_far": so_far, "closing": closing, "probe": probe}
        name = self.guide["symptom"]
        if probe is None:
            here.update(to_go=closing, most=closing, address=f"faults/{name}/end-{digest}.html")
            return here
        jobs = self.opening(probe, opened)
        cost = probe["minutes"] + sum(self.access[job]["open"] for job in jobs)
        weight = sum(self.shares[suspect] for suspect in left)
        here.update(jobs=jobs, branches=[], to_go=cost, most=cost, address=f"faults/{name}/{probe['probe']}-{digest}.html")
        for title, means in self.answers(probe):
            part = left & means
            if part:
                branch = self.node(part, asked | {probe["probe"]}, opened + jobs, so_far + cost, way + [(probe["probe"], title)], unread)
                here["branches"].append((title, branch))
                here["to_go"] += branch["to_go"] * sum(self.shares[suspect] for suspect in part) / weight
                here["most"] = max(here["most"], cost + branch["most"])
        if unread < MOST_UNREAD:
            skipped = way + [(probe["probe"], "cannot-tell")]
            here["cannot_tell"] = self.node(left, asked | {probe["probe"]}, opened + jobs, so_far + cost, skipped, unread + 1)
        return here

    def rows(self, left):
        weight = sum(self.shares[name] for name in left)
        rows = [(100 * self.shares[name] / weight, name, self.causes.get(name)) for name in left]
        return sorted(rows, key=lambda row: (-row[0], row[1]))

    def remedies(self, left):
        by_remedy = {}
        for _, name, cause in self.rows(left):
            if cause is not None:
                by_remedy.setdefault(cause["lasting"], []).append(cause)
        return by_remedy

    def pages(self):
        name, title = self.guide["symptom"], self.guide["title"]
        tree = self.node(frozenset(self.shares), frozenset(), [], 0, [], 0)
        tree["address"] = f"faults/{name}.html"
        said = {"guide": self.guide, "ways": self, "many": many, "node": tree, "here": None}
        self.handbook.page(tree["address"], "symptom.html", title, **said)
        self.handbook.page(f"sheets/{name}.html", "sheet.html", title, **said)
        self.following(tree)

    def following(self, node):
        for _, branch in node.get("branches", ()):
            self.stop(branch)
        if "cannot_tell" in node:
            self.stop(node["cannot_tell"])

    def stop(self, node):
        probe = node["probe"]
        causes = [cause["title"] for _, _, cause in self.rows(node["left"]) if cause]
        title = probe["ask"] if probe else " / ".join(causes) or "Not on this list"
        place = probe and probe.get("place")
        said = {"guide": self.guide, "ways": self, "many": many, "node": node, "here": place}
        self.handbook.page(node["address"], "question.html" if probe else "ending.html", title, **said)
        self.following(node)


if __name__ == "__main__":
    Handbook(pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[2])).bind()
