"""Guarded duties of buildings: doors, lifts, pressure, gas, mains, fire. See `duties` for how the table is read."""

from __future__ import annotations

from sourcing.safety.model import Duty, Pair

BUILDING_DUTIES = (
    Duty(
        name="garage door",
        harm="the door's weight or the stored energy of its springs can crush or strike whoever stands by",
        where_to_go="the door's maker or a qualified garage door fitter",
        sure="""
            garage|overhead|sectional|hangar door, up and over, up over door, roller|rolling shutter,
            roller|rolling shutter door, roller|roll up door, rolling|roll up gate, shutter|roller door, shop shutter,
            garage gate|shutter, door|gate counter balance, counter balance door|gate, canopy door, car port door,
            automatic|electric|powered|sliding gate, boom gate|barrier, level crossing barrier|gate, dock leveler,
            car park barrier""",
        pairs=(
            Pair("torsion spring|bar|shaft, counter balance, counter weight", "door, gate, shutter, garage"),
            Pair("door, shutter", "garage", asks=True),
        ),
        doubtful="counter balance, shutter, door torsion",
        harmless="camera, window shutter, letter box, curtain, blind, roller blind, desk, bureau, bread bin",
    ),
    Duty(
        name="lift",
        harm="a load or a cabin can fall on people or with them",
        where_to_go="the maker or a licensed lift or lifting-gear engineer",
        sure="""
            elevator, lift shaft|car|cabin|cage|door|gate|landing|pawl|brake|governor|buffer|pit|engineer|safety,
            passenger|goods|service|platform|scissor|vehicle|car|tail|boat|chair|ski|hospital|building|hotel lift,
            lift table|truck, fork lift, pallet truck|jack|stacker, dumb waiter, paternoster, winch, windlass,
            capstan, hoist, chain|lever block, block and tackle, come along, crane, davit,
            lifting gear|tackle|equipment|sling|magnet|eye|platform|clamp|beam|chain, escalator, cherry picker,
            aerial platform, cable car|way, ski tow, mast climber, over speed governor, engine hoist|crane,
            vehicle ramp""",
        pairs=(
            Pair("lift", "shaft, cabin, landing, passenger, pawl, governor, storey, door lock, counter weight"),
            Pair("pawl, ratchet", "lifting, load, boat trailer, windlass"),
        ),
        doubtful="lift, load pawl, load brake",
        harmless="""
            toaster, tone arm, record player, turntable, piano, organ, needle, presser foot, sewing machine, pen, lid,
            flap, tray, drop feed, washing line, clothes airer|dryer|horse, bottle, flag, bird, origami, paper, card""",
    ),
    Duty(
        name="pressure relief",
        harm="a vessel can burst and scald or strike whoever is near",
        where_to_go="the maker, or a competent person for pressure equipment",
        sure="""
            pressure relief, relief valve, safety valve|relief, blow off valve, blow down valve, pop off valve,
            pressure release valve, steam release valve, over pressure, excess pressure, burst|bursting disc,
            rupture disc, pressure vessel, pressure cooker, pressure canner, pressure fryer, autoclave,
            unloader valve, steam valve|boiler|generator, boiler valve|relief|safety, expansion valve|vessel,
            un vented cylinder, hydraulic accumulator, pressure limiter, pressure regulator, pressure reducing valve,
            temperature and pressure valve, weight valve, air receiver, gas cylinder valve, air brake compressor""",
        pairs=(
            Pair(
                "valve, vent, relief, cap, weight, release",
                """
                    steam, boiler, compressor, pressure cooker, water heater, hot water cylinder|tank, geyser,
                    espresso machine, espresso maker, moka pot, hydraulic, pneumatic, compressed air, steam cleaner,
                    air tank, high pressure, heating system, calorifier, immersion heater, keg, carbonator""",
            ),
        ),
        doubtful="pressure valve|switch, bypass valve, release valve, blow off, relief, safety valve disc",
        harmless="""
            air bed|mattress, balloon, steam iron, watering can, garden hose, tire pump, printing press, carving""",
    ),
    Duty(
        name="gas valve",
        harm="gas can escape, and burn, explode or suffocate whoever is in the building",
        where_to_go="the maker or a licensed gas fitter",
        sure="""
            gas tap|valve|cock|control|regulator|hob|cooker|stove|range|boiler|burner|fire|heater|ring|grill|barbecue|
            bottle|cylinder|meter|solenoid|governor|isolator|shut off|safety|fitting|appliance|furnace|geyser,
            gas oven valve|tap|thermostat|control|safety, propane, butane, lpg, natural gas, bottled gas, calor,
            camping|camp stove, cylinder regulator, gas lantern valve, burner valve|control|tap, hob tap|valve""",
        pairs=(
            Pair(
                "tap, valve, cock, regulator, control knob, knob shaft",
                "gas, hob, burner, methane, acetylene, hydrogen",
            ),
        ),
        doubtful="gas oven|knob|lamp|lantern|light|torch, blow torch|lamp",
        harmless="gas lighter, cigarette lighter, gas strut|spring|lift, balloon",
    ),
    Duty(
        name="flame failure",
        harm="gas can flow unburnt and explode or poison whoever is in the building",
        where_to_go="the maker or a licensed gas fitter",
        sure="""
            flame failure|supervision|safeguard|guard|out, flame sensing|protection device, ignition safety,
            thermocouple valve|magnet|safety, pilot valve|flame|light|safety, oxygen depletion sensor""",
        pairs=(Pair("thermocouple", "gas, flame, hob, boiler, heater, cooker, burner, stove, fire"),),
    ),
    Duty(
        name="circuit breaker",
        harm="a fault may not be switched off, and someone can be electrocuted or a fire can start",
        where_to_go="the maker or a licensed electrician",
        sure="""
            circuit breaker, miniature circuit breaker, rcd, rcbo, rccb, differential switch, mcb, mccb, gfci, elcb,
            afci, residual current, earth|ground leakage, ground fault, earth fault, contactor, over load relay|trip,
            thermal over load, motor starter, consumer unit, fuse box|board, breaker panel|box, distribution board,
            switch gear, mains breaker, arc chute, trip coil|unit, isolator switch, main|mains isolator,
            disconnect switch, load break switch, meter tail""",
        pairs=(
            Pair(
                "breaker, trip lever|spring|latch|bar|mechanism",
                "switch board, fuse, main, electrical, circuit, panel, overcurrent",
            ),
        ),
        doubtful="breaker, isolator",
        harmless="egg, ice|tie|code|horse|wave|record|car breaker",
    ),
    Duty(
        name="fire safety",
        harm="people may not be warned of a fire, kept from it or let out",
        where_to_go="the maker or a licensed fire-protection engineer",
        sure="""
            fire extinguisher, fire sprinkler, sprinkler head|bulb, smoke detector|alarm|vent|hatch|damper,
            heat detector, carbon monoxide alarm|detector, co alarm|detector,
            fire alarm|door|exit|escape|damper|shutter|curtain|hose|hydrant|bell, panic bar|bolt|hardware,
            push bar exit, crash bar, emergency exit|door|lighting, escape hatch""",
        pairs=(Pair("sprinkler", "ceiling, fire, office, warehouse"),),
        harmless="lawn|garden sprinkler",
    ),
)
