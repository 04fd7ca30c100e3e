# What the pages of templates/network/ say.

network-iphone = An iPhone or iPad
network-iphone-take = In Safari, take the profile and press Allow.
network-take-profile = Take the profile
network-download-configuration-profile = Download a configuration profile?
network-ignore = Ignore
network-allow = Allow
network-iphone-settings = Open { $b }Settings{ $end_b }. Near the top is { $b }Profile Downloaded{ $end_b }: press it, then { $b }Install{ $end_b }. Under More Details is its { $link }fingerprint{ $end_link }. The phone asks for its code, and says that the profile is not signed: it comes from the shop's own computer.
network-settings = Settings
network-profile-downloaded = Profile Downloaded
network-general = General
network-iphone-trust = Installed is not yet trusted. In Settings go to { $b }General{ $end_b }, { $b }About{ $end_b }, and at the very end { $b }Certificate Trust Settings{ $end_b }. Switch on { $name }.
network-certificate-trust-settings = Certificate Trust Settings
network-iphone-come-back = Come back here and go to the secure page, below. There press Share, then { $b }Add to Home Screen{ $end_b }.
network-share = Share
network-copy = Copy
network-seen-add-home-screen = Add to Home Screen
network-android = An Android phone or tablet
network-android-take = Take the certificate. It goes to the downloads. Opening it there does nothing: since Android 11 it can only be installed in the settings.
network-take-certificate = Take the certificate
network-android-settings = Open { $b }Settings{ $end_b } and search for { $b }CA certificate{ $end_b }. It is under Security, Encryption and credentials, Install a certificate. The words differ a little from maker to maker.
network-install-certificate = Install a certificate
network-ca-certificate = CA certificate
network-vpn-app-user-certificate = VPN and app user certificate
network-wi-fi-certificate = Wi-Fi certificate
network-android-warns = The phone warns that such a certificate could be used to read along, and asks for its lock. Without a screen lock it takes none. This certificate can vouch only for the names of the shop's computer and for addresses of private networks. If you want that, press { $b }Install anyway{ $end_b }.
network-data-wont-private = Your data won't be private
network-dont-install = Don't install
network-install-anyway = Install anyway
network-android-choose = Choose { $b }runboard.cer{ $end_b } in the downloads.
network-downloads = Downloads
network-android-come-back = Come back here and go to the secure page, below, in Chrome. (Firefox on Android has a list of its own.) There open the menu and press { $b }Add to Home screen{ $end_b } or { $b }Install app{ $end_b }.
network-bookmarks = Bookmarks
network-seen-add-home-screen-android = Add to Home screen
network-computer = A computer
network-computer-here = The shop's own computer needs none of this: at { $b }localhost{ $end_b } browsers let everything work as it is. On another computer:
network-computer-take = Take the certificate.
network-computer-windows = { $b }Windows:{ $end_b } open the file, Install Certificate, Current User. Put it in { $b }Trusted Root Certification Authorities{ $end_b }.
network-place-all-certificates = Place all certificates in
network-personal = Personal
network-trusted-root-certification-auth = Trusted Root Certification Auth…
network-computer-mac = { $b }Mac:{ $end_b } open the file. In Keychain Access open { $name }, and under Trust choose { $b }Always Trust{ $end_b }.
network-when-using-certificate = When using this certificate
network-use-system-defaults = Use System Defaults
network-always-trust = Always Trust
network-computer-linux = { $b }Linux:{ $end_b } in the browser's settings, under Privacy and security, Certificates, Authorities, import it for websites. In Firefox this works everywhere.
network-computer-come-back = Start the browser again, come back here and go to the secure page, below. The address bar or the menu there offers to install it.
network-on-phones = On phones
network-another-phone = Another phone opens { $b }{ $first_page }{ $end_b } and asks to be paired.
network-install-phone = Install on this phone
network-nobody-has-to = You don't have to do this
network-what-works = What works
network-as-it-is = as it is
network-with-it = with it
network-with-kept = Entries are kept until sent
network-yes = yes
network-with-alarms = Alarms sound in the open page, on a phone that is awake
network-with-screen = The screen stays on: on the wall page, and on Now while you watch a machine
network-no = no
network-with-offline = It opens when the server is away
network-with-icon = It is installed, with an icon on the home screen
network-with-read-along = Anyone on the network can read along and take over what this device may do
network-with-paired = After its last use, a lead's phone stays paired for
network-a-day = a day
network-400-days = 400 days
network-with-neither = Neither way can the page wake a phone that is locked. It always shows the time of day at which each machine ends, and you can put that into the phone's calendar.
network-pair-title = Pair a device
network-pair-one = { $wanted ->
    [lead] Pair a lead's phone
   *[other] Pair a helper's phone
  }
