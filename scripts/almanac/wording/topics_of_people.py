"""People: who drives them on, vies, watches or is away, what is done to them, and what hurts."""

from __future__ import annotations

TOPICS = {
    "PRESSING_ON": """
        keep_the_rhythm deal_with_it proceed stay_where_you_are go_on use_it desperate
        ignore|s ignoring keep_going keep_on keep_kicking keep_swimming carry_on
        carries_on push_on push_past push_through swim_through swim_on kick_on press_on
        ride_it ride beat_it do_not_answer disregard|ed override|s overridden no_excuse
        mind_over overcome conquer embrace enjoy love welcome past beyond through
        stick_with hang_in dig_in suck_it_up suck_it get_through finish_it finish_the
        no_stopping never_stop do_not_stop not_stop not_a_reason no_reason train_through
        work_through rip_through nearly_there almost_there half_a_tank halfway_there
        more_in_you keep_at all_in whatever regardless despite even_if even_when
        swim_it_off walk_it_off run_it_off shake_it_off
    """,
    "RIVALRY": """
        quitters grade_a stands_at you_are_here_to here_to_beat first_one_to outlive outdo
        wheel_of_fortune spin qualifies win|s winner|s winning won lose|s loser|s losing
        last first game|s challenge|s challenged dare|s bet|s betting trophy medal|s
        prize|s points point league knockout king queen champion|s beat|s beating beaten
        score|s scoring scored bid|s auction sweepstake chocolate picks mars bar sweets
        chips crown|s cup outlast|s outstay contest|s competition|s compete survivor
        survives round_robin head_to_head versus duel rival|s tournament leaderboard
        sponsored bragging boast|s legend|s fewest_wins team|s tally jackpot
        double_or_quits gets_the forfeits out_of_the_game last_one last_person last_man
        last_head last_up first_up first_to first_one eliminated
    """,
    "UNSEEN": """
        nobody_on_shore no_kayak no_escort no_lights no_tow_float no_tender without_line
        no_line coffee_break coffee off_at buddy_not_here not_here elsewhere pool_is_ours
        ours_till early_set alone solo by_yourself by_himself by_herself by_themselves
        on_your_own on_their_own on_his_own on_her_own nobody no_one unsupervised
        gone_home gone knocks_off knock_off tea_break closing after_closing after_hours
        empty locked lights_off unwatched unattended no_need company secret|ly quiet|ly
        in_peace own_time own_judgement not_tell do_not_tell without_telling unaccompanied
        away not_looking not_watching looks_away back_turned absent leaves leave lock lone
        lonely before_the_guard before_the_coach nobody_watching no_cover no_lifeguard
        no_guard without_a_lifeguard without_a_guard private|ly self_supervised unguarded
        shore_leave
    """,
    "WATCHERS": """
        lifeguard|s guard|s spotter|s watcher|s buddy buddies coach|es teacher|s adult|s
        staff cover supervisor|s supervision assistant|s parent|s instructor|s observer|s
        safety_officer poolside on_deck helper|s
    """,
    "SOMEBODY": """
        toddler pupil|s little_ones instructor the_third candidate|s him her them
        partner|s mate|s buddy swimmer|s lad|s kid|s child children teammate|s friend|s
        weakest new_lad someone somebody another each_other one_another brother sister
        girl|s boy|s youngest littlest victim pair|s opponent slowest youngsters juniors
        beginners
    """,
    "FORCING": """
        dip|s dipped grip|s grips_both hold_the_head holds_the_head hold_his hold_her
        head_down put_under put_the lid_on mats_over block_the bar_the_way bury send_back
        sends_back release|s presses_down pressure_on neck without_warning pushed_in
        push|es|ed|ing press|es|ed|ing sit_on sits_on sitting_on stand_on stands_on
        kneel|s kneels_on lean|s pin|s pinned duck|s ducked ducking dunk|s dunked dunking
        drag|s dragged dragging pull_down pulls_down grab|s grabbed shove|s shoved
        hold_him hold_them hold_down holds_down held_down held_under hold_under pile_on
        piles_on climb_on bounce wrestle|s wrestling keep_him keep_her keep_them force|s
        forced forcing throw|s thrown toss smother|s strangle drown|s push_back
        pushed_back straight_back_down
    """,
    "BINDING": """
        jugs vest bandage cart stone stones noodle_across knot|ted weighted_vest wrap|ped
        tight_round tie|s tied bind bound strap|s strapped chain|s chained rope_round belt
        weight|s weighted brick|s lead rocks rucksack kettlebell|s bag|s gag|s gagged
        cling_film clingfilm hand_over towel sock blindfold|ed cloth flannel elastoplast
        plaster bucket boots pack kilo|s kg ballast anchor|ed wrists ankles feet_tied
        hands_tied tether|ed elastic plate|s dumbbell|s pillow pillowcase mask plastic
        handcuff|s hook|s hooked wedge|d
    """,
    "STORMS": """
        lightning thunder thunders thunderstorm storm|s stormy flash|es rumble|s rumbling
        strike|s hail bolt|s thunderclap clap|s red_flag waves surf current rip weather
        gale
    """,
    "STAYING_IN": """
        leave_them in_for hold_your_interval another_400 time_for_another back_into
        put_him_back put_her_back stay_in stay stays keep_in keep_them_in leave_them_in
        carry_on finish get_done we_swim remain|s stay_put keep_going keep_swimming
        nobody_leaves not_leave no_leaving not_get_out get_back_in in_you_go
    """,
    "CHILL": """
        cold colder shiver|s shivering ice icy iced freezing frozen blue_lips wetsuit
        degrees hypothermia numb chill|ed buttons teeth_chatter chattering goose_bumps
    """,
    "SORENESS": """
        hurt|s hurting pain|s painful ache|s aching sharp cramp|s cramping injury injuries
        injured sore soreness stitch torn tear|s tearing pop|s click|s wheeze|s wheezing
        asthma asthmatic inhaler puffer chest_pain|s infection infected fever concussion
        strain sprain|ed swollen stabbing twinge|s niggle|s bleeding blood shoulder knee
        wrist back ill illness sick
    """,
    "HOW_FAR": """
        best_of goes_the_most most_times record|s best longest furthest farthest deepest
        most who_can whoever whichever can_you how_many how_long how_far how_deep
        personal_best pb world_record as_far as_long as_deep as_many maximum max maximal
        utmost limit limits further farther longer deeper extra another_ten beyond_your
        new_best who_goes who_stays see_who see_how try_how
    """,
    "SCORN": """
        toughen most_people soft weakness weak wimp|s coward|s babies quitter|s quit|s
        quitting tough|en tougher toughen_up man_up harden grit brave bravery courage
        heroes hero character mental mentally discipline willpower will liar|s bluff
        warrior warriors proud pride shame lazy nerve steel iron champion champions
        real_swimmers proper_swimmer toughness hardest baby quitters excuses excuse moan
        moaning whining
    """,
    "REASSURING": """
        quite_all_right all_right comes_back healthy_hearts is_not_dangerous not_dangerous
        nothing_bad nobody_has_to_worry no_worry science_says not_a_fire_drill it_teaches
        just_nerves is_normal normal only_your only_a just_a means_it it_is_working
        working good_sign proof proves shows_it part_of never_mind nothing_to_worry
        no_matter it_passes passes_off loosen_up swum_off in_your_head all_in_the harmless
        fine nothing_wrong perfectly expected expect natural goes_away will_pass wears_off
        signal_that that_is_where only_feels never_hurt never_killed did_anybody_harm
        not_to_worry counts_as
    """,
    "WILD_WATER": """
        eleven_in_the evening dawn dusk night holiday|s homework at_home bath tub garden
        lake quarry sea river reservoir canal weir dark hotel loch ocean harbour pond pier
        surf open_water backyard hot_tub bathtub swimming_hole beach holidays weekend
        midnight after_dark early_morning
    """,
    "TRAINING_GROUND": """
        test tests tolerance capacity static statics dynamic dynamics table tables
        protocol adaptation training trained train altitude simulate builds build build_up
        progression progress weekly week each_week every_week season goal target objective
        month monthly pyramid ladder
    """,
    "STORIES": """
        imagine pretend story picture you_are be_the be_a like_a like_an game games play
        relay tag treasure dragon castle pirates pirate king queen monster lava island
        ship world moon planet corridor tunnel smoke
    """,
    "COACH_SAYS": """
        i my me mine i_am i_will we our us coach the_coach old_coach
    """,
}
