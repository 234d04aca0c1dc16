"""Meanings and words that stand in the same places, by one name each: patterns stay short."""

from __future__ import annotations

FAMILIES = {
    "A_BREATH": "AIR|BREATHE",
    "DEPTH": "UNDER|UNDERWATER|BOTTOM",
    "REMAIN": "STAY|HOLD|KEEP|LAST",
    "LAST": "last|lasts|lasted|lasting",
    "EXTENT": "UNTIL|WHOLE|DIST|POOL|LONG_TIME|AS_LONG_AS|HOW_LONG|MOST|FAR|forever",
    "LONGER": "GROW|MORE",
    "BEATS": "kick|kicks|beats|beat",
    "STROKE": "stroke|strokes|cycle|cycles|pull|pulls|arm|arms|side",
    # What stands between a denial and the breath that is denied, or between a verb and its breath.
    "GETS": (
        "LIGHT|so|much|sip|further|allowed|permitted|CAN|TAKE|SURFACE|FACE|MOUTH|ONE|ONLY|"
        "MORE|dare|need|have|come|up|to|even|get|think|of|going|lift|turn|open|try|bother|"
        "for|another|half|two|swimmer|swimmers|may|shall|should|will|would|must"
    ),
    "GIVEN": "LIGHT|DEEP|SLOW|same|just|full|first|last",
    "BREATH_OF": "LIGHT|DEEP|last|full|long|in|back|tight|onto|to|single|ONE|first|onto",
    "FEW_OF": (
        "LIGHT|ONE|NUM|TAKE|MORE|of|number|amount|on|out|down|up|another|frequent|frequently|"
        "often|as|so|many|much|taking|other|second|third|half|count|off|short"
    ),
    "AT_THE": (
        "LIGHT|allowed|permitted|at|on|to|when|by|once|after|touch|against|TAKE|reached|"
        "reach|hit|FAR"
    ),
    "OF_TO": "LIGHT|for|of|to",
    # What follows a breath that is not withheld.
    "NOT_BREATH": (
        "SNORKEL|EXHALE|bubbles|bubble|pocket|pockets|trouble|troubles|problem|problems|"
        "difficulty|space|temperature|conditioning|hose|mattress|valve|cushion|sound|noise|"
        "leak|leaks|trapped|behind|rate|tube|hole|holes|hard|heavily|wasted|rushed|lost|held|"
        "forced|gap|gaps|escapes|hold|holds|holding|APNOEA|late|early|forward|forwards|"
        "sideways|backwards|into|through|over|too|more|every|so|like|as|both|quickly|fast|"
        "deeply|deep|QUICK|loudly|pattern|stroke|count|line|through_the"
    ),
    "NOT_ALONE": "before|per|stroke|cycle|in|out|an",
    "TO_ALONE": (
        "too|to|under|UNDER|with|steeply|early|fast|like|slowly|into|beside|near|against|"
        "straight|late|vertically"
    ),
    "CHANCE": (
        "URGE|time|reason|chance|stop|stopping|pause|break|opportunity|turning|turn|lifting|"
        "going|excuse|cause|permission"
    ),
    "LOSES": (
        "loses|loser|does|pays|buys|gets|has|wins|is|fetches|out|sings|owes|swims|lose|fails|"
        "fail|starts"
    ),
    "FEWER": "fewer|less|FEW",
    "FEWEST": "MOST|max|maximum|most|limit|than",
    "NOWHERE": "nowhere|none|between|OTHERWISE|elsewhere",
    "CAN_NOT": "NOT|no_longer",
    "FULLY": "fully|everything|completely|LUNG|air|hard",
    "EMPTY": "empty|emptied|drained|flat|bare",
    "SCORN": (
        "weak|weakness|losers|babies|quitters|wimps|sissies|cowards|later|amateurs|beginners|"
        "land|soft|mortals|luxury|privilege|treat|reward|bonus|earned|crutch|habit|excuse|"
        "weaklings"
    ),
    "PENALTY": ("penalty|penaltiesss|forfeit|punishment|owe|owes|burpees|pushups|pressups"),
    "STUDY": (
        "study|review|statement|research|trial|policy|position|guideline|guidelines|HARM|"
        "term|word|definition"
    ),
    "WAIT": "wait|waits|waiting|hang|hold_on",
    "DELAY": (
        "hold_off|put_off|delay|delays|delayed|postpone|postpones|defer|stave|fend|fight|"
        "resist|suppress|stifle"
    ),
    "SECONDS": "seconds|minutes|tiles|metres|strokes",
    "HOW_MUCH": "how_many|how_much",
    "BEST": "best|record|pb|longest|furthest|top|high",
    "ADD": "add|adds|added|adding",
    "SEVERAL": (
        "NUM|SOME|MANY|DIST|TIMES|several|some|few|many|series|rounds|couple|lots|plenty|take|LIGHT"
    ),
    "SICK": "DIZZY",
    "AIRLESSNESS": "WINDED|SPENT_AIR|breathlessness",
    "PASSES": "passes|pass|passed|gone|goes|fades|settles|settled|eases|stops|away|clears|cleared",
    "GOOD": (
        "good|fine|normal|ok|okay|expected|sign|working|right|properly|best|proof|success|"
        "progress|ordinary|natural|usual|harmless|nothing|great|common|perfect|near|close|"
        "nearly|only|point|aim|goal|gains|gold|where"
    ),
    "LEGS": "leg|legs|thigh|thighs|arms|muscle|muscles|quads|calves|calf|triceps|shoulders",
    "REST": "rest|rests|sit|sits|float|out|helped|doctor|rope",
    "HALT": (
        "stop|stops|stopped|come_out|comes_out|get_out|gets_out|at_once|immediately|doctor|"
        "sit_down|sits_down|watched|helped|refer|referred|ended|ends_the|sent|taken_out|excluded|"
        "emergency|tell_the_coach|tell_someone|tell_your_coach|out_of_the_water|surface_at_once|"
        "recover|recovers|call|signal|signals"
    ),
    "FALL": "falls|fall|drops|drop|shrinks|decreases|decreasing|falling|dropping|down",
    "DESCEND": (
        "descend|descending|descends|countdown|ladder|pyramid|falling|decreasing|shrinking|"
        "dwindling|reduce|reducing"
    ),
    "COUNT": "count|counting",
    "FIRST": "first",
    "TRAP": "trap|lock|seal|store|shut",
}
