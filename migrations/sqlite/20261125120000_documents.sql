-- Content by its hash: the files of a rule set, deflated. Instants are whole milliseconds since 1970, UTC.
create table organisation (
    name text not null primary key,
    title text not null,
    made_ms integer not null
) strict;
create table document (
    sha256 text not null primary key check (length(sha256) = 64),
    bytes blob not null,
    made_ms integer not null
) strict;
create table rule_set (
    name text not null primary key,
    organisation text not null references organisation (name),
    made_ms integer not null
) strict;
