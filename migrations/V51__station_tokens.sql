-- Why: rigs and benches send captures without a person's session; what they held while the service was away must outlive one.
-- Only the digest of a token is kept, so that a copy of the database opens nothing.
create table station_token (
  id uuid not null,
  station text not null,
  name text not null,
  token_sha256 bytea not null,
  made_at timestamptz not null,
  made_by uuid,
  last_used_at timestamptz,
  revoked_at timestamptz,
  revoked_by uuid,
  constraint station_token_pk primary key (id),
  constraint station_token_digest_unique unique (token_sha256),
  constraint station_token_digest_length check (octet_length(token_sha256) = 32),
  constraint station_token_name_length check (char_length(name) between 1 and 64),
  constraint station_token_station_fkey foreign key (station) references station (name),
  constraint station_token_made_by_fkey foreign key (made_by) references person (ref),
  constraint station_token_revoked_by_fkey foreign key (revoked_by) references person (ref)
);
create index station_token_by_station on station_token (station, made_at);
comment on column station_token.token_sha256 is 'The token has 256 random bits, so that one round of SHA-256 is enough.';
comment on column station_token.last_used_at is 'To the minute: it is not written with every request.';
