"""Air: breaths and their pictures, what shuts them in, what they cost, how a body asks for them."""

from __future__ import annotations

TOPICS = {
    "BREATHS": """
        lungs_half_full half_full residual volume spo2 saturation brakes booth booths toll
        filled fill peek peeks snorkel_off head_turns roll_to_the_side sip|s gulp|s
        gulping lungful|s gasp|s puff|s sniff|s whiff|s mouthful|s inhale|s|d inhaling
        inhalation|s inspiration|s inspire breath|s breathe|s breathing tank tanks tankful
        fuel oxygen o2 air swig|s draught draughts breather|s chestful snatch gas drink
        drinks bite bites sup slurp refill refills top_up respiration respiratory
        inspiratory ventilation exhalation lung|s intake breaths_allowed windpipe throat
        airway airways look|s peek|s peeking turn_of_the_head head_turn|s head_lift|s
        mouthfuls inbreath in_breath puffs helping portion serving air_supply air_stop
        pit_stop
    """,
    "SINGLE": """
        one single once a_single just_one only_one one_only lone sole first_and_only
        solitary that_is_your_lot that_is_all that_is_it no_second your_lot
    """,
    "NONE": """
        nothing none nil zero nought zip naught not_one not_a not_any no_more never_a
        nowhere nothing_else dry empty emptied hollow bare flat drained vacuum last_of
        none_left
    """,
    "SEALS": """
        sponge ball bite hatches windows_shut palm hand_flat hand_over cover|s covered
        stuff|ed wad jaw_shut clip_on rubber_ball mats tunnel_closed shut closed close
        cork corked bung plug plugged lid cap zip zipped tape taped peg pegs nose_clip
        clamp|s|ed lock|s|ed sealed stopper jar bottle bottled shop pinch|ed gob trap
        zip_it seal seals buttoned tight_lipped locked_in keep_it_in hold_it valve gate
        door doors shutters lips_sealed shut_up
    """,
    "TARIFF": """
        trophy_points grade pass coins_left rich budget|s token|s coin|s credit|s ration|s
        quota allowance price cost|s costing pay|s paying buy|s buying money spend|s spent
        spending save|s saving afford currency bank overdraft debt owe|s owing fined tax
        toll fee|s charge|s tally counted invoice penny pence pound pounds bill worth
        earn|s earned licence permit ticket|s voucher|s card coupon
    """,
    "LESS": """
        farther_before longer_before less_rest rests_shrink shrinking half_emptied emptied
        intermittent fewer fewest less least cut|s cutting halve|s halved halving shave|s
        drop|s dropping trim|s reduce|s reduced reducing one_less one_fewer minus
        subtract|s lose|s knock_off wean|s weaned diet starve|s starving thin|s shrink|s
        decrease|s lower|s skimp stingy mean miser|s thrifty frugal sparing spare scarce
        economical economise ration|ed taper|s tightens take_away takes_away takes_off
        take_off down_to go_down goes_down countdown counts_down descending shed|s slash
        rarely seldom nearest_to_zero minimal minimum lowest
    """,
    "LEAVING_OUT": """
        skip|s skipping forget|s omit|s leave_out leaves_out forgo withhold suppress|es
        refuse|s refusing deny denies denied postpone|s delay|s delaying defer|s put_off
        without do_without goes_without go_without manage_without ditch abandon abstain|s
        fast banned ban not_needed give_up gives_up resist|s resisting
    """,
    "PUFFING_UP": """
        puff|s|ing huff|s|ing pant|s|ing hyperventilat|e|es|ing|ion over_breathe
        overbreathe pump|s|ing pack|s|ing purge|s bellows quick rapid fast_ones
        deep_breaths quick_breaths deep_ones big_ones flush carbon co2 carbon_dioxide
        steam_train blow_off fast_breaths big_breaths huge_breaths fill_up charge_up
        oxygenate supercharge saturate hard_breathing breathe_hard heavy_breathing load_up
        stock_up washes_out
    """,
    "BODY_ASKS": """
        says_go_up insist|s insists complaint nerve nerves crying instinct_to objection
        regret|s regretted stops_fighting stopped_fighting signals_he asks_to give_in
        give_up cannot_any_more has_had_enough had_enough limit feel_like_drowning urge|s
        craving|s crave beg|s begging plead|s pleading complain|s scream|s screaming
        shout|s shouting protest|s knock|s knocking whisper|s bark|s jerk|s jerks jerking
        spasm|s contraction|s hiccup|s twitch|es burn|s burning sting|s tight tightness
        tighten|s pressure discomfort unbearable panic|s alarm|s siren need_to_breathe
        want_to_breathe ache|s aching pounding pound|s bursting burst|s explode fire
        on_fire moan|s grumble|s whine|s nag|s argue|s lie|s liar|s bluff|s bluffing
        instinct|s reflex impulse hunger demand|s desperate desperation struggle|s fight|s
        fighting convuls|e|es|ions suffer|s suffering hurt|s hell torture cry cries voice
        chest ribs belly diaphragm throat_jerks drive want|s wanting needs longing desire
        crying_out first_wave second_wave
    """,
    "SENSES_FAIL": """
        turns_grey turn_grey warm_and_sleepy stop_obeying splash_some_water colour colours
        lips_blue out_of_it lips_colour disobey heavy_limbs shaking shakes trembling dizzy
        dizziness giddy giddiness woozy wooziness faint|s fainted fainting faintness stars
        spots sparkle|s sparkly tunnel_vision grey gray blue purple tingle|s tingling
        tingly numb numbness ears_ring ringing headache|s sick sickness wobbly lightheaded
        light_headed black_out blackout|s blacked_out blacks_out pass_out passes_out
        passed_out vision fuzzy jelly funny floaty blurry blur blurred spin|s spinning
        swims swimming_head nausea nauseous unconscious vomit collapse|s knocked_out
        out_cold hazy haze fog foggy mist edges beetroot white_lips pale seeing_double
        drowsy sleepy lips feel_light feels_light head_rush headrush see_things
    """,
    "MOUTHS": """
        open_mouth lips mouth|s jaw|s nose nostrils teeth throat cheeks lips_together face
        chin head tongue mouths noses
    """,
    "HOLDING": """
        hold_off hold|s holding held hold_back hold_on retain keep|s keeping kept store|s
        guard hoard bottle_up trap|s trapped save_it lock_in contain clutch hang_on
        hang_onto hold_in hold_it holds keeps stores swallow swallows nurse bank_it
        carry_it hang_on_to lock_it
    """,
    "PENALTIES": """
        reward_for disqualif|y|ies|ied costs_the cost_the counted_against repeat|s
        repeats_it void fault_points fine|s penalty penalties forfeit|s deduct|s deducted
        deduction dock|s docked luxury treat reward|s press_up|s press_ups push_up|s
        burpee|s sit_ups minus_points plus_points points again start_again go_back
        back_to_the_start starts_over start_over punish punishment lap_of_shame extra_lap
        not_count disqualified out_of_the_game owes
    """,
    "A_FEW": """
        twice two three a_couple couple few several four five six pair
    """,
}
