-- Why: every process keeps products and limit sets in memory and must notice at once when another one changed them: the number is
-- raised in the transaction that changes anything, and compared before each answer.
create table limits_change (
  only_row boolean not null default true,
  number bigint not null,
  constraint limits_change_pkey primary key (only_row),
  constraint limits_change_one_row check (only_row)
);
insert into limits_change (number) values (0);
