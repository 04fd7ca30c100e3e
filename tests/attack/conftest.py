"""Where an app is put together here, it is the web's tests' way."""

from tests.made_once import waits_for_no_disk  # noqa: F401 - for every test
