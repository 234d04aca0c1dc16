"""Water: down and up, whose picture stays down, how far, how long, and what bounds it."""

from __future__ import annotations

TOPICS = {
    "DOWN": """
        under_the_flags below_the_flags tunnel_of carpet inflatable raft hull ice_hole
        under_the_inflatable wet below beneath underneath under underwater submerged
        submerge|s submerging submersion subaqua sub_aqua sunk sunken down_there depths
        deep deep_end cave tunnel|s wreck down dark_side underside underneath_the
        under_the under_there immersed immersion below_decks below_the at_depth
        in_the_deep sinks sink
    """,
    "GOING_UNDER": """
        go_under goes_under going_under sink|s sinking vanish|es vanished disappear|s
        slip_under slip_below duck_under drop_down dive_down descend|s stay_down
        stays_down staying_down stay_under stays_under stay_below stay_beneath submerge|s
        push_off push_and_go lie_on lies_on sit_on_the sits_on_the settle|s crouch
        kneel_on_the go_below swim_below swim_under remain_below stay_hidden hide|s hidden
        lurk|s keep_down hang_on_to unseen
    """,
    "COMING_UP": """
        let_him_up let_her_up come_off climbs_up climb_up to_go_up goes_up head_leaves
        face_leaves leaves_the_water early_heads early_head wants_to_come comes_off
        leave_the_water lets_go lift_the lets_up come_up comes_up coming_up came_up
        surface|s surfaced surfacing pop_up pops_up popping_up rise|s rising emerge|s
        lift|s lifting lifted head_up heads_up show|s appear|s reappear|s
        break_the_surface bob_up bail|s raise|s look_up come_back_up get_up pops_out
        up_for up_before back_up let_up shows_up
    """,
    "SURFACE_PICTURES": """
        go_up says_up up_or dry_hair hair sight wave_line air_pocket gap hole shadow
        in_sight_of the_rope line sky daylight ceiling roof surface top above lid upstairs
        periscope hatch window|s sunlight sun chimney outside atmosphere fresh_air up
        upward upwards waterline water_line the_air topside skylight world_above open_air
        on_top
    """,
    "CREATURES": """
        worm|s jellyfish seal_pose limp motionless freeze frozen_statue float_face mummy
        stingray pretend_to_be like_a_fish submarine|s fish fishes mermaid|s octopus
        shark|s stingray|s ray whale|s torpedo|es stone|s anchor|s statue|s crocodile|s
        pearl frogman frogmen treasure camel|s astronaut|s spy spies ninja|s crab|s
        lobster|s otter|s seal_pup dolphin_man turtle|s ghost|s corpse log|s rock boulder
        diver|s freediver|s pearl_diver penguin|s plaice sole sunken_ship wreck u_boat
        mole|s eel|s sleeping_lions dead_man dead_mans
    """,
    "TRACKS": """
        length|s width|s lap|s wall|s far_end other_end far_side other_side ladder flag|s
        rope pool|s metre|s yard|s m yd|s halfway end_to_end quarter|s three_quarters
        lane|s rail steps buoy|s disc bank opposite_flags opposing touch far far_wall
        finish terminus goal shore fifty fifties hundred twenty-five|s 25s 50s 75s 100s
        gutter
    """,
    "SPANS": """
        counts seventy eighty ninety sixty forty fifty thirty music verses bouts rounds_of
        tickles minute|s second|s secs sec count count_of counting song|s verse|s chorus
        alphabet anthem hour|s timer clock stopwatch watch half_a_minute full_minute times
        nursery_rhyme rhyme the_lot duration hundred countdown tick ticks
    """,
    "BOUNDS": """
        until till til before unless then not_until only_when only_then only_at only_after
        when_i after as_long as_far long_enough to_the nothing_between between at_once
    """,
    "SHALLOWS": """
        brown_water shallow_section three_feet one_metre have_not_checked not_checked
        one-metre knee waist-deep shallow shallows shallow_end waist waist_deep knee_deep
        knee_high ankle_deep toddler teaching_pool learner paddling ramp beach low_tide
        murky unknown unchecked depth how_deep stand_up feet_of_water two_feet four_feet
        chest_deep where_you_can_stand steps puddle hip_deep standing_depth thigh_deep
        no_deeper cloudy muddy
    """,
    "LEAPS": """
        dive|s diving dived headfirst head_first header headlong plunge|s plunging jump|s
        jumping leap|s tombston|e|ing somersault|s flip|s backflip|s handstand|s blocks
        block pier jetty bridge rocks cliff|s slide racing_start|s start|s belly_flop|s
        bomb|s launch hurl topple|s tip
    """,
    "WHOLE_WAY": """
        whole entire full complete|s all throughout every_bit from_start from_end
        first_to_last from end_to_end start_to_finish there_and_back both_ways all_the_way
        wall_to_wall in_one one_go in_one_go straight_through nonstop non_stop across
        the_full complete_the without_a_break without_stopping in_a_row back_to_back
    """,
    "FLOORS": """
        four_metres three_metres at_four_metres metre_line four_metre mattress hoops
        pillars soil along_the_floor marker lake_floor black_crosses floor floors tiles
        tile bottom grate grille drain drains rung basement cellar seabed sea_bed lake_bed
        riverbed ground_floor black_line the_line pool_floor bottom_step ladder_foot
        carpet weeds
    """,
    "SIGNALS": """
        tap taps waves finger bell bang whistle whistles bang|s raise_my_arm my_signal
        signal|s i_say i_shout shout buzzer gong until_i when_i i_tell_you my_arm my_tap
        i_clap clap knock_on my_word the_word coach_says coach_calls
    """,
}
