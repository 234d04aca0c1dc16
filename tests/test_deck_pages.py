"""What pages make for the deck: cards and their codes, the finder's table, the policy, the list of
kept files.
"""

from __future__ import annotations

import hashlib
import json
import zlib
from base64 import urlsafe_b64encode
from dataclasses import replace
from itertools import accumulate
from pathlib import Path

import pytest
import zxingcpp
from hypothesis import given
from hypothesis import strategies as st
from qr_pictures import drawn

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.glance import chief_drill, drill_seconds
from almanac.cache import SWITCH
from almanac.kinds import WITH_PAGES
from almanac.model.club import Site
from almanac.publish.content_security import POLICY, with_policy
from almanac.publish.offline import KeptFiles, app_manifest, kept_files
from almanac.publish.packs import packed
from almanac.publish.postprocess import close_set, is_asked_for
from almanac.resources import HOME
from almanac.site.cards import card_context
from almanac.site.entry_parts import Parts
from almanac.site.finder import MINUTES, VERSION, Finder
from almanac.site.links import Page, page_of
from almanac.site.pictures import named
from almanac.site.qr_codes import QrCodes, qr_code
from almanac.site.settings import SiteSettings, settings_of
from almanac.units import COURSES

ADDRESS = "https://quillwater.example/drills/back-streamline-kick.html"


@pytest.mark.parametrize(
    "address",
    [ADDRESS, "https://x.example/" + "long-name-" * 12 + ".html", "https://a.example/sets/é.html"],
)
def test_a_code_reads_back_as_its_address(address: str) -> None:
    (found,) = zxingcpp.read_barcodes(drawn(qr_code(address)))
    assert found.text == address


def test_codes_are_drawn_once_and_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("almanac.cache.user_cache_dir", lambda *_: str(tmp_path))
    monkeypatch.delenv(SWITCH, raising=False)
    codes = QrCodes(ADDRESS)
    drawn_codes = [codes.of(f"{ADDRESS}{name}.html") for name in "ab"]
    codes.save()
    monkeypatch.setattr("almanac.site.qr_codes.qr_code", lambda _: "drawn again")
    again = QrCodes(ADDRESS)
    assert [again.of(f"{ADDRESS}{name}.html") for name in "ab"] == drawn_codes
    assert again.of(f"{ADDRESS}c.html") == "drawn again"
    assert QrCodes("https://club.example/").of(f"{ADDRESS}a.html") == "drawn again"
    for path in (tmp_path / "qr").iterdir():
        path.write_bytes(path.read_bytes()[:-1])
    assert QrCodes(ADDRESS).of(f"{ADDRESS}a.html") == "drawn again"


def test_the_card_of_an_entry() -> None:
    page = Page(
        "drills/back-streamline-kick.md",
        "drill",
        {"figure": '<svg id="drawing" viewBox="0 0 320 140">'},
    )
    with_address = card_context(page, "https://quillwater.example/")
    assert with_address is not None
    assert (with_address["address"], with_address["drawing_box"]) == (ADDRESS, "0 0 320 140")
    assert "<svg" in with_address["code"]
    below = card_context(page, "https://club.example/drills-site")
    assert (
        below is not None
        and below["address"] == "https://club.example/drills-site/drills/back-streamline-kick.html"
    )
    without = card_context(page, "")
    assert without is not None
    assert (without["address"], without["code"], without["href"]) == (
        "",
        "",
        "drills/back-streamline-kick.html",
    )


def test_a_list_has_no_card() -> None:
    assert card_context(Page("by/goal.md", "list", {}), ADDRESS) is None


