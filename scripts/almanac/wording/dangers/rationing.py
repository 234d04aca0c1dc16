"""Breaths rationed: so many a length, fewer each time, the fewest wins."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

RATIONING = danger(
    name="rationing-air",
    asks="asks for breaths to be counted and kept few",
    mend="let everyone breathe when they need to; count kicks or strokes, never breaths",
    ways="""
    NUM|ONE|SOME|MANY ~ AIR & POOL|DIST|rep|round|apiece|total|maximum|max|crossing|yard|yards
    NUM|ONE|SOME AIR each|apiece|total|max|maximum
    POOL|DIST|rep|round in|on|with|for NUM|ONE|SOME AIR
    AIR & POOL|DIST|hundred|fifty ... on two|one|three|four|nothing
    AIR ~ KNOCK & SUCCESSIVE
    KNOCK ~ AIR & SUCCESSIVE
    KNOCK ~ AIR off|away|out|POOL
    KNOCK ~ NUMBER_OF ~ A_BREATH
    NUMBER_OF ~ A_BREATH & KNOCK
    AIR NUMBER_OF & KNOCK|NUM|down|FALL
    A_BREATH && get_rid_of ~ it|them|all
    COUNT ~ AIR ... KNOCK
    AIR .. NUMBER_OF .. KNOCK
    often|times ~ A_BREATH & KNOCK|smaller
    HOW_MUCH|FEW ~ times ~ A_BREATH
    most|MOST|FEWEST|FEW ~ A_BREATH & LURE
        -- nobody
    LURE & KNOCK ~ A_BREATH
    LURE & A_BREATH & NO|NOT|WITHOUT|FEW|fewest|only|without
        -- NO|NOT LURE ; LURE NO|NOT ; every|each ; NOT|never ... LURE ; not FEW A_BREATH ; and have
           one ; nobody
    A_BREATH ... KNOCK ... SUCCESSIVE|POOL|lap|none|nought
        -- SLOW ; A_BREATH to ; sink ; reps ; free ; wave|waves|beats
    KNOCK ... A_BREATH & SUCCESSIVE|POOL
        -- SLOW ; A_BREATH ~ as|to|out|when ; miss ; least ;
           stroke|strokes|beats|waves|kicks|rest|time ; little
    ONE|NUM|SOME AIR ... to none|zero|nought
    same ~ AIR ~ number|count
    NUMBER_OF|score ~ is ~ AIR
    NUM AIR ... next|after|then|COMMA ~ NUM COMMA|then|and|FULL|down
    A_BREATH ... until|to|at zero|none|nought|nil
    AIR KNOCK ~ SUCCESSIVE
    AIR & NUM ~ NUM ~ and ~ NUM|ONE|NO|none
    BREATHE|AIR ... use|take|need|take|spend one|ONE|NUM FEWER|FEW|MORE
    in|of|over ONE|NUM AIR COMMA|FULL|and|HALF
        -- REST|rest|recover
    on NUM|SOME|ONE|MANY AIR
    did|swam|swum|made|went|managed|done ~ on ~ AIR
    FEWEST|fewest AIR ~ over|in|across|for
    one|ONE FEW|FEWER ~ ~ A_BREATH|SUCCESSIVE & AIR
    """,
    unless="""
    SLOW ~ AIR ;
    AIR ~ SLOW ;
    rest|REST ~ ~ AIR ;
    AIR ~ rest|rests ; short REST ; recover ;
    at ~ WALL & rest|REST|before ;
    A_BREATH every|each ~ stroke|strokes|cycle ;
    full|easy|quiet|free|freely A_BREATH ;
    at ~ WALL ... AIR ; AIR at ~ WALL ; before ~ start ;
    before|between ~ AIR ; HEED ; add ; r ; short of AIR
    """,
)
