# What the pages of templates/shop/ say.

shop-alarms = Alarms
shop-outside = Outside: { $channels }
shop-ring-on-phones = They ring on the open phones, and then on this computer.
shop-change = Change
shop-how-alerts-climb = how alerts escalate
shop-open-wall-page = Open the wall page
shop-on-this-phone = On this phone
shop-push-off = Send alerts to this phone when it is locked, too.
shop-push-on = Alerts are sent to this phone when it is locked, too.
shop-push-forbidden = This browser was told not to show notifications. Allow them for this page in its settings, then load the page again.
shop-push-impossible = This browser cannot be sent alerts while it is locked. That needs the secure page; on an iPhone or iPad, the app on the home screen.
shop-push-send = Send alerts to this phone when it is locked
shop-push-stop = Send this phone no more alerts
shop-push-what = What to expect of it
shop-push-what-it-is = It needs the internet, at the shop and at the phone. It goes through a server of the maker of your browser, which sees that something was sent, when, and to which phone, but not what it says. It may come late, or not at all on a phone that saves its battery. On an iPhone or iPad it works only for the app on the home screen. It replaces no other alarm.
shop-signals-from-machines = Signals from machines
shop-signals-may = A smart plug or a sensor may say that a machine has stopped.
shop-set-up = Set up
shop-set-up-signals = signals from machines
shop-alarms-how = An alert rings on every open phone. If nobody answers, it escalates. One answer, on any phone, stops it everywhere.
shop-alarms-without-answer = If nobody answers, after (minutes)
shop-alarms-louder = Louder on the phones
shop-alarms-outside = To the channels below
shop-alarms-computer = On the shop's computer itself
shop-alarms-hint = Leave a line empty and that stage never comes. A missed look at a watched machine climbs in a third of the time. A wait that is over does not sound on the computer; a hold that is over, and a supply, stay on the phones.
shop-channels-outside = Channels outside
shop-no-channels = None yet. A channel is one address: mail, a push server in the house, a webhook that lights a lamp.
shop-send-test = Send a test
shop-send-test-to = to { $channel }
shop-remove = Remove
shop-add-channel = Add a channel
shop-what-call = What to call it
shop-address = Address
shop-address-hint = As the Apprise library writes addresses: { $code }mailto://…{ $end_code }, { $code }ntfy://server/topic{ $end_code }, { $code }json://192.168.1.20/lamp{ $end_code } for a webhook. What is secret in it is kept on the shop's computer and not shown again.
shop-add-it = Add it
shop-shops-computer = The shop's computer
shop-let-sound-now = Test the sound
shop-copies = Copies
shop-copies-when = One is made each night at three while runboard runs, else when it next starts; the last thirty are kept on this computer. Take one to another disk now and then, with { $code }runboard backup{ $end_code }.
shop-make-copy-now = Make a copy now
shop-begin-with-usual = Begin with what is usual for its kind
shop-begin-with-usual-hint = Common practice only: { $thing ->
    [screws] makers differ, so measure yours, or put in what its packet says.
   *[other] read the label of yours, and put in what it says.
  }
shop-back-shop-without-saving = Back to the shop without saving
shop-remove-person = The log keeps what was done, under a nameless id.
shop-remove-thing = What is written down elsewhere stays. A { $thing } that something still needs cannot be removed.
shop-read-file = Read a file
shop-nothing-changed = Nothing is changed.
shop-read-book = This is the book of { $b }{ $book }{ $end_b }. Taking it replaces the book that is here now; the log and every run stay.
shop-new = New: { $names }
shop-different = Different: { $names }
shop-gone = Gone: { $names }
shop-read-run = This is the run { $b }{ $run }{ $end_b } of { $product_name }.
shop-read-run-known = All of it is here already: taking it changes nothing.
shop-read-run-new = Taking it adds this run, and changes nothing else here.
shop-read-run-adds = The run is here already: taking it adds what happened to it since.
shop-run-people = Pressed by { $people }
shop-run-stations = Its loads stand at: { $stations }
shop-read-what = A file that was saved here, or with { $code }runboard export{ $end_code }: a shop's book, or a run. You see what would change before anything does.
shop-file = File
shop-look-at-it = Look at it
shop-take-book = Replace with this
shop-take-run = Take this run
shop-leave-everything = Leave everything as it is
shop-screen = Shop
shop-four-steps = Four short steps and a run can open: { $b }rooms{ $end_b }, { $b }stations{ $end_b }, { $b }people{ $end_b }, and then a product on the { $link }Plan{ $end_link } screen. Or { $link_file }read a book{ $end_link } from a file.
shop-about = { $time_zone }, lengths in { $units ->
    [in] inches
   *[other] millimetres
  }, emergency { $emergency }. When not all can be in time: { $late }.
