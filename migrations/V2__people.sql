-- Why: names and badges of people stand in this table only and can be erased; every other record holds the random reference.
create table person (
  ref uuid not null,
  name text,
  badge text,
  erasable boolean not null default true,
  added_at timestamptz not null,
  erased_at timestamptz,
  constraint person_pk primary key (ref),
  constraint person_name_unique unique (name),
  constraint person_badge_unique unique (badge),
  constraint person_name_length check (char_length(name) between 1 and 64),
  constraint person_badge_length check (char_length(badge) between 1 and 64),
  constraint person_erased_has_no_name check (erased_at is null or (name is null and badge is null))
);
comment on column person.ref is 'Random (UUIDv4), so that neither time nor order of entry can be read from it.';
comment on column person.name is 'As typed or scanned, Unicode NFC; null once erased.';
comment on column person.erasable is 'False while a duty to keep records binds the name to its signature.';
