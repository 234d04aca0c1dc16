"""Many hard breaths, and then under."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

PUFFING = danger(
    name="puffing-first",
    asks="asks for many hard breaths before going under",
    mend="one usual breath before a push-off; rest until breathing is quiet",
    ways="""
    STRONG ~ PUFFING ... SINK|DIVE|UNDERWATER|UNDER|DEPTH
    PUFFING ~ STRONG ... SINK|DIVE|UNDERWATER|UNDER|DEPTH
    PUFFING .. NUM|TIMES|MANY|DIST|LONG_TIME|DIST ... SINK|DIVE|UNDERWATER|UNDER|DEPTH
    NUM|TIMES|MANY|DIST|LONG_TIME|DIST .. PUFFING ... SINK|DIVE|UNDERWATER|UNDER|DEPTH
    before .. SINK|DIVE|UNDERWATER|UNDER|immersion ... STRONG ~ PUFFING
    before .. SINK|DIVE|UNDERWATER|UNDER|immersion ... MANY|NUM|DIST ~ PUFFING
    BREATHE COMMA? STRONG|and|DEEP ~ EXHALE & NUM|MANY|TIMES|STRONG|SINK|DIST
        -- GO|stroke|WALL
    PUFFING & NUM|TIMES|DIST|MANY & down|under|SINK|SEALED
        -- SLOW ; swimming down ; talk|sentence ; ONE AIR ; NOT|not used ; free|own ; laps|lengths
           ... BREATHE ~ as ; EXHALE ; BEATS ; hands|ears|BODY ; rest
    NUM|MANY|DIST STRONG|deep and|COMMA STRONG PUFFING
    STRONG ~ A_BREATH .. WALL ~ first|before
    BREATHE ~ at ~ double|twice|faster
    emptying|empty|filling|fill ~ and ~ filling|fill|emptying|empty ~ INSIDES
    MANY|NUM|enough|lots|several|plenty ~ STRONG A_BREATH
    as ~ much ~ oxygen|air|AIR ~ as & PUFFING|SINK
    store|stores|storing|stock|bank|load|loads|loading ~ oxygen|AIR|air
    oxygen ~ store|stores|reserve|reserves|load|boost|up
    storm|storms|flush|flushed|rinse ~ lungs
        -- slowly
    power|greedy|panic A_BREATH
    heavy|hard|fast BREATHE first|before
    rush|rushed|hurry ~ BREATHE ... before
    pre|before ~ dive|plunge|dip PUFFING
    A_BREATH ... beforehand ... longer|more|beneath|seconds|under
    more air ~ pump|take|gulp
    NUM|MANY|DIST ~ STRONG inhales|breaths|AIR & SINK
    """,
    unless="""
    SLOW ; twice the AIR ; HEED ; after ~ SURFACE ; relax ; at rest ; a STRONG ~ AIR ; EXHALE
        UNDERWATER ; EXHALE ~ water
    """,
)
