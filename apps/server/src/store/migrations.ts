/** What brings a store from each version to the next; `user_version` counts those done. */
import { folded } from '@shedbook/routes';
import type { Database } from 'libsql';
import { checksumOf } from './checksum.ts';

/**
 * Logs as rows: an entry each, and one for what was taken out of a log; a log that cannot be taken apart is one row
 * as it is. Nothing is checked here, so nothing is lost here.
 */
const LOGS_AS_ROWS = `
  create table log_rows (
    row integer primary key autoincrement,
    student_id text not null references students (id) on delete cascade,
    version integer not null,
    entry_id text,
    played_at integer,
    text text not null,
    checksum text,
    taken_at text not null
  ) strict;
  create index log_rows_by_entry on log_rows (student_id, entry_id);
  create index log_rows_by_time on log_rows (student_id, played_at);
  create table kept_logs as
    select students.id, updated_at, log,
      case when json_valid(log) and json_type(log, '$.entries') = 'array' then log end as list
    from students where log <> '';
  insert into log_rows (student_id, version, entry_id, played_at, text, taken_at)
    select kept_logs.id,
      case json_type(list, '$.version') when 'integer' then json_extract(list, '$.version') else 0 end,
      case when each.type = 'object' and json_type(each.value, '$.id') = 'text'
        then json_extract(each.value, '$.id') end,
      case when each.type = 'object' and json_extract(each.value, '$.startedAt') glob '[0-9][0-9][0-9][0-9]-*T*'
        then cast(strftime('%s', json_extract(each.value, '$.startedAt')) as integer) end,
      case when each.type in ('object', 'array') then each.value else json_quote(each.value) end,
      updated_at
    from kept_logs, json_each(list, '$.entries') as each;
  insert into log_rows (student_id, version, entry_id, text, taken_at)
    select kept_logs.id,
      case json_type(list, '$.version') when 'integer' then json_extract(list, '$.version') else 0 end,
      case each.type when 'text' then each.value end,
      json_object('removed', json(json_quote(each.value))),
      updated_at
    from kept_logs, json_each(list, '$.removed') as each;
  insert into log_rows (student_id, version, text, taken_at)
    select id, 0, log, updated_at from kept_logs where list is null;
  drop table kept_logs;
  alter table students drop column log;
  alter table steps add column checksum text;`;

/** Where lessons are filed, and what a list shows of them; a summary is made of a text when it is first wanted. */
const FILED = `
  alter table lessons add column level text;
  alter table lessons add column shelves text not null default '[]';
  alter table lessons add column archived_at text;
  create table summaries (
    lesson_id text primary key not null references lessons (id) on delete cascade,
    revision integer not null,
    summary text not null
  ) strict, without rowid;`;

/** Gives every text that was kept before there were checksums its own. */
function addChecksums(database: Database): void {
  const steps = database.prepare('select lesson_id, step, text from steps').all() as readonly {
    readonly lesson_id: string;
    readonly step: number;
    readonly text: string;
  }[];
  const mark = database.prepare('update steps set checksum = ? where lesson_id = ? and step = ?');
  for (const { lesson_id, step, text } of steps) mark.run(checksumOf(text), lesson_id, step);
  const rows = database.prepare('select row, text from log_rows').all() as readonly {
    readonly row: number;
    readonly text: string;
  }[];
  const markRow = database.prepare('update log_rows set checksum = ? where row = ?');
  for (const { row, text } of rows) markRow.run(checksumOf(text), row);
}

/**
 * What the roster is read by, in parts: names as a search finds them, the order in which students came, and of their
 * practice what counts, without its texts.
 */
const ROSTER = `
  alter table students add column finds text not null default '';
  create index students_by_coming on students (created_at, id) where deleted_at is null;
  create index log_rows_that_count on log_rows (student_id, played_at) where removed_at is null;
  drop index log_rows_by_time;`;

