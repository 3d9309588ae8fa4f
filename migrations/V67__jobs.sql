-- V67  Why: long work is answered with 202 and done behind the scenes, by any process. What is done so far stands here, so that
-- a crash costs the step that was being done and nothing else: a step and its count are one transaction, under the row's lock.
create table job (
  id uuid not null,
  kind text not null,
  parameters text not null,
  state text not null,
  done integer not null,
  total integer,
  failures integer not null,
  not_before timestamptz not null,
  problem text,
  result text,
  started_at timestamptz not null,
  changed_at timestamptz not null,
  constraint job_pk primary key (id),
  constraint job_kind_form check (kind ~ '^[a-z][a-z0-9-]{0,63}$'),
  constraint job_state_known check (state in ('waiting', 'running', 'done', 'failed')),
  constraint job_done_within_total check (done >= 0 and (total is null or done <= total)),
  constraint job_failed_says_why check ((state = 'failed') = (problem is not null)),
  constraint job_result_when_done check (result is null or state = 'done')
);
create index job_to_do on job (changed_at) where state in ('waiting', 'running');

comment on column job.parameters is 'Canonical JSON (RFC 8785): what the kind of job needs to know.';
comment on column job.done is 'Steps done; the next one is the one of this number, from 0.';
comment on column job.total is 'Steps in all; NULL until the first process has looked.';
comment on column job.failures is 'How often the next step has failed so far.';
comment on column job.not_before is 'When the next step may be tried.';
comment on column job.result is 'Address of what came out of it.';
