CREATE INDEX revisions_size ON revisions (plan_id, octet_length(document));
CREATE INDEX entries_size ON entries (plan_id, octet_length(document));
CREATE INDEX photos_size ON photos (plan_id, octet_length(picture));
