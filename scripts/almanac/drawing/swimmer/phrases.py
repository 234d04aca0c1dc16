"""The words for what a figure shows: one table for each vocabulary."""

from __future__ import annotations

POSITION_WORDS = {
    "supine": "on the back",
    "prone": "on the front",
    "side": "on the side",
    "rotating": "rotating from side to side",
    "vertical": "upright",
    "on-land": "on land",
}
ARMS_WORDS = {
    "at-sides": "both arms along the body",
    "one-extended": "one arm stretched beyond the head, the other along the body",
    "streamline": "both arms stretched beyond the head in streamline, one hand on the other",
    "board": "hands on a kickboard in front",
    "holding-wall": "hands holding the wall",
    "crossed": "arms folded on the chest",
    "hands-up": "forearms held up",
    "sculling": "hands sculling by the hips",
    "holding-gear": "both hands holding a piece of gear",
    "one-arm-strokes": "one arm taking a stroke, the other waiting",
    "stroking": "both arms stroking in turn",
    "free": "arms as they come",
}
KICK_WORDS = {
    "flutter": "Flutter kick",
    "dolphin": "Dolphin kick, legs together",
    "breaststroke": "Breaststroke kick, legs together",
    "none": "No kick, legs still",
}
SETTING_WORDS = {
    "surface": "at the surface",
    "under-water": "under water",
    "at-wall": "at the wall",
    "deck-edge": "at the edge of the deck",
    "on-land": "on dry ground",
}
GEAR_WORDS = {
    "ankle-band": "a band round both ankles",
    "drag-socks": "drag socks on the feet",
    "parachute": "a parachute behind on a line from a belt",
    "stretch-cord": "a stretch cord from a belt to the wall behind",
    "pulley-tower": "a pulley tower behind, its rope at a belt",
    "fins": "fins",
    "kickboard": "a kickboard",
    "tempo-beeper": "a tempo beeper at the cap",
    "pull-buoy": "a pull buoy between the thighs",
    "water-cup": "a cup of water on the forehead",
    "snorkel": "a snorkel",
    "hand-paddles": "hand paddles",
}
POSTURE_WORDS = {
    "standing": "standing",
    "standing-on-toes": "standing on the balls of the feet",
    "lying-on-back": "lying on the back",
    "lying-over-roll": "lying on the back over a rolled towel under the shoulder blades",
    "lying-on-front": "lying on the front",
    "side-lying": "lying on the side",
    "sitting": "sitting, legs long",
    "sitting-knees-bent": "sitting, knees bent",
    "sitting-on-bench": "sitting on a bench",
    "kneeling": "kneeling on one knee, the other foot ahead",
    "plank": "in a plank on forearms and toes",
    "bridge": "in a bridge on shoulders and feet",
    "press-up": "in a press-up position on hands and toes",
    "side-bridge": "in a side bridge on one forearm",
    "sitting-on-heels": "kneeling, the seat over the heels",
    "track-stance": "bent down to the ground, one foot ahead",
}
# What the legs do in a posture, without a kick and with one.
LEG_WORDS = {
    "standing": ("Legs straight", "The near leg swings past the one that stands"),
    "standing-on-toes": ("Knees straight, heels off the ground",) * 2,
    "lying-on-back": (
        "Knees bent, feet flat",
        "One leg long and lifted, the other knee bent with the foot flat",
    ),
    "lying-over-roll": ("Knees bent, feet flat",) * 2,
    "sitting": ("Feet pointed",) * 2,
    "sitting-knees-bent": ("Knees at about a right angle, feet flat",) * 2,
    "sitting-on-bench": ("Thighs level, feet flat on the ground",) * 2,
    "kneeling": ("The kneeling thigh just past upright, the front knee over its foot",) * 2,
    "plank": (
        "Legs straight, toes on the ground",
        "One leg lifted straight, the toes of the other on the ground",
    ),
    "bridge": ("Knees bent, both feet flat", "Knees bent, one foot off the ground, the other flat"),
    "press-up": ("Legs straight, toes on the ground", "One leg lifted straight"),
    "side-bridge": ("Legs straight, one on the other", "The upper leg lifted"),
    "sitting-on-heels": ("Shins and the backs of the feet on the ground",) * 2,
    "track-stance": ("One foot at the front, one behind on its ball, both knees bent",) * 2,
}
DEAD_BUG = "One leg long, just off the ground, the other thigh upright with its shin level"
# What idle hands do in a posture.
RESTING_WORDS = {
    "lying-over-roll": "hands carrying the head",
    "sitting": "hands on the ground behind",
    "sitting-knees-bent": "hands on the ground behind",
    "sitting-on-bench": "hands on the thighs",
    "kneeling": "one hand on the front knee",
    "plank": "both forearms on the ground",
    "bridge": "arms along the ground",
    "press-up": "both hands on the ground under the shoulders",
    "side-bridge": "one forearm on the ground, the other arm along the body",
    "sitting-on-heels": "both hands on the ground ahead",
    "track-stance": "hands at the front foot",
}
HOLD_WORDS = {
    "seated": "sitting, shins in the water",
    "reclined": "leaning back, legs over the water",
    "wading": "standing on the floor, chest deep",
    "planted": "feet on the wall behind, knees bent, ready to push",
    "hung": "drawn up before a backstroke start",
    "gathered": "a hand on the wall ahead, knees drawn in",
    "tucked": "half-way through a somersault, head under the hips, knees drawn in",
    "flying": "in flight off the wall on the back, arched over the water",
    "blocked": "on a starting block, bent down to its front edge",
    "edged": "at the edge of the deck, bent down to it",
    "kneed": "on one knee at the edge of the deck, bent down over the water",
    "entering": "going into the water, hands first",
}
WALL_WORDS = {
    "coming-in": "The wall is ahead.",
    "touching": "",
    "feet-on": "",
    "knees-in": "",
    "somersault": "",
    "flight": "The wall is behind the feet.",
    "on-block": "",
    "leaving": "The toes have just left the wall behind.",
    "start-hold": "",
    "on-edge": "",
    "on-knee": "",
    "entry": "The wall is behind the feet.",
    "at-back": "Back and head are at a wall.",
}
FACE_WORDS = {
    "in": "face in the water",
    "out": "chin at the water, face out",
    "to-you": "face turned towards you for air",
    "away": "face turned away from you for air",
}
PART_WORDS = {
    "propulsive": "the propulsive one",
    "recovery": "the recovery",
    "glide": "between kicks",
}
HANDS_WORDS = {
    "catch": "one arm bent at the elbow to take hold of the water, the other by the thigh",
    "waiting": "one arm lying stretched beyond the head, the other at the hip",
    "throw": "one hand past the thigh, the other arm stretched beyond the head",
    "at-hips": "both hands at the hips",
    "sitting": "both arms stroking quickly and short, the seat low",
    "over": "both arms coming over together",
    "catch-up": "one arm waiting ahead while the other comes over to it",
    "fingertips-along": "one elbow high and its fingertips on the surface, the other arm ahead",
    "fists": "both hands closed to fists",
    "high-elbow": "one arm pulling with its elbow high, the other ahead",
    "hands-under": "one arm coming forward under water, the other ahead",
    "sculling-ahead": "both hands sculling ahead of the shoulders",
    "short-grip": "hands over the far edge of a kickboard, forearms on it",
    "middle-grip": "hands half-way up the sides of a kickboard",
    "long-grip": "fingertips on the near edge of a kickboard, arms straight",
    "fingers-up": "hands sculling by the hips, fingers up and palms to the feet",
    "fingers-down": "hands sculling by the hips, fingers down and palms to the head",
    "across": "one arm reaching across beyond the head, the other along the body",
    "wide": "both arms stretched ahead, apart like a Y",
    "forearm-in": "the upper elbow bent at the ribs, its forearm across the belly",
    "forearm-level": "the upper elbow bent at the ribs, its forearm turned up until it is level",
}
SIZE_WORDS = {"small": "Small", "large": "Large and deep"}
MARK_WORDS = {
    "rope": "A lane rope runs beside the body.",
    "flags": "Flags hang over the water.",
    "stopwatch": "A stopwatch runs.",
    "signal": "A whistle sounds.",
    "foot-count": "Beats are counted.",
    "hand-count": "Strokes are counted.",
    "six-beats": "Six beats are counted to a stroke of both arms.",
    "spin": "An arrow runs round the shoulder: the arms go fast.",
    "quarter-turns": "An arrow goes round the long axis.",
    "rolls": "An arrow shows that the body rolls.",
    "eyes-shut": "The eyes are shut.",
    "one-foot": "What is worn on the feet is on the near foot only.",
    "ledge": "A starting ledge hangs at the wall under the balls of the feet.",
    "towel": "A towel lies under the toes.",
    "elbow-roll": "A rolled towel is between the upper elbow and the ribs.",
    "knees-turn": "An arrow shows that both knees go to one side, then to the other.",
    "head-first": "An arrow shows that the body moves head first.",
    "feet-first": "An arrow shows that the body moves feet first.",
    "block": "A starting block with hand grips stands on the wall.",
}
# What arms and legs do at a wall, whatever their own words say.
OWN_ARMS = {
    "gathered": "the other arm bent under water",
    "tucked": "hands by the knees",
    "flying": "both arms stretched beyond the head",
    "blocked": "hands at the front edge of the block",
    "edged": "hands at the edge",
    "kneed": "both arms stretched beyond the head, aimed at the water",
    "entering": "both arms stretched beyond the head",
}
OWN_LEGS = {
    "gathered": "Both feet on their way to the wall.",
    "tucked": "Knees drawn in, heels by the seat.",
    "flying": "Legs long, feet just off the wall.",
    "blocked": "One foot at the front edge, one behind.",
    "edged": "One foot at the edge, one behind.",
    "kneed": "One knee on the deck, the toes of the other foot over the edge.",
    "entering": "Legs long.",
}
