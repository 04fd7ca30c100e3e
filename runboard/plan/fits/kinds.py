"""The kinds of questions about fasteners and fits."""

from runboard.plan.before.kind import Kind
from runboard.plan.fits import driving, keeping, moving, seating

SCREW = Kind("screw", driving.Drive, driving.answer, driving.begin, keeping.keeps)
FIT = Kind("fit", seating.Seat, seating.answer, seating.begin, seating.keeps)
MOVEMENT = Kind("movement", moving.Swell, moving.answer, moving.begin)
