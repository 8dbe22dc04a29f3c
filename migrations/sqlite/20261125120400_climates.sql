-- What an operator registers. A climate is immutable by content: its id points to the newest.
create table climate (
    number integer not null primary key,
    id text not null,
    sha256 text not null check (length(sha256) = 64),
    body text not null,
    made_by text not null,
    made_ms integer not null
) strict;
create index climate_by_id on climate (id, number);
create table weather (
    climate text not null,
    issued_ms integer not null,
    sha256 text not null check (length(sha256) = 64),
    body text not null,
    made_ms integer not null,
    primary key (climate, issued_ms)
) strict;
create table product_map (
    organisation text not null references organisation (name),
    name text not null,
    revision integer not null check (revision > 0),
    body text not null,
    changed_by text not null,
    changed_ms integer not null,
    primary key (organisation, name)
) strict;
