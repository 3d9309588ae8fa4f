-- Why: a limit set refers to its golden response by name, and several versions may share a name. Which of them a new set means is
-- said here; sets that exist keep the version that they were drafted with.
create table golden_response_activation (
  id uuid not null,
  golden_id uuid not null,
  active_from timestamptz not null,
  set_at timestamptz not null,
  constraint golden_response_activation_pkey primary key (id),
  constraint golden_response_activation_golden_fkey foreign key (golden_id) references golden_response_sign_off (golden_id)
);
create index golden_response_activation_of on golden_response_activation (golden_id);

create trigger golden_response_activation_is_insert_only before update or delete on golden_response_activation
  for each row execute function refuse_change();
create trigger golden_response_activation_no_truncate before truncate on golden_response_activation
  for each statement execute function refuse_change();
revoke update, delete, truncate on golden_response_activation from "${serviceRole}";
