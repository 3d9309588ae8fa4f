-- Why: every inspection names the version that judged it, for ever, so that golden responses and limit sets are rows that never
-- change; sign-off and activation are rows of their own beside them.
create table golden_response (
  id uuid not null,
  product text not null,
  tuning text not null,
  version integer not null,
  name text not null,
  level_db real[] not null,
  phase_deg real[],
  digest text not null,
  author uuid,
  made_at timestamptz not null,
  constraint golden_response_pkey primary key (id),
  constraint golden_response_tuning_fkey foreign key (product, tuning) references tuning (product, key),
  constraint golden_response_version_unique unique (product, tuning, version),
  constraint golden_response_version_positive check (version >= 1),
  constraint golden_response_level_points check (cardinality(level_db) = 241),
  constraint golden_response_phase_points check (cardinality(phase_deg) = 241),
  constraint golden_response_digest_form check (digest ~ '^[0-9a-f]{64}$')
);
comment on column golden_response.name is 'The file name by which limit sets refer to it; several versions may share it.';
comment on column golden_response.level_db is 'dB SPL re 20 µPa at the 241 grid points, unsmoothed.';
comment on column golden_response.phase_deg is 'Degrees relative to the arrival; NULL if not known.';
comment on column golden_response.digest is 'SHA-256 of its canonical CSV, hex.';
comment on column golden_response.author is 'Random reference of the person; NULL: it came from a file in limits/.';

create table limit_set (
  id uuid not null,
  product text not null,
  tuning text not null,
  version integer not null,
  golden_id uuid not null,
  definition text not null,
  digest text not null,
  author uuid,
  made_at timestamptz not null,
  constraint limit_set_pkey primary key (id),
  constraint limit_set_tuning_fkey foreign key (product, tuning) references tuning (product, key),
  constraint limit_set_golden_fkey foreign key (golden_id) references golden_response (id),
  constraint limit_set_version_unique unique (product, tuning, version),
  constraint limit_set_version_positive check (version >= 1),
  constraint limit_set_digest_form check (digest ~ '^[0-9a-f]{64}$')
);
comment on column limit_set.definition is 'The canonical YAML.';
comment on column limit_set.digest is 'SHA-256 over the canonical YAML followed by the golden response''s digest, hex.';
comment on column limit_set.author is 'Random reference of the person; NULL: it came from a file in limits/.';
create index limit_set_golden on limit_set (golden_id);

create table golden_response_sign_off (
  golden_id uuid not null,
  approver uuid,
  reason text,
  signed_at timestamptz not null,
  constraint golden_response_sign_off_pkey primary key (golden_id),
  constraint golden_response_sign_off_golden_fkey foreign key (golden_id) references golden_response (id),
  constraint golden_response_sign_off_reason_length check (char_length(reason) between 1 and 500),
  constraint golden_response_sign_off_says_why check ((approver is null) = (reason is null))
);
comment on column golden_response_sign_off.approver is 'Random reference of the person; NULL: trusted as a file in limits/.';

create table limit_set_sign_off (
  limit_set_id uuid not null,
  approver uuid,
  reason text,
  signed_at timestamptz not null,
  constraint limit_set_sign_off_pkey primary key (limit_set_id),
  constraint limit_set_sign_off_set_fkey foreign key (limit_set_id) references limit_set (id),
  constraint limit_set_sign_off_reason_length check (char_length(reason) between 1 and 500),
  constraint limit_set_sign_off_says_why check ((approver is null) = (reason is null))
);
comment on column limit_set_sign_off.approver is 'Random reference of the person; NULL: trusted as a file in limits/.';

create table limit_set_activation (
  id uuid not null,
  limit_set_id uuid not null,
  active_from timestamptz not null,
  set_at timestamptz not null,
  constraint limit_set_activation_pkey primary key (id),
  constraint limit_set_activation_set_fkey foreign key (limit_set_id) references limit_set_sign_off (limit_set_id)
);
comment on table limit_set_activation is
  'Which version judges from when: at an instant the row with the latest active_from up to it, the one set last of equal ones.';
create index limit_set_activation_of on limit_set_activation (limit_set_id);
