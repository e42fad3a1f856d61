CREATE TABLE plans (
    id TEXT PRIMARY KEY,
    revision INTEGER NOT NULL,
    created_at INTEGER NOT NULL
) STRICT;

CREATE TABLE revisions (
    plan_id TEXT NOT NULL REFERENCES plans (id) ON DELETE CASCADE,
    number INTEGER NOT NULL CHECK (number >= 1),
    title TEXT,
    document TEXT NOT NULL,
    saved_at INTEGER NOT NULL,
    PRIMARY KEY (plan_id, number)
) STRICT;

CREATE TABLE links (
    digest BLOB PRIMARY KEY CHECK (length(digest) = 32),
    plan_id TEXT NOT NULL REFERENCES plans (id) ON DELETE CASCADE,
    opens TEXT NOT NULL CHECK (opens IN ('edit', 'record', 'view')),
    made_at INTEGER NOT NULL,
    revoked_at INTEGER
) STRICT;

CREATE INDEX links_of_plan ON links (plan_id, opens);
