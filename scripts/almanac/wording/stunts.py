"""Acts that no session asks for, whatever its fields say: somebody tied, blind or run into."""

from __future__ import annotations

from almanac.wording.acts import Acts

_OTHER = r"(?:partner|mate|coach|somebody|someone|another|helper)"
_OWN = r"(?:the|your|their|both|his|her)"
_LEGS = r"(?:ankles|feet|legs|knees|shins)"
_DECK = r"(?:pool ?)?(?:deck|tiles|edge|pool ?side)"
_FAR = r"(?:farthest|furthest|longest)"
_ACTS = {
    "bound": (
        "tied tie ties bind bound knot lash",
        (
            rf"(?:wrists?|hands|arms) (?:are )?(?:tied|bound)|(?:tie"
            rf"|bind)s? {_OWN} (?:wrists|hands|arms)"
            r"|(?:tie|knot|lash|bind)s?\b.{0,25}\b(?:both|each|two|one another|round the) "
            r"(?:waists?|other|swimmers|necks?)|tied (?:to each other|to one another|together)"
        ),
    ),
    "hobbled": (
        (
            "tape rope stri tied tie ties bind boun stra lash wrap wind band cord belt tube tyre "
            "scar & ankl feet legs knee shin"
        ),
        (
            rf"(?:taped?|tied|tie|bind|bound|strap\w*|lash\w*|wrap\w*)s?\b.{{0,40}}\b{_LEGS}\b"
            rf"|{_LEGS}\b.{{0,15}}\b(?:taped|tied|bound|strapped|lashed|roped)\b"
            r"|(?:tape|rope|string|belt|tube|tyre|band|cord|scarf)s?\b.{0,25}\b(?:round|around) "
            rf"(?:(?:the|your|both|their) )*{_LEGS}\b"
        ),
    ),
    "in a sack": (
        "over into roun arou & feet legs knee sack bag",
        (
            rf"(?:tube|tyre|ring|loop|band|bag|sack)s?\b.{{0,20}}\b(?:over|round"
            rf"|around) both {_LEGS}"
            r"|(?:legs?|feet|step|slip|climb)s?\b.{0,12}\b(?:in|into) a (?:\w+ )?(?:sack|bag)\b"
        ),
    ),
    "on a rope": (
        "stan walk clim sit sits bala & rope",
        (
            r"(?:stand|balance|climb|sit)s? (?:up )?on (?:to )?(?:the |a )?(?:lane )?ropes?\b"
            r"|walks? (?:up |out )?(?:on|along) the lane ropes? as far"
        ),
    ),
    "on to a swimmer": (
        "jump leap dive drop & behi fron besi next on over",
        (
            r"(?:jump|leap|dive|drop)s? in\b.{0,25}\b(?:behind|in front of|beside"
            r"|next to|on top of|over)"
            r" (?:the |their |his |her )?(?:feet|hands|head|swimmer|other|one|them)"
        ),
    ),
    "in a chain": (
        "hold grip & ankl feet leg",
        (
            r"(?:hold|grip)(?:s|ing)? (?:each other's|one another's) (?:ankles|feet|legs)"
            r"|(?:hold|grip)(?:s|ing)? (?:on to )?the (?:ankles|feet) of the (?:next|one)"
        ),
    ),
    "struck": (
        "hit hits slap whip stri tap taps poke & pole stic hard flip fin",
        (
            r"(?:hit|slap|whip|strike|poke|tap)s? (?:the|their|his|her|them|it) ?\w*\b.{0,10}"
            r"\b(?:hard|with (?:the|a) (?:stick|whip|flip-?flop|fin))\b"
        ),
    ),
    "by the neck": (
        "neck & cord rope band belt stra loop tube",
        (
            r"(?:cord|rope|band|belt|strap|loop|tube)s?\b.{0,25}\b(?:round|around|over|about) "
            rf"(?:{_OWN} )?necks?\b"
        ),
    ),
    "tied in a lane in use": (
        "cord cord. cord, teth tied & acro circ roun arou past two thre four both seve",
        (
            r"cords?\b.{0,40}\bacross (?:the |other |next )*lanes?\b"
            r"|(?:two|three|four|both|several) (?:swimmers? )?(?:on cords?|on a cord|tethered"
            r"|tied)\b.{0,12}\bin (?:each|every|one|a|the same) lane"
            r"|(?:cords?|tether\w*|tied)\b.{0,45}\b(?:rest|others?|lane|squad|everyone)\b"
            r".{0,15}\b(?:circles?|swims?|pass(?:es)?|goes?)\b(?: \w+)? (?:round|around|past)"
        ),
    ),
    "one side both ways": (
        "both & same side",
        r"both (?:ways|directions)\b.{0,25}\bsame side",
    ),
    "short of air": (
        "tape taped stra & mout thro",
        rf"tape[sd]? {_OWN} mouth|mouth (?:is )?taped|through a straw",
    ),
    "run on deck": (
        "race spri run runs chas skip hop hops jump & deck tile edge pool",
        (
            rf"(?:race|sprint|run|chase|skip|hop|jump)s?\b.{{0,25}}\b(?:round|along"
            rf"|down|across|on|over)"
            rf" (?:the |wet )+{_DECK}\b"
        ),
    ),
    "leap with a run-up": (
        "run runu jump leap dive",
        (
            r"run-?up\b.{0,40}\b(?:leap|jump|dive)|(?:leap|jump|dive)s?\b.{0,30}\brun-?up"
            r"|jumps? down from the (?:starting )?block"
        ),
    ),
    "fall": ("fall", r"let yourself fall|falls? backwards off|let(?:s|ting)? \w+ fall backwards"),
    "thrown": (
        "thro shov drag push pull & chil othe each rest swim lear smal some them him her one",
        (
            r"(?:throw|shove)s? (?:them|him|her|each other|one another|(?:the|a) "
            r"(?:child\w*|swimmer|learner|other|small\w*)) (?:in|into|off)\b"
            r"|(?:push|pull|drag|shove)\w*\b.{0,30}\b(?:others?|each other"
            r"|one another|rest) (?:off|in)\b"
            r"|push(?:es)? (?:somebody|someone|each other|one another|a \w+) (?:in|off|under)\b"
        ),
    ),
    "swung in": (
        "swin let by & deep hand wate",
        (
            r"(?:by|at) (?:the )?(?:hands|arms) and (?:feet|legs)\b"
            r"|(?:swing|let)s?\b.{0,25}\bgo (?:over|above|into) the (?:deep|water)"
        ),
    ),
    "on each other": (
        "stan clim sit sits ride & shou back",
        (
            r"(?:stand|climb|sit|ride)s? (?:up )?(?:on|onto|on to) (?:their|each other's|his|her"
            r"|somebody's|a partner's|the other's) (?:shoulders|backs?)"
        ),
    ),
    "on a board": (
        "step knee ride clim bala stan jump & boar kick",
        (
            r"(?:(?:step|kneel|ride|climb|balance)\w*|(?:stand|jump)\w*(?=.{0,12}boards)) (?:up )?"
            r"(?:on|onto|on to) (?:the |two |a |your |one )*(?:kick)?boards?\b(?! of)"
        ),
    ),
    "head down": ("hang & head", r"hang\w*\b.{0,20}\bhead[- ](?:down|first)"),
    "sat on": (
        "sits stan knee lies & part mate coac some anot help",
        rf"{_OTHER} (?:sits|stands|kneels|lies) on (?:you|the swimmer|{_OWN})",
    ),
    "pushed under": (
        "push pres hold forc keep & unde belo",
        (
            rf"{_OTHER} (?:pushes|presses|holds|forces) {_OWN} (?:head|face) under"
            r"|(?:push|press|force)(?:es|s)? (?:the|their|his|her|a) (?:head|face|swimmer|child) "
            r"(?:right |down )*under"
            r"|hand on the (?:swimmer's |child's )?head\b.{0,30}\b(?:below|under)"
        ),
    ),
    "into the wall": (
        "hits hit gues are have were unti & flag wall head",
        (
            r"until the head (?:touches|hits|meets) the wall|hits? the wall hard"
            r"|guess(?:es)? (?:where )?the wall|flags (?:are|have been|were) (?:down|off|away"
            r"|taken (?:down|off|away))\b"
        ),
    ),
    "into each other": (
        "clos crow head over pass give & touc toge agai wher anyw can if way",
        (
            r"do not give way|(?:overtakes?|pass|passes) (?:wherever|anywhere|if (?:they|you) can)"
            r"|so close that (?:they|you) touch|head against head"
            r"|crowns? of (?:their|the|both) heads? together"
        ),
    ),
    "towards each other": (
        "towa at oppo & each one side abre",
        (
            r"(?:side by side|abreast)\b.{0,40}\bopposite directions"
            r"|(?:swim|kick|sprint|race)s? (?:straight |hard )?(?:towards|at) "
            r"(?:each other|one another)"
        ),
    ),
    "at the last moment": (
        "last & mome seco inst",
        (
            r"(?:out of (?:its|the|his|her) way|dodge\w*|turns? away|stops?|brakes?"
            r"|swerves?)\b.{0,12}"
            r"\bat the last (?:moment|second|instant)"
        ),
    ),
    "on the neck": (
        "crow walk & head hand",
        r"(?:on to|onto) the crown of the head|walks? on (?:the|your) hands",
    ),
    "blindfolded": (
        "over acro & eyes face nose mout head",
        (
            rf"(?:cap|bag|towel|cloth|shirt|scarf|sock|hood)s?\b.{{0,25}}\b(?:over|across) "
            rf"(?:{_OWN} )?(?:eyes|face|nose|mouth|head)\b"
        ),
    ),
    "a contest under water": (
        "fart furt long & glid slid torp push drif floa stre arro",
        (
            rf"(?:glide|slide|torpedo|push-?off|drift|streamline|arrow)\w*\b.{{0,30}}\b{_FAR}\b"
            r".{0,30}\b(?:wins?|first|points?|champion|captain|prize)"
            rf"|(?:who|whoever|the one who)\b.{{0,20}}\b(?:glide|slide|drift|torpedo|float)\w*\b"
            rf".{{0,12}}\b{_FAR}|(?:contest|competition|championship|prize|points?"
            rf"|race)\b.{{0,30}}\b"
            rf"(?:{_FAR} (?:glide|slide|push-?off|torpedo|streamline)|glides?\b.{{0,15}}\b{_FAR})"
            rf"|{_FAR} (?:glide|slide|torpedo|push-?off|arrow)\b.{{0,20}}\b(?:wins|gets|chooses)"
        ),
    ),
}
STUNTS = Acts(_ACTS, ends=("stops?", "unless", "before", "if", "may"))
