# What is said of jigs: of one that is asked about, of one that is kept, and of those of a run.

before-kind-jig = The jig
before-about-jig = Places for a tray’s pieces on the bed, as a drawing to cut, with a corner mark by which it is put back.
before-keep-jig = Keep it with { $station } as { $name }
before-keep-jig-step = Keep it with { $station } as { $name }, and use it at { $step }
before-keep-jig-again = Keep it in place of { $name } at { $station }
before-kept-jig = { $name } is kept with { $station }.
before-kept-jig-step = { $name } is kept with { $station }, and is the jig of { $step } now.
before-kept-jig-again = { $name } is kept as it is now.

before-jig-head-one = One place on a plate of { $wide } by { $high }.
before-jig-head-below = { $places } places one below the other, on a plate of { $wide } by { $high }.
before-jig-head-beside = { $places } places side by side, on a plate of { $wide } by { $high }.
before-jig-head-grid = { $places } places, { $columns } across and { $rows } down, on a plate of { $wide } by { $high }.
before-jig-piece = Each place is { $length } by { $width } and { $clearance } larger both ways.
before-jig-place-size = Each place { $length } by { $width }
before-jig-kerf = The beam takes { $kerf }: places are cut { $half } inside their line and the plate { $half } outside, so that both come out right.
before-jig-corner = The corner that its mark points at lies at x { $x }, y { $y } of the machine, the other at x { $end }, y { $y }.
before-jig-corner-later = Once it lies on the bed, read off the machine the x and y of the corner that its mark points at, and write them down with the jig: then it can be put back months later.
before-jig-already-rows = { $step } has a jig already: { $jig }, { $places } places, { $pitch } from one row to the next.
before-jig-already-columns = { $step } has a jig already: { $jig }, { $places } places, { $pitch } from one place to the next.
before-jig-already-one = { $step } has a jig already: { $jig }, with one place.
before-jig-room = The bed would take { $columns } across and { $rows } down.
before-jig-groups = The file is in millimetres. What is cut is in the group ‘cut’, what is marked in the group ‘mark’, dashed. Set power and speed for each yourself.
before-jig-bed-unknown = How large the bed is, is not written down at the station, so it is not known whether the jig fits.
before-jig-too-large = It does not fit: the plate is { $wide } by { $high }, and there are { $bed_wide } by { $bed_high }. { $count ->
    [0] Not one place fits with this margin.
    [one] One place fits.
   *[other] { $columns } across and { $rows } down would.
  }
before-jig-too-few = It has { $places } places for { $pieces } pieces.
before-jig-outline = The places are boxes around the outline in the file, not its shape.
before-jig-usual = Clearance and kerf differ by wood, beam and focus (common practice, no source). Cut one place first and try a piece in it.
before-jig-file = jig
before-jig-download = Save the jig as SVG
before-jig-table = Middle of each place, from the corner
before-jig-column-place = Place
before-jig-column-x = Right
before-jig-column-y = Down
before-jig-column-machine-x = Machine x
before-jig-column-machine-y = Machine y
before-jig-drawn = Jig { $name }
before-jig-bed = The bed, { $wide } by { $high }
before-jig-drawing = To scale: the plate and its places solid, the bed dashed, the corner marks heavy.

before-jig-caution-watch = Cutting the jig takes fire more easily than engraving: stay at the laser and watch it the whole time it runs.
before-jig-caution-air = Extraction on before the beam and until the smoke is gone.
before-jig-caution-material = Cut it from a sheet that you know: no PVC, and no plywood or board whose glue or coating is unknown.

before-jig-back = Putting it back
before-jig-back-zero = Send { $station } to its own zero, with the beam off.
before-jig-back-corner = Move the head to x { $x }, y { $y } and lay the jig so that the corner its mark points at is right under it.
before-jig-back-straight = Move the head to x { $end }, y { $y } and turn the jig until the corner at the other end is under it.
before-jig-back-clamp = Clamp it, and look at the first corner once more.
before-jig-back-trial = Mark tape or a scrap in place 1 before the first piece.
before-jig-no-corner = Nobody wrote down where its corner lies on { $station }. Lay it where it belongs, read off the machine the x and y of the corner that its mark points at, and write them down here.

