# A screw in its stack: what it is asked by, and what is said of it (runboard/words/before/screw.py).

before-kind-screw = A screw
before-about-screw = Whether its point stays inside, how much holds, the pilot, and the depth stop.

ask-drive-screw = Screw
ask-drive-screw-nothing = none of the shop's: sizes below
ask-drive-screw-hint = Sizes you enter below win over its own.
ask-drive-gauge = Gauge
ask-drive-gauge-hint = Its number: 4, #6, No. 8. Empty: metric.
ask-drive-diameter-hint = Outside the thread: 3.5 mm. Empty: from the gauge.
ask-drive-length = Screw length
ask-drive-length-hint = From the surface it sits on to the point. Countersunk: all of it. Round: from under the head.
ask-drive-head-countersunk = countersunk
ask-drive-head-round = round, or a screw hook's plate
ask-drive-washer = Washer or bracket
ask-drive-washer-hint = How thick, between head and wood. 0: none.
ask-drive-sunk = Head below the surface
ask-drive-sunk-hint = Under a plug or filler. 0: flush.
ask-drive-through = What is fastened
ask-drive-through-hint = Thickness of the first piece of wood. 0: it only holds a hook or bracket.
ask-drive-into = What it goes into
ask-drive-into-hint = Thickness where the screw sits, less a rabbet or groove behind it.
ask-drive-margin = Margin to the far face
ask-drive-margin-hint = 3 mm or 1/8 in is common practice, no source.
ask-drive-wood = Wood it goes into
ask-drive-wood-hint = For example ash, white oak, spruce.
ask-drive-hardness = Hard or soft
ask-drive-hardness-wood = like the wood
ask-drive-hardness-hard = hardwood
ask-drive-hardness-soft = softwood
ask-drive-gravity = Specific gravity
ask-drive-gravity-hint = At 12 % moisture: 0.6 for ash. Empty: from the Wood Handbook, if it has that wood.
ask-drive-grain = It goes into
ask-drive-grain-side = side grain: face or edge
ask-drive-grain-end = end grain
ask-drive-product = Keep it with
ask-drive-product-nothing = no product
ask-drive-step-hint = The step's key, such as hooks. Empty: choose below the answer.

refused-screw-size-needed = Choose a screw, or enter its length and its gauge or diameter.
refused-step-to-keep-gone = That step or screw is not in the shop's book any more. Ask again.

before-screw-inside = It stops { $left } short of the far face.
before-screw-near = It stays inside, but stops only { $left } short of the far face. You want { $margin }{ $safe ->
    [none] , and no usual length leaves that.
   *[other] : { $safe } is the longest usual length that leaves it.
  }
before-screw-face = The point just reaches the far face{ $safe ->
    [none] . No usual length is short enough.
   *[other] : take { $safe }.
  }
before-screw-through = The point comes out by { $by }{ $safe ->
    [none] . No usual length is short enough.
   *[other] : take { $safe }.
  }
before-screw-short = It does not reach the wood that should hold it{ $safe ->
    [none] , and no longer one leaves the margin.
   *[other] : { $safe } is the longest usual length that keeps the margin.
  }
before-screw-longer = { $safe } is the longest usual length that keeps the margin.
before-screw-held = { $held } of thread holds, about { $threads } turns.
before-screw-share = { $share } % of the screw is in the wood that holds it. { $enough ->
    [usual] Two thirds or more is common practice.
    [half] Common practice is two thirds; in thick wood half will do.
   *[little] Common practice is two thirds, and half at least.
  }
before-screw-pilot = Pilot in { $hard ->
    [yes] hardwood
   *[no] softwood
  }: { $drill }, { $own ->
    [yes] the shop's own figure.
   *[no] { $hard ->
        [yes] as wide as its root ({ $wanted }).
       *[no] 15 % less than its root ({ $wanted }).
    }
  }
