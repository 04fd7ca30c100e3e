"""The tables, as ordered steps. A step that has landed is never edited: a change is a new step at the end."""

from runboard.store.connect import Connections
from runboard.store.database import Database, Migrations

STEPS = Migrations("runboard")
_WAIT = 10.0  # seconds: a large shop that is brought up to date by another start


@STEPS()
def events(db: Database) -> None:
    """The log. ``moment`` is the phone's ``at`` corrected by ``offset_ms``; all moments are ISO text, UTC, with ms."""
    db.conn.execute(
        """
        CREATE TABLE event (
            seq INTEGER PRIMARY KEY,
            id TEXT NOT NULL UNIQUE,
            v INTEGER NOT NULL,
            kind TEXT NOT NULL,
            run TEXT NOT NULL,
            load TEXT NOT NULL,
            tray TEXT NOT NULL,
            operation TEXT NOT NULL,
            revision INTEGER NOT NULL,
            station TEXT NOT NULL,
            person TEXT NOT NULL,
            device TEXT NOT NULL,
            entered_by TEXT NOT NULL,
            at TEXT NOT NULL,
            offset_ms INTEGER NOT NULL,
            moment TEXT NOT NULL,
            received_at TEXT NOT NULL,
            seen INTEGER NOT NULL,
            basis TEXT NOT NULL CHECK (basis IN ('tapped', 'sensor', 'paper', 'assumed')),
            body TEXT NOT NULL CHECK (json_valid(body))
        ) STRICT
        """
    )
    db.conn.execute("CREATE INDEX event_run ON event (run, seq)")
    _append_only(db, "event", "the log is only ever appended to")


@STEPS()
def refused_presses(db: Database) -> None:
    """What was refused, as it came, so that the same press gets the same answer again."""
    db.conn.execute(
        """
        CREATE TABLE refused (
            id TEXT PRIMARY KEY,
            record TEXT NOT NULL CHECK (json_valid(record)),
            code TEXT NOT NULL,
            facts TEXT NOT NULL CHECK (json_valid(facts)),
            received_at TEXT NOT NULL
        ) STRICT, WITHOUT ROWID
        """
    )


@STEPS()
def due_moments(db: Database) -> None:
    """The moments that fall due: a projection of the log, changed in the transaction of the append."""
    db.conn.execute(
        """
        CREATE TABLE due (
            id TEXT PRIMARY KEY,
            kind TEXT NOT NULL,
            due_at TEXT NOT NULL,
            run TEXT NOT NULL,
            load TEXT NOT NULL,
            tray TEXT NOT NULL,
            step TEXT NOT NULL,
            station TEXT NOT NULL,
            person TEXT NOT NULL,
            told_at TEXT
        ) STRICT, WITHOUT ROWID
        """
    )
    db.conn.execute("CREATE INDEX due_untold ON due (due_at) WHERE told_at IS NULL")


@STEPS()
def books(db: Database) -> None:
    """The shop's book: every save is a revision, and none is ever changed."""
    db.conn.execute(
        """
        CREATE TABLE book (
            revision INTEGER PRIMARY KEY,
            record TEXT NOT NULL CHECK (json_valid(record)),
            saved_at TEXT NOT NULL
        ) STRICT
        """
    )
    _append_only(db, "book", "a revision of the book stays as it was saved")


@STEPS()
def devices(db: Database) -> None:
    """Who may ask: devices for good, their sessions, and the codes that pair one. Secrets are here as SHA-256 only."""
    db.conn.execute(
        """
        CREATE TABLE device (
            id TEXT PRIMARY KEY,
            name TEXT NOT NULL,
            access TEXT NOT NULL CHECK (access IN ('lead', 'crew', 'guest')),
            paired_at TEXT NOT NULL,
            seen_at TEXT,
            revoked_at TEXT,
            run TEXT NOT NULL,
            tray TEXT NOT NULL
        ) STRICT, WITHOUT ROWID
        """
    )
    db.conn.execute(
        """
        CREATE TABLE session (
            hash TEXT PRIMARY KEY,
            device TEXT NOT NULL REFERENCES device (id),
            renewed_at TEXT NOT NULL,
            ends_at TEXT NOT NULL
        ) STRICT, WITHOUT ROWID
        """
    )
    db.conn.execute("CREATE INDEX session_device ON session (device)")
    db.conn.execute(
        """
        CREATE TABLE pairing (
            hash TEXT PRIMARY KEY,
            access TEXT NOT NULL CHECK (access IN ('lead', 'crew', 'guest')),
            ends_at TEXT NOT NULL,
            device TEXT NOT NULL
        ) STRICT
        """
    )


