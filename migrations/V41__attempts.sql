-- V41  Why: what was sent is kept as it was sent, judged or not. One attempt is one seating's captures; its curves stand
-- unsmoothed, 32 bit, and everything judged is computed from them. Sealed: insert only.
create table attempt (
  id uuid not null,
  inspection_id uuid not null,
  number integer not null,
  seating integer not null,
  outcome text not null,
  valid boolean not null,
  station text not null,
  operator_ref uuid not null,
  measured_at timestamptz not null,
  received_at timestamptz not null,
  stimulus text,
  left_sha256 text not null,
  left_bytes bigint not null,
  left_format text not null,
  right_sha256 text not null,
  right_bytes bigint not null,
  right_format text not null,
  idle_left_sha256 text,
  idle_right_sha256 text,
  left_microphone_id uuid,
  right_microphone_id uuid,
  output_id uuid,
  correction_id uuid,
  reasons jsonb not null,
  software_version text not null,
  constraint attempt_pk primary key (id),
  constraint attempt_inspection_fk foreign key (inspection_id) references inspection (id),
  constraint attempt_number_once unique (inspection_id, number),
  constraint attempt_number_counts_from_1 check (number >= 1 and seating >= 1),
  constraint attempt_outcome_known check (outcome in ('PASS', 'FAIL', 'VALID', 'RESEAT', 'INVALID')),
  constraint attempt_invalid_is_not_valid check (not valid or outcome in ('PASS', 'FAIL', 'VALID')),
  constraint attempt_format_known
    check (left_format in ('WAV', 'WAV_LEFT_OF_TWO', 'CURVE') and right_format in ('WAV', 'WAV_RIGHT_OF_TWO', 'CURVE')),
  constraint attempt_digests_are_sha256 check (
    left_sha256 ~ '^[0-9a-f]{64}$' and right_sha256 ~ '^[0-9a-f]{64}$'
    and idle_left_sha256 ~ '^[0-9a-f]{64}$' and idle_right_sha256 ~ '^[0-9a-f]{64}$')
);

comment on column attempt.valid is 'True: takes part in the mean of the seatings.';
comment on column attempt.stimulus is 'Name of the stimulus; NULL when both sides are finished curves.';
comment on column attempt.left_sha256 is 'Digest of the file in the capture store, exactly as sent; the same for both sides of a two-channel file.';
comment on column attempt.left_microphone_id is 'Calibration that gave the level; NULL if there was none (the attempt is INVALID then).';
comment on column attempt.reasons is 'Why it could not be judged: kind and numbers, no sentence. Empty for a valid attempt.';

-- A seating counts once.
create unique index attempt_one_valid_a_seating on attempt (inspection_id, seating) where valid;

create trigger attempt_is_insert_only before update or delete on attempt for each row execute function refuse_change();
create trigger attempt_no_truncate before truncate on attempt for each statement execute function refuse_change();
revoke update, delete, truncate on attempt from "${serviceRole}";

create table attempt_channel (
  attempt_id uuid not null,
  channel text not null,
  level_db real[] not null,
  phase_deg real[],
  snr_db real[],
  arrival_seconds double precision,
  peak double precision,
  constraint attempt_channel_pk primary key (attempt_id, channel),
  constraint attempt_channel_attempt_fk foreign key (attempt_id) references attempt (id),
  constraint attempt_channel_known check (channel in ('LEFT', 'RIGHT')),
  constraint attempt_channel_on_the_grid check (
    cardinality(level_db) = 241 and cardinality(phase_deg) = 241 and cardinality(snr_db) = 241)
);

comment on table attempt_channel is 'Curves at the 241 grid points, NaN where absent. No row: no level could be computed.';
comment on column attempt_channel.level_db is 'dB SPL re 20 µPa at the set''s drive, correction applied, unsmoothed.';
comment on column attempt_channel.phase_deg is 'Degrees relative to the arrival; NULL for a curve without phase.';
comment on column attempt_channel.snr_db is 'Signal-to-noise ratio of the response, dB; NULL for a finished curve.';
comment on column attempt_channel.peak is 'Largest sample, full scale = 1; NULL for a finished curve.';

create trigger attempt_channel_is_insert_only before update or delete on attempt_channel
  for each row execute function refuse_change();
create trigger attempt_channel_no_truncate before truncate on attempt_channel
  for each statement execute function refuse_change();
revoke update, delete, truncate on attempt_channel from "${serviceRole}";
