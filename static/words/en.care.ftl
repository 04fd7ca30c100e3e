# Cautions, start lists, reminders and their answers: care-<key> for each entry of runboard/run/care/cautions.json. Short
# enough for a row of a card, calm, and never a permission to leave a machine that runs.

## Beside the step
care-stay-and-watch = Stay and watch. Never leave it running.
care-laser-beam = Laser beam: eyewear for its wavelength, lid and guards shut.
care-fire = Fire risk: keep the extinguisher that its manual and the local code ask for in reach, on the exit side.
care-exhaust-and-air = Exhaust fan on, vented outdoors. Air assist on.
care-hot = Hot: let it cool before you touch it.
care-no-gloves = No gloves or loose sleeves near rotating cutters.
care-loose = Sleeves tight, hair tied back, no rings or cords.
care-hands-clear = Hands clear of the cutter: use a push pad.
care-kickback = Kickback: feed against the cutter's rotation, push block in hand, never stand in its line.
care-disconnect = Disconnect before changing the cutter.
care-eye-protection = Eye protection on.
care-hearing-protection = Hearing protection on.
care-dust-mask = Dust mask on, until the air is clear and the bin is emptied.
care-extraction = Dust extraction on.
care-blown-dust = No compressed air on dust or clothes: use the extractor's hose or a damp cloth.
care-manual = Read the machine's manual first.
care-crushing = Crushing: keep fingers clear where it closes.
care-sharp-edge = Sharp edges: handle with care.
care-electricity = Live parts inside: disconnect before opening.
care-respirator = Respirator on, with the filter that the label asks for.
care-spraying = Spraying: the mist burns and harms lungs. Respirator on, in a booth or outdoors, nothing near that sparks.
care-rags = Oily rags, pads, paper, brushes and dust can catch fire by themselves. Lay them flat in a single layer outdoors in the shade, away from buildings, or put them into water in the lidded metal can. Never in a pile, a bin, a pocket or a dryer.
care-solvent-air = Solvent in the air: no flame, laser, sanding, heater or charger in this room.
care-no-smoking = No smoking.
care-gloves = Protective gloves on, of the kind the label asks for.
care-air-the-room = Air the room, as the label says.
care-dry-not-cured = Dry to the touch is not cured.
care-climate = Temperature and humidity as the label asks: cold or damp air keeps it wet for longer.
care-oiled-dust = Dust of oiled wood can heat by itself: empty the bag outdoors, into water in the lidded metal can.
care-lifting = Heavy: lift with two people or use the trolley.
care-batteries = Charge batteries only while someone is with them, on something that will not burn. Unplug them before you lock up.
care-alone = Don't work alone: someone in earshot, or a phone on you and someone who asks after you at a set time.

## Before a laser or a heater starts
care-start-extinguisher = The extinguisher that its manual and the local code ask for is in reach, on the exit side
care-start-eyewear = Everybody in the room wears eyewear for this wavelength
care-start-door = Door shut; no children or pets here
care-start-guards = No guard, lid or switch is bypassed
care-start-exhaust = Exhaust fan is on, vents outdoors, and draws
care-start-bed = Bed clear and clean: no scraps, no dust, no soot
care-start-fresh = No freshly finished piece in it or near it
care-start-material = I know what it is, and it is not on the banned list. Not sure? Don't start

## Before a cutter starts
care-start-held = The work is held down, clear of the cutter's path
care-start-no-gloves = No gloves, no loose sleeves, hair tied back
care-start-small = Small pieces are in a holder, never in fingers
care-start-extraction = Dust extraction is on
care-start-cutter = Cutter tight, key out, guards on
care-start-eyes-ears = Eye and hearing protection on
care-start-stop = Emergency stop in reach

## Reminders
care-watch-check = Stay and watch. Confirm: no smoke, no smell, work still held, sound normal.
care-watch-check-laser = Stay and watch. Confirm: no flame, work flat, air assist and exhaust on.
care-watch-check-cnc = Stay and watch. Confirm: no smoke, work still held, extraction on, sound normal.
care-watch-check-heater = Stay and watch. Confirm: no smoke, heat as set, nothing near it that burns.
care-nobody-near = A machine is running with nobody near. Go to it now, and stay.
care-rags-start = Before you open the tin: have the lidded metal can with water ready, or a place outdoors in the shade.
care-rags-end = The coat is done. Deal with rags, pads, paper and brushes now: lay them flat in a single layer outdoors in the shade, away from buildings, or put them into water in the lidded metal can.
care-rags-morning = Look again at yesterday's rags, brushes and bins: cold, in a single layer or under water, no smell?
care-dust-bag = There is dust of oiled wood in the bag. Empty it outdoors now, into water in the lidded metal can.
care-smoulder-bin = A cut has scorched. Stop, check for embers, and empty the extractor's bin outdoors now.
care-smoulder-again = Look again at the extractor, its hose and the emptied dust: no smoke, no smell, no warmth?
care-power-back = Power cut: switch every machine off at its switch before the power comes back.
care-lockup-rags = Oily rags: spread in a single layer outdoors, or in water in the lidded metal can
care-lockup-power = Machines off, plugs out, compressor drained
care-lockup-chargers = No battery on a charger
care-lockup-bins = Dust bin emptied, outdoors
care-lockup-smoulder = Checked for smouldering (look and smell): laser, sander, bin
care-lockup-first-job = Tomorrow's first job is laid out

## What was done
care-rags-done-outdoors = Spread in a single layer outdoors, in the shade, away from buildings
care-rags-done-water = In water in the metal can, lid on
care-rags-done-none = No rags, pads, paper or brushes were used
care-rags-done-looked = Looked: cold, and no smell
care-dust-done-water = The dust is outdoors, in water in the metal can, lid on
care-dust-done-none = The bag was empty
care-smoulder-done-outdoors = Bin emptied outdoors
care-smoulder-done-cold = Looked again: no smoke, no smell, no warmth

## Always
care-emergency = Fire or injury: hit the emergency stop if you can do it safely. Get out. Call { $number }.
care-never-leave = Never leave a running machine that must be watched. Before you go: stop it, look at it, power off.
care-watch-note = It only shows that someone answered. It is not a fire watch.
care-manual-first = The machine's own manual comes first, then the local codes and licensed people.
care-which-extinguisher = Common practice: carbon dioxide beside electronics and a laser, water or foam for solid wood. The machine's manual and the local code say which; ask the fire service.
care-finish-label = Common practice: read the label.
care-not-food-safe = Nothing for food before the full cure. No finish is called food safe here, dry or cured. Ask its maker.
care-figures = For information. No figure here means that it is safe.
