-- Clients, the briefs they were planned by, their health notes apart from all else, and weeks that were kept.
CREATE TABLE client (
  id INTEGER PRIMARY KEY,
  code TEXT NOT NULL UNIQUE COLLATE NOCASE CHECK (length(code) BETWEEN 1 AND 40),
  name TEXT NOT NULL DEFAULT '',
  added TEXT NOT NULL,
  resting_since TEXT
) STRICT;

CREATE TABLE brief (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  version INTEGER NOT NULL CHECK (version >= 1),
  made TEXT NOT NULL,
  document TEXT NOT NULL CHECK (document GLOB '{*}'),
  UNIQUE (client, version)
) STRICT;

-- Age, cautions and clearance: read where a week is planned, and by nothing that prints, exports a sheet or reports.
CREATE TABLE health (
  brief INTEGER PRIMARY KEY REFERENCES brief ON DELETE CASCADE,
  document TEXT NOT NULL CHECK (document GLOB '{*}')
) STRICT;

CREATE TABLE week (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  starts TEXT NOT NULL,
  made TEXT NOT NULL,
  why TEXT NOT NULL DEFAULT '',
  document TEXT NOT NULL CHECK (document GLOB '{*}')
) STRICT;
CREATE INDEX week_by_client ON week (client, starts);

CREATE TABLE change (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  made TEXT NOT NULL,
  said TEXT NOT NULL
) STRICT;
CREATE INDEX change_by_client ON change (client);

-- Rows go only while a client is erased, which this table says.
CREATE TABLE erasing (client INTEGER PRIMARY KEY REFERENCES client ON DELETE CASCADE) STRICT;

CREATE TRIGGER brief_stays BEFORE UPDATE ON brief BEGIN
  SELECT RAISE(ABORT, 'a brief is never edited: a change is a new version');
END;
CREATE TRIGGER week_stays BEFORE UPDATE ON week BEGIN
  SELECT RAISE(ABORT, 'a week that was kept is never edited: a change is a new row');
END;
CREATE TRIGGER change_stays BEFORE UPDATE ON change BEGIN
  SELECT RAISE(ABORT, 'a note of a change is never edited');
END;
CREATE TRIGGER client_kept BEFORE DELETE ON client WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE client = OLD.id) BEGIN
  SELECT RAISE(ABORT, 'a client goes by being erased');
END;
CREATE TRIGGER brief_kept BEFORE DELETE ON brief WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE client = OLD.client) BEGIN
  SELECT RAISE(ABORT, 'a brief goes with its client');
END;
CREATE TRIGGER week_kept BEFORE DELETE ON week WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE client = OLD.client) BEGIN
  SELECT RAISE(ABORT, 'a week goes with its client');
END;
