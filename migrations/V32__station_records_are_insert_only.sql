-- V32  Why: what a verdict was computed with must not change afterwards. The service's role may add rows, nothing else, and the
-- triggers refuse even the tables' owner.

create trigger microphone_calibration_is_insert_only before update or delete on microphone_calibration
  for each row execute function refuse_change();
create trigger microphone_calibration_no_truncate before truncate on microphone_calibration
  for each statement execute function refuse_change();
revoke update, delete, truncate on microphone_calibration from "${serviceRole}";

create trigger output_calibration_is_insert_only before update or delete on output_calibration
  for each row execute function refuse_change();
create trigger output_calibration_no_truncate before truncate on output_calibration
  for each statement execute function refuse_change();
revoke update, delete, truncate on output_calibration from "${serviceRole}";

create trigger station_correction_is_insert_only before update or delete on station_correction
  for each row execute function refuse_change();
create trigger station_correction_no_truncate before truncate on station_correction
  for each statement execute function refuse_change();
revoke update, delete, truncate on station_correction from "${serviceRole}";

create trigger station_correction_capture_is_insert_only before update or delete on station_correction_capture
  for each row execute function refuse_change();
create trigger station_correction_capture_no_truncate before truncate on station_correction_capture
  for each statement execute function refuse_change();
revoke update, delete, truncate on station_correction_capture from "${serviceRole}";
