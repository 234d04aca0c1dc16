"""Breathing, a bound and a reach in one sentence, however they stand to one another."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

BOUNDS = danger(
    name="bounded-air",
    asks="binds breathing, or coming up, to a distance, a time or a count",
    mend="let everyone breathe and come up when they need to; name the kicks and the mark",
    ways="""
    never|nothing|without|deny|withhold|save|unless|but ~ ~ ~ A_BREATH & REACH
        -- usual|SLOW|easy A_BREATH ; all but ; without ~ gasp ; without ~ watch ; COMMA but
    A_BREATH ... only ~ when|at|on|once|as & REACH
        -- SLOW
    FACE|MOUTH in|down|under|shut|SEALED|SHUT|wet & whole|entire|WHOLE|full|MANY|across|throughout &
        REACH|strokes
        -- EXHALE ; turn|turns|roll|rolls|lift|lifts ; finish|finishes ; speed ; all but ; back ;
           push ; A_BREATH ~ when|whenever|every|each
    FACE|MOUTH ~ never|NOT|not|without|no ~
        leave|leaves|leaving|left|out|above|clear|lift|lifts|turn|turns & REACH|water
        -- EXHALE ; speed
    FACE|MOUTH ~ in ~ from ~ first ~ to ~ last
    before ~ turn|turns|turning|lift|lifting|raise|raising|roll ~ FACE & AS_LONG_AS|MANY|REACH
        -- look ; EXHALE ; air out
    DEEPLY & UNTIL|before|till|AS_LONG_AS|WHOLE|only|all|last|there & REACH|RISE|DIST|NUM|LONG_TIME
        -- look|eyes|line ; BODY DEEPLY ; EXHALE ; off ~ WALL ; under the surface ; at a time ;
           coach ; pointed ; watcher|watches
    DEEPLY & LONG_TIME|minute|minutes|AS_LONG_AS
        -- look|eyes|line ; rest|REST ; BODY ~ DEEPLY ; at a time ; seen|camera|filmed
    UNDERWATER|DEEPLY ~ to|towards ~ WALL|ladder
        -- NEAR ; EXHALE ; BODY ; walk
    wait|waits|waiting .. for|until ~ everyone|everybody|others|PERSON ~ to? ~ RISE
    stay|STAY|KEEP SINK|UNDER|UNDERWATER ~ longer|longest
    UNDERWATER ... when|until|till ~ ~ CAN_NOT GO
    FACE turn|turns|lift|lifts ~ costs|cost|loses|means
    sit_on|sits_on|sitting_on ~ DEEPLY|BOTTOM
    BREATHE|RISE first|last & LURE
        -- ladder|block
    GO ... WITHOUT ~ RISE ~ FULL|COMMA|once
        -- BODY ; stroke|strokes
    sit|sitting|lie|lying|kneel|kneeling|squat|crouch on ~ DEEPLY|BOTTOM
    NOT|never|WITHOUT|NO ~ ~ RISE ~ REACH|UNTIL|until|before|NUM|FULL
        -- BODY ; too ; free of ; balance ; head ~ RISE ; lower|sink|drop|drops ; look ; rate ; free
           ; free of ; urge ; fight ; HEED
    before .. RISE & REACH|DEEPLY|NUM|all|read|tie|collect|find
        -- BODY|FACE ; catch ; lane is
    only ~ then|when|after ~ RISE
    RISE only
        -- BODY ; seat
    last|first|last_one|LAST ~ to RISE
        -- BODY
    all ~ in ONE|one ~ trip|dive
    A_BREATH ~ backwards
    often ~ BREATHE ... smaller|KNOCK
    space|spread|spaced|stretch|widen|stretches ~ A_BREATH & out|apart|gap|more
    gap|gaps|interval|distance between ~ A_BREATH & GROW|wider|bigger|stretch|ADD|longer
    TAKE|take|takes away|out .. A_BREATH & round|each|then|next|every
    BREATHE ~ NUM times ... then ~ NUM
    A_BREATH & KNOCK|smaller|backwards|away|cheaper|wider|widely|gap &
        each|every|per|after|round|time
        -- little ; time to fall ; after ~ rep|reps|hard ; SLOW ; A_BREATH ~ each|every
           STROKE|cycle|wave|beat ; BEATS|wave|waves ; as ~ you ; limit ; never cut
    A_BREATH && MUCH && SINK|DIVE|UNDERWATER|dolphin & before|then|and|UNTIL|push_off
        -- usual|SLOW|normally ; BEATS ; RISE ; EXHALE ; HEED ; ears ; hands ; NEAR ; rest ; easy
    PUFFING && MUCH && DEEPLY|SINK|DIVE|UNDERWATER
        -- usual|SLOW|normally ; BEATS ; RISE ; EXHALE ~ under ; HEED ; ears ; hands
    DEEPLY & LURE|longest|most|furthest|till|further
        -- look|eyes ; BODY ; NOT|no ~ LURE ; no|NOT further ; refuse
    FACE|lifts ~ for ~ AIR last|first
    POOL|lap|DIST ~ below|beneath
    POOL|DIST|width ~ under ~ mat|mats|ropes|lanes|rope|boats
    under ~ all ~ lanes|ropes
    nothing ~ above ~ water|surface
    surface is|belongs|belong ~ ~ ice|lava|ceiling|until|UNTIL
    until|UNTIL ... surface belong|belongs|again
    pattern ... COUNT_UP
        -- stroke|strokes|kicks|kick|beats
    NUM|SOME AIR ... become|becomes|became|shrink|into ~ ONE|NUM|one
    AIR && own|used|had NUM|SOME|MANY ... now|then|own NUM|ONE|NO
    AIR ~ ~ ~ do|go|manage without
    leave|leaves ~ A_BREATH alone
    ONE|one ~ AIR ~ stretch|LAST|last ~ over|for|across|through
    AIR ~ cycle|stroke|strokes to ~ AIR ~ POOL
    first AIR ~ still ~ inside|in
    A_BREATH ... nowhere_else|nothing_else|nowhere
        -- stretch|tail ; new AIR
    FACE .. COMMA? .. belongs|belong to ~ water
    without opening ~ MOUTH
    touch COMMA? ~ ~ AIR COMMA ~ full|whole POOL
    nose|nostrils ~ pinched & FACE|LONG_TIME|minute
    lungs|lung ~ closed|locked|shut
    locks ~ lungs
    """,
    unless="""
    SNORKEL ; BRIEF ; NEAR & off|push ; camera ; streamline
    """,
)
