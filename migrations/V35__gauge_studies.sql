-- V35  Why: how far the same unit, mounted again or measured by another person or station, comes out the same is the uncertainty that
-- guarded verdicts rest on. Plan and captures of the study are kept so that every number of the budget can be worked out again.

create table gauge_study (
  id             uuid        not null,
  station_id     uuid        not null,
  product        text        not null,
  tuning         text        not null,
  appraiser_kind text        not null,
  seatings       integer     not null,
  planned_by     uuid        not null,
  planned_at     timestamptz not null,
  constraint gauge_study_pkey primary key (id),
  constraint gauge_study_station_fkey foreign key (station_id) references station (id),
  constraint gauge_study_appraiser_kind_known check (appraiser_kind in ('OPERATOR', 'STATION')),
  constraint gauge_study_seatings_repeat check (seatings >= 2)
);
create index gauge_study_newest on gauge_study (station_id, product, tuning, planned_at desc);

create table gauge_study_part (
  study_id uuid    not null,
  position integer not null,
  serial   text    not null,
  constraint gauge_study_part_pkey primary key (study_id, position),
  constraint gauge_study_part_study_fkey foreign key (study_id) references gauge_study (id),
  constraint gauge_study_part_once unique (study_id, serial)
);

create table gauge_study_appraiser (
  study_id  uuid    not null,
  position  integer not null,
  appraiser uuid    not null,
  constraint gauge_study_appraiser_pkey primary key (study_id, position),
  constraint gauge_study_appraiser_study_fkey foreign key (study_id) references gauge_study (id),
  constraint gauge_study_appraiser_once unique (study_id, appraiser)
);
comment on column gauge_study_appraiser.appraiser is 'A station, or the random reference of a person.';
create index gauge_study_appraiser_studies on gauge_study_appraiser (appraiser);

create table gauge_study_capture (
  id           uuid        not null,
  study_id     uuid        not null,
  part         integer     not null,
  appraiser    integer     not null,
  seating      integer     not null,
  left_db      real[]      not null,
  right_db     real[]      not null,
  left_sha256  text        not null,
  right_sha256 text        not null,
  operator     uuid        not null,
  measured_at  timestamptz not null,
  recorded_at  timestamptz not null,
  constraint gauge_study_capture_pkey primary key (id),
  constraint gauge_study_capture_once unique (study_id, part, appraiser, seating),
  constraint gauge_study_capture_part_fkey foreign key (study_id, part) references gauge_study_part (study_id, position),
  constraint gauge_study_capture_appraiser_fkey foreign key (study_id, appraiser)
    references gauge_study_appraiser (study_id, position),
  constraint gauge_study_capture_seating_counts_from_one check (seating >= 1),
  constraint gauge_study_capture_left_length check (cardinality(left_db) = 241),
  constraint gauge_study_capture_right_length check (cardinality(right_db) = 241),
  constraint gauge_study_capture_left_digest check (left_sha256 ~ '^[0-9a-f]{64}$'),
  constraint gauge_study_capture_right_digest check (right_sha256 ~ '^[0-9a-f]{64}$')
);
comment on column gauge_study_capture.left_db is
  'Level as an inspection stores it: dB SPL at the set''s drive, unsmoothed, the station''s correction applied, NaN where absent.';
