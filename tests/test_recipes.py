"""The recipes of DEVELOPERS.md, walked: each is followed in a copy of the program, the files that
it touched are counted, and what it promises is there.

A recipe names its files in a numbered list; it may name no file that it does not need, and need
none that it does not name. All are followed in one copy, one after the other; then its tests run
once and its pages are written once, and each recipe says what it looks for there.
"""

from __future__ import annotations

import html
import json
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable
from dataclasses import dataclass, field
from fnmatch import fnmatch
from pathlib import Path

from sentence_lists import sentences

from almanac.wording.reading import asked_for

ROOT = Path(__file__).resolve().parents[1]
COPIED = ("scripts/almanac", "site_src", "tests", "mkdocs.yml", "pyproject.toml", "README.md")
ENTRIES = "tests/catalogue"
_LEFT_OUT = shutil.ignore_patterns("node_modules", "browser", ".*")

_ASKS, _HARMLESS = "Gills open, air at the flags.", "Fish have gills."
ASKED = (
    ("check",), ("explain", "ladder-on-back", "tiles"), ("sum", "ladder-on-back", "--json"),
    ("sum", "ladder-on-back"), ("count", "--twice"), ("count",), ("--help",),
)  # fmt: skip
# All that is looked at of the copy, in one process: what each command prints, what the wording rule
# finds, and every page and data file of the small catalogue.
_LOOK = """
import contextlib, io, json, sys
from datetime import date
from pathlib import Path
sys.path.insert(0, "tests")
from almanac.analysis.analysis import Analysis
from almanac.commands.main import main
from almanac.model.load import load
from almanac.site.site_pages import SitePages
from almanac.site.write import write_pages
from test_recipes import read_by_the_rule
root, pages, asked = sys.argv[1], sys.argv[2], json.loads(sys.argv[3])
said = []
for command in asked:
    with contextlib.redirect_stdout(io.StringIO()) as out:
        code = main([*command, "--root", root, "--today", "2026-11-25"])
    assert code in (0, None), (command, out.getvalue())
    said.append(out.getvalue())
loaded = load(Path(root))
write_pages(SitePages(Analysis(loaded.catalogue, date(2026, 11, 25)), loaded.names), Path(pages))
print(json.dumps([said, read_by_the_rule()]))
"""


def read_by_the_rule() -> list[float]:
    """How often a danger is found in each of two texts, and what is caught and stopped of the
    sentences of a batch.
    """
    lists = (sentences(kind, 6) for kind in ("unsafe", "harmless"))
    rates = (sum(bool(asked_for(text)) for text in own) / len(own) for own in lists)
    return [*(len(asked_for(text)) for text in (_ASKS, _HARMLESS)), *rates]


@dataclass
class Walk:
    """A copy of the program that a recipe is followed in, the files that this touches, and the
    tests that it must leave green: a file and a choice of its tests.
    """

    root: Path
    touched: set[str] = field(default_factory=set)
    green: list[tuple[str, str]] = field(default_factory=list)
    said: dict[tuple[str, ...], str] = field(default_factory=dict)
    found: list[float] = field(default_factory=list)

    def write(self, file: str, text: str) -> None:
        """A new file."""
        self.touched.add(file)
        (self.root / file).parent.mkdir(parents=True, exist_ok=True)
        (self.root / file).write_text(text, "utf-8")

    def put(self, file: str, before: str, text: str) -> None:
        """Text put in before some other, which stands there once."""
        whole = (self.root / file).read_text("utf-8")
        assert whole.count(before) == 1, (
            f"{file}: {before!r} stands there {whole.count(before)} times"
        )
        self.touched.add(file)
        (self.root / file).write_text(whole.replace(before, text + before), "utf-8")

    def entry(self, file: str, before: str, text: str) -> None:
        """The same in an entry: what coaches write is no file of the recipe."""
        self.put(f"{ENTRIES}/{file}", before, text)
        self.touched.discard(f"{ENTRIES}/{file}")

    def run(self, *arguments: str, **environment: str) -> str:
        """What a Python command of the copy prints; its exit code is 0."""
        done = subprocess.run(
            [sys.executable, *arguments],
            cwd=self.root,
            capture_output=True,
            text=True,
            check=False,
            env={**os.environ, "PYTHONPATH": str(self.root / "scripts"), **environment},
        )  # fmt: skip
        assert done.returncode == 0, done.stdout + done.stderr
        return done.stdout

    def look(self) -> None:
        """Write the pages of the small catalogue, and remember what the commands print and the rule
        finds.
        """
        said, self.found = json.loads(self.run("-c", _LOOK, ENTRIES, "pages", json.dumps(ASKED)))
        self.said = dict(zip(ASKED, said, strict=True))

    def almanac(self, *arguments: str) -> str:
        """What a command prints on the small catalogue, once it was looked at."""
        return self.said[arguments]

    def tests(self, *arguments: str) -> None:
        """Tests of the copy, which pass; what an example is expected to give is written anew."""
        plain = ("-q", "-p", "no:cacheprovider", "-p", "no:xdist")
        self.run("-m", "pytest", *plain, *arguments, REWRITE_EXPECTED="1")
        for file in (ROOT / "tests/examples/rejected").glob("*/expected.txt"):
            assert (self.root / file.relative_to(ROOT)).read_bytes() == file.read_bytes(), file

    def page(self, file: str) -> str:
        """A page or data file of the small catalogue, once they are written."""
        return (self.root / "pages" / file).read_text("utf-8")


