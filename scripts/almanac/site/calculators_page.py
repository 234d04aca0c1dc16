"""The page Calculators: what each asks for and says, and the club's own numbers that it goes by. A
script works out the answers; ``vectors.py`` writes what it must come to.
"""

from __future__ import annotations

from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.analysis.calculators import CALCULATORS
from almanac.analysis.calculators.calculator import Calculator, ClubNumbers, Field
from almanac.analysis.calculators.drag import CHUTES
from almanac.arithmetic.known_tests import known_points
from almanac.model.club import LaneGroup
from almanac.model.policy import RestRule
from almanac.report.calculated import shown_default
from almanac.site.computed import chapters, code_of, place_of
from almanac.site.links import Page
from almanac.site.search_pages import CALCULATOR
from almanac.site.templates import script_json
from almanac.units import COURSES, show_number, show_time

_LIMITS = (
    "single_test_exponent",
    "least_exponent",
    "greatest_exponent",
    "rest_by_distance_most",
    "sendoff_step",
    "gap_on_back",
)


def calculators_page(analysis: Analysis) -> Page:
    """The page, each calculator a fold: of a club without water those of land alone."""
    club = ClubNumbers(analysis.catalogue)
    tests = _tests(analysis)
    has_water = bool(analysis.catalogue.club.waters)
    each = {name: of for name, of in CALCULATORS.items() if has_water or of.on_land}
    own = [_told(calculator, club) for calculator in each.values()]
    places = [
        {"at": calculator.name, "title": calculator.title, "kind": CALCULATOR,
         "asked": list(calculator.asked_as)}
        for calculator in each.values()
    ]  # fmt: skip
    return Page(
        "calculators.md",
        "calculators",
        {
            "calculators": own,
            "tests": tests,
            "data": script_json(
                {
                    "club": club_numbers(club),
                    "words": {name: words_of(of, club) for name, of in each.items()},
                    "tests": tests,
                }
            ),
            "places": places,
            "has_water": has_water,
        },
    )


def _told(calculator: Calculator, club: ClubNumbers) -> dict[str, Any]:
    """What the template shows of a calculator, and under ``words`` what its script reads."""
    fields = calculator.fields(club)
    titles = {code_of(by): title for told in chapters().values() for title, by in told}
    return {
        "name": calculator.name,
        "title": calculator.title,
        "asks": calculator.asks,
        "limits": calculator.limits,
        "fields": [_field(calculator, field) for field in fields],
        "takes_tests": {"distance", "time", "distance-2", "time-2"} <= {f.name for f in fields},
        "formulas": [
            (titles[code_of(formula)], place_of(code_of(formula))) for formula in calculator.by
        ],
        "words": words_of(calculator, club),
    }


def _field(calculator: Calculator, field: Field) -> dict[str, Any]:
    return {
        "id": f"{calculator.name}-{field.name}",
        "name": field.name,
        "title": field.title,
        "unit": field.unit,
        "takes": field.takes.value,
        "many": field.many,
        "optional": field.optional,
        "choices": field.choices,
        "default": shown_default(field),
    }


def words_of(calculator: Calculator, club: ClubNumbers) -> dict[str, Any]:
    """The words of a calculator, as its script reads them."""
    return {
        "name": calculator.name,
        "fields": [
            {"name": field.name, "title": field.title, "takes": field.takes.value,
             "unit": field.unit, "least": field.least, "most": field.most,
             "choices": dict(field.choices), "many": field.many, "optional": field.optional}
            for field in calculator.fields(club)
        ],
        "lines": [
            {"name": line.name, "title": line.title, "how": line.how.value, "unit": line.unit,
             "places": line.places}
            for line in calculator.lines
        ],
        "sentences": dict(calculator.sentences),
        "refusals": dict(calculator.refusals),
    }  # fmt: skip


def club_numbers(club: ClubNumbers) -> dict[str, Any]:
    """The club's own numbers that calculators go by. Metres, seconds, metres a second."""
    catalogue = club.catalogue
    policy, levels = catalogue.policy, catalogue.words("levels")
    return {
        "courses": {name: [course.length, course.unit.metres] for name, course in COURSES.items()},
        "efforts": {
            word: {
                "share": club.scale.share(word),
                "by_level": {level: club.scale.share(word, level) for level in levels},
                "reference_m": club.scale.reference_m(word),
            }
            for word in catalogue.efforts
        },
        "rest": {
            word: {"least": _rest(rest.least), "wanted": _rest(rest.wanted)}
            for word, rest in policy.rest.items()
        },
        "limits": {name: policy.limit(name) for name in _LIMITS},
        "slowest_afloat": {level: policy.slowest_afloat(level) for level in levels},
        "chutes": [[row.area_cm2, row.k] for row in CHUTES],
    }


def _rest(rule: RestRule) -> dict[str, float | None]:
    return {"per_50": rule.seconds_per_50, "share": rule.share_of_work}


def _tests(analysis: Analysis) -> list[dict[str, Any]]:
    """What lane groups have been timed over, two distances at most of each activity: to begin with
    in place of typing.
    """
    return [found for id, group in analysis.catalogue.lane_groups.items()
            for found in _tests_of(analysis, id, group)]  # fmt: skip


def _tests_of(analysis: Analysis, id: str, group: LaneGroup) -> list[dict[str, Any]]:
    benchmarks = analysis.catalogue.benchmarks
    activities: dict[object, list[str]] = {}
    for own, benchmark in benchmarks.items():
        activities.setdefault((benchmark.activity, frozenset(benchmark.gear)), []).append(own)
    found = []
    for ids in activities.values():
        course = next((test.course for test in group.tests if test.benchmark in ids), None)
        if course is None:
            continue
        points = known_points(group.tests, ids, benchmarks, course, analysis.today)[:2]
        swum = [(round(point.metres / course.unit.metres), point.seconds) for point in points]
        if swum:
            title = benchmarks[points[0].benchmark].title
            times = ", ".join(f"{distance} in {show_time(s, True)}" for distance, s in swum)
            found.append({
                "group": id,
                "title": f"{group.title}: {title} ({times})",
                "pool": str(course),
                "tests": [[show_number(distance), show_time(s, True)] for distance, s in swum],
            })  # fmt: skip
    return found
