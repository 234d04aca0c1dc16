"""Going on through the wish for air, or through dizziness."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

PUSHING_THROUGH = danger(
    name="pushing-through",
    asks="asks to go on through the wish for air or through dizziness",
    mend="up at the first wish for air; who is dizzy comes out and is watched",
    ways="""
    PERSIST|EVEN .. URGE OF_TO* A_BREATH|SURFACE
    URGE OF_TO* A_BREATH ... PERSIST|EVEN|WAIT|PASSES|LONGER|NUM|grow|rise|build|sit
        -- IF ~ URGE ... STOP|SURFACE ; URGE ... STOP ; URGE ~ COMMA ~ SURFACE
    URGE OF_TO* A_BREATH|SURFACE LIGHT* ONLY|NOT|NO|never ...
        -- STOP|SURFACE
    SICK
        -- SICK swimmer|child ~ NOT ; of the clock ; carries on ~ SICK ; praise ; SICK is NOT ; SICK
           ... warning ; what SICK|is ; what ~ SICK ; STOP ; REST ; refer ;
           NOT|NO ... SICK ; makes|make|from|gets ~ SICK
    PERSIST|EVEN .. AIRLESSNESS
    SICK LIGHT* means|mean|shows|show|tells|proves ...
        -- STOP ; REST ; over
    UNTIL .. SICK
        -- UNTIL ... NOT|NO|PASSES ; REST ... UNTIL ; STOP ... UNTIL
    GO|KEEP|REMAIN|LAST|HOLD ... UNTIL ... SICK
        -- PASSES ; REST ... UNTIL ; STOP ... UNTIL
    UNTIL ... LUNG ~ BURN|CONTRACTION|CAN_NOT
    LUNG|diaphragm ~ CONTRACTION
        -- STOP ; REST
    LUNG ~ BURN|CONTRACTION ... PERSIST|EVEN|later|wait|UNTIL|normal|good|fine|GROW
        -- STOP
    BURN ~ in|of ~ LUNG
        -- STOP ; refer ; REST ; out
    PERSIST ... LUNG ~ BURN|CONTRACTION|SICK
        -- STOP
    beat|beats LIGHT* SICK|CONTRACTION
    PERSIST LIGHT* burn|burning|CONTRACTION
        -- LEGS ; STOP
    SPENT_AIR ... PERSIST|GO|LONGER|NUM
        -- STOP|BREATHE
    IF|when .. SICK|CONTRACTION|SPENT_AIR ... count|NUM|LONGER|WAIT|PERSIST|REMAIN|GO|KEEP
        -- STOP ; REST ; out ; NOT
    IF|when ~ LUNG ~ BURN|CONTRACTION ... count|NUM|LONGER|WAIT|PERSIST|REMAIN|GO
        -- STOP ; REST ; out
    SICK|CONTRACTION|WINDED COMMA? // ~ PERSIST|KEEP|GOOD|GO|NUM
        -- STOP ; LEGS ; BREATHE
    LUNG ~ BURN|CONTRACTION ~ // ~ PERSIST|GOOD|GO|so|KEEP
    lungs|lung ~ liars|liar|lying ...
    the|that|this|any|every|your|an|a urge|need|reflex|craving|desire|wish|instinct|hunger|impulse
        OF_TO* A_BREATH
        -- STOP|SURFACE ; HARM ; comes ; NO|NOT ; hides ; at|first
    NOT let .. SICK put|stop|bother|worry|hold|slow|scare|beat|get|spoil
    feeling ~ URGE OF_TO* A_BREATH
        -- STOP|SURFACE ; BREATHE
    URGE|must OF_TO* A_BREATH COMMA ~ ~ MORE|NUM|count|wait|another
    STOP ~ only|ONLY ~ IF|UNTIL .. SICK
    ONLY STOP ~ IF|UNTIL .. SICK
    CONTRACTION ~ of|in ~ LUNG
        -- STOP
    diaphragm ~ kick|kicks|CONTRACTION
        -- STOP
    body|brain|lungs ... tell|tells|begs|asks|says|wants|thinks ... A_BREATH|SURFACE ...
        PERSIST|before|long|wrong|lying|early|NOT|LONGER
        -- STOP
    body|brain|you ~ NOT .. URGE ~ A_BREATH
    comfort|panic ... PERSIST ... UNDERWATER|AIR
    PERSIST ... panic ... AIR|UNDERWATER
    NOT ~ STOP|stop|REST|give ... SICK|CONTRACTION|SPENT_AIR|WINDED
    NOT ~ STOP|stop|give ... URGE OF_TO* A_BREATH
    NOT ~ STOP|stop|give ... LUNG
    NO|NOT ~ CHANCE LIGHT* stop|SURFACE|REST ... SICK|LUNG
    SICK ... NO|NOT ~ CHANCE ~ ...
    NOT LIGHT*
        put_off|deterred|scared|worried|bothered|alarmed|stopped|discouraged|afraid|frightened|
        concerned by|of|about|at ~ SICK|CONTRACTION
    black_out|blacks_out|faint|faints|pass_out|passes_out|blackout ...
        PERSIST|again|resume|resumes
        -- NOT|NO
    begs|begging|beg|screams|screaming|scream|cries|crying|demands|asks|craves ~ for ~
        AIR|BREATHE|oxygen
        -- STOP|SURFACE
    URGE OF_TO* A_BREATH // LIGHT* NOT|no|PERSIST|tough|wait|later|count
    PERSIST|EVEN ~ CONTRACTION
        -- STOP
    NOT ~ drown|drowns|die|faint|black_out ... PERSIST|so|GO
    urge|reflex|craving PASSES
        -- UNTIL ; STOP
    contraction|contractions|spasms
        -- LEGS|muscle|calf|cramp|foot ; STOP ; HARM
    box A_BREATH & GO|HOLD
    URGE OF_TO* A_BREATH ... with it
    diaphragm_kicks|let_it_kick
        -- STOP
    LUNG ~ BURN ... before GETS* SURFACE|A_BREATH
    NUM MORE ... after ~ INSIDES ~ THROB
    UNTIL|until ~ it hurts|burns & UNDER|UNDERWATER|AIR|SINK
    SICK COMMA|HALF ... not stop|rest
    INSIDES ~ complaining|crying|argue|bluffing
    ALARM ... only|just ~ signal|feeling|alarm|noise
    """,
    unless="HEED ; take ~ it ; come up ~ IF|when|whenever",
    of_sentence=True,
)
