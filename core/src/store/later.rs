//! The last steps of the ladder.

/// Notes for the athlete alone, which nothing else reads, and files of a carrier that are no use to this device.
pub(super) const ALONE_SQL: &str = "
CREATE TABLE private_note (
  number INTEGER NOT NULL PRIMARY KEY,
  session BLOB NOT NULL,
  said TEXT NOT NULL
) STRICT;
CREATE INDEX private_note_of_session ON private_note (session);
CREATE TABLE left_alone (
  name TEXT NOT NULL,
  bytes INTEGER NOT NULL,
  -- how often it was fetched while it may still have been arriving; 0 where it is never fetched again
  tries INTEGER NOT NULL,
  -- why it was left alone, in words; empty where there is nothing to say
  reason TEXT NOT NULL,
  PRIMARY KEY (name, bytes)
) STRICT, WITHOUT ROWID;
";

/// How large a file is, so that nobody asks the disk for each; 0 where it was noted before. Whether a device has shown that a
/// certificate is its own.
pub(super) const BYTES_SQL: &str = "
ALTER TABLE file ADD COLUMN bytes INTEGER NOT NULL DEFAULT 0;
-- 0 for one that somebody showed in a pairing: anybody can certify a device's public keys
ALTER TABLE certificate ADD COLUMN proven INTEGER NOT NULL DEFAULT 1;
";

/// Which parts of lanes a carrier holds whole, so that they need not be listed at each exchange.
pub(super) const LOOKED_SQL: &str = "
CREATE TABLE looked (
  device BLOB NOT NULL,
  tag TEXT NOT NULL,
  -- the part's first place
  first INTEGER NOT NULL,
  -- the first 16 hexadecimal digits of the SHA-256 of the carrier's address
  carrier TEXT NOT NULL,
  -- when it was listed, milliseconds since 1970 by the wall clock
  at_ms INTEGER NOT NULL,
  PRIMARY KEY (device, tag, first, carrier)
) STRICT, WITHOUT ROWID;
-- a file that is new here, or lost, has to be looked for there; so has what the first file of the next part may contradict
CREATE TRIGGER file_is_new AFTER INSERT ON file BEGIN
  DELETE FROM looked WHERE device = NEW.device AND tag = NEW.tag
    AND first IN (NEW.sequence - (NEW.sequence - 1) % 32, NEW.sequence - 1 - (NEW.sequence - 2) % 32);
END;
CREATE TRIGGER file_is_lost AFTER DELETE ON file BEGIN
  DELETE FROM looked WHERE device = OLD.device AND tag = OLD.tag AND first = OLD.sequence - (OLD.sequence - 1) % 32;
END;
";

/// The last exchange that brought all there was: when it ended, one row; and of each thread one's last leaf that went with it.
pub(super) const EXCHANGED_SQL: &str = "
CREATE TABLE exchanged (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  wall_ms INTEGER NOT NULL,
  offset_min INTEGER NOT NULL
) STRICT;
CREATE TABLE brought (
  of BLOB PRIMARY KEY,
  sequence INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
";
