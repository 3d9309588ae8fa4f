-- Why: what was judged must come out the same when it is computed again from the stored captures. What did not is kept, to be
-- shown; what did is only counted. Nothing here is evidence, so nothing is sealed: it can be computed again at any time.
create table rejudgement (
  id uuid not null,
  asked_for jsonb not null,
  until timestamptz not null,
  software_version text not null,
  started_at timestamptz not null,
  night date,
  constraint rejudgement_pk primary key (id),
  constraint rejudgement_once_a_night unique (night)
);
comment on column rejudgement.asked_for is 'Which inspections: serial, batch, product, tuning, since; absent means any.';
comment on column rejudgement.until is 'Inspections closed up to here, so that the list does not grow while it is worked through.';
comment on column rejudgement.night is 'Of the nightly run, so that of several processes one begins it; NULL for a run that somebody asked for.';

create table rejudgement_step (
  rejudgement_id uuid not null,
  step integer not null,
  inspections integer not null,
  bit_for_bit integer not null,
  differing integer not null,
  constraint rejudgement_step_pk primary key (rejudgement_id, step),
  constraint rejudgement_step_of foreign key (rejudgement_id) references rejudgement (id)
);

create table rejudgement_difference (
  rejudgement_id uuid not null,
  inspection_id uuid not null,
  serial text not null,
  software_version text not null,
  largest_db double precision,
  verdict_then text not null,
  verdict_now text,
  problem text,
  constraint rejudgement_difference_pk primary key (rejudgement_id, inspection_id),
  constraint rejudgement_difference_of foreign key (rejudgement_id) references rejudgement (id)
);
comment on column rejudgement_difference.software_version is 'That judged it first.';
comment on column rejudgement_difference.largest_db is 'Largest difference of a stored level, dB; NULL if nothing could be compared or a point came or went.';
