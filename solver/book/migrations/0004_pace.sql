-- How long this client takes, as told from the log; the newest holds.
CREATE TABLE pace (
  id INTEGER PRIMARY KEY,
  client INTEGER NOT NULL REFERENCES client ON DELETE CASCADE,
  made TEXT NOT NULL,
  document TEXT NOT NULL CHECK (document GLOB '{*}')
) STRICT;
CREATE INDEX pace_by_client ON pace (client);
