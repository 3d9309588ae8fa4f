-- Why: a version that judged units must not change afterwards, nor who signed it. The service's role may add rows, nothing else,
-- and the triggers refuse even the tables' owner.

create trigger golden_response_is_insert_only before update or delete on golden_response
  for each row execute function refuse_change();
create trigger golden_response_no_truncate before truncate on golden_response
  for each statement execute function refuse_change();
revoke update, delete, truncate on golden_response from "${serviceRole}";

create trigger limit_set_is_insert_only before update or delete on limit_set
  for each row execute function refuse_change();
create trigger limit_set_no_truncate before truncate on limit_set
  for each statement execute function refuse_change();
revoke update, delete, truncate on limit_set from "${serviceRole}";

create trigger golden_response_sign_off_is_insert_only before update or delete on golden_response_sign_off
  for each row execute function refuse_change();
create trigger golden_response_sign_off_no_truncate before truncate on golden_response_sign_off
  for each statement execute function refuse_change();
revoke update, delete, truncate on golden_response_sign_off from "${serviceRole}";

create trigger limit_set_sign_off_is_insert_only before update or delete on limit_set_sign_off
  for each row execute function refuse_change();
create trigger limit_set_sign_off_no_truncate before truncate on limit_set_sign_off
  for each statement execute function refuse_change();
revoke update, delete, truncate on limit_set_sign_off from "${serviceRole}";

create trigger limit_set_activation_is_insert_only before update or delete on limit_set_activation
  for each row execute function refuse_change();
create trigger limit_set_activation_no_truncate before truncate on limit_set_activation
  for each statement execute function refuse_change();
revoke update, delete, truncate on limit_set_activation from "${serviceRole}";
