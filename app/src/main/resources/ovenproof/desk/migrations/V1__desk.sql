-- One desk. Only the SQL that SQLite and PostgreSQL share; ids are text, times epoch milliseconds,
-- bodies JSON or plain text that the program reads. Nothing here is updated except the counters of a
-- campaign and the state of a job; nothing is deleted.

create table campaign (
  id text not null primary key check (length(id) between 1 and 300),
  created_at bigint not null,
  created_by text not null,
  made_by_job text,
  version bigint not null,
  last_seq bigint not null
);

create table document (
  campaign text not null references campaign (id),
  name text not null check (length(name) between 1 and 60),
  revision bigint not null check (revision >= 1),
  who text not null,
  at bigint not null,
  why text,
  body text not null,
  primary key (campaign, name, revision)
);

create table entry (
  id text not null primary key check (length(id) between 1 and 80),
  campaign text not null references campaign (id),
  seq bigint not null,
  kind text not null,
  who text not null,
  device_time bigint not null,
  clock_offset_ms bigint not null,
  clock_uncertainty_ms bigint,
  received_at bigint not null,
  corrects text,
  body text not null,
  unique (campaign, seq)
);

create table attachment (
  campaign text not null references campaign (id),
  path text not null check (length(path) between 1 and 400),
  seq bigint not null,
  sha256 text not null check (length(sha256) = 64),
  bytes bigint not null check (bytes >= 0),
  who text not null,
  at bigint not null,
  primary key (campaign, path)
);

create table job (
  id text not null primary key,
  kind text not null,
  campaign text,
  input text not null,
  state text not null check (state in ('waiting', 'running', 'done', 'failed', 'cancelled')),
  done bigint not null,
  total bigint not null,
  message text not null,
  result text,
  who text not null,
  created_at bigint not null,
  updated_at bigint not null
);
create index job_by_state on job (state);
