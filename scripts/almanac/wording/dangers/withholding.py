"""Air that is withheld: held, left out, rationed, or allowed at walls alone."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

WITHHOLDING = danger(
    name="withholding-air",
    asks="asks for air to be held or left out",
    mend="let everyone breathe when they need to; count kicks or strokes, never breaths",
    ways="""
    NO|WITHOUT GETS* A_BREATH !NOT_BREATH
        -- under ~ BODY ; splash ; HARM in ; teaches nothing|little|no ; NO AIR is|was|are|gets
           FEW|HOLD|left|lost|snatched|rushed ;
           stroke|strokes|cycle|cycles WITHOUT ~ A_BREATH
    MANY|DIST|MOST|most|CONTEST|AS_LONG_AS .. strokes WITHOUT ~ A_BREATH
    NO ~ CHANCE to|for|of GETS* A_BREATH
    NO_AIR
    NOT GETS* A_BREATH !NOT_BREATH
        -- HEED ; NOT puff ; IF ... NOT ~ AIR ;
           NOT BREATHE the roll ; NOT the|your|their|his AIR ; NOT gasp ;
           NOT lift|raise ~ FACE to BREATHE ; NOT has|have|need to turn|lift ;
           first|last ~ STROKE ; NOT GETS* BREATHE in UNDERWATER|water
    NOT GETS* AIR EXTENT|between|off|inside|before|on|for|after|from|FULL
        -- HEED ; first|last ~ STROKE ; NOT ~ IF ; NOT the|your|their|his AIR ; NOT gasp
    NOT LIGHT* URGE OF_TO* A_BREATH !every|both|to|hard|so
    FEW FEW_OF* A_BREATH !NOT_BREATH
        -- at least ; miss ~ AIR ~ because|take ; IF ~ FEW ~ AIR ; not FEW A_BREATH ; is FEW AIR ; a
           few ; FEW ~ short ; FEW breath to spare ; NOT LIGHT* FEW ; lot FEW ;
           full FEW
    as little|few|seldom|rarely ~ A_BREATH
        -- SLOW
    BREATHE|AIR as FEW|late|FEWER|little
    AIR FEWER|FEW !NOT_BREATH
        -- a few AIR ; is FEW ; AIR less hard
    BREATHE FEW|FEWER !NOT_BREATH
        -- BREATHE lower ; a few ; BREATHE less hard
    A_BREATH to .. minimum|FEW|MOST|NUM
        -- BREATHE to ~ side
    ONE|NUM|a fewer|less AIR
    ONE|NUM FEW AIR
    TAKE ONE|NUM|a AIR off|away|out
    BREATHE ONLY ~ NUM|ONE|once|twice
    BREATHE once|twice|NUM ~ PER|in|on|over POOL|DIST|WHOLE
        -- every|per stroke
    BREATHE once|twice !every|per|each|in|with|a
        -- often ; stroke|cycle|pull
    ON GIVEN* ONE A_BREATH !NOT_ALONE
        -- ONE AIR before ; ONE AIR PER STROKE ; STROKE
    ON your|that|this|the|a|first|last AIR UNTIL|DIST|POOL|WHOLE|FAR
        -- STROKE ; SLOW AIR ; BODY ~ AIR
    ONE ~ A_BREATH COMMA? PER|COMMA|only|from|between|across|max|FEWEST|over ~
        POOL|WHOLE|FAR|HALF|FULL
        -- ONE ~ AIR ~ STROKE ; ONE SLOW AIR ; before|then ; PER side
    ONE|a|that|your|the AIR .. LAST
    LAST .. ONE|your|that|the ~ AIR
    POOL COMMA ONE ~ AIR
        -- SLOW AIR
    NUM AIR max|per|each|a|for|maximum|or ~ POOL|DIST|WHOLE|FEWER
        -- SLOW ; STROKE
    NUM|MANY|SOME AIR in|on|over|to ~ POOL
        -- SLOW ; then ; WALL
    ONLY|FEWEST|allowed ~ NUM|ONE ~ AIR !before|to|in
        -- SLOW AIR ; usual ; before
    NUM|ONE AIR ONLY|max|FEWEST
        -- SLOW AIR
    HOLD BREATH_OF* AIR !hold|pattern|rhythm|SNORKEL|conditioning
        -- is a held AIR ; sign of ; let ~ go ; glad ; HOLD ONE AIR in and out ; HOLD NUM AIR
    HOLD BREATH_OF* A_BREATH ~ EXTENT|for|to|while
        -- glad ; HOLD ONE AIR in and out ; HOLD NUM AIR
    KEEP|TRAP GETS* ~ AIR in|inside|locked|SHUT|down|there
        -- EXHALE
    KEEP LIGHT* AIR EXTENT|for|FULL
    AIR LIGHT* HOLD
        -- AIR HOLD lifts ; hold ~ line
    AIR STAY|KEEP in|inside|SHUT|locked
    HOLDS_OUT in|inside ... EXTENT
    breath|breathe|inhale ~ and|COMMA|then HOLD it|FULL|EXTENT|for|COMMA|to|while
        -- SLOW ; out
    GO|manage|get|LAST|live|cope ~ on|off|with GIVEN* AIR ~ you|that|EXTENT
        -- AIR every|each|per
    need|needs|use|uses|using|want|burn|spend FEW|FEWER ~ AIR
    AIR|lungs off FULL|COMMA|HALF
    off AIR FULL|COMMA|HALF
    CEASE GETS* BREATHE !hard|heavily|SNORKEL|so|QUICK|hard|in|out
    A_BREATH LIGHT* ONLY ~ AT_THE AT_THE* WALL|DIST|NEAR|POOL|halfway
        -- SLOW A_BREATH
    A_BREATH GETS* AT_THE AT_THE* WALL ~ ONLY|NOWHERE
    A_BREATH GETS* AT_THE AT_THE* WALL ~ and|COMMA ~ NOWHERE|ONLY|NOT|NO
    ONLY GETS* A_BREATH LIGHT* AT_THE AT_THE* WALL|POOL|far
        -- SLOW
    ONLY ~ AT_THE AT_THE* WALL ... A_BREATH|SURFACE
        -- SLOW
    ONLY GETS* AIR ~ AT_THE AT_THE* WALL
        -- SLOW
    next|first|only ~ A_BREATH ~ AT_THE AT_THE* WALL|POOL|touch|FAR|DIST
        -- first AIR ~ STROKE ; SLOW
    WALL|touch before ~ A_BREATH
    POOL|DIST|WALL|FAR .. before GETS* A_BREATH !NOT_BREATH
        -- BEATS ; SLOW ; catch
    GO|to|reach|touch ~ before GETS* A_BREATH|SURFACE !NOT_BREATH
        -- EXHALE ~ before ; BODY|FACE ~ SURFACE ; NOT ~ before ; look
    DELAY ~ A_BREATH !NOT_BREATH
        -- SLOW ; before
    WAIT ~ to|for|with ~ A_BREATH|SURFACE|AIR
    NOT|NO UNTIL ... A_BREATH
    A_BREATH ... NOT|NO UNTIL|before
    SHUT BREATH_OF* MOUTH ~ and|COMMA|as|while|EXTENT|GO
        -- SNORKEL ; EXHALE ; clip
    MOUTH ~ SHUT ~ EXTENT|to|from|for
        -- SNORKEL ; goggles ; EXHALE
    KEEP ~ MOUTH ~ SHUT ~ EXTENT|to|for
        -- SNORKEL ; EXHALE
    KEEP|SHUT ~ FACE in|UNDERWATER ~ WHOLE|POOL|DIST|UNTIL|AS_LONG_AS
        -- SNORKEL ; EXHALE ; A_BREATH ; turn|turns
    FACE ~ in|wet|UNDERWATER|buried ~ WHOLE|DIST|UNTIL|POOL|AS_LONG_AS
        -- glide|slide|speed ; FACE of ; SNORKEL ; EXHALE ; A_BREATH ; turn|turns ; BRIEF ; back
    FACE ~ down ~ WHOLE|UNTIL ~ POOL|DIST
        -- SNORKEL ; EXHALE ; A_BREATH
    NOT GETS* lift|raise|turn|bring|put|move|roll LIGHT* FACE|MOUTH ..
        UNTIL|before|between|WHOLE|AIR|DIST|POOL|during
        -- has|have to put ; wish|ready|like ; look|see
    APNOEA !STUDY
        -- bubbles|stream ; elsewhere ; command ; APNOEA ... and stopped ; HEED
    BREATHLESS ~ GO|DIST|POOL|NEAR|sprint|sprints|set|sets|round
    DIST .. BREATHLESS FULL|COMMA|HALF
        -- STOP
    UNTIL ~ SPENT_AIR
    UNTIL GETS* URGE|must|CAN_NOT LIGHT* A_BREATH|SURFACE|air
    UNTIL ~ CAN_NOT ~ without ~ A_BREATH
    HOW_MUCH ... before|UNTIL|between|without|per .. A_BREATH|SURFACE
        -- SLOW A_BREATH
    HOW_LONG ... before|UNTIL|without .. A_BREATH|SURFACE
        -- SLOW A_BREATH
    A_BREATH LIGHT* NOT LIGHT* required|needed|necessary|allowed|permitted|an|compulsory|for
        -- NOT ~ hard
    A_BREATH LIGHT* optional|cheating|weakness|overrated|SCORN
        -- weak side|arm|leg
    A_BREATH is|are ~ for ~ SCORN|WALL|turns
    every|each|any AIR|BREATHE ~ costs|cost|means|earns|is|adds ~ ...
    PENALTY ~ for|if|per|when ... A_BREATH
        -- NOT
    earn LIGHT* AIR
    EXHALE ~ FULLY COMMA sink|drop|lie
    EXHALE ~ FULLY ... then|and ~ GO|STAY|DIST|sink
        -- float|BREATHE ; drift
    with|on LIGHT* EMPTY LUNG
    LUNG EMPTY ~ GO|COMMA|EXTENT|sprint
    longer|further|farther & between|without|on|per ~ A_BREATH
        -- SLOW
    AIR & go|goes|last|lasts further|longer|farther
    AIR .. enough ~ for|to ~ POOL|DIST|WALL|NUM|WHOLE
    enough AIR ~ for|to ~ POOL|DIST|WALL|NUM|WHOLE
        -- SLOW
    A_BREATH ... do|go|going|manage WITHOUT FULL|COMMA|HALF
    NOT waste|spend|lose|worry|bother|think .. A_BREATH
    A_BREATH ~ wastes|slows|costs|loses ~
        -- nothing
    PENALTY & A_BREATH
        -- A_BREATH ~ hard ; SLOW
    LUNG ~ full|FULL ... MOUTH SHUT
    full LUNG & SHUT|DIST|POOL|FAR
        -- float|back
    ONE ~ A_BREATH & nothing|none|UNTIL|only|ONLY
        -- then ; SLOW
    low|little|starved|without|deprived oxygen
    oxygen deprivation|starvation|debt|off
    CO2
    SPENT_AIR
        -- STOP|SURFACE|BREATHE|REST ; HARM ; waits ; IF ~ SPENT_AIR ; HEED ; rest|seconds
    gasping|desperate|starving|starved|begging|dying|aching|fighting|panting ~ for ~ AIR
        -- STOP|SURFACE
    gasping & SURFACE|UNDERWATER
        -- STOP ; HEED ; shorter|easier|easy
    URGE AIR badly|desperately
    AIR|BREATHE is|are ~ SCORN
    each|every stroke WITHOUT ~ A_BREATH
    on SOME|MANY|NUM AIR
        -- SLOW
    AVOID|FORGET|resist|resists|refrain|abstain|limit|ban|forbid|forget GETS* from? about?
        A_BREATH !NOT_BREATH
    AVOID|FORGET|resist|limit|forget|refrain from|about|your|ON A_BREATH !NOT_BREATH
    temptation|impulse|desire to A_BREATH
        -- STOP|SURFACE
    A_BREATH .. forbidden|banned|prohibited|disallowed|outlawed|against
    A_BREATH ... NOT|never LIGHT* allowed|permitted|welcome
    NOT exhale|breathe_out|blow_out FULL|HALF|COMMA|UNTIL|before
    POOL|DIST|GO ~ breath|air free
    NOT let go ~ AIR
    AIR & NOT TAKE ~ another|MORE
    to ONE|NUM|NO|none AIR
        -- SLOW
    from NUM AIR to
    NOT stop|pause|wait for|to ~ A_BREATH !NOT_BREATH
    not_stop|never_stop for|to ~ A_BREATH
    leave|leaves ~ A_BREATH ~ for|to|until ~ later|WALL
    nothing|none in LIGHT* LUNG
    lid|brake|cap|limit|brakes on ~ A_BREATH
    only|ONLY A_BREATH spot|place|point|stop|station
    lung|lungs SHUT
    NO|WITHOUT ~ FACE turns|turn|turning & DIST|POOL|WHOLE
        -- BREATHE
    NUM|MORE before GETS* SURFACE|A_BREATH !NOT_BREATH
        -- BODY|FACE ~ SURFACE ; BEATS ~ before ~ A_BREATH ; SLOW ; REST
    through|tunnel|hoops ... before A_BREATH
    only|ONLY SCORN ~ BREATHE
    BREATHE ~ shows|means|proves ~ NOT|SCORN|unfit
    CEASE BREATHE so often|much
    AIR|BREATHE allowed|budget|quota|allowance
    NUM AIR // next .. NUM
    empty tank & GO|DIST|EXHALE
    AIR & hold ~ empty
    POOL|DIST & butterfly|fly|crawl|freestyle|free & FACE ~ down
        -- SNORKEL ; BREATHE ; EXHALE ; WALL ; NEAR
    CEASE|NOT thinking|worrying|caring about ~ AIR|BREATHE
    lack|shortage|absence|deficit of ~ AIR
        -- STOP ; HARM
    ONE AIR DIST|POOL|GO|sprint|sprints|set|kick|swim
    A_BREATH
        reduction|restriction|deprivation|limitation|limiting|starvation|control|rationing|
        saving|economy
    lung training|capacity|test|power|volume|work
    forbidden|banned|prohibited|illegal|wrong|cheating|shameful to|for GETS* BREATHE !NOT_BREATH
    IF|those BREATHE !NOT_BREATH ~ out|loses|pays|starts|does|owes|sits|fails
    IF ~ BREATHE COMMA? ~ AGAIN
    NO ... GO ~ with LIGHT* AIR
    """,
)
