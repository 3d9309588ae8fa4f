-- Why: people sign in. Their names and badges stay in person, where they can be erased; what they may do stands here. Somebody
-- who is only named by a rig has a row in person and none here.
create table account (
  person uuid not null,
  password_hash text,
  roles text[] not null,
  active boolean not null default true,
  made_at timestamptz not null,
  password_set_at timestamptz,
  constraint account_pk primary key (person),
  constraint account_person_fkey foreign key (person) references person (ref),
  constraint account_roles_known check (roles <@ array['operator', 'engineer', 'administrator']),
  constraint account_password_time check ((password_hash is null) = (password_set_at is null))
);
comment on column account.password_hash is 'With its method in braces before it; null for people who sign in by badge only.';
