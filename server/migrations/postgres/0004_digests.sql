ALTER TABLE revisions ADD COLUMN digest BYTEA CHECK (digest IS NULL OR octet_length(digest) = 32);
ALTER TABLE entries ADD COLUMN digest BYTEA CHECK (digest IS NULL OR octet_length(digest) = 32);
ALTER TABLE photos ADD COLUMN digest BYTEA CHECK (digest IS NULL OR octet_length(digest) = 32);
ALTER TABLE plans ADD COLUMN opened_at BIGINT;
CREATE INDEX links_ending ON links (expires_at);
