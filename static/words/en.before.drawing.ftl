# What is said of a drawing (SVG) that is read before a run: why it cannot be, and what in it is not followed.

refused-drawing-empty = The file is empty.
refused-drawing-too-large = The drawing is over { $most } MB. Save it with less detail.
refused-drawing-packed = The file is packed (SVGZ). Save it as plain SVG.
refused-drawing-none = This is not an SVG drawing. Choose another file, or save it as plain SVG.
refused-drawing-not-closed = The file is damaged: a part is not closed up to line { $line }. Save it again as plain SVG.
refused-drawing-not-readable = Line { $line } can’t be read: it is not XML. Save the drawing again as plain SVG.
refused-drawing-not-svg = This is XML, but not an SVG drawing. Save it as plain SVG.
refused-drawing-entities = Line { $line } declares entities or attributes of its own. For safety, they are not read. Save it as plain SVG.
refused-drawing-too-many = The drawing has more than { $most } elements. Remove what is not burnt.
refused-drawing-too-deep = Groups are nested too deep in line { $line }. Ungroup what you can.
refused-drawing-too-many-points = The drawing has too many points, from line { $line } on. Simplify its paths.
refused-drawing-no-size = The drawing’s size fits no bed. Check width, height and viewBox in line { $line }.
refused-drawing-viewbox = The viewBox in line { $line } is not four numbers.

# $count of them, the first in $line.
outline-unclear-text = Line { $line }: { $count ->
    [one] letters are not turned into outlines. They count
   *[other] { $count } lines of letters are not turned into outlines. They count
  } as their box, roughly. Turn them into paths to be exact.
outline-unclear-image = Line { $line }: { $count ->
    [one] a picture is left out.
   *[other] { $count } pictures are left out.
  } Burning pictures takes extra time.
outline-unclear-clip = Line { $line }: something is clipped. All of it counts, even what is cut away.
outline-unclear-mask = Line { $line }: something is masked. All of it counts.
outline-unclear-filter = Line { $line }: a filter changes the look. It is ignored.
outline-unclear-pattern = Line { $line }: a pattern or gradient fill counts as filled.
outline-unclear-white = Line { $line }: { $count ->
    [one] something white counts as not burnt, and hides nothing.
   *[other] { $count } white things count as not burnt, and hide nothing.
  }
outline-unclear-dashes = Line { $line }: a dashed line counts as solid.
outline-unclear-marker = Line { $line }: arrows or marks on a line are left out.
outline-unclear-script = Line { $line }: a script is ignored.
outline-unclear-foreign = Line { $line }: something that is not SVG is left out.
outline-unclear-moving = Line { $line }: something moves. It counts where it starts.
outline-unclear-transform = Line { $line }: a transform can’t be read. It is left out.
outline-unclear-path = Line { $line }: { $count ->
    [one] a path can’t be read in full. Its readable part counts.
   *[other] { $count } paths can’t be read in full. Their readable parts count.
  }
outline-unclear-far = Line { $line }: something is farther out than any bed. It is left out.
outline-unclear-use = Line { $line }: it uses something missing from the file, or itself. It is left out.
outline-unclear-style = Line { $line }: a style rule is ignored.
outline-unclear-no-unit = The drawing’s size has no unit. One counts as 1/96 in, as in SVG.
outline-unclear-no-size = The drawing has no size of its own. One unit counts as 1/96 in. Check the lengths.
