ALTER TABLE revisions ADD COLUMN digest BLOB CHECK (digest IS NULL OR length(digest) = 32);
ALTER TABLE entries ADD COLUMN digest BLOB CHECK (digest IS NULL OR length(digest) = 32);
ALTER TABLE photos ADD COLUMN digest BLOB CHECK (digest IS NULL OR length(digest) = 32);
ALTER TABLE plans ADD COLUMN opened_at INTEGER;
CREATE INDEX links_ending ON links (expires_at);
