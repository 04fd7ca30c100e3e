"""A computer on which somebody has trusted the shop's authority, as the welcome page asks: no warning, a secure context.

The authority is put in an NSS database in a home of the browser's own; the machine's own trust is not touched.
"""

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Error, Page

from runboard.lan import private_file, trust
from runboard.lan.authority import AUTHORITY_FILE, Certificates
from runboard.lan.issue import make_leaf, read_pair
from runboard.lan.serving import SecureDoor, show
from tests.browser.conftest import FLAGS, WITHOUT_WINDOWS
from tests.lan.doors import serving
from tests.lan.places import HOME

# Every name is this machine: a name on the shop's network stands for an address that it does not have.
EVERY_NAME_IS_HERE = "--host-resolver-rules=MAP * 127.0.0.1"


@pytest.fixture
def door(tmp_path: Path) -> SecureDoor:
    return SecureDoor(Certificates(tmp_path / "certificates"), lambda: datetime.now(UTC), lambda: HOME)


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """A home with an empty NSS database, in which nothing is trusted."""
    database = tmp_path / "home" / ".pki" / "nssdb"
    database.mkdir(parents=True)
    _certutil("-N", "--empty-password", "-d", f"sql:{database}")
    return tmp_path / "home"


@contextmanager
def computer(chromium: Browser, home: Path) -> Iterator[Page]:
    """A browser that starts in this home."""
    own = chromium.browser_type.launch(
        executable_path=WITHOUT_WINDOWS, args=[*FLAGS, EVERY_NAME_IS_HERE], env={**os.environ, "HOME": str(home)}
    )
    try:
        yield own.new_page()
    finally:
        own.close()


def believe(home: Path, offered: bytes) -> None:
    """Trust the shop's authority for web servers, in the form in which it is offered to computers."""
    file = home / "runboard.cer"
    file.write_bytes(offered)
    _certutil("-A", "-n", "runboard", "-t", "C,,", "-i", str(file), "-d", f"sql:{home / '.pki' / 'nssdb'}")


def _certutil(*arguments: str) -> None:
    place = shutil.which("certutil")
    assert place, "certutil is missing: apt-get install libnss3-tools"
    subprocess.run([place, *arguments], check=True, capture_output=True)


def test_who_trusts_the_authority_gets_a_secure_context_by_every_name(
    chromium: Browser, home: Path, door: SecureDoor
) -> None:
    believe(home, trust.der(door.kept.authority))

    with serving(door) as (_, _, port), computer(chromium, home) as page:
        for name in ("localhost", "shop-pc.local", "runboard-shop-pc.local", "127.0.0.1"):
            answer = page.goto(f"https://{name}:{port}/")

            assert answer and answer.status == 200
            assert page.evaluate("window.isSecureContext")
            told = answer.security_details()
            assert told and told["issuer"] == trust.common_name(door.kept.authority)


def test_a_name_of_the_shop_without_https_is_no_secure_context(chromium: Browser, home: Path, door: SecureDoor) -> None:
    with serving(door) as (_, port, _), computer(chromium, home) as page:
        page.goto(f"http://shop-pc.local:{port}/")

        assert not page.evaluate("window.isSecureContext")


def test_who_does_not_trust_it_is_warned(chromium: Browser, home: Path, door: SecureDoor) -> None:
    with (
        serving(door) as (_, _, port),
        computer(chromium, home) as page,
        pytest.raises(Error, match="ERR_CERT_AUTHORITY_INVALID"),
    ):
        page.goto(f"https://localhost:{port}/")


def test_a_stolen_authority_can_be_no_bank(chromium: Browser, home: Path, door: SecureDoor, tmp_path: Path) -> None:
    believe(home, trust.der(door.kept.authority))
    stolen = read_pair((tmp_path / "certificates" / AUTHORITY_FILE).read_bytes())
    forged = tmp_path / "forged.pem"
    private_file.write(forged, make_leaf(stolen, ["bank.example.com"], [], datetime.now(UTC)).pem())
    show(door.context, forged)

    with (
        serving(door) as (_, _, port),
        computer(chromium, home) as page,
        pytest.raises(Error, match="ERR_CERT_INVALID"),
    ):
        page.goto(f"https://bank.example.com:{port}/")
