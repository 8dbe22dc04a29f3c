-- Drafts change, each change with the next revision. Releases never change.
create table draft (
    id text not null primary key,
    rule_set text not null references rule_set (name),
    document text not null references document (sha256),
    revision bigint not null check (revision > 0),
    note text not null,
    made_by text not null,
    made_ms bigint not null,
    changed_by text not null,
    changed_ms bigint not null,
    state text not null check (state in ('open', 'published', 'discarded'))
);
create table release (
    number bigint not null primary key,
    rule_set text not null references rule_set (name),
    place bigint not null check (place > 0),
    version text not null,
    set_sha256 text not null check (length(set_sha256) = 64),
    document text not null references document (sha256),
    held text not null,
    how text not null check (how in ('publish', 'schedule', 'undo', 'hold-back', 'lift')),
    draft text references draft (id),
    published_by text not null,
    published_ms bigint not null,
    audit_sequence bigint not null,
    audit_hash text not null check (length(audit_hash) = 64),
    key_id text not null,
    signature text not null,
    unique (rule_set, place)
);
create function release_is_not_changed() returns trigger language plpgsql as $$ begin
    raise exception 'a release is never changed';
end $$;
create trigger release_is_not_changed before update on release for each row execute function release_is_not_changed();
create function release_is_not_deleted() returns trigger language plpgsql as $$ begin
    raise exception 'a release is never deleted';
end $$;
create trigger release_is_not_deleted before delete on release for each row execute function release_is_not_deleted();
create table schedule (
    id text not null primary key,
    draft text not null references draft (id),
    rule_set text not null references rule_set (name),
    document text not null references document (sha256),
    at_ms bigint not null,
    wall text not null,
    zone text not null,
    state text not null check (state in ('waiting', 'fired', 'cancelled', 'refused')),
    made_by text not null,
    made_ms bigint not null,
    ended_ms bigint,
    release bigint references release (number),
    told text not null
);
create index schedule_waiting on schedule (state, at_ms);
create table held_back (
    id bigint not null primary key,
    rule_set text not null references rule_set (name),
    kind text not null check (kind in ('rule', 'material', 'source')),
    entry text not null,
    caution text not null,
    because text not null,
    made_by text not null,
    made_ms bigint not null,
    verdict text check (verdict in ('keep', 'lift')),
    reviewed_by text,
    reviewed_ms bigint,
    review_because text
);