network-pair-camera = Point the other phone's camera at this, and open the link it shows.
network-pair-or-type = Or open { $b }{ $first_page }{ $end_b } on it, and type
network-pair-until = It works once, until { $ends_at }. Then the phone is listed under Devices on the Shop page.
network-revoked = Revoked { $revoked_at }.
network-pair-again = Pair it again
network-pair-again-what = For a device that has lost its pairing. In the log it stays the same device.
network-as-a-lead = Pair as lead
network-as-a-helper = Pair as helper
network-revoke = Revoke { $device }
network-revoke-what = From now on it is shut out. What it has not sent yet stays on it, and is sent if it is paired again.
network-revoke-own = { $b }This is the device in your hand.{ $end_b } Without another lead's phone, only the shop's computer can give a code.
network-devices = Devices
network-pair-a-helper = Pair a helper
network-pair-a-lead = Pair a lead
network-revoked-devices = Revoked
network-go-over = Go to the secure page
network-over-title = Go to the secure page
network-over-what = It opens with a code filled in: press 'Pair this device' there. It stays the same device. This page then no longer knows it.
network-open-secure-page = Open the secure page
network-over-if-warned = If the browser warns that the page is not private, this device does not trust the certificate yet. Do not go on there: come back and do { $link }the steps{ $end_link } once more.
network-over-or-type = Or open { $b }{ $secure }{ $end_b } on it, and type
network-over-until = It works once, for this device, until { $ends_at }.
network-plain = This page uses plain http: others on the network can read along. On { $link }the secure page{ $end_link } they cannot, once this device trusts the shop's certificate.
network-install-title = Install on this device
network-install = Install runboard on this device
network-install-secure = This is the secure page. If the browser did not warn you on the way here, this device trusts the shop's certificate.
network-now-install = Now install it
network-install-iphone = { $b }iPhone, iPad:{ $end_b } in Safari press Share, then { $b }Add to Home Screen{ $end_b }. The icon may ask for a code once: take one below and type it there.
network-install-android = { $b }Android:{ $end_b } in Chrome open the menu, then { $b }Add to Home screen{ $end_b } or { $b }Install app{ $end_b }.
network-install-computer = { $b }Computer:{ $end_b } the address bar or the menu offers to install it.
network-show-code = Show a code for this device
network-install-here = On the shop's own computer, at this address, the browser lets everything work as it is: its menu offers to install runboard. For a phone, point its camera at this code: it opens the steps below. The phone can compare the certificate with the fingerprint shown here.
network-install-why = A phone installs a page, and lets it work without its server, only if it trusts a certificate. This shop's computer has made its own. A few presses let this device trust it.
network-trust = Trust the shop's certificate
network-trust-see-first = It comes over the shop's network, so check { $link }whether it is the right one{ $end_link } before you trust it.
network-right-one = Is it the right one?
network-right-one-compare = The device shows a SHA-256 fingerprint in the certificate's details. Compare it with this one, as the shop's own computer shows it at { $b }http://localhost:{ $http_port }/welcome{ $end_b }:
network-fingerprint = Fingerprint
network-trust-no-more = To stop trusting it, remove it where it was installed. Its key stays on the shop's computer, in the data folder.
network-over-stays-paired = This device stays paired, as the same one. First check that the last line on Now says 'sent': what this page has not sent stays with it.
network-over-pair-there = Open { $link }{ $secure }{ $end_link } and pair this device there, with a code.
network-back = Back
network-pair-this = Pair this device
network-unpaired-title = Pair this device with the shop
network-paired-already = It is already paired, as { $access ->
    [lead] a lead's
   *[other] a helper's
  }. A new code changes that.
network-lead-too-long-ago = This lead's phone was last here more than a day ago. By plain http it is let in no longer than that. With a new code it is the same device again.
network-type-code = Type the code from the shop's computer, or from the Shop page of a paired phone. It works once, for ten minutes.
network-code = Code
network-what-call-device = Name of this device
network-paired-open-now = Already paired: open Now
network-no-code = I don't have a code
network-no-code-what = At the shop's computer, type { $code }runboard pair --data{ $end_code } and the shop's folder: it shows one. The first phone pairs with it, and so does a phone that replaces a lost one.
network-plain-unpaired = This page uses plain http: anyone on this network can read along and take over what this device may do here. So a lead's phone is let in only for a day after it was last used.
network-plain-with-certificate = With { $link }the shop's certificate{ $end_link } nobody can read along, and the phone stays paired.
network-install-later = Later, if you like: { $link }install runboard on this device{ $end_link }.

network-device = { $access ->
    [lead] A lead's
   *[other] A helper's
  } device{ $own ->
    [yes] , the one in your hand
   *[no] { "" }
  }. Paired { $paired_at }, last seen { $seen_at }.

network-one-device = { $access ->
    [lead] lead
   *[other] helper
  }, { $revoked_at ->
    [0] last seen { $seen_at }
   *[other] revoked { $revoked_at }
  }
