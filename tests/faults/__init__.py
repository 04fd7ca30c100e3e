"""What must survive: a killed process, a replay, a full disk."""
