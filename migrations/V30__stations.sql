-- V30  Why: a level needs both ends of a station's chain, and left and right sit on two different simulators. Each calibration
-- and correction is a row of its own, never changed: an inspection's proof names the rows that it was computed with.

create table station (
  id         uuid        not null,
  name       text        not null,
  note       text,
  created_at timestamptz not null,
  constraint station_pkey primary key (id),
  constraint station_name_key unique (name),
  constraint station_name_form check (name ~ '^[a-z0-9-]{1,32}$'),
  constraint station_note_length check (char_length(note) between 1 and 200)
);
comment on column station.note is 'Where it stands or what it is; may be changed, is part of no record.';

create table microphone_calibration (
  id                    uuid             not null,
  station_id            uuid             not null,
  channel               text             not null,
  ear_simulator         text             not null,
  ear_simulator_serial  text             not null,
  calibrator_serial     text             not null,
  stated_level_db       double precision not null,
  stated_frequency_hz   double precision not null,
  pascal_per_full_scale double precision not null,
  tone_amplitude        double precision not null,
  tone_frequency_hz     double precision not null,
  tone_distortion_percent double precision not null,
  tone_drift_db         double precision not null,
  tone_sha256           text             not null,
  change_db             double precision,
  changed               boolean          not null,
  operator              uuid             not null,
  measured_at           timestamptz      not null,
  valid_until           timestamptz      not null,
  recorded_at           timestamptz      not null,
  constraint microphone_calibration_pkey primary key (id),
  constraint microphone_calibration_station_fkey foreign key (station_id) references station (id),
  constraint microphone_calibration_channel_known check (channel in ('LEFT', 'RIGHT')),
  constraint microphone_calibration_pascal_positive check (pascal_per_full_scale > 0 and pascal_per_full_scale < 'infinity'),
  constraint microphone_calibration_amplitude_positive check (tone_amplitude > 0 and tone_amplitude < 'infinity'),
  constraint microphone_calibration_tone_digest check (tone_sha256 ~ '^[0-9a-f]{64}$'),
  constraint microphone_calibration_holds_some_time check (valid_until > measured_at)
);
comment on column microphone_calibration.stated_level_db is 'Level that the calibrator states, dB re 20 µPa.';
comment on column microphone_calibration.pascal_per_full_scale is
  'Sound pressure (instantaneous, Pa) that a sample of 1.0 stands for: √2 · p_rms(stated level) / tone_amplitude.';
comment on column microphone_calibration.tone_amplitude is 'Fitted peak of the tone re full scale.';
comment on column microphone_calibration.change_db is
  'Change of pascal_per_full_scale against the calibration before, dB; NULL for the first one of the channel.';
comment on column microphone_calibration.changed is 'The change was beyond the plant''s limit at that time.';
comment on column microphone_calibration.operator is 'Random reference of the person; the name is kept elsewhere and can be erased.';

create index microphone_calibration_newest
  on microphone_calibration (station_id, channel, measured_at desc, recorded_at desc);

create table output_calibration (
  id                   uuid             not null,
  station_id           uuid             not null,
  tone_dbfs            double precision not null,
  frequency_hz         double precision not null,
  reading_mv_rms       double precision not null,
  meter_serial         text             not null,
  volts_per_full_scale double precision not null,
  change_db            double precision,
  changed              boolean          not null,
  operator             uuid             not null,
  measured_at          timestamptz      not null,
  valid_until          timestamptz      not null,
  recorded_at          timestamptz      not null,
  constraint output_calibration_pkey primary key (id),
  constraint output_calibration_station_fkey foreign key (station_id) references station (id),
  constraint output_calibration_tone_below_full_scale check (tone_dbfs <= 0),
  constraint output_calibration_reading_positive check (reading_mv_rms > 0 and reading_mv_rms < 'infinity'),
  constraint output_calibration_volts_positive check (volts_per_full_scale > 0 and volts_per_full_scale < 'infinity'),
  constraint output_calibration_holds_some_time check (valid_until > measured_at)
);
comment on column output_calibration.tone_dbfs is 'Peak of the played tone re digital full scale, dB.';
comment on column output_calibration.volts_per_full_scale is
  'Voltage (instantaneous, V) at the earphone''s terminals for a sample of 1.0: √2 · V_rms / 10^(tone_dbfs/20).';

create index output_calibration_newest on output_calibration (station_id, measured_at desc, recorded_at desc);
