"""What happened: everybody's and every machine's day, what waited and why, what was lost, plan against actual. Pure."""
