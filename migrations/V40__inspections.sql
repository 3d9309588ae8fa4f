-- V40  Why: an inspection is one judged test of a unit in one tuning under one limit-set version. Its row may change while it
-- is open (tries are counted, the last attempt is noted); once closed or abandoned it is final, and a trigger says so.
-- Ids of other modules (limit set, person, calibration) carry no foreign key: each module owns its tables.
create table inspection (
  id uuid not null,
  serial text not null,
  batch text not null,
  product text not null,
  tuning text not null,
  station text not null,
  operator_ref uuid not null,
  occasion text not null,
  left_earpiece text,
  right_earpiece text,
  limit_set_id uuid not null,
  limit_set_version integer not null,
  limit_set_digest text not null,
  ear_simulator text not null,
  seatings_wanted integer not null,
  tries_allowed integer not null,
  state text not null,
  verdict text,
  last_attempt text not null,
  valid_seatings integer not null,
  tries integer not null,
  started_at timestamptz not null,
  last_attempt_at timestamptz not null,
  closed_at timestamptz,
  abandoned_because text,
  software_version text not null,
  constraint inspection_pk primary key (id),
  constraint inspection_serial_length check (char_length(serial) between 1 and 64),
  constraint inspection_batch_length check (char_length(batch) between 1 and 64),
  constraint inspection_occasion_known check (occasion in ('PRODUCTION', 'REWORK', 'AUDIT', 'RETURN')),
  constraint inspection_state_known check (state in ('OPEN', 'CLOSED', 'ABANDONED')),
  constraint inspection_last_attempt_known check (last_attempt in ('PASS', 'FAIL', 'VALID', 'RESEAT', 'INVALID')),
  constraint inspection_verdict_only_when_closed check ((state = 'CLOSED') = (verdict is not null)),
  constraint inspection_verdict_known check (verdict in ('PASS', 'FAIL')),
  constraint inspection_end_has_a_time check ((state = 'OPEN') = (closed_at is null)),
  constraint inspection_abandoned_says_why check ((state = 'ABANDONED') = (abandoned_because is not null)),
  constraint inspection_counts_not_negative check (valid_seatings >= 0 and tries >= 0)
);

comment on column inspection.operator_ref is 'Random reference of the person who sent the first attempt; the name stands with the people only.';
comment on column inspection.started_at is 'When the first attempt was measured; production order.';
comment on column inspection.last_attempt_at is 'When the newest attempt arrived; the time-out counts from here.';
comment on column inspection.closed_at is 'When it was closed or abandoned; NULL while open.';
comment on column inspection.tries is 'Mountings so far; an INVALID attempt is not one, because its cause is not the mounting.';

-- At most one open inspection of a unit in a tuning and occasion: a second client continues it or is refused.
create unique index inspection_one_open on inspection (serial, product, tuning, occasion) where state = 'OPEN';
-- Production judges a unit once in each tuning; anything later is rework, audit or return.
create unique index inspection_one_production on inspection (serial, product, tuning)
  where state = 'CLOSED' and occasion = 'PRODUCTION';
create index inspection_by_serial on inspection (serial, id);
create index inspection_by_batch on inspection (batch, product, tuning, started_at, id);
create index inspection_by_station on inspection (station, id);

create function refuse_change_after_the_end() returns trigger language plpgsql as $$
begin
  if tg_op = 'DELETE' then
    raise exception 'an inspection is never deleted' using errcode = 'insufficient_privilege';
  end if;
  if old.state <> 'OPEN' then
    raise exception 'inspection % is % and final', old.id, lower(old.state) using errcode = 'insufficient_privilege';
  end if;
  if (new.id, new.serial, new.product, new.tuning, new.occasion, new.limit_set_id)
      is distinct from (old.id, old.serial, old.product, old.tuning, old.occasion, old.limit_set_id) then
    raise exception 'an inspection keeps its unit, tuning, occasion and limit set' using errcode = 'insufficient_privilege';
  end if;
  return new;
end $$;

create trigger inspection_is_final before update or delete on inspection
  for each row execute function refuse_change_after_the_end();
create trigger inspection_no_truncate before truncate on inspection for each statement execute function refuse_change();
revoke delete, truncate on inspection from "${serviceRole}";
