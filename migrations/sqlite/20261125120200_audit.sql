-- Who did what: each row carries the hash of the one before. The signed head tells how many there must be.
create table audit (
    sequence integer not null primary key check (sequence > 0),
    at_ms integer not null,
    who text not null,
    act text not null,
    what text not null,
    detail text not null,
    previous text not null check (length(previous) = 64),
    hash text not null check (length(hash) = 64)
) strict;
create trigger audit_is_not_changed before update on audit begin
    select raise(abort, 'an audit row is never changed');
end;
create trigger audit_is_not_deleted before delete on audit begin
    select raise(abort, 'an audit row is never deleted');
end;
create table audit_head (
    one integer not null primary key check (one = 1),
    sequence integer not null,
    hash text not null,
    key_id text not null,
    signature text not null
) strict;
