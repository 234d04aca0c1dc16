"""Over-breathing before going under."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

OVER_BREATHING = danger(
    name="over-breathing",
    asks="asks for over-breathing, which puts off the wish for air until a swimmer faints",
    mend="one usual breath before a push-off; rest until breathing is quiet",
    ways="""
    HYPERVENTILATE
    BREATHE at ~ double|twice
    DEEP BREATHE COMMA ~ DEEP EXHALE
    DEEP COMMA? and? QUICK ~ A_BREATH
    QUICK COMMA? and? DEEP ~ A_BREATH
    BREATHE ~ DEEP and|COMMA QUICK
    BREATHE ~ QUICK and|COMMA DEEP
    AIR COMMA DEEP|QUICK and|COMMA DEEP|QUICK
    SEVERAL ~ DEEP|QUICK A_BREATH ...
        UNDERWATER|UNDER|under|DIVE|push|push_off|GO|then|before|down
        -- SLOW ; relax|float|rest|settle ; a DEEP ~ AIR
    NUM|MANY|SOME QUICK|sharp|powerful|hard|violent AIR
    BREATHE|AIR ~ DEEP|QUICK|rapidly ~ for|NUM|LONG_TIME|BRIEF|TIMES|before|then ...
        UNDERWATER|UNDER|DIVE|push_off|GO|LONG_TIME|NUM|start|down|POOL
        -- SLOW ; WALL ; finish
    PANT ~ DEEP|QUICK|like|for|NUM|TIMES|and|before|then|UNTIL
    PANT ... UNDERWATER|UNDER|DIVE|push_off
    PUMP .. A_BREATH|LUNG|blood
        -- cord|tyre|nose
    PUMP .. CO2
    CO2 FALL|low|out|off|gone|tolerance|tables
    LUNG LIGHT* PUMP
    FILL ~ LUNG ~ TIMES|NUM|MANY|SOME|DIST|several|again|twice|bursting|brim
    FILL BREATH_OF* LUNG ... UNDERWATER|STAY_DOWN|UNDER|DIVE|BOTTOM|POOL|WALL
        -- lie|float ; EXHALE ; SLOW
    FILL|empty BREATH_OF* LUNG ... BOTTOM|UNDERWATER|sink|lie|GO|DIST|UNTIL
        -- float|back ; EXHALE
    AIR|BREATHE in and out COMMA? QUICK|DEEP|TIMES|NUM
    A_BREATH ~ TIMES|NUM|MANY ~ before|then ... UNDERWATER|UNDER|DIVE
    DEEP|extra A_BREATH ... before|then .. UNDERWATER|UNDER|DIVE|dolphin|submerge
        -- a|ONE DEEP AIR ; SLOW
    before .. UNDERWATER|UNDER|DIVE ... DEEP|QUICK A_BREATH
        -- a|ONE DEEP AIR ; SLOW
    extra|LONGER oxygen|air ... last|LAST|AS_LONG_AS|UNDERWATER
    more|harder|deeper|faster ~ A_BREATH & longer|further|farther
    on top of ~ AIR
    of QUICK|hard|DEEP BREATHE
    power|fire|warrior|bellows A_BREATH
    DEEP A_BREATH ... faster|quicker
    """,
)