before-screw-stop = Depth stop: { $stop }, from the surface to the drill’s very tip.{ $below ->
    [none] { "" }
   *[other] { " " }That is { $below } into the wood that holds it.
  }
before-screw-clear = Clearance hole, through what is fastened or for the shank: { $drill }, { $deep } deep.
before-screw-pulls = Pulled straight out, { $held } of thread in wood of specific gravity { $gravity } gives way at about { $ultimate } by the published formula; tables allow { $allowable }. For information only: nothing promises it.
before-screw-newtons = { $force } N
before-screw-pounds = { $force } lb

before-screw-doubt-hardness = { $wood ->
    [none] The wood’s hardness is missing: it counts as hardwood.
   *[other] The hardness of { $wood } is missing: it counts as hardwood.
  }
before-screw-doubt-gravity = Without a specific gravity, there is no figure for what it holds.
before-screw-caution-end = Never load a screw in end grain in withdrawal. Turn the joint, or let the screw only locate.
before-screw-caution-little = Little of it holds. { $safe ->
    [longer] A longer one still fits.
   *[none] Screw from the other side, or take a thicker piece.
  }
before-screw-doubt-root = Its root is not measured: 70 % of the diameter, as in handbooks within some hundredths of an inch (from memory). Measure one.
before-screw-doubt-thread = Its thread is not measured: two thirds of the length, common practice.
before-screw-caution-wide = The pilot is as wide as the thread: it would hold nothing.
before-screw-caution-head = The head is deeper than what it holds: it would pull through.
before-screw-doubt-drill = The depth stop keeps the drill off the far face: the pilot ends { $short } short of the point.
before-screw-doubt-soft = In softwood the pilot ends after three quarters of the thread; the rest cuts its own way.
before-screw-source = Screw figures: { $source }
before-screw-gravity-source = Specific gravity { $gravity }: { $source }
before-screw-gauge-source = Diameter by gauge: ASME B18.6.1. Makers differ by some hundredths: +0.004, −0.007 in.

before-screw-caution-near = Less than { $margin } is left: driven a little deeper, or without its washer, it may show on the far face.
before-screw-caution-hold = Clamp the piece. Never hold it by hand under the drill.
before-screw-caution-scrap = Try pilot and depth stop in scrap of the same wood first.

before-screw-size-diameter = Outside the thread
before-screw-size-root = Root
before-screw-size-thread = Thread, from the point
before-screw-size-pitch = From thread to thread

before-screw-row-pilot = Pilot
before-screw-row-depth-stop = Depth stop

before-keep-screw = Keep { $screw } with the shop's screws
before-kept-screw = { $screw } is saved with the shop's screws.
before-keep-sheet = Put pilot and depth stop into { $step } of { $product }{ $left ->
    [none] {""}
   *[other] , with only { $left } left to the far face
  }
before-kept-sheet = Pilot and depth stop are in the setup sheet of { $step }, { $product }.

before-found-screw-through = { $step }: { $screw } comes out by { $by }{ $safe ->
    [none] . No usual length is short enough.
   *[other] . Take { $safe }.
  }
before-found-screw-short = { $step }: { $screw } does not reach the wood that should hold it.
before-found-screw-near = { $step }: { $screw } stays inside, but stops only { $left } short of the far face, and you want { $margin }.
before-found-screw-little = { $step }: only { $held } of { $screw }’s thread holds.
before-found-screw-inside = { $step }: { $screw } stops { $left } short of the far face. Pilot { $pilot }, depth stop { $stop }.
before-found-screw-size = { $step }: { $screw } has neither gauge nor diameter in the shop's book.
before-found-screw-gone = { $step }: the shop has no screw { $screw } any more.

# Beside the drawing, where there is room for some twenty letters.

before-screw-drawing-margin = margin { $length }
before-screw-drawing-point = point: { $length } left
before-screw-drawing-out = point: { $length } out
before-screw-drawing-stop = depth stop { $length }
