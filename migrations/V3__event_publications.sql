-- Why: what one module tells another (an inspection was closed) must survive a crash between commit and listener.
-- The shape is Spring Modulith's version 2 for PostgreSQL; rows are deleted once the listener has done its work.
create table event_publication (
  id uuid not null,
  listener_id text not null,
  event_type text not null,
  serialized_event text not null,
  publication_date timestamptz not null,
  completion_date timestamptz,
  status text,
  completion_attempts integer,
  last_resubmission_date timestamptz,
  constraint event_publication_pk primary key (id)
);
create index event_publication_by_event on event_publication using hash (serialized_event);
create index event_publication_by_completion on event_publication (completion_date);

grant delete on event_publication to "${serviceRole}";
