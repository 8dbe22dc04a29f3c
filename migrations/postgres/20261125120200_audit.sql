-- Who did what: each row carries the hash of the one before. The signed head tells how many there must be.
create table audit (
    sequence bigint not null primary key check (sequence > 0),
    at_ms bigint not null,
    who text not null,
    act text not null,
    what text not null,
    detail text not null,
    previous text not null check (length(previous) = 64),
    hash text not null check (length(hash) = 64)
);
create function audit_is_not_changed() returns trigger language plpgsql as $$ begin
    raise exception 'an audit row is never changed';
end $$;
create trigger audit_is_not_changed before update on audit for each row execute function audit_is_not_changed();
create function audit_is_not_deleted() returns trigger language plpgsql as $$ begin
    raise exception 'an audit row is never deleted';
end $$;
create trigger audit_is_not_deleted before delete on audit for each row execute function audit_is_not_deleted();
create table audit_head (
    one bigint not null primary key check (one = 1),
    sequence bigint not null,
    hash text not null,
    key_id text not null,
    signature text not null
);
