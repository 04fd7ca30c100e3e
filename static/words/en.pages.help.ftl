# What the page of help says (templates/help/). A phone keeps that page for when the server is away.

help-how = How this works
help-title = How runboard works
help-about = Each part begins with what to press.
help-kept = On the secure page, this help opens on a paired phone while the server is away too.
help-contents = On this page
help-call = Call { $number }
help-care = Every caution with its source: { $link }Cautions{ $end_link }.

## Now
help-now = Now
help-now-button = Do the one thing that stands first. Its big button ends it and starts the next.
help-now-wrong = Press 'Something is wrong' for a bad piece, a machine that stopped early, or something that ran out. What an emergency needs stands first there.
help-now-away = Press 'Called away' when you have to go. If a machine is running, stop it and make it safe first.
help-now-undo = 'Undo' takes your last entry back. You never have to press pause.
help-now-when = Each running machine shows the time of day at which it should be finished. Set any other clock by it too.
help-now-assign = Trays assigns a step to someone. The lead can ask to see their first piece before the rest follow.
help-now-finish = 'Finish for today' opens the closing checklist. It asks what was done with the rags, and says what tomorrow begins with.
help-now-aloud = Hands full? At the foot of Now, the phone can say the next step and each alarm aloud.

## When the server is away
help-away = When the server is away
help-away-first = Keep working, and leave the page open. Each entry is kept on the phone and sent when the server is back.
help-away-secure = On the secure page, Now, Trays and this help open again even if you closed them.
help-away-plain = On plain http they do not. Do not close or reload the page until the server is back.
help-away-alarms = The open page still counts machines down and sounds for those it knows. Nothing else does: no wall page, no channel outside, no notification, no sound on the computer.
help-away-conflict = An entry that does not fit what others entered is not lost. Both versions are listed under 'Conflicting entries'. Press the one that is right.
help-away-disk = Disk full at the server? The phone says so, keeps the entry and sends it again. Everything can still be looked at.
help-away-paper = Cards work on paper alone. Enter them later, with 'Enter a paper card' on the run's page.
help-away-clock = The server's clock dates every entry. A phone whose clock is wrong still works, and says so once.
help-away-ahead = Was the server's clock ahead? The lead's Now says what it left dated later than now. One press puts it right.

## The plan
help-plan = The plan
help-plan-first = Open Plan. It says when each run will be done, how sure that is, who does what, and what the bottleneck is.
help-plan-anew = A new plan is made after every entry that matters. Its first thing is what Now offers first.
help-plan-because = Now says what depends on that thing, and what anything else would cost.
help-plan-due = What is due comes first, even if everything is done later for it. An order line that will be late is named at once.
help-plan-clash = No plan possible? Now tells the lead what clashes.
help-plan-faster = 'Could it be faster?' says what no plan can beat. It also sets how often a piece is needed beside how often the slowest station gives one.

## Before a run
help-before = Before a run
help-before-first = Press 'Before a run' on Plan, and choose a question. Or drop a file on the product's page.
help-before-form = Each is a short form. The answer is one sentence, with the figures and a drawing to scale below it.
help-before-keep = Press to keep a part of it: a time in the route, a hole in the setup sheet, a jig with its machine. Nothing is saved before that.
help-before-program = { $b }A program's time{ $end_b } (RS-274, as NISTIR 6556 has it: .ngc, .nc, .tap): cutting, travelling, plunging, waiting and cutter changes apart. It says how much is in the air, how far it reaches, and each doubtful line with its number.
help-before-order = The path is drawn with its places numbered. You see what another order of visits would save, and the best that any order could. The program itself is never rewritten.
help-before-factor = Enter at the station how its machine moves. Once runs are measured, that machine's own factor is learned.
help-before-engraving = { $b }Engraving time{ $end_b }, from a drawing (SVG) or from sizes: the whole jig swept, row by row, each piece by itself, or the line traced, side by side.
help-before-jig = { $b }A jig{ $end_b }: places for a tray on the bed, with a snug or a loose fit, as a file to cut in millimetres. Where its corner mark sits is kept, and how to put it back.
help-before-more = { $b }A screw{ $end_b } in its stack (does the point stay inside, pilot, depth stop), { $b }an insert or magnet{ $end_b }, { $b }wood that moves{ $end_b }, { $b }feed and speed{ $end_b } beside your own good values.
help-before-figures = Makers' figures differ. Screws, inserts, cutters and good values are on the Shop page for you to change. What comes from a standard or a handbook says so.
help-before-command = The computer answers the same: { $code }runboard check{ $end_code }.