def test_a_drill_takes_its_fewest_reps_each_with_its_rest(analysis: Analysis) -> None:
    clock = analysis.timing.clock("heron-1", COURSES["25m"])
    for drill in analysis.catalogue.drills.values():
        seconds = drill_seconds(drill, clock)
        if drill.dose.time:
            step = analysis.catalogue.policy.limit("rest_step")
            each = -(-(drill.dose.time + drill.dose.rest) // step) * step
            assert seconds == pytest.approx(drill.dose.reps.least * each)
        elif drill.pace is None:
            assert seconds is None


def test_the_chief_drill_is_the_farthest_swum(analysis: Analysis) -> None:
    assert chief_drill(()) is None
    for id in analysis.computable:
        far: dict[str, int] = {}
        for piece in analysis.summary(id).pieces:
            far[piece.drill.id] = far.get(piece.drill.id, 0) + piece.distance
        chief = chief_drill(analysis.summary(id).pieces)
        assert chief is not None and far[chief.id] == max(far.values())


def test_the_finders_table(analysis: Analysis) -> None:
    drawn_svgs = set(named(Parts(analysis).pictures()).values())
    data = Finder(Parts(analysis)).data()
    at = {name: number for number, name in enumerate(data["columns"])}
    catalogue = analysis.catalogue
    rows = {row[at["href"]]: row for row in data["rows"]}
    assert sorted(rows) == sorted(
        page_of(entry) for entry in catalogue.entries.values() if entry.kind in WITH_PAGES
    )
    assert all(len(row) == len(at) for row in data["rows"])
    assert {row[at["figure"]] for row in data["rows"]} <= {*drawn_svgs, ""}
    assert len(drawn_svgs) < len(catalogue.drills)  # drills drawn alike share a file
    for (fault, _), mending in zip(data["words"]["fault"], data["first"], strict=True):
        wanted = [id for cause in catalogue.faults[fault].causes for id in cause.mended_by]
        own = [data["rows"][number][at["href"]] for number in mending][: len(set(wanted))]
        assert own == [page_of(catalogue.drills[id]) for id in dict.fromkeys(wanted)]
    assert len(json.dumps(data)) / len(data["rows"]) < 800  # bytes an entry
    assert list(MINUTES) == sorted(MINUTES)


def test_a_table_in_a_page_cannot_end_its_element(analysis: Analysis) -> None:
    text = str(Finder(Parts(analysis)).page().context["data"])
    assert not set("<>&") & set(text)
    assert json.loads(text)["version"] == VERSION


def test_the_policy_lets_nothing_run_that_stands_in_a_page() -> None:
    rules = dict(rule.split(" ", 1) for rule in POLICY.split("; "))
    assert rules["default-src"] == "'none'"
    assert rules["script-src"] == rules["style-src"] == rules["form-action"] == "'self'"
    assert "unsafe" not in POLICY
    page = with_policy("<!doctype html><html><head><title>x</title></head></html>")
    assert page.index("Content-Security-Policy") < page.index("<title>")
    assert with_policy("no head") == "no head"


def test_lines_are_closed_up_but_not_where_they_count() -> None:
    assert close_set("<p>a\n\n    b</p>  \n  <p>") == "<p>a\nb</p>\n<p>"
    assert close_set("<pre>a\n  b</pre>") == "<pre>a\n  b</pre>"


@pytest.mark.parametrize(
    ("file", "expected"), [("sitemap.xml", True), ("sitemap.xml.gz", False), ("a.xml.gz", True)]
)
def test_what_no_page_asks_for_is_left_out(file: str, expected: bool) -> None:
    assert is_asked_for(file) is expected


def told_of(site: Path) -> dict[str, str]:
    kept = kept_files(site)
    told = kept.told('const VERSION = "@version@";', lambda file: (site / file).read_bytes())
    return {file: content.decode() for file, content in told}


def test_the_list_of_kept_files_is_tied_to_their_bytes(tmp_path: Path) -> None:
    (tmp_path / "data").mkdir()
    (tmp_path / "data" / "catalogue.json").write_text("{}", "utf-8")
    (tmp_path / "index.html").write_text("one", "utf-8")
    versions = []
    for text in ("one", "two", "one"):
        (tmp_path / "index.html").write_text(text, "utf-8")
        told = told_of(tmp_path)
        listed = json.loads(told["precache.json"])
        assert told["worker.js"] == f'const VERSION = "{listed["version"]}";'
        digest = urlsafe_b64encode(hashlib.sha256(text.encode()).digest()).decode()[:16]
        assert listed["files"] == {"index.html": [digest, 3]}
        assert listed["bytes"] == 3
        versions.append(listed["version"])
    assert versions[0] == versions[2] != versions[1]
    assert list(kept_files(tmp_path).files) == ["index.html"]


def unpacked(pack: str) -> dict[str, str]:
    """The pages of a pack, as the worker reads them."""
    read = json.loads(pack)
    return {
        file: "".join(read["pieces"][number - 1] for number in accumulate(steps))
        for file, steps in read["files"].items()
    }


LINES = st.lists(st.sampled_from(["", "<nav>", "<p><b>", "ü", '"', "a\\n", "\t"]), min_size=1)


@given(st.dictionaries(st.sampled_from(["a.html", "b.html", "c.html"]), LINES))
def test_pages_come_out_of_a_pack_as_they_went_in(pages: dict[str, list[str]]) -> None:
    texts = {file: "\n".join(lines) for file, lines in pages.items()}
    assert unpacked(packed(texts)) == texts


def test_pages_alike_weigh_little_more_than_one(tmp_path: Path) -> None:
    shared = "\n".join(f"<li>{number * 7919 % 10007}</li>" for number in range(3000))
    (tmp_path / "drills").mkdir()
    for number in range(250):
        (tmp_path / "drills" / f"{number:03}.html").write_text(f"{shared}\n{number}", "utf-8")
    told = told_of(tmp_path)
    packs = [file for file in told if file.startswith("packs/")]
    assert packs == [f"packs/drills-{number}.json" for number in range(2)]
    one = len(zlib.compress((tmp_path / "drills" / "000.html").read_bytes()))
    fetched = json.loads(told["offline.json"])["fetched"]
    assert fetched < 10 * one < 0.06 * 250 * one  # the pieces and their order, in each of two packs
    listed = json.loads(told["precache.json"])
    assert [file for _, _, files in listed["packs"] for file in files] == list(listed["files"])
    for address, hash, files in listed["packs"]:
        digest = urlsafe_b64encode(hashlib.sha256(told[address].encode()).digest()).decode()
        assert digest[:16] == hash
        assert list(unpacked(told[address])) == files


def test_a_pack_is_told_again_where_a_page_of_it_is_another() -> None:
    kept, pages = KeptFiles(), {"a.html": b"one", "drills/b.html": b"two"}
    for file, content in pages.items():
        kept.add(file, content)
    told = [{file for file, _ in kept.told("", pages.__getitem__)} for _ in range(2)]
    pages["drills/b.html"] = b"three"
    kept.add("drills/b.html", b"three")
    told.append({file for file, _ in kept.told("", pages.__getitem__)})
    always = {"precache.json", "offline.json", "worker.js"}
    both = {"packs/top-0.json", "packs/drills-0.json"}
    assert told == [always | both, always, always | {"packs/drills-0.json"}]


def test_the_app_manifest_names_files_that_are_there() -> None:
    manifest = json.loads(app_manifest(SiteSettings("Our Club", "A catalogue.")))
    assert (manifest["name"], manifest["theme_color"]) == ("Our Club", "#0d4a66")
    for icon in manifest["icons"]:
        assert (HOME / "site_src" / icon["src"]).is_file()


def test_what_a_club_does_not_say_of_its_site(analysis: Analysis) -> None:
    club = replace(analysis.catalogue.club, site=Site())
    entries = {**analysis.catalogue.entries, ("club", "club"): club}
    settings = settings_of(replace(analysis.catalogue, entries=entries))
    assert settings.name == club.title
    assert (settings.address, settings.repository) == ("", "")
