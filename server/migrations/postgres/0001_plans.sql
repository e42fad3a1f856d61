CREATE TABLE plans (
    id TEXT PRIMARY KEY,
    revision BIGINT NOT NULL,
    created_at BIGINT NOT NULL
);

CREATE TABLE revisions (
    plan_id TEXT NOT NULL REFERENCES plans (id) ON DELETE CASCADE,
    number BIGINT NOT NULL CHECK (number >= 1),
    title TEXT,
    document TEXT NOT NULL,
    saved_at BIGINT NOT NULL,
    PRIMARY KEY (plan_id, number)
);

CREATE TABLE links (
    digest BYTEA PRIMARY KEY CHECK (length(digest) = 32),
    plan_id TEXT NOT NULL REFERENCES plans (id) ON DELETE CASCADE,
    opens TEXT NOT NULL CHECK (opens IN ('edit', 'record', 'view')),
    made_at BIGINT NOT NULL,
    revoked_at BIGINT
);

CREATE INDEX links_of_plan ON links (plan_id, opens);