help-sheet = Before it starts
help-sheet-first = Open the run and press 'Check before it starts'.
help-sheet-rows = Boards, supplies, cutters, programs, jigs, screws, feeds and price: each is right, to be looked at, or a stop.
help-sheet-initials = Your initials let pass what is to be looked at. If something else is found there, they are asked for again. Nobody gets past a stop.

## Boards and sheets
help-boards = Boards and sheets
help-boards-first = On Shop, enter the boards you have and can buy. On the product's page, enter what it is made of: size, gap for the cutter, margin, grain.
help-boards-answer = Then 'Pieces from boards' says how many of which board to take and to buy. It draws each layout to scale, and says whether it is proved that no more pieces fit.
help-boards-drawing = A drawing (SVG, DXF) will do in place of a size. Its box is laid out, not its outline.
help-boards-take = One press takes how many a board holds into the route.
help-boards-lengths = 'Boards cut to length' makes a cut list: so many of each length.

## What it costs
help-price = What it costs, and its price
help-price-first = On Shop, under Money, enter your currency, fees and margin once. A machine's hour is in its own form. Then ask 'What it costs, and its price'.
help-price-lines = It adds up one good piece line by line: material, hands, watched time, machines, what is used up, packing, and the pieces that do not come good. Hours are the measured ones where there are any, and each line says so.
help-price-prices = It names a price by margin (a share of the price) and by mark-up (a share of the cost), fees included, with both formulas.
help-price-quote = It quotes 1 to 100 pieces, since setting up is spread over them. It says what today's price leaves, and what an hour of work earns at it.
help-price-tool = It says after how many pieces a new jig or tool has paid. There are no invoices: keep the shop's books elsewhere.

## What to buy
help-shopping = What to buy
help-shopping-first = On Shop, enter once what is used up: what a packet holds and costs, and how much you always keep. A step of the route says how much each piece uses.
help-shopping-list = 'What to buy', on Plan, sets what the open runs still need against what is there: how many packets, which boards, what it costs. It can be printed.
help-shopping-out = If something would run out half-way, you are told before you open the run, with the trays it is enough for. It stays at the head of Plan until it is there.
help-shopping-count = Count what is there now and then, all on one form. Press 'I bought this' when you come home. A helper may do both. What nobody counted is never taken for enough.
help-shopping-used = You never enter what was used. It follows from the counted pieces, scrap and rework included.
help-shopping-learned = Between two counts runboard learns what a piece really uses. After two pairs of counts and 20 pieces the list goes by that, and one press takes it into the route.
help-shopping-cutters = Enter cutters, blades and discs beside the supplies, with how long each lasts, in pieces or minutes of cutting. The list says before which tray one will be worn.
help-shopping-change = Fitted a new one? Press so there. Its wear starts at 0. The full start list and the first-piece check come next time.
help-shopping-undo = Pressed by mistake? Undo it from the notice that says it was written down.

## Cards and helpers
help-cards = Cards and helpers
help-cards-first = Open the run and press 'Cards'. Each tray gets one card, and each station one sheet.
help-cards-more = There are also jig labels, shelf labels for what dries, a run sheet to hang up, and packing slips without a price.
help-cards-paper = They print on A6 or 4 × 6 in, or several to an A4 or Letter page with crop marks, in English, German, Spanish or French.
help-cards-pdf = No PDF? The computer needs Debian's { $code }libpango-1.0-0{ $end_code }, { $code }libpangoft2-1.0-0{ $end_code }, { $code }fontconfig{ $end_code } and { $code }fonts-dejavu-core{ $end_code }. Without them the same pages print from the browser.
help-cards-code = A helper scans the card's code. It opens that one tray's current step, and nothing else. Typing the eight characters at { $code }/t{ $end_code } does the same.
help-cards-plain = It opens by plain http, since a stranger's phone does not trust the shop's certificate.
help-cards-ends = It ends with the run, after the hours you set, or when you shut it out on the Shop page. Then no other card lets that phone in. One card lets in twelve phones at a time.
help-cards-training = A helper starts a machine only after the lead has added it to their machine training, on Trays.
help-cards-enter = Worked on paper? Press 'Enter a paper card' and copy what is on it. You check it before it is saved.

