"""The body says stop, and the text says go on."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

ENDURING = danger(
    name="enduring-the-urge",
    asks="asks to go on when the body asks for air",
    mend="up at the first wish for air; who is dizzy comes out and is watched",
    ways="""
    INSIDES ~ THROB && PRESS_ON
    body|brain|lungs|chest|mind ~ THROB ~ for ~ AIR
    PRESS_ON ... INSIDES ~ THROB
    PRESS_ON ... THROB ~ in|of ~ INSIDES
    THROB ~ in|of ~ INSIDES ... PRESS_ON
    after|past|beyond|once|until|UNTIL ~ INSIDES ~ THROB
    starts|begins|start|begin when|once|after|where .. ALARM
    DIZZY && PRESS_ON
        -- NOT|not FULL ; take|takes hold ; done with ; make|makes ; is NOT
    DIZZY ... GOOD|signal|badge|proof|progress|success
        -- NO|NOT|STOP ; SURFACE
    DIZZY // ... weak|will|lazy|soft|wimp|excuse|lie
        -- praise
    INSIDES ~ complaining|crying|cry|arguing|argue|bluffing
        -- STOP
    INSIDES ~ tell|tells|order|orders ~ STOP|stop|SURFACE
        -- SURFACE COMMA ; HEED
    spinning|swimming|light|floaty|funny head && PRESS_ON
    URGE ~ A_BREATH|SURFACE && PRESS_ON
    PRESS_ON ~ urge|craving|reflex
    PRESS_ON ~ URGE OF_TO* A_BREATH|SURFACE
    urge|reflex|craving && PRESS_ON
    breathing|BREATHE reflex|urge|instinct|impulse|trigger
    discomfort|panic|unease && PRESS_ON && AIR|BREATHE|UNDERWATER|lungs
    UNTIL|till it hurts|burns && UNDER|UNDERWATER|AIR|STAY_DOWN|SINK
    ALARM && DEFY
        -- rest of ; more rest ; cord ; nobody|no_one ~ told ; easier ; is fine ; NOT ~ go|GO
           again|on ; NOT again ; does NOT ; minutes of ; no|not ~ race|ALARM FULL ; before they go
    LUNG && overrule|overrules|override|defy|silence|ignore|beg|bucked|outsmart
    tell|tells ~ INSIDES ~ no|off|to|NO|WAIT
    """,
    unless="""
    HALT ; HARM ; LEGS ; REST ~ UNTIL ; HEED ; make|makes ~ DIZZY
    """,
    of_sentence=True,
)
