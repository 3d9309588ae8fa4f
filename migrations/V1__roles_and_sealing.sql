-- Why: records that prove a verdict must not change afterwards. The service connects as one role and Flyway runs as another,
-- which owns the tables. The service's role may read, add and (unless a table is sealed) update; it may delete only where a
-- later step says so. Sealed tables also carry triggers, which hold even where a plant gives one role only.

-- The trigger of every sealed table, for update, delete and truncate.
create function refuse_change() returns trigger language plpgsql as $$
begin
  raise exception '% is insert-only: % refused', tg_table_name, lower(tg_op)
    using errcode = 'insufficient_privilege',
          hint = 'A correction is a new row; what stands here is sealed.';
end
$$;
comment on function refuse_change() is 'Trigger of sealed (insert-only) tables: refuses every change.';

alter default privileges in schema public grant select, insert, update on tables to "${serviceRole}";
alter default privileges in schema public grant usage, select on sequences to "${serviceRole}";
