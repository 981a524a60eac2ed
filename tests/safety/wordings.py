"""Wordings of needs and how they must be judged: invented, as somebody at a bench would write them."""

# A failure could hurt someone, and the words say so.
GUARDED = """
spring of the brake caliper
brake-caliper-return
return spring for the front brake
garage door torsion spring
a toy box next to the garage door torsion spring
gas tap spring
valve spring of a moped engine
recoil starter spring
syringe pump plunger spring
child seat buckle
stairlift safety gear
pram brake pedal
microwave door latch
spring of the guard of my table saw
seat for a child in the car
tap of the gas hob
car spring
spring for the car
counterbalance spring of an up-and-over door
the big coil above our garage door snapped
tension spring on the left side of the garage roller door
spring that lifts the sectional door of the workshop
rear coil spring of a hatchback car
shock absorber spring for my mountain bike
front fork spring of a 125 cc motorcycle
leaf spring of a boat trailer
spring inside the bicycle's disc brake
handbrake lever spring for a van
return spring of the brake shoes in a drum brake
brake pedal return spring, tractor
spring for the parking brake of a camper
lathe spindle brake spring
inlet valve spring of a lawnmower engine
exhaust valve spring for a moped
rocker arm spring in a diesel engine
ratchet pawl spring of a hand winch
lift door lock spring in our block of flats
elevator governor spring
spring of the safety pawl on a chain hoist
pressure cooker safety valve spring
spring in the relief valve of an air compressor
steam boiler safety valve
espresso machine boiler relief valve
recoil spring of a shotgun
magazine spring for a .22 rifle
trigger spring of an air pistol
firing pin spring
main spring for an air rifle
spring of the plunger in a syringe pump
inhaler spring
knee prosthesis extension spring
side rail latch of a hospital bed
surgical clamp spring
gate spring of a climbing carabiner
trigger spring of a climbing cam
lanyard hook of a safety harness
rope grab cam spring
harness adjuster of the baby's car seat
child bike seat lock spring
retractable guard of a circular saw
mower discharge flap spring
anti-kickback pawl of a table saw
chain brake spring of a chainsaw
dead man's handle on a lawn mower
dead-man lever of a floor polisher
microwave oven door switch spring
washing machine door lock spring
emergency stop button return spring
gas tap of a cooker
spring in the gas regulator of a camping stove
knob shaft spring of a gas hob
boiler gas valve spring
flame failure device spring
thermocouple safety valve of a gas heater
toggle spring of a circuit breaker
trip spring in an RCD
contactor return spring
recoil starter spring of a generator
pull-cord starter of a leaf blower
wheelchair brake spring
footrest lock of a wheelchair
stair lift footplate switch spring
pram fold lock spring
pushchair brake pedal spring
stroller frame latch
parachute ripcord pin spring
seat belt retractor spring
throttle return spring of a motorbike
trolley jack release valve
crossbow trigger spring
fire door closer spring
fire extinguisher valve spring
scuba regulator second stage spring
cot drop side catch
trampoline spring
steering column lock spring
hitch lock of a caravan
two-hand control button on a punch press
The spring that balances the weight of my tilting garage door
torsion shaft spring, double garage
strut spring of an old estate car
damper of the rear wheel on my scooter
spring in the seat tube shock of a full suspension bike
bicycle brake: the little spring that opens the arms
brakes of a cargo bike, arm return
caliper on my motorbike sticks, needs the small spring
cable brake of a child's bicycle
trailer overrun brake spring
hand brake of a railway wagon
band brake on a winch drum
mower engine: governor spring
spring below the valve cap in a motorcycle cylinder head
spring for the tappets of a moped
goods lift gate spring
pawl of a boat trailer winch
ratchet stop for a hand-cranked hoist
chair lift grip spring
spring for the blow-off valve on our water heater
hot water cylinder temperature relief
vent weight of a pressure canner
overpressure spring in an espresso maker's boiler
spring for the hammer of an old revolver
striker of a bolt-action rifle
detent of a safety catch on a hunting rifle
the gun's trigger is slack
infusion pump latch
asthma inhaler canister return
bed rail release in a nursing home
artificial leg lock
wiregate krab: gate spring of a climbing karabiner
spring in the belay device
fall arrester lanyard
tree surgeon's harness clip
infant carrier base lock
spring in the lock of a booster seat
blade cover return on a mitre saw
kick-back fingers of a rip saw
guard over the grinding wheel, return spring
chainsaw hand guard
hold-to-run handle of a cultivator
machine stops when you let go: dead man pedal
safety interlock on a laser cutter lid
front loader washing machine, door hook spring
cover interlock of a food processor
e-stop latch
gas fire control tap
hob safety valve, the flame goes out
butane stove valve
pilot flame safety of a water heater
fuse board breaker toggle
earth leakage trip lever
motor contactor spring
lawnmower pull start
rewind spring for the starter of an outboard
kick-starter return, old motorcycle
push-to-lock brake on a wheelchair
armrest latch for a wheel chair
buggy fold catch for twins
baby carriage brake
spring of a baby gate latch
window restrictor child lock
bus door emergency release
lap bar of a fairground ride
bike child trailer hitch
clevis spring, drum parking brake
spring for a tandem's drag brake
horse-drawn carriage brake return
e-bike rear swing arm spring
caravan corner: axle spring broke
quad bike steering damper spring
accelerator cable return coil, tractor
spring that shuts the throttle on a lawn mower
rope hoist pawl in a barn
dumbwaiter door lock
platform lift for a theatre stage, brake spring
grain elevator gate
car lift safety latch
overhead crane hook latch
up & over garage-door cone
spring of the sliding gate motor clutch
pop-off valve of a hot tub boiler
autoclave door seal spring
keg pressure relief
hydraulic press relief spring
air receiver drain safety valve
muzzleloader lock spring
bb gun piston spring
harpoon gun trigger
hearing loss patient's insulin pen spring
dialysis clamp spring
foot prosthetic heel spring
dentist's chair release
stretcher leg lock
crampon binding spring
ski binding heel spring
paraglider harness buckle
zip-line trolley brake
ladder rung lock, telescopic
loft ladder spring
high chair tray catch
drop-side cot lock
baby bouncer spring
seesaw spring
angle grinder dead man paddle switch
brushcutter guard
wood chipper feed stop bar safety switch
meat slicer blade guard
nail gun nose safety
press-brake guard
tumble drier door switch
laser safety interlock
gas barbecue valve
propane heater thermocouple valve
oven flame supervision device
mains isolator spring
mcb toggle return spring
smoke alarm test button
sprinkler head in a warehouse
panic bar of a fire exit
generator recoil rope spring
chain saw starter pawl
rollator brake lever
mobility scooter tiller
stair-lift seat swivel
pram wheel lock
stroller fold latch
diver's demand valve
oxygen bottle regulator
spring which holds up the garage's overhead door
the pair of torsion springs over my double garage door
roll-up gate of a loading bay, balance spring
hub brake actuator on a cargo trike
brake arm spring, folding bicycle
spring for the cable of a scooter's rear brake
bandsaw wheel brake
anti-roll bar link of a van
motorcycle monoshock
rear shocks on a moped
camper van front coil spring
intake valve spring, two-cylinder tractor
rocker shaft spring
hydraulic tappet spring
governor rope tension spring for an elevator
winch ratchet dog
safety brake of a builder's hoist
relief valve, hydraulic log splitter
steam cleaner cap valve
spring-loaded safety valve for a moka pot
shotgun ejector
sear of a target pistol
bolt spring for a hunting rifle
air gun piston
IV infusion pump door
spring in the dosing mechanism of an insulin pen
orthopaedic leg brace knee lock
carabiner sleeve
spring in a self-locking descender
harness chest strap clip for roof work
toddler seat of a bicycle, lock
car seat base for a baby
guard of a bench grinder
swing-away blade guard of a table saw
inertia chain brake band
deadman lever on a snow blower
spring for the interlock of a guard door
door latch hook in a microwave
gas cock of an old stove
thermocouple magnet valve in a gas hob
differential switch trip, RCCB
molded case circuit breaker handle
pull starter on a hedge trimmer
parking brake of a wheelchair
seat swivel lock on the stairlift
folding lock of a twin pram
""".strip().splitlines()

