"""Words that take the danger out of the words round them: toys, household things, what merely holds or shows a thing.

How far each of them reaches is said in `judgement`.
"""

from __future__ import annotations

# Make-believe: a toy's pistol, brake or lift hurts nobody. (A toy that raises steam does: see STILL_DANGEROUS.)
TOYS = """
    toy, play set|kitchen|house, puppet, marionette, doll, dollhouse, doll house, teddy, teddy bear, plaything,
    pretend, dummy, mock, fake, scale model,
    model railway|railroad|train|ship|boat|aircraft|airplane|plane|car|bus|truck|lorry|tractor|crane|locomotive|
    engine|kit|maker|theatre|village|tram|steam|helicopter|signal|soldier|lift|garage|house, diorama, dinky car,
    clockwork train|mouse|car|frog, wind up toy, building brick|block, marble run, marble machine, board game,
    pin ball, table foot ball, foosball, slot car, remote control car, rc car|boat|plane, stage prop, theatre prop,
    costume, fancy dress, cartoon, cuckoo, music box, musical box, jack in the box, nutcracker,
    christmas decoration|tree|crib, snow globe, automaton, automata, juggling, magic trick, water pistol|gun,
    cap gun|pistol, pop gun"""

# Real things of a home or a bench whose parts have dangerous names and do no harm.
HOUSEHOLD = """
    lamp, desk|table|floor|reading|wall|bedside|standard lamp, lantern, chandelier, light fitting, torch, flash light,
    clock, watch, alarm clock, metronome, radio, gramophone, phonograph, record player, turntable,
    tape deck|recorder|player, cassette, juke box, piano, pianola, organ, harp, guitar, violin, drum kit, hi hat,
    trumpet, cornet, euphonium, tuba, french horn, flugelhorn, trombone, bugle, saxophone, clarinet, flute, oboe,
    bassoon, bagpipe, accordion, concertina, melodeon, harmonium, harmonica, banjo, ukulele, musical instrument, pen,
    fountain|ballpoint|cartridge pen, pencil, mechanical pencil, pencil sharpener, stapler, hole punch, desk punch,
    type writer, printer, ink jet, plotter, sewing|knitting|embroidery machine, loom, spinning wheel, bobbin, camera,
    tripod, projector, telescope, microscope, binocular, umbrella, parasol, spectacle, sun glass, purse, handbag,
    suitcase, brief case, ring binder, letter opener, notebook, calculator, adding machine, cash register, keyboard,
    computer, mouse, joystick, telephone, phone, spray bottle, plant mister, watering can, garden hose, hose nozzle,
    garden sprayer, soap|lotion|paper|towel dispenser, tooth brush, hair clip|slide|dryer|curler|grip,
    clothes peg|line|airer|horse, ironing board, bird feeder|cage|house|table, mouse trap, biscuit tin, bread bin,
    pedal bin, rubbish bin, waste bin, tea pot, kettle, toaster, waffle iron, garlic press, can|tin|bottle opener,
    corkscrew, ice cream scoop, salad spinner, kitchen scale|timer|tong|drawer, cupboard, wardrobe, bureau, desk,
    bookcase, book shelf, picture frame, mirror, curtain, window blind, roller blind, blind, photograph album,
    jewellery|jewelry box, brooch, bracelet, necklace, ear ring, cuff link, tie clip, key ring, letter box, mail box,
    door bell, cat flap, dog lead, fishing rod|reel, tennis racket, golf bag, chess, puzzle, kaleidoscope,
    printing press, rubber stamp, book press, embosser, label maker, glue gun, caulking gun, sealant gun, label gun,
    price gun, mop, broom, carpet sweeper, vacuum cleaner, sofa bed, mattress, arm chair, dining chair, deck chair,
    coffee grinder, pepper mill, salt mill, egg timer"""

# What holds, shows, lights or names a thing: "brake light", "gun cabinet", "garage door remote", "pistol-shaped".
ASIDE = """
    light, lamp, lens, bulb, lantern, torch, reflector, label, sticker, decal, plaque, sign, poster, picture frame,
    postcard, painting, badge, emblem, logo, medal, trophy, mascot, figurine, statue, statuette, sculpture, ornament,
    book, book end, handbook, manual, brochure, diary, calendar, catalogue, catalog, certificate, folder, radio,
    speaker, stereo, clock, watch, thermometer, barometer, bell, horn, shelf, bookshelf, cabinet, cupboard, wardrobe,
    drawer, storage, box, tool box, storage box|bin|hook|rack|case|bag, crate, carton, tin, jar, basket, bag,
    pouch, sack, case, carry case, suitcase, trunk, holster, sheath, rack, display, display stand|case, stand,
    photo frame, lamp shade, tape dispenser, organiser, organizer, hanger, coat|key|cup|bag hook, cup holder,
    bottle holder, phone holder, phone mount, phone, camera, mirror, umbrella, parasol, canopy light, blanket, muff,
    cushion, rattle, mobile, remote, remote control, fob, key fob, key ring, key chain, keyring, toy, doll, puppet,
    game, puzzle, jigsaw, card, quiz, museum, exhibition, magazine rack, magazine holder, replica, shaped, shape,
    style, styled, themed, lookalike, costume, cake, candle, mug, coaster, tie clip, cuff link, brooch, music, film,
    song, paperweight, letter box, letterbox, door bell, doorbell, door mat, door knocker, knocker, wreath,
    letter plate, letter flap, house number, thermostat dial, radio dial, calculator, pencil, pen, notebook"""

# Compounds that have a danger's word in them and nothing of it in their meaning.
NOTHING = """
    pistol grip, gun metal, safety pin|razor|match|glass|spectacle, breaker bar, brake dust,
    car park|key|wash|boot|port|seller|dealer, tea|coffee trolley, dining car, fire place|wood|works|side|fly|engine,
    camp fire, light house, lift off|up|out, face|air|shop|weight lift, toy shop|store|room|museum|factory|cupboard,
    light duty|weight|gauge|pressure|touch|force|tension,
    control|junction|switch|button|gear|valve|breaker|transfer box, horse power, trigger warning|point|finger,
    interlock knit|fabric, guard dog|house, valve amplifier|amp|radio|set|tester, chain mail, work shop|bench,
    pressure fit|sensitive, press stud|fit, box spring, child play, station clock, coach house|bolt, bus stop|pass,
    bike shed|shop|path, dead man chest, bicycle bell|pump|basket|lamp|light|shop, train set|station,
    engine turned|room, search engine, model number|name|year, light switch, lamp holder, medicine cabinet|chest"""

# With these words near it even a toy or a model is the real thing: a model boiler holds real steam.
STILL_DANGEROUS = "steam, boiler"