shop-change-about = the shop's name, zone, units
shop-laser-and-noise = Never in a laser: { $forbidden }. Noise limit { $noise_limit_db } dB(A), { $noise_exchange_db } dB exchange rate.
shop-change-limits = forbidden materials and the noise rule
shop-money-now = Money: { $currency ->
    [0] no currency yet
   *[other] { $currency }
  }, { $of ->
    [cost] a mark-up of { $margin } % on the cost
   *[price] a margin of { $margin } % of the price
  }.
shop-change-money = currency, margin, fees
shop-add-a = Add { $list ->
    [inserts] an
    [jobs] an
   *[other] a
  } { $thing }
shop-look-there = Look there
shop-care = Cautions, their sources, and what runboard is not
shop-whole-book = All shop data
shop-whole-book-what = Everything above and every product, in one file: to keep, or to take to another computer.
shop-save-file = Save as a file
shop-read-from-file = Import shop data
shop-signals-title = Signals, { $station }
shop-signals-of = Signals: { $station }
shop-token-once = { $b }{ $sensor }{ $end_b }: its token, shown once and kept nowhere. Copy it now.
shop-to-try-it = To try it:
shop-never-heard = Nothing was heard of it since the server started.
shop-when-ended = When it looks ended
shop-below-watts = Below so many watts
shop-for-seconds = for so many seconds
shop-for-seconds-hint = A plug should report at least once a minute. A sensor that says 'off' is believed at once.
shop-tokens = Tokens
shop-revoke = Revoke
shop-no-tokens = None: nothing may say by HTTP how it stands.
shop-what-speaks = Sensor name
shop-plug-at = Plug at the { $station }
shop-make-token = Make a token
shop-back-signals = Back to the signals
shop-signals-all = Signals
shop-signals-what = A smart plug or a sensor may say that a station runs or has stopped. Runboard then asks whether it has ended; it never decides that, and it never switches anything. A paused laser looks ended, and a jammed cutter looks running.
shop-stations-first = Stations come first: add one on the { $link }Shop{ $end_link } page.
shop-nothing-heard = no signal yet
shop-mqtt = MQTT
shop-listen-broker = Listen to a broker
shop-broker = Broker
shop-port = Port
shop-by-tls = By TLS
shop-user = User
shop-password = Password
shop-password-kept = One is kept. Leave this empty to keep it.
shop-password-as-it-is = It lies on the shop's computer as it is, for the broker wants it so.
shop-topic = Topic
shop-topic-of = of { $station }
shop-place-of-watts = Where in a JSON message its watts stand
shop-place-of-watts-hint = Empty where the message is a number, { $code }on{ $end_code } or { $code }off{ $end_code }. Else the names with dots between: { $code }meter.power{ $end_code }

shop-usual = { $kind }: common practice, { $thing ->
    [screws] makers differ
   *[other] read the label
  }. Where it is from: { $source }{ $link ->
    [0] { "" }
   *[other] { " " }({ $link }page{ $end_link })
  }.

shop-run-pieces = { $wanted } pieces wanted, { $started } started in { $trays ->
    [one] { $trays } tray
   *[other] { $trays } trays
  }; it is { $state }
shop-run-events = { $events ->
    [one] { $events } new event
   *[other] { $events } new events
  }, between { $first }, { $first_at }, and { $last }, { $last_at }
shop-run-changes = { $changes ->
    [one] { $changes } change
   *[other] { $changes } changes
  } to try, for its Review
shop-run-left-out = Left out, since it is about the shop and not the run: { $kind }{ $count ->
    [one] { "" }
   *[other] , { $count } times
  }

shop-nothing-written = nothing written down

shop-heard-last = Heard last { $at }{ $watts ->
    [no] { "" }
   *[other] : { $watts } W
  }.
shop-heard = heard { $at }{ $watts ->
    [no] { "" }
   *[other] , { $watts } W
  }

shop-mqtt-state = { $state ->
    [off] Off.
    [connecting] It is being connected.
    [connected] Connected.
    [lost] The connection is lost; it is tried again.
   *[refused] The broker refused: look at user and password.
  }
shop-jig-again = Draw it again, or change it
shop-jigs-here = Jigs that lie on it

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
