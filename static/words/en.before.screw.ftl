# A screw in its stack: what it is asked by, and what is said of it (runboard/words/before/screw.py).

before-kind-screw = A screw
before-about-screw = Does its point stay inside, how much of it holds, which pilot, and where the depth stop goes.

ask-drive-screw = Screw
ask-drive-screw-nothing = none of the shop's: sizes below
ask-drive-screw-hint = What you type below wins over its own sizes.
ask-drive-gauge = Gauge
ask-drive-gauge-hint = Its number: 4, #6, No. 8. Leave it empty for a metric screw.
ask-drive-diameter-hint = Outside the thread: 3.5 mm. Empty: as the gauge says.
ask-drive-length = Screw's length
ask-drive-length-hint = From what lies on the surface to the point: of a countersunk one all of it, of a round one from under the head.
ask-drive-head-countersunk = countersunk
ask-drive-head-round = round, or a screw hook's plate
ask-drive-washer = Washer or bracket
ask-drive-washer-hint = How thick it is, between head and wood. 0 for none.
ask-drive-sunk = Head below the surface
ask-drive-sunk-hint = Under a plug or filler. 0 where it is flush.
ask-drive-through = What is fastened
ask-drive-through-hint = How thick the wood is that the screw goes through first. 0 where it holds only a hook or a bracket.
ask-drive-into = What it goes into
ask-drive-into-hint = How thick that is where the screw sits: less a rabbet or a groove behind it.
ask-drive-margin = Keep this much before the far face
ask-drive-margin-hint = 3 mm or 1/8 in is common practice, no source.
ask-drive-wood = Wood that it goes into
ask-drive-wood-hint = As in ash, white oak, spruce.
ask-drive-hardness = Hard or soft
ask-drive-hardness-wood = as the wood is
ask-drive-hardness-hard = hardwood
ask-drive-hardness-soft = softwood
ask-drive-gravity = Specific gravity
ask-drive-gravity-hint = At 12 % moisture: 0.6 for ash. Empty: from the Wood Handbook, where it has that wood.
ask-drive-grain = It goes into
ask-drive-grain-side = side grain: face or edge
ask-drive-grain-end = end grain
ask-drive-product = Keep it with
ask-drive-product-nothing = no product
ask-drive-step-hint = The key of its step, such as hooks. Empty: choose below the answer.

refused-screw-size-needed = Choose a screw, or write its length and its gauge or diameter.
refused-step-to-keep-gone = That step or screw is not in the shop's book any more. Ask again.

before-screw-inside = It stops { $left } before the face.
before-screw-near = It does not come through: it stops { $left } before the face. { $margin } are wanted{ $safe ->
    [none] , and no usual length leaves them.
   *[other] , and { $safe } is the longest usual length that leaves them.
  }
before-screw-face = The point just reaches the face{ $safe ->
    [none] . No usual length is short enough.
   *[other] : take { $safe }.
  }
before-screw-through = The point comes through by { $by }{ $safe ->
    [none] . No usual length is short enough.
   *[other] : take { $safe }.
  }
before-screw-short = It does not reach what should hold it{ $safe ->
    [none] , and no longer one leaves the margin.
   *[other] : { $safe } is the longest usual one that keeps the margin.
  }
before-screw-longer = { $safe } is the longest usual length that keeps the margin.
before-screw-held = { $held } of thread hold, about { $threads } turns of it.
before-screw-share = { $share } % of the screw is in what holds it. { $enough ->
    [usual] Two thirds or more is common practice.
    [half] Common practice is two thirds; in thick wood half of it does.
   *[little] Common practice is two thirds, and half at the least.
  }
before-screw-pilot = Pilot in { $hard ->
    [yes] hardwood
   *[no] softwood
  }: { $drill }, { $own ->
    [yes] the shop's own figure for it.
   *[no] { $hard ->
        [yes] as wide as its root ({ $wanted }).
       *[no] 15 % less than its root ({ $wanted }).
    }
  }
