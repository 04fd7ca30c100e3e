"""What was measured: each time element's observations, cleaned by rules that are said, and what they teach. Pure."""
