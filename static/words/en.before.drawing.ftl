# What is said of a drawing (SVG) that is read before a run: why it cannot be, and what in it is not followed.

refused-drawing-empty = The file is empty.
refused-drawing-too-large = The drawing is larger than { $most } MB. Save it with less detail.
refused-drawing-packed = The file is packed (SVGZ). Save it as plain SVG.
refused-drawing-none = This is no drawing in SVG. Choose another file, or save the drawing as plain SVG.
refused-drawing-not-closed = The file is damaged: up to line { $line } a part of it is not closed. Save the drawing anew as plain SVG.
refused-drawing-not-readable = Line { $line } of the drawing cannot be read: it is not XML. Save it anew as plain SVG.
refused-drawing-not-svg = This is XML, but no drawing in SVG. Save the drawing as plain SVG.
refused-drawing-entities = The drawing declares entities or attributes of its own in line { $line }. They are not read, for safety. Save it as plain SVG.
refused-drawing-too-many = The drawing has more than { $most } elements. Leave out what is not burnt.
refused-drawing-too-deep = Groups lie too deep within one another in line { $line }. Ungroup what need not be grouped.
refused-drawing-too-many-points = The drawing has more points than can be reckoned with; line { $line } is where it was too much. Simplify its paths.
refused-drawing-no-size = The drawing has no size that a bed could have: see width, height and viewBox in line { $line }.
refused-drawing-viewbox = The viewBox in line { $line } is not four numbers.

# $count of them, the first in $line.
outline-unclear-text = Line { $line }: { $count ->
    [one] letters that are not turned into outlines. They count
   *[other] { $count } lines of letters that are not turned into outlines. They count
  } as the box that they take up, roughly. Turn them into paths to be exact.
outline-unclear-image = Line { $line }: { $count ->
    [one] a picture is left out.
   *[other] { $count } pictures are left out.
  } What burns it takes its own time.
outline-unclear-clip = Line { $line }: something is clipped. It counts as a whole, also what is cut away.
outline-unclear-mask = Line { $line }: something is masked. It counts as a whole.
outline-unclear-filter = Line { $line }: a filter changes what is seen. It is not followed.
outline-unclear-pattern = Line { $line }: something is filled with a pattern or a gradient. It counts as filled.
outline-unclear-white = Line { $line }: { $count ->
    [one] something white is taken as not burnt, and as hiding nothing.
   *[other] { $count } white things are taken as not burnt, and as hiding nothing.
  }
outline-unclear-dashes = Line { $line }: a line is dashed. Its gaps count as drawn.
outline-unclear-marker = Line { $line }: arrows or marks on a line are left out.
outline-unclear-script = Line { $line }: a script is not run.
outline-unclear-foreign = Line { $line }: something that is no SVG is left out.
outline-unclear-moving = Line { $line }: something moves. It counts where it begins.
outline-unclear-transform = Line { $line }: a transform cannot be read. It is left out.
outline-unclear-path = Line { $line }: { $count ->
    [one] a path cannot be read. What of it can be is taken.
   *[other] { $count } paths cannot be read. What of them can be is taken.
  }
outline-unclear-far = Line { $line }: something lies farther out than any bed reaches. It is left out.
outline-unclear-use = Line { $line }: what is used there is not in the file, or is used within itself. It is left out.
outline-unclear-style = Line { $line }: a rule of the style sheet is not followed.
outline-unclear-no-unit = The drawing says its size without a unit. One is taken as 1/96 in, as SVG has it.
outline-unclear-no-size = The drawing says no size of its own. One of its units is taken as 1/96 in; see whether the lengths are right.