def copied_program(into: Path) -> Path:
    for name in COPIED:
        copy = into / name
        copy.parent.mkdir(parents=True, exist_ok=True)
        if (ROOT / name).is_dir():
            shutil.copytree(ROOT / name, copy, ignore=_LEFT_OUT)
        else:
            shutil.copy(ROOT / name, copy)
    return into


def a_field(walk: Walk) -> None:
    walk.put(
        "scripts/almanac/schemas/fault.json", '    "refer_on": {',
        '    "seldom_with": {"description": "What it is seldom seen with.", "$ref": '
        '"common.json#/$defs/line"},\n',
    )  # fmt: skip
    walk.put(
        "scripts/almanac/model/fault.py",
        "    not_to_confuse_with: tuple[LookAlike, ...] = ()\n",
        '    seldom_with: str = ""\n',
    )
    walk.put(
        "site_src/templates/fault.md.j2",
        '<h2 id="when-it-is-pain">',
        "<p>{{ entry.seldom_with }}</p>\n",
    )
    walk.put(
        "tests/examples/accepted/every-field/drills/faults/bent-knees.yml", "refer_on:",
        "seldom_with: Seen in fins.\n",
    )  # fmt: skip
    walk.entry("drills/faults/feet-too-deep.yml", "refer_on:", "seldom_with: Short fins hide it.\n")
    walk.green.append(("test_schemas", "fault and (dataclasses or every_field or described)"))


def the_field_is_there(walk: Walk) -> None:
    for file in ("faults/feet-too-deep.md", "data/v1/fault/feet-too-deep.json"):
        assert "Short fins hide it." in walk.page(file)
    assert "What it is seldom seen with." in walk.page("fields.md")


FEW_STEPS = "tests/examples/rejected/check-few-steps"


def a_rule_with_a_limit(walk: Walk) -> None:
    walk.put("scripts/almanac/checks/wording.py", '@warns("empty-word")', '''@warns("few-steps")
def few_steps(analysis: Analysis) -> Iterator[Problem]:
    """A drill has at least the policy's ``fewest_steps``, and those of its level."""
    policy = analysis.catalogue.policy
    for drill in analysis.catalogue.drills.values():
        of_level = policy.of_level(drill.level).limit("steps_of_level_least")
        least = max(policy.limit("fewest_steps"), of_level)
        if len(drill.steps) < least:
            message = f"{len(drill.steps)} steps, and {least:g} are wanted"
            yield Problem(drill, ("steps",), message, "say what comes before and after")


''')  # fmt: skip
    walk.put("scripts/almanac/schemas/policy.json", '        "days_off": {', (
        '        "fewest_steps": {"description": "The fewest steps of a drill.", "$ref": '
        '"#/$defs/limit",\n'
        '          "default": {"value": 1, "unit": "reps", "reason": "One is enough.", "source": '
        '"house preference"}},\n'
    ))  # fmt: skip
    walk.put("scripts/almanac/schemas/policy.json", '          "resisted_seven_days_most": {', (
        '          "steps_of_level_least": {"title": "Steps, at least", "description": "The '
        'fewest steps.", "$ref": "#/$defs/limit",\n'
        '            "default": {"foundation": {"value": 2, "unit": "reps", "reason": "Two.", '
        '"source": "house preference"},\n'
        '              "performing": {"value": 1, "unit": "reps", "reason": "One will do.", '
        '"source": "house preference"}}},\n'
    ))  # fmt: skip
    case = FEW_STEPS
    asked = "steps_of_level_least: {value: 9, unit: reps, reason: Nine., source: house preference}"
    level = "  foundation:\\n"
    walk.write(
        f"{case}/case.yml",
        f'- {{replace: plans/policy.yml, find: "{level}", with: "{level}    {asked}\\n"}}\n',
    )
    walk.write(f"{case}/expected.txt", "")
    walk.green.append(("test_examples", "few-steps or base_has_nothing or every_code or code"))
    walk.green.append(("test_schemas", "limit"))


