"""The server: requests to the app, and a real process on a free port."""
