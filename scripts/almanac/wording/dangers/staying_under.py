"""Staying or travelling under water for as long, or as far, as it goes."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

STAYING_UNDER = danger(
    name="staying-under",
    asks="asks to stay or travel under water for as long or as far as it goes",
    mend="name the kicks and the mark by which the head is up, with full rest and a watcher",
    ways="""
    REMAIN ~ UNDERWATER|BOTTOM ... EXTENT|LONGER
        -- REMAIN ~ on ; streamline ; in ~ line ; camera ; BOTTOM of
    REMAIN ~ UNDER for|UNTIL|AS_LONG_AS|LONGER|WHOLE|HOW_LONG|while
        -- UNDER for ~ NUM
    STAY_DOWN ... EXTENT|GROW|while
        -- streamline|legs|ankles
    UNDERWATER & UNTIL|WHOLE|DIST|length|lengths|lap|laps|width|LONG_TIME|AS_LONG_AS|HOW_LONG|MOST
        -- NEAR ; off|from ~ WALL ; each|every|between WALL ; NUM ~ BEATS ; EXHALE ; BRIEF ;
           FIRST ; camera ; full REST ; half of ; ONE UNDERWATER ; NO|NOT ~ GROW ;
           work UNDERWATER
    cover|swim|cross|do ~ POOL .. UNDERWATER
    UNDERWATER ~ past|beyond ~ flags|middle|halfway|half|DIST|WALL
    GO|LAST ~ UNDER ~ UNTIL|WHOLE|AS_LONG_AS|POOL
        -- GO ~ down|bottom ; to the NEAR
    GO|REMAIN ~ WHOLE ~ UNDER
    AS_LONG_AS ... CAN & UNDER|UNDERWATER|A_BREATH|SURFACE|STAY_DOWN
        -- SLOW A_BREATH ; CAN BREATHE ~ easy|at|easily|freely|through|well
    AIR|STAY_DOWN|UNDER ... AS_LONG_AS|HOW_LONG
        -- SLOW A_BREATH
    HOW_LONG ... UNDER|UNDERWATER|AIR|STAY_DOWN
        -- SLOW ; how_long ~ rest
    DIST|POOL|LONG_TIME ~ UNDER FULL|COMMA|HALF|EXTENT
        -- then
    UNDERWATER ... to|from|at|and|across|UNTIL|reach ~ FAR ~ WALL|POOL|bank
        -- NEAR ; then ; FAR BODY ; easy
    to|UNTIL|reach ~ FAR ~ WALL|POOL ... UNDERWATER
        -- NEAR ; then ; EXHALE
    to|UNTIL|reach ~ FAR ~ WALL|POOL NO|WITHOUT ~ SURFACE
    WHOLE|across|cross ~ POOL ~ UNDERWATER|UNDER
    cross ~ POOL ~ DEPTH
    UNDERWATER|BOTTOM ~ from WALL to WALL
        -- look|eyes|line
    DIST|POOL|WHOLE ~ along ~ BOTTOM
        -- look|eyes|line
    REMAIN|GO|walk ~ on|along|at|to|near|across|over|by ~ BOTTOM ...
        EXTENT|wait|MOST|CONTEST|WEIGHT|SECONDS
        -- look|eyes ; shallow ; EXHALE ; back ~ BOTTOM ; BOTTOM of
    sink|sinks|drop ~ BOTTOM ... WAIT|REMAIN|UNTIL|LONG_TIME|AS_LONG_AS
    BOTTOM ... and|COMMA|then WAIT|REMAIN|count ... EXTENT|NUM|for|signal
        -- look|eyes
    DEPTH|STAY_DOWN ... MOST
        -- NEAR ; BRIEF ; BEATS ; bottom|down ~ MOST
    MOST ... UNDERWATER|BOTTOM|STAY_DOWN
        -- NEAR ; BRIEF ; half of ; NUM ~ BEATS ; MOST ~ under ~ the
    BEST ~ time|distance|score|one|go|mark ~ UNDERWATER|UNDER
    CONTEST ... UNDERWATER|STAY_DOWN|APNOEA|BOTTOM
        -- refuse ~ CONTEST ; and stopped ; CONTEST NO|NOT
    UNDERWATER|STAY_DOWN|UNDER|APNOEA ~ CONTEST
        -- and stopped
    GROW ~ NEAR|DIST|NUM|LONG_TIME|BRIEF|SECONDS|a .. UNDERWATER|STAY_DOWN
        -- NOT|no LONGER
    UNDERWATER|UNDER|STAY_DOWN ~ LONGER ~ each|every|time|than|week|rep|until|session|day
        -- NOT|no LONGER
    LONGER|ADD LIGHT* UNDERWATER|dive|dives UNTIL|each|every|FULL|COMMA|than
        -- NOT|no LONGER
    NOT GETS* SURFACE !TO_ALONE
        -- the surface ; BODY ~ SURFACE ; let LIGHT* BODY ; streamline|line|angle
    NO|WITHOUT ~ SURFACE !TO_ALONE
        -- the surface ; BODY ~ SURFACE ; stroke|strokes WITHOUT ; knee ; free
    NO|NOT ~ SURFACE early|before|yet|UNTIL
        -- too
    SURFACE ... AGAIN
        -- TO_ALONE ; IF ~ need|want ; ready ; HEED
    IF ~ SURFACE ~ before|early
    PENALTY & SURFACE|UNDERWATER
    SURFACE|AIR ONLY AT_THE AT_THE* WALL|FAR|POOL|touch
        -- BODY ~ SURFACE
    SURFACE ~ at|by|on ~ FAR ~ WALL|side|POOL|ladder
        -- BODY ~ SURFACE ; flags
    ONLY SURFACE AT_THE AT_THE* ...
        -- BODY ~ SURFACE
    LAST_UP
        -- wise|right|sensible|sensibly|clap|applaud|peace|praise
    CONTEST & HOLDS_OUT
    float & FACE down & UNTIL|AS_LONG_AS
        -- EXHALE
    NOT too long|far|deep & UNDER|UNDERWATER|A_BREATH|STAY_DOWN
    EXTEND & UNDERWATER|dives
        -- NO|NOT ~ EXTEND ; along
    CONTEST ... SURFACE
        -- on the SURFACE ; float|floats ; ladder|steps|block|stairs ; BODY ~ SURFACE ; WALL ;
           by|before
    first|last|whoever|who|loser ~ SURFACE ~ CONTEST|LOSES
        -- ladder|steps|stairs|WALL
    SURFACE first|last ~ CONTEST|LOSES
        -- ladder|steps|stairs|WALL
    DIVE ~ as deep|deeper|deepest
    hide ~ DEPTH ~ EXTENT|from|while
    DEPTH while|as ~ count|counts|partner|others
        -- bottom
    count|counting|SECONDS ~ UNDERWATER
        -- BRIEF ; BEATS
    NOT want|wants .. LAST_UP
    UNDERWATER for distance|time|depth|score|length
    UNDERWATER hold|holds|challenge|contest|record|test
    beat|better|improve|break|outlast
        your|his|her|the|that|PERSON|BEST|last|week|yesterday|own|time|next|distance|to|you*
        UNDERWATER
    LAST_UP ~ out|loses|lose|pays
    IF ~ SURFACE ~ LOSES
        -- wise|right|sensible|sensibly|clap|applaud|praise
    all_the_way UNDER|UNDERWATER
    surface is lava|forbidden
    stay|keep|STAY off|away ~ surface
    there|down|up|out and back .. UNDERWATER
        -- then
    UNDERWATER|UNDER ... SURFACE ~ at ~ WALL
        -- WALL ~ UNDERWATER
    BREAK_OUT ... FAR ~ WALL|half
    BREAK_OUT ~ NOT|NO earlier
    """,
    unless="""
    BODY ~ DEPTH ;
    BODY|LUNG .. STAY_DOWN ;
    BODY ~ REMAIN|KEEP|are|is|HOLD ~ DEPTH ;
    KEEP|HOLD LIGHT* BODY ~ DEPTH ;
    LIGHT kick ~ DEPTH ;
    UNDER CLOCK|LONG_TIME|NUM|control|flags ;
    UNDER the flags|rope|lane ;
    look|looks|eyes .. BOTTOM ;
    BODY down
    """,
)
