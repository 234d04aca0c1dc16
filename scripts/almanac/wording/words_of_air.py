"""Air, and how a body asks for it."""

from __future__ import annotations

WORDS = {
    "AIR": """
        breath|s air oxygen o2 lungful|s gulp_of_air gulps_of_air lungful_of_air lungfuls_of_air
        breath_of_air gulp|s gasp|s inhalation|s puff|s sip_of_air snatch_of_air breather|s
        mouthful_of_air br lung_full chestful|s bellyful_of_air breath_hold_time fresh_air
    """,
    "SKY": """
        in_the_air into_the_air through_the_air air_temperature airs by_air open_air fresh_air
        in_mid_air not_air out_of_the_air up_in_the_air
    """,
    "NO_AIR": """
        nb no_breather|s without_a_mouthful not_a_mouthful nobreath no_breathers airless
        breathlessly oxygen_free nobr no_br nbs bh bhs n.b.
    """,
    "BREATHE": """
        breathe|s|d|r inhal|e|es|ed|ing respir|e|es|ing breathing breathin breath_in breathes_in
        take_in_air taking_in_air
    """,
    "EXHALE": """
        exhal|e|es|ed|ing breathe_out breathes_out breathing_out breath_out blow_out blowing_out
        blow|s|ing bubble|s bubbling hum|s|ming let_it_trickle trickle
    """,
    "BREATHLESS": "breathless|ly",
    "WINDED": """
        out_of_breath winded short_of_breath breathlessness spare_breath breath_to_spare
        air_to_spare catch_breath catch_your_breath catch_their_breath catch_the_breath
        get_your_breath_back breath_back breath_is_back in_the_same_breath under_your_breath
    """,
    "SPENT_AIR": """
        out_of_air run_out_of_air runs_out_of_air out_of_oxygen no_air_left air_runs_out air_is_gone
        breath_is_gone run_out_of_breath runs_out_of_breath out_of_puff air_ran_out air_gives_out
    """,
    "APNOEA": """
        hypox|ic|ia|ics hypo_set apnoea|s apnea|s apneic apnoeic apnoe breathhold|s|ing|er
        breath_hold|s|ing|er|ers breath_control|led breath_restrict|ed|ion breath_holder
        lung_bust|er|ers|ing lungbust|er|ers|ing free_div|e|ing|er|ers freediv|e|ing|er|ers
        air_hunger holding_of_breath holding_of_the_breath breathholds bated_breath hipoxic hypoxik
        breathold|s|ing oxygen_debt_set co2_table|s o2_table|s co2_tolerance controlled_breathing
        restricted_breathing reduced_breathing limited_breathing breathing_restriction
        breath_ladder|s breath_pyramid|s breath_countdown breathing_ladder|s breathing_pyramid|s
        breath_golf breath_retention kumbhaka bottom_time dive_time breath_time air_tolerance
        static_hold|s
    """,
    "LUNG": "lung|s chest|s ribcage diaphragm|s ribs windpipe",
    "MOUTH": "mouth|s lip|s jaw|s nostril|s",
    "FACE": "face|s head|s nose|s chin",
    "SNORKEL": "snorkel|s",
    "HYPERVENTILATE": """
        hyperventilat|e|es|ed|ing|ion hyper_ventilat|e|es|ing|ion hyperventil overbreath|e|ing
        over_breath|e|ing superoxygenat|e|es|ing super_oxygenat|e|es|ing oxygenat|e|es|ing
        pre_breath|e|ing breathe_up lung_pack|ing pack_your_lungs pack_the_lungs packing_the_lungs
        hyper_oxygenat|e|ing prebreath|e|ing supercharg|e|es|ing hypervent hyperventalate
        over_ventilat|e|es|ing overventilate
    """,
    "PANT": "pant|s|ing huff|s|ing sniff|s",
    "PUMP": """
        pump|s|ing flush|es|ing purg|e|es|ing wash_out washing_out blow_off blowing_off
        charg|e|es|ing prim|e|es|ing load|s|ed|ing saturat|e|es|ing top_up tank_up stock_up
        stack|s|ing pack|s|ing fill_up pre_load preload super_charge ventilat|e|es|ing clear_out
        bellow|s flood|s|ing get_rid_of blast|s dump|s|ing overfill|s|ing
    """,
    "CO2": "co2 carbon_dioxide carbon",
    "FILL": "fill|s|ed|ing inflat|e|es|ing empty empties emptying",
    "DEEP": """
        deep|ly big huge massive giant full_lung max_depth large great hard heavy heavily forceful
        forced forceful|ly sharp
    """,
    "QUICK": "quick|ly fast rapid|ly hurried furious|ly",
    "SLOW": """
        slow|ly calm|ly quiet|ly easy relaxed normal|ly usual gentle gently soft|ly calmly steady
        ordinary
    """,
    "TIMES": "times times_over over_and_over again_and_again several_times many_times repeatedly",
    "URGE": """
        urge|s need|s|ed|ing want|s wish|es desire|s hunger crav|e|es|ing longing itch reflex|es
        instinct|s demand|s impulse|s yearn|ing compulsion
    """,
    "CONTRACTION": """
        contraction|s spasm|s convuls|e|es|ing|ions heav|e|es|ing jerk|s|ing twitch|es|ing
        scream|s|ing beg|s|ging flutters diaphragm_kicks chest_kicks contract|s|ing protest|s
        let_it_kick
    """,
    "BURN": """
        burn|s|ing burst|s|ing ach|e|es|ing sting|s|ing on_fire explod|e|es|ing bursting hurt|s|ing
        pound|s|ing tighten|s|ing tight
    """,
    "DIZZY": """
        dizz|y|iness|ier giddy swimmy_head black_spots funny giddiness woozy wooz|iness
        light_head|ed|edness lightheaded|ness lighthead faint|s|ing|ness|ed faint_feeling
        star|s_before_your_eyes see_stars seeing_stars sees_stars spots tingl|e|es|ing
        pins_and_needles tunnel_vision black_out blacks_out blacking_out blackout|s blacked_out
        pass_out passes_out passing_out passed_out unconscious goes_grey goes_black goes_dark
        go_grey go_black going_grey grey_out greys_out gray_out grays_out greying graying
        vision_narrows vision_narrow vision_blurs vision_goes vision_may_narrow blurr|y|ed
        head_spin|s head_spinning head_swims swimmy head_rush lose_consciousness
        losing_consciousness blue_lips lips_go_blue lips_turn_blue lips_are_blue turn_blue goes_blue
        go_blue turns_blue grey_at_the_edges swimming_head floaty foggy haze hazy loopy
        head_goes_light head_feels_light tingly ears_ring vertigo world_narrows everything_narrows
        sparkles sparkly numb_lips headache|s head_aches nausea nauseous shallow_water_blackout|s
        fuzzy spaced_out head_goes_funny go_funny goes_funny
    """,
    "PAIN": """
        pain|s|ful sore|ness injur|y|ies|ed cramp|s numb|ness agony sprain|ed ache aches aching
        niggle|s twinge|s
    """,
}
