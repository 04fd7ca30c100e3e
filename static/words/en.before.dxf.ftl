# What is said of a drawing in DXF: why it cannot be read, and what of it is left out.

refused-dxf-empty = The drawing is empty. Choose another file.
refused-dxf-too-large = The drawing is over { $most } MB. Save it with less detail.
refused-dxf-not-readable = This DXF can’t be read. Save it again as DXF.
refused-dxf-nothing-drawn = The drawing has no line to cut. Draw the outline as lines, arcs or polylines.
refused-dxf-too-much = The drawing has too much in it. Leave only the outline.

outline-unclear-dxf-no-unit = The drawing has no unit. Millimetres are assumed. Check the size.
outline-unclear-dxf-hidden = { $count ->
    [one] One thing on a layer that is off is left out.
   *[other] { $count } things on layers that are off are left out.
  }
outline-unclear-dxf-far = { $count ->
    [one] One thing is farther out than any board. It is left out.
   *[other] { $count } things are farther out than any board. They are left out.
  }
outline-unclear-dxf-deep = Blocks are nested too deep. The innermost are left out.
outline-unclear-dxf-other = { $what } is not supported: { $count ->
    [one] one is left out.
   *[other] { $count } are left out.
  }
