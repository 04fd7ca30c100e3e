"""A real server and a real Chromium, read like a person: roles, labels, a phone's viewport."""
