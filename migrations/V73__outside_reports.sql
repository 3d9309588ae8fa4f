-- Why: somebody publishes a measurement of a pair, and the answer must be shown later exactly as it was given. What was sent and
-- what it was held against is sealed; who published it is free text, stands beside it and can be erased.
create table outside_report (
  id uuid not null,
  serial text not null,
  inspection_id uuid not null,
  product text not null,
  tuning text not null,
  received_at timestamptz not null,
  received_by uuid,
  rig jsonb not null,
  files jsonb not null,
  left_db real[],
  right_db real[],
  average_db real[],
  comparison jsonb not null,
  software_version text not null,
  constraint outside_report_pk primary key (id),
  constraint outside_report_on_the_grid check (
    cardinality(left_db) = 241 and cardinality(right_db) = 241 and cardinality(average_db) = 241),
  constraint outside_report_both_channels check ((left_db is null) = (right_db is null)),
  constraint outside_report_has_a_curve check (left_db is not null or average_db is not null)
);
create index outside_report_by_serial on outside_report (serial, id);
comment on column outside_report.inspection_id is 'Of ours: what it was held against.';
comment on column outside_report.rig is 'What is known of how it was measured: ear simulator, uncertainty, seatings, levelled; absent means not known.';
comment on column outside_report.files is 'Part and SHA-256 of every file as sent; the bytes are in the capture store.';
comment on column outside_report.left_db is 'Mean of their seatings, dB as sent, on the grid; NaN where absent.';
comment on column outside_report.comparison is 'By region: both differences, both expanded uncertainties, E_n, limit, outcome; what was assumed, what is asked.';

create trigger outside_report_is_insert_only before update or delete on outside_report
  for each row execute function refuse_change();
create trigger outside_report_no_truncate before truncate on outside_report
  for each statement execute function refuse_change();
revoke update, delete, truncate on outside_report from "${serviceRole}";

create table outside_report_source (
  report_id uuid not null,
  name text,
  published_on date,
  constraint outside_report_source_pk primary key (report_id),
  constraint outside_report_source_of foreign key (report_id) references outside_report (id),
  constraint outside_report_source_name_length check (char_length(name) between 1 and 200)
);
grant delete on outside_report_source to "${serviceRole}";
