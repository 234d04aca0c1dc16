"""What else hurts or drowns people: alone, too shallow, in pain, held under."""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

FURTHER = danger(
    name="reckless",
    asks="asks for what hurts or drowns people",
    mend="take it out; say who watches, how deep the water is, and when to stop",
    ways="""
    swim|dive|train|practise|practice|try|this|go|it ~ at? ~ ALONE_ONLY
        -- ALONE_ONLY time|pace|speed|clock|feet ; arm|leg|legs|arms|kick ~ ALONE_ONLY
    swim|dive|train|practise|practice|this|go ~ alone IF|when|at|after|before|FULL|COMMA
    WITHOUT|NO LIGHT* lifeguard|lifeguards|supervision|watcher
        -- lifeguard|supervision|watcher ... NO|NOT ; NO GUARD ~ NO ; WITHOUT ~ GUARD COMMA
    lifeguard|lifeguards|watcher ~ gone|left|away|busy|optional|elsewhere
    NOT LIGHT* URGE ~ lifeguard|lifeguards|watcher|supervision
    DIVE ... SHALLOW
        -- DIVE shallow|shallows|shallower ; NOT|NO|never ; check ; STOP
    SHALLOW ... DIVE
        -- check|feet ; NOT|NO|never DIVE
    DIVE ~ into ~ unknown|murky|dark
    PERSIST ... PAIN
        -- STOP ; LEGS
    PAIN ... PERSIST|weakness
        -- at PAIN ; STOP ; REST ; refer ; only
    PAIN // ~ PERSIST|KEEP
    IF|when ~ hurts|hurt|aches COMMA? ~ PERSIST|deeper|KEEP
        -- STOP ; REST ; LEGS ; SLOW
    ears|ear .. BURN|PAIN|pop|popping ... deeper|down|KEEP|PERSIST
        -- COMMA STOP ; up
    NO PAIN COMMA? NO gain
    COVER ~ over|on|across|in|round|around ~ FACE|MOUTH
    BREATHE ~ through ~ COVER
    WEIGHT & BOTTOM|UNDERWATER
        -- off ; shelf ; catch
    tie|strap|bind ~ wrists|PERSON|hands
        -- cord|release|fins|belt
    PUSH|HOLD|KEEP ~ PERSON ~ UNDER|UNDERWATER
        -- PERSON BODY ; UNDER CLOCK|LONG_TIME|NUM|control
    PUSH|HOLD|KEEP ~ PERSON ~ FACE ~ UNDER|UNDERWATER|down|in
    PUSH|HOLD LIGHT* FACE ~ UNDER|UNDERWATER|down ~ UNTIL|LONG_TIME|count
    lightning|thunder|storm ... PERSIST|REMAIN|KEEP|finish|GO
        -- STOP ; out
    PERSIST|REMAIN|KEEP|finish ... lightning|thunder|storm
        -- STOP ; out
    sit_on|sitting_on|sits_on|kneel_on ~ PERSON
    PERSIST ~ lifeguard|lifeguards|watcher
    swim|swims|swimming|train|training|dive|diving alone
        -- alone in ~ lane ; told|asked ; alone with
    NO|WITHOUT .. lifeguard|watcher|supervision needed|required|necessary
    DIVE ... NOT|WITHOUT ~ see|checking|looking|knowing|check
        -- NOT DIVE
    tape|tapes|taping ~ MOUTH|FACE
    SNORKEL & block|blocks|thumb|cork|plug|pinch
    SNORKEL ~ blocked|plugged|closed|taped
    dunk|dunks|dunking|duck ~ PERSON
    hand|hands|palm|palms over ~ MOUTH|face|nose
    train|swim|kick|race|work|play EVEN|through ~ PAIN
        -- NOT
    PAIN ~ NOT kill|hurt|matter|harm
    hands|feet|wrists|arms ~ bound|tied
    weights ~ on ~ PERSON
    HOLD ~ PERSON ~ at|on ~ BOTTOM
    PUSH|HOLD ~ partner|child|friend|teammate|mate down
    NO|NOT ~ URGE for anyone|anybody|someone to watch
    lifeguard|coach ~ leave|leaves ~ deck|pool
    hand_over ~ MOUTH|FACE
    cover|covers|block|blocks|plug LIGHT* MOUTH|face|nose
    """,
)
