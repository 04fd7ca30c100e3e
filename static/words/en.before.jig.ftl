# What is said of jigs: of one that is asked about, of one that is kept, and of those of a run.

before-kind-jig = A jig
before-about-jig = Places for one tray’s pieces on the bed, as a drawing to cut, with a corner mark to put it back by.
before-keep-jig = Keep with { $station } as { $name }
before-keep-jig-step = Keep with { $station } as { $name }, and use at { $step }
before-keep-jig-again = Replace { $name } at { $station }
before-kept-jig = { $name } is saved with { $station }.
before-kept-jig-step = { $name } is saved with { $station }, and { $step } now uses it.
before-kept-jig-again = { $name } is saved as it is now.

before-jig-head-one = One place on a plate of { $wide } by { $high }.
before-jig-head-below = { $places } places in a column, on a plate of { $wide } by { $high }.
before-jig-head-beside = { $places } places side by side, on a plate of { $wide } by { $high }.
before-jig-head-grid = { $places } places, { $columns } across and { $rows } down, on a plate of { $wide } by { $high }.
before-jig-piece = Each place is { $length } by { $width }, plus { $clearance } both ways.
before-jig-place-size = Each place { $length } by { $width }
before-jig-kerf = The beam takes { $kerf }. Places are cut { $half } inside their line and the plate { $half } outside, so both come out right.
before-jig-corner = The corner at the mark sits at machine x { $x }, y { $y }; the other at x { $end }, y { $y }.
before-jig-corner-later = Once it is on the bed, read the machine’s x and y at the corner the mark points at. Save them with the jig: then you can put it back months later.
before-jig-already-rows = { $step } already has a jig: { $jig }, { $places } places, { $pitch } from row to row.
before-jig-already-columns = { $step } already has a jig: { $jig }, { $places } places, { $pitch } from place to place.
before-jig-already-one = { $step } already has a jig: { $jig }, with one place.
before-jig-room = The bed has room for { $columns } across and { $rows } down.
before-jig-groups = The file is in millimetres. Group ‘cut’ is cut; group ‘mark’, dashed, is marked. Set power and speed for each yourself.
before-jig-bed-unknown = The station’s bed size is missing, so nobody knows if the jig fits.
before-jig-too-large = It does not fit: the plate is { $wide } by { $high }, the bed { $bed_wide } by { $bed_high }. { $count ->
    [0] Not one place fits with this margin.
    [one] One place fits.
   *[other] { $columns } across and { $rows } down fit.
  }
before-jig-too-few = It has { $places } places for { $pieces } pieces.
before-jig-outline = Places are boxes around the file’s outline, not its shape.
before-jig-usual = Clearance and kerf differ by wood, beam and focus (common practice, no source). Cut one place first and try a piece in it.
before-jig-file = jig
before-jig-download = Save jig as SVG
before-jig-table = Middle of each place, from the corner
before-jig-column-place = Place
before-jig-column-x = Right
before-jig-column-y = Down
before-jig-column-machine-x = Machine x
before-jig-column-machine-y = Machine y
before-jig-drawn = Jig { $name }
before-jig-bed = The bed, { $wide } by { $high }
before-jig-drawing = To scale: plate and places solid, bed dashed, corner marks heavy.

before-jig-caution-watch = Cutting a jig catches fire more easily than engraving. Stay at the laser and watch it the whole time it runs.
before-jig-caution-air = Extraction on before the beam, and until the smoke is gone.
before-jig-caution-material = Cut only a sheet you know: no PVC, no plywood or board with unknown glue or coating.

before-jig-back = Putting it back
before-jig-back-zero = Send { $station } to its own zero, beam off.
before-jig-back-corner = Move the head to x { $x }, y { $y }. Put the corner its mark points at right under it.
before-jig-back-straight = Move the head to x { $end }, y { $y }. Turn the jig until the corner at the other end is under it.
before-jig-back-clamp = Clamp it, and check the first corner again.
before-jig-back-trial = Mark tape or a scrap in place 1 before the first piece.
before-jig-no-corner = Its corner on { $station } is missing. Put the jig where it belongs, read the machine’s x and y at the corner its mark points at, and enter them here.

