"""Guarded duties of vehicles, and of what holds or lifts them. See `duties` for how the table is read."""

from __future__ import annotations

from sourcing.safety.model import Duty, Pair

VEHICLES = """
    vehicle, car, automobile, van, lorry, truck, bus, minibus, taxi, ambulance, motor cycle|bike|home|scooter, moped,
    scooter, quad bike, go kart, kart, tractor, trailer, caravan, camper, horse box, pick up truck, snow mobile,
    golf cart|buggy, bicycle, bike, push|mountain|road|e bike, tricycle, trike, tandem, cyclist, train, tram,
    locomotive, railway|railroad wagon|carriage|coach, fork lift, four wheel drive, excavator, digger"""

ENGINES = """
    engine, engine head, motor cycle|bike|scooter, moped, car, van, lorry, truck, tractor, kart, mower, lawn mower,
    outboard, diesel, petrol, gasoline, two|four stroke, cylinder head, cam shaft, push rod, generator, rotavator,
    strimmer"""

VEHICLE_DUTIES = (
    Duty(
        name="vehicle suspension",
        harm="the rider or driver can lose control, and a spring under load can strike whoever works on it",
        where_to_go="the vehicle's maker or a qualified mechanic",
        sure="""
            vehicle|car|automobile|van|lorry|truck|bus|motorbike|moped|scooter|bicycle|bike|trailer|caravan|
            tractor suspension, motor cycle suspension, shock absorber, coil over, air suspension, leaf spring,
            wish bone, suspension strut, suspension fork, front|rear fork|shock, fork leg|spring|stanchion|tube,
            road spring, axle spring, rear suspension, front suspension, suspension arm bush, anti roll bar,
            torsion bar axle, bogie spring,
            car|automobile|van|lorry|truck|bus|motorbike|moped|trailer|caravan|vehicle spring,
            car|vehicle coil spring, motor cycle coil|spring, mono shock, shock spring, strut spring,
            suspension seat post, helper spring""",
        pairs=(
            Pair(
                "suspension, strut, shock, swing arm, control arm, damper, fork, axle, wheel spring, coil spring",
                VEHICLES,
            ),
        ),
        doubtful="suspension, damper",
        harmless="""
            clock, pendulum, lamp, light, chandelier, hammock, ceiling, file, folder, filing, bridge, speaker,
            loudspeaker, microphone, washing machine, drum, fridge, tuning|garden|pitch|salad|toasting|carving fork,
            garden, turntable""",
    ),
    Duty(
        name="brake",
        harm="something that must stop may not, or may stop too hard, and throw, crush or strike someone",
        where_to_go="the maker, or a qualified mechanic for that vehicle or machine",
        sure="""
            brake, hand|foot|parking|park|disc|disk|drum|rim|coaster|air|band|hub|wheel|cantilever|caliper brake,
            caliper piston|spring|pin, brake caliper|lever|pedal|shoe|drum|pad|disc|cable|cylinder|line, park pawl,
            braking system|mechanism|device""",
        pairs=(Pair("caliper, pad, braking", VEHICLES),),
        doubtful="braking",
        harmless="""
            sewing machine, bobbin, loom, knitting machine, spinning wheel, yarn, thread, ribbon,
            tape recorder|deck|player, cassette, reel, turntable, record player, gramophone, projector, film,
            typewriter, printer, plotter, marble run, pencil, paper, swift, kite, fishing, music, clock, metronome,
            spool, hair""",
    ),
    Duty(
        name="valve train",
        harm="the engine can fail at speed, and take control or drive away from whoever relies on it",
        where_to_go="the engine's maker or a qualified engine mechanic",
        sure="""
            valve train|gear|guide, engine valve, exhaust valve,
            valve rocker|tappet|lifter|collet|cotter|keeper|retainer, rocker arm|shaft, tappet, over head valve|cam,
            cam shaft, cylinder head, rocker cover, hydraulic lifter, timing chain|belt tensioner,
            cam chain tensioner, push rod tube""",
        pairs=(Pair("valve, inlet|intake valve, poppet, rocker, governor, reed", ENGINES),),
        doubtful="valve, inlet|intake valve, poppet valve, cam follower",
        harmless="""
            trumpet, cornet, euphonium, tuba, horn, flugel horn, bugle, trombone, saxophone, instrument, organ,
            accordion, harmonium, concertina, melodeon, tap, faucet, mixer tap, toilet, cistern, flush, ball cock,
            float, shower, bath, sink, basin, aquarium, fish tank, pond, fountain, watering can, hose, garden,
            irrigation, water butt, rain barrel, sprayer, spray bottle, soap, lotion, pump dispenser, dispenser, tire,
            tube, bicycle tube, ball, foot ball, balloon, air bed, air mattress, paddling pool, bottle, flask,
            drinking bottle, vacuum jug, coffee bag, wine, radiator, lamp, radio, amplifier,
            valve cap|radio|amplifier|amp|holder|base|tester|set, thermionic""",
    ),
    Duty(
        name="vehicle control",
        harm="the driver, rider or pilot can lose control of the vehicle",
        where_to_go="the vehicle's maker or a qualified mechanic",
        sure="""
            steering, throttle, accelerator, gas pedal, clutch pedal|lever|plate|spring, carburettor,
            engine governor|stop, bonnet|hood catch|latch|release|lock, landing gear, under carriage, aircraft,
            airplane, helicopter, glider, aileron, flight control, tow release, side stand, centre stand, kick stand,
            tail gate strut|lift, boot|trunk|hatch|bonnet|hood strut, trunk torsion,
            gear selector fork, drive belt tensioner, rudder|tiller lock""",
        pairs=(
            Pair("clutch, gear lever|change|selector, tensioner, governor, bonnet, hood, pedal", VEHICLES),
            Pair("spring, coil spring, torsion bar", "axle, chassis"),
        ),
        harmless="game, controller, simulator, paper, kite, sewing machine, piano, organ, harp",
    ),
    Duty(
        name="towing",
        harm="a trailer can come loose on the road",
        where_to_go="the maker or a qualified vehicle mechanic",
        sure="""
            tow|towing hitch|bar|ball|hook|coupling|bracket|pin|eye, trailer hitch|coupling|lock|latch|socket|head,
            fifth wheel, hitch lock|pin|head|ball|latch, ball coupling|hitch, pintle, break away cable,
            railway|train coupling, jockey wheel, three point hitch, load strap, ratchet strap|tie down, lashing""",
    ),
    Duty(
        name="jack or ladder",
        harm="a load or a person can fall",
        where_to_go="the maker or a competent inspector of lifting and access equipment",
        sure="""
            car|trolley|bottle|floor|scissor|vehicle|hydraulic|transmission jack, jack|axle stand, jacking point,
            ladder lock|locking|catch|hook|latch|stay|hinge|rung|pawl|stabiliser,
            extension|loft|attic|telescopic|roof|folding|step ladder, loft|attic stair|hatch, scaffold, scaffolding,
            tower scaffold, work platform, wall|murphy|loft bed, fold|pull down bed, squat rack, weight bench""",
        pairs=(Pair("jack, ramp", VEHICLES),),
        doubtful="ladder, safety catch",
        harmless="""
            brooch, bracelet, necklace, jewellery, jewelry, jacob ladder, chicken|hamster|bird|rope ladder,
            fish ladder, tin opener, box, pen, knife block""",
    ),
)
