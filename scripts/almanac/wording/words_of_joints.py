"""Small words, and words that deny or join."""

from __future__ import annotations

WORDS = {
    "NOT": """
        not never can_not nor neither cannot dont cant wont don't nobody no_one none noone ne'er
        isnt isn't arent no_swimmer no_child hardly under_no_circumstances by_no_means at_no_time
        nothing nobody's
    """,
    "NO_LONGER": "no_longer not_any_longer",
    "AVOID": """
        avoid|s|ed|ing instead_of rather_than prevent|s|ing|ed refus|ing refrain|s|ing not_allow
        forbid|s|ding ban|s abstain discourag|e|es as_against prohibit|s rul|e_out|ing_out
        cross_out cross_off crossed_out crossed_off strike_out struck_out struck_off delet|e|ed|es
    """,
    "HARM": """
        dangerous forbidden banned wrong unsafe risky bad deadly lethal harmful prohibited outlawed
        refused ruled_out barred kill|s|ed|ing drown|s|ed|ing danger|s risk|s hazard|s disallowed
        no_place no_part unacceptable slower stiff stiffens tense sinks lifts tires spoils fault
        mistake|s statement warn|s|ing|ed beware silly foolish drownings death|s fatal warned|s
        discourag|ed stupid outlaw|s illegal harm|s not_offered no_cover_for not_offer no_such_thing
        put_an_end not_our_way not_part_of
    """,
    "FORGET": """
        forget|s|ting fail|s|ing hesitat|e|es|ing afraid shy scared bother neglect|s wait_to
        reluctant frightened fear stop_holding embarrassed worried
    """,
    "ALLOWED": """
        allowed permitted asked wanted needed used welcome counted praised rewarded measured
        required called trained practised encouraged taught timed set ranked mend aim goal joke way
        answer skill trick sport place part game contest
    """,
    "IF": """
        if when whenever whoever anyone anybody someone somebody who whose once should any_swimmer
        as_soon_as a_swimmer
    """,
    "AND": "and then but while as so because plus & after afterwards whilst",
    "LIGHT": """
        ur u yr ever the a an that this those these his her their our my your it its to of be is are
        was please very do does let one's ask make have we you they he she i at any
        under_any_circumstances once even also again us want trying there time reason allowed_to
        such every each anybody_to all own
    """,
}