/** What a teacher pins to single bars of a take, and what they say of it. */
const ANSWERS = `
  alter table takes add column marks text not null default '[]';
  create table voices (
    student_id text not null,
    take_id text not null,
    spoken_at text not null,
    content blob not null,
    checksum text not null,
    primary key (student_id, take_id),
    foreign key (student_id, take_id) references takes (student_id, take_id) on delete cascade
  ) strict;`;

/** Dated lessons: what the teacher writes of them, and what was set. */
const HOURS = `
  create table hours (
    student_id text not null references students (id) on delete cascade,
    held_on text not null,
    content text not null,
    checksum text not null,
    revision integer not null,
    updated_at text not null,
    primary key (student_id, held_on)
  ) strict, without rowid;`;

/** What is kept by hand, the journal, and whether the coach speaks to a student. */
const KEEPING = `
  alter table takes add column kept_at text;
  create table journal (
    id text primary key not null,
    at text not null,
    who text not null,
    did text not null,
    student_id text,
    n integer
  ) strict, without rowid;
  create index journal_by_time on journal (at, id);
  alter table students add column coach text not null default 'on';
  alter table students add column coach_until text;`;

/** The bar of the exercise that a spoken note is about, from 1. */
const NOTES_AT_BARS = 'alter table voices add column bar integer;';

/**
 * When each student played last, kept beside their name by the store itself whatever becomes of their practice; and
 * several spoken notes of a take, one for each bar (0: all of it).
 */
const LAST_PLAYED_AND_NOTES = `
  alter table students add column played_at integer;
  update students set played_at =
    (select max(played_at) from log_rows where student_id = students.id and removed_at is null);
  create index students_by_playing on students (played_at) where deleted_at is null;
  create trigger played_added after insert on log_rows begin
    update students set played_at = max(coalesce(played_at, new.played_at), new.played_at)
      where id = new.student_id and new.played_at is not null and new.removed_at is null;
  end;
  create trigger played_changed after update of played_at, removed_at, student_id on log_rows begin
    update students set played_at =
      (select max(played_at) from log_rows where student_id = students.id and removed_at is null)
      where id in (old.student_id, new.student_id);
  end;
  create trigger played_deleted after delete on log_rows begin
    update students set played_at =
      (select max(played_at) from log_rows where student_id = students.id and removed_at is null)
      where id = old.student_id;
  end;
  alter table voices rename to voices_before;
  create table voices (
    student_id text not null,
    take_id text not null,
    bar integer not null,
    spoken_at text not null,
    content blob not null,
    checksum text not null,
    primary key (student_id, take_id, bar),
    foreign key (student_id, take_id) references takes (student_id, take_id) on delete cascade
  ) strict;
  insert into voices (student_id, take_id, bar, spoken_at, content, checksum)
    select student_id, take_id, coalesce(bar, 0), spoken_at, content, checksum from voices_before;
  drop table voices_before;`;

/** Exercises as the teacher plays them, one of each, gone with their lesson. */
const DEMONSTRATIONS = `
  create table demonstrations (
    id text primary key not null,
    lesson_id text not null references lessons (id) on delete cascade,
    exercise text not null,
    plays text not null,
    facts text not null,
    kept_at text not null,
    content blob not null,
    checksum text not null,
    unique (lesson_id, exercise)
  ) strict;`;

/** Books of lessons. */
const BOOKS = `create table books (
    id text primary key not null,
    content text not null,
    checksum text not null,
    revision integer not null,
    created_at text not null,
    updated_at text not null
  ) strict;`;

/**
 * Several teachers: what was there before belongs to the first, who keeps the passphrase. Nothing refers to a teacher by
 * a foreign key, since a backup may know others than those who are here.
 */