before-found-jig-none = { $step }: its pieces lie in a jig that is not in the book.
before-found-jig-too-large = { $step }: the jig { $jig } reaches beyond the bed of { $station }.
before-found-jig-elsewhere = { $step }: the jig { $jig } is kept with { $station }, but the step is done elsewhere.
before-found-jig-places = { $step }: a load has { $pieces } pieces, but the jig { $jig } has { $places } places.
before-found-jig-corner = { $step }: nobody entered where the jig { $jig } sits on { $station }.
before-found-jig-right = { $step }: jig { $jig }, { $places ->
    [one] one place
   *[other] { $places } places
  }, corner mark at x { $x }, y { $y } mm of { $station }.
before-found-engraving-guess = { $step }: nobody worked out the engraving. Its { $minutes } min are a guess.
before-found-engraving-known = { $step }: { $minutes } min machine time, measured or worked out.

refused-jig-no-piece = Enter a piece’s length and width here, or at the product.
refused-jig-nothing-drawn = The drawing has no outline.
refused-jig-outline-size = The drawing’s outline is under 1 mm or over 10 m. Check its units.
refused-jig-kerf-too-wide = The beam’s { $kerf } mm are wider than the piece.
refused-jig-places-overlap = The places would overlap: each is { NUMBER($length, maximumFractionDigits: 2) } by { NUMBER($width, maximumFractionDigits: 2) } mm. Make the pitch larger.
refused-jig-does-not-fit = Not one place fits the bed with this margin and corner mark.
refused-jig-no-bed = Enter columns and rows, or pieces per tray: the bed size is missing.
refused-jig-too-many-places = That is { $places } places, over the limit of { $most }.

ask-layout-name = Jig name
ask-layout-name-hint = Empty: same as the product.
ask-layout-product = Product
ask-layout-product-nothing = none
ask-layout-step = Step
ask-layout-step-hint = For example engrave. The jig is saved for it.
ask-layout-station = Machine
ask-layout-station-nothing = not set
ask-layout-piece-length = Piece length, left to right
ask-layout-piece-length-hint = Empty: from the product. An outline in a file wins over both.
ask-layout-piece-width = Piece width, front to back
ask-layout-pieces = Pieces per tray
ask-layout-columns = Places side by side
ask-layout-columns-hint = 0: as many as a tray needs or the bed takes.
ask-layout-rows = Places in a column
ask-layout-rows-hint = 0: as many as a tray needs or the bed takes.
ask-layout-gap = Gap between places
ask-layout-pitch-x = Or from place to place
ask-layout-pitch-y = Or from row to row
ask-layout-fit = Fit
ask-layout-fit-snug = snug
ask-layout-fit-loose = loose
ask-layout-clearance = Clearance
ask-layout-clearance-hint = How much larger a place is. Empty: 0.1 mm snug, 0.5 mm loose (common practice, no source).
ask-layout-kerf = Kerf
ask-layout-kerf-hint = What the beam takes. Cut a square: it is smaller than drawn by this.
ask-layout-margin = Margin around the places
ask-layout-corner-x = Corner mark, x on the machine
ask-layout-corner-y = Corner mark, y on the machine
ask-layout-numbers = Mark each place’s number

ask-jig-station = Machine
ask-jig-name-hint = As you would ask for it: rails, five at a time.
ask-jig-columns = Places side by side
ask-jig-rows = Places in a column
ask-jig-piece-length = Piece length, left to right
ask-jig-piece-width = Piece width, front to back
ask-jig-pitch-x = From place to place
ask-jig-pitch-x-hint = Middle to middle: the piece, and the gap.
ask-jig-pitch-y = From row to row
ask-jig-pitch-y-hint = Middle to middle, too.
ask-jig-corner-x = Corner mark, x on the machine
ask-jig-corner-x-hint = What the machine shows with the head over the corner the mark points at.
ask-jig-corner-y = Corner mark, y on the machine
ask-jig-margin = Margin around the places
ask-jig-margin-hint = From the outer places to the jig’s edge.
ask-jig-clearance = Clearance
ask-jig-clearance-hint = How much larger a place is: 0.2 mm is snug, 0.5 mm loose.
ask-jig-kerf = Kerf
ask-jig-kerf-hint = The beam’s width, measured on a cut in the same material: often 0.1 to 0.2 mm.
ask-jig-note = To remember
ask-jig-note-hint = For putting it back: which side is up, what holds it.
ask-operation-jig = Jig for its pieces
ask-operation-jig-nothing = no saved jig
thing-jigs = A jig holds a tray’s pieces on the bed. ‘Before a run’ draws one and saves it here, with its corner mark.
