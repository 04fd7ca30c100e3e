# What the pages of templates/shop/ say.

shop-alarms = Alarms
shop-outside = Outside: { $channels }
shop-ring-on-phones = They ring on the open phones, then on this computer.
shop-change = Change
shop-how-alerts-climb = how alerts escalate
shop-open-wall-page = Open the wall page
shop-on-this-phone = On this phone
shop-push-off = Alerts can also be sent to this phone when it is locked.
shop-push-on = Alerts are also sent to this phone when it is locked.
shop-push-forbidden = This browser is not allowed to show notifications. Allow them for this page in its settings, then load the page again.
shop-push-impossible = This browser cannot be sent alerts while it is locked. That needs the secure page; on an iPhone or iPad, the app on the home screen.
shop-push-send = Send alerts to this phone when locked
shop-push-stop = Stop alerts to this phone when locked
shop-push-what = What to expect
shop-push-what-it-is = It needs the internet, at the shop and at the phone. It goes through a server of your browser's maker. That server sees that something was sent, when, and to which phone, but not what it says. It may come late, or not at all on a phone that saves its battery. On an iPhone or iPad it works only for the app on the home screen. It replaces no other alarm.
shop-signals-from-machines = Signals from machines
shop-signals-may = A smart plug or a sensor can say that a machine has stopped.
shop-set-up = Set up
shop-set-up-signals = signals from machines
shop-alarms-how = An alert rings on every open phone. If nobody answers, it escalates. One answer, on any phone, stops it everywhere.
shop-alarms-without-answer = If nobody answers, after (minutes)
shop-alarms-louder = Louder on the phones
shop-alarms-outside = To the channels below
shop-alarms-computer = On the shop's computer
shop-alarms-hint = Leave a line empty to skip that stage. A missed look at a machine escalates three times as fast.
shop-alarms-quiet = Holds and supplies stay on the phones. The computer makes no sound when a wait ends.
shop-channels-outside = Outside channels
shop-no-channels = None yet. A channel is one address: mail, a push server in the house, a webhook that lights a lamp.
shop-send-test = Send a test
shop-send-test-to = to { $channel }
shop-remove = Remove
shop-add-channel = Add a channel
shop-what-call = Name
shop-address = Address
shop-address-hint = Written as for the Apprise library: { $code }mailto://…{ $end_code }, { $code }ntfy://server/topic{ $end_code }, or { $code }json://192.168.1.20/lamp{ $end_code } for a webhook.
shop-address-secret = A secret in it stays on the shop's computer and is not shown again.
shop-add-it = Add it
shop-shops-computer = The shop's computer
shop-let-sound-now = Test the sound
shop-copies = Backup
shop-copies-when = One is made each night at three if runboard is running, else when it next starts. The last thirty are kept on this computer. Now and then, save one to another disk with { $code }runboard backup{ $end_code }.
shop-make-copy-now = Back up now
shop-begin-with-usual = Start with what is usual for its kind
shop-begin-with-usual-hint = Common practice only: { $thing ->
    [screws] makers differ, so measure yours, or enter what its packet says.
   *[other] read the label of yours and enter what it says.
  }
shop-back-shop-without-saving = Go back without saving
shop-remove-person = The log keeps what they did, under an id without a name.
shop-remove-thing = What is recorded elsewhere stays. A { $thing } that something still needs cannot be removed.
shop-read-file = Import a file
shop-nothing-changed = Nothing was changed.
shop-read-book = These are the shop data of { $b }{ $book }{ $end_b }. They replace the shop data here. The log and every run stay.
shop-new = New: { $names }
shop-different = Different: { $names }
shop-gone = Gone: { $names }
shop-read-run = This is the run { $b }{ $run }{ $end_b } of { $product_name }.
shop-read-run-known = All of it is already here: importing it changes nothing.
shop-read-run-new = Importing it adds this run, and changes nothing else here.
shop-read-run-adds = The run is already here: importing it adds what happened since.
shop-run-people = Entered by { $people }
shop-run-stations = Stations of its loads: { $stations }
shop-read-what = A file saved here or with { $code }runboard export{ $end_code }: shop data, or a run. You see what would change before anything does.
shop-file = File
shop-look-at-it = Show what would change
shop-take-book = Replace with this
shop-take-run = Import this run
shop-leave-everything = Leave everything as it is
shop-screen = Shop
shop-about = { $time_zone }, lengths in { $units ->
    [in] inches
   *[other] millimetres
  }, emergency { $emergency }. If not all can be on time: { $late }.
shop-change-about = the shop's name, zone, units
shop-laser-and-noise = Never in a laser: { $forbidden }. Noise limit { $noise_limit_db } dB(A), { $noise_exchange_db } dB exchange rate.
shop-change-limits = banned materials and the noise limit
shop-money-now = Money: { $currency ->
    [0] no currency yet
   *[other] { $currency }
  }, { $of ->
    [cost] a mark-up of { $margin } % on the cost
   *[price] a margin of { $margin } % of the price
  }.
shop-change-money = currency, margin, fees
shop-friend-phone = A friend with their own phone: { $link ->
    [0] show them a tray's code, once a run is open.
   *[other] { $link }show them a tray's code{ $end_link }.
  }
shop-friend-often = Someone who comes often: { $link }pair a helper's phone{ $end_link }.
shop-add-a = Add { $list ->
    [inserts] an
    [jobs] an
   *[other] a
  } { $thing }
