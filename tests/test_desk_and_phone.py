"""What a desk shows beside what a phone shows: wide tables, and a block with its weeks as
columns.
"""

from __future__ import annotations

import re

import pytest

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.kept import kept_sessions
from almanac.site.site_pages import SitePages


@pytest.fixture(scope="module")
def pages(analysis: Analysis) -> dict[str, str]:
    return dict(SitePages(analysis, {}).of_entries(lambda entry: True))


def columns_of(table: str) -> int:
    return max(len(re.findall(r"<t[hd]\b", row)) for row in table.split("<tr"))


def test_no_table_on_a_phone_has_more_than_four_columns(pages: dict[str, str]) -> None:
    on_desk, wide = 0, list[tuple[str, str]]()
    for file, text in pages.items():
        shown = text.split('<section class="deck-card"')[0]
        phone = re.sub(r'<(div|table) class="[^"]*on-desk".*?</table>', "", shown, flags=re.DOTALL)
        on_desk += shown.count("<table") - phone.count("<table")
        tables = re.findall(r"<table.*?</table>", phone, re.DOTALL)
        wide += [(file, table[:60]) for table in tables if columns_of(table) > 4]
    assert on_desk > 5 and wide == []


def test_a_block_tells_its_weeks_as_columns_with_what_was_done(
    analysis: Analysis, pages: dict[str, str]
) -> None:
    done = 0
    for id, groups in analysis.blocks.items():
        page = pages[f"blocks/{id}.md"]
        weeks = next(iter(groups.values())).weeks
        (table,) = re.findall(r'<table class="weeks">.*?</table>', page, re.DOTALL)
        rows = re.findall(r"<tr(?! class=\"whose\").*?</tr>", table, re.DOTALL)
        assert all(len(re.findall(r"<t[hd]\b", row)) == len(weeks) + 1 for row in rows)
        assert len(re.findall("week-bars", table)) == 4 * len(groups)
        for group, kept in (
            (id, kept) for id, own in groups.items() for kept in kept_sessions(own)
        ):
            done += 1
            assert f'data-group="{group}">done {kept.log.minutes} of ' in page
    assert done
