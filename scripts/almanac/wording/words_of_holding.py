"""Going down, keeping shut, taking away, striving: what surrounds a breath that is withheld."""

from __future__ import annotations

WORDS = {
    "SINK": """
        sink|s|ing sank sunk submerg|e|es|ed|ing descend_to duck|s|ed|ing_under|ing_down duck_down
        ducks_down duck_under ducks_under duck_beneath duck_dive dip_under dips_under dip_down
        drop_down drops_down drop_under drops_under drop_to drops_to drop_beneath slip_under
        slips_under slipping_under slip_beneath slide_under slides_under slip_below slide_down
        go_under goes_under going_under went_under go_below goes_below go_down goes_down going_down
        dive_down dives_down diving_down dive_under swim_down swims_down swimming_down get_down
        gets_down head_under heads_under under_you_go down_you_go under_they_go down_they_go
        under_we_go down_we_go off_you_go_under immers|e|ion the_dive a_dive you_dive dive_to
        plunge_under plunge_down disappear|s vanish|es vanish_under drop_off_the_surface
        leave_the_surface leaves_the_surface leaving_the_surface sinking_down let_yourself_sink
        pull_yourself_down let_yourself_down lower_yourself push_down_to slipping_below
        ducking_beneath dunk_under pop_under bob_under dropping_under take_the_plunge before_the_dip
        you_go_down under_water_start submersion|s
    """,
    "FLOOR": """
        floor floors tiles tile grate drain pool_floor plughole rung|s pool_bed sump deep_end
        the_deep seabed bottom bottom_rung bottom_step deepest_part deepest_point deep_water
        lowest_rung floor_of_the_pool bottom_of_the_pool depths depth
    """,
    "SEALED": """
        sealed lips_together lips_pressed lips_tight lips_sealed lips_shut lips_closed closed_lips
        tight_lips mouth_closed mouth_shut mouths_shut mouths_closed closed_mouth closed_mouths
        nose_closed lid_on clamped_shut teeth_clenched jaw_clamped jaws_shut not_open_your_mouth
        mouth_never_opens mouth_stays_closed mouth_stays_shut nose_and_mouth_shut mouth_zipped
        zip_it zipped zip_your_lips zip_your_mouth lips_zipped closed_throat throat_closed
        shut_your_mouth shut_your_trap keep_it_shut mouths_sealed plugged corked lungs_closed
        lungs_locked lungs_stay_closed locks_the_lungs lock_your_lungs lock_the_lungs nose_pinched
        pinch_your_nose pinched_nose closed_breathing windpipe_shut glottis_closed close_your_throat
        lock_your_throat hatch_shut hatches_shut gob_shut trap_shut button_your_lip lips_locked
        lips_glued
    """,
    "OPENS": "open|s|ed|ing unseal|s unzip unlock part|s gape",
    "KNOCK": """
        knock|s|ed|ing chop|s|ped|ping lop|s chip|s whittl|e|es|ing strip|s|ping slash|es|ing
        scrap|s shave|s|d pare|s peel|s taper|s|ing halv|e|es|ed|ing quarter|s|ed|ing slic|e|es
        squeeze squeez|es|ing dock|s lessen|s|ed|ing diminish|es|ing dwindl|e|es wean|s|ing
        sacrific|e|es get_rid_of do_away_with cut_out give_up giving_up cut_back cut_down
        cutting_down bring_down brings_down bringing_down work_down working_down go_down come_down
        comes_down coming_down get_down step_down steps_down drop|s|ped|ping reduc|e|es|ed|ing|tion
        cut|s|ting trim|s|med|ming lower|s|ed|ing remov|e|es|ing subtract|s|ing deduct|s
        los|e|es|ing shed|s fewer fewest less least dispens|e|es_with abandon|s weed_out phase_out
        use_up starv|e|es|ing ration|s|ed|ing shrink|s|ing sink|s|ing decreas|e|es|ing fall|s|ing
        drop_by minus one_fewer one_less min minimum minimis|e|es|ing minimiz|e|es|ing lowest
        smallest economis|e|es|ing save|s saving spare cap|s|ped budget|s quota|s allowance|s
        limit|s|ed skimp|s|ing thrifty stingy mean_with rationed eliminat|e|es|ing erase|s rarer
        scarcer scarce thins thin_out thins_out thinning sparser closes become_one becomes_one
        become_two blown_out taken_from cross_off crossed_off fewer_and_fewer goes_down going_down
        peter_out tick_off running_out countdown count_down own_three own_two
    """,
    "NUMBER_OF": "number|s count|s total tally amount frequency rate intake score|s",
    "LURE": """
        win|s|ner|ners|ning champion|s prize|s trophy medal|s king queen crowned hero|es legend|s
        glory bragging reward|s|ed point|s bonus award|s badge|s star_of sticker|s cup sweet|s
        chocolate|s biscuit|s pizza ice_cream treat|s cheer|s applause claps record|s leaderboard
        league rank|ed|ing|s bet|s dare|s|d challeng|e|es|ed|er competition|s contest|s tournament|s
        duel|s battle|s showdown knockout eliminat|ed|ion forfeit|s|ed penalt|y|ies punish|ed|ment
        fine|s|d owe|s press_ups push_ups pushups burpees squats sit_ups laps_of_shame wash_up
        pays_for buys out_of_the_game are_out is_out you're_out you_are_out start_over starts_over
        start_again starts_again do_it_again does_it_again repeat_it goes_again go_again
        swim_it_again back_to_the_start not_count does_not_count disqualif|ied|ies wash_the loses
        loser|s lose|s best top_score beat_your beat_the beat_each beat_them beaten high_score
        concedes qualifies picked selected earns earn|ed chosen gets_to_pick lead|s_the first_pick
        relay_places relay_team last_one last_man last_swimmer still_in move_up moves_up
        points_go_up takes_the top_of read_out takes_point extra_lap extra_length extra_laps
        outstay|s outsit|s outlast|s out_last out_sit dethrone|s
    """,
    "STRONG": """
        strong|ly powerful|ly hard heavy heavily fast quick|ly rapid|ly sharp|ly forceful|ly deep|ly
        big huge massive vigorous|ly furious|ly violent|ly brisk|ly full greedy greedily hurried
        top_speed double twice_as_fast twice_the in_a_row back_to_back like_a_dog like_a_train
        fiercely fierce energetic frantic speedy swift|ly maximal mighty enormous intense|ly snappy
        gasping flat_out all_out many lots
    """,
    "PUFFING": """
        puff|s|ing|ed blow|s|ing breath|s|e|es|ing inhal|e|es|ing|ation|ations
        exhal|e|es|ing|ation|ations respiration|s pant|s|ing gulp|s|ing gasp|s|ing huff|s|ing
        ventilat|e|es|ing|ion|ions in_and_out in_out_in_out lungful|s in_breaths out_breaths
        storm_the_lungs storming breathing sniff_blow chestful|s fast_in fast_out sniff|s|ing
        bellow|s pump|s|ing fill_your_lungs fill_and_empty emptying_and_filling breaths_in
    """,
    "THROB": """
        jump|s|ing flutter|s|ing shudder|s|ing quiver|s|ing trembl|e|es|ing shak|e|es|ing
        bounc|e|es|ing thump|s|ing hammer|s|ing throb|s|bing twitch|es|ing jerk|s|ing heav|e|es|ing
        kick|s_in|s spasm|s|ing cramp|s|ing convuls|e|es|ing buck|s|ing clench|es|ing tighten|s|ing
        pound|s|ing burn|s|ing ach|e|es|ing scream|s|ing beg|s|ging shout|s|ing cry cries crying
        complain|s|ing protest|s|ing rebel|s burst|s|ing explod|e|es|ing sting|s|ing nag|s|ging
        plead|s|ing yell|s|ing howl|s hurt|s|ing tell|s|ing demand|s|ing tug|s|ging pull_at
        squeez|es|ing bulg|e|es|ing on_fire knock|s swallow|s argue|s objects object grumbl|e|es
        whin|e|es want|s need|s starts_up
    """,
    "INSIDES": """
        chest diaphragm lung|s ribs ribcage throat belly stomach gut|s tummy body brain mind nerves
    """,
    "PRESS_ON": """
        keep_going keeps_going keep_on keep_moving keep_still keep_kicking keep_swimming carry_on
        carries_on carrying_on go_on goes_on going_on continu|e|es|ed|ing push_on pushes_on press_on
        presses_on presse kick_on swim_on stay_on hold_on hang_on hang_in hang_tough stick_it_out
        stick_with_it sit_it_out sit_with_it ride_it ride_out ride_them ride_it_out tough_it_out
        grin_and_bear grit_your_teeth dig_in dig_deep battle_on soldier_on stay_down stay_put
        stay_there remain|s welcome|s|d embrac|e|es|d ignor|e|es|d|ing overrid|e|es|ing overrul|e|es
        disobey|s defy defies beat|s bear|s endur|e|es|ed|ing resist|s|ed|ing outlast|s conquer|s
        master|s|ed|ing overcom|e|es|ing withstand|s tolerat|e|es|ing suppress|es|ing
        silenc|e|es|ing deny denies tell_it_no tell_it_to say_no says_no quieten refus|e|es
        push_through push_past push_beyond work_through swim_through fight_it fights_it
        fight_through fight|s laugh_at smile_at not_stop not_give_in not_give_up not_quit
        not_surrender not_yield no_reason_to_stop no_excuse never_stop finish_the finishes_the
        complete_the see_it_through no_excuse_to part_of_the_game one_more two_more another
        five_more ten_more a_few_more more longer extra wait|s|ing count|s|ing through_it
        through_them past_it beyond_it regardless anyway anyhow still_go is_normal is_fine is_good
        good_sign nothing_to_fear all_in_the_mind stay_calm_and do_not_surface not_surface
        not_come_up hold_your_nerve hold_firm stand_firm stay_strong make_friends_with get_used_to
        gets_used_to live_with lean_into relax_into sit_through breathe_later shrug_off shrugs_off
        power_on power_through brush_off rather_than_stop without_stopping nevertheless
        training_effect adapting toughen|s weak weakness wimp|s do_not_listen not_listen shut_out
        block_out tune_out talk_yourself_out_of negotiate bargain
    """,
    "HEED": """
        take_it takes_it answer_the answers_the obey|s|ed respect|s|ed heed|s act_on whenever
        any_time anytime at_any_time as_you_like as_you_need as_you_please as_often_as as_they_like
        as_they_need if_you_need if_you_want when_you_like free_to command no_prize no_shame
        nobody_minds no_rush all_right alright okay_to ok_to fine_to allowed_to good_to at_will
        freely take_another take_a_breath take_the_breath comes_first come_first comes_before_speed
        always_breathe breathe_at_once breathe_first plan straight_up up_you_come come_up_and
        come_up_at roll_over roll_on roll_onto signal_to_the hand_up raise_a_hand put_your_hand
        wave_to get_help help ease_off ease_up back_off slow_down slows_down get_out climb_out
        come_out end_the_set tell_the_coach tell_your_coach tell_a_coach tell_me tell_us say_so
        speak_up take_a_break have_a_break have_a_rest take_a_rest shorten shorter miss_a_turn
        sit_one_out miss_one skip_the skip_a skip_one as_soon_as take_your_time with_every praise
    """,
    "HOLD_IT": """
        hold_it holds_it holding_it held_it hold_out hold_on holds_on hang_on save_it keep_it_in
        keeps_it_in bottle_it lock_it_in hold_that hold_everything hold_them hold_one hold_for
        keep_hold not_let_it_out not_let_go hold_in holding_in hold_still_under
    """,
    "SUCCESSIVE": """
        each every successive per next by_the end_of week_by_week rep_by_rep time_by_time one_by_one
        gradually step_by_step progressively week|s session|s round|s rep|s repeat|s attempt|s
        length|s lap|s time practice|s month|s try day|s set|s
    """,
}