@STEPS()
def settings(db: Database) -> None:
    """What is set and is no part of the book: how alerts climb, where they go outside, how machines are heard."""
    db.conn.execute(
        """
        CREATE TABLE setting (
            key TEXT PRIMARY KEY,
            record TEXT NOT NULL CHECK (json_valid(record))
        ) STRICT, WITHOUT ROWID
        """
    )


@STEPS()
def sensors(db: Database) -> None:
    """What may say by HTTP that a station runs or has stopped: each with a token of its own, here as SHA-256 only."""
    db.conn.execute(
        """
        CREATE TABLE sensor (
            id TEXT PRIMARY KEY,
            station TEXT NOT NULL,
            name TEXT NOT NULL,
            hash TEXT NOT NULL UNIQUE,
            made_at TEXT NOT NULL,
            revoked_at TEXT
        ) STRICT, WITHOUT ROWID
        """
    )


@STEPS()
def sent_outside(db: Database) -> None:
    """How often an alert that nobody answered was sent outside."""
    db.conn.execute("ALTER TABLE due ADD COLUMN sent INTEGER NOT NULL DEFAULT 0")


@STEPS()
def phones_sent_to(db: Database) -> None:
    """The phones that are sent alerts while they are locked, and how often an alert was sent to them."""
    db.conn.execute(
        """
        CREATE TABLE push (
            device TEXT PRIMARY KEY REFERENCES device (id),
            endpoint TEXT NOT NULL UNIQUE,
            p256dh TEXT NOT NULL,
            auth TEXT NOT NULL,
            made_at TEXT NOT NULL
        ) STRICT, WITHOUT ROWID
        """
    )
    db.conn.execute("ALTER TABLE due ADD COLUMN pushed INTEGER NOT NULL DEFAULT 0")


@STEPS()
def ways_of_sessions(db: Database) -> None:
    """By which way each session came: by https, from this computer, or by plain http; '' for those from before, until
    they ask again."""
    db.conn.execute("ALTER TABLE session ADD COLUMN way TEXT NOT NULL DEFAULT ''")


@STEPS()
def refused_by_device(db: Database) -> None:
    """Whose each refused press was, so that nobody's grow without end; those that were kept at any length are cut short."""
    db.conn.execute("ALTER TABLE refused ADD COLUMN device TEXT NOT NULL DEFAULT ''")
    db.conn.execute("CREATE INDEX refused_device ON refused (device, received_at, id)")
    db.conn.execute("CREATE INDEX refused_at ON refused (received_at, id)")
    db.conn.execute(
        "UPDATE refused SET record = json_object('id', id, 'cut', length(record)) WHERE length(record) > 8000"
    )
    db.conn.execute("UPDATE refused SET facts = '{}' WHERE length(facts) > 8000")


@STEPS()
def buttons_at_stations(db: Database) -> None:
    """What each token is good for: to say that a machine runs, as all before, or to press for whose hands are there."""
    db.conn.execute("ALTER TABLE sensor ADD COLUMN does TEXT NOT NULL DEFAULT 'signal'")


def _append_only(db: Database, table: str, why: str) -> None:
    for verb in ("UPDATE", "DELETE"):
        db.conn.execute(
            f"CREATE TRIGGER {table}_no_{verb.lower()} BEFORE {verb} ON {table} BEGIN SELECT RAISE(ABORT, '{why}'); END"
        )


def migrate(connections: Connections) -> None:
    """Bring the tables up to date: all pending steps in one transaction, so that two starts at once cannot collide."""
    if not STEPS.pending(connections.here()):
        return
    with connections.write(wait=_WAIT):
        STEPS.apply(connections.here())
