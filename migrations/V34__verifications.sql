-- V34  Why: a fault of the station must not look like bad units. A reference unit with certified curves is measured each shift; if a
-- region does not repeat its certified one, the station may not judge until an engineer clears it, and all of that is on record.

create table reference_unit (
  id            uuid        not null,
  station_id    uuid        not null,
  serial        text        not null,
  product       text        not null,
  tuning        text        not null,
  ear_simulator text        not null,
  left_db       real[]      not null,
  right_db      real[]      not null,
  left_sha256   text        not null,
  right_sha256  text        not null,
  operator      uuid        not null,
  measured_at   timestamptz not null,
  valid_until   timestamptz not null,
  recorded_at   timestamptz not null,
  constraint reference_unit_pkey primary key (id),
  constraint reference_unit_station_fkey foreign key (station_id) references station (id),
  constraint reference_unit_left_length check (cardinality(left_db) = 241),
  constraint reference_unit_right_length check (cardinality(right_db) = 241),
  constraint reference_unit_left_digest check (left_sha256 ~ '^[0-9a-f]{64}$'),
  constraint reference_unit_right_digest check (right_sha256 ~ '^[0-9a-f]{64}$'),
  constraint reference_unit_holds_some_time check (valid_until > measured_at)
);
comment on table reference_unit is 'Certified curves of a reference unit; the newest row of a serial number counts.';
comment on column reference_unit.left_db is 'Certified level, dB SPL at the limit set''s drive, unsmoothed, NaN where absent.';

create index reference_unit_newest on reference_unit (station_id, product, tuning, serial, measured_at desc, recorded_at desc);

create table station_verification (
  id                uuid             not null,
  station_id        uuid             not null,
  reference_unit_id uuid             not null,
  product           text             not null,
  tuning            text             not null,
  limit_set_id      uuid             not null,
  limit_db          double precision not null,
  passed            boolean          not null,
  left_db           real[]           not null,
  right_db          real[]           not null,
  left_sha256       text             not null,
  right_sha256      text             not null,
  operator          uuid             not null,
  measured_at       timestamptz      not null,
  valid_until       timestamptz      not null,
  recorded_at       timestamptz      not null,
  constraint station_verification_pkey primary key (id),
  constraint station_verification_station_fkey foreign key (station_id) references station (id),
  constraint station_verification_reference_fkey foreign key (reference_unit_id) references reference_unit (id),
  constraint station_verification_limit_positive check (limit_db > 0 and limit_db < 'infinity'),
  constraint station_verification_left_length check (cardinality(left_db) = 241),
  constraint station_verification_right_length check (cardinality(right_db) = 241),
  constraint station_verification_left_digest check (left_sha256 ~ '^[0-9a-f]{64}$'),
  constraint station_verification_right_digest check (right_sha256 ~ '^[0-9a-f]{64}$'),
  constraint station_verification_holds_some_time check (valid_until > measured_at)
);
comment on column station_verification.limit_db is 'verification-db of the limit set that was active then.';
comment on column station_verification.limit_set_id is 'The limit set whose regions and smoothing were used.';

create index station_verification_newest on station_verification (station_id, product, tuning, measured_at desc);
create index station_verification_failed on station_verification (station_id, measured_at) where not passed;

create table station_verification_region (
  verification_id uuid             not null,
  position        integer          not null,
  channel         text             not null,
  region          text             not null,
  deviation_db    double precision,
  farthest_db     double precision,
  farthest_hz     double precision,
  passed          boolean          not null,
  constraint station_verification_region_pkey primary key (verification_id, position),
  constraint station_verification_region_verification_fkey foreign key (verification_id) references station_verification (id),
  constraint station_verification_region_channel_known check (channel in ('LEFT', 'RIGHT')),
  constraint station_verification_region_once unique (verification_id, channel, region)
);
comment on column station_verification_region.deviation_db is
  'Mean over the region of measured less certified level, both smoothed, dB; NULL where a curve has no data (not judged).';
comment on column station_verification_region.farthest_db is 'The largest single difference in the region, for information.';

create table station_clearing (
  id         uuid        not null,
  station_id uuid        not null,
  cause      text        not null,
  subject_id uuid        not null,
  reason     text        not null,
  engineer   uuid        not null,
  cleared_at timestamptz not null,
  constraint station_clearing_pkey primary key (id),
  constraint station_clearing_station_fkey foreign key (station_id) references station (id),
  constraint station_clearing_subject_once unique (subject_id)
);
comment on column station_clearing.subject_id is 'The calibration or verification that blocked the station.';
comment on column station_clearing.reason is 'A word from a list: no free text stands in a sealed row.';
comment on column station_clearing.engineer is 'Random reference of the person.';
