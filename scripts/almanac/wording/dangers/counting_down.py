"""Breaths counted down, or strokes between them counted up."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

COUNTING_DOWN = danger(
    name="counting-breaths-down",
    asks="counts breaths down, or strokes between them up",
    mend="let everyone breathe as they need to, every third stroke at most; count something else",
    ways="""
    COUNT_DOWN ~ A_BREATH
    COUNT_DOWN ... A_BREATH
        -- free|full|easy A_BREATH ; rest|rests ; distance ; up to ; STROKE|BEATS ; descend ;
           BREATHE to|easy
    A_BREATH ... COUNT_DOWN
        -- BREATHE to ; STROKE|BEATS ; SLOW
    COUNT_UP ... A_BREATH
        -- BEATS|side ; BREATHE to ; SLOW
    A_BREATH ... COUNT_UP
        -- BEATS ; BREATHE to ; SLOW
    NUM AIR ... NUM|ONE|FEW ~ AIR ... NUM|ONE|NO
        -- SLOW|deep AIR ; rest|BRIEF|LONG_TIME|CLOCK
    NUM AIR ... then|COMMA NUM|ONE|NO COMMA|then|FULL|AIR
        -- SLOW AIR
    BREATHE ~ every|each|per MANY|DIST !BEATS|LONG_TIME|BRIEF|NEAR
        -- CLOCK ; MANY BEATS ; breathing side|sides ; swap|change
    every|each MANY|DIST ~ STROKE ~ A_BREATH
    a AIR every|per|each MANY|DIST !BEATS
        -- CLOCK
    BREATHE MANY|DIST ~ FULL|COMMA|and|by|HALF|then
        -- BREATHE MANY BEATS|times
    DESCEND FEW_OF* A_BREATH
    A_BREATH|breath DESCEND|down ~ EXTENT|by|each|every|from|to|FULL|COMMA
        -- SLOW
    AIR FALL|DESCEND !NOT_BREATH
    COUNT LIGHT* AIR down|and|then ... FEW|off|down|FEWER|beat
    FEW ~ ONE|a|NUM ~ AIR
        -- at least ; IF ~ FEW ; because
    each|every ~ POOL|rep|round|DIST|time|week ~ FEW ~ AIR
    each|every ~ POOL|rep|round|DIST|time|week ~ FEWER AIR
    LONGER|ADD ~ stroke|strokes|arms|pulls between|per|before|to ~ A_BREATH
    ADD ~ ONE|NUM|two ~ STROKE .. A_BREATH
    BREATHE ... every|each MANY !BEATS|LONG_TIME|BRIEF|NEAR|m|metres|seconds
        -- CLOCK ; MANY BEATS ; BREATHE ~ SLOW
    NUM AIR COMMA ~ NUM COMMA ~ NUM
    NUM AIR // .. HALF? .. NUM AIR // .. HALF? .. NUM AIR
    MANY stroke ... breathing
    """,
)
