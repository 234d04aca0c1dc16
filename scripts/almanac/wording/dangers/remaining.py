"""Keeping under by posture and place: sitting on the bottom, hanging on a rung, going down for a
count.
"""

from __future__ import annotations

from almanac.wording.dangers.danger import danger

REMAINING = danger(
    name="remaining-under",
    asks="asks to remain under water for a time or a distance",
    mend="name the kicks and the mark by which the head is up, with full rest and a watcher",
    ways="""
    SINK ... STAY|HOLD|REMAIN ... UNTIL|LONG_TIME|count|NUM|MANY|while|AS_LONG_AS|HOW_LONG
    SINK ... wait|STAY ~ UNTIL|LONG_TIME|count|NUM|for|while
    STAY|HOLD|hang|hanging|lie|sit|kneel|stand|squat ~ on|at|to|by ~ BOTTOM &
        EXTENT|count|until|CONTEST|LURE|for
    STAY|HOLD|hang ~ on ~ FLOOR & SINK|FACE|UNDER|breath
    FACE ~ under|below|UNDER|submerged|UNDERWATER & LONG_TIME|count|MANY|AS_LONG_AS|UNTIL|HOW_LONG
    STAY_DOWN
        -- BODY|FACE|LUNG|back|seat|ribs|heel|heels|shoulders|it .. STAY_DOWN
    SURFACE only|ONLY ~ when|once|after|IF
    only|ONLY ~ SURFACE ~ when|once|after|IF|at
    SURFACE ~ when ~ signal|tap|whistle|say|call|count|tapped|told
    SURFACE early|earlier|soon|sooner ~ NOT|LURE|HARM|means
    SURFACE early & NOT ALLOWED
    NOT ~ SURFACE early|soon|first
    time|seconds|secs|s ~ on|at ~ BOTTOM|FLOOR & MORE|GROW|LONGER|ADD|SUCCESSIVE
    longer and longer .. UNDER|UNDERWATER|BOTTOM|SINK|below|beneath
    LONG_TIME ~ ~ on|at ~ FLOOR & STAY|spent|still|motionless|SINK|pool
    SINK ... STAY|HOLD ~ for ~ LONG_TIME|MANY|NUM
    NOT ~ fight|break|make|race|head|go for ~ surface|SURFACE
    under|UNDER|UNDERWATER|beneath ~ for|until ~ NUM|LONG_TIME|MANY|waves|SOME
        -- under ~ NUM|CLOCK|LONG_TIME|DIST|a ~ for ; below that
    LURE & SINK|UNDERWATER|STAY_DOWN|BOTTOM
        -- beat|beats ; hands lead ; on top ; glide ; line ; push ; NOT ~ SINK|under|UNDER ;
           UNDER|SINK COMMA ; stop|STOP
    PUSH|wrestle|HOLD ~ PERSON ~ below|under|beneath
    """,
    unless="""
    NEAR & off|from ~ WALL ; for BRIEF ; BODY ~ down|DEPTH ; EXHALE ; SNORKEL ;
    look|looks|eyes|camera|filmed ; streamline ; BODY|LUNG ~ SINK ; SINK ~ to ~ surface ;
    BODY ~ SURFACE ; HEED ; dry ; mat ; bench ; STAY|KEEP ~ BODY ; BOTTOM of ~
        BEATS|BODY|each|every|the beat|kick|stroke
    """,
)