help-hand-over = Handing over
help-hand-over-first = Open the run. 'Who gets what' says how many of each order line are ready, and what you can hand over first.
help-hand-over-ticks = Packed, Collected and Paid are one press each, after the run is over too. If not all is ready you are asked, and what is to follow stays in sight.
help-hand-over-slips = Packing slips print with the cards.

## Review
help-review = Review
help-review-first = Open Review and choose a run. Five lines and one picture say what came of it, what took longer than guessed, what was lost, what held it, and what to try first.
help-review-lines = Each line opens what it rests on: the times, everyone's day beside the planned one, what an hour of each thing would have been worth.
help-review-changes = Try a change on that run. One press and a Yes make it hold from the next run on.
help-review-made = 'Changes made' says whether each one worked, and takes it back.
help-review-log = The log can be saved as a file. Each person's noise and dust is listed day by day.

help-friend = A second pair of eyes
help-friend-first = Open a run's review and press 'A second pair of eyes', then 'Save the file'. Send it to a friend who makes things.
help-friend-file = It opens in any browser, without a network. It shows the first screen, each operation's figures, and the questions of work study: what, where, when, who, how, and why so.
help-friend-answers = Your friend answers with eliminate, combine, rearrange, simplify, or leave it. The answers come back as a small file, or as text in a message. Or make a PDF to write on.
help-friend-take = Take them in on the same page. They stand at their operation, and one press tries one on what was measured.
help-friend-names = Nobody is named in it, neither people nor customers, unless you tick that.
help-friend-code = A code shows the same review on a phone in the shop's network, without pairing, for as many days as you say. It opens nothing else. You can take it back at any moment. Its link is plain http.

## Alarms
help-alarms = Alarms
help-alarms-first = Turn the sound on once on each phone, by a press on Now. Then open Shop, Alarms, and send a test to each channel.
help-alarms-escalates = An alert rings on every open phone. Unanswered, it escalates: louder there, then to channels outside, then on the shop's computer. You set after how many minutes.
help-alarms-answer = One answer, on any phone, stops it everywhere. An answer given offline stops it when it arrives.
help-alarms-channel = A channel is one address, as the Apprise library writes them: mail, a push server in the house, or a webhook that lights a lamp. The Shop page says what could not be sent.
help-alarms-wall = The wall page shows machines, times and what needs someone on an old tablet, in letters for three metres. It flashes once a second for ears under defenders. One tap there confirms a look at a watched machine.
help-alarms-table = What reaches you, and what does not
help-alarms-reaches = Reaches you
help-alarms-fails = Does not
help-alarms-page = Tone and vibration in the page
help-alarms-page-reaches = the page is open, its sound is on, the screen is on
help-alarms-page-fails = phone locked or muted; iPhones never vibrate for a page
help-alarms-app = The installed app
help-alarms-app-reaches = as the page does; without the server too, for machines it knows
help-alarms-app-fails = phone locked or muted
help-alarms-wall-page = The wall page
help-alarms-wall-reaches = you can see it
help-alarms-wall-fails = its screen sleeps, or the server is away
help-alarms-calendar = An entry in your phone's calendar
help-alarms-calendar-reaches = phone locked, or far from the shop's Wi-Fi
help-alarms-calendar-fails = the machine ends at another time than estimated
help-alarms-outside = Channels outside
help-alarms-outside-reaches = as well as that channel does; most need the internet
help-alarms-outside-fails = the server is away, or the channel is
help-alarms-push = A notification on a locked phone: 'On this phone' on Shop
help-alarms-push-reaches = the shop and the phone have the internet, on the secure page (iPhones: the app on the home screen)
help-alarms-push-fails = the maker's server is slow or drops it, the phone saves its battery or must not disturb
help-alarms-computer = The shop's computer
help-alarms-computer-reaches = you hear it, and it has a loudspeaker
help-alarms-computer-fails = the server is away
help-alarms-clock = A clock you set by the time shown at each machine
help-alarms-clock-reaches = always
help-alarms-clock-fails = you forget to set it
help-alarms-maker = A notification goes through a server of the browser's maker. That server sees that something was sent, when, and to which phone. What it says is encrypted for that phone.
help-alarms-key = The key that signs notifications, { $code }push-key.pem{ $end_code } in the data folder, is in no backup. After restoring elsewhere, turn them on again on each phone.
help-alarms-stay = No alarm replaces staying with a machine that must be watched.

