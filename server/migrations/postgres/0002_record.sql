CREATE TABLE entries (
    plan_id TEXT NOT NULL REFERENCES plans (id) ON DELETE CASCADE,
    number BIGINT NOT NULL CHECK (number >= 1),
    id TEXT NOT NULL,
    document TEXT NOT NULL,
    received_at BIGINT NOT NULL,
    PRIMARY KEY (plan_id, number),
    UNIQUE (plan_id, id)
);

CREATE TABLE photos (
    plan_id TEXT NOT NULL,
    id TEXT NOT NULL,
    picture BYTEA NOT NULL,
    PRIMARY KEY (plan_id, id),
    FOREIGN KEY (plan_id, id) REFERENCES entries (plan_id, id) ON DELETE CASCADE
);

CREATE TABLE sheets (
    token TEXT PRIMARY KEY,
    plan_id TEXT NOT NULL UNIQUE REFERENCES plans (id) ON DELETE CASCADE
);
