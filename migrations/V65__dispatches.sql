-- V65  Why: when a reviewer or a customer asks, the maker must know which units left the house, when and under which delivery.
-- Sealed: insert only, each dispatch with its units in one ledger entry.
create table dispatch (
  id          uuid        not null,
  reference   text        not null,
  shipped_at  timestamptz not null,
  recorded_at timestamptz not null,
  person      uuid,
  units       integer     not null,
  digest      text        not null,
  constraint dispatch_pkey primary key (id),
  constraint dispatch_reference_once unique (reference),
  constraint dispatch_reference_length check (char_length(reference) between 1 and 64),
  constraint dispatch_holds_units check (units >= 1),
  constraint dispatch_digest_is_sha256 check (digest ~ '^[0-9a-f]{64}$')
);
comment on column dispatch.reference is 'The maker''s own number, such as that of the delivery note.';
comment on column dispatch.digest is 'SHA-256 over time and serials, so that the same list sent again is known as the same.';
comment on column dispatch.person is 'Random reference of the person who recorded it; NULL if a program did.';

create table dispatch_unit (
  dispatch_id uuid    not null,
  position    integer not null,
  serial      text    not null,
  verdict     text    not null,
  constraint dispatch_unit_pkey primary key (dispatch_id, position),
  constraint dispatch_unit_dispatch_fkey foreign key (dispatch_id) references dispatch (id),
  constraint dispatch_unit_once unique (dispatch_id, serial),
  constraint dispatch_unit_verdict_known check (verdict in ('PASS', 'FAIL', 'INCOMPLETE'))
);
comment on column dispatch_unit.verdict is 'The unit''s verdict when the dispatch was recorded.';

create index dispatch_unit_by_serial on dispatch_unit (serial);

create trigger dispatch_is_insert_only before update or delete on dispatch
  for each row execute function refuse_change();
create trigger dispatch_no_truncate before truncate on dispatch
  for each statement execute function refuse_change();
revoke update, delete, truncate on dispatch from "${serviceRole}";
create trigger dispatch_unit_is_insert_only before update or delete on dispatch_unit
  for each row execute function refuse_change();
create trigger dispatch_unit_no_truncate before truncate on dispatch_unit
  for each statement execute function refuse_change();
revoke update, delete, truncate on dispatch_unit from "${serviceRole}";
