"""How large a program may be, and how near is near enough."""

MOST_BYTES = 128_000_000
MOST_LINES = 3_000_000
MOST_BLOCKS = 3_000_000
LONGEST_LINE = 4_096  # bytes; the report allows 256
MOST_NESTED = 40  # brackets, signs and # within one another
MOST_REPEATS = 9_999  # of a canned cycle (L)
MOST_MM = 1e7  # no machine's coordinate is farther
MOST_OF_A_KIND = 100  # doubts of one code that are named one by one
HIGHEST_PARAMETER = 5399

NEAR_WHOLE = 1e-4  # NISTIR 6556, 3.3.2.1: near enough to a whole number
ARC_MM = 0.002  # NISTIR 6556, 3.5.3.2: by how much an arc's two radii may differ
ARC_INCHES = 0.0002
# Off by more than this, an arc cannot be drawn at all: from there on the program is not read.
OPEN_MM, OPEN_SHARE = 0.5, 0.05
SAME_PLACE = 1e-9  # mm: an arc that ends so near its start is a full circle
LONG_DWELL = 100.0  # seconds: some machines count P in thousandths. Common practice, no source
SAME_HEIGHT = 1e-6  # mm
PECK_SHORT = 0.254  # mm: how far above the last peck a rapid stops (G83); from memory, the report says 'a bit'
