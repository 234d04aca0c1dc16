"""Where in the water, how far and how long."""

from __future__ import annotations

WORDS = {
    "UNDER": "under below beneath",
    "UNDERWATER": """
        underwater|s under_water under_the_water under_the_surface below_the_surface
        beneath_the_surface under_surface below_surface beneath_surface below_water
        beneath_the_water below_the_water beneath_water under_the_waves beneath_the_waves
        below_the_waves submerg|e|es|ed|ing submers|ed|ion|ions immersed u/w uw uws
        under_the_lane_rope beneath_the_lane_rope down_there down_below sub_surface subsurface
        undr_water beneath_the_lane_line below_the_lane_rope without_breaking_the_surface
        without_breaking_surface not_break_the_surface below_the_waterline
    """,
    "STAY_DOWN": """
        stay_down stays_down stayed_down staying_down keep_down remain_down remains_down
        hold_out_down lie_down_there stay_down_there sit_down_there
    """,
    "BOTTOM": """
        bottom pool_floor floor_of_the_pool deep_end_floor pool_bottom sea_bed floor_of_the_deep_end
        bottom_of_the_pool deep_end_bottom
    """,
    "SURFACE": """
        surfac|e|es|ed|ing resurfac|e|es|ing come_up comes_up coming_up came_up pop_up pops_up
        popping_up pops_back_up emerg|e|es|ed|ing come_back_up comes_back_up break_the_surface
        break_surface breaks_the_surface breaking_the_surface breaking_surface up_for_air
        put_your_head_up bob_up come_to_the_top heads_up bail bails bailing pop_to_the_surface
    """,
    "BREAK_OUT": "break_out breaks_out breaking_out breakout|s",
    "LAST_UP": """
        last_one_up last_up last_to_come_up last_to_surface last_to_breathe last_to_gasp
        last_to_pop_up first_to_surface first_to_come_up first_to_breathe first_to_gasp
        first_to_pop_up comes_up_first come_up_first up_first_loses surfaces_first pops_up_first
        first_one_up first_up_loses breathes_first gasps_first last_one_to_surface
        last_one_to_breathe last_man_down last_one_down last_one_to_come_up first_one_to_surface
        first_one_to_breathe first_one_to_come_up last_man_standing_under last_head_up first_head_up
        surfaces_last comes_up_last breathes_last last_to_take_a_breath first_to_take_a_breath
        first_to_need_air last_out_of_air first_to_crack
    """,
    "WALL": "wall|s end|s edge turn|s flag|s ladder block|s rope finish",
    "POOL": """
        length|s lap|s width|s pool|s crossing|s fifty fifties hundred|s twenty-five|s 25s 50s 75s
        100s 200s 400s length_of_the_pool
    """,
    "WHOLE": """
        whole entire full_pool all_the way_through all_the_way complete|ly full_length throughout
        from_wall_to_wall wall_to_wall end_to_end all_of_the start_to_finish from_start_to_finish
        from_flags_to_flags flags_to_flags the_lot the_distance every_metre entirety hole_way
        whole_way hole
    """,
    "FAR": "far other opposite",
    "AS_LONG_AS": """
        as_long_as so_long_as as_far_as so_far_as as_deep_as as_many as_long as_far for_as_long afap
        alap a.f.a.p as_late_as
    """,
    "HOW_LONG": "how_long how_far how_deep how_many how_much",
    "UNTIL": "until till til untill to_the_point_where to_the_point_of till_the",
    "MOST": """
        longest furthest farthest deepest maximum max maximal record|s personal_best|s pb|s pr best
        limit|s as_possible to_failure forever endless|ly best_ever lasting_longest no_more_than
        not_more_than at_most
    """,
    "MORE": "more extra another_go",
    "GROW": """
        longer further farther deeper add|s|ed|ing extend|s|ed|ing stretch|es|ed|ing
        increas|e|es|ed|ing lengthen|s|ing grow|s|ing build_up prolong|ed|s|ing
    """,
    "EXTEND": "add|s extend|s|ed|ing stretch increas|e|es|ing lengthen|s|ing prolong|s|ing",
    "LONG_TIME": "half_a_minute a_minute full_minute whole_minute minutes",
    "SHALLOW": """
        shallow|s shallow_end shallow_water unknown_depth murky toddler_pool paddling_pool
        waist_deep knee_deep teaching_pool learner_pool baby_pool
    """,
    "DIVE": """
        div|e|es|ed|ing head_first headfirst head_long plung|e|es|ing back_flip|s backflip|s
        somersault|s belly_flop|s jump|s|ing
    """,
    "UNIT_M": "m metre|s meter|s yd|s yard|s yds",
    "UNIT_S": "s sec|s second|s",
    "UNIT_MIN": "min|s minute|s",
    "PER": "per each every a an for to must has lasts does",
    "ON": "on in with off from through using via out_of",
    "BODY": """
        hand|s foot feet knee|s kneecap|s elbow|s arm|s leg|s hip|s toe|s heel|s ear|s shoulder|s
        thigh|s board|s buoy parachute|s wrist|s palm|s fingers fingertips ankle|s recovery catch
        stroke|s bubbles_ water eyes goggle|s shin|s sole|s leading_hand parachute_s seat belly cord
        socks belt pull_buoy forearm|s hand_s body waist tail knuckles noodle|s cone|s mat rings
        ring sticks gear
    """,
}
