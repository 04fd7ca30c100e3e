"""Pure: no server, no disk; under seconds all together."""
