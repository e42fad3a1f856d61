ALTER TABLE plans ADD COLUMN closes_at BIGINT;
ALTER TABLE plans ADD COLUMN removed_at BIGINT;
ALTER TABLE links ADD COLUMN expires_at BIGINT;

CREATE INDEX plans_by_age ON plans (created_at);
CREATE INDEX plans_removed ON plans (removed_at);

CREATE TABLE invitations (
    digest BYTEA PRIMARY KEY CHECK (length(digest) = 32),
    id TEXT NOT NULL UNIQUE,
    said TEXT NOT NULL,
    uses_left BIGINT NOT NULL CHECK (uses_left >= 0),
    made_at BIGINT NOT NULL,
    expires_at BIGINT,
    revoked_at BIGINT
);

CREATE TABLE recoveries (
    digest BYTEA PRIMARY KEY CHECK (length(digest) = 32),
    plan_id TEXT NOT NULL UNIQUE REFERENCES plans (id) ON DELETE CASCADE,
    made_at BIGINT NOT NULL
);

CREATE TABLE sessions (
    digest BYTEA PRIMARY KEY CHECK (length(digest) = 32),
    mark BYTEA NOT NULL,
    ends_at BIGINT NOT NULL
);
