"""What is done, left out or gone on with, by whom."""

from __future__ import annotations

WORDS = {
    "NO": "no zero sans minus nil 0 nought",
    "WITHOUT": """
        without w/o with_no with_zero free_of less_any w/out with_out lacking foregoing
    """,
    "FEW": """
        few fewer fewest less least minimal minimum limited restrict|ed|s|ing ration|s|ed|ing
        reduc|e|es|ed|ing cut|s|ting drop|s|ped|ping skip|s|ped|ping sav|e|es|ed|ing
        spar|e|es|ed|ing lower|s|ed|ing halv|e|es|ed|ing half omit|s|ting forgo|es forego
        miss|es|ed|ing los|e|es|ing leave_out take_off shave lean_on_fewer sacrific|e|es
        shav|e|es|ing trim|s|ming minimis|e|es|ing minimiz|e|es|ing starv|e|es|ing shed|s|ding deny
        depriv|e|es|ed|ation|ing scarce fast_from refus|e|es|ing_to_take curb|s cap|s knock_off
        take_away subtract|s remov|e|es|ing economis|e|es economiz|e|es conserv|e|es|ing
        delay|s|ing|ed postpon|e|es|ing put_off hold_off holding_off resist_taking without_as seldom
        rarely infrequent|ly sparing|ly suppress|es|ed|ing stifl|e|es|ing withhold|s|ing withheld
        suspend|s|ing lacks eliminat|e|es|ed|ing ditch|es lowest smallest erase forsake
    """,
    "ONE": "one single 1 lone sole same solitary",
    "ONLY": """
        only just solely exclusively nowhere_else nothing_else no_other not_in_between none_between
        none_in_between
    """,
    "OTHERWISE": "in_between between",
    "HOLD": """
        hold|s|ing held hold_on_to hang_on_to hanging_on_to retain|s|ing contain|s|ing trap|s|ping
        trapped bottl|e|es|ing bottle_up stor|e|es|ing cling_to sit_on sitting_on lock|s|ed|ing
        seal|s|ed keep_hold_of clamp|s|ing hoard|s|ing nurse nursing swallow|s catch_and_hold hodl
        hld bank|s hug cork grip|s|ping sits_on kneel_on
    """,
    "HOLDS_OUT": "hold_it holds_it hold_out holds_out hold_it_in holding_out",
    "KEEP": "keep|s|ing kept",
    "TAKE": """
        get|s|ting got take|s|n taking took draw|s|ing get_a grab|s|bing sneak|s steal|s
        snatch|es|ing have having has had come_up_for look_for reach_for lift_for turn_for grabbing
        come_for use uses using need_to_take suck|s
    """,
    "CAN": """
        can could able dare|s manage|s|d stand possible possibly bear|s allow|s let|s lets|ing
        allows permit|s last|s|ed lasts may might shall should will would must
    """,
    "CEASE": """
        stop|s|ped|ping ceas|e|es|ing quit|s|ting halt|s paus|e|es|ing shut_off block_off cut_off
        turn_off switch_off give_up
    """,
    "SHUT": """
        shut closed close sealed_shut locked zipped pinch|ed zip taped tape clamped lock_shut lock|s
        tight_shut sealed clos|es
    """,
    "STAY": """
        stay|s|ed|ing remain|s|ed|ing sit|s|ting lie|s lying lay wait|s|ing last_it hang|s|ing
        linger|s|ing surviv|e|es|ing camp|s rest|s|ing hover|s|ing stood standing stay_put park
        settl|e|es hunker crouch kneel kept_down hide|s hiding spend|s|ing live|s endure_it
    """,
    "GO": """
        go|es|ing went swim|ming|mer swum swam kick|s|ed|ing glid|e|es|ed|ing travel|s|led|ling
        cross|es|ed|ing pull|s|ing crawl|s|ing sprint|s|ing dolphin|s|ing fly flutter float|s|ing
        cover|s|ed|ing mak|e|es|ing made do|es|ing did done complet|e|es|ing get|s|ting reach|es|ing
        driv|e|es|ing breaststroke freestyle crawl_on undulat|e|es|ing try attempt|s work|s|ed|ing
        push_off pushes_off duck|s ducking duck_div|e|es|ing sink|s|ing dip|s drop_down torpedo
        train|s|ing practis|e|es|ing practic|e|es|ing
    """,
    "PERSIST": """
        ignor|e|es|ed|ing push_through pushes_through pushing_through push_past pushing_past
        push_on_through fight_through fight|s|ing fight_off resist|s|ing tough|ing_it tough_it_out
        tough_out toughing_it_out suck_it_up grit endur|e|es|ing bear_it ride_out ride_it_out
        overrid|e|es|ing overcom|e|es|ing conquer|s|ing defy defies defeat master|s|ing outlast
        keep_going keeps_going keep_swimming keep_kicking keep_on carry_on carries_on carrying_on
        go_on goes_on continu|e|es|ing press_on swim_on swim_through swims_through work_through
        never_mind not_mind no_matter despite in_spite_of regardless is_normal are_normal is_good
        is_fine is_expected embrac|e|es welcome|s accept|s relax_into get_used_to gets_used_to
        get_past grind get_through stay_with_it stick_with_it stick_it_out hang_on hang_in hold_on
        battle|s through_it one_more push_on shrug_off brush_off plough_on plow_on dig_in soldier_on
        mind_over_matter not_stop never_stop not_give_in not_quit no_reason_to_stop not_a_reason
        not_an_excuse no_excuse nothing_to_worry_about not_worry all_in_the_mind in_the_mind
        in_your_mind in_your_head all_in_your_head only_a_feeling just_a_feeling weakness_leaving
        tame keep_at_it put_up_with live_with trust_it learn_to_love man_up toughen_up do_not_panic
        not_panic finish_the_rep finish_the_length finish_it swim_past go_past stay_down stays_down
        keep_your_head_down silence disregard|s|ing dismiss|es power_through powers_through
        not_let_it nevermind part_of_it part_of_the_job part_of_the_deal goes_with_it
        tell_it_to_wait long_before_it_must hang_tough keep_it_going not_cave not_listen
        do_not_listen laugh_at is_ok are_ok is_okay are_okay are_fine are_good means_it_is_working
        proves power_on battle_on
    """,
    "EVEN": "even past beyond through_the through even_if even_when even_though although after",
    "STOP": """
        stop|s|ped|ping out rest|s|ed seated seat watched over_with emergency aid licensed
        professional rope rope_end recover|s whistle blow_the_whistle sit|s leav|e|es|ing sit_down
        sits_down end_the ends_the ends_it end_it ends_their rest_until come_out comes_out get_out
        gets_out surface_at_once come_up_at_once come_straight_up up_at_once helped call|s|ing
        report|s refer|red tell_the_coach tell_me tell_someone tell_your_coach tell_a_coach tell_us
        tell_them tells_the_coach tell_an_adult ended over at_once immediately straight_away
        hold_the_rope holds_the_rope pulled send|s|ing sent doctor taken_out struck_out excluded
        finished step_back steps_back out_of_the_water hand_up ease_off back_off slow_down get_help
        roll_on_your_back
    """,
    "AGAIN": """
        start_over start_again back_to_the_start go_again do_it_again repeat|s begin_again
        begins_again does_it_again starts_again starts_over redo not_count disqualified
        back_to_start swims_it_again swim_it_again goes_back to_the_beginning
    """,
    "CONTEST": """
        win|s|ner|ning winner|s loser|s loses contest|s competition|s compete challeng|e|es game|s
        bet|s dare dares prize|s champion|s race_to racing points point beat_your beat_the beat_that
        beat_his beat_her beat_each_other medal reward|s press_ups push_ups pushups pressups burpees
        penalty penalties forfeit|s owe|s chocolate scoreboard leaderboard leader_board king queen
        bragging battle_of duel scores score showdown last_man last_one last_swimmer last_person
        see_who who_can
    """,
    "PERSON": """
        him her them partner|s swimmer|s child|ren kid|s somebody_else someone_else each_other
        friend|s buddy teammate|s mate another_swimmer lad|s girl|s boy|s other_swimmer his
    """,
    "ALONE_ONLY": """
        by_yourself on_your_own unsupervised unwatched on_their_own by_themselves by_himself
        by_herself unattended nobody_watching nobody_is_watching no_one_watching no_one_is_watching
        unaccompanied
    """,
    "GUARD": """
        lifeguard|s coach|es watcher|s supervision supervisor|s spotter|s adult|s teacher|s guard|s
    """,
    "COVER": """
        plastic bag|s clingfilm cling_film tape towel sock blindfold gag duct_tape mask wet_cloth
        hand_over cloth pillow
    """,
    "WEIGHT": """
        weight|s weight_belt|s weighted rock|s brick|s ballast dumbbell|s kettlebell|s weigh_down
    """,
    "PUSH": """
        push|es|ing press|es|ing forc|e|es|ing dunk|s|ing shov|e|es|ing held_down pin|s|ning
        holding_down hold_down sit_on_top
    """,
}