## Signals
help-signals = Signals from machines
help-signals-first = Open Shop, Signals, choose the station and make a token. It is shown once. Set below how many watts the machine seems to have finished.
help-signals-what = A smart plug or a sensor may say that a station is running or has stopped, or how many watts it draws. Runboard then asks whether it has finished.
help-signals-asks = A paused laser looks finished, and a jammed cutter looks running. So only a person's answer changes anything, and nothing is ever switched.
help-signals-http = By HTTP it sends a number of watts, 'on', 'off', or JSON:
help-signals-mqtt = By MQTT, set the broker and each station's topic on the same page. It is off until then.
help-signals-often = Let a plug report at least once a minute.
help-signals-secret = The broker's password, and what is secret in a channel's address, lie in the data folder as they are, and in its backups. No page shows them again.

help-button = A button at a station
help-button-first = Open Shop, Signals, the station, 'Button', and make a token for it. Put the address and the token into a cheap Wi-Fi button or a foot switch.
help-button-what = It presses Now's big button for the person working at that station. Open pages sound a tone.
help-button-try = Try it from any computer in the shop:
help-button-back = A second press within five seconds takes the first one back.
help-button-never = It never starts a machine that asks for a start list. It never answers an alarm or a care reminder. It does nothing when two people work there.
help-button-stop = It stops no machine, and is no emergency stop.

## Phones and network
help-phones = Phones and network
help-phones-first = On a new phone, open the address that the shop's computer prints, such as { $code }http://192.168.1.20:8210/{ $end_code }.
help-phones-code = The first time, the computer shows a code too. Point the phone's camera at it, open the link, press once. Nothing has to be installed, and nothing needs the internet.
help-phones-name = Most phones also find { $code }http://runboard-NAME.local:8210/{ $end_code }, NAME being the computer's.
help-phones-nothing = The phone finds nothing? It may be in another Wi-Fi: a guest Wi-Fi keeps phones apart. Or the computer's firewall blocks ports 8210 and 8211.
help-phones-plain = On plain http, anyone in the shop's Wi-Fi can read along, and with that take over a phone's session. From a lead's phone that is everything, pairing their own phone too.
help-phones-day = So on plain http a lead's phone is let in for one day after its last use. Then it needs a new code, and is the same device again.
help-phones-taken = Someone who took a session over stays in while they use it, until you revoke the device.

help-secure = The secure page and the app
help-secure-first = Open Shop, On phones, 'Install on this phone'. A few pictured steps let an iPhone, an Android phone or a computer trust the shop's own certificate. Compare its fingerprint.
help-secure-what = Then nobody can read along, and a lead's phone stays paired for 400 days. It is still the same device, and can install the page as an app. What works with the certificate and without is listed there.
help-secure-once = { $code }runboard serve{ $end_code } makes the shop's authority once, in { $code }DIR/certificates{ $end_code }. It renews its own certificate by itself. The authority can vouch only for this computer's names and for private addresses.
help-secure-keep = Keep that folder: it is in no backup. If it is lost or damaged, plain http goes on and the Shop page says so. Once it is made anew, every phone has to trust it again.
help-secure-address = Give the computer a fixed address in the router. An installed app belongs to the address and port where it was installed.
help-secure-menus = Written after the makers' documentation and tested in Chromium. Menus differ from phone to phone.