def the_rule_is_there(walk: Walk) -> None:
    found = (walk.root / FEW_STEPS / "expected.txt").read_text("utf-8")
    assert re.search(
        r"(?m)^drills/skills/\S+:\d+:\d+: warning few-steps: \d steps, and 9 are wanted$", found
    )
    assert "fewest_steps" in html.unescape(walk.page("checks.md"))
    assert "fewest steps" in walk.page("computed.md")
    assert "Steps, at least" in walk.page("safety.md")


def a_figure(walk: Walk) -> None:
    walk.put("scripts/almanac/arithmetic/set_workings.py", "def rep_count(",
             '''def tiles(swum: Swum) -> Working:
    """The distance in tiles of a quarter of a metre, for those who count them."""
    return Quotient((swum.distance), Known(0.25, "m a tile"))


''')  # fmt: skip
    walk.put(
        "scripts/almanac/analysis/figures/sets.py", '    Figure("yards",',
        '    Figure("tiles", "Tiles", tiles, Shown.WHOLE),\n',
    )  # fmt: skip
    file = "scripts/almanac/analysis/figures/sets.py"
    walk.put(
        file,
        "from almanac.arithmetic.set_workings import",
        "from almanac.arithmetic.set_workings import tiles\n",
    )


def the_figure_is_there(walk: Walk) -> None:
    tiles = "4,000"  # of the 1,000 m
    assert f"= {tiles}" in walk.almanac("explain", "ladder-on-back", "tiles")
    assert "tiles" in walk.almanac("sum", "ladder-on-back", "--json")
    assert tiles in walk.almanac("sum", "ladder-on-back")
    assert tiles in walk.page("sets/ladder-on-back.md")
    assert "for those who count them" in walk.page("computed.md")


def a_word(walk: Walk) -> None:
    file = f"{ENTRIES}/drills/vocabulary/goals.yml"
    walk.put(
        file,
        "  kick-speed:",
        '  kick-surprise: {title: Kick surprise, means: "A beat that nobody expects."}\n',
    )
    for drill in sorted((walk.root / ENTRIES / "drills/skills").rglob("*.yml"))[:1]:
        where = drill.relative_to(walk.root / ENTRIES).as_posix()
        text = drill.read_text("utf-8")
        goals = re.search(r"(?m)^goals: \[", text)
        assert goals, where
        drill.write_text(text.replace("goals: [", "goals: [kick-surprise, ", 1), "utf-8")


def the_word_is_there(walk: Walk) -> None:
    assert "Kick surprise" in walk.page("by/goal.md") and "Kick surprise" in walk.page("find.md")
    assert "kick-surprise" in walk.page("data/v1/schema/drill.json")


def a_slip(walk: Walk) -> None:
    first = (walk.root / "tests/slips/fields.yml").read_text("utf-8").splitlines()[0]
    slip = ("slip: said gather for a send-off", "in: plans/sets/six-fifties.yml",
            "find: 'sendoff: 1:45'", "with: 'gather: 1:45'")  # fmt: skip
    walk.put("tests/slips/fields.yml", first, "- " + "\n  ".join(slip) + "\n")
    walk.put(
        "scripts/almanac/source/meant/named_by_key.py",
        '"turnaround": "sendoff",',
        '"gather": "sendoff", ',
    )
    walk.write("tests/slips/fields.txt", "")
    walk.green.append(("test_slips", "fields and coach"))


def the_slip_is_told(walk: Walk) -> None:
    said = (walk.root / "tests/slips/fields.txt").read_text("utf-8")
    told, mend = said.split("\n\n")[0].splitlines()[1:]
    assert told.endswith("error unknown-key: there is no field 'gather' here")
    assert mend.strip() == "write sendoff; almanac check --fix does it"
    assert said.split("\n\n", 1)[1] == (ROOT / "tests/slips/fields.txt").read_text("utf-8")


