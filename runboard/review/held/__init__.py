"""What held the run: it is replayed with the times that were measured, and each thing's hour is worth what it moves. Pure."""
