ALTER TABLE plans ADD COLUMN closes_at INTEGER;
ALTER TABLE plans ADD COLUMN removed_at INTEGER;
ALTER TABLE links ADD COLUMN expires_at INTEGER;

CREATE INDEX plans_by_age ON plans (created_at);
CREATE INDEX plans_removed ON plans (removed_at);

CREATE TABLE invitations (
    digest BLOB PRIMARY KEY CHECK (length(digest) = 32),
    id TEXT NOT NULL UNIQUE,
    said TEXT NOT NULL,
    uses_left INTEGER NOT NULL CHECK (uses_left >= 0),
    made_at INTEGER NOT NULL,
    expires_at INTEGER,
    revoked_at INTEGER
) STRICT;

CREATE TABLE recoveries (
    digest BLOB PRIMARY KEY CHECK (length(digest) = 32),
    plan_id TEXT NOT NULL UNIQUE REFERENCES plans (id) ON DELETE CASCADE,
    made_at INTEGER NOT NULL
) STRICT;

CREATE TABLE sessions (
    digest BLOB PRIMARY KEY CHECK (length(digest) = 32),
    mark BLOB NOT NULL,
    ends_at INTEGER NOT NULL
) STRICT;