before-screw-stop = Depth stop: { $stop }, from the surface to the very tip of the drill.{ $below ->
    [none] { "" }
   *[other] { " " }That is { $below } into what holds it.
  }
before-screw-clear = Through what is fastened, or for the shank: { $drill }, { $deep } deep.
before-screw-pulls = Straight out, { $held } of thread in wood of specific gravity { $gravity } give way at about { $ultimate } by the published formula, and tables allow a load of { $allowable }. For information only: nothing promises it.
before-screw-newtons = { $force } N
before-screw-pounds = { $force } lb

before-screw-doubt-hardness = Nobody said how hard { $wood ->
    [none] the wood
   *[other] { $wood }
  } is: taken for hardwood.
before-screw-doubt-gravity = Without a specific gravity nothing is said of what it holds.
before-screw-caution-end = In end grain a screw is not to be loaded in withdrawal. Turn the joint, or let it only locate.
before-screw-caution-little = Little of it holds. { $safe ->
    [longer] A longer one still fits.
   *[none] Screw from the other side, or take a thicker piece.
  }
before-screw-doubt-root = Its root is not measured: 70 % of the diameter, as handbooks have it within some hundredths of an inch (from memory). Measure one.
before-screw-doubt-thread = Its thread is not measured: two thirds of the length, common practice.
before-screw-caution-wide = The pilot is as wide as the thread: it would hold nothing.
before-screw-caution-head = The head is deeper than what it holds: it would pull through.
before-screw-doubt-drill = The depth stop keeps the drill away from the face: the pilot ends { $short } short of the point.
before-screw-doubt-soft = In softwood the pilot ends after three quarters of the thread; the rest cuts its own way.
before-screw-source = Figures of the screw: { $source }
before-screw-gravity-source = Specific gravity { $gravity }: { $source }
before-screw-gauge-source = Diameter by gauge: ASME B18.6.1. Makers differ by some hundredths: +0.004, −0.007 in.

before-screw-caution-near = Less than { $margin } stays: a screw driven a little deeper, or a washer left out, may show at the face.
before-screw-caution-hold = Clamp the piece, never hold it by hand under the drill.
before-screw-caution-scrap = Try pilot and depth stop in a piece of scrap of the same wood first.

before-screw-size-diameter = Outside the thread
before-screw-size-root = Root
before-screw-size-thread = Thread, from the point
before-screw-size-pitch = From thread to thread

before-screw-row-pilot = Pilot
before-screw-row-depth-stop = Depth stop

before-keep-screw = Keep { $screw } among the shop's screws
before-kept-screw = { $screw } is among the shop's screws.
before-keep-sheet = Put pilot and depth stop into { $step } of { $product }{ $left ->
    [none] {""}
   *[other] , though only { $left } stay before the face
  }
before-kept-sheet = Pilot and depth stop stand in the setup sheet of { $step }, { $product }.

before-found-screw-through = { $step }: { $screw } comes through by { $by }{ $safe ->
    [none] . No usual length is short enough.
   *[other] . Take { $safe }.
  }
before-found-screw-short = { $step }: { $screw } does not reach what should hold it.
before-found-screw-near = { $step }: { $screw } does not come through, but stops { $left } before the face, and { $margin } are wanted.
before-found-screw-little = { $step }: only { $held } of the thread of { $screw } hold.
before-found-screw-inside = { $step }: { $screw } stops { $left } before the face. Pilot { $pilot }, depth stop { $stop }.
before-found-screw-size = { $step }: { $screw } has neither gauge nor diameter in the shop's book.
before-found-screw-gone = { $step }: the shop has no screw { $screw } any more.

# Beside the drawing, where there is room for some twenty letters.

before-screw-drawing-margin = margin { $length }
before-screw-drawing-point = point: { $length } left
before-screw-drawing-out = point: { $length } out
before-screw-drawing-stop = depth stop { $length }
