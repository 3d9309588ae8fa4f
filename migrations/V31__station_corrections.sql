-- V31  Why: the difference between a station's own two sides would go straight into the match limit. It is measured by a swap
-- study and kept as a numbered version with its uncertainty and the digests of the captures that it was computed from.

create table station_correction (
  id                 uuid             not null,
  station_id         uuid             not null,
  version            integer          not null,
  reference_unit     text             not null,
  stimulus           text             not null,
  left_minus_right_db real[]          not null,
  uncertainty_db     real[]           not null,
  scatter_db         double precision not null,
  left_calibration   uuid             not null,
  right_calibration  uuid             not null,
  operator           uuid             not null,
  measured_at        timestamptz      not null,
  valid_until        timestamptz      not null,
  recorded_at        timestamptz      not null,
  constraint station_correction_pkey primary key (id),
  constraint station_correction_version_key unique (station_id, version),
  constraint station_correction_station_fkey foreign key (station_id) references station (id),
  constraint station_correction_left_calibration_fkey foreign key (left_calibration) references microphone_calibration (id),
  constraint station_correction_right_calibration_fkey foreign key (right_calibration) references microphone_calibration (id),
  constraint station_correction_version_counts_from_one check (version >= 1),
  constraint station_correction_curve_length check (cardinality(left_minus_right_db) = 241),
  constraint station_correction_uncertainty_length check (cardinality(uncertainty_db) = 241),
  constraint station_correction_holds_some_time check (valid_until > measured_at)
);
comment on column station_correction.left_minus_right_db is
  'The station''s own left − right difference in dB at the 241 grid points; half is taken from the left, half added to the right.';
comment on column station_correction.uncertainty_db is 'Its standard uncertainty in dB at the 241 grid points, from seating scatter.';
comment on column station_correction.scatter_db is 'Standard deviation between seatings, r.m.s. over 100 Hz to 8 kHz, dB.';

create index station_correction_newest on station_correction (station_id, measured_at desc, version desc);

create table station_correction_capture (
  correction_id uuid    not null,
  swapped       boolean not null,
  channel       text    not null,
  seating       integer not null,
  sha256        text    not null,
  constraint station_correction_capture_pkey primary key (correction_id, swapped, channel, seating),
  constraint station_correction_capture_correction_fkey foreign key (correction_id) references station_correction (id),
  constraint station_correction_capture_channel_known check (channel in ('LEFT', 'RIGHT')),
  constraint station_correction_capture_seating_counts_from_one check (seating >= 1),
  constraint station_correction_capture_digest check (sha256 ~ '^[0-9a-f]{64}$')
);
comment on column station_correction_capture.channel is 'The station''s simulator channel, whichever earpiece sat on it.';
comment on column station_correction_capture.swapped is 'True for seatings with the earpieces on each other''s simulator.';
