ALTER TABLE revisions ADD COLUMN engine TEXT;
