// What stands round a question and asks for nothing itself, "how do I know if", "show me", and questions of few words that ask for a page by what is done
// there: "where do I put in my times". Pure.

/** @import {Saying} from "./said-as.js" */

const WHO = "(?:i|we|you|they|one|anyone|somebody|a coach)";
const OWN = "(?:(?:a|an|my|our|the|own|their|his|her|your|new|personal) )*";
const BEGIN = "^(?:so |and |but |ok |hi |hey |please )*";

/** Frames at the beginning of a question; what is behind each is asked for. @type {Saying[]} */
const FRAMES = [
  [new RegExp(`${BEGIN}how (?:do|can|could|would|should|will) ${WHO} (?:know|tell|see|recogni[sz]e|spot|check|judge|make sure|find out)(?: (?:if|when|whether|that))?(?= \\p{L}+ )`, "u"), ""],
  [new RegExp(`${BEGIN}(?:is|are) there (?:any(?:thing)?|some(?:thing)?|an?)(?: (?:for|on|about|to))?(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}(?:(?:can|could) you )?(?:show|tell|give|find|get)(?: me| us)(?: (?:about|a|an|some|the))?(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}(?:(?:i am|i['’]?m|we are|we['’]?re) )?(?:looking|searching) for(?: (?:a|an|some|the))?(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}(?:got|have you got|do (?:we|you) have) (?:any(?:thing)?|some(?:thing)?)(?: (?:for|on|about))?(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}(?:any(?:thing)?|some(?:thing)?) (?:for|on|about|good for)(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}(?:everything|all) (?:(?:that )?${WHO} (?:have|has|know) )?(?:on|about)(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}(?:what|which) (?:is|are|would be) (?:the )?(?:best|right|good) (?:way|ways|thing|things|time) (?:to|for)(?= \\p{L})`, "u"), ""],
  [new RegExp(`${BEGIN}i (?:want|need|would like|['’]?d like)(?: to (?:know|find|see|do|teach|train|fix|work on))?(?: (?:about|a|an|some|the))?(?= \\p{L})`, "u"), ""],
];

const TOLD = "(?:(?:put|puts|putting|enter|entering|save|saving|store|input|inputting|upload)(?: in)?|(?:type|typing|fill|filling|key|keying) in)";
const HERE = "(?=\\s*(?:$|[?!.,;]|in\\s*[?!.]*$|(?:here|to|for|on|in (?:here|this|the app))\\b))"; // and not "put the squad in lanes", "put lane ropes out"
const BODY = "(?:heads?|arms?|hands?|elbows?|shoulders?|hips?|knees?|legs?|feet|toes|kick|kicks|stroke|body|bum|chest|back)"; // whose arms won't come out of the water has a fault