const TEACHERS = `
  create table teachers (
    id text primary key not null,
    name text not null,
    finds text not null unique,
    role text not null
  ) strict, without rowid;
  insert into teachers (id, name, finds, role) values ('first', '', '', 'head');
  create table passphrases (teacher_id text primary key not null, hash text not null) strict, without rowid;
  insert into passphrases (teacher_id, hash) select 'first', value from notes where key = 'passphrase';
  delete from notes where key = 'passphrase';
  create table invitations (
    token_digest text primary key not null,
    teacher_id text not null,
    made_at text not null
  ) strict, without rowid;
  create table passkeys (
    id text primary key not null,
    teacher_id text not null,
    public_key text not null,
    counter integer not null,
    made_at text not null,
    used_at text
  ) strict, without rowid;
  create table challenges (
    token_digest text primary key not null,
    teacher_id text,
    made_at text not null
  ) strict, without rowid;
  alter table sessions add column teacher_id text not null default 'first';
  alter table lessons add column teacher_id text not null default 'first';
  alter table books add column teacher_id text not null default 'first';
  alter table students add column teacher_id text not null default 'first';
  alter table journal add column teacher_id text;
  drop index students_by_coming;
  drop index students_by_playing;
  create index students_by_coming on students (teacher_id, created_at, id) where deleted_at is null;
  create index students_by_playing on students (teacher_id, played_at) where deleted_at is null;`;

/** Folds every name that was kept before a search went by it. */
function foldNames(database: Database): void {
  const students = database.prepare('select id, name from students').all() as readonly {
    readonly id: string;
    readonly name: string;
  }[];
  const fold = database.prepare('update students set finds = ? where id = ?');
  for (const { id, name } of students) fold.run(folded(name), id);
}

/** One step from a version to the next. */
export interface Migration {
  readonly statements: string;
  /** Done after the statements, within the same transaction. */
  readonly finish?: (database: Database) => void;
}

/** In order: the first makes a store of version 1. */
export const MIGRATIONS: readonly Migration[] = [
  {
    statements: `create table lessons (
     id text primary key not null,
     revision integer not null,
     step integer not null,
     last_step integer not null,
     created_at text not null,
     updated_at text not null,
     deleted_at text
   ) strict;
   create table steps (
     lesson_id text not null references lessons (id) on delete cascade,
     step integer not null,
     text text not null,
     primary key (lesson_id, step)
   ) strict, without rowid;
   create table notes (key text primary key not null, value text not null) strict, without rowid;`,
  },
  {
    statements: `create table students (
     id text primary key not null,
     name text not null,
     log text not null,
     assignments text not null,
     revision integer not null,
     created_at text not null,
     updated_at text not null,
     deleted_at text
   ) strict;`,
  },
  { statements: `alter table students add column level text not null default 'intermediate';` },
  { statements: LOGS_AS_ROWS, finish: addChecksums },
  { statements: FILED },
  { statements: 'alter table log_rows add column removed_at text;' },
  {
    statements: `create table links (
     id text primary key not null,
     student_id text not null references students (id) on delete cascade,
     token_digest text not null unique,
     language text not null,
     made_at text not null,
     used_at text
   ) strict;
   create index links_by_student on links (student_id, made_at);
   create table sessions (token_digest text primary key not null, made_at text not null) strict, without rowid;`,
  },
  {
    statements: `create table takes (
     student_id text not null references students (id) on delete cascade,
     take_id text not null,
     sent_at text not null,
     asks integer not null,
     facts text not null,
     bytes integer not null,
     checksum text not null,
     heard_at text,
     answer text,
     answered_at text,
     primary key (student_id, take_id)
   ) strict, without rowid;
   create index takes_by_sending on takes (heard_at, sent_at);`,
  },
  {
    statements: `create table erased (
     kind text not null,
     id text not null,
     erased_at text not null,
     primary key (kind, id)
   ) strict, without rowid;`,
  },
  {
    statements: `alter table students add column is_minor integer not null default 0;
   alter table students add column consent_by text;
   alter table students add column consent_at text;`,
  },
  { statements: ROSTER, finish: foldNames },
  { statements: ANSWERS },
  { statements: HOURS },
  { statements: KEEPING },
  { statements: NOTES_AT_BARS },
  { statements: LAST_PLAYED_AND_NOTES },
  { statements: DEMONSTRATIONS },
  { statements: 'alter table students add column set_up text;' },
  { statements: BOOKS },
  { statements: TEACHERS },
];
