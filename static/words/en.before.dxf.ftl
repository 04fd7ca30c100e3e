# What is said of a drawing in DXF: why it cannot be read, and what of it is left out.

refused-dxf-empty = The drawing is empty. Choose another file.
refused-dxf-too-large = The drawing is larger than { $most } MB. Save it with less detail.
refused-dxf-not-readable = This is no DXF that can be read. Save it anew as DXF.
refused-dxf-nothing-drawn = Nothing in the drawing is a line that can be cut. Draw the outline as lines, arcs or polylines.
refused-dxf-too-much = There is too much in the drawing to be read. Leave all but the outline out of it.

outline-unclear-dxf-no-unit = The drawing says no unit. Millimetres are taken; see whether the size is right.
outline-unclear-dxf-hidden = { $count ->
    [one] Something on a layer that is off is left out.
   *[other] { $count } things on layers that are off are left out.
  }
outline-unclear-dxf-far = { $count ->
    [one] Something lies farther out than any board reaches. It is left out.
   *[other] { $count } things lie farther out than any board reaches. They are left out.
  }
outline-unclear-dxf-deep = Blocks lie too deep within one another. What is farther in is left out.
outline-unclear-dxf-other = { $what } is not followed: { $count ->
    [one] one is left out.
   *[other] { $count } are left out.
  }