help-pairing = Pairing phones
help-pairing-first = On Shop, under Devices, press 'Pair a helper' or 'Pair a lead'. The other phone scans the QR code or types the eight characters.
help-pairing-once = A code works once, for ten minutes. Until then that phone sees a welcome page and nothing else.
help-pairing-wrong = Ten wrong codes make that one address wait ten minutes. It keeps nobody else out.
help-pairing-table = Who may do what
help-pairing-both = A helper's phone and a lead's may
help-pairing-lead = Only a lead's phone may
help-pairing-work = work at Now and Trays, answer alerts
help-pairing-look = look at Plan, Review and Shop
help-pairing-ask = ask before a run: a program's time, the stock, a price
help-pairing-change = keep an answer; open, change and end runs; change shop data; save and import files
help-pairing-devices = pair, rename and revoke devices; set alarms, channels and signals
help-pairing-revoke = Devices shows when each was last seen. A revoked one is let in no more, from that moment on. What it has not sent stays on it, and is sent if you pair it again: it is the same device then.
help-pairing-lost = Lost the only lead's phone? Type { $code }runboard pair --data DIR{ $end_code } at the computer. It shows a code of twelve characters, which always works. Then revoke the lost phone.
help-pairing-cookies = Deleting a browser's cookies unpairs it. A link in a message may open the welcome page on a paired phone once: press 'Already paired: open Now' there.

## Backup
help-backup = Backup
help-backup-first = Press 'Back up now' on Shop, or do nothing: each night at three, or at its next start, the server makes one in { $code }DIR/backups{ $end_code }.
help-backup-kept = Each is one dated file, proved whole before it counts. The last thirty are kept. Shop turns red if the last one is older than two days or failed, and says why.
help-backup-elsewhere = A disk can die with its backups on it. Now and then make one on another disk: { $code }runboard backup --data DIR --to /media/stick{ $end_code }. Nothing there is ever removed.
help-backup-list = Beside each lies a list of digests, { $code }shop-….sha256{ $end_code }. Take it along: { $code }sha256sum -c{ $end_code } finds what a disk has spoilt.
help-restore = Restoring a backup
help-restore-first = Stop runboard. Then type { $code }runboard restore --data DIR FILE{ $end_code }. On another computer it works too, into a new folder.
help-restore-after = What was entered after the backup is not in it. Phones paired after it have to be paired again. Phones revoked after it have to be revoked again.
help-restore-asks = The command lists whom the backup lets in, marks whom you revoked since, and asks. Say no where you do not know each of them, or where the backup was in other hands: who had it can make the codes of its cards. Then every phone pairs anew, and cards are printed again.
help-restore-list = A backup that is not as its list says is refused. Links, pipes and changed files in it are left out and named. The list finds mistakes and spoilt disks. Someone who changes a backup on purpose can change its list too.

## Files and sizes
help-files = Shop data as a file
help-files-first = On Shop, press 'Save as a file' or 'Import shop data'. You see what would change before anything does.
help-files-run = A run's file adds that run and nothing else. What it says of another shop is left out. A run worked at the same time and machines as one here is refused.
help-files-size = A file may have 100 MB with its pictures, and 12 MB without them.
help-files-folder = Everything is in the data folder. Other users of the computer cannot read it. On Windows, see to that yourself. If it was open to them it is closed at the next start, and the Shop page says so.
help-files-own = Give the folder to runboard alone. If it holds other folders too, only the shop's own files are closed. A folder of another user is left as it is.

help-sizes = How large things may be
help-sizes-run = A run: 2000 good pieces ({ $pieces } with extras), { $first } trays as it opens and { $trays } in all, { $orders } order lines, { $loads } loads over all its steps.
help-sizes-shop = A route: { $steps } steps. The shop: { $stations } stations, { $people } people, { $products } products.
help-sizes-larger = What is larger is refused with a sentence that says so.
help-sizes-device = A device that sends too much, too slowly or nothing at all is let go. The others are answered meanwhile.

## What runboard is not
help-not = What runboard is not
help-not-what = It is a list, a clock and a notebook. It is no interlock, no fire alarm, no fire watch. It replaces no training, no machine's manual, no local code and no licensed person.
help-not-leave = Where a machine must be watched, stay and watch. Nothing on any screen replaces that.
help-not-asks = A laser asks every two minutes and a CNC every ten whether someone is watching, unless the shop says otherwise. That shows that someone answered, and is no fire watch.
help-not-watch = If you confirm a look, you watch from then on, and need your hands near.
help-not-until = It asks about running machines, and about rags of a finish that heats by itself, until someone answers. No end of a run, new route, midnight or entry made offline ends that.
help-not-unknown = A finish nobody wrote down counts as one that heats by itself and fills the air with solvent. A material on the banned list never starts under a laser. One that nobody named is asked about.
help-not-alarm = An alarm in a page reaches you only while the page is open, on a phone that is awake and not muted.
