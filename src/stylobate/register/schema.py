"""The tables of the register, as migrations: step k takes a file from version k to version k + 1.

Events are only ever added. A mistake is voided by another event that names it, so that the history stays whole.
"""

from __future__ import annotations

APPLICATION_ID = 0x53544C42
"""Marks the file as a register ("STLB"), SQLite's application_id."""

_FIRST = """
CREATE TABLE unit (
    number TEXT NOT NULL PRIMARY KEY COLLATE NOCASE CHECK (length(number) BETWEEN 1 AND 64),
    scan_body TEXT NOT NULL,
    lot TEXT,
    bought TEXT,
    single_use INTEGER NOT NULL DEFAULT 0 CHECK (single_use IN (0, 1)),
    max_cycles INTEGER CHECK (max_cycles > 0),
    wear_limit_um REAL CHECK (wear_limit_um > 0)
) STRICT;
CREATE INDEX unit_lot ON unit (lot);

CREATE TABLE event (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    unit TEXT NOT NULL COLLATE NOCASE REFERENCES unit (number),
    kind TEXT NOT NULL CHECK (kind IN
        ('sterilised', 'torqued', 'incident', 'measured', 'accepted', 'rejected', 'override', 'retired', 'void')),
    at TEXT NOT NULL,
    entered TEXT NOT NULL,
    by TEXT NOT NULL,
    amount REAL,
    note TEXT,
    case_name TEXT,
    voids INTEGER UNIQUE REFERENCES event (id),
    CHECK ((kind = 'void') = (voids IS NOT NULL))
) STRICT;
CREATE INDEX event_unit ON event (unit, at);
CREATE INDEX event_case ON event (case_name);

CREATE TABLE measurement (
    event INTEGER NOT NULL PRIMARY KEY REFERENCES event (id),
    result_sha256 TEXT NOT NULL,
    scan_sha256 TEXT NOT NULL,
    scan_file TEXT NOT NULL,
    site TEXT NOT NULL,
    scanner TEXT,
    sprayed INTEGER NOT NULL CHECK (sprayed IN (0, 1)),
    points INTEGER NOT NULL,
    mean_um REAL NOT NULL,
    rms_um REAL NOT NULL,
    p95_um REAL NOT NULL,
    coverage REAL,
    platform_u95_um REAL,
    verdict TEXT,
    findings TEXT NOT NULL
) STRICT;
CREATE INDEX measurement_scan ON measurement (scan_sha256);

CREATE TABLE frame_fit (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    case_name TEXT NOT NULL,
    at TEXT NOT NULL,
    entered TEXT NOT NULL,
    by TEXT NOT NULL,
    seat_sha256 TEXT NOT NULL,
    fits INTEGER CHECK (fits IN (0, 1)),
    predicted_probability REAL CHECK (predicted_probability BETWEEN 0 AND 1),
    note TEXT
) STRICT;
CREATE INDEX frame_fit_case ON frame_fit (case_name);

CREATE TABLE frame_gap (
    fit INTEGER NOT NULL REFERENCES frame_fit (id),
    site TEXT NOT NULL,
    measured_um REAL NOT NULL,
    predicted_um REAL NOT NULL,
    predicted_p95_um REAL,
    PRIMARY KEY (fit, site)
) STRICT, WITHOUT ROWID;

CREATE VIEW live AS
    SELECT * FROM event AS e
    WHERE kind <> 'void' AND NOT EXISTS (SELECT 1 FROM event AS v WHERE v.voids = e.id);

CREATE TRIGGER event_is_kept BEFORE UPDATE ON event BEGIN SELECT RAISE(ABORT, 'events are kept as entered'); END;
CREATE TRIGGER event_stays BEFORE DELETE ON event BEGIN SELECT RAISE(ABORT, 'events are kept'); END;
CREATE TRIGGER measurement_is_kept BEFORE UPDATE ON measurement BEGIN SELECT RAISE(ABORT, 'kept as entered'); END;
CREATE TRIGGER measurement_stays BEFORE DELETE ON measurement BEGIN SELECT RAISE(ABORT, 'measurements are kept'); END;
"""

MIGRATIONS = (_FIRST,)
VERSION = len(MIGRATIONS)
