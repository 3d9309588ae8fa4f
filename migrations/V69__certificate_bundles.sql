-- V69  Why: the certificates of a batch are printed as one job, in parts that a crash cannot take away again, by whichever
-- process comes next; the units are pinned when it is asked for, so that a batch that goes on growing does not shift under it.
create table certificate_bundle (
  id uuid not null,
  job uuid not null,
  batch text not null,
  product text not null,
  paper text not null,
  language text not null,
  created_at timestamptz not null,
  constraint certificate_bundle_pk primary key (id),
  constraint certificate_bundle_job_exists foreign key (job) references job (id)
);
create index certificate_bundle_by_batch on certificate_bundle (batch, created_at);

create table certificate_bundle_unit (
  bundle uuid not null,
  place integer not null,
  serial text not null,
  left_out text,
  constraint certificate_bundle_unit_pk primary key (bundle, place),
  constraint certificate_bundle_unit_bundle_exists foreign key (bundle) references certificate_bundle (id) on delete cascade
);
comment on column certificate_bundle_unit.left_out is 'Why the unit has no certificate, a sentence; NULL if it has one or its turn has not come.';

create table certificate_bundle_part (
  bundle uuid not null,
  part integer not null,
  pages integer not null,
  pdf bytea not null,
  constraint certificate_bundle_part_pk primary key (bundle, part),
  constraint certificate_bundle_part_bundle_exists foreign key (bundle) references certificate_bundle (id) on delete cascade,
  constraint certificate_bundle_part_has_pages check (pages > 0)
);

-- Kept for a month, then deleted: what was printed can be printed again, to the same numbers.
grant delete on certificate_bundle, certificate_bundle_unit, certificate_bundle_part to "${serviceRole}";
