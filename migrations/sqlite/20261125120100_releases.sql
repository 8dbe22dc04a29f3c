-- Drafts change, each change with the next revision. Releases never change.
create table draft (
    id text not null primary key,
    rule_set text not null references rule_set (name),
    document text not null references document (sha256),
    revision integer not null check (revision > 0),
    note text not null,
    made_by text not null,
    made_ms integer not null,
    changed_by text not null,
    changed_ms integer not null,
    state text not null check (state in ('open', 'published', 'discarded'))
) strict;
create table release (
    number integer not null primary key,
    rule_set text not null references rule_set (name),
    place integer not null check (place > 0),
    version text not null,
    set_sha256 text not null check (length(set_sha256) = 64),
    document text not null references document (sha256),
    held text not null,
    how text not null check (how in ('publish', 'schedule', 'undo', 'hold-back', 'lift')),
    draft text references draft (id),
    published_by text not null,
    published_ms integer not null,
    audit_sequence integer not null,
    audit_hash text not null check (length(audit_hash) = 64),
    key_id text not null,
    signature text not null,
    unique (rule_set, place)
) strict;
create trigger release_is_not_changed before update on release begin
    select raise(abort, 'a release is never changed');
end;
create trigger release_is_not_deleted before delete on release begin
    select raise(abort, 'a release is never deleted');
end;
create table schedule (
    id text not null primary key,
    draft text not null references draft (id),
    rule_set text not null references rule_set (name),
    document text not null references document (sha256),
    at_ms integer not null,
    wall text not null,
    zone text not null,
    state text not null check (state in ('waiting', 'fired', 'cancelled', 'refused')),
    made_by text not null,
    made_ms integer not null,
    ended_ms integer,
    release integer references release (number),
    told text not null
) strict;
create index schedule_waiting on schedule (state, at_ms);
create table held_back (
    id integer not null primary key,
    rule_set text not null references rule_set (name),
    kind text not null check (kind in ('rule', 'material', 'source')),
    entry text not null,
    caution text not null,
    because text not null,
    made_by text not null,
    made_ms integer not null,
    verdict text check (verdict in ('keep', 'lift')),
    reviewed_by text,
    reviewed_ms integer,
    review_because text
) strict;