# The guard's own words in another role, or none of them.
INNOCENT = """
must lift a 250 g lid
brake light lens
brake light lens spring; nothing to do with the brakes
garage shelf latch
toy gun
valve radio knob
lift-off lid of a sewing box
gas mask display stand
brake pad storage box latch
garage radio dial
model railway signal lift arm
valve cap display clip
trigger of a spray bottle
trigger of a garden hose nozzle
nail gun carry case
elevator music box
pistol-grip caulking gun trigger
desk lamp suspension arm
bicycle bell
wheelchair ramp storage hook
pram blanket clip
medical book cabinet latch
circuit breaker label door
safety pin
child's toy
trumpet valve
suspension file drawer
lift-up flap
forklift toy
gun-metal box
glue gun trigger return spring
breaker bar ratchet
to brake the fall of a ball in a marble run
recoil of a stamp
gas-lamp replica
pressure-fit lid
relief printing press
doorbell
door latch
letterbox flap
oven knob
cartridge pen
spring in the museum of medical history
not a brake
no brake
lever that lifts the lid of a pedal bin
lift the needle of a record player
lift-out tray of a sewing basket
a hinged lid that has to lift 300 g
spring to lift the flap of a letterbox
brake light switch cover of a toy car
lamp socket of the brake light
tin for brake pads: lid spring
coat hook in the garage
drawer of a garage workbench
garage shelf bracket
radio for the garage: volume knob
garage calendar clip
toy pistol trigger
child's cap gun hammer
water pistol trigger return spring
trigger of a plant mister
trigger for a garden sprayer
glue gun trigger
sealant gun release catch
pistol grip of a hose nozzle
valve amplifier tube socket clip
valve of a trumpet
third valve of a euphonium
cornet valve return spring
knob of an old valve wireless
suspension file rail clip
pendant lamp suspension
balanced arm of a desk lamp
car ashtray lid
toy car wheel
model train coupling
toy crane hook
doll's pram wheel
doll's wheelchair
miniature garage for toy cars
medicine cabinet door catch
medical dictionary bookend
doctor's bag clasp
desk punch return lever
hole punch
stapler magazine follower
ball-point pen
retractable ball pen spring, gas station giveaway
battery contact of a torch
battery compartment of a radio
cupboard door catch
sewing machine foot lever
piano pedal return
clothes peg
mousetrap
umbrella runner
door handle return spring
letter-box flap
kitchen scale platform
toaster carriage lift spring
cassette recorder eject button
camera shutter button
typewriter key
gun cabinet shelf clip
rifle-shaped key hanger
bicycle bell thumb lever
bicycle lamp bracket
bike basket clip
saddle bag clasp
boat-shaped music box
elevator button of a dollhouse
lamp with a parachute ornament
fire engine toy ladder
ladder of a toy fire engine
safety razor handle
lock of a diary
relief map frame clip
steam train poster frame
pressure pad of a cassette
harness for a small dog: clip
key ring carabiner
ID badge lanyard clip
wheelchair-ramp sign stand
stairs carpet rod clip
pram-shaped cake stand
circuit diagram drawer
trip counter reset button
breaker of eggs, kitchen gadget
gas-lantern style candle holder
oven timer knob
bread box lid that stays open
rocker switch of a table lamp
cam of a marble run
guard's whistle
fireplace tool stand
the seat of a piano stool
swing arm of a wall lamp
curtain hoist cord cleat
chess clock lever
trap door of a puppet theatre
bow of a violin
jack socket of a headphone
plug of a guitar amplifier
clutch bag clasp
clutch pencil
starter tray for seedlings
hinge that lifts up the seat of a piano bench
return spring of the lever lifting the tea bag
lifts easily off its base: cake stand lid
lift handle of a casserole
lamp for a bicycle, brake-light function
red reflector next to the brake lever
a hook on the wall near the garage door
bag for a bicycle pump
the button of a car radio
car-shaped money box lid
box of chocolates shaped like a pistol
bottle rack in the lift lobby
key cabinet beside the circuit breaker panel
latch of the cabinet that holds the fire extinguisher
holder for a wheelchair user's umbrella
toy ambulance stretcher
play kitchen with a gas hob
doll house stairlift
model of a fire engine
wind-up tin motorcycle toy
clockwork car
spring in a child's toy pram
toy chainsaw pull cord
toy garage lift
marble lift of a marble run
pencil case clasp
brake on a fishing reel? no, the reel's bail arm
yarn brake of a knitting machine
brake of a tape deck reel
flugelhorn valve
clarinet key spring
flute key needle
saxophone octave key
pressure plate in a photo frame
pressure gauge dial
waist belt buckle of a costume
seat of a garden chair
baby's music mobile
baby monitor battery lid
children's book display
high street map drawer
safety lamp replica
first aid box lid
nurse doll arm
hospital museum turnstile coin slot
museum poster of a surgical clamp
surgical-steel earring clip
breaker switch label holder
interlocking puzzle tray
interlocked rings, magic trick
microwave dish lid clip
washing machine detergent drawer
washing machine timer knob
dishwasher basket clip
oven shelf clip
fridge door shelf flap
door chime striker
church bell clapper model
door stop in the hallway
lever arm file
magazine rack
photo magazine of a slide projector
record stylus lifter
trigger point massage roller
finger-trap toy
clay pot trigger sprayer
staple gun refill box
hot glue pistol
caulking gun thumb release
paint spray gun cup lid
nail file
gunmetal cigarette case lid
shotgun-shell shaped bottle opener
steam iron water tank lid
coffee tamper
sprinkler for the lawn
hose reel
jar lifter
weightlifting trophy lid
chain of a necklace
cam lock of a suitcase
jack plug
jumping jack
pogo stick
hand bell
boiler room key rack
starter motor of a model aeroplane kit
parachute toy soldier
ski pole basket
tent pole
backpack buckle
fishing harness clip
safety goggles box
gear lever knob of a game controller
steering wheel of a pedal car toy
wheel of a tea trolley
brake van of a model railway
scooter bell
pushchair toy bar rattle
pram parasol clip
no brake, just a drawer runner
This isn't for a vehicle brake; it holds a note pad
it has nothing to do with a lift or a hoist, it is a paper punch
pumps soap from a bottle
lotion pump
valve of a bicycle tube
valve in a garden tap
float valve for a cistern
clip on the brake light cover glass
garage door remote, battery spring
garage wall clock hand
garage door bell push
sign for the lift
lift-the-flap book hinge
hand lift of a curtain rail
forklift truck toy mast
wine bottle opener lever lifts the cork
box lid stays lifted
tray to lift out the tea leaves
brake fluid poster frame clip
car window sticker dispenser
bus ticket punch
coach lamp replica bracket
train whistle toy
railway lantern handle
motorcycle helmet shelf hook
bicycle bell spring
bicycle basket buckle
toy tractor steering wheel
model lorry suspension
suspended ceiling lamp clip
suspension lamp counter weight
valve radio dial cord spring
trombone water key spring
French horn valve lever
tuba valve
accordion key
ocarina stand
toy cannon
popgun cork
pistol shaped cigarette lighter
gun barrel pencil holder
magazine holder
rifle sling photo frame
starting blocks
hammer of a piano
trigger of a label maker
price gun feed
glue-gun stand
hot-melt gun trigger return
garden hose trigger
window cleaning spray trigger
medical museum coin tray
doctor's toy kit
hospital radio station knob
nurse's fob watch pin
harness bell for a rocking horse
dog harness clip
karabiner key ring
rope light clip
climbing rose trellis hook
doll's car seat
teddy's pushchair
toy high chair
nativity crib figure
playing card shuffler
swing of a bird cage
blade cover of a razor
pencil sharpener blade holder
circuit board game
tie breaker bell
breaker bar
switch of a bedside lamp
gas mask poster
gas station toy
gasket tin lid
boilersuit button
steam engine painting
pressure cooker recipe book stand
relief map box
safety razor
child's music box
stair carpet clip
wheelbarrow toy
chair of a dollhouse
fire poker stand
smoking pipe lid
the arm lifts a 40 g stylus
lifting lid of a tea caddy
lid lift knob for a music box
spring holding the brake light bulb
brake-light lens clip of a caravan model
hook for hanging a garage broom
garage radio aerial clip
drawer in the garage bench, runner catch
trigger of a bathroom cleaner spray
trigger of a watering lance
silicone gun trigger
toy sword, toy rifle and toy pistol rack
foam dart gun
pistol-shaped water toy
rifle range poster clip
valve wireless set tuning knob
valve keys of a cornet
slide projector lever
suspension filing cabinet
hanging lamp with a pull-down suspension
child's piano stool
child's desk lid
kids' scissors
baby photo album
pram toy bell
doll stroller
wheelchair basketball trophy lid
stairs gate of a dollhouse
medical journal rack
hospital corridor clock
syringe-shaped pen
circuit training timer
gas-lit look lantern toy
gas meter box key hook
door knob of a cupboard
door knocker
oven glove hanger
microwave recipe book
washing line pulley
washing-up brush holder
harness racing board game
climbing plant support clip
carabiner shaped key holder
lanyard for a whistle
saw-tooth picture hanger
mower toy
chain of a bicycle ornament
recoil pad of a rubber stamp
starter kit box of a chess set
seatbelt cover teddy
airbag packing tape dispenser
fire brigade toy helmet
parachute lampshade
""".strip().splitlines()

# A danger's word with nothing that decides: one question is asked.
DOUBTFUL = """
valve spring
trigger spring
lift spring
door spring in the garage
gas oven knob
spring for a trigger
the valve's return spring
recoil spring
suspension spring
harness spring
starter spring
counterbalance spring
car seat spring
guard spring
syringe spring
breaker spring
magazine spring
ladder spring
airsoft spring
coil for shutters of the shop front
bonnet safety catch of a saloon
""".strip().splitlines()