def a_command(walk: Walk) -> None:
    walk.write(
        "scripts/almanac/commands/count.py",
        '''"""Count the entries."""

from __future__ import annotations

import argparse

from almanac.commands.outcome import FINE
from almanac.model.load import load

NAME = "count"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--twice", action="store_true", help="count them twice")


def run(arguments: argparse.Namespace) -> int:
    print(load(arguments.root).count * (2 if arguments.twice else 1))
    return FINE
''',
    )
    walk.put(
        "scripts/almanac/commands/main.py", '    "review": "review",\n', '    "count": "count",\n'
    )
    walk.put("README.md", "| `review ", "| `count` | count the entries |\n")
    walk.green.append(("test_layers", "command_is_documented"))


def the_command_is_there(walk: Walk) -> None:
    assert int(walk.almanac("count", "--twice")) == 2 * int(walk.almanac("count"))
    assert "count" in walk.almanac("--help")


def a_way_of_asking(walk: Walk) -> None:
    sentences, wording = "tests/sentences", "scripts/almanac/wording"
    walk.put(f"{sentences}/unsafe-6.txt", "Stay submerged for 30 seconds.", f"{_ASKS}\n")
    walk.put(f"{sentences}/harmless-6.txt", "Stay relaxed for 30 seconds on", f"{_HARMLESS}\n")
    walk.put(
        f"{wording}/dangers/withholding.py", "    NO ... GO ~ with LIGHT* AIR\n",
        "    GILLS ... AIR\n",
    )  # fmt: skip
    walk.put(f"{wording}/words_of_air.py", '    "SKY": ', '    "GILLS": "gill|s",\n')
    walk.green.append(("test_unsafe_words", "pattern or meaning or look or trait"))


def the_way_is_known(walk: Walk) -> None:
    before = read_by_the_rule()  # by the program as it is
    assert before[:2] == [0, 0] and walk.found[:2] == [1, 0]
    assert walk.found[2] >= before[2] and walk.found[3] <= before[3]


Step = Callable[[Walk], None]
RECIPES: dict[str, tuple[Step, int, Step]] = {
    "Add a field to a kind of entry": (a_field, 5, the_field_is_there),
    "Add a check with a limit": (a_rule_with_a_limit, 4, the_rule_is_there),
    "Add a computed figure": (a_figure, 2, the_figure_is_there),
    "Add a word to a vocabulary": (a_word, 1, the_word_is_there),
    "Teach the wording rule a way of asking for a danger": (a_way_of_asking, 4, the_way_is_known),
    "Teach a slip of a hand": (a_slip, 3, the_slip_is_told),
    "Add a command": (a_command, 3, the_command_is_there),
}  # fmt: skip


def named_files(recipe: str) -> list[str]:
    """The files of a recipe's numbered list, as forms: ``schemas/KIND.json``."""
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    start = text.index(f"**{recipe}.**")
    body = re.split(r"\n\n\*\*|\n#", text[start:])[0]
    return re.findall(r"(?m)^\d\. `([^`]+)`", body)


def stands_for(form: str, file: str) -> bool:
    """Whether a form with words in capitals stands for a file: ``commands/NAME.py``."""
    return fnmatch(file, f"*{re.sub(r'[A-Z]{3,}', '*', form)}")


def touches_what_it_says_and_no_more(recipe: str, walk: Walk) -> None:
    follow, most, _ = RECIPES[recipe]
    walk.touched.clear()
    follow(walk)
    named = named_files(recipe)
    assert len(walk.touched) <= most, recipe
    assert len(named) == len(walk.touched), (recipe, named, walk.touched)
    for file in walk.touched:
        assert any(stands_for(form, file) for form in named), f"{file} is not named: {named}"


def test_recipes_touch_what_they_say_and_no_more_and_keep_their_promises(tmp_path: Path) -> None:
    walk = Walk(copied_program(tmp_path))
    for recipe in RECIPES:
        touches_what_it_says_and_no_more(recipe, walk)
    walk.tests(
        *{f"tests/{module}.py": 0 for module, _ in walk.green},
        *("-k", " or ".join(f"{module} and ({like})" for module, like in walk.green)),
    )
    walk.look()
    found = set(re.findall(r"(?m)^\S+: (\w+ [a-z-]+): ", walk.almanac("check")))
    assert found == {"warning coverage-hole"}  # of the new goal, at each level
    for _, _, promised in RECIPES.values():
        promised(walk)


def test_every_recipe_is_walked() -> None:
    text = (ROOT / "DEVELOPERS.md").read_text("utf-8")
    start = text.index("## Recipes")
    assert re.findall(r"(?m)^\*\*(.+?)\.\*\*", text[start : text.index("\n### ", start)]) == list(
        RECIPES
    )
