"""What no session does to those who swim it: worked until they drop, ill, in pain, thirsty, short
of breath by numbers, in the dark, unwatched or as a punishment.
"""

from __future__ import annotations

from almanac.wording.acts import Acts

_MORE = r"(?:more|extra|again|press-ups|push-ups|burpees|squats|sit-ups|lengths?|laps?)"
_DOES = r"(?:does|do|swims?|pays?|gets?|owes?|has|goes)"
_GOES_ON = (
    r"(?:finish|goes on|go on|carry on|carries on|continues?|keeps? (?:going|swimming)|swims? on"
    r"|swims? it (?:off|out|through)|trains?|one more|two more|more lengths?)"
)
_ACTS = {
    "into pain": (
        (
            "hurt pain sick unti buck star "
            "& burn tear poin firs one some who last stan coll fain drop vomi buck at sees see "
            "hurt nobo no"
        ),
        (
            r"until it (?:hurts|burns|tears)|to the point of pain|(?:first|one"
            r"|somebody|someone|who|last swimmer)"
            r" (?:one )?is sick(?: or stops)?\b|until\b.{0,40}\b(?:is sick|vomits?"
            r"|collapses?|faints?|(?:you|they|every\w+|all|some\w+|one) drops?"
            r"|(?:can|could)(?:not|n't| no longer)? stand|nobody can|no one can)\b"
            r"|buckets? (?:stand|stands|is|are|at)\b|sees? stars\b"
        ),
    ),
    "to be sick": (
        "sick thro vomi & like and",
        (
            r"(?:feel|feels|feeling|be|is|are) like (?:throwing up|being sick|vomiting)"
            r"|is sick (?:once )?and (?:goes|swims|carries|keeps)"
            r"|throws? up and (?:goes|swims|carries)"
        ),
    ),
    "breaths in bare numbers": (
        "ever & thre 3 3,",
        r"every (?:three|3)\b.{0,14}\b(?:five|5)\b.{0,14}\b(?:seven|7)\b",
    ),
    "a knock": (
        "knoc blow bump conc & swim kick goes carr",
        (
            r"(?:knock|blow|bump) (?:on|to) (?:the|a) head\b.{0,20}\b"
            r"(?:swims?|kicks?|goes on|carry|carries)"
        ),
    ),
    "sore is nothing": (
        "sore pain achi hurt & part norm noth",
        (
            r"(?:sore|painful|aching|hurting)\b.{0,25}\b(?:is|are) (?:a )?"
            r"(?:part of (?:it|the|this)|normal|nothing)"
        ),
    ),
    "through pain": (
        "pain hurt ache dizz gidd whee sore & is pass goes wear thro take use uses on",
        (
            r"pain is (?:no reason(?: to \w+)?|nothing|weakness|normal|part of)"
            r"|(?:pains?|aches?|dizziness|wheezing) (?:\w+ )?(?:passes|goes away"
            r"|wears off|is normal)"
            rf"|through (?:the|your|their) (?:pain|ache)|{_GOES_ON}\b.{{0,30}}\b(?:dizzy|giddy)"
            r"|(?:hurts?|sore)\b.{0,20}\b(?:takes?|uses?) the (?:big|large|heav|strong|hard)\w*"
        ),
    ),
    "ill": (
        "temp feve flu coug ill conc infe",
        (
            r"(?:has|have|with|after) (?:a |the |an? \w+ )?(?:temperature|fever|flu|concussion)"
            rf"\b.{{0,30}}\b{_GOES_ON}|(?:is|are) (?:ill|sick)\b.{{0,30}}\b{_GOES_ON}"
            r"|swims? (?:off|out) (?:a|the) (?:temperature|fever|cold|flu)"
            r"|(?:anyone|anybody|who|whoever|those|if you)\b.{0,12}\b(?:cough|fever"
            r"|temperature|flu)\b"
            r".{0,25}\b(?:does|do|swims|swim|kicks|trains|joins)\b(?! (?:half|less|nothing))"
        ),
    ),
    "in thunder": ("thun ligh", rf"(?:thunder\w*|lightning)\b.{{0,40}}\b(?:we )?{_GOES_ON}"),
    "in the dark": (
        "ligh lamp dark",
        (
            r"(?:lights?|lamps?) (?:goes|go|are (?:all )?(?:turned|switched"
            r"|put))\b.{0,8}\b(?:off|out)\b"
            r"|(?:turn|switch|put)s? (?:off |out )?(?:all )?the lights? ?(?:off|out)?\b(?! on)"
            r"|in the dark\b|with the lights? (?:off|out)\b"
        ),
    ),
    "unwatched": (
        "nobo no both all ever two & deck coac side",
        (
            r"(?:nobody|no one|no adult) (?:is|stands|stays|left)\b.{0,10}\b(?:on deck|at the side)"
            r"|(?:both|all|every|two) (?:the )?coach(?:es)?\b.{0,15}\b(?:in the water|swim)\b"
        ),
    ),
    "left to a child": (
        "four thir twel fift 10-y 11-y 12-y 13-y 14-y 15-y 12 13 14 15 & char runs lead take watc",
        (
            r"(?:(?:helper|swimmer|boy|girl|captain|junior|child) of (?:twelve|thirteen|fourteen"
            r"|fifteen|1[0-5])|(?:1[0-5]|twelve|thirteen|fourteen|fifteen)-year-old)\b.{0,25}\b"
            r"(?:in charge|leads the|runs the|takes (?:the|over)|watches)\b"
        ),
    ),
    "left to themselves": (
        "coac adul & offi café cafe chan show lead run gone with",
        (
            r"coach(?:es)? (?:is|are|sits?|goes|waits?|stays?) (?:away |back )?(?:in"
            r"|to) the (?:office|café|cafe"
            r"|changing rooms?|showers?|stands?|car park)|without (?:a|any) (?:coach|adult)\b"
        ),
    ),
    "thirsty": (
        "no with nobo bott inha & drin bott toil wate stay rema bag bags",
        (
            r"(?:no|without(?: a)?) (?:drinks?|drinking|bottles?|water bottles?|toilet)\b.{0,40}"
            r"\b(?:until|till|before|for)\b|without (?:a drink|drinks)\b"
            r"|nobody (?:drinks|gets a drink)\b"
            r"|no (?:drinks?|bottles?|water) (?:and|or) no\b|no (?:drinks?|water) breaks?\b"
            r"|(?:bottles?|inhalers?) (?:stay|stays|are|remain)\b.{0,12}\b(?:bags?"
            r"|changing rooms?|away)\b"
        ),
    ),
    "held there": (
        "nobo no & gets clim leav get is",
        (
            r"(?:nobody|no one) (?:gets|climbs|may get|leaves|is let) (?:out|the water|off)\b"
            r".{0,6}(?:until|till|before|;|$|however|whatever)"
        ),
    ),
    "as a punishment": (
        (
            "last slow lose late puni wors miss fail loses "
            "& does do swim pays pay gets get owes has goes puni extr kick"
        ),
        (
            rf"is last {_DOES}\b.{{0,15}}\b{_MORE}|(?:slowest|losers?|latecomers?|worst"
            rf"|(?:comes?|home|arrives?) (?:last|late))\b.{{0,40}}\b{_DOES}\b.{{0,25}}\b{_MORE}"
            r"|as (?:a )?punishment|(?:misses|fails|loses|breaks)\b.{0,25}\b"
            r"(?:swims?|does|goes|kicks?) (?:it |them )?again at once"
            r"|(?:late|last)\b.{0,40}\bextra\b(?! (?:rest|minute|length of rest))"
        ),
    ),
}
NEGLECT = Acts(_ACTS, ends=("stops?", "unless", "ends? it", "sits?", "out(?: of)?"))