shop-look-there = Open it
shop-care = Cautions, their sources, and what runboard is not
shop-whole-book = All shop data
shop-whole-book-what = Everything above and every product, in one file: to keep, or to move to another computer.
shop-save-file = Save as a file
shop-read-from-file = Import shop data
shop-signals-title = Signals, { $station }
shop-signals-of = Signals: { $station }
shop-token-once = { $b }{ $sensor }{ $end_b }: its token, shown only once and stored nowhere. Copy it now.
shop-to-try-it = To try it:
shop-never-heard = No signal since the server started.
shop-when-ended = When it seems to have finished
shop-below-watts = Below (watts)
shop-for-seconds = For (seconds)
shop-for-seconds-hint = A plug should report at least once a minute. A sensor that says 'off' is believed at once.
shop-tokens = Tokens
shop-revoke = Revoke
shop-no-tokens = None. Nothing can report on it by HTTP.
shop-what-speaks = Sensor name
shop-plug-at = Plug at the { $station }
shop-make-token = Make a token
shop-back-signals = Back to Signals
shop-signals-all = Signals
shop-signals-what = A smart plug or a sensor can say that a station is running or has stopped. Runboard then asks whether it has finished. It never decides that, and it never switches anything. A paused laser looks finished, and a jammed cutter looks running.
shop-stations-first = Add a station first, on the { $link }Shop{ $end_link } page.
shop-nothing-heard = no signal yet
shop-mqtt = MQTT
shop-listen-broker = Listen to a broker
shop-broker = Broker
shop-port = Port
shop-by-tls = Use TLS
shop-user = User
shop-password = Password
shop-password-kept = One is saved. Leave this empty to keep it.
shop-password-as-it-is = It is stored on the shop's computer as plain text, because the broker wants it so.
shop-topic = Topic
shop-topic-of = of { $station }
shop-place-of-watts = Where the watts are in a JSON message
shop-place-of-watts-hint = Leave empty if the message is a number, { $code }on{ $end_code } or { $code }off{ $end_code }. Otherwise the names with dots between: { $code }meter.power{ $end_code }

shop-usual = { $kind }: common practice, { $thing ->
    [screws] makers differ
   *[other] read the label
  }. Source: { $source }{ $link ->
    [0] { "" }
   *[other] { " " }({ $link }page{ $end_link })
  }.

shop-run-pieces = { $wanted } { $wanted ->
    [one] piece
   *[other] pieces
  } wanted, { $started } started in { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
  }; { $state }
shop-run-events = { $events ->
    [one] { $events } new event
   *[other] { $events } new events
  }, between { $first }, { $first_at }, and { $last }, { $last_at }
shop-run-changes = { $changes ->
    [one] { $changes } change
   *[other] { $changes } changes
  } to try, for its Review
shop-run-left-out = Left out, because it is about the shop and not the run: { $kind }{ $count ->
    [one] { "" }
   *[other] , { $count } times
  }

shop-nothing-written = none listed

shop-heard-last = Last heard { $at }{ $watts ->
    [no] { "" }
   *[other] : { $watts } W
  }.
shop-heard = heard { $at }{ $watts ->
    [no] { "" }
   *[other] , { $watts } W
  }

shop-mqtt-state = { $state ->
    [off] Off.
    [connecting] Connecting…
    [connected] Connected.
    [lost] Connection lost. Trying again.
   *[refused] The broker refused: check user and password.
  }
shop-jig-again = Draw it again, or change it
shop-jigs-here = Jigs for it

# A button at a station

shop-button-at = Button at the { $station }
shop-button-what = A cheap Wi-Fi button or a foot switch presses Now's big button for the person working here.
shop-button-list = It never starts a machine that asks for a start list.
shop-button-care = It never answers an alarm or a care reminder.
shop-button-two = It does nothing when two people work here.
shop-button-back = A second press within five seconds takes the first one back. Open pages sound a tone.
shop-button-none = No button here yet.
shop-button-name = What presses?
shop-button-make = Make a token for a button
shop-button-try = Put this address into the button, or try it from any computer in the shop:
shop-button-mqtt = By MQTT: set the button's topic under Signals, and let the button send the token as its message.
shop-button-topic = Topic of its button
shop-button-topic-hint = The button sends its token as the message, or in JSON as token.

# The first evening

shop-first-title = Your shop, on one page
shop-first-about = Untick what you don't have. All of it can be changed later.
shop-first-who = Who works here?
shop-first-lead = Your name
shop-first-friend = A friend who helps
shop-first-friend-hint = Leave blank if you work alone.
shop-first-rooms = Rooms
shop-first-near = Main room
shop-first-far = Second room
shop-first-walk = Minutes to walk between them
shop-first-stations = Stations
shop-first-stations-hint = A machine in the second room can't be watched from the main room.
shop-first-is-far = in the second room
shop-first-hours-hint = Used to plan ahead. Each day you say your own hours.
shop-first-hours = When are you there?
shop-first-rest = Time zone { $time_zone }, lengths in { $units }, emergency number { $emergency }. Change them under Shop.
shop-first-save = Save and add a product
shop-first-from-file = Import shop data instead
shop-first-open = Describe the shop on one page
shop-first-steps = First steps
shop-first-step-shop = Describe your shop
shop-first-step-product = Add a product
shop-first-step-run = Open a run
