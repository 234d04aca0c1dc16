"""What the program itself knows of vocabularies: which field takes its words from which, and the
few words that it asks for by name. Everything else about a word is the club's, in its file.
"""

from __future__ import annotations

VOCABULARY_OF = {
    "mode": "modes",
    "kick": "kicks",
    "stroke": "strokes",
    "position": "positions",
    "arms": "arms",
    "effort": "efforts",
    "goal": "goals",
    "level": "levels",
}
"""The vocabulary of each field that is one word, or a list of words of one."""

SWIM, KICK = "swim", "kick"
FLUTTER, DOLPHIN, NO_KICK = "flutter", "dolphin", "none"
SUPINE, PRONE = "supine", "prone"
AT_SIDES, BOARD = "at-sides", "board"
BACKSTROKE = "backstroke"
BODY = "body"
"""What gear acts on; a club without it has no gear that resists all of a swimmer."""
RESISTS, ASSISTS, SUPPORTS = "resists", "assists", "supports"
EFFECTS = (RESISTS, ASSISTS, SUPPORTS, "informs")
"""What gear does, as far as the program knows what that means for a swimmer's load."""
LAND, UNDER_WATER, ON_LAND = "land", "underwater", "on-land"
WALL, VERTICAL = "wall", "vertical"
"""Three modes and two positions; a club without them has no drill of that sort."""
AT_SURFACE, BELOW, OUT = "at-the-surface", "under-water", "on-land"
DONE = {
    **dict.fromkeys((SWIM, KICK, "pull", "drill", WALL), AT_SURFACE),
    UNDER_WATER: BELOW,
    LAND: OUT,
}
"""Where work of the modes that the program knows is done. A mode of a club's own says so itself."""
HAZARDS, GRAVITIES = "hazards", "gravities"
"""Two vocabularies: what can hurt someone, and how grave that is, the gravest first."""
BLACKOUT, TIRES = "blackout", "tires-out-of-depth"
WALL_AHEAD = "head-into-wall"
LINE, LOADED_LINE = "caught-in-line", "line-under-load"
"""Hazards that some work always names: under water, upright out of depth, with a line."""
PUBLISHED, COMMON_PRACTICE = "published", "common-practice"
CONTESTED = "contested"
"""A basis that a club may do without."""
CRITICAL_SPEED = "critical-speed"
"""A benchmark that gives no such figure is none that this is worked out for: the word may be
missing.
"""
TO_WARM_UP, TO_RECOVER = "warm-up", "recovery"
"""Two goals: what opens a practice and what ends it. A club may do without the words."""
OPENS, TEACHES, LEADS_ON, WORKS = "warm-up", "skill", "pre-set", "main"
TESTS, CLOSES = "test", "cool-down"
"""Parts of a practice that composing asks for; any other is what a session is for."""

BUILT_ON = {
    "modes": (SWIM, KICK),
    "kicks": (FLUTTER, NO_KICK),
    "positions": (SUPINE, PRONE),
    "arms": (BOARD,),
    "strokes": (BACKSTROKE,),
    "effects": (RESISTS,),
    "bases": (PUBLISHED, COMMON_PRACTICE),
}
"""By vocabulary the words that must be there: without one, a share would be zero without anyone
noticing, or a claim would have no basis to name. A word's title is the club's to change.
"""
