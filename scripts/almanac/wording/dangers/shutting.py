"""A shut mouth, a full chest, one breath that is to last."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

SHUTTING = danger(
    name="shutting-air-out",
    asks="asks for the mouth to be kept shut, or one breath to last",
    mend="let everyone breathe when they need to; name the distance and the effort",
    ways="""
    SEALED & GO|EXTENT|STAY|NUM|SINK|through|across
        -- lid on
    MOUTH ~ SEALED|SHUT & GO|EXTENT|NUM
    MOUTH ~ never|not|NOT|NO OPENS
    NOT|NO ... MOUTH OPENS
    SEALED && GO|EXTENT|flat_out|hard
        -- lid on
    FACE in|down|under|submerged|wet & WHOLE|DIST|POOL|UNTIL|LONG_TIME & A_BREATH & only|ONLY
    AIR ... make|makes|making|LAST|stretch|stretches ~ it|that|them ~ LAST|last|stretch|EXTENT|do
    GO|race|swim|sprint|on ~ on ~ nothing|empty|fumes
    on|with ~ nothing ~ but ~ AIR
    on|with ~ AIR ~ you|they|he|she ~ dived|dive|started|start|took|take|left|brought|have|came
    LUNG ~ full ~ and ~ MOUTH ~ SHUT|tight|SEALED
    dry|clear|free of AIR
    sneaky|cheeky|crafty|sly|stolen|secret A_BREATH
    cheat|cheating|sneaks|sneaking|steal|stealing|crafty|cheeky|sneaky ~ ~ A_BREATH
    IF ~ BREATHE ... AGAIN|LURE|and NOT
    just HOLD_IT UNTIL|for|to|all|through
    HOLD_IT UNTIL ~ WALL|lungs|chest|CAN_NOT|flags|BURN
    HOLD_IT ~ ~ longer
        -- than me|him|her ; for longer
    AIR .. must|has|will|should|to ~ LAST|do|last
    AIR stays|stay|remains|kept|keeps ~ in|inside|put
    closed breathing
    nothing but ... AIR & POOL|DIST
    NO part .. with|on ~ A_BREATH
    seal|seals|zip|zips|clamp|glue LIGHT* MOUTH
    what ~ took|brought|breathed in
    hold_it_in & EXTENT|LONG_TIME|NUM|UNTIL
    fill_up & hold ~ tight
    fill_up once|and|COMMA & hold|far|drift
    clamp|clamps|lid|brake|clamped ~ on ~ A_BREATH
    BREATHLESS & nothing
    A_BREATH & clock|timer|hourglass & run|runs|HOLD
        -- rest
    let ~ AIR in & before|until
    """,
    unless="""
    SNORKEL ;
    EXHALE ;
    goggles ; HEED
    """,
)
