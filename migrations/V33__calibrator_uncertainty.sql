-- V33  Why: the uncertainty budget needs how well the sound calibrator's level is known, as its certificate says.

alter table microphone_calibration add column calibrator_uncertainty_db double precision;
alter table microphone_calibration add constraint microphone_calibration_uncertainty_positive
  check (calibrator_uncertainty_db > 0 and calibrator_uncertainty_db < 'infinity');
comment on column microphone_calibration.calibrator_uncertainty_db is
  'Expanded uncertainty (k = 2) of the calibrator''s level by its certificate, dB; NULL if not stated.';
