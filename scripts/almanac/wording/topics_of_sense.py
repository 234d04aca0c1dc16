"""Good sense: ease, denials, help, reasons, technique and errands."""

from __future__ import annotations

TOPICS = {
    "COMFORT": """
        if_it_feels breathe_when breathe_as breathe_early breathe_out breathe_often
        ok_sign take_your_time say_yes safe|ly safety allowed_to as_you_like you_like
        as_you_need whenever any_time anytime wish wishes ready comfortable comfortably
        easy easily relaxed relax smooth|ly gentle|ly freely free natural|ly normally
        as_often as_usual usual happy happily choose choice your_choice at_your_own
        if_you_want when_you_want when_you_need need_it need_to fresh steady slow slowly
        calm calmly enough plenty rest|s rested resting recover recovery within_reach
        beside next_to in_sight stays_beside watching watches watched talk chat chatting
        smile|s
    """,
    "FORBIDDING": """
        wrong exactly_what_we_do_not in_this_club bans nobody_gets_praise is_wrong
        talk_you_into forbidden banned ban prohibited not_allowed danger dangerous dangers
        risk risks risky drown|s drowned drowning kill|s killed death died warn|s warning
        warned warns careful caution hazard|s harm|s illegal outlawed rule rules sign
        poster law bad unsafe deadly lethal unwise foolish silly nonsense myth blackout
        blackouts die dies faints_without silent_killer prohibition against unacceptable
    """,
    "REPORTING": """
        tell|s told telling report|s call|s called ask|s asked asking say|s said speak
        doctor physio nurse ambulance first_aid medic medical see_a check|s checked
        checking inspect measure|d signal raise_a_hand hand_up wave help|s helps helped
        look_after follow_up refer|red emergency parents_are coach_is
    """,
    "REASONS": """
        why because so_that reason|s teach|es taught teaching learn|s learned explain|s
        explained fault cause|s caused cure mistake|s correct answer question quiz true
        false purpose aim goal benefit|s helps means since lesson|s
    """,
    "TECHNIQUE": """
        stroke|s kick|s kicking pull|s pulling arm|s elbow|s hand|s hips legs streamline|d
        glide|s freestyle backstroke breaststroke butterfly fly crawl scull|s sculling
        catch rotate|s rotation roll|s timing rhythm tempo technique body toes ankle|s
        fingers knees drill|s snorkel fins paddles board buoy tumble turn|s
        underwater_camera video
    """,
    "ERRANDS": """
        bring bottle|s towel|s goggles cap|s caps kit minibus bus session|s meeting form|s
        email club coffee tea lunch snack|s register car_park changing showers locker|s
        meet gala entry entries fees noticeboard calendar monday|s tuesday|s wednesday|s
        thursday|s friday|s saturday|s sunday|s am pm
    """,
    "DENYING": """
        not_say none_of_us not_for_us never not no no_one nobody refuse refused refuses
        instead rather_than avoid|s must_not do_not does_not we_do_not is_not are_not
        cannot dont neither nor none without can_not hardly no_reason
    """,
    "STOPPING": """
        stop|s stopped stopping end|s ended cancel|s cancelled clear|s clear_the
        out_of_the_water get_out gets_out come_out comes_out out leave_the leaves_the
        pull_out stops sit_out sits_out finish_there call_it pull_them_out over abort
        off_you_get straight_out at_once immediately straight_away
    """,
}
