//! Which refusals an operation may answer with, each by its status and its name.

pub(super) const BODY: &[(u16, &str)] = &[
    (400, "NotJson"),
    (408, "TooSlow"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const TABLE: &[(u16, &str)] = &[
    (400, "Malformed"),
    (408, "TooSlow"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const BEGIN: &[(u16, &str)] = &[
    (400, "NotJson"),
    (403, "NotInvited"),
    (408, "TooSlow"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const REPLACE: &[(u16, &str)] = &[
    (400, "NotJson"),
    (401, "NoSecret"),
    (403, "NotWithThisLink"),
    (404, "NoSuchLink"),
    (408, "TooSlow"),
    (412, "Stale"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (428, "NoPrecondition"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const READ: &[(u16, &str)] = &[
    (401, "NoSecret"),
    (404, "NothingHere"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const SHEET: &[(u16, &str)] = &[
    (401, "NoSecret"),
    (404, "NothingHere"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const EDIT_QUERY: &[(u16, &str)] = &[
    (400, "Malformed"),
    (401, "NoSecret"),
    (403, "NotWithThisLink"),
    (404, "NothingHere"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const PRINT: &[(u16, &str)] = &[
    (400, "Malformed"),
    (401, "NoSecret"),
    (404, "NothingHere"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const ENTER: &[(u16, &str)] = &[
    (400, "NotJson"),
    (401, "NoSecret"),
    (403, "NotWithThisLink"),
    (404, "NothingHere"),
    (408, "TooSlow"),
    (409, "NotKept"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const PHOTO: &[(u16, &str)] = &[
    (400, "Malformed"),
    (401, "NoSecret"),
    (403, "NotWithThisLink"),
    (404, "NothingHere"),
    (408, "TooSlow"),
    (409, "NotKept"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const RECOVER: &[(u16, &str)] = &[
    (400, "NotJson"),
    (403, "NoSuchCode"),
    (408, "TooSlow"),
    (413, "TooLarge"),
    (415, "MediaType"),
    (422, "Answers"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
pub(super) const EDIT: &[(u16, &str)] = &[
    (401, "NoSecret"),
    (403, "NotWithThisLink"),
    (404, "NothingHere"),
    (429, "TooOften"),
    (503, "NotJustNow"),
];
