-- V37  Why: a verdict, a cleared block or a budget rests on these rows; nothing of them may change afterwards, as for calibrations.

create trigger reference_unit_is_insert_only before update or delete on reference_unit
  for each row execute function refuse_change();
create trigger reference_unit_no_truncate before truncate on reference_unit
  for each statement execute function refuse_change();
revoke update, delete, truncate on reference_unit from "${serviceRole}";

create trigger station_verification_is_insert_only before update or delete on station_verification
  for each row execute function refuse_change();
create trigger station_verification_no_truncate before truncate on station_verification
  for each statement execute function refuse_change();
revoke update, delete, truncate on station_verification from "${serviceRole}";

create trigger station_verification_region_is_insert_only before update or delete on station_verification_region
  for each row execute function refuse_change();
create trigger station_verification_region_no_truncate before truncate on station_verification_region
  for each statement execute function refuse_change();
revoke update, delete, truncate on station_verification_region from "${serviceRole}";

create trigger station_clearing_is_insert_only before update or delete on station_clearing
  for each row execute function refuse_change();
create trigger station_clearing_no_truncate before truncate on station_clearing
  for each statement execute function refuse_change();
revoke update, delete, truncate on station_clearing from "${serviceRole}";

create trigger gauge_study_is_insert_only before update or delete on gauge_study
  for each row execute function refuse_change();
create trigger gauge_study_no_truncate before truncate on gauge_study
  for each statement execute function refuse_change();
revoke update, delete, truncate on gauge_study from "${serviceRole}";

create trigger gauge_study_part_is_insert_only before update or delete on gauge_study_part
  for each row execute function refuse_change();
create trigger gauge_study_part_no_truncate before truncate on gauge_study_part
  for each statement execute function refuse_change();
revoke update, delete, truncate on gauge_study_part from "${serviceRole}";

create trigger gauge_study_appraiser_is_insert_only before update or delete on gauge_study_appraiser
  for each row execute function refuse_change();
create trigger gauge_study_appraiser_no_truncate before truncate on gauge_study_appraiser
  for each statement execute function refuse_change();
revoke update, delete, truncate on gauge_study_appraiser from "${serviceRole}";

create trigger gauge_study_capture_is_insert_only before update or delete on gauge_study_capture
  for each row execute function refuse_change();
create trigger gauge_study_capture_no_truncate before truncate on gauge_study_capture
  for each statement execute function refuse_change();
revoke update, delete, truncate on gauge_study_capture from "${serviceRole}";

create trigger station_idle_floor_is_insert_only before update or delete on station_idle_floor
  for each row execute function refuse_change();
create trigger station_idle_floor_no_truncate before truncate on station_idle_floor
  for each statement execute function refuse_change();
revoke update, delete, truncate on station_idle_floor from "${serviceRole}";
