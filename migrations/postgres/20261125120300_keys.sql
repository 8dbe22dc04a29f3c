-- Keys of programs (only a hash of the secret), and the answers that were given to writes with an Idempotency-Key.
create table api_key (
    id text not null primary key,
    organisation text not null references organisation (name),
    name text not null,
    hash text not null check (length(hash) = 64),
    scopes text not null,
    made_by text not null,
    made_ms bigint not null,
    expires_ms bigint,
    revoked_ms bigint,
    last_used_ms bigint
);
create table answered (
    caller text not null,
    key text not null,
    request_sha256 text not null check (length(request_sha256) = 64),
    state text not null check (state in ('running', 'done')),
    status bigint not null,
    headers text not null,
    body text not null,
    made_ms bigint not null,
    primary key (caller, key)
);
create index answered_by_age on answered (made_ms);
