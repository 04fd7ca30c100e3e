# What the pages of templates/door/ say.

door-care = Care
door-no-script = Now and Trays are drawn in the browser. They need JavaScript.
door-waiting = Waiting for other work
door-stop = Stop
door-look-again = Look again
door-time = Time
door-name = Name
door-save = Save
door-remove = Remove { $title }
door-who = Who
door-back-shop = Back to the shop
door-to-now = To Now
door-to-the-screen = To the screen
door-helper-looks = This is a helper's device. It can view this screen, but change nothing on it.
door-screens = Screens
door-language = Language
