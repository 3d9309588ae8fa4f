-- V42  Why: the verdict with everything that explains it, written once when an inspection closes. Sealed: insert only.
create table inspection_verdict (
  inspection_id uuid not null,
  verdict text not null,
  judged_at timestamptz not null,
  left_alignment_db double precision,
  right_alignment_db double precision,
  reasons jsonb not null,
  regions jsonb not null,
  ledger_entry_id uuid not null,
  software_version text not null,
  constraint inspection_verdict_pk primary key (inspection_id),
  constraint inspection_verdict_inspection_fk foreign key (inspection_id) references inspection (id),
  constraint inspection_verdict_known check (verdict in ('PASS', 'FAIL'))
);

comment on column inspection_verdict.left_alignment_db is 'a_L: median of level minus golden over the alignment band, taken out before windows are judged; NULL if the unit never sealed.';
comment on column inspection_verdict.reasons is 'Failed checks as kind and numbers, first one first; the sentence is made for each reader''s language.';
comment on column inspection_verdict.regions is 'Every check in every region, passed or not.';

create trigger inspection_verdict_is_insert_only before update or delete on inspection_verdict
  for each row execute function refuse_change();
create trigger inspection_verdict_no_truncate before truncate on inspection_verdict
  for each statement execute function refuse_change();
revoke update, delete, truncate on inspection_verdict from "${serviceRole}";
