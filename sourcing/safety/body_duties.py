"""Guarded duties of the body and of children: what carries, holds or treats a person. See `duties` for the table."""

from __future__ import annotations

from sourcing.safety.model import Duty, Pair

BODY_DUTIES = (
    Duty(
        name="medical",
        harm="a patient can get too much, too little or no treatment, or be hurt by the device",
        where_to_go="the device's maker or a qualified medical-device technician",
        sure="""
            syringe pump|driver, infusion pump|set|line|bag|device, inhaler, prosthesis, prosthetic, orthosis,
            orthotic, orthopedic, artificial limb|leg|arm|hand|knee, hospital|nursing|care|patient bed,
            bed rail|side rail, surgical, surgery, operating table|theatre, surgeon,
            medical device|pump|bed|equipment|instrument|ventilator|gas|oxygen|grade, defibrillator, pacemaker, stent,
            catheter, dialysis, insulin, insulin|injection pen, auto injector, adrenaline, nebuliser, anaesthetic,
            anaesthesia, heart valve, dental|dentist drill|chair|brace|handpiece|instrument|syringe, orthodontic,
            denture, lancet, lancing device, implant, feeding pump, blood pressure cuff|monitor, resuscitator,
            patient monitor|chair|trolley, stretcher, oxygen concentrator, stethoscope, tourniquet, traction splint,
            endoscope, biopsy, hypodermic, epipen, epi pen, leg|knee|ankle|back|arm|wrist brace""",
        pairs=(
            Pair(
                "pump, syringe, bed, valve, ventilator, regulator, clamp, drip, splint, brace",
                "patient, nursing|care home, hospital, medical, clinic, clinical, nurse, medicine, blood, therapy",
            ),
        ),
        doubtful="medical, syringe, infusion, ventilator, blood pressure",
        harmless="museum, book, glue, kitchen, icing, baking, ink, oiler, window, roof, greenhouse, car",
    ),
    Duty(
        name="breathing apparatus",
        harm="whoever breathes through it can suffocate, drown or be poisoned",
        where_to_go="the maker or its authorised service",
        sure="""
            oxygen regulator|cylinder|bottle|mask|valve, diving|scuba|dive regulator|valve|cylinder|tank|computer|bcd,
            scuba, demand valve, second|first stage regulator, rebreather, breathing apparatus, gas mask, respirator,
            snorkel valve, life jacket, buoyancy compensator|jacket, exhalation valve""",
        pairs=(
            Pair(
                "regulator, purge, demand valve, first stage, second stage", "diving, diver, scuba, breathing, oxygen"
            ),
        ),
    ),
    Duty(
        name="fall arrest",
        harm="whoever hangs from it can fall",
        where_to_go="the maker or a competent inspector of fall-protection equipment",
        sure="""
            fall arrest|arrester|arrestor|protection|restraint, carabiner, belay, rope grab|clamp|brake,
            climbing|safety|fall|full|sit|chest|work|arborist|tree|rescue harness, harness buckle,
            climbing cam|gear|rope|device|hardware|nut|equipment|axe, camming device, spring loaded cam, quick draw,
            via ferrata, ascender, descender, abseil, abseiling, rappel,
            safety|shock|energy|fall|climbing|work lanyard, lanyard absorber, lifeline, life line, self retracting,
            retractable life|fall, parachute, paraglider, hang glider, reserve chute, zip wire|line trolley,
            zip line|wire, trapeze, aerial silk, ski|snowboard|crampon binding, crampon, anchor device,
            window cleaner cradle, bosun chair, bungee jump, ice screw, tree climbing, safety rope|line|hook""",
        pairs=(
            Pair(
                "harness, snap hook, gate spring, cam, cam lobe, lanyard, buckle, hook",
                """
                    climbing, climber, mountaineering, abseil, roof, roofing, roofer, scaffolder, work at height,
                    rope access, belay, arborist""",
            ),
        ),
        doubtful="harness, snap hook",
        harmless="""
            key ring|chain|holder|fob, key, dog|cat|horse|pony|parrot|rabbit|puppy|wiring|wire|cable|pet harness,
            lead, leash, dog, badge, id|identity card, whistle, bag, handbag, ruck sack, back pack, camera, hammock,
            curtain, loom, bird feeder, climbing rose|plant|bean, trellis, vacuum flask, guitar""",
    ),
    Duty(
        name="seat belt",
        harm="whoever sits there may not be held in a crash",
        where_to_go="the vehicle's maker or a qualified mechanic",
        sure="""
            seat|safety|lap belt, belt retractor|buckle|tensioner, pre tensioner, air bag, inertia reel,
            roll cage|bar, roll over protection, ride restraint, lap bar, head restraint, racing harness,
            seat slide|rail|runner""",
        harmless="vacuum, packing, conveyor, trousers",
    ),
    Duty(
        name="child seat",
        harm="a child can be thrown out, fall, or be trapped or crushed",
        where_to_go="the maker; a damaged one is replaced rather than mended",
        sure="""
            child|baby|infant|toddler|booster|isofix seat, child|baby|infant|toddler car|bike|bicycle seat,
            child safety seat, baby|infant carrier|sling|harness|bouncer|swing|walker|gate,
            child restraint|harness|gate|bed|carrier, stair|safety gate, cot side|gate|rail|drop|lock|catch|mechanism,
            travel|folding|baby|child cot|crib, drop side, crib side|rail, high chair, bunk bed, changing table,
            play pen, isofix, child proof|resistant, child lock""",
        pairs=(
            Pair(
                """
                    car seat, cot, crib, seat, buckle, harness, bouncer, jumper, cradle, swing, rocker, carrier, gate,
                    play yard, booster""",
                "child, baby, infant, toddler, kid, newborn",
            ),
        ),
        doubtful="car seat, cot",
        harmless="nativity, cribbage, head rest, cover, ash tray",
    ),
    Duty(
        name="play equipment",
        harm="a child can fall from it or be trapped or struck by it",
        where_to_go="the maker or a qualified playground inspector",
        sure="""
            play ground, trampoline, climbing frame, swing seat|set|chain|hanger, see saw, merry go round,
            spring rocker|rider|horse, amusement|fairground|theme ride|park, roller coaster, diving board,
            bouncy castle, zip slide""",
    ),
    Duty(
        name="wheelchair",
        harm="whoever sits in it can roll away, tip or fall",
        where_to_go="the maker or a wheelchair service",
        sure="""
            wheel chair, power|powered chair, mobility scooter|aid, rollator, walking frame, zimmer frame,
            walker wheel|brake, transit|commode|shower|bath chair, crutch, patient|bath|ceiling|pool hoist|lift,
            riser recliner, rise and recline, standing frame, transfer board|aid, grab rail, anti tip wheel""",
    ),
    Duty(
        name="stairlift",
        harm="whoever rides on it can fall down the stairs",
        where_to_go="the maker or a licensed stairlift engineer",
        sure="""
            stair lift|climber|chair, stair way lift, stair case lift, curved rail lift, home lift,
            through floor lift""",
        pairs=(Pair("lift, chair lift", "stair, stairway, staircase"),),
    ),
    Duty(
        name="pram",
        harm="it can roll away or fold up with a child in it",
        where_to_go="the maker or its authorised service",
        sure="""
            pram, push chair, stroller, baby|child|double|twin|folding|toddler buggy|carriage, perambulator,
            carry cot, buggy brake|fold|lock|frame|wheel, travel system""",
        pairs=(Pair("buggy, carriage, bike trailer, carry cot", "child, baby, infant, toddler, twin"),),
        doubtful="buggy",
    ),
)