before-found-jig-none = { $step }: its pieces lie in a jig that is not written down.
before-found-jig-too-large = { $step }: the jig { $jig } reaches beyond the bed of { $station }.
before-found-jig-elsewhere = { $step }: the jig { $jig } is kept with { $station }, and the step is done elsewhere.
before-found-jig-places = { $step }: a load has { $pieces } pieces, and the jig { $jig } has { $places } places.
before-found-jig-corner = { $step }: nobody wrote down where the jig { $jig } sits on { $station }.
before-found-jig-right = { $step }: jig { $jig }, { $places ->
    [one] one place
   *[other] { $places } places
  }, its corner mark at x { $x }, y { $y } mm of { $station }.
before-found-engraving-guess = { $step }: nobody reckoned the engraving. Its { $minutes } min are a guess.
before-found-engraving-known = { $step }: { $minutes } min of machine time, measured or reckoned.

refused-jig-no-piece = Say how long and how wide a piece is, or write it down at the product.
refused-jig-nothing-drawn = There is no outline in the drawing.
refused-jig-outline-size = The outline in the drawing is smaller than 1 mm or larger than 10 m. See whether its units are right.
refused-jig-kerf-too-wide = The beam’s { $kerf } mm are wider than the piece.
refused-jig-places-overlap = The places would overlap: each is { NUMBER($length, maximumFractionDigits: 2) } by { NUMBER($width, maximumFractionDigits: 2) } mm. Make the pitch larger.
refused-jig-does-not-fit = Not one place fits on the bed with this margin and corner mark.
refused-jig-no-bed = Say how many columns and rows it has, or how many pieces a tray: how large the bed is, is not written down.
refused-jig-too-many-places = That is { $places } places, more than { $most }.

ask-layout-name = What it is called
ask-layout-name-hint = Empty: as the product.
ask-layout-product = Product
ask-layout-product-nothing = none
ask-layout-step = Its step
ask-layout-step-hint = As in engrave. The jig is kept for it.
ask-layout-station = Machine
ask-layout-station-nothing = not said
ask-layout-piece-length = Length of a piece, left to right
ask-layout-piece-length-hint = Empty: as the product says. An outline in a file counts before both.
ask-layout-piece-width = Width of a piece, front to back
ask-layout-pieces = Pieces a tray
ask-layout-columns = Places side by side
ask-layout-columns-hint = 0: as many as a tray needs or the bed takes.
ask-layout-rows = Places one below the other
ask-layout-rows-hint = 0: as many as a tray needs or the bed takes.
ask-layout-gap = Gap between places
ask-layout-pitch-x = Or from one place to the next, left to right
ask-layout-pitch-y = Or from one row to the next
ask-layout-fit = The pieces lie
ask-layout-fit-snug = snug
ask-layout-fit-loose = loose
ask-layout-clearance = A place is larger by
ask-layout-clearance-hint = Empty: 0.1 mm snug, 0.5 mm loose (common practice, no source).
ask-layout-kerf = The beam takes
ask-layout-kerf-hint = Cut a square and measure it: the square is smaller than drawn by this.
ask-layout-margin = Margin around the places
ask-layout-corner-x = Corner mark, x on the machine
ask-layout-corner-y = Corner mark, y on the machine
ask-layout-numbers = Mark the number of each place

ask-jig-station = Machine
ask-jig-name-hint = As one would call for it: rails, five at a time.
ask-jig-columns = Places side by side
ask-jig-rows = Places one below the other
ask-jig-piece-length = Length of a piece, left to right
ask-jig-piece-width = Width of a piece, front to back
ask-jig-pitch-x = From one place to the next
ask-jig-pitch-x-hint = From the middle of one to the middle of the next: the piece, and what stays between two.
ask-jig-pitch-y = From one row to the next
ask-jig-pitch-y-hint = From middle to middle, too.
ask-jig-corner-x = Corner mark, x on the machine
ask-jig-corner-x-hint = As the machine shows it with the head over the corner that the mark points at.
ask-jig-corner-y = Corner mark, y on the machine
ask-jig-margin = Margin around the places
ask-jig-margin-hint = From the outer places to the edge of the jig.
ask-jig-clearance = A place is larger by
ask-jig-clearance-hint = So that a piece goes in: 0.2 mm is snug, 0.5 mm loose.
ask-jig-kerf = The beam takes
ask-jig-kerf-hint = How wide the beam burns, measured on a cut in the same material: often 0.1 to 0.2 mm.
ask-jig-note = To remember
ask-jig-note-hint = What one must know to put it back: which side is up, what holds it.
ask-operation-jig = Its pieces lie in the jig
ask-operation-jig-nothing = none that is kept
thing-jigs = A jig holds a tray’s pieces on the bed. ‘Before the run’ draws one and keeps it here, with its corner mark.
