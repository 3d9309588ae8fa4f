-- Why: a bench that has lost the service still has to know who stands there. It is given slow digests of the badges of those who
-- signed in at it lately, never the badges themselves.
create table bench_salt (
  station text not null,
  salt bytea not null,
  constraint bench_salt_pk primary key (station),
  constraint bench_salt_station_fkey foreign key (station) references station (name),
  constraint bench_salt_length check (octet_length(salt) = 16)
);

create table known_badge (
  station text not null,
  person uuid not null,
  derived bytea not null,
  signed_in_at timestamptz not null,
  constraint known_badge_pk primary key (station, person),
  constraint known_badge_station_fkey foreign key (station) references bench_salt (station),
  constraint known_badge_person_fkey foreign key (person) references person (ref),
  constraint known_badge_length check (octet_length(derived) = 32)
);
comment on column known_badge.derived is 'PBKDF2 with HMAC-SHA-256 over the badge, salted with the bench''s salt.';

grant delete on known_badge to "${serviceRole}";
