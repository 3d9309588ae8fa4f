-- Why: passwords must not be guessed quickly. The count stands in the database, so that neither a restart nor a second process
-- begins anew. Only digests are kept: what was typed as a name may have been a password.
create table sign_in_attempt (
  scope text not null,
  subject_sha256 bytea not null,
  failures integer not null,
  last_at timestamptz not null,
  blocked_until timestamptz not null,
  constraint sign_in_attempt_pk primary key (scope, subject_sha256),
  constraint sign_in_attempt_scope_known check (scope in ('name', 'address', 'station')),
  constraint sign_in_attempt_failures check (failures >= 0)
);
create index sign_in_attempt_by_time on sign_in_attempt (last_at);
comment on column sign_in_attempt.failures is 'In a row, the one that is being checked included; none for an hour begins anew.';

grant delete on sign_in_attempt to "${serviceRole}";