/** Questions that ask for a page by what is done there. @type {Saying[]} */
const DONE_THERE = [
  [new RegExp(`\\b${TOLD} ${OWN}(?:lane groups?|lane|group|squad|pool|yards|units)${HERE}.*`, "u"), "settings my lane group"],
  [new RegExp(`\\b${TOLD} ${OWN}(?:swim |test |race |best |lap |split )?(?:times?|paces?|speed|splits?|send-?offs?|results?)\\b(?: in)?`, "u"), "calculator work out times"],
  [/\b(?:is|are) (?:this|it|the|that|your)(?: (?:app|site|website|page|catalogue))* free(?=\s*(?:$|[?!.,;]|(?:to use|of charge|for)\b))|\bfree of charge\b|\bwho (?:made|makes|built|wrote|runs|is behind) (?:this|it|the (?:app|site|website|page))\b.*|\bwhat does (?:this|it|the (?:app|site)) cost\b/u, "licence"],
  [new RegExp(`\\b(?:change|switch|choose|select|pick) ${OWN}(?:pool|units?|lane groups?|squad)\\b.*`, "u"), "settings pool lane group"],
  [/^what(?:['’]?s| is| are)?(?: (?:on|happening|planned|we doing|the plan|the session|the practice|in the plan))*(?: for| on)? (tonight|today|tomorrow|this week|next week|this evening)\W*$/u, "tonight timetable"],
  [/\b(?:make|cut|get|trim) (?:it|this|(?:the|this|that|a|my) (?:whole )?(?:set|practice|session|workout|plan)) (?:shorter|down|quicker|smaller)\b|\bshorten (?:it|this|(?:the|this|that|a|my) (?:set|practice|session|workout|plan))\b/u, "less time than planned"],
  [/\b(?:they |we |he |she |have |are |all )*(?:finished|done|through) (?:with )?(?:the set )?(\S+ min(?:ute)?s?) (?:too )?(?:early|ahead|before time|before the end)\b/u, "$1 left"],
  [/\b(?:(?:what|which) )?(?:drills?|sets?|goals?|entries) (?:(?:that )?(?:have|has|did|do) (?:we|i|they) )?(?:never|not|n['’]?t)(?: yet)? (?:been )?(?:used?|done|swum|covered)\b.*/u, "coverage gaps"],
  [/\b(?:can['’]?t|cannot|can not|could ?n['’]?t|unable to|not able to|struggl(?:es?|ing) (?:to|with)|fails? to)(?: (?:do|manage|get|cope with|handle|hold))? (?:it|this|that|them|(?:the|this|that|a|my) (?:drill|set|exercise|skill|pace|interval|send-?off)s?)\b/u, "too hard easier"],
  [/\b(?:all )?(?:leav(?:e|es|ing)|set(?:s|ting)? off|go(?:es|ing)?|push(?:es|ing)? off) (?:all )?(?:at once|together|at the same time|on top of each other|too close|without waiting|without a gap)\b/u, "lane order gap too close"],
  [new RegExp(`(?<!\\b${BODY} )\\b(?:wo|do|does|did|would)n?['’]?t (?:get out|come out|leave the (?:pool|water)|sit still|stand still|behave|do as \\p{L}+ (?:is|are) told|` +
    "wait (?:for )?(?:his|her|their) turn|stop (?:talk|chat|mess|muck|fool|play|splash|fight|argu|push|shov|giggl|laugh|runn|swimm|shout|fidget|annoy|distract|interrupt)\\p{L}*)\\b", "u"), "nobody listens"], // who won't stop coughing is unwell
  [/\b(he|she|kid|child|swimmer|boy|girl|they)(?:['’]?s| is| are|['’]re)? (?:shaking|trembling|quivering)(?=\s*(?:$|[?!.,;]|(?:a lot|all over|in the (?:pool|water|lane)|at the wall|after|when|what|with cold)\b))/u, "$1 shivering cold"], // on the floor it may be a fit
  [/\bcount (?:them|the (?:kids|children|swimmers|heads)|everyone|everybody|heads)(?: (?:in|out|back))?(?=\s*(?:$|[?!.,;]|(?:before|after|at|when)\b))|\bhead ?counts?\b/u, "a swimmer is missing counted"],
  [/\bwho (?:do|should|must|can) (?:i|we) (?:tell|report (?:it|this) to|ask|inform)(?=\s*(?:$|[?!.,;]|(?:if|when)\b))/u, "who decides lifeguard"],
  [/\bwho (?:do|should|must|can) (?:i|we) (?:call|ring|phone|fetch|get)(?=\s*(?:$|[?!.,;]|(?:if|when|in)\b))/u, "emergency who to call"],
  [/\b(?:finish|end|are done|get back|come in)(?:es|s|ing)? at (?:different|other) times\b|\bnot (?:all )?(?:finish|done)\p{L}* (?:together|at the same time|at once)\b/u, "one much faster one much slower"],
  [/\btoo (?:tired|exhausted|worn out) (?:to|for)\b.*/u, "too tired to go on"],
  [/\b(?:when (?:should|do|must|can) \w+ )?(?:stop|pull out|take out|rest|send home|get out) (?:(?:a|the|my|him|her|them|any) )*(?:tired|exhausted|worn[ -]out|struggling) (?:swimmers?|kids?|child(?:ren)?|girls?|boys?)/u, "too tired to go on"],
  [/\b(?:had|have) (?:had )?enough(?: for (?:today|tonight|now))?(?=\s*(?:$|[?!.,;]))/u, "too tired to go on"],
];

/** @type {Saying[]} */
export const OF_QUESTIONS = [...DONE_THERE, ...FRAMES];
