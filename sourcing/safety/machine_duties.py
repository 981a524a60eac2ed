"""Guarded duties of machines, tools and weapons. See `duties` for how the table is read."""

from __future__ import annotations

from sourcing.safety.model import Duty, Pair

MACHINE_DUTIES = (
    Duty(
        name="blade guard",
        harm="a blade can be laid bare or throw things, and cut whoever works with it",
        where_to_go="the machine's maker or its authorised service",
        sure="""
            blade guard|brake|shield, saw guard|hood, mower guard|flap|deflector|blade, kick back, anti kick back,
            kick back pawl|brake|guard, riving knife, grinder|grinding guard, wheel guard grinder, cutter guard,
            knife guard, retractable guard, saw blade guard|cover, slicer guard, power|mechanical press, press brake,
            press guard, machine guard, chuck guard, belt guard, guard of machine, pto guard|shaft, hand guard saw,
            crown guard, guillotine guard|clamp|blade, discharge chute|flap, two hand control, pull back device,
            finger guard, nail gun, nailer, cartridge tool, bolt gun, safety guard, drop hammer,
            shredder guard|hopper""",
        pairs=(
            Pair(
                "guard, blade cover, shield, hood, shroud, deflector, flap, discharge",
                """
                    saw, circular|table|mitre|miter|chop|band|bench|plunge saw, saw blade, grinding wheel, mower,
                    lawn mower, grinder, angle grinder, slicer, meat slicer, planer, jointer, spindle moulder,
                    router table, lathe, milling machine, hedge trimmer, brush cutter, strimmer, shredder, chipper,
                    blade, baler, combine""",
            ),
        ),
        doubtful="guard, blade cover",
        harmless="mud|fire|lamp|splash|nail|tooth|knee|shin|mouth|fan guard, guard rail|dog, book, razor",
    ),
    Duty(
        name="chain brake",
        harm="a running chain may not stop when the saw kicks back",
        where_to_go="the saw's maker or its authorised service",
        sure="chain brake, chain saw brake|handle|guard|clutch|trigger|throttle|inertia, inertia brake",
        pairs=(Pair("brake, hand guard, clutch, throttle", "chain saw"),),
        doubtful="chain saw",
    ),
    Duty(
        name="dead-man switch",
        harm="a machine may run on when its operator lets go or falls",
        where_to_go="the machine's maker or its authorised service",
        sure="""
            dead man, paddle switch, grinder paddle|trigger|switch,
            dead man switch|handle|lever|pedal|trigger|brake, operator presence, hold to run,
            enabling switch|device, kill cord|switch|lanyard, engine stop cord|lever, bail lever|bar|handle,
            trigger lock out, treadmill safety key, vigilance pedal""",
        pairs=(Pair("bail, safety bar|lever", "mower, lawn mower, cultivator, tiller, snow blower"),),
    ),
    Duty(
        name="door interlock",
        harm="a machine may run while it is open and reach whoever opened it",
        where_to_go="the machine's maker or its authorised service",
        sure="""
            interlock, door inter lock, safety interlock|switch, emergency stop|off|release|brake|hatch|handle|valve,
            emergency shut off, e stop, emergency button|switch, panic button, mushroom head button,
            guard switch|lock|locking, microwave door|latch|catch|hook, microwave oven door|latch|catch|hook,
            washing machine door|lid, washer door|lid, spin|tumble dryer lid|door|brake, centrifuge lid|door,
            trapped key, tongue switch, light curtain, pressure mat, safety edge|relay|mat|circuit,
            guard limit switch""",
        pairs=(
            Pair(
                "door|lid lock|latch|catch|hook|switch|release",
                """
                    microwave, microwave oven, washing machine, washer, spin|tumble dryer, centrifuge, guard, x ray,
                    laser, mixer, blender""",
            ),
            Pair("safety", "machine switch, food processor, blender, mixer, shredder"),
        ),
        doubtful="door|lid switch",
        harmless="fridge, refrigerator, freezer, cupboard, wardrobe, cabinet, car courtesy light",
    ),
    Duty(
        name="recoil starter",
        harm="the wound spring can whip out, or the rope or the crank can kick back at whoever starts the engine",
        where_to_go="the engine's maker or its authorised service",
        sure="""
            recoil starter|start, recoil spring starter, pull start|starter, pull cord|rope|string start|starter,
            rewind starter|start, starter recoil|rope|cord|pulley|rewind|pull, kick starter|start, starter pawl|dog,
            hand crank starter, spring starter, recoil pull|cord|rope|pulley""",
        pairs=(
            Pair(
                "starter, recoil, pull cord, rewind",
                "engine, mower, lawn mower, generator, chain saw, outboard, strimmer",
            ),
        ),
        doubtful="starter",
        harmless="fund, fluorescent",
    ),
    Duty(
        name="firearm",
        harm="it can go off when it should not, or burst, and maim or kill someone",
        where_to_go="the maker or a licensed gunsmith",
        sure="""
            fire arm, hand gun, pistol, rifle, shot gun, revolver, musket, carbine,
            air|bb|pellet|spear|harpoon|blank gun, flare|machine|hunting|sporting gun, air weapon, derringer,
            blunderbuss, gun trigger|barrel|lock|stock|hammer|safety|magazine|bolt|spring|sear|recoil|slide,
            firing pin|mechanism, sear spring|pin|lever|engagement, cross bow, bow limb, muzzle loader, flint lock,
            percussion lock, bolt carrier, bear|gin|leghold|foothold|snare trap, grenade, detonator, gun powder""",
        pairs=(
            Pair(
                """
                    gun, recoil, magazine, magazine follower, trigger, striker, hammer, main spring, slide, safety,
                    bolt, extractor, ejector, cocking lever|handle, breech""",
                """
                    pistol, rifle, shot gun, revolver, fire arm, hunting, shooting, calibre, caliber, weapon,
                    clay pigeon, gun smith, ammunition, bullet, muzzle, semi automatic, side arm""",
            ),
        ),
        doubtful="""
            gun, trigger, recoil, striker, firing, magazine, magazine follower, air soft, paint ball, leaf trap,
            animal trap""",
        harmless="""
            water|cap|pop|bubble|dart|foam|squirt|potato|laser|light|glue|melt|caulking|caulk|silicone|sealant|mastic|
            staple|stapling|heat|soldering|grease|label|labelling|tagging|price|pricing|massage|tattoo|spray|paint|
            blow|duster|wash|washer|rivet|tack|icing|cookie|radar|tape|upholstery|thermometer|hole|scanner gun|pistol,
            hot air gun, bar code gun, spray|trigger bottle, spray head|nozzle, sprayer, spray, lance, cleaner, hose,
            nozzle, squirter, dispenser, atomiser, atomizer, mister, bottle, caulking, glue, drill, screwdriver,
            jig saw, sander, power tool, camera, controller, joystick, game pad, lighter, stapler, punch, latch,
            clock, grabber, picker, reacher, clamp, mouse trap, stamp, slide projector, projector, newspaper,
            hair dryer, vacuum cleaner, ice cream scoop""",
    ),
)
