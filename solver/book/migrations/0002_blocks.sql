-- Blocks of weeks as planned; a block that replaces another says which.
CREATE TABLE block (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  starts TEXT NOT NULL,
  ends TEXT NOT NULL CHECK (ends >= starts),
  made TEXT NOT NULL,
  document TEXT NOT NULL CHECK (document GLOB '{*}'),
  replaces INTEGER REFERENCES block ON DELETE CASCADE
) STRICT;
CREATE INDEX block_by_client ON block (client, starts);
CREATE INDEX block_replaced ON block (replaces);

CREATE TRIGGER block_stays BEFORE UPDATE ON block BEGIN
  SELECT RAISE(ABORT, 'a block is never edited: a change is a new row that says what it replaces');
END;
CREATE TRIGGER block_kept BEFORE DELETE ON block WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE client = OLD.client) BEGIN
  SELECT RAISE(ABORT, 'a block goes with its client');
END;
