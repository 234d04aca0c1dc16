"""Bounds that are set on air and depth: until when, how far, how much, and the body's alarm."""

from __future__ import annotations

WORDS = {
    "REACH": """
        length|s width|s lap|s pool lane|s fifty hundred crossing|s wall ladder|s gutter far_end
        other_end far_side opposite other_side start_end end_to_end wall_to_wall flags rope bank
        steps touch you_touch all_the_way whole entire full_lane full_length there_and_back and_back
        trip|s the_lot first_stroke_to start_to_finish from_the_first the_end the_set turn|s boards
        deck_side blue_tiles every_stroke_of halfway mid_pool as_far_as as_long_as as_many_as
        long_as_you far_as_you
    """,
    "RISE": """
        rise|s|n rising rose pop_up pops_up popping_up come_up comes_up coming_up came_up
        surfac|e|es|ed|ing resurfac|e|es|ing break_the_top breaks_the_top break_the_surface
        breaking_the_surface return|s returning to_the_top the_top reappear|s emerg|e|es|ed|ing
        up_again back_up head_up bob_up show_your_head show_your_face head_to_show shows_its_fin
        to_show sight_of_hair see_the_sky see_daylight daylight meeting_the_surface meet_the_surface
        to_the_surface lift_your_head lift_the_head raise_your_head turning_your_head turn_your_head
        lift_your_face roll_to_breathe come_back ascend|s|ing pops_out pop_out
    """,
    "DEEPLY": """
        submarine|s sunk sunken underwater under_water below_the_water below_water beneath_the_water
        submerged submerge under_the_lane under_the_ropes beneath_the_mat beneath_the_mats
        under_the_mat grate drain drain_cover seabed pool_floor on_the_floor the_floor_with
        down_there down_deep deep_end_floor lowest_rung bottom_rung bottom_step on_the_bottom
        at_the_bottom along_the_floor on_the_tiles at_the_grate at_depth that_depth tunnel|s
        trip_down in_one_dive one_breath_dive diving_belt diving_bell below_your below_the_boats
        head_covered head_under heads_under lid_on_the_water roof_of_water octopus crocodile
        mermaid|s submersible u_boat nose_down sit_down_deep go_deep stay_deep swim_below swim_under
        swim_beneath under_the_raft under_the_boat out_of_sight wreck treasure torpedo|es duck_dive
        surface_dive deep_dive freedive nose_under chin_under ears_under immersed immersion
        under_the_waves the_drain lap_below length_below width_below kick_below happy_below
        seconds_beneath beneath_the_ropes under_all the_floor_till wander_the_floor party_on
        ceiling_of roof_over dive_counts bottom_swim the_dive time_under under_the_mats the_rungs
        nothing_above above_the_water the_tiles downstairs sunk_in foot_of_the_wall brick|s
    """,
    "ALARM": """
        suffocat|e|es|ed|ing|ion chok|e|es|ing strangl|e|ed|ing smother|ed|ing panic|s panicky
        alarm|s gasp|s|ing desperate|ly desperation wish_to_breathe want_to_breathe need_to_breathe
        urge_to_breathe desire_to_breathe must_breathe have_to_breathe reflex_to wanting_air
        needing_air want_air need_air craving|s air_hunger voice_that voice_in voices_that
        everything_in_you body_wants body_says body_tells lungs_say lungs_want breathing_becomes
        think_of_breathing think_of_air breathe_becomes feel_you_must feel_like_you_must
        prickl|e|es|ing tingl|e|es|ing spinning spins fuzzy fuzz narrow|s narrowing sight_goes
        vision dizz|y|iness faint|s|ing|ness giddy light_headed lightheaded woozy blackout|s
        grey_out bucked belly_bucks swimming_head seeing_spots spots sparkles stars ringing hum haze
        hazy fog foggy bursting lungs_burn|ing chest_burn|ing burning_lungs burning_chest lung_burn
        fire_in contraction|s spasm|s convulsion|s hiccup|s diaphragm desperate_to chest_tight
        tight_chest tightness suffering agony discomfort distress misery breathless|ness
        out_of_breath out_of_air air_starved starved_of gasping_for shouts_to screams_to
        screaming_for begging_for the_urge that_urge this_urge first_wish wish_for_air want_of_air
        hunger_for_air thirst_for_air lack_of_air burn_in squeeze_in pressure_in grey_edges wanting
        cry_out cries_out crying_out complain|s|ing false_alarm feeling_of ask_for_air asks_for_air
        asking_for_air breaking_point screaming_lungs lungs_scream seeing_stars see_stars
        everything_says uncomfortable first_want without_air wants_air wanted_air lungs_ache
        chest_complaining begging burning
    """,
    "DEFY": """
        push_past push_through pushing_through past beyond carry_on carries_on keep_going keep_on
        go_on goes_on tell_your lungs_no tell_it hold_out hold_off holding_out hang_on hang_in
        override|s overrul|e|es overrid|e|es|ing swim_through swims_through kick_through
        work_through grit grit_your get_used_to gets_used_to used_to_feeling shut_out block_out
        tune_out squeeze_out squeeze_in battle|s|ing fight|s|ing ride_the ride_it ride_out
        let_it_break let_it_pass it_fades it_passes will_pass will_fade pass_off fade|s
        stay_where_you stay_in staying_in stay_with staying_with stay_under stay_down can_wait
        wait|s master|s|ing suffer|s train_your_mind mind_over nearly_there almost_there good_sign
        sign_that is_normal normal working rather_than_stopping rather_than_stop ignor|e|es|ing
        resist|s|ing withstand outlast|s endur|e|es|ing tolerat|e|es conquer|s overcom|e|es|ing
        count_to count_ten count_five more extra another again straight_away embrac|e|es welcome|s
        accept|s enjoy|s love|s befriend|s friend laugh|s smile|s trick_your trick_the fool_your
        outsmart keep_your_head keep_the_head last_ten last_five final_metres finish|es complete|s
        go_further reach_for to_the_wall to_the_touch keep_swimming keep_kicking keep_moving
        keep_still do_not_stop not_stop never_stop not_give no_excuse no_reason delay|s deny denies
        refuse|s suppress stifle|s quell|s silence|s quiet_the calm_the swallow_it swallow_to
        do_not_listen not_listen not_react make_friends makes_friends reward|s|ed let_it let_them
        second_on wait_it_out argument argue switch_it_off switch_off turn_off go_again goes_again
        swim_on kick_on not_yet point|s after_you further sit_still bear bears not_a_reason
        reason_to_stop fetches pays loses gives_in give_in only_in_taking buys_you buys
        swallow|s|ing wait_for long_before before_you_need racing_mind second_longer longer
    """,
    "MUCH": """
        hard strong|ly deep|ly fast quick|ly rapid|ly forc|e|es|ed|ing furious|ly bellows
        over_and_over again_and_again several many times too_much far_more more_than_you more_air
        speed_up speeds_up double twice rounds round plenty lots eight ten twelve fifteen twenty
        thirty forty fifty six seven twenty-five minute dozen series stack|s pack|s load|s big huge
        greedy greedily gulp sharp heavy heavily vigorously full_speed power storm harder quicker
        full_tilt pump extra as_much top_up like_a_dog like_an_engine steam_train four five
        quickened hurried sips_of
    """,
}
